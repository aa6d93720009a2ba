/**
 * Numbers and quantities: phrases grouped by what they must read as, phrases that must not, and whole notes. Invented
 * notes; the forms are those a musher, a racer or a veterinarian says or types (common practice).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Quantity, quantities, quantitiesOf } from '../../grammar/steps/quantities.ts';
import { tokenize } from '../../grammar/steps/tokens.ts';
import { compileNumbers, type NumberClass } from '../../grammar/words/numbers.ts';
import { compileUnits, type UnitRow } from '../../grammar/words/units.ts';

const read = (text: string) => quantitiesOf(tokenize(text), text);
/** "14 mi", "-18 temperature F", "170 min", "02:50" … : a reading in short. */
function short(q: Quantity): string {
  const time = q.clock ? `${q.clock.hour}:${String(q.clock.minute).padStart(2, '0')}${q.clock.meridiem ?? ''}` : '';
  const amount = Number(q.value.toFixed(4));
  switch (q.dimension) {
    case 'clock':
      return time;
    case 'duration':
      return `${amount} min`;
    case 'number':
      return q.unit ? `${amount} ${q.unit}` : `${amount}`;
    case 'ordinal':
      return `${amount}.`;
    case 'temperature':
      return `${amount}°${q.unit ?? ''}`;
    case 'speed':
      return `${amount} ${q.unit ?? 'an hour'}`;
    default:
      return `${amount} ${q.unit}`;
  }
}

