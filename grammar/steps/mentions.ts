/**
 * Step "mentions": every phrase of the lexicon that stands in the note. For each tag the longest phrase wins at each
 * place; different tags may cover the same words ("right" is a side and a part of "right away"), and the readers choose.
 * Inside an idiom ("off we went", "hot chocolate") the other tags are silent.
 */
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

/** The mentions of a note. `fixed` gives a token's word where its spelling was mended. Linear in the note's length. */
export function findMentions(tokens: readonly Token[]): Mentions {
  const all = new Mentions();
  const idiom: boolean[] = [];
  let held: Mention[] = [];
  const n = tokens.length;
  for (let i = 0; i < n; i++) {
    const phrases = LEXICON.get((tokens[i] as Token).low);
    if (!phrases) continue;
    for (const p of phrases) {
      const to = p.words.length === 1 ? i + 1 : matchAt(tokens, i, p.words);
      if (to < 0) continue;
      const m: Mention = { tag: p.tag, value: p.value, from: i, to };
      if (p.tag === 'idiom') {
        if (!idiom[i]) {
          all.add(m);
          for (let k = i; k < to; k++) idiom[k] = true;
        }
      } else held.push(m);
    }
  }
  if (idiom.length) {
    held = held.filter((m) => {
      // whose it is counts also inside: "my left thumb"
      if (m.tag === 'me' || m.tag === 'pronoun') return true;
      for (let k = m.from; k < m.to; k++) if (!idiom[k]) return true;
      return false;
    });
  }
  for (const m of held) all.add(m);
  return all;
}
