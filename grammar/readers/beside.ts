/** The words to the left and to the right of a quantity, within its sentence. */
import type { Frame, Quantity } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';

/** Up to `n` words before it, parted by blanks. */
export const leftOf = (f: Frame, q: Quantity, n: number) => {
  let a = q.from;
  while (a > 0 && q.from - a < n && !f.isStrong(a - 1)) a--;
  return wordsIn(f.tokens, a, q.from);
};
/** Up to `n` words behind it, parted by blanks. */
export const rightOf = (f: Frame, q: Quantity, n: number) => {
  let b = q.to;
  while (b < f.tokens.length && b - q.to < n && !f.isStrong(b)) b++;
  return wordsIn(f.tokens, q.to, b);
};

const PART = /\b(rep|reps|interval|intervals)\b/;
const NTH =
  /(^|\band |\bthen |\b(the|our|my) )(first|second|third|fourth|fifth|sixth|last|next|final)( and last| and final)?( one| rep| interval| heat| lap| round| :| ,| was| took)/;

/** Is what the sentence measures one part of a run: an interval, a heat, "the second one took six minutes"? */
export const ofPart = (f: Frame, q: Quantity): boolean => {
  const before = leftOf(f, q, 14);
  return PART.test(before) || NTH.test(before);
};

/** Does the kennel think in kilometres? */
export const metric = (f: Frame) => f.context.units === 'metric';