/** Value → phrases that are read whole, once, as it. */
const WHOLE: Record<string, string[]> = {
  '22.5': [
    'twenty two and a half',
    'twenty-two-and-a-half',
    'twenty two n a half',
    '22 and a half',
    '22½',
    '22 1/2',
    '22.5',
    '22,5',
    'twenty two point five',
    'twentytwo and a half',
  ],
  '106': ['a hundred and six', 'one hundred six', 'hundred and six', 'one oh six', '106'],
  '102.5': ['one oh two point five', 'a hundred and two and a half', 'one hundred two point five', '102.5'],
  '6.5': ['six n a half', 'six an a half', 'six and a half', '6½', '6.5'],
  '9.25': ['nine and a quarter', '9 1/4', 'nine point two five'],
  '2.75': ['two and three quarters', 'two and three-quarters', '2¾'],
  '24': ['two dozen', 'twenty-four', 'twenty 4', '24'],
  '12': ['a dozen', 'twelve', '12'],
  '1234': ['1,234', 'one thousand two hundred and thirty-four', 'twelve hundred and thirty four'],
  '0.5': ['½', '.5', '0.5', 'half', 'a half', 'point five', 'zero point five', '1/2'],
  '14.5 mi': ['fourteen and a half miles', '14.5 mi', '14½ miles', 'fourteen-and-a-half-mile'],
  '1.5 mi': ['a mile and a half', 'mile and a half', 'one and a half miles', 'one mile and a half'],
  '0.5 mi': ['half a mile', 'half mile', 'a half mile', 'half of a mile'],
  '0.75 mi': ['three quarters of a mile', 'three-quarter mile', '3/4 mile'],
  '2 mi': ['a couple of miles', 'couple miles', 'a couple miles', 'two more miles', 'two miles'],
  '9 km': ['nine k', '9k', '9 km', 'nine kilometres', 'nine kilometers', 'nine clicks', '9 ks', 'nine km'],
  '800 m': ['800 m', '800m', 'eight hundred metres', 'eight hundred meters'],
  '200 yd': ['two hundred yards', 'a couple hundred yards', '200 yds'],
  '4 mm': ['4mm', '4 mm', 'four millimetres'],
  '10 cm': ['10 cm', 'ten centimetres'],
  '5.5 mph': ['five and a half miles an hour', '5.5 mph', 'five and a half mph', 'five point five miles per hour'],
  '17 km/h': ['17 km/h', '17 kph', 'seventeen k an hour', 'seventeen kilometres an hour', '17 km / h', '17 km/hr'],
  '9 m/s': ['9 m/s', 'nine metres per second', 'nine meters a second'],
  '20 kn': ['20 knots', 'twenty knots', '20 kts'],
  '13 an hour': ['thirteen an hour', '13 an hour'],
  '-18°': [
    'minus eighteen',
    'eighteen below',
    '18 below',
    'eighteen below zero',
    '-18',
    '−18',
    'eighteen degrees below',
    'minus 18 degrees',
  ],
  '-28°': ['minus twenty 8', 'minus twenty-eight', 'twenty eight below'],
  '5°': ['5 above', 'five above zero', 'plus five', '+5', 'five degrees', '5°'],
  '1°': ['one degree above', 'one degree'],
  '-15°F': ['-15 F', '-15F', '15 below fahrenheit', 'minus fifteen degrees fahrenheit', '-15°F'],
  '-25°C': ['minus 25 C', '-25 °C', 'minus twenty five celsius', 'twenty five degrees celsius below'],
  '0.5 lb': ['half a pound', 'half pound', 'a half pound', '1/2 lb', '.5 lb'],
  '1.5 lb': ['a pound and a half', 'pound and a half', 'one and a half pounds', '1 1/2 lbs'],
  '54.5 lb': ['fifty four and a half pounds', '54.5 lbs'],
  '27.4 kg': ['27.4 kilos', '27.4 kg', '27,4 kg', 'twenty seven point four kilos'],
  '52.375 lb': ['fifty two pounds six ounces', '52 lb 6 oz'],
  '0.5 l': ['half a litre', '.5 l', 'half a liter', '0,5 l', 'half litre'],
  '1 l': ['a whole litre', 'a litre', 'one liter', '1 l'],
  '1 qt': ['a quart', 'one quart', '1 qt'],
  '1.5 cup': ['a cup and a half', 'cup and a half', 'one and a half cups', '1½ cups'],
  '0.6667 cup': ['two thirds of a cup', '2/3 cup', '⅔ cup'],
  '2 ladle': ['two ladles', '2 ladles', 'two big ladles'],
  '2 piece': ['2 pieces', 'two chunks', 'a couple of pieces'],
  '1 scoop': ['a scoop', 'one scoop', '1 scoop'],
  '78 bpm': ['seventy-eight beats a minute', '78 bpm', '78 beats per minute'],
  '170 min': ['2h50', 'two hours fifty', '2 h 50', 'two hours and fifty minutes', '2 hrs 50 min', '2h50m'],
  '255 min': ['4h15', 'four and a quarter hours', 'four hours fifteen', 'four hours and a quarter'],
  '80 min': ['an hour and twenty', 'one hour twenty', '1h20', 'an hour and twenty minutes'],
  '90 min': [
    'an hour and a half',
    'hour and a half',
    'one and a half hours',
    '1.5 hours',
    'ninety minutes',
    'an hour and half',
  ],
  '30 min': ['half an hour', 'a half hour', 'half hour', '1/2 hour', 'thirty minutes', '30min', '30-min'],
  '15 min': ['a quarter hour', 'quarter of an hour', 'a quarter of an hour', 'fifteen minutes'],
  '45 min': ['three quarters of an hour', 'forty-five minutes'],
  '120 min': ['a couple of hours', 'two hours', '2h', '2 hrs'],
  '60 min': ['an hour', 'one hour', 'another hour', 'a full hour', 'a solid hour'],
  '125 min': ['two hours oh five', 'two hours five minutes'],
  '0.5 min': ['thirty seconds', '30 sec', 'thirty second'],
  '10:40': ['10:40'],
  '5:10pm': ['5:10 pm', '5:10pm', '5:10 p.m.', 'five ten pm', 'five ten p.m.', '5.10 pm', '510pm'],
  '6:30am': [
    'six thirty a.m.',
    'six thirty in the morning',
    'half past six in the morning',
    '6:30 am',
    'six thirty am',
  ],
  '1:50': ['ten to two', '10 to 2', 'ten minutes to two', 'ten till two'],
  '1:15': ['quarter past one', 'a quarter past one', 'fifteen past one', 'quarter after one'],
  '8:45': ['quarter to nine', 'a quarter to nine', 'quarter of nine'],
  '10:55': ['five to eleven', 'five minutes to eleven'],
  '4:10': ['ten past four', 'ten after four'],
  '6:30': ['half past six', 'half past 6'],
  '12:00pm': ['noon', 'midday', 'mid-day'],
  '12:00am': ['midnight'],
  '7:00': ['7 sharp', "seven o'clock", 'seven oclock', "7 o'clock", 'seven o clock', '7ish'],
  '14:00': ['fourteen hundred hours', '1400 hours'],
  '3.': ['third', '3rd'],
  '21.': ['twenty-first', 'twenty first', '21st', 'twentyfirst'],
  '125.': ['one hundred and twenty-fifth', '125th', 'one hundred twenty-fifth'],
};

