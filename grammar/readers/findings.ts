/**
 * Reader "finding": a sign on a part of a dog. Each sign looks for its site beside it, else carries the one before; each
 * statement that a part is fine, or that there is nothing there, is a finding of no sign.
 */
import type { Sign } from '../entry.ts';
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import { deniedInside, doubtedInside } from '../steps/mentions.ts';
import { ENDS } from './elliptic-told.ts';
import { sideBehind } from './finding-asides.ts';
import { distribute, lateSites, readHasIt, readPossibleSites, resolve } from './finding-follow.ts';
import { readFragments } from './finding-fragments.ts';
import { eachOf, merged, ofOthersToo } from './finding-lists.ts';
import { type Finding, partTakesEnd, type ReadFinding, severityOf, trendOf } from './finding-parts.ts';
import { placesListed } from './finding-places.ts';
import { readFine } from './fine.ts';
import { readNothing } from './fine-nothing.ts';
import { doubted, said } from './places.ts';
import { signStands } from './sign-guards.ts';
import { partFor, siteBeside, siteOwner, WHOLE_BODY } from './where.ts';
import { carriedSite, headingSite, refined } from './where-carried.ts';

export type { Finding, ReadFinding } from './finding-parts.ts';

/** Reads findings; gives them with their places, for care and booties. */
export function readFindings(f: Frame): ReadFinding[] {
  const found: ReadFinding[] = [];
  const marks = [
    ...f.m.of('sign').map((m) => ({ m, kind: 'sign' as const })),
    ...f.m.of('sign-off').map((m) => ({ m, kind: 'sign' as const })),
    ...f.m.of('nothing').map((m) => ({ m, kind: 'nothing' as const })),
    ...f.m.of('stool-firm').map((m) => ({ m, kind: 'firm' as const })),
    ...f.m.of('hydrated').map((m) => ({ m, kind: 'hydrated' as const })),
    ...f.m.of('fine').map((m) => ({ m, kind: 'fine' as const })),
  ].sort((a, b) => a.m.from - b.m.from || b.m.to - a.m.to);
  let covered = 0;
  const takenSites = new Set<Site>();
  for (const { m, kind } of marks) {
    if (m.from < covered || f.isClaimed(m.from, m.to)) continue;
    const read =
      kind === 'sign'
        ? readSign(f, m, found, takenSites)
        : kind === 'nothing'
          ? readNothing(f, m, found)
          : kind === 'firm'
            ? readFirm(f, m, found)
            : kind === 'hydrated'
              ? readHydrated(f, m)
              : readFine(f, m, found, takenSites);
    if (!read.length) continue;
    for (const r of read) if (r.site) takenSites.add(r.site);
    found.push(...read);
    covered = m.to;
    f.claim(m.from, m.to);
  }
  sideBehind(f, found);
  lateSites(f, found, takenSites);
  readFragments(f, found);
  readPossibleSites(f, found, takenSites);
  sideBehind(f, found);
  readHasIt(f, found);
  distribute(f, found, takenSites);
  resolve(f, found);
  exceptTold(f, found);
  oneLimp(found);
  return found;
}

/** "Everybody's feet are good apart from a web split on Rook's left front": the one with the split is no longer of the good. */
function exceptTold(f: Frame, found: readonly ReadFinding[]): void {
  for (const all of found) {
    if (all.entry.sign !== 'any' || all.entry.assertion !== 'absent' || all.entry.dogs.length < 3) continue;
    const at = f.low(all.to) === ',' ? all.to + 1 : all.to;
    const except = f.m.from('except', at);
    if (!except || f.low(except.from) === 'but' || f.dogFrom(except.to)) continue;
    const own = found.find((r) => r.from >= except.to && f.sentence(r.from) === f.sentence(all.from));
    if (!own || own.entry.assertion || own.from - except.to > 5 || own.entry.dogs.length > 2) continue;
    all.entry.dogs = all.entry.dogs.filter((d) => !own.entry.dogs.includes(d));
  }
}

