/**
 * Dates as people write them at the head of a page or in front of a note. Nothing is guessed: a date that can be read
 * in two ways says so, and a date that no calendar has is reported as such by the caller.
 */
import { DateTime } from 'luxon';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

const MONTH =
  '(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\.?';
const WEEKDAY = '(?:(mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?\\.?,?\\s+)?';
const DAY = '(\\d{1,2})(?:st|nd|rd|th)?\\.?';
const YEAR = '((?:19|20)\\d{2})';
/** A date ends at a space, a sign or the line's end, never inside a word or number. */
const END = '(?![\\w])';

/** A date found at the start of a line. `month` and `day` may be impossible; `year` may be missing. */
export interface DateHit {
  /** Characters it takes, weekday and all. */
  length: number;
  words: string;
  year?: number;
  month: number;
  /** Left out where the words name a month alone (`October 2026`). */
  day?: number;
  /** 1 Monday to 7 Sunday, where a weekday was written. */
  weekday?: number;
  /** The year stands last or is missing, so that words after the date may belong to a sentence that only begins with one. */
  loose: boolean;
  /** `3/4/2027`: no telling which is the day. */
  ambiguous?: boolean;
}

/** In `3/4/2027` the day stands first or the month, as the other dates of the same text show. */
export type SlashOrder = 'day-first' | 'month-first' | undefined;

interface Form {
  pattern: RegExp;
  read: (m: RegExpExecArray, order: SlashOrder) => Omit<DateHit, 'length' | 'words'> | undefined;
}

const form = (source: string, read: Form['read']): Form => ({ pattern: new RegExp(`^${source}${END}`, 'i'), read });
const monthOf = (word = '') => MONTHS.indexOf(word.slice(0, 3).toLowerCase()) + 1;
const weekdayOf = (word?: string) => (word ? { weekday: WEEKDAYS.indexOf(word.slice(0, 3).toLowerCase()) + 1 } : {});
const yearOf = (digits?: string) => (digits ? { year: Number(digits) } : {});

/** The forms, the more telling first: a form with a year goes before the same form without one. */
const FORMS: Form[] = [
  // 2026-10-14, 2026/10/14, 2026.10.14, and the T of a full ISO date and time
  {
    pattern: new RegExp(`^${WEEKDAY}(\\d{4})([-/.])(\\d{1,2})\\3(\\d{1,2})(?=T\\d|[^\\w]|$)`, 'i'),
    read: (m) => ({ ...weekdayOf(m[1]), year: Number(m[2]), month: Number(m[4]), day: Number(m[5]), loose: false }),
  },
  // 14 October 2026, Wed 14. Oct 2026, 14th of October, 2026
  form(`${WEEKDAY}${DAY}[\\s-]+(?:of\\s+)?${MONTH}[,\\s-]*${YEAR}`, (m) => ({
    ...weekdayOf(m[1]),
    ...yearOf(m[4]),
    month: monthOf(m[3]),
    day: Number(m[2]),
    loose: true,
  })),
  // October 14, 2026, Wednesday Oct. 14th 2026
  form(`${WEEKDAY}${MONTH}[\\s-]+${DAY},?\\s+${YEAR}`, (m) => ({
    ...weekdayOf(m[1]),
    ...yearOf(m[4]),
    month: monthOf(m[2]),
    day: Number(m[3]),
    loose: true,
  })),
  // 14.10.2026: day first, as where dots are written (common practice)
  form(`${WEEKDAY}(\\d{1,2})\\.\\s?(\\d{1,2})\\.\\s?${YEAR}`, (m) => ({
    ...weekdayOf(m[1]),
    ...yearOf(m[4]),
    month: Number(m[3]),
    day: Number(m[2]),
    loose: true,
  })),
  // 10/14/2026 or 14/10/2026
  form(`${WEEKDAY}(\\d{1,2})/(\\d{1,2})/${YEAR}`, (m, order) => {
    const [a, b] = [Number(m[2]), Number(m[3])];
    const dayFirst = a > 12 || (b <= 12 && order === 'day-first');
    const [day, month] = dayFirst ? [a, b] : [b, a];
    const ambiguous = a <= 12 && b <= 12 && a !== b && !order;
    return { ...weekdayOf(m[1]), ...yearOf(m[4]), month, day, loose: true, ...(ambiguous ? { ambiguous } : {}) };
  }),
  // October 2026
  form(`${MONTH},?\\s+${YEAR}`, (m) => ({ ...yearOf(m[2]), month: monthOf(m[1]), loose: true })),
  // 14 October, Wed 14 Oct
  form(`${WEEKDAY}${DAY}[\\s-]+(?:of\\s+)?${MONTH}`, (m) => ({
    ...weekdayOf(m[1]),
    month: monthOf(m[3]),
    day: Number(m[2]),
    loose: true,
  })),
  // October 14, Wed Oct. 14th
  form(`${WEEKDAY}${MONTH}[\\s-]+${DAY}`, (m) => ({
    ...weekdayOf(m[1]),
    month: monthOf(m[2]),
    day: Number(m[3]),
    loose: true,
  })),
];

