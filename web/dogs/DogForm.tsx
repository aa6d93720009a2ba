/** A dog's entry in the roster, to add or to change. */
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { Dog } from '../../server/model.ts';
import type { DogChange } from '../api.ts';
import { Wrong } from '../parts/Told.tsx';
import type { Trouble } from '../trouble.ts';

/** All of a dog that can be given; `born` null takes the day of birth away. */
export type DogGiven = Required<Pick<DogChange, 'name' | 'sex' | 'aliases' | 'heard'>> & {
  born?: string | null;
  retired?: boolean;
};
interface Props {
  /** The dog to change; a new one when left out. */
  dog?: Dog;
  /** A new dog after the one before: the name is asked for at once. */
  again?: boolean;
  busy: boolean;
  trouble?: Trouble;
  save: (to: DogGiven) => void;
  cancel?: () => void;
  remove?: () => void;
}

/** Names as typed, divided by commas. */
const listOf = (text: string) =>
  text
    .split(/[,;\n]/)
    .map((name) => name.trim())
    .filter(Boolean);

export function DogForm({ dog, again, busy, trouble, save, cancel, remove }: Props) {
  const [name, setName] = useState(dog?.name ?? '');
  const [sex, setSex] = useState<'F' | 'M' | ''>(dog?.sex ?? '');
  const [aliases, setAliases] = useState(dog?.aliases.join(', ') ?? '');
  const [heard, setHeard] = useState(dog?.heard.join(', ') ?? '');
  const [born, setBorn] = useState(dog?.born ?? '');
  const [retired, setRetired] = useState(dog?.retired ?? false);
  const [wrong, setWrong] = useState<{ name?: string; sex?: string }>({});
  const first = useRef<HTMLInputElement>(null);
  const id = useId();
  useEffect(() => {
    if (dog || again) first.current?.focus();
  }, [dog, again]);

  const submit = (event: Event) => {
    event.preventDefault();
    const missing = {
      ...(name.trim() ? {} : { name: 'A dog needs a call name.' }),
      ...(sex ? {} : { sex: 'Say whether it is a female or a male: notes say “she” and “the boys”.' }),
    };
    setWrong(missing);
    if (missing.name) first.current?.focus();
    if (missing.name || !sex) return;
    save({
      name: name.trim(),
      sex,
      aliases: listOf(aliases),
      heard: listOf(heard),
      born: born || (dog?.born ? null : undefined),
      ...(dog ? { retired } : {}),
    });
  };
  const text = (field: string, label: string, value: string, set: (to: string) => void, hint?: string) => (
    <div class="field">
      <label for={`${id}-${field}`}>{label}</label>
      <input
        id={`${id}-${field}`}
        value={value}
        autocomplete="off"
        aria-describedby={hint ? `${id}-${field}-hint` : undefined}
        onInput={(event) => set(event.currentTarget.value)}
      />
      {hint && (
        <p class="hint" id={`${id}-${field}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
  return (
    <form class="stack dogform" noValidate onSubmit={submit}>
      <div class="fields">
        <div class="field">
          <label for={`${id}-name`}>Call name</label>
          <input
            id={`${id}-name`}
            ref={first}
            value={name}
            autocomplete="off"
            aria-invalid={wrong.name ? true : undefined}
            aria-describedby={wrong.name ? `${id}-name-wrong` : undefined}
            onInput={(event) => setName(event.currentTarget.value)}
          />
          {wrong.name && (
            <p class="wrong" id={`${id}-name-wrong`}>
              {wrong.name}
            </p>
          )}
        </div>
        <fieldset class="field">
          <legend>Sex</legend>
          <div class="chips">
            {(['F', 'M'] as const).map((value) => (
              <label key={value} class="chip">
                <input type="radio" name={`${id}-sex`} checked={sex === value} onChange={() => setSex(value)} />
                {value === 'F' ? 'female' : 'male'}
              </label>
            ))}
          </div>
          {wrong.sex && (
            <p class="wrong" role="alert">
              {wrong.sex}
            </p>
          )}
        </fieldset>
        {text('aliases', 'Also called', aliases, setAliases, 'Names you use yourself, with commas between')}
        <div class="field">
          <label for={`${id}-born`}>Born</label>
          <input id={`${id}-born`} type="date" value={born} onChange={(event) => setBorn(event.currentTarget.value)} />
        </div>
        {dog && text('heard', 'Heard as', heard, setHeard, 'What a recogniser writes for the name')}
      </div>
      {dog && (
        <label class="tick">
          <input type="checkbox" checked={retired} onChange={(event) => setRetired(event.currentTarget.checked)} />
          Retired: no longer in the team, its record stays
        </label>
      )}
      {trouble && <Wrong error={trouble} />}
      <div class="row">
        <button type="submit" class="button first" disabled={busy}>
          {dog ? 'Keep' : 'Add to the roster'}
        </button>
        {cancel && (
          <button type="button" class="button" onClick={cancel}>
            Leave as it is
          </button>
        )}
        {remove && (
          <button type="button" class="button plain" disabled={busy} onClick={remove}>
            Take off the roster
          </button>
        )}
      </div>
    </form>
  );
}
