/**
 * Numbers and quantities: phrases grouped by what they must read as, phrases that must not, and whole notes
 * (quantity-rows.ts); what holds whatever is written; the tables.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Quantity, quantities, quantitiesOf } from '../../grammar/steps/quantities.ts';
import { tokenize } from '../../grammar/steps/tokens.ts';
import { compileNumbers, type NumberClass } from '../../grammar/words/numbers.ts';
import { compileUnits, type UnitRow } from '../../grammar/words/units.ts';
import { NOTES, NOTHING, PRONOUNS, TIMES, WHOLE } from './quantity-rows.ts';

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
