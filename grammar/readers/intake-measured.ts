/** Reader "intake", a measure that a dog took: "Storm had half a cup", "each took a pint of broth", "finished 400 g". */
import type { Frame, Quantity } from '../steps/frame.ts';
import { type Intake, itemAt, ownFood, type Served, whatOf } from './intake-food.ts';
import { UNIT } from './intake-giving.ts';
import { doubted, said } from './said.ts';

const TOOK =
  /^(took|takes|had|has|got|gets|finished|finishes|managed|manages|ate|eats|drank|drinks|drunk|downed|swallowed|put)$/;

/** Reads a measured amount behind a dog and a verb of taking; what other rules took stays theirs. */
export function readMeasured(f: Frame, told: readonly Intake[]): Intake[] {
  const out: Intake[] = [];
  for (const q of f.quantities) {
    if (!q.unit || !(q.unit in UNIT) || q.value <= 0 || f.isClaimed(q.from, q.to)) continue;
    const down = downDog(f, q);
    if (down) {
      out.push(down);
      f.claim(q.from, q.to);
      continue;
    }
    let k = q.from - 1;
    while (
      /^(about|around|maybe|roughly|nearly|almost|over|only|just|a|good|down|away|another|the|their|his|her)$/.test(
        f.low(k),
      )
    )
      k--;
    if (!TOOK.test(f.low(k)) || f.isClaimed(k, q.from)) continue;
    const verb = k;
    while (/^(each|both|all|only|just|has|have|had|also|then|even)$/.test(f.low(k - 1))) k--;
    const dog = f.dogs.find((d) => d.to === k && d.dogs.length && !d.possessive && !d.excepted);
    if (!dog || ownFood(f, q.from)) continue;
    const food = foodOf(f, q);
    const served = [...told, ...out].filter((x) => (x.span?.[0] ?? 0) < (f.tokens[q.from]?.start ?? 0)).at(-1);
    if (!food && !(served && bare(f, q))) continue;
    const each = dog.dogs.length === 1 || f.m.of('per-dog').some((p) => p.from >= dog.to && p.from - q.to <= 3);
    const what =
      food?.what ?? (food ? whatOf(f, food, { tag: 'ate', value: 'all', from: verb, to: verb + 1 }) : served?.what);
    if (!what || ((what === 'water') !== (q.dimension === 'volume') && !food && q.unit !== 'cup')) continue;
    const item = food ? food.item : served?.item;
    out.push({
      kind: 'intake',
      dogs: dog.dogs,
      what,
      took: 'all',
      ...(item ? { item } : {}),
      ...(each ? { amount: q.value, unit: UNIT[q.unit] } : {}),
      ...said(f.assertion(verb, q.to)),
      span: f.span([dog.from, q.to]),
      rule: '<dog> took <amount>',
      ...doubted(dog.doubt),
    });
    f.claim(verb, q.to);
  }
  return out;
}

