/** Shapes that the quantity rules share. */
import type { UnitDimension } from '../words/units.ts';
import { type NumberReading, numberAt } from './numbers.ts';
import type { Token } from './tokens.ts';

export type Dimension = UnitDimension | 'ordinal' | 'clock';

/** A time of day as said. Without `meridiem` the hour may mean either half of the day. */
export interface Clock {
  hour: number;
  minute: number;
  meridiem?: 'am' | 'pm';
}

/** A number of the note, with its unit when it has one. */
export interface Quantity {
  /** UTF-16 units of the text. */
  span: [number, number];
  /**
   * In `unit`. Durations are always minutes. A clock is minutes after midnight as said (0 to 1439; "ten to two" is 110
   * with no half of the day said).
   */
  value: number;
  dimension: Dimension;
  /** Canonical unit (words/units.ts). Missing: none was said. */
  unit?: string;
  /** Tokens `[from, to)`. */
  from: number;
  to: number;
  /** Written in words. */
  spelled?: boolean;
  /** Likely no amount: a bare "one", "half", "in a second", "four feet" of a dog. */
  weak?: boolean;
  /** A clock's parts; on a number, the time it would be if a time is meant ("6.50", "1830", "two fifty", "nine"). */
  clock?: Clock;
  /** "at quarter past": the clock's hour was not said. */
  hourLeftOut?: boolean;
  /** Two numbers said in a row that were read as one ("two fifty"), apart. */
  apart?: [Quantity, Quantity];
  /** A temperature only by its sign ("minus nine", "-19", "plus five"): nothing said degrees. */
  bySign?: boolean;
  /** The unit of time that was said, of the largest part ("h" in "two hours ten"). */
  said?: string;
  /** A fraction as typed: "4/9". */
  ratio?: [number, number];
  /** One end of a range: "3-5 km" is two quantities of the same unit. */
  range?: 'from' | 'to';
}

/** Where a rule looks. The number at the place is read once for all rules. */
export class Cursor {
  readonly tokens: readonly Token[];
  readonly text: string;
  readonly i: number;
  #number: NumberReading | undefined | null = null;

  constructor(tokens: readonly Token[], text: string, i: number) {
    this.tokens = tokens;
    this.text = text;
    this.i = i;
  }
  /** The number that begins here. */
  get number(): NumberReading | undefined {
    if (this.#number === null) this.#number = numberAt(this.tokens, this.i);
    return this.#number;
  }
  /** The word at `k`, lower case; empty outside the note. */
  low(k: number): string {
    return this.tokens[k]?.low ?? '';
  }
  /** A quantity of tokens `[from, to)`. */
  make(from: number, to: number, value: number, dimension: Dimension, more: Partial<Quantity> = {}): Quantity {
    const first = this.tokens[from] as Token;
    const last = this.tokens[to - 1] as Token;
    return { span: [first.start, last.end], value, dimension, from, to, ...more };
  }
}

/** A rule: what it reads in grammar notation, and how. Rules are tried in the order of the list in quantities.ts. */
export interface Rule {
  name: string;
  /** What it can begin with; left out: either. Spares trying it elsewhere. */
  starts?: 'figures' | 'words';
  read(c: Cursor): Quantity | undefined;
}

/** Labels that are typed against their figures: what follows them is a reading, not a name. */
const LABELS: ReadonlySet<string> = new Set('temp temperature at minus wt weight dist'.split(' '));
/** Are the figures at `i` part of a name ("scp-173", "unit7")? A letter behind such figures is no unit. */
export function inName(t: readonly Token[], i: number): boolean {
  const figure = t[i];
  if (figure?.kind !== 'number' || figure.gap) return false;
  const hyphen = t[i - 1]?.low === '-' && !t[i - 1]?.gap;
  const word = t[hyphen ? i - 2 : i - 1];
  return (
    word?.kind === 'word' &&
    word.low.length > 1 &&
    word.end === (hyphen ? figure.start - 1 : figure.start) &&
    !LABELS.has(word.low)
  );
}
