/**
 * The cues of a note that hold: a day that is today or still to come is no past, "maybe twenty" is about twenty, "sat" is no
 * Saturday, and a dog called Will plans nothing.
 */

import { DAY_TO_COME, THEN } from '../words/scope-times.ts';
import type { DogPhrase } from './dogs.ts';
import type { Mentions } from './mentions.ts';
import type { Quantity } from './quantities.ts';
import { type Cue, cuesOf } from './scopes.ts';
import { lowAt, type Token } from './tokens.ts';

interface View {
  tokens: Token[];
  m: Mentions;
  dogs: DogPhrase[];
  quantities: Quantity[];
}

const DAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];

/** Does the cue name the day that it is ("Saturday scale round", said on a Saturday), and not the last one of that name? */
function namesDay(v: View, c: Cue, day: string): boolean {
  const words = v.tokens.slice(c.from, c.to).map((t) => t.low);
  return (
    words.some((w) => w.startsWith(day) && w !== 'sunny' && w !== 'monthly') &&
    !words.some((w) => /^(last|past|ago|since)$/.test(w))
  );
}

/** Does a clipped day stand behind what was found: "web split Sat.", "(sore, Sat)"? */
function dates(v: View, i: number): boolean {
  return Boolean(v.m.at('sign', i - 1) ?? v.m.at('part', i - 1)) || /^[,(]$/.test(lowAt(v.tokens, i - 1));
}

/** "Sunday I'll run five": a day with a will behind it is to come. */
function toCome(v: View, c: Cue): boolean {
  if (
    !v.tokens
      .slice(c.from, c.to)
      .some((t) => DAYS.some((d) => t.low === d || (t.low.startsWith(d) && t.low.endsWith('day'))))
  )
    return false;
  for (let k = c.to; k < c.to + 4; k++) {
    if (
      /^(do|run|go|leave|start|have|try|head|take|rest|hook)$/.test(lowAt(v.tokens, k)) &&
      /^(we|i|they|you)$/.test(lowAt(v.tokens, k - 1))
    )
      return true;
    if (
      /^('ll|will|gonna|shall|'d)$/.test(lowAt(v.tokens, k)) ||
      (lowAt(v.tokens, k) === 'going' && lowAt(v.tokens, k + 1) === 'to')
    )
      return true;
    if (/^[.,;]$/.test(lowAt(v.tokens, k)) && k > c.to) return false;
  }
  return false;
}

/** "Sam's taking the pups Saturday", "Ivy stays home on Friday": what is told before the day is not over. */
function underWay(v: View, c: Cue): boolean {
  if (c.gives !== 'past' || !namesADay(v, c)) return false;
  for (let k = c.from - 1; k >= 0 && c.from - k < 9; k--) {
    const low = lowAt(v.tokens, k);
    if (/^[.,;:!?]$/.test(low) || /^(was|were|had|did)$/.test(low) || /^[a-z]{3,}ed$/.test(low)) return false;
    if (/^(stays?|rests?)$/.test(low) && /^(home|in|behind|here|on|this)$/.test(lowAt(v.tokens, k + 1))) return true;
    if (!/^(taking|running|driving|leaving|heading|racing|staying|resting)$/.test(low)) continue;
    const manner = v.m.from('manner', k);
    return /^('s|is|are|'re|am|'m)$/.test(lowAt(v.tokens, k - 1)) && !(manner && manner.to > k + 1);
  }
  return false;
}

/** Does the cue hold the name of a day, and no word for the last one? */
function namesADay(v: View, c: Cue): boolean {
  const words = v.tokens.slice(c.from, c.to).map((t) => t.low);
  return (
    words.some((w) => DAYS.some((d) => w === d || (w.startsWith(d) && w.endsWith('day')))) &&
    !words.some((w) => /^(last|past|ago|since|that|same)$/.test(w))
  );
}

/** Is the statement that ends at `i` told in the past tense? */
function toldOf(v: View, i: number): boolean {
  for (let k = i - 1; k >= 0 && i - k < 10 && !/^[.,;!]$/.test(lowAt(v.tokens, k)); k--) {
    const low = lowAt(v.tokens, k);
    if (/^(was|were|had|did|got)$/.test(low) || (low.length > 4 && low.endsWith('ed') && v.m.at('sign', k)))
      return true;
    if (/^(will|'ll|can|may|might|is|'s|are|'re)$/.test(low)) return false;
  }
  return false;
}

/** "lame in December and had a swollen wrist then": of the day that was told before. */
function thenOf(v: View, cues: readonly Cue[]): Cue[] {
  return v.tokens
    .filter(
      (t) =>
        t.low === 'then' &&
        /^([.,;!]|also|and|but|too|)$/.test(lowAt(v.tokens, t.i + 1)) &&
        !/^(and|but|since|by|until|till|from|even|[.,;!:]|)$/.test(lowAt(v.tokens, t.i - 1)) &&
        toldOf(v, t.i) &&
        cues.some((c) => c.gives === 'past' && c.to <= t.i && t.i - c.to < 20),
    )
    .map(({ i }) => {
      const { gives, direction, name, reach } = THEN;
      return { from: i, to: i + 1, gives, direction, name, reach, group: THEN, around: false };
    });
}

/** The cue of a day, as one to come. */
function toDo(c: Cue): Cue {
  const { gives, direction, name, reach } = DAY_TO_COME;
  return { from: c.from, to: c.to, gives, direction, name, reach, group: DAY_TO_COME, around: false };
}

/** The cues of the note. `at`: when it was spoken, as ISO 8601. */
export function cuesOfNote(v: View, at: string | undefined): Cue[] {
  const date = /^\d{4}-\d\d-\d\d/.exec(at ?? '')?.[0];
  const today = date && DAYS[new Date(`${date}T00:00:00Z`).getUTCDay()];
  const cues = cuesOf(v.tokens);
  return (
    [...cues, ...thenOf(v, cues)]
      .sort((a, b) => a.from - b.from)
      .map((c) => (underWay(v, c) ? toDo(c) : c))
      .filter((c) => !(c.gives === 'past' && ((today !== undefined && namesDay(v, c, today)) || toCome(v, c))))
      // A word of doubt right before a number says nothing of anything else.
      .filter(
        (c) => !(c.gives === 'possible' && c.to - c.from === 1 && v.quantities.some((q) => q.from === c.to && !q.weak)),
      )
      // "thirty miles to the next checkpoint" is no plan
      .filter(
        (c) =>
          !(
            c.gives === 'planned' &&
            lowAt(v.tokens, c.from) === 'next' &&
            lowAt(v.tokens, c.from - 1) === 'the' &&
            lowAt(v.tokens, c.from - 2) === 'to'
          ),
      )
      // "taking the team Thursday": the day is the plan's
      .filter(
        (c, _, all) =>
          !(c.gives === 'past' && all.some((p) => p.gives === 'planned' && p.from < c.from && c.to <= p.to)),
      )
      // "limped then sat" is no Saturday
      .filter(
        (c) => !(c.gives === 'past' && c.to - c.from === 1 && lowAt(v.tokens, c.from) === 'sat') || dates(v, c.from),
      )
      .filter((c) => !v.dogs.some((d) => d.kind === 'names' && d.from <= c.from && c.to <= d.to))
  );
}