/** "0.5 l broth down him so far", "a quart of water into Gus": got down a dog. */
function downDog(f: Frame, q: Quantity): Intake | undefined {
  const food = foodOf(f, q);
  if (!food || ownFood(f, q.from)) return undefined;
  let k = food.at;
  while (f.m.at('food', k)) k++;
  const dog = /^(down|into|inside|in)$/.test(f.low(k)) ? f.dogFrom(k + 1) : undefined;
  if (dog?.dogs.length !== 1 || dog.possessive || dog.excepted) return undefined;
  // "couldn't get a cup of water into him"
  for (let n = q.from - 1; n > q.from - 6 && n >= 0 && !f.isStrong(n); n--)
    if (/^(not|n't|never|cannot|cant|hardly|unable|failed)$/.test(f.low(n))) return undefined;
  const m = { tag: 'ate', value: 'all', from: q.from, to: q.to };
  return {
    kind: 'intake',
    dogs: dog.dogs,
    what: food.what ?? whatOf(f, food, m),
    took: 'all',
    ...(food.item ? { item: food.item } : {}),
    amount: q.value,
    unit: UNIT[q.unit as string],
    ...said(f.assertion(q.from, dog.to)),
    span: f.span([q.from, dog.to]),
    rule: '<amount> down <dog>',
    ...doubted(dog.doubt),
  };
}

/** The food that was measured: "of the broth", "of fish". */
function foodOf(f: Frame, q: Quantity): (Served & { own: true }) | undefined {
  let k = q.to;
  while (/^(of|the|that|his|her|their|our|warm|hot|cold|frozen|raw|good|some)$/.test(f.low(k)) && k - q.to < 4) {
    if (f.m.from('food', k)) break;
    k++;
  }
  const food = f.m.from('food', k);
  if (!food || !/^(water|solid)$/.test(food.value) || f.dogAt(k)) return undefined;
  const item = itemAt(f, food);
  return {
    what: food.value === 'water' ? 'water' : undefined,
    at: k,
    own: true,
    ...(item === 'water' ? {} : { item }),
  };
}

/** Nothing else was measured: the amount ends the statement, or says that it is for each. */
const bare = (f: Frame, q: Quantity) =>
  /^([.,;!]|and|but|each|apiece|)$/.test(f.low(q.to)) || f.dogFrom(q.to) !== undefined;

/** How much went down, by the words before "into her" and "down him". */
const DOWN_HOW: Record<string, Intake['took']> = {
  nothing: 'none',
  none: 'none',
  little: 'some',
  sip: 'some',
  sips: 'some',
  bit: 'some',
};

/** "got a quart of water down him", "three ladles of broth into her", "0.5 l broth down him so far": what a dog was brought to take. */
export function readBrought(f: Frame): Intake[] {
  const out: Intake[] = [];
  for (const d of f.dogs) {
    const k = d.from - 1;
    if (!/^(into|down|in)$/.test(f.low(k)) || d.possessive || !d.dogs.length || d.excepted) continue;
    const food = f.m
      .of('food')
      .findLast(
        (x) =>
          x.to <= k &&
          k - x.to <= 2 &&
          /^(water|solid)$/.test(x.value) &&
          !f.dogAt(x.from) &&
          !f.strongBetween(x.from, k),
      );
    if (!food || f.tokens.slice(food.to, k).some((t) => !/^(back|right|straight|was|some|poured)$/.test(t.low)))
      continue;
    const q = f.quantities.find(
      (x) => x.unit && x.unit in UNIT && x.to <= food.from && food.from - x.to <= 3 && x.value > 0,
    );
    const from = q ? q.from : food.from;
    const verb = [1, 2, 3, 4, 5]
      .map((n) => from - n)
      .find((i) => /^(got|get|getting|poured|pour|tipped|put|spooned|syringed|managed|had)$/.test(f.low(i)));
    if (!q && verb === undefined) continue;
    if (f.isClaimed(from, food.to) || (f.low(k) === 'in' && verb === undefined)) continue;
    const how = f.tokens
      .slice(Math.max(0, from - 3), from)
      .map((t) => DOWN_HOW[t.low])
      .find(Boolean);
    const served = { what: food.value === 'water' ? ('water' as const) : undefined, at: food.from, own: true };
    const item = itemAt(f, food);
    out.push({
      kind: 'intake',
      dogs: d.dogs,
      what: whatOf(f, served, food),
      took: how ?? 'all',
      ...(item === 'water' ? {} : { item }),
      ...(q && d.dogs.length === 1 ? { amount: q.value, unit: UNIT[q.unit as string] } : {}),
      ...said(f.assertion(food.from, food.to)),
      span: f.span([from, d.to]),
      rule: '<food> into <dog>',
      ...doubted(d.doubt),
    });
    f.claim(from, d.to);
  }
  return out;
}

/** "nobody left any broth", "none of them left a crumb": who leaves nothing took it all. */
export function readNoneLeft(f: Frame): Intake[] {
  const out: Intake[] = [];
  for (const d of f.dogs) {
    if (
      !d.negative ||
      !d.dogs.length ||
      !/^(left|wasted|leaves|spilled)$/.test(f.low(d.to)) ||
      f.isClaimed(d.to, d.to + 1)
    )
      continue;
    let k = d.to + 1;
    while (
      /^(any|a|an|so|much|as|single|drop|crumb|scrap|bite|morsel|of|the|their|his|her|theirs|anything)$/.test(
        f.low(k),
      ) &&
      !f.m.from('food', k)
    )
      k++;
    const food = f.m.from('food', k);
    const bare = k > d.to + 1 && /^(drop|crumb|scrap|bite|morsel)$/.test(f.low(k - 1));
    if (!food && !bare) continue;
    const at = food ?? { tag: 'ate', value: 'all', from: d.to, to: k };
    const item = food && /^(water|solid)$/.test(food.value) ? itemAt(f, food) : undefined;
    out.push({
      kind: 'intake',
      dogs: d.dogs,
      what: whatOf(
        f,
        {
          what:
            food?.value === 'water' || f.low(k - 1) === 'drop' ? 'water' : food?.value === 'meal' ? 'meal' : undefined,
          at: at.from,
          own: true,
        },
        at,
      ),
      took: 'all',
      ...(item && item !== 'water' ? { item } : {}),
      span: f.span([d.from, food?.to ?? k]),
      rule: 'nobody left <food>',
      ...doubted(d.doubt),
    });
    f.claim(d.from, food?.to ?? k);
  }
  return out;
}
