/**
 * Units of the trade, in every form they are said or typed. `factor` is how many of the dimension's base unit
 * (metre, kilogram, litre, minute, metre a second) one makes; the figures are those of NIST SP 811, appendix B.8.
 */

export type UnitDimension = 'number' | 'distance' | 'speed' | 'temperature' | 'duration' | 'weight' | 'volume';

export interface Unit {
  /** Canonical spelling, as entries carry it. */
  unit: string;
  dimension: UnitDimension;
  factor: number;
}

/** How a unit's word may be used. */
export interface UnitForm extends Unit {
  /** The form's words after the first, as tokens. */
  rest: readonly string[];
  /** May "a" or "an" stand for one of it? Not for letters and signs: "a m" is a time. */
  article: boolean;
  /** Only behind figures: "5 m" is metres, "five m" is nothing. */
  figures: boolean;
  /** A word in its full form that is also something else (foot, yard, second): unsure unless its use tells. */
  doubtful: boolean;
}

export interface UnitRow {
  unit: string;
  dimension: UnitDimension;
  factor: number;
  /** Full words: an article may stand before them. */
  words: string;
  /** Abbreviations: behind spelled numbers too. */
  short?: string;
  /** Letters that mean the unit only behind figures. */
  letters?: string;
  doubtful?: boolean;
}

/** What the units are compiled from. */
export interface UnitTables {
  units: readonly UnitRow[];
  /** Speeds said as a distance and a time. */
  rates: readonly { unit: string; of: string; per: readonly string[] }[];
  /** Forms of several words that no rule builds. */
  phrases: readonly { unit: string; words: readonly string[] }[];
}

