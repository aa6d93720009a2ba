/** Every finding of the runs and the yard as one row of statements a dog, in the order of time. */
import type { EntryOf } from '../../grammar/entry.ts';
import { dayNumber } from '../load/days.ts';
import type { LoadDog, LoadRun } from '../load/index.ts';
import type { RunDog, Said, YardRecord } from '../records/types.ts';
import type { Mention } from './schema.ts';

/** What the watch needs of a run; every RunRecord is one. */
export type WatchRun = Omit<LoadRun, 'dogs'> & { dogs: readonly (LoadDog & Pick<RunDog, 'findings'>)[] };

/** A finding told of one dog. */
export interface Statement {
  mention: Mention;
  /** The day as a number. A run's findings belong to the run's day, also past midnight. */
  day: number;
  instant: number;
  /** Where it stands in its note. */
  start: number;
}

/** A statement with the run or the yard record it comes from, by which it is taken out again when that changes. */
interface Row {
  statement: Statement;
  from: WatchRun | YardRecord;
}

/** Every statement of the runs and the yard, by dog and in the order of time; an entry that stands in two places is here twice. */
export interface WatchIndex {
  readonly byDog: ReadonlyMap<string, readonly Row[]>;
  /** Told of a team whose dogs nobody knows. */
  readonly noDog: readonly Row[];
}

/** Runs and yard records. */
export interface WatchRecords {
  runs: readonly WatchRun[];
  yard: readonly YardRecord[];
}

/** Lays the statements out by dog. The order in which runs and yard records come does not matter. */
export function indexWatch({ runs, yard }: WatchRecords): WatchIndex {
  return withRecords({ byDog: new Map(), noDog: [] }, { runs: [], yard: [] }, { runs, yard });
}

/**
 * The index after some records have changed: `gone` are taken out, `come` put in, both as the very objects. A dog that is
 * in none of them keeps its rows; the index given is left as it was.
 */
export function withRecords(index: WatchIndex, gone: WatchRecords, come: WatchRecords): WatchIndex {
  const out = new Set<object>([...gone.runs, ...gone.yard]);
  const added = rowsOf(come);
  const touched = new Set([...added.keys(), ...rowsOf(gone).keys()]);
  const renewed = (before: readonly Row[], dog: string | undefined) =>
    [...before.filter((row) => !out.has(row.from)), ...(added.get(dog) ?? [])].sort(inTime);
  const byDog = new Map(index.byDog);
  for (const dog of touched) {
    if (dog === undefined) continue;
    const rows = renewed(index.byDog.get(dog) ?? [], dog);
    if (rows.length > 0) byDog.set(dog, rows);
    else byDog.delete(dog);
  }
  return { byDog, noDog: touched.has(undefined) ? renewed(index.noDog, undefined) : index.noDog };
}

/** Rows by dog; under `undefined` what was told of a team nobody knows: it can't be put to a dog, but it must not vanish. */
function rowsOf({ runs, yard }: WatchRecords): Map<string | undefined, Row[]> {
  const rows = new Map<string | undefined, Row[]>();
  const add = (dog: string | undefined, row: Row) => {
    const mine = rows.get(dog);
    if (mine) mine.push(row);
    else rows.set(dog, [row]);
  };
  for (const run of runs) {
    const day = dayNumber(run.day);
    for (const { dog, findings } of run.dogs)
      for (const said of findings) add(dog, { statement: statementOf(said, run.day, day, run.id), from: run });
  }
  for (const record of yard) {
    const day = dayNumber(record.day);
    for (const said of record.said) {
      if (!isFinding(said)) continue;
      const row = { statement: statementOf(said, record.day, day), from: record };
      const named = said.dogs.filter((dog) => dog !== '*');
      if (named.length === 0) add(undefined, row);
      for (const dog of named) add(dog, row);
    }
  }
  return rows;
}

/**
 * The statements of some rows up to a day, each entry once: where it stands in two places the one in a run counts, the
 * earlier run of two.
 * @param last the last day that counts, as a number
 */
export function statementsIn(rows: readonly Row[], last: number): Statement[] {
  const byId = new Map<string, Statement>();
  for (const { statement } of rows) {
    if (statement.day > last) continue;
    const { id, run } = statement.mention;
    const other = byId.get(id)?.mention;
    if (other && (run === undefined || (other.run !== undefined && other.run <= run))) continue;
    // Taken out first, so that it comes to stand where this one stands in time.
    byId.delete(id);
    byId.set(id, statement);
  }
  return [...byId.values()];
}

function inTime({ statement: a }: Row, { statement: b }: Row): number {
  return (
    a.day - b.day ||
    a.instant - b.instant ||
    compare(a.mention.note, b.mention.note) ||
    a.start - b.start ||
    compare(a.mention.id, b.mention.id) ||
    compare(a.mention.run ?? '', b.mention.run ?? '')
  );
}

function statementOf(said: Said<EntryOf<'finding'>>, day: string, number: number, run?: string): Statement {
  const { part, side, end, sign, severity, trend, assertion = 'present', span } = said.entry;
  const mention: Mention = { id: said.id, note: said.note, at: said.at, day, assertion, sign };
  if (run !== undefined) mention.run = run;
  if (part) mention.part = part;
  if (side) mention.side = side;
  if (end) mention.end = end;
  if (severity) mention.severity = severity;
  if (trend) mention.trend = trend;
  return { mention, day: number, instant: Date.parse(said.at), start: span?.[0] ?? 0 };
}

function isFinding<S extends Said>(said: S): said is S & Said<EntryOf<'finding'>> {
  return said.entry.kind === 'finding';
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
