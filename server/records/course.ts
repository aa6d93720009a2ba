/**
 * A team's way: how long it was, which marks were told along it, and where the team was at a time. Metres from the start.
 */
import type { EntryOf } from '../../grammar/entry.ts';
import type { RunChoices } from '../model.ts';
import { type Item, of, type Told } from './items.ts';
import { looksBack } from './phases.ts';
import type { Team } from './teams.ts';
import { apart, tiedBackwards } from './text.ts';
import type { RunRecord } from './types.ts';
import { metres } from './units.ts';

type Distance = Told<EntryOf<'distance'>>;
export type SetByHand = RunChoices['distances'][number];

export interface Mark {
  metres: number;
  told: Distance;
  item: Item;
}

export interface Course {
  length?: number;
  from: RunRecord['metresFrom'];
  /** What was told, when the length was set by hand. */
  said?: { metres: number; from: 'total' | 'last-mark' | 'legs' };
  totals: { metres: number; told: Distance }[];
  /** All marks, in the order of telling. */
  marks: Mark[];
  /** Marks told on the way that do not fit in with the others: the team can't have gone back. */
  astray: Mark[];
  /** Where the team was when, both rising. */
  anchors: { ms: number; metres: number; mark?: true }[];
}

/** A place on the way. `estimated` when it was worked out from times; `metres` left out when it can't be known. */
export interface Place {
  metres?: number;
  estimated?: boolean;
}

/** An instant and the offset of the note that told it. */
interface Instant {
  ms: number;
  offset: number;
}

/** Start and finish of the team, as far as they are told: the first start and the last finish. */
export function clocksOf(team: Team): { start?: Instant; finish?: Instant } {
  const found: { start?: Instant; finish?: Instant } = {};
  for (const { entry, item } of of(team.figures, 'clock')) {
    if (entry.event !== 'start' && entry.event !== 'finish') continue;
    const ms = item[entry.event];
    const known = found[entry.event];
    if (ms === undefined) continue;
    if (!known || (entry.event === 'start' ? ms < known.ms : ms > known.ms))
      found[entry.event] = { ms, offset: item.when.offset };
  }
  return found;
}

/**
 * The way of a team. Length: set by hand, else the last total told, else the last mark, else the sum of legs. What is told as
 * remaining is a mark where a total is known. Legs are marks only where no mark is told.
 */
export function courseOf(team: Team, byHand: SetByHand | undefined): Course {
  const distances = of(team.figures, 'distance').sort(inOrder);
  const inMetres = (told: Distance) => metres(told.entry.value, told.entry.unit);
  const totals = distances
    .filter(({ entry }) => entry.measure === 'total')
    .map((told) => ({ metres: inMetres(told), told }));
  const sure = totals.filter(({ told }) => (told.entry.assertion ?? 'present') === 'present');
  const total = (sure.at(-1) ?? totals.at(-1))?.metres;
  const corrected = byHand && metres(byHand.value, byHand.unit);
  const whole = total ?? corrected;
  let marks = distances.flatMap((told): Mark[] => {
    if (told.entry.measure === 'mark') return [{ metres: inMetres(told), told, item: told.item }];
    if (told.entry.measure !== 'remaining' || whole === undefined) return [];
    return [{ metres: Math.max(0, whole - inMetres(told)), told, item: told.item }];
  });
  let gone = 0;
  const legs = distances
    .filter(({ entry }) => entry.measure === 'leg')
    .map((told) => {
      gone += inMetres(told);
      return { metres: gone, told, item: told.item };
    });
  const lastLeg = legs.at(-1)?.metres;
  if (marks.length === 0) marks = legs;
  const timed = onTheWay(team, marks);
  const kept = rising(timed);
  const fits = new Set(kept);
  const astray = timed.filter((mark) => !fits.has(mark));
  const lastMark = lastOf(team, marks);
  const said: Course['said'] =
    total !== undefined
      ? { metres: total, from: 'total' }
      : lastMark !== undefined
        ? { metres: lastMark, from: 'last-mark' }
        : lastLeg !== undefined
          ? { metres: lastLeg, from: 'legs' }
          : undefined;
  const course: Course = { from: 'unknown', totals, marks, astray, anchors: [] };
  if (corrected !== undefined) Object.assign(course, { length: corrected, from: 'corrected' }, said && { said });
  else if (said) Object.assign(course, { length: said.metres, from: said.from });
  course.anchors = anchorsOf(team, kept, course);
  return course;
}

/** The last mark told as such, of those that fit together; what was told as remaining says nothing without a total. */
function lastOf(team: Team, marks: readonly Mark[]): number | undefined {
  const told = marks.filter((mark) => mark.told.entry.measure === 'mark');
  const timed = onTheWay(team, told);
  const fits = new Set(rising(timed));
  const astray = new Set(timed.filter((mark) => !fits.has(mark)));
  const usable = told.filter((mark) => !astray.has(mark));
  return usable.length > 0 ? usable.reduce((far, mark) => Math.max(far, mark.metres), 0) : undefined;
}

/** Order of time, then of the text. */
export function inOrder(a: Told, b: Told): number {
  return a.item.when.ms - b.item.when.ms || (a.note < b.note ? -1 : a.note > b.note ? 1 : a.order - b.order);
}

