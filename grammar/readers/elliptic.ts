/**
 * Reader "ellipsis": statements that leave out what was just said. "Rook's are bad, both hinds", "none in the left one",
 * "Agnes was not", "so did Argus", "same for Moss". What is left out comes from the entry told last before it.
 */
import type { Entry, EntryOf } from '../entry.ts';
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { partTakesEnd } from './finding-parts.ts';
import { doubted } from './places.ts';

type Told = EntryOf<'finding'> | EntryOf<'attitude'> | EntryOf<'intake'>;
const isTold = (e: Entry): e is Told => e.kind === 'finding' || e.kind === 'attitude' || e.kind === 'intake';

/** Reads what was left out; last of all readers, for it looks back at their entries. */
export function readElliptic(f: Frame): void {
  for (const d of f.dogs) {
    if (!d.dogs.length || d.excepted) continue;
    if (d.possessive && d.kind === 'names') readHers(f, d);
    else if (d.kind !== 'pronoun') readNot(f, d) || readWouldNot(f, d) || readButNot(f, d) || readSo(f, d);
  }
  readOtherSide(f);
  readOtherFine(f);
}

/** The entry told last before token `i`, of the kinds that can be left out. */
function before(f: Frame, i: number, fits: (e: Told) => boolean = () => true): Told | undefined {
  const at = f.tokens[i]?.start ?? 0;
  return f.entries
    .filter((e): e is Told => isTold(e) && e.span !== undefined && e.span[0] < at && fits(e))
    .sort((a, b) => (a.span?.[1] ?? 0) - (b.span?.[1] ?? 0))
    .at(-1);
}

const ENDS = /^([.,;!?:]|and|but|so|though|)$/;

/** "Ice balls in everybody's feet. Rook's are bad, both hinds." */
function readHers(f: Frame, d: DogPhrase): void {
  if (!/^(are|is|were|was|look|looks)$/.test(f.low(d.to)) || f.siteAt(d.to)) return;
  let k = d.to + 1;
  while (/^(the|really|pretty|not|so|as|all|just|a|bit|little)$/.test(f.low(k)) && !f.m.from('severity', k)) k++;
  const severity = f.m.from('severity', k);
  const trend = f.m.from('trend', k);
  const word = severity ?? trend;
  if (!word || !ENDS.test(f.low(word.to)) || f.isClaimed(d.from, word.to)) return;
  const last = before(f, d.from, (e) => e.kind === 'finding' && e.sign !== 'any' && !e.assertion);
  if (last?.kind !== 'finding') return;
  const site = f.sites.find((s) => s.from >= word.to && s.from - word.to <= 2 && (s.side || s.end));
  const { severity: _s, trend: _t, doubt: _d, because: _b, ...rest } = last;
  const part = rest.part;
  f.add({
    ...rest,
    dogs: d.dogs,
    ...(site?.side && part ? { side: site.side } : {}),
    ...(site?.end && part && partTakesEnd(part) ? { end: site.end } : {}),
    ...(severity ? { severity: severity.value } : {}),
    ...(trend ? { trend: trend.value } : {}),
    span: f.span([d.from, word.to], site ? [site.from, site.to] : undefined),
    rule: "<dog>'s are <severity>",
    ...doubted(d.doubt),
  });
  f.claim(d.from, site?.to ?? word.to);
}

/** "Hector was tired; Agnes was not." */
function readNot(f: Frame, d: DogPhrase): boolean {
  const verb = f.low(d.to);
  if (!/^(is|was|'s|has|had|did|does|are|were|do)$/.test(verb) || !/^(not|n't)$/.test(f.low(d.to + 1))) return false;
  if (!/^([.,;!]|and|but|)$/.test(f.low(d.to + 2)) && !f.dogFrom(d.to + 2)) return false;
  // "Tamsin has quit coughing, Hobnail hasn't": he still does
  const gone = before(f, d.from, (e) => e.kind === 'finding' && !e.dogs.some((x) => d.dogs.includes(x)));
  if (gone?.assertion === 'resolved' || gone?.assertion === 'absent') {
    const { assertion: _x, doubt: _y, because: _z, ...rest } = gone;
    f.add({
      ...rest,
      dogs: d.dogs,
      span: f.span([d.from, d.to + 2]),
      rule: '<dog> has not',
      ...doubted(d.doubt),
    } as Entry);
    f.claim(d.from, d.to + 2);
    return true;
  }
  const last = before(f, d.from, (e) => !e.assertion && !e.dogs.some((x) => d.dogs.includes(x)));
  if (!last) return false;
  const span = f.span([d.from, d.to + 2]);
  const { doubt: _d, because: _b, ...rest } = last;
  if (rest.kind === 'intake') {
    const { amount: _a, unit: _u, ...taken } = rest;
    f.add({ ...taken, dogs: d.dogs, took: 'none', span, rule: '<dog> did not', ...doubted(d.doubt) });
  } else f.add({ ...rest, dogs: d.dogs, assertion: 'absent', span, rule: '<dog> is not', ...doubted(d.doubt) });
  f.claim(d.from, d.to + 2);
  return true;
}

