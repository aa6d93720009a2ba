/** Places told before that are fine: "they are fine", "both are fine"; a place told behind, "good feet". */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import { anyFinding, type ReadFinding } from './finding-parts.ts';
import { refined } from './where-carried.ts';

/** "I checked Tank's feet twice and they are fine": the feet, not the dogs. */
export function theyFine(f: Frame, m: Mention): ReadFinding | undefined {
  let k = m.from - 1;
  while (/^(are|were|look|looked|feel|felt|all|just|perfectly|totally|'re|both)$/.test(f.low(k))) k--;
  if (f.low(k) !== 'they' || k === m.from - 1) return undefined;
  const s = f.sites.filter((x) => x.plural && x.part && !x.anaphor && x.to <= k && k - x.to <= 6).at(-1);
  if (!s || f.sentence(s.from) !== f.sentence(m.from) || f.isClaimed(s.from, s.to)) return undefined;
  if (f.dogs.some((d) => d.from >= s.to && d.to <= k)) return undefined;
  const owner = f.owner(s.from, s.to, s);
  if (owner.human || !owner.dogs.length) return undefined;
  return { entry: anyFinding(f, m, owner, s, 'absent'), from: s.from, to: m.to, site: s };
}

/** "checked the shoulder and the wrist and both are fine": the two places named before. */
export function bothFine(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding[] {
  let k = m.from - 1;
  while (/^(are|were|look|looked|feel|felt|seem|is|was|'re|perfectly|totally|just|all)$/.test(f.low(k))) k--;
  if (!/^(both|neither|they)$/.test(f.low(k)) || k === m.from - 1) return [];
  if (f.low(k) === 'they' && f.low(k + 1) !== 'both' && !f.commaBetween(k - 1, k)) return [];
  const two = f.sites
    .filter((s) => s.to <= k && s.part && !s.anaphor && !s.plural && f.sentence(s.from) === f.sentence(m.from))
    .slice(-2);
  const [a, b] = two;
  if (!a || !b || k - b.to > 3 || b.from - a.to > 3 || f.isClaimed(a.from, b.to)) return [];
  return two
    .map((s) => {
      const owner = f.owner(s.from, s.to, s);
      const site = refined(f, s, owner, found, m.from);
      return { entry: anyFinding(f, m, owner, site, 'absent'), from: s.from, to: m.to, site };
    })
    .filter((r) => r.entry.dogs.length);
}

/** "good feet", "clean wrists all round". */
export function siteBehindFine(f: Frame, m: Mention): Site | undefined {
  if (
    !/^(good|clean|perfect|healthy|great|fine|nice|beautiful|normal|cool|cold|dry|ok|okay|wnl|nad|nsf|clear|unremarkable)$/.test(
      f.low(m.from),
    ) ||
    m.to - m.from > 1
  )
    return undefined;
  const k = f.low(m.to) === 'all' && !f.siteAt(m.to) ? m.to + 1 : m.to;
  return f.sites.find((s) => s.from === k && s.part && /^(foot|wrist|pad|web|shoulder|nail)$/.test(s.part));
}
