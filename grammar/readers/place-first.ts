/** Line-ups told place first, over several places: "In lead I had Ivy and Rook, in swing Storm and Gus, wheelers Tank, Lark". */
import type { DogPhrase, Frame } from '../steps/frame.ts';

/** What may stand between a place and its dogs, or between the dogs and the next place. */
const SMALL =
  /^(,|:|-|=|;|\/|and|with|then|in|at|on|the|i|we|he|she|have|had|has|'ve|got|put|ran|run|is|are|was|were|'s|'re|today|tonight|tomorrow|this|morning|my|our|dogs|dog|pair|just|only|behind|them|team|position|left|right|l|r|side|will|be|go|goes|there|now|alone|single|double|next|plus|&)$/;

interface Item {
  from: number;
  to: number;
  dogs?: DogPhrase;
}

/** The first tokens of the places that have their dogs behind them, in a row of at least two. */
export function placesFirst(f: Frame): ReadonlySet<number> {
  const out = new Set<number>();
  const places = f.m.of('position');
  if (places.length < 2) return out;
  const ofPlace = (d: DogPhrase) => d.kind === 'group' && /^(lead|swing|team|wheel)$/.test(d.value ?? '');
  const items: Item[] = [
    ...places.filter((p) => !f.siteAt(p.from) && !f.m.at('item', p.from)).map((p) => ({ from: p.from, to: p.to })),
    ...f.dogs.filter((d) => !ofPlace(d) && d.kind !== 'pronoun').map((d) => ({ from: d.from, to: d.to, dogs: d })),
  ].sort((a, b) => a.from - b.from);
  for (let i = 0; i < items.length; ) {
    let k = i;
    while (k + 1 < items.length && linked(f, items[k] as Item, items[k + 1] as Item)) k++;
    const row = items.slice(i, k + 1);
    if (alternates(f, row)) for (const p of row) if (!p.dogs) out.add(p.from);
    i = k + 1;
  }
  return out;
}

function linked(f: Frame, a: Item, b: Item): boolean {
  if (b.from - a.to > 7 || f.strongBetween(a.to, b.from)) return false;
  for (let k = a.to; k < b.from; k++) if (!SMALL.test(f.low(k))) return false;
  return true;
}

/** Place, dogs, place, dogs, and none left over at either end. */
function alternates(f: Frame, row: readonly Item[]): boolean {
  if (row.length < 4 || row[0]?.dogs || !row.at(-1)?.dogs) return false;
  if (row.filter((r) => !r.dogs).length < 2) return false;
  // "she's back in swing and Hop up front": who stands there is told before
  const head = row[0]?.from ?? 0;
  if (
    f.dogs.some(
      (d) => d.kind === 'pronoun' && !d.possessive && d.to <= head && head - d.to <= 4 && !f.strongBetween(d.to, head),
    )
  )
    return false;
  for (const [i, r] of row.entries()) {
    if (r.dogs && (r.dogs.kind !== 'names' || r.dogs.possessive || r.dogs.excepted || r.dogs.company)) return false;
    if (!r.dogs && !row[i + 1]?.dogs) return false;
  }
  // "leaders Miles and Ivy, wheelers Tank and Gus are tired": told of them, not where they stand
  const end = row.at(-1)?.to ?? 0;
  return (
    /^([.,;:!/]|and|with|today|tonight|tomorrow|again|left|right|so|for|but|all|everyone|everybody|)$/.test(
      f.low(end),
    ) || end >= f.tokens.length
  );
}
