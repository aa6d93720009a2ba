/** Reader "move", two dogs that change with each other: "swapped Dash and Scout", "Ivy and Rook traded spots", "switched Tank with Kestrel". */
import type { LeftRight, Position } from '../entry.ts';
import type { DogPhrase, Frame, Mention } from '../steps/frame.ts';
import type { Assignment } from './place-assignments.ts';
import { said } from './said.ts';

const PLACES = /^(out|around|the|places|place|positions|spots|sides|side|to|over|with|between)$/;

/** Each takes the other's place; in one row, the other's side. */
export function readSwaps(f: Frame, list: readonly Assignment[]): void {
  for (const s of f.m.of('swap')) {
    const pair = changing(f, s);
    if (!pair) continue;
    const { dogs, to, from } = pair;
    if (list.some((a) => a.dogs.some((x) => dogs.includes(x)))) continue;
    const [a, b] = dogs.map((x) => f.roster.lineup.find((l) => l.dog === x));
    if (!a?.position || !b?.position) continue;
    const row = a.position === b.position;
    if (row && (!a.side || !b.side || a.side === b.side || !f.out)) continue;
    for (const [dog, other] of [
      [a.dog, b],
      [b.dog, a],
    ] as const)
      f.add({
        kind: 'move',
        dogs: [dog],
        position: other.position as Position,
        ...(row ? { side: other.side as LeftRight } : {}),
        ...said(f.assertion(from, to)),
        span: f.span([from, to]),
        rule: 'swap <dogs>',
        doubt: 'some',
        because: 'the places come from the line-up, they were not said',
      });
    f.claim(from, to);
  }
}

/** The two dogs of a change, and where it was told. */
function changing(f: Frame, s: Mention): { dogs: readonly string[]; from: number; to: number } | undefined {
  let k = s.to;
  while (PLACES.test(f.low(k)) && !f.dogFrom(k)) k++;
  const two = (d: DogPhrase | undefined) =>
    d?.dogs.length === 2 && !d.possessive && !d.negative && (d.kind !== 'group' || f.out) ? d : undefined;
  const behind = f.dogFrom(k);
  const both = two(behind);
  if (both && f.low(s.from - 1) !== 'the') return { dogs: both.dogs, from: s.from, to: both.to };
  // "switched Tank with Kestrel"
  if (behind?.kind === 'names' && behind.dogs.length === 1 && !behind.possessive && f.out) {
    const mate = f.low(behind.to) === 'with' ? f.dogFrom(behind.to + 1) : undefined;
    if (mate?.kind === 'names' && mate.dogs.length === 1 && !mate.possessive && mate.dogs[0] !== behind.dogs[0])
      return { dogs: [behind.dogs[0] as string, mate.dogs[0] as string], from: s.from, to: mate.to };
  }
  // "Ivy and Rook traded spots", "the wheelers switched sides"
  if (
    !f.out ||
    !/^(places|place|positions|spots|sides)$/.test(
      f.low(/^(places|place|positions)$/.test(f.low(s.to - 1)) ? s.to - 1 : s.to),
    )
  )
    return undefined;
  const before = two(f.dogs.findLast((d) => d.to <= s.from && s.from - d.to <= 2));
  const between =
    before && f.tokens.slice(before.to, s.from).every((t) => /^(have|just|both|'ve|has|got)$/.test(t.low));
  return before && between ? { dogs: before.dogs, from: before.from, to: s.to } : undefined;
}