/** For each note told on the way its farthest mark: where the team was then. A note that looks back tells no such place. */
function onTheWay(team: Team, marks: readonly Mark[]): Mark[] {
  const byItem = new Map<Item, Mark>();
  for (const mark of marks) {
    if (looksBack(team.phases, mark.item)) continue;
    const known = byItem.get(mark.item);
    if (!known || mark.metres > known.metres) byItem.set(mark.item, mark);
  }
  return [...byItem.values()];
}

/**
 * The longest row of marks that never goes back (of two as long, the one that gets farther), so that one mark heard wrong
 * ("28" for 18) does not throw out those that follow.
 */
export function rising(marks: readonly Mark[]): Mark[] {
  const best: { length: number; before: number }[] = [];
  let end = -1;
  for (const [i, mark] of marks.entries()) {
    let length = 1;
    let before = -1;
    for (let j = 0; j < i; j++) {
      const one = best[j] as { length: number };
      if ((marks[j] as Mark).metres <= mark.metres && one.length + 1 > length) {
        length = one.length + 1;
        before = j;
      }
    }
    best.push({ length, before });
    const leader = best[end];
    if (!leader || length > leader.length || (length === leader.length && mark.metres > (marks[end] as Mark).metres))
      end = i;
  }
  const row: Mark[] = [];
  for (let i = end; i >= 0; i = (best[i] as { before: number }).before) row.push(marks[i] as Mark);
  return row.reverse();
}

/**
 * Start, marks and finish as times and places. Where no start is told, the last note that hitches dogs before the first
 * mark stands for it (a team leaves soon after it is hooked up, common practice); places worked out from it are estimates anyway.
 */
function anchorsOf(team: Team, marks: readonly Mark[], course: Course): Course['anchors'] {
  const clocks = clocksOf(team);
  const start = clocks.start?.ms;
  const finish = clocks.finish?.ms;
  const first = marks[0]?.item.when.ms ?? finish ?? Number.POSITIVE_INFINITY;
  const hookUps = team.placings
    .filter(
      ({ told }) => told.entry.kind === 'hitch' && told.item.when.ms < first && !looksBack(team.phases, told.item),
    )
    .map(({ told }) => told.item.when.ms);
  const left = start !== undefined && start <= first ? start : hookUps.length > 0 ? Math.max(...hookUps) : undefined;
  const anchors: Course['anchors'] = left === undefined ? [] : [{ ms: left, metres: 0 }];
  for (const mark of marks) anchors.push({ ms: mark.item.when.ms, metres: within(mark.metres, course), mark: true });
  const last = anchors.at(-1);
  const known = course.from === 'total' || course.from === 'corrected';
  if (finish !== undefined && course.length !== undefined && known && (!last || finish > last.ms))
    anchors.push({ ms: finish, metres: course.length });
  return anchors;
}

/** Nothing lies beyond the run's end. */
export function within(place: number, course: Course): number {
  return course.length === undefined ? place : Math.min(place, course.length);
}

/** Where the team was at a time, worked out between the places known before and after it; the last known where none comes after. */
export function whereAt(course: Course, ms: number): Place {
  const { anchors } = course;
  const next = anchors.findIndex((anchor) => anchor.ms > ms);
  const before = anchors[(next < 0 ? anchors.length : next) - 1];
  const after = next < 0 ? undefined : anchors[next];
  if (!before) return {};
  if (!after) return { metres: before.metres, estimated: true };
  const share = (ms - before.ms) / (after.ms - before.ms);
  return { metres: before.metres + share * (after.metres - before.metres), estimated: true };
}

/**
 * The mark in the same note that tells where something happened: the nearest in the text. Where a note goes "dropped A at
 * mile 12, put B in at mile 15" (or "at mile 12 …, at mile 15 …") throughout, that order decides between two as near.
 */
export function markFor(told: Told, marks: readonly Mark[], events: readonly Told[]): Mark | undefined {
  if (marks.length <= 1) return marks[0];
  const text = told.item.note.text;
  const span = told.entry.span;
  if (!span) return marks.findLast((mark) => mark.told.order < told.order) ?? marks[0];
  const row = [...events, ...marks.map((mark) => mark.told)].sort((a, b) => a.order - b.order);
  const isMark = (one: Told | undefined) => one?.entry.kind === 'distance';
  const marksFollow = !isMark(row[0]) && isMark(row.at(-1));
  const marksLead = isMark(row[0]) && !isMark(row.at(-1));
  let best: Mark | undefined;
  let bestAway = Number.POSITIVE_INFINITY;
  for (const mark of marks) {
    const place = mark.told.entry.span;
    if (!place) continue;
    const follows = place[0] >= span[0];
    const from = Math.min(told.order, mark.told.order);
    const to = Math.max(told.order, mark.told.order);
    const others = row.filter((one) => one.order > from && one.order < to).length;
    const expected = marksFollow ? follows : marksLead ? !follows : follows && tiedBackwards(text, span, place);
    const away = apart(text, span, place) + 6 * others + (expected ? 0 : 0.5);
    if (away < bestAway) {
      bestAway = away;
      best = mark;
    }
  }
  return best ?? marks[0];
}
