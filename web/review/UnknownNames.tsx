/** Names in a dog's place that the roster does not hold: a new dog in one step, or one that was heard wrong. */
import { useId, useState } from 'preact/hooks';
import type { Dog } from '../../server/model.ts';
import { addDog, learnHeard } from '../api.ts';
import { Wrong } from '../parts/Told.tsx';
import { useDoing } from '../use.ts';

interface Props {
  name: string;
  dogs: readonly Dog[];
  /** The roster has changed; `told` says how. */
  changed: (told: string) => Promise<void>;
}

const capital = (name: string) => name.replace(/^\p{Ll}/u, (first) => first.toUpperCase());

export function UnknownName({ name, dogs, changed }: Props) {
  const [called, setCalled] = useState(capital(name));
  const [dog, setDog] = useState('');
  const doing = useDoing();
  const id = useId();
  const reread = (n: number) =>
    n === 0 ? 'No other note that waits changed by it.' : `Notes that wait were read again; ${n} changed.`;
  const add = (sex: 'F' | 'M') =>
    doing.run(async () => {
      const heard = called.trim().toLowerCase() === name.toLowerCase() ? undefined : [name];
      const answer = await addDog({ name: called, sex, heard });
      await changed(`${answer.dog.name} is on the roster. ${reread(answer.reread)}`);
    });
  const learn = () =>
    doing.run(async () => {
      const answer = await learnHeard(dog, name);
      await changed(`“${name}” is taken as ${answer.dog.name} from now on. ${reread(answer.reread)}`);
    });
  return (
    <section class="told accent stack unknown" aria-label={`New dog: ${name}?`}>
      <p>“{name}” is not on the roster. New dog?</p>
      <div class="row">
        <div class="field">
          <label for={`${id}-name`}>Call name</label>
          <input
            id={`${id}-name`}
            value={called}
            autocomplete="off"
            onInput={(event) => setCalled(event.currentTarget.value)}
          />
        </div>
        <button type="button" class="button" disabled={doing.busy || !called.trim()} onClick={() => void add('F')}>
          Add her <span class="hush">female</span>
        </button>
        <button type="button" class="button" disabled={doing.busy || !called.trim()} onClick={() => void add('M')}>
          Add him <span class="hush">male</span>
        </button>
      </div>
      {dogs.length > 0 && (
        <details>
          <summary>It is a dog of the roster</summary>
          <div class="row">
            <div class="field">
              <label for={`${id}-dog`}>“{name}” is</label>
              <select id={`${id}-dog`} value={dog} onChange={(event) => setDog(event.currentTarget.value)}>
                <option value="">choose …</option>
                {dogs.map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.name}
                  </option>
                ))}
              </select>
            </div>
            <button type="button" class="button" disabled={!dog || doing.busy} onClick={() => void learn()}>
              Take it so from now on
            </button>
          </div>
        </details>
      )}
      {doing.trouble && <Wrong error={doing.trouble} />}
    </section>
  );
}
