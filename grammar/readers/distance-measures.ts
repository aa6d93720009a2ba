/** Reader "distance": what a length with its unit measures: the whole run, where the team is, a part of the way, what is still to go. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Quantity } from '../steps/frame.ts';
import { leftOf, ofPart } from './beside.ts';
import { partOfWay } from './distance-not.ts';

export type Measure = EntryOf<'distance'>['measure'];

/** "Cabin to the river 9 miles, river to here another five": a part of the way by its two ends. */
export function placeToPlace(f: Frame, q: Quantity): boolean {
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

const PART_NAME = /\b(leg|lap|stretch|rep|heat|round|section|interval)\b/;
/** "in 2:38", "in two hours ten", "in three hours and a bit". */
const timeBehind = (f: Frame, q: Quantity): boolean => {
  const t = f.quantityAt(q.to + 1) ?? f.quantityAt(q.to + 2);
  return Boolean(t && (t.dimension === 'duration' || (t.clock?.minute && (t.spelled || t.dimension === 'clock'))));
};

export function measureOf(f: Frame, _q: Quantity, left: string, right: string): Measure {
  if (partOfWay(f, _q)) return 'leg';
  // "ran the two mile loop three times", "four laps of the 3 mile loop": one round of several
  if (
    /^(loop|lap|track|circuit|course|round)s?( \w+)?( ,)? (twice|((two|three|four|five|six|\d+) )?times)\b/.test(
      right,
    ) ||
    (/^(loop|track|circuit|course)\b/.test(right) &&
      /\b(laps|times|rounds|twice)( around| round| on| of)?( the| our| that)?$/.test(left))
  )
    return 'leg';
  // "six more miles": as many still to go
  if (f.tokens.slice(_q.from, _q.to).some((t) => t.low === 'more') && f.out) return 'remaining';
  // "about a mile out from home"
  if (/^out from (home|the (yard|truck|finish|kennel|cabin|checkpoint))\b/.test(right)) return 'remaining';
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
  // "24.6 miles in two thirty-eight": the time it took
  if (
    /^in\b/.test(right) &&
    timeBehind(f, _q) &&
    !placeToPlace(f, _q) &&
    !ofPart(f, _q) &&
    !PART_NAME.test(leftOf(f, _q, 14))
  )
    return 'total';
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
