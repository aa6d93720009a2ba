/**
 * The one place that turns an entry into a short plain sentence: "Juniper · left wrist · lame, mild". Every page, the
 * read-back aloud and the screen-reader names use it. Figures stay in the unit that was said.
 */
import type { Assertion, Entry, EntryOf } from '../grammar/entry.ts';
import { ASSERTION_WORDS, listWords, PAW_WORDS, valueWord } from './labels.ts';

/** An entry in words: who it is about ("" when no dog is meant), what is said, and what is added to it. */
export interface Said {
  who: string;
  what: string;
}

/** A number as people write it: a true minus sign, no trailing zeros, thousands unspaced. */
export function figure(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded).replace('-', '−');
}

/** Minutes as "2 h 50 min", "50 min" or "3 h". */
export function minutesWords(minutes: number): string {
  const whole = Math.round(minutes);
  const h = Math.floor(whole / 60);
  const m = whole % 60;
  if (h === 0) return `${m} min`;
  return m === 0 ? `${h} h` : `${h} h ${m} min`;
}

/** The dogs of an entry: `['*']` is the whole team. */
export function dogsWords(dogs: readonly string[]): string {
  return dogs.length === 1 && dogs[0] === '*' ? 'whole team' : listWords(dogs);
}

const PLURALS: Record<string, string> = { foot: 'feet', web: 'webs' };
const plural = (part: string) => PLURALS[part] ?? (part === 'triceps' ? part : `${part}s`);
/** Parts that a dog has once; they are never told as "both". */
const SINGLE = new Set(['chest', 'neck', 'back', 'tail', 'nose', 'mouth', 'groin']);

/** A place on the body: "left wrist", "right hind foot", "both front feet", "all four feet". */
export function placeWords(e: Pick<EntryOf<'finding'>, 'part' | 'side' | 'end'>): string {
  if (!e.part) return [e.side, e.end].filter(Boolean).join(' ');
  if (e.side === 'both' && e.end === 'both') return `all four ${plural(e.part)}`;
  const end = e.end === 'both' ? 'front and hind' : e.end;
  const many = (e.side === 'both' || e.end === 'both') && !SINGLE.has(e.part);
  return [e.side, end, many ? plural(e.part) : e.part].filter(Boolean).join(' ');
}

/** Signs as a thing one can have none of: "no swelling". Those left out are denied with "not". */
const NO_SIGN: Record<string, string> = {
  lame: 'no lameness',
  sore: 'no soreness',
  stiff: 'no stiffness',
  swollen: 'no swelling',
  hot: 'no heat',
  bruised: 'no bruising',
  bleeding: 'no bleeding',
  infected: 'no infection',
  cut: 'no cuts',
  split: 'no splits',
  worn: 'no wear',
  torn: 'no tears',
  rub: 'no rubs',
  iced: 'no ice',
  frostbite: 'no frostbite',
  licking: 'no licking',
  vomiting: 'no vomiting',
  'loose-stool': 'no loose stool',
  'bloody-stool': 'no blood in the stool',
  coughing: 'no coughing',
  'dark-urine': 'no dark urine',
  any: 'nothing found',
};

function findingWords(e: EntryOf<'finding'>, as: Assertion): string {
  const sign = e.sign === 'any' ? '' : valueWord('finding', 'sign', e.sign);
  const trend = e.trend === 'same' ? 'no change' : e.trend;
  let how: string;
  if (as === 'absent') how = NO_SIGN[e.sign] ?? `not ${sign}`;
  else if (as === 'resolved') how = sign ? `was ${sign}, fine now` : 'fine now';
  else if (as === 'past') how = sign ? `${sign} on an earlier day` : 'something on an earlier day';
  else if (as === 'possible') how = `maybe ${sign || 'something'}`;
  else if (as === 'planned') how = `planned: ${sign || 'to be looked at'}`;
  else how = sign || 'something seen';
  return [placeWords(e), [how, e.severity, trend].filter(Boolean).join(', ')].filter(Boolean).join(' · ');
}

const ACT_WORDS: Record<string, string> = { ointment: 'ointment', rested: 'given rest' };
const INTAKE_NAMES = { water: 'water', snack: 'snack', meal: 'meal' } as const;

function intakeWords(e: EntryOf<'intake'>): string {
  const name = e.item ? `${INTAKE_NAMES[e.what]} (${e.item})` : INTAKE_NAMES[e.what];
  const verb = e.what === 'water' ? 'drank' : 'ate';
  const took = {
    all: e.what === 'water' ? `drank well, ${name}` : `ate all of the ${name}`,
    most: `${verb} most of the ${name}`,
    some: `${verb} some of the ${name}`,
    none: `refused the ${name}`,
  }[e.took];
  if (e.amount === undefined) return took;
  return `${took}, ${[figure(e.amount), e.unit].filter(Boolean).join(' ')} each`;
}

