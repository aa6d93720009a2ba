/** Every figure against a plain recomputation that knows nothing of indexes: a list of days, and sums over it. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  dayNumber,
  dayOf,
  indexLoad,
  type LoadRun,
  lastDaysOf,
  loadOf,
  seriesOf,
  withRuns,
} from '../../server/load/index.ts';
import { dogIn, run } from './build.ts';

const DOGS = ['Juniper', 'Moss', 'Otter', 'Bramble'];
const FIRST = dayNumber('2026-08-20');
const SPAN = 130;

const runArbitrary = fc
  .record({
    day: fc.integer({ min: 0, max: SPAN }),
    dogs: fc.subarray(DOGS, { minLength: 1 }),
    // Whole metres and odd fractions both; a run whose distance nobody knows now and then.
    metres: fc.option(
      fc.oneof(fc.integer({ min: 0, max: 90_000 }), fc.double({ min: 0.001, max: 90_000, noNaN: true })),
      {
        freq: 8,
        nil: undefined,
      },
    ),
    minutes: fc.option(fc.integer({ min: 0, max: 600 }), { nil: undefined }),
  })
  .map(({ day, dogs, metres, minutes }) =>
    run(
      dayOf(FIRST + day),
      dogs.map((dog) => dogIn(dog, metres, minutes === undefined ? {} : { minutes })),
    ),
  );
const runsArbitrary = fc.array(runArbitrary, { maxLength: 120 });
const onArbitrary = fc.integer({ min: -5, max: SPAN + 40 }).map((day) => dayOf(FIRST + day));

/** The days of one dog, from its first run to `on`, each looked for in all the runs anew. */
function plainDays(runs: LoadRun[], dog: string, on: string, what: 'metres' | 'minutes' | 'count'): number[] {
  const mine = runs.filter((one) => one.dogs.some((d) => d.dog === dog)).map((one) => one.day);
  const first = mine.sort()[0];
  if (first === undefined || first > on) return [];
  const days: number[] = [];
  for (let day = dayNumber(first); day <= dayNumber(on); day++) {
    let total = 0;
    for (const one of runs.filter((r) => r.day === dayOf(day)))
      for (const d of one.dogs.filter((x) => x.dog === dog)) total += what === 'count' ? 1 : (d[what] ?? 0);
    days.push(total);
  }
  return days;
}
const total = (days: number[]) => days.reduce((sum, value) => sum + value, 0);
const close = (got: number | undefined, want: number) => {
  expect(got).toBeDefined();
  expect(Math.abs((got as number) - want)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(want)));
};

it('sums, means, ratios, monotony and streaks equal a recomputation from the plain list of days', () => {
  fc.assert(
    fc.property(runsArbitrary, onArbitrary, (runs, on) => {
      for (const load of loadOf(runs, DOGS, on)) {
        const days = plainDays(runs, load.dog, on, 'metres');
        const counts = plainDays(runs, load.dog, on, 'count');
        const minutes = plainDays(runs, load.dog, on, 'minutes');
        expect(load.daysOfRecord).toBe(days.length);
        expect(load.tooShort).toBe(days.length < 28);
        close(load.today, days.at(-1) ?? 0);
        close(load.metres7, total(days.slice(-7)));
        close(load.metres28, total(days.slice(-28)));
        close(load.minutes28, total(minutes.slice(-28)));
        close(load.last28.metres, total(days.slice(-28)));
        expect(load.runs28).toBe(total(counts.slice(-28)));
        checkRatios(load, days);
        checkMonotony(load, days);
        const lastRun = counts.findLastIndex((count) => count > 0);
        expect(load.daysSinceLastRun).toBe(lastRun < 0 ? undefined : counts.length - 1 - lastRun);
        checkChain(load, counts);
      }
    }),
    { numRuns: 150 },
  );
});

function checkRatios(load: ReturnType<typeof loadOf>[number], days: number[]): void {
  const month = total(days.slice(-28));
  if (days.length < 28 || month === 0) {
    expect(load.coupled).toBeUndefined();
    expect(load.ewma).toBeUndefined();
    return;
  }
  close(load.coupled, total(days.slice(-7)) / 7 / (month / 28));
  let short = days[0] as number;
  let long = short;
  for (const day of days.slice(1)) {
    short = (day * 2) / 8 + (short * 6) / 8;
    long = (day * 2) / 29 + (long * 27) / 29;
  }
  close(load.ewma, short / long);
}

