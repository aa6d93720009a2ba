/**
 * Step "corrections": a speaker's correction is carried out before anything is read. What follows "no wait", "sorry",
 * "I mean" takes the place of the last thing of its type before it (a dog, a number, a side of the body, a place in the
 * team); "scratch that" with nothing to put in its place drops the clause before it and keeps its dog. Tokens keep their
 * places in the text, so what is read from them can still be pointed at.
 */
import { TAKES_DOG } from '../words/slots.ts';
import { restated } from './correct-again.ts';
import { anotherDog, mayBeAnother } from './correct-dog.ts';
import { cutBefore, type Item, inPlace, MARKS, nameOf, type Region, STRONG, skip, type View } from './correct-put.ts';
import { namesInSlots } from './dogs.ts';
import { findMentions, type Mentions } from './mentions.ts';
import { quantitiesOf } from './quantities.ts';
import type { Roster } from './roster.ts';
import type { Token } from './tokens.ts';

const MAX_CORRECTIONS = 12;

/** The tokens as the speaker meant them. Gives the same list where nothing is corrected. */
export function correct(tokens: Token[], m: Mentions, text: string, roster: Roster): Token[] {
  if (!m.of('correct').length && !mayBeAnother(tokens, m)) return tokens;
  let current = tokens;
  let mentions = m;
  let done = 0;
  for (let round = 0; round < MAX_CORRECTIONS; round++) {
    const view = see(current, mentions, text, roster);
    const next = carryOutFirst(view, done) ?? anotherDog(view);
    if (!next) break;
    done = next.done;
    current = next.tokens.map((t, i) => (t.i === i ? t : { ...t, i }));
    mentions = findMentions(current, (low) => roster.forms.has(low));
  }
  return current;
}

function see(tokens: Token[], m: Mentions, text: string, roster: Roster): View {
  const quantities = quantitiesOf(tokens, text).filter((q) => !q.weak);
  const items: Item[] = [];
  for (const d of namesInSlots(tokens, m, roster)) items.push({ type: 'dog', from: d.from, to: d.to });
  for (const q of quantities) items.push({ type: 'quantity', from: q.from, to: q.to });
  let at = -1;
  for (let i = 0; i < tokens.length; i++) {
    if (!isSiteWord(m, i, tokens) || i < at) continue;
    let to = i;
    while (to < tokens.length && isSiteWord(m, to, tokens)) to++;
    items.push({ type: 'site', from: i, to });
    at = to;
  }
  for (const p of m.of('position'))
    if (!items.some((x) => x.from <= p.from && p.from < x.to)) items.push({ type: 'place', from: p.from, to: p.to });
  items.sort((a, b) => a.from - b.from);
  return { tokens, m, items, quantities };
}

function isSiteWord(m: Mentions, i: number, tokens: readonly Token[]): boolean {
  const low = tokens[i]?.low ?? '';
  if (m.at('paw', i) || m.at('side', i)) return low !== 'both' && low !== 'each' && low !== 'either';
  if (m.at('part', i)) return low !== 'back';
  return Boolean(m.at('end', i)) && (Boolean(m.at('side', i - 1)) || /^(hind|hinds|fronts|rear|rears)$/.test(low));
}

/** Carries out the first correction that begins at token `done` or later. */
function carryOutFirst(v: View, done: number): { tokens: Token[]; done: number } | undefined {
  for (const region of regions(v)) {
    if (region.from < done) continue;
    const out = restated(v, region) ?? replaced(v, region) ?? (region.scratch ? dropped(v, region) : undefined);
    if (out) return out;
  }
  return undefined;
}

/** "the right wrist, well, left": "well" between a place and a side that another word can't follow. */
function sideSetOff(v: View, c: { from: number; to: number }): boolean {
  const low = (i: number) => v.tokens[i]?.low ?? '';
  const before = /^[,–—-]$/.test(low(c.from - 1)) ? c.from - 1 : -1;
  if (before < 0 || !v.items.some((x) => x.type === 'site' && before - x.to <= 3 && x.to <= before)) return false;
  let k = skip(v, c.to, false);
  while (/^(the|on|in|his|her|actually|really|no)$/.test(low(k))) k++;
  const site = v.items.find((x) => x.type === 'site' && x.from === k);
  return (
    site !== undefined && Boolean(v.m.at('side', k) ?? v.m.at('paw', k)) && /^([.,;!]|and|but|one|)$/.test(low(site.to))
  );
}

