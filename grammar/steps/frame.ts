/**
 * One note laid out for the readers: its tokens (corrected), mentions, quantities, dogs, sites, cues and borders, and the
 * questions every reader asks: whose is it, where on the body, how is it asserted, which words was it read from.
 */
import type { Assertion, Context, Entry } from '../entry.ts';
import { correct } from './correct.ts';
import { type DogPhrase, findDogs, findPeople, type PersonMention, takenBack } from './dogs.ts';
import { lineupFor, resolveDogs, type Told } from './groups.ts';
import { hear, type WordHeard } from './hearing-note.ts';
import { withLateSubjects } from './late-subjects.ts';
import { findMentions, type Mention, type Mentions } from './mentions.ts';
import { notedDay } from './noted-day.ts';
import { withPauses } from './pauses.ts';
import { type Quantity, quantitiesOf } from './quantities.ts';
import { type Roster, rosterOf } from './roster.ts';
import { assertionOf, type Cue, cuesOf } from './scopes.ts';
import { findSites, type Site } from './sites.ts';
import { lowAt, type Token, tokenize } from './tokens.ts';

export interface Owner {
  dogs: string[];
  phrase?: DogPhrase;
  /** Said of a person, not of a dog. */
  human?: boolean;
  /** Not named in this clause: the dog spoken of before. */
  carried?: boolean;
  doubt?: string;
}

const STRONG = new Set(['.', ';', '!', '?', '\n']);

/** Words that tell of what is still to come today. */
const LATER = new Set(['afternoon', 'evening', 'later', 'tonight']);
/** Words that begin a statement about the gums or the skin. */
const GUMS = new Set(['gums', 'skin', 'hyd']);

/** Lays ranges over so many tokens, so that what stands at one is found at once; the first keeps its place. */
function cover<T extends { from: number; to: number }>(length: number, ranges: readonly T[]): (T | undefined)[] {
  const over = new Array<T | undefined>(length).fill(undefined);
  for (const r of ranges) for (let i = r.from; i < r.to; i++) over[i] ??= r;
  return over;
}
/** What lies over token `i`. Outside the note nothing does: asking an array for a place it does not have is slow. */
const over = <T>(list: readonly (T | undefined)[], i: number): T | undefined =>
  i >= 0 && i < list.length ? list[i] : undefined;

/**
 * How a kind of entry can be asserted besides present. A finding can be anything; a time, a length or what was done is said
 * to have been, or to be; a "no" or a "gone" near it belongs to something else.
 */
const CAN: Partial<Record<Entry['kind'], ReadonlySet<Assertion>>> = {};
for (const kind of [
  'clock',
  'distance',
  'duration',
  'speed',
  'measure',
  'care',
  'drop',
  'hitch',
  'move',
  'intake',
] as const)
  CAN[kind] = new Set<Assertion>(['planned', 'past']);
for (const kind of ['temperature', 'wind'] as const) CAN[kind] = new Set<Assertion>(['planned', 'past', 'possible']);
for (const kind of ['attitude', 'booties', 'gait', 'gear', 'weather', 'trail'] as const)
  CAN[kind] = new Set<Assertion>(['absent', 'planned', 'past', 'possible']);

