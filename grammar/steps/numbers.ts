/**
 * Step "numbers": one number, spelled or in figures, that begins at a given token. Units, signs of the clock and
 * degrees are other rules' business (quantities.ts); here is only what makes one number.
 */
import { GLYPHS, type NumberClass, ORDINALS, PARTS_OF_ONE, PLACE_BEFORE_POINT } from '../words/numbers.ts';
import {
  cardinal,
  classOf,
  decimals,
  figures,
  numberOf,
  type Piece,
  PLAIN_FIGURES,
  small,
  tidy,
  tied,
} from './quantity-cardinals.ts';
import { figuresOver, partAt, pluralPart, ratioSaid, withPart } from './quantity-fractions.ts';
import type { Token } from './tokens.ts';

/** A number read from tokens `[from, to)`. */
export interface NumberReading {
  from: number;
  to: number;
  value: number;
  /** Written in words (wholly or in part). */
  spelled: boolean;
  /** A whole number said or written without fraction or point. */
  whole: boolean;
  /** As written, when it stands in figures alone: "6.50", "0730". */
  figures?: string;
  /** Written with its sign ("-19"). */
  signed?: boolean;
  /** Two numbers said in a row that can be one ("two fifty", "ten forty", "one oh two"), and where the second begins. */
  pair?: { first: number; second: number; at: number };
  /** A fraction in figures, as written: "4/9". */
  ratio?: [number, number];
  /** A bare "half", "a quarter": a part of something that was not counted. */
  part?: boolean;
}

/** A pair said as one: what may follow `first` as hundreds-and-rest or hour-and-minutes. */
function pairAfter(
  t: readonly Token[],
  first: Piece & { class: NumberClass },
): (NumberReading['pair'] & { to: number }) | undefined {
  const j = tied(t, first.to);
  if (classOf(t[j]) === 'oh' && (first.class === 'digit' || first.value <= 24)) {
    const digit = classOf(t[j + 1]) === 'digit' ? j + 1 : tied(t, j + 1);
    if (classOf(t[digit]) === 'digit') return { first: first.value, second: numberOf(t[digit]), at: j, to: digit + 1 };
    return undefined;
  }
  const next = small(t, j);
  if (!next || next.class === 'digit' || next.value === first.value) return undefined;
  if (first.class === 'digit' || (first.value <= 23 && next.value < 60)) {
    if (first.value === 20 && next.value < 20) return undefined; // "twenty fifteen" is not said for 20:15
    return { first: first.value, second: next.value, at: j, to: next.to };
  }
  return undefined;
}

/** Groups of three set off by blanks: "1 234 567", "40 000". One group of other figures stays apart: "5 800 m loops". */
function spacedGroups(t: readonly Token[], i: number): Piece | undefined {
  if (!/^[-+−]?\d{1,3}$/.test(t[i]?.low ?? '')) return undefined;
  let digits = t[i]?.low ?? '';
  let j = i + 1;
  let round = true;
  for (; /^\d{3}(\.\d+)?$/.test(t[j]?.low ?? '') && t[j]?.gap; j++) {
    digits += t[j]?.low;
    if (t[j]?.low !== '000') round = false;
    if (t[j]?.low.includes('.')) {
      j++;
      break;
    }
  }
  const groups = j - i - 1;
  if (groups === 0 || (groups === 1 && !round)) return undefined;
  const value = figures(digits);
  return value === undefined ? undefined : { value, to: j };
}

/**
 * The number that begins at token `i`, the longest there is; `undefined` when none does. "a" alone is no number, nor
 * is "oh". Signs in words ("minus") are read by the rule for temperatures and negatives.
 */
