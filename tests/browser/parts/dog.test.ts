/** What a dog's page says and where its drawing marks it, without a browser. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PARTS, PARTS_WITH_END } from '../../../grammar/entry.ts';
import type { DogSeason, SiteCount } from '../../../server/dog/index.ts';
import { sitesOf } from '../../../server/watch/index.ts';
import { HEIGHT, placeOf, spotsOf, WIDTH } from '../../../web/dog/body.ts';
import { dayOfStep, dayReadout, spanOf, stepOf } from '../../../web/dog/days.ts';
import {
  beforeRows,
  type Episode,
  ordinal,
  percent,
  ranWords,
  sharesWords,
  stateWords,
  timeWords,
} from '../../../web/dog/words.ts';

const MILE = 1609.344;
const withEnd = new Set<string>(PARTS_WITH_END);
const site = (part: string, side?: string, end?: string) =>
  sitesOf({ part, side, end, sign: 'sore' } as Parameters<typeof sitesOf>[0])[0] as SiteCount['site'];
const count = (of: SiteCount['site'], more: Partial<SiteCount> = {}): SiteCount => ({
  site: of,
  episodes: 1,
  doubtful: 0,
  days: ['2027-01-01'],
  open: false,
  ...more,
});

describe('the drawing', () => {
  it('has a place for every part told with its side and end, left of the middle for left, its mirror for right', () => {
    for (const part of PARTS) {
      for (const end of withEnd.has(part) ? ['front', 'hind'] : [undefined]) {
        const left = placeOf(site(part, 'left', end));
        const right = placeOf(site(part, 'right', end));
        expect([part, left?.x, left?.y]).toEqual([part, WIDTH - (right?.x ?? 0), right?.y]);
        expect(left?.x).toBeLessThan(WIDTH / 2);
        expect([left?.x, left?.y].every((n) => n !== undefined && n > 0 && n < HEIGHT)).toBe(true);
        if (end) expect((left?.y ?? 0) < 300).toBe(end === 'front');
      }
    }
  });

  it('marks nothing whose side or end was not said, nor what is of the whole dog', () => {
    for (const one of [site('wrist'), site('pad', 'left'), site('foot'), ...sitesOf({ sign: 'vomiting' })])
      expect(placeOf(one)).toBeUndefined();
    expect(placeOf(site('back'))).toMatchObject({ x: WIDTH / 2 });
  });

  it('no two places of one side stand so close that a mark of four times covers the other', () => {
    const places = PARTS.flatMap((part) =>
      (withEnd.has(part) ? ['front', 'hind'] : [undefined]).flatMap((end) => placeOf(site(part, 'left', end)) ?? []),
    );
    const apart = [...new Map(places.map((one) => [one.key, one])).values()];
    for (const a of apart)
      for (const b of apart)
        if (a.key !== b.key) expect(Math.hypot(a.x - b.x, a.y - b.y), `${a.key}, ${b.key}`).toBeGreaterThan(25);
  });

  it('puts what belongs to one foot together, each day once, and loses no site', () => {
    const { spots, elsewhere } = spotsOf([
      count(site('pad', 'left', 'front'), { episodes: 2, days: ['2027-01-01', '2027-01-05'], open: true }),
      count(site('web', 'left', 'front'), { days: ['2027-01-05'], episodes: 0, doubtful: 1 }),
      count(site('wrist')),
    ]);
    expect(spots).toEqual([
      expect.objectContaining({ name: 'left front foot', episodes: 2, doubtful: 1, days: 2, open: true }),
    ]);
    expect(elsewhere.map((one) => one.site.label)).toEqual(['wrist, side not said']);
  });
});

const episode = (more: object) =>
  ({
    number: 1,
    numberInAll: 1,
    doubtful: false,
    state: 'over',
    lastSeen: '2027-02-13',
    until: '2027-02-23',
    ...more,
  }) as unknown as Episode;

describe('episodes in words', () => {
  it.each([
    [1, '1st'],
    [2, '2nd'],
    [3, '3rd'],
    [4, '4th'],
    [11, '11th'],
    [12, '12th'],
    [13, '13th'],
    [21, '21st'],
    [112, '112th'],
  ])('%i is %s', (n, words) => {
    expect(ordinal(n)).toBe(words);
  });

  it('which time, and what lies between', () => {
    const sinceBefore = { episode: 'x', days: 62, runs: 14, metres: 212 * MILE, runsWithoutDistance: 0 };
    expect(timeWords(episode({ number: 3, numberInAll: 3, sinceBefore }), 'imperial')).toBe(
      '3rd time this season · 212 mi and 14 runs since the last, 62 days',
    );
    expect(timeWords(episode({}), 'imperial')).toBe('1st time this season');
    expect(timeWords(episode({ numberInAll: 4, sinceBefore: { ...sinceBefore, runs: 0 } }), 'metric')).toBe(
      '1st time this season, 4th on record · no run since the last, 62 days',
    );
    expect(timeWords(episode({ number: undefined, doubtful: true }), 'metric')).toBe(
      'only told as possible, not counted',
    );
    expect(ranWords({ ...sinceBefore, runs: 1, runsWithoutDistance: 1 }, 'metric')).toBe('at least 341.2 km and 1 run');
  });

  it('silence is never called healing', () => {
    expect(stateWords(episode({ state: 'open' }))).toBe('open, last seen Sat 13 Feb');
    expect(stateWords(episode({}))).toBe('told over Tue 23 Feb');
    expect(stateWords(episode({ state: 'not-seen-since' }))).toBe('not seen since Sat 13 Feb');
  });

  it('shares, the largest first; what is there never reads 0', () => {
    expect(
      sharesWords({ wheel: { metres: 4, share: 0.4 }, unknown: { metres: 6, share: 0.6 }, lead: { metres: 0 } }),
    ).toBe('not told 60\u00a0%, wheel 40\u00a0%');
    expect([percent(0), percent(0.001), percent(0.005), percent(1)]).toEqual([
      '0\u00a0%',
      'under 1\u00a0%',
      '1\u00a0%',
      '100\u00a0%',
    ]);
  });

  it('what it did before, beside its usual; rows of which nothing was told are left out', () => {
    const shares = (more: object) => ({
      metres: 0,
      minutes: 0,
      runs: 0,
      runsWithoutDistance: 0,
      byPosition: {},
      bySide: {},
      bySurface: {},
      byTemperature: {},
      byBooties: {},
      ...more,
    });
    const rows = beforeRows(
      {
        metres7: 20 * MILE,
        daysOfRecord: 7,
        week: shares({ byPosition: { wheel: { metres: 1, share: 1 } }, bySide: { unknown: { metres: 1, share: 1 } } }),
        day: shares({ runs: 1, metres: 5 * MILE }),
        usual: { metres7: 14 * MILE, season: shares({ byPosition: { team: { metres: 1, share: 1 } } }) },
      } as Episode['onset'],
      'imperial',
    );
    expect(rows).toEqual([
      { what: 'Distance', week: '20 mi', day: '5 mi', usual: '14 mi in 7 days' },
      { what: 'Position', week: 'wheel 100\u00a0%', day: '', usual: 'team 100\u00a0%' },
    ]);
  });
});

const season = (more: object) =>
  ({
    days: [],
    appetite: [],
    measures: [],
    episodes: [],
    season: '2026-27',
    on: '2027-01-31',
    ...more,
  }) as unknown as DogSeason;

describe('the days of the pictures', () => {
  it('begin with the first thing told in the season', () => {
    expect(spanOf(season({}))).toBeUndefined();
    expect(spanOf(season({ days: [{ day: '2026-09-05' }], measures: [{ day: '2026-09-01' }] }))).toEqual({
      from: '2026-09-01',
      to: '2027-01-31',
    });
    expect(spanOf(season({ episodes: [{ from: '2026-05-05' }] }))?.from).toBe('2026-07-01');
  });

  it('step to a day and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), (step) => {
        expect(stepOf(dayOfStep(step, '2026-07-01'), '2026-07-01')).toBe(step);
      }),
    );
    expect(dayOfStep(31, '2026-12-31')).toBe('2027-01-31');
  });

  it('a day is read out with its load, what begins on it, and what was left in the bowl', () => {
    const story = season({
      days: [
        { day: '2026-12-12', metres: 24 * MILE, minutes: 170, runs: 1, sum7: 101 * MILE, meanWeek28: 88 * MILE },
        { day: '2026-12-13', metres: 0, minutes: 0, runs: 0, sum7: 77 * MILE },
      ],
      episodes: [{ from: '2026-12-12', doubtful: false, number: 2, site: { label: 'left wrist' } }],
      appetite: [
        { day: '2026-12-12', what: 'snack', took: 'none' },
        { day: '2026-12-12', what: 'meal', took: 'none', assertion: 'absent' },
        { day: '2026-12-12', what: 'water', took: 'all' },
      ],
    });
    expect(dayReadout(story, '2026-12-12', 'imperial')).toBe(
      'Sat 12 Dec: 24 mi in 1 run, 2 h 50 min; 7 days 101 mi; a week of the last 28 days 88 mi. Left wrist begins, 2nd time. Snack: took none.',
    );
    expect(dayReadout(story, '2026-12-13', 'imperial')).toBe(
      'Sun 13 Dec: no run; 7 days 77 mi; less than 28 days of record.',
    );
    expect(dayReadout(story, '2026-12-01', 'imperial')).toBe('Tue 1 Dec: before its first run.');
  });
});
