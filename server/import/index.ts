/**
 * A plain-text notebook, as a person writes it, becomes notes. No line is lost: each that is not blank is a heading, a
 * note, the going-on of a note, or a problem with a sentence that says why it could not be placed.
 *
 * - A **date** stands as a heading (`2026-10-14`, `# Wed 14 October 2026`, `Oct 14, 2026`), in front of a note, or in the
 *   file's name. A date without a year is the one nearest to the date before it.
 * - A **time** in front begins a note: `10:40`, `10:40 am -`, `1040`, `7.50:`, `2026-10-14 10:40`, ISO with an offset.
 * - `by Wren:` or `[Wren]` after the time names another speaker.
 * - A note goes on over the lines below it till a blank line, and over deeper indented lines after one.
 * - A time below four in the morning after one past eight in the evening, under one heading, is the next day's.
 * - Notes without a time are spread in the order written; see `spread` in place.ts.
 */
import { DateTime } from 'luxon';
import { v5 } from 'uuid';
import type { NoteIn } from '../model.ts';
import { dateInName, dayOf, slashOrderOf, weekdayClash } from './dates.ts';
import { type LineParts, partsOf } from './line.ts';
import { clockOf, spread, zoneOf } from './place.ts';

export { UnknownZoneError } from './place.ts';

export interface ImportOptions {
  /** The file's name; a date or a month in it counts as a heading. */
  name?: string;
  /** `-09:00` or an IANA zone; the machine's own where nothing is told. */
  offset?: string;
  /** Who speaks where no note says so. */
  by?: string;
  /** Year of dates that are written without one, where nothing else tells it. */
  defaultYear?: number;
  /** Local day (YYYY-MM-DD) of notes that stand before any heading. */
  day?: string;
  /** The kennel's people; told, only their names count as a speaker's tag. */
  people?: readonly string[];
}
/** A line that could not be placed, or was placed with a doubt that the sentence tells. Lines count from 1. */
export interface ImportProblem {
  line: number;
  text: string;
  says: string;
}
export interface ImportResult {
  /** In the order written. Ids are UUIDs version 5 (RFC 9562) of day, time, speaker, text and count. */
  notes: NoteIn[];
  problems: ImportProblem[];
  /** For each note, in the same order, the line it starts on and the numbers of all its lines. */
  placed: { line: number; lines: number[] }[];
  /** Numbers of the lines that are headings, or a line drawn across the page. */
  headings: number[];
}

/** Namespace of imported notes' ids; a random UUID, fixed for good. */
const NAMESPACE = '8e2f1f0a-6c0b-4b0e-9a53-5d1f7b1c9e64';
const NO_DATE = 'No date is known here; write one above, such as “14 October 2026”, or in front of the line.';

interface Draft {
  line: number;
  lines: number[];
  words: string[];
  indent: number;
  /** Blank lines that count only if the note goes on. */
  blanks: number;
  day: string;
  seconds?: number;
  offset?: string;
  /** The speaker that the line names. */
  named?: string;
}

/**
 * Reads a notebook. Throws UnknownZoneError for an offset that is none; a bad line never throws.
 * The same text gives the same ids, so importing it twice keeps one of each note.
 */
