/** Gives every note of a day its time, in the zone that was told, and says where a clock has no such time. */
import { DateTime, FixedOffsetZone, IANAZone, SystemZone, type Zone } from 'luxon';

const DAY = 24 * 3600;
/** Notes of a day that has no times at all begin here (common practice: written up at noon, in one go). */
const NOON = 12 * 3600;
const STEP = 10 * 60;

/** The zone told is neither an offset nor a zone's name. */
export class UnknownZoneError extends Error {
  constructor(offset: string) {
    super(`“${offset.slice(0, 40)}” is neither an offset such as -09:00 nor a time zone such as America/Anchorage.`);
    this.name = 'UnknownZoneError';
  }
}

/** `-09:00`, `Z` or an IANA name; the machine's own zone where nothing is told. Throws UnknownZoneError. */
export function zoneOf(offset: string | undefined): Zone {
  if (offset === undefined || offset.trim() === '') return SystemZone.instance;
  const written = offset.trim();
  if (/^z$/i.test(written)) return FixedOffsetZone.utcInstance;
  const m = /^([+-])(\d{1,2}):?(\d{2})?$/.exec(written.replace('−', '-'));
  if (m) {
    const minutes = Number(m[2]) * 60 + Number(m[3] ?? 0);
    // The widest offsets in use are -12:00 and +14:00 (IANA time zone database).
    if (minutes > 14 * 60 || Number(m[3] ?? 0) > 59) throw new UnknownZoneError(offset);
    return FixedOffsetZone.instance(m[1] === '-' ? -minutes : minutes);
  }
  if (IANAZone.isValidZone(written)) return IANAZone.create(written);
  throw new UnknownZoneError(offset);
}

/**
 * Seconds after midnight for a day's notes, in the order written; `undefined` stands for a note without a time.
 *
 * - Between two times, the notes without one stand evenly between them.
 * - Before the day's first time they stand ten minutes apart before it, after its last time ten minutes apart after it;
 *   closer where midnight leaves less room.
 * - A day with no times at all begins at noon, ten minutes apart.
 * - Notes written at the same minute, one after the other, come a second apart, so that their order is kept.
 */
export function spread(times: readonly (number | undefined)[]): number[] {
  const known = times.flatMap((seconds, index) => (seconds === undefined ? [] : [{ seconds, index }]));
  const first = known[0];
  const last = known.at(-1);
  const out = [...times];
  const step = (room: number, count: number) => Math.min(STEP, room / (count + 1));
  if (!first || !last) {
    const by = step(DAY - NOON, times.length);
    return times.map((_, i) => Math.floor(NOON + i * by));
  }
  const before = step(first.seconds, first.index);
  for (let i = 0; i < first.index; i++) out[i] = first.seconds - (first.index - i) * before;
  const tail = times.length - 1 - last.index;
  const after = step(DAY - last.seconds, tail);
  for (let i = 1; i <= tail; i++) out[last.index + i] = last.seconds + i * after;
  for (let k = 0; k + 1 < known.length; k++) {
    const [a, b] = [known[k] as { seconds: number; index: number }, known[k + 1] as { seconds: number; index: number }];
    // Where the times go back, the notes between stay right behind the one they follow.
    const gap = b.seconds > a.seconds ? (b.seconds - a.seconds) / (b.index - a.index) : 1;
    for (let i = a.index + 1; i < b.index; i++) out[i] = a.seconds + (i - a.index) * gap;
  }
  const whole = out.map((seconds) => Math.min(Math.floor(seconds as number), DAY - 1));
  for (let i = 1; i < whole.length; i++) {
    const [a, b] = [whole[i - 1] as number, whole[i] as number];
    if (b <= a && Math.floor(b / 60) === Math.floor(a / 60)) whole[i] = Math.min(a + 1, DAY - 1);
  }
  return whole;
}

/** A local day and seconds after midnight → ISO 8601 with offset; `says` where the clocks skip that time or show it twice. */
export type Clock = (day: string, seconds: number) => { at: string; says?: string };

/** The clock of a zone. Days on which its offset does not change are worked out once each; an import has few days and many notes. */
export function clockOf(zone: Zone): Clock {
  const still = new Map<string, string | undefined>();
  const offsetOf = (day: string): string | undefined => {
    if (still.has(day)) return still.get(day);
    // From the day before to the day after, which holds the local day whatever the offset.
    const noon = Date.parse(`${day}T12:00:00Z`);
    const [before, at, after] = [-36, 0, 36].map((hours) => zone.offset(noon + hours * 3_600_000));
    const offset = before === at && at === after ? zone.formatOffset(noon, 'short') : undefined;
    still.set(day, offset);
    return offset;
  };
  return (day, seconds) => {
    const offset = offsetOf(day);
    if (offset === undefined) return changing(day, seconds, zone);
    return { at: `${day}T${hhmm(seconds)}:${two(seconds % 60)}${offset === '+00:00' ? 'Z' : offset}` };
  };
}

const two = (n: number) => String(n).padStart(2, '0');
const hhmm = (seconds: number) => `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}`;

/** On a day whose offset changes. */
function changing(day: string, seconds: number, zone: Zone): { at: string; says?: string } {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const clock = { hour: Math.floor(seconds / 3600), minute: Math.floor(seconds / 60) % 60, second: seconds % 60 };
  const made = DateTime.fromObject({ year, month, day: date, ...clock }, { zone });
  const iso = (time: DateTime) => time.toISO({ suppressMilliseconds: true, includeOffset: true }) as string;
  // In the hour that a clock change skips, luxon goes forward by the length of the gap.
  if (made.hour !== clock.hour || made.minute !== clock.minute)
    return {
      at: iso(made),
      says: `The clocks skip ${hhmm(seconds)} on ${day}; it was taken as ${made.toFormat('HH:mm')}.`,
    };
  const both = made.getPossibleOffsets();
  const earlier = both.reduce((a, b) => (a.toMillis() <= b.toMillis() ? a : b));
  if (both.length > 1)
    return { at: iso(earlier), says: `The clocks show ${hhmm(seconds)} twice on ${day}; it was taken as the first.` };
  return { at: iso(made) };
}
