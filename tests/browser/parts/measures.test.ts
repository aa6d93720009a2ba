/** Units, times, sorting: small parts the pages share. */
import { DateTime } from 'luxon';
import { afterEach, describe, expect, test } from 'vitest';
import { sorted } from '../../../web/parts/SortTable.tsx';
import { ageWords, daysBetween, dayWords, localIso, monthWords, sinceWords } from '../../../web/times.ts';
import { distanceFigure, distanceWords, speedWords, temperatureWords, windWords } from '../../../web/units.ts';

// Factors and points from NIST SP 811 (2008), appendix B.8 and section B.1.2: mile 1,609.344 m; °F = 1.8 °C + 32.
describe('units against NIST SP 811', () => {
  test.each([
    [1609.344, '1 mi', '1.6 km'],
    [32 * 1609.344, '32 mi', '51.5 km'],
    [0, '0 mi', '0 km'],
    [1000, '0.6 mi', '1 km'],
  ])('%d m', (metres, miles, kilometres) => {
    expect(distanceWords(metres, 'imperial')).toBe(miles);
    expect(distanceWords(metres, 'metric')).toBe(kilometres);
  });
  test.each([
    [-40, '−40 °F', '−40 °C'],
    [0, '32 °F', '0 °C'],
    [-27.78, '−18 °F', '−28 °C'],
  ])('%d °C', (celsius, fahrenheit, said) => {
    expect(temperatureWords(celsius, 'imperial')).toBe(fahrenheit);
    expect(temperatureWords(celsius, 'metric')).toBe(said);
  });
  test('a mile an hour is 0.44704 m/s', () => {
    expect(windWords(0.44704 * 12, 'imperial')).toBe('12 mph');
    expect(windWords(10, 'metric')).toBe('36 km/h');
    expect(speedWords(32 * 1609.344, 192, 'imperial')).toBe('10 mph');
  });
  test('a figure has one decimal at the most', () => expect(distanceFigure(14.52 * 1609.344, 'imperial')).toBe('14.5'));
});

describe('times', () => {
  const zone = process.env.TZ;
  afterEach(() => {
    process.env.TZ = zone;
    if (zone === undefined) delete process.env.TZ;
  });
  test.each([
    ['America/Anchorage', '2027-01-14T19:40:05Z', '2027-01-14T10:40:05-09:00'],
    ['America/St_Johns', '2027-07-01T00:00:00Z', '2027-06-30T21:30:00-02:30'],
    ['Asia/Kathmandu', '2026-12-31T23:59:59Z', '2027-01-01T05:44:59+05:45'],
    ['UTC', '2027-01-14T19:40:05Z', '2027-01-14T19:40:05+00:00'],
  ])('local time in %s, and the same instant to luxon', (tz, instant, local) => {
    process.env.TZ = tz;
    expect(localIso(new Date(instant))).toBe(local);
    expect(DateTime.fromISO(local).toMillis()).toBe(Date.parse(instant));
    expect(DateTime.fromISO(instant, { zone: tz }).toISO({ suppressMilliseconds: true })?.replace('Z', '+00:00')).toBe(
      local,
    );
  });
  test('days in words agree with luxon over a leap year', () => {
    for (let day = DateTime.utc(2028, 1, 1); day.year === 2028; day = day.plus({ days: 1 }))
      expect(dayWords(day.toISODate() as string, true)).toBe(day.setLocale('en').toFormat('ccc d LLL yyyy'));
  });
  test('looking back', () => {
    expect(sinceWords('2027-01-14T10:41:00-09:00', '2027-01-14T12:00:00-09:00')).toBe('at 10:41');
    expect(sinceWords('2027-01-13T10:41:00-09:00', '2027-01-14T12:00:00-09:00')).toBe('Wed 13 Jan at 10:41');
    expect(monthWords('2027-01-14')).toBe('January 2027');
    expect(daysBetween('2027-02-27', '2027-03-02')).toBe(3);
    expect(ageWords('2021-05-02', '2027-05-01')).toBe('5 y');
    expect(ageWords('2026-09-20', '2027-01-14')).toBe('3 mo');
    expect(ageWords('2028-01-01', '2027-01-14')).toBe('');
  });
});

test('what can’t be sorted goes last both ways', () => {
  const rows = [{ n: 2 }, { n: undefined }, { n: 5 }, { n: 0 }];
  expect(sorted(rows, (row) => row.n, false).map((row) => row.n)).toEqual([0, 2, 5, undefined]);
  expect(sorted(rows, (row) => row.n, true).map((row) => row.n)).toEqual([5, 2, 0, undefined]);
});
