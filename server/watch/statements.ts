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

/**
 * Statements by dog, up to a day and in the order of time; the order in which runs come does not matter. An entry counts
 * once for a dog, with its run where it has one.
 * @param last the last day that counts, as a number
 */
export function statementsOf(
  runs: readonly WatchRun[],
  yard: readonly YardRecord[],
  dogs: readonly string[],
  last: number,
): { byDog: Map<string, Statement[]>; noDog: Mention[] } {
  const byDog = new Map<string, Map<string, Statement>>(dogs.map((dog) => [dog, new Map()]));
  const noDog = new Map<string, Statement>();
  for (const run of runs) {
    const day = dayNumber(run.day);
    if (day > last) continue;
    for (const { dog, findings } of run.dogs)
      for (const said of findings) keep(byDog.get(dog), statementOf(said, run.day, day, run.id));
  }
  for (const record of yard) {
    const day = dayNumber(record.day);
    if (day > last) continue;
    for (const said of record.said) {
      if (!isFinding(said)) continue;
      const statement = statementOf(said, record.day, day);
      const named = said.dogs.filter((dog) => dog !== '*');
      // A team nobody knows: it can't be put to a dog, but it must not vanish either.
      if (named.length === 0) keep(noDog, statement);
      for (const dog of named) keep(byDog.get(dog), statement);
    }
  }
  return {
    byDog: new Map([...byDog].map(([dog, statements]) => [dog, inOrder(statements)])),
    noDog: inOrder(noDog).map((statement) => statement.mention),
  };
}

/** An entry that stands in two places is the one in a run, the earlier run of two. */
function keep(statements: Map<string, Statement> | undefined, statement: Statement): void {
  if (!statements) return;
  const { id, run } = statement.mention;
  const other = statements.get(id)?.mention;
  if (other && (run === undefined || (other.run !== undefined && other.run <= run))) return;
  statements.set(id, statement);
}

function inOrder(statements: ReadonlyMap<string, Statement>): Statement[] {
  return [...statements.values()].sort(
    (a, b) =>
      a.day - b.day ||
      a.instant - b.instant ||
      compare(a.mention.note, b.mention.note) ||
      a.start - b.start ||
      compare(a.mention.id, b.mention.id),
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
