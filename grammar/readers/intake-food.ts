/** Reader "intake", the food: what was served, what a verb of eating speaks of, and whether it is a snack or a meal. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Mention } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';

export type Intake = EntryOf<'intake'>;
export type What = Intake['what'];

export interface Served {
  item?: string;
  what?: What;
  at: number;
}

/** Keeps the food named last, so that "hers" and "it" can stand for it. */
export function serve(f: Frame, m: Mention, served: Served): void {
  if (m.value === 'appetite' || f.dogAt(m.from)) return;
  const words = phrase(f, m);
  if (ownFood(f, m.from)) return;
  if (m.value === 'water' || m.value === 'solid') {
    if (m.value === 'water' && /^(snow|liquid|fluids|milk|stock)$/.test(words)) return;
    if (
      /^(on|over|through|of|open|running)$/.test(f.low(m.from - 1)) &&
      words === 'water' &&
      !/^(drink|bowl)$/.test(f.low(m.from - 1))
    ) {
      if (/^(on|over|through|open|running)$/.test(f.low(m.from - 1))) return;
    }
    if (words === 'water' && f.low(m.to) === 'stop') {
      served.what = 'water';
      served.item = undefined;
      served.at = m.from;
      return;
    }
    served.what = m.value === 'water' ? 'water' : undefined;
    served.item = words === 'water' ? undefined : itemAt(f, m);
    served.at = m.from;
  } else if (m.value === 'snack' || m.value === 'meal') {
    if (served.what === 'water') {
      served.what = undefined;
      served.item = undefined;
    }
    served.at = m.from;
  }
}

/** "my ginger tea", "I had beef stew": a person's food. */
export function ownFood(f: Frame, i: number): boolean {
  for (let k = i - 1; k >= Math.max(0, i - 4); k--) {
    if (f.isStrong(k)) return false;
    if (f.dogAt(k)) return false;
    if (/^(my|our|i|me|myself)$/.test(f.low(k)))
      return /^(my|our)$/.test(f.low(k)) || /^(had|ate|made|drank|made|cooked|have|am|'m)$/.test(f.low(k + 1));
    const p = f.personAt(k);
    if (p && /^(ate|had|made|is|'s|brought|cooked)$/.test(f.low(p.to))) return true;
  }
  return false;
}

export const phrase = (f: Frame, m: { from: number; to: number }) => wordsIn(f.tokens, m.from, m.to);

/** The food as said, with a word before it that belongs to it: "beaver stew", "turkey skins". */
export function itemAt(f: Frame, m: Mention): string {
  let { from, to } = m;
  while (f.m.from('food', to) && /^(solid|water)$/.test(f.m.from('food', to)?.value) && !f.dogAt(to))
    to = f.m.from('food', to)?.to ?? to;
  return f.text
    .slice((f.tokens[from] as { start: number }).start, (f.tokens[to - 1] as { end: number }).end)
    .toLowerCase();
}

/** The food of this statement: named right behind the verb, or before it in the clause; else what was served. */
export function foodFor(f: Frame, m: Mention, served: Served): Served & { own: boolean } {
  for (const food of f.m.of('food')) {
    const gap = food.from - m.to;
    if (gap >= 9) break;
    if (food.to <= m.from) continue;
    if (food.value === 'appetite' || f.dogAt(food.from) || ownFood(f, food.from)) continue;
    const inside = food.from >= m.from && food.to <= m.to;
    if (inside || (gap >= 0 && gap < 9 && !f.strongBetween(m.to, food.from) && !stopBetween(f, m.to, food.from))) {
      const words = phrase(f, food);
      if (words === 'snow' && !/drank/.test(m.tag)) continue;
      if (food.value === 'water' || food.value === 'solid') {
        const meal = f.m.of('food').some((x) => x.value === 'meal' && x.from > food.from && x.from - food.to < 4);
        return {
          what: food.value === 'water' ? 'water' : meal ? 'meal' : undefined,
          item: words === 'water' || words === 'snow' ? undefined : itemAt(f, food),
          at: food.from,
          own: true,
        };
      }
      // "ate her snack", "half his supper"; a food may follow: "snack of fish", "salmon"
      const next = f.m
        .of('food')
        .find(
          (x) =>
            (x.value === 'solid' || x.value === 'water') &&
            x.from >= food.to &&
            x.from - food.to <= 2 &&
            !f.dogAt(x.from) &&
            /^(of|,|-|:)?$/.test(phrase(f, { from: food.to, to: x.from })),
        );
      return {
        what: food.value === 'meal' ? 'meal' : 'snack',
        item: next ? itemAt(f, next) : undefined,
        at: food.from,
        own: true,
      };
    }
  }
  return { own: false, ...served };
}

/** Something else begins before the food: another verb of eating, another dog as subject. */
function stopBetween(f: Frame, a: number, b: number): boolean {
  for (let k = a; k < b; k++) {
    const d = f.dogFrom(k);
    if (d && !d.possessive && !(d.kind === 'pronoun') && !/^(all|both)$/.test(d.value ?? '') && k > a) return true;
    if (f.m.from('ate', k) && k > a && /^(refused|wouldn|would|ate|drank)$/.test(f.low(k))) return true;
    if (f.m.from('drank', k) && k > a) return true;
    if (f.low(k) === ',' && f.low(k + 1) !== 'some') return b - k > 3;
    if (f.low(k) === 'but') return true;
  }
  return false;
}

/** Words of a meal that out on the trail are a snack's too. */
const TRAIL_MEAL = /^(fed|feed|feeding|lunch|bowls?|dish|dishes|pans?)$/;
export const mealTold = (f: Frame) => f.m.of('meal-time').some((x) => !(f.out && TRAIL_MEAL.test(f.low(x.from))));
export const snackTold = (f: Frame) =>
  f.m.of('snack-time').length > 0 || f.entries.some((e) => e.kind === 'distance' && e.measure === 'mark');

/** Snack on the trail, meal in the yard. */
export function whatOf(f: Frame, food: Served & { own: boolean }, m: Mention): What {
  if (food.what === 'water') return 'water';
  if (food.what) return food.what;
  const near = f.m
    .of('meal-time')
    .find((x) => !f.strongBetween(x.from, m.from) && !(f.out && TRAIL_MEAL.test(f.low(x.from))));
  if (near) return 'meal';
  if (mealTold(f) && !snackTold(f)) return 'meal';
  if (f.m.of('snack-time').length > 0) return 'snack';
  if (food.item === 'kibble') return 'meal';
  if (f.out || snackTold(f)) return 'snack';
  return f.told.length > 1 && !mealTold(f) ? 'snack' : 'meal';
}
