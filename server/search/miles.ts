/** What a dog ran between two days: its own metres and runs, neither day counted in, as the episodes are counted. */
import { ranIn } from '../load/index.ts';
import type { RunRecord } from '../records/types.ts';

export interface Between {
  /** Days from the one to the other. */
  days: number;
  metres: number;
  runs: number;
  /** Runs whose distance is not known: the metres are the least it did. */
  runsWithoutDistance: number;
}

interface Ran {
  days: string[];
  metres: number[];
  unknown: number[];
}

const kept = new WeakMap<readonly RunRecord[], Map<string, Ran>>();

/** A season's runs by dog, in the order of days, with running sums. Worked out once for an array of runs. */
function byDog(runs: readonly RunRecord[]): Map<string, Ran> {
  let map = kept.get(runs);
  if (map) return map;
  map = new Map();
  const inOrder = [...runs].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  for (const run of inOrder)
    for (const one of run.dogs) {
      // A dog that only was told of did not run.
      if (!ranIn(one)) continue;
      const { dog, metres } = one;
      let mine = map.get(dog);
      if (!mine) {
        mine = { days: [], metres: [0], unknown: [0] };
        map.set(dog, mine);
      }
      mine.days.push(run.day);
      mine.metres.push((mine.metres.at(-1) as number) + (metres ?? 0));
      mine.unknown.push((mine.unknown.at(-1) as number) + (metres === undefined ? 1 : 0));
    }
  kept.set(runs, map);
  return map;
}

/** How many of the sorted days lie before `day`; with `too` also those on it. */
function countBefore(days: readonly string[], day: string, too: boolean): number {
  let low = 0;
  let high = days.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    const d = days[mid] as string;
    if (d < day || (too && d === day)) low = mid + 1;
    else high = mid;
  }
  return low;
}

const dayNumber = (day: string) => Date.parse(`${day}T00:00:00Z`) / 864e5;

/** From the day `from` to the later day `to`, over the runs of the seasons between. */
export function between(seasons: readonly (readonly RunRecord[])[], dog: string, from: string, to: string): Between {
  const sum: Between = { days: dayNumber(to) - dayNumber(from), metres: 0, runs: 0, runsWithoutDistance: 0 };
  for (const runs of seasons) {
    const mine = byDog(runs).get(dog);
    if (!mine) continue;
    const a = countBefore(mine.days, from, true);
    const b = countBefore(mine.days, to, false);
    if (b <= a) continue;
    sum.runs += b - a;
    sum.metres += (mine.metres[b] as number) - (mine.metres[a] as number);
    sum.runsWithoutDistance += (mine.unknown[b] as number) - (mine.unknown[a] as number);
  }
  return sum;
}
