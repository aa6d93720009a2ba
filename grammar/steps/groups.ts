/**
 * Step "subjects": which dogs a group or a pronoun means. Groups are written out from the line-up that the note itself
 * told, or else from the one that stands; he and she go to the dog of that sex spoken of last; both, the other leader
 * and the rest are what remains to be meant.
 */
import type { Place } from '../entry.ts';
import type { DogPhrase } from './dogs.ts';
import type { Roster } from './roster.ts';

/** A place told in the note, and the token where it was told. */
export interface Told extends Place {
  at: number;
  /** Somebody else who drives the dog. */
  driver?: string;
}

const uniq = (dogs: string[]) => [...new Set(dogs)];

/** Fills in `dogs` of every phrase, left to right. */
export function resolveDogs(
  phrases: DogPhrase[],
  roster: Roster,
  told: readonly Told[],
  takenBack: readonly { dog: string; at: number }[] = [],
): void {
  const named = uniq(phrases.flatMap((p) => (p.kind === 'names' ? p.dogs : (p.also ?? []))));
  const before: DogPhrase[] = [];
  for (const p of phrases) {
    if (p.kind !== 'names') {
      const lineup = lineupFor(p.from, roster, told);
      const base =
        p.kind === 'pronoun'
          ? pronoun(p, before, roster, lineup)
          : uniq([p.value as string, ...(p.groups ?? [])].flatMap((g) => group(p, g, before, roster, lineup, named)));
      p.dogs = uniq([...standing(p, base, lineup), ...(p.also ?? [])]);
      // "I thought it was Rudy, but it's Sadie. She's slack, he pulled hard": he that was taken back
      if (!p.dogs.length && p.kind === 'pronoun') {
        const back = takenBack.filter((b) => b.at >= 0 && b.at <= p.from && roster.sexOf(b.dog) === p.value).at(-1);
        if (back) p.dogs = [back.dog];
      }
      if (p.kind === 'pronoun') inheritDoubt(p, before);
      if (p.except) takeOut(p, p.except, named, lineup, roster, before);
    }
    before.push(p);
  }
}

/** Those of a group that stand in the place or on the side told with it. */
function standing(p: DogPhrase, dogs: string[], lineup: readonly Place[]): string[] {
  if (!p.place && !p.onSide) return dogs;
  const found = dogs.filter((d) =>
    lineup.some((l) => l.dog === d && (!p.place || l.position === p.place) && (!p.onSide || l.side === p.onSide)),
  );
  if (!p.single || found.length === 1) return found;
  p.doubt = 'which dog is meant was not said';
  return [];
}

/** "she" is in no less doubt than the name it stands for. */
function inheritDoubt(p: DogPhrase, before: readonly DogPhrase[]): void {
  const of = before.findLast((b) => b.kind === 'names' && p.dogs.some((d) => b.dogs.includes(d)));
  if (of?.doubt && !p.doubt) {
    p.doubt = of.doubt;
    p.much = of.much;
  }
}

/** The team a group at token `i` means: told before it in the note, else the one that stands. */
export function lineupFor(i: number, roster: Roster, told: readonly Told[]): readonly Place[] {
  const own = told.filter((t) => t.at < i);
  if (own.length < 2) return roster.lineup;
  // "Zelda and Goose are in lead, everybody's pulling": who stands there already is no other team
  const asItStands =
    own.length < roster.lineup.length &&
    own.every(
      (t) =>
        !t.driver &&
        t.position === own[0]?.position &&
        roster.lineup.some((l) => l.dog === t.dog && l.position === t.position),
    );
  return asItStands ? roster.lineup : own;
}

function takeOut(
  p: DogPhrase,
  ex: DogPhrase,
  named: string[],
  lineup: readonly Place[],
  roster: Roster,
  before: DogPhrase[],
) {
  if (ex.kind === 'group' && !ex.dogs.length)
    ex.dogs = [ex.value as string, ...(ex.groups ?? [])]
      .flatMap((g) => group(ex, g, before, roster, lineup, named))
      .concat(ex.also ?? []);
  if (p.dogs[0] === '*') {
    const others = named.filter((d) => !ex.dogs.includes(d));
    p.dogs = others.length ? others : ['*'];
    if (!others.length) p.doubt = `no line-up is known, so "everyone but" could not be written out`;
  } else p.dogs = p.dogs.filter((d) => !ex.dogs.includes(d));
}

