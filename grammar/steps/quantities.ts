/**
 * Step "quantities": every number of the note, with its unit where one was said. A list of named rules is tried at
 * each place where a number can begin; the first that reads something wins, and reading goes on behind it.
 */
import {
  GLYPHS,
  HYPHENS,
  MINUS_SIGNS,
  NUMBERS,
  ORDINAL_ENDINGS,
  ORDINALS,
  PARTS_OF_ONE,
  PRONOUN_AFTER,
  PRONOUN_BEFORE,
} from '../words/numbers.ts';
import { COUNTED, NAMED_HOURS, TIME_BEFORE, TIME_MAYBE_BEFORE } from '../words/times.ts';
import { UNIT_FORMS, UNITS } from '../words/units.ts';
import type { NumberReading } from './numbers.ts';
import {
  colonTime,
  halfHour,
  markedHour,
  minutesAndHour,
  minutesOf,
  namedHour,
  partedTime,
  pointTime,
  timeOf,
} from './quantity-clock.ts';
import { compactHours, hoursAndMinutes } from './quantity-duration.ts';
import { ordinalAt } from './quantity-ordinals.ts';
import { Cursor, type Quantity, type Rule } from './quantity-shape.ts';
import { temperature } from './quantity-temperature.ts';
import { articleUnit, firstOfPair, numberUnit, rateAlone, unitAndPart } from './quantity-units.ts';
import { type Token, tokenize } from './tokens.ts';

export type { Clock, Dimension, Quantity } from './quantity-shape.ts';

/** "21st", "2nd": figures with their ending. */
const typedOrdinal: Rule = {
  name: '<figures>th',
  starts: 'figures',
  read(c) {
    const [figure, ending] = [c.tokens[c.i], c.tokens[c.i + 1]];
    if (figure?.kind !== 'number' || !ending || ending.gap || !ORDINAL_ENDINGS.has(ending.low)) return undefined;
    const value = Number(figure.low.replaceAll(',', ''));
    return Number.isInteger(value) ? c.make(c.i, c.i + 2, value, 'ordinal') : undefined;
  },
};

const spokenOrdinal: Rule = {
  name: '<ordinal>',
  starts: 'words',
  read(c) {
    const ordinal = ordinalAt(c.tokens, c.i);
    return ordinal && c.make(c.i, ordinal.to, ordinal.value, 'ordinal', { spelled: true });
  },
};

/** A number that nothing around it explains; with the time of day it would be, and apart if it was two. */
const plainNumber: Rule = {
  name: '<number>',
  read(c) {
    const n = c.number;
    if (!n) return undefined;
    const q = c.make(n.from, n.to, n.value, 'number', n.spelled ? { spelled: true } : {});
    if (n.ratio) q.ratio = n.ratio;
    const time = timeOf(n);
    if (time) q.clock = time;
    const first = firstOfPair(c, n);
    if (first && n.pair) q.apart = [first, c.make(n.pair.at, n.to, n.pair.second, 'number', { spelled: true })];
    if (weakNumber(c, n)) q.weak = true;
    return q;
  },
};

/** A bare "one" and a bare part of something seldom count anything. */
function weakNumber(c: Cursor, n: NumberReading): boolean {
  return (n.spelled && n.value === 1 && n.to === c.i + 1) || (n.part === true && n.spelled);
}

/**
 * The order: a time's own forms first, for "ten to two" begins with a number and "quarter past" with a fraction; then what
 * has a unit, hours before plain units because minutes may follow without theirs; degrees after units, so that "-2 km" is
 * no temperature; ordinals before numbers, because "twenty-first" begins with twenty; last the number alone.
 */
export const RULES: readonly Rule[] = [
  namedHour,
  colonTime,
  pointTime,
  partedTime,
  minutesAndHour,
  halfHour,
  markedHour,
  compactHours,
  typedOrdinal,
  hoursAndMinutes,
  rateAlone,
  numberUnit,
  articleUnit,
  unitAndPart,
  temperature,
  spokenOrdinal,
  plainNumber,
];

const FIGURE_RULES = RULES.filter((rule) => rule.starts !== 'words');
const WORD_RULES = RULES.filter((rule) => rule.starts !== 'figures');

/** Words at which a quantity can begin; every other token is passed over at the cost of one look-up. */
const STARTERS: ReadonlySet<string> = new Set([
  ...NUMBERS.keys(),
  ...ORDINALS.keys(),
  ...PARTS_OF_ONE.keys(),
  ...GLYPHS.keys(),
  ...NAMED_HOURS.keys(),
  ...MINUS_SIGNS,
  'mid',
  'another',
  ...[...UNIT_FORMS].filter(([, forms]) => forms.some((form) => form.article)).map(([word]) => word),
]);

/** All quantities of the tokens, left to right, none overlapping another. `text` is the note that the tokens come from. */
export function quantitiesOf(tokens: readonly Token[], text: string): Quantity[] {
  const found: Quantity[] = [];
  for (let i = 0; i < tokens.length; ) {
    const token = tokens[i] as Token;
    if (token.kind !== 'number' && !STARTERS.has(token.low)) {
      i++;
      continue;
    }
    const cursor = new Cursor(tokens, text, i);
    let read: Quantity | undefined;
    for (const rule of token.kind === 'number' ? FIGURE_RULES : WORD_RULES) {
      read = rule.read(cursor);
      if (read) break;
    }
    if (read) {
      found.push(read);
      i = read.to;
    } else i++;
  }
  return ranges(withoutEchoes(found, tokens), tokens);
}

