/** The kennel as the grammar looks it up: dogs by their names, places on the gangline. Built once a context. */
import type { Context, ContextDog, Place } from '../entry.ts';
import { tokenize } from './tokens.ts';

export interface Roster {
  dogs: readonly ContextDog[];
  /** Call name as the roster spells it → the dog. */
  byName: ReadonlyMap<string, ContextDog>;
  /** First word of a name, alias or heard form → its forms, longest first. */
  forms: ReadonlyMap<string, { words: string[]; dog: string }[]>;
  /** First names of people, lower case → the name as written. */
  people: ReadonlyMap<string, string>;
  lineup: readonly Place[];
  sexOf(dog: string): 'F' | 'M' | undefined;
}

const cache = new WeakMap<Context, Roster>();

/** Looks the kennel up, once for each context object. */
export function rosterOf(context: Context): Roster {
  let roster = cache.get(context);
  if (!roster) {
    roster = build(context);
    cache.set(context, roster);
  }
  return roster;
}

function build(context: Context): Roster {
  const dogs = context.dogs ?? [];
  const byName = new Map(dogs.map((d) => [d.name, d]));
  const forms = new Map<string, { words: string[]; dog: string }[]>();
  for (const d of dogs) {
    for (const form of [d.name, ...(d.aliases ?? []), ...(d.heard ?? [])]) {
      const words = tokenize(form).map((t) => t.low);
      const first = words[0];
      if (!first) continue;
      const list = forms.get(first) ?? [];
      list.push({ words, dog: d.name });
      list.sort((a, b) => b.words.length - a.words.length);
      forms.set(first, list);
    }
  }
  const people = new Map<string, string>();
  for (const p of context.people ?? []) {
    const words = tokenize(p).map((t) => t.low);
    people.set(words.join(' '), p);
    if (words[0] && !people.has(words[0])) people.set(words[0], p);
  }
  const sexes = new Map(dogs.map((d) => [d.name, d.sex]));
  return { dogs, byName, forms, people, lineup: context.lineup ?? [], sexOf: (d) => sexes.get(d) };
}
