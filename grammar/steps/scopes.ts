/**
 * Step "scopes": which assertion the words around give to a finding, in the manner of ConText: cues with a direction,
 * joined to what stands in their reach. Cues and their words stand in `words/scopes.ts`, the borders of statements in
 * `scope-borders.ts`; here is how far each reach goes and which of several cues is followed.
 */
import type { Assertion } from '../entry.ts';
import type { CueGroup, Direction, Gives, Reach } from '../words/scopes.ts';
import {
  ACTION,
  bordersOf,
  COLON,
  COMMA,
  CONTRAST,
  DENIAL,
  NOW,
  SENTENCE,
  SUBJECT,
  TOLD,
  VERB,
} from './scope-borders.ts';
import { phraseAt } from './scope-table.ts';
import { type Token, tokenize } from './tokens.ts';

/** Words that give an assertion to what stands in their reach. */
export interface Cue {
  /** Token range, end exclusive. */
  from: number;
  to: number;
  /** `present`: says again that it is there ("and still is"); beats an earlier day. */
  gives: Gives;
  direction: Direction;
  name: string;
  reach: Reach;
  group: CueGroup;
  /** Has words between its own ("n't … anymore"), which it reaches too. */
  around: boolean;
}

/** The cues of a note in their order. Where two could be read at one place, the longer is. Linear in the note's length. */
export function cuesOf(tokens: Token[]): Cue[] {
  const cues: Cue[] = [];
  const add = (group: CueGroup, from: number, to: number, around: boolean) =>
    cues.push({
      from,
      to,
      gives: group.gives,
      direction: group.direction,
      name: group.name,
      reach: group.reach,
      group,
      around,
    });
  for (let i = 0; i < tokens.length; ) {
    const { best, end, gap, gapEnd } = phraseAt(tokens, i);
    if (gap?.cue) add(gap.cue, i, gapEnd, true);
    if (best?.cue) add(best.cue, i, end, false);
    i = Math.max(end, i + 1);
  }
  return cues;
}

/** No scope is longer than this, in tokens; keeps the work for a long note without marks in proportion. */
const WINDOW = 80;
/** A denial alone is shorter. */
const DENIAL_WINDOW = 24;

/** The borders at which each reach ends. */
const ENDS_OF: Record<Reach, number> = {
  word: 0,
  list: SENTENCE | CONTRAST | SUBJECT | DENIAL | ACTION | COLON,
  near: SENTENCE | CONTRAST | SUBJECT | ACTION | COMMA,
  statement: SENTENCE | CONTRAST | SUBJECT | COMMA,
  outlook: SENTENCE | CONTRAST | SUBJECT | NOW | ACTION,
  plan: SENTENCE | CONTRAST | TOLD | NOW | ACTION,
  heading: CONTRAST | TOLD | NOW | ACTION,
};

const borderCache = new WeakMap<Token[], Uint16Array>();
function borders(tokens: Token[]): Uint16Array {
  let flags = borderCache.get(tokens);
  if (!flags || flags.length !== tokens.length + 1) {
    flags = bordersOf(tokens);
    borderCache.set(tokens, flags);
  }
  return flags;
}

const LINKS = new Set(
  "and but n & + , - – — then so though now today it its that he she they this 's is was are were has had have".split(
    ' ',
  ),
);
const PRONOUNS = new Set('it its that thats he she they this those these'.split(' '));
const JOINS = new Set(['and', 'or', 'n', '&', '+']);
const INNER = new Set(['of', 'in', 'on', 'with', 'for', 'to', 'at', 'between', 'from']);

function orGoesOn(tokens: Token[], i: number): boolean {
  for (let j = i; j < Math.min(tokens.length, i + 7); j++) {
    const low = (tokens[j] as Token).low;
    if (low === 'or' || low === 'maybe') return true;
    if (low === '.' || low === ';') return false;
  }
  return false;
}

/** Is the way from the cue on to the target free? */
function reachesForward(
  tokens: Token[],
  flags: Uint16Array,
  cue: Cue,
  from: number,
  to: number,
  stops: ReadonlySet<number>,
): boolean {
  if (from - cue.to > (cue.gives === 'absent' ? DENIAL_WINDOW : WINDOW)) return false;
  const ends = ENDS_OF[cue.reach];
  const plan = cue.reach === 'plan' || cue.reach === 'heading';
  const last = (tokens[cue.to - 1] as Token).low;
  const through = cue.group.clause === true || INNER.has(last);
  let sentences = 0;
  for (let b = cue.to; b <= from; b++) {
    const f = flags[b] as number;
    if (stops.has(b) && !(b === cue.to && through) && !plan && cue.reach !== 'outlook') return false;
    if (f & SENTENCE) {
      if (cue.reach !== 'heading') return false;
      sentences++;
      continue;
    }
    let hit = f & ends;
    if (!hit) continue;
    if (b === cue.to) {
      hit &= ~(DENIAL | ACTION | COMMA);
      if (cue.reach === 'heading' || cue.reach === 'outlook') hit &= ~COLON;
      if (through || cue.gives === 'past' || plan) hit &= ~(SUBJECT | TOLD);
    }
    // A comma right after "on Sunday" parts nothing; one in "the wrist, or maybe the elbow" goes on.
    if (hit & COMMA && orGoesOn(tokens, b)) hit &= ~COMMA;
    // "if he's sore and she's lame": both hang on it.
    if (hit & TOLD && cue.group.condition && JOINS.has(tokens[b - 1]?.low ?? '')) hit &= ~TOLD;
    if (hit) return false;
  }
  if (sentences > 0) {
    // Over a full stop a heading goes only to sentences that tell nothing of their own.
    for (let b = to; b < tokens.length && b < to + WINDOW; b++) {
      const f = flags[b] as number;
      if (f & SENTENCE) break;
      if (f & (VERB | NOW | TOLD)) return false;
    }
    for (let b = from; b > cue.to; b--) {
      const f = flags[b] as number;
      if (f & (VERB | NOW | TOLD)) return false;
    }
  }
  return true;
}

