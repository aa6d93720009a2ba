/** Reader "intake", what was given: "fed them salmon", "half a litre each", and how much. */
import type { Frame, Mention, Owner, Quantity } from '../steps/frame.ts';
import { foodFor, type Intake, itemAt, phrase, type Served, snackTold, type What, whatOf } from './intake-food.ts';
import { doubted, said } from './places.ts';

export const UNIT: Record<string, NonNullable<Intake['unit']>> = {
  l: 'l',
  ml: 'ml',
  oz: 'oz',
  lb: 'lb',
  g: 'g',
  kg: 'kg',
  cup: 'cup',
  qt: 'qt',
  pt: 'pt',
  gal: 'gal',
  ladle: 'ladle',
  scoop: 'scoop',
  piece: 'piece',
};

/** Amount per dog: "half a pound each", "drank .5 l". */
export function amountFor(
  f: Frame,
  m: Mention,
  owner: Owner,
): { amount: number; unit: NonNullable<Intake['unit']> } | undefined {
  const countable = (q: Quantity) => q.unit !== undefined && q.unit in UNIT && !f.isClaimed(q.from, q.to);
  for (const q of f.quantities) {
    if (!countable(q) || f.strongBetween(Math.min(q.from, m.from), Math.max(q.from, m.from))) continue;
    const gap = q.from >= m.to ? q.from - m.to : m.from - q.to;
    if (gap > 12) continue;
    // "Pesto 1 l, Polka left it": what stands by another dog is that dog's
    const [a, b] = q.from >= m.to ? [m.to, q.from] : [q.to, m.from];
    if (q.from < m.from && f.dogs.some((d) => d.to === q.from && d.kind === 'names' && d !== owner.phrase)) continue;
    if (
      q.from >= m.to &&
      f.dogs.some((d) => d.from >= a && d.to <= b && d.kind === 'names' && !d.prep && d !== owner.phrase)
    )
      continue;
    const each =
      f.m.from('per-dog', q.to) ??
      f.m.of('per-dog').find((p) => Math.abs(p.from - q.to) <= 4 || Math.abs(q.from - p.to) <= 1);
    // "each wheeler drank a litre"
    const apiece = owner.phrase && /^(each|every)$/.test(f.low(owner.phrase.from));
    if (owner.dogs.length === 1 || each || apiece) {
      f.claim(q.from, q.to);
      return { amount: q.value, unit: UNIT[q.unit as string] as NonNullable<Intake['unit']> };
    }
  }
  return undefined;
}

