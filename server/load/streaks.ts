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
  const days = runDays(history, on);
  const last = days.at(-1);
  if (last === undefined) return { daysInARow: 0, runsInARow: 0 };
  return {
    lastRun: dayOf(last),
    daysSinceLastRun: on - last,
    ...inARow(history, days, on),
    ...longestGap(days, on, seasonFirst),
    ...afterBreak(days, on),
  };
}

/** Days with a run up to `on`, each once, in order. */
function runDays(history: DogHistory, on: number): number[] {
  const days: number[] = [];
  for (const row of history.rows) {
    if (row.day > on) break;
    if (days.at(-1) !== row.day) days.push(row.day);
  }
  return days;
}

/** The chain that ends on the day itself, or on the day before it: in the morning yesterday's chain still stands. */
function inARow(history: DogHistory, days: readonly number[], on: number): { daysInARow: number; runsInARow: number } {
  let daysInARow = 0;
  let runsInARow = 0;
  if (on - (days.at(-1) as number) > 1) return { daysInARow, runsInARow };
  for (let i = days.length - 1; i >= 0; i--) {
    const day = days[i] as number;
    if (daysInARow > 0 && day !== (days[i + 1] as number) - 1) break;
    daysInARow++;
    runsInARow += history.runs[day - history.first] as number;
  }
  return { daysInARow, runsInARow };
}

/** Days without a run between two of the season's run days, or since the last of them; `on` counts as one without. */
function longestGap(days: readonly number[], on: number, seasonFirst: number): Pick<Streaks, 'longestGap'> {
  const inSeason = days.filter((day) => day >= seasonFirst);
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
function afterBreak(days: readonly number[], on: number): Pick<Streaks, 'afterBreak'> {
  for (let i = days.length - 1; i > 0 && (days[i] as number) > on - CHRONIC_DAYS; i--) {
    const rest = (days[i] as number) - (days[i - 1] as number) - 1;
    if (rest >= CHRONIC_DAYS) return { afterBreak: { days: rest, back: dayOf(days[i] as number) } };
  }
  return {};
}
