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

/** A phrase of the table, compiled. Exactly one of `cue`, `end` is set; neither for a phrase that is no cue. */
export interface Pattern {
  phrase: string;
  slots: Slot[];
  atEnd: boolean;
  hasGap: boolean;
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

/** First token → the phrases that can begin with it, in the table's order: no-cues, cues, ends. */
export function buildTable(cues: readonly CueGroup[], not: string, ends: readonly EndGroup[]) {
  const table = new Map<string, Pattern[]>();
  const seen = new Map<string, string>();
  const add = (phrase: string, where: string, more: Pick<Pattern, 'cue' | 'end'>) => {
    const before = seen.get(phrase);
    if (before) throw new Error(`Scope words: "${phrase}" stands in "${before}" and in "${where}".`);
    seen.set(phrase, where);
    const pattern: Pattern = { ...compile(phrase), ...more };
    for (const slot of pattern.slots) {
      for (const first of slot.options.keys()) {
        const list = table.get(first) ?? [];
        if (!list.includes(pattern)) list.push(pattern);
        table.set(first, list);
      }
      if (!slot.optional) break;
    }
  };
  for (const phrase of phrasesOf(not)) add(phrase, 'no cues', {});
  for (const cue of cues) for (const phrase of phrasesOf(cue.phrases)) add(phrase, cue.name, { cue });
  for (const end of ends) for (const phrase of phrasesOf(end.phrases)) add(phrase, end.name, { end });
  return table;
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
  low === '.' || low === '!' || low === '?' || low === ';' || /^\s*\n/.test(low);

/** End (exclusive) of the longest reading of `slots` from `k` on at token `i`, or -1. */
function read(tokens: readonly Token[], slots: readonly Slot[], k: number, i: number): number {
  const slot = slots[k];
  if (!slot) return i;
  if (slot.gap) {
    for (let j = i + 1; j <= i + slot.gap; j++) {
      const passed = tokens[j - 1];
      if (!passed || (passed.kind === 'mark' && passed.low !== ',')) return -1;
      const end = read(tokens, slots, k + 1, j);
      if (end >= 0) return end;
    }
    return -1;
  }
  let best = -1;
  const here = tokens[i];
  if (here)
    for (const option of slot.options.get(here.low) ?? []) {
      let n = 1;
      while (n < option.length && tokens[i + n]?.low === option[n]) n++;
      if (n === option.length) best = Math.max(best, read(tokens, slots, k + 1, i + n));
    }
  if (slot.optional) best = Math.max(best, read(tokens, slots, k + 1, i));
  return best;
}

/** What stands at token `i`: the longest phrase, the table's earlier one of two as long; gap phrases apart. */
export function phraseAt(
  tokens: readonly Token[],
  i: number,
): { best?: Pattern; end: number; gap?: Pattern; gapEnd: number } {
  let best: Pattern | undefined;
  let end = i;
  let gap: Pattern | undefined;
  let gapEnd = i;
  for (const pattern of TABLE.get((tokens[i] as Token).low) ?? []) {
    const to = read(tokens, pattern.slots, 0, i);
    if (to <= i) continue;
    if (pattern.atEnd) {
      const next = tokens[to];
      if (next && next.kind !== 'mark') continue;
    }
    if (pattern.hasGap) {
      if (!gap) [gap, gapEnd] = [pattern, to];
    } else if (to > end || (to === end && pattern.atEnd)) [best, end] = [pattern, to];
  }
  return { best, end, gap, gapEnd };
}
