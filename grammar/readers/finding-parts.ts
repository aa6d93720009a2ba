/** What the readers of findings share: their shape, how bad and which way a sign is, and a finding of no sign. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import { doubted } from './places.ts';

export type Finding = EntryOf<'finding'>;

/** Where a finding was read, for those that carry its site on. */
export interface ReadFinding {
  entry: Finding;
  from: number;
  to: number;
  site?: Site;
}

/** Parts that need a word for front or hind. */
export const partTakesEnd = (part: string) => /^(leg|foot|pad|web|toe|nail|dewclaw)$/.test(part);

/** "isn't as bad as yesterday", "not that bad": how bad it is not. */
const notSo = (f: Frame, s: Mention): boolean =>
  // "about as big as a pea"
  (f.low(s.from - 1) === 'as' && f.low(s.to) === 'as') ||
  (/^(as|so|that|too|nearly|quite)$/.test(f.low(s.from - 1)) &&
    [2, 3].some((n) => /^(n't|not|never|nowhere)$/.test(f.low(s.from - n))));

/** How bad: words right before the sign or its site, or behind it in the same statement. */
export function severityOf(f: Frame, m: Mention, site?: Site): Finding['severity'] {
  const inside = f.m.of('severity').find((s) => s.from >= m.from && s.to <= m.to);
  // "a bad step" is a limp; how bad, nobody said
  const step = /^steps?$/.test(f.low(m.to - 1));
  if (inside && !step && !(m.value === 'overheated' && f.low(inside.from) === 'too')) return inside.value;
  if (wordsIn(f.tokens, m.from - 3, m.from) === 'bit of a') return 'mild';
  const lo = Math.min(m.from, site && m.from - site.to < 4 && site.from < m.from ? site.from : m.from);
  for (let k = m.from - 1; k >= Math.max(0, lo - 4); k--) {
    const s = f.m.at('severity', k);
    // "and so is the limp" is no "so lame"
    const link = s && f.low(s.from) === 'so' && /^(is|'s|was|are|has|did|does)$/.test(f.low(s.to));
    const ofPart = s && f.m.at('part', s.from);
    if (s && notSo(f, s)) continue;
    // ", so something's sore": what follows from it
    if (s && f.low(s.from) === 'so' && s.to - s.from === 1 && s.to < m.from && !f.m.at('severity', s.to)) continue;
    if (s && !link && !ofPart && !f.strongBetween(s.from, m.from)) return s.value;
    if (f.isStrong(k) || (f.m.at('sign', k) && f.low(m.from - 1) !== 'and')) break;
    if (f.low(k) === ',' || f.dogAt(k)) break;
  }
  const end = Math.max(m.to, site && site.from >= m.to && site.from - m.to < 6 ? site.to : m.to);
  for (let k = m.to; k < end + 4 && k < f.tokens.length; k++) {
    if (f.isStrong(k) || (k > m.to && f.m.from('sign', k)) || f.m.from('act', k)) break;
    if (k >= end && f.dogFrom(k) && !f.dogFrom(k)?.possessive) break;
    const s = f.m.from('severity', k);
    // "the big pad", "the little thumb claw": which part, not how bad
    if (s && f.m.at('part', k) && !f.m.from('sign', s.to)) continue;
    if (s && notSo(f, s)) break;
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
  return lateSeverity(f, end);
}

/** "cut her pad on a rock, left front, pretty deep.": how bad, as an aside at the end of the statement. */
function lateSeverity(f: Frame, from: number): Finding['severity'] {
  for (let k = from; k < from + 12 && !f.isStrong(k); k++) {
    if (f.m.from('sign', k) || f.m.from('act', k) || f.dogFrom(k) || f.m.at('item', k)) return undefined;
    if (f.low(k) !== ',') continue;
    const s = f.m.from('severity', k + 1);
    const depth =
      s && /^(deep|shallow)$/.test(f.low(s.to - 1))
        ? s.to
        : s && /^(deep|shallow|minor|bad|nasty|small|mild)$/.test(f.low(s.to))
          ? s.to + 1
          : undefined;
    if (s && depth && /^([.;!]|)$/.test(f.low(depth))) return s.value;
  }
  return undefined;
}

/** Behind "less than", "more than": what was before. */
const THAN_BEFORE = /^(yesterday|before|last|this|earlier|it|he|she|they|ever)$/;

/** A new subject begins at `k`, behind a comma or none. */
const startsAgain = (f: Frame, k: number): boolean => {
  const d = f.dogFrom(f.low(k) === ',' ? k + 1 : k);
  return d !== undefined && !d.possessive;
};

/** "RF pad worn, LF same", "left wrist puffy, right one worse": behind another place, and that place's own. */
const ofOtherPlace = (f: Frame, t: Mention, from: number): boolean => {
  const s = f.sites.find((x) => x.from >= from && !x.anaphor && x.to <= t.from && t.from - x.to <= 2);
  return s !== undefined && /^[,;]$|^(and|but)$/.test(f.low(f.low(s.from - 1) === 'the' ? s.from - 2 : s.from - 1));
};

/** Which way it goes: better, worse, still. */
export function trendOf(f: Frame, m: Mention, site?: Site): Finding['trend'] {
  const lo = site && site.from < m.from && m.from - site.to < 8 ? site.from : m.from;
  const hi = site && site.to > m.to && site.from - m.to < 8 ? site.to : m.to;
  let still: Finding['trend'];
  for (let k = Math.max(0, lo - 3); k < hi + 5 && k < f.tokens.length; k++) {
    if (
      k >= hi &&
      (f.isStrong(k) || (f.m.from('sign', k) && !f.m.from('trend', k)) || (f.dogFrom(k) && !f.dogFrom(k)?.possessive))
    )
      break;
    if (k < lo && (f.strongBetween(k, lo) || f.dogAt(k))) continue;
    const t = f.m.from('trend', k);
    if (!t || /^(no|any)$/.test(f.low(t.from - 1)) || (t.from < m.to && m.from < t.to)) continue;
    // "still, he was off", "still he was off": all the same
    if (f.low(t.from) === 'still' && t.to - t.from === 1 && startsAgain(f, t.to)) continue;
    // "same shoulder as last year": which one, not how it goes; "RF worn, LF same": the other's
    if (f.low(t.to - 1) === 'same' && f.m.at('part', t.to)) continue;
    if (site && k > hi && ofOtherPlace(f, t, hi)) continue;
    // "toe touching coming down the bank"
    if (
      f.low(t.to - 1) === 'down' &&
      /^(the|a|that|this|off|from|to|into|hill|on)$/.test(f.low(t.to)) &&
      !/^(lot|bit|little|ton|tad|touch)$/.test(f.low(t.to + 1))
    )
      continue;
    // "both puffy, the right worse than the left": one beside the other, not how it goes
    if (
      /^(than|on|in)$/.test(f.low(t.to)) &&
      /^(the|his|her) (left|right|other|front|hind|back)$/.test(`${f.low(t.to + 1)} ${f.low(t.to + 2)}`) &&
      t.to - t.from === 1
    )
      continue;
    if (/^(more|less)$/.test(f.low(t.from)) && THAN_BEFORE.test(f.low(t.to)) && t.from >= m.to && t.from - m.to < 4)
      return t.value;
    if (/^(more|less|less than|more than|there)$/.test(f.low(t.from)) && f.low(t.to) !== m.value) {
      if (!/^(sore|swollen|stiff|lame|puffy|tight|raw)$/.test(f.low(t.to))) continue;
    }
    const own = [t.to, t.to + 1].map((n) => f.m.from('sign', n)).find(Boolean);
    if ((f.low(t.to - 1) === 'as' && t.value !== 'same') || (f.low(t.from) === 'less' && t.to === t.from + 1)) {
      // "not as hot, swelling still there": better the heat alone
      if (own && own !== m) continue;
      return 'better';
    }
    // "not as hot" speaks of the heat alone.
    if (/^(less|more)$/.test(f.low(t.from)) && t.to !== m.from) continue;
    if (t.value !== 'same') return t.value;
    still = 'same';
  }
  return still;
}

/** The site spoken of last before a place. */
export const lastSite = (f: Frame, before: number, found: readonly ReadFinding[]): Site | undefined =>
  [...found].reverse().find((r) => r.site && r.from < before)?.site ??
  f.sites.filter((s) => s.to <= before && !s.anaphor).at(-1);

/** "that foot" after a leg is the foot, not the leg. */
export const footThere = (f: Frame, site: Site | undefined) => {
  if (!site) return undefined;
  for (let k = site.from; k < site.to; k++) {
    const p = f.m.at('part', k);
    if (p) return p.value as Finding['part'];
  }
  return undefined;
};

/** A finding of no sign: the part is fine, may be the one, or was. */
export function anyFinding(
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

/** Everyone on the gangline; `*` where no line-up is known. */
export const wholeTeam = (f: Frame): Owner => {
  const dogs = f.lineup(f.tokens.length).map((l) => l.dog);
  return { dogs: dogs.length ? dogs : ['*'] };
};