/** A number that can also be a time of day: value and the time. */
const TIMES: [string, string, string][] = [
  ['two fifty', '250', '2:50'],
  ['seven ten', '710', '7:10'],
  ['eight oh five', '805', '8:05'],
  ['ten forty', '1040', '10:40'],
  ['nineteen oh five', '1905', '19:05'],
  ['6.50', '6.5', '6:50'],
  ['9.05', '9.05', '9:05'],
  ['1830', '1830', '18:30'],
  ['nine', '9', '9:00'],
  ['one eighteen', '118', '1:18'],
  ['oh seven thirty', '730', '7:30'],
];

/** Whole notes and every reading in them, in order. */
const NOTES: [string, string[]][] = [
  ['mile fourteen no fifteen fifteen on the watch', ['14', '15', '15']],
  ['averaging nine and a quarter minus eleven and calm', ['9.25', '-11°']],
  ['Rime is 21.8/5, Tuss 27.2/4.5, Ulv 26/5', ['21.8', '5', '27.2', '4.5', '26', '5']],
  ['mile six thirty below', ['6', '-30°']],
  ['mile one twenty below', ['1', '-20°']],
  ['mile thirty one and a half eight below', ['31.5', '-8°']],
  ['at mile nine twenty minute stop', ['9', '20 min']],
  ['mile ten forty pounds of fish', ['10', '40 lb']],
  ['two hours six dogs ate', ['120 min', '6']],
  ['three hours twenty below', ['180 min', '-20°']],
  ['two hours twenty two dogs', ['120 min', '22']],
  ['for two hours ten miles to go', ['120 min', '10 mi']],
  ['ran five and a half miles an hour for an hour', ['5.5 mph', '60 min']],
  ['wind ten to fifteen mph', ['10 mph', '15 mph']],
  ['wind five to ten', ['5', '10']],
  ['3-5 km left', ['3 km', '5 km']],
  ['between 30 and 40 below', ['-30°', '-40°']],
  ['10 to 15 below', ['-10°', '-15°']],
  ['minus ten to fifteen', ['-10°', '-15°']],
  ['two or three miles', ['2 mi', '3 mi']],
  ['about 2 -7 l', ['2 l', '7 l']],
  ['around 2-3 dogs', ['2', '3']],
  ['web split - 4mm - zinc on', ['4 mm']],
  ['trail good - 5 degrees out', ['5°']],
  ['it is - 5 degrees out', ['-5°']],
  ['a foot of fresh on the ridge', ['1 ft']],
  ['six inches of powder, 3 in of slush', ['6 in', '3 in']],
  ['26 miles in, 5 in the bag', ['26 mi', '5']],
  ['all four feet look good', ['4']],
  ['fell two feet', ['2 ft']],
  ['20 m break after an 800 m loop', ['20 min', '800 m']],
  ['turned left 45 degrees at 10 degrees', ['45 deg', '10°']],
  ['threw up x2, km 41', ['2', '41']],
  ['snack at k14, then k fourteen and a half', ['14', '14.5']],
  ['4/9 on the chart, four over nine', ['0.4444', '0.4444']],
  ['drank half, left half', ['0.5', '0.5']],
  ['5/17/2027 vet', ['5', '17', '2027']],
  ['one hundred fifty two yards', ['152 yd']],
  ['weighed fifty four and a half forty one sixty', ['54.5', '41', '60']],
  ['hooked up eight tonight', ['8']],
  ['back at eight tonight', ['8:00pm']],
  ['this evening at 8 we run', ['8:00pm']],
  ['fed at half past', ['0:30']],
  ['temp 101.8, heart rate 118', ['101.8', '118']],
  ['Otter 53 lb, Tansy forty four even', ['53 lb', '44']],
  ['ten percent grade for two miles', ['10 %', '2 mi']],
  ['the second stop was a thirty second pause', ['2.', '0.5 min']],
  ['three days off then a two week rest', ['4320 min', '20160 min']],
  ['5 feet 2 inches of line', ['5.1667 ft']],
  ['forty-five (45) dogs', ['45']],
];

