/** What was found: the entries as a time line with what lies between them, and the notes with the words marked. */
import { Fragment } from 'preact';
import { counted } from '../labels.ts';
import { clockOf, dayWords } from '../times.ts';
import { distanceWords, type Units } from '../units.ts';
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
          <HitLine hit={hit} year={many || Boolean(answer.query.from)} />
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

function HitLine({ hit, year }: { hit: Hit; year: boolean }) {
  const { who, what } = said(hit.entry);
  return (
    <div class="hit">
      <p class="day">
        {dayWords(hit.day, year)} <span class="hush small">{clockOf(hit.at)}</span>
      </p>
      <p>
        {who && <strong>{who}</strong>}
        {who && ' · '}
        {what}
        {hit.unreviewed && <em> (not reviewed yet, counts for nothing)</em>}
      </p>
      <p class="small links">
        <a href={`/review/${hit.note}`}>Note of {dayWords(hit.day)}</a>
        {hit.run && <a href={runPath(hit.run)}>Its run</a>}
        {hit.entry.dogs.length === 1 && hit.entry.dogs[0] !== '*' && (
          <a href={addressOf({ dogs: hit.entry.dogs })}>All of {hit.entry.dogs[0]}</a>
        )}
      </p>
    </div>
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
            <Marked text={note.text} marks={note.marks} />
          </p>
        </li>
      ))}
    </ol>
  );
}

function Marked({ text, marks }: { text: string; marks: readonly [number, number][] }) {
  let at = 0;
  const pieces = marks.map(([a, b]) => {
    const before = text.slice(at, a);
    at = b;
    return (
      <Fragment key={a}>
        {before}
        <mark>{text.slice(a, b)}</mark>
      </Fragment>
    );
  });
  return (
    <>
      {pieces}
      {text.slice(at)}
    </>
  );
}
