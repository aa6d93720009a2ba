/**
 * Who runs tomorrow: open findings, rest and load of each dog side by side, dogs with something open on top. An order of
 * figures; what to make of them is the musher's to say.
 */
import type { Caution, Episode } from '../api.ts';
import { type Column, SortTable } from '../parts/SortTable.tsx';
import { units } from '../status.ts';
import { dayWords, shiftDay } from '../times.ts';
import { distanceFigure } from '../units.ts';
import { openByDog, shortWords, standingOf, timesWords, whatWords } from '../watch/words.ts';
import { type DogLoad, ratioCell } from './columns.tsx';
import { DogName } from './DogName.tsx';

interface Props {
  dogs: readonly DogLoad[];
  episodes: readonly Episode[];
  cautions: readonly Caution[];
  on: string;
}

export function Tomorrow({ dogs, episodes, cautions, on }: Props) {
  const open = openByDog(episodes);
  const called = new Map<string, number>();
  for (const { dog, told } of standingOf(cautions))
    called.set(dog, Math.max(called.get(dog) ?? 0, told === 'now' ? 200 : 100));
  const openIn = (dog: DogLoad) => open.get(dog.dog) ?? [];
  /** A caution goes before any number of open findings, a sure one before a possible one. */
  const weight = (dog: DogLoad) => (called.get(dog.dog) ?? 0) + openIn(dog).length;
  const columns: Column<DogLoad>[] = [
    { key: 'dog', name: 'Dog', cell: (dog) => <DogName dog={dog} />, by: (dog) => dog.dog },
    {
      key: 'open',
      name: 'Open',
      cell: (dog) => openIn(dog).length || <span class="hush">–</span>,
      by: weight,
      numeric: true,
      largestFirst: true,
    },
    {
      key: 'rest',
      name: 'Days since run',
      cell: (dog) => dog.daysSinceLastRun ?? <span class="hush small">no run</span>,
      by: (dog) => dog.daysSinceLastRun,
      numeric: true,
      largestFirst: true,
    },
    {
      key: 'row',
      name: 'Runs in a row',
      cell: (dog) => dog.runsInARow || <span class="hush">–</span>,
      by: (dog) => dog.runsInARow,
      numeric: true,
    },
    {
      key: 'week',
      name: '7 days',
      cell: (dog) => <span class="figure">{distanceFigure(dog.metres7, units.value)}</span>,
      by: (dog) => dog.metres7,
      numeric: true,
    },
    {
      key: 'change',
      name: 'Change of load',
      cell: (dog) => ratioCell(dog, 'coupled'),
      by: (dog) => dog.coupled,
      numeric: true,
      wideOnly: true,
    },
  ];
  // Longest rest first where two dogs have as much open.
  const rows = dogs
    .filter((dog) => !dog.retired)
    .sort((a, b) => (b.daysSinceLastRun ?? 9999) - (a.daysSinceLastRun ?? 9999));
  return (
    <section class="section stack" aria-labelledby="tomorrow">
      <h2 id="tomorrow">Who runs on {dayWords(shiftDay(on, 1))}</h2>
      <p class="small hush">
        Dogs with an open finding first, then those that have rested longest; press a head for another order. Figures
        from reviewed notes, no advice.
      </p>
      <SortTable
        caption={`Open findings, rest and load of each dog on ${dayWords(on, true)}`}
        columns={columns}
        rows={rows}
        keyOf={(dog) => dog.id}
        start="open"
        below={(dog) =>
          openIn(dog).map((episode) => (
            <span key={episode.id} class="openword">
              open: {shortWords(episode, on)}
              {whatWords(episode).signs && ` · ${whatWords(episode).signs}`}
              {timesWords(episode) && ` · ${timesWords(episode)}`}
            </span>
          ))
        }
      />
    </section>
  );
}
