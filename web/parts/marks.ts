/**
 * A note's text cut where its entries begin and end, so that each piece knows which entries were read from it and which
 * words nothing was read from. Pure; the text is never changed, the pieces put together are the text again.
 */
import type { Entry } from '../../grammar/entry.ts';

/** A piece of a note's text. `marks`: the numbers of the entries read from it. `ends`: those that end with this piece. */
export interface Piece {
  text: string;
  start: number;
  marks: number[];
  ends: number[];
  /** Holds a word that no entry was read from (a remark keeps words, it reads nothing from them). */
  unread: boolean;
}
/** An entry that points at words, with the number it is shown under. */
export interface Marked {
  number: number;
  entry: Pick<Entry, 'kind' | 'span'>;
}

/** Words that carry no matter of their own; left between two readings they are not worth a second look. */
const SMALL = new Set(
  `a about all also an and are as at be been but by did do does for from had has have he her him his i in is it its just
  me my of off on or our out over she so some that the their them then there they this to today too up very was we went
  were with you`.split(/\s+/),
);
const WORD = /[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)*/gu;

/** Whether a piece of text holds a word that matters. */
function matters(text: string): boolean {
  return [...text.matchAll(WORD)].some(([word]) => !SMALL.has(word.toLowerCase()));
}

/** Cuts a note's text at the spans of its entries. Spans outside the text are cut down to it. */
export function pieces(text: string, marked: readonly Marked[]): Piece[] {
  const spans = marked
    .filter((m) => m.entry.span)
    .map(({ number, entry }) => {
      const [start, end] = entry.span as [number, number];
      return {
        number,
        reads: entry.kind !== 'remark',
        start: Math.min(start, text.length),
        end: Math.min(end, text.length),
      };
    })
    .filter((s) => s.start < s.end);
  const cuts = [...new Set([0, text.length, ...spans.flatMap((s) => [s.start, s.end])])].sort((a, b) => a - b);
  const found: Piece[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const start = cuts[i] as number;
    const end = cuts[i + 1] as number;
    const over = spans.filter((s) => s.start <= start && s.end >= end);
    found.push({
      text: text.slice(start, end),
      start,
      marks: over.map((s) => s.number),
      ends: over.filter((s) => s.end === end).map((s) => s.number),
      unread: !over.some((s) => s.reads) && matters(text.slice(start, end)),
    });
  }
  return found;
}

/** The words nothing was read from, in order, without the small words and the marks around them. */
export function unreadWords(text: string, marked: readonly Marked[]): string[] {
  return pieces(text, marked)
    .filter((piece) => piece.unread)
    .map((piece) => {
      const words = [...piece.text.matchAll(WORD)];
      const keep = words.map(([word]) => !SMALL.has(word.toLowerCase()));
      const first = words[keep.indexOf(true)];
      const last = words[keep.lastIndexOf(true)];
      return first && last ? piece.text.slice(first.index, last.index + last[0].length) : '';
    })
    .filter(Boolean);
}
