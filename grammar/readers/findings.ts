/**
 * Reader "finding": a sign on a part of a dog. Each sign looks for its site beside it, else carries the one before; each
 * statement that a part is fine, or that there is nothing there, is a finding of no sign.
 */
import type { EntryOf, Sign } from '../entry.ts';
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import { doubted, said } from './places.ts';
import { signStands } from './sign-guards.ts';
import { carriedSite, headingSite, partFor, siteBeside, siteOwner, WHOLE_BODY } from './where.ts';

export type Finding = EntryOf<'finding'>;

/** Where a finding was read, for those that carry its site on. */
export interface ReadFinding {
  entry: Finding;
  from: number;
  to: number;
  site?: Site;
}

/** Reads findings; gives them with their places, for care and booties. */
export function readFindings(f: Frame): ReadFinding[] {
  const found: ReadFinding[] = [];
  const marks = [
    ...f.m.of('sign').map((m) => ({ m, kind: 'sign' as const })),
    ...f.m.of('sign-off').map((m) => ({ m, kind: 'sign' as const })),
    ...f.m.of('nothing').map((m) => ({ m, kind: 'nothing' as const })),
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
          : readFine(f, m, found, takenSites);
    if (!read.length) continue;
    for (const r of read) if (r.site) takenSites.add(r.site);
    found.push(...read);
    covered = m.to;
    f.claim(m.from, m.to);
  }
  readPossibleSites(f, found, takenSites);
  readHasIt(f, found);
  distribute(f, found, takenSites);
  resolve(f, found);
  return found;
}

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
  const sites = WHOLE_BODY.has(sign) ? [] : siteBeside(f, m, takenSites);
  if (!signStands(f, m, sites, found)) return [];
  const explicit = sites.length > 0;
  const owner = siteOwner(f, m, sites, found);
  // Of nobody in a note that names dogs or people: left to be seen as words, not read as a dog's.
  if (owner.human || (!owner.dogs.length && !explicit && (f.people.length > 0 || f.m.of('me').length > 0))) return [];
  let where: (Site | undefined)[] = sites.map((s) => refined(s, owner, found, m.from));
  if (!explicit && !WHOLE_BODY.has(sign)) {
    const site = carriedSite(f, m, sign, owner, found) ?? headingSite(f, m, owner);
    where = [site];
  }
  if (!where.length) where = [undefined];
  return merged(where).map((site) => ({
    entry: build(f, m, sign, owner, site),
    from: Math.min(m.from, site && explicit ? site.from : m.from),
    to: Math.max(m.to, site && explicit ? site.to : m.to),
    site,
  }));
}

const FRONT = new Set(['wrist', 'elbow', 'shoulder', 'triceps', 'armpit', 'chest']);
const HIND = new Set(['hock', 'knee', 'thigh', 'hip', 'groin']);

