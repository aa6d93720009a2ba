/** Temperatures: degrees, scales, "minus eighteen", "22 below", "plus five", "-19"; and other numbers below nought. */
import { MINUS_SIGNS, NUMBERS } from '../words/numbers.ts';
import { COUNTED } from '../words/times.ts';
import { DEGREES, SCALES, SIDES_OF_ZERO } from '../words/units.ts';
import { type NumberReading, numberAt } from './numbers.ts';
import { type Cursor, inName, type Quantity, type Rule } from './quantity-shape.ts';
import { firstOfPair, unitAfter } from './quantity-units.ts';

/** Colder and hotter than any air or dog: the number belongs to something else. */
const COLDEST = -100;
const HOTTEST = 150;

interface Tail {
  to: number;
  unit?: 'F' | 'C';
  degrees: boolean;
  side?: 1 | -1;
}

/** Degrees, scale and side of nought behind a number that ends at `k`. */
function tailAt(c: Cursor, k: number): Tail {
  let to = k;
  let degrees = false;
  if (DEGREES.has(c.low(to)) || (c.low(to) === '-' && DEGREES.has(c.low(to + 1)))) {
    to += c.low(to) === '-' ? 2 : 1;
    if (c.low(to) === '.' && c.low(to - 1).startsWith('deg') && SCALES.has(c.low(to + 1))) to++;
    degrees = true;
  }
  const tail: Tail = { to, degrees };
  const scale = () => {
    const unit = SCALES.get(c.low(tail.to));
    const letter = c.low(tail.to).length === 1 && !degrees;
    if (letter && (c.number?.ratio || inName(c.tokens, tail.to - 1) || c.low(tail.to + 1) === '-')) return; // "SCP-173C", "F-series"
    if (unit) {
      tail.unit = unit;
      tail.to++;
    }
  };
  scale();
  const side = SIDES_OF_ZERO.get(c.low(tail.to));
  if (side && !NOT_NOUGHT.has(c.low(tail.to + 1))) {
    tail.side = side;
    tail.to++;
    if (c.low(tail.to) === 'zero' || c.low(tail.to) === '0') tail.to++;
    if (!tail.unit) scale();
  }
  return tail;
}
/** "two above average": another mark than nought. */
const NOT_NOUGHT: ReadonlySet<string> = new Set(['average', 'normal', 'that', 'it', 'freezing', 'her', 'his', 'my']);

/** The sign before the number at the cursor: a word, or a dash with a blank behind it where degrees follow. */
function signAt(c: Cursor): { sign: 1 | -1; at: number; word: 'minus' | 'plus' | 'mark' } | undefined {
  const low = c.low(c.i);
  const cls = NUMBERS.get(low)?.class;
  if (cls === 'minus') return { sign: -1, at: c.i + 1, word: 'minus' };
  if (cls === 'plus') return { sign: 1, at: c.i + 1, word: 'plus' };
  if (!MINUS_SIGNS.has(low)) return undefined;
  const next = c.tokens[c.i + 1];
  if (next?.kind !== 'number') return undefined;
  // "−18": a minus sign or dash written right before its figures, with nothing before it to make it a range
  if (!next.gap) return c.tokens[c.i]?.gap && !rangeBefore(c) ? { sign: -1, at: c.i + 1, word: 'mark' } : undefined;
  return c.i === 0 || BEFORE_READING.has(c.low(c.i - 1)) ? { sign: -1, at: c.i + 1, word: 'mark' } : undefined;
}
const rangeBefore = (c: Cursor): boolean => c.tokens[c.i - 1]?.kind === 'number';
/** Words that a reading follows: after them a lone dash is a minus. */
const BEFORE_READING: ReadonlySet<string> = new Set('is was at to of now says reads about around'.split(' '));

export const temperature: Rule = {
  name: '[minus | plus] <number> [degrees] [F | C] [below | above]',
  read(c) {
    const sign = signAt(c);
    const n = sign ? numberAt(c.tokens, sign.at) : c.number;
    if (!n) return undefined;
    if (sign && n.signed) return undefined;
    const tail = tailAt(c, n.to);
    if (tail.side && n.pair) return firstOfPair(c, n); // "mile six thirty below": the cold is the second number's alone
    const said = tail.degrees || tail.unit !== undefined || tail.side !== undefined;
    const signed = sign !== undefined || n.signed === true;
    if (!said && !signed) return undefined;
    if (sign?.word === 'mark' && !said && c.i > 0 && c.tokens[c.i + 1]?.gap) return undefined;
    if (!said) return bySign(c, n, sign);
    if (tail.degrees && !tail.unit && !signed && isAngle(c, tail.to))
      return c.make(c.i, tail.to, n.value, 'number', { unit: 'deg', ...(n.spelled && { spelled: true }) });
    if (!tail.degrees && !tail.side && n.part) return undefined;
    const value = (sign ? sign.sign : 1) * (tail.side === -1 ? -1 : 1) * n.value;
    if (value < COLDEST && !tail.unit) return undefined;
    return c.make(c.i, tail.to, value, 'temperature', {
      ...(tail.unit && { unit: tail.unit }),
      ...(n.spelled && { spelled: true }),
    });
  },
};

/** "turned left 45 degrees", "a 30 degree slope". */
const isAngle = (c: Cursor, k: number): boolean => ANGLE_AFTER.has(c.low(k)) || ANGLE_BEFORE.has(c.low(c.i - 1));
const ANGLE_AFTER: ReadonlySet<string> = new Set(
  'angle angles turn turns bend bends slope slopes incline grade corner'.split(' '),
);
const ANGLE_BEFORE: ReadonlySet<string> = new Set('left right turn turned turning'.split(' '));

/** A number with a sign and nothing else: a temperature as a musher says it, within what air can be. */
function bySign(c: Cursor, n: NumberReading, sign: ReturnType<typeof signAt>): Quantity | undefined {
  const unit = unitAfter(c.tokens, n.to, n);
  if (unit) return undefined;
  const value = (sign ? sign.sign : 1) * n.value;
  const spelled = n.spelled ? { spelled: true } : {};
  if (COUNTED.has(c.low(n.to)) || n.ratio || value < COLDEST || value > HOTTEST)
    return c.make(c.i, n.to, value, 'number', spelled);
  return c.make(c.i, n.to, value, 'temperature', { ...spelled, bySign: true });
}
