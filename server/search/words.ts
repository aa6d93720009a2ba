/** A query in words: a chip for each part, and the whole as one line. */
import type { Amount, List, Query } from './query.ts';

/** One part of a query. */
export interface Chip {
  /** The part, and which of its values where it is a list. */
  part: keyof Query;
  value?: string;
  /** In words: "left", "since 1 Jan 2027". */
  label: string;
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
/** A day in words: "14 Jan 2027". */
export const dayWords = (day: string) =>
  `${Number(day.slice(8))} ${MONTHS[Number(day.slice(5, 7)) - 1]} ${day.slice(0, 4)}`;

const PLAIN: Partial<Record<List, Record<string, string>>> = {
  kinds: {
    hitch: 'places in the team',
    move: 'moves in the team',
    drop: 'dogs that left the team',
    clock: 'times of day',
    duration: 'how long',
    finding: 'findings',
    intake: 'food and water',
    temperature: 'air temperature',
    attitude: 'how dogs went',
    measure: 'things measured',
    remark: 'remarks',
  },
  signs: {
    'loose-stool': 'loose stool',
    'bloody-stool': 'blood in the stool',
    'dark-urine': 'dark urine',
    'in-season': 'in season',
    rub: 'rubbed',
    any: 'nothing named',
  },
  acts: { ointment: 'ointment put on', rested: 'given rest' },
  took: { all: 'took all of it', most: 'took most of it', some: 'took some of it', none: 'refused' },
  manners: { good: 'went well', slack: 'slack tug', strong: 'pulling hard', eager: 'eager to go' },
  drops: { dropped: 'dropped at a stop', loaded: 'loaded in the sled', home: 'stayed home' },
  measured: { 'body-condition': 'body condition', 'heart-rate': 'heart rate', temperature: "a dog's temperature" },
};

function valueWord(list: List, value: string): string {
  const word = PLAIN[list]?.[value] ?? value.replaceAll('-', ' ');
  if (list === 'states') return `booties ${word}`;
  if (list === 'positions') return `in ${word}`;
  if (list === 'surfaces') return `trail ${word}`;
  if (list === 'conditions') return `weather ${word}`;
  if (list === 'gear') return `gear ${word}`;
  return word;
}

const AMOUNT_NAMES: Record<Amount['of'], string> = {
  weight: 'weight',
  temperature: "dog's temperature",
  'body-condition': 'body condition',
  'heart-rate': 'heart rate',
  air: 'air',
  distance: 'run of',
  wind: 'wind',
};

function amountWords({ of, atLeast, atMost, unit }: Amount): string {
  const u = unit === 'F' || unit === 'C' ? ` °${unit}` : unit ? ` ${unit}` : '';
  const n = (value: number) => `${String(value).replace('-', '−')}${u}`;
  const name = AMOUNT_NAMES[of];
  if (atLeast !== undefined && atLeast === atMost) return `${name} ${n(atLeast)}`;
  if (atLeast !== undefined && atMost !== undefined) return `${name} ${n(atLeast)} to ${n(atMost)}`;
  if (atLeast !== undefined) return `${name} ${n(atLeast)} or more`;
  return `${name} ${n(atMost as number)} or less`;
}

function daysWords({ from, to }: Query): string {
  if (from && to) return from === to ? `on ${dayWords(from)}` : `${dayWords(from)} to ${dayWords(to)}`;
  return from ? `since ${dayWords(from)}` : `up to ${dayWords(to as string)}`;
}

/** Signs as what is sorted out: "no soreness". */
const DENIED: Record<string, string> = {
  lame: 'no lameness',
  sore: 'no soreness',
  stiff: 'no stiffness',
  swollen: 'no swelling',
  hot: 'no heat',
  split: 'no splits',
  cut: 'no cuts',
  worn: 'no wear',
  rub: 'no rubs',
  iced: 'no ice',
  vomiting: 'no vomiting',
  coughing: 'no coughing',
};

/** The parts, in the order in which they are said: who, where, what, in which circumstances, when, and the words. */
export function chipsOf(q: Query): Chip[] {
  const chips: Chip[] = [];
  const list = (part: List) => {
    for (const value of q[part] ?? [])
      chips.push({ part, value, label: part === 'dogs' ? value : valueWord(part, value) });
  };
  list('dogs');
  if (q.side) chips.push({ part: 'side', label: q.side === 'both' ? 'both sides' : q.side });
  if (q.end) chips.push({ part: 'end', label: q.end === 'both' ? 'front and hind' : q.end });
  list('parts');
  list('signs');
  for (const part of [
    'kinds',
    'acts',
    'states',
    'took',
    'what',
    'manners',
    'drops',
    'gaits',
    'gear',
    'measured',
  ] as const)
    list(part);
  if (q.amount) chips.push({ part: 'amount', label: amountWords(q.amount) });
  list('positions');
  list('surfaces');
  list('conditions');
  if (q.from || q.to) chips.push({ part: 'from', label: daysWords(q) });
  if (q.season) chips.push({ part: 'season', label: `season ${q.season}` });
  if (q.run) chips.push({ part: 'run', label: 'one run' });
  if (q.words) chips.push({ part: 'words', label: `the words “${q.words}”` });
  return chips;
}

/** Whether the query asks for something that can be told as not so. */
const canBeDenied = (q: Query) =>
  Boolean(q.signs?.length || q.parts?.length || q.side || q.end || q.kinds?.includes('finding'));

/** The query as one line: "Juniper · wrist · sore, not counting “no soreness”". */
export function queryWords(q: Query): string {
  const chips = chipsOf(q).map((chip) => chip.label);
  if (!chips.length) return 'nothing yet';
  const line = chips.join(' · ');
  if (!canBeDenied(q)) return line;
  const denied = q.signs?.length === 1 ? (DENIED[q.signs[0] as string] ?? 'none seen') : 'looks good';
  if (q.show === 'all') return `${line}, “${denied}” and “fine now” counted in`;
  if (q.show === 'not') return `${line}, told as “${denied}” or “fine now”`;
  return `${line}, not counting “${denied}” and “fine now”`;
}
