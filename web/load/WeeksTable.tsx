/** The picture of the last weeks as a table: a row a day, a column a dog. */
import type { Episode } from '../api.ts';
import { units } from '../status.ts';
import { dayWords, shiftDay } from '../times.ts';
import { distanceFigure, distanceUnitWord } from '../units.ts';
import type { DogLoad } from './columns.tsx';
import { lastDay } from './days.ts';

interface Props {
  rows: readonly DogLoad[];
  episodes: readonly Episode[];
  from: string;
  count: number;
}

export function WeeksTable({ rows, episodes, from, count }: Props) {
  const days = Array.from({ length: count }, (_, i) => i).reverse();
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways has to be reached by the keyboard.
    <section class="scrolls" tabIndex={0} aria-label="Distance of each dog on each day, as a table">
      <table class="table plain">
        <caption class="small hush">
          {distanceUnitWord(units.value)}; “+” is at least, “•” a finding told that day, “–” no run, an empty cell no
          record yet
        </caption>
        <thead>
          <tr>
            <th scope="col">Day</th>
            {rows.map((dog) => (
              <th key={dog.id} scope="col" class="right">
                {dog.dog}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {days.map((i) => {
            const day = shiftDay(from, i);
            return (
              <tr key={day}>
                <th scope="row">{dayWords(day)}</th>
                {rows.map((dog) => (
                  <td key={dog.id} class="right">
                    {cell(dog, i, day)}
                    {toldOn(episodes, dog, day) && (
                      <>
                        {' •'}
                        <span class="unseen"> finding told</span>
                      </>
                    )}
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

function cell(dog: DogLoad, index: number, day: string): string {
  if (dog.since === undefined || day < dog.since) return '';
  if ((dog.days.runs[index] ?? 0) === 0) return '–';
  const least = dog.days.unknown.includes(day) ? '+' : '';
  return `${distanceFigure(dog.days.metres[index] ?? 0, units.value)}${least}`;
}

const toldOn = (episodes: readonly Episode[], dog: DogLoad, day: string) =>
  episodes.some(
    (episode) =>
      episode.dog === dog.dog && day <= lastDay(episode, dog.on) && episode.seen.some((mention) => mention.day === day),
  );
