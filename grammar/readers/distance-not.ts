/** Reader "distance": lengths that are not the run's: depth of snow, how long something is, a month's sum. */
import type { Frame, Quantity } from '../steps/frame.ts';
import { leftOf, rightOf } from './beside.ts';

/** "up to the cabin", "from here to the road": a length has two ends. */
const TO_PLACE = /^(of \w+ )?(up|down|out|over|back|across|home)? ?(to|from|into) (the|a|our|my|here|there|\w+)\b/;

/** "the first ten miles went quick", "rode the last five", "for the first half mile": a part of the way. */
export function partOfWay(f: Frame, q: Quantity): boolean {
  const left = leftOf(f, q, 4);
  const right = rightOf(f, q, 3);
  if ((q.unit && !/^(mi|km)$/.test(q.unit)) || f.tokens.slice(q.from, q.to).some((t) => t.low === 'couple'))
    return false;
  if (/^(of (?!it|them|the (run|trip|way|loop|trail|day))|to go|left|remaining)\b/.test(right)) return false;
  return /(^|[.,;:] |\b(the|our|my|and|then|but|for|those|these|that) )(first|last|final|opening|closing)( good| full| easy| long| slow)?( about| of)?$/.test(
    left,
  );
}

/** A length that is not the run's: depth of snow, how long something is, a stretch of trail. */
export function notOfRun(f: Frame, q: Quantity): boolean {
  const right = rightOf(f, q, 5);
  const left = leftOf(f, q, 5);
  if (partOfWay(f, q)) return false;
  if (q.unit === 'in' || q.unit === 'cm' || q.unit === 'mm') return true;
  if (/\b(visibility|see|view)\b/.test(left)) return true;
  // "loosened up after a mile"
  if (
    /^(a|an|another)$/.test(f.low(q.from)) &&
    !/^out from\b/.test(right) &&
    /\b(after|for|in|within|about|every|over|than|not)$/.test(left)
  )
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
