/**
 * Step "spelling": a word one slip away from a word of a list. One letter too many, missing, wrong, or two neighbours in
 * the wrong order; only words longer than four letters, and only where there is one answer. The index is built once by
 * leaving out each letter in turn (the symmetric-delete method, Garbe 2012), so that a look-up tries no alphabet.
 */

/** Gives the word that was meant, or nothing where none or several are one slip away, or where the word is in the list. */
export interface Speller {
  fix(word: string): string | undefined;
  /** All words of the list one slip away. */
  among(word: string): string[];
}

/** Words must be longer than this on both sides. */
export const SHORTEST_MENDED = 5;

/** `word` with each of its letters left out in turn. */
function shorter(word: string): string[] {
  const out: string[] = [];
  for (let i = 0; i < word.length; i++) if (word[i] !== word[i - 1]) out.push(word.slice(0, i) + word.slice(i + 1));
  return out;
}

/** Is `a` one slip from `b`: an insertion, a deletion, a substitution or two neighbours swapped? Equal words are not. */
export function oneSlip(a: string, b: string): boolean {
  if (a === b || Math.abs(a.length - b.length) > 1) return false;
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  let k = 0;
  while (k < a.length - i && k < b.length - i && a[a.length - 1 - k] === b[b.length - 1 - k]) k++;
  const left = a.slice(i, a.length - k);
  const right = b.slice(i, b.length - k);
  if (left.length <= 1 && right.length <= 1) return true;
  return left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0];
}

/** An index over `words` (lower case). Building takes time in the letters of all words; `fix` in those of one word. */
export function makeSpeller(words: Iterable<string>): Speller {
  const known = new Set<string>();
  const index = new Map<string, string[]>();
  for (const word of words) {
    if (known.has(word)) continue;
    known.add(word);
    if (word.length < SHORTEST_MENDED) continue;
    for (const key of [word, ...shorter(word)]) {
      const list = index.get(key);
      if (list) list.push(word);
      else index.set(key, [word]);
    }
  }
  return {
    among(word) {
      const low = word.toLowerCase();
      const found = new Set<string>();
      if (low.length < SHORTEST_MENDED || known.has(low)) return [];
      for (const key of [low, ...shorter(low)])
        for (const candidate of index.get(key) ?? []) if (oneSlip(low, candidate)) found.add(candidate);
      return [...found];
    },
    fix(word) {
      const low = word.toLowerCase();
      if (low.length < SHORTEST_MENDED || known.has(low)) return undefined;
      let found: string | undefined;
      for (const key of [low, ...shorter(low)]) {
        for (const candidate of index.get(key) ?? []) {
          if (candidate === found || !oneSlip(low, candidate)) continue;
          if (found) return undefined;
          found = candidate;
        }
      }
      return found;
    },
  };
}
