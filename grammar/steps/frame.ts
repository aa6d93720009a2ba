/**
 * One note laid out for the readers: its tokens (corrected), mentions, quantities, dogs, sites, cues and borders, and the
 * questions every reader asks: whose is it, where on the body, how is it asserted, which words was it read from.
 */
import type { Assertion, Context, Entry } from '../entry.ts';
import { correct } from './correct.ts';
import { type DogPhrase, findDogs, findPeople, type PersonMention, takenBack } from './dogs.ts';
import { Assertions, CAN } from './frame-assertions.ts';
import { bordersOf } from './frame-borders.ts';
import { cuesOfNote } from './frame-cues.ts';
import { dogBefore, type Owner, ownerIn } from './frame-owner.ts';
import { lineupFor, resolveDogs, type Told } from './groups.ts';
import { hear, type WordHeard } from './hearing-note.ts';
import { withLateSubjects } from './late-subjects.ts';
import { findMentions, type Mention, type Mentions } from './mentions.ts';
import { withPauses } from './pauses.ts';
import { type Quantity, quantitiesOf } from './quantities.ts';
import { type Roster, rosterOf } from './roster.ts';
import type { Cue } from './scopes.ts';
import { findSites, type Site } from './sites.ts';
import { lowAt, type Token, tokenize } from './tokens.ts';

const STRONG = new Set(['.', ';', '!', '?', '\n']);

/** Lays ranges over so many tokens, so that what stands at one is found at once; the first keeps its place. */
function cover<T extends { from: number; to: number }>(length: number, ranges: readonly T[]): (T | undefined)[] {
  const over = new Array<T | undefined>(length).fill(undefined);
  for (const r of ranges) for (let i = r.from; i < r.to; i++) over[i] ??= r;
  return over;
}
/** What lies over token `i`. Outside the note nothing does: asking an array for a place it does not have is slow. */
const over = <T>(list: readonly (T | undefined)[], i: number): T | undefined =>
  i >= 0 && i < list.length ? list[i] : undefined;

export class Frame {
  readonly text: string;
  readonly context: Context;
  readonly roster: Roster;
  readonly tokens: Token[];
  readonly m: Mentions;
  readonly quantities: Quantity[];
  readonly dogs: DogPhrase[];
  readonly people: PersonMention[];
  readonly cues: Cue[];
  readonly entries: Entry[] = [];
  /** Places the note told; groups after them mean these. */
  readonly told: Told[] = [];
  /** Words that a reader took for its own. */
  readonly claimed: boolean[];
  readonly trace: string[] | undefined;
  sites: Site[] = [];
  /** Dogs that a correction has taken out of the note. */
  #takenBack: { dog: string; start: number }[] = [];
  /** Words read as another than was written. */
  readonly #wordsHeard: readonly WordHeard[];
  /** The number of its sentence for each token, and one more for the end. */
  readonly #sentence: number[] = [];
  /** Tokens at which a sentence ends. */
  readonly #strong: boolean[] = [];
  readonly #dogAt: (DogPhrase | undefined)[];
  #siteAt: (Site | undefined)[] = [];
  readonly #quantityAt: (Quantity | undefined)[];
  readonly #personAt: (PersonMention | undefined)[];
  readonly #assertions: Assertions;