/** Cues that stand together ("no, sorry", "no, scratch that") are one. */
function regions(v: View): Region[] {
  const out: Region[] = [];
  for (const c of v.m.of('correct')) {
    // "as if to say forget it"
    if (
      c.value === 'scratch' &&
      /^(say|to|just|can|could|said|will|'ll|we|they|you|n't|not|says|never)$/.test(v.tokens[c.from - 1]?.low ?? '')
    )
      continue;
    // "wait, what else"
    if (
      /^(wait|on)$/.test(v.tokens[c.to - 1]?.low ?? '') &&
      /^(what|where|who)$/.test(v.tokens[skip(v, c.to, false)]?.low ?? '')
    )
      continue;
    if (c.value === 'side' && !sideSetOff(v, c)) continue;
    const last = out[out.length - 1];
    const between = last ? v.tokens.slice(last.to, c.from) : [];
    if (last && between.every((t) => t.low === ',' || t.low === '-')) {
      last.to = c.to;
      last.scratch ||= c.value === 'scratch';
      last.bare = false;
    } else out.push({ from: c.from, to: c.to, scratch: c.value === 'scratch', bare: c.value === 'bare' });
  }
  return out;
}

/**
 * "Chisel chewed Gunnar's tug … no, not Chisel, it was Banjo": the dog that is taken back by its name. Gives it where it
 * was named before, if it was, and the token behind the denial.
 */
function notThatOne(v: View, region: Region): { left?: Item; to: number } | undefined {
  let k = skip(v, region.to, false);
  const notIt = v.m.from('not-it', k);
  if (notIt) k = notIt.to;
  const dog = v.items.find((x) => x.type === 'dog' && x.from === k);
  if (!dog) return undefined;
  const name = nameOf(v, dog);
  const left = v.items.findLast(
    (x) => x.type === 'dog' && x.to <= region.from && region.from - x.to <= 40 && nameOf(v, x) === name,
  );
  const to = skip(v, dog.to, true);
  if (notIt) return { left, to };
  // "Vesper's lame, no not Vesper it's Brindle": the same name again is not the new one
  return left && v.m.from('it-is', to) ? { left, to } : undefined;
}

/** "left front nail, no, not the nail, the dewclaw": behind the part said again that it was not; else `k`. */
function behindDenied(v: View, region: Region, k: number): number {
  const notIt = v.m.from('not-it', k);
  if (!notIt && v.tokens[region.to - 1]?.low !== 'not') return k;
  const base = notIt?.to ?? k;
  const at = /^(the|his|her|its)$/.test(v.tokens[base]?.low ?? '') ? base + 1 : base;
  const denied = v.items.find((x) => x.type === 'site' && x.from === at);
  const last = lastBefore(v, region.from, 'site');
  const same = denied && last && v.tokens[denied.to - 1]?.low === v.tokens[last.to - 1]?.low;
  return same ? skip(v, denied.to, true) : k;
}

