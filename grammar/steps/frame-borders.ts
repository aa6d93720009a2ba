/** Where statements of a note begin: a scope does not reach over these places. */
import type { DogPhrase } from './dogs.ts';
import type { Frame } from './frame.ts';
import type { Site } from './sites.ts';

/** Words that begin a statement about the gums or the skin. */
const GUMS = new Set(['gums', 'skin', 'hyd']);

/** A site with its own sign or praise behind it begins a statement, also where no mark says so. */
function statesItself(f: Frame, s: Site): boolean {
  for (let k = s.to; k < s.to + 4; k++) {
    if (f.m.from('sign', k) || f.m.from('fine', k)) return true;
    if (!/^(is|'s|are|was|a|bit|little|touch|still|really|pretty|all|look|looks|slightly|very|feels)$/.test(f.low(k)))
      return false;
  }
  return false;
}

/** "… in the shoulder his tug's tight": a possessive behind a finished statement begins the next. */
function beginsAnew(f: Frame, d: DogPhrase): boolean {
  const k = d.from - 1;
  return (
    Boolean(f.m.at('part', k) || f.m.at('surface', k) || f.m.at('position', k) || f.m.at('sign', k)) &&
    Boolean(f.m.at('item', d.to))
  );
}

/** The tokens at which a statement begins, in order: a dog, a site that says what it is, the gums or the skin. */
export function bordersOf(f: Frame): number[] {
  const parts = f.sites
    .filter(
      (s) =>
        s.part &&
        !/^(no|any|or|and|of|in|on|,|without|her|his|the|with|not|'s|sore|a|both|at|for|n't|or)$/.test(
          f.low(s.from - 1),
        ) &&
        statesItself(f, s),
    )
    .map((s) => s.from);
  const gums = f.tokens
    .filter((t) => GUMS.has(t.low) && !/^(no|any|of|her|his|the|or)$/.test(f.low(t.i - 1)))
    .map((t) => t.i);
  // "… not drink anything her gums feel tacky"
  for (const t of f.tokens)
    if (
      GUMS.has(t.low) &&
      /^(her|his)$/.test(f.low(t.i - 1)) &&
      /^(is|are|'re|feel|felt|look|looked|were|was|tents?|tenting|tacky|dry)$/.test(f.low(t.i + 1))
    )
      if (!/^(no|not|n't|any|of|on|in|if|and|or|about|think|with)$/.test(f.low(t.i - 2))) gums.push(t.i - 1);
  return f.dogs
    .filter((d) => !d.company && d.prep === undefined && !(d.kind === 'pronoun' && d.possessive && !beginsAnew(f, d)))
    .map((d) => d.from)
    .concat(parts, gums)
    .sort((a, b) => a - b);
}
