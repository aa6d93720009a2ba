/** Old notebooks: plain text in, the notes found in it out, then sent like any others, with progress and a report. */
import { useState } from 'preact/hooks';
import { findNotes, postNotes } from '../api.ts';
import { counted } from '../labels.ts';
import type { OutNote } from '../outbox/db.ts';
import { refreshStatus } from '../status.ts';
import { dayOf, dayWords, localIso } from '../times.ts';
import { useDoing } from '../use.ts';
import { Wrong } from './Told.tsx';

/** Notes a request; small enough that the bar moves. */
const CHUNK = 40;

type Found = Awaited<ReturnType<typeof findNotes>>;
interface Sending {
  done: number;
  taken: number;
  already: number;
  refused: { text: string; at: string; says: string }[];
}

export function Notebook() {
  const [text, setText] = useState('');
  const [name, setName] = useState<string>();
  const [found, setFound] = useState<Found>();
  const [sending, setSending] = useState<Sending>();
  const work = useDoing();
  const change = (words: string, file?: string) => {
    setText(words);
    setName(file);
    setFound(undefined);
    setSending(undefined);
    work.clear();
  };
  const look = () =>
    work.run(async () => {
      setFound(await findNotes(text, name, localIso().slice(19)));
      setSending(undefined);
    });
  const notes = found?.notes ?? [];
  const take = () =>
    work.run(async () => {
      let state: Sending = sending ?? { done: 0, taken: 0, already: 0, refused: [] };
      setSending(state);
      while (state.done < notes.length) {
        state = await sendChunk(notes.slice(state.done, state.done + CHUNK) as OutNote[], state);
        setSending(state);
      }
      await refreshStatus();
    });
  const finished = sending !== undefined && sending.done === notes.length;

  return (
    <details class="section notebook">
      <summary>
        <h2>Old notebooks</h2>
      </summary>
      <div class="stack">
        <p>
          Paste the text of an old notebook, or choose a text file: a date and time in front of each note, or a date as
          a heading over a day’s notes. Each note then waits in Review like any other.
        </p>
        <div class="field">
          <label for="notebook">Text of the notebook</label>
          <textarea
            id="notebook"
            rows={6}
            value={text}
            placeholder={'2025-11-08 09:10 Left the yard, Moss in single lead …'}
            onInput={(event) => change(event.currentTarget.value)}
          />
        </div>
        <div class="row">
          <label class="button file">
            Choose a file
            <input
              type="file"
              class="unseen"
              accept=".txt,.md,text/plain"
              onChange={async (event) => {
                const file = event.currentTarget.files?.[0];
                if (file) change(await file.text(), file.name);
              }}
            />
          </label>
          <button type="button" class="button first" disabled={!text.trim() || work.busy} onClick={() => void look()}>
            Look through it
          </button>
          {name && <span class="hush">{name}</span>}
        </div>
        {work.trouble && <Wrong error={work.trouble} again={sending && !finished ? () => void take() : undefined} />}
        {found && <WhatWasFound found={found} />}
        {found && notes.length > 0 && !finished && (
          <div class="row">
            <button type="button" class="button accent" disabled={work.busy} onClick={() => void take()}>
              {sending ? 'Go on' : `Take in ${counted(notes.length, 'note')}`}
            </button>
          </div>
        )}
        {sending && <HowFar sending={sending} all={notes.length} />}
      </div>
    </details>
  );
}

/** Sends a part and adds up what became of it. A note whose id is known already is kept once. */
async function sendChunk(chunk: OutNote[], before: Sending): Promise<Sending> {
  const answers = await postNotes(chunk);
  const after = { ...before, refused: [...before.refused], done: before.done + chunk.length };
  for (const note of chunk) {
    const answer = answers.get(note.id);
    if (answer?.kept === 'new') after.taken++;
    else if (answer?.kept === 'already') after.already++;
    else after.refused.push({ text: note.text, at: note.at, says: answer?.error ?? 'The server said nothing of it.' });
  }
  return after;
}

function WhatWasFound({ found: { report, notes = [] } }: { found: Found }) {
  const days = notes.map((note) => dayOf(note.at)).sort();
  const first = days[0];
  const last = days[days.length - 1];
  return (
    <div class="told accent stack" role="status">
      <p>
        {report.found === 0
          ? 'No note was found in this text.'
          : `${counted(report.found, 'note')} found${first && last ? `, ${dayWords(first, true)}${first === last ? '' : ` to ${dayWords(last, true)}`}` : ''}.`}
      </p>
      {report.found === 0 && <p>Put a date in front of each note, like 2025-11-08 09:10, or over each day’s notes.</p>}
      {report.warnings.map((warning) => (
        <p key={warning}>{warning}</p>
      ))}
      {report.problems.length > 0 && (
        <details open={report.problems.length <= 10}>
          <summary>{counted(report.problems.length, 'line')} could not be read as a note</summary>
          <ul class="problems">
            {report.problems.map((problem) => (
              <li key={`${problem.line} ${problem.says}`}>
                Line {problem.line}: {problem.says} <span class="quote">{problem.text}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

function HowFar({ sending, all }: { sending: Sending; all: number }) {
  const { done, taken, already, refused } = sending;
  return (
    <div class="stack" role="status">
      <div class="field">
        <label for="far">
          {done} of {counted(all, 'note')} sent
        </label>
        <progress id="far" max={all} value={done} />
      </div>
      {done === all && (
        <p>
          <strong>{counted(taken, 'note')} taken in</strong>
          {already > 0 && `, ${already} kept already`}
          {refused.length > 0 && `, ${refused.length} not taken`}.{' '}
          {taken > 0 && <a href="/review">They wait in Review</a>}
        </p>
      )}
      {refused.length > 0 && (
        <ul class="problems">
          {refused.map((one) => (
            <li key={one.at + one.text}>
              {one.says} <span class="quote">{one.text.slice(0, 200)}</span>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
