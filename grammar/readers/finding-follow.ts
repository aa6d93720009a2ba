/** What follows from findings already read: parts that may be the one, lists under a heading, "has it too", "healed". */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import { crosswise } from './finding-lists.ts';
import { anyFinding, type Finding, footThere, partTakesEnd, type ReadFinding, severityOf } from './finding-parts.ts';
import { partFor, WHOLE_BODY } from './where.ts';

/** "might be the knee", "probably the web again": a part with nothing said of it but that it may be the one. */
export function readPossibleSites(f: Frame, found: ReadFinding[], taken: Set<Site>): void {
  for (const s of f.sites) {
    const denied = found.some((r) => r.site === s && r.entry.assertion === 'absent' && r.from >= s.from);
    if (s.anaphor && /^(that|this)$/.test(f.low(s.from)) && s.to - s.from === 2) {
      // "limping on the front left, might be that wrist"
      const part = footThere(f, s);
      const leg = [...found].reverse().find((r) => r.from < s.from && r.site?.side && r.site.side !== 'both');
      if (part && leg?.site && !/^(foot|leg|web|pad|nail|toe)$/.test(part) && near(f, s)) {
        const own = leg.entry.dogs;
        const m: Mention = { tag: 'part', value: part, from: s.from, to: s.to };
        const site: Site = { ...leg.site, part, from: s.from, to: s.to };
        found.push({ entry: anyFinding(f, m, { dogs: own }, site, 'possible'), from: s.from, to: s.to, site });
        f.claim(s.from, s.to);
      }
      continue;
    }
    if (found.some((r) => r.entry.part === s.part && r.from < s.to && s.from < r.to && r.entry.sign !== 'any'))
      continue;
    // "may have a sore shoulder, the left one": the side of what was just told
    if (found.some((r) => r.entry.part === s.part && r.entry.side === s.side && s.from >= r.to && s.from - r.to <= 3))
      continue;
    if ((taken.has(s) && !denied) || !s.part || s.anaphor || f.isClaimed(s.from, s.to) || s.plural) continue;
    if (!eitherOr(f, s)) {
      if (f.assertion(s.from, s.to) !== 'possible') continue;
      if (!near(f, s)) continue;
    }
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

/** A word of doubt stands close before the site, or right behind it. */
const near = (f: Frame, s: Site) =>
  f.cues.some((c) => c.gives === 'possible' && c.to <= s.from && s.from - c.to <= 5) ||
  f.cues.some((c) => c.gives === 'possible' && c.from >= s.to && c.from - s.to <= 2);

/** "it's either her wrist or her shoulder": one of two, nobody knows which. */
function eitherOr(f: Frame, s: Site): boolean {
  const own = (k: number) => /^(the|his|her|a|'s|in|on)$/.test(f.low(k)) || f.dogAt(k) !== undefined;
  let a = s.from - 1;
  while (own(a)) a--;
  if (f.low(a) === 'or') {
    const first = f.sites.find((x) => x.to === a && x.part);
    return first !== undefined && eitherOr(f, first);
  }
  let z = s.to + 1;
  while (own(z)) z++;
  const or = f.low(s.to) === 'or' && f.sites.some((x) => x.from === z && x.part);
  return or && f.low(a) === 'either' && /^('s|is|it|be|was)$/.test(f.low(a - 1));
}

const sideOf = (s: Site | undefined) => s?.side;

/** "Dead lame by mile ten, right shoulder.": a limb with nothing told of it but that it is the one. */
const limbAlone = (f: Frame, s: Site): boolean =>
  /^(shoulder|wrist|elbow|hip|knee|hock|leg)$/.test(s.part ?? '') &&
  (s.side === 'left' || s.side === 'right') &&
  /^([.;!]|)$/.test(f.low(s.to)) &&
  !s.anaphor;

/** "Two of her pads are cracked, both hind feet.": the feet of the pads just told. */
const feetAlone = (f: Frame, s: Site, r: ReadFinding): boolean =>
  s.part === 'foot' &&
  s.side !== undefined &&
  s.end !== undefined &&
  !s.anaphor &&
  r.entry.part !== 'foot' &&
  !/^(is|are|was|were|clean|fine|good|ok)$/.test(f.low(s.to));

/** "started limping at mile 15, left rear, loaded her", "one torn nail in Moss, right front, trimmed": a bare foot between marks. */
export function lateSites(f: Frame, found: ReadFinding[], taken: Set<Site>): void {
  for (const r of found) {
    const footed = r.entry.part !== undefined && partTakesEnd(r.entry.part) && !r.entry.side && !r.entry.end;
    if (!footed && (r.entry.sign !== 'lame' || r.entry.part || r.entry.assertion)) continue;
    const reach = footed ? 6 : 12;
    const s = f.sites.find(
      (x) =>
        x.from > r.to &&
        x.from - r.to < reach &&
        (x.part ? (footed ? feetAlone(f, x, r) : limbAlone(f, x)) : x.side && x.end) &&
        !taken.has(x),
    );
    if (
      !s ||
      f.isClaimed(s.from, s.to) ||
      !/^[.,]$/.test(f.low(s.from - 1)) ||
      !/^([.,;!]|being|is|was|)$/.test(f.low(s.to))
    )
      continue;
    if (f.m.of('sign').some((x) => x.from >= r.to && x.to <= s.from)) continue;
    const own = r.entry.dogs.join();
    if (f.dogs.some((d) => d.kind === 'names' && d.from >= r.to && d.to <= s.from && d.dogs.join() !== own)) continue;
    const part = footed ? r.entry.part : (s.part ?? ('leg' as const));
    const [one = s, two] = crosswise(s) ?? [];
    if (two) found.push({ ...r, entry: { ...r.entry, part, side: two.side, end: two.end }, site: { ...two, part } });
    Object.assign(r.entry, { part, side: one.side, ...(partTakesEnd(part ?? '') ? { end: one.end } : {}) });
    r.site = { ...one, part };
    taken.add(s);
    f.claim(s.from, s.to);
  }
}

/**
 * "Two cracked pads, the right front is tiny, the left hind one's deep": sites without a sign of their own, behind a sign
 * on a part without a side, take both from it; the heading itself then says nothing more.
 */
export function distribute(f: Frame, found: ReadFinding[], taken: Set<Site>): void {
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
    const out: ReadFinding[] = bare.flatMap((told) =>
      (crosswise(told) ?? [told]).map((s) => {
        const own = f.dogs.filter((d) => d.to <= s.from && d.from >= head.from && !d.company && d.dogs.length).at(-1);
        const dogs = own ? own.dogs : head.entry.dogs;
        const severity = severityOf(f, { tag: 'sign', value: head.entry.sign, from: s.from, to: s.to }, undefined);
        const part = head.entry.part ?? partFor(head.entry.sign, s);
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
        for (const r of found) if (r.site === told && r.entry.sign !== 'any' && part) r.entry.part = part;
        taken.add(told);
        f.claim(s.from, s.to);
        return { entry, from: s.from, to: s.to, site: { ...s, part } };
      }),
    );
    // "both wheel dogs have raw webs, Tank on the left front, Fern on both hinds": nothing is left to the head
    const all = head.entry.dogs.every((d) => out.some((o) => o.entry.dogs.includes(d)));
    const keepHead = head.entry.dogs.length > 0 && !all && out.every((o) => !sameDogs(o, head));
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
export function readHasIt(f: Frame, found: ReadFinding[]): void {
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

/** "the shoulder, which we nursed all week, is back to normal": where the statement went on, before a clause put between. */
function behindClause(f: Frame, i: number): number {
  let k = i - 1;
  while (
    /^(is|'s|was|are|has|looks|looked|seems|feels|now|all|been|completely|totally|today|just|pretty|much)$/.test(
      f.low(k),
    )
  )
    k--;
  if (f.low(k) !== ',' || k === i - 1) return i;
  for (let c = k - 1; c > 0 && k - c < 14 && !f.isStrong(c); c--)
    if (f.low(c) === ',') return /^(which|that|the)$/.test(f.low(c + 1)) ? c : i;
  return i;
}

/** "it's completely healed", "gone now", "fine now": what was told before is over. */
export function resolve(f: Frame, found: ReadFinding[]): void {
  for (const m of f.m.of('over')) {
    if (
      f.isClaimed(m.from, m.to) &&
      !found.some((r) => r.entry.sign === 'any' && r.from >= m.from - 4 && r.from <= m.to)
    )
      continue;
    const at = behindClause(f, m.from);
    // "the ice is out": of nothing else
    if (f.low(m.to - 1) === 'out' && f.m.at('sign', m.from - 1)?.value !== 'iced') continue;
    const near = f.sites.some((s) => s.to <= at && at - s.to <= 3 && !s.anaphor && s.part);
    // "he hasn't gone yet"
    if (/^(not|n't|never)$/.test(f.low(m.from - 1))) continue;
    // "the swelling has gone down a lot"
    if (f.low(m.to - 1) === 'gone' && f.low(m.to) === 'down') continue;
    // "packed it and put a bootie over it": only what is or gets over it is past
    if (f.low(m.from) === 'over' && !OVER_IT.test(f.low(m.from - 1))) continue;
    if (f.assertion(m.from, m.to) === 'absent' || f.assertion(m.from, m.to) === 'planned') continue;
    if (near) {
      // "Willa's web healed", "wrist back to normal": the part itself is told well again.
      const s = f.sites.filter((x) => x.to <= at && at - x.to <= 3 && x.part).at(-1) as Site;
      // "the one in the left web has healed": one of what was told, left to be read by that
      if ([s.from - 2, s.from - 3].some((k) => f.low(k) === 'one') && f.low(s.from - 1) !== ',') continue;
      const there = found.find((r) => r.site === s || (r.from <= s.from && s.to <= r.to));
      if (there) {
        // "a stiff back leg on the left and it's loosened off completely"
        if (!there.entry.assertion && there.to <= m.from && there.entry.sign !== 'any') {
          there.entry.assertion = 'resolved';
          delete there.entry.trend;
          f.claim(m.from, m.to);
        }
        continue;
      }
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
    if (allOfIt(f, m)) for (const r of found) if (toldWith(f, r, last)) r.entry.assertion = 'resolved';
    if (allOfThat(f, m)) for (const r of found) if (was(r) && r.from < last.from) r.entry.assertion = 'resolved';
    // "Gus was sick and Ivy was limping. Both are fine now."
    if (who && who.dogs.length > 1 && who.kind === 'group' && m.from - who.to <= 3)
      for (const dog of who.dogs) {
        const own = found.findLast((r) => r.from < who.from && r.entry.dogs.includes(dog));
        if (own && was(own)) own.entry.assertion = 'resolved';
      }
    last.entry.span = f.span([Math.min(last.from, m.from), last.to], [m.from, m.to]);
    const double = found.findIndex(
      (r) =>
        r !== last &&
        r.entry.sign === 'any' &&
        r.from > last.from &&
        r.from <= m.to &&
        (!r.site || (r.site.anaphor && r.entry.part === last.entry.part)) &&
        r.entry.dogs.join() === last.entry.dogs.join(),
    );
    if (double >= 0) found.splice(double, 1);
    f.claim(m.from, m.to);
  }
}

/** "That's all cleared up now", "All gone now": everything that was told together. */
function allOfIt(f: Frame, m: Mention): boolean {
  let k = m.from;
  while (/^(is|'s|are|'re|has|have|been)$/.test(f.low(k - 1)) || f.low(k - 1) === 'all') k--;
  const all = f.tokens.slice(k, m.to).some((t) => t.low === 'all');
  return all && (k === 0 || f.isStrong(k - 1) || /^(that|they|those|these)$/.test(f.low(k - 1)));
}

/** Told as so, or of an earlier day. */
const was = (r: ReadFinding): boolean => r.entry.sign !== 'any' && (!r.entry.assertion || r.entry.assertion === 'past');

/** "all of that is gone now", "everything's cleared up since": whatever was told of whatever dog. */
function allOfThat(f: Frame, m: Mention): boolean {
  let k = m.from - 1;
  while (/^(is|'s|are|'re|has|have|been|was|were|all|since)$/.test(f.low(k))) k--;
  return f.low(k) === 'everything' || (/^(that|it|this)$/.test(f.low(k)) && /^(all|of)$/.test(f.low(k - 1)));
}

/** Was `r` told of the same dog in the same sentence before? */
const toldWith = (f: Frame, r: ReadFinding, last: ReadFinding) =>
  r !== last &&
  r.from < last.from &&
  r.entry.sign !== 'any' &&
  (!r.entry.assertion || r.entry.assertion === 'past') &&
  f.sentence(r.from) === f.sentence(last.from) &&
  sameDogs(r, last);

/** Before "over it" where it means that a dog is well again. */
const OVER_IT =
  /^(is|'s|was|are|'re|were|be|been|got|get|gets|getting|gotten|all|mostly|completely|totally|well|now|nearly|almost|about|seems|looks|just|pretty|much|they|fully|long)$/;

const sameDogs = (a: ReadFinding, b: ReadFinding) => a.entry.dogs.join() === b.entry.dogs.join();

function follow(r: ReadFinding, out: readonly ReadFinding[]): void {
  const last = [...out].reverse().find((o) => o.from <= r.from);
  if (!last?.site) return;
  r.site = last.site;
  r.entry.dogs = last.entry.dogs;
  if (last.site.side) r.entry.side = last.site.side;
  if (last.site.end) r.entry.end = last.site.end;
}
