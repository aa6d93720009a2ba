/**
 * The index: runs sorted by dog and laid out by day once, so that every figure is a short walk over an array.
 * Elapsed days without a run stand in it as zero; days before the dog's first run are not in it at all.
 */
import type { Surface } from '../../grammar/entry.ts';
import type { RunDog, RunRecord } from '../records/types.ts';
import { bandOf, surfacesOf } from './conditions.ts';
import { dayNumber } from './days.ts';
import { ACUTE_DAYS, CHRONIC_DAYS, ewma } from './figures.ts';
import type { TemperatureBand } from './schema.ts';

/** What load needs of a dog in a run. */
export type LoadDog = Pick<
  RunDog,
  'dog' | 'stretches' | 'metres' | 'minutes' | 'byPosition' | 'bySide' | 'metresBooted'
>;
/** What load needs of a run; every RunRecord is one. */
export type LoadRun = Pick<RunRecord, 'id' | 'day' | 'surfaces' | 'celsius'> & { dogs: readonly LoadDog[] };

/** What every dog of a run shares, worked out once a run. */
export interface RunFacts {
  /** The run's day as a number. */
  day: number;
  surfaces: readonly (Surface | 'unknown')[];
  band: TemperatureBand | 'unknown';
}
/** A dog's part in one run. */
export interface Row<R extends LoadRun = LoadRun> {
  day: number;
  run: R;
  in: R['dogs'][number];
  facts: RunFacts;
}

/** One dog's runs in the order of days, and its daily loads from its first run to its last. */
export interface DogHistory<R extends LoadRun = LoadRun> {
  dog: string;
  rows: Row<R>[];
  /** Days as numbers, see days.ts. */
  first: number;
  last: number;
  /** One value a day, from `first` to `last`. */
  metres: Float64Array;
  minutes: Float64Array;
  runs: Uint16Array;
  /** Exponentially weighted averages of `metres`, worked out when first asked for. */
  averages(): { short: Float64Array; long: Float64Array };
}
export interface LoadIndex<R extends LoadRun = LoadRun> {
  dogs: ReadonlyMap<string, DogHistory<R>>;
}

/** Whether a dog was in the team at all: a finding told of a dog that stayed home does not make it a run. */
export function ranIn(dog: LoadDog): boolean {
  return dog.stretches.length > 0 || (dog.metres ?? 0) > 0;
}

/** Lays the runs out by dog and day. The order in which they come does not matter. */
export function indexLoad<R extends LoadRun>(runs: readonly R[]): LoadIndex<R> {
  const byDog = new Map<string, Row<R>[]>();
  for (const run of runs)
    for (const row of rowsOf(run)) {
      const rows = byDog.get(row.in.dog);
      if (rows) rows.push(row);
      else byDog.set(row.in.dog, [row]);
    }
  const dogs = new Map<string, DogHistory<R>>();
  for (const [dog, rows] of byDog) dogs.set(dog, historyOf(dog, rows));
  return { dogs };
}

/**
 * The index after some runs have changed: `before` are taken out (by their ids), `after` put in. Only the dogs in these
 * runs are laid out again; the index given is left as it was.
 */
export function withRuns<R extends LoadRun>(
  index: LoadIndex<R>,
  before: readonly R[],
  after: readonly R[],
): LoadIndex<R> {
  const gone = new Set(before.map((run) => run.id));
  const touched = new Set([...before, ...after].flatMap((run) => run.dogs.map((dog) => dog.dog)));
  const added = after.flatMap((run) => rowsOf(run));
  const dogs = new Map(index.dogs);
  for (const dog of touched) {
    const kept = (index.dogs.get(dog)?.rows ?? []).filter((row) => !gone.has(row.run.id));
    const rows = [...kept, ...added.filter((row) => row.in.dog === dog)];
    if (rows.length > 0) dogs.set(dog, historyOf(dog, rows));
    else dogs.delete(dog);
  }
  return { dogs };
}

/** Sums of a history's metres, minutes or runs over days (numbers, both inclusive); days outside the record count nothing. */
export function sumDays(history: DogHistory, what: 'metres' | 'minutes' | 'runs', from: number, to: number): number {
  const values = history[what];
  const start = Math.max(from, history.first) - history.first;
  const end = Math.min(to, history.last) - history.first;
  let total = 0;
  for (let i = start; i <= end; i++) total += values[i] as number;
  return total;
}

/** A history's rows from one day to another (numbers, both inclusive). */
export function rowsBetween<R extends LoadRun>(history: DogHistory<R>, from: number, to: number): Row<R>[] {
  return history.rows.slice(firstAt(history.rows, from), firstAt(history.rows, to + 1));
}

/** Place of the first row on or after a day. */
function firstAt(rows: readonly Row[], day: number): number {
  let low = 0;
  let high = rows.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle] as Row).day < day) low = middle + 1;
    else high = middle;
  }
  return low;
}

function rowsOf<R extends LoadRun>(run: R): Row<R>[] {
  const facts: RunFacts = { day: dayNumber(run.day), surfaces: surfacesOf(run.surfaces), band: bandOf(run.celsius) };
  const rows: Row<R>[] = [];
  for (const dog of run.dogs) if (ranIn(dog)) rows.push({ day: facts.day, run, in: dog, facts });
  return rows;
}

function historyOf<R extends LoadRun>(dog: string, unsorted: readonly Row<R>[]): DogHistory<R> {
  // The id decides within a day: sums of the same runs must be the same to the last digit in whatever order they come.
  const rows = [...unsorted].sort((a, b) => a.day - b.day || (a.run.id < b.run.id ? -1 : a.run.id > b.run.id ? 1 : 0));
  const first = (rows[0] as Row).day;
  const last = (rows[rows.length - 1] as Row).day;
  const metres = new Float64Array(last - first + 1);
  const minutes = new Float64Array(metres.length);
  const runs = new Uint16Array(metres.length);
  for (const row of rows) {
    const at = row.day - first;
    metres[at] = (metres[at] as number) + (row.in.metres ?? 0);
    minutes[at] = (minutes[at] as number) + (row.in.minutes ?? 0);
    runs[at] = (runs[at] as number) + 1;
  }
  let kept: { short: Float64Array; long: Float64Array } | undefined;
  const averages = () => {
    kept ??= { short: ewma(metres, ACUTE_DAYS), long: ewma(metres, CHRONIC_DAYS) };
    return kept;
  };
  return { dog, rows, first, last, metres, minutes, runs, averages };
}
