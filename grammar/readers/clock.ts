/** Reader "clock": a time of day and what happened at it. The half of the day that was not said is settled by the event and the time of speaking. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Quantity } from '../steps/frame.ts';
import type { Clock } from '../steps/quantities.ts';
import { leftOf } from './beside.ts';
import { forecastTold } from './forecast.ts';
import { said } from './places.ts';

type Event = EntryOf<'clock'>['event'];

/** Words that tell the event, tried in this order at each place; the nearest before the time wins. */
const EVENTS: readonly [Event, RegExp][] = [
  [
    'other',
    /^(left there|(left|away|off|out|going|going on|moving|rolling|underway|under way|started|on the trail|back on the trail) again|back on the trail|(out of|off from|away from|departed|depart)( the)? (checkpoint|cabin|hut|lake|lodge|camp|ckpt|cp|village)|left( the)? (checkpoint|cabin|hut|lake|lodge|camp|road|xing|crossing|village|river|bridge|ckpt|cp|stop|truck stop)|hook(ed|ing)? up|turned( a?round)?|turn(ed)?|fed|feeding|supper|dinner|breakfast|lunch|meds|pull the hook|pulled the hook|pulled hook|hook pulled|hook 's pulled|woke|up at|weighed|watered|passed|crossed|reached|sunrise|sunset|dark|snow started|meeting|vet|arrive at|left camp)\b/,
  ],
  [
    'finish',
    /^(back (in|at|home|to)|back|home|in the yard|finish(ed)?|done|got (in|home|back)|arrived|returned|pulled into the yard|rolled into the yard|rolled in|came in|in|unhooked|got to the truck|end(ed)?|wrapped up)\b/,
  ],
  [
    'stop',
    /^(stop(ped|ping)?|halt(ed)?|break|breather|parked|park|camp(ed)?|pulled (into|over|up|in)|water stop|snack(ed)?|rest(ed|ing)?|snack stop|paused|halted|layover|foot check|anchored|bedded|straw)\b/,
  ],
  [
    'start',
    /^(left|leave|leaving|out of( the)? yard|started?|starting|start|headed out|heading out|head out|took off|set (off|out)|rolled out|rolling|departed|depart|off|out|underway|under way|launched|pulled out|away|go(ing)? out|went out|hit the trail|on the trail|leaving the yard|pull out|dep)\b/,
  ],
];

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
  const event = heardEvent === 'start' && stoppedBefore(f, q) ? 'other' : heardEvent;
  if (q.dimension !== 'clock' && !event && !/^(at|by|around|about|@|till|until|before|after|past)$/.test(prev))
    return false;
  // "rain by noon, they say": of the weather
  if ((!event || event === 'other') && /^(by|before|after|around|till|until)$/.test(prev) && forecastTold(f, q.from))
    return false;
  // "we leave at two" has not been yet
  const toCome =
    /\b(leave|leaving|leaves|start|go|meet|arrive)\b/.test(words(f, q.from - 6, q.from)) &&
    !/\b(left|started|after|before|since)\b/.test(words(f, q.from - 6, q.from)) &&
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

const words = (f: Frame, a: number, b: number) => {
  const out: string[] = [];
  for (let k = Math.max(0, a); k < b; k++) out.push(f.low(k));
  return out.join(' ');
};

/** "We're back! It's like three oh five": the time of the sentence before. */
function backSaid(f: Frame, q: Quantity): boolean {
  if (
    !/^(it 's|it is|its|time|clock says|time is)( now| like| about| just| only| nearly| almost| exactly)*$/.test(
      leftOf(f, q, 5),
    )
  )
    return false;
  const end = f.tokens.findLastIndex((_, k) => k < q.from && f.isStrong(k));
  let start = end;
  while (start > 0 && !f.isStrong(start - 1)) start--;
  return (
    end > 0 &&
    /^(and |ok |okay |so |hey |well |yay )*(we 're |we are |i 'm |all |finally )*(back|home|done|in the yard)\b( again| now| home| safe| already| in the yard| ,)*$/.test(
      words(f, start, end),
    )
  );
}

/** The event nearest before the time in its sentence, else right behind it. */
function eventOf(f: Frame, q: Quantity, reach = 10): Event | undefined {
  for (let k = q.from - 1; k >= 0 && q.from - k <= reach && !f.isStrong(k); k--) {
    // "stopped for lunch at noon", "pulled over for a snack at 1"
    if (
      /^(lunch|supper|dinner|breakfast|tea|soup|coffee)$/.test(f.low(k)) &&
      /\b(stop(ped|ping)?|halted|pulled (over|in|up)|parked|paused|camped)\b[^,]*\bfor( a| some| our| quick)*$/.test(
        words(f, k - 6, k),
      )
    )
      return 'stop';
    const other = f.quantities.find((x) => x !== q && x.dimension === 'clock' && x.from <= k && k < x.to);
    if (other) break;
    // "twenty below when we left, five below by noon": the time is of the reading
    if (f.quantityAt(k)?.dimension === 'temperature') break;
    // "turned for home at three": the way there begins
    if (f.low(k) === 'home' && /^(for|toward|towards)$/.test(f.low(k - 1))) continue;
    const event = eventAt(f, k, Math.min(q.from, k + 5));
    // The hook is pulled to leave the yard, unless a stop was told before: then to go on.
    if (
      event &&
      /^(pull|pulled|pulling|hook)$/.test(f.low(k)) &&
      /\b(pull\w*( the)? hook|hook('s| was)? pulled)\b/.test(words(f, k, k + 4))
    )
      return f.entries.some((e) => e.kind === 'clock' || (e.kind === 'duration' && e.of === 'stop'))
        ? 'other'
        : 'start';
    if (event) return event;
  }
  // "12:20, short stop at the barn": a time as the heading of what follows
  const heads = (q.from === 0 || f.isStrong(q.from - 1)) && /^(,|:|-)$/.test(f.low(q.to));
  for (
    let k = heads ? q.to + 1 : q.to;
    k < f.tokens.length && k - q.to < 4 && !f.isStrong(k) && f.low(k) !== ',';
    k++
  ) {
    const event = eventAt(f, k, k + 4);
    if (event) return event;
  }
  return undefined;
}

function eventAt(f: Frame, k: number, end: number): Event | undefined {
  const text = words(f, k, Math.min(end, f.tokens.length));
  for (const [event, pattern] of EVENTS) {
    const hit = pattern.exec(text);
    if (!hit) continue;
    if (
      hit[0] === 'in' &&
      f.low(k - 1) === ',' &&
      f.tokens.slice(Math.max(0, k - 6), k).some((t) => /^(out|left|start)$/.test(t.low))
    )
      return event;
    // "will be in about eight"
    const arrives =
      /^(be|are|were|'re|come|coming|roll|rolled)$/.test(f.low(k - 1)) &&
      /^(at|about|around|by|near)$/.test(f.low(k + 1));
    if (hit[0] === 'in' && k !== 0 && !f.isStrong(k - 1) && !/^(got|back)$/.test(f.low(k - 1)) && !arrives) continue;
    if (
      hit[0] === 'home' &&
      /^(crew|team|kennel|dogs|bunch|gang|yard|stretch|trail|trip|loop|string)$/.test(f.low(k + 1))
    )
      continue;
    if (
      hit[0] === 'up at' &&
      /^(pull|pulls|pulled|pulling|parked|held|set|ended|hooked|tied|drew|draw|camped)$/.test(f.low(k - 1))
    )
      continue;
    if (/^(out|off|back|away|home)$/.test(hit[0]) && f.siteAt(k)) continue;
    // "at the start", "fog burned off by ten", "topped out at 16", "wore out by noon"
    if (
      /^(start|finish|end|stop|break)$/.test(hit[0]) &&
      /^(the|our|a)$/.test(f.low(k - 1)) &&
      /^(at|from|near|by|before|after|since)$/.test(f.low(k - 2))
    )
      continue;
    if (
      /^(off|out)$/.test(hit[0]) &&
      /^(burned|burnt|lifted|cooled|dried|topped|maxed|wore|worn|sun|stars|came|came|ran|moon|tapped|cleared|blew|backed|eased|died|tapered|let|fell|figured|sold|straightened|spread|passed|wiped|played)$/.test(
        f.low(k - 1),
      )
    )
      continue;
    // "started snowing around ten", "started to limp at nine"
    if (/^start(ed|ing)?$/.test(hit[0]) && (/ing$/.test(f.low(k + 1)) || f.low(k + 1) === 'to')) continue;
    if (hit[0] === 'on the trail' && f.low(k - 1) === 'back') return 'other';
    if (/^left$/.test(hit[0]) && (f.siteAt(k) || f.m.at('position', k + 1) || f.dogFrom(k + 1))) continue;
    if (hit[0] === 'out' && f.low(k + 1) === 'there') continue;
    if (
      hit[0] === 'turn' ||
      (hit[0] === 'off' && /^(took|pulled|came|booties)$/.test(f.low(k - 1)) && f.low(k - 1) !== 'took')
    )
      continue;
    return event;
  }
  return undefined;
}

const two = (n: number) => String(n).padStart(2, '0');

/** Puts the time into the day: as said where a half of the day was said, else the likely one for the event and for now. */
function settle(clock: Clock, event: Event, f: Frame, q: Quantity, planned: boolean): string {
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
  const near = f.tokens
    .slice(Math.max(0, q.from - 16), q.to + 5)
    .filter(
      (t) =>
        f.sentence(t.i) === f.sentence(q.from) && (f.quantityAt(t.i)?.dimension !== 'clock' || f.quantityAt(t.i) === q),
    )
    .map((t) => t.low)
    .join(' ');
  if (
    /\b(noon|lunch|afternoon|tonight|evening|supper|dinner|midday|dusk|sunset)\b/.test(near) &&
    !/\bbefore noon\b/.test(near)
  )
    return hour === 12 ? 12 : hour >= 10 && /\b(lunch|noon|midday)\b/.test(near) ? hour : pm;
  if (/\b(this morning|breakfast|morning|dawn|sunrise|first light|a m)\b/.test(near)) return am === 0 ? 12 : am;
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
  // The latest one that is not yet to come; a few minutes of grace for a watch that is off.
  if (p <= now + 20) return pm;
  if (a <= now + 20) return am;
  return plausible(hour, event);
}

const plausible = (hour: number, event: Event) => {
  const am = hour % 12;
  if (event === 'start' || event === 'other') return am >= 4 ? am : am + 12;
  return am >= 7 ? am : am + 12;
};

/** Can the time still come today? */
function later(f: Frame, clock: Clock): boolean {
  const now = minutesOfDay(f.context.at);
  if (now === undefined) return false;
  const h = clock.meridiem === 'pm' || (!clock.meridiem && clock.hour < 12) ? (clock.hour % 12) + 12 : clock.hour;
  return h * 60 + clock.minute > now + 20;
}

const minutesOfDay = (at: string | undefined) => {
  const hit = at ? /T(\d\d):(\d\d)/.exec(at) : null;
  return hit ? Number(hit[1]) * 60 + Number(hit[2]) : undefined;
};