export function importNotebook(text: string, options: ImportOptions = {}): ImportResult {
  const zone = zoneOf(options.offset);
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const order = slashOrderOf(lines);
  const drafts: Draft[] = [];
  const problems: ImportProblem[] = [];
  const headings: number[] = [];

  let day = options.day;
  let near = options.day;
  let noDay = NO_DATE;
  const named = options.name ? dateInName(options.name) : undefined;
  const fromName = named && dayOf(named);
  if (fromName && 'day' in fromName) {
    near = fromName.day;
    if (named.day !== undefined) day = fromName.day;
  }
  let open: Draft | undefined;
  /** The line that could not be placed and that the next lines may go on from. */
  let lost: number | undefined;
  let last: { seconds: number; words: string } | undefined;
  const problem = (line: number, says: string) => problems.push({ line, text: lines[line - 1] as string, says });
  const close = () => {
    if (open && open.words.join('').trim() === '') {
      for (const line of open.lines) problem(line, 'A time or a name stands here with no words behind it.');
      drafts.pop();
    }
    open = undefined;
    lost = undefined;
  };
  /** Takes a date that stands on this line; false where it is none and the line is a problem. */
  const takeDate = (parts: LineParts, line: number): boolean => {
    if (!parts.date) return true;
    const got = dayOf(parts.date, near, options.defaultYear);
    last = undefined;
    if ('says' in got) {
      day = undefined;
      noDay = `The date above, on line ${line}, could not be read, so the day of this line is not known.`;
      problem(line, got.says);
      return false;
    }
    near = got.day;
    if (parts.date.day === undefined) {
      day = undefined;
      noDay = `Line ${line} tells the month alone; write the day above this line or in front of it.`;
    } else {
      day = got.day;
      const clash = weekdayClash(parts.date, got.day);
      if (clash) problem(line, clash);
    }
    return true;
  };
  /** The day a time belongs to, and a doubt about it. */
  const dayFor = (parts: LineParts, line: number, from: string): string => {
    const { time } = parts;
    if (time?.seconds === undefined) return from;
    const before = last?.seconds;
    let to = from;
    if (before !== undefined && before >= 20 * 3600 && time.seconds < 4 * 3600 && !parts.date) {
      to = DateTime.fromISO(from, { zone: 'utc' }).plus({ days: 1 }).toISODate() ?? from;
      day = to;
    } else if (last && time.bare && before !== undefined && before >= 10 * 3600 && time.seconds < 8 * 3600)
      problem(
        line,
        `${time.words} stands after ${last.words} and was taken as the morning; write am or pm if it was not.`,
      );
    last = { seconds: time.seconds, words: time.words };
    return to;
  };

  let blank = true;
  for (const [index, raw] of lines.entries()) {
    const line = index + 1;
    if (raw.trim() === '') {
      blank = true;
      lost = undefined;
      if (open) open.blanks++;
      continue;
    }
    const wasBlank = blank;
    blank = false;
    if (raw.includes('\0')) {
      close();
      problem(line, 'This line holds NUL characters, which no plain text has; save the file as UTF-8 text.');
      lost = line;
      continue;
    }
    const parts = partsOf(raw, order, options.people);
    if (parts.rule) {
      close();
      headings.push(line);
      continue;
    }
    const deeper = open !== undefined && parts.indent > open.indent;
    const begins = parts.date || parts.time || parts.by || ((parts.marked || wasBlank) && !deeper);
    if (!begins && open) {
      open.words.push(...Array<string>(open.blanks).fill(''), raw.trim());
      open.lines.push(line);
      open.blanks = 0;
      continue;
    }
    if (!begins && lost !== undefined) {
      problem(line, `This goes on from line ${lost}, which could not be placed.`);
      continue;
    }
    close();
    const words = parts.text.trim();
    const bare = parts.date && !parts.time && !parts.by && /^[:#*_\s]*$/.test(words);
    if (!takeDate(parts, line)) {
      lost = bare ? undefined : line;
      continue;
    }
    if (bare) {
      headings.push(line);
      continue;
    }
    const bad = parts.time && parts.time.seconds === undefined;
    if (bad || day === undefined) {
      problem(line, bad ? `“${parts.time?.words}” is no time of day.` : noDay);
      lost = line;
      continue;
    }
    open = {
      line,
      lines: [line],
      words: words === '' ? [] : [words],
      indent: parts.indent,
      blanks: 0,
      day: dayFor(parts, line, day),
      ...(parts.time?.seconds === undefined ? {} : { seconds: parts.time.seconds }),
      ...(parts.offset ? { offset: parts.offset } : {}),
      ...(parts.by ? { named: parts.by } : {}),
    };
    drafts.push(open);
  }
  close();

  const notes = timed(drafts, zone, options.by, problem);
  problems.sort((a, b) => a.line - b.line);
  return { notes, problems, placed: drafts.map((d) => ({ line: d.line, lines: d.lines })), headings };
}

/** Gives the drafts their instants and ids. */
function timed(
  drafts: Draft[],
  zone: ReturnType<typeof zoneOf>,
  fallback: string | undefined,
  problem: (line: number, says: string) => void,
): NoteIn[] {
  const days = new Map<string, Draft[]>();
  for (const draft of drafts) {
    const same = days.get(draft.day);
    if (same) same.push(draft);
    else days.set(draft.day, [draft]);
  }
  const seconds = new Map<Draft, number>();
  for (const same of days.values()) {
    const placed = spread(same.map((draft) => draft.seconds));
    for (const [i, draft] of same.entries()) seconds.set(draft, placed[i] as number);
  }
  const own = clockOf(zone);
  const seen = new Map<string, number>();
  return drafts.map((draft) => {
    const text = draft.words.join('\n');
    const clock = draft.offset ? clockOf(zoneOf(draft.offset)) : own;
    const { at, says } = clock(draft.day, seconds.get(draft) as number);
    if (says && draft.seconds !== undefined) problem(draft.line, says);
    // The time as written, not as spread: a line added later to the same day leaves the other ids as they were.
    const key = [draft.day, draft.seconds ?? '', draft.offset ?? '', draft.named ?? '', text].join('\n');
    const count = seen.get(key) ?? 0;
    seen.set(key, count + 1);
    const by = draft.named ?? fallback;
    const id = v5(`${key}\n${count}`, NAMESPACE);
    return { id, text, at, ...(by ? { by } : {}), source: 'import' as const };
  });
}
