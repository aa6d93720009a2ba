/**
 * Plain words for the wire's kinds, fields and values, as they stand on labels and in forms. Sentences are made in
 * words.ts. A value that has no word of its own here reads as it is written ("freezing-rain" as "freezing rain").
 */
import type { Assertion, Kind, Paw } from '../grammar/entry.ts';

/** What an entry of a kind is called on a label. */
export const KIND_WORDS: Record<Kind, string> = {
  hitch: 'in the team',
  move: 'moved',
  drop: 'left the team',
  distance: 'distance',
  clock: 'time of day',
  duration: 'how long',
  speed: 'speed',
  finding: 'finding',
  care: 'care',
  booties: 'booties',
  intake: 'food and water',
  temperature: 'air temperature',
  wind: 'wind',
  weather: 'weather',
  trail: 'trail',
  attitude: 'how it went',
  gait: 'gait',
  measure: 'measured',
  gear: 'gear',
  remark: 'remark',
};

/** What a field is called on a label. `of` and `event` and the like read better with their kind. */
export const FIELD_WORDS: Record<string, string> = {
  dogs: 'dogs',
  assertion: 'said as',
  position: 'position',
  side: 'side',
  driver: 'driver',
  manner: 'how',
  measure: 'which distance',
  value: 'number',
  unit: 'unit',
  event: 'what happened',
  time: 'time',
  of: 'of what',
  minutes: 'minutes',
  part: 'part',
  end: 'front or hind',
  sign: 'sign',
  severity: 'how bad',
  trend: 'change',
  act: 'what was done',
  item: 'with or of what',
  state: 'state',
  paws: 'paws',
  what: 'what',
  took: 'took',
  amount: 'amount, each',
  condition: 'weather',
  surface: 'trail',
  gait: 'gait',
  quantity: 'what was measured',
  text: 'words',
};

export const ASSERTION_WORDS: Record<Assertion, string> = {
  present: 'so now',
  possible: 'maybe',
  absent: 'not so',
  resolved: 'was so, fine now',
  past: 'on an earlier day',
  planned: 'planned',
};

export const PAW_WORDS: Record<Paw, string> = {
  LF: 'left front',
  RF: 'right front',
  LH: 'left hind',
  RH: 'right hind',
};

/** Values whose plain word differs from the wire's, by `kind.field`. */
const VALUE_WORDS: Record<string, Record<string, string>> = {
  'drop.manner': { dropped: 'dropped at a stop', loaded: 'loaded in the sled', home: 'stayed home' },
  'distance.measure': { total: 'whole run', mark: 'where the team is', leg: 'one leg', remaining: 'still to go' },
  'clock.event': { start: 'left the yard', stop: 'stopped', finish: 'back in the yard', other: 'other' },
  'duration.of': { run: 'the run', stop: 'a stop', other: 'something else' },
  'finding.sign': { any: 'nothing named', rub: 'rubbed', 'loose-stool': 'loose stool', 'in-season': 'in season' },
  'finding.severity': { mild: 'mild', moderate: 'moderate', severe: 'severe' },
  'care.act': { ointment: 'ointment put on', rested: 'given rest' },
  'intake.took': { all: 'all of it', most: 'most of it', some: 'some of it', none: 'none' },
  'attitude.manner': { good: 'went well', slack: 'slack tug', strong: 'pulling hard', eager: 'eager to go' },
  'measure.quantity': { 'body-condition': 'body condition (of 9)', 'heart-rate': 'heart rate' },
  'temperature.unit': { F: '°F', C: '°C' },
  'measure.unit': { F: '°F', C: '°C' },
};

/** The plain word for a value of a field: `valueWord('finding', 'sign', 'loose-stool')` is "loose stool". */
export function valueWord(kind: Kind, field: string, value: string): string {
  if (field === 'assertion') return ASSERTION_WORDS[value as Assertion];
  if (field === 'paws') return PAW_WORDS[value as Paw];
  if (field === 'end' && value === 'both') return 'front and hind';
  return VALUE_WORDS[`${kind}.${field}`]?.[value] ?? value.replaceAll('-', ' ');
}

/** "One", "one and two", "one, two and three". */
export function listWords(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

/** `counted(1, 'note')` is "1 note"; `counted(3, 'note')` is "3 notes". */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** How a note came in. */
export const SOURCE_WORDS = {
  typed: 'typed',
  dictated: 'spoken',
  recording: 'from a recording',
  import: 'from a notebook',
} as const;
