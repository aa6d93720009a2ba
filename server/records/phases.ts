/** What part of the day a note was told in: before the team left, on the trail, or afterwards. */
import { showsRun, showsUnderway } from './evidence.ts';
import { heldIn, type Item, type Told } from './items.ts';

export interface Phases {
  /** From this instant on the team is out, ms. */
  underway: number;
  /** After this instant it is back, ms. */
  over: number;
  /** Time of the last note that itself shows the team out, ms: where no end is told, a later one may be from the yard. */
  shown: number;
}

/**
 * The phases of one outing. Under way: from the start told, else from the first mark, leg, stop, drop or, where no start is
 * told, move. Over: at the last finish told (or its telling, if a page without times puts that first), else when the
 * total was told last, else with the first meal in the yard that follows.
 */
export function phasesOf(items: readonly Item[]): Phases {
  const started = items.filter((item) => item.start !== undefined);
  const out = items.find(
    (item) => item.told.some(showsUnderway) || (started.length === 0 && heldIn(item, 'move').length > 0),
  );
  const underway = Math.min(...started.map((item) => item.start as number), out?.when.ms ?? Number.POSITIVE_INFINITY);
  const last = items.findLast((item) => item.told.some(showsOut));
  return { underway, over: overAt(items), shown: last?.when.ms ?? Number.NEGATIVE_INFINITY };
}

function overAt(items: readonly Item[]): number {
  const finishes = items.flatMap((item) => (item.finish === undefined ? [] : [Math.min(item.finish, item.when.ms)]));
  if (finishes.length > 0) return Math.max(...finishes);
  const last = items.findLastIndex((item) => item.told.some(showsOut));
  const teller = items[last];
  if (!teller) return Number.POSITIVE_INFINITY;
  // A length told with the start alone is the day's plan.
  if (tellsTotal(teller) && teller.start === undefined) return teller.when.ms;
  const fed = items.slice(last + 1).find((item) => heldIn(item, 'intake').some(({ entry }) => entry.what === 'meal'));
  return fed ? fed.when.ms - 1 : Number.POSITIVE_INFINITY;
}

/** A line-up may be told at any time; anything else that shows a run is told of a team that is out or was. */
function showsOut(told: Told): boolean {
  return showsRun(told) && told.entry.kind !== 'hitch';
}

export function phaseOf(phases: Phases, item: Item): 'before' | 'trail' | 'after' {
  if (item.when.ms > phases.over && item.finish === undefined) return 'after';
  // The note that tells the start stands on the trail only by what else it tells.
  return item.when.ms < phases.underway ? 'before' : 'trail';
}

/** Whether a note looks back on the run, so that its marks are not of the time of telling. */
export function looksBack(phases: Phases, item: Item): boolean {
  if (phaseOf(phases, item) === 'after' || item.finish !== undefined) return true;
  return phaseOf(phases, item) === 'trail' && tellsTotal(item);
}

function tellsTotal(item: Item): boolean {
  return heldIn(item, 'distance').some(({ entry }) => entry.measure === 'total');
}