/** Giving: "gave everybody a biscuit", "snacked everyone, salmon", "broth for the leaders". */
export function readGiving(f: Frame, m: Mention, served: Served): Intake[] | undefined {
  const words = phrase(f, m);
  const offered = /^offer/.test(words);
  const food = foodFor(f, m, served);
  const verbFood = /^(snack|water|fed|feed|bait)/.test(words);
  // "gave it to Tank", "gave hers to Gus": the food told before
  const passedOn =
    /^(gave|give|gives|given|fed)$/.test(words) &&
    /^(it|that|hers|his|theirs)$/.test(f.low(m.to)) &&
    f.low(m.to + 1) === 'to'
      ? f.dogFrom(m.to + 2)
      : undefined;
  if (passedOn?.dogs.length && served.at >= 0 && !passedOn.possessive)
    return [
      {
        kind: 'intake',
        dogs: passedOn.dogs,
        what: served.what === 'water' ? 'water' : whatOf(f, { ...served, own: false }, m),
        took: 'all',
        ...(served.item ? { item: served.item } : {}),
        ...said(f.assertion(m.from, m.to)),
        span: f.span([m.from, passedOn.to]),
        rule: '<gave> it to <dogs>',
        ...doubted(passedOn.doubt),
      },
    ];
  if (!verbFood && !food.own) return undefined;
  // "Gus threw his snack in the snow": the dog's doing
  if (
    /^(threw|tossed|dropped|slipped|toss|throw)$/.test(words) &&
    /^(his|her|their|its)$/.test(next0(f, m)) &&
    f.dogs.some((d) => d.to === m.from && !d.possessive)
  )
    return undefined;
  if (
    /^(snack|snacks|feed|bait)$/.test(words) &&
    (/^(his|her|their|the|a|of|this|that|each|every|its|for|at|no|first|second|after|mile|water|quick|fish|meat|half|whole|beef)$/.test(
      f.low(m.from - 1),
    ) ||
      !f.dogFrom(m.to))
  )
    return undefined;
  // "couldn't get a cup of water into him"
  if (
    /^(get|getting|got)$/.test(words) &&
    [1, 2].some((n) => /^(not|n't|never|cannot|cant)$/.test(f.low(m.from - n))) &&
    !(food.own && food.at - m.to <= 2 && /^(never|did n't|did not|didnt)$/.test(denial(f, m.from)))
  )
    return undefined;
  if (f.m.at('act', m.from) && !food.own) return undefined;
  if ((f.m.at('manner', m.from)?.to ?? 0) > m.to) return undefined;
  if (
    f.m.of('act').some((a) => a.value === 'medicated' && a.from >= m.to && a.from - m.to < 5) ||
    f.m.of('boot-verb').some((b) => b.from === m.from && f.m.at('bootie', b.from))
  )
    return undefined;
  if (food.own && food.at > m.from && f.m.at('act', food.at) && f.m.at('act', food.at)?.value === 'ointment')
    return undefined;
  const next = f.low(m.to);
  if (/^(snack|snacks)$/.test(words) && /^(stop|break|at|time|bag|bags|was|is|:|,)$/.test(next) && !f.dogFrom(m.to))
    return undefined;
  if (
    /^(has|have|had|get|gets|got|getting|give|dropped|slipped)$/.test(words) &&
    !(food.own && (food.at - m.to <= 3 || f.dogFrom(m.to)))
  )
    return undefined;
  if (
    /^(has|have|had)$/.test(words) &&
    (f.m.at('ate', m.to) || f.m.of('sign').some((x) => x.from >= m.to && x.to <= food.at))
  )
    return undefined;
  let dog = f.dogs.find(
    (d) =>
      d.from >= m.to &&
      d.from - m.to <= 6 &&
      !d.possessive &&
      !d.excepted &&
      !f.strongBetween(m.to, d.from) &&
      !(d.kind === 'pronoun' && /^(he|she|they)$/.test(f.low(d.from))),
  );
  if (dog && f.m.of('gave').some((g) => g.from > m.from && g.from < (dog?.from ?? 0))) dog = undefined;
  if (dog && dog.from > m.to && food.own && food.at < dog.from && !dog.prep && f.low(dog.from - 1) !== 'all')
    dog = undefined;
  if (!dog) {
    const before = f.dogs.filter((d) => d.to <= m.from && m.from - d.to <= 3 && !d.possessive && !d.company).at(-1);
    if (before && !f.strongBetween(before.to, m.from) && !/^(i|we|and)$/.test(f.low(m.from - 1))) dog = before;
  }
  const each = f.m.of('per-dog').some((p) => !f.strongBetween(p.from, m.from));
  let dogs = dog?.dogs ?? [];
  if (!dogs.length) {
    if (!each && !verbFood) return undefined;
    const all = f.lineup(m.from).map((l) => l.dog);
    dogs = all.length ? all : ['*'];
    if (!each && !/^(snacked|watered|fed)$/.test(words)) return undefined;
    if (words === 'fed' && /^(at|by|around|about|@)$/.test(next)) return undefined;
  }
  const what: What =
    /^water|^bait/.test(words) && !food.own
      ? 'water'
      : food.what === 'water'
        ? 'water'
        : /^snack/.test(words)
          ? 'snack'
          : /^(fed|feed)/.test(words) && !snackTold(f) && !f.out
            ? 'meal'
            : whatOf(f, food, m);
  // "Watered at two, all but Gus took it"
  if (what === 'water' && !food.own) Object.assign(served, { what, item: undefined, at: m.from });
  const item = food.item ?? commaItem(f, m);
  const amount = amountFor(f, m, { dogs: each ? ['a'] : dogs, phrase: dog });
  const assertion = f.assertion(m.from, m.to);
  const denied = notGiven(f, m);
  // "Haven't fed yet": it is still to come, and nobody was named
  if (denied && (!dog || yetBehind(f, m))) return undefined;
  const entry: Intake = {
    kind: 'intake',
    dogs,
    what,
    took: denied || dog?.negative ? 'none' : 'all',
    ...(item ? { item } : {}),
    ...(denied || dog?.negative ? {} : amount),
    ...said(assertion),
    span: f.span([m.from, m.to], dog ? [dog.from, dog.to] : undefined, food.own ? [food.at, food.at + 1] : undefined),
    rule: offered ? '<offered> <dogs>' : '<gave> <dogs> <food>',
    ...doubted(dog?.doubt),
  };
  const also = denied ? undefined : (alsoGiven(f, entry, food) ?? nextGiven(f, entry, food));
  return also ? [entry, also] : [entry];
}

/** "Gave Rook fish and Gus broth": the verb is said once. */
function nextGiven(f: Frame, first: Intake, food: Served & { own: boolean }): Intake | undefined {
  let k = food.at;
  while (food.own && f.m.at('food', k) && !f.dogAt(k)) k++;
  while (/^(,|and|&)$/.test(f.low(k))) k++;
  const dog = f.dogFrom(k);
  if (!dog?.dogs.length || k === food.at || dog.possessive || dog.kind === 'pronoun' || dog.prep) return undefined;
  const q = f.quantityAt(dog.to);
  const amount = q?.unit && q.unit in UNIT && q.from === dog.to ? q : undefined;
  let at = amount ? amount.to : dog.to;
  while (/^(the|some|a|his|her|their|of)$/.test(f.low(at))) at++;
  const next = f.m.from('food', at);
  if (!next || !/^(water|solid)$/.test(next.value) || f.dogAt(at) || !/^([.,;!]|and|but|)$/.test(f.low(next.to)))
    return undefined;
  const item = itemAt(f, next);
  const { item: _i, amount: _a, unit: _u, doubt: _d, because: _b, ...rest } = first;
  if (amount) f.claim(amount.from, amount.to);
  return {
    ...rest,
    dogs: dog.dogs,
    what: next.value === 'water' ? 'water' : whatOf(f, { at, own: true, item }, next),
    ...(item === 'water' ? {} : { item }),
    ...(amount && dog.dogs.length === 1 ? { amount: amount.value, unit: UNIT[amount.unit as string] } : {}),
    span: f.span([dog.from, next.to]),
    ...doubted(dog.doubt),
  };
}

/** "2 scoops of kibble and a ladle of broth": food and drink given together. */
function alsoGiven(f: Frame, first: Intake, food: Served & { own: boolean }): Intake | undefined {
  if (!food.own) return undefined;
  let k = food.at;
  while (f.m.at('food', k) && !f.dogAt(k)) k++;
  if (!/^(and|&|\+|plus|then|with)$/.test(f.low(k)) || f.strongBetween(food.at, k)) return undefined;
  let n = k + 1;
  while (
    /^(some|a|the|warm|hot|good|big|little|bit|of|also|then|his|her|their)$/.test(f.low(n)) &&
    n - k < 5 &&
    !f.quantityAt(n)
  )
    n++;
  const q = f.quantityAt(n);
  const amount = q?.unit && q.unit in UNIT && q.from === n ? q : undefined;
  if (f.low(k) === 'with' && !amount) return undefined;
  let at = amount ? amount.to : n;
  while (/^(of|warm|hot|the|good|baited)$/.test(f.low(at)) && !f.m.from('food', at)) at++;
  const next = f.m.from('food', at);
  if (
    !next ||
    !/^(water|solid)$/.test(next.value) ||
    f.dogAt(at) ||
    (next.value === 'water') === (first.what === 'water')
  )
    return undefined;
  const item = itemAt(f, next);
  const { item: _i, amount: _a, unit: _u, ...rest } = first;
  if (amount) f.claim(amount.from, amount.to);
  return {
    ...rest,
    what: next.value === 'water' ? 'water' : whatOf(f, { at, own: true, item }, next),
    ...(item === 'water' ? {} : { item }),
    ...(amount && first.dogs.length === 1 ? { amount: amount.value, unit: UNIT[amount.unit as string] } : {}),
    span: f.span([amount?.from ?? at, next.to]),
  };
}

/** "Did not feed Tank", "hasn't been fed", "never got a snack": it went without. */
function notGiven(f: Frame, m: Mention): boolean {
  for (let k = m.from - 1; k >= Math.max(0, m.from - 4); k--) {
    if (/^(n't|not|never|didnt|dont|wasnt|werent|without)$/.test(f.low(k))) return true;
    if (!/^(been|being|get|got|gotten|even|have|be|any|ever|to|actually|really)$/.test(f.low(k)) && !f.dogAt(k))
      return false;
  }
  return false;
}

const next0 = (f: Frame, m: Mention): string => f.low(m.to);

/** The words that deny the verb at `i`: "did n't", "never". */
const denial = (f: Frame, i: number): string =>
  f.low(i - 1) === 'never' || f.low(i - 1) === 'didnt' ? f.low(i - 1) : `${f.low(i - 2)} ${f.low(i - 1)}`;

const yetBehind = (f: Frame, m: Mention): boolean => {
  for (let k = m.to; k < f.tokens.length && !f.isStrong(k); k++)
    if (/^(yet|until|till|before|enough|too|much)$/.test(f.low(k))) return true;
  return false;
};

/** "snacked everyone, salmon" */
function commaItem(f: Frame, m: Mention): string | undefined {
  const food = f.m
    .of('food')
    .find(
      (x) => x.from >= m.to && x.from - m.to < 6 && (x.value === 'solid' || x.value === 'water') && !f.dogAt(x.from),
    );
  return food && phrase(f, food) !== 'water' && !f.strongBetween(m.to, food.from) ? itemAt(f, food) : undefined;
}
