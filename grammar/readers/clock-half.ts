/** Reader "clock": the half of the day that was not said, settled by the event, the times told beside it and the time of speaking. */
import type { Frame, Quantity } from '../steps/frame.ts';
import type { Clock } from '../steps/quantities.ts';
import { type Event, eventOf } from './clock-events.ts';

const two = (n: number) => String(n).padStart(2, '0');

/** Puts the time into the day: as said where a half of the day was said, else the likely one for the event and for now. */
export function settle(clock: Clock, event: Event, f: Frame, q: Quantity, planned: boolean): string {
  let { hour } = clock;
  const { minute, meridiem } = clock;
  if (meridiem === 'pm' && hour < 12) hour += 12;
  else if (meridiem === 'am' && hour === 12) hour = 0;
  else if (!meridiem && hour >= 1 && hour <= 12) hour = half(hour, minute, event, f, q, planned);
  return `${two(hour % 24)}:${two(minute)}`;
}

function half(hour: number, minute: number, event: Event, f: Frame, q: Quantity, planned: boolean): number {
  const typed = f.tokens[q.from]?.low ?? '';
  if (/^0\d/.test(typed)) return hour;
  const am = hour % 12;
  const pm = am + 12;
  const near = wordsNear(f, q);
  // "left after breakfast, back before five": a meal is of its own side of the comma
  const own =
    f.low(q.from - 1) === ','
      ? near
      : near.slice(near.lastIndexOf(',') > 0 && eventAfterComma(f, q) ? near.lastIndexOf(',') : 0);
  if (
    (/\b(afternoon|tonight|evening)\b/.test(near) || /\b(noon|lunch|supper|dinner|midday|dusk|sunset)\b/.test(own)) &&
    !/\bbefore noon\b/.test(near)
  )
    return hour === 12 ? 12 : hour >= 10 && /\b(lunch|noon|midday)\b/.test(near) ? hour : pm;
  if (/\b(this morning|morning|a m)\b/.test(near) || /\b(breakfast|dawn|sunrise|first light)\b/.test(own))
    return am === 0 ? 12 : am;
  const now = minutesOfDay(f.context.at);
  const [a, p] = [am * 60 + minute, pm * 60 + minute];
  if (now === undefined) return plausible(hour, event);
  if (planned) {
    const tomorrow = /\b(tomorrow|tmrw|tmw|tom|morning|(mon|tues|wednes|thurs|fri|satur|sun)day)\b/.test(
      f.text.toLowerCase(),
    );
    if (tomorrow) return plausible(hour, event === 'other' ? 'start' : event);
    return a >= now ? am : p >= now ? pm : am;
  }
  // The latest one that is not yet to come, nor behind what is told to come after it; a few minutes of grace for a watch that is off.
  const end = nextTime(f, q, event, now) ?? now + 20;
  if (p <= end) return pm;
  if (a <= end) return am;
  if (a <= now + 20) return am;
  return plausible(hour, event);
}

/** The words of its sentence around a time; where another time is told too, only up to the comma that parts them. */
function wordsNear(f: Frame, q: Quantity): string {
  const timeAt = (k: number) => {
    const o = f.quantityAt(k);
    return o !== q && o?.dimension === 'clock';
  };
  let b = q.to;
  while (b < f.tokens.length && b < q.to + 5 && f.sentence(b) === f.sentence(q.from)) {
    if (/^(,|and|then)$/.test(f.low(b)) && [1, 2, 3, 4].some((n) => timeAt(b + n))) break;
    b++;
  }
  return f.tokens
    .slice(Math.max(0, q.from - 16), b)
    .filter((t) => f.sentence(t.i) === f.sentence(q.from) && !timeAt(t.i))
    .map((t) => t.low)
    .join(' ');
}

/** Stands the event of a time behind the last comma before it? */
function eventAfterComma(f: Frame, q: Quantity): boolean {
  let k = q.from - 1;
  while (k >= 0 && f.low(k) !== ',') k--;
  return k >= 0 && q.from - k < 7 && eventOf(f, q, q.from - k - 1) !== undefined;
}

const ORDER: Record<Event, number> = { start: 0, stop: 1, other: 1, finish: 2 };

/** "Left at nine, lunch at noon, home by three": the latest minute of the day at which the time told next in the sentence can be. */
function nextTime(f: Frame, q: Quantity, event: Event, now: number): number | undefined {
  if (event === 'finish') return undefined;
  const next = f.quantities.find(
    (o) =>
      o.from >= q.to &&
      o.clock &&
      (o.dimension === 'clock' ||
        (o.dimension === 'number' && !o.unit && /^(at|by|before|after|around|about)$/.test(f.low(o.from - 1)))),
  );
  if (!next?.clock || f.sentence(next.from) !== f.sentence(q.from)) return undefined;
  const then = eventOf(f, next);
  if (!then || ORDER[then] < ORDER[event] || then === 'start') return undefined;
  const { hour, minute, meridiem } = next.clock;
  if (meridiem) return minuteOf(meridiem === 'pm' ? (hour % 12) + 12 : hour % 12, minute);
  const own = minuteOf(q.clock?.hour ?? 0, q.clock?.minute ?? 0);
  const end = nextTime(f, next, then, now) ?? now + 20;
  if (hour > 12) return minuteOf(hour, minute);
  const [a, p] = [minuteOf(hour % 12, minute), minuteOf((hour % 12) + 12, minute)];
  // one that would lie before it on either half tells of another day
  return p <= end ? p : a <= end && a > own ? a : undefined;
}
const minuteOf = (hour: number, minute: number) => hour * 60 + minute;

const plausible = (hour: number, event: Event) => {
  const am = hour % 12;
  if (event === 'start' || event === 'other') return am >= 4 ? am : am + 12;
  return am >= 7 ? am : am + 12;
};

/** Can the time still come today? */
export function later(f: Frame, clock: Clock): boolean {
  const now = minutesOfDay(f.context.at);
  if (now === undefined) return false;
  const h = clock.meridiem === 'pm' || (!clock.meridiem && clock.hour < 12) ? (clock.hour % 12) + 12 : clock.hour;
  return h * 60 + clock.minute > now + 20;
}

const minutesOfDay = (at: string | undefined) => {
  const hit = at ? /T(\d\d):(\d\d)/.exec(at) : null;
  return hit ? Number(hit[1]) * 60 + Number(hit[2]) : undefined;
};
