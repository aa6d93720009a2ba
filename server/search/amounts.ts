/**
 * Numbers: "temp over 103", "weight under 45 lb", "colder than minus 20", "runs over 30 miles", "body condition 4". What
 * is compared is told by the word before it, by its unit, or, for a bare temperature, by whether a dog can have it.
 */
import { type Context, type Entry, quantities } from '../../grammar/index.ts';
import { celsius, kilograms, metres, metresPerSecond } from '../records/index.ts';
import type { Amount } from './query.ts';

/** The amount a query asks for, with the query's words of it blanked out. */
export interface Asked {
  amount?: Amount;
  text: string;
}

const OVER =
  /(?:(?<cold>colder|lower|lighter|shorter|less|fewer) than|(?<under>under|below|at most|max|up to|beneath|<=?)|(?<more>hotter|warmer|higher|heavier|longer|more|further|farther|greater|faster|stronger) than|(?<over>over|above|at least|min|exceeding|>=?))\s*$/u;
const SUBJECTS: readonly [RegExp, Amount['of']][] = [
  [/\b(?:body[ -]condition|condition score|bcs)\b/, 'body-condition'],
  [/\b(?:heart[ -]?rates?|pulse|hr|bpm)\b/, 'heart-rate'],
  [/\b(?:weigh(?:s|ed|ing|t|ts)?|heavier|lighter)\b/, 'weight'],
  [/\b(?:wind|winds)\b/, 'wind'],
  [/\b(?:air|outside|weather|degrees|colder|warmer|cold|below zero)\b/, 'air'],
  [/\b(?:temps?|temperatures?|fever|rectal)\b/, 'temperature'],
  [/\b(?:runs?|ran|miles?|km|kilomet(?:er|re)s?|distance|longer|shorter|further|farther)\b/, 'distance'],
];
/** A dog's temperature lies between these, °C; the air's does not. */
const DOG_C = [35, 43] as const;
/** The word of the subject right before: "temp over", "weight was under", "runs of more than". */
const SUBJECT_WORDS =
  /(?:\b(?:body[ -]condition(?: score)?|condition score|bcs|heart[ -]?rates?|pulse|hr|bpm|weigh(?:s|ed|ing|t|ts)?|wind|winds|air temp(?:erature)?|air|outside|temps?|temperatures?|fever|rectal|runs?|ran|distance)\b(?:\s+(?:was|is|were|of|at|in|for))*\s*)$/u;
const UNIT_FOR: Record<Amount['of'], { imperial?: Amount['unit']; metric?: Amount['unit'] }> = {
  weight: { imperial: 'lb', metric: 'kg' },
  temperature: { imperial: 'F', metric: 'C' },
  'body-condition': {},
  'heart-rate': { imperial: 'bpm', metric: 'bpm' },
  air: { imperial: 'F', metric: 'C' },
  distance: { imperial: 'mi', metric: 'km' },
  wind: { imperial: 'mph', metric: 'km/h' },
};
const FITS: Record<Amount['of'], readonly string[]> = {
  weight: ['lb', 'kg'],
  temperature: ['F', 'C'],
  'body-condition': [],
  'heart-rate': ['bpm'],
  air: ['F', 'C'],
  distance: ['mi', 'km', 'm', 'ft', 'yd'],
  wind: ['mph', 'km/h', 'kn', 'm/s'],
};