/** "Won't put weight on his right hind, he's hopping around": one limp, told with its leg and once more without. */
function oneLimp(found: ReadFinding[]): void {
  for (let k = found.length - 1; k >= 0; k--) {
    const { entry } = found[k] as ReadFinding;
    if (entry.sign !== 'lame' || entry.part || entry.assertion || entry.severity || entry.trend) continue;
    const twin = found.find(
      (r) =>
        r.entry !== entry &&
        r.entry.sign === 'lame' &&
        r.entry.part &&
        !r.entry.assertion &&
        r.entry.dogs.join() === entry.dogs.join(),
    );
    if (twin) found.splice(k, 1);
  }
}

/** "gums wet and pink", "skin snaps back": not dehydrated. */
function readHydrated(f: Frame, m: Mention): ReadFinding[] {
  const owner = f.owner(m.from, m.to);
  if (owner.human || !owner.dogs.length || f.assertion(m.from, m.to) !== 'present' || deniedInside(f.tokens, m))
    return [];
  // "2 mm pink spot": a length, no mucous membranes
  if (/^mms?$/.test(f.low(m.from)) && f.quantityAt(m.from - 1)) return [];
  const entry: Finding = {
    kind: 'finding',
    dogs: owner.dogs,
    sign: 'dehydrated',
    assertion: 'absent',
    span: f.span([m.from, m.to]),
    rule: '<gums> are fine',
    ...doubted(owner.doubt),
  };
  return [{ entry, from: m.from, to: m.to }];
}

