/** A query over the index: hits in the order of time, newest first, and the notes they stand in. */
import type { Dog } from '../model.ts';
import type { RunRecord } from '../records/types.ts';
import { aroundNote } from './around.ts';
import type { Found, FullText } from './fulltext.ts';
import { type Around, type Asking, ask, type Named, type Told, tellsAny, verdict } from './match.ts';
import { nameNow, namesOf } from './names.ts';
import type { Indexed, Postings } from './postings.ts';
import { asksNothing, type Query } from './query.ts';

/** What a search looks in. */
export interface Ground {
  postings: Postings;
  words: FullText;
  dogs: Dog[];
  /** A season's runs, in the order of time, and the ids of the runs that hold a note. */
  runsOf: (season: string) => { runs: readonly RunRecord[]; ofNote: ReadonlyMap<string, readonly string[]> };
}

export interface RawHit {
  at: Indexed;
  /** Place of the entry in the note. */
  index: number;
  dogs: readonly string[];
}

export interface RawResult {
  /** Newest first; entries of one note in the order of the note. */
  hits: RawHit[];
  /** Newest first. With nothing asked of entries, the notes of the words and days. */
  notes: Indexed[];
  /** How many entries were left out because of how they were told (see `show`). */
  sortedOut: number;
  /** Forms of the words that were found, by note. */
  terms: Found;
  /** Words that stand in no note that has the rest: the result is without them. */
  leftOut?: string;
}

/** Searches; everything it gives satisfies the query, and nothing in the index that does is left out. */
export function find(query: Query, ground: Ground): RawResult {
  const asking = ask(query);
  const words = query.words?.split(/\s+/).filter(Boolean) ?? [];
  if (!asking.ofEntries) return findNotes(query, words, ground);
  const found: Indexed[] = [];
  for (const at of ground.postings.candidates(asking, (dog) => namesOf(ground.dogs, dog)))
    if (inRange(at, query, ground)) found.push(at);
  const ids = new Set(words.length ? found.map((at) => at.note.id) : []);
  const terms: Found = words.length ? ground.words.find(words, (id) => ids.has(id)) : new Map();
  const asked = found.filter((at) => !words.length || terms.has(at.note.id));
  const byNote = new Map<Indexed, RawHit[]>();
  let sortedOut = 0;
  for (const at of asked) {
    const one = askNote(asking, at, ground);
    sortedOut += one.sortedOut;
    if (one.hits.length) byNote.set(at, one.hits);
  }
  const notes = newestFirst([...byNote.keys()]);
  const hits = notes.flatMap((at) => byNote.get(at) as RawHit[]);
  if (words.length && !hits.length && !sortedOut) {
    const { words: leftOut, ...rest } = query;
    return { ...find(rest, ground), ...(leftOut ? { leftOut } : {}) };
  }
  return { hits, notes, sortedOut, terms };
}

function findNotes(query: Query, words: readonly string[], ground: Ground): RawResult {
  if (asksNothing(query)) return { hits: [], notes: [], sortedOut: 0, terms: new Map() };
  const terms: Found = words.length ? ground.words.find(words) : new Map();
  const notes: Indexed[] = [];
  const pool = words.length ? [...terms.keys()].map((id) => ground.postings.get(id)) : ground.postings.all();
  for (const at of pool) if (at && inRange(at, query, ground)) notes.push(at);
  return { hits: [], notes: newestFirst(notes), sortedOut: 0, terms };
}

function inRange(at: Indexed, q: Query, ground: Ground): boolean {
  if (q.from !== undefined && at.day < q.from) return false;
  if (q.to !== undefined && at.day > q.to) return false;
  if (q.season !== undefined && at.season !== q.season) return false;
  return q.run === undefined || (ground.runsOf(at.season).ofNote.get(at.note.id) ?? []).includes(q.run);
}

/** Notes of one moment by id, so that their order never hangs on how the index was built. */
function newestFirst(notes: Indexed[]): Indexed[] {
  return notes.sort((a, b) => b.ms - a.ms || (a.note.id < b.note.id ? 1 : a.note.id > b.note.id ? -1 : 0));
}

const runMaps = new WeakMap<readonly RunRecord[], Map<string, RunRecord>>();

/** The runs that hold a note. */
export function runsOfNote(at: Indexed, ground: Ground): RunRecord[] {
  const { runs, ofNote } = ground.runsOf(at.season);
  let byId = runMaps.get(runs);
  if (!byId) {
    byId = new Map(runs.map((run) => [run.id, run]));
    runMaps.set(runs, byId);
  }
  return (ofNote.get(at.note.id) ?? []).flatMap((id) => byId.get(id) ?? []);
}

const NO_HITS: { hits: RawHit[]; sortedOut: number } = { hits: [], sortedOut: 0 };

/** A note as `verdict` asks for it. A class, for it is made for each note of a search. */
class ToldIn implements Told {
  #named: Named[] | undefined;
  #around: Around | undefined;

  constructor(
    readonly at: Indexed,
    readonly ground: Ground,
  ) {}

  all(): readonly Named[] {
    this.#named ??= this.at.entries.map(({ entry }) => named(entry, this.ground));
    return this.#named;
  }

  around(): Around {
    this.#around ??= aroundNote(this.at.entries, runsOfNote(this.at, this.ground), this.ground.dogs);
    return this.#around;
  }
}

function named(entry: Named['entry'], ground: Ground): Named {
  return { entry, dogs: entry.dogs.map((dog) => nameNow(ground.dogs, dog)) };
}

/** The entries of a note that satisfy the query. */
export function askNote(asking: Asking, at: Indexed, ground: Ground): { hits: RawHit[]; sortedOut: number } {
  let found: { hits: RawHit[]; sortedOut: number } | undefined;
  let note: ToldIn | undefined;
  for (let index = 0; index < at.entries.length; index++) {
    const { entry } = at.entries[index] as (typeof at.entries)[number];
    if (!tellsAny(asking, entry)) continue;
    note ??= new ToldIn(at, ground);
    const one = named(entry, ground);
    const is = verdict(asking, one, note);
    if (is === 'no') continue;
    found ??= { hits: [], sortedOut: 0 };
    if (is === 'hit') found.hits.push({ at, index, dogs: one.dogs });
    else found.sortedOut++;
  }
  return found ?? NO_HITS;
}