/** "forty-five (45)": a number said and written is one number. */
function withoutEchoes(found: Quantity[], t: readonly Token[]): Quantity[] {
  return found.filter((q, k) => {
    const before = found[k - 1];
    const echo = before && q.value === before.value && q.from === before.to + 1 && !q.spelled && before.spelled;
    return !(echo && t[before.to]?.low === '(' && t[q.to]?.low === ')');
  });
}

/** Between the ends of a range: a hyphen, or one of these words. */
const RANGE_WORDS: ReadonlySet<string> = new Set(['to', 'or']);

/** Gives the first end of a range the unit of the second: "3-5 km", "between 30 and 40 degrees", "10 to 15 below". */
function ranges(found: Quantity[], t: readonly Token[]): Quantity[] {
  for (let k = 1; k < found.length; k++) {
    const [a, b] = [found[k - 1] as Quantity, found[k] as Quantity];
    if (!linked(a, b, t)) continue;
    const { weak: _weak, clock: _clock, apart: _apart, ...first } = a;
    if (a.dimension === 'temperature' && b.dimension === 'temperature') {
      // "-18 to -20 C": the scale is said once
      const { bySign: _sign, ...scaled } = a;
      found[k - 1] = b.unit && !a.unit ? { ...scaled, unit: b.unit, range: 'from' } : { ...a, range: 'from' };
      found[k] = { ...b, range: 'to' };
    } else if (b.dimension === 'number' && !b.unit) {
      // "minus ten to fifteen": both are cold
      if (!a.bySign || a.value >= 0) continue;
      const { clock: _time, apart: _two, ...second } = b;
      found[k - 1] = { ...first, range: 'from' };
      found[k] = { ...second, value: -b.value, dimension: 'temperature', bySign: true, range: 'to' };
    } else if (a.dimension === 'number' && !a.unit) {
      const second = stuck(a, b) ? { ...b, value: -b.value } : b;
      const size = b.dimension === 'duration' ? (UNITS.get(b.said ?? 'min')?.factor ?? 1) : 1;
      const sign = b.dimension === 'temperature' && b.value < 0 && !b.bySign ? -1 : 1;
      found[k - 1] = {
        ...first,
        value: first.value * size * sign,
        dimension: b.dimension,
        range: 'from',
        ...(b.unit && { unit: b.unit }),
        ...(b.said && { said: b.said }),
      };
      found[k] = { ...second, range: 'to' };
    }
  }
  return found;
}

/** "2 -7 l": a sign that is a dash, for nothing but a temperature lies below nought. */
const stuck = (a: Quantity, b: Quantity): boolean =>
  a.to === b.from && b.value < 0 && b.dimension !== 'temperature' && !!b.unit;

/** Do a hyphen, "to" or "or" make the two one range? */
function linked(a: Quantity, b: Quantity, t: readonly Token[]): boolean {
  if (b.dimension === 'ordinal' || b.dimension === 'clock' || a.dimension === 'clock') return false;
  if (stuck(a, b)) return true;
  const link = t[a.to];
  if (b.from !== a.to + 1 || !link) return false;
  if (HYPHENS.has(link.low)) return !link.gap || t[b.from]?.gap === true;
  return RANGE_WORDS.has(link.low) || (link.low === 'and' && t[a.from - 1]?.low === 'between');
}

/** Is a bare "one" a pronoun: "the old one", "one of them"? */
function pronoun(q: Quantity, t: readonly Token[]): boolean {
  if (!q.weak || q.value !== 1 || q.unit) return false;
  return PRONOUN_BEFORE.has(t[q.from - 1]?.low ?? '') || PRONOUN_AFTER.has(t[q.to]?.low ?? '');
}

/** A number that its surroundings make a time: "at 1030", "at seven", "ten forty". */
function isTime(q: Quantity, t: readonly Token[]): boolean {
  if (q.dimension !== 'number' || !q.clock) return false;
  const before = t[q.from - 1]?.low ?? '';
  if (COUNTED.has(t[q.to]?.low ?? '')) return false;
  if (TIME_BEFORE.has(before)) return true;
  const long = q.apart !== undefined || (!q.spelled && q.value >= 100 && Number.isInteger(q.value));
  return long && (TIME_MAYBE_BEFORE.has(before) || (q.apart !== undefined && q.clock.hour >= 10));
}

/**
 * Every number of `text`, with or without a unit.
 * @returns spans in UTF-16 units, left to right; durations in minutes, clocks in minutes after midnight as said.
 */
export function quantities(
  text: string,
): { span: [number, number]; value: number; dimension: Quantity['dimension']; unit?: string }[] {
  const tokens = tokenize(text);
  const out = [];
  for (const q of quantitiesOf(tokens, text)) {
    if (pronoun(q, tokens)) continue;
    const { span, unit } = q;
    let { value, dimension } = q;
    if (q.bySign) dimension = 'number'; // a sign alone says no degrees
    if (isTime(q, tokens) && q.clock) {
      dimension = 'clock';
      value = minutesOf(q.clock);
    }
    out.push(unit ? { span, value, dimension, unit } : { span, value, dimension });
  }
  return out;
}
