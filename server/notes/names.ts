/** How names are compared and found in words. */
import type { Dog } from '../model.ts';

/** The form in which two names are the same name: letter case, width and runs of spaces do not count. */
export function fold(name: string): string {
  return name.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase();
}

const byFold = new WeakMap<readonly Dog[], Map<string, Dog>>();

/** Every name, alias and former name of these dogs, folded, to its dog. Kept per roster. */
function index(dogs: readonly Dog[]): Map<string, Dog> {
  let map = byFold.get(dogs);
  if (!map) {
    map = new Map();
    // Call names first: should a damaged roster hold one name twice, the dog that is called so now has it.
    for (const dog of dogs) if (!map.has(fold(dog.name))) map.set(fold(dog.name), dog);
    for (const dog of dogs)
      for (const other of [...dog.aliases, ...dog.formerNames]) if (!map.has(fold(other))) map.set(fold(other), dog);
    byFold.set(dogs, map);
  }
  return map;
}

/** The dog of this call name, alias or former name. */
export function dogNamed(dogs: readonly Dog[], name: string): Dog | undefined {
  return index(dogs).get(fold(name));
}

/** The words of a text with their spans: letters, digits and what joins them (apostrophes, hyphens inside a word). */
export function words(text: string): { word: string; span: [number, number] }[] {
  return [...text.matchAll(/[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)*/gu)].map((m) => ({
    word: m[0].replace(/['’]s$/i, ''),
    span: [m.index, m.index + m[0].length],
  }));
}

/** Whether the name stands in the text as words of its own, whatever the letter case. */
export function says(text: string, name: string): boolean {
  const parts = fold(name).replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<![\\p{L}\\p{N}])${parts.replace(/ /g, '\\s+')}(?![\\p{L}\\p{N}])`, 'iu').test(
    text.normalize('NFKC'),
  );
}
