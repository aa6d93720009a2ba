/** Names of dogs, as fast as a search over every entry needs them. */
import type { Dog } from '../model.ts';
import { currentName } from '../records/index.ts';

const kept = new WeakMap<readonly Dog[], Map<string, string>>();

/** The name of now for any name a dog has or had; remembered for each roster. */
export function nameNow(dogs: readonly Dog[], name: string): string {
  let known = kept.get(dogs);
  if (!known) {
    known = new Map();
    kept.set(dogs, known);
  }
  let now = known.get(name);
  if (now === undefined) {
    now = currentName(dogs as Dog[], name);
    known.set(name, now);
  }
  return now;
}

/** Every name a dog has or had, from the one of now; a name that nobody bears is its own. */
export function namesOf(dogs: readonly Dog[], name: string): string[] {
  const dog = dogs.find((d) => d.name === name);
  return dog ? [dog.name, ...dog.aliases, ...dog.formerNames] : [name];
}
