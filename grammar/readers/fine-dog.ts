/** Of the whole dog: "unhurt", "fine all over", "sound"; that it is well watered. */
import type { Frame, Mention } from '../steps/frame.ts';
import type { Finding, ReadFinding } from './finding-parts.ts';
import { doubted } from './places.ts';

/** Of the whole dog: "unhurt", "fine all over", "sound"; plain praise is left to the attitude. */
export function readFineDog(
  f: Frame,
  m: Mention,
  words: string,
  k: number,
  found: readonly ReadFinding[],
): ReadFinding[] {
  const allOver =
    /^(all over|everywhere|otherwise|to me|physically|healthwise|nose to tail)/.test(
      `${f.low(m.to)} ${f.low(m.to + 1)}`,
    ) && !/^(to me|otherwise)/.test(`${f.low(m.to)} ${f.low(m.to + 1)}`);
  const strong =
    /^(unhurt|uninjured|unharmed|sound|sound as a bell|none the worse|checked out fine|checked out|checks out|passed|intact|pain free|healthy|unremarkable|nad|nsf|wnl)$/.test(
      words,
    ) ||
    allOver ||
    // "Rook's got a bruise on the hip, Gus is clean": where dogs are gone over
    (words === 'clean' &&
      /^(is|'s|was|are|were|looks)$/.test(f.low(m.from - 1)) &&
      found.length > 0 &&
      f.dogAt(k)?.kind === 'names' &&
      !f.tokens.some((t) => t.i < m.from && /^(feet|foot|paws?)$/.test(t.low)) &&
      !f.m.of('food').some((x) => x.to <= m.from));
  if (!strong) return [];
  const d = f.dogAt(k) ?? f.dogs.filter((x) => x.to <= m.from && !x.company).at(-1);
  if (!d?.dogs.length || f.strongBetween(d.to, m.from)) return [];
  const now = f.low(m.to) === 'now';
  const entry: Finding = {
    kind: 'finding',
    dogs: d.dogs,
    sign: words.startsWith('sound') && now ? 'lame' : 'any',
    assertion: now ? 'resolved' : 'absent',
    span: f.span([Math.max(d.from, m.from - 8), m.to]),
    rule: '<dog> is fine',
    ...doubted(d.doubt),
  };
  return [{ entry, from: m.from, to: m.to }];
}

export function readHydration(f: Frame, m: Mention, k: number): ReadFinding[] {
  const owner = f.owner(k, m.to);
  if (owner.human) return [];
  const entry: Finding = {
    kind: 'finding',
    dogs: owner.dogs,
    sign: 'dehydrated',
    assertion: 'absent',
    span: f.span([k, m.to]),
    rule: 'hydration is fine',
    ...doubted(owner.doubt),
  };
  return [{ entry, from: k, to: m.to }];
}
