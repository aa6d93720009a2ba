/**
 * Step "numbers": one number, spelled or in figures, that begins at a given token. Units, signs of the clock and
 * degrees are other rules' business (quantities.ts); here is only how English builds a number out of words.
 */
import {
  GLYPHS,
  HYPHENS,
  NUMBERS,
  type NumberClass,
  ORDINALS,
  PARTS_OF_ONE,
  PLACE_BEFORE_POINT,
} from '../words/numbers.ts';
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
  /** Written with its sign ("-19"). */
  signed?: boolean;
  /** Two numbers said in a row that can be one ("two fifty", "ten forty", "one oh two"), and where the second begins. */
  pair?: { first: number; second: number; at: number };
  /** A fraction in figures, as written: "4/9". */
  ratio?: [number, number];
  /** A bare "half", "a quarter": a part of something that was not counted. */
  part?: boolean;
}

const classOf = (t: Token | undefined): NumberClass | undefined => t && NUMBERS.get(t.low)?.class;
const numberOf = (t: Token | undefined): number => (t && NUMBERS.get(t.low)?.value) ?? Number.NaN;
/** Rounds off what binary fractions add ("12.1 + 0.2"), at twelve digits. */
export const tidy = (x: number): number => Number(x.toPrecision(12));

/** The index after a hyphen that ties two words together at `i`, or `i` itself. A dash with blanks ties a ten to its digit only. */
function tied(t: readonly Token[], i: number, blanks = false): number {
  const dash = t[i];
  const next = t[i + 1];
  if (!dash || !next || !HYPHENS.has(dash.low)) return i;
  return (!dash.gap && !next.gap) || (blanks && dash.gap && next.gap) ? i + 1 : i;
}

interface Piece {
  value: number;
  to: number;
}

/** 1 to 99 in words: "nine", "nineteen", "ninety", "ninety-nine", "ninetynine", and "twenty 8" as recognisers write it. */
function small(t: readonly Token[], i: number): (Piece & { class: NumberClass }) | undefined {
  const cls = classOf(t[i]);
  const value = numberOf(t[i]);
  if (cls === 'digit' || cls === 'teen' || cls === 'joined') return { value, to: i + 1, class: cls };
  if (cls !== 'ten') return undefined;
  const j = tied(t, i + 1, true);
  if (classOf(t[j]) === 'digit') return { value: value + numberOf(t[j]), to: j + 1, class: 'ten' };
  const figure = t[j];
  if (figure?.kind === 'number' && figure.low.length === 1 && figure.low !== '0')
    return { value: value + Number(figure.low), to: j + 1, class: 'ten' };
  return { value, to: i + 1, class: 'ten' };
}

const PLAIN_FIGURES = /^\d+$/;
/** Up to 999 in words or figures that a "hundred", "thousand" or the like may follow. */
function lead(t: readonly Token[], i: number): Piece | undefined {
  const word = small(t, i);
  if (word) return word;
  const figure = t[i];
  return figure?.kind === 'number' && PLAIN_FIGURES.test(figure.low)
    ? { value: Number(figure.low), to: i + 1 }
    : undefined;
}

/** "three hundred and six", with the hundred there or not. */
function hundreds(t: readonly Token[], i: number): Piece | undefined {
  let head = lead(t, i);
  if (!head && classOf(t[i]) === 'hundred') head = { value: 1, to: i };
  if (!head) return undefined;
  const h = tied(t, head.to);
  if (head.value >= 100 || classOf(t[h]) !== 'hundred') return head;
  const sum: Piece = { value: head.value * 100, to: h + 1 };
  let j = tied(t, sum.to);
  const and = classOf(t[j]) === 'and';
  if (and) j++;
  const rest = lead(t, j);
  // "three hundred and two hundred" are two numbers; figures join only behind "and"
  if (rest && rest.value < 100 && classOf(t[rest.to]) !== 'hundred' && (and || t[j]?.kind === 'word'))
    return { value: sum.value + rest.value, to: rest.to };
  return sum;
}

