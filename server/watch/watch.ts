/** What keeps coming back, for the whole kennel. */
import { dayNumber } from '../load/days.ts';
import { indexLoad, type LoadIndex } from '../load/index.ts';
import type { YardRecord } from '../records/types.ts';
import { cautionsOf } from './cautions.ts';
import { draftsOf } from './episodes.ts';
import { episodesOfDog } from './recurrence.ts';
import type { Caution, Episode, Watch } from './schema.ts';
import { statementsOf, type WatchRun } from './statements.ts';
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
  { on, silenceDays = SILENCE_DAYS }: WatchSettings,
  index: LoadIndex = indexLoad(runs),
): Watch {
  if (!Number.isInteger(silenceDays) || silenceDays < 1)
    throw new RangeError(`${silenceDays} is not a number of days of silence: give a whole number of at least 1.`);
  const day = dayNumber(on);
  const { byDog, noDog } = statementsOf(runs, yard, dogs, day);
  const watch: Watch = { on, silenceDays, episodes: [], cautions: [], together: [], history: [], noDog };
  for (const [dog, statements] of byDog) {
    const { drafts, history } = draftsOf(statements, silenceDays, day);
    const episodes = episodesOfDog(dog, drafts, index, day);
    watch.episodes.push(...episodes);
    watch.cautions.push(...cautionsOf(dog, statements, episodes, silenceDays, day));
    watch.together.push(...togetherOf(dog, episodes));
    watch.history.push(...history.map((one) => ({ dog, ...one })));
  }
  watch.episodes.sort(byUrgency);
  watch.cautions.sort(byStanding);
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
