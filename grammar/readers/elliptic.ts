/**
 * Reader "ellipsis": statements that leave out what was just said. "Rook's are bad, both hinds", "none in the left one",
 * "Agnes was not", "so did Argus", "same for Moss". What is left out comes from the entry told last before it.
 */
import type { Entry } from '../entry.ts';
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { readHasOne } from './elliptic-has.ts';
import { readOtherPlaces } from './elliptic-places.ts';
import { readComesIn } from './elliptic-season.ts';
import { readSideOf } from './elliptic-sides.ts';
import { readStoolInOrder } from './elliptic-stools.ts';
import { before, ENDS, endsAt, isTold, justBefore } from './elliptic-told.ts';
import { partTakesEnd } from './finding-parts.ts';
import { doubted } from './places.ts';

/** Reads what was left out; last of all readers, for it looks back at their entries. */
export function readElliptic(f: Frame): void {
  for (const d of f.dogs) {
    if (!d.dogs.length || d.excepted) continue;
    if (readStoolInOrder(f, d) || readComesIn(f, d) || readHasOne(f, d)) continue;
    if (d.possessive && d.kind === 'names') readHers(f, d);
    else if (d.kind !== 'pronoun')
      readNobody(f, d) ||
        readNot(f, d) ||
        readHasNone(f, d) ||
        readMaybe(f, d) ||
        readWouldNot(f, d) ||
        readButNot(f, d) ||
        readWas(f, d) ||
        readSideOf(f, d) ||
        readSo(f, d);
  }
  readOtherPlaces(f);
}

