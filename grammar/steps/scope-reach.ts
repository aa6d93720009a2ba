/**
 * How far each cue's scope reaches: over which borders it goes on to a target before or behind it. A way is walked from
 * the cue to the target and is free, or ends at the first border that this reach does not pass.
 */
import { PAST_TENSE } from '../words/scope-ends.ts';
import type { CueGroup, Direction, Gives, Reach } from '../words/scopes.ts';
import { ACTION, COLON, COMMA, CONTRAST, DENIAL, NOW, SENTENCE, SUBJECT, TOLD, VERB } from './scope-borders.ts';
import { lowAt as lowOf, type Token } from './tokens.ts';

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

/** What a scope is worked out from: the note's tokens, their borders, and where the caller says that scopes end. */
export interface Ground {
  tokens: readonly Token[];
  flags: readonly number[];
  stops: ReadonlySet<number>;
}

/** No scope is longer than this, in tokens; keeps the work for a long note without marks in proportion. */
export const WINDOW = 80;
/** A denial alone is shorter. */
const DENIAL_WINDOW = 24;

/** The borders at which each reach ends. */
const ENDS_OF: Record<Reach, number> = {
  word: 0,
  list: SENTENCE | CONTRAST | SUBJECT | DENIAL | ACTION | COLON,
  near: SENTENCE | CONTRAST | SUBJECT | ACTION | COMMA | COLON,
  statement: SENTENCE | CONTRAST | SUBJECT | COMMA,
  outlook: SENTENCE | CONTRAST | SUBJECT | NOW | ACTION,
  plan: SENTENCE | CONTRAST | TOLD | NOW | ACTION,
  heading: CONTRAST | TOLD | NOW | ACTION,
};

const set = (words: string) => new Set(words.split(' '));
/** What may stand between a statement and the words that take it up again: ", but now it". */
const LINKS = set(
  "and but n & + , - – — then so though now today it its that he she they this 's is was are were has have had all",
);
const PRONOUNS = set('it its that he she they this those these');
const LIST_JOINS = set('and or n & + , /');
const JOINS = set('and or n & +');
/** A cue that ends so takes the name after it: "nothing wrong with | Fern's feet". */
const TAKES_NAME = set('of in on with for to at between from');
/** Before "tomorrow" at the head of what is planned. */
const BEFORE_HEAD = set('on and for then okay ok so but plan from well');
/** After a name in a list of places: "have Fern | and Oak | in lead". */
const LISTED = set(
  "and n & + , / alone single solo by himself herself in at to up with home lead swing team wheel point goes runs rides starts takes stay stays rest rests gets can will 'll tomorrow",
);

const lowAt = (g: Ground, i: number) => lowOf(g.tokens, i);

/** Does "or" go on with the list soon after `i`? */
function orGoesOn(g: Ground, i: number): boolean {
  if (lowAt(g, i + 1) === 'any') return true;
  for (let j = i; j < i + 7; j++) {
    const low = lowAt(g, j);
    if (low === 'or' || low === 'nor' || low === 'maybe') return true;
    if ((g.flags[j] ?? SENTENCE) & SENTENCE) return false;
  }
  return false;
}

const PAST_WORD = /^(was|were|had|did|got|went|came|ran|ate|drank|took|yesterday|today|now)$/;

/**
 * "Plan for tomorrow.", "Tomorrow's heat:": a heading that is a sentence or a line of its own speaks of all that follows,
 * until something is told of today or of what has been.
 */
function standsAlone(g: Ground, cue: Cue): boolean {
  let a = cue.from;
  while (a > 0 && !((g.flags[a - 1] as number) & SENTENCE)) a--;
  let z = cue.to;
  while (z < g.tokens.length && z < cue.to + 4 && !((g.flags[z] as number) & (SENTENCE | COLON))) z++;
  // "plan for tomorrow switch and echo lead …" without marks
  if (
    cue.from <= 3 &&
    !g.tokens.some((t) => t.kind === 'mark' && t.end > t.start && /^[.,;:]$/.test(t.low)) &&
    /^(plan|plans)$/.test(lowAt(g, a))
  )
    return true;
  if (cue.from - a > 4 || z >= g.tokens.length || !((g.flags[z] as number) & (SENTENCE | COLON))) return false;
  for (let k = a; k < z; k++) if (g.stops.has(k) || (g.flags[k] as number) & (VERB | SUBJECT | TOLD)) return false;
  return true;
}

