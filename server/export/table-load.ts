/** The table of daily load: one row a dog and day, days without a run too. */
import {
  type DogHistory,
  dayNumber,
  dayOf,
  lambda,
  monotonyOf,
  ratioOf,
  rowsBetween,
  seasonDays,
  sumDays,
} from '../load/index.ts';
import type { SeasonData } from './season-data.ts';
import { figureCell, metresCell, milesCell, table } from './table.ts';

interface LoadRow {
  dog: string;
  id?: string;
  day: string;
  metres: number;
  minutes: number;
  runs: number;
  metres7: number;
  meanWeek28?: number;
  coupled?: number;
  ewma?: number;
  monotony?: number;
  strain?: number;
}

export const load = table<LoadRow>({
  name: 'load',
  title: 'Load',
  says:
    'Distance and time in harness of each dog on each day from its first run on, days without a run as zero. The ratios ' +
    'are a change of load, not a chance of injury (Impellizzeri 2020, Sports Med, doi 10.1007/s40279-020-01378-6).',
  primaryKey: ['dog', 'day'],
  foreignKeys: [{ fields: 'dog_id', table: 'dogs', key: 'id' }],
  columns: [
    { name: 'dog', type: 'string', says: 'Call name of now.', required: true, of: (row) => row.dog },
    { name: 'day', type: 'date', says: 'Local day.', required: true, of: (row) => row.day },
    { name: 'dog_id', type: 'string', says: 'The dog; empty for one not on the roster.', of: (row) => row.id },
    {
      name: 'metres',
      type: 'number',
      unit: 'm',
      says: 'Distance that day.',
      required: true,
      of: (row) => metresCell(row.metres),
    },
    {
      name: 'miles',
      type: 'number',
      unit: '[mi_i]',
      says: 'The same in miles.',
      required: true,
      of: (row) => milesCell(row.metres),
    },
    {
      name: 'minutes',
      type: 'number',
      unit: 'min',
      says: 'Time that day, as far as it is known.',
      required: true,
      of: (row) => metresCell(row.minutes),
    },
    { name: 'runs', type: 'integer', unit: '1', says: 'Runs that day.', required: true, of: (row) => row.runs },
    {
      name: 'metres_7_days',
      type: 'number',
      unit: 'm',
      says: 'Sum of the seven days that end here.',
      required: true,
      of: (row) => metresCell(row.metres7),
    },
    {
      name: 'mean_week_28_days',
      type: 'number',
      unit: 'm',
      says: 'A quarter of the 28 days that end here; empty before 28 days of record.',
      of: (row) => metresCell(row.meanWeek28),
    },
    {
      name: 'ratio',
      type: 'number',
      unit: '1',
      says: 'Seven days over the mean week of 28, which hold the same seven.',
      of: (row) => figureCell(row.coupled),
    },
    {
      name: 'ratio_weighted',
      type: 'number',
      unit: '1',
      says: 'The same from exponentially weighted averages, λ = 2/(N + 1), N 7 and 28 (Williams 2017, Br J Sports Med 51:209).',
      of: (row) => figureCell(row.ewma),
    },
    {
      name: 'monotony',
      type: 'number',
      unit: '1',
      says: 'Mean of the seven daily distances over their sample standard deviation (Foster 1998, Med Sci Sports Exerc 30:1164); none where all days were equal.',
      of: (row) => figureCell(row.monotony),
    },
    {
      name: 'strain',
      type: 'number',
      unit: 'm',
      says: 'The week’s distance times monotony.',
      of: (row) => metresCell(row.strain),
    },
  ],
  *rows(data) {
    const { first, last } = seasonDays(data.season.season);
    const end = Math.min(last, dayNumber(data.until));
    for (const history of historiesOf(data, first, last)) {
      const id = data.dog(history.dog)?.id;
      for (let day = Math.max(first, history.first); day <= end; day++)
        yield { dog: history.dog, ...(id ? { id } : {}), ...rowOf(history, day) };
    }
  },
});

/** By name: dogs that ran in the season, and those that may yet; a retired dog's zeros tell nothing. */
function historiesOf({ load: index, dog }: SeasonData, first: number, last: number): DogHistory[] {
  return [...index.dogs.values()]
    .filter((history) => history.first <= last)
    .filter((history) => dog(history.dog)?.retired === false || rowsBetween(history, first, last).length > 0)
    .sort((a, b) => a.dog.localeCompare(b.dog, 'en'));
}

/** The same figures as `loadOf` gives, by itself: a season has thousands of these rows. */
function rowOf(history: DogHistory, day: number): Omit<LoadRow, 'dog' | 'id'> {
  const back = (what: 'metres' | 'minutes' | 'runs', days: number) => sumDays(history, what, day - days + 1, day);
  const daysOfRecord = day - history.first + 1;
  const metres7 = back('metres', 7);
  const row: Omit<LoadRow, 'dog' | 'id'> = {
    day: dayOf(day),
    metres: back('metres', 1),
    minutes: back('minutes', 1),
    runs: back('runs', 1),
    metres7,
  };
  if (daysOfRecord >= 7) {
    const week = Array.from({ length: 7 }, (_, i) => sumDays(history, 'metres', day - 6 + i, day - 6 + i));
    Object.assign(row, monotonyOf(week));
  }
  if (daysOfRecord < 28) return row;
  row.meanWeek28 = (back('metres', 28) * 7) / 28;
  const coupled = ratioOf(metres7, row.meanWeek28);
  // Nothing run in four weeks: nothing to compare.
  if (coupled === undefined) return row;
  row.coupled = coupled;
  const { short, long } = history.averages();
  const at = Math.min(day, history.last) - history.first;
  const idle = Math.max(0, day - history.last);
  const ewma = ratioOf(
    (short[at] as number) * (1 - lambda(7)) ** idle,
    (long[at] as number) * (1 - lambda(28)) ** idle,
  );
  if (ewma !== undefined) row.ewma = ewma;
  return row;
}
