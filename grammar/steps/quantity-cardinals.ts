/** How English builds a whole number out of words: "twenty-two", "three hundred and six", "twelve thousand". */
import { COUNTED_BEHIND_TIME, HYPHENS, NUMBERS, type NumberClass, ORDINALS, PARTS_OF_ONE } from '../words/numbers.ts';
import { MINUTE_SIDES } from '../words/times.ts';
import type { Token } from './tokens.ts';

export const classOf = (t: Token | undefined): NumberClass | undefined => t && NUMBERS.get(t.low)?.class;
export const numberOf = (t: Token | undefined): number => (t && NUMBERS.get(t.low)?.value) ?? Number.NaN;
/** Rounds off what binary fractions add ("12.1 + 0.2"), at twelve digits. */
export const tidy = (x: number): number => (Number.isInteger(x) && Math.abs(x) < 1e11 ? x : Number(x.toPrecision(12)));

/** The index after a hyphen that ties two words together at `i`, or `i` itself. A dash with blanks ties a ten to its digit only. */
export function tied(t: readonly Token[], i: number, blanks = false): number {
  const dash = t[i];
  const next = t[i + 1];
  if (!dash || !next || !HYPHENS.has(dash.low)) return i;
  return (!dash.gap && !next.gap) || (blanks && dash.gap && next.gap) ? i + 1 : i;
}

/** A value and the token behind it. */
export interface Piece {
  value: number;
  to: number;
}

/** "mile twenty three legged", "at five thirty eight dogs": does the digit at `j` count what follows, apart from the ten before it? */
function countsNext(t: readonly Token[], ten: number, j: number): boolean {
  const next = t[t[j + 1]?.low === '-' ? j + 2 : j + 1]?.low ?? '';
  if (next === 'legged') return true;
  // "five after four thirty eight miles": the hour has its minutes already
  if (MINUTE_SIDES.has(t[ten - 2]?.low ?? '') && (classOf(t[ten - 3]) || PARTS_OF_ONE.has(t[ten - 3]?.low ?? '')))
    return false;
  const hour = classOf(t[ten - 2]) === 'ten' ? Number.NaN : numberOf(t[ten - 1]);
  return hour >= 1 && hour <= 12 && numberOf(t[ten]) < 60 && COUNTED_BEHIND_TIME.has(next);
}

/** 1 to 99 in words: "nine", "nineteen", "ninety", "ninety-nine", "ninetynine", and "twenty 8" as recognisers write it. */
export function small(t: readonly Token[], i: number): (Piece & { class: NumberClass }) | undefined {
  const cls = classOf(t[i]);
  const value = numberOf(t[i]);
  if (cls === 'digit' || cls === 'teen' || cls === 'joined') return { value, to: i + 1, class: cls };
  if (cls !== 'ten') return undefined;
  const j = tied(t, i + 1, true);
  if (j > i + 1 && ORDINALS.get(t[j]?.low ?? '')?.rank === 'digit' && !t[j]?.gap) return undefined; // "twenty-fifth"
  if (classOf(t[j]) === 'digit' && !countsNext(t, i, j))
    return { value: value + numberOf(t[j]), to: j + 1, class: 'ten' };
  const figure = t[j];
  if (figure?.kind === 'number' && figure.low.length === 1 && figure.low !== '0')
    return { value: value + Number(figure.low), to: j + 1, class: 'ten' };
  return { value, to: i + 1, class: 'ten' };
}

export const PLAIN_FIGURES = /^\d+$/;
/** Up to 999 in words or figures that a "hundred", "thousand" or the like may follow. */
export function lead(t: readonly Token[], i: number): Piece | undefined {
  const word = small(t, i);
  if (word) return word;
  const figure = t[i];
  return figure?.kind === 'number' && PLAIN_FIGURES.test(figure.low)
    ? { value: Number(figure.low), to: i + 1 }
    : undefined;
}

/** "three hundred and six", with the hundred there or not. */
export function hundreds(t: readonly Token[], i: number): Piece | undefined {
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
  if (
    rest &&
    rest.value < 100 &&
    classOf(t[rest.to]) !== 'hundred' &&
    (and ? !overPart(t, rest) : t[j]?.kind === 'word')
  )
    return { value: sum.value + rest.value, to: rest.to };
  return sum;
}

/** Does a part's name follow that makes this a proper fraction: "two million and *three* fifths"? */
function overPart(t: readonly Token[], top: Piece): boolean {
  const below = PARTS_OF_ONE.get(t[tied(t, top.to, true)]?.low ?? '');
  return below !== undefined && top.value < below;
}

/** A whole number in words: hundreds, thousands and so on in falling order. */
export function cardinal(t: readonly Token[], i: number): (Piece & { scale: number }) | undefined {
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
      const and = classOf(t[j]) === 'and';
      if (and) j++;
      const next = t[j]?.kind === 'word' ? hundreds(t, j) : undefined;
      if (!next || next.value >= last || (and && overPart(t, next))) break;
      part = next;
      to = next.to;
      open = true;
    } else break;
  }
  if (open) total += part.value;
  return { value: total, to, scale: open ? 1 : last };
}

/** Digits after "point": "point zero three", "point two five", "point seventy-one", "point 77". */
export function decimals(t: readonly Token[], i: number): { digits: string; to: number } | undefined {
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