/** The first amount of a query. One with a word of comparison, or with a unit or a subject, is one; a bare number is not. */
export function amountIn(text: string, { units }: Pick<Context, 'units'>): Asked {
  const low = text.toLowerCase();
  for (const q of quantities(text)) {
    const before = low.slice(0, q.span[0]);
    const compare = OVER.exec(before);
    const start = compare ? compare.index : q.span[0];
    const behind = low.slice(q.span[1]);
    const tail = /^\s*(?:degrees?|bpm|beats(?: a minute)?|out of (?:nine|9))\b/.exec(behind)?.[0] ?? '';
    const of = subjectOf(low.slice(0, start), compare?.[0] ?? '', `${low.slice(...q.span)}${tail}`, q, units);
    if (!of || (!compare && !SUBJECT_WORDS.test(low.slice(0, start)) && q.unit === undefined && q.value >= 0)) continue;
    const unit = unitOf(of, q.unit, units);
    if (unit === null) continue;
    const g = compare?.groups;
    const amount: Amount = {
      of,
      ...(g?.cold || g?.under ? {} : { atLeast: q.value }),
      ...(g?.more || g?.over ? {} : { atMost: q.value }),
      ...(unit ? { unit } : {}),
    };
    const subject = SUBJECT_WORDS.exec(low.slice(0, start));
    const from = subject ? subject.index : start;
    const to = q.span[1] + tail.length;
    return { amount, text: text.slice(0, from) + ' '.repeat(to - from) + text.slice(to) };
  }
  return { text };
}

function subjectOf(
  before: string,
  compare: string,
  said: string,
  q: { value: number; dimension: string; unit?: string },
  units: 'imperial' | 'metric',
): Amount['of'] | undefined {
  const word = [compare, SUBJECT_WORDS.exec(before)?.[0] ?? '', said].join(' ');
  const named = SUBJECTS.find(([pattern]) => pattern.test(word))?.[1];
  if (named === 'weight' || named === 'body-condition' || named === 'heart-rate' || named === 'wind') return named;
  if (q.dimension === 'weight') return 'weight';
  if (q.dimension === 'speed') return 'wind';
  if (q.dimension === 'distance') return 'distance';
  if (named === 'air' || named === 'temperature' || q.dimension === 'temperature' || (!named && q.value < 0)) {
    const unit = q.unit === 'C' || q.unit === 'F' ? q.unit : units === 'imperial' ? 'F' : 'C';
    const c = celsius(q.value, unit);
    return named !== 'air' && c >= DOG_C[0] && c <= DOG_C[1] ? 'temperature' : 'air';
  }
  return named;
}

/** The unit said, or the kennel's; null where the unit is none of this amount's. */
function unitOf(of: Amount['of'], said: string | undefined, units: 'imperial' | 'metric'): Amount['unit'] | null {
  if (said === undefined) return UNIT_FOR[of][units];
  return FITS[of].includes(said) ? (said as Amount['unit']) : null;
}

/** A value in the unit everything is compared in: kg, °C, metres, m/s; body condition and heart rate as they are. */
export function baseOf(of: Amount['of'], value: number, unit: string | undefined): number {
  switch (of) {
    case 'weight':
      return unit === 'lb' || unit === 'kg' ? kilograms(value, unit) : value;
    case 'temperature':
    case 'air':
      return unit === 'F' || unit === 'C' ? celsius(value, unit) : value;
    case 'distance':
      return unit === undefined ? value : metres(value, unit as 'mi');
    case 'wind':
      return unit === undefined ? value : metresPerSecond(value, unit as 'mph');
    default:
      return value;
  }
}

/** Whether a value, in the base unit, is what was asked. Half a thousandth of give for what the units round. */
export function within(amount: Amount, base: number): boolean {
  const give = 5e-4 * Math.max(1, Math.abs(base));
  const least = amount.atLeast === undefined ? undefined : baseOf(amount.of, amount.atLeast, amount.unit);
  const most = amount.atMost === undefined ? undefined : baseOf(amount.of, amount.atMost, amount.unit);
  return (least === undefined || base >= least - give) && (most === undefined || base <= most + give);
}

/** The value of an entry that an amount is asked of, in the base unit; none for an entry of something else. */
export function amountOf(of: Amount['of'], e: Entry): number | undefined {
  if (e.kind === 'measure' && e.quantity === of) return baseOf(of, e.value, e.unit);
  if (e.kind === 'temperature' && of === 'air') return baseOf(of, e.value, e.unit);
  if (e.kind === 'wind' && of === 'wind') return baseOf(of, e.value, e.unit);
  if (e.kind === 'distance' && of === 'distance' && e.measure === 'total') return baseOf(of, e.value, e.unit);
  return undefined;
}
