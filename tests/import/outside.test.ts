import fc from 'fast-check';
import { DateTime } from 'luxon';
import { v5 } from 'uuid';
import { describe, expect, it } from 'vitest';
import { importNotebook } from '../../server/import/index.ts';

describe('against published values', () => {
  it('the id function gives the name-based UUID of RFC 9562, appendix A.4', () => {
    expect(v5('www.example.com', v5.DNS)).toBe('2ed6657d-e927-568b-95e1-2665a8aea6a2');
  });

  // Second Sunday of March and first Sunday of November, at two o'clock: Energy Policy Act of 2005, section 110 (USA).
  it('the hour that the clocks skip, and the hour they show twice', () => {
    const { notes, problems } = importNotebook('2027-03-14\n1:30 a\n2:30 b\n3:30 c\n\n2026-11-01\n1:30 d\n2:30 e', {
      offset: 'America/Anchorage',
    });
    expect(notes.map((n) => n.at)).toEqual([
      '2027-03-14T01:30:00-09:00',
      '2027-03-14T03:30:00-08:00',
      '2027-03-14T03:30:00-08:00',
      '2026-11-01T01:30:00-08:00',
      '2026-11-01T02:30:00-09:00',
    ]);
    expect(problems.map((p) => [p.line, p.says])).toEqual([
      [3, 'The clocks skip 02:30 on 2027-03-14; it was taken as 03:30.'],
      [7, 'The clocks show 01:30 twice on 2026-11-01; it was taken as the first.'],
    ]);
  });
});

describe('against luxon, in zones with clocks of their own', () => {
  const ZONES = [
    'America/Anchorage',
    'Europe/Oslo',
    'Australia/Lord_Howe',
    'Africa/Casablanca',
    'Asia/Kathmandu',
    '-03:30',
  ];
  it('the instant of any minute that the clock shows once', () => {
    const day = fc.integer({ min: 0, max: 5000 }).map((d) => DateTime.utc(2016, 1, 1).plus({ days: d }));
    fc.assert(
      fc.property(day, fc.integer({ min: 0, max: 1439 }), fc.constantFrom(...ZONES), (d, m, offset) => {
        const hhmm = `${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
        const { notes, problems } = importNotebook(`${d.toISODate()}\n${hhmm} x`, { offset });
        const zone = offset === '-03:30' ? 'UTC-3:30' : offset;
        const theirs = DateTime.fromISO(`${d.toISODate()}T${hhmm}`, { zone });
        fc.pre(problems.length === 0);
        expect(DateTime.fromISO(notes[0]?.at ?? '').toMillis()).toBe(theirs.toMillis());
        expect(notes[0]?.at.slice(0, 16)).toBe(`${d.toISODate()}T${hhmm}`);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('against other readers of dates', () => {
  const days = fc.integer({ min: 0, max: 20_000 }).map((d) => DateTime.utc(1990, 1, 1).plus({ days: d }));
  const HEADS = [
    'yyyy-MM-dd',
    'yyyy/M/d',
    'd MMMM yyyy',
    'd. MMM yyyy',
    'MMMM d, yyyy',
    'MMM d yyyy',
    'EEEE d LLL yyyy',
    'EEE, MMM d, yyyy',
    'd.M.yyyy',
  ];
  it('every day, as luxon writes it in each form', () => {
    fc.assert(
      fc.property(days, fc.constantFrom(...HEADS), (day, head) => {
        const { notes, problems } = importNotebook(`${day.toFormat(head, { locale: 'en' })}\n8:00 x`, { offset: 'Z' });
        expect(problems).toEqual([]);
        expect(notes.map((n) => n.at)).toEqual([`${day.toISODate()}T08:00:00Z`]);
      }),
      { numRuns: 1000 },
    );
  });
  it('the forms that the engine itself reads give the same day', () => {
    for (const head of ['Oct 14, 2026', '14 October 2026', 'Wed Oct 14 2026', '10/14/2026', 'February 29, 2028']) {
      const theirs = new Date(`${head} UTC`).toISOString().slice(0, 10);
      expect(importNotebook(`${head}\n8:00 x`, { offset: 'Z' }).notes[0]?.at.slice(0, 10)).toBe(theirs);
    }
  });
});
