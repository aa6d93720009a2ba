/** The notes' own words, found in spite of slips. MiniSearch holds a document a note; its text alone is indexed. */
import MiniSearch from 'minisearch';
import { tokenize } from '../../grammar/steps/tokens.ts';
import type { Note } from '../model.ts';

/** Letters and digits, with what joins them inside a word. */
const WORD = /[\p{L}\p{N}]+(?:['’.][\p{L}\p{N}]+)*/gu;

/** The form in which words are compared: lower case, no accents, no possessive. */
export function fold(word: string): string {
  return word
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/['’]s$/, '')
    .replace(/['’]/g, '');
}

/** The words of a text with their places, in UTF-16 units. */
export function wordsOf(text: string): { word: string; span: [number, number] }[] {
  return [...text.matchAll(WORD)].map((m) => ({ word: fold(m[0]), span: [m.index, m.index + m[0].length] }));
}

/** One slip in words of four letters and more, two from ten on. Shorter words and numbers are taken as they are. */
const slips = (term: string) => (term.length < 4 || /\d/.test(term) ? false : term.length < 10 ? 1 : 2);
/** The last letters of a word may be left out from three letters on. */
const begins = (term: string) => term.length >= 3 && !/\d/.test(term);

/** Does English have this word? (The vocabulary of the grammar's tokens.) */
const isWord = (word: string) => tokenize(word)[0]?.known ?? false;

/** What a search of the words gives: by note id, the forms in which the words stand there. */
export type Found = ReadonlyMap<string, readonly string[]>;

/**
 * Notes of one part of the index. What holds 65,536 of them is laid out anew in one go when it grows, which keeps whoever
 * wants to leave a note waiting for longer than a tenth of a second; with this many it is a few milliseconds.
 */
const PART = 8_192;

/** A full-text index over notes. What `add` is given, `remove` takes out again without a trace. */
export class FullText {
  #parts: MiniSearch<{ id: string; text: string }>[] = [];

  get size(): number {
    return this.#parts.reduce((n, part) => n + part.documentCount, 0);
  }

  add(note: Pick<Note, 'id' | 'text'>): void {
    let part = this.#parts.find((one) => one.documentCount < PART);
    if (!part) {
      part = newIndex();
      this.#parts.push(part);
    }
    part.add({ id: note.id, text: note.text });
  }

  remove(note: Pick<Note, 'id' | 'text'>): void {
    this.#parts.find((part) => part.has(note.id))?.remove({ id: note.id, text: note.text });
  }

  clear(): void {
    this.#parts = [];
  }

  /**
   * Notes that hold every word in some form; `among` keeps to some notes. A word that English has is never taken for a slip
   * of another such word ("most" for "moss").
   */
  find(words: readonly string[], among?: (id: string) => boolean): Found {
    let found: Map<string, string[]> | undefined;
    for (const word of words) {
      const before = found;
      const next = new Map<string, string[]>();
      const keep = before ? (id: string) => before.has(id) : among;
      for (const { id, terms } of this.#search(word, keep)) next.set(id, [...(before?.get(id) ?? []), ...terms]);
      found = next;
      if (!next.size) break;
    }
    return found ?? new Map();
  }

  *#search(word: string, among?: (id: string) => boolean): Generator<{ id: string; terms: string[] }> {
    const asked = fold(word);
    const known = isWord(asked);
    const fits = (term: string) =>
      term === asked || (begins(asked) && term.startsWith(asked)) || !known || !isWord(term);
    const may = new Map<string, boolean>();
    const options = {
      fuzzy: slips,
      prefix: begins,
      maxFuzzy: 2,
      boostDocument: (id: string, term: string) => {
        let fit = may.get(term);
        if (fit === undefined) {
          fit = fits(term);
          may.set(term, fit);
        }
        return fit && (among?.(id) ?? true) ? 1 : 0;
      },
    };
    for (const part of this.#parts)
      for (const { id, terms } of part.search(word, options))
        yield { id, terms: terms.filter((term) => may.get(term)) };
  }

  /** Every word of the index with the notes it stands in, for comparing two indexes. */
  contents(): Map<string, string[]> {
    const words = new Map<string, string[]>();
    for (const part of this.#parts) {
      const { documentIds, index } = part.toJSON();
      for (const [term, fields] of index) {
        const here = Object.values(fields)
          .flatMap((docs) => Object.keys(docs as object))
          .map((short) => String(documentIds[short as unknown as number]));
        words.set(term, [...(words.get(term) ?? []), ...here].sort());
      }
    }
    return words;
  }
}

function newIndex(): MiniSearch<{ id: string; text: string }> {
  return new MiniSearch({
    fields: ['text'],
    tokenize: (text) => [...text.matchAll(WORD)].map((m) => m[0]),
    processTerm: (term) => fold(term) || null,
    autoVacuum: false,
  });
}

/** Where in a text words of these forms stand. */
export function marksOf(text: string, terms: Iterable<string>): [number, number][] {
  const wanted = new Set(terms);
  return wordsOf(text)
    .filter(({ word }) => wanted.has(word))
    .map(({ span }) => span);
}