/** "The girls all drank and the boys wouldn't", "everyone ate, Gus won't": what was offered last. */
function readWouldNot(f: Frame, d: DogPhrase): boolean {
  if (!/^(would|wo|will)$/.test(f.low(d.to)) || !/^(not|n't)$/.test(f.low(d.to + 1))) return false;
  if (!/^([.,;!]|and|but|)$/.test(f.low(d.to + 2)) || f.isClaimed(d.from, d.to)) return false;
  const last = before(f, d.from, (e) => e.kind === 'intake');
  if (last?.kind !== 'intake') return false;
  const left = last.dogs.filter((x) => !d.dogs.includes(x));
  if (!left.length) return false;
  last.dogs = left;
  const { amount: _a, unit: _u, doubt: _d, because: _b, ...offered } = last;
  const span = f.span([d.from, d.to + 2]);
  f.add({ ...offered, dogs: d.dogs, took: 'none', span, rule: '<dog> would not', ...doubted(d.doubt) });
  f.claim(d.from, d.to + 2);
  return true;
}

/** "Storm ate but not Rook". */
function readButNot(f: Frame, d: DogPhrase): boolean {
  if (f.low(d.from - 1) !== 'not' || !/^(but|and|though)$/.test(f.low(d.from - 2)) || !/^([.,;!]|)$/.test(f.low(d.to)))
    return false;
  const last = before(f, d.from, (e) => !e.assertion && !e.dogs.some((x) => d.dogs.includes(x)));
  if (!last) return false;
  const span = f.span([d.from - 1, d.to]);
  const { doubt: _d, because: _b, ...rest } = last;
  if (rest.kind === 'intake') {
    const { amount: _a, unit: _u, ...taken } = rest;
    f.add({ ...taken, dogs: d.dogs, took: 'none', span, rule: 'but not <dog>', ...doubted(d.doubt) });
  } else f.add({ ...rest, dogs: d.dogs, assertion: 'absent', span, rule: 'but not <dog>', ...doubted(d.doubt) });
  f.claim(d.from - 1, d.to);
  return true;
}

/** "so did Argus", "same for Moss", "ditto Fern", "Moss too", "Moss did as well". */
function readSo(f: Frame, d: DogPhrase): boolean {
  const [p1, p2] = [f.low(d.from - 1), f.low(d.from - 2)];
  const next = f.low(d.to);
  const colon = next === ':' && /^(same|ditto|likewise)$/.test(f.low(d.to + 1));
  const so = /^(did|does|is|was|has|had|were|are|do)$/.test(p1) && /^(so|as)$/.test(p2) && ENDS.test(next);
  const same =
    (p1 === 'ditto' || (/^(for|with|goes)$/.test(p1) && /^(same|ditto|goes|thing|story)$/.test(p2))) &&
    (ENDS.test(next) || /^(too|as)$/.test(next));
  const verb = /^(did|does|is|was|has)$/.test(next) ? d.to + 1 : d.to;
  const too =
    (/^(too|likewise|ditto)$/.test(f.low(verb)) ||
      (f.low(verb) === 'as' && f.low(verb + 1) === 'well') ||
      (f.low(verb) === 'the' && f.low(verb + 1) === 'same')) &&
    !f.isClaimed(d.from, d.to);
  if (!so && !same && !too && !colon) return false;
  const end = colon ? d.to + 2 : too ? verb + (/^(as|the)$/.test(f.low(verb)) ? 2 : 1) : d.to;
  if (too && !/^([.,;!]|and|but|)$/.test(f.low(end))) return false;
  // Something of its own was read of the dog in this clause: nothing was left out.
  const from = f.tokens[d.from]?.start ?? 0;
  if (f.entries.some((e) => e.span && e.span[0] <= from && from < e.span[1] && isTold(e))) return false;
  const last = before(f, d.from, (e) => !e.dogs.some((x) => d.dogs.includes(x)));
  if (!last?.span || f.tokens.filter((t) => t.start >= (last.span?.[1] ?? 0) && t.i < d.from).length > 12) return false;
  const { doubt: _d, because: _b, ...rest } = last;
  f.add({
    ...rest,
    dogs: d.dogs,
    span: f.span([d.from - (so ? 2 : same ? 1 : 0), end]),
    rule: 'so did <dog>',
    ...doubted(d.doubt),
  } as Entry);
  f.claim(d.from, end);
  return true;
}

/** "frostbite on his right ear, and I can't see any on the left"; "none in the other". */
function readOtherSide(f: Frame): void {
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
function otherSide(word: string, told: string | undefined): 'left' | 'right' | undefined {
  const side =
    word !== 'other' ? (word as 'left' | 'right') : told === 'left' ? 'right' : told === 'right' ? 'left' : undefined;
  return side === told ? undefined : side;
}

/** "Storm's right hip is tight. The left one is fine." */
function readOtherFine(f: Frame): void {
  for (const t of f.tokens) {
    if (!/^(left|right|other)$/.test(t.low) || !/^(the|his|her)$/.test(f.low(t.i - 1)) || f.low(t.i + 1) !== 'one')
      continue;
    let k = t.i + 2;
    if (!/^(is|'s|was|looks|feels|seems|looked|felt)$/.test(f.low(k))) continue;
    k++;
    while (/^(just|perfectly|totally|completely|quite|all|still)$/.test(f.low(k)) && !f.m.from('fine', k)) k++;
    const fine = f.m.from('fine', k);
    if (!fine || !ENDS.test(f.low(fine.to)) || f.isClaimed(t.i, fine.to)) continue;
    const last = before(f, t.i, (e) => e.kind === 'finding' && e.part !== undefined);
    if (last?.kind !== 'finding' || !last.part) continue;
    const side = otherSide(t.low, last.side);
    if (!side) continue;
    const { severity: _s, trend: _t, doubt: _d, because: _b, ...rest } = last;
    const span = f.span([t.i, fine.to]);
    f.add({ ...rest, side, sign: 'any', assertion: 'absent', span, rule: 'the <side> one is fine' });
    f.claim(t.i - 1, fine.to);
  }
}
