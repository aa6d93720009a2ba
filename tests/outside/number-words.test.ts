/**
 * Spelled numbers against an independent library: what to-words (MIT, npm) writes for a number is read back as that
 * number. Unit sizes against NIST Special Publication 811, appendix B.8.
 */
import { ToWords } from 'to-words';
import { describe, expect, it } from 'vitest';
import { quantitiesOf } from '../../grammar/steps/quantities.ts';
import { tokenize } from '../../grammar/steps/tokens.ts';
import { UNITS } from '../../grammar/words/units.ts';

const american = new ToWords({ localeCode: 'en-US' });
const british = new ToWords({ localeCode: 'en-GB' });

/** The one quantity that the whole phrase is read as; a sentence saying what was read instead. */
function whole(phrase: string): number | string {
  const found = quantitiesOf(tokenize(phrase), phrase);
  const [q] = found;
  if (!q || found.length > 1 || q.span[0] !== 0 || q.span[1] !== phrase.length)
    return `"${phrase}" read as ${found.map((item) => `${phrase.slice(...item.span)} = ${item.value}`).join(', ') || 'nothing'}`;
  return q.value;
}
const wrongOf = (numbers: Iterable<number>, say: (n: number) => string) => {
  const wrong: string[] = [];
  for (const n of numbers) {
    const got = whole(say(n));
    if (got !== n) wrong.push(`${n}: ${typeof got === 'string' ? got : `"${say(n)}" read as ${got}`}`);
  }
  return wrong;
};
function* upTo(last: number, from = 0, step = 1) {
  for (let n = from; n <= last; n += step) yield n;
}

describe('numbers as to-words writes them', () => {
  it('reads every whole number from 0 to 9,999', () => {
    expect(wrongOf(upTo(9999), (n) => american.convert(n))).toEqual([]);
  });

  it('reads them as the British say them, and in lower case', () => {
    expect(wrongOf(upTo(9999), (n) => british.convert(n).toLowerCase())).toEqual([]);
  });

  it('reads decimals of one and of two places', () => {
    const tenths = [...upTo(1200)].map((n) => n / 10);
    expect(wrongOf(tenths, (n) => american.convert(n).toLowerCase())).toEqual([]);
    const hundredths = [...upTo(4500, 1, 7)].map((n) => n / 100);
    expect(wrongOf(hundredths, (n) => american.convert(n).toLowerCase())).toEqual([]);
  });

  it('reads numbers below nought', () => {
    expect(
      wrongOf(
        [...upTo(60, 1)].map((n) => -n),
        (n) => american.convert(n).toLowerCase(),
      ),
    ).toEqual([]);
  });

  it('reads larger numbers', () => {
    const large = [10_000, 47_100, 99_999, 123_456, 1_000_000, 2_500_017, 31_256_721];
    expect(wrongOf(large, (n) => american.convert(n).toLowerCase())).toEqual([]);
  });

  it('reads ordinals, but for those that end in "second" behind a number: those are lengths of time ("thirty second")', () => {
    const numbers = [...upTo(999, 1)].filter((n) => n === 2 || n % 10 !== 2 || n % 100 === 12);
    expect(wrongOf(numbers, (n) => american.toOrdinal(n).toLowerCase())).toEqual([]);
  });
});

describe('sizes of units', () => {
  /** NIST SP 811, appendix B.8, to the figures printed there. Base units: metre, kilogram, litre, metre a second. */
  const PRINTED: Record<string, number> = {
    mi: 1609.344,
    yd: 0.9144,
    ft: 0.3048,
    in: 0.0254,
    lb: 0.4535924,
    oz: 0.02834952,
    gal: 3.785412,
    qt: 0.9463529,
    pt: 0.4731765,
    cup: 0.2365882,
    mph: 0.44704,
    'km/h': 0.2777778,
    kn: 0.5144444,
  };
  it.each(Object.entries(PRINTED))('%s is %d of its base unit', (unit, size) => {
    const factor = UNITS.get(unit)?.factor ?? Number.NaN;
    expect(Math.abs(factor - size) / size).toBeLessThan(5e-7);
  });
});
