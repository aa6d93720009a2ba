/**
 * Where scopes end: a flag for each token at which a statement begins, a contrast is made, or a denial is over.
 * A border at token b lies before it. Worked out once for a note, in time linear in its length.
 */
import { CLASSES } from '../words/scope-ends.ts';
import { type Hit, isFullStop } from './scope-table.ts';
import { lowAt as lowOf, type Token } from './tokens.ts';

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

type ClassName = keyof typeof CLASSES;
const NAMES = Object.keys(CLASSES) as ClassName[];
/** A bit for each class of words. */
const BIT = Object.fromEntries(NAMES.map((name, n) => [name, 1 << n])) as Record<ClassName, number>;
/** Word → the bits of its classes. */
const CLASS_OF = new Map<string, number>();
for (const name of NAMES)
  for (const word of CLASSES[name].split(' ')) CLASS_OF.set(word, (CLASS_OF.get(word) ?? 0) | BIT[name]);

/** What the rules look at: the tokens, the classes of each, and the flags so far. */
interface Sight {
  tokens: readonly Token[];
  classes: number[];
  flags: number[];
}
const is = (s: Sight, i: number, mask: number) =>
  i >= 0 && i < s.classes.length && ((s.classes[i] as number) & mask) !== 0;
const lowAt = (s: Sight, i: number) => lowOf(s.tokens, i);
const isMark = (s: Sight, i: number) => s.tokens[i]?.kind === 'mark';
const flag = (s: Sight, b: number, f: number) => {
  s.flags[b] = (s.flags[b] as number) | f;
};
const SUBJECT_WORD = BIT.subject | BIT.pronoun;

/** Is the verb at `v` one that plans or supposes, not one that tells? */
function plans(s: Sight, v: number): boolean {
  if (is(s, v, BIT.planning)) return true;
  const next = lowAt(s, v + 1);
  return (next === 'going' && lowAt(s, v + 2) === 'to') || next === 'gonna';
}

/** Where the subject of the verb at `v` begins, or -1 when the words do not show it. */
function subjectOf(s: Sight, v: number): number {
  let j = v - 1;
  while (j >= 0 && is(s, j, BIT.adverb)) j--;
  if (j < 0 || isMark(s, j)) return -1;
  if (is(s, j, SUBJECT_WORD)) return j;
  if (is(s, j, BIT.topic) && !is(s, j - 1, BIT.denier | BIT.determiner | BIT.preposition)) return j;
  // Back over the noun phrase to its article, or to the mark or the "and" before a phrase without one. "No splits and
  // rubs were seen" has no subject that begins at "rubs".
  const passive = is(s, v + 1, BIT.passive);
  for (let steps = 0; j >= 0 && steps < 8; steps++, j--) {
    if (isMark(s, j) || is(s, j, BIT.join)) return passive ? -1 : j + 1;
    if (is(s, j, BIT.denier)) return -1;
    if (is(s, j, BIT.determiner)) {
      if (!is(s, j - 1, BIT.preposition)) return j;
      j--;
    } else if (is(s, j, BIT.finite) && lowAt(s, j) !== "'s") return -1;
  }
  return -1;
}

/** Does "or" go on with the list before the sentence ends? */
function listGoesOn(s: Sight, i: number): boolean {
  for (let j = i; j < s.tokens.length && j < i + 9; j++) {
    if (is(s, j, BIT.or)) return true;
    if (isMark(s, j) && isFullStop(lowAt(s, j))) return false;
  }
  return false;
}

const VERB_AFTER_S = new Set(['got', 'gone', 'been', 'a']);
/** Is the ’s at `i` a verb ("he's", "tug's slipping"), not a possessive? */
function isVerbS(s: Sight, i: number): boolean {
  const next = lowAt(s, i + 1);
  if (/^(trail|weather|wind|snow|sky|ice|going|footing)$/.test(lowAt(s, i - 1))) return true;
  return is(s, i - 1, SUBJECT_WORD) || is(s, i + 1, BIT.passive) || VERB_AFTER_S.has(next) || next.endsWith('ing');
}

/** Behind a comma, or a dash that stands free? */
const afterComma = (s: Sight, i: number) => {
  const before = s.tokens[i - 1];
  return before?.low === ',' || (before?.low === '-' && before.gap && s.tokens[i]?.gap === true);
};

/** One way in which a statement or a finding is seen to begin. */
interface BorderRule {
  name: string;
  /** Classes of the words it looks at. */
  of: number;
  set(s: Sight, i: number): void;
}

