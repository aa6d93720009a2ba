/** What the rules of pauses look at, and the questions they share. */
import { ACTIONS, BEFORE_NAME, BETWEEN, FINITE, GOES_ON, TAKES } from '../words/pauses.ts';
import type { Mention, Mentions } from './mentions.ts';
import type { Quantity } from './quantities.ts';
import { lowAt, type Token } from './tokens.ts';

/** What is put before a token, and the rule that saw it. */
export interface Pause {
  mark: '.' | ',' | ':';
  rule: string;
}

/** What the rules look at. */
export interface View {
  tokens: readonly Token[];
  m: Mentions;
  /** End of the name that begins at a token. */
  names: Map<number, number>;
  nameAt: Set<number>;
  /** Where people are named. */
  people: Set<number>;
  quantities: Map<number, Quantity>;
  quantityAt: Set<number>;
  /** Where the statement before began. */
  from: number;
}

export const low = (v: View, i: number) => lowAt(v.tokens, i);
export const has = (v: View, i: number, ...tags: string[]): Mention | undefined => {
  for (const t of tags) {
    const m = v.m.at(t, i);
    if (m) return m;
  }
  return undefined;
};
export const skipSmall = (v: View, k: number): number => {
  let i = k;
  while (BETWEEN.has(low(v, i))) i++;
  return i;
};

/** A verb told of somebody: one of the list, or any in the past tense. */
export const acts = (v: View, i: number): boolean =>
  FINITE.has(low(v, i)) || ACTIONS.has(low(v, i)) || (/^[a-z]{3,}ed$/.test(low(v, i)) && !has(v, i, 'sign'));

const TELLING = 'sign manner ate drank gait drop side part paw end fine position quantity'.split(' ');
/** Does what is told of a dog begin at `k`? */
export function tells(v: View, k: number): boolean {
  const i = skipSmall(v, k);
  if (i >= v.tokens.length) return false;
  // "Gus and Ivy | their feet are clean"
  if (/^(his|her|their)$/.test(low(v, i)) && has(v, i + 1, 'part', 'side', 'end')) return true;
  if (acts(v, i) || low(v, i) === "n't" || has(v, i, ...TELLING) || v.tokens[i]?.kind === 'number') return true;
  // "bassoon outside toe": a word of kind before the part
  return v.tokens[i]?.kind === 'word' && !GOES_ON.has(low(v, i)) && Boolean(has(v, i + 1, 'part'));
}
/** Does a verb stand at `k` or behind small words? "left wheel" is a place. */
export const verbAt = (v: View, k: number): boolean => {
  const i = skipSmall(v, k);
  return FINITE.has(low(v, i)) && !(low(v, i) === 'left' && has(v, i + 1, 'position', 'part', 'end', 'bootie'));
};
/** Was something told of the speaker, so that what follows is in danger of being hers? */
export const ofSpeaker = (v: View, i: number): boolean => {
  for (let k = v.from; k < i; k++) if (/^(i|we|my|our)$/.test(low(v, k))) return true;
  return false;
};
/** "that on the left foot | the pad is raw": words that lead in within a clause. */
export const fronted = (v: View, i: number): boolean => {
  for (let k = i - 1; k >= v.from && i - k < 8; k--) {
    if (/^(that|where|when|whereupon|because|whether|which)$/.test(low(v, k))) return true;
    if (FINITE.has(low(v, k)) && low(v, k) !== 'left') return false;
    if (ACTIONS.has(low(v, k)) || v.nameAt.has(k)) return false;
  }
  return false;
};

/** Where the list of names that begins at `i` ends. */
export function listEnd(v: View, i: number): number {
  let k = v.names.get(i) ?? i;
  for (;;) {
    const next = v.names.get(k) ?? (/^(and|&|\+|\/|or)$/.test(low(v, k)) ? v.names.get(k + 1) : undefined);
    if (next === undefined) return k;
    k = next;
  }
}

/** Does a verb stand right before, which takes what stands here for its object? "team left | the wheelers" names a side. */
export const verbBefore = (v: View, i: number): boolean =>
  FINITE.has(low(v, i - 1)) && !(low(v, i - 1) === 'left' && has(v, i - 2, 'position'));

/** "put that on | Tug was pulling": the little word belongs to the verb before it. */
export const particle = (v: View, i: number): boolean =>
  /^(on|off|in|out|up|down|back|over|under)$/.test(low(v, i - 1)) && /^(it|that|them|em|this)$/.test(low(v, i - 2));

/** Does the word before take what stands at `i` for its object, or lead into it? */
export const led = (v: View, i: number): boolean =>
  TAKES.has(low(v, i - 1)) ||
  ACTIONS.has(low(v, i - 1)) ||
  // "oozing a little | the left one is clean"
  (BEFORE_NAME.has(low(v, i - 1)) && !(low(v, i - 1) === 'little' && low(v, i - 2) === 'a'));

export interface Rule {
  name: string;
  mark: Pause['mark'];
  at(v: View, i: number): boolean;
  /** May stand behind a word that mostly goes on ("half of his | Rye turned away"). */
  even?(v: View, i: number): boolean;
  /** Where the mark hangs on what stands around. */
  markAt?(v: View, i: number): Pause['mark'];
}

/** Is a place in the team told behind a list of names that ends at `k`? */
export const placed = (v: View, k: number): boolean => {
  let i = k;
  while (/^(in|at|the|alone|single|solo|up|on|by|herself|himself)$/.test(low(v, i))) i++;
  return v.m.from('position', i) !== undefined;
};
