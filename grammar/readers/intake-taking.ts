/** Reader "intake", what a dog took: "ate all", "picked at it", "left half", "wouldn't drink". */
import type { DogPhrase, Frame, Mention, Owner } from '../steps/frame.ts';
import { foodFor, type Intake, phrase, type Served, type What, whatOf } from './intake-food.ts';
import { amountFor, UNIT } from './intake-giving.ts';
import { howMuch } from './intake-lists.ts';
import { EATING, takingStands } from './intake-stands.ts';
import { doubted, said } from './places.ts';

export function readTaking(
  f: Frame,
  m: Mention,
  told: 'ate' | 'drank',
  served: Served,
  before: readonly Intake[],
): Intake[] | undefined {
  const words = phrase(f, m);
  let food = foodFor(f, m, served);
  // "put away a pound of salmon": what can be said of a drink, said of food
  const kind = told === 'drank' && food.own && food.what !== 'water' && EITHER.test(words) ? 'ate' : told;
  if (kind === 'ate' && food.what === 'water' && !food.own && (EATING.test(words) || solidBite(f, m)))
    food = { at: food.at, own: false };
  if (
    WEAK_NONE.test(words) &&
    before.some((e) => e.took !== 'none' && f.lastDogs(m.from)?.dogs.join() === e.dogs.join())
  )
    return undefined;
  // "none of them refused it": the verb tells it
  const nobody = /^none of$/.test(words)
    ? f.dogs.find((d) => d.negative && d.from <= m.from && m.to <= d.to)
    : undefined;
  if (nobody && f.m.of('ate').some((x) => x.from === nobody.to)) return undefined;
  if (/^(instead of|rather than)$/.test(phrase(f, { from: m.from - 2, to: m.from }))) return undefined;
  if (!takingStands(f, m, words, kind, food, served)) return undefined;
  // "Then broth, half a litre each, gone in seconds": everybody's
  if (
    /^(gone|vanished|all gone)\b/.test(words) &&
    f.m.of('per-dog').some((p) => p.to <= m.from && !f.strongBetween(p.from, m.from)) &&
    !f.dogs.some((d) => d.to <= m.from && !f.strongBetween(d.to, m.from))
  )
    return undefined;
  const owner = whoTook(f, m, kind, before);
  if (owner.human || (!owner.dogs.length && !owner.phrase)) return undefined;
  if (!owner.dogs.length) return undefined;
  let took = m.value as Intake['took'];
  // "the boys cleaned their bowls, the girls were fussy": of the same
  const before1 = before.at(-1);
  const sameMeal =
    kind === 'ate' &&
    !food.own &&
    !food.what &&
    before1?.what === 'meal' &&
    before1.span !== undefined &&
    f.sentence(f.tokens.findIndex((t) => t.end > (before1.span?.[0] ?? 0))) === f.sentence(m.from);
  const what: What = sameMeal
    ? 'meal'
    : emptiedBroth(f, m, words, served)
      ? 'water'
      : kind === 'drank' || /\bwater|drink\b/.test(words)
        ? 'water'
        : whatOf(f, food, m);
  took = refine(f, m, took, words, kind);
  if (notBrought(f, m)) took = 'none';
  if (took === 'all' && deniedVerb(f, m)) took = /^(finish|clean|polish|empt|drain)/.test(words) ? 'some' : 'none';
  if (took === 'some' && isMeasured(f, m)) took = 'all';
  const asserted = f.asserted(m.from, m.to);
  // A denial of something else does not reach over to eating.
  const far =
    asserted.assertion === 'absent' &&
    asserted.cue &&
    f.m.of('sign').some((x) => x.from >= (asserted.cue?.to ?? 0) && x.to <= m.from);
  const assertion = far ? 'present' : asserted.assertion;
  if (owner.phrase?.negative && took !== 'none') took = 'none';
  if (assertion === 'absent' && took === 'all') took = 'none';
  const kept = m.value === 'none' && refusalDenied(f, m, owner);
  if (kept) took = 'all';
  const item =
    food.item &&
    (food.own || food.what === undefined || food.what === what) &&
    (kind !== 'drank' || food.what === 'water')
      ? food.item
      : undefined;
  const amount = took === 'none' ? undefined : amountFor(f, m, owner);
  const base: Intake = {
    kind: 'intake',
    dogs: owner.dogs,
    what,
    took,
    ...(item && !(what === 'water' && item === 'water') ? { item } : {}),
    ...(amount ?? {}),
    ...said(assertion === 'absent' ? 'present' : assertion),
    span: f.span(
      [m.from, m.to],
      owner.phrase && Math.abs(owner.phrase.from - m.from) < 10 ? [owner.phrase.from, owner.phrase.to] : undefined,
      food.own ? [food.at, food.at + 1] : undefined,
    ),
    rule: kind === 'drank' ? '<dog> drank' : '<dog> ate',
    ...doubted(owner.doubt),
  };
  if (kind === 'drank') {
    if (served.what !== 'water') served.item = undefined;
    served.what = 'water';
    served.at = m.from;
  }
  if (took === 'none' || kept) claimBite(f, m);
  const both = secondFood(f, m, base);
  return both ? [base, both] : [base];
}

