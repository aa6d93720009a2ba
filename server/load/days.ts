/**
 * Local days as whole numbers, so that windows and gaps are plain arithmetic. A day has no clock and no zone here:
 * 14 January is one number wherever the musher stands.
 */
const MS_PER_DAY = 86_400_000;
const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * The number of a local day, counted from 1970-01-01.
 * @param day YYYY-MM-DD
 * @throws RangeError with a sentence when it is not a day of the calendar
 */
export function dayNumber(day: string): number {
  const found = DAY.exec(day);
  const ms = found ? Date.UTC(Number(found[1]), Number(found[2]) - 1, Number(found[3])) : Number.NaN;
  // Date.UTC rolls 31 February over into March; writing it back shows that.
  if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== day)
    throw new RangeError(`"${day}" is not a day: a day is written YYYY-MM-DD, for example 2027-01-14.`);
  return ms / MS_PER_DAY;
}

/** The local day of a number: the inverse of `dayNumber`. */
export function dayOf(number: number): string {
  return new Date(number * MS_PER_DAY).toISOString().slice(0, 10);
}

/** Days from the first day to the second: 2 from 1 January to 3 January; negative when the second is earlier. */
export function daysFrom(first: string, second: string): number {
  return dayNumber(second) - dayNumber(first);
}

/** First and last day (as numbers) of a season named 2026-27: 1 July to 30 June. */
export function seasonDays(season: string): { first: number; last: number } {
  const year = Number(season.slice(0, 4));
  return { first: dayNumber(`${year}-07-01`), last: dayNumber(`${year + 1}-06-30`) };
}
