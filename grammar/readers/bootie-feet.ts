/** Which feet booties are on, and whose feet they are. */
import type { Paw } from '../entry.ts';
import type { DogPhrase, Frame, Mention, Site } from '../steps/frame.ts';
import type { Read } from './booties.ts';

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

function clear(f: Frame, s: Site, from: number, to: number): boolean {
  const [a, b] = s.from >= to ? [to, s.from] : [s.to, from];
  for (let k = a; k < b; k++) {
    const low = f.low(k);
    if (/^(but|because|then)$/.test(low)) return false;
    if (low === ',' && s.from >= to && k + 1 >= s.from - 1 && /^([.,;!]|)$/.test(f.low(s.to))) continue;
    if (low === ',' && s.from >= to && !f.m.from('paws', s.from) && !/^(just|only|all|both|the)$/.test(f.low(k + 1)))
      return false;
    if (low === ',' && s.to <= from) return false;
    const d = f.dogFrom(k);
    if (d && !d.possessive && d.kind === 'names' && !d.prep) return false;
    if (f.m.from('sign', k) && s.from >= to && !f.m.from('boot-state', k)) return false;
  }
  return true;
}

/** "zinc cream + bootie on": one bootie goes on the one foot just spoken of. */
export function singleFoot(f: Frame, h: Mention, lo: number, hi: number): Paw[] {
  if (!/^(bootie|boot|booty|bootee|boody|boote|shoe)$/.test(f.low(h.from))) return [];
  const last = f.sites.filter((s) => s.to <= lo && s.paws.length === 1).at(-1);
  if (!last) return [];
  const between = f.dogs.some((d) => d.from >= last.to && d.to <= lo && d.kind === 'names' && !d.company);
  void hi;
  return between ? [] : [...last.paws];
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
  const inside = f.dogs.find((d) => d.from >= lo && d.to <= hi && !d.company && d.dogs.length);
  if (inside) return { dogs: inside.dogs, phrase: inside, doubt: inside.doubt };
  const object = f.dogFrom(to) ?? (/^(all|up|the|both|back)$/.test(f.low(to)) ? f.dogFrom(to + 1) : undefined);
  if (
    object?.dogs.length &&
    !object.possessive &&
    /^(boot|booted|booting|booty|rebooted|bootied|up)$/.test(f.low(to - 1))
  )
    return { dogs: object.dogs, phrase: object, doubt: object.doubt };
  return f.owner(from, to, undefined, true);
}
