/** What was found: the entries as a time line with what lies between them, and the notes with the words marked. */
import { ordinal, ranWords, stateWords } from '../dog/words.ts';
import { counted } from '../labels.ts';
import { DogLink } from '../parts/DogLink.tsx';
import { MarkedText } from '../parts/MarkedText.tsx';
import { clockOf, dayWords } from '../times.ts';
import { distanceWords, type Units } from '../units.ts';
import { signsWords } from '../watch/words.ts';
import { said } from '../words.ts';
import { addressOf } from './address.ts';
import type { Answer } from './Parts.tsx';

type Hit = Answer['hits'][number];
type Note = Answer['notes'][number];

const runPath = (run: string) => `/runs/${encodeURIComponent(run)}`;

/** Newest first; under each entry what its dog did since the one before. */
export function TimeLine({ answer, units }: { answer: Answer; units: Units }) {
  const many = new Set(answer.hits.map((hit) => hit.season)).size > 1;
  return (
    <ol class="timeline" aria-label="Found, newest first">
      {answer.hits.map((hit) => (
        <li key={hit.id}>
          <HitLine hit={hit} year={many || Boolean(answer.query.from)} units={units} />
          {hit.since.map((since) => (
            <Between
              key={since.dog}
              since={since}
              named={hit.since.length > 1 || answer.dogs.length > 1}
              units={units}
            />
          ))}
        </li>
      ))}
    </ol>
  );
}

function HitLine({ hit, year, units }: { hit: Hit; year: boolean; units: Units }) {
  const { who, what } = said(hit.entry);
  const [dog] = hit.entry.dogs.length === 1 ? hit.entry.dogs : [];
  return (
    <div class="hit">
      <p class="day">
        {dayWords(hit.day, year)} <span class="hush small">{clockOf(hit.at)}</span>
      </p>
      <p>
        {who && <strong>{dog !== undefined && dog !== '*' ? <DogLink name={dog} /> : who}</strong>}
        {who && ' · '}
        {what}
        {hit.unreviewed && <em> (not reviewed yet, counts for nothing)</em>}
      </p>
      {hit.episodes.map((episode) => (
        <p key={episode.id} class="time">
          {numberWords(episode, hit.episodes.length > 1, units)}
        </p>
      ))}
      <p class="small links">
        <a href={`/review/${hit.note}`}>Note of {dayWords(hit.day)}</a>
        {hit.run && <a href={runPath(hit.run)}>Its run</a>}
        {dog !== undefined && dog !== '*' && <a href={addressOf({ dogs: [dog] })}>All of {dog}</a>}
      </p>
    </div>
  );
}

/** "2nd time this season, left wrist: 101 mi and 6 runs since the 1st, 48 days"; what goes on with it only says which. */
export function numberWords(episode: Hit['episodes'][number], named: boolean, units: Units): string {
  const { number, site, dog, first, sinceBefore } = episode;
  const place = named ? `${dog}, ${site}` : site;
  if (number === undefined) return `${place}: only told as possible, not counted`;
  const time = `${ordinal(number)} time this season, ${place}`;
  if (!first) return `still the ${time}`;
  if (!sinceBefore) return time;
  const before = number > 1 ? ordinal(number - 1) : 'last';
  return `${time}: ${ranWords(sinceBefore, units)} since the ${before}, ${counted(sinceBefore.days, 'day')}`;
}

/** Places where it was found more than once: every time of the season, also those that these words do not name. */
export function CameBack({ answer, units }: { answer: Answer; units: Units }) {
  if (answer.cameBack.length === 0) return null;
  const many = new Set(answer.cameBack.map((place) => place.season)).size > 1;
  return (
    <section class="stack" aria-labelledby="cameback">
      <h2 id="cameback">What came back</h2>
      <ul class="cameback">
        {answer.cameBack.map(({ dog, site, season, episodes }) => (
          <li key={`${season} ${dog} ${site.key}`}>
            <h3>
              <DogLink name={dog} /> · {site.label}, {counted(episodes.length, 'time')} {many && `in ${season}`}
            </h3>
            <ol>
              {episodes.map((one) => (
                <li key={one.id}>
                  <strong>{dayWords(one.from)}</strong> · {signsWords(one)} · {stateWords(one)}
                  {one.sinceBefore && (
                    <span class="since">
                      {ranWords(one.sinceBefore, units)} since the time before, {counted(one.sinceBefore.days, 'day')}
                    </span>
                  )}
                </li>
              ))}
            </ol>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** "5 days, 32 mi in 2 runs since the one before". */
export function betweenWords(since: Hit['since'][number], units: Units): string {
  const days = counted(since.days, 'day');
  if (since.runs === 0) return `${days} and no run since the one before`;
  const least = since.runsWithoutDistance > 0 ? 'at least ' : '';
  return `${days}, ${least}${distanceWords(since.metres, units)} in ${counted(since.runs, 'run')} since the one before`;
}

function Between({ since, named, units }: { since: Hit['since'][number]; named: boolean; units: Units }) {
  return (
    <p class="between">
      <span aria-hidden="true">↕ </span>
      {named && `${since.dog}: `}
      {betweenWords(since, units)}
    </p>
  );
}

/** The notes, newest first. */
export function FoundNotes({ notes }: { notes: readonly Note[] }) {
  return (
    <ol class="foundnotes">
      {notes.map((note) => (
        <li key={note.id} class="stack">
          <p class="noteline">
            <a
              href={`/review/${note.id}`}
              aria-label={`Open the note of ${dayWords(note.day, true)}, ${clockOf(note.at)}`}
            >
              {dayWords(note.day, true)}, {clockOf(note.at)}
            </a>
            {note.by && <span>{note.by}</span>}
            {note.aside && <span>put aside</span>}
            {note.run && (
              <a href={runPath(note.run)} aria-label={`The run of ${dayWords(note.day, true)}`}>
                run
              </a>
            )}
          </p>
          <p class="foundtext">
            <MarkedText text={note.text} marks={note.marks} />
          </p>
        </li>
      ))}
    </ol>
  );
}
