/** Feet as what the note goes over, for a "nothing" that names no part. */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import type { ReadFinding } from './findings.ts';

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
