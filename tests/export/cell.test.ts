/** A cell that a spreadsheet would run is made harmless, and comes back as it was. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asSaid, harmless } from '../../server/export/index.ts';

/** OWASP, "CSV Injection": the characters a cell must not begin with. */
const OWASP = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'];
const runs = (cell: string) => OWASP.some((sign) => cell.trimStart().startsWith(sign) || cell.startsWith(sign));
/** Texts with many of the signs in front, beside any others. */
const texts = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.tuple(fc.stringMatching(/^[ '=+\-@\t\r\n＝]{0,5}$/), fc.string()).map(([a, b]) => a + b),
);

describe('harmless and asSaid', () => {
  it('nothing a spreadsheet would run is left in front, and every text comes back', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const cell = harmless(text);
        expect(runs(cell)).toBe(false);
        expect(asSaid(cell)).toBe(text);
      }),
      { numRuns: 2000 },
    );
  });

  it('two texts never become one', () => {
    fc.assert(
      fc.property(texts, texts, (a, b) => (harmless(a) === harmless(b)) === (a === b)),
      { numRuns: 1000 },
    );
  });

  it.each([
    ['=1+1', "'=1+1"],
    ["'=1+1", "''=1+1"],
    ['-18, glare ice', "'-18, glare ice"],
    ["'twas cold", "'twas cold"],
    ['Juniper = best', 'Juniper = best'],
    ['', ''],
  ])('%j is written %j', (text, cell) => {
    expect(harmless(text)).toBe(cell);
    expect(asSaid(cell)).toBe(text);
  });
});