function bootiesWords(e: EntryOf<'booties'>): string {
  if (!e.paws?.length) return `booties ${e.state}`;
  const paws = listWords(e.paws.map((paw) => PAW_WORDS[paw]));
  return `${paws} ${e.paws.length === 1 ? 'bootie' : 'booties'} ${e.state}`;
}

/** Where a dog stands: "in lead, left". */
function standing(e: { position?: string; side?: string }): string {
  return [e.position ? `in ${e.position}` : 'in the team', e.side].filter(Boolean).join(', ');
}

function distanceWords(e: EntryOf<'distance'>): string {
  const said = `${figure(e.value)} ${e.unit}`;
  if (e.measure === 'mark') return e.unit === 'mi' ? `at mile ${figure(e.value)}` : `at ${said}`;
  return { total: `${said}, the whole run`, leg: `${said}, one leg`, remaining: `${said} to go` }[e.measure];
}

function measureWords(e: EntryOf<'measure'>): string {
  if (e.quantity === 'body-condition') return `body condition ${figure(e.value)}/9`;
  const unit = e.unit === 'F' || e.unit === 'C' ? `°${e.unit}` : e.unit;
  return [valueWord('measure', 'quantity', e.quantity), figure(e.value), unit].filter(Boolean).join(' ');
}

/** What is said, without its dogs and without its assertion (findings carry theirs inside). */
function plainWords(e: Entry): string {
  switch (e.kind) {
    case 'hitch':
      return [standing(e), e.driver ? `${e.driver} driving` : ''].filter(Boolean).join(' · ');
    case 'move':
      return `moved, now ${standing(e)}`;
    case 'drop':
      return valueWord('drop', 'manner', e.manner);
    case 'distance':
      return distanceWords(e);
    case 'clock':
      return e.event === 'other' ? `at ${e.time}` : `${valueWord('clock', 'event', e.event)} at ${e.time}`;
    case 'duration':
      return e.of === 'other' ? minutesWords(e.minutes) : `${e.of} of ${minutesWords(e.minutes)}`;
    case 'speed':
      return `${figure(e.value)} ${e.unit}`;
    case 'finding':
      return findingWords(e, e.assertion ?? 'present');
    case 'care': {
      const act = ACT_WORDS[e.act] ?? e.act;
      const item = e.item === act ? undefined : e.item;
      return [placeWords(e), item ? `${act} (${item})` : act].filter(Boolean).join(' · ');
    }
    case 'booties':
      return bootiesWords(e);
    case 'intake':
      return intakeWords(e);
    case 'temperature':
      return `${figure(e.value)} °${e.unit}`;
    case 'wind':
      return `wind ${figure(e.value)} ${e.unit}`;
    case 'weather':
      return valueWord('weather', 'condition', e.condition);
    case 'trail':
      return `trail ${e.surface}`;
    case 'attitude':
      return valueWord('attitude', 'manner', e.manner);
    case 'gait':
      return e.gait === 'lope' ? 'loping' : { walk: 'walking', trot: 'trotting', pace: 'pacing' }[e.gait];
    case 'measure':
      return measureWords(e);
    case 'gear':
      return `${e.item} ${e.state}`;
    case 'remark':
      return `“${e.text}”`;
  }
}

/** An entry in words, its dogs apart from what is said of them. */
export function said(e: Entry): Said {
  const what = plainWords(e);
  const as = e.assertion ?? 'present';
  const who = dogsWords(e.dogs);
  if (as === 'present' || e.kind === 'finding') return { who, what };
  return { who, what: as === 'possible' ? `maybe ${what}` : `${ASSERTION_WORDS[as]}: ${what}` };
}

/** An entry as one short sentence: "Juniper · left wrist · lame, mild". */
export function sentence(e: Entry): string {
  const { who, what } = said(e);
  return [who, what].filter(Boolean).join(' · ');
}

/** An entry as it is read out: no middle dots, units in words. */
export function aloud(e: Entry): string {
  return sentence(e)
    .replaceAll(' · ', ', ')
    .replaceAll('−', 'minus ')
    .replace(/°F/, 'degrees')
    .replace(/°C/, 'degrees Celsius')
    .replace(/\bmi\b/, 'miles')
    .replace(/\bkm\b/, 'kilometres');
}