export function numberAt(t: readonly Token[], i: number): NumberReading | undefined {
  const token = t[i];
  if (!token) return undefined;
  if (token.kind === 'number') return figuresAt(t, i);
  const cls = classOf(token);
  if (cls === 'article') return articleAt(t, i);
  if (cls === 'point') return pointAt(t, i);
  if (cls === 'zero') return decimalTail(t, { from: i, to: i + 1, value: 0, spelled: true, whole: true });
  if (cls === 'couple') {
    const to = t[i + 1]?.low === 'of' ? i + 2 : i + 1;
    const next = classOf(t[to]); // "a couple hundred yards"
    if (next === 'hundred' || next === 'scale')
      return { from: i, to: to + 1, value: 2 * numberOf(t[to]), spelled: true, whole: true };
    return { from: i, to, value: 2, spelled: true, whole: true };
  }
  if (cls === 'oh') {
    // "oh seven thirty", "oh six hundred": the nought of an early hour, else a sigh
    const hour = classOf(t[i + 1]) === 'digit' ? spelledAt(t, i, i + 1) : undefined;
    return hour?.whole && (hour.pair || hour.value >= 100) ? hour : undefined;
  }
  if (cls === 'dozen') return { from: i, to: i + 1, value: 12, spelled: true, whole: true };
  const part = PARTS_OF_ONE.has(token.low) || GLYPHS.has(token.low) ? partAlone(t, i) : undefined;
  if (part) return part;
  if (cls === undefined) return undefined;
  return spelledAt(t, i, i);
}

/** From the first cardinal word on; `from` may lie before it ("a hundred"). */
function spelledAt(t: readonly Token[], from: number, i: number): NumberReading | undefined {
  const first = small(t, i);
  const whole = cardinal(t, i);
  if (!whole) return undefined;
  let reading: NumberReading = { from, to: whole.to, value: whole.value, spelled: true, whole: true };
  if (first && whole.to === first.to) {
    if (PARTS_OF_ONE.has(t[tied(t, first.to, true)]?.low ?? '')) return partAlone(t, i); // "three quarters", "two thirds"
    const pair = pairAfter(t, first);
    if (pair) {
      const { to, ...parts } = pair;
      reading = { from, to, value: pair.first * 100 + pair.second, spelled: true, whole: true, pair: parts };
    }
  }
  const below = pluralPart(t, whole.to);
  if (below) return { ...reading, to: below.to, value: tidy(whole.value / below.value), whole: false, part: true };
  return ratioSaid(t, reading) ?? counted(t, decimalTail(t, reading), whole.scale);
}

/** A point and decimals, or a fraction, after a whole number. */
function decimalTail(t: readonly Token[], reading: NumberReading): NumberReading {
  if (classOf(t[reading.to]) !== 'point') return reading;
  const tail = decimals(t, reading.to + 1);
  if (!tail) return reading;
  const value = Number(`${reading.value}.${tail.digits}`);
  const { pair: _pair, ...rest } = reading; // with decimals the two were one number
  return { ...rest, to: tail.to, value, whole: false, spelled: true };
}

/** Fractions, dozens and thousands after the number so far. */
function counted(t: readonly Token[], reading: NumberReading, scale = 1): NumberReading {
  let out = reading;
  const fraction = out.whole ? withPart(t, out) : undefined;
  if (fraction) {
    // "one million and a half" is half a million more; "one billion and a half million" says of what
    const of = classOf(t[fraction.to]) === 'scale' && numberOf(t[fraction.to]) < scale ? numberOf(t[fraction.to]) : 0;
    const value = out.value + fraction.value * (of || (scale >= 1000 ? scale : 1));
    const to = fraction.to + (of ? 1 : 0);
    const { pair: _pair, ...rest } = out;
    out = { ...rest, to, value: tidy(value), whole: false, spelled: out.spelled || !!fraction.spelled };
  }
  const next = classOf(t[out.to]);
  if (next === 'dozen') return { ...out, to: out.to + 1, value: out.value * 12, spelled: true };
  if (next === 'scale' && (!out.whole || !out.spelled))
    return { ...out, to: out.to + 1, value: tidy(out.value * numberOf(t[out.to])), spelled: true };
  return out;
}

/** Figures that were cut where letters stick to them ("T38.6" is t, 38, point, 6), put together again. */
function figureRun(t: readonly Token[], i: number): { low: string; to: number } {
  const first = t[i] as Token;
  let low = first.low;
  let j = i + 1;
  for (;;) {
    const [a, b] = [t[j], t[j + 1]];
    if (!a || a.gap) break;
    if (a.kind === 'number' && isDigits(a.low)) {
      low += a.low;
      j++;
    } else if ((a.low === '.' || a.low === ',') && b?.kind === 'number' && !b.gap && isDigits(b.low)) {
      low += a.low + b.low;
      j += 2;
    } else break;
  }
  return figures(low) === undefined ? { low: first.low, to: i + 1 } : { low, to: j };
}
const isDigits = (low: string): boolean => PLAIN_FIGURES.test(low);

