/** Reader "duration": how long a run, a stop or something else took, also where it is told with a colon. */
import type { Frame, Quantity } from '../steps/frame.ts';
import { leftOf, ofPart, rightOf } from './beside.ts';
import { said } from './places.ts';

/** "22 miles, 2:40": hours and minutes right behind a length are how long it took. */
export function readColonTime(f: Frame, q: Quantity): boolean {
  if (q.dimension !== 'clock' || !q.clock || q.clock.meridiem || q.clock.hour > 9 || !/:/.test(f.low(q.from)))
    return false;
  const before = f.quantities.filter((x) => x.to <= q.from).at(-1);
  // "1:52 moving time", "run time 2:40", "took us 1:35"
  const ofRun =
    /^(moving time|running time|run time|total time|trail time|elapsed|on the trail|on the runners|run(ning)?( |$)|moving( |$))/.test(
      rightOf(f, q, 3),
    ) ||
    /\b((moving|running|run|total|trail|elapsed|loop) time|took us|took them|ran for|out for|time on the trail|time)( was| of| is| :|:| about)*$/.test(
      leftOf(f, q, 5),
    );
  if (
    !ofRun &&
    (before?.dimension !== 'distance' ||
      q.from - before.to > 2 ||
      (before.to !== q.from && !/^(,|in|and|-)?$/.test(f.low(q.from - 1))))
  )
    return false;
  return addDuration(f, q, 'run', q.clock.hour * 60 + q.clock.minute, '<distance>, <hours:minutes>');
}

const STOP =
  /\b(halt|halted|halting|stopping|stood|been stopped|tea|break|breather|stop|stopped|stops|rest|rested|resting|parked|camp|camped|camping|layover|pause|paused|gave (em|them|everyone|everybody)|snack stop|snooze|nap|pulled (over|in|up)|shut( (her|it|them|em|everybody|everyone|things|the (team|dogs)))? down|tied up|on straw|lunch|snacked|siesta|held|mandatory|checkpoint|bedded|straw|picnic|stayed|sat|(we 'll|we|they|let 'em|let them) sit|had (our|their|its))\b/;
const CHORE =
  /\b(massag\w*|cooled|cooling|warmed|warming|wrapped|wrapping|cleaned|cleaning|bandag\w*|rubbed|rub|stretch\w*|kneaded|worked on|took me|thaw|axe|chore|chores|dig|digging|fix|fixing|soak\w*|iced?|hooking up|hook up|untangl\w*|harnessing|booting|boot|feeding|later|chopping|repair\w*|waiting|waited|wait|walked|looking|search\w*|to get|took us|held (snow|ice|a \w+ \w+|it)|(snow|ice) on)\b/;

/** "stopped for ten at the bridge", "took five at the top", "gave them twenty": minutes, as the word for a rest says. */
function minutesOfRest(f: Frame, q: Quantity): boolean {
  if (q.dimension !== 'number' || q.unit || q.weak || q.value % 5 !== 0 || q.value > 45 || q.value < 5) return false;
  const left = leftOf(f, q, 6);
  const right = rightOf(f, q, 4);
  const rested =
    /\b(stopped|stop|stopping|paused|pause|halted|rested|rest|parked|pulled (over|up)|held up|hung out|sat|waited|break|breather|nap)( here| there| them| em| everyone| everybody)?( for)( about| a good| maybe| just| another)*$/.test(
      left,
    );
  const took =
    f.out &&
    /(^|[.,;] |\b(we|i|and|then|they|all|just) )(just )?(took|take|taking|grabbed|gave (them|em|everyone|everybody))( about| a quick| another| maybe)*$/.test(
      left,
    ) &&
    /^(($|[.;])|(at|by|on|in) (the|our|a) |to (snack|water|rest|cool|let|check|stretch)\b)/.test(right) &&
    !/\b(lead|swing|team|wheel)\b/.test(right);
  if (!rested && !took) return false;
  return /^($|[.,;]|(at|by|on|in|to|so|and|while|because|here|there|for|before|after|then|near|under|halfway|when)\b)/.test(
    right,
  );
}

