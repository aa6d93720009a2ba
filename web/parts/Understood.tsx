/** What was understood of the words in the box, at once and in plain words; what was not read is seen as well. */
import { useEffect, useState } from 'preact/hooks';
import type { Context, Entry } from '../../grammar/entry.ts';
import type { Reading } from '../../grammar/parse.ts';
import { listWords } from '../labels.ts';
import { readHere } from '../reading/reading.ts';
import { said } from '../words.ts';
import { unreadWords } from './marks.ts';
import { NoteText } from './NoteText.tsx';

/** Milliseconds without a keystroke before the words are read. */
const PAUSE = 140;

export interface Understanding {
  /** The text that was read; an older one while the next reading is on its way. */
  text: string;
  /** There are words, and none of them has been read yet. */
  waiting?: boolean;
  reading?: Reading;
  failed?: string;
}

/** Reads the text on this device, shortly after it stops changing. */
export function useUnderstanding(text: string, context: Context): Understanding {
  const [state, setState] = useState<Understanding>({ text: '' });
  useEffect(() => {
    if (!text.trim()) {
      setState({ text: '' });
      return;
    }
    let current = true;
    setState((was) => (was.reading ? was : { text, waiting: true }));
    const timer = setTimeout(() => {
      readHere(text, context).then(
        (reading) => current && setState({ text, reading }),
        (error: Error) => current && setState({ text, failed: error.message }),
      );
    }, PAUSE);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [text, context]);
  return state;
}

/** Entries worth saying: a remark only keeps words. */
export const readEntries = (reading: Reading): Entry[] => reading.entries.filter((entry) => entry.kind !== 'remark');

export function Understood({ text, reading, failed, waiting }: Understanding) {
  if (failed) {
    return <p class="hush">{failed} The note can be kept all the same; it is read when Snackstop has it.</p>;
  }
  if (!reading)
    return (
      <p class="hush">
        {waiting ? 'Reading … the note can be kept meanwhile.' : 'What is understood of it shows here.'}
      </p>
    );
  const entries = readEntries(reading);
  const marked = entries.map((entry, i) => ({ number: i + 1, entry }));
  const unread = unreadWords(text, marked);
  const unknown = reading.unknownNames.map((u) => `“${u.name}”`);
  return (
    <div class="stack understood">
      {entries.length > 0 ? (
        <ol class="sentences">
          {entries.map((entry, i) => {
            const { who, what } = said(entry);
            return (
              <li key={i}>
                {who && <strong>{who}</strong>}
                {who && ' · '}
                {what}
                {entry.doubt && entry.doubt !== 'none' && <em> (not sure)</em>}
              </li>
            );
          })}
        </ol>
      ) : (
        <p>Nothing was read from it yet. It is kept word for word all the same.</p>
      )}
      {unknown.length > 0 && (
        <p>
          Not on the roster: <strong>{listWords(unknown)}</strong>. A new dog can be added in Review.
        </p>
      )}
      {unread.length > 0 && (
        <details>
          <summary>Not read: {unread.map((words) => `“${words}”`).join(', ')}</summary>
          <NoteText text={text} marked={marked} />
        </details>
      )}
    </div>
  );
}
