/**
 * Where scopes end: a flag for each token at which a statement begins, a contrast is made, or a denial is over.
 * A border at token b lies before it. Worked out once for a note, in time linear in its length.
 */
import {
  ACTIONS,
  ADVERBS,
  AUXILIARIES,
  COUNTS,
  DETERMINERS,
  FINITE,
  OPEN_PRESENT,
  PASSIVES,
  POINTED,
  PREPOSITIONS,
  SIDES,
  SUBJECTS,
  SUBJECTS_WITH_VERB,
  SUBORDINATES,
  TOPICS,
} from '../words/scope-ends.ts';
import { isFullStop, phraseAt } from './scope-table.ts';
import type { Token } from './tokens.ts';

export const SENTENCE = 1;
/** "but", "except", "because". */
export const CONTRAST = 2;
/** A subject with a verb of its own begins here. */
export const SUBJECT = 4;
/** Only a denial ends here. */
export const DENIAL = 8;
/** "now", "today": earlier and later days end here. */
export const NOW = 16;
export const COMMA = 32;
/** A statement without its subject: ", wrapped it". */
export const ACTION = 64;
/** A subject whose verb tells what is or was so, not what is to be. */
export const TOLD = 128;
/** A verb that tells what is or was so. */
export const VERB = 256;
export const COLON = 512;

const isJoin = (low: string) => low === 'and' || low === 'n' || low === '&' || low === '+' || low === 'plus';
const isOr = (low: string) => low === 'or' || low === 'nor';

/** Is the verb at `v` one that plans or supposes, not one that tells? */
function plans(tokens: readonly Token[], v: number): boolean {
  const low = tokens[v]?.low;
  if (low === 'will' || low === "'ll" || low === 'would' || low === "'d" || low === 'can' || low === 'could')
    return true;
  if (OPEN_PRESENT.has(low ?? '')) return true;
  if (low === 'might' || low === 'may' || low === 'should' || low === 'must') return true;
  const next = tokens[v + 1]?.low;
  const after = tokens[v + 2]?.low;
  return (next === 'going' && after === 'to') || next === 'gonna';
}

/** Where the subject of the verb at `v` begins, or -1 when the words do not show it. */
function subjectOf(tokens: readonly Token[], v: number): number {
  let j = v - 1;
  while (j >= 0 && ADVERBS.has((tokens[j] as Token).low)) j--;
  const last = tokens[j];
  if (!last || last.kind === 'mark') return -1;
  if (SUBJECTS.has(last.low) || SUBJECTS_WITH_VERB.has(last.low)) return j;
  if (TOPICS.has(last.low)) {
    const before = tokens[j - 1]?.low;
    if (before !== 'no' && before !== 'any' && !(before && (DETERMINERS.has(before) || PREPOSITIONS.has(before))))
      return j;
  }
  for (let steps = 0; j >= 0 && steps < 8; steps++, j--) {
    const t = tokens[j] as Token;
    if (t.kind === 'mark') {
      if (PASSIVES.has(tokens[v + 1]?.low ?? '')) return -1;
      return j + 1;
    }
    if (isJoin(t.low)) return PASSIVES.has(tokens[v + 1]?.low ?? '') ? -1 : j + 1;
    if (t.low === 'no' || t.low === 'any' || t.low === 'not' || t.low === "n't" || t.low === 'or') return -1;
    if (DETERMINERS.has(t.low)) {
      if (PREPOSITIONS.has(tokens[j - 1]?.low ?? '')) j--;
      else return j;
    } else if (FINITE.has(t.low) && t.low !== "'s") return -1;
  }
  return -1;
}

/** Does "or" go on with the list before the sentence ends? */
function listGoesOn(tokens: readonly Token[], i: number): boolean {
  for (let j = i; j < tokens.length && j < i + 9; j++) {
    const low = (tokens[j] as Token).low;
    if (isOr(low)) return true;
    if (isFullStop(low)) return false;
  }
  return false;
}

