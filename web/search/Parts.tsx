/** What was understood, part by part: each can be left out, or changed in a form. */
import { CONDITIONS, PARTS, POSITIONS, SIGNS, SURFACES } from '../../grammar/entry.ts';
import type { Query } from '../../server/search/query.ts';
import type { search } from '../api.ts';
import { valueWord } from '../labels.ts';
import { without } from './address.ts';

export type Answer = Awaited<ReturnType<typeof search>>;

/** The parts as buttons; a press leaves one out. */
export function Chips({ answer, go }: { answer: Answer; go: (query: Query) => void }) {
  return (
    <ul class="chips" aria-label="Parts of the search">
      {answer.chips.map(({ part, value, label }) => (
        <li key={`${part} ${value ?? ''}`}>
          <button
            type="button"
            class="chip"
            aria-label={`Leave out: ${label}`}
            onClick={() => go(without(answer.query, part, value))}
          >
            {label} <span aria-hidden="true">×</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

interface Choice {
  part: 'dogs' | 'parts' | 'signs' | 'positions' | 'surfaces' | 'conditions' | 'side' | 'end' | 'season';
  label: string;
  options: readonly [value: string, word: string][];
}
const words = (kind: 'finding' | 'hitch' | 'trail' | 'weather', field: string, values: readonly string[]) =>
  values.map((value): [string, string] => [value, valueWord(kind, field, value)]);

const CHOICES: readonly Choice[] = [
  { part: 'parts', label: 'Part', options: words('finding', 'part', PARTS) },
  {
    part: 'side',
    label: 'Side',
    options: [
      ['left', 'left'],
      ['right', 'right'],
      ['both', 'both'],
    ],
  },
  {
    part: 'end',
    label: 'Front or hind',
    options: [
      ['front', 'front'],
      ['hind', 'hind'],
      ['both', 'front and hind'],
    ],
  },
  { part: 'signs', label: 'Sign', options: words('finding', 'sign', SIGNS) },
  { part: 'positions', label: 'Position', options: words('hitch', 'position', POSITIONS) },
  { part: 'surfaces', label: 'Trail', options: words('trail', 'surface', SURFACES) },
  { part: 'conditions', label: 'Weather', options: words('weather', 'condition', CONDITIONS) },
];
const LISTS = new Set(['dogs', 'parts', 'signs', 'positions', 'surfaces', 'conditions']);

/** Every part as a field; the ones that have none here stay as they are. */
export function ChangeForm(props: {
  query: Query;
  dogs: readonly string[];
  seasons: readonly string[];
  go: (query: Query) => void;
}) {
  const { query, dogs, seasons, go } = props;
  const choices: Choice[] = [
    { part: 'dogs', label: 'Dog', options: dogs.map((dog): [string, string] => [dog, dog]) },
    ...CHOICES,
    { part: 'season', label: 'Season', options: seasons.map((name): [string, string] => [name, name]) },
  ];
  const change = (event: SubmitEvent) => {
    event.preventDefault();
    const data = new FormData(event.currentTarget as HTMLFormElement);
    const next: Record<string, unknown> = { ...query };
    for (const { part } of choices) {
      const value = String(data.get(part) ?? '');
      // "As it is" keeps several values; a single one takes their place.
      if (value === KEEP) continue;
      next[part] = value === '' ? undefined : LISTS.has(part) ? [value] : value;
    }
    for (const part of ['from', 'to', 'words']) next[part] = String(data.get(part) ?? '').trim() || undefined;
    go(next as Query);
  };
  return (
    <details class="adding">
      <summary>Change the parts</summary>
      <form class="fields" onSubmit={change} key={JSON.stringify(query)}>
        {choices.map((choice) => (
          <ChoiceField key={choice.part} choice={choice} query={query} />
        ))}
        <div class="field">
          <label for="search-from">From day</label>
          <input id="search-from" name="from" type="date" defaultValue={query.from ?? ''} />
        </div>
        <div class="field">
          <label for="search-to">To day</label>
          <input id="search-to" name="to" type="date" defaultValue={query.to ?? ''} />
        </div>
        <div class="field whole">
          <label for="search-words">Words of the notes</label>
          <input id="search-words" name="words" defaultValue={query.words ?? ''} maxLength={300} />
        </div>
        <div class="whole">
          <button type="submit" class="button">
            Search with these
          </button>
        </div>
      </form>
    </details>
  );
}

const KEEP = '=';

function ChoiceField({ choice: { part, label, options }, query }: { choice: Choice; query: Query }) {
  const now = query[part];
  const values = now === undefined ? [] : Array.isArray(now) ? now : [now];
  return (
    <div class="field">
      <label for={`search-${part}`}>{label}</label>
      <select id={`search-${part}`} name={part}>
        <option value="">any</option>
        {values.length > 1 && (
          <option value={KEEP} selected>
            {values.join(', ')}
          </option>
        )}
        {options.map(([value, word]) => (
          <option key={value} value={value} selected={values.length === 1 && values[0] === value}>
            {word}
          </option>
        ))}
      </select>
    </div>
  );
}
