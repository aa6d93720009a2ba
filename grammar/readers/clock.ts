/** Reader "clock": a time of day and what happened at it. */
import type { Frame, Quantity } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import { backSaid, eventOf } from './clock-events.ts';
import { later, settle } from './clock-half.ts';
import { forecastTold } from './forecast.ts';
import { said } from './places.ts';

const words = (f: Frame, a: number, b: number) => wordsIn(f.tokens, Math.max(0, a), b);

/** Reads a time of day. Gives whether it did. */
export function readClock(f: Frame, q: Quantity): boolean {
  const clock = q.clock;
  if (!clock) return false;
  const prev = f.low(q.from - 1);
  const typed = f.tokens[q.from]?.low ?? '';
  if (q.dimension !== 'clock' && !slotStands(f, q, prev, typed)) return false;
  if (prev === 'by' && f.low(q.from - 2) === typed) return false;
  if (/^(mile|km|k|kilometre|kilometer|hr|bcs|temp|t|wt)$/.test(prev)) return false;
  const heardEvent = backSaid(f, q) ? 'finish' : eventOf(f, q);
  // "in to the checkpoint at 0340, out at 0740": on again from where it stopped
  const goesOn =
    (heardEvent === 'start' && stoppedBefore(f, q)) ||
    // "rested until one", "camped from 2 to 6"
    (heardEvent === 'stop' && (/^(till|until|til)$/.test(prev) || fromTo(f, q) === 'end'));
  const event = goesOn ? 'other' : heardEvent;
  if (q.dimension !== 'clock' && !event && !/^(at|by|around|about|@|till|until|before|after|past)$/.test(prev))
    return false;
  // "rain by noon, they say": of the weather
  if ((!event || event === 'other') && /^(by|before|after|around|till|until)$/.test(prev) && forecastTold(f, q.from))
    return false;
  // "we leave at two" has not been yet
  const toCome =
    /\b(leave|leaving|leaves|start|go|meet|arrive)\b/.test(words(f, q.from - 6, q.from)) &&
    !/\b(left|started|after|before|since|did n't|did not|didn't)\b/.test(words(f, q.from - 6, q.from)) &&
    // "Start 9:05, fin 12:20"
    !(f.low(q.from - 1) === 'start' && (q.from < 2 || f.isStrong(q.from - 2))) &&
    !/^0\d/.test(typed) &&
    later(f, clock);
  const heard = f.assertion(q.from, q.to);
  const assertion = heard === 'present' && toCome ? 'planned' : heard;
  const time = settle(clock, event ?? 'other', f, q, assertion === 'planned');
  if (/^(till|until|since|before|after)$/.test(prev) && !event) return false;
  f.add({
    kind: 'clock',
    dogs: [],
    event: event ?? 'other',
    time,
    ...said(assertion),
    span: f.span([q.from, q.to]),
    rule: 'at <time>',
  });
  f.claim(q.from, q.to);
  return true;
}

/** "rested from one to three": the two ends of a time. */
function fromTo(f: Frame, q: Quantity): 'begin' | 'end' | undefined {
  const link = (k: number) => /^(to|till|until|til|-)$/.test(f.low(k));
  const hour = (o: Quantity | undefined) => o?.clock && !o.unit && /^(number|clock)$/.test(o.dimension);
  const ends = (k: number) => /^([.,;]|and|at|in|on|by|with|then|to|so|but|)$/.test(f.low(k));
  const next = f.quantityAt(q.to + 1);
  if (f.low(q.from - 1) === 'from' && link(q.to) && hour(next) && next && ends(next.to)) return 'begin';
  const first = f.quantityAt(q.from - 2);
  if (link(q.from - 1) && hour(first) && first && f.low(first.from - 1) === 'from' && ends(q.to)) return 'end';
  return undefined;
}

const HOUR_BEHIND =
  /(^|[.,;] |\b(and|we|i|then|were|was|got|came|rolled|'re|not|n't|all|finally|be) |^not )(back|home|in|out|off|away|left|leave|leaving|start|started|finished|done|up|back in|back home|got in|got back|got home|rested|camped|rest|stopped|parked|stayed put|stayed)( again| there| at camp)?( just| a little| a bit| shortly| right| soon| well| not| a hair| a touch| some time| sometime)?$/;

/** "in just after four", "back a little before five", "didn't leave till ten", "rested until one": the hour right behind its event. */
const besideHour = (f: Frame, q: Quantity, prev: string): boolean =>
  /^(after|before|past|till|until|til|near|nearly|almost)$/.test(prev) &&
  (q.value <= 12 || /^\d{3,4}$/.test(f.low(q.from))) &&
  HOUR_BEHIND.test(words(f, q.from - 8, q.from - 1)) &&
  /^([.,;]|and|with|so|but|because|then|today|tonight|this|yesterday|in|)$/.test(f.low(q.to)) &&
  eventOf(f, q) !== undefined;

/** A stop is told just before: leaving is going on, not leaving the yard. */
const stoppedBefore = (f: Frame, q: Quantity): boolean => {
  const last = f.entries.findLast((e) => e.kind === 'clock' && (e.span?.[1] ?? 0) <= q.span[0]);
  return (
    last?.kind === 'clock' &&
    last.event === 'stop' &&
    q.from - f.tokens.findIndex((t) => t.end >= (last.span?.[1] ?? 0)) < 12
  );
};

/** A number that could be a time: "at nine", "6.50" behind its event, "1830". */
function slotStands(f: Frame, q: Quantity, prev: string, typed: string): boolean {
  if (q.unit || q.dimension !== 'number') return false;
  const next = f.low(q.to);
  if (
    /^(dogs|of|degrees|below|above|each|pieces|more|less|percent|%|laps|and|people|times|kids|to|in|out|on|left|-|\/)$/.test(
      next,
    ) &&
    !/^(and|to|in|out|on|-)$/.test(next)
  )
    return false;
  if (q.spelled !== undefined || !q.weak) {
    if (fromTo(f, q) && /^(stop|finish)$/.test(eventOf(f, q) ?? '')) return true;
    if (besideHour(f, q, prev)) return true;
  }
  const at = /^(at|by|@|around|about)$/.test(prev);
  const form = /^\d{1,2}\.\d\d$|^\d{4}$/.test(typed) || (q.spelled && (q.clock?.minute ?? 0) > 0);
  if (at && eventOf(f, q)) return true;
  if (
    at &&
    prev !== 'about' &&
    prev !== 'around' &&
    /^(am|pm|a.m.|p.m.|sharp|tonight|tomorrow|today|this|in the|and|,|.|;|)$/.test(next) &&
    !/\b(average|averaging|speed|temp|weigh\w*|going|moving|wheel|cruising|holding|down|in|we 're)\b/.test(
      words(f, q.from - 5, q.from - 1),
    )
  )
    return q.clock?.minute
      ? true
      : /\b(left|start\w*|stopp?\w*|fed|supper|breakfast|dinner|back|home|in|out|off|up|parked|turned|leave|pull\w*|go|went|gone|break|arrived|got|meet|feeding|hook\w*|snack\w*|water\w*)\b/.test(
          words(f, q.from - 8, q.from),
        );
  if (form && eventOf(f, q, 6)) return true;
  // "back 155."
  if (/^\d{3}$/.test(typed) && q.clock?.minute !== undefined && eventOf(f, q, 2) && /^([.,;]|and|)$/.test(next))
    return true;
  return /^(sharp|o'clock)$/.test(next);
}
