/**
 * The scope words made ready: each phrase is compiled once, when the file loads, into slots with their alternatives, and
 * found by the first word it can begin with. A phrase that cannot be read stops the start with an error that prints it.
 */
import { ENDS, type EndGroup, INNER_DENIALS, NOT_CUES } from '../words/scope-ends.ts';
import { CUES, type CueGroup, LISTS } from '../words/scopes.ts';
import type { Token } from './tokens.ts';

/** One place in a phrase: some words, each possibly several tokens long, or a gap. */
interface Slot {
  /** Up to so many words; 0 where it is none. */
  gap: number;
  optional: boolean;
  /** Alternatives by their first token. */
  options: Map<string, string[][]>;
}

/** A phrase of the table, compiled; `order` is its place in it. Exactly one of `cue`, `end` is set; neither for a phrase that is no cue. */
export interface Pattern {
  phrase: string;
  slots: Slot[];
  atEnd: boolean;
  hasGap: boolean;
  order: number;
  cue?: CueGroup;
  end?: EndGroup;
}

/** Up to so many words stand in a gap. */
const GAP = 6;

/** The phrases of a table's text. */
const phrasesOf = (text: string) =>
  text
    .split(/[;\n]/)
    .map((p) => p.trim())
    .filter(Boolean);

const words = (s: string) => s.split(/\s+/).filter(Boolean);

/** The alternatives of a slot's text: "a|b|<list>|" → word lists; an empty one makes the slot optional. */
function alternatives(body: string, phrase: string): { optional: boolean; all: string[][] } {
  let optional = false;
  const all: string[][] = [];
  for (const part of body.split('|')) {
    const name = /^\s*<(\w+)>\s*$/.exec(part)?.[1];
    if (name) {
      const list = LISTS[name];
      if (!list) throw new Error(`Scope words: "${phrase}" names a list "${name}" that does not exist.`);
      for (const item of list.split(',')) {
        if (item.trim() === '') optional = true;
        else all.push(words(item));
      }
    } else if (part.trim() === '') optional = true;
    else if (/[<>{}]/.test(part))
      throw new Error(`Scope words: "${phrase}" has a bracket that is not closed in "${part}".`);
    else all.push(words(part));
  }
  return { optional, all };
}

/** Compiles one phrase. Throws with the phrase when it cannot be read. */
export function compile(phrase: string): Pick<Pattern, 'phrase' | 'slots' | 'atEnd' | 'hasGap'> {
  const slots: Slot[] = [];
  let atEnd = false;
  const parts = phrase.match(/\{[^{}]*\}|<\w+>|[^\s{}<>]+/g) ?? [];
  if (parts.join('').length !== phrase.replace(/\s+(?![^{}]*\})/g, '').length)
    throw new Error(`Scope words: "${phrase}" cannot be read; are its brackets closed?`);
  for (const part of parts) {
    if (part === '$') {
      atEnd = true;
      continue;
    }
    if (atEnd) throw new Error(`Scope words: "${phrase}" goes on after its end mark.`);
    if (part.startsWith('…')) {
      slots.push({ gap: Number(part.slice(1)) || GAP, optional: false, options: new Map() });
      continue;
    }
    const { optional, all } = alternatives(part.startsWith('{') ? part.slice(1, -1) : part, phrase);
    const options = new Map<string, string[][]>();
    for (const option of all) {
      const first = option[0] as string;
      if (option.some((w) => w !== w.toLowerCase())) throw new Error(`Scope words: "${phrase}" has a capital letter.`);
      options.set(
        first,
        [...(options.get(first) ?? []), option].sort((a, b) => b.length - a.length),
      );
    }
    slots.push({ gap: 0, optional, options });
  }
  if (slots.length === 0 || slots[0]?.gap || slots.at(-1)?.gap || slots.every((s) => s.optional))
    throw new Error(`Scope words: "${phrase}" names no word to begin or end with.`);
  return { phrase, slots, atEnd, hasGap: slots.some((s) => s.gap > 0) };
}

/** The table ready for reading: a trie for the phrases without gaps, a list by first word for the others. */
export interface Table {
  root: Node;
  gaps: Map<string, Pattern[]>;
}

/** Checks and compiles the table, in its order: phrases that are no cues, cues, ends. */
export function buildTable(cues: readonly CueGroup[], not: string, ends: readonly EndGroup[]): Table {
  const plain: Pattern[] = [];
  const gaps = new Map<string, Pattern[]>();
  const seen = new Map<string, string>();
  const add = (phrase: string, where: string, more: Pick<Pattern, 'cue' | 'end'>) => {
    const before = seen.get(phrase);
    if (before) throw new Error(`Scope words: "${phrase}" stands in "${before}" and in "${where}".`);
    seen.set(phrase, where);
    const pattern: Pattern = { ...compile(phrase), order: seen.size, ...more };
    if (!pattern.hasGap) plain.push(pattern);
    else
      for (const first of pattern.slots[0]?.options.keys() ?? [])
        gaps.set(first, [...(gaps.get(first) ?? []), pattern]);
  };
  for (const phrase of phrasesOf(not)) add(phrase, 'no cues', {});
  for (const cue of cues) for (const phrase of phrasesOf(cue.phrases)) add(phrase, cue.name, { cue });
  for (const end of ends) for (const phrase of phrasesOf(end.phrases)) add(phrase, end.name, { end });
  return { root: nodeOf(plain.map((pattern) => ({ pattern, slot: 0 }))), gaps };
}

