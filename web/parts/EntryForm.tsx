/** An entry's fields, changeable in place. Built from the contract's schemas (fields.ts). */
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { ASSERTIONS, type Entry, type Kind } from '../../grammar/entry.ts';
import { FIELD_WORDS, KIND_WORDS, valueWord } from '../labels.ts';
import type { Units } from '../units.ts';
import { DogPicker } from './DogPicker.tsx';
import {
  changeKind,
  type Field,
  type FormState,
  fieldsOf,
  fromForm,
  isAsked,
  KINDS,
  toForm,
  WITHOUT_DOGS,
} from './fields.ts';

interface Props {
  /** The entry to change; a new one when left out. */
  entry?: Entry;
  /** Call names of the roster. */
  dogs: readonly string[];
  people: readonly string[];
  units: Units;
  busy: boolean;
  done: (entry: Entry) => void;
  cancel: () => void;
}
type Set = (name: string, value: string | string[]) => void;

/** Up to this many values stand side by side; more are a list to choose from. */
const SIDE_BY_SIDE = 6;

export function EntryForm({ entry, dogs, people, units, busy, done, cancel }: Props) {
  const [kind, setKind] = useState<Kind>(entry?.kind ?? 'finding');
  const [state, setState] = useState<FormState>(() => (entry ? toForm(entry) : changeKind('finding', {}, units)));
  const [wrong, setWrong] = useState<Record<string, string>>({});
  const form = useRef<HTMLFormElement>(null);
  const id = useId();
  useEffect(() => form.current?.querySelector('select')?.focus(), []);
  useEffect(() => form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus(), [wrong]);

  const set: Set = (name, value) => setState((was) => ({ ...was, [name]: value }));
  const submit = (event: Event) => {
    event.preventDefault();
    const made = fromForm(kind, state, entry);
    if ('entry' in made) done(made.entry);
    else setWrong(made.wrong);
  };
  const picker = <DogPicker chosen={state.dogs as string[]} dogs={dogs} change={(chosen) => set('dogs', chosen)} />;
  return (
    <form
      ref={form}
      class="entryform stack"
      noValidate
      onSubmit={submit}
      onKeyDown={(event) => {
        if (event.key === 'Escape') {
          event.stopPropagation();
          cancel();
        }
      }}
    >
      <div class="fields">
        <div class="field">
          <label for={`${id}-kind`}>Kind</label>
          <select
            id={`${id}-kind`}
            value={kind}
            onChange={(event) => {
              const next = event.currentTarget.value as Kind;
              setKind(next);
              setState((was) => changeKind(next, was, units));
              setWrong({});
            }}
          >
            {KINDS.map((one) => (
              <option key={one} value={one}>
                {KIND_WORDS[one]}
              </option>
            ))}
          </select>
        </div>
        {fieldsOf(kind)
          .filter((field) => isAsked(field, state))
          .map((field) => (
            <OneField
              key={field.name}
              {...{ field, kind, state, set, people }}
              id={`${id}-${field.name}`}
              wrong={wrong[field.name]}
            />
          ))}
      </div>
      {WITHOUT_DOGS.has(kind) && (state.dogs as string[]).length === 0 ? (
        <details>
          <summary>About a dog?</summary>
          {picker}
        </details>
      ) : (
        picker
      )}
      <Choice
        id={`${id}-assertion`}
        field={{ name: 'assertion', type: 'choice', optional: false, values: ASSERTIONS }}
        {...{ kind, state, set }}
      />
      <div class="row">
        <button type="submit" class="button first" disabled={busy}>
          {entry ? 'Change and accept' : 'Add'}
        </button>
        <button type="button" class="button" onClick={cancel}>
          Leave as it is <kbd class="only-wide">Esc</kbd>
        </button>
      </div>
    </form>
  );
}

interface FieldProps {
  id: string;
  field: Field;
  kind: Kind;
  state: FormState;
  set: Set;
}

function OneField({ people, wrong, ...props }: FieldProps & { people: readonly string[]; wrong?: string }) {
  const { id, field, state, set } = props;
  if (field.type === 'several') return <Several {...props} />;
  if (field.type === 'choice' && field.values.length <= SIDE_BY_SIDE) return <Choice {...props} wrong={wrong} />;
  const value = String(state[field.name] ?? '');
  const told = { id, 'aria-invalid': wrong ? true : undefined, 'aria-describedby': wrong ? `${id}-wrong` : undefined };
  return (
    <div class="field">
      <label for={id}>{label(field)}</label>
      {field.type === 'choice' ? (
        <LongChoice {...props} told={told} />
      ) : (
        <input
          {...told}
          type={field.type === 'time' ? 'time' : 'text'}
          inputMode={field.type === 'number' ? 'decimal' : undefined}
          autocomplete="off"
          list={field.name === 'driver' ? `${id}-people` : undefined}
          value={value}
          onInput={(event) => set(field.name, event.currentTarget.value)}
        />
      )}
      {field.name === 'driver' && (
        <datalist id={`${id}-people`}>
          {people.map((person) => (
            <option key={person} value={person} />
          ))}
        </datalist>
      )}
      {wrong && (
        <p class="wrong" id={`${id}-wrong`}>
          {wrong}
        </p>
      )}
    </div>
  );
}

const label = (field: Field) => {
  const words = FIELD_WORDS[field.name] ?? field.name;
  return words[0]?.toUpperCase() + words.slice(1);
};

function LongChoice({ field, kind, state, set, told }: FieldProps & { told: object }) {
  return (
    <select
      {...told}
      value={String(state[field.name] ?? '')}
      onChange={(event) => set(field.name, event.currentTarget.value)}
    >
      {field.optional && <option value="">not said</option>}
      {field.values.map((value) => (
        <option key={value} value={value}>
          {valueWord(kind, field.name, value)}
        </option>
      ))}
    </select>
  );
}

/** A few values side by side. */
function Choice({ id, field, kind, state, set, wrong }: FieldProps & { wrong?: string }) {
  const values = field.optional ? ['', ...field.values] : field.values;
  return (
    <fieldset class="field whole">
      <legend>{label(field)}</legend>
      <div class="chips">
        {values.map((value) => (
          <label key={value} class="chip">
            <input
              type="radio"
              name={id}
              value={value}
              checked={(state[field.name] ?? '') === value}
              onChange={() => set(field.name, value)}
            />
            {value ? valueWord(kind, field.name, value) : 'not said'}
          </label>
        ))}
      </div>
      {wrong && <p class="wrong">{wrong}</p>}
    </fieldset>
  );
}

/** Any number of values, like paws. */
function Several({ field, kind, state, set }: FieldProps) {
  const chosen = (state[field.name] as string[] | undefined) ?? [];
  return (
    <fieldset class="field whole">
      <legend>{label(field)}</legend>
      <div class="chips">
        {field.values.map((value) => (
          <label key={value} class="chip">
            <input
              type="checkbox"
              checked={chosen.includes(value)}
              onChange={(event) =>
                set(
                  field.name,
                  field.values.filter((v) => (v === value ? event.currentTarget.checked : chosen.includes(v))),
                )
              }
            />
            {valueWord(kind, field.name, value)}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