/** Nothing of today or of the past is told between a heading of its own and the target's sentence. */
function plannedUnder(g: Ground, cue: Cue, from: number, to: number): boolean {
  if (from - cue.to > 160) return false;
  let z = to;
  while (z < g.tokens.length && !((g.flags[z] as number) & SENTENCE)) z++;
  for (let k = cue.to; k < z; k++) if (PAST_WORD.test(lowAt(g, k))) return false;
  return true;
}

/** Does a sentence hold a verb of what is to come: "I'm booting", "we'll", "is going to"? */
function planned(g: Ground, from: number, to: number): boolean {
  for (let k = from; k < to; k++)
    if (
      /^(will|'ll|gonna|shall)$/.test(lowAt(g, k)) ||
      (/^('m|'s|'re|is|are|am)$/.test(lowAt(g, k)) && lowAt(g, k + 1).endsWith('ing'))
    )
      return true;
  return false;
}

const FORECASTS = /^(forecasting|calling|predicting|promising|expecting|saying)$/;

/** Over a full stop a heading goes only to sentences that tell nothing of their own. */
function tellsNothing(g: Ground, cue: Cue, from: number, to: number): boolean {
  const told = VERB | NOW | TOLD;
  for (let b = to; b < g.tokens.length && b < to + WINDOW; b++) {
    const f = g.flags[b] as number;
    if (f & (SENTENCE | CONTRAST)) break;
    // "just six miles, and they're forecasting snow": a forecast tells nothing that has been
    if (FORECASTS.test(lowAt(g, b + 1)) || FORECASTS.test(lowAt(g, b + 2))) break;
    if (f & told) return false;
  }
  // "Tomorrow I'm booting both leaders. And Gravy starts in wheel": its own sentence may plan in its own way
  let z = cue.to;
  while (z < from && !((g.flags[z] as number) & SENTENCE)) z++;
  let w = z;
  while (w < from && g.tokens[w]?.kind === 'mark') w++;
  const goesOn = /^(and|then|also)$/.test(lowAt(g, w)) && planned(g, cue.to, z);
  for (let b = from; b > (goesOn ? z : cue.to); b--) if ((g.flags[b] as number) & told) return false;
  return true;
}

function verbBetween(g: Ground, from: number, to: number): boolean {
  for (let b = from; b < to; b++) if ((g.flags[b] as number) & (VERB | COMMA)) return true;
  return false;
}

/** Is the way from the cue on to the target [from, to) free? */
function reachesForward(g: Ground, cue: Cue, from: number, to: number): boolean {
  if (cue.reach === 'heading' && standsAlone(g, cue) && plannedUnder(g, cue, from, to)) return true;
  if (from - cue.to > (cue.gives === 'absent' ? DENIAL_WINDOW : WINDOW)) return false;
  const ends = ENDS_OF[cue.reach] | (cue.gives === 'absent' ? DENIAL : cue.gives === 'past' ? NOW : 0);
  const plan = cue.reach === 'plan' || cue.reach === 'heading';
  const lists = plan || cue.reach === 'outlook';
  const through = plan || cue.group.clause !== undefined || TAKES_NAME.has(lowAt(g, cue.to - 1));
  let sentences = 0;
  let head = cue.to;
  while (head < from && /^(also|just|even|only|still|really|now)$/.test(lowAt(g, head))) head++;
  for (let b = cue.to; b <= from; b++) {
    const f = g.flags[b] as number;
    const itWas =
      cue.gives === 'past' && b === cue.to + 2 && lowAt(g, b - 2) === 'it' && /^(was|'s)$/.test(lowAt(g, b - 1));
    if (g.stops.has(b) && !(b === cue.to && through) && !itWas) {
      // A plan runs on over the names that it places, not over a name of which something new is told.
      if (
        !(
          lists &&
          (LISTED.has(lowAt(g, b + 1)) || LIST_JOINS.has(lowAt(g, b - 1)) || g.stops.has(b + 1) || willGet(g, cue, b))
        )
      )
        return false;
    }
    if (f & SENTENCE) {
      if (cue.reach !== 'heading') return false;
      sentences++;
      continue;
    }
    let hit = f & ends;
    if (!hit) continue;
    if (b === cue.to || (b === head && through)) {
      hit &= ~(DENIAL | ACTION | COMMA);
      if (lists) hit &= ~COLON;
      if (through || cue.gives === 'past') hit &= ~(SUBJECT | TOLD);
    }
    // "I think | Fern | pulled a muscle": its first verb belongs to what is thought.
    if (hit & ACTION && cue.group.clause === 'full' && !(f & COMMA) && !verbBetween(g, cue.to, b)) hit &= ~ACTION;
    // "Tomorrow the school, so a quiet team": what follows from the plan is planned.
    if (hit & CONTRAST && plan && lowAt(g, b) === 'so') hit &= ~CONTRAST;
    // "the wrist, or maybe the elbow" goes on over its comma.
    if (hit & COMMA && orGoesOn(g, b)) hit &= ~COMMA;
    // "if he's sore and she's lame": both hang on it.
    if (hit & TOLD && cue.group.condition && JOINS.has(lowAt(g, b - 1))) hit &= ~TOLD;
    if (hit) return false;
  }
  return sentences === 0 || tellsNothing(g, cue, from, to);
}

/** "if it's icy | all four get booties", "both wheelers stay home": what so many do hangs on the condition. */
function willGet(g: Ground, cue: Cue, b: number): boolean {
  if (!cue.group.condition || !/^(all|both|the|those|these)$/.test(lowAt(g, b))) return false;
  let k = b + 1;
  while (/^(two|three|four|five|six|seven|eight|nine|ten|of|them|the|dogs|leaders|wheelers)$/.test(lowAt(g, k))) k++;
  return /^(get|go|stay|need|wear|ride|run|rest|start|have|will|can)$/.test(lowAt(g, k));
}

/** Where the words begin that take up what was said before: a cue without a subject of its own goes back over ", but it". */
function takenUpFrom(g: Ground, cue: Cue, to: number): number {
  let j = cue.from;
  let pronoun = PRONOUNS.has(lowAt(g, j));
  while (j > to && LINKS.has(lowAt(g, j - 1))) {
    j--;
    pronoun ||= PRONOUNS.has(lowAt(g, j));
  }
  // ". Gone by Monday" has no subject: it goes on with what was said
  const clipped = j === cue.from && cue.gives === 'resolved' && cue.direction === 'backward';
  if (j > to && (pronoun || clipped) && (g.flags[j - 1] as number) & SENTENCE) j--;
  if (j > to && (g.flags[j - 1] as number) & COLON) j--;
  return j;
}

/** "tail tip frostbitten, Jan.": a date alone between a comma and the end. */
const dateBehind = (g: Ground, cue: Cue) =>
  lowAt(g, cue.from - 1) === ',' &&
  lowAt(g, cue.from) !== 'in' &&
  (cue.to >= g.tokens.length || ((g.flags[cue.to] as number) & SENTENCE) !== 0);

/** Is the way from a target that ends at `to` on to a cue behind it free? */
function reachesBackward(g: Ground, cue: Cue, to: number): boolean {
  if (cue.from - to > WINDOW) return false;
  const start =
    cue.group.anaphoric || cue.gives === 'resolved'
      ? takenUpFrom(g, cue, to)
      : cue.gives === 'past' && dateBehind(g, cue)
        ? cue.from - 1
        : cue.from;
  const ends = ENDS_OF.statement | COLON | (cue.gives === 'past' || cue.gives === 'planned' ? NOW : 0);
  for (let b = to; b < start; b++) {
    if (g.stops.has(b) || (g.flags[b] as number) & ends) return false;
  }
  return true;
}

/** Does a word of time stand at the head of its statement, so that it speaks of what follows? */
function leads(g: Ground, cue: Cue): boolean {
  // "… born to it next time Noodle and Bex go in lead": a subject right behind
  if (
    cue.gives === 'planned' &&
    g.stops.has(cue.to) &&
    !/^(until|till|for|by|since|than|before|the)$/.test(lowAt(g, cue.from - 1))
  )
    return true;
  let b = cue.from;
  while (b > 0 && BEFORE_HEAD.has(lowAt(g, b - 1))) b--;
  return b === 0 || g.tokens[b - 1]?.kind === 'mark' || ((g.flags[b] as number) & (SENTENCE | CONTRAST)) !== 0;
}

/** Is the target told of in the past tense, or on an earlier day? Looked for from its sentence's start on to the cue. */
function toldInPast(g: Ground, cue: Cue, from: number, pastCues: (from: number, to: number) => boolean): boolean {
  let b = from;
  while (b > 0 && from - b < 15 && !((g.flags[b - 1] as number) & SENTENCE)) b--;
  for (let j = b; j < cue.from; j++) {
    const low = lowAt(g, j);
    if (PAST_TENSE.has(low) || (j >= from && low.length > 4 && low.endsWith('ed'))) return true;
  }
  return pastCues(b, cue.from);
}

const PAST_VERB = /^(had|was|were|got|went)$/;

/** Does a second verb of the past begin at `b`, with the subject left out: "was lame | and had the runs"? */
function verbJoined(g: Ground, b: number): boolean {
  let k = b - 1;
  while (/^(also|then|even)$/.test(lowAt(g, k))) k--;
  return PAST_VERB.test(lowAt(g, b)) && JOINS.has(lowAt(g, k)) && !g.stops.has(b);
}

/** "was lame last week | and had a sore shoulder too": the second verb is of the same time, unless another is told. */
function goesOnPast(g: Ground, cue: Cue, from: number, pastCues: (from: number, to: number) => boolean): boolean {
  let b = cue.to;
  if (!JOINS.has(lowAt(g, b))) return false;
  b++;
  while (/^(also|then|even)$/.test(lowAt(g, b))) b++;
  if (!verbJoined(g, b) || b >= from) return false;
  let z = b + 1;
  for (; z < g.tokens.length && z < b + 16 && !((g.flags[z] as number) & SENTENCE); z++) {
    if (z <= from && (g.stops.has(z) || (g.flags[z] as number) & (CONTRAST | SUBJECT | COMMA))) return false;
    if ((g.flags[z] as number) & NOW || /^(today|tonight|morning|now|still)$/.test(lowAt(g, z))) return false;
  }
  return !pastCues(cue.to, z);
}

/** Does the cue's scope hold the target [from, to)? `pastCues`: does a cue of an earlier day stand in a range? */
export function reaches(
  g: Ground,
  cue: Cue,
  from: number,
  to: number,
  pastCues: (from: number, to: number) => boolean,
): boolean {
  if (cue.reach === 'word') return cue.from < from && from < cue.to;
  // The target holds the cue ("won't settle"): then it is part of what was found. Where the cue sticks out, or the
  // target stands between its words, it counts ("can | stay home", "n't | limping | anymore").
  if (cue.from < to && from < cue.to) return cue.direction === 'backward' ? cue.to > to : cue.from < from;
  const timed = cue.direction === 'both' && (cue.gives === 'past' || cue.gives === 'planned');
  if (cue.to <= from) {
    if (cue.direction === 'backward' || cue.around) return false;
    if (timed && !leads(g, cue)) return cue.gives === 'past' && goesOnPast(g, cue, from, pastCues);
    return reachesForward(g, cue, from, to);
  }
  if (cue.direction === 'forward') return false;
  if (cue.group.afterPast && !toldInPast(g, cue, from, pastCues)) return false;
  return reachesBackward(g, cue, to);
}
