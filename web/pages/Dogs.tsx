/** The roster: who is in the kennel, by what names they are called, and who has retired. */
import { useRef, useState } from 'preact/hooks';
import type { Dog } from '../../server/model.ts';
import { addDog, changeDog, type Episode, getDogs, getWatch, removeDog } from '../api.ts';
import { DogForm } from '../dogs/DogForm.tsx';
import { counted } from '../labels.ts';
import { Empty, Head, Notice, Waiting, Wrong } from '../parts/Told.tsx';
import { status } from '../status.ts';
import { ageWords, localIso } from '../times.ts';
import { useDoing, useFetched } from '../use.ts';
import { StandingCautions } from '../watch/Cautions.tsx';
import { OpenList } from '../watch/OpenList.tsx';
import { openByDog, shortWords, standingOf } from '../watch/words.ts';

const reread = (n: number) => (n > 0 ? ` ${counted(n, 'note')} that wait for review were read again.` : '');

export function Dogs() {
  const { data: dogs, trouble, loading, reload } = useFetched(getDogs, []);
  const { data: watch, trouble: blind } = useFetched(() => getWatch({ state: 'open' }), []);
  const [editing, setEditing] = useState<string>();
  const [told, setTold] = useState('');
  const [added, setAdded] = useState(0);
  const doing = useDoing();
  const opener = useRef<HTMLElement | null>(null);
  const running = (dogs ?? []).filter((dog) => !dog.retired);
  const retired = (dogs ?? []).filter((dog) => dog.retired);
  const close = () => {
    setEditing(undefined);
    doing.clear();
    // Back to the button that opened the form, so that the keyboard does not start from the top again.
    requestAnimationFrame(() => opener.current?.focus());
  };
  const act = (what: () => Promise<string>) =>
    doing.run(async () => {
      const words = await what();
      await reload();
      setTold(words);
      close();
    });
  const edit = (id: string, button: HTMLElement) => {
    opener.current = button;
    doing.clear();
    setEditing(id);
  };
  const rowsOf = (some: readonly Dog[]) => (
    <Roster dogs={some} open={openByDog(watch?.episodes ?? [])} on={watch?.on ?? ''} {...{ editing, edit }}>
      {(dog) => (
        <DogForm
          dog={dog}
          busy={doing.busy}
          trouble={doing.trouble}
          cancel={close}
          save={(to) =>
            void act(async () => {
              const answer = await changeDog(dog.id, to);
              const renamed = answer.dog.name === dog.name ? '' : ` ${dog.name} before; the old name stays known.`;
              return `Kept: ${answer.dog.name}.${renamed}${reread(answer.reread)}`;
            })
          }
          remove={() =>
            void act(async () => {
              await removeDog(dog.id);
              return `${dog.name} was taken off the roster.`;
            })
          }
        />
      )}
    </Roster>
  );
  return (
    <div class="stack">
      <Head
        title="Dogs"
        folio={
          dogs &&
          [counted(running.length, 'dog'), retired.length > 0 && `${retired.length} retired`]
            .filter(Boolean)
            .join(' · ')
        }
      />
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      <Notice>{told}</Notice>
      {!dogs && loading && <Waiting what="the roster" />}
      {dogs?.length === 0 && (
        <Empty title="No dog on the roster">
          <p>
            Enter the call names: a note can only be read once its dogs are known. A name that turns up in a note first
            can be added from Review as well.
          </p>
        </Empty>
      )}
      {blind && <Wrong error={blind} />}
      {watch && <StandingCautions cautions={standingOf(watch.cautions)} />}
      {watch && <OpenList episodes={watch.episodes} on={watch.on} title="Open findings" id="open" />}
      {dogs && (
        <details class="adding" open={dogs.length === 0 || added > 0}>
          <summary>
            <h2>Add a dog</h2>
          </summary>
          <DogForm
            key={added}
            again={added > 0}
            busy={doing.busy && editing === undefined}
            trouble={editing === undefined ? doing.trouble : undefined}
            save={(to) =>
              void doing.run(async () => {
                const answer = await addDog({ ...to, born: to.born ?? undefined });
                await reload();
                setTold(`${answer.dog.name} is on the roster.${reread(answer.reread)}`);
                setAdded((n) => n + 1);
              })
            }
          />
        </details>
      )}
      {running.length > 0 && (
        <section class="section stack" aria-labelledby="roster">
          <h2 id="roster">Roster</h2>
          {rowsOf(running)}
        </section>
      )}
      {retired.length > 0 && (
        <section class="section stack" aria-labelledby="retired">
          <h2 id="retired">Retired</h2>
          {rowsOf(retired)}
        </section>
      )}
    </div>
  );
}

interface RosterProps {
  dogs: readonly Dog[];
  open: ReadonlyMap<string, Episode[]>;
  /** The day that open findings are told of. */
  on: string;
  editing?: string;
  edit: (id: string, button: HTMLElement) => void;
  children: (dog: Dog) => preact.ComponentChildren;
}

function Roster({ dogs, open, on, editing, edit, children }: RosterProps) {
  const today = status.value?.today ?? localIso();
  return (
    <table class="table roster">
      <thead>
        <tr>
          <th scope="col">Call name</th>
          <th scope="col">Sex</th>
          <th scope="col">Age</th>
          <th scope="col">Also called</th>
          <th scope="col">
            <span class="unseen">Change</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {dogs.map((dog) =>
          editing === dog.id ? (
            <tr key={dog.id}>
              <td colSpan={5} class="editing">
                {children(dog)}
              </td>
            </tr>
          ) : (
            <tr key={dog.id}>
              <th scope="row">
                <a class="dogname" href={`/dogs/${dog.id}`}>
                  {dog.name}
                </a>
                {open.get(dog.name)?.map((episode) => (
                  <span key={episode.id} class="openword">
                    open: {shortWords(episode, on)}
                  </span>
                ))}
              </th>
              <td data-label="Sex">{dog.sex === 'F' ? 'female' : 'male'}</td>
              <td data-label="Age">{dog.born ? ageWords(dog.born, today) : <span class="hush">–</span>}</td>
              <td data-label="Also called">
                <OtherNames dog={dog} />
              </td>
              <td class="right">
                <button
                  type="button"
                  class="button tight"
                  aria-label={`Change ${dog.name}`}
                  onClick={(event) => edit(dog.id, event.currentTarget)}
                >
                  Change
                </button>
              </td>
            </tr>
          ),
        )}
      </tbody>
    </table>
  );
}

function OtherNames({ dog }: { dog: Dog }) {
  const parts = [
    dog.aliases.join(', '),
    dog.heard.length > 0 && `heard as ${dog.heard.map((name) => `“${name}”`).join(', ')}`,
    dog.formerNames.length > 0 && `${dog.formerNames.join(', ')} before`,
  ].filter(Boolean);
  return parts.length > 0 ? parts.join(' · ') : <span class="hush">–</span>;
}
