/** Where on the body a sign is that names no site of its own, or only half: the site told before, the one a heading gave. */
import type { Sign } from '../entry.ts';
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import { PAIRED } from './finding-lists.ts';
import type { ReadFinding } from './findings.ts';
import { WHOLE_BODY } from './where.ts';

/** "rubbed his left shoulder and his right; neither is sore": both of the sites told last. */
function bothBefore(f: Frame, m: Mention, owner: Owner): Site | undefined {
  let k = m.from - 1;
  while (/^(is|was|are|were|looks|look|feels|seems|at|all|really)$/.test(f.low(k))) k--;
  if (!/^(neither|both|either)$/.test(f.low(k)) || k === m.from - 1) return undefined;
  const s = f.sites.filter((x) => x.to <= k && !x.anaphor && x.part).at(-1);
  if (s?.side !== 'both' || k - s.to > 6) return undefined;
  const own = f.owner(s.from, s.to, s);
  return own.dogs.join() === owner.dogs.join() ? s : undefined;
}

/** "limp in the right front; he's three-legged on it now": the leg just told. */
function onIt(f: Frame, m: Mention, owner: Owner, found: readonly ReadFinding[]): Site | undefined {
  if (f.low(m.to) !== 'on' || !/^(it|that)$/.test(f.low(m.to + 1)) || f.m.at('part', m.to + 2)) return undefined;
  const last = found.findLast((r) => r.from < m.from);
  return last?.site && last.entry.sign === 'lame' && last.entry.dogs.join() === owner.dogs.join()
    ? { ...last.site }
    : undefined;
}

/** "Tank's wrist is warm, Kestrel's is swollen": the part told of the dog before; which side, nobody said. */
function partOfHers(f: Frame, m: Mention, owner: Owner, found: readonly ReadFinding[]): Site | undefined {
  const d = f.dogs.find((x) => x.possessive && x.kind === 'names' && x.to <= m.from && m.from - x.to <= 4);
  const be = d && /^(is|are|was|were|feels|looks)$/.test(f.low(d.to)) && !f.strongBetween(d.to, m.from);
  const part = found.findLast((r) => r.from < m.from)?.entry.part;
  if (!d || !be || !part || d.dogs.join() !== owner.dogs.join()) return undefined;
  return { from: d.from, to: d.to, part, plural: /^(are|were)$/.test(f.low(d.to)), anaphor: false, paws: [] };
}

