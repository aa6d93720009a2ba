/** Reader "intake", food that was left: "left her snack", "left the fish where it was". Left by halves, other words tell it. */
import type { Frame } from '../steps/frame.ts';
import { type Intake, itemAt, ownFood, whatOf } from './intake-food.ts';
import { doubted, said } from './said.ts';

const VERB = /^(left|leaves|leaving|leave)$/;
const DET = /^(his|her|their|its|the|whole|all|of|that|every|entire|last)$/;
/** Behind the food: it lay elsewhere, was kept for later, or only part of it was left. */
const OTHERWISE =
  /^(bags?|cooler|bucket|bowls?|at|in|behind|stop|for|with|half|out|box|back|sled|break|until|till|to|we|i)$/;

/** Reads that a dog left its food. */
export function readLeft(f: Frame): Intake[] {
  const out: Intake[] = [];
  for (const food of f.m.of('food')) {
    if (food.value === 'appetite' || f.dogAt(food.from)) continue;
    let k = food.from - 1;
    while (DET.test(f.low(k)) && food.from - k < 5) k--;
    if (!VERB.test(f.low(k)) || k === food.from - 1 || f.siteAt(k) || f.isClaimed(k, food.to)) continue;
    if (OTHERWISE.test(f.low(food.to)) && !/^in (his|her|the|their) (bowl|dish|pan)/.test(words(f, food.to, 3)))
      continue;
    let s = k;
    while (/^(has|have|had|just|also|even|then|all|both|again|only|still|simply|always)$/.test(f.low(s - 1))) s--;
    const dog = f.dogs.find((d) => d.to === s && d.dogs.length && !d.possessive && !d.company && !d.excepted);
    // "ate a bite and left her supper": the dog of the verb before
    const joined = !dog && /^(and|but|then)$/.test(f.low(s - 1)) ? f.lastDogs(s - 1) : undefined;
    const own = dog ?? (joined && !f.strongBetween(joined.to, s) && f.low(s) !== 'i' ? joined : undefined);
    if (!own?.dogs.length || own.negative || ownFood(f, food.from)) continue;
    // "ate a bite and left her supper": told how much went down
    if (joined && [...f.m.of('ate'), ...f.m.of('drank')].some((x) => x.from >= joined.to && x.to <= k)) continue;
    const what =
      food.value === 'water' ? 'water' : food.value === 'meal' || food.value === 'snack' ? food.value : undefined;
    const item = /^(water|solid)$/.test(food.value) ? itemAt(f, food) : undefined;
    out.push({
      kind: 'intake',
      dogs: own.dogs,
      what: whatOf(f, { what, at: food.from, own: true }, { tag: 'ate', value: 'none', from: k, to: k + 1 }),
      took: 'none',
      ...(item && item !== 'water' ? { item } : {}),
      ...said(f.assertion(k, food.to)),
      span: f.span([own.to <= k && k - own.to < 6 ? own.from : k, food.to]),
      rule: '<dog> left <food>',
      ...doubted(own.doubt),
    });
    f.claim(k, food.to);
  }
  return out;
}

const words = (f: Frame, from: number, n: number) => [...Array(n).keys()].map((i) => f.low(from + i)).join(' ');
