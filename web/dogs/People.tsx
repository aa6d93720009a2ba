/** Drivers and handlers: add, rename, retire, remove. */
import { useState } from 'preact/hooks';
import type { Person } from '../../server/model.ts';
import { addPerson, removePerson, renamePerson, retirePerson } from '../api.ts';
import { Wrong } from '../parts/Told.tsx';
import { useDoing } from '../use.ts';

export function People({ people, reload }: { people: readonly Person[]; reload: () => Promise<void> }) {
  const [name, setName] = useState('');
  const doing = useDoing();
  return (
    <div class="stack people">
      <ul class="peoplelist">
        {people.map((person) => (
          <OnePerson key={person.id} person={person} reload={reload} />
        ))}
      </ul>
      <form
        class="row"
        onSubmit={(event) => {
          event.preventDefault();
          if (!name.trim()) return;
          void doing.run(async () => {
            await addPerson(name.trim());
            await reload();
            setName('');
          });
        }}
      >
        <div class="field">
          <label for="new-person">Name</label>
          <input
            id="new-person"
            value={name}
            autocomplete="off"
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </div>
        <button type="submit" class="button first" disabled={doing.busy || !name.trim()}>
          Add
        </button>
      </form>
      {doing.trouble && <Wrong error={doing.trouble} />}
    </div>
  );
}

function OnePerson({ person, reload }: { person: Person; reload: () => Promise<void> }) {
  const [name, setName] = useState<string>();
  const doing = useDoing();
  const renaming = name !== undefined;
  return (
    <li class="stack">
      {renaming ? (
        <form
          class="row"
          onSubmit={(event) => {
            event.preventDefault();
            void doing.run(async () => {
              if (name.trim() && name.trim() !== person.name) await renamePerson(person.id, name.trim());
              await reload();
              setName(undefined);
            });
          }}
        >
          <input
            aria-label={`New name of ${person.name}`}
            value={name}
            autocomplete="off"
            onInput={(event) => setName(event.currentTarget.value)}
          />
          <button type="submit" class="button" disabled={doing.busy}>
            Keep
          </button>
          <button
            type="button"
            class="button plain"
            onClick={() => {
              setName(undefined);
              doing.clear();
            }}
          >
            Leave as it is
          </button>
        </form>
      ) : (
        <div class="row">
          <span class="name">
            {person.name}
            {person.retired && <span class="hush small"> retired</span>}
          </span>
          <button
            type="button"
            class="button tight plain"
            aria-label={person.retired ? `Take ${person.name} back` : `Retire ${person.name}`}
            disabled={doing.busy}
            onClick={() =>
              void doing.run(async () => {
                await retirePerson(person.id, !person.retired);
                await reload();
              })
            }
          >
            {person.retired ? `Take ${person.name} back` : 'Retire'}
          </button>
          <button
            type="button"
            class="button tight plain"
            aria-label={`Rename ${person.name}`}
            onClick={() => setName(person.name)}
          >
            Rename
          </button>
          <button
            type="button"
            class="button tight plain"
            aria-label={`Remove ${person.name}`}
            disabled={doing.busy}
            onClick={() =>
              void doing.run(async () => {
                await removePerson(person.id);
                await reload();
              })
            }
          >
            Remove
          </button>
        </div>
      )}
      {doing.trouble && <Wrong error={doing.trouble} />}
    </li>
  );
}
