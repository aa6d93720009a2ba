/**
 * Reading again. A note that no person has reviewed is read anew when what the grammar is told has changed: the roster,
 * the people, the units, or the line-up that the day's earlier notes left on the gangline. Reviewed notes stay as they are.
 */
import type { Place } from '../../grammar/entry.ts';
import type { Dog, Kennel, Note, Season } from '../model.ts';
import { contextOf, type Read, readSafely, withReading } from './reading.ts';
import { byTime, dayOf, untouched } from './state.ts';

/** Who stands on the gangline at a time, from the day's earlier notes. */
export type LineupBefore = (notes: Note[], at: string, dogs: Dog[], by?: string) => Place[];

/** What reading needs beside the notes. */
export interface Reader {
  read: Read;
  lineupBefore: LineupBefore;
  newId: () => string;
}

/** What a note was last read with; while that is the same, reading it again would give the same. */
const readWith = new WeakMap<Note, { kennel: Kennel; lineup: string }>();

/**
 * One day's notes, in the order of time, with the untouched ones read again. Notes before `from` (ms since 1970) are left
 * as they are. Notes whose reading gives nothing new keep their identity.
 */
export function readDay(day: readonly Note[], kennel: Kennel, reader: Reader, from = Number.NEGATIVE_INFINITY): Note[] {
  const done: Note[] = [];
  for (const note of [...day].sort(byTime)) {
    if (Date.parse(note.at) < from || !untouched(note)) {
      done.push(note);
      continue;
    }
    const lineup = reader.lineupBefore(done, note.at, kennel.dogs, note.by);
    const key = JSON.stringify(lineup);
    const last = readWith.get(note);
    const known = last && sameWords(last.kennel, kennel) && last.lineup === key;
    const next = known
      ? note
      : withReading(note, readSafely(reader.read, note.text, contextOf(kennel, lineup, note.at)), reader.newId);
    readWith.set(next, { kennel, lineup: key });
    done.push(next);
  }
  return done;
}

/** Whether two kennels tell the grammar the same. */
function sameWords(a: Kennel, b: Kennel): boolean {
  return a === b || (a.dogs === b.dogs && a.people === b.people && a.settings.units === b.settings.units);
}

/** The season's notes by local day. */
export function byDay(notes: readonly Note[]): Map<string, Note[]> {
  const days = new Map<string, Note[]>();
  for (const note of notes) {
    const day = days.get(dayOf(note.at));
    if (day) day.push(note);
    else days.set(dayOf(note.at), [note]);
  }
  return days;
}

/**
 * The season with some days read again; `from` tells for each day the time from which on (ms since 1970). Gives back the
 * ids of the notes whose reading came out differently; where there are none, the same season.
 */
export function readDays(
  season: Season,
  from: ReadonlyMap<string, number>,
  kennel: Kennel,
  reader: Reader,
): [Season, string[]] {
  const changed = new Map<string, Note>();
  const wanted = season.notes.filter((note) => from.has(dayOf(note.at)));
  const before = new Map(wanted.map((note) => [note.id, note]));
  for (const [day, notes] of byDay(wanted))
    for (const note of readDay(notes, kennel, reader, from.get(day)))
      if (before.get(note.id) !== note) changed.set(note.id, note);
  return [replaceNotes(season, changed), [...changed.keys()]];
}

/** The season with these notes in place of those of the same ids. */
export function replaceNotes(season: Season, changed: ReadonlyMap<string, Note>): Season {
  if (changed.size === 0) return season;
  return { ...season, notes: season.notes.map((note) => changed.get(note.id) ?? note) };
}
