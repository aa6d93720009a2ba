/** What changed for each dog of a team, in order: put in a place, moved, out of the team; and where on the way that was. */
import type { LeftRight, Position } from '../../grammar/entry.ts';
import { type Course, inOrder, type Mark, markFor, type Place, whereAt, within } from './course.ts';
import { type Lineup, toldInFull } from './evidence.ts';
import { grouped, heldIn, holds, type Item, type Told } from './items.ts';
import { looksBack, phaseOf } from './phases.ts';
import type { Team } from './teams.ts';
import { metres } from './units.ts';

export interface DogEvent {
  what: 'hitch' | 'move' | 'out';
  position?: Position;
  side?: LeftRight;
  manner?: 'dropped' | 'loaded';
  place: Place;
  told: Told;
  /** Told looking back on the run, not when it happened. */
  back: boolean;
  /** Of a move: the dog was in the team before, in a place nobody told, because the line-up had not been told as a whole. */
  wasIn?: boolean;
  /** Of a drop: the line-up had been told as a whole, without this dog. */
  unlisted?: boolean;
}

/** The events of each dog of a team. A dog's events told on the way are in the order of time, what is told afterwards stands where it happened. */
export function eventsOf(team: Team, course: Course): Map<string, DogEvent[]> {
  const events = new Map<string, DogEvent[]>();
  const lineup: Lineup = new Map();
  let someoneOut = false;
  const inTime = [...team.placings].sort((a, b) => inOrder(a.told, b.told));
  const find = placesOf(team, course);
  for (const [item, placings] of grouped(inTime, ({ told }) => told.item)) {
    const full = toldInFull(lineup);
    const listed = new Set(lineup.keys());
    someoneOut ||= placings.some(({ told }) => told.entry.kind === 'drop');
    for (const { told, dogs } of placings)
      for (const dog of dogs) {
        const known = events.get(dog);
        const event = eventOf(told, find, {
          back: looksBack(team.phases, item),
          full,
          listed: listed.has(dog),
          known,
          someoneOut,
        });
        if (known) known.push(event);
        else events.set(dog, [event]);
        if (event.what !== 'out') lineup.set(dog, event.position ?? lineup.get(dog));
      }
  }
  for (const [dog, list] of events) events.set(dog, arranged(list));
  return events;
}

interface Around {
  back: boolean;
  /** The line-up had been told as a whole before this note, and this dog in it. */
  full: boolean;
  listed: boolean;
  known: readonly DogEvent[] | undefined;
  /** A dog has left the team, so that another may have come in for it. */
  someoneOut: boolean;
}

/** Where a told thing happened; a hitch in the note that tells the start is at the start. */
export type Find = (told: Told, hitched: boolean) => Place;

function eventOf(told: Told, find: Find, { back, full, listed, known, someoneOut }: Around): DogEvent {
  const { entry } = told;
  const common = { told, back };
  if (entry.kind === 'drop') {
    const manner = entry.manner === 'dropped' ? 'dropped' : 'loaded';
    const unlisted = full && !listed && !known ? { unlisted: true } : {};
    return { ...common, what: 'out', manner, place: find(told, false), ...unlisted };
  }
  if (entry.kind !== 'hitch' && entry.kind !== 'move') throw new TypeError(`no event of a ${entry.kind}`);
  const where = {
    ...(entry.position ? { position: entry.position } : {}),
    ...(entry.side ? { side: entry.side } : {}),
  };
  if (entry.kind === 'move') {
    const wasIn = !known && !full && !someoneOut ? { wasIn: true } : {};
    return { ...common, what: 'move', ...where, place: find(told, false), ...wasIn };
  }
  // Told for the first time, a dog stands there from the start, unless the line-up had been told as a whole without it.
  const place = back || (!known && !full) ? { metres: 0 } : find(told, true);
  // With nothing known of the way before, it is the start.
  return {
    ...common,
    what: 'hitch',
    ...where,
    place: place.metres === undefined ? { metres: 0, estimated: true } : place,
  };
}

/**
 * Where what is told happened: at its nearest mark in the note, else where the team was at that time; looking back, at the last
 * mark known. Before the team leaves all is at the start.
 */
export function placesOf(team: Team, course: Course): Find {
  const marks = grouped(course.marks, (mark) => mark.item);
  return (told, hitched) => {
    const { item } = told;
    if (phaseOf(team.phases, item) === 'before' || (hitched && item.start !== undefined)) return { metres: 0 };
    const here = marks.get(item) ?? spokenMarks(item);
    const mark = here.length > 1 ? markFor(told, here, item.told.filter(isEvent)) : here[0];
    if (mark) return { metres: within(mark.metres, course) };
    if (!looksBack(team.phases, item)) return whereAt(course, item.when.ms);
    const last = course.anchors.findLast((anchor) => anchor.mark && anchor.ms <= item.when.ms);
    return last ? { metres: last.metres, estimated: true } : {};
  };
}

/** What competes for the marks of a note. */
function isEvent({ entry }: Told): boolean {
  return holds(entry) && (entry.kind === 'hitch' || entry.kind === 'move' || entry.kind === 'drop');
}

/** The marks a note tells by its speaker's count, where the team has none of its own there ("Wren loaded Fern at mile 12"). */
function spokenMarks(item: Item): Mark[] {
  return heldIn(item, 'distance')
    .filter(({ entry }) => entry.measure === 'mark')
    .map((told) => ({ metres: metres(told.entry.value, told.entry.unit), told, item }));
}

/**
 * One dog's events in the order in which they happened. A line-up told afterwards stands first if none was told before; a change told
 * afterwards with its mark stands by its mark; two told in one note with their marks stand by them too.
 */
function arranged(events: readonly DogEvent[]): DogEvent[] {
  const row: DogEvent[] = [];
  const later: DogEvent[] = [];
  for (const event of events) {
    if (event.back) later.push(event);
    else insert(row, event, (one) => one.told.item === event.told.item && one.what !== 'hitch' && isTold(one));
  }
  for (const event of later) {
    if (event.what === 'hitch') {
      if (row.some((one) => one.what === 'hitch')) row.push(event);
      else row.unshift(event);
    } else insert(row, event, () => true);
  }
  return row;
}

const isTold = (event: DogEvent) => event.place.metres !== undefined && !event.place.estimated;

/** Puts an event whose mark is told before the last ones that `mayFollow` it and happened farther on; else at the end. */
function insert(row: DogEvent[], event: DogEvent, mayFollow: (one: DogEvent) => boolean): void {
  let at = row.length;
  if (event.what !== 'hitch' && isTold(event)) {
    const place = event.place.metres as number;
    while (at > 0) {
      const one = row[at - 1] as DogEvent;
      const farther = one.place.metres !== undefined && one.place.metres > place;
      if (!farther || !mayFollow(one)) break;
      at--;
    }
  }
  row.splice(at, 0, event);
}
