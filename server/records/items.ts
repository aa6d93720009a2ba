/** Notes made ready for counting: in the order of time, with their accepted entries under the dogs' names of now. */
import type { Assertion, Entry, EntryOf, Kind } from '../../grammar/entry.ts';
import type { Dog, Note } from '../model.ts';
import { fold } from '../notes/names.ts';
import { currentName } from './names.ts';
import { startAndFinish, type When, when } from './time.ts';
import type { Said } from './types.ts';

/** An accepted entry in its note. */
export interface Told<E extends Entry = Entry> extends Said<E> {
  item: Item;
  /** Names of now; `['*']` for the whole team. */
  dogs: string[];
  /** Place in the note's reading order. */
  order: number;
  /** The entry as records carry it, once one does: dogs of one entry share it. */
  kept?: Said<E>;
}

export interface Item {
  note: Note;
  when: When;
  /** Who spoke, folded for comparison; '' for the musher's own phone. */
  by: string;
  /** Accepted entries in the order of the text; planned ones are not among them. */
  told: Told[];
  /** Those held to be so, by kind. */
  held: Map<Kind, Told[]>;
  /** Instants of the clocks told, ms. */
  start?: number;
  finish?: number;
  /** When what is told here began, as far as it says: a start, else a finish that lies before the telling, else the telling. */
  begin: number;
}

/** Whether an entry is held to be so: told as present or thought possible. */
export function holds(entry: { assertion?: Assertion | undefined }): boolean {
  const assertion = entry.assertion ?? 'present';
  return assertion === 'present' || assertion === 'possible';
}

/** The accepted entries of one kind that are held to be so. */
export function of<K extends Kind>(told: readonly Told[], kind: K): Told<EntryOf<K>>[] {
  return told.filter((one): one is Told<EntryOf<K>> => one.entry.kind === kind && holds(one.entry));
}

/** Two people are the same whatever the letter case. */
export function person(name: string | undefined): string {
  return name === undefined ? '' : fold(name);
}

/** Order of time; notes of one instant by id, so that the order in which they arrived never matters. */
export function byTime(a: Item, b: Item): number {
  return a.when.ms - b.when.ms || (a.note.id < b.note.id ? -1 : a.note.id > b.note.id ? 1 : 0);
}

/** Notes that count (those set aside do not), ready and in the order of time. A note kept twice is counted once. */
export function itemsOf(notes: readonly Note[], dogs: Dog[]): Item[] {
  const names = new Map<string, string>();
  const nameOf = (name: string) => {
    let now = names.get(name);
    if (now === undefined) {
      now = name === '*' ? name : currentName(dogs, name);
      names.set(name, now);
    }
    return now;
  };
  const seen = new Set<string>();
  const items: Item[] = [];
  for (const note of notes) {
    if (note.aside || seen.has(note.id)) continue;
    seen.add(note.id);
    items.push(itemOf(note, nameOf));
  }
  return items.sort(byTime);
}

function itemOf(note: Note, nameOf: (name: string) => string): Item {
  const item: Item = { note, when: when(note.at), by: person(note.by), told: [], held: new Map(), begin: 0 };
  for (const { entry, id, state } of note.entries) {
    if (state !== 'accepted' || entry.assertion === 'planned') continue;
    const dogs: string[] = [];
    for (const name of entry.dogs) {
      const now = nameOf(name);
      if (!dogs.includes(now)) dogs.push(now);
    }
    item.told.push({ entry, id, note: note.id, at: note.at, item, dogs, order: 0 });
  }
  // An entry that a person added has no words of its own in the text; it stands behind those that have.
  const at = (told: Told) => told.entry.span?.[0] ?? Number.MAX_SAFE_INTEGER;
  item.told.sort((a, b) => at(a) - at(b));
  const clocks: { start?: string; finish?: string } = {};
  for (const [order, told] of item.told.entries()) {
    told.order = order;
    if (!holds(told.entry)) continue;
    const list = item.held.get(told.entry.kind);
    if (list) list.push(told);
    else item.held.set(told.entry.kind, [told]);
    const { entry } = told;
    if (entry.kind === 'clock' && (entry.event === 'start' || entry.event === 'finish'))
      clocks[entry.event] = entry.time;
  }
  Object.assign(item, startAndFinish(item.when, clocks.start, clocks.finish));
  item.begin = Math.min(item.when.ms, item.start ?? item.when.ms, item.finish ?? item.when.ms);
  return item;
}

const NONE: readonly never[] = [];

/** The entries of one kind in a note that are held to be so. */
export function heldIn<K extends Kind>(item: Item, kind: K): readonly Told<EntryOf<K>>[] {
  return (item.held.get(kind) as Told<EntryOf<K>>[] | undefined) ?? NONE;
}

/** The entry as a record carries it. */
export function said<E extends Entry>(told: Told<E>): Said<E> {
  told.kept ??= { entry: told.entry, id: told.id, note: told.note, at: told.at };
  return told.kept;
}

/** Sorted into lists by a key, in the order in which they come. */
export function grouped<K, T>(all: Iterable<T>, key: (one: T) => K): Map<K, T[]> {
  const lists = new Map<K, T[]>();
  for (const one of all) {
    const list = lists.get(key(one));
    if (list) list.push(one);
    else lists.set(key(one), [one]);
  }
  return lists;
}
