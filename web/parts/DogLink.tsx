/** A dog's name that leads to its own page, where only the name is known. */
import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { getDogs } from '../api.ts';

/** Ids by call name, as the roster was when it was asked for last. */
const ids = signal<ReadonlyMap<string, string>>(new Map());
let asking: Promise<void> | undefined;

/** Asks for the roster; a second asking while the first is under way is the same one. Without an answer names stay names. */
function askRoster(): Promise<void> {
  asking ??= getDogs()
    .then(
      (dogs) => {
        ids.value = new Map(dogs.map(({ name, id }) => [name, id]));
      },
      () => undefined,
    )
    .finally(() => {
      asking = undefined;
    });
  return asking;
}

export function DogLink({ name }: { name: string }) {
  const id = ids.value.get(name);
  useEffect(() => {
    if (!ids.value.has(name)) void askRoster();
  }, [name]);
  if (id === undefined) return <>{name}</>;
  return (
    <a class="doglink" href={`/dogs/${id}`}>
      {name}
    </a>
  );
}
