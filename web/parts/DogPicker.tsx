/** Which dogs an entry is about: every name of the roster to press, those chosen when it opened first. */
import { useState } from 'preact/hooks';

interface Props {
  chosen: string[];
  dogs: readonly string[];
  change: (chosen: string[]) => void;
}

/** More names than this get a box that narrows them down. */
const MANY = 24;

export function DogPicker({ chosen, dogs, change }: Props) {
  const [first] = useState(chosen);
  const [part, setPart] = useState('');
  const all = [...new Set([...first.filter((name) => name !== '*'), ...dogs, ...chosen.filter((n) => n !== '*')])];
  const shown = all.filter((name) => chosen.includes(name) || name.toLowerCase().includes(part.trim().toLowerCase()));
  const team = chosen.includes('*');
  return (
    <fieldset class="field dogpicker">
      <legend>Dogs</legend>
      {all.length > MANY && (
        <input
          type="search"
          aria-label="Part of a dog’s name"
          placeholder="part of a name"
          value={part}
          onInput={(event) => setPart(event.currentTarget.value)}
        />
      )}
      <div class="chips">
        <label class="chip">
          <input type="checkbox" checked={team} onChange={() => change(team ? [] : ['*'])} />
          whole team
        </label>
        {shown.map((name) => (
          <label key={name} class="chip">
            <input
              type="checkbox"
              checked={chosen.includes(name)}
              onChange={() =>
                change(
                  chosen.includes(name)
                    ? chosen.filter((one) => one !== name)
                    : [...chosen.filter((one) => one !== '*'), name],
                )
              }
            />
            {name}
          </label>
        ))}
      </div>
      {all.length === 0 && <p class="hint">No dog is on the roster yet.</p>}
    </fieldset>
  );
}
