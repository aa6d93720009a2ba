/**
 * Reader "finding": a sign on a part of a dog. Each sign looks for its site beside it, else carries the one before; each
 * statement that a part is fine, or that there is nothing there, is a finding of no sign.
 */
import type { Sign } from '../entry.ts';
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import { deniedInside } from '../steps/mentions.ts';
import { distribute, readHasIt, readPossibleSites, resolve } from './finding-follow.ts';
import { type Finding, partTakesEnd, type ReadFinding, severityOf, trendOf } from './finding-parts.ts';
import { readFine, readNothing } from './fine.ts';
import { doubted, said } from './places.ts';
import { signStands } from './sign-guards.ts';
import { carriedSite, headingSite, partFor, siteBeside, siteOwner, WHOLE_BODY } from './where.ts';

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
  readPossibleSites(f, found, takenSites);
  readHasIt(f, found);
  distribute(f, found, takenSites);
  resolve(f, found);
  return found;
}

/** "gums wet and pink", "skin snaps back": not dehydrated. */
function readHydrated(f: Frame, m: Mention): ReadFinding[] {
  const owner = f.owner(m.from, m.to);
  if (owner.human || !owner.dogs.length || f.assertion(m.from, m.to) !== 'present' || deniedInside(f.tokens, m)) return [];
  const entry: Finding = { kind: 'finding', dogs: owner.dogs, sign: 'dehydrated', assertion: 'absent', span: f.span([m.from, m.to]), rule: '<gums> are fine', ...doubted(owner.doubt) };
  return [{ entry, from: m.from, to: m.to }];
}

/** "stool is firm": not loose; "stool's normal again", "firmed up": no longer loose. */
function readFirm(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding[] {
  const owner = f.owner(m.from, m.to);
  if (owner.human || !owner.dogs.length) return [];
  const words = f.tokens.slice(m.from, m.to + 1).map((t) => t.low);
  const told = found.some((r) => r.entry.sign === 'loose-stool' && r.entry.dogs.join() === owner.dogs.join());
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
  const people = f.people.length > 0 || f.m.of('me').some((x) => !f.dogAt(x.from));
  if (owner.human || (!owner.dogs.length && !explicit && people)) return [];
  let where: (Site | undefined)[] = sites.map((s) => refined(f, s, owner, found, m.from));
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
export function refined(f: Frame, s: Site, owner: Owner, found: readonly ReadFinding[], at: number): Site {
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
    if (!s.end && s.side && last?.entry.part && last.entry.dogs.join() === owner.dogs.join())
      return { ...s, part: last.entry.part, end: last.entry.end };
  }
  if (s.side || s.plural || !s.part || s.anaphor) return s;
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

/** "Blood in Otter's stool", "blood in Otter's pee": with the dog's name between, no phrase of the lexicon can hold it. */
function signOfBlood(f: Frame, m: Mention, sign: Sign): Sign {
  if (sign !== 'bleeding' || f.low(m.to) !== 'in') return sign;
  const near = f.tokens.slice(m.to + 1, m.to + 5).map((token) => token.low);
  if (near.some((low) => /^(stool|stools|poop|poo|diarrhea|droppings)$/.test(low))) return 'bloody-stool';
  return near.some((low) => /^(urine|pee|piss)$/.test(low)) ? 'dark-urine' : sign;
}

/** "Barley can stay home with that sore pad": the staying is planned, not the sore. */
const ailsNow = (f: Frame, heard: ReturnType<Frame['asserted']>, m: Mention) =>
  heard.assertion === 'planned' && heard.cue !== undefined && !heard.cue.group.condition && (heard.cue.to > m.from || m.from - heard.cue.to > 4 || f.tokens.slice(heard.cue.to, m.from).some((t) => /^(with|because|since|for|that)$/.test(t.low)));

function build(f: Frame, m: Mention, told: Sign, owner: Owner, site: Site | undefined): Finding {
  const sign = signOfBlood(f, m, told);
  const part = partFor(sign, site);
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
  const listed = other && f.tokens.slice(m.to, other.from).every((t) => /^(and|or|,|nor|&|\+|a|bit|little|the|some|very|really)$/.test(t.low) || f.siteAt(t.i) !== undefined);
  const assertion = deniedInside(f.tokens, m) ? 'absent' : f.m.at('over', m.from) ? 'resolved' : underHeading || (other && !listed) || ailsNow(f, heard, m) ? 'present' : heard.assertion;
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
