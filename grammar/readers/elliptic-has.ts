/**
 * "Rook has a rub in the armpit. Gus has a new one, on the chest", "Gus and Rook have got them in both fronts", "Ivy has one
 * RH": a dog that has what was just found on another, at a place of its own.
 */
import type { EntryOf } from '../entry.ts';
import type { DogPhrase, Frame, Site } from '../steps/frame.ts';
import { before, endsAt } from './elliptic-told.ts';
import { partTakesEnd } from './finding-parts.ts';
import { doubted, said } from './places.ts';
import { partFor, WHOLE_BODY } from './where.ts';

/** Where "has one", "have got them", "'s got the same thing" behind the phrase ends; -1 where it does not stand. */
function hasOne(f: Frame, d: DogPhrase): number {
  let k = d.to;
  while (/^(also|both|each|all|now|just)$/.test(f.low(k))) k++;
  if (!/^(has|have|had|got|'s|'ve)$/.test(f.low(k))) return -1;
  if (/^('s|'ve)$/.test(f.low(k)) && f.low(k + 1) !== 'got') return -1;
  k++;
  if (/^(got|also|just)$/.test(f.low(k))) k++;
  if (f.low(k) === 'the' && f.low(k + 1) === 'same') k += /^(thing|problem)$/.test(f.low(k + 2)) ? 3 : 2;
  else {
    while (/^(a|an|another|the|new|fresh|small|smaller|bigger|little)$/.test(f.low(k))) k++;
    if (/^(one|two|ones|some|them|it|'em|em)$/.test(f.low(k))) k++;
    else if (f.low(k - 1) !== 'another') return -1;
  }
  while (/^(too|also|as|well|now|,|-|in|on|his|her|their|the)$/.test(f.low(k))) k++;
  return k;
}

/** "… has one too, on the right": a side alone, of the part told before. */
function sideAlone(f: Frame, k: number): Site | undefined {
  if (!/^(left|right)$/.test(f.low(k)) || f.siteAt(k) || !endsAt(f, k + 1)) return undefined;
  return { from: k, to: k + 1, side: f.low(k) as 'left' | 'right', plural: false, anaphor: false, paws: [] };
}

/** Reads it where the phrase `d` has what was told last; true when it was. */
export function readHasOne(f: Frame, d: DogPhrase): boolean {
  if (f.isClaimed(d.from, d.to)) return false;
  const end = hasOne(f, d);
  const named = end < 0 ? undefined : f.sites.find((s) => s.from <= end && end < s.to && s.from > d.to && !s.anaphor);
  const site = named ?? (end < 0 ? undefined : sideAlone(f, end));
  if (!site || f.isClaimed(site.from, site.to)) return false;
  if (f.m.from('sign', site.to) || f.m.from('bootie', site.to)) return false;
  const last = before(f, d.from, (e) => e.kind === 'finding' && e.sign !== 'any' && !WHOLE_BODY.has(e.sign));
  if (last?.kind !== 'finding' || !last.span || last.dogs.some((x) => d.dogs.includes(x))) return false;
  const since = f.tokens.filter((t) => t.start >= (last.span?.[1] ?? 0) && t.i < d.from);
  if (since.length > 14 || f.sentence(d.from) - f.sentence(since[0]?.i ?? d.from) > 1) return false;
  if (!site.part && !site.end && !last.part) return false;
  const bare = site.part === undefined || (site.part === 'foot' && last.part !== undefined && partTakesEnd(last.part));
  const sided = !site.part && !site.end;
  const part = sided || (bare && last.part && partTakesEnd(last.part)) ? last.part : partFor(last.sign, site);
  const siteEnd = sided ? last.end : site.end;
  const span = f.span([d.from, site.to]);
  const entry: EntryOf<'finding'> = {
    kind: 'finding',
    dogs: d.dogs,
    ...(part ? { part } : {}),
    ...(site.side ? { side: site.side } : {}),
    ...(siteEnd && part && partTakesEnd(part) ? { end: siteEnd } : {}),
    sign: last.sign,
    ...said(f.assertion(d.from, site.to)),
    span,
    rule: '<dog> has one <place>',
    ...doubted(d.doubt),
  };
  f.add(entry);
  f.claim(d.from, site.to);
  return true;
}
