/** Is a team told for a day to come, over the sentences: "Saturday we do sixty. Fern and Moss in lead. Tansy stays home."? */
import type { Frame } from '../steps/frame.ts';

/** Told of today, or of what has been: the plan is over. */
const NOT_PLANNED =
  /^(was|were|had|did|got|went|came|ran|ate|drank|took|yesterday|today|now|tonight|left|stayed|moved|lost|pulled|started|hooked|currently)$/;
/** Verbs of taking a team out: "we'll be running evenings", "I'll hook four". */
const OUT = /^(run|running|hook|hooking|do|doing|go|going|take|taking|have|race|racing|drive|driving|leave|leaving)$/;

/** "in left lead", "wheel on the left": a side, and nobody who left. */
const sideOf = (f: Frame, k: number): boolean =>
  f.low(k) === 'left' &&
  (f.m.at('position', k + 1) !== undefined ||
    f.m.at('position', k - 1) !== undefined ||
    /^(the|on|in)$/.test(f.low(k - 1)) ||
    f.low(k + 1) === 'side');

/** "In April we'll be running evenings": the will of a day, not of a leash. */
function ofADay(f: Frame, from: number, to: number): boolean {
  const verb = f.low(to) === 'be' ? to + 1 : to;
  return /^(we|i|she|he|they)$/.test(f.low(from - 1)) && OUT.test(f.low(verb));
}

/**
 * Does a plan told before hold at token `i`? From a day to come or a run that will be, until a sentence
 * speaks of today or of what has been.
 */
export function underPlan(f: Frame, i: number): boolean {
  for (const c of f.cues) {
    if (c.from >= i) return false;
    if (c.gives !== 'planned' || c.group.condition || i - c.to > 120) continue;
    if (c.reach !== 'heading' && !ofADay(f, c.from, c.to)) continue;
    let start = c.from;
    while (start > 0 && c.from - start < 8 && !f.isStrong(start - 1)) start--;
    let end = i;
    while (end < f.tokens.length && end < i + 8 && !f.isStrong(end)) end++;
    let holds = true;
    for (let k = start; k < end && holds; k++) holds = !NOT_PLANNED.test(f.low(k)) || sideOf(f, k);
    if (holds) return true;
  }
  return false;
}

/** "try Boots in swing next run", "Sunday Peaches goes to lead": told for another day. */
export function ofAnotherDay(f: Frame, i: number): boolean {
  return f.cues.some(
    (c) =>
      c.gives === 'planned' &&
      c.reach === 'heading' &&
      f.sentence(c.from) === f.sentence(i) &&
      !f.tokens.slice(c.from, c.to).some((t) => /^(stop|break|checkpoint|snack)$/.test(t.low)),
  );
}

/**
 * "When we get to the shelter Heather goes up front", "at the next stop Mabel's going up to swing": what will be done on
 * the way. A dog that is going or coming to a place is not there yet.
 */
export function whenWeGetThere(f: Frame, from: number, to: number): boolean {
  for (let k = from; k < to; k++)
    if (/^('s|is|are|'re)$/.test(f.low(k)) && /^(going|coming|gonna)$/.test(f.low(k + 1))) return true;
  for (let k = from - 1; k >= 0 && from - k < 16 && f.sentence(k) === f.sentence(from); k--) {
    if (/^(was|were|did|got|went|came|had|ran)$/.test(f.low(k))) return false;
    if (
      /^(when|once|before|after)$/.test(f.low(k)) &&
      /^(we|i)$/.test(f.low(k + 1)) &&
      /^(get|reach|hit|stop|come|cross|make|are|'re)$/.test(f.low(k + 2))
    )
      return true;
  }
  return false;
}