/** "three-legged LH, hock swollen": a part with no side of its own is on the leg the dog was just said to be lame on. */
function refined(s: Site, owner: Owner, found: readonly ReadFinding[], at: number): Site {
  if (s.side || s.plural || !s.part || s.anaphor) return s;
  // "his foot is sore, the back left one, there's a cut in the pad"
  const foot = found.at(-1);
  if (
    /^(pad|web|toe|nail)$/.test(s.part) &&
    foot?.site?.side &&
    foot.entry.part === 'foot' &&
    foot.entry.dogs.join() === owner.dogs.join() &&
    at - foot.to < 14
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

/** "LF and RF webs": one site, both sides. */
function merged(sites: (Site | undefined)[]): (Site | undefined)[] {
  const out: (Site | undefined)[] = [];
  for (const s of sites) {
    const twin =
      s &&
      out.find(
        (o) =>
          o &&
          o.part === s.part &&
          o.end === s.end &&
          o.side &&
          s.side &&
          o.side !== s.side &&
          o.side !== 'both' &&
          s.side !== 'both',
      );
    if (twin && s)
      out[out.indexOf(twin)] = {
        ...twin,
        side: 'both',
        from: Math.min(twin.from, s.from),
        to: Math.max(twin.to, s.to),
        paws: [...twin.paws, ...s.paws],
      };
    else out.push(s);
  }
  return out;
}

function build(f: Frame, m: Mention, sign: Sign, owner: Owner, site: Site | undefined): Finding {
  const part = partFor(sign, site);
  const assertion = f.m.at('over', m.from) ? 'resolved' : f.assertion(m.from, m.to);
  const severity = assertion === 'absent' ? undefined : severityOf(f, m, site);
  const trend = assertion === 'absent' ? undefined : trendOf(f, m, site);
  const negative = owner.phrase?.negative && assertion === 'present' ? 'absent' : assertion;
  const doubt = owner.doubt ?? (owner.dogs.length ? undefined : 'no dog was named');
  return {
    kind: 'finding',
    dogs: owner.dogs,
    ...(part ? { part } : {}),
    ...(site?.side && part ? { side: site.side } : {}),
    ...(site?.end && part && partTakesEnd(part) ? { end: site.end } : {}),
    sign,
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

const partTakesEnd = (part: string) => /^(leg|foot|pad|web|toe|nail|dewclaw)$/.test(part);

/** How bad: words right before the sign or its site, or behind it in the same statement. */
export function severityOf(f: Frame, m: Mention, site?: Site): Finding['severity'] {
  const inside = f.m.of('severity').find((s) => s.from >= m.from && s.to <= m.to);
  if (inside) return inside.value;
  const lo = Math.min(m.from, site && m.from - site.to < 4 && site.from < m.from ? site.from : m.from);
  for (let k = m.from - 1; k >= Math.max(0, lo - 4); k--) {
    const s = f.m.at('severity', k);
    if (s && !f.strongBetween(s.from, m.from)) return s.value;
    if (f.isStrong(k) || (f.m.at('sign', k) && f.low(m.from - 1) !== 'and')) break;
    if (f.low(k) === ',' || f.dogAt(k)) break;
  }
  const end = Math.max(m.to, site && site.from >= m.to && site.from - m.to < 6 ? site.to : m.to);
  for (let k = m.to; k < end + 4 && k < f.tokens.length; k++) {
    if (f.isStrong(k) || (k > m.to && f.m.from('sign', k)) || f.m.from('act', k)) break;
    if (k >= end && f.dogFrom(k) && !f.dogFrom(k)?.possessive) break;
    const s = f.m.from('severity', k);
    if (s) {
      const after = s.to;
      if (
        f.m.from('sign', after) ||
        (f.m.from('sign', after + 1) && !/^(no|not|,|but)$/.test(f.low(after))) ||
        f.m.from('manner', after) ||
        f.m.from('fine', after) ||
        /^(\d|one|two|ten|five|fif|twenty|thirty)/.test(f.low(after))
      )
        break;
      if (
        /^(so|way|too|dead|really|right|pretty|very|quite|real|little|light|hard|more)$/.test(f.low(s.from)) &&
        s.to - s.from === 1
      )
        break;
      return s.value;
    }
  }
  return undefined;
}

/** Which way it goes: better, worse, still. */
export function trendOf(f: Frame, m: Mention, site?: Site): Finding['trend'] {
  const lo = site && site.from < m.from && m.from - site.to < 8 ? site.from : m.from;
  const hi = site && site.to > m.to && site.from - m.to < 8 ? site.to : m.to;
  let still: Finding['trend'];
  for (let k = Math.max(0, lo - 3); k < hi + 5 && k < f.tokens.length; k++) {
    if (k >= hi && (f.isStrong(k) || f.m.from('sign', k) || (f.dogFrom(k) && !f.dogFrom(k)?.possessive))) break;
    if (k < lo && (f.strongBetween(k, lo) || f.dogAt(k))) continue;
    const t = f.m.from('trend', k);
    if (!t) continue;
    if (/^(more|less|less than|more than|there)$/.test(f.low(t.from)) && f.low(t.to) !== m.value) {
      if (!/^(sore|swollen|stiff|lame|puffy|tight|raw)$/.test(f.low(t.to))) continue;
    }
    if (/^(not as|less)$/.test(f.text.slice(...f.span([t.from, t.to])).toLowerCase())) return 'better';
    // "not as hot" speaks of the heat alone.
    if (/^(not as|less|more)$/.test(f.low(t.from)) && t.to !== m.from) continue;
    if (t.value !== 'same') return t.value;
    still = 'same';
  }
  return still;
}

/** "nothing wrong with Freya's front feet", "nothing in that foot", "can't see anything wrong with it". */
function readNothing(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding[] {
  const next = f.low(m.to);
  const words = f.text.slice(...f.span([m.from, m.to])).toLowerCase();
  if (words === 'nothing' && !/^(in|on|wrong|there|between|with|swollen|to)$/.test(next)) return [];
  if (words === 'nothing' && next === 'to') return [];
  if (words === 'anything wrong' && f.assertion(m.from, m.to) !== 'absent') return [];
  let k = m.to;
  while (/^(with|w|\/|in|on|of|to|the|either|any|about|wrong|between|at|all|there)$/.test(f.low(k)) && k - m.to < 5)
    k++;
  const dog = f.dogFrom(k);
  let site =
    f.sites.find((s) => s.from >= k && s.from <= (dog ? dog.to + 1 : k) && s.to > k) ??
    f.sites.find((s) => s.from < k && s.to >= k && s.from >= m.to);
  const owner: Owner =
    dog && !(dog.possessive && !site) ? { dogs: dog.dogs, phrase: dog, doubt: dog.doubt } : f.owner(m.from, m.to, site);
  if (owner.human || (!owner.dogs.length && !site)) return [];
  const it = f.low(k) === 'it' || f.low(k) === 'that' || f.low(k) === 'there' || f.low(k) === 'them';
  if (site?.anaphor || (!site && it)) {
    const last = lastSite(f, m.from, found);
    if (last)
      site = {
        ...last,
        from: site?.from ?? k,
        to: site?.to ?? k + 1,
        part: footThere(f, site) ?? last.part,
        anaphor: true,
      };
  } else if (!site && words === 'nothing') return [];
  return [{ entry: anyFinding(f, m, owner, site, 'absent'), from: m.from, to: Math.max(m.to, site?.to ?? 0), site }];
}

const lastSite = (f: Frame, before: number, found: readonly ReadFinding[]): Site | undefined =>
  [...found].reverse().find((r) => r.site && r.from < before)?.site ??
  f.sites.filter((s) => s.to <= before && !s.anaphor).at(-1);

/** "that foot" after a leg is the foot, not the leg. */
const footThere = (f: Frame, site: Site | undefined) => {
  if (!site) return undefined;
  for (let k = site.from; k < site.to; k++) {
    const p = f.m.at('part', k);
    if (p) return p.value as Finding['part'];
  }
  return undefined;
};

function anyFinding(
  f: Frame,
  m: Mention,
  owner: Owner,
  site: Site | undefined,
  assertion: 'absent' | 'resolved' | 'possible' | 'planned' | 'past',
): Finding {
  const part = site?.part ?? (site?.end ? 'foot' : undefined);
  return {
    kind: 'finding',
    dogs: owner.dogs,
    ...(part ? { part } : {}),
    ...(site?.side ? { side: site.side } : {}),
    ...(site?.end && part && partTakesEnd(part) ? { end: site.end } : {}),
    sign: 'any',
    assertion,
    span: f.span([m.from, m.to], site && Math.abs(site.from - m.from) < 12 ? [site.from, site.to] : undefined),
    rule: assertion === 'possible' ? '<site> possible' : '<site> is fine',
    ...doubted(owner.doubt ?? (owner.dogs.length ? undefined : 'no dog was named'), !owner.dogs.length),
  };
}

const FINE_LINK =
  /^(is|are|was|were|'s|'re|look|looks|looked|feel|feels|felt|seem|seems|all|both|both|still|pretty|really|very|is|just|been|has|have|:|so|fine|good|ok|nice|and|also|perfectly|as|too|checked|out|now|quite|holding|up|came|come|back|doing|far|well|stayed|staying|mostly|completely|totally|absolutely|nearly|of|them|em|today|done|s|again|down|everywhere|there|here|gone|apart|in)$/;

/** "wrists ok", "feet all look clean", "the shoulder is fine now"; of a whole dog only in words that can be nothing else. */
function readFine(f: Frame, m: Mention, found: readonly ReadFinding[], takenSites: ReadonlySet<Site>): ReadFinding[] {
  const words = f.text.slice(...f.span([m.from, m.to])).toLowerCase();
  const asserted = f.assertion(m.from, m.to);
  if (asserted === 'absent') return [];
  let k = m.from - 1;
  let hyd = false;
  while (k >= 0 && m.from - k < 9 && !f.isStrong(k) && !f.sites.some((s) => s.to === k + 1)) {
    const low = f.low(k);
    if (/^(hyd|hydration|gums)$/.test(low)) {
      hyd = true;
      break;
    }
    const d = f.dogAt(k);
    if (d?.value === 'all' && !d.company && !d.prep) {
      k = d.from - 1;
      continue;
    }
    if (d && !d.company) {
      // "feet clean on everybody" has its dog elsewhere; "Fjord next to him fine all over" has it here.
      break;
    }
    if (!FINE_LINK.test(low) && !f.m.at('severity', k) && !f.m.at('except', k) && !d) break;
    k--;
  }
  if (hyd) return readHydration(f, m, k);
  let site = f.sites.find((s) => s.to === k + 1 && !s.anaphor && !takenSites.has(s)) ?? siteBehindFine(f, m);
  const anaphor = f.sites.find((s) => s.to === k + 1 && s.anaphor);
  if (!site && anaphor && footThere(f, anaphor)) {
    const last = lastSite(f, m.from, found);
    if (last) site = { ...last, ...anaphor, part: footThere(f, anaphor), side: last.side, end: last.end };
  }
  if (site && (site.part || site.end)) {
    if (f.isClaimed(site.from, site.to)) return [];
    const owner = f.owner(m.from, m.to, site);
    const own: Owner = owner.dogs.length || owner.human || site.side ? owner : wholeTeam(f);
    if (own.human) return [];
    const now =
      /^(now|again|today)$/.test(f.low(m.to)) ||
      f.low(m.from - 1) === 'now' ||
      asserted === 'resolved' ||
      /\bback to\b/.test(f.text.slice(...f.span([Math.max(0, m.from - 2), m.to])));
    const state =
      asserted === 'past' || asserted === 'planned' || asserted === 'possible'
        ? asserted
        : now && !/^today$/.test(f.low(m.to))
          ? 'resolved'
          : 'absent';
    return [
      { entry: anyFinding(f, m, own, site, state === 'possible' ? 'absent' : state), from: site.from, to: m.to, site },
    ];
  }
  const rest = restClean(f, m, found);
  if (rest) return [rest];
  const feet = checkedBefore(f, m, k);
  if (feet) return [{ entry: anyFinding(f, m, wholeTeam(f), feet, 'absent'), from: feet.from, to: m.to, site: feet }];
  return readFineDog(f, m, words, k);
}

/** "Gus small cut RF web, Kestrel LH pad pink, rest clean": the feet of those not told of. */
function restClean(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding | undefined {
  const d = f.dogs.find((x) => x.value === 'rest' && x.to <= m.from && m.from - x.to <= 3);
  const feetTold = f.sites.some((s) => s.part === 'foot' && s.plural && s.to <= m.from);
  if (
    !d ||
    (!found.length && !feetTold) ||
    !/^(clean|good|fine|ok|perfect|great|normal|clear|okay)$/.test(f.low(m.from))
  )
    return undefined;
  if (!found.every((r) => !r.site || /^(foot|pad|web|toe|nail|dewclaw)$/.test(r.entry.part ?? ''))) return undefined;
  const told = new Set(found.flatMap((r) => r.entry.dogs));
  const all = f.lineup(d.from).map((l) => l.dog);
  const dogs = all.length ? all.filter((x) => !told.has(x)) : ['*'];
  const site: Site = { from: m.from, to: m.to, part: 'foot', plural: true, anaphor: false, paws: [] };
  return { entry: anyFinding(f, m, { dogs, phrase: d }, site, 'absent'), from: d.from, to: m.to, site };
}

/** "checked feet, all good": the part that was gone over. */
function checkedBefore(f: Frame, m: Mention, k: number): Site | undefined {
  const all = f.dogAt(m.from - 1) ?? f.dogAt(k);
  if (f.low(m.from - 1) !== 'all' && all?.value !== 'all' && f.low(m.from) !== 'all') return undefined;
  return f.sites.find(
    (s) =>
      s.part &&
      s.to <= m.from &&
      m.from - s.to <= 4 &&
      f.m.of('act').some((a) => a.value === 'checked' && a.to <= s.from && s.from - a.to <= 2),
  );
}

/** "good feet", "clean wrists all round". */
function siteBehindFine(f: Frame, m: Mention): Site | undefined {
  if (
    !/^(good|clean|perfect|healthy|great|fine|nice|beautiful|normal|cool|cold|dry)$/.test(f.low(m.from)) ||
    m.to - m.from > 1
  )
    return undefined;
  return f.sites.find((s) => s.from === m.to && s.part && /^(foot|wrist|pad|web|shoulder|nail)$/.test(s.part));
}

const wholeTeam = (f: Frame): Owner => {
  const dogs = f.lineup(f.tokens.length).map((l) => l.dog);
  return { dogs: dogs.length ? dogs : ['*'] };
};

function readHydration(f: Frame, m: Mention, k: number): ReadFinding[] {
  const owner = f.owner(k, m.to);
  if (owner.human) return [];
  const entry: Finding = {
    kind: 'finding',
    dogs: owner.dogs,
    sign: 'dehydrated',
    assertion: 'absent',
    span: f.span([k, m.to]),
    rule: 'hydration is fine',
    ...doubted(owner.doubt),
  };
  return [{ entry, from: k, to: m.to }];
}

/** Of the whole dog: "unhurt", "fine all over", "sound"; plain praise is left to the attitude. */
function readFineDog(f: Frame, m: Mention, words: string, k: number): ReadFinding[] {
  const allOver =
    /^(all over|everywhere|otherwise|to me|physically|healthwise|nose to tail)/.test(
      `${f.low(m.to)} ${f.low(m.to + 1)}`,
    ) && !/^(to me|otherwise)/.test(`${f.low(m.to)} ${f.low(m.to + 1)}`);
  const strong =
    /^(unhurt|uninjured|unharmed|sound|sound as a bell|none the worse|checked out fine|checked out|checks out|passed|intact|pain free|healthy|unremarkable)$/.test(
      words,
    ) || allOver;
  if (!strong) return [];
  const d = f.dogAt(k) ?? f.dogs.filter((x) => x.to <= m.from && !x.company).at(-1);
  if (!d?.dogs.length || f.strongBetween(d.to, m.from)) return [];
  const now = f.low(m.to) === 'now';
  const entry: Finding = {
    kind: 'finding',
    dogs: d.dogs,
    sign: words.startsWith('sound') && now ? 'lame' : 'any',
    assertion: now ? 'resolved' : 'absent',
    span: f.span([Math.max(d.from, m.from - 8), m.to]),
    rule: '<dog> is fine',
    ...doubted(d.doubt),
  };
  return [{ entry, from: m.from, to: m.to }];
}

/** "might be the knee", "probably the web again": a part with nothing said of it but that it may be the one. */
function readPossibleSites(f: Frame, found: ReadFinding[], taken: Set<Site>): void {
  for (const s of f.sites) {
    const denied = found.some((r) => r.site === s && r.entry.assertion === 'absent' && r.from >= s.from);
    if ((taken.has(s) && !denied) || !s.part || s.anaphor || f.isClaimed(s.from, s.to) || s.plural) continue;
    if (f.assertion(s.from, s.to) !== 'possible') continue;
    const near =
      f.cues.some((c) => c.gives === 'possible' && c.to <= s.from && s.from - c.to <= 5) ||
      f.cues.some((c) => c.gives === 'possible' && c.from >= s.to && c.from - s.to <= 2);
    if (!near) continue;
    const next = f.low(s.to);
    if (/^(a|an)$/.test(f.low(s.from - 1))) continue;
    if (f.m.at('bootie', s.to) || f.m.from('sign', s.to) || /^(one|ones)$/.test(next)) continue;
    // A care of the same part right behind takes the words for its own.
    const owner = f.owner(s.from, s.to, s);
    if (owner.human || !owner.dogs.length) continue;
    const last = [...found]
      .reverse()
      .find((r) => r.from < s.from && r.site && r.entry.dogs.some((d) => owner.dogs.includes(d)));
    const site: Site = { ...s, side: s.side ?? sideOf(last?.site), end: s.end ?? last?.site?.end };
    const m: Mention = { tag: 'part', value: s.part, from: s.from, to: s.to };
    const entry = anyFinding(f, m, owner, site, 'possible');
    found.push({ entry, from: s.from, to: s.to, site });
    taken.add(s);
    f.claim(s.from, s.to);
  }
}

const sideOf = (s: Site | undefined) => s?.side;

/**
 * "Two cracked pads, the right front is tiny, the left hind one's deep": sites without a sign of their own, behind a sign
 * on a part without a side, take both from it; the heading itself then says nothing more.
 */
function distribute(f: Frame, found: ReadFinding[], taken: Set<Site>): void {
  for (let h = 0; h < found.length; h++) {
    const head = found[h] as ReadFinding;
    if (head.entry.side || head.entry.sign === 'any' || head.entry.assertion || WHOLE_BODY.has(head.entry.sign))
      continue;
    const colon = f.low(head.to) === ':';
    const counted = head.site && (head.site.plural || /^(two|three|both|four|2|3)$/.test(f.low(head.site.from - 1)));
    // "harness rubs pilot both armpits": a sign of nobody, on nothing, with dogs behind it.
    const headless = !head.entry.dogs.length && !head.site;
    if (!colon && !counted && !headless) continue;
    const bare = f.sites.filter(
      (s) =>
        s.from >= head.to &&
        s.side &&
        f.sentence(s.from) === f.sentence(head.from) &&
        !f.m.at('bootie', s.to) &&
        mayTake(f, s, head, found, taken),
    );
    if (!bare.length) continue;
    const out: ReadFinding[] = bare.map((s) => {
      const own = f.dogs.filter((d) => d.to <= s.from && d.from >= head.from && !d.company && d.dogs.length).at(-1);
      const dogs = own ? own.dogs : head.entry.dogs;
      const severity = severityOf(f, { tag: 'sign', value: head.entry.sign, from: s.from, to: s.to }, undefined);
      const part = head.entry.part ?? s.part;
      const { severity: _s, doubt: _d, because: _b, ...rest } = head.entry;
      const entry: Finding = {
        ...rest,
        dogs,
        ...(part ? { part } : {}),
        side: s.side,
        ...(s.end && partTakesEnd(part ?? '') ? { end: s.end } : {}),
        ...(severity ? { severity } : {}),
        span: f.span([head.from, head.to], [s.from, s.to]),
        rule: '<signs>: <site>, <site>',
      };
      // A follow-on sign that stood on the bare foot is on the heading's part.
      for (const r of found) if (r.site === s && r.entry.sign !== 'any' && part) r.entry.part = part;
      taken.add(s);
      f.claim(s.from, s.to);
      return { entry, from: s.from, to: s.to, site: { ...s, part } };
    });
    const keepHead = head.entry.dogs.length > 0 && out.every((o) => !sameDogs(o, head));
    const last = found.length;
    found.splice(h, keepHead ? 0 : 1, ...out);
    if (!keepHead) for (const r of found) if (r.site === head.site && r !== head && !out.includes(r)) follow(r, out);
    h += found.length - last + 1;
    found.sort((a, b) => a.from - b.from);
  }
}

/** A site that no sign of its own has, or only a follow-on sign behind it ("Moss right front, bleeding"). */
function mayTake(
  f: Frame,
  s: Site,
  head: ReadFinding,
  found: readonly ReadFinding[],
  taken: ReadonlySet<Site>,
): boolean {
  if (s.part && head.entry.part && s.part !== head.entry.part) return false;
  if (!taken.has(s)) return !f.isClaimed(s.from, s.to);
  return (
    (!s.part || s.part === head.entry.part) &&
    found.some((r) => r.site === s && r.from >= s.from && f.low(s.to) === ',')
  );
}

/** "Huckle has it now": the sickness told of another dog before. */
function readHasIt(f: Frame, found: ReadFinding[]): void {
  for (const d of f.dogs) {
    const words = f.tokens
      .slice(d.to, d.to + 3)
      .map((t) => t.low)
      .join(' ');
    if (!/^(has|had|'s got|got|have) (it|the same)\b/.test(words) || !d.dogs.length || d.kind === 'pronoun') continue;
    const last = [...found]
      .reverse()
      .find((r) => r.from < d.from && WHOLE_BODY.has(r.entry.sign) && r.entry.assertion !== 'absent');
    if (!last) continue;
    const { assertion: _a, severity: _s, trend: _t, ...rest } = last.entry;
    const entry: Finding = { ...rest, dogs: d.dogs, span: f.span([d.from, d.to + 2]), rule: '<dog> has it' };
    found.push({ entry, from: d.from, to: d.to + 2 });
    // What was read behind it of nobody in particular is this dog's.
    for (const r of found)
      if (
        r.from > d.to &&
        r.entry.dogs.join() === last.entry.dogs.join() &&
        !f.dogs.some((x) => x.from > d.to && x.to <= r.from)
      )
        r.entry.dogs = d.dogs;
  }
}

/** "it's completely healed", "gone now", "fine now": what was told before is over. */
function resolve(f: Frame, found: ReadFinding[]): void {
  for (const m of f.m.of('over')) {
    if (
      f.isClaimed(m.from, m.to) &&
      !found.some((r) => r.entry.sign === 'any' && r.from >= m.from - 4 && r.from <= m.to)
    )
      continue;
    const near = f.sites.some((s) => s.to <= m.from && m.from - s.to <= 3 && !s.anaphor && s.part);
    if (f.assertion(m.from, m.to) === 'absent' || f.assertion(m.from, m.to) === 'planned') continue;
    if (near) {
      // "Willa's web healed", "wrist back to normal": the part itself is told well again.
      const s = f.sites.filter((x) => x.to <= m.from && m.from - x.to <= 3 && x.part).at(-1) as Site;
      if (found.some((r) => r.site === s || (r.from <= s.from && s.to <= r.to))) continue;
      const owner = f.owner(s.from, m.to, s);
      if (!owner.human && owner.dogs.length)
        found.push({ entry: anyFinding(f, m, owner, s, 'resolved'), from: s.from, to: m.to, site: s });
      continue;
    }
    if (/^(stool|stools|poop|poo)$/.test(f.low(m.from - 1)) || /^(stool|stools|poop|poo)$/.test(f.low(m.from - 2))) {
      const owner = f.owner(m.from - 1, m.to);
      if (!owner.human && owner.dogs.length)
        found.push({
          entry: {
            kind: 'finding',
            dogs: owner.dogs,
            sign: 'loose-stool',
            assertion: 'resolved',
            span: f.span([m.from - 1, m.to]),
            rule: 'stool is normal',
          },
          from: m.from - 1,
          to: m.to,
        });
      continue;
    }
    const who = f.lastDogs(m.from);
    const named = f.m.at('sign', m.from - 1) ?? f.m.at('sign', m.from - 2);
    const told =
      named &&
      [...found]
        .reverse()
        .find((r) => r.from < named.from && r.entry.sign === named.value && r.entry.assertion !== 'absent');
    const last =
      told ??
      [...found]
        .reverse()
        .find(
          (r) => r.from < m.from && r.entry.sign !== 'any' && (!who || r.entry.dogs.some((d) => who.dogs.includes(d))),
        );
    if (
      !last ||
      last.entry.assertion === 'absent' ||
      last.entry.assertion === 'planned' ||
      last.entry.assertion === 'possible'
    )
      continue;
    // A later present sign stands against it.
    last.entry.assertion = 'resolved';
    last.entry.span = f.span([Math.min(last.from, m.from), last.to], [m.from, m.to]);
    const double = found.findIndex(
      (r) =>
        r !== last &&
        r.entry.sign === 'any' &&
        r.from > last.from &&
        r.from <= m.to &&
        !r.site &&
        r.entry.dogs.join() === last.entry.dogs.join(),
    );
    if (double >= 0) found.splice(double, 1);
    f.claim(m.from, m.to);
  }
}

const sameDogs = (a: ReadFinding, b: ReadFinding) => a.entry.dogs.join() === b.entry.dogs.join();

function follow(r: ReadFinding, out: readonly ReadFinding[]): void {
  const last = [...out].reverse().find((o) => o.from <= r.from);
  if (!last?.site) return;
  r.site = last.site;
  r.entry.dogs = last.entry.dogs;
  if (last.site.side) r.entry.side = last.site.side;
  if (last.site.end) r.entry.end = last.site.end;
}