/** Day of the week (0 is Sunday) of a date "YYYY-MM-DD", by the proleptic Gregorian calendar (Zeller's congruence). */
function weekday(date: string): number {
  const [y, m, d] = date.split('-').map(Number) as [number, number, number];
  const month = m < 3 ? m + 12 : m;
  const year = m < 3 ? y - 1 : y;
  const h =
    (d +
      Math.floor((13 * (month + 1)) / 5) +
      year +
      Math.floor(year / 4) -
      Math.floor(year / 100) +
      Math.floor(year / 400)) %
    7;
  return (h + 6) % 7;
}
const DAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];

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
  #stops: number[] = [];
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
  #hasLater = false;
  /** A day gone that the note is written of. */
  readonly #noted: ReturnType<typeof notedDay>;

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
    // "maybe twenty" is about twenty: a word of doubt right before a number says nothing of anything else.
    const today = /^\d{4}-\d\d-\d\d/.test(context.at ?? '')
      ? DAYS[weekday((context.at as string).slice(0, 10))]
      : undefined;
    this.cues = cuesOf(this.tokens)
      .filter((c) => !(c.gives === 'past' && ((today !== undefined && this.#names(c, today)) || this.#toCome(c))))
      .filter(
        (c) =>
          !(c.gives === 'possible' && c.to - c.from === 1 && this.quantities.some((q) => q.from === c.to && !q.weak)),
      )
      // "limped then sat" is no Saturday
      .filter((c) => !(c.gives === 'past' && c.to - c.from === 1 && this.low(c.from) === 'sat') || this.#dates(c.from))
      // A dog called Will plans nothing.
      .filter((c) => !this.dogs.some((d) => d.kind === 'names' && d.from <= c.from && c.to <= d.to));
    this.#noted = notedDay(this.tokens, this.cues, this.dogs);
    const length = this.tokens.length;
    this.claimed = new Array(length).fill(false);
    this.#dogAt = cover(length, this.dogs);
    this.#quantityAt = cover(length, this.quantities);
    this.#personAt = cover(length, this.people);
    this.#hasLater = this.tokens.some((t) => LATER.has(t.low));
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
    this.sites = findSites(this.tokens, this.m, this.dogs);
    this.#siteAt = cover(this.tokens.length, this.sites);
    const parts = this.sites
      .filter(
        (s) =>
          s.part &&
          !/^(no|any|or|and|of|in|on|,|without|her|his|the|with|not|'s|sore|a|both|at|for|n't|or)$/.test(
            this.low(s.from - 1),
          ) &&
          this.#statesItself(s),
      )
      .map((s) => s.from);
    const gums = this.tokens
      .filter((t) => GUMS.has(t.low) && !/^(no|any|of|her|his|the|or)$/.test(this.low(t.i - 1)))
      .map((t) => t.i);
    this.#stops = this.dogs
      .filter(
        (d) => !d.company && d.prep === undefined && !(d.kind === 'pronoun' && d.possessive && !this.#beginsAnew(d)),
      )
      .map((d) => d.from)
      .concat(parts, gums)
      .sort((a, b) => a - b);
  }

  /** A site with its own sign or praise behind it begins a statement, also where no mark says so. */
  #statesItself(s: Site): boolean {
    for (let k = s.to; k < s.to + 4; k++) {
      if (this.m.from('sign', k) || this.m.from('fine', k)) return true;
      if (
        !/^(is|'s|are|was|a|bit|little|touch|still|really|pretty|all|look|looks|slightly|very|feels)$/.test(this.low(k))
      )
        return false;
    }
    return false;
  }

  /** "… in the shoulder his tug's tight": a possessive behind a finished statement begins the next. */
  #beginsAnew(d: DogPhrase): boolean {
    const k = d.from - 1;
    return (
      Boolean(this.m.at('part', k) || this.m.at('surface', k) || this.m.at('position', k) || this.m.at('sign', k)) &&
      Boolean(this.m.at('item', d.to))
    );
  }

  low(i: number): string {
    return lowAt(this.tokens, i);
  }
  /** Does the cue name the day that it is ("Saturday scale round", said on a Saturday), and not the last one of that name? */
  #names(c: Cue, day: string): boolean {
    const words = this.tokens.slice(c.from, c.to).map((t) => t.low);
    return (
      words.some((w) => w.startsWith(day) && w !== 'sunny' && w !== 'monthly') &&
      !words.some((w) => /^(last|past|ago|since)$/.test(w))
    );
  }

  /** Does a clipped day stand behind what was found: "web split Sat.", "(sore, Sat)"? */
  #dates(i: number): boolean {
    return Boolean(this.m.at('sign', i - 1) ?? this.m.at('part', i - 1)) || /^[,(]$/.test(this.low(i - 1));
  }

  /** "Sunday I'll run five": a day with a will behind it is to come. */
  #toCome(c: Cue): boolean {
    if (
      !this.tokens
        .slice(c.from, c.to)
        .some((t) => DAYS.some((d) => t.low === d || (t.low.startsWith(d) && t.low.endsWith('day'))))
    )
      return false;
    for (let k = c.to; k < c.to + 4; k++) {
      if (
        /^(do|run|go|leave|start|have|try|head|take|rest|hook)$/.test(this.low(k)) &&
        /^(we|i|they|you)$/.test(this.low(k - 1))
      )
        return true;
      if (/^('ll|will|gonna|shall|'d)$/.test(this.low(k)) || (this.low(k) === 'going' && this.low(k + 1) === 'to'))
        return true;
      if (/^[.,;]$/.test(this.low(k)) && k > c.to) return false;
    }
    return false;
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

  assertion(from: number, to: number): Assertion {
    return this.asserted(from, to).assertion;
  }
  /** The assertion of a stretch of words that may hold its own cue ("Tansy will go up to swing"). */
  assertionWithin(from: number, to: number): Assertion {
    const outer = this.asserted(from, to).assertion;
    if (outer !== 'present') return outer;
    const inner = this.cues.find(
      (c) => c.from >= from && c.to <= to && (c.gives === 'planned' || c.gives === 'possible'),
    );
    // "If Gus is sore tomorrow, Biscuit goes in team": the condition holds for the sentence.
    if (
      !inner &&
      this.cues.some(
        (c) => c.gives === 'planned' && c.group.condition && c.to <= from && !this.strongBetween(c.from, from),
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
    const near = assertionOf(this.tokens, this.cues, from, to, this.#stops);
    const { cue } = near;
    if (!cue?.around || (cue.from < to && from < cue.to)) return near;
    const own = this.m.at('sign', from)?.value;
    for (let k = cue.from; k < cue.to; k++)
      if (own && this.m.at('sign', k) && this.m.at('sign', k)?.value !== own) {
        const others = this.cues.filter((c) => c !== cue);
        return assertionOf(this.tokens, others, from, to, this.#stops);
      }
    return near;
  }

  /** The assertion without one cue of the note. */
  assertionWithout(cue: Cue, from: number, to: number): Assertion {
    const others = this.cues.filter((c) => c !== cue);
    return assertionOf(this.tokens, others, from, to, this.#stops).assertion;
  }

  /** "this afternoon it's the six mile loop": what the time of speaking has not reached yet is planned. */
  #laterToday(i: number): boolean {
    if (!this.#hasLater) return false;
    // Told in the past tense, it has been.
    for (let k = Math.max(0, i - 10); k <= i + 2; k++)
      if (
        this.sentence(k) === this.sentence(i) &&
        /^(ate|drank|was|were|had|left|got|did|went|ran|refused|came|took)$/.test(this.low(k))
      )
        return false;
    const hour = Number(/T(\d\d)/.exec(this.context.at ?? '')?.[1] ?? 24);
    for (let k = i; k >= 0 && !(k < i && this.isStrong(k)); k--) {
      const [a, b] = [this.low(k), this.low(k + 1)];
      if (i - k > 5 && /^(is|are|was|were)$/.test(this.low(i - 1))) return false;
      if (k < i && a === ',' && /^(and|but)$/.test(b)) return false;
      if (a === 'now' || this.low(i + 1) === 'now' || this.low(i + 2) === 'now') return false;
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
    for (const c of this.cues) {
      if (c.to > i) return undefined;
      if (c.gives !== 'past' || this.strongBetween(c.from, i)) continue;
      let start = c.from;
      while (start > 0 && !this.isStrong(start - 1)) start--;
      if (c.from - start > 5 || this.dogs.some((d) => d.from >= start && d.to <= c.from)) continue;
      let now = false;
      for (let k = c.to; k < i; k++)
        if (/^(now|today|still|tonight|currently|since|is|are|'s|'re)$/.test(this.low(k))) now = true;
      if (!now) return c;
    }
    return undefined;
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
    if (entry.assertion === 'possible' && /^(care|drop|hitch|move|booties)$/.test(entry.kind))
      entry.assertion = 'planned';
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

  /** Does the person or "I", "we", "my" at the left own what is said at `i`? */
  #humanBefore(i: number): number {
    for (let k = i - 1; k >= 0 && !this.isStrong(k); k--) {
      const p = this.personAt(k);
      if (p) return p.from;
      const me = this.m.at('me', k);
      if (me && !this.dogAt(me.from)) return me.from;
    }
    return -1;
  }

  /**
   * Whose is what stands in `[from, to)`? A dog behind it ("ice balls in everybody's feet", "on Moss"), else the dog before
   * it in the sentence, else the dog spoken of last.
   */
  owner(from: number, to: number, site?: Site, act = false): Owner {
    if (site?.owner) return this.#owned(site.owner);
    const lo = site ? Math.min(from, site.from) : from;
    const hi = site ? Math.max(to, site.to) : to;
    // "something up with Willow's back": whose it is stands right before it.
    const whose =
      site && this.dogs.find((d) => d.possessive && d.to === site.from && d.dogs.length && d.kind === 'names');
    if (whose) return this.#owned(whose);
    // "… got her. Something's harness rubbed his armpit": no male was named, so it is not the bitch's
    const nobody =
      site && this.dogs.find((d) => d.kind === 'pronoun' && d.possessive && d.to === site.from && !d.dogs.length);
    if (nobody && /^(his|her)$/.test(this.low(nobody.from)))
      return { dogs: [], doubt: nobody.doubt, human: this.#humanBefore(nobody.from) >= 0 };
    const behind = this.#behind(hi);
    const before = this.#before(lo);
    if (behind && !(before && behind.value !== 'all' && before.to >= lo - 2 && !this.strongBetween(before.to, lo)))
      return this.#owned(behind);
    const inside = this.dogs.find((d) => d.from >= lo && d.to <= hi && !d.company && !d.excepted);
    if (inside) return this.#owned(inside);
    // What a person does, she does to a dog; what she is or has stays with her.
    const human = act ? -1 : this.#humanBefore(lo);
    if (before && before.from >= human && !this.strongBetween(before.to, lo)) return this.#owned(before);
    if (human >= 0 && (!before || before.from < human) && this.#humanHas(human, lo)) return { dogs: [], human: true };
    if (before) return { carried: true, ...this.#owned(before) };
    return { dogs: [] };
  }

  #owned(phrase: DogPhrase): Owner {
    return { dogs: phrase.dogs, phrase, doubt: phrase.doubt };
  }

  /** "my wrist is sore", "Anders has a belly ache": being and having stay with the person; doing goes on to a dog. */
  #humanHas(human: number, i: number): boolean {
    const word = this.low(human);
    if (/^(my|our|your)$/.test(word)) return i - human <= 5;
    const end = this.personAt(human)?.to ?? this.m.at('me', human)?.to ?? human + 1;
    // "I'm hollering at Nora": the verb stands in the word
    if (/^('m|'re|'ve)$/.test(this.low(end - 1)) && end - human > 1) return i - end <= 1;
    const verb = this.low(end);
    // "I have discovered that the pad is raw"
    if (
      /^(have|has|'ve|'s|had)$/.test(verb) &&
      /^(discovered|found|noticed|seen|checked|felt|examined|observed)$/.test(this.low(end + 1))
    )
      return false;
    const person = this.personAt(human);
    if (person?.possessive) return i - end <= 3;
    return (
      /^('m|am|ai|ain|is|'s|was|has|had|got|'ve|have|feel|felt|were|are|'re|ate|eat|eats|eating|drink|drinks|drank|threw|froze|burned|burnt|hurt|fell|slipped|looks|looked|gets|sat|quit|stopped)$/.test(
        verb,
      ) && i - end <= 6
    );
  }

  /** A dog right behind: "on Moss", "in everybody's", "of both wheelers". */
  #behind(i: number): DogPhrase | undefined {
    let k = i;
    let prep = false;
    for (let steps = 0; steps < 6 && k < this.tokens.length; steps++) {
      const d = this.dogFrom(k);
      if (d && d.kind === 'names' && !d.possessive && this.#ownStatement(d)) return undefined;
      if (d)
        return (prep || d.prep || /^(all|across|everywhere)$/.test(this.low(d.from))) && !d.company && !d.excepted
          ? d
          : undefined;
      const low = this.low(k);
      if (low === ',' && (this.siteAt(k + 1) || /^(on|in)$/.test(this.low(k + 1)))) {
        k++;
        continue;
      }
      // "tight as fence wire on Gus"
      if (low === 'as' && !prep) {
        let j = k + 1;
        while (j < k + 5 && !/^(on|in|of)$/.test(this.low(j)) && !this.isStrong(j) && !this.dogAt(j)) j++;
        if (!/^(on|in)$/.test(this.low(j))) return undefined;
        k = j;
        continue;
      }
      if (/^(on|in|of|for|to|off|from|into|onto|with|between|under|out)$/.test(low)) {
        if (low === 'with') return undefined;
        prep = true;
      } else if (
        !/^(the|all|any|over|up|again|today|now|whatsoever|anywhere|poor|old|our|a|bootie|booties|bit|new|one|ones|both|just|back|some|it|them|feet)$/.test(
          low,
        ) &&
        !this.siteAt(k)
      )
        return undefined;
      k++;
    }
    return undefined;
  }

  /** "… on bal RH nail torn": the dog behind begins a statement of its own. */
  #ownStatement(d: DogPhrase): boolean {
    const s = this.sites.find((x) => x.from === d.to);
    if (!s) return false;
    return Boolean(this.m.from('sign', s.to) || this.m.from('sign', s.to + 1) || this.m.from('fine', s.to));
  }

  /** The last dog before token `i` that is spoken of, company and exceptions left out. */
  #before(i: number): DogPhrase | undefined {
    let company: DogPhrase | undefined;
    const whoBehind = (k: number) => this.low(k) === 'who' || (this.low(k) === ',' && this.low(k + 1) === 'who');
    for (let k = this.dogs.length - 1; k >= 0; k--) {
      const d = this.dogs[k] as DogPhrase;
      if (d.to > i) continue;
      // "while he pulled hard", and no he is known: not the girl spoken of before
      if (
        !d.dogs.length &&
        d.kind === 'pronoun' &&
        /^[MF]$/.test(d.value ?? '') &&
        !d.possessive &&
        !this.strongBetween(d.to, i)
      )
        return company;
      if (!d.dogs.length) continue;
      if (d.excepted && d.owns && this.sentence(d.from) === this.sentence(i)) return d;
      // "the whole gang except Mabel, who paces"
      if (
        d.excepted &&
        d.kind === 'names' &&
        whoBehind(d.to) &&
        this.sentence(d.from) === this.sentence(i) &&
        i - d.to < 8
      )
        return d;
      if (d.excepted) continue;
      if (d.company) {
        // "with Ivy, who was limping"
        if (whoBehind(d.to)) return d;
        company ??= d;
        continue;
      }
      return d;
    }
    return company;
  }

  /** The last phrase before token `i`, whatever its part in the clause. */
  lastDogs(i: number): DogPhrase | undefined {
    return this.#before(i);
  }
}

export type { DogPhrase, Mention, PersonMention, Quantity, Site };
