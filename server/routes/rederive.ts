/**
 * Runs computed anew around what has changed, and taken over where nothing has: after one act of review in a season of
 * 10,000 notes only the days around that note are gone through again.
 *
 * The days around: a run goes on over midnight at most to the next day, so what changes in a note can move the borders of
 * the runs next to it, and theirs in turn. Three days on either side, together with every run and every moved note that
 * reaches into them, give those borders room; a test holds the outcome against computing everything.
 */
import { isDeepStrictEqual } from 'node:util';
import type { Dog, Note, Season, Settings } from '../model.ts';
import { dayOf } from '../notes/state.ts';
import { runsOf } from '../records/index.ts';
import type { RunRecord, YardRecord } from '../records/types.ts';

/** Days on either side of a changed note that are gone through again. */
const MARGIN = 3;
/** More changed notes than this, and everything is computed. */
const FEW = 40;

export interface Computed {
  runs: RunRecord[];
  yard: YardRecord[];
}

/** All of a season's runs, in the order of their first notes. */
export function deriveAll(season: Season, dogs: Dog[], settings: Settings): Computed {
  const { runs, yard } = runsOf(season, dogs, settings);
  return { runs: inOrder(runs, new Map(season.notes.map((note) => [note.id, note]))), yard };
}

/**
 * What `deriveAll` gives for `after`, from what it gave for `before`, with the same dogs and settings; undefined where too much
 * has changed for that.
 */
export function rederive(
  before: Season,
  computed: Computed,
  after: Season,
  dogs: Dog[],
  settings: Settings,
): Computed | undefined {
  if (before.runs !== after.runs) return undefined;
  const changed = changedNotes(before, after);
  if (changed.length > FEW) return undefined;
  if (changed.length === 0) return computed;
  const notes = new Map(after.notes.map((note) => [note.id, note]));
  const days = daysAround(changed, computed.runs, after, notes);
  const inside = (id: string) => days.has(dayOf(notes.get(id)?.at ?? ''));
  const part = runsOf({ ...after, notes: after.notes.filter((note) => days.has(dayOf(note.at))) }, dogs, settings);
  const others = computed.runs.filter((run) => !run.notes.some(inside));
  const runs = new Map(computed.runs.map((run) => [run.id, run]));
  const yard = new Map(computed.yard.map((record) => [record.day, record]));
  return {
    runs: inOrder([...others, ...part.runs.map((run) => same(runs.get(run.id), run))], notes),
    yard: [
      ...computed.yard.filter(({ day }) => !days.has(day)),
      ...part.yard.map((record) => same(yard.get(record.day), record)),
    ].sort((a, b) => (a.day < b.day ? -1 : 1)),
  };
}

/** The object there was, where the new one says the same: what is worked out of a run holds as long as it is that object. */
function same<T>(before: T | undefined, now: T): T {
  return before !== undefined && isDeepStrictEqual(before, now) ? before : now;
}

/** Notes that are new or other objects. */
function changedNotes(before: Season, after: Season): Note[] {
  const old = new Set(before.notes);
  const changed = after.notes.filter((note) => !old.has(note));
  // A note never goes; should one have, everything is computed.
  return before.notes.length > after.notes.length ? [...after.notes] : changed;
}

/** The local days around the changed notes, with every run and every moved note that reaches into them. */
function daysAround(
  changed: readonly Note[],
  runs: readonly RunRecord[],
  { runs: choices }: Season,
  notes: ReadonlyMap<string, Note>,
): Set<string> {
  const days = new Set<string>();
  const add = (note: Note) => {
    for (let i = -MARGIN; i <= MARGIN; i++) days.add(shift(dayOf(note.at), i));
  };
  for (const note of changed) add(note);
  // Runs of more than one day, and moved notes: the only things that tie days to each other.
  const dayOfNote = (id: string) => dayOf(notes.get(id)?.at ?? '');
  const tied = [...runs.map((run) => run.notes), ...choices.moved.map(({ note, toRunOf }) => [note, toRunOf])]
    .filter((ids) => ids.some((id) => dayOfNote(id) !== dayOfNote(ids[0] as string)))
    .map((ids) => ids.flatMap((id) => notes.get(id) ?? []));
  for (let grown = true; grown; ) {
    grown = false;
    for (const list of tied) {
      const within = list.filter((note) => days.has(dayOf(note.at)));
      if (within.length === 0 || within.length === list.length) continue;
      for (const note of list) add(note);
      grown = true;
    }
  }
  return days;
}

function shift(day: string, by: number): string {
  const at = new Date(`${day}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() + by);
  return at.toISOString().slice(0, 10);
}

/** By first note; of the teams of one note the speaker's own comes first. */
function inOrder(runs: readonly RunRecord[], notes: ReadonlyMap<string, Note>): RunRecord[] {
  return runs
    .map((run) => {
      const { id, at } = notes.get(run.notes[0] ?? '') ?? { id: run.id, at: run.day };
      return { run, id, ms: Date.parse(at) };
    })
    .sort((a, b) => a.ms - b.ms || compare(a.id, b.id) || compare(a.run.id, b.run.id))
    .map(({ run }) => run);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