/** Is the way from the target on to a cue behind it free? */
function reachesBackward(
  tokens: Token[],
  flags: Uint16Array,
  cue: Cue,
  to: number,
  stops: ReadonlySet<number>,
): boolean {
  let start = cue.from;
  if (start - to > WINDOW) return false;
  if (cue.group.anaphoric || cue.gives === 'resolved') {
    // Without a subject of its own it speaks of what was said just before: over ", but it".
    let j = start;
    let pronoun = PRONOUNS.has((tokens[j] as Token).low);
    while (j > to && LINKS.has((tokens[j - 1] as Token).low)) {
      pronoun ||= PRONOUNS.has((tokens[j - 1] as Token).low);
      j--;
    }
    if (j > to && pronoun && (flags[j - 1] as number) & SENTENCE) j--;
    start = j;
  }
  const ends = ENDS_OF.statement | (cue.gives === 'past' || cue.gives === 'planned' ? NOW : 0);
  for (let b = to; b < start; b++) {
    if (stops.has(b)) return false;
    if ((flags[b] as number) & ends) return false;
  }
  return true;
}

/** Does a word of time stand at the head of its statement, so that it speaks of what follows? */
function leads(tokens: Token[], flags: Uint16Array, cue: Cue): boolean {
  let b = cue.from;
  while (
    b > 0 &&
    ['on', 'and', 'for', 'then', 'okay', 'ok', 'so', 'but', 'plan', 'from'].includes((tokens[b - 1] as Token).low)
  )
    b--;
  if (b === 0) return true;
  const before = tokens[b - 1] as Token;
  return before.kind === 'mark' || ((flags[b] as number) & (SENTENCE | CONTRAST)) !== 0;
}

function reaches(
  tokens: Token[],
  flags: Uint16Array,
  cue: Cue,
  from: number,
  to: number,
  stops: ReadonlySet<number>,
): boolean {
  if (cue.reach === 'word') return cue.from < from && from < cue.to;
  if (cue.from < to && from < cue.to) {
    // The target holds the cue ("won't settle"): it is part of what was found. The cue holds the target, or begins before it ("can | stay | home").
    return cue.from < from && (cue.around || cue.direction === 'forward');
  }
  const timed = cue.direction === 'both' && (cue.gives === 'past' || cue.gives === 'planned');
  if (cue.to <= from) {
    if (cue.direction === 'backward' || cue.around) return false;
    if (timed && !leads(tokens, flags, cue)) return false;
    return reachesForward(tokens, flags, cue, from, to, stops);
  }
  if (cue.direction === 'forward') return false;
  return reachesBackward(tokens, flags, cue, to, stops);
}

/**
 * Which of several cues is followed: what hangs on an *if* first; then what is gone, what is still there, what is not,
 * what is to be, what may be; a bare "tomorrow" and an earlier day last, since they say when, not whether.
 */
function rank(cue: Cue): number {
  if (cue.group.condition) return 0;
  if (cue.gives === 'resolved') return 1;
  if (cue.gives === 'present') return 2;
  if (cue.gives === 'absent') return 3;
  if (cue.gives === 'planned') return cue.reach === 'heading' ? 6 : 4;
  if (cue.gives === 'possible') return 5;
  return 7;
}

const NO_STOPS: ReadonlySet<number> = new Set();

/**
 * The assertion that the words around give to the tokens [from, to). `stops` are token indexes where a scope ends
 * besides the words the table knows: a new dog's name, a border of clauses that the caller knows. Plans and forecasts
 * run on over stops ("I'm going to have Fern and Oak in lead") and end where something is told.
 */
export function assertionOf(
  tokens: Token[],
  cues: Cue[],
  from: number,
  to: number,
  stops?: readonly number[],
): { assertion: Assertion; cue?: Cue } {
  if (cues.length === 0) return { assertion: 'present' };
  const flags = borders(tokens);
  const set = stops && stops.length > 0 ? new Set(stops) : NO_STOPS;
  let best: Cue | undefined;
  let bestRank = 99;
  for (let c = firstIn(cues, from - WINDOW); c < cues.length; c++) {
    const cue = cues[c] as Cue;
    if (cue.from > to + WINDOW) break;
    const r = rank(cue);
    if (r < bestRank && reaches(tokens, flags, cue, from, to, set)) {
      best = cue;
      bestRank = r;
    }
  }
  return best ? { assertion: best.gives, cue: best } : { assertion: 'present' };
}

/** Index of the first cue that begins at `from` or later. */
function firstIn(cues: readonly Cue[], from: number): number {
  let lo = 0;
  let hi = cues.length;
  while (lo < hi) {
    const mid = (lo + hi) >> 1;
    if ((cues[mid] as Cue).from < from) lo = mid + 1;
    else hi = mid;
  }
  return lo;
}

/** The assertion that the words around give to `text.slice(span[0], span[1])`. The span is in UTF-16 units and need not be in the lexicon. */
export function assertionAt(text: string, span: [number, number]): Assertion {
  const tokens = tokenize(text);
  let from = 0;
  while (from < tokens.length && (tokens[from] as Token).end <= span[0]) from++;
  let to = from;
  while (to < tokens.length && (tokens[to] as Token).start < span[1]) to++;
  return assertionOf(tokens, cuesOf(tokens), from, Math.max(to, from)).assertion;
}