function checkMonotony(load: ReturnType<typeof loadOf>[number], days: number[]): void {
  const week = days.slice(-7);
  const mean = total(week) / 7;
  const sd = Math.sqrt(total(week.map((value) => (value - mean) ** 2)) / 6);
  if (week.length < 7 || sd <= mean * 1e-9) {
    expect(load.monotony).toBeUndefined();
    expect(load.strain).toBeUndefined();
    return;
  }
  close((load.monotony as number) * sd, mean);
  close((load.strain as number) * sd, total(week) * mean);
}

function checkChain(load: ReturnType<typeof loadOf>[number], counts: number[]): void {
  const back = [...counts].reverse();
  if (back[0] === 0) back.shift();
  const broken = back.indexOf(0);
  const chain = back.slice(0, broken < 0 ? undefined : broken);
  expect(load.daysInARow).toBe(chain.length);
  expect(load.runsInARow).toBe(total(chain));
}

it('the series equals the load of each of its days', () => {
  fc.assert(
    fc.property(runsArbitrary, (runs) => {
      const index = indexLoad(runs);
      for (const point of seriesOf(index, 'Moss', dayOf(FIRST), dayOf(FIRST + SPAN + 10))) {
        const [load] = loadOf(index, ['Moss'], point.day);
        expect({ day: point.day, sum7: load?.metres7, metres: load?.today, meanWeek28: load?.meanWeek28 }).toEqual({
          day: point.day,
          sum7: point.sum7,
          metres: point.metres,
          meanWeek28: point.meanWeek28,
        });
      }
    }),
    { numRuns: 25 },
  );
});

it('the order in which runs come changes nothing, not even the last digit', () => {
  fc.assert(
    fc.property(
      runsArbitrary.chain((runs) => fc.tuple(fc.constant(runs), fc.shuffledSubarray(runs, { minLength: runs.length }))),
      onArbitrary,
      ([runs, shuffled], on) => {
        expect(loadOf(shuffled, DOGS, on)).toEqual(loadOf(runs, DOGS, on));
      },
    ),
    { numRuns: 100 },
  );
});

it('an index that some runs were changed in equals one made anew', () => {
  fc.assert(
    fc.property(
      runsArbitrary,
      runsArbitrary,
      fc.integer({ min: 0, max: 10 }),
      onArbitrary,
      (runs, others, count, on) => {
        const before = runs.slice(0, count);
        const after = others.slice(0, count);
        const changed = withRuns(indexLoad(runs), before, after);
        const anew = indexLoad([...runs.slice(count), ...after]);
        expect(loadOf(changed, DOGS, on)).toEqual(loadOf(anew, DOGS, on));
        expect([...changed.dogs.keys()].sort()).toEqual([...anew.dogs.keys()].sort());
      },
    ),
    { numRuns: 100 },
  );
});

it('no metre is lost between bands or booties, and the coupled ratio is never above 4', () => {
  fc.assert(
    fc.property(runsArbitrary, onArbitrary, (runs, on) => {
      for (const load of loadOf(runs, DOGS, on)) {
        for (const parts of [load.season.byTemperature, load.season.byBooties])
          close(
            Object.values(parts).reduce((sum, share) => sum + share.metres, 0),
            load.season.metres,
          );
        expect(load.coupled ?? 0).toBeLessThanOrEqual(4 + 1e-9);
      }
    }),
    { numRuns: 100 },
  );
});

it('the last days of the picture are those days, oldest first, and name the days without a known distance', () => {
  fc.assert(
    fc.property(runsArbitrary, onArbitrary, fc.integer({ min: 1, max: 60 }), (runs, on, count) => {
      const index = indexLoad(runs);
      for (const dog of DOGS) {
        const { from, metres, runs: times, unknown } = lastDaysOf(index, dog, on, count);
        expect([from, metres.length, times.length]).toEqual([dayOf(dayNumber(on) - count + 1), count, count]);
        for (let i = 0; i < count; i++) {
          const day = dayOf(dayNumber(from) + i);
          const mine = runs.filter((one) => one.day === day).flatMap((one) => one.dogs.filter((d) => d.dog === dog));
          expect(times[i]).toBe(mine.length);
          close(metres[i], total(mine.map((d) => d.metres ?? 0)));
          expect(unknown.includes(day)).toBe(mine.some((d) => d.metres === undefined));
        }
      }
    }),
    { numRuns: 60 },
  );
});
