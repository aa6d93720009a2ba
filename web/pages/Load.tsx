/** Load: who is open, who rested, what each dog has run and how that changes; for the whole kennel at once. */
import { useLocation } from 'preact-iso';
import { getLoad, getWatch } from '../api.ts';
import { counted } from '../labels.ts';
import type { DogLoad, LoadAnswer } from '../load/columns.tsx';
import { LoadTable } from '../load/LoadTable.tsx';
import { Shares } from '../load/Shares.tsx';
import { Tomorrow } from '../load/Tomorrow.tsx';
import { Weeks } from '../load/Weeks.tsx';
import { Empty, Head, Waiting, Wrong } from '../parts/Told.tsx';
import { status, units } from '../status.ts';
import { dayWords } from '../times.ts';
import { distanceUnitWord } from '../units.ts';
import { useFetched } from '../use.ts';
import { StandingCautions } from '../watch/Cautions.tsx';
import { ComesBack } from '../watch/ComesBack.tsx';
import { standingOf } from '../watch/words.ts';

export function Load() {
  const { query, route } = useLocation();
  const on = /^\d{4}-\d{2}-\d{2}$/.test(query.on ?? '') ? query.on : undefined;
  const pick = (day: string | undefined) => route(day ? `/load?on=${day}` : '/load', true);
  const { data, trouble, loading, reload } = useFetched(async () => {
    const load = await getLoad(on);
    return { load, watch: await getWatch({ on: load.on }) };
  }, [on]);
  const { load, watch } = data ?? {};
  return (
    <div class="stack loadpage">
      <Head title="Load" folio={load && `${dayWords(load.on, true)} · season ${load.season}`} />
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      {!data && loading && <Waiting what="the load" />}
      {load && load.dogs.length === 0 && (
        <Empty title="No dog yet">
          <p>Enter the dogs first; then every run that is reviewed adds to their load.</p>
          <a class="button" href="/dogs">
            Dogs
          </a>
        </Empty>
      )}
      {load && watch && load.dogs.length > 0 && (
        <>
          <WhatCounts load={load} pick={pick} />
          <StandingCautions cautions={standingOf(watch.cautions)} />
          <Tomorrow dogs={load.dogs} episodes={watch.episodes} cautions={watch.cautions} on={load.on} />
          <Weeks dogs={load.dogs} episodes={watch.episodes} on={load.on} />
          <section class="section stack" aria-labelledby="figures">
            <h2 id="figures">Load and change of load</h2>
            <LoadTable load={load} />
            <LeastOf dogs={load.dogs} />
            <p class="small hush">{load.about.ratio}</p>
            <p class="small hush">{load.about.monotony}</p>
            <p class="small hush">Weighted: {load.about.ewma}</p>
          </section>
          <Shares load={load} />
          <ComesBack watch={watch} />
        </>
      )}
    </div>
  );
}

/** What the figures are made of, and the day they stand for. */
function WhatCounts({ load, pick }: { load: LoadAnswer; pick: (day: string | undefined) => void }) {
  const waiting = status.value?.waiting ?? 0;
  return (
    <div class="row loadhead">
      <p>
        {distanceUnitWord(units.value).replace(/^./, (c) => c.toUpperCase())} under harness up to {dayWords(load.on)},
        that day counted in; from reviewed notes alone.
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
        <input id="on" type="date" value={load.on} onChange={(event) => pick(event.currentTarget.value || undefined)} />
      </div>
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
