/** The runs of the season, newest first. */
import type { RunRecord } from '../../server/records/types.ts';
import { getRuns } from '../api.ts';
import { counted } from '../labels.ts';
import { Empty, Head, Waiting, Wrong } from '../parts/Told.tsx';
import { status, units } from '../status.ts';
import { clockOf, dayWords, monthWords } from '../times.ts';
import { distanceFigure, distanceUnit, distanceWords, temperatureWords, type Units } from '../units.ts';
import { useFetched } from '../use.ts';
import { minutesWords } from '../words.ts';

export function Runs() {
  const season = status.value?.season;
  const { data: runs, trouble, loading, reload } = useFetched(() => getRuns(), [season]);
  const u = units.value;
  const all = (runs ?? []).reduce((sum, run) => sum + (run.metres ?? 0), 0);
  const folio = runs && runs.length > 0 ? `${counted(runs.length, 'run')} · ${distanceWords(all, u)}` : undefined;
  return (
    <div class="stack">
      <Head title="Runs" folio={[season && `Season ${season}`, folio].filter(Boolean).join(' · ')} />
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      {!runs && loading && <Waiting what="the runs" />}
      {runs?.length === 0 && <NoRuns />}
      {months(runs ?? []).map(([month, ofMonth]) => (
        <section key={month} class="stack month" aria-labelledby={`month-${month}`}>
          <h2 id={`month-${month}`}>{monthWords(month)}</h2>
          <ol class="runlist">
            {ofMonth.map((run) => (
              <RunLine key={run.id} run={run} units={u} />
            ))}
          </ol>
        </section>
      ))}
    </div>
  );
}

function NoRuns() {
  const waiting = status.value?.waiting ?? 0;
  return (
    <Empty title="No run yet">
      <p>
        A run is made from the notes of a day once they are reviewed.
        {waiting > 0
          ? ` ${counted(waiting, 'note waits', 'notes wait')} for review.`
          : ' Speak or type the first note.'}
      </p>
      <a class="button" href={waiting > 0 ? '/review' : '/'}>
        {waiting > 0 ? 'Review' : 'Speak'}
      </a>
    </Empty>
  );
}

/** Runs by month, in the order in which they come. */
function months(runs: readonly RunRecord[]): [string, RunRecord[]][] {
  const by = new Map<string, RunRecord[]>();
  for (const run of runs) {
    const month = run.day.slice(0, 7);
    by.set(month, [...(by.get(month) ?? []), run]);
  }
  return [...by];
}

function RunLine({ run, units: u }: { run: RunRecord; units: Units }) {
  const celsius = run.celsius[0];
  const leaders = run.dogs.filter((dog) => dog.stretches[0]?.position === 'lead').map((dog) => dog.dog);
  const findings = run.dogs.reduce(
    (n, dog) => n + dog.findings.filter(({ entry }) => !entry.assertion || entry.assertion === 'present').length,
    0,
  );
  return (
    <li>
      <a class="runline" href={`/runs/${encodeURIComponent(run.id)}`}>
        <span class="day">
          {dayWords(run.day)}
          <span class="hush small">
            {run.startedAt && clockOf(run.startedAt)}
            {run.driver && ` ${run.driver} driving`}
          </span>
        </span>
        <span class="length figure">
          {run.metres === undefined ? '–' : distanceFigure(run.metres, u)}
          <small> {run.metres === undefined ? 'not told' : distanceUnit(u)}</small>
        </span>
        <span class="rest small">
          {[
            run.dogs.length > 0 ? counted(run.dogs.length, 'dog') : 'no team told',
            leaders.length > 0 && `${leaders.join(', ')} in lead`,
            run.minutes !== undefined && minutesWords(run.minutes),
            celsius !== undefined && temperatureWords(celsius, u),
          ]
            .filter(Boolean)
            .join(' · ')}
          {findings > 0 && <b> · {counted(findings, 'finding')}</b>}
          {run.conflicts.length > 0 && (
            <b> · ! {counted(run.conflicts.length, 'thing does not fit', 'things do not fit')}</b>
          )}
        </span>
      </a>
    </li>
  );
}
