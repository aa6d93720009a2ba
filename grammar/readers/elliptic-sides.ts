/**
 * Reader "ellipsis", of another dog's side: "Penny is sore in the right shoulder, Gus the left", "Ivy, same on the right".
 * Sign and part come from what was told last of the dog before.
 */
import type { EntryOf } from '../entry.ts';
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { endsAt, justBefore } from './elliptic-told.ts';
import { partTakesEnd } from './finding-parts.ts';
import { doubted } from './places.ts';
import { partFor, WHOLE_BODY } from './where.ts';

type Finding = EntryOf<'finding'>;

/** A dog, and right behind it nothing but a side. */
export function readSideOf(f: Frame, d: DogPhrase): boolean {
  if (f.isClaimed(d.from, d.to) || d.possessive) return false;
  if (readOnDog(f, d)) return true;
  let k = d.to;
  if (/^(is|has|was|'s)$/.test(f.low(k))) k++;
  if (f.low(k) === ',' || f.low(k) === ':') k++;
  const same = /^(same|ditto|likewise)$/.test(f.low(k)) || (f.low(k) === 'the' && f.low(k + 1) === 'same');
  if (same) k += f.low(k) === 'the' ? 2 : 1;
  if (!same && !/^([.,;]|and|but|while|)$/.test(f.low(d.from - 1))) return false;
  if (f.low(k) === 'thing') k++;
  const on = /^(on|in|with|for)$/.test(f.low(k));
  if (on) k++;
  const own = /^(the|his|her)$/.test(f.low(k));
  if (own) k++;
  if (!same && on && readAtSite(f, d, k)) return true;
  const side = f.low(k);
  if (!/^(left|right)$/.test(side) || !(on || own || same)) return false;
  const end = /^(one|side)$/.test(f.low(k + 1)) ? k + 2 : k + 1;
  if (!endsAt(f, end) || f.m.at('position', k - 1) || f.isClaimed(d.from, end)) return false;
  const last = justBefore(f, d.from);
  if (last?.kind !== 'finding' || !last.part || !last.side || last.side === 'both' || last.sign === 'any') return false;
  if (WHOLE_BODY.has(last.sign) || last.dogs.some((x) => d.dogs.includes(x))) return false;
  // "left wrist warm, no swelling; Ivy same on the right" is both of it
  const told = same ? f.entries.filter((e): e is Finding => e.kind === 'finding' && toldWith(e, last)) : [last];
  for (const e of told) {
    const { severity: _s, trend: _t, doubt: _d, because: _b, ...rest } = e;
    f.add({
      ...rest,
      dogs: d.dogs,
      side: side as 'left' | 'right',
      span: f.span([d.from, end]),
      rule: '<dog> the <side>',
      ...doubted(d.doubt),
    });
  }
  f.claim(d.from, end);
  return true;
}

/** "Gus is lame on the left front, Rook on the right hind", "Ivy in the left hip": the same sign at another dog's place. */
function readAtSite(f: Frame, d: DogPhrase, k: number): boolean {
  const s = f.sites.find((x) => x.from === k && !x.anaphor && x.side && (x.part ?? x.end));
  if (!s || !endsAt(f, s.to) || f.isClaimed(d.from, s.to)) return false;
  const last = justBefore(f, d.from);
  if (last?.kind !== 'finding' || !last.side || last.sign === 'any' || last.assertion) return false;
  if (WHOLE_BODY.has(last.sign) || last.dogs.some((x) => d.dogs.includes(x))) return false;
  const { severity: _s, trend: _t, doubt: _d, because: _b, side: _l, end: _e, part: told, ...rest } = last;
  const part = s.part ?? (s.end && told && partTakesEnd(told) ? told : partFor(last.sign, s));
  f.add({
    ...rest,
    dogs: d.dogs,
    ...(part ? { part } : {}),
    side: s.side,
    ...(s.end && partTakesEnd(part ?? '') ? { end: s.end } : {}),
    span: f.span([d.from, s.to]),
    rule: '<dog> on <site>',
    ...doubted(d.doubt),
  });
  f.claim(d.from, s.to);
  return true;
}

/** "Left wrist puffy on Miles, right on Ivy". */
function readOnDog(f: Frame, d: DogPhrase): boolean {
  if (!/^(on|for|in)$/.test(f.low(d.from - 1)) || !endsAt(f, d.to)) return false;
  const k = /^(one|side)$/.test(f.low(d.from - 2)) ? d.from - 3 : d.from - 2;
  const side = f.low(k);
  const lead = /^(the|his|her)$/.test(f.low(k - 1)) ? k - 2 : k - 1;
  if (!/^(left|right)$/.test(side) || !/^([,;]|and|but)$/.test(f.low(lead)) || f.isClaimed(k, d.to)) return false;
  const last = justBefore(f, k);
  if (last?.kind !== 'finding' || !last.part || last.sign === 'any' || last.assertion) return false;
  if (!/^(left|right)$/.test(last.side ?? '') || last.dogs.some((x) => d.dogs.includes(x))) return false;
  const { severity: _s, trend: _t, doubt: _d, because: _b, ...rest } = last;
  f.add({
    ...rest,
    dogs: d.dogs,
    side: side as 'left' | 'right',
    span: f.span([k, d.to]),
    rule: '<side> on <dog>',
    ...doubted(d.doubt),
  });
  f.claim(k, d.to);
  return true;
}

/** Told of the same dog and place as the last. */
const toldWith = (e: Finding, last: Finding): boolean =>
  e.sign !== 'any' &&
  e.part === last.part &&
  e.side === last.side &&
  e.end === last.end &&
  e.dogs.join() === last.dogs.join();
