/** Times of notes and the clocks told in them. Pure arithmetic: no clock and no time zone of this machine. */

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;

/** A note's time. `wall` is the local clock as if it were UTC, so that local days and clocks are plain arithmetic. */
export interface When {
  ms: number;
  wall: number;
  /** Minutes east of UTC. */
  offset: number;
  /** Local day, YYYY-MM-DD. */
  day: string;
}

const OFFSET = /([+-])(\d\d):?(\d\d)$/;

/** Minutes east of UTC of an ISO 8601 time; undefined when it has no offset. */
export function offsetOf(at: string): number | undefined {
  if (at.endsWith('Z')) return 0;
  const found = at.length > 16 ? OFFSET.exec(at) : null;
  if (!found) return undefined;
  const minutes = Number(found[2]) * 60 + Number(found[3]);
  return found[1] === '-' ? -minutes : minutes;
}

/** Reads an ISO 8601 time. One without an offset is taken as it stands on the wall. */
export function when(at: string): When {
  const offset = offsetOf(at);
  const ms = Date.parse(offset === undefined ? `${at}Z` : at);
  const minutes = offset ?? 0;
  return { ms, wall: ms + minutes * MINUTE, offset: minutes, day: at.slice(0, 10) };
}

/** The local day of an instant, seen with an offset. */
export function dayAt(ms: number, offset: number): string {
  return new Date(ms + offset * MINUTE).toISOString().slice(0, 10);
}

/** Days from one local day to another. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / DAY);
}

/** ISO 8601 with the offset, to the second. */
export function iso(ms: number, offset: number): string {
  const local = new Date(ms + offset * MINUTE).toISOString().slice(0, 19);
  if (offset === 0) return `${local}Z`;
  const minutes = Math.abs(offset);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${local}${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/**
 * The instant of a clock told in a note. A clock belongs to the note's local day; one that would lie more than half a
 * day ahead of the note was told after midnight and belongs to the day before ("back at 23:50", told at 00:20). A note
 * kept at midnight to the minute is a page with a date and no time: its clocks are of that day.
 */
export function clockAt(told: When, clock: string): number {
  const minutes = Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
  const midnight = Math.floor(told.wall / DAY) * DAY;
  const ahead = midnight + minutes * MINUTE - told.wall;
  return told.ms + (ahead > DAY / 2 && told.wall >= midnight + MINUTE ? ahead - DAY : ahead);
}

/**
 * Start and finish told in one note. When the finish comes out before the start, the run went over midnight: the start is the
 * day before if it would lie ahead of the note, else the finish is the day after.
 */
export function startAndFinish(
  told: When,
  start: string | undefined,
  finish: string | undefined,
): { start?: number; finish?: number } {
  let from = start === undefined ? undefined : clockAt(told, start);
  let to = finish === undefined ? undefined : clockAt(told, finish);
  if (from !== undefined && to !== undefined && to <= from) {
    if (from > told.ms) from -= DAY;
    else to += DAY;
  }
  return { ...(from === undefined ? {} : { start: from }), ...(to === undefined ? {} : { finish: to }) };
}