function group(
  p: DogPhrase,
  value: string,
  before: readonly DogPhrase[],
  roster: Roster,
  lineup: readonly Place[],
  named: readonly string[],
): string[] {
  const all = lineup.map((l) => l.dog);
  const at = (position: string, side?: string) =>
    lineup.filter((l) => l.position === position && (!side || l.side === side)).map((l) => l.dog);
  switch (value) {
    case 'all':
      return all.length ? all : ['*'];
    case 'rest-F':
    case 'rest-M': {
      const said = new Set(
        namedFor(
          p,
          before.filter((b) => b.kind === 'names'),
        ).flatMap((b) => b.dogs),
      );
      const dogs = all.filter((d) => roster.sexOf(d) === value.slice(-1) && !said.has(d));
      if (!p.count || dogs.length === p.count) return dogs;
      p.doubt = 'how many dogs are meant was said, not which';
      return [];
    }
    case 'mine': {
      const dogs = lineup.filter((l) => !(l as Told).driver).map((l) => l.dog);
      return dogs.length ? dogs : ['*'];
    }
    case 'them-all': {
      const last = [...before].reverse().find((b) => b.dogs.length > 2 || b.dogs[0] === '*');
      return last ? last.dogs : all.length ? all : ['*'];
    }
    case 'lead':
    case 'swing':
    case 'team':
    case 'wheel': {
      const dogs = at(value);
      if (!dogs.length) p.doubt = `nobody is known to stand in ${value}`;
      return dogs;
    }
    case 'middle':
      return [...at('swing'), ...at('team')];
    case 'left':
    case 'right':
      return lineup.filter((l) => l.side === value).map((l) => l.dog);
    case 'F':
    case 'M': {
      const from = all.length ? all : named;
      const dogs = from.filter((d) => roster.sexOf(d) === value);
      return dogs.length || all.length ? dogs : ['*'];
    }
    case 'both': {
      // "I rubbed Fern's left shoulder and her right; neither is sore": both of hers, not her and whoever came before
      const near =
        p.negative && p.kind === 'group'
          ? new Set(before.filter((b) => sameSentence(b, p)).flatMap((b) => b.dogs))
          : undefined;
      if (near?.size === 1 && before.at(-1)?.possessive) return [...near];
      return lastTwo(before, p);
    }
    case 'rest': {
      if (p.count) {
        const found = othersOf(p.count, before, all);
        if (found) return found;
      }
      const said = new Set(
        namedFor(
          p,
          before.filter((b) => b.kind === 'names' || b.dogs.length < all.length),
        ).flatMap((b) => b.dogs),
      );
      const dogs = all.filter((d) => !said.has(d));
      return dogs.length || all.length ? dogs : ['*'];
    }
    case 'other': {
      const pair = lastTwo(before.slice(0, -1), p);
      const last = before[before.length - 1]?.dogs ?? [];
      const rest = pair.filter((d) => !last.includes(d));
      return rest.length === 1 ? rest : [];
    }
    case 'count': {
      // "those five", "none of the three": a list of so many before, else so many named, else so many in the team.
      const n = p.count ?? 0;
      const list = [...before].reverse().find((b) => b.dogs.length === n);
      if (list) return list.dogs;
      if (all.length === n) return all;
      const spoken = uniq(before.flatMap((b) => (b.kind === 'names' ? b.dogs : [])));
      if (spoken.length >= n) return spoken.slice(-n);
      p.doubt = 'how many dogs are meant was said, not which';
      return [];
    }
    case 'some-of':
      p.doubt = 'which of them is meant was not said';
      p.much = true;
      return [];
    case 'former':
    case 'latter': {
      const pair = lastTwo(
        before.filter((b) => b.value !== 'former' && b.value !== 'latter'),
        p,
      );
      return pair.length === 2 ? [pair[value === 'former' ? 0 : 1] as string] : [];
    }
    case 'the-lead': {
      const dogs = at('lead');
      if (dogs.length === 1) return dogs;
      p.doubt = 'which of the leaders is meant was not said';
      return [];
    }
    case 'told':
      return [];
    default: {
      if (value.startsWith('of-')) {
        const dogs = lineup.filter((l) => (l as Told).driver === value.slice(3)).map((l) => l.dog);
        return p.count && dogs.length !== p.count ? [] : dogs;
      }
      const [word, position] = value.split('-') as [string, string];
      if (word !== 'other') return at(position, word);
      const dogs = at(position);
      const last = [...before].reverse().find((b) => b.dogs.length === 1 && dogs.includes(b.dogs[0] as string));
      const rest = last ? dogs.filter((d) => d !== last.dogs[0]) : [];
      if (rest.length !== 1) p.doubt = `which one is "the other ${position}" is not clear`;
      return rest.length === 1 ? rest : [];
    }
  }
}

