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
