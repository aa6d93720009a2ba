/**
 * Whether a note starts a new run. The musher's words for a second hook-up and for telling the first one over again in the
 * evening are alike ("Hazel and Dash up front"), so the clues are taken in a fixed order, each with its reason.
 */
import { type Lineup, ownHitches, showsRun, showsUnderway, toldInFull } from './evidence.ts';
import { heldIn, type Item } from './items.ts';
import { clockAt, dayAt, HOUR, MINUTE } from './time.ts';
import { metres } from './units.ts';

/** What is known of the run a note may go on with. */
export interface Open {
  day: string;
  /** Time of its last note, and of the last one that tells of being on the trail. */
  last: number;
  isRun: boolean;
  underway: boolean;
  start?: number;
  finish?: number;
  lineup: Lineup;
  total?: number;
}

/** Over midnight a run goes on through a rest of at most this long, whatever longer silence the settings allow. */
const NIGHT_HOURS = 8;
/** After a run has ended, notes told past midnight still belong to its evening for so long. */
const LATE_EVENING_HOURS = 3;
/** A hook-up is followed by leaving the yard within this time; a later start is another outing's. */
const HOOK_UP = 90 * MINUTE;
/** Two finishes closer than this are one finish told twice ("back at ten past five", later "home about six"). */
const SAME_FINISH = HOUR;

/**
 * Whether `chain[i]` starts a new run after `open`: on another local day; after silence longer than `gapHours`, unless it ends
 * the run that is out; with a second start, or a whole second team told on the trail. After a finish only going out again starts one, however long the silence: what
 * is told in the evening is of the run that was.
 */
export function startsRun(open: Open, chain: readonly Item[], i: number, gapHours: number): boolean {
  const item = chain[i] as Item;
  const silence = item.begin - open.last;
  const otherDay = dayAt(item.begin, item.when.offset) !== open.day && item.when.day !== open.day;
  if (otherDay && !goesOnPastMidnight(open, item, silence)) return true;
  const silent = silence > gapHours * HOUR;
  if (open.isRun && open.finish !== undefined) return isNextRun(open, open.finish, chain, i, gapHours, silent);
  if (silent) return !(open.isRun && endsIt(open, item));
  return open.isRun && isSecondTeam(open, item);
}

/** A finish or a total ends the run that is out, after however long a silence on the trail. */
function endsIt(open: Open, item: Item): boolean {
  if (ownHitches(item, item.by).length > 0 || (item.start !== undefined && item.start > open.last)) return false;
  return item.finish !== undefined || totalIn(item) !== undefined;
}

/** A run under way goes on over midnight; a run that has ended keeps its late evening; a hook-up is of the new day. */
function goesOnPastMidnight(open: Open, item: Item, silence: number): boolean {
  if (!open.isRun || ownHitches(item, item.by).length > 0) return false;
  if (item.start !== undefined && item.start > open.last) return false;
  return silence <= (open.finish === undefined ? NIGHT_HOURS : LATE_EVENING_HOURS) * HOUR;
}

/** Before any finish was told: a second start, or leaders told anew with none of the dogs that are out. */
function isSecondTeam(open: Open, item: Item): boolean {
  if (item.start !== undefined && open.start !== undefined && open.underway) {
    if (item.start > open.last && item.start - open.start > HOUR) return true;
  }
  if (!open.underway) return false;
  const told = lineupIn(item);
  if (!leads(told) || !toldInFull(told) || !leads(open.lineup)) return false;
  return ![...told.keys()].some((dog) => open.lineup.has(dog));
}

