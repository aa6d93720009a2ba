/**
 * Step "mentions": every phrase of the lexicon that stands in the note. For each tag the longest phrase wins at each
 * place; different tags may cover the same words ("right" is a side and a part of "right away"), and the readers choose.
 * Inside an idiom ("off we went", "hot chocolate") the other tags are silent.
 */
import { DOG, GAPPED_BY_HEAD, type Gapped } from '../words/gapped.ts';
import { LEXICON } from '../words/index.ts';
import type { Phrase, PhraseNode } from '../words/table.ts';
import { isEnglish, type Token } from './tokens.ts';

export interface Mention {
  tag: string;
  // biome-ignore lint/suspicious/noExplicitAny: the value's type is the tag's business; readers know their tags
  value: any;
  /** Token range, end exclusive. */
  from: number;
  to: number;
  /** A phrase with words in its middle; a "not" among them denies it, unless the phrase has it of its own ("won't leave … alone"). */
  gapped?: true;
}

/** Does a phrase with a gap hold a "not" in it: "gums are not dry"? */
export const deniedInside = (tokens: readonly Token[], m: Mention): boolean =>
  m.gapped === true && tokens.slice(m.from, m.to).some((t) => t.low === 'not' || t.low === "n't");

/** Does it hold a word of doubt: "stool poss. soft"? */
export const doubtedInside = (tokens: readonly Token[], m: Mention): boolean =>
  m.gapped === true &&
  tokens
    .slice(m.from, m.to)
    .some((t) => /^(poss|possibly|possible|maybe|perhaps|probably|prob|might|may|could)$/.test(t.low));

const NONE: readonly Mention[] = [];

/**
 * The mentions of one note. Readers ask hundreds of times what a tag says of a token, and few tags cover one: so the
 * mentions are kept by token, and a question looks through the two or three that lie over it.
 */
export class Mentions {
  readonly #lists = new Map<string, Mention[]>();
  readonly #over: (Mention[] | undefined)[];

  /** For a note of so many tokens. */
  constructor(length: number) {
    this.#over = new Array(length).fill(undefined);
  }

  /** Takes a mention, unless its tag covers its first token already. */
  add(m: Mention): void {
    if (this.at(m.tag, m.from)) return;
    const list = this.#lists.get(m.tag);
    if (list) list.push(m);
    else this.#lists.set(m.tag, [m]);
    for (let i = m.from; i < m.to; i++) {
      const over = this.#over[i];
      if (over) over.push(m);
      else this.#over[i] = [m];
    }
  }
  /** All mentions of a tag, left to right, none overlapping. */
  of(tag: string): readonly Mention[] {
    return this.#lists.get(tag) ?? NONE;
  }
  /** The mention of a tag that covers token `i`. */
  at(tag: string, i: number): Mention | undefined {
    const over = i >= 0 && i < this.#over.length ? this.#over[i] : undefined;
    if (over) for (let k = 0; k < over.length; k++) if ((over[k] as Mention).tag === tag) return over[k];
    return undefined;
  }
  /** The mention of a tag that begins at token `i`. */
  from(tag: string, i: number): Mention | undefined {
    const m = this.at(tag, i);
    return m?.from === i ? m : undefined;
  }
}

/** A hyphen inside a word ("short-striding") is passed over. */
const isHyphen = (tokens: readonly Token[], k: number): boolean => {
  const t = tokens[k] as Token;
  return t.low === '-' && t.kind === 'mark' && !t.gap && tokens[k + 1]?.gap === false;
};

/** Calls `found` for each phrase that begins at token `i`, the longest first, with the token behind it. */
function phrasesAt(tokens: readonly Token[], i: number, found: (p: Phrase, to: number) => void): void {
  const ends: [PhraseNode, number][] = [];
  let node = LEXICON.next?.get((tokens[i] as Token).low);
  let k = i + 1;
  while (node) {
    if (node.phrases.length) ends.push([node, k]);
    if (!node.next || k >= tokens.length) break;
    if (isHyphen(tokens, k)) k++;
    node = node.next.get((tokens[k] as Token).low);
    k++;
  }
  for (let e = ends.length - 1; e >= 0; e--) {
    const [end, to] = ends[e] as [PhraseNode, number];
    for (const p of end.phrases) found(p, to);
  }
}

/** Where a phrase with words in its middle ends that begins at token `i`; -1 where it does not stand. */
function gappedEnd(tokens: readonly Token[], i: number, g: Gapped, isName: (low: string) => boolean): number {
  for (let k = i + 1; k <= i + 1 + g.most && k < tokens.length; k++) {
    for (const tail of g.tails) if (tail.every((w, n) => tokens[k + n]?.low === w)) return k + tail.length;
    const low = (tokens[k] as Token).low;
    if (!g.fill.has(low) && low !== 'not' && low !== "n't" && !(g.fill.has(DOG) && isName(low))) return -1;
  }
  return -1;
}

/** Do the idioms of the note silence this mention? */
function silent(tokens: readonly Token[], m: Mention, idioms: readonly (Mention | undefined)[]): boolean {
  // whose it is counts also inside: "my left thumb"
  // but "pulls for both of them" is one dog's
  const ofThem = m.value === 'they' && idioms[m.from]?.to === m.to && tokens[m.from - 1]?.low === 'of';
  if (m.tag === 'me' || (m.tag === 'pronoun' && !ofThem)) return false;
  // A phrase that is the whole idiom is known by itself: "snow hook", "all right".
  const over = idioms[m.from];
  if (over && m.to - m.from > 1 && m.from <= over.from && m.to >= over.to) return false;
  for (let k = m.from; k < m.to; k++) if (!idioms[k]) return false;
  return true;
}

/**
 * The mentions of a note. Linear in its length. `isName` tells the names of the kennel: one that English does not have
 * ("Bruse") is the dog alone, though the lexicon may hold it as a slip of some word's spelling.
 */
export function findMentions(tokens: readonly Token[], isName: (low: string) => boolean): Mentions {
  const all = new Mentions(tokens.length);
  const held: Mention[] = [];
  const idioms: (Mention | undefined)[] = [];
  const take = (p: Phrase, from: number, to: number) => {
    const m: Mention = { tag: p.tag, value: p.value, from, to };
    if (p.tag !== 'idiom') held.push(m);
    else if (!idioms[from]) {
      all.add(m);
      for (let k = from; k < to; k++) idioms[k] = m;
    }
  };
  for (let i = 0; i < tokens.length; i++) {
    for (const g of GAPPED_BY_HEAD.get((tokens[i] as Token).low) ?? []) {
      const to = gappedEnd(tokens, i, g, isName);
      if (to > 0) held.push({ tag: g.tag, value: g.value, from: i, to, ...(!g.fill.has('not') && { gapped: true }) });
    }
    const { low, known } = tokens[i] as Token;
    const named = !known && isName(low) && !isEnglish(low);
    phrasesAt(tokens, i, (p, to) => {
      if (!named || to > i + 1) take(p, i, to);
    });
  }
  // "I get to the left wrist": no way to turn
  for (const p of idioms.length ? held : []) {
    const over = p.tag === 'part' && tokens[p.from]?.low !== 'back' ? idioms[p.from - 1] : undefined;
    if (over?.to !== p.from || !/^(left|right)$/.test(tokens[p.from - 1]?.low ?? '')) continue;
    for (let k = over.from; k < over.to; k++) idioms[k] = undefined;
  }
  for (const m of held) if (!idioms.length || !silent(tokens, m, idioms)) all.add(m);
  return all;
}