/** Is the ’s at `i` a verb ("he's", "tug's tight"), not a possessive? */
function isVerbS(tokens: readonly Token[], i: number): boolean {
  const before = tokens[i - 1]?.low ?? '';
  if (SUBJECTS.has(before) || SUBJECTS_WITH_VERB.has(before)) return true;
  const next = tokens[i + 1]?.low ?? '';
  return (
    next.endsWith('ing') || PASSIVES.has(next) || next === 'got' || next === 'gone' || next === 'been' || next === 'a'
  );
}

function verbs(tokens: readonly Token[], flags: Uint16Array, i: number): void {
  const t = tokens[i] as Token;
  const flag = (b: number, f: number) => {
    flags[b] = (flags[b] as number) | f;
  };
  const before = tokens[i - 1];
  if (SUBJECTS.has(t.low) && !SUBORDINATES.has(before?.low ?? '')) flag(i, SUBJECT);
  if (t.low === 'its' && tokens[i + 1] && !SUBORDINATES.has(before?.low ?? '') && !PREPOSITIONS.has(before?.low ?? ''))
    flag(i, SUBJECT | TOLD);
  if (FINITE.has(t.low) && !DETERMINERS.has(before?.low ?? '') && (t.low !== "'s" || isVerbS(tokens, i))) {
    const told = !plans(tokens, i);
    if (told) flag(i, VERB);
    const s = subjectOf(tokens, i);
    if (s >= 0 && !SUBORDINATES.has(tokens[s - 1]?.low ?? '')) flag(s, told ? SUBJECT | TOLD : SUBJECT);
  }
  const low = before?.low ?? '';
  const afterMark = low === ',' || (low === '-' && before?.gap === true && t.gap);
  if (
    afterMark
      ? ACTIONS.has(t.low) || FINITE.has(t.low)
      : ACTIONS.has(t.low) && !AUXILIARIES.has(low) && !FINITE.has(low)
  )
    flag(i, ACTION | VERB);
  if (
    SIDES.has(t.low) &&
    (low === ',' || (isJoin(low) && !SIDES.has(tokens[i - 2]?.low ?? ''))) &&
    !listGoesOn(tokens, i)
  )
    flag(i, DENIAL);
  // "no snow, hard trail": a new topic with its own word before it.
  if (low === ',' && TOPICS.has(tokens[i + 1]?.low ?? '') && !listGoesOn(tokens, i)) flag(i, DENIAL);
  if (COUNTS.has(t.low) && !PREPOSITIONS.has(low) && !DETERMINERS.has(low) && low !== 'than' && low !== 'or')
    flag(i, DENIAL);
}

/** The borders of a note. */
export function bordersOf(tokens: readonly Token[]): Uint16Array {
  const flags = new Uint16Array(tokens.length + 1);
  const flag = (b: number, f: number) => {
    flags[b] = (flags[b] as number) | f;
  };
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i] as Token;
    if (t.kind === 'mark') {
      const before = tokens[i - 1];
      if (t.low === '.' ? tokens[i + 1]?.gap !== false && !POINTED.has(before?.low ?? '') : isFullStop(t.low))
        flag(i, SENTENCE);
      else if (t.low === ',') flag(i, COMMA);
      else if (t.low === ':') flag(i, COLON);
      else if ((t.low === '-' || t.low === '–' || t.low === '—') && t.gap && tokens[i + 1]?.gap)
        flag(i, DENIAL | COMMA);
    } else if (t.kind === 'number') {
      const next = tokens[i + 1]?.low;
      if (next === 'below' || next === 'above' || next === 'degrees') flag(i, DENIAL);
    } else verbs(tokens, flags, i);
  }
  for (let i = 0; i < tokens.length; ) {
    const { best, end, gap, gapEnd } = phraseAt(tokens, i);
    if (gap?.cue) flag(gapEnd, DENIAL);
    if (best?.end) {
      const kind = best.end.ends === 'contrast' ? CONTRAST : best.end.ends === 'now' ? NOW | DENIAL : DENIAL;
      flag(best.end.after ? end : i, kind);
    } else if (best?.cue?.breaks) flag(i, DENIAL);
    i = Math.max(end, i + 1);
  }
  return flags;
}
