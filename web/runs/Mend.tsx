/** Putting a run right by hand: its distance, where it begins, which notes it holds. */
import { useState } from 'preact/hooks';
import type { RunRecord } from '../../server/records/types.ts';
import { clearDistance, joinRun, setDistance } from '../api.ts';
import { Wrong } from '../parts/Told.tsx';
import { dayWords } from '../times.ts';
import { distanceFigure, distanceUnit, distanceUnitWord, distanceWords, type Units } from '../units.ts';
import { useDoing } from '../use.ts';

const FROM_WORDS = {
  corrected: 'set by hand',
  total: 'as told',
  'last-mark': 'from the last mark told',
  legs: 'from the legs told',
  unknown: 'no distance was told',
} as const;

/** Where the length of a run comes from, and what was said when it was set by hand. */
export function distanceFrom(run: RunRecord, units: Units): string {
  if (run.metresFrom !== 'corrected') return FROM_WORDS[run.metresFrom];
  const why = run.correction?.why ? ` (${run.correction.why})` : '';
  return run.metresSaid === undefined
    ? `set by hand${why}; none was told`
    : `set by hand${why}; ${distanceWords(run.metresSaid, units)} was told`;
}

/** The distance by hand. What was said stays beside it, and can be taken again. */
export function CorrectDistance({
  run,
  units,
  changed,
}: {
  run: RunRecord;
  units: Units;
  changed: () => Promise<void>;
}) {
  const [value, setValue] = useState(run.metres === undefined ? '' : distanceFigure(run.metres, units));
  const [why, setWhy] = useState(run.correction?.why ?? '');
  const [wrong, setWrong] = useState('');
  const doing = useDoing();
  const unit = distanceUnit(units);
  const set = (event: Event) => {
    event.preventDefault();
    const number = Number(value.trim().replace(',', '.'));
    if (!(number > 0)) {
      setWrong(`Give the distance as a number of ${distanceUnitWord(units)}, like 14.5.`);
      return;
    }
    setWrong('');
    void doing.run(async () => {
      await setDistance(run.id, { value: number, unit, why: why.trim() || undefined });
      await changed();
    });
  };
  return (
    <details class="mend">
      <summary>Set the distance by hand</summary>
      <form class="stack" onSubmit={set} noValidate>
        <p class="small hush">From a GPS track, say. What was told in the notes is kept beside it.</p>
        <div class="fields">
          <div class="field">
            <label for="distance">Distance, {distanceUnitWord(units)}</label>
            <input
              id="distance"
              inputMode="decimal"
              autocomplete="off"
              value={value}
              aria-invalid={wrong ? true : undefined}
              aria-describedby={wrong ? 'distance-wrong' : undefined}
              onInput={(event) => setValue(event.currentTarget.value)}
            />
            {wrong && (
              <p class="wrong" id="distance-wrong">
                {wrong}
              </p>
            )}
          </div>
          <div class="field">
            <label for="why">Where it comes from, if you like</label>
            <input id="why" maxLength={200} value={why} onInput={(event) => setWhy(event.currentTarget.value)} />
          </div>
        </div>
        <div class="row">
          <button type="submit" class="button first" disabled={doing.busy}>
            Set
          </button>
          {run.metresFrom === 'corrected' && (
            <button
              type="button"
              class="button"
              disabled={doing.busy}
              onClick={() =>
                void doing.run(async () => {
                  await clearDistance(run.id);
                  await changed();
                })
              }
            >
              Take again what was told
            </button>
          )}
        </div>
        {doing.trouble && <Wrong error={doing.trouble} />}
      </form>
    </details>
  );
}

interface JoinProps {
  run: RunRecord;
  before: { id: string; day: string; driver?: string };
  /** The run as it is after joining. */
  joined: (id: string) => void;
}
/** This run goes on with the one before it: one long break is no second run. */
export function JoinBefore({ run, before, joined }: JoinProps) {
  const doing = useDoing();
  return (
    <>
      <button
        type="button"
        class="button"
        disabled={doing.busy}
        onClick={() =>
          void doing.run(async () => {
            const answer = await joinRun(run.id);
            joined(answer.run.id);
          })
        }
      >
        Join with the run before it ({dayWords(before.day)})
      </button>
      {doing.trouble && <Wrong error={doing.trouble} />}
    </>
  );
}
