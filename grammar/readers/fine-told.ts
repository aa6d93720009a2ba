/** What stands further before a word that all is well: a part before a clause put in between, feet as what the note goes over. */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import type { ReadFinding } from './findings.ts';

/** "her left shoulder, which we nursed all last week, is back to normal": goes on before what was put in between. */
export function overClause(f: Frame, m: Mention, k: number): number {
  let verb = k;
  while (/^(back|to|all|quite|now|looking|feeling|perfectly)$/.test(f.low(verb))) verb--;
  for (let w = m.from - 1; w > 0 && m.from - w < 14 && !f.isStrong(w); w--) {
    if (f.low(w) !== 'which') continue;
    const end = f.low(w - 1) === ',' ? w - 1 : w;
    const told = [f.m.of('sign'), f.m.of('fine'), f.m.of('part')].some((all) =>
      all.some((x) => x.from >= w && x.to <= m.from && x.from !== m.from),
    );
    if (!told && f.sites.some((s) => s.to === end && s.part) && /^(is|are|was|looks|feels|seems|'s)$/.test(f.low(verb)))
      return end - 1;
  }
  return k;
}

/** A sentence before that begins with the feet, where all that was found since is on feet. */
export function feetTold(f: Frame, m: Mention, found: readonly ReadFinding[]): Site | undefined {
  const head = f.sites.find(
    (s) => s.part === 'foot' && s.plural && s.to <= m.from && (s.from === 0 || f.isStrong(s.from - 1)),
  );
  const since = head ? found.filter((r) => r.from >= head.to && r.from < m.from) : [];
  if (!head || !since.length || !since.every((r) => /^(foot|pad|web|toe|nail|dewclaw)$/.test(r.entry.part ?? '')))
    return undefined;
  return { from: m.from, to: m.to, part: 'foot', plural: true, anaphor: false, paws: [] };
}