  constructor(text: string, context: Context, trace?: string[]) {
    this.text = text;
    this.context = context;
    this.trace = trace;
    this.roster = rosterOf(context);
    const heard = tokenize(text);
    this.#wordsHeard = hear(heard, this.roster);
    const isName = (low: string) => this.roster.forms.has(low);
    const first = findMentions(heard, isName);
    const meant = correct(heard, first, text, this.roster);
    this.corrected = meant !== heard;
    if (this.corrected) this.#takenBack = takenBack(heard, first, meant, this.roster);
    const mentions = this.corrected ? findMentions(meant, isName) : first;
    const inTurn = withLateSubjects(meant, mentions, this.roster, text);
    const told = inTurn === meant ? mentions : findMentions(inTurn, isName);
    if (inTurn !== meant) this.corrected = true;
    this.tokens = withPauses(inTurn, told, this.roster);
    this.m = this.tokens === inTurn ? told : findMentions(this.tokens, isName);
    this.quantities = quantitiesOf(this.tokens, text);
    this.people = findPeople(this.tokens, this.roster);
    this.dogs = findDogs(this.tokens, this.m, this.roster).filter((d) => !this.people.some((p) => p.from === d.from));
    this.cues = cuesOfNote(this, context.at);
    this.#assertions = new Assertions(this);
    const length = this.tokens.length;
    this.claimed = new Array(length).fill(false);
    this.#dogAt = cover(length, this.dogs);
    this.#quantityAt = cover(length, this.quantities);
    this.#personAt = cover(length, this.people);
    let sentence = 0;
    for (let i = 0; i < length; i++) {
      const strong = this.#endsSentence(i);
      this.#strong.push(strong);
      this.#sentence.push(sentence);
      if (strong) sentence++;
    }
    this.#sentence.push(sentence);
  }

  /** Resolves groups and pronouns; called once the told line-up is known. */
  settle(): void {
    const starts = this.tokens.map((t) => t.start);
    const back = this.#takenBack.map(({ dog, start }) => ({ dog, at: starts.findIndex((s) => s > start) }));
    resolveDogs(this.dogs, this.roster, this.told, back);
    for (const d of this.dogs) if (d.kind === 'pronoun') this.#explained(d);
    this.sites = findSites(this.tokens, this.m, this.dogs);
    this.#siteAt = cover(this.tokens.length, this.sites);
    this.#assertions.borders = bordersOf(this);
  }