/** Words that hold no number. */
const NOTHING = [
  'too tired to eat, too much for her',
  'she ate, then she sat for a while',
  'won by a nose',
  'a little sore on the wrist',
  'Otter in point, good dog',
  'no point in going on',
  'put Moss at point',
  'the yard is quiet',
  'a foot check at the creek',
  'everyone, someone, anyone',
  'oh no',
  'next stop, last time, previous run',
  'a few bites, several sips, both of them',
  'the girls won, the boys ate',
  'minus Bramble',
  'plus Otter',
  'hour of rest, miles to go, minutes later',
];

/** A pronoun, not a count. */
const PRONOUNS = [
  'the old one',
  'that one',
  'one of them',
  'the right one is sore',
  'new one on',
  'which one was it',
  'no one',
];

describe('quantities', () => {
  for (const [value, phrases] of Object.entries(WHOLE))
    it.each(phrases)(`%s is ${value}`, (phrase) => {
      const found = read(phrase);
      expect(found.map(short)).toEqual([value]);
      expect(found[0]?.span).toEqual([0, phrase.length]);
    });

  it.each(TIMES)('%s is the number %s and could be the time %s', (phrase, value, time) => {
    const [q, ...rest] = read(phrase);
    expect(rest).toEqual([]);
    expect(q?.dimension).toBe('number');
    expect(String(q?.value)).toBe(value);
    expect(`${q?.clock?.hour}:${String(q?.clock?.minute).padStart(2, '0')}`).toBe(time);
  });

  it.each(NOTES)('%s', (note, readings) => {
    expect(read(note).map(short)).toEqual(readings);
  });

  it.each(NOTHING)('reads nothing in "%s"', (text) => {
    expect(read(text).map((q) => text.slice(...q.span))).toEqual([]);
  });

  it.each(PRONOUNS)('"%s" counts nothing', (text) => {
    expect(read(text).every((q) => q.weak)).toBe(true);
    expect(quantities(text)).toEqual([]);
  });

  it('gives two numbers said in a row apart as well', () => {
    const [q] = read('two fifty');
    expect(q?.apart?.map((part) => [part.value, part.span])).toEqual([
      [2, [0, 3]],
      [50, [4, 9]],
    ]);
  });

  it('marks what seldom counts', () => {
    for (const [text, weak] of [
      ['left half', true],
      ['gone in a second', true],
      ['one', true],
      ['two', false],
      ['half a pound', false],
      ['an hour', false],
    ] as const)
      expect([text, read(text)[0]?.weak ?? false]).toEqual([text, weak]);
  });

  it('keeps the fraction that was typed or said', () => {
    expect(read('4/9')[0]?.ratio).toEqual([4, 9]);
    expect(read('five out of nine')[0]?.ratio).toEqual([5, 9]);
  });

  it('says that only a sign made it a temperature, and calls it a number outside', () => {
    expect(read('minus nine')[0]).toMatchObject({ dimension: 'temperature', bySign: true });
    expect(read('nine below')[0]?.bySign).toBeUndefined();
    expect(quantities('minus nine')).toEqual([{ span: [0, 10], value: -9, dimension: 'number' }]);
    expect(quantities('nine below')).toEqual([{ span: [0, 10], value: -9, dimension: 'temperature' }]);
  });

  it('makes a number a time where a time is due, outside', () => {
    expect(quantities('fed at six')).toEqual([{ span: [7, 10], value: 360, dimension: 'clock' }]);
    expect(quantities('back at 1730')).toEqual([{ span: [8, 12], value: 1050, dimension: 'clock' }]);
    expect(quantities('stopped at two dogs')).toEqual([{ span: [11, 14], value: 2, dimension: 'number' }]);
  });
});