/** A place in a phrase: before slot `slot`, or inside one of its alternatives. */
interface Place {
  pattern: Pattern;
  slot: number;
  option?: string[];
  at?: number;
}

/**
 * A node of the trie: all phrases read so far in step. Its branches are made when a note first takes them, so that the
 * alternatives are never multiplied out.
 */
interface Node {
  /** The earliest phrase of the table that is read whole here; one that must stand at a statement's end. */
  whole?: Pattern;
  wholeAtEnd?: Pattern;
  /** By the next word: a branch that a note has taken, else the places it would lead to. */
  ahead: Map<string, Node | Place[]>;
}

const earlier = (a: Pattern | undefined, b: Pattern) => (a && a.order < b.order ? a : b);

function nodeOf(places: readonly Place[]): Node {
  const node: Node = { ahead: new Map() };
  const step = (word: string, place: Place) => {
    const list = node.ahead.get(word);
    if (Array.isArray(list)) list.push(place);
    else node.ahead.set(word, [place]);
  };
  const enter = (pattern: Pattern, k: number): void => {
    const slot = pattern.slots[k];
    if (!slot) {
      if (pattern.atEnd) node.wholeAtEnd = earlier(node.wholeAtEnd, pattern);
      else node.whole = earlier(node.whole, pattern);
      return;
    }
    for (const [first, options] of slot.options)
      for (const option of options) step(first, { pattern, slot: k, option, at: 1 });
    if (slot.optional) enter(pattern, k + 1);
  };
  for (const { pattern, slot, option, at } of places) {
    if (option && at !== undefined && at < option.length)
      step(option[at] as string, { pattern, slot, option, at: at + 1 });
    else enter(pattern, option ? slot + 1 : slot);
  }
  return node;
}

function branch(node: Node, word: string): Node | undefined {
  const next = node.ahead.get(word);
  if (!Array.isArray(next)) return next;
  const made = nodeOf(next);
  node.ahead.set(word, made);
  return made;
}

/** Denies the words of its own phrase and no others: "not deep". */
const INNER: CueGroup = {
  name: 'not deep',
  gives: 'absent',
  direction: 'forward',
  reach: 'word',
  phrases: INNER_DENIALS,
};
const TABLE = buildTable([INNER, ...CUES], NOT_CUES, ENDS);

/** A mark that ends a sentence, or a line's end. */
export const isFullStop = (low: string) =>
  low === '.' || low === '!' || low === '?' || low === ';' || low.includes('\n');

/** End (exclusive) of the shortest reading of `slots` from `k` on at token `i`, or -1; for phrases with a gap. */
function readGapped(tokens: readonly Token[], slots: readonly Slot[], k: number, i: number): number {
  const slot = slots[k];
  if (!slot) return i;
  if (slot.gap) {
    for (let j = i + 1; j <= i + slot.gap; j++) {
      const passed = tokens[j - 1];
      if (!passed || (passed.kind === 'mark' && passed.low !== ',')) return -1;
      const end = readGapped(tokens, slots, k + 1, j);
      if (end >= 0) return end;
    }
    return -1;
  }
  const here = tokens[i];
  for (const option of (here && slot.options.get(here.low)) ?? []) {
    let n = 1;
    while (n < option.length && tokens[i + n]?.low === option[n]) n++;
    const end = n === option.length ? readGapped(tokens, slots, k + 1, i + n) : -1;
    if (end >= 0) return end;
  }
  return slot.optional ? readGapped(tokens, slots, k + 1, i) : -1;
}

/** What stands at a token: the longest phrase (none of the table when `best` is missing), and one with a gap. */
export interface Hit {
  at: number;
  best?: Pattern;
  end: number;
  gap?: Pattern;
  gapEnd: number;
}

/** What stands at token `i`, if anything does. Of two phrases as long the table's earlier is taken, before both one that must stand at the end. */
function hitAt(tokens: readonly Token[], i: number): Hit | undefined {
  const first = (tokens[i] as Token).low;
  let hit: Hit | undefined;
  let node = branch(TABLE.root, first);
  for (let j = i + 1; node; j++) {
    const next = tokens[j];
    const best = node.wholeAtEnd && (!next || next.kind === 'mark') ? node.wholeAtEnd : node.whole;
    if (best) hit = { at: i, best, end: j, gapEnd: i };
    if (!next) break;
    node = branch(node, next.low);
  }
  for (const pattern of TABLE.gaps.get(first) ?? []) {
    const gapEnd = readGapped(tokens, pattern.slots, 0, i);
    // A longer phrase without a gap covers it: "n't seen any more | blood".
    if (gapEnd < 0 || (hit && hit.end >= gapEnd)) continue;
    hit = { at: i, best: hit?.best, end: hit?.end ?? i + 1, gap: pattern, gapEnd };
    break;
  }
  return hit;
}

/** The phrases of a note in their order, none beginning inside another. Linear in the note's length. */
export function hitsOf(tokens: readonly Token[]): Hit[] {
  const hits: Hit[] = [];
  for (let i = 0; i < tokens.length; ) {
    const hit = hitAt(tokens, i);
    if (hit) hits.push(hit);
    i = hit ? hit.end : i + 1;
  }
  return hits;
}
