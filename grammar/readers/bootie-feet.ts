/** Which feet booties are on, and whose feet they are. */
import type { Paw } from '../entry.ts';
import type { DogPhrase, Frame, Mention, Site } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import type { Read } from './bootie-entries.ts';

const ENDS = /^([.,;!]|and|but|so|)$/;
const ALL: readonly Paw[] = ['LF', 'RF', 'LH', 'RH'];

/** The feet that were said beside the bootie. */
export function pawsNear(f: Frame, from: number, to: number, before: readonly Read[]): { paws: Paw[]; site?: Site } {
  const fit = f.sites.filter(
    (s) =>
      !s.anaphor &&
      (s.paws.length > 0 || s.side || s.end) &&
      !f.strongBetween(Math.min(s.from, from), Math.max(s.from, from)),
  );
  const near = fit
    .map((s) => ({ s, gap: s.from >= to ? s.from - to : s.to <= from ? from - s.to : 0 }))
    .filter((x) => x.gap <= 7 && clear(f, x.s, from, to))
    .sort((a, b) => a.gap - b.gap);
  for (const { s } of near) {
    if (s.part && !/^(foot|pad|web|leg)$/.test(s.part)) continue;
    if (s.part && /^(pad|web)$/.test(s.part) && s.from >= to) continue;
    if (s.paws.length === 4) return { paws: [], site: s };
    if (s.paws.length) return { paws: order(s.paws), site: s };
    // "the front booties": both
    if (s.end && !s.side && !s.part && f.m.at('bootie', s.to) && f.low(s.to).endsWith('s'))
      return { paws: s.end === 'front' ? ['LF', 'RF'] : ['LH', 'RH'], site: s };
    // "his right one" after fronts: the end of the feet before.
    const last = before.at(-1)?.entry.paws;
    if (s.side && s.side !== 'both' && last?.length) {
      const fits = last.filter((p) => p[0] === (s.side === 'left' ? 'L' : 'R'));
      if (fits.length === 1) return { paws: fits, site: s };
    }
  }
  // "her back feet are iced, so she gets boots on those two"
  const two = [to, to + 1].find(
    (k) =>
      /^(those|these|them)?\s?(two|both)$/.test(wordsIn(f.tokens, k, k + 2)) ||
      (f.low(k) === 'both' && ENDS.test(f.low(k + 1))),
  );
  const pair = two !== undefined && f.low(two - 1) === 'on' && !f.dogAt(two)?.dogs.length;
  if (pair) {
    const last = f.sites.filter((s) => s.to <= from && s.paws.length === 2).at(-1);
    const other = last && f.dogs.some((d) => d.kind === 'names' && d.from >= last.to && d.to <= from);
    if (last && !other) return { paws: order(last.paws), site: last };
  }
  const there = f.sites.find(
    (s) => s.anaphor && s.from >= from - 1 && s.from - to <= 3 && /^(that|same)$/.test(f.low(s.from)),
  );
  const it = there ?? (f.low(to) === 'there' ? { from: to } : undefined);
  if (it) {
    const last = f.sites.filter((s) => s.to <= it.from && s.paws.length).at(-1);
    if (last) return { paws: order(last.paws), site: last };
  }
  return { paws: [] };
}

export const order = (paws: readonly Paw[]) => ALL.filter((p) => paws.includes(p));

/** Is a dog named behind the feet: "fronts on Rook", "hinds only on the leaders"? */
const feetOf = (f: Frame, k: number): boolean => {
  const at = /^(only|just)$/.test(f.low(k)) ? k + 1 : k;
  return /^(on|for|of)$/.test(f.low(at)) && f.dogFrom(at + 1) !== undefined;
};

function clear(f: Frame, s: Site, from: number, to: number): boolean {
  const [a, b] = s.from >= to ? [to, s.from] : [s.to, from];
  for (let k = a; k < b; k++) {
    const low = f.low(k);
    if (/^(but|because|then)$/.test(low)) return false;
    // "booties off at the truck, both of Gus's hind ones were ripped": told of one dog anew
    if (
      low === ',' &&
      s.from >= to &&
      /^(is|are|was|were|got|has|have|had)$/.test(f.low(s.to)) &&
      f.dogs.some((d) => d.possessive && d.from > k && d.to <= s.to)
    )
      return false;
    if (low === ',' && s.from >= to && k + 1 >= s.from - 1 && /^([.,;!]|)$/.test(f.low(s.to))) continue;
    if (low === ',' && s.from >= to && !f.m.from('paws', s.from) && !/^(just|only|all|both|the)$/.test(f.low(k + 1)))
      return false;
    if (low === ',' && s.to <= from) return false;
    const d = f.dogFrom(k);
    // "booties on the swing dogs and just fronts on the leaders": the feet of those behind
    if (d?.dogs.length && d.kind !== 'pronoun' && !d.possessive && s.from >= to && feetOf(f, s.to)) return false;
    // "before we went in Rook threw his right hind"
    if (d && !d.possessive && d.kind === 'names' && (!d.prep || f.m.from('boot-state', d.to))) return false;
    if (f.m.from('sign', k) && s.from >= to && !f.m.from('boot-state', k)) return false;
  }
  return true;
}

