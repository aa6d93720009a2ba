import type { Context, Entry } from './entry.ts';

/** A word that stands in a dog's slot and that the roster does not hold. */
export interface UnknownName {
  name: string;
  span: [number, number];
}
/** Everything one reading of a note gives. */
export interface Reading {
  entries: Entry[];
  unknownNames: UnknownName[];
}

/** Text and context in, entries and unknown names out. */
export function read(text: string, _context: Context): Reading {
  return { entries: text ? [{ kind: 'remark', dogs: [], text, span: [0, text.length] }] : [], unknownNames: [] };
}

/** The note's entries, in the order of their spans. */
export function parse(text: string, context: Context): Entry[] {
  return read(text, context).entries;
}
