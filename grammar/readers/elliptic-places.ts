/**
 * Reader "ellipsis", of places: "none in the left one", "his right one is not", "neither is the ear", "so is the left",
 * "the one in the left hind web has healed". Sign, part and dog come from the finding told last.
 */
import type { EntryOf, Part } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';
import { before, ENDS, endsAt, justBefore } from './elliptic-told.ts';
import { partTakesEnd } from './finding-parts.ts';
import { doubted, said } from './places.ts';
import { WHOLE_BODY } from './where.ts';

type Finding = EntryOf<'finding'>;

/** A place that a statement without a sign speaks of: a part, or a side alone. */
interface Place {
  from: number;
  to: number;
  part?: Part;
  side?: 'left' | 'right' | 'both' | 'other';
  end?: Finding['end'];
}

const BE = /^(is|'s|was|are|were|does|do|did|has|had|have)$/;
const OWN = /^(the|his|her|its|their)$/;

/** Reads what is said of another place by what it leaves out. */
export function readOtherPlaces(f: Frame): void {
  readNoneOn(f);
  readOtherFine(f);
  readOneThere(f);
  for (const p of placesOf(f)) readNotHere(f, p) || readHereToo(f, p);
}

/** The places of a note that nothing was read of yet, in their order. */
function placesOf(f: Frame): Place[] {
  const places: Place[] = f.sites
    .filter((s) => !s.anaphor && !s.plural && (s.part || s.side))
    .map(({ from, to, part, side, end }) => ({ from, to, part, side, end }));
  for (const t of f.tokens) {
    const other = t.low === 'other' && f.low(t.i + 1) === 'one';
    if (!(other || /^(left|right)$/.test(t.low)) || f.siteAt(t.i) || !OWN.test(f.low(t.i - 1))) continue;
    const to = t.i + (f.low(t.i + 1) === 'one' ? 2 : 1);
    places.push({ from: t.i, to, side: t.low as 'left' | 'right' | 'other' });
  }
  return places.filter((p) => !f.isClaimed(p.from, p.to)).sort((a, b) => a.from - b.from);
}

/** The finding told last before a place, of which a sign can be left out there: not one of the whole dog. */
function toldBefore(f: Frame, p: Place, first: number): Finding | undefined {
  const last = before(f, first, (e) => e.kind === 'finding' && e.sign !== 'any');
  if (last?.kind !== 'finding' || !last.span || WHOLE_BODY.has(last.sign)) return undefined;
  if (!last.part || (p.part && last.sign === 'lame')) return undefined;
  const end = last.span[1];
  return f.tokens.filter((t) => t.start >= end && t.i < first).length <= 16 ? last : undefined;
}

/** The finding moved to the place; nothing where that is the same place, or cannot be known. */
function movedTo(f: Frame, last: Finding, p: Place): Finding | undefined {
  const { side: _x, end: _e, doubt: _d, because: _b, span: _p, ...rest } = last;
  const part = p.part ?? last.part;
  const side = p.part ? (p.side as Finding['side']) : otherSide(p.side, last.side);
  if (!p.part && !side) return undefined;
  if (p.part === last.part && side === last.side) return undefined;
  const end = part && partTakesEnd(part) ? (p.part ? p.end : (p.end ?? last.end)) : undefined;
  const site = f.sites.find((s) => s.from === p.from);
  const own = site ? f.owner(p.from, p.to, site) : undefined;
  if (own?.human) return undefined;
  const dogs = own?.phrase?.dogs.length && !own.carried ? own.dogs : last.dogs;
  return {
    ...rest,
    dogs,
    ...(part ? { part } : {}),
    ...(side ? { side } : {}),
    ...(end ? { end } : {}),
    ...doubted(own?.doubt),
  };
}

/** "his right one is not", "his nose isn't", "and neither is the right ear", "but not on the right". */
function readNotHere(f: Frame, p: Place): boolean {
  let a = p.from - 1;
  while (OWN.test(f.low(a)) || f.low(a) === "'s" || f.dogAt(a)?.possessive) a--;
  const neither = BE.test(f.low(a)) && /^(neither|nor)$/.test(f.low(a - 1)) && endsAt(f, p.to);
  const isNot = BE.test(f.low(p.to)) && /^(not|n't)$/.test(f.low(p.to + 1)) && endsAt(f, p.to + 2);
  const k = /^(on|in)$/.test(f.low(a)) ? a - 1 : a;
  const butNot = f.low(k) === 'not' && /^(but|and|though)$/.test(f.low(k - 1)) && ENDS.test(f.low(p.to));
  if (!neither && !isNot && !butNot) return false;
  const first = neither ? a - 1 : butNot ? k : Math.min(p.from, a + 1);
  const last = toldBefore(f, p, first);
  if (!last || last.assertion === 'past' || last.assertion === 'planned') return false;
  if (last.assertion === 'absent' && !neither) return false;
  const here = movedTo(f, last, p);
  if (!here) return false;
  const { severity: _s, trend: _t, assertion, ...rest } = here;
  // "the right one has healed, the left one hasn't"
  const goesOn = assertion === 'resolved' && !neither;
  const end = isNot ? p.to + 2 : p.to;
  const span = f.span([first, end]);
  f.add({ ...rest, ...(goesOn ? {} : { assertion: 'absent' as const }), span, rule: '<place> is not' });
  f.claim(first, end);
  return true;
}

/** "and so is the left", "same with the right one", "the left one too". */
function readHereToo(f: Frame, p: Place): boolean {
  let a = p.from - 1;
  while (OWN.test(f.low(a)) || f.low(a) === "'s" || f.dogAt(a)?.possessive) a--;
  const so = BE.test(f.low(a)) && /^(so|as)$/.test(f.low(a - 1)) && endsAt(f, p.to);
  const same = /^(with|for|on|in)$/.test(f.low(a)) && /^(same|ditto|likewise)$/.test(f.low(a - 1)) && endsAt(f, p.to);
  const verb = BE.test(f.low(p.to)) ? p.to + 1 : p.to;
  const word = /^(too|also|likewise|ditto|same)$/.test(f.low(verb))
    ? 1
    : /^(as well|the same|same thing)$/.test(`${f.low(verb)} ${f.low(verb + 1)}`)
      ? 2
      : 0;
  const too = word > 0 && ENDS.test(f.low(verb + word)) && (/^([.,;]|and)$/.test(f.low(a)) || f.isStrong(a));
  if (!so && !same && !too) return false;
  const first = so || same ? a - 1 : p.from;
  const last = toldBefore(f, p, first);
  const here = last && movedTo(f, last, p);
  if (!here) return false;
  const end = too ? verb + word : p.to;
  f.add({ ...here, span: f.span([first, end]), rule: 'so is <place>' });
  f.claim(first, end);
  return true;
}

/** "frostbite on his right ear, and I can't see any on the left"; "none in the other". */
function readNoneOn(f: Frame): void {
  for (const t of f.tokens) {
    if (!/^(any|none|nothing)$/.test(t.low) || !/^(in|on)$/.test(f.low(t.i + 1)) || f.low(t.i + 2) !== 'the') continue;
    const word = f.low(t.i + 3);
    if (!/^(left|right|other)$/.test(word)) continue;
    const to = t.i + 4 + (f.low(t.i + 4) === 'one' || f.low(t.i + 4) === 'side' ? 1 : 0);
    if (!ENDS.test(f.low(to)) || f.isClaimed(t.i, to)) continue;
    if (t.low === 'any' && f.assertion(t.i, t.i + 1) !== 'absent') continue;
    const last = before(f, t.i, (e) => e.kind === 'finding' && e.sign !== 'any');
    if (last?.kind !== 'finding' || !last.part || last.side === 'both') continue;
    const side = otherSide(word, last.side);
    if (!side) continue;
    const { severity: _s, trend: _t, ...rest } = last;
    f.add({ ...rest, side, assertion: 'absent', span: f.span([t.i, to]), rule: 'none on the <side>' });
    f.claim(t.i, to);
  }
}

/** The side a word names beside the one that was told; nothing where it is the same or cannot be known. */
function otherSide(word: string | undefined, told: string | undefined): 'left' | 'right' | undefined {
  const side =
    word === 'left' || word === 'right'
      ? word
      : word !== 'other'
        ? undefined
        : told === 'left'
          ? 'right'
          : told === 'right'
            ? 'left'
            : undefined;
  return side === told ? undefined : side;
}

/** "Storm's right hip is tight. The left one is fine.", "Left one looks ok", "but the right is fine". */
function readOtherFine(f: Frame): void {
  for (const t of f.tokens) {
    if (!/^(left|right|other)$/.test(t.low)) continue;
    const owned = /^(the|his|her)$/.test(f.low(t.i - 1));
    if (!owned && t.i > 0 && !f.isStrong(t.i - 1) && !/^(,|and|but|though)$/.test(f.low(t.i - 1))) continue;
    const one = /^(one|side)$/.test(f.low(t.i + 1));
    let k = t.i + (one ? 2 : 1);
    if (!/^(is|'s|was|looks|feels|seems|looked|felt)$/.test(f.low(k))) continue;
    k++;
    while (/^(just|perfectly|totally|completely|quite|all|still)$/.test(f.low(k)) && !f.m.from('fine', k)) k++;
    const fine = f.m.from('fine', k) ?? f.m.from('fine', k - 1);
    if (!fine || !ENDS.test(f.low(fine.to)) || f.isClaimed(t.i, fine.to)) continue;
    const last = before(f, t.i, (e) => e.kind === 'finding' && e.part !== undefined);
    if (last?.kind !== 'finding' || !last.part) continue;
    if (!(owned && one) && !/^(left|right)$/.test(last.side ?? '')) continue;
    const side = otherSide(t.low, last.side);
    if (!side) continue;
    const { severity: _s, trend: _t, doubt: _d, because: _b, ...rest } = last;
    const span = f.span([t.i, fine.to]);
    f.add({ ...rest, side, sign: 'any', assertion: 'absent', span, rule: 'the <side> one is fine' });
    f.claim(owned ? t.i - 1 : t.i, fine.to);
  }
}

/** "Moss had one in the right armpit", "the one in the left hind web has healed": one of what was told last. */
function readOneThere(f: Frame): void {
  for (const t of f.tokens) {
    if (t.low !== 'one' || !/^(in|on|under|between|behind|above|at)$/.test(f.low(t.i + 1))) continue;
    const s = f.sites.find((x) => x.from >= t.i + 2 && x.from - t.i <= 3 && !x.anaphor && !x.plural);
    if (!s || f.isClaimed(s.from, s.to)) continue;
    const has = /^(has|had|got|have)$/.test(f.low(t.i - 1));
    const k = /^(has|have|'s|is)$/.test(f.low(s.to)) ? s.to + 1 : s.to;
    const state =
      /^(the|that|other)$/.test(f.low(t.i - 1)) &&
      [k, k + 1].map((i) => f.m.from('over', i) ?? f.m.from('trend', i)).find(Boolean);
    if (!has && !state) continue;
    const last = justBefore(f, t.i);
    if (last?.kind !== 'finding' || last.sign === 'any' || WHOLE_BODY.has(last.sign)) continue;
    const owner = f.owner(t.i, s.to, s);
    if (owner.human || !owner.dogs.length) continue;
    const part = s.part ?? last.part;
    const end = part && partTakesEnd(part) ? s.end : undefined;
    const heard = f.assertion(s.from, s.to);
    const assertion = state ? (state.tag === 'over' ? 'resolved' : 'present') : heard;
    const to = state ? state.to : s.to;
    f.add({
      kind: 'finding',
      dogs: owner.dogs,
      ...(part ? { part } : {}),
      ...(s.side ? { side: s.side } : {}),
      ...(end ? { end } : {}),
      sign: last.sign,
      ...(state && state.tag === 'trend' ? { trend: state.value as Finding['trend'] } : {}),
      ...said(assertion),
      span: f.span([t.i, to]),
      rule: 'one in <site>',
      ...doubted(owner.doubt),
    });
    f.claim(t.i, to);
  }
}
