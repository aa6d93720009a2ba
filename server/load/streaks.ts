/** Rest and work as day counts: days since the last run, days in a row, the longest gap. */
import { dayOf } from './days.ts';
import { CHRONIC_DAYS } from './figures.ts';
import type { DogHistory } from './index-runs.ts';

export interface Streaks {
  lastRun?: string;
  daysSinceLastRun?: number;
  daysInARow: number;
  runsInARow: number;
  longestGap?: { days: number; from: string; to: string; open: boolean };
  afterBreak?: { days: number; back: string };
}

/**
 * The day counts of one dog on a day.
 * @param history the dog's runs; those after `on` are not looked at
 * @param on the day, as a number, inclusive
 * @param seasonFirst first day of the season the longest gap is looked for in; summers are no news
 */
export function streaksOf(history: DogHistory, on: number, seasonFirst: number): Streaks {
  const last = lastRunDay(history, on);
  if (last === undefined) return { daysInARow: 0, runsInARow: 0 };
  const days = runDays(history, seasonFirst, on);
  return {
    lastRun: dayOf(last),
    daysSinceLastRun: on - last,
    ...inARow(history, last, on),
    ...longestGap(days, on),
    ...afterBreak(history, on),
  };
}

/** Days with a run, each once, in order. */
function runDays(history: DogHistory, from: number, to: number): number[] {
  const days: number[] = [];
  for (let day = Math.max(from, history.first); day <= Math.min(to, history.last); day++)
    if ((history.runs[day - history.first] as number) > 0) days.push(day);
  return days;
}

/** The last day with a run up to a day; none before the first. */
function lastRunDay(history: DogHistory, upTo: number): number | undefined {
  for (let day = Math.min(upTo, history.last); day >= history.first; day--)
    if ((history.runs[day - history.first] as number) > 0) return day;
  return undefined;
}

/** The chain that ends on the day itself, or on the day before it: in the morning yesterday's chain still stands. */
function inARow(history: DogHistory, last: number, on: number): { daysInARow: number; runsInARow: number } {
  let daysInARow = 0;
  let runsInARow = 0;
  if (on - last > 1) return { daysInARow, runsInARow };
  for (let day = last; day >= history.first; day--) {
    const runs = history.runs[day - history.first] as number;
    if (runs === 0) break;
    daysInARow++;
    runsInARow += runs;
  }
  return { daysInARow, runsInARow };
}

/** Days without a run between two of the season's run days, or since the last of them; `on` counts as one without. */
function longestGap(inSeason: readonly number[], on: number): Pick<Streaks, 'longestGap'> {
  let best: Streaks['longestGap'];
  const consider = (from: number, to: number, open: boolean) => {
    const count = to - from + 1;
    if (count > (best?.days ?? 0)) best = { days: count, from: dayOf(from), to: dayOf(to), open };
  };
  for (let i = 1; i < inSeason.length; i++)
    consider((inSeason[i - 1] as number) + 1, (inSeason[i] as number) - 1, false);
  const last = inSeason.at(-1);
  if (last !== undefined) consider(last + 1, on, true);
  return best ? { longestGap: best } : {};
}

/** The last return from at least 28 days without a run, where it lies within the 28 days that end on the day. */
function afterBreak(history: DogHistory, on: number): Pick<Streaks, 'afterBreak'> {
  for (const back of runDays(history, on - CHRONIC_DAYS + 1, on).reverse()) {
    const before = lastRunDay(history, back - 1);
    const rest = before === undefined ? 0 : back - before - 1;
    if (rest >= CHRONIC_DAYS) return { afterBreak: { days: rest, back: dayOf(back) } };
  }
  return {};
}
