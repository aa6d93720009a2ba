/** One run: the team on its gangline, distance, time, stops, trail and weather, and what each dog did. */

import { useState } from 'preact/hooks';
import { useLocation, useRoute } from 'preact-iso';
import type { RunRecord } from '../../server/records/types.ts';
import { getRun } from '../api.ts';
import { counted } from '../labels.ts';
import { Head, Notice, Waiting, Wrong } from '../parts/Told.tsx';
import { DogsTable } from '../runs/DogsTable.tsx';
import { Gangline } from '../runs/Gangline.tsx';
import { CorrectDistance, distanceFrom, JoinBefore } from '../runs/Mend.tsx';
import { RunNotes } from '../runs/RunNotes.tsx';
import { units } from '../status.ts';
import { clockOf, dayWords } from '../times.ts';
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
      <Conflicts run={run} />
      <Figures run={run} units={u} />
      <div class="teamside">
        <Gangline dogs={run.dogs} units={u} />
        <Around run={run} units={u} />
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

/** Stops, trail, weather and gear: what was around the team. */
function Around({ run, units: u }: { run: RunRecord; units: Units }) {
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
    </dl>
  );
}
