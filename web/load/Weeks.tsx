/**
 * Each dog's last six weeks at a glance: a row a dog, a bar a day on one scale, findings under them. The figures of a day
 * come by hovering and by the arrow keys; the same stands in a table behind.
 */
import { useState } from 'preact/hooks';
import type { Episode } from '../api.ts';
import { units } from '../status.ts';
import { dayWords, shiftDay } from '../times.ts';
import { distanceFigure, distanceUnit, distanceWords } from '../units.ts';
import { openByDog, whatWords } from '../watch/words.ts';
import type { DogLoad } from './columns.tsx';
import { DogName } from './DogName.tsx';
import { lastDay, workWords } from './days.ts';
import { Row } from './WeeksRow.tsx';
import { WeeksTable } from './WeeksTable.tsx';

interface Props {
  dogs: readonly DogLoad[];
  episodes: readonly Episode[];
  on: string;
}
interface Cell {
  dog: number;
  day: number;
}

export function Weeks({ dogs, episodes, on }: Props) {
  const [cell, setCell] = useState<Cell>();
  const [table, setTable] = useState(false);
  const open = openByDog(episodes);
  const of = (dog: DogLoad) => episodes.filter((episode) => episode.dog === dog.dog);
  const rows = [...dogs].sort((a, b) => (open.get(b.dog)?.length ?? 0) - (open.get(a.dog)?.length ?? 0));
  const from = rows[0]?.days.from ?? on;
  const count = rows[0]?.days.metres.length ?? 0;
  const most = Math.max(1, ...rows.flatMap((dog) => dog.days.metres));
  const u = units.value;
  const press = (event: KeyboardEvent) => {
    const step = STEPS[event.key];
    if (!step) return;
    event.preventDefault();
    setCell((was) => moved(was, step, rows.length, count));
  };
  const here = cell && rows[cell.dog];
  return (
    <section class="section stack" aria-labelledby="weeks">
      <h2 id="weeks">The last six weeks</h2>
      <p class="small hush no-print" id="weekskeys">
        One bar a day, the highest {distanceWords(most, u)}. Hover over a day, touch it, or move with the arrow keys
        once the picture has the focus.
      </p>
      <p class="only-print small">One bar a day, the highest {distanceWords(most, u)}.</p>
      <p class="readout" role="status">
        {here ? cellWords(here, of(here), cell.day) : <span class="hush">No day pointed at.</span>}
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: a picture that is gone through with the arrow keys has no element of its own. */}
      <div
        class="weeks"
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys go through its days.
        tabIndex={0}
        aria-label={`Distance of each dog on each day from ${dayWords(from)} to ${dayWords(on)}`}
        aria-describedby="weekskeys"
        onKeyDown={press}
        onPointerLeave={() => setCell(undefined)}
      >
        <Axis {...{ from, count }} />
        {rows.map((dog, i) => (
          <div key={dog.id} class="weekrow">
            <DogName dog={dog} />
            <Row
              dog={dog}
              episodes={of(dog)}
              most={most}
              day={cell?.dog === i ? cell.day : undefined}
              point={(day) => setCell({ dog: i, day })}
            />
            <span class="figure right weeksum">{distanceFigure(dog.metres7, u)}</span>
          </div>
        ))}
      </div>
      <Legend unit={distanceUnit(u)} />
      <details class="adding" onToggle={(event) => setTable(event.currentTarget.open)}>
        <summary>The same as a table</summary>
        {table && <WeeksTable {...{ rows, episodes, from, count }} />}
      </details>
    </section>
  );
}

const STEPS: Record<string, { dog?: number; day?: number; to?: 'first' | 'last' }> = {
  ArrowLeft: { day: -1 },
  ArrowRight: { day: 1 },
  ArrowUp: { dog: -1 },
  ArrowDown: { dog: 1 },
  Home: { to: 'first' },
  End: { to: 'last' },
};

/** The cell one step on; the first press comes to the first dog's last day. */
function moved(
  was: Cell | undefined,
  step: { dog?: number; day?: number; to?: 'first' | 'last' },
  dogs: number,
  days: number,
): Cell {
  if (!was) return { dog: 0, day: days - 1 };
  const within = (n: number, many: number) => Math.max(0, Math.min(many - 1, n));
  if (step.to) return { ...was, day: step.to === 'first' ? 0 : days - 1 };
  return { dog: within(was.dog + (step.dog ?? 0), dogs), day: within(was.day + (step.day ?? 0), days) };
}

/** "Juniper, Thu 14 Jan: 20 mi in 2 runs; left wrist sore, open since Tue 12 Jan". */
function cellWords(dog: DogLoad, episodes: readonly Episode[], index: number): string {
  const day = shiftDay(dog.days.from, index);
  const head = `${dog.dog}, ${dayWords(day)}: ${workWords(dog, index)}`;
  const found = episodes
    .filter((episode) => episode.from <= day && day <= lastDay(episode, dog.on))
    .map((episode) => {
      const told = episode.seen.some((mention) => mention.day === day) ? 'told that day' : '';
      const state = episode.state === 'open' ? `open since ${dayWords(episode.from)}` : '';
      const { name, signs } = whatWords(episode);
      return [[name, signs].filter(Boolean).join(' '), told, state].filter(Boolean).join(', ');
    });
  return [head, ...found].join('; ');
}

/** A date each week, counted back from the last day; on a phone every second one. */
function Axis({ from, count }: { from: string; count: number }) {
  const weeks = Array.from({ length: Math.ceil(count / 7) }, (_, i) => count - 1 - i * 7).reverse();
  return (
    <div class="weekrow axis small hush" aria-hidden="true">
      <span />
      <span class="dates">
        {weeks.map((at, i) => (
          <span
            key={at}
            class={(weeks.length - 1 - i) % 2 === 1 ? 'second' : ''}
            style={{ left: `${((at + 1) / count) * 100}%` }}
          >
            {dayWords(shiftDay(from, at)).replace(/^\w+ /, '')}
          </span>
        ))}
      </span>
      <span class="right weeksum">7 days</span>
    </div>
  );
}

function Legend({ unit }: { unit: string }) {
  return (
    <ul class="weekslegend small" aria-label="What the marks mean">
      <li>
        <svg width="14" height="22" aria-hidden="true">
          <rect class="bar" x="3" y="4" width="8" height="18" />
        </svg>
        {unit} that day
      </li>
      <li>
        <svg width="14" height="22" aria-hidden="true">
          <rect class="bar unknown" x="3" y="12" width="8" height="10" />
        </svg>
        ran, distance not known in full
      </li>
      <li>
        <svg width="34" height="22" aria-hidden="true">
          <line class="span open" x1="2" x2="34" y1="11" y2="11" />
          <circle class="seen" cx="8" cy="11" r="4" />
        </svg>
        finding told, and open till now
      </li>
      <li>
        <svg width="34" height="22" aria-hidden="true">
          <line class="span" x1="4" x2="30" y1="11" y2="11" />
          <circle class="seen maybe" cx="8" cy="11" r="3.5" />
          <circle class="seen" cx="28" cy="11" r="4" />
        </svg>
        told as maybe, then told; over or not seen since
      </li>
      <li>
        <svg width="34" height="22" aria-hidden="true">
          <line class="norecord" x1="0" x2="34" y1="16" y2="16" />
        </svg>
        no record yet
      </li>
    </ul>
  );
}
