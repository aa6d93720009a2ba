/** Per dog: places, distance, food and water, findings, care, booties. What was said, in the words of words.ts. */
import type { Entry } from '../../grammar/entry.ts';
import type { RunDog, RunRecord } from '../../server/records/types.ts';
import { DogLink } from '../parts/DogLink.tsx';
import { clockOf } from '../times.ts';
import { distanceFigure, distanceUnit, type Units } from '../units.ts';
import { minutesWords, said } from '../words.ts';
import { StretchBar } from './Stretches.tsx';

type SaidOf = { id: string; note: string; at: string; entry: Entry };

/** Sayings in the order of time, the same words once, with each time they were said. */
function grouped(sayings: readonly SaidOf[]): [string, SaidOf[]][] {
  const by = new Map<string, SaidOf[]>();
  for (const one of [...sayings].sort((a, b) => Date.parse(a.at) - Date.parse(b.at))) {
    const { what } = said(one.entry);
    by.set(what, [...(by.get(what) ?? []), one]);
  }
  return [...by];
}

/** What was said of one dog; each time leads to the note it was said in. */
function Sayings({ said: sayings, none }: { said: readonly SaidOf[]; none?: string }) {
  if (sayings.length === 0) return <span class="hush">{none ?? '–'}</span>;
  return (
    <ul class="sayings">
      {grouped(sayings).map(([words, times]) => (
        <li key={words}>
          {words}{' '}
          {times.map((one) => (
            <a key={one.id} class="time" href={`#note-${one.note}`}>
              {clockOf(one.at)}
            </a>
          ))}
        </li>
      ))}
    </ul>
  );
}

export function DogsTable({ run, units }: { run: RunRecord; units: Units }) {
  const unit = distanceUnit(units);
  return (
    <table class="table dogs">
      <caption class="unseen">What each dog did in this run</caption>
      <thead>
        <tr>
          <th scope="col">Dog</th>
          <th scope="col" class="right">
            {unit}
          </th>
          <th scope="col">Place</th>
          <th scope="col">Ate and drank</th>
          <th scope="col">Found, and done about it</th>
          <th scope="col">Booties</th>
          <th scope="col">How it went</th>
        </tr>
      </thead>
      <tbody>
        {run.dogs.map((dog) => (
          <DogRow key={dog.dog} {...{ dog, run, units }} />
        ))}
      </tbody>
    </table>
  );
}

function DogRow({ dog, run, units }: { dog: RunDog; run: RunRecord; units: Units }) {
  const about = dog.stretches.some((stretch) => stretch.estimated);
  return (
    <tr>
      <th scope="row">
        <DogLink name={dog.dog} />
      </th>
      <td data-label="Distance" class="right figure big">
        {dog.metres === undefined ? (
          <span class="hush">not known</span>
        ) : (
          <>
            {about && <span class="small">about </span>}
            {distanceFigure(dog.metres, units)}
            <span class="unit-small"> {distanceUnit(units)}</span>
          </>
        )}
        {dog.minutes !== undefined && <span class="under hush">{minutesWords(dog.minutes)}</span>}
      </td>
      <td data-label="Place">
        <StretchBar dog={dog} metres={run.metres} units={units} />
      </td>
      <td data-label="Ate and drank">
        <Sayings said={dog.intake} />
      </td>
      <td data-label="Found, done">
        <Sayings said={[...dog.findings, ...dog.care]} none="nothing told" />
      </td>
      <td data-label="Booties">
        <Sayings said={dog.booties} />
      </td>
      <td data-label="How it went">
        <Sayings said={[...dog.attitude, ...dog.measures]} />
      </td>
    </tr>
  );
}
