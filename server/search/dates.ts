/**
 * When: the words of a query that say a time, as local days. "in january", "since the new year", "last month", "from
 * 3 december to christmas". A month without a year is the one in the season searched, or the last one there has been.
 */
import { DateTime } from 'luxon';

/** Days from and to, both counted in; one of them may be open. */
export interface Span {
  from?: string;
  to?: string;
}
/** What a query said of time. `text` is the query with those words blanked out, so that places in it stay the same. */
export interface When extends Span {
  season?: string;
  text: string;
}
/** What a time is told against: the local day it is, and the season that is searched where none is named. */
export interface Calendar {
  today: string;
  season: string;
}

const MONTHS = 'january february march april may june july august september october november december'.split(' ');
const WEEKDAYS = 'monday tuesday wednesday thursday friday saturday sunday'.split(' ');
const NUMBERS = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const MONTH = `(?<month>${MONTHS.map((m) => (m.length > 4 ? `${m.slice(0, 3)}(?:${m.slice(3)})?` : m)).join('|')}|sept)`;
const YEAR = '(?<year>20\\d\\d)';
const DAY = '(?<day>3[01]|[12]\\d|0?[1-9])(?:st|nd|rd|th)?';
const COUNT = `(?<count>\\d{1,3}|${NUMBERS.join('|')}|couple of|few)`;
/** Words that are months or times of year only behind a word like "in": one may limp, a dog may march, snow may fall. */
const LOOSE = /^(?:may|mar|march|fall|spring)$/;

type Groups = Record<string, string | undefined>;
interface Rule {
  name: string;
  pattern: RegExp;
  days: (m: Groups, calendar: Calendar) => [DateTime, DateTime] | undefined;
}

const day = (iso: string) => DateTime.fromISO(iso, { zone: 'utc' });
const iso = (d: DateTime) => d.toISODate() as string;
const oneDay = (d: DateTime): [DateTime, DateTime] | undefined => (d.isValid ? [d, d] : undefined);
const wholeOf = (d: DateTime, unit: 'month' | 'year' | 'week'): [DateTime, DateTime] => [
  d.startOf(unit),
  d.endOf(unit),
];
const numberOf = (word = '') =>
  word === 'couple of' ? 2 : word === 'few' ? 3 : /^\d+$/.test(word) ? Number(word) : NUMBERS.indexOf(word) + 1;
const monthOf = (word = '') => MONTHS.findIndex((m) => m.startsWith(word.slice(0, 3))) + 1;

/** The year of a month's day: as said, or as it lies in the season searched; one that is still to come is the one before. */
function yearFor(month: number, { today, season }: Calendar, said?: string): number {
  if (said) return Number(said);
  const first = Number(season.slice(0, 4));
  const year = month >= 7 ? first : first + 1;
  const begins = `${year}-${String(month).padStart(2, '0')}-01`;
  return begins > today ? year - 1 : year;
}

function inMonth(m: Groups, calendar: Calendar): DateTime {
  const month = monthOf(m.month);
  return DateTime.utc(yearFor(month, calendar, m.year), month, 1);
}

/** Where a season of the year begins, by months as meteorologists count them (December to February is one). */
const TIMES_OF_YEAR: Record<string, number> = { spring: 3, summer: 6, fall: 9, autumn: 9, winter: 12 };

