/** A dog's load on a day, and its series for a picture. */
import { seasonOf } from '../model.ts';
import { dayNumber, dayOf, seasonDays } from './days.ts';
import { ACUTE_DAYS, CHRONIC_DAYS, lambda, monotonyOf, ratioOf } from './figures.ts';
import { type DogHistory, indexLoad, type LoadIndex, type LoadRun, rowsBetween, sumDays } from './index-runs.ts';
import type { DogLoad, LastDays, LoadPoint } from './schema.ts';
import { sharesOf } from './shares.ts';
import { streaksOf } from './streaks.ts';

/**
 * The load of each dog asked for, in that order, as it stood at the end of a day. Runs after that day are not counted.
 * Give the runs of every season there is: a ratio in the first weeks of a season needs the weeks before it.
 * @param runs run records, or an index made of them once
 * @param dogs call names; a dog without a run gets a row of zeros that says so
 * @param on the local day, YYYY-MM-DD
 * @throws RangeError with a sentence when `on` is not a day
 */
export function loadOf(runs: readonly LoadRun[] | LoadIndex, dogs: readonly string[], on: string): DogLoad[] {
  const day = dayNumber(on);
  const index = asIndex(runs);
  return dogs.map((dog) => keptLoad(index.dogs.get(dog), dog, day, on));
}

/** The last load worked out of each history: after one review the dogs that were in no changed run have the one they had. */
const kept = new WeakMap<DogHistory, DogLoad>();

function keptLoad(history: DogHistory | undefined, dog: string, day: number, on: string): DogLoad {
  const known = history && kept.get(history);
  if (known?.on === on) return known;
  const load = dogLoad(history, dog, day, on);
  if (history) kept.set(history, load);
  return load;
}

/**
 * One dog's days from `from` to `to` (YYYY-MM-DD, both inclusive). Days before its first run are left out; days after
 * its last one are zeros.
 * @throws RangeError with a sentence when a day is none, or `from` comes after `to`
 */
export function seriesOf(runs: readonly LoadRun[] | LoadIndex, dog: string, from: string, to: string): LoadPoint[] {
  const end = dayNumber(to);
  if (dayNumber(from) > end)
    throw new RangeError(`The series can't go from ${from} to ${to}: the first day comes after the last.`);
  const history = asIndex(runs).dogs.get(dog);
  if (!history) return [];
  const points: LoadPoint[] = [];
  for (let day = Math.max(dayNumber(from), history.first); day <= end; day++) {
    const full = day - history.first + 1 >= CHRONIC_DAYS;
    points.push({
      day: dayOf(day),
      metres: sumDays(history, 'metres', day, day),
      minutes: sumDays(history, 'minutes', day, day),
      runs: sumDays(history, 'runs', day, day),
      sum7: sumDays(history, 'metres', day - ACUTE_DAYS + 1, day),
      ...(full ? { meanWeek28: meanWeek(history, day) } : {}),
    });
  }
  return points;
}

/**
 * One dog's last days, oldest first, one value a day.
 * @param on the last day, YYYY-MM-DD
 * @param count how many days
 * @throws RangeError with a sentence when `on` is not a day
 */
export function lastDaysOf(index: LoadIndex, dog: string, on: string, count: number): LastDays {
  const last = dayNumber(on);
  const first = last - count + 1;
  const history = index.dogs.get(dog);
  const values = (what: 'metres' | 'runs') =>
    Array.from({ length: count }, (_, i) => (history ? sumDays(history, what, first + i, first + i) : 0));
  const unknown = history ? rowsBetween(history, first, last).filter((row) => row.in.metres === undefined) : [];
  return {
    from: dayOf(first),
    metres: values('metres'),
    runs: values('runs'),
    unknown: [...new Set(unknown.map((row) => dayOf(row.day)))],
  };
}

function asIndex(runs: readonly LoadRun[] | LoadIndex): LoadIndex {
  return 'dogs' in runs ? runs : indexLoad(runs);
}

function meanWeek(history: DogHistory, day: number): number {
  return (sumDays(history, 'metres', day - CHRONIC_DAYS + 1, day) * ACUTE_DAYS) / CHRONIC_DAYS;
}

function dogLoad(history: DogHistory | undefined, dog: string, day: number, on: string): DogLoad {
  // A dog whose first run comes later has no record on this day.
  if (!history || history.first > day) return noLoad(dog, on);
  const seasonFirst = seasonDays(seasonOf(on)).first;
  const window = (what: 'metres' | 'minutes' | 'runs', days: number) => sumDays(history, what, day - days + 1, day);
  const daysOfRecord = day - history.first + 1;
  const last28 = sharesOf(rowsBetween(history, day - CHRONIC_DAYS + 1, day));
  return {
    dog,
    on,
    since: dayOf(history.first),
    daysOfRecord,
    tooShort: daysOfRecord < CHRONIC_DAYS,
    today: window('metres', 1),
    metres7: window('metres', ACUTE_DAYS),
    metres28: window('metres', CHRONIC_DAYS),
    minutesToday: window('minutes', 1),
    minutes7: window('minutes', ACUTE_DAYS),
    minutes28: window('minutes', CHRONIC_DAYS),
    runs7: window('runs', ACUTE_DAYS),
    runs28: window('runs', CHRONIC_DAYS),
    runsWithoutDistance28: last28.runsWithoutDistance,
    ...(daysOfRecord < CHRONIC_DAYS ? {} : comparison(history, day)),
    ...(daysOfRecord < ACUTE_DAYS ? {} : monotonyOf(lastWeek(history, day))),
    ...streaksOf(history, day, seasonFirst),
    last28,
    season: sharesOf(rowsBetween(history, seasonFirst, day)),
  };
}

/** The four-week mean and both ratios, for a dog with 28 days of record. */
function comparison(
  history: DogHistory,
  day: number,
): Pick<DogLoad, 'meanWeek28' | 'coupled' | 'ewma' | 'ewma7' | 'ewma28'> {
  const mean = meanWeek(history, day);
  const coupled = ratioOf(sumDays(history, 'metres', day - ACUTE_DAYS + 1, day), mean);
  const { short, long } = history.averages();
  const at = Math.min(day, history.last) - history.first;
  // After the last run every day adds zero: the averages only fade.
  const idle = Math.max(0, day - history.last);
  const ewma7 = (short[at] as number) * (1 - lambda(ACUTE_DAYS)) ** idle;
  const ewma28 = (long[at] as number) * (1 - lambda(CHRONIC_DAYS)) ** idle;
  // Nothing run in four weeks: both ratios would compare nothing with nothing.
  const ewma = coupled === undefined ? undefined : ratioOf(ewma7, ewma28);
  return {
    meanWeek28: mean,
    ewma7,
    ewma28,
    ...(coupled === undefined ? {} : { coupled }),
    ...(ewma === undefined ? {} : { ewma }),
  };
}

function lastWeek(history: DogHistory, day: number): number[] {
  return Array.from({ length: ACUTE_DAYS }, (_, i) => {
    const at = day - ACUTE_DAYS + 1 + i;
    return sumDays(history, 'metres', at, at);
  });
}

function noLoad(dog: string, on: string): DogLoad {
  const none = sharesOf([]);
  return {
    dog,
    on,
    daysOfRecord: 0,
    tooShort: true,
    today: 0,
    metres7: 0,
    metres28: 0,
    minutesToday: 0,
    minutes7: 0,
    minutes28: 0,
    runs7: 0,
    runs28: 0,
    runsWithoutDistance28: 0,
    daysInARow: 0,
    runsInARow: 0,
    last28: none,
    season: none,
  };
}