/** "Ice balls in everybody's feet. Rook's are bad, both hinds." */
function readHers(f: Frame, d: DogPhrase): void {
  if (readHersToo(f, d)) return;
  if (!/^(are|is|were|was|look|looks)$/.test(f.low(d.to)) || f.siteAt(d.to)) return;
  let k = d.to + 1;
  while (/^(the|really|pretty|not|so|as|all|just|a|bit|little)$/.test(f.low(k)) && !f.m.from('severity', k)) k++;
  const severity = f.m.from('severity', k);
  const trend = f.m.from('trend', k);
  const word = severity ?? trend;
  const fine = f.m.from('fine', k);
  if (!severity && fine && ENDS.test(f.low(fine.to)) && readHersFine(f, d, fine.to)) return;
  if (!word || !(ENDS.test(f.low(word.to)) || f.siteAt(word.to)) || f.isClaimed(d.from, word.to)) return;
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

/** "Storm's stool was soft, Rook's too"; "Gus's wrist is puffy, Rook's isn't". */
function readHersToo(f: Frame, d: DogPhrase): boolean {
  if (f.isClaimed(d.from, d.to) || f.siteAt(d.to)) return false;
  const verb = /^(is|are|was|were|looks|feels)$/.test(f.low(d.to)) ? d.to + 1 : d.to;
  const not = verb > d.to && /^(not|n't)$/.test(f.low(verb)) ? verb + 1 : 0;
  const too = /^(too|also|likewise)$/.test(f.low(verb)) ? verb + 1 : 0;
  const as = f.low(verb) === 'as' && f.low(verb + 1) === 'well' ? verb + 2 : 0;
  const [p1, p2] = [f.low(d.from - 1), f.low(d.from - 2)];
  const so = /^(is|are|was|were|does|did)$/.test(p1) && /^(so|as)$/.test(p2) && verb === d.to ? d.to : 0;
  const end = not || too || as || so;
  if (!end || !endsAt(f, end)) return false;
  const last = justBefore(f, d.from);
  if (last?.kind !== 'finding' || last.sign === 'any' || last.dogs.some((x) => d.dogs.includes(x))) return false;
  if (last.assertion && (not || /^(past|planned)$/.test(last.assertion))) return false;
  const { severity: _s, trend: _t, doubt: _d, because: _b, ...rest } = last;
  const from = so ? d.from - 2 : d.from;
  const span = f.span([from, end]);
  f.add({
    ...rest,
    dogs: d.dogs,
    ...(not ? { assertion: 'absent' as const } : {}),
    span,
    rule: not ? "<dog>'s is not" : "<dog>'s too",
    ...doubted(d.doubt),
  });
  f.claim(from, end);
  return true;
}

/** "Gus wasn't limping, Rook was"; "Penny didn't eat but Tank did": what was denied of one is so of the other. */
function readWas(f: Frame, d: DogPhrase): boolean {
  if (!/^(is|was|did|has|does|were|are|do|have)$/.test(f.low(d.to)) || f.isClaimed(d.from, d.to)) return false;
  if (!/^([.,;!]|)$/.test(f.low(d.to + 1)) || !/^([.,;]|but|and|though|while|only)$/.test(f.low(d.from - 1)))
    return false;
  const last = justBefore(f, d.from);
  if (last?.assertion !== 'absent' || last.kind === 'intake' || last.dogs.some((x) => d.dogs.includes(x))) return false;
  if (last.kind === 'finding' && last.sign === 'any') return false;
  const { doubt: _d, because: _b, assertion: _a, ...rest } = last;
  f.add({ ...rest, dogs: d.dogs, span: f.span([d.from, d.to + 1]), rule: '<dog> is', ...doubted(d.doubt) } as Entry);
  f.claim(d.from, d.to + 1);
  return true;
}

/** "Nobody else is", "none of the others do": what was told last is not so of them. */
function readNobody(f: Frame, d: DogPhrase): boolean {
  if (d.value !== 'rest' || !/^(nobody|no|none|neither)$/.test(f.low(d.from)) || f.isClaimed(d.from, d.to))
    return false;
  const verb = /^(is|was|'s|are|were|has|have|had|does|do|did)$/.test(f.low(d.to)) ? 1 : 0;
  if (!endsAt(f, d.to + verb)) return false;
  const last = justBefore(f, d.from);
  const dogs = d.dogs.filter((x) => !last?.dogs.includes(x));
  if (last?.kind !== 'finding' || last.sign === 'any' || last.assertion || !dogs.length) return false;
  const { severity: _s, trend: _t, doubt: _d, because: _b, ...rest } = last;
  const span = f.span([d.from, d.to + verb]);
  f.add({ ...rest, dogs, assertion: 'absent', span, rule: 'nobody else is', ...doubted(d.doubt) });
  f.claim(d.from, d.to + verb);
  return true;
}

/** "Feet, front to back. … Corrie's are lovely.": hers are the feet the note goes through. */
function readHersFine(f: Frame, d: DogPhrase, to: number): boolean {
  const feet = f.tokens.some(
    (t) => t.i < d.from && /^(feet|paws)$/.test(t.low) && f.sentence(t.i) < f.sentence(d.from),
  );
  if (f.isClaimed(d.from, to)) return false;
  const last = justBefore(f, d.from);
  const told = last?.kind === 'finding' && last.part && !last.dogs.some((x) => d.dogs.includes(x)) ? last : undefined;
  if (!feet && !told) return false;
  const part = feet ? ('foot' as const) : told?.part;
  const side = !feet && told?.side === 'both' ? told.side : undefined;
  const span = f.span([d.from, to]);
  const rule = "<dog>'s are fine";
  f.add({
    kind: 'finding',
    dogs: d.dogs,
    ...(part ? { part } : {}),
    ...(side ? { side } : {}),
    sign: 'any',
    assertion: 'absent',
    span,
    rule,
    ...doubted(d.doubt),
  });
  f.claim(d.from, to);
  return true;
}

/** "Hector was tired; Agnes was not", "Storm might be dehydrated; Ivy is not". */
function readNot(f: Frame, d: DogPhrase): boolean {
  const verb = f.low(d.to);
  if (!/^(is|was|'s|has|had|did|does|are|were|do|have)$/.test(verb) || !/^(not|n't)$/.test(f.low(d.to + 1)))
    return false;
  if (!endsAt(f, d.to + 2)) return false;
  // What is or is not so of a dog is a sign or a way of going; eating is done.
  const be = /^(is|was|'s|are|were)$/.test(verb);
  const last = before(
    f,
    d.from,
    (e) =>
      !(e.kind === 'finding' && e.sign === 'any') &&
      !(be && e.kind === 'intake') &&
      !e.dogs.some((x) => d.dogs.includes(x)) &&
      (!e.assertion || e.kind === 'finding'),
  );
  if (!last || last.assertion === 'past' || last.assertion === 'planned') return false;
  const span = f.span([d.from, d.to + 2]);
  const { doubt: _d, because: _b, ...rest } = last;
  if (rest.kind === 'intake') {
    const { amount: _a, unit: _u, ...taken } = rest;
    f.add({ ...taken, dogs: d.dogs, took: 'none', span, rule: '<dog> did not', ...doubted(d.doubt) });
  } else {
    // "Tamsin has quit coughing, Hobnail hasn't": he still does
    const { assertion: _x, ...still } = rest;
    const goesOn = rest.assertion === 'resolved';
    const said = goesOn ? still : { ...still, assertion: 'absent' as const };
    const rule = goesOn ? '<dog> has not' : '<dog> is not';
    f.add({ ...said, dogs: d.dogs, span, rule, ...doubted(d.doubt) } as Entry);
  }
  f.claim(d.from, d.to + 2);
  return true;
}

/** "Ivy might be too", "and Ivy possibly", "maybe Ivy too": what was told last may be so of her. */
function readMaybe(f: Frame, d: DogPhrase): boolean {
  if (f.isClaimed(d.from, d.to)) return false;
  let k = d.to;
  const might = /^(might|may|could)$/.test(f.low(k)) && /^(be|have)$/.test(f.low(k + 1));
  if (might) k += 2;
  const maybe = /^(maybe|possibly|perhaps|probably)$/.test(f.low(k));
  if (maybe) k++;
  const ahead = /^(maybe|possibly|perhaps|probably)$/.test(f.low(d.from - 1));
  const next = (might || maybe) && f.low(k) === 'next';
  const too = next || /^(too|also)$/.test(f.low(k)) ? 1 : f.low(k) === 'as' && f.low(k + 1) === 'well' ? 2 : 0;
  if (!(might || maybe || (ahead && too)) || !endsAt(f, k + too)) return false;
  const last = justBefore(f, d.from);
  if (last?.kind !== 'finding' || last.sign === 'any' || (last.assertion && last.assertion !== 'possible'))
    return false;
  if (last.dogs.some((x) => d.dogs.includes(x))) return false;
  const { severity: _s, trend: _t, doubt: _d, because: _b, ...rest } = last;
  const from = ahead ? d.from - 1 : d.from;
  const span = f.span([from, k + too]);
  f.add({ ...rest, dogs: d.dogs, assertion: 'possible', span, rule: '<dog> might be too', ...doubted(d.doubt) });
  f.claim(from, k + too);
  return true;
}

/** "The left side has snowballs and the right side has none". */
function readHasNone(f: Frame, d: DogPhrase): boolean {
  if (!/^(has|have|had|got|'s|'ve)$/.test(f.low(d.to)) || f.isClaimed(d.from, d.to)) return false;
  const k = /^(got|had)$/.test(f.low(d.to + 1)) ? d.to + 2 : d.to + 1;
  if (f.low(k) !== 'none' || !(ENDS.test(f.low(k + 1)) || /^(at|explain|whatsoever|today|now)$/.test(f.low(k + 1))))
    return false;
  const last = before(
    f,
    d.from,
    (e) => e.kind === 'finding' && !e.assertion && !e.dogs.some((x) => d.dogs.includes(x)),
  );
  if (last?.kind !== 'finding') return false;
  const { severity: _s, trend: _t, doubt: _d, because: _b, side: _l, end: _e, ...rest } = last;
  f.add({
    ...rest,
    dogs: d.dogs,
    assertion: 'absent',
    span: f.span([d.from, k + 1]),
    rule: '<dog> has none',
    ...doubted(d.doubt),
  });
  f.claim(d.from, k + 1);
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

/** "so did Argus", "neither did Argus", "same for Moss", "ditto Fern", "Moss too", "Moss did as well". */
function readSo(f: Frame, d: DogPhrase): boolean {
  const [p1, p2] = [f.low(d.from - 1), f.low(d.from - 2)];
  const next = f.low(d.to);
  const colon = next === ':' && /^(same|ditto|likewise)$/.test(f.low(d.to + 1));
  const so = /^(did|does|is|was|has|had|were|are|do)$/.test(p1) && /^(so|as|neither|nor)$/.test(p2) && ENDS.test(next);
  const same =
    (p1 === 'ditto' || (/^(for|with|goes)$/.test(p1) && /^(same|ditto|goes|thing|story)$/.test(p2))) &&
    (ENDS.test(next) || /^(too|as)$/.test(next));
  const verb = /^(did|does|is|was|has|'s)$/.test(next) ? d.to + 1 : d.to;
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
  const at = f.tokens[d.from]?.start ?? 0;
  const left = f.entries.findLast((e) => e.kind === 'drop' && e.span !== undefined && e.span[1] <= at);
  const told = before(f, d.from, (e) => !e.dogs.some((x) => d.dogs.includes(x)));
  // "Ivy stays home; Rook too"
  const last: Entry | undefined =
    left?.span && left.span[1] > (told?.span?.[1] ?? 0) && !left.dogs.some((x) => d.dogs.includes(x)) ? left : told;
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
