/**
 * Unit factors against the printed ones: NIST Special Publication 811 (2008 edition), appendix B.8 "Factors for units
 * listed alphabetically", to the seven digits printed there; temperature by its formulas t/°C = (t/°F − 32)/1.8.
 */
import { describe, expect, test } from 'vitest';
import { celsius, fromMetres, kilograms, litres, metres, metresPerSecond } from '../../server/records/units.ts';

/** A factor printed with seven digits may be off by half of the last one. */
function agrees(value: number, printed: number): void {
  expect(Math.abs(value / printed - 1)).toBeLessThanOrEqual(5.1e-7);
}

describe('NIST SP 811, appendix B.8', () => {
  test.each([
    ['mi', 1.609344e3],
    ['yd', 9.144e-1],
    ['ft', 3.048e-1],
    ['km', 1e3],
    ['m', 1],
  ] as const)('length: one %s is %d m', (unit, printed) => {
    agrees(metres(1, unit), printed);
    expect(fromMetres(metres(31.5, unit), unit)).toBeCloseTo(31.5, 10);
  });

  test.each([
    ['lb', 4.535924e-1],
    ['oz', 2.834952e-2],
    ['kg', 1],
    ['g', 1e-3],
  ] as const)('mass: one %s is %d kg', (unit, printed) => agrees(kilograms(1, unit), printed));

  test.each([
    ['mph', 4.4704e-1],
    ['km/h', 2.777778e-1],
    ['kn', 5.144444e-1],
    ['m/s', 1],
  ] as const)('speed: one %s is %d m/s', (unit, printed) => agrees(metresPerSecond(1, unit), printed));

  // The appendix prints cubic metres; a litre is a thousandth of one.
  test.each([
    ['gal', 3.785412e-3],
    ['qt', 9.463529e-4],
    ['pt', 4.731765e-4],
    ['cup', 2.365882e-4],
    ['l', 1e-3],
    ['ml', 1e-6],
  ] as const)('volume: one %s is %d m³', (unit, printed) => agrees(litres(1, unit) / 1000, printed));

  // Freezing and boiling point of water, and the point where both scales meet (common knowledge; by the formula).
  test.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [-18, -27.7777778],
  ])('temperature: %d °F is %d °C', (fahrenheit, printed) => {
    expect(celsius(fahrenheit, 'F')).toBeCloseTo(printed, 6);
    expect(celsius(printed, 'C')).toBe(printed);
  });
});
