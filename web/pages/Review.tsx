/** Review: one note at a time beside what was read from it. Nothing counts before it is accepted here. */

import { useEffect, useMemo, useRef } from 'preact/hooks';
import { useLocation, useRoute } from 'preact-iso';
import type { NoteView } from '../../server/routes/schemas.ts';
import { getDogs, getPeople, learnHeard } from '../api.ts';
import { singleKeys } from '../keep.ts';
import { counted, SOURCE_WORDS } from '../labels.ts';
import { EntryForm } from '../parts/EntryForm.tsx';
import { unreadWords } from '../parts/marks.ts';
import { NoteText } from '../parts/NoteText.tsx';
import { Empty, Head, Waiting, Wrong } from '../parts/Told.tsx';
import { Desk, type Order, type Show } from '../review/desk.ts';
import { EntryRow } from '../review/EntryRow.tsx';
import { Keys } from '../review/Keys.tsx';
import { keyFor, openForm } from '../review/keys.ts';
import { UnknownName } from '../review/UnknownNames.tsx';
import { units } from '../status.ts';
import { clockOf, dayWords } from '../times.ts';
import { useFetched } from '../use.ts';

const SHOWS: readonly { show: Show; name: string }[] = [
  { show: 'waiting', name: 'To review' },
  { show: 'reviewed', name: 'Reviewed' },
  { show: 'aside', name: 'Set aside' },
  { show: 'all', name: 'All' },
];
const asShow = (text: string | undefined): Show => SHOWS.find(({ show }) => show === text)?.show ?? 'waiting';
const asOrder = (text: string | undefined, show: Show): Order =>
  text === 'time' ? 'time' : show === 'waiting' ? 'doubt' : 'newest';

export function Review() {
  const { query } = useLocation();
  const wanted = useRoute().params.id;
  const show = asShow(query.show);
  const order = asOrder(query.order, show);
  const desk = useMemo(() => new Desk(), []);
  const roster = useFetched(async () => ({ dogs: await getDogs(), people: await getPeople() }), []);
  useEffect(() => void desk.load(show, order, wanted), [desk, show, order, wanted]);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const key = singleKeys.value === 'on' && desk.form.value === 'none' ? keyFor(event) : undefined;
      if (!key) return;
      event.preventDefault();
      key.act(desk);
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [desk]);

  const notes = desk.notes.value;
  const at = desk.at.value;
  const note = desk.note.value;
  const folio =
    notes.length > 0 ? `${Math.min(at + 1, notes.length)} of ${notes.length} · ${desk.open.value} to review` : '';
  return (
    <div class="stack">
      <Head title="Review" folio={folio} />
      <Filter show={show} order={order} />
      <p role="status" class="toldline">
        {desk.told.value}
      </p>
      {desk.trouble.value && (
        <Wrong error={desk.trouble.value} again={() => void desk.load(show, order, desk.note.value?.id ?? wanted)} />
      )}
      {desk.offer.value && <LearnOffer desk={desk} />}
      {desk.state.value === 'loading' && <Waiting what="the notes" />}
      {desk.state.value === 'here' && !note && <Done desk={desk} show={show} none={notes.length === 0} />}
      {note && (
        <OneNote
          key={note.id}
          {...{ desk, note }}
          dogs={roster.data?.dogs ?? []}
          people={(roster.data?.people ?? []).map((person) => person.name)}
          rosterChanged={async () => {
            await Promise.all([roster.reload(), desk.refresh()]);
          }}
        />
      )}
      <Keys />
    </div>
  );
}

function Filter({ show, order }: { show: Show; order: Order }) {
  return (
    <nav class="filter" aria-label="Which notes">
      {SHOWS.map((one) => (
        <a key={one.show} href={`/review?show=${one.show}`} aria-current={one.show === show ? 'page' : undefined}>
          {one.name}
        </a>
      ))}
      {show === 'waiting' && (
        <a class="order" href={order === 'doubt' ? '/review?order=time' : '/review'}>
          {order === 'doubt'
            ? 'doubtful first — put in the order of time'
            : 'in the order of time — put doubtful first'}
        </a>
      )}
    </nav>
  );
}

interface NoteProps {
  desk: Desk;
  note: NoteView;
  dogs: Awaited<ReturnType<typeof getDogs>>;
  people: readonly string[];
  rosterChanged: () => Promise<void>;
}

function OneNote({ desk, note, dogs, people, rosterChanged }: NoteProps) {
  const marked = note.entries
    .map(({ entry, state }, i) => ({ number: i + 1, entry, state }))
    .filter(({ state }) => state !== 'removed');
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
          <span>
            {note.entries.length === 0 ? 'Nothing to take' : 'Accept all'}
            <span class="only-wide">, go on</span>
          </span>
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

/** A name corrected twice in the same way can be learned. */
function LearnOffer({ desk }: { desk: Desk }) {
  const offer = desk.offer.value;
  if (!offer) return null;
  const close = () => {
    desk.offer.value = undefined;
  };
  return (
    <section class="told accent stack" aria-label="A word to learn">
      <p>
        “{offer.heard}” was {offer.dog} again. Take “{offer.heard}” as {offer.dog} from now on?
      </p>
      <div class="row">
        <button
          type="button"
          class="button"
          onClick={async () => {
            try {
              const { reread } = await learnHeard(offer.dogId, offer.heard);
              close();
              await desk.refresh();
              desk.told.value = `Learned: “${offer.heard}” is ${offer.dog}. ${counted(reread, 'note')} that wait changed by it.`;
            } catch (error) {
              desk.trouble.value = error as never;
            }
          }}
        >
          Yes, learn it
        </button>
        <button type="button" class="button plain" onClick={close}>
          No
        </button>
      </div>
    </section>
  );
}

function Done({ desk, show, none }: { desk: Desk; show: Show; none: boolean }) {
  if (show !== 'waiting' && none) return <Empty title="No note here" />;
  return (
    <Empty title={none ? 'Nothing waits for review' : 'All reviewed'}>
      <p>
        {none
          ? 'Speak or type a note on the first page; what is read from it comes here.'
          : `What you accepted counts now, in Runs and in Load. ${desk.open.value > 0 ? `${counted(desk.open.value, 'note')} left open.` : ''}`}
      </p>
      <p class="row">
        {none ? (
          <a class="button" href="/">
            Speak
          </a>
        ) : (
          <>
            <a class="button" href="/runs">
              Runs
            </a>
            <a class="button" href="/load">
              Load
            </a>
            <button type="button" class="button plain" onClick={() => void desk.undo()}>
              Take the last back
            </button>
          </>
        )}
      </p>
    </Empty>
  );
}