/** A whole number in words: hundreds, thousands and so on in falling order. */
function cardinal(t: readonly Token[], i: number): (Piece & { scale: number }) | undefined {
  let part = hundreds(t, i);
  if (!part && classOf(t[i]) === 'scale') part = { value: 1, to: i };
  if (!part) return undefined;
  let total = 0;
  let last = Number.POSITIVE_INFINITY;
  let open = true;
  let to = part.to;
  for (;;) {
    const cls = classOf(t[to]);
    const scale = numberOf(t[to]);
    if (cls === 'scale' && scale < last) {
      total += part.value * scale;
      last = scale;
      to++;
      open = false;
      let j = to;
      if (classOf(t[j]) === 'and') j++;
      const next = t[j]?.kind === 'word' ? hundreds(t, j) : undefined;
      if (!next || next.value >= last) break;
      part = next;
      to = next.to;
      open = true;
    } else break;
  }
  if (open) total += part.value;
  return { value: total, to, scale: open ? 1 : last };
}

/** Digits after "point": "point zero three", "point two five", "point seventy-one", "point 77". */
function decimals(t: readonly Token[], i: number): { digits: string; to: number } | undefined {
  let digits = '';
  let j = i;
  for (; ; j++) {
    const cls = classOf(t[j]);
    if (cls !== 'digit' && cls !== 'zero' && cls !== 'oh') break;
    digits += numberOf(t[j]);
  }
  if (digits) return { digits, to: j };
  const piece = small(t, i);
  if (piece) return { digits: String(piece.value), to: piece.to };
  const figure = t[i];
  return figure?.kind === 'number' && PLAIN_FIGURES.test(figure.low) ? { digits: figure.low, to: i + 1 } : undefined;
}

/** "half", "a half", "three quarters", "two thirds", "½" at `i`: a part of one. */
function partAt(t: readonly Token[], i: number): (Piece & { spelled: boolean }) | undefined {
  const token = t[i];
  if (!token) return undefined;
  const glyph = GLYPHS.get(token.low);
  if (glyph !== undefined) return { value: glyph, to: i + 1, spelled: false };
  const article = classOf(token) === 'article';
  const bare = PARTS_OF_ONE.get(t[article ? i + 1 : i]?.low ?? '');
  if (bare) return { value: 1 / bare, to: i + (article ? 2 : 1), spelled: true };
  const top = small(t, i);
  if (top) {
    const j = tied(t, top.to, true);
    const below = PARTS_OF_ONE.get(t[j]?.low ?? '');
    if (below) return { value: top.value / below, to: j + 1, spelled: true };
  }
  return figuresOver(t, i);
}

/** "3/4" in figures, a proper fraction. */
function figuresOver(
  t: readonly Token[],
  i: number,
): (Piece & { spelled: boolean; ratio: [number, number] }) | undefined {
  const [a, slash, b] = [t[i], t[i + 1], t[i + 2]];
  if (a?.kind !== 'number' || slash?.low !== '/' || b?.kind !== 'number' || slash.gap || b.gap) return undefined;
  if (t[i + 3]?.low === '/' && !t[i + 3]?.gap) return undefined; // a date
  if (!/^[-+−]?\d+$/.test(a.low) || !PLAIN_FIGURES.test(b.low)) return undefined;
  const [top, below] = [Number(a.low.replace('−', '-')), Number(b.low)];
  if (below === 0 || Math.abs(top) >= below) return undefined; // "26/5" is a weight and a condition, not a fraction
  return { value: top / below, to: i + 3, spelled: false, ratio: [top, below] };
}

