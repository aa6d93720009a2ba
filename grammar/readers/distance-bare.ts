/** Reader "distance", numbers without a unit: a distance only in a distance's own slot ("eleven to go", "24 all told", "now at 30"). */
import type { EntryOf } from '../entry.ts';
import type { Frame, Quantity } from '../steps/frame.ts';
import { leftOf, metric } from './beside.ts';
import { addDistance } from './distance-entries.ts';
import { placeToPlace } from './distance-measures.ts';
import { partOfWay } from './distance-not.ts';

/** Reads a number without a unit. */
export function readBare(f: Frame, q: Quantity, left: string, right: string): boolean {
  if (q.dimension !== 'number' || q.weak || q.unit || (q.spelled === undefined && f.tokens[q.from]?.kind !== 'number'))
    return false;
  const own: EntryOf<'distance'>['unit'] = metric(f) ? 'km' : 'mi';
  // A bare number is a distance only in a distance's own slot.
  if (
    /^(still )?(more )?(to go|left to go|remaining|left to run|left to do|to do$|to do [.,;]|(ahead|in front) of us|yet to (go|come|run|do))\b/.test(
      right,
    ) ||
    // "eighteen kilometres in and eleven still before us"
    (/^(still |yet |more )*(before (us|me)|ahead|to come(?! (home|back|in|to|out|over|down)))\b/.test(right) &&
      (/^(still|yet|more)\b/.test(right) || f.entries.some((e) => e.kind === 'distance'))) ||
    (/^left\b(?! (front|hind|side|lead|rear|wrist|the|them|him|her|at|on|half|in|wheel|swing|shoulder|foot))/.test(
      right,
    ) &&
      /(^|and|,|\.|about|with|got|'s|is|are|have|only|just|maybe|cabin|camp|hut)$/.test(
        left.trim() === '' ? '' : (left.split(' ').at(-1) ?? ''),
      ))
  ) {
    addDistance(f, 'remaining', q.value, unitBefore(f, q) ?? own, q.from, q.to, '<n> to go');
    return true;
  }
  if (
    (/^(from the|up to the|down to the|out to the|over to the|on to the|on up to the|back to the|to the (cabin|hut|checkpoint|lake|river|road|yard|lodge))\b/.test(
      right,
    ) ||
      (summed(f, q) &&
        /^(to the|up|down|out|back|home|over|across|to (come|get|go) (home|back|there))\b/.test(right))) &&
    !f.dogs.some((d) => d.to === q.from) &&
    q.value >= 1 &&
    !/\b(at|it 's|temp|minus)$/.test(left)
  ) {
    addDistance(f, 'leg', q.value, own, q.from, q.to, '<n> from <place> to <place>');
    return true;
  }
  if (
    /^(in|out)\b(?! (lead|swing|team|wheel|the|a|heat|season|front|tonight|today|all|total|his|her|my|an|it|(jan|febr)uary|march|april|may|june|july|august|(sept|nov|dec)ember|october|fall|autumn|spring|winter|summer)\b)/.test(
      right,
    ) &&
    (/\b(we 're|about|now|are|at|around|roughly|was|is|what)$/.test(left) ||
      (left === '' && /^in( (and|so far|now)\b| ?[,.;]|$)/.test(right) && f.out))
  ) {
    addDistance(f, 'mark', q.value, own, q.from, q.to, '<n> in');
    return true;
  }
  // "loaded him at seventeen": where it happened. An hour could be meant by a small number.
  if (
    f.out &&
    /\b(loaded|load|bagged|dropped|carried|unhooked|picked up|sled|basket|bag|booties|stumbled|slipped|quit|balked|tangled|tangle)\b[^,]*\bat$/.test(
      left,
    ) &&
    (q.value > 24 || (q.value > 12 && f.entries.some((e) => e.kind === 'distance' && e.measure === 'mark'))) &&
    q.value < 1000 &&
    !/^(dogs|below|above|degrees|percent|minutes|hours|pounds|pm|am|o'clock)\b/.test(right)
  ) {
    addDistance(f, 'mark', q.value, own, q.from, q.to, '<what happened> at <n>');
    return true;
  }
  if (partOfWay(f, q) && partTold(f, q, right)) {
    addDistance(f, 'leg', q.value, unitBefore(f, q) ?? own, q.from, q.to, 'the last <n>');
    return true;
  }
  if (bareTotal(f, q, left, right)) {
    addDistance(f, 'total', q.value, own, q.from, q.to, '<n> all told');
    return true;
  }
  if (placeToPlace(f, q)) {
    addDistance(f, 'leg', q.value, own, q.from, q.to, '<place> to <place> <n>');
    return true;
  }
  if (
    /^(behind us|in the bag|under our belts?|under the runners|down|done)\b/.test(right) &&
    !/^down (to|from)/.test(right) &&
    (left === '' || /\b(got|have|with|now|about|'ve)$/.test(left)) &&
    q.value >= 1
  ) {
    addDistance(f, 'mark', q.value, own, q.from, q.to, '<n> behind us');
    return true;
  }
  if (
    /\b(go|run|do|going|running|doing|do about|for)$/.test(left) &&
    /^(tomorrow|tmrw|today|sunday|monday|tuesday|wednesday|thursday|friday|saturday|next time|if)\b/.test(right) &&
    q.value > 2 &&
    q.value < 150 &&
    !/\bat$/.test(left)
  ) {
    addDistance(f, 'total', q.value, own, q.from, q.to, '<go> <n> <day>');
    return true;
  }
  if (
    /\b(we 're at|now at|made it to|'ve come|have come|come about|ran|did|went|logged|covered|do the|did the|ran the|made the|knocked out|put in|clocked)$/.test(
      left,
    ) &&
    !/^(dogs|of|laps|loops|teams|am|pm|o'clock|times|minutes|hours|days|in)\b/.test(right) &&
    !q.clock?.minute &&
    q.value > 2 &&
    !hoursBefore(f, q)
  ) {
    const at = /(at|to|come|come about)$/.test(left);
    if (at && q.value > 200) return false;
    addDistance(f, at ? 'mark' : 'total', q.value, own, q.from, q.to, '<verb> <n>');
    return true;
  }
  return false;
}

/** "out three hours, ran two and a half": hours again. */
const hoursBefore = (f: Frame, q: Quantity): boolean =>
  q.value < 6 &&
  f.quantities.some(
    (o) =>
      o.dimension === 'duration' &&
      o.value >= 60 &&
      o.to <= q.from &&
      q.from - o.to < 4 &&
      !f.strongBetween(o.to, q.from),
  );

/** "first ten miles went quick, last five were a slog", "rode the last eight": what is told of it is of the way. */
function partTold(f: Frame, q: Quantity, right: string): boolean {
  if (q.value < 2 || !/^([.,;]|was|were|went|took|and|with|felt|in|home|but|)( |$)/.test(right)) return false;
  const last = f.entries.findLast((e) => e.kind === 'distance' && (e.span?.[1] ?? 0) <= q.span[0]);
  if (
    last?.kind === 'distance' &&
    last.measure === 'leg' &&
    (f.tokens[q.from]?.start ?? 0) - (last.span?.[1] ?? 0) < 60
  )
    return true;
  return /\b(rode|led|lead|leading|walked|limped|ran|carried|trotted|loped|coasted|pulled|hauled|wheeled)\b/.test(
    leftOf(f, q, 6),
  );
}

/** "twenty four all told", "18.4 on the GPS", "did 20 yesterday and 12 today", "cut it short at 22": a bare number for the run's length. */
function bareTotal(f: Frame, q: Quantity, left: string, right: string): boolean {
  if (
    q.value < 2 ||
    q.value > 400 ||
    (/\b(at|weigh\w*|temp|minus|dogs|of)$/.test(left) && !/\bcut it (off |short )+at$/.test(left))
  )
    return false;
  if (f.dogs.some((d) => d.to === q.from)) return false;
  if (
    /\b(cut it short|cut it off|turned it in|called it) (at|after)$/.test(left) &&
    q.value > 12 &&
    /^(|[.,;]|because|so|and|since|when)( |$)/.test(right)
  )
    return true;
  const marked = f.entries.some((e) => e.kind === 'distance' && e.measure === 'mark');
  if (
    /^on the (gps|odometer|tracker|garmin|watch|counter|odo|inreach|phone|dial|computer)\b/.test(right) &&
    !marked &&
    !/\b(mile|km|at|now)\b/.test(left)
  )
    return true;
  // "twice around the lake, that's 11"
  if (
    /\b(that 's|that makes|makes|comes to|came to|came out to)( about| just)?$/.test(left) &&
    /\b(around|round|loop|loops|laps|twice|times|out and back|up and back)\b/.test(leftOf(f, q, 12)) &&
    /^([.,;]|and|today|)( |$)/.test(right)
  )
    return true;
  if (
    /^(all told|in all|in total|altogether|total|for the (day|run|trip|loop|night)|round trip|out and back)\b/.test(
      right,
    ) &&
    (left === '' || /(^|,|so|that 's|that makes|makes it|makes|was|about|roughly|around|and|a|did|ran)$/.test(left)) &&
    !/^total (of|dogs)/.test(right)
  )
    return true;
  const before = f.entries.findLast(
    (e) => e.kind === 'distance' && e.measure === 'total' && (e.span?.[1] ?? 0) <= q.span[0],
  );
  return (
    before !== undefined &&
    /^(today|yesterday|tomorrow|on (mon|tues|wednes|thurs|fri|satur|sun)day|this morning)\b/.test(right) &&
    /(^|,|and|then|but|only)$/.test(left) &&
    f.sentence(f.tokens.findIndex((t) => t.end > (before.span?.[0] ?? 0))) === f.sentence(q.from)
  );
}

/** "eleven miles so far, five to go": the unit that the sentence said just before. */
const unitBefore = (f: Frame, q: Quantity): 'mi' | 'km' | undefined => {
  const unit = f.quantities.findLast(
    (o) =>
      o.dimension === 'distance' && o.to <= q.from && q.from - o.to < 8 && f.sentence(o.from) === f.sentence(q.from),
  )?.unit;
  return unit === 'mi' || unit === 'km' ? unit : undefined;
};

/** The length of the whole is told already: "26 in all. Eleven to the shack, fifteen to come home." */
const summed = (f: Frame, q: Quantity) =>
  f.entries.some((e) => e.kind === 'distance' && e.measure === 'total' && e.span && e.span[1] <= q.span[0]) &&
  /^(|,|and|, and|then|, then)$/.test(leftOf(f, q, 2).split(' ').slice(-1).join(' '));
