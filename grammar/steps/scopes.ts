/**
 * Step "scopes": which assertion the words around give to a finding, in the manner of ConText: cues with a direction,
 * joined to what stands in their reach. In order:
 *
 * 1. the cues of the note (`cuesOf`): the longest phrase of `words/scopes.ts` at each place, after the phrases that only
 *    look like cues, so that "no change" does not deny;
 * 2. the borders of its statements (`scope-borders.ts`), once for a note;
 * 3. for a target, the cues whose reach holds it (`scope-reach.ts`), and of these the one that counts most (`rank`).
 */
import type { Assertion, Span } from '../entry.ts';
import type { CueGroup } from '../words/scopes.ts';
import { bordersOf } from './scope-borders.ts';
import { type Cue, type Ground, reaches, WINDOW } from './scope-reach.ts';
import { type Hit, hitsOf } from './scope-table.ts';
import { type Token, tokenize } from './tokens.ts';

export type { Cue };

/** What is worked out once for a note: its phrases, and its borders. Kept until the next note is read. */
interface Reading {
  tokens: readonly Token[];
  length: number;
  hits: Hit[];
  flags?: readonly number[];
}
let current: Reading | undefined;
function readingOf(tokens: readonly Token[]): Reading {
  if (current?.tokens !== tokens || current.length !== tokens.length)
    current = { tokens, length: tokens.length, hits: hitsOf(tokens) };
  return current;
}
function bordersIn(tokens: readonly Token[]): readonly number[] {
  const reading = readingOf(tokens);
  reading.flags ??= bordersOf(tokens, reading.hits);
  return reading.flags;
}

/** The cues of a note in their order. Where two could be read at one place, the longer is. Linear in the note's length. */
export function cuesOf(tokens: Token[]): Cue[] {
  const cues: Cue[] = [];
  const add = (group: CueGroup, from: number, to: number, around: boolean) => {
    const { gives, direction, name, reach } = group;
    cues.push({ from, to, gives, direction, name, reach, group, around });
  };
  for (const { at, best, end, gap, gapEnd } of readingOf(tokens).hits) {
    if (gap?.cue) add(gap.cue, at, gapEnd, true);
    // A phrase with a gap that is no cue ("no left front sorry") covers the cue in it.
    if (best?.cue && (!gap || gap.cue)) add(best.cue, at, end, false);
  }
  return cues;
}

const NO_STOPS: ReadonlySet<number> = new Set();
let lastStops: { list: readonly number[]; length: number; set: ReadonlySet<number> } | undefined;
/** A caller gives the same stops for every target of a note: they are made a set once. */
function setOf(stops: readonly number[] | undefined): ReadonlySet<number> {
  if (!stops || stops.length === 0) return NO_STOPS;
  if (lastStops?.list !== stops || lastStops.length !== stops.length)
    lastStops = { list: stops, length: stops.length, set: new Set(stops) };
  return lastStops.set;
}

/**
 * Which of several cues is followed: what hangs on an *if* first, and what is forecast ("snow tonight, it's clear now");
 * then what is gone, what is not, what is to be, what may be; a bare "tomorrow" and an earlier day last, since they say
 * when, not whether. "And still is" outweighs the earlier day alone.
 */
function rank(cue: Cue): number {
  if (cue.group.condition) return 0;
  switch (cue.gives) {
    case 'resolved':
      return 1;
    case 'present':
      return 7;
    case 'absent':
      return 3;
    case 'planned':
      return cue.reach === 'heading' ? 6 : 4;
    case 'possible':
      if (cue.reach === 'outlook') return 0.5;
      return cue.group.hedges ? 2.5 : 5;
    case 'past':
      return 8;
  }
}

/** "no longer red, swelling still there": said again right behind a target with a comma before it, it is there, whatever came before the comma. */
function restates(tokens: readonly Token[], cue: Cue, from: number, to: number): boolean {
  if (cue.gives !== 'present' || cue.from < to || cue.from - to > 1) return false;
  if (!tokens.slice(cue.from, cue.to).some((t) => t.low === 'still')) return false;
  for (let k = from - 1; k >= 0 && from - k <= 4; k--) {
    const low = tokens[k]?.low ?? '';
    if (low === ',') return true;
    if (low === 'no' || low === 'not' || low === "n't" || low === 'or') return false;
  }
  return false;
}

/** Index of the first cue that begins at token `from` or later. */
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

/**
 * The assertion that the words around give to the tokens [from, to), and the cue that gave it. `stops` are token
 * indexes where a scope ends besides the words the table knows: a new dog's name, a border of clauses that the caller
 * knows. A plan or a forecast runs on over a stop that goes on with its list ("I'm going to have Fern and Oak in lead").
 * The cost depends on the words near the target, not on the note's length.
 */
export function assertionOf(
  tokens: Token[],
  cues: Cue[],
  from: number,
  to: number,
  stops?: readonly number[],
): { assertion: Assertion; cue?: Cue } {
  if (cues.length === 0) return { assertion: 'present' };
  const ground: Ground = {
    tokens,
    flags: bordersIn(tokens),
    stops: setOf(stops),
  };
  const pastCues = (a: number, b: number) => {
    for (let c = firstIn(cues, a); c < cues.length && (cues[c] as Cue).from < b; c++)
      if ((cues[c] as Cue).gives === 'past') return true;
    return false;
  };
  let best: Cue | undefined;
  let bestRank = Number.POSITIVE_INFINITY;
  for (let c = firstIn(cues, from - 2 * WINDOW); c < cues.length; c++) {
    const cue = cues[c] as Cue;
    if (cue.from > to + WINDOW) break;
    const r = restates(tokens, cue, from, to) ? 0.9 : rank(cue);
    if (r < bestRank && reaches(ground, cue, from, to, pastCues)) {
      best = cue;
      bestRank = r;
    }
  }
  return best ? { assertion: best.gives, cue: best } : { assertion: 'present' };
}

/**
 * The assertion that the words around give to `text.slice(span[0], span[1])`. The span is in UTF-16 units; its words
 * need not be in the lexicon. A span that holds no word is `present`.
 */
export function assertionAt(text: string, span: Span): Assertion {
  const tokens = tokenize(text);
  let from = 0;
  while (from < tokens.length && (tokens[from] as Token).end <= span[0]) from++;
  let to = from;
  while (to < tokens.length && (tokens[to] as Token).start < span[1]) to++;
  return to > from ? assertionOf(tokens, cuesOf(tokens), from, to).assertion : 'present';
}
