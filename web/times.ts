/**
 * Times as people at that place saw them. A note's time carries its offset, so its local day and hour are read off the
 * text itself; the viewer's own time zone never changes them.
 */
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/** This moment, or `date`, as ISO 8601 in the device's own time with its offset: 2027-01-14T10:40:00-09:00. */
export function localIso(date = new Date()): string {
  const offset = -date.getTimezoneOffset();
  const two = (n: number) => String(Math.trunc(Math.abs(n))).padStart(2, '0');
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, 19);
  return `${local}${offset < 0 ? '-' : '+'}${two(offset / 60)}:${two(offset % 60)}`;
}

/** The local hour of an instant: "10:40". */
export const clockOf = (at: string): string => at.slice(11, 16);
/** The local day of an instant: "2027-01-14". */
export const dayOf = (at: string): string => at.slice(0, 10);

/** A local day in words: "Thu 14 Jan", with the year where it is asked for. */
export function dayWords(day: string, year = false): string {
  const date = new Date(`${day.slice(0, 10)}T12:00:00Z`);
  if (Number.isNaN(date.getTime())) return day;
  const words = `${DAYS[date.getUTCDay()]} ${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
  return year ? `${words} ${date.getUTCFullYear()}` : words;
}

/** The month of a local day: "January 2027". */
export function monthWords(day: string): string {
  const date = new Date(`${day.slice(0, 7)}-15T12:00:00Z`);
  return date.toLocaleDateString('en', { month: 'long', year: 'numeric', timeZone: 'UTC' });
}

/** A past instant as one looks back on it: the hour for today, else day and hour. */
export function sinceWords(at: string, now = localIso()): string {
  return dayOf(at) === dayOf(now) ? `at ${clockOf(at)}` : `${dayWords(at)} at ${clockOf(at)}`;
}

/** Whole days from one local day to another. */
export function daysBetween(from: string, to: string): number {
  return Math.round(
    (Date.parse(`${to.slice(0, 10)}T00:00:00Z`) - Date.parse(`${from.slice(0, 10)}T00:00:00Z`)) / 864e5,
  );
}

/** A dog's age in words from its date of birth: "4 y", "7 mo". */
export function ageWords(born: string, today: string): string {
  const months =
    (Number(today.slice(0, 4)) - Number(born.slice(0, 4))) * 12 +
    (Number(today.slice(5, 7)) - Number(born.slice(5, 7))) -
    (today.slice(8, 10) < born.slice(8, 10) ? 1 : 0);
  if (months < 0) return '';
  return months < 24 ? `${months} mo` : `${Math.floor(months / 12)} y`;
}

/** A local day some days later, or earlier with a number below 0. */
export function shiftDay(day: string, by: number): string {
  const date = new Date(`${day.slice(0, 10)}T12:00:00Z`);
  date.setUTCDate(date.getUTCDate() + by);
  return date.toISOString().slice(0, 10);
}