/** Reads the date that `line` starts with, if it starts with one. */
export function dateAt(line: string, order: SlashOrder): DateHit | undefined {
  const head = line.slice(0, 60);
  for (const { pattern, read } of FORMS) {
    const m = pattern.exec(head);
    const hit = m && read(m, order);
    if (m && hit) return { ...hit, length: m[0].length, words: m[0].trim() };
  }
  return undefined;
}

/** The order that the text's own unmistakable dates show; undefined where none does, or where they disagree. */
export function slashOrderOf(lines: readonly string[]): SlashOrder {
  const seen = new Set<SlashOrder>();
  for (const line of lines) {
    const m = /^\W{0,8}(?:[a-z]{3,9}\.?,?\s+)?(\d{1,2})\/(\d{1,2})\/(?:19|20)\d{2}\b/i.exec(line.slice(0, 60));
    if (m && Number(m[1]) > 12) seen.add('day-first');
    if (m && Number(m[2]) > 12) seen.add('month-first');
  }
  return seen.size === 1 ? [...seen][0] : undefined;
}

/** A date, or a month with its year, somewhere in a file's name: `notes_2026-10-14.txt`, `14 Oct 2026.md`, `2026-10.txt`. */
export function dateInName(name: string): DateHit | undefined {
  const base = name
    .replace(/^.*[\\/]/, '')
    .replace(/\.[a-z0-9]{1,5}$/i, '')
    .replace(/_/g, ' ');
  for (let at = 0; at < Math.min(base.length, 120); at++) {
    if (at > 0 && /\w/.test(base[at - 1] as string)) continue;
    const hit = dateAt(base.slice(at), undefined);
    if (hit?.year && !hit.ambiguous) return hit;
    const month = /^((?:19|20)\d{2})-(0[1-9]|1[0-2])(?![\w-])/.exec(base.slice(at));
    if (month) return { length: 7, words: month[0], year: Number(month[1]), month: Number(month[2]), loose: false };
  }
  return undefined;
}

/**
 * The local day, YYYY-MM-DD, that a hit names. Without a year: the one that brings it nearest to `near` (YYYY-MM-DD),
 * so that 3 January follows 30 December; without that, `defaultYear`. Answers a sentence where there is no such day.
 */
export function dayOf(hit: DateHit, near?: string, defaultYear?: number): { day: string } | { says: string } {
  if (hit.ambiguous)
    return { says: `“${hit.words}” can be read with the day or the month first; write the month as a word.` };
  let year = hit.year;
  if (year === undefined && near) {
    const from = DateTime.fromISO(near, { zone: 'utc' });
    const gap = (y: number) =>
      Math.abs(DateTime.utc(y, Math.min(Math.max(hit.month, 1), 12), 15).diff(from, 'days').days);
    const years = [from.year - 1, from.year, from.year + 1];
    year = years.reduce((best, y) => (gap(y) < gap(best) ? y : best));
  }
  year ??= defaultYear;
  if (year === undefined)
    return { says: `No year is known for “${hit.words}”; write it in the heading or in the file's name.` };
  const date = DateTime.utc(year, hit.month, hit.day ?? 1);
  if (!date.isValid) return { says: `“${hit.words}” is no day of the calendar.` };
  return { day: date.toISODate() };
}

/** A sentence where the weekday that was written is not that day's, else undefined. */
export function weekdayClash(hit: DateHit, day: string): string | undefined {
  const date = DateTime.fromISO(day, { zone: 'utc', locale: 'en' });
  if (!hit.weekday || date.weekday === hit.weekday) return undefined;
  return `“${hit.words}” was taken as ${day}, which is a ${date.weekdayLong}; check the date.`;
}
