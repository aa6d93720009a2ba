/** Which notes tell what: for each dog, kind, sign, part and so on the notes that hold it. Kept up to date note by note. */
import type { Entry } from '../../grammar/entry.ts';
import type { Note, ReviewedEntry } from '../model.ts';
import { fold } from '../notes/names.ts';
import { type Asking, asksOfTheRun, partsMeant } from './match.ts';

/** A note as the index holds it. */
export interface Indexed {
  note: Note;
  season: string;
  /** Milliseconds since 1970. */
  ms: number;
  /** Its local day. */
  day: string;
  /** The sets it is in. */
  sets: Set<Indexed>[];
  /** The entries that are looked at. */
  entries: readonly ReviewedEntry[];
}

const NONE: readonly ReviewedEntry[] = [];

/** Entries that are looked at: not those a person removed. A note put aside has none. */
export function entriesOf(note: Note): readonly ReviewedEntry[] {
  if (note.aside) return NONE;
  return note.entries.some((e) => e.state === 'removed')
    ? note.entries.filter((e) => e.state !== 'removed')
    : note.entries;
}

function keysOf(entries: readonly ReviewedEntry[]): Set<string> {
  const keys = new Set<string>();
  for (const { entry } of entries) {
    keys.add(`kind ${entry.kind}`);
    for (const dog of entry.dogs) keys.add(`dog ${fold(dog)}`);
    if (!entry.dogs.length) keys.add('dog -');
    const value = valueKey(entry);
    if (value) keys.add(value);
    if ('part' in entry && entry.part) keys.add(`part ${entry.part}`);
  }
  return keys;
}

function valueKey(e: Entry): string | undefined {
  switch (e.kind) {
    case 'finding':
      return `sign ${e.sign}`;
    case 'care':
      return `act ${e.act}`;
    case 'booties':
      return `state ${e.state}`;
    case 'intake':
      return `took ${e.took}`;
    default:
      return undefined;
  }
}

/**
 * A map or a set that outgrows its room is laid out anew in one go, which takes 40 ms where it holds 65,536 things, and
 * whoever wants to leave a note meanwhile waits. So both are kept in parts, none of which holds more than a few thousand.
 */
const PARTS = 64;
const MOST = 8_192;

export class Postings {
  readonly #byKey = new Map<string, Set<Indexed>[]>();
  readonly #byId = Array.from({ length: PARTS }, () => new Map<string, Indexed>());

  get size(): number {
    return this.#byId.reduce((n, part) => n + part.size, 0);
  }

  get(id: string): Indexed | undefined {
    return this.#part(id).get(id);
  }

  /** Every note. */
  *all(): Generator<Indexed> {
    for (const part of this.#byId) yield* part.values();
  }

  /** The part an id belongs to: by its last two letters, which differ in every kind of UUID. */
  #part(id: string): Map<string, Indexed> {
    const hash = id.charCodeAt(id.length - 1) * 31 + id.charCodeAt(id.length - 2);
    return this.#byId[(hash || 0) % PARTS] as Map<string, Indexed>;
  }

  *#of(key: string): Generator<Indexed> {
    for (const part of this.#byKey.get(key) ?? []) yield* part;
  }

  #count(key: string): number {
    return (this.#byKey.get(key) ?? []).reduce((n, part) => n + part.size, 0);
  }

  put(note: Note, season: string): void {
    this.drop(note.id);
    const entries = entriesOf(note);
    const day = note.at.slice(0, 10);
    const one: Indexed = { note, season, ms: Date.parse(note.at), day, sets: [], entries };
    this.#part(note.id).set(note.id, one);
    for (const key of keysOf(entries)) {
      const parts = this.#byKey.get(key) ?? [];
      if (parts.length === 0) this.#byKey.set(key, parts);
      let set = parts.find((part) => part.size < MOST);
      if (!set) {
        set = new Set();
        parts.push(set);
      }
      set.add(one);
      one.sets.push(set);
    }
  }

  drop(id: string): void {
    const one = this.get(id);
    if (!one) return;
    this.#part(id).delete(id);
    for (const set of one.sets) set.delete(one);
  }

  /**
   * Notes that may hold an entry that satisfies the query, and surely all that do: the smallest of the sets it names.
   * `names` gives every name a dog has or had.
   */
  candidates({ query, matters }: Asking, names: (dog: string) => readonly string[]): Iterable<Indexed> {
    const choices: string[][] = [];
    const keys = (prefix: string, values: readonly string[] | undefined, more: string[] = []) => {
      if (values?.length) choices.push([...values.map((v) => `${prefix} ${v}`), ...more]);
    };
    if (query.dogs?.length)
      choices.push([
        ...query.dogs.flatMap(names).map((name) => `dog ${fold(name)}`),
        'dog *',
        ...(asksOfTheRun(query) ? ['dog -'] : []),
      ]);
    // "Fine now" denies every sign, so it may be one that is asked for.
    keys('sign', query.signs, ['sign any']);
    keys('act', query.acts);
    keys('state', query.states);
    keys('took', query.took);
    for (const m of matters) keys('kind', m.kinds);
    // Booties have no part, but may be what is told of a foot; every other place on a body is told by its part.
    if (query.parts?.length && (query.signs?.length || query.acts?.length || !query.parts.includes('foot')))
      keys('part', [...partsMeant(query.parts)]);
    let best: string[] | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const choice of choices) {
      const size = choice.reduce((n, key) => n + this.#count(key), 0);
      if (size < least) {
        least = size;
        best = choice;
      }
    }
    if (!best) return this.all();
    if (best.length === 1) return this.#of(best[0] as string);
    const found = new Set<Indexed>();
    for (const key of best) for (const one of this.#of(key)) found.add(one);
    return found;
  }

  /** Every key with the ids of its notes, for comparing two indexes. */
  contents(): Map<string, string[]> {
    const told = [...this.#byKey.keys()].filter((key) => this.#count(key) > 0);
    return new Map(told.map((key) => [key, [...this.#of(key)].map((one) => one.note.id).sort()]));
  }
}
