/**
 * Step "mentions": every phrase of the lexicon that stands in the note. For each tag the longest phrase wins at each
 * place; different tags may cover the same words ("right" is a side and a part of "right away"), and the readers choose.
 * Inside an idiom ("off we went", "hot chocolate") the other tags are silent.
 */
import { GAPPED_BY_HEAD, type Gapped } from '../words/gapped.ts';
import { LEXICON } from '../words/index.ts';
import type { Token } from './tokens.ts';

export interface Mention {
  tag: string;
  // biome-ignore lint/suspicious/noExplicitAny: the value's type is the tag's business; readers know their tags
  value: any;
  /** Token range, end exclusive. */
  from: number;
  to: number;
}

const NONE: readonly Mention[] = [];

/** The mentions of one note, by tag. */
export class Mentions {
  readonly #lists = new Map<string, Mention[]>();
  readonly #cover = new Map<string, (Mention | undefined)[]>();

  add(m: Mention): void {
    let list = this.#lists.get(m.tag);
    if (!list) {
      list = [];
      this.#lists.set(m.tag, list);
      this.#cover.set(m.tag, []);
    }
    const cover = this.#cover.get(m.tag) as (Mention | undefined)[];
    if (cover[m.from]) return;
    list.push(m);
    for (let i = m.from; i < m.to; i++) cover[i] = m;
  }
  /** All mentions of a tag, left to right, none overlapping. */
  of(tag: string): readonly Mention[] {
    return this.#lists.get(tag) ?? NONE;
  }
  /** The mention of a tag that covers token `i`. */
  at(tag: string, i: number): Mention | undefined {
    return this.#cover.get(tag)?.[i];
  }
  /** The mention of a tag that begins at token `i`. */
  from(tag: string, i: number): Mention | undefined {
    const m = this.at(tag, i);
    return m?.from === i ? m : undefined;
  }
}

/** Does the phrase stand at token `i`? Gives the token behind it; hyphens inside ("short-striding") are passed over. */
function matchAt(tokens: readonly Token[], i: number, words: readonly string[]): number {
  let k = i + 1;
  for (let w = 1; w < words.length; w++) {
    let t = tokens[k];
    if (t && t.kind === 'mark' && t.low === '-' && !t.gap && tokens[k + 1]?.gap === false) t = tokens[++k];
    if (!t || t.low !== words[w]) return -1;
    k++;
  }
  return k;
}

/** Where a phrase with words in its middle ends that begins at token `i`; -1 where it does not stand. */
function gappedEnd(tokens: readonly Token[], i: number, g: Gapped): number {
  for (let k = i + 1; k <= i + 1 + g.most && k < tokens.length; k++) {
    for (const tail of g.tails) if (tail.every((w, n) => tokens[k + n]?.low === w)) return k + tail.length;
    if (!g.fill.has((tokens[k] as Token).low)) return -1;
  }
  return -1;
}

/** The mentions of a note. `fixed` gives a token's word where its spelling was mended. Linear in the note's length. */
export function findMentions(tokens: readonly Token[]): Mentions {
  const all = new Mentions();
  const idiom: (Mention | undefined)[] = [];
  let held: Mention[] = [];
  const n = tokens.length;
  for (let i = 0; i < n; i++) {
    for (const g of GAPPED_BY_HEAD.get((tokens[i] as Token).low) ?? []) {
      const to = gappedEnd(tokens, i, g);
      if (to > 0) held.push({ tag: g.tag, value: g.value, from: i, to });
    }
    const phrases = LEXICON.get((tokens[i] as Token).low);
    if (!phrases) continue;
    for (const p of phrases) {
      const to = p.words.length === 1 ? i + 1 : matchAt(tokens, i, p.words);
      if (to < 0) continue;
      const m: Mention = { tag: p.tag, value: p.value, from: i, to };
      if (p.tag === 'idiom') {
        if (!idiom[i]) {
          all.add(m);
          for (let k = i; k < to; k++) idiom[k] = m;
        }
      } else held.push(m);
    }
  }
  if (idiom.length) {
    held = held.filter((m) => {
      // whose it is counts also inside: "my left thumb"
      if (m.tag === 'me' || m.tag === 'pronoun') return true;
      // A phrase that is the whole idiom is known by itself: "snow hook", "all right".
      const over = idiom[m.from];
      if (over && m.to - m.from > 1 && m.from <= over.from && m.to >= over.to) return true;
      for (let k = m.from; k < m.to; k++) if (!idiom[k]) return true;
      return false;
    });
  }
  for (const m of held) all.add(m);
  return all;
}