/** Longer forms first; the first that stands at a place is taken. */
const RULES: readonly Rule[] = [
  {
    name: 'yyyy-mm-dd',
    pattern: /(?<date>20\d\d-\d\d-\d\d)/,
    days: (m) => oneDay(day(m.date as string)),
  },
  {
    name: '<day> <month> [year]',
    pattern: new RegExp(`(?:the )?${DAY} (?:of )?${MONTH}(?:,? ${YEAR})?`),
    days: (m, c) => oneDay(inMonth(m, c).set({ day: Number(m.day) })),
  },
  {
    name: '<month> <day> [year]',
    pattern: new RegExp(`${MONTH} (?:the )?${DAY}(?:,? ${YEAR})?`),
    days: (m, c) => oneDay(inMonth(m, c).set({ day: Number(m.day) })),
  },
  {
    name: 'early|mid|late <month>',
    pattern: new RegExp(`(?<third>early|mid|late)(?: in)?[ -]${MONTH}(?: ${YEAR})?`),
    days: (m, c) => {
      const [a, b] = wholeOf(inMonth(m, c), 'month');
      if (m.third === 'early') return [a, a.set({ day: 10 })];
      return m.third === 'mid' ? [a.set({ day: 11 }), a.set({ day: 20 })] : [a.set({ day: 21 }), b];
    },
  },
  {
    name: 'last <month>',
    pattern: new RegExp(`(?:last|this past) ${MONTH}`),
    days: (m, { today }) => {
      const now = day(today);
      const month = DateTime.utc(now.year, monthOf(m.month), 1);
      return wholeOf(month.startOf('month') < now.startOf('month') ? month : month.minus({ years: 1 }), 'month');
    },
  },
  {
    name: '<month> [year]',
    pattern: new RegExp(`${MONTH}(?: (?:of )?${YEAR})?`),
    days: (m, c) => wholeOf(inMonth(m, c), 'month'),
  },
  {
    name: 'new year',
    pattern: new RegExp(`(?:the )?new year(?:'?s)?(?: day)?(?: ${YEAR})?`),
    days: (m, c) => oneDay(DateTime.utc(yearFor(1, c, m.year), 1, 1)),
  },
  {
    name: 'christmas',
    pattern: new RegExp(`(?:christmas|xmas)(?: day)?(?: ${YEAR})?`),
    days: (m, c) => oneDay(DateTime.utc(yearFor(12, c, m.year), 12, 25)),
  },
  {
    name: 'day before yesterday',
    pattern: /(?:the )?day before yesterday/,
    days: (_, { today }) => oneDay(day(today).minus({ days: 2 })),
  },
  { name: 'yesterday', pattern: /yesterday/, days: (_, { today }) => oneDay(day(today).minus({ days: 1 })) },
  { name: 'today', pattern: /today|tonight|this (?:morning|evening)/, days: (_, { today }) => oneDay(day(today)) },
  {
    name: 'last <count> <unit>',
    pattern: new RegExp(`(?:the )?(?:last|past|previous) (?:a )?${COUNT} (?<unit>day|week|month|year)s?`),
    days: (m, { today }) => {
      const end = day(today);
      const start = end.minus({ [`${m.unit}s`]: numberOf(m.count) });
      return [start.plus({ days: 1 }), end];
    },
  },
  {
    name: '<count> <unit> ago',
    pattern: new RegExp(`(?:a )?${COUNT} (?<unit>day|week|month|year)s? ago`),
    days: (m, { today }) => oneDay(day(today).minus({ [`${m.unit}s`]: numberOf(m.count) })),
  },
  {
    name: 'this|last <unit>',
    pattern: /(?:the )?(?<which>this|last|past|previous) (?<unit>week|month|year)/,
    days: (m, { today }) => {
      const unit = m.unit as 'week';
      const now = day(today);
      return wholeOf(m.which === 'this' ? now : now.minus({ [`${unit}s`]: 1 }), unit);
    },
  },
  {
    name: '[last] <weekday>',
    pattern: new RegExp(`(?:last |this )?(?<weekday>${WEEKDAYS.join('|')})`),
    days: (m, { today }) => {
      const now = day(today);
      const back = (now.weekday - (WEEKDAYS.indexOf(m.weekday as string) + 1) + 7) % 7;
      return oneDay(now.minus({ days: back }));
    },
  },
  {
    name: '[this|last] <time of year> [year]',
    pattern: new RegExp(
      `(?:(?<which>this|last)|the)? ?(?<time>${Object.keys(TIMES_OF_YEAR).join('|')})(?: (?:of )?${YEAR})?`,
    ),
    days: (m, c) => {
      const first = TIMES_OF_YEAR[m.time as string] as number;
      const now = day(c.today);
      const year = m.which ? (now.month >= first ? now.year : now.year - 1) : yearFor(first, c, m.year);
      let start = DateTime.utc(year, first, 1);
      // "Last winter" said in winter is the one before this.
      if (m.which === 'last' && start.plus({ months: 3 }) > now) start = start.minus({ years: 1 });
      return [start, start.plus({ months: 3 }).minus({ days: 1 })];
    },
  },
  { name: '<year>', pattern: new RegExp(YEAR), days: (m) => wholeOf(DateTime.utc(Number(m.year), 1, 1), 'year') },
];
const STICKY = RULES.map((rule) => ({ ...rule, pattern: new RegExp(`${rule.pattern.source}(?![\\p{L}\\d])`, 'uy') }));

const SEASON =
  /\b(?:in |during |of )?(?:the )?(?:(this|last|previous) season|(?:season )?(20\d\d)[-–/](?:20)?(\d\d)(?: season)?)(?![\d-])/u;
const BEFORE =
  /(?:^|[^\p{L}\d])(?<prep>since|starting|after|before|until|till|up to|through|by|in|on|during|over|around|at|between|from|of)(?: the)?(?: start of| beginning of)? $/u;
