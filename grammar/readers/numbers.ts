/** Readers of numbers, and the order in which they are asked; speed, wind and air temperature themselves. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Quantity } from '../steps/frame.ts';
import { leftOf, metric, rightOf } from './beside.ts';
import { readClock } from './clock.ts';
import { readDistance, readMark } from './distances.ts';
import { readColonTime, readDuration } from './durations.ts';
import { skyAssertion } from './forecast.ts';
import { readMeasures } from './measures.ts';
import { said } from './places.ts';

/** Reads everything that is a number with a unit, or a number in a number's slot. */
export function readNumbers(f: Frame): void {
  const used = new Set<Quantity>();
  readMeasures(f, used);
  for (const q of f.quantities) {
    if (used.has(q) || f.isClaimed(q.from, q.to)) continue;
    if (readMark(f, q) || readSpeed(f, q) || readDistance(f, q) || readTemperature(f, q)) used.add(q);
  }
  for (const q of f.quantities) {
    if (used.has(q) || f.isClaimed(q.from, q.to)) continue;
    if (readColonTime(f, q) || readClock(f, q) || readDuration(f, q)) used.add(q);
  }
}

/** Speed and wind share their units; wind has its word close by. */
function readSpeed(f: Frame, q: Quantity): boolean {
  const left = leftOf(f, q, 10);
  const right = rightOf(f, q, 4);
  // "thirty mile wind": by the hour
  const perHour =
    q.dimension === 'distance' &&
    /^(mi|km)$/.test(q.unit ?? '') &&
    /^(winds?|gusts?|breeze|headwind|tailwind|crosswind)\b/.test(right);
  if (perHour) q = { ...q, dimension: 'speed', unit: q.unit === 'mi' ? 'mph' : 'km/h' };
  const windy =
    /\b(winds?|gusts?|gusting|breeze|headwind|crosswind|tailwind|blowing)\b/.test(left) ||
    /^((of )?(wind|winds|gusts?|breeze|headwind)|out of the|from the|nw|ne|sw|se|knots|northerly)\b/.test(right) ||
    (q.unit === 'kn' && f.low(q.to - 1) !== 'knot') ||
    q.unit === 'm/s';
  if (q.unit === 'kn' && !windy) return false;
  if (
    windy &&
    (q.dimension === 'speed' ||
      (q.dimension === 'number' &&
        !q.weak &&
        /\b(winds?|gusts?|gusting|breeze|headwind|blowing)\b[^.]{0,30}$/.test(left) &&
        /\b(at|to|of|about|around|maybe|is|was|winds?|gusts?|gusting|up|over|from|near|roughly|like|'s|blowing|n|s|e|w|nw|ne|sw|se|say|good|steady)$/.test(
          left,
        )))
  ) {
    const unit = (q.unit as EntryOf<'wind'>['unit'] | undefined) ?? (metric(f) ? 'km/h' : 'mph');
    if (!/^(mph|km\/h|kn|m\/s)$/.test(unit)) return false;
    f.add({
      kind: 'wind',
      dogs: [],
      value: q.value,
      unit,
      ...said(skyAssertion(f, q.from, q.to)),
      span: f.span([q.from, q.to]),
      rule: 'wind <speed>',
    });
    f.claim(q.from, q.to);
    return true;
  }
  const averageBehind =
    /^(mph |km|kmh |on )?(avg|average|averaged|moving average|average speed|moving)\b/.test(right) &&
    q.dimension === 'number' &&
    !q.weak &&
    q.value > 2 &&
    q.value < 30 &&
    !q.unit;
  const average =
    /\b(average|averaging|averaged|avg 'd|avged|avg|ave|averages|avge|moving at|doing|rolling at|cruising at|(?:trotting|loping|going|running|moving|trucking|cruising|rolling|bowling|ticking|plodding|humming) along at|down to|holding|speed|clip|speed is|clocking|trotting at|loping at|running at|tops?|topp(?:ed|ing) out at|max(?:ed|ing)? out at|top speed|max speed|peaked at|peaking at|pace|average is|speed of)( is| was| of| around| about| at| a| just| an| over| under| somewhere| steady| solid| maybe| probably| roughly|,|:)*$/.test(
      left,
    );
  const bare =
    q.dimension === 'number' &&
    !q.weak &&
    average &&
    (!/\b(doing|holding|pace)\b[^.]*$/.test(left) ||
      /\b(gps|watch|phone|tracker)\b[^.]*\b(doing|holding)$/.test(left)) &&
    !/^(lb|pounds|dogs|minutes|hours)/.test(right) &&
    q.value > 1 &&
    q.value < 40;
  // "they're doing 11 on the flat"
  const onTheFlat =
    q.dimension === 'number' &&
    !q.unit &&
    !q.weak &&
    q.value > 2 &&
    q.value < 30 &&
    /\b(they 're|they are|dogs are|team 's|team is|we 're|were|still|now) (doing|going|making)( about| around| maybe| a steady| a solid| roughly)?$/.test(
      left,
    ) &&
    /^(on the (flats?|lake|river|straight|level)|uphill|downhill|up the hill|steady|easy|flat out|across the (lake|river))\b/.test(
      right,
    );
  // "hitting twelve on the downhills", "clocked them at fourteen", "ten on the flats" behind a speed
  const onGround =
    /^(on the (flats?|lake|river|straights?|level|downhills?|downs?|uphills?|ups|climbs?|hills?|ice|way home)|(going )?(up|down)hill|(up|down) the hills?|coming (down|off)|at (times|the top|best))\b/;
  const speedTold = f.entries.some(
    (e) => e.kind === 'speed' && e.span && q.span[0] - e.span[1] < 40 && q.span[0] >= e.span[1],
  );
  const byGround =
    q.dimension === 'number' &&
    !q.unit &&
    !q.weak &&
    q.value > 2 &&
    q.value < 40 &&
    ((/\b(hit|hitting|hits|touched|touching|reached|reaching|clocked|clocking|seeing|saw|making|doing|held|holding)( about| around| maybe| almost| nearly| up to| near)?$/.test(
      left,
    ) &&
      onGround.test(right)) ||
      (/\b(clocked|clocking|had|got) (us|them|em|the team|me)( going| moving)? (at|doing)( about| around)?$/.test(
        left,
      ) &&
        /^($|[.,;]|and|on|down|up|coming|going|at)/.test(right)) ||
      (speedTold &&
        /(^|,|and|but|or|then|maybe|about|closer to|more like|to)$/.test(left.split(' ').slice(-1).join('')) &&
        onGround.test(right)));
  if (/\b(down to)$/.test(left) && q.dimension !== 'speed') return false;
  // "speed since then: 17.9", "we hold 17 now"
  const headed =
    (/\b(speed|pace|average)( \w+){0,4} :$/.test(left) ||
      (/\bwe( are|'re)? (hold|holding|keep|keeping|make|making)$/.test(left) &&
        /^(now|on|steady|all|\.|,|$)/.test(right))) &&
    q.dimension === 'number' &&
    !q.weak &&
    q.value > 2 &&
    q.value < 40;
  // "fifteen kilometres in the hour"
  const inTheHour =
    q.dimension === 'distance' && /^(mi|km)$/.test(q.unit ?? '') && /^(in the|each|every) hour\b/.test(right);
  if (q.dimension !== 'speed' && !bare && !headed && !averageBehind && !inTheHour && !onTheFlat && !byGround)
    return false;
  if (inTheHour) q = { ...q, unit: q.unit === 'mi' ? 'mph' : 'km/h' };
  if (q.unit && q.unit !== 'mph' && q.unit !== 'km/h') return false;
  const unit = (q.unit as 'mph' | 'km/h' | undefined) ?? (metric(f) ? 'km/h' : 'mph');
  f.add({
    kind: 'speed',
    dogs: [],
    value: q.value,
    unit,
    ...said(f.assertion(q.from, q.to)),
    span: f.span([q.from, q.to]),
    rule: '<speed>',
  });
  f.claim(q.from, q.to);
  return true;
}

const OTHER_UNIT =
  /^(mile|miles|km|minutes|hours|dogs|pounds|lbs?|kilos?|percent|%|inches|feet|of us|times|to go|mph|left)\b/;
/** A number that the words around make the air's: "thermometer said 14", "high of 20", "warmed up to 28", "right around zero". */
function airByWords(f: Frame, q: Quantity, right: string): boolean {
  if (OTHER_UNIT.test(right)) return false;
  const left = leftOf(f, q, 9);
  if (
    /\b(thermometer|temp|temperature|temps|thermo|mercury)( outside| here| now|( (in|at|on|by|from) the \w+))?( says| reads| is| was| at| of| about| around| still| 's| sitting|:| reading| showing| shows| showed| said| read| says| down to| up to| dropped to| fell to| rose to| climbed to| hit| got to| went to| only| just| right| hovering| near)*( plus| about| around)?$/.test(
      left,
    )
  )
    return true;
  const small = q.value >= -80 && q.value <= 60 && !q.clock?.minute;
  if (!small) return false;
  if (
    /\b(highs?|lows?)( today| tonight| tomorrow| yesterday)?( of| was| is| were| around| about| near| only| just| in the)*$/.test(
      left,
    ) &&
    !/\b(the|a|his|her|too|pretty|very|so|is|was|heart|how) (highs?|lows?)$/.test(left)
  )
    return true;
  if (
    /(?:^|[^a-z'])(warmed|warming|warms|cooled|cooling|(?:'ll|will|might|should|may|could|supposed to|going to|gonna) (?:warm|cool))( right| back)?( up| off| down)?( nearly| almost)? to( about| around| like| a| nearly)*$/.test(
      left,
    ) &&
    !f.dogs.some((d) => d.to <= q.from && q.from - d.to < 7 && !f.strongBetween(d.to, q.from))
  )
    return true;
  return (
    q.value === 0 &&
    /^(zero|0)$/.test(f.low(q.from)) &&
    (overOther(f, left, right) ||
      (/(^|\b(about|around|near|nearly|hovering|right|it 's|its|it is|it was|was|just|above|at))( right| about| around| near| at| just| above| like)*$/.test(
        left,
      ) &&
        /^($|[.,;]|(?:out|outside|degrees|this|when|at|and|all|now|here|today|tonight|in the|on the|with|by|again|but)\b)/.test(
          right,
        ))) &&
    !/\b(chance|wind|weigh|score|percent|visibility)\b/.test(left)
  );
}

/** "ten below in the bottoms, zero up top". */
const overOther = (f: Frame, left: string, right: string): boolean =>
  /^(up|down) (top|high|on|in|at|there|here|low|by)\b/.test(right) &&
  /,( and| but| about)?$/.test(left) &&
  f.quantities.some((o) => o.dimension === 'temperature');

function readTemperature(f: Frame, q: Quantity): boolean {
  const left = leftOf(f, q, 5);
  const right = rightOf(f, q, 3);
  let ok = q.dimension === 'temperature';
  if (!ok && q.dimension === 'number' && !q.unit && (!q.weak || q.value === 0)) ok = airByWords(f, q, right);
  if (!ok) return false;
  // no air is so warm: a point was lost
  if (Math.abs(q.value) > 150 || /\b(weigh|weight|bcs)\b/.test(left)) return false;
  // "dropped ten degrees on the river": by how much it changed
  if (
    /\b(dropped|drops|fell|fallen|rose|risen|climbed|lost|gained|warmed|cooled|colder|warmer|swing of)( up| off| down)?( by| about| another| almost| nearly| some| a good| roughly)*$/.test(
      left,
    ) &&
    !q.bySign &&
    !/^(above|below)$/.test(f.low(q.to - 1))
  )
    return false;
  const unit =
    (q.unit as 'F' | 'C' | undefined) ??
    (/^(on the old )?(fahrenheit|f)\b/.test(right) || /\bfahrenheit\b/.test(leftOf(f, q, 8))
      ? 'F'
      : /^(celsius|c|centigrade)\b/.test(right)
        ? 'C'
        : metric(f)
          ? 'C'
          : 'F');
  if (unit !== 'F' && unit !== 'C') return false;
  f.add({
    kind: 'temperature',
    dogs: [],
    value: q.value,
    unit,
    ...said(skyAssertion(f, q.from, q.to)),
    span: f.span([q.from, q.to]),
    rule: '<temperature>',
  });
  f.claim(q.from, q.to);
  return true;
}
