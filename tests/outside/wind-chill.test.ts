/**
 * Wind chill against every cell of the 2001 table of the US National Weather Service and Environment Canada, and one
 * worked pair in metric units.
 */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chillOf, frostbiteSentence, windChill, windChillFahrenheit } from '../../server/load/index.ts';

const FILE = '../shared/external/wind-chill-2001.csv';

if (!existsSync(FILE)) console.info(`Skipped: the wind-chill table is not at ${FILE}.`);
describe.skipIf(!existsSync(FILE))('the table of 2001', () => {
  const [heading, ...rows] = existsSync(FILE) ? readFileSync(FILE, 'utf8').trim().split(/\r?\n/) : [];

  it('has 216 cells of temperature, wind and chill', () => {
    expect(heading).toBe('temp_f,wind_mph,wind_chill_f');
    expect(rows).toHaveLength(216);
  });
  it.each(rows.map((row) => row.split(',').map(Number)))('%d °F in %d mph is %d °F', (fahrenheit, mph, chill) => {
    const got = windChillFahrenheit(fahrenheit as number, mph as number) as number;
    expect(Math.round(got) + 0).toBe(chill);
    const metric = windChill(((fahrenheit as number) - 32) / 1.8, ((mph as number) * 1609.344) / 3600) as number;
    expect(metric * 1.8 + 32).toBeCloseTo(got, 8);
  });
});

it('is defined up to 50 °F and from 3 mph on, and nowhere else', () => {
  expect(windChillFahrenheit(50, 3)).toBeDefined();
  expect(windChillFahrenheit(50.1, 3)).toBeUndefined();
  expect(windChillFahrenheit(50, 2.9)).toBeUndefined();
  expect(windChillFahrenheit(Number.NaN, 10)).toBeUndefined();
  // The same two edges in metric units: 10 °C, 3 mph = 1.34112 m/s.
  expect(windChill(10, 1.34112)).toBeDefined();
  expect(windChill(10.1, 1.34112)).toBeUndefined();
  expect(windChill(10, 1.34)).toBeUndefined();
});

it('agrees with the metric form of the index (Environment Canada 2001: 13.12 + 0.6215 T − 11.37 V^0.16 + 0.3965 T V^0.16, km/h)', () => {
  for (const celsius of [-45, -30, -20, -10, 0, 5])
    for (const kmh of [5, 10, 20, 40, 80]) {
      const power = kmh ** 0.16;
      const published = 13.12 + 0.6215 * celsius - 11.37 * power + 0.3965 * celsius * power;
      // Its printed coefficients are rounded: the two forms differ by some hundredths.
      expect(Math.abs((windChill(celsius, kmh / 3.6) as number) - published)).toBeLessThan(0.1);
    }
});

it('takes the coldest air and the strongest wind told of a run, and nothing where one of them is missing', () => {
  const felt = chillOf([-10, -30, -20], [2, 8]);
  expect(felt).toMatchObject({ celsius: -30, metresPerSecond: 8 });
  expect(felt?.chill).toBe(windChill(-30, 8));
  expect(chillOf([], [8])).toBeUndefined();
  expect(chillOf([-30], [])).toBeUndefined();
  expect(chillOf([12], [8])).toBeUndefined();
});

// Environment and Climate Change Canada, "Wind chill hazards and what to do": the bands of the index and their times.
it.each([
  [-27, undefined],
  [-27.4, undefined],
  [-28, '10 to 30 minutes'],
  [-39, '10 to 30 minutes'],
  [-40, '5 to 10 minutes'],
  [-47, '5 to 10 minutes'],
  [-48, '2 to 5 minutes'],
  [-54, '2 to 5 minutes'],
  [-55, 'less than 2 minutes'],
  [-70, 'less than 2 minutes'],
])('at %d bare skin can freeze in %s', (chill, minutes) => {
  if (minutes === undefined) expect(frostbiteSentence(chill)).toBeUndefined();
  else expect(frostbiteSentence(chill)).toContain(`in ${minutes}`);
});