/** The site of the finding before, for a follow-on sign of the same dog. Carrying stops at lame. */
export function carriedSite(
  f: Frame,
  m: Mention,
  sign: Sign,
  owner: Owner,
  found: readonly ReadFinding[],
): Site | undefined {
  if (sign === 'lame') return onIt(f, m, owner, found);
  const two = bothBefore(f, m, owner);
  if (two) return two;
  const same = (dogs: readonly string[]) =>
    dogs.length === owner.dogs.length && dogs.every((d) => owner.dogs.includes(d));
  // "Knee's another story, it's filled", "Follow-up on Rook's shoulder. Looser, still tight though": a part told since, without a sign
  const since = f.sites.filter((s) => s.part && !s.anaphor && !s.plural && s.to <= m.from && m.from - s.to < 24).at(-1);
  if (
    since &&
    !found.some((r) => r.from <= m.from && (r.site === since || r.from >= since.from || r.to > since.from)) &&
    f.sentence(m.from) - f.sentence(since.from) <= 1
  ) {
    const named = f.dogs.some((d) => d.kind !== 'pronoun' && d.from >= since.to && d.to <= m.from);
    const o = f.owner(since.from, since.to, since);
    if (!named && same(o.dogs) && !o.human && !f.isClaimed(since.from, since.to))
      return refined(f, since, owner, found, m.from);
  }
  const hers = partOfHers(f, m, owner, found);
  if (hers) return hers;
  for (let k = found.length - 1; k >= 0; k--) {
    const r = found[k] as ReadFinding;
    if (r.from > m.from) continue;
    if (!same(r.entry.dogs)) return undefined;
    if (WHOLE_BODY.has(r.entry.sign) || (r.entry.sign === 'lame' && !r.site)) {
      if (owner.phrase && owner.phrase.from > r.to) return undefined;
      continue;
    }
    // A limb named for the limp is where the next sign is too, where nothing new is named: "favoring his shoulder, tender when I press it".
    const behind = /^(in|on|to|about)$/.test(f.low(m.to - 1)) ? m.to : m.to + 1;
    const inIt = /^(in|on|to|about)$/.test(f.low(behind - 1)) && /^(it|that|there)$/.test(f.low(behind));
    if (r.entry.sign === 'lame' && (!r.site?.part || r.site.part === 'leg') && !(inIt && r.site)) return undefined;
    // A dog named anew begins anew, unless "it" or "still" points back.
    if (owner.phrase && owner.phrase.from > r.to && !owner.carried && owner.phrase.kind === 'names') return undefined;
    return r.site ? { ...r.site } : undefined;
  }
  // A site told without a sign: "went over everybody's feet, no splits".
  const s = f.sites.filter((x) => x.to <= m.from && !x.anaphor && (x.part || x.end)).at(-1);
  // "Is that ear supposed to look so? It's oozing."
  const it = /^(it|that)$/.test(f.low(m.from - 2)) && /^('s|is|was|looks|feels)$/.test(f.low(m.from - 1));
  if (s && ((m.from - s.to < 16 && !f.strongBetween(s.to, m.from)) || (it && m.from - s.to < 14))) {
    const o = f.owner(s.from, s.to, s);
    if (same(o.dogs)) return s;
  }
  return undefined;
}

/** "Sif pads: LF worn, RH cracked": the heading's part for a bare foot is joined elsewhere; here a heading's part alone. */
export function headingSite(f: Frame, m: Mention, owner: Owner, found: readonly ReadFinding[]): Site | undefined {
  if (!owner.phrase) return undefined;
  const s = f.sites.find((x) => x.from >= (owner.phrase?.to ?? 0) && x.to <= m.from && f.low(x.to) === ':');
  // "R wrist: warm; no limp": a limp is carried to no part that another sign was told of
  return m.value === 'lame' && found.some((r) => s && r.site === s) ? undefined : s;
}

const FRONT = new Set(['wrist', 'elbow', 'shoulder', 'triceps', 'armpit', 'chest']);
const HIND = new Set(['hock', 'knee', 'thigh', 'hip', 'groin']);

/** "Hugo LF - 2 small web splits", "RH: pad worn, nail torn": the limb that stands before its parts, as a heading or with a sign. */
function limbNamed(f: Frame, s: Site, owner: Owner): Site | undefined {
  const foot = /^(foot|pad|web|toe|nail|dewclaw)$/.test(s.part ?? '');
  if (!s.part || (!foot && !FRONT.has(s.part) && !HIND.has(s.part))) return undefined;
  const limb = f.sites.filter((x) => x.to <= s.from && !x.anaphor && (x.side || x.end)).at(-1);
  if (!limb?.side || !limb.end || limb.part || s.from - limb.to > 14) return undefined;
  // "LF + RH: web splits": two feet as a heading, or told with a mark between
  if (limb.side === 'both' && (limb.paws.length !== 2 || !/^[:-]$/.test(f.low(limb.to)))) return undefined;
  if ((FRONT.has(s.part) && limb.end === 'hind') || (HIND.has(s.part) && limb.end === 'front')) return undefined;
  const heading = /^[:-]$/.test(f.low(limb.to));
  const apart = f.low(limb.to) === '.' || f.low(limb.to) === ',';
  if (s.plural && s.part !== 'web' && !heading) return undefined;
  if (!heading && !apart && !f.m.from('sign', limb.to)) return undefined;
  for (let k = limb.to; k < s.from; k++) {
    if (k > limb.to && /^[.!?\n]$/.test(f.low(k))) return undefined;
    if (f.dogFrom(k) || f.m.at('bootie', k) || f.m.at('fine', k) || /^(but|other|others|also)$/.test(f.low(k)))
      return undefined;
  }
  const own = f.owner(limb.from, limb.to, limb).dogs;
  return own.length === owner.dogs.length && own.every((d) => owner.dogs.includes(d)) ? limb : undefined;
}

/** "three-legged LH, hock swollen": a part with no side of its own is on the leg the dog was just said to be lame on. */
export function refined(f: Frame, s: Site, owner: Owner, found: readonly ReadFinding[], at: number): Site {
  // "tore a nail, left hind outside toe, bled": the toe says which nail
  const nail = found.findLast((r) => r.from < s.from);
  if (
    s.part === 'toe' &&
    s.side &&
    nail?.entry.part === 'nail' &&
    !nail.entry.side &&
    /^[,(]$/.test(f.low(s.from - 1)) &&
    f.sentence(nail.from) === f.sentence(s.from)
  ) {
    Object.assign(nail.entry, { side: s.side, ...(s.end ? { end: s.end } : {}) });
    return { ...s, part: 'nail' };
  }
  if (!s.part && !s.anaphor) {
    // "web split, RF, deep, and it's warm too": the foot is the one whose web was just told
    const told = found.find(
      (r) =>
        r.site &&
        r.entry.part &&
        r.site !== s &&
        r.site.side === s.side &&
        r.site.end === s.end &&
        r.from <= s.from &&
        s.to <= r.to + 1,
    );
    if (told) return { ...s, part: told.entry.part };
    // "right wrist is hot, none in the left one"
    const last = found.at(-1);
    // "Ivy's wrists cool, Tank a bit of heat in the right": the side of the parts gone over
    const over =
      last?.entry.part &&
      PAIRED.has(last.entry.part) &&
      /^(the|his|her)$/.test(f.low(s.from - 1)) &&
      f.sentence(at) - f.sentence(last.from) <= 1;
    if (!s.end && s.side && last?.entry.part && (over || last.entry.dogs.join() === owner.dogs.join()))
      return { ...s, part: last.entry.part, end: last.entry.end };
  }
  const limb = !s.side && !s.anaphor ? limbNamed(f, s, owner) : undefined;
  if (limb) return { ...s, side: limb.side, end: limb.end, paws: limb.paws };
  if (s.side || (s.plural && s.part !== 'web') || !s.part || s.anaphor) return s;
  // "the knee" of a dog whose right knee was told
  const same = [...found]
    .reverse()
    .find(
      (r) =>
        r.entry.part === s.part && r.entry.side && r.entry.side !== 'both' && r.entry.dogs.join() === owner.dogs.join(),
    );
  if (same) return { ...s, side: same.entry.side, end: s.end ?? same.entry.end };
  // "threw his RH bootie, pad's pink"
  if (
    /^(foot|pad|web|toe|nail)$/.test(s.part) &&
    !found.some((r) => r.site?.side && r.entry.dogs.join() === owner.dogs.join())
  ) {
    const boot = f.entries
      .filter((e) => e.kind === 'booties' && e.paws?.length === 1 && e.dogs.join() === owner.dogs.join())
      .at(-1);
    const paw = boot?.kind === 'booties' ? boot.paws?.[0] : undefined;
    const near =
      boot?.span && (f.tokens[at]?.start ?? 0) - boot.span[1] < 60 && (f.tokens[at]?.start ?? 0) > boot.span[0];
    if (paw && near) return { ...s, side: paw[0] === 'L' ? 'left' : 'right', end: paw[1] === 'F' ? 'front' : 'hind' };
  }
  // "his foot is sore, the back left one, there's a cut in the pad"
  const foot = found.at(-1);
  if (
    /^(pad|web|toe|nail)$/.test(s.part) &&
    foot?.site?.side &&
    /^(foot|pad|web|toe|nail)$/.test(foot.entry.part ?? '') &&
    foot.site.side !== 'both' &&
    foot.entry.dogs.join() === owner.dogs.join() &&
    at - foot.to < 60 &&
    !f.dogs.some((d) => d.kind !== 'pronoun' && d.from >= foot.to && d.to <= at && !owner.dogs.includes(d.dogs.join()))
  )
    return { ...s, side: foot.site.side, end: foot.site.end };
  const lame = [...found]
    .reverse()
    .find((r) => r.from < at && r.entry.sign === 'lame' && r.site?.side && r.entry.dogs.join() === owner.dogs.join());
  const leg = lame?.site;
  if (!leg?.side) return s;
  if ((FRONT.has(s.part) && leg.end === 'hind') || (HIND.has(s.part) && leg.end === 'front')) return s;
  return { ...s, side: leg.side, end: s.end ?? leg.end };
}