/** "24 miles in two thirty-eight": hours and minutes in a row behind a length. */
const hoursInARow = (f: Frame, q: Quantity): boolean =>
  q.dimension === 'number' &&
  q.spelled === true &&
  (q.clock?.minute ?? 0) > 0 &&
  (q.clock?.hour ?? 99) < 13 &&
  f.low(q.from - 1) === 'in' &&
  /^([.,;]|and|with|so|but|)$/.test(f.low(q.to)) &&
  f.quantities.some((o) => o.to === q.from - 1 && o.dimension === 'distance');

export function readDuration(f: Frame, q: Quantity): boolean {
  if (minutesOfRest(f, q)) return addDuration(f, q, 'stop', q.value, 'stopped for <n>');
  if (hoursInARow(f, q))
    return addDuration(
      f,
      q,
      'run',
      (q.clock?.hour ?? 0) * 60 + (q.clock?.minute ?? 0),
      '<distance> in <hours minutes>',
    );
  if (q.dimension !== 'duration' || q.weak) return false;
  // "eating poorly for three days": how long it has gone on is nobody's time on the trail
  if (
    q.value >= 24 * 60 &&
    !/\b(rest|rested|resting|layover|camp|camped|stop|stopped|off)\b/.test(leftOf(f, q, 6) + rightOf(f, q, 3))
  )
    return false;
  // seconds are a way of saying "at once"
  if (q.value < 1) return false;
  // "two days off"
  if (/^days?$/.test(f.low(q.to - 1)) && f.low(q.to) === 'off') return false;
  // "a fourth-year student", "a two year old"
  if (q.value > 60 * 24 * 60 && !/\b(rest|rested|off)\b/.test(leftOf(f, q, 4))) return false;
  const left = leftOf(f, q, 9);
  const right = rightOf(f, q, 6);
  if (
    /^(later|ago|early|late|away|apart|old|from now|after|before|out from|behind|ahead|earlier|or so later|since)\b/.test(
      right,
    )
  )
    return false;
  if (
    /\b(every|last|next|another|past|within|in about|after|first|for the last|couple|final|per|under|half past|each|than|since)$/.test(
      left,
    ) &&
    !/\b(break|rest|stop)\b/.test(right) &&
    // "stopped after six hours of running"
    !(/\bafter$/.test(left) && /^(of (running|travel|travelling|mushing)|on the (trail|runners|move))\b/.test(right))
  )
    return false;
  let of: 'run' | 'stop' | 'other' = 'other';
  // "fifteen minutes of that parked", "of which ten minutes were the break"
  const share =
    /^of (that|those|it|which|this)\b/.test(right) || /\bof (which|that|those)( about| roughly| some)?$/.test(left);
  const whole =
    /\b(took|takes)( us| me| them)?( about| just| over| under| around)*$/.test(left) &&
    /^(to (do|run|cover|make|finish|get home|get back|go) |for the (run|loop|whole|trip)|all told|door to door)/.test(
      `${right} `,
    );
  // "I've had maybe three hours of sleep": the musher's own
  if (
    /^of (sleep|shut-?eye)\b/.test(right) &&
    /\b(i|my|me|we) ('ve )?(had|have|got|slept|managed|'ve)\b[^.]*$/.test(left)
  )
    return false;
  const near = right.split(' ').slice(0, 4).join(' ');
  const chore =
    CHORE.test(left) ||
    /^(to (get|thaw|dig|fix|untangle|find|sort|hook)|of (massage|digging|work)|massage|with the axe)\b/.test(right);
  if (
    /^(of (rest|sleep|break|straw)|parked|stopped|halted|stop|halt|break|rest|breather|layover|pause|snack|camp|nap|snooze|water|lunch|off|on straw|at the( halfway| old| next| first| last| second| road| trapper 's)? (hut|cabin|checkpoint|lake|fire|bothy|shelter|tent|warmup))\b/.test(
      near,
    ) ||
    (/^(snack|water|lunch|foot)\b/.test(near) && STOP.test(right)) ||
    (share && STOP.test(rightOf(f, q, 9))) ||
    /^(here|there)\b/.test(right) ||
    /^for (lunch|tea|coffee|soup|cocoa|supper|dinner|breakfast|water|watering|a (snack|break|rest|breather|drink|nap)|the (snack|break)|snacks?|broth)\b/.test(
      right,
    ) ||
    /\b(water|snack|soup|lunch|rest|break|straw|nap|stop|picnic)( ,|:| for| of| about)*$/.test(left)
  )
    of = 'stop';
  else if (
    chore &&
    !STOP.test(
      left
        .split(' ')
        .slice(-4)
        .join(' ')
        .replace(/\bheld (snow|ice|a|it)\b/, ''),
    )
  )
    of = 'other';
  else if (
    (STOP.test(left) ||
      (/\bfor( about| a good| some)?$/.test(left) && /\bpulled (over|in|up)\b/.test(leftOf(f, q, 16)))) &&
    !/(\bso (about |roughly |some )?$|\b(so far|total|run|all told)\b[^,]*$)/.test(`${left} `)
  )
    of = 'stop';
  else if (
    /^(with (the )?(snack |water |rest )?(stops|breaks)|on the (runners|trail|sled)|run|loop|round|all told|total|with (the )?(stops|breaks)|including|moving|out on|trip|in total|counting|door to door|for the (run|loop|trip|whole)|start to finish)\b/.test(
      right,
    ) ||
    /\b(run|loop|out for|took (them|us)|total|trip|in|ran for|on the trail|running time|time|round trip)( of| about| around| just| over| under| was| took| them| us)*$/.test(
      left,
    )
  )
    of = legNear(f, q) && !/\b(run|loop|total)\b/.test(left + right) ? 'other' : 'run';
  else if (legNear(f, q)) of = 'other';
  // "pulled up for juice at ten to twelve, forty minutes all up"
  else if (
    /^(all up|altogether|in all)\b/.test(right) &&
    f.entries.some(
      (e) =>
        e.kind === 'clock' && e.event === 'stop' && f.sentence(tokenAt(f, e.span?.[0] ?? 0)) === f.sentence(q.from),
    )
  )
    of = 'stop';
  else if (!chore && wholeRunTold(f, q)) of = 'run';
  if (
    whole ||
    (/\btook (us|me|them)$/.test(left) && f.entries.some((e) => e.kind === 'distance' && e.measure === 'total'))
  )
    of = 'run';
  if (/^(of (running|travel|travelling|mushing|run time|trail time)|on the (trail|runners|move))\b/.test(right))
    of = 'run';
  if (of === 'run' && ofPart(f, q)) of = 'other';
  // a rest of days is no stop on the way
  if (of === 'stop' && q.value > 24 * 60) of = 'other';
  return addDuration(f, q, of, q.value, `<duration> of ${of}`);
}

function addDuration(f: Frame, q: Quantity, of: 'run' | 'stop' | 'other', minutes: number, rule: string): boolean {
  f.add({
    kind: 'duration',
    dogs: [],
    of,
    minutes,
    ...said(f.assertion(q.from, q.to)),
    span: f.span([q.from, q.to]),
    rule,
  });
  f.claim(q.from, q.to);
  return true;
}

const legNear = (f: Frame, q: Quantity) =>
  f.entries.some(
    (e) =>
      e.kind === 'distance' &&
      e.measure === 'leg' &&
      e.span &&
      Math.abs(e.span[1] - q.span[0]) < 60 &&
      !f.strongBetween(tokenAt(f, e.span[0]), q.from),
  );
const tokenAt = (f: Frame, offset: number) => f.tokens.findIndex((t) => t.end > offset);

/** The note tells a whole run: its length, its finish, or an outing. */
function wholeRunTold(f: Frame, q: Quantity): boolean {
  if (q.value < 5) return false;
  if (f.entries.some((e) => e.kind === 'distance' && e.measure === 'total')) return true;
  return (
    /\b(back in the yard|back at the|home at|finish|outing|on skis|on the kicksled|kick sled|all told|field|loop)\b/.test(
      f.text.toLowerCase(),
    ) || f.entries.some((e) => e.kind === 'speed')
  );
}