  /** "He ran very well, Bela I mean": the name behind says who. */
  #explained(d: DogPhrase): void {
    const name = this.dogs.find((n) => n.kind === 'names' && !n.possessive && n.from >= d.to && n.from - d.to < 10);
    if (!name || this.low(name.to) !== 'i' || this.low(name.to + 1) !== 'mean') return;
    const sexes = name.dogs.map((x) => this.roster.sexOf(x));
    if (d.value !== 'they' && sexes.some((s) => s && s !== d.value)) return;
    d.dogs = [...name.dogs];
    d.doubt = undefined;
    d.much = undefined;
    name.company = true;
  }

  low(i: number): string {
    return lowAt(this.tokens, i);
  }
  /** Does a sentence end at token `i`? A line break ends one too. */
  isStrong(i: number): boolean {
    return over(this.#strong, i) ?? true;
  }
  #endsSentence(i: number): boolean {
    const t = this.tokens[i];
    if (!t) return true;
    if (STRONG.has(t.low)) return true;
    // "Joule: barking / Rivet: same": a slash that stands free
    if (t.low === '/' && t.gap && this.tokens[i + 1]?.gap && !this.dogAt(i))
      return this.dogs.some((d) => d.from === i + 1) && !this.dogs.some((d) => d.to === i);
    const next = this.tokens[i + 1];
    return Boolean(next?.gap && next.start > t.end && this.text.slice(t.end, next.start).includes('\n'));
  }
  sentence(i: number): number {
    return this.#sentence[Math.max(0, Math.min(i, this.tokens.length))] as number;
  }
  /** Is there a sentence end in `[a, b)`? */
  strongBetween(a: number, b: number): boolean {
    return this.sentence(a) !== this.sentence(b);
  }
  commaBetween(a: number, b: number): boolean {
    for (let i = a; i < b; i++) if (this.low(i) === ',') return true;
    return false;
  }
  dogAt(i: number): DogPhrase | undefined {
    return over(this.#dogAt, i);
  }
  dogFrom(i: number): DogPhrase | undefined {
    const d = over(this.#dogAt, i);
    return d?.from === i ? d : undefined;
  }
  siteAt(i: number): Site | undefined {
    return over(this.#siteAt, i);
  }
  personAt(i: number): PersonMention | undefined {
    return over(this.#personAt, i);
  }
  quantityAt(i: number): Quantity | undefined {
    return over(this.#quantityAt, i);
  }
  /** Who stands on the gangline as of token `i`. */
  lineup(i: number) {
    return lineupFor(i, this.roster, this.told);
  }
  /** Is the team out on the trail? */
  get out(): boolean {
    return this.roster.lineup.length > 0;
  }

  /** The assertion of what stands in `[from, to)`. */
  assertion(from: number, to: number): Assertion {
    return this.#assertions.of(from, to);
  }
  /** The assertion of a stretch of words that may hold its own cue ("Tansy will go up to swing"). */
  assertionWithin(from: number, to: number): Assertion {
    return this.#assertions.within(from, to);
  }
  /** The assertion without one cue of the note. */
  assertionWithout(cue: Cue, from: number, to: number): Assertion {
    return this.#assertions.without(cue, from, to);
  }
  /** The assertion with the cue that gave it. */
  asserted(from: number, to: number): { assertion: Assertion; cue?: Cue } {
    return this.#assertions.asserted(from, to);
  }

  /** Were words moved or dropped by a correction? */
  readonly corrected: boolean;

  /** Words that readers pass over: chat, questions, commands. */
  silence(ranges: readonly [number, number][]): void {
    for (const [a, b] of ranges) this.claimed.fill(true, a, b);
  }

  claim(from: number, to: number): void {
    this.claimed.fill(true, from, to);
  }
  isClaimed(from: number, to: number): boolean {
    for (let i = from; i < to; i++) if (this.claimed[i]) return true;
    return false;
  }

  /** The text span of token ranges: from the first letter to the last. */
  span(...ranges: (readonly [number, number] | undefined)[]): [number, number] {
    let start = Number.POSITIVE_INFINITY;
    let end = 0;
    for (const r of ranges) {
      if (!r) continue;
      for (let i = r[0]; i < r[1]; i++) {
        const t = this.tokens[i];
        if (!t) continue;
        if (t.start < start) start = t.start;
        if (t.end > end) end = t.end;
      }
    }
    return [Number.isFinite(start) ? start : 0, end];
  }

  /** Takes an entry; one read from a word or a name that was heard wrong says so. */
  add(entry: Entry): void {
    // "maybe rest Ivy tomorrow": what may be done is to come.
    if (entry.assertion === 'possible' && /^(care|booties)$/.test(entry.kind)) entry.assertion = 'planned';
    if (entry.assertion && CAN[entry.kind] && !CAN[entry.kind]?.has(entry.assertion)) delete entry.assertion;
    // "she's come in season, and so is Sarge": no male does
    if (entry.kind === 'finding' && entry.sign === 'in-season' && entry.dogs.length) {
      entry.dogs = entry.dogs.filter((d) => this.roster.sexOf(d) !== 'M');
      if (!entry.dogs.length) return;
    }
    const [from, to] = entry.span ?? [0, 0];
    const word = this.#wordsHeard.find((h) => from <= h.start && h.end <= to);
    if (word && !entry.doubt)
      Object.assign(entry, { doubt: 'some', because: `"${word.heard}" was heard; ${word.means} sounds like it` });
    if (entry.doubt === 'some' && this.dogs.some((d) => d.much && d.doubt === entry.because)) entry.doubt = 'much';
    this.trace?.push(
      `${entry.rule}: ${JSON.stringify({ ...entry, span: undefined, rule: undefined })} ← "${entry.span ? this.text.slice(...entry.span) : ''}"`,
    );
    this.entries.push(entry);
  }

  /** Whose is what stands in `[from, to)`? `act`: what a person does, she does to a dog. */
  owner(from: number, to: number, site?: Site, act = false): Owner {
    return ownerIn(this, from, to, site, act);
  }

  /** The last phrase before token `i`, whatever its part in the clause. */
  lastDogs(i: number): DogPhrase | undefined {
    return dogBefore(this, i);
  }
}

export type { DogPhrase, Mention, Owner, PersonMention, Quantity, Site };