/** "drank half a litre": the half is the measure's, and what was measured went down. */
function isMeasured(f: Frame, m: Mention): boolean {
  const q = f.quantityAt(m.to - 1);
  return (
    q !== undefined && q.to > m.to && q.unit !== undefined && q.unit in UNIT && !/^(left|leav)/.test(f.low(m.from))
  );
}

/** "may not have eaten", "never really drank": with a doubt over it, it is a denial still. */
function deniedVerb(f: Frame, m: Mention): boolean {
  let k = m.from - 1;
  // "too wound up to eat"
  if (f.low(k) === 'to' && [1, 2, 3, 4].some((n) => f.low(k - n) === 'too' && !f.strongBetween(k - n, k))) return true;
  while (/^(have|has|had|been|be|even|ever|really|actually)$/.test(f.low(k))) k--;
  return /^(n't|not|never)$/.test(f.low(k)) && f.low(k + 1) !== 'only';
}

/** Turning food down, in words that hold no denial themselves. */
const REFUSAL =
  /^(refus\w*( \w+)?|turn(s|ed|ing)? (it|them|her|his|hers|theirs|up|down)\b.*|turned .*|said no\b.*|skip(s|ped|ping)?|snubbed|snubbing|declined|rejected|ignored|ignored it|passed|passed on|passed it up|walked away from|blew off|blew it off|missed|went without)$/;

/** "nobody turned it down", "she didn't refuse her supper": it was taken. */
function refusalDenied(f: Frame, m: Mention, owner: Owner): boolean {
  if (!REFUSAL.test(phrase(f, m))) return false;
  if (f.dogs.some((d) => d.negative && d.to === m.from)) return true;
  if (owner.phrase?.negative) return f.sentence(owner.phrase.from) === f.sentence(m.from);
  return /^(n't|not|never)$/.test(f.low(m.from - 1));
}

/** "I can't get her to drink", "couldn't coax him to eat": nothing went down. */
function notBrought(f: Frame, m: Mention): boolean {
  if (!/^(to|into)$/.test(f.low(m.from - 1))) return false;
  const verb = (f.dogs.find((x) => x.to === m.from - 1)?.from ?? m.from - 1) - 1;
  if (!/^(get|getting|coax|tempt|talk|persuade|convince|make|bribe)$/.test(f.low(verb))) return false;
  return [1, 2].some((n) => /^(n't|not|never|cannot|cant|couldnt)$/.test(f.low(verb - n)));
}

/** "three ladles of broth, and she licked the pan": what the pan held was drink. */
const emptiedBroth = (f: Frame, m: Mention, words: string, served: Served) =>
  /\b(bowls?|pans?|dish|dishes|bucket)$/.test(words) &&
  m.value === 'all' &&
  served.what === 'water' &&
  served.at >= 0 &&
  f.sentence(m.from) - f.sentence(served.at) <= 1 &&
  !f.m.of('meal-time').some((x) => x.from < m.from && !/^(bowl|pan|dish)/.test(f.low(x.from))) &&
  m.from - served.at < 16;

/** Words of drinking that are said of eating too. */
const EITHER = /^(put away|knocked back|sucked|sucking|downing|went through)/;
/** "never touched a crumb": no drink has crumbs. */
const solidBite = (f: Frame, m: Mention) =>
  [1, 2].some((n) => /^(bites?|crumbs?|scraps?|morsel)$/.test(f.low(m.to + n)));

/** "wouldn't eat one bite of it", "did not drink a drop": the smallest amount said behind is refused with the rest. */
function claimBite(f: Frame, m: Mention): void {
  let k = m.to;
  while (/^(even|a|one|single|any|so|much|as|the|tiny|little)$/.test(f.low(k)) && k - m.to < 5) k++;
  if (
    k > m.to &&
    /^(bites?|licks?|drops?|sips?|mouthfuls?|crumbs?|taste|scraps?|nibbles?|swallows?|laps?)$/.test(f.low(k))
  )
    f.claim(m.to, k + 1);
}

/** "wouldn't take his snack or his water": both were refused. */
function secondFood(f: Frame, m: Mention, first: Intake): Intake | undefined {
  if (first.took !== 'none') return undefined;
  const foods = f.m.of('food').filter((x) => x.from >= m.to && x.from - m.to < 9 && !f.strongBetween(m.to, x.from));
  const other = foods.find((x) => (x.value === 'water') !== (first.what === 'water'));
  if (!other || foods.length < 2) return undefined;
  const between = phrase(f, { from: (foods[0] as Mention).to, to: other.from });
  if (!/^(or|and|nor|,)( his| her| the| their| any)?$/.test(between)) return undefined;
  const { item: _i, ...rest } = first;
  return { ...rest, what: other.value === 'water' ? 'water' : first.what };
}

/** Turning away, which says nothing new of a dog that was just told to have eaten some. */
const WEAK_NONE =
  /^(walked off|walked away|looked away|looked the other way|turned away|sniffed|sniffed at|left it|left (it|his|hers|theirs) lying|passed|dropped it|ignored it)$/;

/** Who ate: the dog before the verb, a list behind a colon, or "for the leaders". */
function whoTook(f: Frame, m: Mention, _kind: string, before: readonly Intake[]): Owner {
  // "Ate: Sif, Tyra." and "refused: Nemo"
  if (f.low(m.to) === ':' || f.low(m.to) === '-') {
    const d = f.dogFrom(m.to + 1);
    if (d) return { dogs: d.dogs, phrase: d };
  }
  // "The salmon was polished off by everybody"
  const agent = f.low(m.to) === 'by' ? (f.dogFrom(m.to + 1) ?? f.dogFrom(m.to + 2)) : undefined;
  if (agent?.dogs.length && !agent.company && !agent.possessive)
    return { dogs: agent.dogs, phrase: agent, doubt: agent.doubt };
  // "fed at six, every bowl licked clean": everybody's
  if (
    /^(every bowl|bowls|clean bowls|shiny bowls|empty bowls)\b/.test(phrase(f, m)) &&
    !f.dogs.some((d) => d.to <= m.from && f.sentence(d.from) === f.sentence(m.from))
  ) {
    const all = f.lineup(m.from).map((l) => l.dog);
    return { dogs: all.length ? all : ['*'] };
  }
  // "most of Tyra's", "none for Moss"
  const owner = f.owner(m.from, m.to);
  const d = owner.phrase;
  if (d && (d.value === 'rest' || d.groups?.includes('rest'))) return rest(f, d, before, owner);
  // A later "the others" resolves by what was said of eating alone.
  return owner;
}

/** The rest of those told of in this matter. */
function rest(f: Frame, d: DogPhrase, before: readonly Intake[], owner: Owner): Owner {
  const all = f.lineup(d.from).map((l) => l.dog);
  const told = new Set(before.flatMap((e) => e.dogs));
  // "Ranger - half; rest - licked it clean"
  for (const x of f.dogs)
    if (x.to <= d.from && x.kind === 'names' && howMuch(f, /^[:-]$/.test(f.low(x.to)) ? x.to + 1 : x.to))
      for (const y of x.dogs) told.add(y);
  if (!all.length) return owner;
  const named = f.dogs.filter((x) => x.to <= d.from && x.kind === 'names').flatMap((x) => x.dogs);
  const of = told.size ? told : new Set(named);
  const dogs = all.filter((x) => !of.has(x));
  return { ...owner, dogs };
}

/** "drank only a little", "ate half of it": a smaller amount said behind the verb. */
function refine(f: Frame, m: Mention, took: Intake['took'], words: string, _kind: string): Intake['took'] {
  if (took !== 'all') return took;
  if (/clean|polish|wolf|inhale|devour|lick|everything/.test(words)) return took;
  for (let k = m.to; k < Math.min(f.tokens.length, m.to + 5); k++) {
    if (f.isStrong(k) || f.low(k) === ',' || (f.dogFrom(k) && !f.dogFrom(k)?.possessive)) break;
    // "drank his broth and had a few bites of fish": the next thing he took
    if (/^(and|then)$/.test(f.low(k)) && (f.m.at('ate', k + 1) || f.m.at('drank', k + 1))) break;
    const a = f.m.from('ate', k) ?? f.m.from('drank', k);
    if (a && (a.value === 'some' || a.value === 'most') && !/^(picked)$/.test(f.low(k))) {
      f.claim(a.from, a.to);
      return a.value;
    }
    if (/^(nothing|none|neither)$/.test(f.low(k))) {
      f.claim(k, k + 1);
      return 'none';
    }
    if (/^(little|slowly|reluctantly)$/.test(f.low(k)) && f.low(k - 1) !== 'a') return 'some';
  }
  const prev = f.low(m.from - 1);
  if (/^(barely|hardly|scarcely)$/.test(prev)) return 'some';
  return took;
}