/** Where what is put in its place begins: right behind the cue, or behind "that was", "it's the", "we're at". */
function replacement(v: View, region: Region): Item | undefined {
  let k = skip(v, region.to, false);
  const not = notThatOne(v, region);
  if (not) k = not.to;
  else k = behindDenied(v, region, k);
  // "I mean" corrects what stands right behind it, no more.
  const limit = meant(v, region) ? k + 3 : k + 12;
  for (let i = k; i < v.tokens.length && i < limit; i++) {
    const low = (v.tokens[i] as Token).low;
    if (STRONG.has(low)) return undefined;
    // "left front, no, hang on, she'd turned round, the right front.": the place set off by marks
    if (low === ',' && i > k) {
      let a = i + 1;
      while (
        /^(the|it|'s|is|was|that|on|his|her|of|course|actually|really|in|fact|clearly)$/.test(v.tokens[a]?.low ?? '')
      )
        a++;
      // "sixty three, no wait, I was leaning on it, sixty two and a half"
      const number = v.items.find((x) => x.type === 'quantity' && x.from === i + 1);
      if (number && /^([.;!]|)$/.test(v.tokens[number.to]?.low ?? '')) return number;
      const site = v.items.find((x) => x.type === 'site' && x.from === a);
      const end = site && v.tokens[site.to]?.low === 'one' ? site.to + 1 : (site?.to ?? 0);
      if (site && /^([.,;!]|)$/.test(v.tokens[end]?.low ?? '')) return site;
    }
    const it = v.m.from('it-is', i);
    let from = it ? it.to : i;
    // "it is of course the left one"
    while (it && /^(of|course|actually|really|definitely|obviously|naturally)$/.test(v.tokens[from]?.low ?? '')) from++;
    const start = /^(the|her|his|a|at|in|about|mile|km|like|more|only|on)$/.test(v.tokens[from]?.low ?? '')
      ? from + 1
      : from;
    // "that's the marker for sixty two"
    let far = start;
    while (it && /^(marker|sign|post|one|for|at|by|mile|km|the)$/.test(v.tokens[far]?.low ?? '') && far - start < 4)
      far++;
    const here = v.items.filter(
      (x) => x.from === start || x.from === from || (it && x.from === far && x.type === 'quantity'),
    );
    // "no, sorry, the front right": a foot, though "the front" is a place in the team as well
    const item = here.find((x) => x.type === 'site' && x.to - x.from > 1) ?? here[0];
    if (item && (it || i === k || (i < k + 9 && behindBe(v, i)))) return item;
    if (region.bare && i === k) return undefined;
  }
  return undefined;
}

const meant = (v: View, r: Region) => v.tokens.slice(r.from, r.to).some((t) => t.low === 'mean');

const behindBe = (v: View, i: number) =>
  /^('re|'s|is|at|was|'m|were)$/.test(v.tokens[i - 1]?.low ?? '') ||
  /^('re|'s|is|was|'m)$/.test(v.tokens[i - 2]?.low ?? '');

function replaced(v: View, region: Region): { tokens: Token[]; done: number } | undefined {
  const right = replacement(v, region);
  if (!right) return undefined;
  const not = right.type === 'dog' ? notThatOne(v, region)?.left : undefined;
  const left = not ?? lastBefore(v, region.from, right.type);
  if (!left) return undefined;
  // "… her, wait, what else, oh, Axel, he's limping left hind": far from the side told before, it is another
  if (right.type === 'site' && right.from > skip(v, region.to, true) + 4 && region.from - left.to > 12)
    return undefined;
  if (!not && region.bare && !bareStands(v, region, left, right)) return undefined;
  if (left.type === 'quantity' && nameBegun(v, region, left)) {
    const tokens = [...v.tokens.slice(0, cutBefore(v, region.from)), ...v.tokens.slice(skip(v, region.to, false))];
    return { tokens, done: region.from };
  }
  if (region.scratch && left.to < region.from - 3 && right.from > skip(v, region.to, true)) return undefined;
  // "scratch that, I've moved Fern": a whole clause follows; the one before is dropped instead.
  if (region.scratch && right.from > region.to + 2 && right.type === 'dog') return undefined;
  return inPlace(v, left, right, region.from, tailAfter(v, right.to));
}

/** "…, sorry" behind the replacement belongs to the correction. */
function tailAfter(v: View, i: number): number {
  let k = i;
  while (v.tokens[k]?.low === ',') k++;
  const cue = v.m.from('correct', k);
  return cue && (v.tokens[cue.from] as Token).low === 'sorry' && cue.to === k + 1 ? cue.to : i;
}

function lastBefore(v: View, i: number, type: Item['type']): Item | undefined {
  for (let k = v.items.length - 1; k >= 0; k--) {
    const x = v.items[k] as Item;
    if (x.to <= i && x.type === type) return i - x.to <= 25 ? x : undefined;
  }
  return undefined;
}

/** "Wasp 44, Hettie, hang on, 46": the name right before the cue has no number yet that could be taken back. */
function nameBegun(v: View, region: Region, left: Item): boolean {
  const named = lastBefore(v, region.from, 'dog');
  return Boolean(
    named && named.from >= left.to && v.tokens.slice(named.to, region.from).every((t) => MARKS.has(t.low)),
  );
}

/** A bare "no" corrects only between two things of one type, or set off by commas, or with "sorry" behind. */
function bareStands(v: View, region: Region, left: Item, right: Item): boolean {
  const before = v.tokens[region.from - 1]?.low ?? '';
  const after = v.tokens[region.to]?.low ?? '';
  const touches =
    left.to === region.from ||
    (left.to === region.from - 1 && (MARKS.has(before) || before === 'uh' || before === 'um'));
  const follows =
    right.from <= skip(v, region.to, false) + 1 || v.m.from('not-it', skip(v, region.to, false)) !== undefined;
  if (touches && follows && (right.type !== 'site' || left.type === 'site')) return true;
  const setOff = after === ',' && (region.from === 0 || MARKS.has(before));
  const sorry = v.tokens.slice(right.to, right.to + 3).some((t) => t.low === 'sorry');
  return follows && (setOff || sorry);
}

/** "scratch that": the clause before goes, its dog stays to be spoken of. */
function dropped(v: View, region: Region): { tokens: Token[]; done: number } | undefined {
  let from = 0;
  let keep: Token[] = [];
  for (let i = region.from - 1; i >= 0; i--) {
    const low = (v.tokens[i] as Token).low;
    if (STRONG.has(low) && i < region.from - 1) {
      from = i + 1;
      break;
    }
    const dog = v.items.find((x) => x.type === 'dog' && x.from === i);
    if (dog) {
      let verb = i;
      while (
        verb > 0 &&
        TAKES_DOG.has((v.tokens[verb - 1] as Token).low) &&
        !MARKS.has((v.tokens[verb - 1] as Token).low)
      )
        verb--;
      if (verb < i) from = verb;
      else {
        from = i;
        keep = v.tokens.slice(dog.from, dog.to).filter((t) => t.low !== "'s");
      }
      break;
    }
  }
  if (from >= region.from) return undefined;
  return {
    tokens: [...v.tokens.slice(0, from), ...keep, ...v.tokens.slice(skip(v, region.to, true))],
    done: from + keep.length,
  };
}