/** After a finish: is this the next run, or the first one told over? */
function isNextRun(
  open: Open,
  finish: number,
  chain: readonly Item[],
  i: number,
  gapHours: number,
  silent: boolean,
): boolean {
  const item = chain[i] as Item;
  if (item.start !== undefined) return item.start >= finish;
  if (item.finish !== undefined) return item.finish > finish + SAME_FINISH;
  const told = lineupIn(item);
  // Clocks told soon after it show that a team went out again.
  const mayGoOut = told.size > 0 || item.told.some(showsUnderway);
  if (mayGoOut && goesOutAfter(chain, i, finish, gapHours, told.size > 0)) return true;
  if (told.size === 0) return false;
  // A length of its own that is not the run's.
  const total = totalIn(item);
  if (total !== undefined && open.total !== undefined && Math.abs(total - open.total) > 0.005 * open.total) return true;
  // Nobody was told to be in the team: it is told now, afterwards.
  if (open.lineup.size === 0) return false;
  const dogs = [...told.keys()];
  if (!dogs.some((dog) => open.lineup.has(dog))) return true;
  const whole = toldInFull(told);
  if (silent && whole) return true;
  // The same dogs in the same places: told over.
  if (dogs.every((dog) => open.lineup.has(dog) && sameOrUnsaid(open.lineup.get(dog), told.get(dog)))) return false;
  return whole;
}

/**
 * Whether the notes that follow show a team out again: a start soon after the hook-up (for a note told on the trail, before
 * it), or a stop or finish later than the first run's.
 */
function goesOutAfter(chain: readonly Item[], i: number, finish: number, gapHours: number, hooksUp: boolean): boolean {
  const first = chain[i] as Item;
  for (let j = i; j < chain.length; j++) {
    const item = chain[j] as Item;
    if (j > i && item.begin - (chain[j - 1] as Item).when.ms > gapHours * HOUR) return false;
    if (item.start !== undefined) return item.start > finish && item.start <= first.when.ms + (hooksUp ? HOOK_UP : 0);
    if (item.finish !== undefined && item.finish > finish + SAME_FINISH && item.finish > first.when.ms) return true;
    if (stopsAfter(item, finish + SAME_FINISH)) return true;
  }
  return false;
}

/** A break begun after an instant: only a team on the trail stops. */
function stopsAfter(item: Item, instant: number): boolean {
  return heldIn(item, 'clock').some(({ entry }) => entry.event === 'stop' && clockAt(item.when, entry.time) > instant);
}

function sameOrUnsaid(a: string | undefined, b: string | undefined): boolean {
  return a === undefined || b === undefined || a === b;
}

function leads(lineup: Lineup): boolean {
  for (const position of lineup.values()) if (position === 'lead') return true;
  return false;
}

function lineupIn(item: Item): Lineup {
  const told: Lineup = new Map();
  for (const hitch of ownHitches(item, item.by)) for (const dog of hitch.dogs) told.set(dog, hitch.entry.position);
  return told;
}

function totalIn(item: Item): number | undefined {
  const last = heldIn(item, 'distance').findLast(({ entry }) => entry.measure === 'total');
  return last && metres(last.entry.value, last.entry.unit);
}

/** A run opened by a note. */
export function openWith(item: Item): Open {
  const open: Open = {
    day: dayAt(item.begin, item.when.offset),
    last: item.when.ms,
    isRun: false,
    underway: false,
    lineup: new Map(),
  };
  goOn(open, item);
  return open;
}

/** Takes a note into what is known of the run. */
export function goOn(open: Open, item: Item): void {
  open.last = Math.max(open.last, item.when.ms);
  if (item.told.length === 0) return;
  open.isRun ||= item.told.some(showsRun);
  open.underway ||= item.told.some(showsUnderway);
  open.start ??= item.start;
  if (item.finish !== undefined) open.finish = Math.max(item.finish, open.finish ?? item.finish);
  else if (endsWithout(item)) open.finish = Math.max(item.when.ms, open.finish ?? item.when.ms);
  for (const [dog, position] of lineupIn(item)) open.lineup.set(dog, position ?? open.lineup.get(dog));
  for (const { dogs, entry } of heldIn(item, 'move')) for (const dog of dogs) open.lineup.set(dog, entry.position);
  open.total = totalIn(item) ?? open.total;
}

/** The run's length and its time told in one breath end it as a finish does ("28 miles, three hours forty"). */
function endsWithout(item: Item): boolean {
  const whole = heldIn(item, 'distance').some(({ entry }) => entry.measure === 'total');
  // Another driver's outing, told with its length and time, ends nothing of ours.
  const others = heldIn(item, 'hitch').length > 0 && ownHitches(item, item.by).length === 0;
  return whole && !others && heldIn(item, 'duration').some(({ entry }) => entry.of === 'run');
}
