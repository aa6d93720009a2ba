/** Signs in a beginner's words and in the clinic's, each with what must stand around it: "like a rock", a foot held up, "d+". */
import type { Frame, Mention } from '../steps/frame.ts';
import type { Guard } from './sign-words.ts';

/** "shoulder feels like a rock": a muscle's, and said to be or to feel so. */
export const muscleHard: Guard = ({ f, m, sites, prev }) =>
  sites.some((s) => /^(shoulder|triceps|thigh|back|neck|hip|chest|groin|leg)$/.test(s.part ?? '')) &&
  (/^feel/.test(f.low(m.from)) ||
    /^(is|are|'s|was|were|feels|feel|felt|all|just|pretty|really|gone|went|got|,|:)$/.test(prev) ||
    f.siteAt(m.from - 1) !== undefined);

/** "Gus is holding his left hind foot up": the dog does it; a hand that lifts a paw finds nothing. */
export function limbHeld(f: Frame, m: Mention): boolean {
  let k = m.from;
  while (
    /^(is|'s|was|kept|keeps|keep|been|has|started|starts|stands|stood|still|just|always|there|and|,)$/.test(
      f.low(k - 1),
    )
  )
    k--;
  const d = f.dogs.find((x) => x.to === k || (x.possessive && x.to === k + 1));
  // "holding up her right front": the limb stands inside the words or right behind them
  const limb = f.sites.find((s) => s.from >= m.from && s.from <= m.to + 1);
  const his = f.tokens.slice(m.from, m.to + 1).some((t) => /^(his|her|its|the|a|one|that|'s)$/.test(t.low));
  const part = limb !== undefined && /^(foot|leg)$/.test(limb.part ?? 'foot');
  return d !== undefined && d.dogs.length === 1 && his && part;
}

/** Sticks letters and a plus: "d+ x2", "v+", never a list of dogs. */
const clipped: Guard = ({ f, m, next }) => !f.tokens[m.from + 1]?.gap && !f.dogFrom(m.to) && !/^[+]$/.test(next);

const HARD =
  'like a rock;hard as a rock;hard as rock;rock hard;like a board;hard as a board;like wood;like a brick;hard as a brick;like rope;like a rope;ropy;ropey;like cables;like a knot';

/** The guards of these words. */
export const plainGuards: Record<string, Guard> = {
  'd +': clipped,
  'v +': clipped,
  ...Object.fromEntries(HARD.split(';').map((w) => [w, muscleHard])),
};
