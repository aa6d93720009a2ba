/** The season as a picture: each day's distance, the two lines of load, and the findings; any day by pointer or by key. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { DogSeason } from '../../server/dog/index.ts';
import { counted } from '../labels.ts';
import { dayWords } from '../times.ts';
import { distanceFigure, distanceUnit, distanceUnitWord, type Units } from '../units.ts';
import { minutesWords } from '../words.ts';
import { Behind } from './Behind.tsx';
import { Drawn, type Pictures } from './Drawn.tsx';
import { dayOfStep, dayReadout, stepOf } from './days.ts';
import { percent, sharesWords } from './words.ts';

interface Props {
  story: DogSeason;
  span: { from: string; to: string };
  units: Units;
}

export function SeasonPicture({ story, span, units }: Props) {
  const [day, setDay] = useState(span.to);
  const by = useRef<Pictures>();
  const frame = useRef<HTMLDivElement>(null);
  const line = useRef<HTMLDivElement>(null);
  const lanes = story.sites
    .map(({ site }) => ({ label: site.label, episodes: story.episodes.filter((one) => one.site.key === site.key) }))
    .filter(({ episodes }) => episodes.length > 0);
  const keep = (pictures: Pictures, picture: Element) => {
    by.current = pictures;
    place();
    return picture;
  };
  const place = () => {
    const wide = frame.current?.clientWidth ?? 0;
    if (line.current && by.current && wide > 0) line.current.style.left = `${by.current.xOf(day, span, wide)}px`;
  };
  useEffect(place, [day]);
  const point = (event: PointerEvent) => {
    const box = frame.current?.getBoundingClientRect();
    if (box && by.current) setDay(by.current.dayAt(event.clientX - box.left, span, box.width));
  };
  const runs = story.runs.filter((run) => run.day === day);
  return (
    <section class="section stack" aria-labelledby="season">
      <h2 id="season">Season</h2>
      <ul class="legend small" aria-label="What the picture shows">
        <li>
          <i class="sign bar" aria-hidden="true" /> {distanceUnitWord(units)} a day
        </li>
        <li>
          <i class="sign whole" aria-hidden="true" /> sum of 7 days
        </li>
        <li>
          <i class="sign dashed" aria-hidden="true" /> mean week of 28 days
        </li>
        <li>
          <i class="sign" aria-hidden="true">
            ▾
          </i>{' '}
          finding begins; 2, 3 … comes back
        </li>
      </ul>
      {/* The day is chosen by key with the slider below; the pointer only is a shorter way to it. */}
      <div class="daypicture" ref={frame} onPointerMove={point} onPointerDown={point}>
        <Drawn
          label={`${story.dog.name}, season ${story.season}: ${distanceUnitWord(units)} a day with the sum of 7 days and the mean week of 28; the table below has the figures`}
          draw={(pictures, width) =>
            keep(pictures, pictures.seasonPicture(story.days, story.episodes, span, units, width))
          }
          of={[story, units]}
        />
        {lanes.length > 0 && (
          <Drawn
            label={`Findings on the same days: ${lanes.map(({ label, episodes }) => `${label}, ${counted(episodes.length, 'time')}`).join('; ')}`}
            draw={(pictures, width) => pictures.lanesPicture(lanes, span, width)}
            of={[story]}
          />
        )}
        <div class="dayline" ref={line} aria-hidden="true" />
      </div>
      <div class="dayslider no-print">
        <label class="unseen" for="oneday">
          Day of the picture
        </label>
        <input
          id="oneday"
          type="range"
          min={0}
          max={stepOf(span.to, span.from)}
          step={1}
          value={stepOf(day, span.from)}
          aria-valuetext={dayWords(day, true)}
          onInput={(event) => setDay(dayOfStep(Number(event.currentTarget.value), span.from))}
        />
        <output for="oneday" aria-live="polite">
          {dayReadout(story, day, units)}
        </output>
        <p class="small dayruns">
          {runs.map((run, i) => (
            <a key={run.id} href={`/runs/${encodeURIComponent(run.id)}`}>
              {runs.length > 1 ? `Run ${i + 1} of this day` : 'The run of this day'}
            </a>
          ))}
          {runs.length === 0 && <span class="hush">Arrow keys go from day to day.</span>}
        </p>
      </div>
      <Behind name="The days as a table">{() => <DaysTable story={story} units={units} />}</Behind>
    </section>
  );
}

function DaysTable({ story, units }: { story: DogSeason; units: Units }) {
  const far = (metres: number) => distanceFigure(metres, units);
  return (
    <table class="table figures">
      <caption class="unseen">Each day, newest first</caption>
      <thead>
        <tr>
          <th scope="col">Day</th>
          <th scope="col" class="right">
            {distanceUnit(units)}
          </th>
          <th scope="col" class="right">
            Time
          </th>
          <th scope="col" class="right">
            7 days
          </th>
          <th scope="col" class="right">
            28-day week
          </th>
        </tr>
      </thead>
      <tbody>
        {story.days.toReversed().map((one) => (
          <tr key={one.day}>
            <th scope="row">{dayWords(one.day)}</th>
            <td class="right">{one.runs === 0 ? <span class="hush">–</span> : far(one.metres)}</td>
            <td class="right">{one.minutes > 0 ? minutesWords(one.minutes) : <span class="hush">–</span>}</td>
            <td class="right">{far(one.sum7)}</td>
            <td class="right">{one.meanWeek28 === undefined ? <span class="hush">–</span> : far(one.meanWeek28)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

type Shares = DogSeason['load']['season'];
const PLACES = ['lead', 'swing', 'team', 'wheel', 'unknown'] as const;

/** Where in the team it ran: a bar a position, the figures beside it; then side, trail, cold and booties in a line each. */
export function Places({ shares, units, about }: { shares: Shares; units: Units; about: string }) {
  const more: [string, string][] = [
    ['Side', sharesWords(shares.bySide)],
    ['Trail', sharesWords(shares.bySurface)],
    ['Booties', sharesWords(shares.byBooties)],
  ];
  return (
    <section class="section stack" aria-labelledby="places">
      <h2 id="places">Places in the team</h2>
      {shares.metres === 0 ? (
        <p class="hush">No distance of this season is known.</p>
      ) : (
        <>
          <table class="table places">
            <caption class="unseen">Distance by position, this season</caption>
            <thead>
              <tr>
                <th scope="col">Position</th>
                <th scope="col" class="right">
                  {distanceUnit(units)}
                </th>
                <th scope="col">Share</th>
              </tr>
            </thead>
            <tbody>
              {PLACES.flatMap((place) => {
                const part = shares.byPosition[place];
                if (!part) return [];
                const whole = Math.round((part.share ?? 0) * 100);
                return [
                  <tr key={place}>
                    <th scope="row">{place === 'unknown' ? 'not told' : place}</th>
                    <td class="right figure">{distanceFigure(part.metres, units)}</td>
                    <td>
                      <span class="sharebar" aria-hidden="true">
                        <span class={`piece ${place}`} style={{ width: `${whole}%` }} />
                      </span>
                      <span class="share">{percent(part.share ?? 0)}</span>
                    </td>
                  </tr>,
                ];
              })}
            </tbody>
          </table>
          <dl class="ledger">
            {more
              .filter(([, words]) => words !== '')
              .map(([name, words]) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{words}</dd>
                </div>
              ))}
          </dl>
          <p class="small hush">{about}</p>
        </>
      )}
    </section>
  );
}
