import { describe, expect, it } from 'vitest';
import { dogLoadSchema, indexLoad, loadOf, seriesOf, tooShortSentence, withRuns } from '../../server/load/index.ts';
import { daily, dogIn, MILE, run, surfaceSaid } from './build.ts';

const only = <T>(list: T[]): T => {
  expect(list).toHaveLength(1);
  return list[0] as T;
};

describe('a dog with less than 28 days of record', () => {
  const runs = daily('Juniper', '2026-10-01', [10, 0, 20, 0, 0, 30]);

  it('says so and gives no ratio and no four-week mean', () => {
    const load = only(loadOf(runs, ['Juniper'], '2026-10-27'));
    expect(load).toMatchObject({ since: '2026-10-01', daysOfRecord: 27, tooShort: true, metres28: 60 });
    expect(load.meanWeek28).toBeUndefined();
    expect(load.coupled).toBeUndefined();
    expect(load.ewma).toBeUndefined();
    expect(tooShortSentence('Juniper', load.daysOfRecord)).toBe(
      'Juniper has 27 days of record; a comparison with the last four weeks needs 28.',
    );
  });

  it('is compared from the 28th day on', () => {
    const load = only(loadOf(runs, ['Juniper'], '2026-10-28'));
    expect(load).toMatchObject({ daysOfRecord: 28, tooShort: false, meanWeek28: 15, coupled: 0 });
  });

  it('counts no day before its first run: the sums are of the days there are', () => {
    const load = only(loadOf(runs, ['Juniper'], '2026-10-03'));
    expect(load).toMatchObject({ today: 20, metres7: 30, metres28: 30, daysOfRecord: 3, runs7: 2 });
    expect(load.monotony).toBeUndefined();
  });

  it('has no record at all before its first run, or when nobody knows it', () => {
    for (const [dog, on] of [
      ['Juniper', '2026-09-30'],
      ['Moss', '2026-10-03'],
    ] as const) {
      const load = only(loadOf(runs, [dog], on));
      expect(load).toMatchObject({ daysOfRecord: 0, tooShort: true, today: 0, metres28: 0 });
      expect(load.since).toBeUndefined();
      expect(load.daysSinceLastRun).toBeUndefined();
    }
    expect(tooShortSentence('Moss', 0)).toBe('Moss has no run yet, so there is nothing to compare.');
  });
});

describe('the four windows of the Load page', () => {
  const runs = [
    ...daily('Moss', '2027-01-01', Array(28).fill(10 * MILE)),
    run('2027-01-28', { Moss: 4 * MILE, Otter: 4 * MILE }),
  ];
  it('adds two runs of a day and leaves later days out', () => {
    const load = only(loadOf(runs, ['Moss'], '2027-01-28'));
    expect(load.today).toBeCloseTo(14 * MILE, 6);
    expect(load.metres7).toBeCloseTo(74 * MILE, 6);
    expect(load.metres28).toBeCloseTo(284 * MILE, 6);
    expect(load.meanWeek28).toBeCloseTo(71 * MILE, 6);
    expect(load.coupled).toBeCloseTo(74 / 71, 12);
    expect(load).toMatchObject({ daysSinceLastRun: 0, runs7: 8, runs28: 29 });
    const before = only(loadOf(runs, ['Moss'], '2027-01-10'));
    expect(before.metres28).toBeCloseTo(100 * MILE, 6);
  });
  it('keeps the order of the dogs asked for, and fits its own schema', () => {
    const loads = loadOf(runs, ['Otter', 'Tansy', 'Moss'], '2027-01-28');
    expect(loads.map((load) => load.dog)).toEqual(['Otter', 'Tansy', 'Moss']);
    for (const load of loads) expect(dogLoadSchema.parse(load)).toEqual(load);
  });
});

describe('days in a row and days without', () => {
  const runs = daily('Bramble', '2026-11-01', [5, 0, 5, 5, 5, 0, 0, 0, 0, 5, 5]);
  const on = (day: string) => only(loadOf(runs, ['Bramble'], day));
  it('counts a chain up to the day or the day before it', () => {
    expect(on('2026-11-05')).toMatchObject({ daysInARow: 3, runsInARow: 3, daysSinceLastRun: 0 });
    expect(on('2026-11-06')).toMatchObject({ daysInARow: 3, runsInARow: 3, daysSinceLastRun: 1 });
    expect(on('2026-11-07')).toMatchObject({ daysInARow: 0, runsInARow: 0, daysSinceLastRun: 2 });
    expect(on('2026-11-11')).toMatchObject({ daysInARow: 2, lastRun: '2026-11-11' });
  });
  it('counts two runs of one day as two runs and one day', () => {
    const twice = [...runs, run('2026-11-11', { Bramble: 1 })];
    expect(only(loadOf(twice, ['Bramble'], '2026-11-11'))).toMatchObject({ daysInARow: 2, runsInARow: 3 });
  });
  it('finds the longest gap, and one that still lasts', () => {
    expect(on('2026-11-11').longestGap).toEqual({ days: 4, from: '2026-11-06', to: '2026-11-09', open: false });
    expect(on('2026-11-17').longestGap).toEqual({ days: 6, from: '2026-11-12', to: '2026-11-17', open: true });
    expect(on('2026-11-01').longestGap).toBeUndefined();
  });
  it('takes no summer for a gap, and names the return from it', () => {
    const autumn = [...runs, run('2027-09-01', { Bramble: 5 }), run('2027-09-04', { Bramble: 5 })];
    const load = only(loadOf(autumn, ['Bramble'], '2027-09-04'));
    expect(load.longestGap).toEqual({ days: 2, from: '2027-09-02', to: '2027-09-03', open: false });
    // 12 November to 31 August: 19 + 31 + 31 + 28 + 31 + 30 + 31 + 30 + 31 + 31 days.
    expect(load.afterBreak).toEqual({ days: 293, back: '2027-09-01' });
    expect(load.coupled).toBe(4);
    expect(only(loadOf(autumn, ['Bramble'], '2027-09-29')).afterBreak).toBeUndefined();
  });
});