/** The figures of one token: "1,234.5", "12,5", "-19", ".5". Undefined when they are no number ("10:40", "1.2.3"). */
export function figures(low: string): number | undefined {
  let s = low.replace(/^[−–]/, '-').replace(/[.,:]+$/, '');
  if (s.includes(':')) return undefined;
  const comma = s.lastIndexOf(',');
  if (comma >= 0) {
    // a comma before three figures groups, before any other count it is a decimal comma
    const grouped = /^[-+]?\d{1,3}(,\d{2,3})*,\d{3}(\.\d+)?$/.test(s);
    if (grouped) s = s.replaceAll(',', '');
    else if (s.indexOf(',') === comma && !s.includes('.')) s = s.replace(',', '.');
    else return undefined;
  }
  const value = Number(s);
  return s !== '' && Number.isFinite(value) ? value : undefined;
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

/** Adds "and a half", "n a half", "and three quarters", a glyph or "1/2" to a whole number that ends at `to`. */
function withPart(t: readonly Token[], whole: Piece): (Piece & { spelled?: boolean }) | undefined {
  const glyph = GLYPHS.get(t[whole.to]?.low ?? '');
  if (glyph !== undefined) return { value: whole.value + glyph, to: whole.to + 1 };
  const typed = t[whole.to]?.gap ? figuresOver(t, whole.to) : undefined;
  if (typed && t[whole.to - 1]?.kind === 'number') return { value: whole.value + typed.value, to: typed.to };
  let j = tied(t, whole.to);
  const cls = classOf(t[j]);
  // "six an a half" is how recognisers write "six and a half"
  if (cls !== 'and' && !(t[j]?.low === 'an' && t[j + 1]?.low === 'a')) return undefined;
  j = tied(t, j + 1);
  if (classOf(t[j]) === 'article') j = tied(t, j + 1);
  const part = partAt(t, j);
  if (!part || part.value >= 1 || ordinalUse(t, part.to - 1)) return undefined;
  return { value: whole.value + part.value, to: part.to, spelled: true };
}

/** A lone ordinal behind "and" is the next in a row ("mile two and third stop"), a half or a quarter never is. */
const ordinalUse = (t: readonly Token[], i: number): boolean =>
  ORDINALS.has(t[i]?.low ?? '') &&
  classOf(t[i - 1]) !== 'article' &&
  NUMBERS.get(t[i - 1]?.low ?? '') === undefined &&
  !HYPHENS.has(t[i - 1]?.low ?? '');

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
    return { from: i, to, value: 2, spelled: true, whole: true };
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
    const over = partAt(t, i);
    // "three quarters", "two thirds"; but "one third dog", "two second stop" stay a count and an ordinal
    if (over && over.to > first.to)
      return { ...reading, to: over.to, value: tidy(over.value), whole: false, part: true };
    const pair = pairAfter(t, first);
    if (pair) {
      const { to, ...parts } = pair;
      reading = { ...reading, to, value: pair.first * 100 + pair.second, pair: parts };
    }
  }
  return counted(t, decimalTail(t, reading), whole.scale);
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
    const added = fraction.value - out.value;
    const value = scale >= 1000 ? out.value + added * scale : fraction.value;
    const { pair: _pair, ...rest } = out;
    out = { ...rest, to: fraction.to, value: tidy(value), whole: false, spelled: out.spelled || !!fraction.spelled };
  }
  const next = classOf(t[out.to]);
  if (next === 'dozen') return { ...out, to: out.to + 1, value: out.value * 12, spelled: true };
  if (next === 'scale' && (!out.whole || !out.spelled))
    return { ...out, to: out.to + 1, value: tidy(out.value * numberOf(t[out.to])), spelled: true };
  return out;
}

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
  const value = figures(token.low);
  if (value === undefined) return undefined;
  const whole = PLAIN_FIGURES.test(token.low.replace(/^[-+−–]/, '').replace(/[.,]+$/, ''));
  let reading: NumberReading = { from: i, to: i + 1, value, spelled: false, whole, ...(signed && { signed }) };
  if (whole && !signed) {
    const more = cardinal(t, i); // "3 hundred and 21", "5 thousand"
    if (more && more.to > i + 1) reading = { ...reading, to: more.to, value: more.value, spelled: true };
    else reading = decimalTail(t, reading); // "1 point 1"
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
  const head = cls === 'article' ? hundreds(t, i + 1) : hundreds(t, i);
  if (!head || head.value % 100 !== 0) {
    const large = head && ORDINALS.get(t[tied(t, head.to)]?.low ?? '');
    return large?.rank === 'large' && cls !== 'article' && head
      ? { value: head.value * large.value, to: tied(t, head.to) + 1 }
      : undefined;
  }
  const j = classOf(t[head.to]) === 'and' ? head.to + 1 : tied(t, head.to);
  const tail = ORDINALS.get(t[j]?.low ?? '');
  if (tail?.rank === 'large' && j === tied(t, head.to)) return { value: head.value * tail.value, to: j + 1 };
  const rest = ordinalAt(t, j);
  return rest && rest.value < 100 ? { value: head.value + rest.value, to: rest.to } : undefined;
}
