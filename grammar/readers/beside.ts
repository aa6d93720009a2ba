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
