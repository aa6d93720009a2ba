/**
 * Sentences of a word or two that go on with the finding before them: "Hock's swollen. Left.", "Limping. Right hind.",
 * "Still lame. Little better." The speaker leaves out what she has just said.
 */
import type { Frame } from '../steps/frame.ts';
import { partTakesEnd, type ReadFinding } from './finding-parts.ts';

const PLACE = /^(the|on|his|her|left|right|both|front|fronts|hind|hinds|rear|back|fore|one|side|of|them|l|r|,)$/;
const ENDS_OF: Readonly<Record<string, 'front' | 'hind'>> = {
  front: 'front',
  fronts: 'front',
  fore: 'front',
  hind: 'hind',
  hinds: 'hind',
  rear: 'hind',
  back: 'hind',
};
const FEW = 5;

/** Gives the finding before a fragment the side, end or trend that the fragment tells. */
export function readFragments(f: Frame, found: readonly ReadFinding[]): void {
  let from = 0;
  for (let i = 0; i <= f.tokens.length; i++) {
    if (i < f.tokens.length && !f.isStrong(i)) continue;
    if (from > 0 && i > from && i - from <= FEW && !f.isClaimed(from, i)) goOn(f, found, from, i);
    from = i + 1;
  }
}

function goOn(f: Frame, found: readonly ReadFinding[], from: number, to: number): void {
  const last = found.filter((r) => r.to < from).at(-1);
  if (!last || f.sentence(from) - f.sentence(last.to - 1) !== 1 || last.entry.sign === 'any') return;
  if (last.entry.assertion && last.entry.assertion !== 'possible') return;
  const trend = f.m.from('trend', /^(a|just|maybe|bit|little)$/.test(f.low(from)) ? skipSmall(f, from) : from);
  if (trend && trend.to >= to && !last.entry.trend) {
    last.entry.trend = trend.value;
    f.claim(from, to);
    return;
  }
  const words = f.tokens.slice(from, to).map((t) => t.low);
  if (!words.every((w) => PLACE.test(w))) return;
  const side = words.includes('both')
    ? ('both' as const)
    : words.some((w) => /^(left|l)$/.test(w))
      ? ('left' as const)
      : words.some((w) => /^(right|r)$/.test(w))
        ? ('right' as const)
        : undefined;
  const end = words.map((w) => ENDS_OF[w]).find(Boolean);
  const { entry } = last;
  if (!side || entry.side || entry.end) return;
  const footed = entry.part !== undefined && partTakesEnd(entry.part);
  // a limb has no front and hind of its own, and a limp without its leg needs both
  if (end && entry.part && !footed) return;
  if (!entry.part && !(end && entry.sign === 'lame')) return;
  if (!entry.part) entry.part = 'leg';
  entry.side = side;
  if (end) entry.end = end;
  f.claim(from, to);
}

/** Behind "a bit", "just a little". */
function skipSmall(f: Frame, from: number): number {
  let k = from;
  while (/^(a|just|maybe|bit|little)$/.test(f.low(k)) && !f.m.from('trend', k)) k++;
  return k;
}