const TABLE: UnitTables['units'] = [
  { unit: 'mi', dimension: 'distance', factor: 1609.344, words: 'mile miles miler milers', short: 'mi mi.' },
  {
    unit: 'km',
    dimension: 'distance',
    factor: 1000,
    words: 'kilometre kilometres kilometer kilometers klick klicks click clicks',
    short: 'k ks km kms',
  },
  { unit: 'm', dimension: 'distance', factor: 1, words: 'metre metres meter meters', letters: 'm' },
  {
    unit: 'cm',
    dimension: 'distance',
    factor: 0.01,
    words: 'centimetre centimetres centimeter centimeters',
    short: 'cm cms',
  },
  {
    unit: 'mm',
    dimension: 'distance',
    factor: 0.001,
    words: 'millimetre millimetres millimeter millimeters',
    short: 'mm',
  },
  { unit: 'ft', dimension: 'distance', factor: 0.3048, words: 'foot feet', short: 'ft', doubtful: true },
  { unit: 'yd', dimension: 'distance', factor: 0.9144, words: 'yard yards', short: 'yd yds', doubtful: true },
  { unit: 'in', dimension: 'distance', factor: 0.0254, words: 'inch inches', letters: 'in' },
  { unit: 'lb', dimension: 'weight', factor: 0.45359237, words: 'pound pounds', short: 'lb lbs' },
  { unit: 'oz', dimension: 'weight', factor: 0.028349523125, words: 'ounce ounces', short: 'oz' },
  {
    unit: 'kg',
    dimension: 'weight',
    factor: 1,
    words: 'kilo kilos kilogram kilograms kilogramme kilogrammes',
    short: 'kg kgs k.g.',
  },
  { unit: 'g', dimension: 'weight', factor: 0.001, words: 'gram grams gramme grammes', short: 'gr gs', letters: 'g' },
  { unit: 'mg', dimension: 'weight', factor: 0.000001, words: 'milligram milligrams', short: 'mg' },
  { unit: 'l', dimension: 'volume', factor: 1, words: 'litre litres liter liters', letters: 'l' },
  { unit: 'dl', dimension: 'volume', factor: 0.1, words: 'decilitre decilitres deciliter deciliters', short: 'dl' },
  {
    unit: 'ml',
    dimension: 'volume',
    factor: 0.001,
    words: 'millilitre millilitres milliliter milliliters',
    short: 'ml mls',
  },
  { unit: 'cup', dimension: 'volume', factor: 0.2365882365, words: 'cup cups' },
  { unit: 'pt', dimension: 'volume', factor: 0.473176473, words: 'pint pints', short: 'pt pts' },
  { unit: 'qt', dimension: 'volume', factor: 0.946352946, words: 'quart quarts', short: 'qt qts' },
  { unit: 'gal', dimension: 'volume', factor: 3.785411784, words: 'gallon gallons', short: 'gal gals' },
  { unit: 'min', dimension: 'duration', factor: 1, words: 'minute minutes', short: 'min mins' },
  { unit: 'h', dimension: 'duration', factor: 60, words: 'hour hours', short: 'hr hrs', letters: 'h' },
  {
    unit: 's',
    dimension: 'duration',
    factor: 1 / 60,
    words: 'second seconds',
    short: 'sec secs',
    letters: 's',
    doubtful: true,
  },
  { unit: 'd', dimension: 'duration', factor: 1440, words: 'day days' },
  { unit: 'wk', dimension: 'duration', factor: 10080, words: 'week weeks', short: 'wk wks' },
  // Calendar lengths as the reference sets count them: a month of 30 days, a year of 365.
  { unit: 'fortnight', dimension: 'duration', factor: 20160, words: 'fortnight fortnights' },
  { unit: 'month', dimension: 'duration', factor: 43200, words: 'month months' },
  { unit: 'year', dimension: 'duration', factor: 525600, words: 'year years' },
  { unit: 'decade', dimension: 'duration', factor: 5256000, words: 'decade decades' },
  { unit: 'mph', dimension: 'speed', factor: 0.44704, words: '', short: 'mph' },
  { unit: 'km/h', dimension: 'speed', factor: 1 / 3.6, words: '', short: 'kph kmh kmph' },
  { unit: 'm/s', dimension: 'speed', factor: 1, words: '', short: 'mps' },
  { unit: 'kn', dimension: 'speed', factor: 1852 / 3600, words: '', short: 'knot knots kn kt kts' },
  { unit: 'ladle', dimension: 'number', factor: 1, words: 'ladle ladles ladleful ladlefuls' },
  { unit: 'scoop', dimension: 'number', factor: 1, words: 'scoop scoops scoopful scoopfuls' },
  { unit: 'piece', dimension: 'number', factor: 1, words: 'piece pieces chunk chunks' },
  { unit: '%', dimension: 'number', factor: 1, words: '', short: '% percent pct' },
  { unit: 'bpm', dimension: 'number', factor: 1, words: '', short: 'bpm' },
];

/** Speeds said as a distance and a time: every word of the distance with every way to say the time. */
const RATES: UnitTables['rates'] = [
  { unit: 'mph', of: 'mi', per: ['an hour', 'a hour', 'per hour', '/ h', '/ hr', '/ hour', 'per hr', 'an hr'] },
  { unit: 'km/h', of: 'km', per: ['an hour', 'a hour', 'per hour', '/ h', '/ hr', '/ hour', 'per hr', 'an hr'] },
  { unit: 'm/s', of: 'm', per: ['a second', 'per second', '/ s', '/ sec', '/ second', 'a sec', 'per sec'] },
];
/** Forms of several words that no rule builds. */
const PHRASES: UnitTables['phrases'] = [
  { unit: 'bpm', words: ['beats a minute', 'beats per minute', 'beats / min', 'beats / minute', 'beats'] },
  { unit: '%', words: ['per cent'] },
];

