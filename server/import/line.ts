/** What one line of a notebook is: a date, a time, a speaker, words. Takes only the front of a line apart; words stay as written. */
import { type DateHit, dateAt, type SlashOrder } from './dates.ts';
import { type TimeHit, timeAt } from './times.ts';

/** The front of a line, read. `text` is what is left for the note, word for word. */
export interface LineParts {
  /** Spaces and tabs it starts with. */
  indent: number;
  /** A sign in front (`#`, `-`, `*`) says that something new begins. */
  marked: boolean;
  /** A line drawn across the page (`---`, `====`). */
  rule: boolean;
  date?: DateHit;
  time?: TimeHit;
  /** Offset written with an ISO time: `-08:00` or `Z`. */
  offset?: string;
  by?: string;
  text: string;
}

/** Brackets hold a speaker's name; these hold something else. */
const NOT_A_NAME = /^(?:[lr][fhb]|bcs|ok|sic|x|note|todo|[^a-z]*)$/i;
const NAME = "[\\p{L}][\\p{L}'’.-]*(?: [\\p{L}][\\p{L}'’.-]*){0,2}";
const BRACKETED = new RegExp(`^\\[\\s*(?:by\\s+)?(${NAME})\\s*\\]\\s*(?:[:–—-](?!\\d))?\\s*`, 'u');
const BY = new RegExp(`^by\\s+(${NAME})\\s*:\\s*`, 'iu');
/** A sign between date and words; before a digit it is a minus, and the words' own. */
const SEPARATOR = /^\s*(?:[-–—:;,.|](?!\d))?\s*/;
const ISO_TIME =
  /^[T ]\s?(\d{2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?(Z|[+-]\d{2}:?\d{2})?(?=[\s,;:|–—-]|$)\s*(?:[,;:|–—-](?!\d))?\s*/;

/** Takes the speaker's tag off the front of a note: `by Wren: …`, `[Wren] …`. With `people` told, only their names count. */
function speaker(text: string, people: readonly string[] | undefined): { by?: string; text: string } {
  const m = BRACKETED.exec(text.slice(0, 90)) ?? BY.exec(text.slice(0, 90));
  const said = m?.[1];
  if (!m || !said || said.length > 60 || NOT_A_NAME.test(said)) return { text };
  if (people) {
    const known = people.find((person) => person.toLowerCase() === said.toLowerCase());
    return known ? { by: known, text: text.slice(m[0].length) } : { text };
  }
  return /^\p{Lu}/u.test(said) ? { by: said, text: text.slice(m[0].length) } : { text };
}

/** A date counts where it stands alone, before a time or a sign, or in the form 2026-10-14; "14 October was better" is a sentence. */
function dateCounts(hit: DateHit, rest: string): boolean {
  if (/^\s*$/.test(rest) || /^\s*[:;|–—](?!\d)/.test(rest) || /^\s*[-,.](?:\s|$)/.test(rest)) return true;
  if (hit.day === undefined) return false;
  if (!hit.loose) return true;
  const time = timeAt(rest.trimStart());
  return time !== undefined && time.length > 0;
}

/** Takes a line apart. `line` is without its line break. */
export function partsOf(line: string, order: SlashOrder, people?: readonly string[]): LineParts {
  const indent = line.length - line.trimStart().length;
  let rest = line.trim();
  if (/^(?:[-–—]{3,}|={3,}|\*{3,}|_{3,})$/.test(rest)) return { indent, marked: true, rule: true, text: rest };
  const heading = /^#{1,6}\s+/.exec(rest);
  // "- 18 this morning" is eighteen below, not an item of a list
  const bullet = heading ? null : /^(?:[*•·]\s+|[-–]\s+(?!\d+(?:\.\d+)?(?:\s|°|$)))/.exec(rest);
  rest = rest.slice((heading ?? bullet)?.[0].length ?? 0);
  const parts: LineParts = { indent, marked: Boolean(heading ?? bullet), rule: false, text: rest };

  const emphasis = /^(?:\*\*|__)(?=\S)(.{4,60}?)(?:\*\*|__)\s*/.exec(rest);
  const emphasised = emphasis && dateAt(emphasis[1] as string, order);
  const inside = emphasised && /^[\s:.,]*$/.test((emphasis[1] as string).slice(emphasised.length));
  const date = inside ? emphasised : dateAt(rest, order);
  const behind = inside ? rest.slice(emphasis[0].length) : date ? rest.slice(date.length) : rest;
  if (date && (heading || inside || dateCounts(date, behind))) {
    parts.date = date;
    rest = behind;
    const iso = date.loose ? null : ISO_TIME.exec(rest.slice(0, 48));
    if (iso) {
      const seconds = (Number(iso[1]) * 60 + Number(iso[2])) * 60 + Number(iso[3] ?? 0);
      const good = Number(iso[1]) < 24 && Number(iso[2]) < 60 && Number(iso[3] ?? 0) < 60;
      parts.time = { length: iso[0].length, words: `${iso[1]}:${iso[2]}`, bare: false, ...(good ? { seconds } : {}) };
      if (iso[4]) parts.offset = iso[4];
      rest = rest.slice(iso[0].length);
    } else {
      rest = rest.replace(SEPARATOR, '').replace(/^#+\s*$/, '');
    }
  }
  if (!parts.time) {
    const time = timeAt(rest);
    if (time) {
      parts.time = time;
      rest = rest.slice(time.length);
    }
  }
  return { ...parts, ...speaker(rest, people) };
}