describe('shares', () => {
  const runs = [
    run(
      '2027-01-01',
      [
        dogIn('Tansy', 1000, {
          minutes: 60,
          byPosition: { lead: 600, wheel: 400 },
          bySide: { left: 600, unknown: 400 },
          metresBooted: 250,
        }),
      ],
      { surfaces: ['icy', 'hard', 'icy'], celsius: [-18, -24] },
    ),
    run('2027-01-02', [dogIn('Tansy', 3000, { byPosition: { wheel: 3000 }, bySide: { left: 3000 } })], {
      celsius: [-10],
    }),
    run('2027-01-03', [dogIn('Tansy', undefined)], { surfaces: ['deep'] }),
  ];
  const { last28 } = only(loadOf(runs, ['Tansy'], '2027-01-03'));
  it('by position and side add up to the distance', () => {
    expect(last28.byPosition).toEqual({ lead: { metres: 600, share: 0.15 }, wheel: { metres: 3400, share: 0.85 } });
    expect(last28.bySide).toEqual({ left: { metres: 3600, share: 0.9 }, unknown: { metres: 400, share: 0.1 } });
  });
  it('by surface count a run in full for each, once', () => {
    expect(last28.bySurface).toEqual({
      icy: { metres: 1000, share: 0.25 },
      hard: { metres: 1000, share: 0.25 },
      unknown: { metres: 3000, share: 0.75 },
    });
  });
  it('by temperature go by the mean of a run; the lower edge belongs to the band', () => {
    expect(last28.byTemperature).toEqual({
      '-30 to -20': { metres: 1000, share: 0.25 },
      '-10 to 0': { metres: 3000, share: 0.75 },
    });
  });
  it('with booties on, off, and with no word of them', () => {
    expect(last28.byBooties).toEqual({
      on: { metres: 250, share: 0.0625 },
      off: { metres: 750, share: 0.1875 },
      unknown: { metres: 3000, share: 0.75 },
    });
  });
  it('name the run whose distance nobody knows instead of counting it as nothing', () => {
    expect(last28).toMatchObject({ metres: 4000, minutes: 60, runs: 3, runsWithoutDistance: 1 });
  });
  it('give no share of nothing', () => {
    const load = only(loadOf(runs, ['Tansy'], '2027-03-01'));
    expect(load.last28).toMatchObject({ metres: 0, byBooties: {}, byPosition: {} });
    expect(load.season.metres).toBe(4000);
    expect(load.coupled).toBeUndefined();
    expect(load.ewma).toBeUndefined();
  });
  it('take no planned or denied surface', () => {
    const planned = run('2027-01-01', { Tansy: 10 });
    planned.surfaces.push(surfaceSaid('icy', 'planned'), surfaceSaid('hard', 'absent'));
    expect(only(loadOf([planned], ['Tansy'], '2027-01-01')).last28.bySurface).toEqual({
      unknown: { metres: 10, share: 1 },
    });
  });
});

it('a finding told of a dog that stayed home is no run', () => {
  const runs = [run('2027-01-01', [dogIn('Moss', undefined, { stretches: [] }), dogIn('Otter', 10)])];
  expect([...indexLoad(runs).dogs.keys()]).toEqual(['Otter']);
});

describe('a series for a picture', () => {
  const runs = daily('Kodiak', '2026-10-01', [10, 0, 20]);
  it('starts with the first run, goes on in zeros, and has a mean week from the 28th day on', () => {
    const points = seriesOf(runs, 'Kodiak', '2026-09-01', '2026-10-28');
    expect(points).toHaveLength(28);
    expect(points[0]).toEqual({ day: '2026-10-01', metres: 10, minutes: 0, runs: 1, sum7: 10 });
    expect(points[2]).toMatchObject({ day: '2026-10-03', sum7: 30 });
    expect(points[7]).toMatchObject({ day: '2026-10-08', metres: 0, runs: 0, sum7: 20 });
    expect(points[27]).toMatchObject({ day: '2026-10-28', sum7: 0, meanWeek28: 7.5 });
    expect(points.filter((point) => point.meanWeek28 !== undefined)).toHaveLength(1);
  });
  it('is empty for a dog without a run, and clear about days that are none', () => {
    expect(seriesOf(runs, 'Moss', '2026-10-01', '2026-10-02')).toEqual([]);
    expect(() => seriesOf(runs, 'Kodiak', '2026-10-02', '2026-10-01')).toThrow(/first day comes after the last/);
    expect(() => loadOf(runs, ['Kodiak'], '2027-02-30')).toThrow('"2027-02-30" is not a day');
    expect(() => loadOf(runs, ['Kodiak'], 'yesterday')).toThrow(/YYYY-MM-DD/);
  });
});

it('an index after one changed run is the index of the changed runs', () => {
  const first = run('2027-01-02', { Moss: 10, Otter: 10 }, { id: 'a' });
  const other = run('2027-01-01', { Moss: 5 }, { id: 'b' });
  const changed = run('2027-01-03', { Moss: 12 }, { id: 'a' });
  const index = indexLoad([first, other]);
  const next = withRuns(index, [first], [changed]);
  const dogs = ['Moss', 'Otter'];
  expect(loadOf(next, dogs, '2027-01-05')).toEqual(loadOf([other, changed], dogs, '2027-01-05'));
  expect(loadOf(index, dogs, '2027-01-05')).toEqual(loadOf([first, other], dogs, '2027-01-05'));
});