/** "stool is firm": not loose; "stool's normal again", "firmed up": no longer loose. */
function readFirm(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding[] {
  const owner = f.owner(m.from, m.to);
  if (owner.human || !owner.dogs.length) return [];
  const words = f.tokens.slice(m.from, m.to + 1).map((t) => t.low);
  const told = found.some((r) => r.entry.sign === 'loose-stool' && r.entry.dogs.join() === owner.dogs.join());
  // "firm now" alone speaks of the stool that was told loose; else of anything
  if (/^(firm|formed)$/.test(words[0] ?? '') && !told) return [];
  const better = words.some((w) => /^(firmer|better|firming)$/.test(w));
  const again = told || words.some((w) => /^(again|now|back|firmed)$/.test(w));
  const asserted = f.assertion(m.from, m.to);
  // "not firm yet" is loose still
  if (asserted === 'absent' || asserted === 'planned' || deniedInside(f.tokens, m)) return [];
  const assertion = better
    ? undefined
    : asserted === 'past' || asserted === 'possible'
      ? asserted
      : again
        ? 'resolved'
        : 'absent';
  const entry: Finding = {
    kind: 'finding',
    dogs: owner.dogs,
    sign: 'loose-stool',
    ...(better ? { trend: 'better' as const } : {}),
    ...(assertion ? { assertion } : {}),
    span: f.span([m.from, m.to]),
    rule: '<stool> is firm',
    ...doubted(owner.doubt),
  };
  return [{ entry, from: m.from, to: m.to }];
}

/** "Miles is footsore": the word holds its part. */
const feetAt = (m: Mention): Site => ({ from: m.from, to: m.to, part: 'foot', plural: true, anaphor: false, paws: [] });

/** One sign, on each site it was said of. */
function readSign(f: Frame, m: Mention, found: readonly ReadFinding[], takenSites: ReadonlySet<Site>): ReadFinding[] {
  let sign = m.value as Sign;
  // "loose stool, no blood" speaks of the stool.
  const before = found.at(-1)?.entry.sign;
  if (
    sign === 'bleeding' &&
    (found.some((r) => r.entry.sign === 'loose-stool' && r.entry.dogs.length && before === 'loose-stool') ||
      before === 'loose-stool' ||
      before === 'bloody-stool') &&
    !f.sites.some((s) => s.from >= m.from && s.from - m.to < 4)
  )
    sign = 'bloody-stool';
  // "her pads are getting thin": worn, and the dog is not
  const thinPads =
    sign === 'thin' &&
    f.sites.some(
      (s) =>
        /^(pad|nail)$/.test(s.part ?? '') && s.to <= m.from && m.from - s.to <= 4 && !f.strongBetween(s.to, m.from),
    );
  if (thinPads) sign = 'worn';
  // "the harness rubbed him raw"
  if (
    sign === 'worn' &&
    f.low(m.to - 1) === 'raw' &&
    [1, 2, 3].some((n) => /^rub(bed|s|bing)?$/.test(f.low(m.from - n)))
  )
    sign = 'rub';
  const sites = WHOLE_BODY.has(sign)
    ? []
    : /^(footsore)$/.test(f.low(m.from))
      ? [feetAt(m)]
      : siteBeside(f, m, takenSites);
  if (toldAlready(f, m, sign, found)) return [];
  const places =
    WHOLE_BODY.has(sign) || sites.some((s) => s.side && s.from >= m.to) ? [] : placesListed(f, m, takenSites);
  if (places.length) {
    // "Left hind on Tank, right front on Ivy: splits in the webs"
    const part = f.sites.find((s) => s.from >= m.to && s.from - m.to <= 3 && !s.side)?.part;
    return places.map(({ site, dogs }) => {
      const at = { ...site, ...(part && !site.part ? { part } : {}) };
      return { entry: build(f, m, sign, { dogs }, at), from: site.from, to: m.to, site: at };
    });
  }
  const each = eachOf(f, m, found);
  if (each.length)
    return each.map((r) => ({
      entry: build(f, m, sign, { dogs: r.entry.dogs }, r.site),
      from: m.from,
      to: m.to,
      site: r.site,
    }));
  if (!signStands(f, m, sites, found)) return [];
  // "the ice balls came out": those told before
  const out = sign === 'iced' ? f.m.from('over', m.to) : undefined;
  if (out && f.low(out.to - 1) === 'out' && found.some((r) => r.entry.sign === 'iced')) return [];
  if (goneToo(f, m)) {
    const told = found.findLast((r) => r.entry.sign === sign && r.entry.assertion !== 'absent');
    if (told) {
      told.entry.assertion = 'resolved';
      delete told.entry.trend;
      f.claim(m.from, m.to);
      return [];
    }
  }
  const explicit = sites.length > 0;
  const owner = siteOwner(f, m, sites, found);
  // Of nobody in a note that names dogs or people: left to be seen as words, not read as a dog's.
  const people = f.people.length > 0 || f.m.of('me').some((x) => !f.dogAt(x.from));
  if (owner.human || (!owner.dogs.length && !explicit && people)) return [];
  let where: (Site | undefined)[] = sites.map((s) => refined(f, s, owner, found, m.from));
  // "limping in the back": behind, for nobody is lame in the spine
  if (sign === 'lame')
    where = where.map((s) => (s?.part === 'back' && s.from >= m.to ? { ...s, part: 'leg', end: 'hind' } : s));
  if (!explicit && !WHOLE_BODY.has(sign)) {
    const site = carriedSite(f, m, sign, owner, found) ?? headingSite(f, m, owner, found);
    where = [site];
  }
  // "gimpy behind", "stiff in front": the end alone
  const end =
    /^(behind)$/.test(f.low(m.to)) && /^([.,;!]|and|but|on|)$/.test(f.low(m.to + 1))
      ? 'hind'
      : f.low(m.to) === 'in' && f.low(m.to + 1) === 'front' && /^([.,;!]|and|but|)$/.test(f.low(m.to + 2))
        ? 'front'
        : undefined;
  if (end && !where[0] && /^(lame|stiff|sore)$/.test(sign))
    where = [
      { from: m.to, to: m.to + (end === 'hind' ? 1 : 2), part: 'leg', end, plural: false, anaphor: false, paws: [] },
    ];
  if (!where.length) where = [undefined];
  const others: ReadFinding[] = ofOthersToo(f, m, sites, takenSites).map(({ site, dogs }) => ({
    entry: build(f, m, sign, { dogs }, site),
    from: Math.min(m.from, site.from),
    to: Math.max(m.to, site.to),
    site,
  }));
  const own: ReadFinding[] = merged(f, m, where).map((site) => ({
    entry: build(f, m, sign, owner, site),
    from: Math.min(m.from, site && explicit ? site.from : m.from),
    to: Math.max(m.to, site && explicit ? site.to : m.to),
    site,
  }));
  return [...own, ...others].sort((x, y) => x.from - y.from);
}

/** "Blood in Otter's stool", "blood in Otter's pee": with the dog's name between, no phrase of the lexicon can hold it. */
function signOfBlood(f: Frame, m: Mention, sign: Sign): Sign {
  if (sign !== 'bleeding' || f.low(m.to) !== 'in') return sign;
  const near = f.tokens.slice(m.to + 1, m.to + 5).map((token) => token.low);
  if (near.some((low) => /^(stool|stools|poop|poo|diarrhea|droppings)$/.test(low))) return 'bloody-stool';
  return near.some((low) => /^(urine|pee|piss)$/.test(low)) ? 'dark-urine' : sign;
}

/** "There's a crack in the pad. I smeared balm on the crack": the same one again. */
function toldAlready(f: Frame, m: Mention, sign: Sign, found: readonly ReadFinding[]): boolean {
  if (!/^(the|that)$/.test(f.low(m.from - 1)) || !/^(on|in|into|over|onto|around|round)$/.test(f.low(m.from - 2)))
    return false;
  return (
    found.some((r) => r.entry.sign === sign && r.to <= m.from) && !f.siteAt(m.to) && !/^(on|in|of)$/.test(f.low(m.to))
  );
}

/** "the ice is gone and so is the limp", "so's his cough" */
function goneToo(f: Frame, m: Mention): boolean {
  let k = m.from - 1;
  if (f.dogAt(k)) k = (f.dogAt(k)?.from ?? k) - 1;
  if (/^(the|that)$/.test(f.low(k))) k--;
  if (!/^(is|'s|are|has|did)$/.test(f.low(k)) || f.low(k - 1) !== 'so') return false;
  const gone = [...f.m.of('over'), ...f.cues.filter((c) => c.gives === 'resolved')].some(
    (x) => x.to <= k - 1 && k - 1 - x.to <= 3,
  );
  return gone && ENDS.test(f.low(m.to));
}

/** "Barley can stay home with that sore pad": the staying is planned, not the sore. */
const ailsNow = (f: Frame, heard: ReturnType<Frame['asserted']>, m: Mention) =>
  heard.assertion === 'planned' &&
  heard.cue !== undefined &&
  !heard.cue.group.condition &&
  (heard.cue.to > m.from ||
    m.from - heard.cue.to > 4 ||
    f.tokens.slice(heard.cue.to, m.from).some((t) => /^(with|because|since|for|that)$/.test(t.low)));

/** "Vomited she has not", "swollen however it is not": the denial at the end of an inverted clause. */
function deniedBehind(f: Frame, m: Mention): boolean {
  let k = m.to;
  while (/^(,|however|though|also|either|too)$/.test(f.low(k))) k++;
  if (!/^(he|she|it|they)$/.test(f.low(k)) || !/^(is|was|has|does|did|are|were|have|do|'s)$/.test(f.low(k + 1)))
    return false;
  k += 2;
  while (/^(however|also|too|certainly|definitely|today|now|really)$/.test(f.low(k))) k++;
  return f.low(k) === 'not' && /^([.,;!?]|and|but|only|so|)$/.test(f.low(k + 1));
}

function build(f: Frame, m: Mention, told: Sign, owner: Owner, site: Site | undefined): Finding {
  const sign = signOfBlood(f, m, told);
  // Ice balls sit between the toes of a foot; the web only where it was said.
  const named = partFor(sign, site);
  const web =
    named === 'web' &&
    site &&
    f.tokens.slice(site.from, site.to).some((t) => /^(web|webs|webbing|webbed|skin)$/.test(t.low));
  const part = sign === 'iced' && (named === 'toe' || (named === 'web' && !web)) ? 'foot' : named;
  const heard = f.asserted(m.from, m.to);
  // A heading plans what is to be done, not how a dog is.
  const underHeading =
    heard.assertion === 'planned' &&
    heard.cue?.reach === 'heading' &&
    f.strongBetween(Math.min(heard.cue.from, m.from), Math.max(heard.cue.from, m.from));
  // "she's ribby, had the trots last week, cleared up now": what cleared up is the sign told last
  const other =
    heard.assertion === 'resolved' && heard.cue && heard.cue.from >= m.to && heard.cue.direction !== 'forward'
      ? f.m.of('sign').find((x) => x.from >= m.to && x.to <= (heard.cue?.from ?? 0))
      : undefined;
  const listed =
    other &&
    f.tokens
      .slice(m.to, other.from)
      .every(
        (t) => /^(and|or|,|nor|&|\+|a|bit|little|the|some|very|really)$/.test(t.low) || f.siteAt(t.i) !== undefined,
      );
  // "she hasn't gone down": the cue of a swelling that hasn't holds the sign's own words
  const denied = heard.assertion === 'present' && /^(not|n't|never|0|zero|nil)$/.test(f.low(m.from - 1));
  // "toenail gone": the word of the sign itself is no end of it
  const itself = heard.cue && heard.cue.from >= m.from && heard.cue.to <= m.to && sign === 'torn';
  const assertion =
    deniedInside(f.tokens, m) || deniedBehind(f, m) || denied
      ? 'absent'
      : goneToo(f, m) || (f.m.at('over', m.from)?.to ?? 0) >= m.to
        ? 'resolved'
        : underHeading && heard.cue
          ? f.assertionWithout(heard.cue, m.from, m.to)
          : itself || (other && !listed) || ailsNow(f, heard, m)
            ? 'present'
            : heard.assertion === 'present' && doubtedInside(f.tokens, m)
              ? 'possible'
              : heard.assertion;
  const severity = assertion === 'absent' ? undefined : severityOf(f, m, site);
  const trend = assertion === 'absent' ? undefined : trendOf(f, m, site);
  // "nobody is lame but the pads are raw": behind "but" it is so of everyone
  const nobody =
    owner.phrase?.negative &&
    !f.tokens.slice(owner.phrase.to, m.from).some((t) => /^(but|though|although|however|yet)$/.test(t.low));
  const negative = nobody && assertion === 'present' ? 'absent' : assertion;
  // "neither one's hurt" says that nothing is wrong
  const asSaid: Sign = negative === 'absent' && !part && /^(hurt|harmed)$/.test(f.low(m.from)) ? 'any' : sign;
  const doubt = owner.doubt ?? (owner.dogs.length ? undefined : 'no dog was named');
  return {
    kind: 'finding',
    dogs: owner.dogs,
    ...(part ? { part } : {}),
    ...(site?.side && part ? { side: site.side } : {}),
    ...(site?.end && part && partTakesEnd(part) ? { end: site.end } : {}),
    sign: asSaid,
    ...(severity ? { severity } : {}),
    ...(trend ? { trend } : {}),
    ...said(negative),
    span: f.span(
      [m.from, m.to],
      site &&
        Math.abs(site.from - m.from) < 14 &&
        !f.strongBetween(Math.min(site.from, m.from), Math.max(site.from, m.from))
        ? [site.from, site.to]
        : undefined,
      owner.phrase && !owner.carried && Math.abs(owner.phrase.from - m.from) < 10
        ? [owner.phrase.from, owner.phrase.to]
        : undefined,
    ),
    rule: site ? '<sign> on <site>' : '<dog> <sign>',
    ...doubted(doubt, !owner.dogs.length),
  };
}