/** Words that may stand between a number and its unit, or between "a" and its unit, and change nothing. */
export const FILLERS: ReadonlySet<string> = new Set(
  'whole full good solid more extra additional less fewer long short quick big small little easy hard straight decent nice odd some heaping level fat'.split(
    ' ',
  ),
);
/** Degree words and signs; a scale's name may follow. */
export const DEGREES: ReadonlySet<string> = new Set(['degree', 'degrees', 'deg', 'degs', '°', 'º']);
/** Names of the two scales. A letter needs a number or a degree sign right before it. */
export const SCALES: ReadonlyMap<string, 'F' | 'C'> = new Map([
  ['c', 'C'],
  ['celsius', 'C'],
  ['centigrade', 'C'],
  ['f', 'F'],
  ['fahrenheit', 'F'],
  // as they are mistyped
  ['farenheit', 'F'],
  ['farenheight', 'F'],
  ['fahrenheight', 'F'],
  ['celcius', 'C'],
]);
/** "eighteen below", "5 above": which side of nought. */
export const SIDES_OF_ZERO: ReadonlyMap<string, 1 | -1> = new Map([
  ['below', -1],
  ['above', 1],
]);

/**
 * Checks the tables and makes the look-up.
 * @throws Error that names the entry: a form or unit that stands twice, one in capitals, an unknown unit, a factor of 0.
 */
export function compileUnits({ units: rows, rates, phrases }: UnitTables): {
  forms: Map<string, UnitForm[]>;
  units: Map<string, Unit>;
} {
  const forms = new Map<string, UnitForm[]>();
  const units = new Map<string, Unit>();
  const put = (row: Unit, phrase: string, use: Pick<UnitForm, 'article' | 'figures' | 'doubtful'>) => {
    const [first, ...rest] = phrase.split(' ');
    if (!first || phrase !== phrase.toLowerCase())
      throw new Error(`words/units.ts, ${row.unit}: "${phrase}" must be written in lower case`);
    const list = forms.get(first) ?? [];
    if (list.some((form) => form.rest.join(' ') === rest.join(' ')))
      throw new Error(`words/units.ts, ${row.unit}: "${phrase}" stands twice`);
    list.push({ unit: row.unit, dimension: row.dimension, factor: row.factor, rest, ...use });
    list.sort((a, b) => b.rest.length - a.rest.length); // the longest form is tried first
    forms.set(first, list);
  };
  const split = (s: string | undefined) => (s ? s.split(' ') : []);
  for (const row of rows) {
    if (units.has(row.unit)) throw new Error(`words/units.ts: the unit ${row.unit} stands twice`);
    if (!(row.factor > 0)) throw new Error(`words/units.ts, ${row.unit}: the factor must be above 0`);
    units.set(row.unit, { unit: row.unit, dimension: row.dimension, factor: row.factor });
    const doubtful = row.doubtful ?? false;
    for (const word of split(row.words)) put(row, word, { article: true, figures: false, doubtful });
    for (const word of split(row.short)) put(row, word, { article: false, figures: false, doubtful: false });
    for (const word of split(row.letters)) put(row, word, { article: false, figures: true, doubtful: false });
  }
  const known = (name: string) => {
    const found = units.get(name);
    if (!found) throw new Error(`words/units.ts: "${name}" is no unit of the table`);
    return found;
  };
  for (const rate of rates) {
    const length = rows.find((row) => row.unit === known(rate.of).unit) as UnitRow;
    for (const word of [...split(length.words), ...split(length.short), ...split(length.letters)])
      for (const per of rate.per)
        put(known(rate.unit), `${word} ${per}`, { article: true, figures: false, doubtful: false });
  }
  for (const phrase of phrases)
    for (const words of phrase.words)
      put(known(phrase.unit), words, { article: false, figures: false, doubtful: false });
  return { forms, units };
}

const compiled = compileUnits({ units: TABLE, rates: RATES, phrases: PHRASES });
/** Unit forms by their first word, longest first. */
export const UNIT_FORMS: ReadonlyMap<string, readonly UnitForm[]> = compiled.forms;
/** Every unit by its canonical spelling. */
export const UNITS: ReadonlyMap<string, Unit> = compiled.units;
