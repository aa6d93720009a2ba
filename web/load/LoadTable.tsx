/** The whole kennel as one table that sorts. On a phone a few columns first, and any others by choice. */
import { useState } from 'preact/hooks';
import { keptSignal } from '../keep.ts';
import { SortTable } from '../parts/SortTable.tsx';
import { status, units } from '../status.ts';
import { dayWords } from '../times.ts';
import { useNarrow } from '../use.ts';
import { type DogLoad, type LoadAnswer, loadColumns } from './columns.tsx';
import { DogName } from './DogName.tsx';

/** Keys of the columns chosen on this device; "" is as it comes. */
const chosen = keptSignal<string>('loadcolumns', '');

export function LoadTable({ load }: { load: LoadAnswer }) {
  const narrow = useNarrow();
  const all = loadColumns(units.value, load.on === (status.value?.today ?? load.on) ? 'Today' : 'That day');
  const kept = chosen.value.split(' ').filter((key) => all.some((column) => column.key === key));
  const shown = new Set(
    kept.length > 0 ? kept : all.filter((column) => !narrow || column.first).map((column) => column.key),
  );
  const columns = [
    {
      key: 'dog',
      name: 'Dog',
      cell: (dog: DogLoad) => <DogName dog={dog} />,
      by: (dog: DogLoad) => dog.dog,
    },
    ...all.filter((column) => shown.has(column.key)),
  ];
  const title = `Load of each dog on ${dayWords(load.on, true)}`;
  return (
    <>
      <ColumnChoice {...{ all, shown }} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways has to be reached by the keyboard. */}
      <section class="scrolls" tabIndex={0} aria-label={`${title}, as a table`}>
        <SortTable
          key={[...shown].join(' ')}
          caption={title}
          columns={columns}
          rows={load.dogs}
          keyOf={(dog) => dog.id}
          start={shown.has('metres7') ? 'metres7' : 'dog'}
          under={(dog) => (dog.retired ? 'retired' : null)}
        />
      </section>
    </>
  );
}

interface ChoiceProps {
  all: readonly { key: string; name: string; means: string }[];
  shown: ReadonlySet<string>;
}
/** Which columns are shown, and what each of them means. */
function ColumnChoice({ all, shown }: ChoiceProps) {
  const [told, setTold] = useState('');
  const pick = (key: string, on: boolean) => {
    const next = all.map((column) => column.key).filter((one) => (one === key ? on : shown.has(one)));
    if (next.length === 0) {
      setTold('One column has to stay.');
      return;
    }
    setTold('');
    chosen.value = next.join(' ');
  };
  return (
    <details class="adding columnchoice no-print">
      <summary>
        Columns: {shown.size} of {all.length}, and what they mean
      </summary>
      <ul class="columnlist">
        {all.map(({ key, name, means }) => (
          <li key={key}>
            <label class="tick">
              <input
                type="checkbox"
                checked={shown.has(key)}
                onChange={(event) => {
                  pick(key, event.currentTarget.checked);
                  event.currentTarget.checked = shown.has(key);
                }}
              />
              <span>
                <strong>{name}</strong>: {means}
              </span>
            </label>
          </li>
        ))}
      </ul>
      <p role="status">{told}</p>
      {chosen.value !== '' && (
        <button
          type="button"
          class="button tight"
          onClick={() => {
            chosen.value = '';
          }}
        >
          As it comes
        </button>
      )}
    </details>
  );
}
