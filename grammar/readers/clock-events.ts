/** Reader "clock": what happened at a time of day: leaving, a stop, getting back, anything else. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Quantity } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import { leftOf } from './beside.ts';

export type Event = EntryOf<'clock'>['event'];

/** Words that tell the event, tried in this order at each place; the nearest before the time wins. */
const EVENTS: readonly [Event, RegExp][] = [
  [
    'other',
    /^(left there|(left|away|off|out|going|going on|moving|rolling|underway|under way|started|on the trail|back on the trail) again|back on the trail|(out of|off from|away from|departed|depart)( the)? (checkpoint|cabin|hut|lake|lodge|camp|ckpt|cp|village)|left( the)? (checkpoint|cabin|hut|lake|lodge|camp|road|xing|crossing|village|river|bridge|ckpt|cp|stop|truck stop)|hook(ed|ing)? up|turned( a?round)?|turn(ed)?|fed|feeding|supper|dinner|breakfast|brekkie|brekky|tucker|chow|kibble|lunch|meds|pull the hook|pulled the hook|pulled hook|hook pulled|hook 's pulled|woke|up at|weighed|watered|passed|crossed|reached|sunrise|sunset|dark|snow started|meeting|vet|arrive at|left camp)\b/,
  ],
  [
    'finish',
    /^(back (in|at|home|to)|back|home|in the yard|finish(ed)?|done|got (in|home|back)|arrived|returned|pulled into the yard|rolled into the yard|rolled in|came in|in|unhooked|got to the truck|ret|fin|arr|end(ed)?|wrapped up)\b/,
  ],
  [
    'stop',
    /^(stop(ped|ping)?|halt(ed)?|break|breather|parked|park|camp(ed)?|pulled (into|over|up|in)|shut( (her|it|them|em|everybody|everyone|things|the (team|dogs)))? down|tied up|water stop|snack(ed)?|rest(ed|ing)?|snack stop|paused|halted|layover|foot check|anchored|bedded|straw)\b/,
  ],
  [
    'start',
    /^(left|leave|leaving|out of( the)? yard|started?|starting|start|headed out|heading out|head out|took off|set (off|out)|rolled out|rolling|departed|depart|off|out|underway|under way|launched|pulled out|away|go(ing)? out|went out|hit the trail|on the trail|leaving the yard|pull out|dep|lv)\b/,
  ],
];

const words = (f: Frame, a: number, b: number) => wordsIn(f.tokens, Math.max(0, a), b);

/** "We're back! It's like three oh five": the time of the sentence before. */
export function backSaid(f: Frame, q: Quantity): boolean {
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
export function eventOf(f: Frame, q: Quantity, reach = 10): Event | undefined {
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
      f.tokens.slice(Math.max(0, k - 12), k).some((t) => /^(out|left|start)$/.test(t.low))
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
    // "his back": but "back by ten" is not of a dog's
    if (
      /^(out|off|back|away|home)$/.test(hit[0]) &&
      f.siteAt(k) &&
      !(
        /^(by|at|before|after|around|about|just)$/.test(f.low(k + 1)) &&
        /^(be|is|was|were|'re|'s|and|,|got|came)$/.test(f.low(k - 1))
      )
    )
      continue;
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
