/** Step "unknown names": a word in a dog's slot that the roster does not hold and English does not know. Reported, never guessed. */
import { LEXICON_WORDS } from '../words/index.ts';
import type { Frame } from './frame.ts';

const LINK = /^(and|&|\+|,|\/)$/;

/** Names that nobody knows, with their spans. */
export function unknownNames(f: Frame): { name: string; span: [number, number] }[] {
  const out: { name: string; span: [number, number] }[] = [];
  for (const t of f.tokens) {
    // Most words are English and small: that is seen before anything is looked up.
    if (
      t.kind !== 'word' ||
      t.low.length < 3 ||
      (t.known && !capital(f, t.start)) ||
      LEXICON_WORDS.has(t.low) ||
      f.dogAt(t.i) ||
      f.personAt(t.i) ||
      !/^[\p{L}]+$/u.test(t.low)
    )
      continue;
    const next = f.low(t.i + 1);
    const prev = f.low(t.i - 1);
    if (/^(the|a|an|of|my|this|some|at|to)$/.test(prev)) continue;
    // A word that a reader took is no name, but for one that stands in a list of dogs.
    const beside =
      (LINK.test(prev) && f.dogs.some((d) => d.to === t.i - 1 && d.kind === 'names')) ||
      (LINK.test(next) && f.dogFrom(t.i + 2)?.kind === 'names');
    const possessive =
      next === "'s" &&
      Boolean(f.siteAt(t.i + 2) || f.m.at('item', t.i + 2) || f.m.at('sign', t.i + 2) || f.m.at('bootie', t.i + 2));
    const placed = /^(in|at|on)$/.test(next) && f.m.from('position', t.i + 2) !== undefined;
    const does = Boolean(
      f.m.from('sign', t.i + 1) ||
        f.m.from('ate', t.i + 1) ||
        f.m.from('drank', t.i + 1) ||
        f.m.from('manner', t.i + 1) ||
        (/^(is|'s|has|was)$/.test(next) && (f.m.from('sign', t.i + 2) || f.m.from('manner', t.i + 2))),
    );
    const object = /^(loaded|dropped|moved|massaged|weighed|dropping|loading|put|booted)$/.test(prev);
    if (beside || (!f.claimed[t.i] && (possessive || placed || does || object) && (!t.known || capital(f, t.start))))
      out.push({ name: f.text.slice(t.start, t.end), span: [t.start, t.end] });
  }
  return out;
}

const capital = (f: Frame, at: number) =>
  /\p{Lu}/u.test(f.text[at] ?? '') && at > 0 && !/[.!?]\s*$/.test(f.text.slice(0, at));
