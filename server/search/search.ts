/** A search answered: what was understood, the hits as a time line with what lies between them, and the notes. */
import type { Entry } from '../../grammar/entry.ts';
import type { Dog } from '../model.ts';
import { joinedSpans } from '../notes/spans.ts';
import { find, type Ground, type RawHit, runsOfNote } from './find.ts';
import { marksOf, wordsOf } from './fulltext.ts';
import { type Between, between } from './miles.ts';
import { namesOf } from './names.ts';
import type { Indexed } from './postings.ts';
import type { Query } from './query.ts';

/** From the hit before (the next older one of the same dog) to this one. */
export interface Since extends Between {
  dog: string;
}

export interface Hit {
  /** Id of the entry, and of its note. */
  id: string;
  note: string;
  at: string;
  day: string;
  season: string;
  /** Id of the run that holds the note. */
  run?: string;
  /** The entry, its dogs by their names of now. */
  entry: Entry;
  /** Waits for review: it counts for nothing yet. */
  unreviewed: boolean;
  since: Since[];
}

export interface NoteHit {
  id: string;
  text: string;
  at: string;
  day: string;
  season: string;
  by?: string;
  run?: string;
  aside: boolean;
  /** Places of the words that were found, UTF-16 units, none overlapping. */
  marks: [number, number][];
}

export interface Tally {
  value: string;
  hits: number;
}

export interface Result {
  hits: Hit[];
  hitsInAll: number;
  notes: NoteHit[];
  notesInAll: number;
  sortedOut: number;
  unreviewed: number;
  /** How many hits each dog and each season has, most first. */
  dogs: Tally[];
  seasons: Tally[];
  leftOut?: string;
}

export interface Page {
  limit: number;
  offset: number;
}

/** Dogs of one entry whose time between is told; of a whole team it would say nothing. */
const DOGS_TOLD = 3;

/** Searches and lays out one page of it. */
export function search(query: Query, ground: Ground, seasonNames: readonly string[], page: Page): Result {
  const raw = find(query, ground);
  const end = page.offset + page.limit;
  const hits = raw.hits.slice(page.offset, end);
  const since = sinceOf(raw.hits, query, ground, seasonNames, page);
  const shown = raw.hits.length ? [...new Set(hits.map((hit) => hit.at))] : raw.notes.slice(page.offset, end);
  const spans = new Map<Indexed, [number, number][]>();
  for (const hit of hits) {
    const { span } = entryAt(hit).entry;
    if (span) spans.set(hit.at, [...(spans.get(hit.at) ?? []), span]);
  }
  return {
    hits: hits.map((hit, i) => hitOf(hit, since[i] ?? [], ground)),
    hitsInAll: raw.hits.length,
    notes: shown.map((at) => noteOf(at, spans.get(at) ?? [], raw.terms.get(at.note.id) ?? [], query, ground)),
    notesInAll: raw.notes.length,
    sortedOut: raw.sortedOut,
    unreviewed: raw.hits.reduce((n, hit) => n + (entryAt(hit).state === 'proposed' ? 1 : 0), 0),
    dogs: tally(raw.hits.flatMap((hit) => hit.dogs.filter((d) => d !== '*' && (query.dogs?.includes(d) ?? true)))),
    seasons: tally(raw.hits.map((hit) => hit.at.season)),
    ...(raw.leftOut ? { leftOut: raw.leftOut } : {}),
  };
}

const entryAt = (hit: RawHit) => hit.at.entries[hit.index] as Indexed['entries'][number];

function hitOf(hit: RawHit, since: Since[], ground: Ground): Hit {
  const { at } = hit;
  const { id, entry, state } = entryAt(hit);
  const run = runsOfNote(at, ground)[0]?.id;
  return {
    id,
    note: at.note.id,
    at: at.note.at,
    day: at.day,
    season: at.season,
    ...(run ? { run } : {}),
    entry: { ...entry, dogs: [...hit.dogs] },
    unreviewed: state === 'proposed',
    since,
  };
}

function noteOf(
  at: Indexed,
  spans: readonly [number, number][],
  terms: readonly string[],
  query: Query,
  ground: Ground,
): NoteHit {
  const { note } = at;
  const run = runsOfNote(at, ground)[0]?.id;
  const marks = [...spans, ...marksOf(note.text, terms), ...nameMarks(note.text, query, ground.dogs)];
  return {
    id: note.id,
    text: note.text,
    at: note.at,
    day: at.day,
    season: at.season,
    ...(note.by ? { by: note.by } : {}),
    ...(run ? { run } : {}),
    aside: note.aside,
    marks: joinedSpans(marks, note.text.length),
  };
}

/** Where the dogs that were asked for are named. */
function nameMarks(text: string, query: Query, dogs: readonly Dog[]): [number, number][] {
  if (!query.dogs?.length) return [];
  const names = new Set(query.dogs.flatMap((dog) => namesOf(dogs, dog)).flatMap((n) => wordsOf(n).map((w) => w.word)));
  return marksOf(text, names);
}

function tally(values: readonly string[]): Tally[] {
  const counts = new Map<string, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts]
    .map(([value, hits]) => ({ value, hits }))
    .sort((a, b) => b.hits - a.hits || (a.value < b.value ? -1 : 1));
}

/** For each hit of the page what lies between it and the next older hit of each of its dogs; nothing on the same day. */
function sinceOf(
  all: readonly RawHit[],
  query: Query,
  ground: Ground,
  seasonNames: readonly string[],
  { limit, offset }: Page,
): Since[][] {
  const out: Since[][] = [];
  /** The hit on the page that waits for its dog's older one. */
  const open = new Map<string, RawHit & { into: Since[] }>();
  const toldOf = (hit: RawHit) => {
    const dogs = hit.dogs.filter((d) => d !== '*' && (query.dogs?.includes(d) ?? true));
    return query.dogs?.length || dogs.length <= DOGS_TOLD ? dogs : [];
  };
  for (let i = offset; i < all.length && (i < offset + limit || open.size > 0); i++) {
    const hit = all[i] as RawHit;
    for (const dog of hit.dogs) {
      const newer = open.get(dog);
      if (!newer) continue;
      open.delete(dog);
      const { day } = newer.at;
      if (hit.at.day >= day) continue;
      const seasons = seasonNames
        .filter((name) => name >= hit.at.season && name <= newer.at.season)
        .map((name) => ground.runsOf(name).runs);
      newer.into.push({ dog, ...between(seasons, dog, hit.at.day, day) });
    }
    if (i >= offset + limit) continue;
    const into: Since[] = [];
    out.push(into);
    for (const dog of toldOf(hit)) open.set(dog, { ...hit, into });
  }
  return out;
}
