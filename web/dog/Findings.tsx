/** What was found, episode by episode: open first; which time it is, what lies between, what the dog did before. */
import { useState } from 'preact/hooks';
import type { DogSeason, SiteCount } from '../../server/dog/index.ts';
import { counted } from '../labels.ts';
import { dayWords } from '../times.ts';
import { distanceWords, type Units } from '../units.ts';
import { signsWords } from '../watch/words.ts';
import { Behind } from './Behind.tsx';
import { beforeRows, type Episode, stateWords, timeWords } from './words.ts';

interface Props {
  story: DogSeason;
  units: Units;
  about: { episodes: string; onset: string };
}
/** Places shown at first; the others stand behind a button. */
const FIRST = 5;

export function Findings({ story, units, about }: Props) {
  const { sites, episodes, dog } = story;
  const [all, setAll] = useState(false);
  // Open ones first, then what came back most often.
  const order = [...sites.filter((one) => one.open), ...sites.filter((one) => !one.open)];
  const more = order.length - FIRST;
  return (
    <section class="section stack" aria-labelledby="findings">
      <h2 id="findings">Findings</h2>
      {episodes.length === 0 ? (
        <p class="hush">Nothing was found on {dog.name} this season that a reviewed note tells of.</p>
      ) : (
        <>
          <ol class="sites">
            {order.slice(0, all ? undefined : FIRST).map((one) => (
              <li key={one.site.key}>
                <OneSite
                  count={one}
                  episodes={episodes.filter(({ site }) => site.key === one.site.key)}
                  units={units}
                />
              </li>
            ))}
          </ol>
          {more > 0 && !all && (
            <p class="no-print">
              <button type="button" class="button" onClick={() => setAll(true)}>
                {`Show ${counted(more, 'other place')}`}
              </button>
            </p>
          )}
          <p class="small hush">{about.episodes}</p>
          <p class="small hush">{about.onset}</p>
        </>
      )}
    </section>
  );
}

interface SiteProps {
  count: SiteCount;
  episodes: readonly Episode[];
  units: Units;
}
function OneSite({ count: { site, episodes: times, doubtful, days, open }, episodes, units }: SiteProps) {
  const told = [times > 0 && counted(times, 'time'), doubtful > 0 && `${doubtful} maybe`].filter(Boolean).join(', ');
  const newestFirst = [...episodes].sort((a, b) => (a.from < b.from ? 1 : -1));
  return (
    <>
      <h3>
        {site.label}{' '}
        <span>
          {told}, on {counted(days.length, 'day')}
          {open && ', open now'}
        </span>
      </h3>
      <ol class="episodes" reversed>
        {newestFirst.map((one) => (
          <li key={one.id} class={one.state}>
            <OneEpisode episode={one} units={units} />
          </li>
        ))}
      </ol>
    </>
  );
}

function OneEpisode({ episode, units }: { episode: Episode; units: Units }) {
  const { from, onset, state, lastSeen } = episode;
  const when = from === lastSeen ? dayWords(from) : `${dayWords(from)} to ${dayWords(lastSeen)}`;
  return (
    <>
      <p class="again">{timeWords(episode, units)}</p>
      <p>
        {when} · {signsWords(episode)} · <strong>{state === 'open' ? 'open' : stateWords(episode)}</strong>
      </p>
      <p class="small">
        In the 7 days before: {distanceWords(onset.metres7, units)}
        {onset.usual.metres7 !== undefined && `; its usual is ${distanceWords(onset.usual.metres7, units)}`}.
      </p>
      <div class="acts small">
        <span class="toldin">
          Told in{' '}
          {toldIn(episode).map(({ note, day, ended }) => (
            <a key={note} href={`/review/${note}`}>
              {dayWords(day)}
              {ended && ' (gone)'}
            </a>
          ))}
        </span>
        <Behind name="What it did before, beside its usual" of={`${episode.site.label}, ${dayWords(from, true)}`}>
          {() => <Before episode={episode} units={units} />}
        </Behind>
      </div>
    </>
  );
}

/** The notes of an episode in the order of time, each once; those that ended a sign say so. */
function toldIn({ seen, evidence }: Episode): { note: string; day: string; ended: boolean }[] {
  const notes = new Map<string, { note: string; at: string; day: string; ended: boolean }>();
  for (const { note, at, day } of seen) notes.set(note, { note, at, day, ended: false });
  for (const { note, at, day, ended } of evidence)
    if (ended.length > 0) notes.set(note, { note, at, day, ended: !notes.has(note) });
  return [...notes.values()].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

function Before({ episode, units }: { episode: Episode; units: Units }) {
  return (
    <table class="table figures">
      <caption class="unseen">What it did before {dayWords(episode.from)}, beside its usual of the season</caption>
      <thead>
        <tr>
          <th scope="col">
            <span class="unseen">Of what</span>
          </th>
          <th scope="col">7 days before</th>
          <th scope="col">That day</th>
          <th scope="col">Its usual</th>
        </tr>
      </thead>
      <tbody>
        {beforeRows(episode.onset, units).map(({ what, week, day, usual }) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{week || '–'}</td>
            <td>{day || '–'}</td>
            <td>{usual || '–'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
