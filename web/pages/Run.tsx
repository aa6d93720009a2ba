/** One run: the team on its gangline, distance, time, stops, trail and weather, and what each dog did. */

import { useState } from 'preact/hooks';
import { useLocation, useRoute } from 'preact-iso';
import type { RunRecord } from '../../server/records/types.ts';
import { getRun, getWatch } from '../api.ts';
import { counted } from '../labels.ts';
import { Head, Notice, Waiting, Wrong } from '../parts/Told.tsx';
import { DogsTable } from '../runs/DogsTable.tsx';
import { Gangline } from '../runs/Gangline.tsx';
import { CorrectDistance, distanceFrom, JoinBefore } from '../runs/Mend.tsx';
import { RunNotes } from '../runs/RunNotes.tsx';
import { units } from '../status.ts';
import { clockOf, dayWords, shiftDay } from '../times.ts';
import {
  distanceFigure,
  distanceUnit,
  distanceWords,
  speedWords,
  temperatureWords,
  type Units,
  windWords,
} from '../units.ts';
import { useFetched } from '../use.ts';
import { StandingCautions } from '../watch/Cautions.tsx';
import { OpenList } from '../watch/OpenList.tsx';
import { standingOf } from '../watch/words.ts';
import { minutesWords, said } from '../words.ts';

const pathOf = (id: string) => `/runs/${encodeURIComponent(id)}`;

export function Run() {
  const id = decodeURIComponent(useRoute().params.id ?? '');
  const { route } = useLocation();
  const { data, trouble, loading, reload } = useFetched(() => getRun(id), [id]);
  const [told, setTold] = useState('');
  const u = units.value;
  const goTo = (words: string, to: string) => {
    setTold(words);
    if (to === id || data?.run.id === to) void reload();
    else route(pathOf(to), true);
  };
  if (!data) {
    return (
      <div class="stack">
        <Head title="Run" />
        {trouble && <Wrong error={trouble} again={() => void reload()} />}
        {loading && <Waiting what="the run" />}
      </div>
    );
  }
  const { run, notes, before, after } = data;
  return (
    <div class="stack run">
      <Head
        title={dayWords(run.day, true)}
        folio={[run.driver && `${run.driver} driving`, `Season ${run.season}`].filter(Boolean).join(' · ')}
      />
      <nav class="row small" aria-label="Runs beside this one">
        <a href="/runs">All runs</a>
        {before && <a href={pathOf(before.id)}>Run before, {dayWords(before.day)}</a>}
        {after && <a href={pathOf(after.id)}>Run after, {dayWords(after.day)}</a>}
      </nav>
      <Notice>{told}</Notice>
      {trouble && <Wrong error={trouble} again={() => void reload()} />}
      <WasOpen key={run.day} run={run} />
      <Conflicts run={run} />
      <Figures run={run} units={u} />
      <div class="teamside">
        <Gangline dogs={run.dogs} units={u} />
        <Around run={run} chill={data.windChill} units={u} />
      </div>
      <section class="section stack" aria-labelledby="dogs">
        <h2 id="dogs">Dogs</h2>
        {run.dogs.length > 0 ? (
          <DogsTable run={run} units={u} />
        ) : (
          <p>No accepted entry tells who was in the team. Say the team in a note, or add an entry in Review.</p>
        )}
      </section>
      <section class="section stack" aria-labelledby="notes">
        <h2 id="notes">Notes</h2>
        <RunNotes {...{ run, notes }} units={u} changed={goTo} />
      </section>
      <section class="section stack no-print" aria-labelledby="mend">
        <h2 id="mend">Put right</h2>
        <CorrectDistance key={run.metres} run={run} units={u} changed={reload} />
        {before && (
          <div class="stack">
            <p>
              <JoinBefore run={run} before={before} joined={(to) => goTo('The two runs are one now.', to)} />
            </p>
          </div>
        )}
      </section>
    </div>
  );
}

/** Notices that stood on the run's day, and what was open in its dogs when they went out: as it was the evening before. */
function WasOpen({ run }: { run: RunRecord }) {
  const { data, trouble, reload } = useFetched(async () => {
    const [day, before] = await Promise.all([
      getWatch({ on: run.day, state: 'open' }),
      getWatch({ on: shiftDay(run.day, -1), state: 'open' }),
    ]);
    return { day, before };
  }, [run.day]);
  if (trouble) return <Wrong error={trouble} again={() => void reload()} />;
  if (!data) return null;
  const inTeam = new Set(run.dogs.map((dog) => dog.dog));
  const ofTeam = <T extends { dog: string }>(all: readonly T[]) => all.filter(({ dog }) => inTeam.has(dog));
  return (
    <>
      <StandingCautions cautions={ofTeam(standingOf(data.day.cautions))} />
      <OpenList episodes={ofTeam(data.before.episodes)} on={run.day} title="Open when it went out" id="wasopen" />
    </>
  );
}

