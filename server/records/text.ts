/** How near two entries stand in a note's text. */
import type { Span } from '../../grammar/entry.ts';

const SENTENCE_END = /[.!?…]+(?=\s|$)|\n/;
/** Words that only tie a place to what happened there. */
const TIES = new Set([
  'at',
  'around',
  'about',
  'near',
  'by',
  'on',
  'past',
  'after',
  'since',
  'from',
  'the',
  'a',
  'of',
  'it',
  'was',
]);

/** The words between two spans; empty where they touch or overlap. */
export function between(text: string, a: Span, b: Span): string {
  const [first, second] = a[0] <= b[0] ? [a, b] : [b, a];
  return first[1] >= second[0] ? '' : text.slice(first[1], second[0]);
}

/** Whether a sentence ends between two spans. Without spans (an entry added by a person) nothing stands between. */
export function inOneSentence(text: string, a: Span | undefined, b: Span | undefined): boolean {
  return !a || !b || !SENTENCE_END.test(between(text, a, b));
}

/** How far apart two spans stand: words, a comma as three, the end of a sentence as thirty. Words that tie don't count. */
export function apart(text: string, a: Span, b: Span): number {
  const gap = between(text, a, b);
  const words = gap.match(/[\p{L}\p{N}]+/gu) ?? [];
  const commas = gap.match(/[,;:–—]/g)?.length ?? 0;
  return words.filter((word) => !TIES.has(word.toLowerCase())).length + 3 * commas + (SENTENCE_END.test(gap) ? 30 : 0);
}

/** Whether a place is tied to what stands before it: "dropped Sable *at* mile 12". */
export function tiedBackwards(text: string, before: Span, place: Span): boolean {
  const last = /([\p{L}]+)\s*$/u.exec(between(text, before, place))?.[1];
  const first = /^\s*([\p{L}]+)/u.exec(text.slice(place[0], place[1]))?.[1];
  return [last, first].some(
    (word) => word !== undefined && ['at', 'around', 'near', 'by'].includes(word.toLowerCase()),
  );
}
