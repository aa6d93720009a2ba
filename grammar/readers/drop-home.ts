/** Reader "drop", dogs that did not go out, told around the dog: "kept Boots back", "left Rook out today", "all but Gus, who stayed in". */
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { notDone } from './denied.ts';
import { underPlan } from './plan-day.ts';
import { doubted, said } from './said.ts';

const KEEP = /^(kept|keep|keeping|keeps|held|hold|holding|left|leave|leaving|leaves|scratched|scratch|scratching)$/;
const END = /^([.,;:]|and|with|for|because|since|today|tomorrow|tonight|this|so|but|as|on|to|again|)$/;

/** "Same team except Boots sat out", "everyone but Gus, who stayed home": the one excepted. */
export function exceptedHome(f: Frame, verb: number): DogPhrase | undefined {
  const k = f.low(verb - 1) === 'who' ? (f.low(verb - 2) === ',' ? verb - 2 : verb - 1) : verb;
  return f.dogs.find((d) => d.excepted && d.kind === 'names' && d.to === k && d.dogs.length > 0);
}

/** Adds the drops. `taken` holds the dogs of drops that are read already. */
export function readKeptBack(f: Frame, taken: Set<DogPhrase>): void {
  for (const d of f.dogs) {
    if (taken.has(d) || !d.dogs.length || d.dogs[0] === '*' || d.possessive || d.excepted || d.negative) continue;
    const verb = f.low(d.from - 1);
    if (!KEEP.test(verb)) continue;
    const to = keptTo(f, d, verb);
    if (!to || notDone(f, d.from - 1, to)) continue;
    taken.add(d);
    const heard = f.assertionWithin(d.from - 1, to);
    f.add({
      kind: 'drop',
      dogs: d.dogs,
      manner: 'home',
      ...said(heard === 'present' && underPlan(f, d.from) ? 'planned' : heard),
      span: f.span([d.from - 1, to]),
      rule: '<dog> kept back',
      ...doubted(d.doubt),
    });
    f.claim(d.from - 1, to);
  }
}

/** The token behind what says that the dog stayed: "back", "in", "out today", "off the team". */
function keptTo(f: Frame, d: DogPhrase, verb: string): number | undefined {
  const [a, b, c] = [f.low(d.to), f.low(d.to + 1), f.low(d.to + 2)];
  const standing = f.out && d.dogs.every((x) => f.lineup(d.from).some((l) => l.dog === x));
  if (/^scratch/.test(verb)) {
    if (/^(before|from)$/.test(a) && b === 'the' && /^(start|team|run|race|lineup)$/.test(c)) return d.to + 3;
    return /^(this|today|in)$/.test(a) && /^(morning|the)$/.test(b || 'morning') && !standing ? d.to + 1 : undefined;
  }
  if (standing) return undefined;
  if (/^(back|in)$/.test(a) && /^(kept|keep|keeps|keeping|held|hold|holding)$/.test(verb) && END.test(b))
    return d.to + 1;
  if (
    a === 'out' &&
    /^(left|leave|leaving|leaves|kept|keep|keeping)$/.test(verb) &&
    (END.test(b) || (b === 'of' && /^(it|the|today|this)$/.test(c)))
  )
    return d.to + 1;
  if (a === 'off' && (END.test(b) || (b === 'the' && /^(team|line|lineup|truck|run)$/.test(c)))) return d.to + 1;
  return undefined;
}
