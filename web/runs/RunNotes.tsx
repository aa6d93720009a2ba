/** The notes of a run in the order of time, and what can be done with each: cut the run there, move the note. */
import { useState } from 'preact/hooks';
import type { RunRecord } from '../../server/records/types.ts';
import type { NoteView } from '../../server/routes/schemas.ts';
import { cutRun, getRuns, moveNote } from '../api.ts';
import { counted } from '../labels.ts';
import { Wrong } from '../parts/Told.tsx';
import { clockOf, daysBetween, dayWords } from '../times.ts';
import { distanceWords, type Units } from '../units.ts';
import { useDoing } from '../use.ts';
import { sentence } from '../words.ts';

interface Props {
  run: RunRecord;
  notes: readonly NoteView[];
  units: Units;
  /** Something was changed; `id` is a note that still stands in this run. */
  changed: (told: string, id: string) => void;
}

/** How a run is named in a list: its day, hour, driver and length. */
export function runName(run: RunRecord, units: Units): string {
  const hour = run.startedAt ? `${clockOf(run.startedAt)}` : '';
  return [
    [dayWords(run.day), hour].filter(Boolean).join(' '),
    run.driver ? `${run.driver} driving` : '',
    run.metres === undefined ? '' : distanceWords(run.metres, units),
  ]
    .filter(Boolean)
    .join(' · ');
}

export function RunNotes({ run, notes, units, changed }: Props) {
  return (
    <ol class="runnotes">
      {notes.map((note, i) => (
        <li key={note.id} id={`note-${note.id}`}>
          <span class="when figure">{clockOf(note.at)}</span>
          <div class="stack">
            <p class="words">{note.text}</p>
            <div class="acts small">
              <Entries note={note} />
              <Mend {...{ run, note, notes, units, changed }} first={i === 0} />
            </div>
          </div>
        </li>
      ))}
    </ol>
  );
}

function Entries({ note }: { note: NoteView }) {
  const accepted = note.entries.filter((e) => e.state === 'accepted' && e.entry.kind !== 'remark');
  const open = note.entries.filter((e) => e.state === 'proposed').length;
  return (
    <>
      {accepted.length > 0 && (
        <details>
          <summary>{counted(accepted.length, 'accepted entry', 'accepted entries')}</summary>
          <ul class="sayings">
            {accepted.map((e) => (
              <li key={e.id}>{sentence(e.entry)}</li>
            ))}
          </ul>
        </details>
      )}
      {open > 0 && <strong>{counted(open, 'entry waits', 'entries wait')} for review. </strong>}
      {note.aside && <strong>Set aside, counts for nothing. </strong>}
      <a href={`/review/${note.id}`}>Open in Review</a>
    </>
  );
}

/** Days on either side whose runs a note may be moved to. */
const NEAR_DAYS = 3;

function Mend({ run, note, notes, units, changed, first }: Props & { note: NoteView; first: boolean }) {
  const [others, setOthers] = useState<RunRecord[]>();
  const [to, setTo] = useState('');
  const doing = useDoing();
  const still = notes.find((one) => one.id !== note.id)?.id ?? note.id;
  const open = () =>
    doing.run(async () => {
      const runs = await getRuns(run.season);
      const own = new Set(run.notes);
      setOthers(
        runs.filter((r) => Math.abs(daysBetween(r.day, run.day)) <= NEAR_DAYS && !r.notes.some((id) => own.has(id))),
      );
    });
  return (
    <details class="mend" onToggle={(event) => event.currentTarget.open && void open()}>
      <summary>Cut or move</summary>
      <div class="stack">
        {!first && (
          <p>
            <button
              type="button"
              class="button tight"
              disabled={doing.busy}
              onClick={() =>
                void doing.run(async () => {
                  await cutRun(run.id, note.id);
                  changed('The run was cut: a new one starts with that note.', notes[0]?.id ?? note.id);
                })
              }
            >
              Cut here: a new run starts with this note
            </button>
          </p>
        )}
        {others && others.length === 0 && <p class="hush">No other run within {NEAR_DAYS} days to move it to.</p>}
        {others && others.length > 0 && (
          <div class="row">
            <div class="field">
              <label for={`to-${note.id}`}>Move this note to</label>
              <select id={`to-${note.id}`} value={to} onChange={(event) => setTo(event.currentTarget.value)}>
                <option value="">choose a run …</option>
                {others.map((r) => (
                  <option key={r.id} value={r.notes[0]}>
                    {runName(r, units)}
                  </option>
                ))}
              </select>
            </div>
            <button
              type="button"
              class="button"
              disabled={!to || doing.busy}
              onClick={() =>
                void doing.run(async () => {
                  await moveNote(run.id, note.id, to);
                  changed('The note was moved.', still === note.id ? to : still);
                })
              }
            >
              Move
            </button>
          </div>
        )}
        {doing.trouble && <Wrong error={doing.trouble} />}
      </div>
    </details>
  );
}
