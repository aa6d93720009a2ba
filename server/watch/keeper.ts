/**
 * Load and watch laid out over the runs of all seasons, kept while the seasons are the same objects. After a change only
 * the dogs in runs and yard records that are other objects than the last time are laid out again.
 */
import { indexLoad, type LoadIndex, withRuns } from '../load/index.ts';
import type { RunRecord, YardRecord } from '../records/types.ts';
import { indexWatch, type WatchIndex, withRecords } from './statements.ts';

/** Runs and yard records of one season. */
export interface SeasonRecords {
  readonly runs: readonly RunRecord[];
  readonly yard: readonly YardRecord[];
}
export interface Laid {
  readonly load: LoadIndex<RunRecord>;
  readonly watch: WatchIndex;
}

/** Lays the seasons out; each call takes over what it can from the call before. Seasons come in the same order each time. */
export function keeper(): (seasons: readonly SeasonRecords[]) => Laid {
  let last: { seasons: readonly SeasonRecords[]; laid: Laid } | undefined;
  return (seasons) => {
    if (last?.seasons.length === seasons.length && seasons.every((one, i) => one === last?.seasons[i]))
      return last.laid;
    const laid = after(last, seasons);
    last = { seasons, laid };
    return laid;
  };
}

/** Another object each time, though what is in it may be the same: what else hangs on the seasons is worked out anew. */
function after(last: { seasons: readonly SeasonRecords[]; laid: Laid } | undefined, seasons: readonly SeasonRecords[]) {
  const change = last ? changeOf(last.seasons, seasons) : 'much';
  if (!last || change === 'much') return whole(seasons);
  return change === 'none' ? { ...last.laid } : changed(last.laid, change);
}

interface Change {
  gone: { runs: RunRecord[]; yard: YardRecord[] };
  come: { runs: RunRecord[]; yard: YardRecord[] };
}

function whole(seasons: readonly SeasonRecords[]): Laid {
  const runs = seasons.flatMap((season) => season.runs);
  return { load: indexLoad(runs), watch: indexWatch({ runs, yard: seasons.flatMap((season) => season.yard) }) };
}

function changed({ load, watch }: Laid, { gone, come }: Change): Laid {
  return { load: withRuns(load, gone.runs, come.runs), watch: withRecords(watch, gone, come) };
}

/** What is other than before, season by season; `much` where laying out anew is as quick. */
function changeOf(before: readonly SeasonRecords[], now: readonly SeasonRecords[]): Change | 'none' | 'much' {
  if (before.length !== now.length) return 'much';
  const change: Change = { gone: { runs: [], yard: [] }, come: { runs: [], yard: [] } };
  let all = 0;
  for (const [i, season] of now.entries()) {
    const was = before[i] as SeasonRecords;
    all += season.runs.length;
    if (was === season) continue;
    for (const what of ['runs', 'yard'] as const) {
      const [gone, come] = difference<object>(was[what], season[what]);
      (change.gone[what] as object[]).push(...gone);
      (change.come[what] as object[]).push(...come);
    }
  }
  const many = change.gone.runs.length + change.come.runs.length;
  if (many > all / 4) return 'much';
  return many + change.gone.yard.length + change.come.yard.length === 0 ? 'none' : change;
}

function difference<T extends object>(before: readonly T[], now: readonly T[]): [gone: T[], come: T[]] {
  const [old, here] = [new Set(before), new Set(now)];
  return [before.filter((one) => !here.has(one)), now.filter((one) => !old.has(one))];
}