/** Who was named before for the same thing as the rest is: under its heading, and of a meal those of whom eating was told. */
function namedFor(p: DogPhrase, before: readonly DogPhrase[]): readonly DogPhrase[] {
  return before.filter(
    (b) =>
      !b.aside &&
      !(p.since !== undefined && b.from < p.since) &&
      !(p.eats && !b.eats && !sameSentence(b, p) && before.some((x) => x.eats)),
  );
}

/** "the other two": out of a group spoken of, out of the dogs named in the note, or out of the team; where the number fits. */
function othersOf(n: number, before: readonly DogPhrase[], all: readonly string[]): string[] | undefined {
  const named = before.filter((b) => b.kind === 'names');
  const groups = before.filter((b) => b.kind === 'group' && b.dogs.length > n).reverse();
  for (const g of groups) {
    const since = new Set(named.filter((b) => b.from >= g.to).flatMap((b) => b.dogs));
    const left = g.dogs.filter((d) => !since.has(d));
    if (left.length === n && since.size) return left;
  }
  // Dogs named in the note, less those named last
  const order = uniq(named.flatMap((b) => b.dogs));
  for (let k = named.length - 1; k > 0; k--) {
    const last = new Set(named.slice(k).flatMap((b) => b.dogs));
    const left = order.filter((d) => !last.has(d));
    if (left.length === n && last.size + n === order.length && (all.length === 0 || order.length < all.length))
      return left;
  }
  const said = new Set(before.filter((b) => b.kind === 'names' || b.dogs.length < all.length).flatMap((b) => b.dogs));
  const rest = all.filter((d) => !said.has(d));
  return rest.length === n ? rest : undefined;
}

/** The two dogs spoken of last. */
function lastTwo(before: readonly DogPhrase[], p: DogPhrase): string[] {
  const found: string[] = [];
  for (let k = before.length - 1; k >= 0; k--) {
    const dogs = (before[k] as DogPhrase).dogs;
    if (dogs.length === 2 && !found.length) return dogs;
    if (dogs.length > 2) {
      if (!found.length) continue;
      break;
    }
    for (const d of dogs) if (d !== '*' && !found.includes(d)) found.unshift(d);
    if (found.length === 2) return found;
  }
  if (found.length !== 2) p.doubt = 'which two dogs are meant is not clear';
  return found.length === 2 ? found : [];
}

function pronoun(p: DogPhrase, before: readonly DogPhrase[], roster: Roster, lineup: readonly Place[]): string[] {
  if (p.value === 'they') {
    for (let k = before.length - 1; k >= 0; k--) {
      const b = before[k] as DogPhrase;
      if (b.dogs.length > 1 || b.dogs[0] === '*') return b.dogs;
      if (b.kind === 'names' && k > 0) {
        const pair = lastTwo(before.slice(0, k + 1), p);
        if (pair.length === 2 && sameSentence(before[k - 1], b)) return pair;
      }
    }
    p.doubt = undefined;
    return lineup.length ? lineup.map((l) => l.dog) : ['*'];
  }
  let beside: string[] | undefined;
  for (let k = before.length - 1; k >= 0; k--) {
    const b = before[k] as DogPhrase;
    const fit = b.dogs.filter((d) => d !== '*' && (roster.sexOf(d) ?? p.value) === p.value);
    // "Polka went up front beside Salsa. She was nervous": the one spoken of, not the one beside.
    if (
      fit.length === 1 &&
      b.company &&
      b.kind === 'names' &&
      !b.owns &&
      before[k - 1] &&
      b.from - (before[k - 1] as DogPhrase).to < 8
    ) {
      beside ??= fit;
      continue;
    }
    if (beside && (fit.length !== 1 || b.kind !== 'names' || p.from - b.to > 24)) return beside;
    // "Clara has them on her front feet": hers who has them
    const has = b.kind === 'pronoun' && b.value === 'they' ? before[k - 1] : undefined;
    if (has?.kind === 'names' && has.dogs.length === 1 && b.from - has.to <= 2) continue;
    if (fit.length === 1) return fit;
    if (fit.length > 1 && b.kind === 'names' && !b.excepted) {
      p.doubt = `"${p.value === 'M' ? 'he' : 'she'}" could be ${fit.join(' or ')}`;
      return b.dogs.length === 2 ? [fit[fit.length - 1] as string] : [];
    }
  }
  return beside ?? [];
}

const sameSentence = (a: DogPhrase | undefined, b: DogPhrase) => Boolean(a && b.from - a.to < 12);
