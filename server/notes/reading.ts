/** Reading a note with the grammar: what the grammar is told, and what is kept of its answer. A note is never lost here. */
import { isDeepStrictEqual } from 'node:util';
import { type Context, type ContextDog, type Entry, entrySchema, type Place } from '../../grammar/entry.ts';
import type { Reading } from '../../grammar/parse.ts';
import type { Dog, Kennel, Note, ReviewedEntry } from '../model.ts';
import { fold } from './names.ts';

/** The grammar's way in: text and context, entries and unknown names. */
export type Read = (text: string, context: Context) => Reading;

const contextDogs = new WeakMap<readonly Dog[], ContextDog[]>();

/** The roster as the grammar knows it; a former name is one more name of the dog. One object per roster. */
function dogsFor(dogs: readonly Dog[]): ContextDog[] {
  let known = contextDogs.get(dogs);
  if (!known) {
    known = dogs.map((dog) => ({
      name: dog.name,
      sex: dog.sex,
      aliases: onceBeside(dog.name, [...dog.aliases, ...dog.formerNames]),
      heard: dog.heard,
    }));
    contextDogs.set(dogs, known);
  }
  return known;
}

/** The names, each once, without the one they stand beside. */
function onceBeside(name: string, names: string[]): string[] {
  const seen = new Set([fold(name)]);
  return names.filter((other) => !seen.has(fold(other)) && seen.add(fold(other)));
}

/** What the grammar is told for a note spoken at this time (ISO 8601 with offset), with this line-up on the gangline. */
export function contextOf(kennel: Kennel, lineup: Place[], at: string): Context {
  return {
    dogs: dogsFor(kennel.dogs),
    people: kennel.people.filter((person) => !person.retired).map((person) => person.name),
    lineup,
    units: kennel.settings.units,
    at: at.slice(0, 16),
  };
}

/**
 * Reads a text. Whatever the grammar does, every note gets an answer: a reading that fails gives one remark that holds
 * the whole text, and an entry that breaks the contract becomes a remark of its words.
 */
export function readSafely(read: Read, text: string, context: Context): Reading {
  try {
    const { entries, unknownNames } = read(text, context);
    return { entries: entries.map((entry) => sound(entry, text)), unknownNames };
  } catch {
    const because = 'the reading of this note failed; its words are kept';
    const remark: Entry = {
      kind: 'remark',
      dogs: [],
      text,
      span: [0, text.length],
      rule: 'not read',
      doubt: 'much',
      because,
    };
    return { entries: [remark], unknownNames: [] };
  }
}

function sound(entry: Entry, text: string): Entry {
  const parsed = entrySchema.safeParse(entry);
  const inside = (span: [number, number]) => span[0] <= span[1] && span[1] <= text.length;
  if (parsed.success && (!parsed.data.span || inside(parsed.data.span))) return spare(parsed.data);
  const given = Array.isArray(entry?.span) ? entry.span : undefined;
  const span: [number, number] = given && inside(given) && given[0] < given[1] ? given : [0, text.length];
  const because = 'what was read here was not a whole entry; its words are kept';
  return { kind: 'remark', dogs: [], text: text.slice(...span), span, rule: 'not read', doubt: 'much', because };
}

/** Without fields that hold nothing, which a file does not keep either. */
function spare(entry: Entry): Entry {
  return Object.fromEntries(Object.entries(entry).filter(([, value]) => value !== undefined)) as Entry;
}

/** The note with a reading as its proposed entries. Entries read as before keep their ids; nothing new, the same note. */
export function withReading(note: Note, reading: Reading, newId: () => string): Note {
  const old = [...note.entries];
  const entries = reading.entries.map((entry): ReviewedEntry => {
    const same = old.findIndex((e) => isDeepStrictEqual(e.entry, entry));
    const id = same < 0 ? newId() : (old.splice(same, 1)[0] as ReviewedEntry).id;
    return { id, entry, from: 'read', state: 'proposed' };
  });
  const unknownNames = reading.unknownNames.map(({ name, span }) => ({ name, span }));
  if (isDeepStrictEqual(entries, note.entries) && isDeepStrictEqual(unknownNames, note.unknownNames)) return note;
  return { ...note, entries, unknownNames };
}
