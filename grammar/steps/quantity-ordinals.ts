/** Ordinals in words: "third", "twenty-first", "one hundred twenty-fifth". */
import { ORDINALS } from '../words/numbers.ts';
import { classOf, numberOf, type Piece, tied } from './quantity-cardinals.ts';
import type { Token } from './tokens.ts';

/** An ordinal at token `i`: "third", "twenty-first", "one hundred twenty-fifth". */
export function ordinalAt(t: readonly Token[], i: number): Piece | undefined {
  const word = ORDINALS.get(t[i]?.low ?? '');
  if (word) return { value: word.value, to: i + 1 };
  const cls = classOf(t[i]);
  if (cls === undefined) return undefined;
  if (cls === 'ten') {
    const j = tied(t, i + 1);
    const unit = ORDINALS.get(t[j]?.low ?? '');
    // "thirty second stop" is half a minute; with a hyphen it is the 32nd
    if (unit?.rank === 'digit' && (j > i + 1 || unit.value !== 2))
      return { value: numberOf(t[i]) + unit.value, to: j + 1 };
    return undefined;
  }
  if (cls !== 'digit' && cls !== 'article' && cls !== 'hundred') return undefined;
  const h = cls === 'hundred' ? i : tied(t, i + 1);
  const count = cls === 'digit' ? numberOf(t[i]) : 1;
  const whole = ORDINALS.get(t[h]?.low ?? '');
  if (whole?.rank === 'large' && cls === 'digit') return { value: count * whole.value, to: h + 1 }; // "two hundredth"
  if (classOf(t[h]) !== 'hundred') return undefined;
  const j = classOf(t[h + 1]) === 'and' ? h + 2 : tied(t, h + 1);
  const rest = ORDINALS.get(t[j]?.low ?? '');
  if (rest?.rank === 'large') return { value: count * 100 * rest.value, to: j + 1 }; // "a hundred thousandth"
  const tail = t[j]?.kind === 'word' && classOf(t[j]) !== 'article' ? ordinalAt(t, j) : undefined;
  return tail && tail.value < 100 ? { value: count * 100 + tail.value, to: tail.to } : undefined;
}
