/** The notes that tell of a dog, newest first, with the words it was told in marked. */
import { useState } from 'preact/hooks';
import type { DogSeason } from '../../server/dog/index.ts';
import { counted } from '../labels.ts';
import { MarkedText } from '../parts/MarkedText.tsx';
import { clockOf, dayWords } from '../times.ts';

/** Shown at first, and by each press for more. */
const PAGE = 20;

export function DogNotes({ story }: { story: DogSeason }) {
  const [placesToo, setPlacesToo] = useState(false);
  const [shown, setShown] = useState(PAGE);
  const places = story.notes.filter((note) => note.placeOnly).length;
  const notes = placesToo ? story.notes : story.notes.filter((note) => !note.placeOnly);
  return (
    <section class="section stack" aria-labelledby="notes">
      <h2 id="notes">Notes</h2>
      {places > 0 && (
        <label class="tick no-print">
          <input type="checkbox" checked={placesToo} onChange={(event) => setPlacesToo(event.currentTarget.checked)} />
          {`Also the ${counted(places, 'note')} that only ${places === 1 ? 'says' : 'say'} where it stood in the team`}
        </label>
      )}
      {notes.length === 0 && <p class="hush">No note tells more of {story.dog.name} this season.</p>}
      <ol class="foundnotes">
        {notes.slice(0, shown).map((note) => (
          <li key={note.id} class="stack">
            <p class="noteline">
              <a
                href={`/review/${note.id}`}
                aria-label={`Open the note of ${dayWords(note.at, true)}, ${clockOf(note.at)}`}
              >
                {dayWords(note.at, true)}, {clockOf(note.at)}
              </a>
              {note.by && <span>{note.by}</span>}
              {note.waiting && <span>not reviewed yet</span>}
              {note.run && (
                <a href={`/runs/${encodeURIComponent(note.run)}`} aria-label={`The run of ${dayWords(note.at, true)}`}>
                  run
                </a>
              )}
            </p>
            <p class="foundtext">
              <MarkedText text={note.text} marks={note.marks} />
            </p>
          </li>
        ))}
      </ol>
      {notes.length > shown && (
        <p class="no-print">
          <button type="button" class="button" onClick={() => setShown(shown + PAGE)}>
            {`Show more: ${shown} of ${notes.length} are shown`}
          </button>
        </p>
      )}
    </section>
  );
}
