/** One note beside its entries: the words with their marks, the names nobody knows, what can be done with each. */
import { useEffect, useRef } from 'preact/hooks';
import { alarmsOf } from '../../grammar/cautions.ts';
import type { Dog } from '../../server/model.ts';
import type { NoteView } from '../../server/routes/schemas.ts';
import { SOURCE_WORDS } from '../labels.ts';
import { EntryForm } from '../parts/EntryForm.tsx';
import { unreadWords } from '../parts/marks.ts';
import { NoteText } from '../parts/NoteText.tsx';
import { units } from '../status.ts';
import { clockOf, dayWords } from '../times.ts';
import { NoteCautions } from '../watch/Cautions.tsx';
import type { Desk } from './desk.ts';
import { EntryRow } from './EntryRow.tsx';
import { openForm } from './keys.ts';
import { UnknownName } from './UnknownNames.tsx';

interface NoteProps {
  desk: Desk;
  note: NoteView;
  dogs: readonly Dog[];
  people: readonly string[];
  rosterChanged: () => Promise<void>;
}

export function OneNote({ desk, note, dogs, people, rosterChanged }: NoteProps) {
  const marked = note.entries
    .map(({ entry, state }, i) => ({ number: i + 1, entry, state }))
    .filter(({ state }) => state !== 'removed');
  const standing = note.entries.filter(({ state }) => state !== 'removed' && !note.aside);
  const unread = unreadWords(note.text, marked);
  const names = dogs.filter((dog) => !dog.retired).map((dog) => dog.name);
  const form = desk.form.value;
  const formParts = { dogs: names, people, units: units.value, busy: false };
  const cancel = () => {
    desk.form.value = 'none';
  };
  const article = useRef<HTMLElement>(null);
  useEffect(() => {
    // A note that comes after another begins at its top, wherever the one before had been scrolled to.
    const top = article.current?.getBoundingClientRect().top ?? 0;
    if (top < 0 || top > window.innerHeight / 2) window.scrollBy({ top: top - 16 });
  }, []);
  return (
    <article
      ref={article}
      class={`desk ${form === 'none' ? '' : 'forming'}`}
      aria-label={`Note of ${dayWords(note.at)}, ${clockOf(note.at)}`}
    >
      <div class="paper">
        <p class="noteline">
          <span class="figure">
            {dayWords(note.at, true)}, {clockOf(note.at)}
          </span>
          <span class="hush">
            {[note.by, note.source && SOURCE_WORDS[note.source]].filter(Boolean).map((word) => ` · ${word}`)}
            {note.aside && ' · set aside, counts for nothing'}
          </span>
          {note.run && <a href={`/runs/${encodeURIComponent(note.run)}`}>its run</a>}
        </p>
        <NoteText text={note.text} marked={marked} active={(desk.pointed.value ?? desk.looked.value) + 1} />
        {unread.length > 0 && (
          <p class="hush small">
            <span class="unread sample">Not read</span>: {unread.map((words) => `“${words}”`).join(', ')}
          </p>
        )}
        {note.warning && <p class="told">{note.warning}</p>}
        <NoteCautions
          alarms={alarmsOf(standing.map(({ entry }) => entry))}
          fresh={standing.some(({ state }) => state === 'proposed')}
        />
      </div>
      <NoteActs desk={desk} note={note} />
      <div class="stack readings">
        {note.unknownNames
          .filter((one, i, all) => all.findIndex((other) => other.name === one.name) === i)
          .map(({ name }) => (
            <UnknownName
              key={name}
              name={name}
              dogs={dogs}
              changed={async (told) => {
                await rosterChanged();
                desk.told.value = told;
              }}
            />
          ))}
        {note.entries.length === 0 && (
          <p>Nothing was read from this note. Add an entry, or accept that it holds none.</p>
        )}
        <ol class="entries">
          {note.entries.map((one, index) =>
            form === 'change' && desk.looked.value === index ? (
              <li key={one.id} class="entry looked">
                <EntryForm {...formParts} entry={one.entry} done={(to) => void desk.change(to)} cancel={cancel} />
              </li>
            ) : (
              <EntryRow key={one.id} {...{ desk, one, index }} takesFocus={form === 'none'} />
            ),
          )}
        </ol>
        {form === 'add' ? (
          <EntryForm {...formParts} done={(to) => void desk.add(to)} cancel={cancel} />
        ) : (
          <div>
            <button type="button" class="button" onClick={() => openForm(desk, 'add')}>
              Add an entry
            </button>
          </div>
        )}
      </div>
    </article>
  );
}

/** What can be done with the note as a whole; on a phone it stays under the thumb. */
function NoteActs({ desk, note }: { desk: Desk; note: NoteView }) {
  return (
    <div class="noteacts">
      <div class="row">
        <button
          type="button"
          class="button first"
          disabled={note.state !== 'waiting'}
          onClick={() => void desk.acceptAll()}
        >
          {note.entries.length === 0 ? 'Nothing to take' : 'Accept all'}
        </button>
        <button type="button" class="button" onClick={() => void desk.go(-1)} disabled={desk.at.value === 0}>
          Before
        </button>
        <button type="button" class="button" onClick={() => void desk.go(1)}>
          Next
        </button>
      </div>
      <div class="row">
        <button type="button" class="button plain" onClick={() => void desk.undo()}>
          Take back
        </button>
        <button type="button" class="button plain" onClick={() => void desk.setAside()}>
          {note.aside ? 'No longer aside' : 'Set aside'}
        </button>
      </div>
    </div>
  );
}
