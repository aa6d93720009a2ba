/**
 * Step "pauses": where a note without any marks begins a new statement. A recogniser writes no points and commas; where
 * the words show a border, a mark without width is put there, so that every later step reads the note as if it had been
 * typed. A note with marks of its own is left as it is.
 */
import { ACTIONS, FINITE, GOES_ON, LEADS_IN, NO_HEADING, SUBORDINATE } from '../words/pauses.ts';
import { findPeople, namesInSlots } from './dogs.ts';
import type { Mentions } from './mentions.ts';
import { SUBJECTS } from './pause-subjects.ts';
import { TURNS } from './pause-turns.ts';
import { has, low, type Pause, type View } from './pause-view.ts';
import { type Quantity, quantitiesOf } from './quantities.ts';
import type { Roster } from './roster.ts';
import type { Token } from './tokens.ts';

const MARKS = /^[.,;:!?]$/;
export const RULES = [...SUBJECTS, ...TURNS];

/** Has something been told between the statement's beginning and `i`? */
function saidSomething(v: View, i: number): boolean {
  for (let k = v.from; k < i; k++)
    if (
      FINITE.has(low(v, k)) ||
      ACTIONS.has(low(v, k)) ||
      v.nameAt.has(k) ||
      (v.quantityAt.has(k) && i - v.from > 4) ||
      has(v, k, 'sign', 'manner', 'pronoun', 'me')
    )
      return true;
  return false;
}

/** Can a statement end before token `i`, as far as marks and set phrases say? */
const open = (v: View, i: number): boolean =>
  v.tokens[i - 1]?.kind !== 'mark' && !v.m.of('idiom').some((x) => x.from < i && i < x.to);

/** "two broken nails", "heart rates", "harness rubs": a few words that tell nothing of anyone. */
function heading(v: View, i: number): boolean {
  if (i - v.from > 4 || NO_HEADING.has(low(v, v.from)) || SUBORDINATE.has(low(v, v.from))) return false;
  for (let k = v.from; k < i; k++)
    if (
      FINITE.has(low(v, k)) ||
      ACTIONS.has(low(v, k)) ||
      v.nameAt.has(k) ||
      v.quantityAt.has(k) ||
      has(v, k, 'fine', 'pronoun', 'me', 'group')
    )
      return false;
  return Boolean(has(v, i - 1, 'sign', 'quantity', 'part', 'item', 'bootie')) || v.from === 0;
}

/** The mark that fits what stands before token `i`: a heading is no statement, nor is a day or an "if". */
function fitting(v: View, i: number, mark: Pause['mark']): Pause['mark'] | undefined {
  if (heading(v, i)) return ':';
  if (mark !== '.') return mark;
  if (SUBORDINATE.has(low(v, v.from))) return ',';
  // "… if it gets windy, Mustard goes to lead"
  for (let k = i - 1; k > v.from && i - k < 12 && low(v, k) !== 'and'; k--)
    if (/^(if|when|unless|until)$/.test(low(v, k))) return ',';
  if (saidSomething(v, i)) return '.';
  if (LEADS_IN.has(low(v, v.from))) return undefined;
  return i - v.from <= 5 ? ':' : '.';
}

/** The pauses of a note, by the token before which they stand. */
export function pausesIn(tokens: readonly Token[], m: Mentions, roster: Roster): Map<number, Pause> {
  const out = new Map<number, Pause>();
  if (
    tokens.length < 4 ||
    tokens.some((t) => MARKS.test(t.low) && !(t.low === ':' && tokens[t.i - 1]?.kind === 'number'))
  )
    return out;
  const names = new Map<number, number>();
  const nameAt = new Set<number>();
  const take = (from: number, to: number) => {
    names.set(from, to);
    for (let k = from; k < to; k++) nameAt.add(k);
  };
  for (const n of namesInSlots(tokens as Token[], m, roster)) take(n.from, n.to);
  const people = new Set<number>();
  for (const p of findPeople(tokens as Token[], roster)) {
    take(p.from, p.to);
    people.add(p.from);
  }
  const quantities = new Map<number, Quantity>();
  const quantityAt = new Set<number>();
  for (const q of quantitiesOf(tokens, '')) {
    if (q.weak) continue;
    quantities.set(q.from, q);
    for (let k = q.from; k < q.to; k++) quantityAt.add(k);
  }
  const v: View = { tokens, m, names, nameAt, people, quantities, quantityAt, from: 0 };
  for (let i = 1; i < tokens.length; i++) {
    if (!open(v, i)) continue;
    const goesOn = GOES_ON.has(low(v, i - 1));
    for (const rule of RULES) {
      if ((goesOn && !rule.even?.(v, i)) || !rule.at(v, i)) continue;
      const mark = fitting(v, i, rule.markAt?.(v, i) ?? rule.mark);
      if (mark) out.set(i, { mark, rule: rule.name });
      if (mark !== ',') v.from = i;
      break;
    }
  }
  return out;
}

/** Puts the pauses of a note without marks in; the same list where it has marks or none are seen. */
export function withPauses(tokens: Token[], m: Mentions, roster: Roster): Token[] {
  const pauses = pausesIn(tokens, m, roster);
  if (!pauses.size) return tokens;
  const out: Token[] = [];
  for (const t of tokens) {
    const pause = pauses.get(t.i);
    if (pause) {
      const end = (tokens[t.i - 1] as Token).end;
      out.push({ i: out.length, low: pause.mark, start: end, end, kind: 'mark', gap: false, known: true });
    }
    out.push({ ...t, i: out.length });
  }
  return out;
}