function Conflicts({ run }: { run: RunRecord }) {
  if (run.conflicts.length === 0) return null;
  return (
    <section class="told stack conflicts" aria-label="What does not fit together">
      <p>{counted(run.conflicts.length, 'thing does not fit', 'things do not fit')} together in these notes</p>
      <ul class="sayings">
        {run.conflicts.map((conflict) => (
          <li key={conflict.says}>
            {conflict.says}{' '}
            {conflict.notes.map((note, i) => (
              <a key={note} class="small" href={`/review/${note}`}>
                {i === 0 ? 'the note' : 'the other'}{' '}
              </a>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Figures({ run, units: u }: { run: RunRecord; units: Units }) {
  const { metres, minutes } = run;
  return (
    <dl class="bigfigures">
      <div>
        <dt>Distance</dt>
        <dd class="figure">
          {metres === undefined ? '–' : distanceFigure(metres, u)}{' '}
          <small>{metres !== undefined && distanceUnit(u)}</small>
        </dd>
        <dd class="small hush">{distanceFrom(run, u)}</dd>
      </div>
      <div>
        <dt>Time</dt>
        <dd class="figure">{minutes === undefined ? '–' : minutesWords(minutes)}</dd>
        <dd class="small hush">
          {run.startedAt || run.finishedAt
            ? [run.startedAt && `left ${clockOf(run.startedAt)}`, run.finishedAt && `back ${clockOf(run.finishedAt)}`]
                .filter(Boolean)
                .join(', ')
            : minutes === undefined && 'not told'}
        </dd>
      </div>
      <div>
        <dt>Dogs</dt>
        <dd class="figure">{run.dogs.length || '–'}</dd>
        <dd class="small hush">
          {run.dogs.some((dog) => dog.left) &&
            `${run.dogs.filter((dog) => dog.left).length} did not finish in the team`}
        </dd>
      </div>
      {metres !== undefined && minutes !== undefined && minutes > 0 && (
        <div>
          <dt>Average</dt>
          <dd class="figure">{speedWords(metres, minutes, u)}</dd>
          <dd class="small hush">breaks counted in</dd>
        </div>
      )}
    </dl>
  );
}

type Chill = Awaited<ReturnType<typeof getRun>>['windChill'];

/** Stops, trail, weather and gear: what was around the team. */
function Around({ run, chill, units: u }: { run: RunRecord; chill: Chill; units: Units }) {
  const stops = run.stops.map((stop) =>
    [
      stop.atMetres !== undefined && `at ${distanceWords(stop.atMetres, u)}`,
      stop.at && clockOf(stop.at.includes('T') ? stop.at : `${run.day}T${stop.at}`),
      stop.minutes !== undefined && `for ${minutesWords(stop.minutes)}`,
    ]
      .filter(Boolean)
      .join(', '),
  );
  const lines: [string, string[]][] = [
    ['Temperature', run.celsius.map((celsius) => temperatureWords(celsius, u))],
    ['Wind', run.windMetresPerSecond.map((wind) => windWords(wind, u))],
    ['Weather', [...new Set(run.weather.map(({ entry }) => said(entry).what))]],
    ['Trail', [...new Set(run.surfaces.map(({ entry }) => said(entry).what.replace(/trail /, '')))]],
    ['Stops', stops],
    ['Gear', run.gear.map(({ entry }) => [entry.dogs.join(', '), said(entry).what].filter(Boolean).join(' · '))],
  ];
  return (
    <dl class="ledger">
      {lines.map(([name, values]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            {values.length === 0 ? (
              <span class="hush">not told</span>
            ) : (
              values.map((value, i) => (
                <span key={i} class="line">
                  {value || 'not told where'}
                </span>
              ))
            )}
          </dd>
        </div>
      ))}
      {chill && <WindChill chill={chill} units={u} />}
    </dl>
  );
}

/** How cold it felt on bare skin at the coldest and windiest that was told, and when skin can freeze. */
function WindChill({ chill, units: u }: { chill: NonNullable<Chill>; units: Units }) {
  // Its first sentence says how soon; the rest what to do.
  const first = (chill.frostbite?.indexOf('. ') ?? -1) + 1;
  return (
    <div>
      <dt>Wind chill</dt>
      <dd>
        <span class="line">
          {temperatureWords(chill.chill, u)}, from {temperatureWords(chill.celsius, u)} and{' '}
          {windWords(chill.metresPerSecond, u)}, the coldest and the windiest told
        </span>
        {chill.frostbite && (
          <span class="line frostbite">
            <strong>{chill.frostbite.slice(0, first)}</strong>
            {chill.frostbite.slice(first)}
          </span>
        )}
        <span class="line small hush">{chill.about} (US National Weather Service and Environment Canada, 2001)</span>
      </dd>
    </div>
  );
}
