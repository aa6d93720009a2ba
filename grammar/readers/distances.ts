/** Reader "distance": where the team is, how long the run or a part of it was, how far it is still; and lengths that are none of these. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Quantity } from '../steps/frame.ts';
import { leftOf, metric, ofPart, rightOf } from './beside.ts';
import { said } from './places.ts';

const MARK_WORD = /^(mile|km|kilometre|kilometer|k|kilometres|kilometers|klick|mi|marker|kms)$/;
const KM_WORD = /^(km|kilometre|kilometer|k|klick|kilometres|kilometers|kms)$/;

/** "mile fourteen", "km 34", "k fourteen", "mile marker 9". */
export function readMark(f: Frame, q: Quantity): boolean {
  if (q.dimension !== 'number' && !(q.dimension === 'distance' && !q.unit) && q.dimension !== 'temperature')
    return false;
  if (q.dimension === 'temperature' && q.unit) return false;
  let k = q.from - 1;
  if (/^(#|-|marker|number|post|about|around|roughly|:)$/.test(f.low(k))) k--;
  const word = f.low(k);
  if (!MARK_WORD.test(word) || (f.tokens[k - 1]?.kind === 'number' && f.quantityAt(k))) return false;
  const unit = KM_WORD.test(word) ? 'km' : word === 'marker' ? (f.low(k - 1) === 'km' ? 'km' : 'mi') : 'mi';
  addDistance(f, 'mark', Math.abs(q.value), unit, k, q.to, 'mile <n>');
  return true;
}

type Measure = EntryOf<'distance'>['measure'];

function addDistance(
  f: Frame,
  measure: Measure,
  value: number,
  unit: EntryOf<'distance'>['unit'],
  from: number,
  to: number,
  rule: string,
): void {
  f.add({
    kind: 'distance',
    dogs: [],
    measure,
    value,
    unit,
    // "20 yesterday and 12 today"
    ...said(/^(today|this)$/.test(f.low(to)) && f.assertion(from, to) === 'past' ? 'present' : f.assertion(from, to)),
    span: f.span([from, to]),
    rule,
  });
  f.claim(from, to);
}

/** "up to the cabin", "from here to the road": a length has two ends. */
const TO_PLACE = /^(of \w+ )?(up|down|out|over|back|across|home)? ?(to|from|into) (the|a|our|my|here|there|\w+)\b/;

/** A length that is not the run's: depth of snow, how long something is, a stretch of trail. */
function notOfRun(f: Frame, q: Quantity): boolean {
  const right = rightOf(f, q, 5);
  const left = leftOf(f, q, 5);
  if (q.unit === 'in' || q.unit === 'cm' || q.unit === 'mm') return true;
  if (/\b(visibility|see|view)\b/.test(left)) return true;
  // "loosened up after a mile"
  if (/^(a|an|another)$/.test(f.low(q.from)) && /\b(after|for|in|within|about|every|over|than|not)$/.test(left))
    return true;
  if (
    /^(of|fresh|new|deep|wide|thick|long|tall|high|drifts?|drop|split|cut|gash|tear|off|square|snow)\b/.test(right) &&
    !/^of (us|it|trail to go)/.test(right) &&
    !/^of (\w+ ){0,3}(trail|road|track|going|climbing|climb|river|lake|ice) (up|down|out|over|back|to|from|across)\b/.test(
      right,
    )
  )
    return true;
  // "September: 8 runs, 44 miles": a month's sum
  if (
    /\b(january|february|march|april|may|june|july|august|september|october|november|december|month|week|season|year)( so far)? ?[:,]?( \S+){0,4} ?,?$/.test(
      leftOf(f, q, 8),
    ) &&
    /\bruns?\b/.test(leftOf(f, q, 8))
  )
    return true;
  if (/\bstart(ing)? (back )?(at|with)$/.test(left)) return true;
  if (/^(ago|apart|away from|per|an hour|a day|each|every)\b/.test(right)) return true;
  if (
    /\b(last|first|next|every|within|another|final|extra|per|each|few|couple of|second|only for|for|for the|for about|than)$/.test(
      left,
    ) &&
    !/\b(to go|left|remaining)\b/.test(right) &&
    // "another six miles to the cabin"
    !(
      f.out &&
      /\banother$/.test(left) &&
      /^(to|until|till|before|from) (the|a|our|my|home|here|we|go)\b/.test(right)
    ) &&
    !(/\b(for|the last|the first|the next) the?$|\bfor the$|\bfor$/.test(left) && TO_PLACE.test(right))
  )
    return true;
  if (/\b(foot|feet)$/.test(f.low(q.to - 1)) && /^(?!loop|run)/.test(right) && q.value < 60) return true;
  return false;
}

export function readDistance(f: Frame, q: Quantity): boolean {
  const right = rightOf(f, q, 7);
  const left = leftOf(f, q, 7);
  const unit = q.unit as EntryOf<'distance'>['unit'] | undefined;
  // "18 in, averaging 9.5": so far in, not inches
  if (
    q.unit === 'in' &&
    f.low(q.to - 1) === 'in' &&
    left === '' &&
    f.out &&
    /^([.,;]|and\b|so far|now|$)/.test(right)
  ) {
    addDistance(f, 'mark', q.value, metric(f) ? 'km' : 'mi', q.from, q.to, '<n> in');
    return true;
  }
  if (q.dimension === 'distance' && unit && /^(mi|km|m|ft|yd)$/.test(unit)) {
    if (notOfRun(f, q)) return false;
    if (/^(mi|km)$/.test(unit) && /^(in the|an|per|each|every) hour\b/.test(right)) return false;
    addDistance(f, measureOf(f, q, left, right), q.value, unit, q.from, q.to, '<distance>');
    return true;
  }
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
    (/^(from the|up to the|down to the|out to the|over to the|back to the|to the (cabin|hut|checkpoint|lake|river|road|yard|lodge))\b/.test(
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
    /\b(we 're at|now at|made it to|ran|did|went|logged|covered|do the|did the|ran the|made the|knocked out|put in|clocked)$/.test(
      left,
    ) &&
    !/^(dogs|of|laps|loops|teams|am|pm|o'clock|times|minutes|hours|days|in)\b/.test(right) &&
    !q.clock?.minute &&
    q.value > 2
  ) {
    const at = /at$|to$/.test(left);
    if (at && q.value > 200) return false;
    addDistance(f, at ? 'mark' : 'total', q.value, own, q.from, q.to, '<verb> <n>');
    return true;
  }
  return false;
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

/** "Cabin to the river 9 miles, river to here another five": a part of the way by its two ends. */
function placeToPlace(f: Frame, q: Quantity): boolean {
  const left = leftOf(f, q, 9);
  const ends =
    /(?:^|[,;:] |\band |\bfrom )(?:from )?(?:the )?(\w+)(?: \w+)? to (here|there|home|camp|(?:the|our|my) \w+|\w+)(?: is| was| makes| took us| ,|,|:)?( about| another| a good| a further| just| only)*$/.exec(
      left,
    );
  if (
    !ends ||
    /^(down|up|went|moved?|put|goes|going|back|back|close|due|got|have|used|want|wants|over|it|him|her|them|temp|wind|ten|five|twenty|quarter|from)$/.test(
      ends[1] as string,
    )
  )
    return false;
  if (q.dimension === 'distance')
    return !f.dogs.some((d) => d.to <= q.from && q.from - d.from < 9 && !f.strongBetween(d.from, q.from));
  return (
    q.dimension === 'number' &&
    (/another|further/.test(ends[3] ?? '') || /^(here|there|home|camp)$/.test(ends[2] as string)) &&
    f.entries.some((e) => e.kind === 'distance')
  );
}

/** The length of the whole is told already: "26 in all. Eleven to the shack, fifteen to come home." */
const summed = (f: Frame, q: Quantity) =>
  f.entries.some((e) => e.kind === 'distance' && e.measure === 'total' && e.span && e.span[1] <= q.span[0]) &&
  /^(|,|and|, and|then|, then)$/.test(leftOf(f, q, 2).split(' ').slice(-1).join(' '));

function measureOf(f: Frame, _q: Quantity, left: string, right: string): Measure {
  // "eleven from the truck to the cabin": from one place to another
  const ends = /^from (the|our|my) (?:\w+ ){1,2}to (the|our|my) (?!go\b)\w/.exec(right);
  if (ends && !/\b(still|another)\b/.test(left)) return 'leg';
  // "the loop is 8.4 miles"
  if (
    /\b(loop|route|course|circuit|run|outing)( today| tonight| there)?( is| was| 's| measures| comes to| came to)( about| around| just| only| exactly| roughly| a little over| under)*$/.test(
      left,
    )
  )
    return 'total';
  // "we're seven miles up the mail route"
  if (
    /\b(we|i|they)( 're| are| 'm| am| were)( about| roughly| maybe| now| just)*$/.test(left) &&
    /^(up|down|along|into|out on|in on) (the|this|our|that)\b/.test(right)
  )
    return 'mark';
  if (
    /^(still )?(more )?(to go|to home|still|left|remain|remains|remaining|yet|left to go|from (home|the (finish|yard|truck))|out from|still ahead|to (run|cover|do|home|the (yard|truck|kennel|finish))|short of|till home|until|till|ahead of us|in front of us|before us)\b/.test(
      right,
    ) &&
    !/^left (front|hind|side)\b/.test(right)
  )
    return 'remaining';
  if (
    /^(yd|m|ft)$/.test(_q.unit ?? '') &&
    /^(to|till|until|left|from|short of) (the|home|a|my|our)?\b/.test(right) &&
    f.out
  )
    return 'remaining';
  if (
    /\b(still|have|'ve got|got|with|another|only) ?(about |another )?$/.test(left) &&
    /^(to|left|still|before|until|till|from)\b/.test(right)
  )
    return 'remaining';
  if (/\b(another|remaining|remains?|it rests|rests) ?(about|us|only)?$/.test(left)) return 'remaining';
  // "loped two kilometres along the bank"
  if (
    /\b(loped|trotted|walked|paced|galloped|cantered|jogged)( for)?( about| nearly| almost| some)?$/.test(left) &&
    /^(along|across|through|up|down|over) (the|a|that)\b/.test(right)
  )
    return 'leg';
  if (
    /^(in|out|into|along|so far|done|down|gone|behind us|under|past|since|mark)\b/.test(right) &&
    !/^(in (\d+|an?|half|less|just|exactly|roughly|total|all|under|about)|out and back|out (of|to|from)|down to|in the (bag|books))\b/.test(
      right,
    ) &&
    !(/^in\b/.test(right) && f.quantityAt(_q.to + 1)?.dimension === 'duration')
  )
    return 'mark';
  if (
    /^(up|down|out|over|back|across|from|to|home|round) ?(to|from|the|into)?\b/.test(right) &&
    /^(up to|down to|out to|over to|back to|across|from|to the|to a|home|up the|down the|back from|up from|down from|back home|up|down)\b/.test(
      right,
    ) &&
    !/^(round trip|out and back|today|tonight)/.test(right)
  )
    return 'leg';
  if (placeToPlace(f, _q) || ofPart(f, _q)) return 'leg';
  if (/^of .*\b(up|down|out|over|back|to|from|across)\b/.test(right)) return 'leg';
  // "the portage alone is eight hundred yards"
  if (/^(yd|m|ft)$/.test(_q.unit ?? '') && /\b(alone|itself)( is| was|'s)?( about| some)?$/.test(left)) return 'leg';
  if (/\b(leg|lap)\b[^.]*$/.test(leftOf(f, _q, 14)) && !/\b(total|altogether|all told)\b/.test(right)) return 'leg';
  if (
    /^(all told|total|in total|in all|today|tonight|loop|run|round trip|altogether|out and back|on the|in (\d|two|three|four|five|an)|this)\b/.test(
      right,
    )
  )
    return 'total';
  if (/\b(at|were at|we 're at|are at|by|passed|past|mile|around|near|since|after|hit|made)$/.test(left))
    return f.out ? 'mark' : /\bat$/.test(left) ? 'mark' : 'total';
  if (
    /\b(total|ran|did|run of|made it|made|covered|logged|went|loop of|trip of|run was|run is|for a|totalled|totaled)( about| around| of| all| the whole| a full)?$/.test(
      left,
    )
  )
    return 'total';
  if (/\b(leg|stretch|lap|section)\b/.test(right) || /\b(leg|stretch|lap)\b/.test(leftOf(f, _q, 14))) return 'leg';
  if (!f.out) return 'total';
  // "Out at 0615, back 0940. 24 mi."
  if (f.quantities.some((x) => x.clock && /\b(back|home)( in| at| by)?$/.test(leftOf(f, x, 3)))) return 'total';
  const finished =
    f.m.of('correct').length >= 0 &&
    /\b(back in the yard|back at the|home at|all told|finished)\b/.test(f.text.toLowerCase());
  return finished || f.told.length > 1 || /\b(planned|tomorrow|plan)\b/.test(f.text.toLowerCase()) ? 'total' : 'mark';
}
