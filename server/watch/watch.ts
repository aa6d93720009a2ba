/** What keeps coming back, for the whole kennel. */
import { dayNumber } from '../load/days.ts';
import { indexLoad, type LoadIndex } from '../load/index.ts';
import type { YardRecord } from '../records/types.ts';
import { cautionsOf } from './cautions.ts';
import { draftsOf } from './episodes.ts';
import { episodesOfDog } from './recurrence.ts';
import type { Caution, Episode, Watch } from './schema.ts';
import { indexWatch, statementsIn, type WatchIndex, type WatchRun } from './statements.ts';
import { togetherOf } from './together.ts';

/** Days of silence after which an episode counts as "not seen since", unless the kennel sets another number. */
export const SILENCE_DAYS = 14;

export interface WatchSettings {
  /** The day it is worked out for, YYYY-MM-DD, inclusive: what was told later does not count. */
  on: string;
  silenceDays?: number;
}

/**
 * Episodes, recurrences and cautions of the dogs asked for. Give the runs and yard records of every season there is, so
 * that last season's wrist is known as such. The order in which they come does not matter.
 * @param index the load index of the same runs, where there is one already
 * @throws RangeError with a sentence when `on` is not a day or `silenceDays` is not a whole number of at least 1
 */
export function episodesOf(
  runs: readonly WatchRun[],
  yard: readonly YardRecord[],
  dogs: readonly string[],
  settings: WatchSettings,
  index: LoadIndex = indexLoad(runs),
): Watch {
  return watchOf(indexWatch({ runs, yard }), index, dogs, settings);
}

/**
 * The same from an index made once. What was worked out for a dog is kept as long as its statements and its runs are the
 * same objects, so that after one review only the dogs of that run are worked out again.
 * @param which the episodes and groups wanted; all when left out
 * @throws RangeError as `episodesOf`
 */
export function watchOf(
  index: WatchIndex,
  load: LoadIndex,
  dogs: readonly string[],
  { on, silenceDays = SILENCE_DAYS }: WatchSettings,
  which: (one: Pick<Episode, 'season'> & Partial<Pick<Episode, 'state'>>) => boolean = () => true,
): Watch {
  if (!Number.isInteger(silenceDays) || silenceDays < 1)
    throw new RangeError(`${silenceDays} is not a number of days of silence: give a whole number of at least 1.`);
  const day = dayNumber(on);
  const noDog = statementsIn(index.noDog, day).map((statement) => statement.mention);
  const watch: Watch = { on, silenceDays, episodes: [], cautions: [], together: [], history: [], noDog };
  for (const dog of dogs) {
    const rows = index.byDog.get(dog);
    if (!rows) continue;
    const one = dogWatch(dog, rows, load, silenceDays, day);
    watch.episodes.push(...one.episodes.filter(which));
    watch.cautions.push(...one.cautions);
    watch.together.push(...one.together.filter(which));
    watch.history.push(...one.history);
  }
  watch.episodes.sort(byUrgency);
  watch.cautions.sort(byStanding);
  return watch;
}

type DogWatch = Pick<Watch, 'episodes' | 'cautions' | 'together' | 'history'>;
interface Kept {
  history: unknown;
  silenceDays: number;
  day: number;
  watch: DogWatch;
}
/** For each dog's rows what was worked out of them lately: pages ask for today, and for the days of single runs. */
const keptOf = new WeakMap<object, Kept[]>();
const MOST_KEPT = 4;

function dogWatch(
  dog: string,
  rows: Parameters<typeof statementsIn>[0],
  load: LoadIndex,
  silenceDays: number,
  day: number,
): DogWatch {
  const history = load.dogs.get(dog);
  const kept = keptOf.get(rows) ?? [];
  const known = kept.find((k) => k.history === history && k.silenceDays === silenceDays && k.day === day);
  if (known) return known.watch;
  const statements = statementsIn(rows, day);
  const { drafts, history: told } = draftsOf(statements, silenceDays, day);
  const episodes = episodesOfDog(dog, drafts, load, day);
  const watch = {
    episodes,
    cautions: cautionsOf(dog, statements, episodes, silenceDays, day),
    together: togetherOf(dog, episodes),
    history: told.map((one) => ({ dog, ...one })),
  };
  keptOf.set(rows, [{ history, silenceDays, day, watch }, ...kept].slice(0, MOST_KEPT));
  return watch;
}

/** Open before ended, then the one seen last, then by name and site so that the order is always the same. */
function byUrgency(a: Episode, b: Episode): number {
  const open = Number(b.state === 'open') - Number(a.state === 'open');
  return open || compare(b.lastSeen, a.lastSeen) || compare(a.id, b.id);
}
function byStanding(a: Caution, b: Caution): number {
  return (
    Number(b.standing) - Number(a.standing) || compare(b.last, a.last) || compare(a.dog, b.dog) || compare(a.id, b.id)
  );
}
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