/** A number that begins with figures. */
function figuresAt(t: readonly Token[], i: number): NumberReading | undefined {
  const token = t[i] as Token;
  const signed = /^[-+−–]/.test(token.low);
  const over = figuresOver(t, i);
  if (over)
    return {
      from: i,
      to: over.to,
      value: over.value,
      spelled: false,
      whole: false,
      ratio: over.ratio,
      ...(signed && { signed }),
    };
  const groups = spacedGroups(t, i);
  if (groups)
    return { from: i, to: groups.to, value: groups.value, spelled: false, whole: true, ...(signed && { signed }) };
  const run = figureRun(t, i);
  const value = figures(run.low);
  if (value === undefined) return undefined;
  const written = run.low.replace(/^[-+−–]/, '').replace(/[.,]+$/, '');
  const whole = PLAIN_FIGURES.test(written);
  let reading: NumberReading = {
    from: i,
    to: run.to,
    value,
    spelled: false,
    whole,
    figures: written,
    ...(signed && { signed }),
  };
  if (whole && !signed) {
    const more = cardinal(t, i); // "3 hundred and 21", "5 thousand"
    if (more && more.to > run.to) reading = { ...reading, to: more.to, value: more.value, spelled: true };
    else if (PARTS_OF_ONE.has(t[i + 1]?.low ?? '') && !ORDINALS.has(t[i + 1]?.low ?? ''))
      return partAlone(t, i); // "3 quarters"
    else reading = ratioSaid(t, reading) ?? decimalTail(t, reading); // "4 over 9", "1 point 1"
  }
  return counted(t, reading);
}

/** "a hundred and six", "a dozen", "a couple of", "a half", "a quarter". */
function articleAt(t: readonly Token[], i: number): NumberReading | undefined {
  const cls = classOf(t[i + 1]);
  if (cls === 'hundred' || cls === 'scale') return spelledAt(t, i, i + 1);
  if (cls === 'dozen' || cls === 'couple') {
    const inner = numberAt(t, i + 1);
    return inner && { ...inner, from: i };
  }
  const next = t[i + 1];
  if (!next || !PARTS_OF_ONE.has(next.low)) return undefined;
  // "a third dog" counts dogs; "a third of it" is a part
  if (ORDINALS.has(next.low) && t[i + 2] && t[i + 2]?.kind === 'word' && t[i + 2]?.low !== 'of') return undefined;
  const part = partAlone(t, i + 1);
  return part && { ...part, from: i };
}

/** "half", "half a dozen", "half a million", "three quarters", "½" with nothing whole before it. */
function partAlone(t: readonly Token[], i: number): NumberReading | undefined {
  if (ORDINALS.has(t[i]?.low ?? '') && classOf(t[i - 1]) !== 'article' && t[i + 1]?.low !== 'of') return undefined;
  const part = partAt(t, i);
  if (!part) return undefined;
  let j = part.to;
  if (t[j]?.low === 'of') j++;
  if (classOf(t[j]) === 'article') j++;
  const cls = classOf(t[j]);
  if (cls === 'dozen' || cls === 'scale')
    return { from: i, to: j + 1, value: tidy(part.value * numberOf(t[j])), spelled: true, whole: cls === 'dozen' };
  return { from: i, to: part.to, value: tidy(part.value), spelled: part.spelled, whole: false, part: true };
}

/** "point five" with nothing before the point. */
function pointAt(t: readonly Token[], i: number): NumberReading | undefined {
  const before = t[i - 1];
  if (before?.kind === 'word' && PLACE_BEFORE_POINT.has(before.low)) return undefined;
  const tail = decimals(t, i + 1);
  return tail && { from: i, to: tail.to, value: Number(`0.${tail.digits}`), spelled: true, whole: false };
}
