/** Load: what each dog has run, today, in a week, in four; and how long it has stood. */
import { useState } from 'preact/hooks';
import { getLoad } from '../api.ts';
import { counted } from '../labels.ts';
import { type Column, SortTable } from '../parts/SortTable.tsx';
import { Empty, Head, Waiting, Wrong } from '../parts/Told.tsx';
import { status, units } from '../status.ts';
import { dayWords } from '../times.ts';
import { distanceFigure, distanceUnitWord, type Units } from '../units.ts';
import { useFetched } from '../use.ts';
import { figure } from '../words.ts';

type Answer = Awaited<ReturnType<typeof getLoad>>;
type DogLoad = Answer['dogs'][number];

function columns(units: Units): Column<DogLoad>[] {
  const metres = (key: 'today' | 'metres7' | 'metres28', name: string): Column<DogLoad> => ({
    key,
    name,
    cell: (dog) => <span class={dog[key] > 0 ? 'figure big' : 'hush'}>{distanceFigure(dog[key], units)}</span>,
    by: (dog) => dog[key],
    numeric: true,
    largestFirst: true,
  });
  return [
    { key: 'dog', name: 'Dog', cell: (dog) => dog.dog, by: (dog) => dog.dog },
    metres('today', 'Today'),
    metres('metres7', '7 days'),
    metres('metres28', '28 days'),
    {
      key: 'since',
      name: 'Days since run',
      cell: (dog) => (dog.daysSinceLastRun === undefined ? <span class="hush">no run</span> : dog.daysSinceLastRun),
      by: (dog) => dog.daysSinceLastRun,
      numeric: true,
      largestFirst: true,
    },
    {
      key: 'row',
      name: 'Days in a row',
      cell: (dog) => dog.daysInARow || <span class="hush">–</span>,
      by: (dog) => dog.daysInARow,
      numeric: true,
      largestFirst: true,
      wideOnly: true,
    },
    {
      key: 'runs',
      name: 'Runs, 28 days',
      cell: (dog) => dog.runs28 || <span class="hush">–</span>,
      by: (dog) => dog.runs28,
      numeric: true,
      largestFirst: true,
      wideOnly: true,
    },
    {
      key: 'change',
      name: '7 days to 28',
      cell: (dog) => change(dog),
      by: (dog) => dog.coupled,
      numeric: true,
      largestFirst: true,
      wideOnly: true,
    },
  ];
}

/** This week beside the four-week mean; said in words where there is no figure yet. */
function change(dog: DogLoad) {
  if (dog.coupled !== undefined) return <span class="figure">{figure(dog.coupled)}×</span>;
  return <span class="hush small">{dog.tooShort ? `${dog.daysOfRecord} of 28 days` : 'none run'}</span>;
}

export function Load() {
  const [on, setOn] = useState<string>();
  const { data, trouble, loading, reload } = useFetched(() => getLoad(on), [on]);
  const u = units.value;
  const waiting = status.value?.waiting ?? 0;
  return (
    <div class="stack">
      <Head title="Load" folio={data && `${dayWords(data.on, true)} · season ${data.season}`} />
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      {!data && loading && <Waiting what="the load" />}
      {data && data.dogs.length === 0 && (
        <Empty title="No dog yet">
          <p>Enter the dogs first; then every run that is reviewed adds to their load.</p>
          <a class="button" href="/dogs">
            Dogs
          </a>
        </Empty>
      )}
      {data && data.dogs.length > 0 && (
        <>
          <div class="row loadhead">
            <p>
              {distanceUnitWord(u).replace(/^./, (c) => c.toUpperCase())} under harness up to {dayWords(data.on)}, that
              day counted in; from reviewed notes alone.
              {waiting > 0 && (
                <>
                  {' '}
                  <a href="/review">{counted(waiting, 'note still waits', 'notes still wait')} for review</a> and{' '}
                  {waiting === 1 ? 'counts' : 'count'} for nothing yet.
                </>
              )}
            </p>
            <div class="field no-print">
              <label for="on">Day</label>
              <input
                id="on"
                type="date"
                value={data.on}
                onChange={(event) => setOn(event.currentTarget.value || undefined)}
              />
            </div>
          </div>
          <SortTable
            caption={`Load of each dog on ${dayWords(data.on, true)}`}
            columns={columns(u)}
            rows={data.dogs}
            keyOf={(dog) => dog.id}
            start="metres7"
            under={(dog) => (dog.retired ? 'retired' : null)}
          />
          <LeastOf dogs={data.dogs} />
          <p class="small hush only-desk">“7 days to 28”: {data.about.ratio}</p>
        </>
      )}
    </div>
  );
}

/** Where a dog's distance could not be known the sums are the least it did; that is said, never filled in. */
function LeastOf({ dogs }: { dogs: readonly DogLoad[] }) {
  const some = dogs.filter((dog) => dog.runsWithoutDistance28 > 0);
  if (some.length === 0) return null;
  return (
    <p class="told">
      Of {some.map((dog) => `${dog.dog} (${counted(dog.runsWithoutDistance28, 'run')})`).join(', ')} the distance is not
      known for some runs of the last 28 days; the sums are the least {some.length === 1 ? 'it' : 'they'} did.
    </p>
  );
}