const LINK = /^(?: (?:and|to|until|till|through|up to|thru) |\s?[-–]\s?)$/;

interface Found {
  start: number;
  end: number;
  prep?: string;
  days: [DateTime, DateTime];
}

/** Every time said, left to right, with the word before it. */
function timesIn(low: string, calendar: Calendar, names: ReadonlySet<string>): Found[] {
  const found: Found[] = [];
  for (let i = 0; i < low.length; i++) {
    if (i > 0 && /[\p{L}\d]/u.test(low[i - 1] as string)) continue;
    for (const rule of STICKY) {
      rule.pattern.lastIndex = i;
      const m = rule.pattern.exec(low);
      if (!m?.[0].trim()) continue;
      const before = BEFORE.exec(low.slice(0, i));
      const linked = found.some((f) => LINK.test(low.slice(f.end, i)));
      if ((LOOSE.test(m[0]) || names.has(m[0])) && !before && !linked) continue;
      const days = rule.days((m.groups ?? {}) as Groups, calendar);
      if (!days?.[0].isValid || !days[1].isValid) continue;
      found.push({
        start: before ? i - before[0].trimStart().length : i,
        end: i + m[0].length,
        prep: before?.groups?.prep,
        days,
      });
      i += m[0].length - 1;
      break;
    }
  }
  return found;
}

/** The span a time and the word before it mean. */
function spanOf({ prep, days: [a, b] }: Found): Span {
  switch (prep) {
    case 'since':
    case 'starting':
    case 'from':
      return { from: iso(a) };
    case 'after':
      return { from: iso(b.plus({ days: 1 })) };
    case 'before':
      return { to: iso(a.minus({ days: 1 })) };
    case 'until':
    case 'till':
    case 'up to':
    case 'through':
    case 'by':
      return { to: iso(b) };
    default:
      return { from: iso(a), to: iso(b) };
  }
}

const blank = (text: string, from: number, to: number) => text.slice(0, from) + ' '.repeat(to - from) + text.slice(to);

/** Both spans at once: the later beginning and the earlier end. */
const both = (a: Span, b: Span): Span => ({
  from: [a.from, b.from]
    .filter((x) => x !== undefined)
    .sort()
    .at(-1),
  to: [a.to, b.to].filter((x) => x !== undefined).sort()[0],
});

/** The times of a query. `names` (lower case) are times only behind a word like "in". Words that are no time are left as they are. */
export function whenIn(query: string, calendar: Calendar, names: ReadonlySet<string> = new Set()): When {
  let text = query;
  let season: string | undefined;
  const named = SEASON.exec(text.toLowerCase());
  if (named && (named[1] || (Number(named[2]) + 1) % 100 === Number(named[3]))) {
    const first = named[1] ? Number(calendar.season.slice(0, 4)) - (named[1] === 'this' ? 0 : 1) : Number(named[2]);
    season = `${first}-${String((first + 1) % 100).padStart(2, '0')}`;
    text = blank(text, named.index, named.index + named[0].length);
  }
  const found = timesIn(text.toLowerCase(), season ? { ...calendar, season } : calendar, names);
  let span: Span = {};
  for (let i = 0; i < found.length; i++) {
    const one = found[i] as Found;
    const next = found[i + 1];
    const link = next && LINK.test(text.slice(one.end, next.start + lead(text, next)).toLowerCase());
    if (next && (link || one.prep === 'between')) {
      const [a, b] = one.days[0] <= next.days[1] ? [one, next] : [shiftBack(one), next];
      span = both(span, { from: iso(a.days[0]), to: iso(b.days[1]) });
      text = blank(text, one.start, next.end);
      i++;
      continue;
    }
    span = both(span, spanOf(one));
    text = blank(text, one.start, one.end);
  }
  return {
    ...(span.from ? { from: span.from } : {}),
    ...(span.to ? { to: span.to } : {}),
    ...(season ? { season } : {}),
    text,
  };
}

/** How far a time's own words begin behind its preposition. */
const lead = (text: string, f: Found) => {
  if (!f.prep) return 0;
  const m = new RegExp(`^${f.prep}(?: the)?(?: start of| beginning of)? `, 'i').exec(text.slice(f.start));
  return m ? m[0].length : 0;
};
/** "From december to january" said in a way that puts the second year first: the first is the year before. */
const shiftBack = (f: Found): Found => ({
  ...f,
  days: [f.days[0].minus({ years: 1 }), f.days[1].minus({ years: 1 })],
});