describe('whatever is written', () => {
  const words = fc.constantFrom(
    ...'a an half quarter and n one two ten twelve twenty fifty hundred thousand oh point minus plus below above to past of at mile miles k km m h hours min pounds cup 5 12 1830 6.50 -19 10:40 1/2 ½ , . - / ( ) am pm sharp third second degrees F dozen couple over out in x'.split(
      ' ',
    ),
  );
  const text = fc.oneof(
    fc.string({ maxLength: 60 }),
    fc.array(words, { maxLength: 14 }).map((list) => list.join(' ')),
  );

  it('never throws; spans lie in the text, in order, apart; upper case changes nothing', () => {
    fc.assert(
      fc.property(text, (note) => {
        const found = read(note);
        let end = 0;
        for (const q of found) {
          expect(q.span[0]).toBeGreaterThanOrEqual(end);
          expect(q.span[1]).toBeGreaterThan(q.span[0]);
          expect(Number.isFinite(q.value)).toBe(true);
          end = q.span[1];
        }
        expect(end).toBeLessThanOrEqual(note.length);
        expect(read(note)).toEqual(found);
      }),
      { numRuns: 2000, seed: 20270114 },
    );
  });

  it('reads the same in capitals', () => {
    fc.assert(
      fc.property(fc.array(words, { maxLength: 14 }), (list) => {
        const note = list.join(' ');
        const strip = (q: Quantity) => [q.span, q.value, q.dimension, q.unit];
        // the tokenizer may cut capitals otherwise ("PM." ends a sentence); where it cuts alike, the readings are alike
        const cuts = (s: string) => tokenize(s).map((t) => [t.start, t.end]);
        fc.pre(JSON.stringify(cuts(note)) === JSON.stringify(cuts(note.toUpperCase())));
        expect(read(note.toUpperCase()).map(strip)).toEqual(read(note).map(strip));
      }),
      { numRuns: 1000, seed: 20270115 },
    );
  });
});

describe('the tables', () => {
  const row: UnitRow = { unit: 'mi', dimension: 'distance', factor: 1609.344, words: 'mile miles' };
  const empty = { rates: [], phrases: [] };

  it('name the unit or word that is wrong', () => {
    expect(() => compileUnits({ ...empty, units: [row, row] })).toThrow('the unit mi stands twice');
    expect(() => compileUnits({ ...empty, units: [row, { ...row, unit: 'nmi' }] })).toThrow('nmi: "mile" stands twice');
    expect(() => compileUnits({ ...empty, units: [{ ...row, words: 'Mile' }] })).toThrow(
      '"Mile" must be written in lower case',
    );
    expect(() => compileUnits({ ...empty, units: [{ ...row, factor: 0 }] })).toThrow('mi: the factor must be above 0');
    expect(() =>
      compileUnits({ units: [row], rates: [], phrases: [{ unit: 'furlong', words: ['fur long'] }] }),
    ).toThrow('"furlong" is no unit');
  });

  it('name the number word that is wrong', () => {
    const classes: NumberClass[] = [
      'zero',
      'oh',
      'digit',
      'teen',
      'ten',
      'joined',
      'hundred',
      'scale',
      'dozen',
      'couple',
      'point',
      'and',
      'article',
      'minus',
      'plus',
    ];
    const table = Object.fromEntries(classes.map((cls) => [cls, {}])) as Record<NumberClass, Record<string, number>>;
    expect(() => compileNumbers({ ...table, digit: { two: 2 }, couple: { two: 2 } })).toThrow(
      'couple: "two" stands twice',
    );
    expect(() => compileNumbers({ ...table, digit: { 'two ': 2 } })).toThrow('must be one word');
    expect(() => compileNumbers({ ...table, digit: { two: Number.NaN } })).toThrow('"two" has no value');
  });
});
