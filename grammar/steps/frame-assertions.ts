/** How what is said is asserted: by the cue nearest to it, by a day told first, by the hour that is still to come. */
import type { Assertion, Entry } from '../entry.ts';
import type { Frame } from './frame.ts';
import { notedDay } from './noted-day.ts';
import { assertionOf, type Cue } from './scopes.ts';

/** Words that tell of what is still to come today. */
const LATER = new Set(['afternoon', 'evening', 'later', 'tonight']);
/**
 * How a kind of entry can be asserted besides present. A finding can be anything; a time, a length or what was done is said
 * to have been, or to be; a "no" or a "gone" near it belongs to something else.
 */
export const CAN: Partial<Record<Entry['kind'], ReadonlySet<Assertion>>> = {};
for (const kind of ['clock', 'distance', 'duration', 'speed', 'care', 'drop', 'hitch', 'move', 'intake'] as const)
  CAN[kind] = new Set<Assertion>(['planned', 'past']);
// "I may yet have to carry her"
for (const kind of ['drop', 'hitch', 'move'] as const) CAN[kind] = new Set<Assertion>(['planned', 'past', 'possible']);
// what the scale shows has been
CAN.measure = new Set<Assertion>(['past']);
for (const kind of ['temperature', 'wind'] as const) CAN[kind] = new Set<Assertion>(['planned', 'past', 'possible']);
for (const kind of ['attitude', 'booties', 'gait', 'gear', 'weather', 'trail'] as const)
  CAN[kind] = new Set<Assertion>(['absent', 'planned', 'past', 'possible']);

/** The assertions of one note. */
export class Assertions {
  /** Tokens over which no scope reaches; known once the dogs are. */
  borders: readonly number[] = [];
  readonly #f: Frame;
  readonly #hasLater: boolean;
  /** A day gone that the note is written of. */
  readonly #noted: ReturnType<typeof notedDay>;

  constructor(f: Frame) {
    this.#f = f;
    this.#noted = notedDay(f.tokens, f.cues, f.dogs);
    this.#hasLater = f.tokens.some((t) => LATER.has(t.low));
  }

  /** The assertion of what stands in `[from, to)`. */
  of(from: number, to: number): Assertion {
    return this.asserted(from, to).assertion;
  }
  /** The assertion of a stretch of words that may hold its own cue ("Tansy will go up to swing"). */
  within(from: number, to: number): Assertion {
    const outer = this.asserted(from, to).assertion;
    if (outer !== 'present') return outer;
    const inner = this.#f.cues.find(
      (c) => c.from >= from && c.to <= to && (c.gives === 'planned' || c.gives === 'possible'),
    );
    // "If Gus is sore tomorrow, Biscuit goes in team": the condition holds for the sentence.
    if (
      !inner &&
      this.#f.cues.some(
        (c) => c.gives === 'planned' && c.group.condition && c.to <= from && !this.#f.strongBetween(c.from, from),
      )
    )
      return 'planned';
    return inner ? (inner.gives as Assertion) : outer;
  }
  /** The assertion with the cue that gave it. */
  asserted(from: number, to: number): { assertion: Assertion; cue?: Cue } {
    const near = this.#followed(from, to);
    if (near.assertion !== 'present' || near.cue) return near;
    if (this.#laterToday(from)) return { assertion: 'planned' };
    const noted = this.#noted;
    if (noted && noted.from <= from && to <= noted.to) return { assertion: 'past' };
    const day = this.#dayOf(from);
    return day ? { assertion: day.gives as Assertion, cue: day } : near;
  }

  /** "still puffy, not hot anymore": a cue with a sign between its own words speaks of that sign alone. */
  #followed(from: number, to: number): { assertion: Assertion; cue?: Cue } {
    const near = assertionOf(this.#f.tokens, this.#f.cues, from, to, this.borders);
    const { cue } = near;
    if (!cue?.around || (cue.from < to && from < cue.to)) return near;
    const own = this.#f.m.at('sign', from)?.value;
    for (let k = cue.from; k < cue.to; k++)
      if (own && this.#f.m.at('sign', k) && this.#f.m.at('sign', k)?.value !== own) {
        const others = this.#f.cues.filter((c) => c !== cue);
        return assertionOf(this.#f.tokens, others, from, to, this.borders);
      }
    return near;
  }

  /** The assertion without one cue of the note. */
  without(cue: Cue, from: number, to: number): Assertion {
    const others = this.#f.cues.filter((c) => c !== cue);
    return assertionOf(this.#f.tokens, others, from, to, this.borders).assertion;
  }

  /** "this afternoon it's the six mile loop": what the time of speaking has not reached yet is planned. */
  #laterToday(i: number): boolean {
    if (!this.#hasLater) return false;
    // Told in the past tense, it has been.
    for (let k = Math.max(0, i - 10); k <= i + 2; k++)
      if (
        this.#f.sentence(k) === this.#f.sentence(i) &&
        (/^(ate|drank|was|were|had|left|got|did|went|ran|refused|came|took)$/.test(this.#f.low(k)) ||
          (/^\w{3,}ed$/.test(this.#f.low(k)) &&
            this.#f.dogs.some((d) => d.to === k && !d.possessive && d.kind !== 'pronoun')))
      )
        return false;
    const hour = Number(/T(\d\d)/.exec(this.#f.context.at ?? '')?.[1] ?? 24);
    for (let k = i; k >= 0 && !(k < i && this.#f.isStrong(k)); k--) {
      const [a, b] = [this.#f.low(k), this.#f.low(k + 1)];
      if (i - k > 5 && /^(is|are|was|were)$/.test(this.#f.low(i - 1))) return false;
      if (k < i && a === ',' && /^(and|but)$/.test(b)) return false;
      if (a === 'now' || this.#f.low(i + 1) === 'now' || this.#f.low(i + 2) === 'now') return false;
      if (
        (a === 'this' && b === 'afternoon' && hour < 12) ||
        (a === 'this' && b === 'evening' && hour < 16) ||
        (a === 'later' && (b === 'today' || b === 'on')) ||
        (a === 'tonight' && hour < 15)
      )
        return true;
    }
    return false;
  }

  /** "Last weekend Maple was shivering and Quill had a crack": a day told first holds for its whole sentence, until now. */
  #dayOf(i: number): Cue | undefined {
    for (const c of this.#f.cues) {
      if (c.to > i) return undefined;
      if (c.gives !== 'past' || this.#f.strongBetween(c.from, i)) continue;
      let start = c.from;
      while (start > 0 && !this.#f.isStrong(start - 1)) start--;
      if (c.from - start > 5 || this.#f.dogs.some((d) => d.from >= start && d.to <= c.from)) continue;
      let now = false;
      for (let k = c.to; k < i; k++)
        if (/^(now|today|still|tonight|currently|since|is|are|'s|'re)$/.test(this.#f.low(k))) now = true;
      if (!now) return c;
    }
    return undefined;
  }
}
