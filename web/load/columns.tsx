/** The columns of the load table: what each figure is, how it is sorted, and what it says in one sentence. */
import type { ComponentChildren } from 'preact';
import type { getLoad } from '../api.ts';
import type { Column } from '../parts/SortTable.tsx';
import { distanceFigure, distanceUnit, type Units } from '../units.ts';

export type LoadAnswer = Awaited<ReturnType<typeof getLoad>>;
export type DogLoad = LoadAnswer['dogs'][number];

/** A column with the sentence that tells what it holds. */
export interface LoadColumn extends Column<DogLoad> {
  means: string;
  /** Shown on a phone until others are chosen. */
  first?: boolean;
}

const none = (why: string) => <span class="hush small">{why}</span>;
const dash = <span class="hush">–</span>;
/** Minutes as "12 h 40"; a dash for none. */
function hoursWords(minutes: number): ComponentChildren {
  if (minutes === 0) return dash;
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** Why a dog has no comparison: too short a record, or nothing run in four weeks. */
export const noComparison = (dog: DogLoad): string =>
  dog.tooShort ? `${dog.daysOfRecord} of 28 days` : 'none run in 28';

/** A ratio, or the reason why there is none. After a long break it is marked: its four weeks start from nothing. */
export function ratioCell(dog: DogLoad, which: 'coupled' | 'ewma'): ComponentChildren {
  const ratio = dog[which];
  if (ratio === undefined) return none(noComparison(dog));
  return (
    <>
      <span class="figure">{ratio.toFixed(2)}×</span>
      {dog.afterBreak && <span class="under hush">after {dog.afterBreak.days} days off</span>}
    </>
  );
}

const sum = (
  key: 'today' | 'metres7' | 'metres28' | 'meanWeek28',
  name: string,
  means: string,
  units: Units,
): LoadColumn => ({
  key,
  name,
  means,
  cell: (dog) => {
    const metres = dog[key];
    if (metres === undefined) return none(noComparison(dog));
    return <span class={metres > 0 ? 'figure week' : 'hush'}>{distanceFigure(metres, units)}</span>;
  },
  by: (dog) => dog[key],
  numeric: true,
  largestFirst: true,
});

const count = (
  key: 'runsInARow' | 'daysInARow' | 'runs28',
  name: string,
  means: string,
  more?: Partial<LoadColumn>,
): LoadColumn => ({
  key,
  name,
  means,
  cell: (dog) => dog[key] || dash,
  by: (dog) => dog[key],
  numeric: true,
  largestFirst: true,
  ...more,
});

/** Every column but the dog's name. `day`: what the first of them is called. */
export function loadColumns(units: Units, day: string): LoadColumn[] {
  const unit = distanceUnit(units);
  return [
    { ...sum('today', day, `${unit} on the day of the page`, units), first: true },
    { ...sum('metres7', '7 days', `${unit} in the seven days that end with that day`, units), first: true },
    {
      ...sum('meanWeek28', '28-day mean week', `a quarter of the ${unit} of the last 28 days`, units),
      first: true,
    },
    {
      key: 'coupled',
      name: 'Change, rolling',
      means: 'the 7 days over the mean week of the 28, which hold the same 7 days; 1× is no change',
      cell: (dog) => ratioCell(dog, 'coupled'),
      by: (dog) => dog.coupled,
      numeric: true,
      largestFirst: true,
      first: true,
    },
    {
      key: 'ewma',
      name: 'Change, weighted',
      means: 'the same from averages in which a day counts less the longer ago it is (EWMA)',
      cell: (dog) => ratioCell(dog, 'ewma'),
      by: (dog) => dog.ewma,
      numeric: true,
      largestFirst: true,
    },
    {
      key: 'since',
      name: 'Days since run',
      means: 'days from the last run to that day',
      cell: (dog) => dog.daysSinceLastRun ?? none('no run'),
      by: (dog) => dog.daysSinceLastRun,
      numeric: true,
      largestFirst: true,
      first: true,
    },
    count('runsInARow', 'Runs in a row', 'runs on days that follow each other, up to that day or the day before'),
    {
      key: 'gap',
      name: 'Longest gap',
      means: 'most days without a run since the first one of the season; “still” while it lasts',
      cell: (dog) =>
        dog.longestGap ? (
          <>
            {dog.longestGap.days}
            {dog.longestGap.open && <span class="under hush">still</span>}
          </>
        ) : (
          dash
        ),
      by: (dog) => dog.longestGap?.days,
      numeric: true,
      largestFirst: true,
    },
    {
      key: 'monotony',
      name: 'Monotony',
      means: 'mean of the seven daily distances over their sample standard deviation (n − 1): how alike the days were',
      cell: (dog) => (dog.monotony === undefined ? dash : <span class="figure">{dog.monotony.toFixed(2)}</span>),
      by: (dog) => dog.monotony,
      numeric: true,
      largestFirst: true,
    },
    {
      key: 'strain',
      name: `Strain, ${unit}`,
      means: 'the 7 days times monotony',
      cell: (dog) =>
        dog.strain === undefined ? dash : <span class="figure">{distanceFigure(dog.strain, units)}</span>,
      by: (dog) => dog.strain,
      numeric: true,
      largestFirst: true,
    },
    {
      key: 'time',
      name: 'Hours, 7 days',
      means: 'hours and minutes in harness in the seven days, as far as the notes tell',
      cell: (dog) => hoursWords(dog.minutes7),
      by: (dog) => dog.minutes7,
      numeric: true,
      largestFirst: true,
    },
    count('runs28', 'Runs, 28 days', 'runs in the last 28 days'),
  ];
}
