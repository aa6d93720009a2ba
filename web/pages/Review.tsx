/** Review: one note at a time beside what was read from it. Nothing counts before it is accepted here. */

import { useEffect, useMemo } from 'preact/hooks';
import { useLocation, useRoute } from 'preact-iso';
import { getDogs, getPeople, learnHeard } from '../api.ts';
import { singleKeys } from '../keep.ts';
import { counted } from '../labels.ts';
import { Empty, Head, Waiting, Wrong } from '../parts/Told.tsx';
import { Desk, type Order, type Show } from '../review/desk.ts';
import { Keys } from '../review/Keys.tsx';
import { keyFor } from '../review/keys.ts';
import { OneNote } from '../review/OneNote.tsx';
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