/** The rules, from the surest sign of a new statement to those that only end a denial. Their order changes nothing: they only add flags. */
const RULES: readonly BorderRule[] = [
  {
    name: '<he|she|i|we|they>',
    of: BIT.subject,
    set(s, i) {
      if (!is(s, i - 1, BIT.subordinate)) flag(s, i, SUBJECT);
    },
  },
  {
    name: '<subject> <verb>',
    of: BIT.finite,
    set(s, v) {
      if (is(s, v - 1, BIT.determiner) || (lowAt(s, v) === "'s" && !isVerbS(s, v))) return;
      const told = !plans(s, v);
      if (told) flag(s, v, VERB);
      const b = subjectOf(s, v);
      if (b >= 0 && !is(s, b - 1, BIT.subordinate)) flag(s, b, told ? SUBJECT | TOLD : SUBJECT);
    },
  },
  {
    name: 'its, written for it is',
    of: BIT.pronoun,
    set(s, i) {
      if (lowAt(s, i) === 'its' && !is(s, i - 1, BIT.subordinate | BIT.preposition)) flag(s, i, SUBJECT | TOLD);
    },
  },
  {
    name: ', <verb>',
    of: BIT.finite | BIT.action,
    set(s, i) {
      const begins = afterComma(s, i) || (is(s, i, BIT.action) && !is(s, i - 1, BIT.auxiliary | BIT.finite));
      if (begins) flag(s, i, ACTION | VERB);
    },
  },
  {
    name: ', <side>',
    of: BIT.side,
    set(s, i) {
      const joined = is(s, i - 1, BIT.join) && !is(s, i - 2, BIT.side);
      if ((joined || lowAt(s, i - 1) === ',') && !listGoesOn(s, i)) flag(s, i, DENIAL);
    },
  },
  {
    name: ', <status>',
    of: BIT.status,
    set(s, i) {
      if (lowAt(s, i - 1) === ',' && !listGoesOn(s, i)) flag(s, i, DENIAL);
    },
  },
  {
    // "no heat, | slight swelling", "no limp and | some stiffness"
    name: '<slight>',
    of: BIT.amount,
    set(s, i) {
      const own = is(s, i - 1, BIT.denier | BIT.determiner | BIT.or | BIT.preposition | BIT.amount);
      if (!own && !listGoesOn(s, i)) flag(s, i, DENIAL);
    },
  },
  {
    // "no cuts, | a small split"
    name: ', <a>',
    of: BIT.determiner,
    set(s, i) {
      if (/^an?$/.test(lowAt(s, i)) && lowAt(s, i - 1) === ',' && !listGoesOn(s, i)) flag(s, i, DENIAL);
    },
  },
  {
    name: ', <word> <topic>',
    of: BIT.topic,
    set(s, i) {
      if (lowAt(s, i - 2) === ',' && !listGoesOn(s, i)) flag(s, i - 1, DENIAL);
    },
  },
  {
    name: '<part> <verb>',
    of: BIT.part,
    set(s, i) {
      const alone = !is(s, i - 1, BIT.denier | BIT.determiner | BIT.preposition | BIT.side);
      if (alone && is(s, i + 1, BIT.finite)) flag(s, i, DENIAL);
    },
  },
  {
    name: 'and <his>',
    of: BIT.possessive,
    set(s, i) {
      if (is(s, i - 1, BIT.join)) flag(s, i, DENIAL);
    },
  },
  {
    // "no heroics, and be off by nine"
    name: 'and be',
    of: BIT.auxiliary,
    set(s, i) {
      if (lowAt(s, i) === 'be' && is(s, i - 1, BIT.join)) flag(s, i, DENIAL);
    },
  },
  {
    name: '<two> <things>',
    of: BIT.count,
    set(s, i) {
      if (!is(s, i - 1, BIT.preposition | BIT.determiner | BIT.or) && lowAt(s, i - 1) !== 'than') flag(s, i, DENIAL);
    },
  },
];

/** The marks' own borders. */
function mark(s: Sight, i: number): void {
  const { low, gap } = s.tokens[i] as Token;
  const next = s.tokens[i + 1];
  if (low === '.') {
    if (next?.gap !== false && !is(s, i - 1, BIT.pointed)) flag(s, i, SENTENCE);
  } else if (isFullStop(low)) flag(s, i, SENTENCE);
  else if (low === ',') {
    flag(s, i, COMMA);
    // "no heat or swelling, | tender in the wrist": with "or" the list is done
    const done = [2, 3, 4].some((n) => is(s, i - n, BIT.or)) && !is(s, i + 1, BIT.or | BIT.join | BIT.denier);
    if (done && !listGoesOn(s, i + 1)) flag(s, i, DENIAL);
  } else if (low === ':') flag(s, i, COLON);
  else if ((low === '-' || low === '–' || low === '—') && gap && next?.gap) flag(s, i, DENIAL | COMMA);
}

const FLAG_OF = { contrast: CONTRAST, denial: DENIAL, now: NOW | DENIAL };

/** The borders of a note; `hits` are its phrases (`hitsOf`). */
export function bordersOf(tokens: readonly Token[], hits: readonly Hit[]): number[] {
  const s: Sight = {
    tokens,
    classes: tokens.map((t) => CLASS_OF.get(t.low) ?? 0),
    flags: new Array(tokens.length + 1).fill(0),
  };
  for (let i = 0; i < tokens.length; i++) {
    const { kind } = tokens[i] as Token;
    if (kind === 'mark') mark(s, i);
    else if (kind === 'number') {
      const next = lowAt(s, i + 1);
      if (next === 'below' || next === 'above' || next === 'degrees') flag(s, i, DENIAL);
    } else if (s.classes[i]) for (const rule of RULES) if (is(s, i, rule.of)) rule.set(s, i);
  }
  for (const { at, best, end, gap, gapEnd } of hits) {
    // "hasn't coughed since | lost a bootie"
    if (gap?.cue) flag(s, gapEnd, DENIAL);
    // "wasn't limping yesterday | is today"
    if (best?.cue?.gives === 'past' && is(s, end, BIT.finite)) flag(s, end, ACTION);
    if (best?.end) flag(s, best.end.after ? end : at, FLAG_OF[best.end.ends]);
    else if (best?.cue?.breaks) flag(s, at, DENIAL);
  }
  return s.flags;
}
