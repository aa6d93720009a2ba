/** What stands on this device: notes that wait to be sent, those the server would not take, the last ones it has. */

import { counted } from '../labels.ts';
import type { Waiting } from '../outbox/db.ts';
import { drop, outbox, send } from '../outbox/outbox.ts';
import { reached } from '../status.ts';
import { clockOf, dayOf, dayWords, localIso, sinceWords } from '../times.ts';

/** One line: how many notes wait here, when they were last sent, and a button that sends them. */
export function OutboxLine() {
  const { waiting, sent, sending, trouble, closed } = outbox.value;
  const open = waiting.filter((note) => !note.refused);
  const last = sent[0]?.sentAt;
  return (
    <section class="outboxline" aria-label="Notes on this device">
      <div role="status">
        <p>
          <strong>{open.length === 0 ? 'No note waits' : counted(open.length, 'note waits', 'notes wait')}</strong> on
          this device
          <span class="hush">
            {' · '}
            {sending && open.length > 0 ? 'sending …' : last ? `last sent ${sinceWords(last)}` : 'none sent yet'}
          </span>
        </p>
        {open.length > 0 && trouble && (
          <p>
            {trouble.code === 'away' ? 'No connection to Snackstop; it is tried again by itself.' : trouble.message}
          </p>
        )}
        {open.length === 0 && reached.value === false && (
          <p>No connection to Snackstop just now. Notes are kept on this device until there is.</p>
        )}
        {closed && (
          <p>This browser stores nothing for this page. A note goes straight to Snackstop, or stays in the box.</p>
        )}
      </div>
      {open.length > 0 && (
        <button type="button" class="button" disabled={sending} onClick={() => void send()}>
          Send now
        </button>
      )}
    </section>
  );
}

/** Notes the server would not take, each with its sentence; the words are given back. */
export function Refused({ giveBack }: { giveBack: (text: string) => void }) {
  const refused = outbox.value.waiting.filter((note) => note.refused);
  if (refused.length === 0) return null;
  // The box keeps its words itself. They are in it before the note leaves the device: a page that closes between the two
  // leaves them twice, never nowhere.
  const back = async (note: Waiting) => {
    giveBack(note.text);
    await drop(note);
  };
  return (
    <section class="stack" aria-label="Notes that were not taken">
      {refused.map((note) => (
        <div key={note.id} class="told stack" role="alert">
          <p>This note was not taken: {note.refused}</p>
          <p class="quote">{note.text.length > 400 ? `${note.text.slice(0, 400)} …` : note.text}</p>
          <p>The words are still on this device.</p>
          <div class="row">
            <button type="button" class="button first" onClick={() => void back(note)}>
              Put the words back in the box
            </button>
            <button type="button" class="button" onClick={() => void drop(note)}>
              Throw this note away
            </button>
          </div>
        </div>
      ))}
    </section>
  );
}

/** The last notes spoken or typed here, newest first, and where each stands. */
export function Lately() {
  const { waiting, sent } = outbox.value;
  const notes = [
    ...waiting
      .filter((note) => !note.refused)
      .map((note) => ({ ...note, where: 'waits on this device', warning: undefined })),
    ...sent.map((note) => ({ ...note, where: 'kept' })),
  ].sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
  if (notes.length === 0) return null;
  const today = dayOf(localIso());
  return (
    <section class="section stack" aria-labelledby="lately">
      <h2 id="lately">Lately from this device</h2>
      <ol class="lately">
        {notes.slice(0, 12).map((note) => (
          <li key={note.id}>
            <span class="when figure">
              {dayOf(note.at) === today ? clockOf(note.at) : `${dayWords(note.at)} ${clockOf(note.at)}`}
            </span>
            <span class="words">{note.text}</span>
            <span class="where hush">
              {note.where}
              {note.warning && ` · ${note.warning}`}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