/** "zinc cream + bootie on": one bootie goes on the one foot just spoken of. */
export function singleFoot(f: Frame, h: Mention, lo: number, hi: number): Paw[] {
  if (!/^(bootie|boot|booty|bootee|boody|boote|shoe)$/.test(f.low(h.from))) return [];
  // "zinc on Piper's web and a bootie over it": the foot her web was told on
  const part = f.sites.find((s) => s.from >= lo && s.to <= h.from && s.part && !s.paws.length);
  if (part) {
    const whoseWeb = f.owner(part.from, part.to, part).dogs.join();
    const told = f.sites.findLast(
      (s) =>
        s.to <= lo && s.part === part.part && s.paws.length === 1 && f.owner(s.from, s.to, s).dogs.join() === whoseWeb,
    );
    return told ? [...told.paws] : [];
  }
  const last = f.sites.filter((s) => s.to <= lo && s.paws.length === 1).at(-1);
  if (!last) return [];
  const between = f.dogs.some((d) => d.from >= last.to && d.to <= lo && d.kind !== 'pronoun' && !d.company);
  void hi;
  return between ? [] : [...last.paws];
}

/** "he's going to put booties on all four of them": on whom they were put. */
function putOn(f: Frame, lo: number, to: number): DogPhrase | undefined {
  if (f.low(to - 1) !== 'on' && f.low(to) !== 'on') return undefined;
  if (
    ![lo, lo - 1, lo - 2].some((k) =>
      /^(put|puts|putting|slip|slipped|stick|stuck|get|throw|threw|pop|popped)$/.test(f.low(k)),
    )
  )
    return undefined;
  const d = f.dogFrom(f.low(to) === 'on' ? to + 1 : to);
  if (!d?.dogs.length || d.possessive || d.excepted || (d.kind === 'pronoun' && /^(he|she|they)$/.test(f.low(d.from))))
    return undefined;
  return d.kind === 'names' && /^(is|was|has|had|have|did|does|'s|lost|will|would|can)$/.test(f.low(d.to))
    ? undefined
    : d;
}

export function whose(
  f: Frame,
  lo: number,
  hi: number,
  site: Site | undefined,
): { dogs: string[]; phrase?: DogPhrase; human?: boolean; doubt?: string } {
  if (site?.owner) return { dogs: site.owner.dogs, phrase: site.owner };
  const from = site && site.from < lo && lo - site.to < 5 ? site.from : lo;
  const to = site && site.to > hi && site.from - hi < 5 ? site.to : hi;
  // "everybody's got booties on": the state's words begin inside the phrase
  const inside = f.dogs.find(
    (d) => ((d.from >= lo && d.to <= hi) || (d.from < lo && lo < d.to)) && !d.company && d.dogs.length,
  );
  if (inside) return { dogs: inside.dogs, phrase: inside, doubt: inside.doubt };
  // "new booties for the leaders"
  const given = f.low(to) === 'for' ? f.dogFrom(to + 1) : undefined;
  if (given?.dogs.length && !given.possessive && !given.excepted && given.kind !== 'pronoun')
    return { dogs: given.dogs, phrase: given, doubt: given.doubt };
  const on = putOn(f, lo, to);
  if (on) return { dogs: on.dogs, phrase: on, doubt: on.doubt };
  const object = f.dogFrom(to) ?? (/^(all|up|the|both|back)$/.test(f.low(to)) ? f.dogFrom(to + 1) : undefined);
  if (
    object?.dogs.length &&
    !object.possessive &&
    /^(boot|booted|booting|booty|rebooted|bootied|up)$/.test(f.low(to - 1))
  )
    return { dogs: object.dogs, phrase: object, doubt: object.doubt };
  return f.owner(from, to, undefined, true);
}
