/** Reader "intake", the whole note: given and taken told of the same dogs is one entry; amounts and answers told in a list. */
import type { Frame, Mention } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import { type Intake, itemAt, phrase, whatOf } from './intake-food.ts';
import { UNIT } from './intake-giving.ts';
import { doubted } from './places.ts';

/** A giving that is told more closely afterwards gives way; the same thing said twice is one. */
export function tidy(f: Frame, out: { entry: Intake; at: number; giving: boolean }[]): Intake[] {
  const keep: Intake[] = [];
  for (const o of out) {
    if (o.giving) {
      const later = out.filter((x) => x !== o && !x.giving && x.at > o.at && sameMatter(f, o, x));
      const offered = o.entry.rule === '<offered> <dogs>';
      if (later.length) {
        const covered = new Set(later.flatMap((x) => x.entry.dogs));
        // A later detail about one dog alone leaves the others given.
        if (
          covered.has('*') ||
          o.entry.dogs[0] === '*' ||
          o.entry.dogs.every((d) => covered.has(d)) ||
          offered ||
          covered.size > 1
        ) {
          for (const l of later) {
            l.entry.item ??= o.entry.item;
            if (l.entry.took === 'all' && o.entry.amount !== undefined && l.entry.amount === undefined) {
              l.entry.amount = o.entry.amount;
              l.entry.unit = o.entry.unit;
            }
          }
          continue;
        }
        for (const l of later) l.entry.item ??= o.entry.item;
        const restDogs = o.entry.dogs.filter((d) => !covered.has(d));
        if (!restDogs.length) continue;
        if (later.some((l) => l.entry.dogs.length > 2)) continue;
        o.entry.dogs = restDogs;
      }
      if (offered && !later.length) continue;
    }
    if (!o.giving) withoutThoseTold(f, o, out);
    const twin = keep.find(
      (k) =>
        k.what === o.entry.what &&
        k.took === o.entry.took &&
        k.dogs.join() === o.entry.dogs.join() &&
        (k.item === o.entry.item || !o.entry.item || !k.item) &&
        (k.assertion ?? 'present') === (o.entry.assertion ?? 'present'),
    );
    if (twin) {
      twin.item ??= o.entry.item;
      if (o.entry.amount !== undefined && twin.amount === undefined) {
        twin.amount = o.entry.amount;
        twin.unit = o.entry.unit;
      }
      continue;
    }
    keep.push(o.entry);
  }
  // "All ate. Moss refused": he is not among all.
  for (const one of keep) {
    if (one.took === 'all' || one.dogs.length > 2 || one.assertion) continue;
    const nearly =
      one.took !== 'none' &&
      (/\b(nearly|almost|mostly|only|just|but|well)\b[^.]{0,24}$/.test(
        f.text.slice(Math.max(0, (one.span?.[0] ?? 0) - 30), one.span?.[0] ?? 0).toLowerCase(),
      ) ||
        // "they lapped it up, Gus just took a sip", "all ate, Ivy left half"
        /\b(only|just|left)\b/.test(f.text.slice(...(one.span ?? [0, 0])).toLowerCase()));
    if (one.took !== 'none' && !nearly) continue;
    const all = keep.find(
      (k) =>
        k !== one &&
        k.took === 'all' &&
        k.what === one.what &&
        k.dogs.length > 3 &&
        one.dogs.every((d) => k.dogs.includes(d)) &&
        !k.assertion,
    );
    if (all) all.dogs = all.dogs.filter((d) => !one.dogs.includes(d));
  }
  exceptedDiffer(keep, f);
  listedTakings(f, keep);
  leftOutVerb(f, keep);
  amountsListed(f, keep);
  amountsBefore(f, keep);
  return keep;
}

/** What was given and what was taken: "fed at six, everyone cleaned their bowls" tells of the one meal. */
const sameMatter = (f: Frame, given: { entry: Intake; at: number }, taken: { entry: Intake; at: number }): boolean =>
  given.entry.what === taken.entry.what ||
  (given.entry.what === 'snack' &&
    taken.entry.what === 'meal' &&
    !given.entry.item &&
    /^(fed|feed)$/.test(f.low(given.at)) &&
    f.sentence(taken.at) - f.sentence(given.at) <= 1);

/** Told in the sentence of the exception or the one before it? */
function nearBy(f: Frame, e: Intake, d: { from: number }): boolean {
  const told = f.tokens.findIndex((t) => t.end > (e.span?.[0] ?? 0));
  return Math.abs(f.sentence(told) - f.sentence(d.from)) <= 3 && Math.abs(told - d.from) < 24;
}

/** "The boys took a sip, except Gus, he drained his": the exception is no more among them. */
function exceptedDiffer(list: readonly Intake[], f: Frame): void {
  for (const d of f.dogs) {
    if (!d.excepted || d.dogs.length > 2) continue;
    const at = f.tokens[d.from]?.start ?? 0;
    const own = list.find((x) => (x.span?.[1] ?? 0) >= at && x.dogs.join() === d.dogs.join());
    const group = list.findLast(
      (x) =>
        x !== own &&
        x.what === own?.what &&
        x.took !== own.took &&
        d.dogs.every((y) => x.dogs.includes(y)) &&
        nearBy(f, x, d),
    );
    if (own && group && group.dogs.length > d.dogs.length) group.dogs = group.dogs.filter((x) => !d.dogs.includes(x));
  }
}

const TAKEN: Record<string, Intake['took']> = {
  clean: 'all',
  little: 'some',
  bits: 'some',
  nil: 'none',
  nada: 'none',
  refused: 'none',
};

/** How much a word or a share behind a dog says, and where it ends: "all", "half a bowl", "3/4 of it". */
function shareAt(f: Frame, k: number): { took: Intake['took']; to: number } | undefined {
  while (/^(only|just|about|maybe|abt)$/.test(f.low(k))) k++;
  const word = HOW_MUCH.find(([w]) => wordsIn(f.tokens, k, k + w.split(' ').length) === w);
  const q = f.quantityAt(k);
  const part = q && q.from === k && !q.unit && q.value > 0 && q.value < 1 ? q : undefined;
  const single = TAKEN[f.low(k)];
  const took = part ? (part.value > 0.6 ? 'most' : 'some') : (word?.[1] ?? single);
  if (!took) return undefined;
  let to = part ? part.to : word ? k + word[0].split(' ').length : k + 1;
  if (f.low(to) === 'of') to++;
  if (/^(a|the|his|her|their)$/.test(f.low(to)) && /^(bowl|dish|pan|portion|ration|snack|share)$/.test(f.low(to + 1)))
    to += 2;
  else if (/^(it|his|hers|theirs)$/.test(f.low(to))) to++;
  return { took, to };
}

/** "Fed at two, kibble. Gantry / Shim: all. Piston - half. Tesla: none.": after food was told, a word behind a colon or a dash. */
function listedTakings(f: Frame, list: Intake[]): void {
  const food =
    f.m.of('food').find((x) => x.value !== 'appetite' && !f.dogAt(x.from)) ??
    f.m.of('gave').find((x) => /^(fed|snacked|watered)$/.test(f.low(x.from)));
  if (!food) return;
  for (const d of f.dogs) {
    const dash = f.low(d.to) === '-' && f.tokens[d.to]?.gap && f.tokens[d.to + 1]?.gap;
    if ((f.low(d.to) !== ':' && !dash) || d.from < food.from || !d.dogs.length) continue;
    const share = shareAt(f, d.to + 1);
    if (!share || !/^([.,;/]|)$/.test(f.low(share.to))) continue;
    // The rest are those of whom nothing else was told.
    const others = new Set(list.flatMap((x) => x.dogs));
    const dogs = d.value === 'rest' ? d.dogs.filter((y) => !others.has(y)) : d.dogs;
    if (!dogs.length || list.some((x) => x.dogs.some((y) => dogs.includes(y)) && x.dogs.length <= dogs.length))
      continue;
    const m: Mention = { tag: 'ate', value: share.took, from: d.to + 1, to: share.to };
    const given = food.tag === 'gave' ? f.low(food.from) : undefined;
    const what =
      food.value === 'water' || given === 'watered'
        ? 'water'
        : whatOf(
            f,
            { what: food.value === 'meal' || given === 'fed' ? 'meal' : undefined, at: food.from, own: false },
            m,
          );
    const item =
      food.value === 'solid' || (food.value === 'water' && phrase(f, food) !== 'water') ? itemAt(f, food) : undefined;
    // "All ate. Gus: half", "Gus: half; rest cleaned up": he is told apart.
    for (const x of list)
      if (x.what === what && x.took !== share.took && x.dogs.length > dogs.length && d.value !== 'rest')
        x.dogs = x.dogs.filter((y) => !dogs.includes(y));
    list.push({
      kind: 'intake',
      dogs,
      what,
      took: share.took,
      ...(item ? { item } : {}),
      span: f.span([d.from, share.to]),
      rule: '<dogs>: <how much>',
      ...doubted(d.doubt),
    });
    f.claim(d.from, share.to);
  }
}

const HOW_MUCH: readonly (readonly [string, Intake['took']])[] = [
  ['all of it', 'all'],
  ['all of hers', 'all'],
  ['all of his', 'all'],
  ['everything', 'all'],
  ['the lot', 'all'],
  ['all', 'all'],
  ['most of it', 'most'],
  ['most', 'most'],
  ['half of it', 'some'],
  ['half', 'some'],
  ['a little', 'some'],
  ['a bit', 'some'],
  ['a few bites', 'some'],
  ['a couple of bites', 'some'],
  ['a couple bites', 'some'],
  ['two bites', 'some'],
  ['one bite', 'some'],
  ['a bite', 'some'],
  ['a sip', 'some'],
  ['some of it', 'some'],
  ['some', 'some'],
  ['not a bite', 'none'],
  ['not a drop', 'none'],
  ['none', 'none'],
  ['nothing at all', 'none'],
  ['nothing', 'none'],
  ['zero', 'none'],
];

/** How much stands at token `k`: one of the words, or a count of bites or sips. */
export function howMuch(f: Frame, k: number): { took: Intake['took']; to: number; all?: boolean } | undefined {
  const hit = HOW_MUCH.find(([w]) => wordsIn(f.tokens, k, k + w.split(' ').length) === w);
  if (hit) return { took: hit[1], to: k + hit[0].split(' ').length, all: hit[0] === 'all' };
  const to = countOf(f, k);
  return to > k ? { took: 'some', to } : undefined;
}

const SMALL = /^(bites?|sips?|laps?|licks?|mouthfuls?|swallows?|nibbles?|gulps?|pieces?)$/;
/** Where "two laps", "three or four licks", "a few bites" ends; `k` where none stands. */
export function countOf(f: Frame, k: number): number {
  let e = k;
  while (
    /^(a|few|couple|of|or|one|two|three|four|five|\d|several|half|dozen|small|little|tiny|good)$/.test(f.low(e)) &&
    e - k < 5
  )
    e++;
  if (e === k || !SMALL.test(f.low(e))) return k;
  return f.low(e + 1) === 'or' && /^(two|so|three)$/.test(f.low(e + 2)) ? e + 3 : e + 1;
}

/** "Beans ate all of his, Frost some, and Sunny nothing": the verb is said once, for the first. */
function leftOutVerb(f: Frame, list: Intake[]): void {
  for (const d of f.dogs) {
    if (d.kind === 'pronoun' || d.possessive || d.company || !d.dogs.length || f.isClaimed(d.from, d.to + 1)) continue;
    let k = d.to;
    while (/^(only|just|about|maybe|almost|nearly|barely)$/.test(f.low(k))) k++;
    // "Tank only had half", "Ivy took two laps"
    if (/^(took|takes|had|has)$/.test(f.low(k)) && (countOf(f, k + 1) > k + 1 || howMuch(f, k + 1))) k++;
    const hit = howMuch(f, k);
    if (!hit || (d.kind === 'group' && hit.all)) continue;
    const { to } = hit;
    if (!/^([.,;!]|and|but|while|naturally|of|)$/.test(f.low(to)) && !f.dogFrom(to)) continue;
    const at = f.tokens[d.from]?.start ?? 0;
    const first =
      list.filter((x) => x.span && x.span[1] <= at && !x.assertion && x.rule !== HEADED).at(-1) ?? headed(f, d.from);
    const told = first && f.tokens.findIndex((t) => t.start >= (first.span?.[0] ?? 0));
    if (!first || told === undefined || f.sentence(told) !== f.sentence(d.from)) continue;
    if (list.some((x) => x.what === first.what && d.dogs.every((y) => x.dogs.includes(y)) && x.dogs.length < 3))
      continue;
    const { amount: _a, unit: _u, doubt: _d, because: _b, ...rest } = first;
    list.push({
      ...rest,
      dogs: d.dogs,
      took: /^(almost|nearly)$/.test(f.low(k - 1)) && hit.took === 'all' ? 'most' : hit.took,
      span: f.span([d.from, to]),
      rule: '<dog> <how much>, the verb told before',
      ...doubted(d.doubt),
    });
    f.claim(d.from, to);
  }
}

const HEADED = '<dog> <how much>, under the name of the meal';
/** "Supper: Rook half, Gus all, Ivy none": the meal heads the list. */
function headed(f: Frame, i: number): Intake | undefined {
  let start = i;
  while (start > 0 && !f.isStrong(start - 1)) start--;
  const food = f.m.from('food', start);
  if (!food || food.value === 'appetite' || f.dogAt(start) || !/^[:-]$/.test(f.low(food.to))) return undefined;
  const what = food.value === 'water' || food.value === 'snack' || food.value === 'meal' ? food.value : undefined;
  const item = /^(water|solid)$/.test(food.value) ? itemAt(f, food) : undefined;
  return {
    kind: 'intake',
    dogs: [],
    what: whatOf(f, { what, at: food.from, own: true }, food),
    took: 'all',
    ...(item && item !== 'water' ? { item } : {}),
    span: f.span([food.from, food.to]),
    rule: HEADED,
  };
}

/** "Banjo drank 1 l, Pesto 1 l, Polka half": a dog and a volume behind a drink that was measured. */
function amountsListed(f: Frame, list: Intake[]): void {
  const first = list.find((x) => x.amount !== undefined && x.what === 'water' && x.dogs.length === 1);
  if (!first?.span) return;
  for (const q of f.quantities) {
    if (
      q.dimension !== 'volume' ||
      !q.unit ||
      !(q.unit in UNIT) ||
      f.isClaimed(q.from, q.to) ||
      q.span[0] < first.span[1]
    )
      continue;
    const d = f.dogs.find((x) => x.to === q.from && x.kind === 'names' && !x.possessive && x.dogs.length);
    if (!d) continue;
    list.push({
      kind: 'intake',
      dogs: d.dogs,
      what: 'water',
      took: 'all',
      amount: q.value,
      unit: UNIT[q.unit],
      span: f.span([d.from, q.to]),
      rule: '<dog> <volume>',
      ...doubted(d.doubt),
    });
    f.claim(d.from, q.to);
  }
}

/** "Broth, two ladles each, whole team drank it up": an amount told for each before the taking. */
function amountsBefore(f: Frame, list: Intake[]): void {
  for (const q of f.quantities) {
    if (!q.unit || !(q.unit in UNIT) || f.isClaimed(q.from, q.to)) continue;
    if (!f.m.of('per-dog').some((p) => p.from >= q.to && p.from - q.to <= 3)) continue;
    const e = list.find((x) => x.amount === undefined && x.took !== 'none');
    if (!e) continue;
    e.amount = q.value;
    e.unit = UNIT[q.unit];
    f.claim(q.from, q.to);
  }
}

/** "They all lapped it up, Gus just took a sip": one told apart right behind is no longer of all. */
function withoutThoseTold(
  f: Frame,
  o: { entry: Intake; at: number },
  out: readonly { entry: Intake; at: number; giving: boolean }[],
): void {
  if (o.entry.took !== 'all' || o.entry.dogs.length < 4 || o.entry.assertion) return;
  const apart = out.filter(
    (x) =>
      !x.giving &&
      x.at > o.at &&
      x.at - o.at < 24 &&
      f.sentence(x.at) - f.sentence(o.at) <= 1 &&
      x.entry.what === o.entry.what &&
      x.entry.took !== 'all' &&
      x.entry.dogs.length <= 2 &&
      (x.entry.item === o.entry.item || !x.entry.item || !o.entry.item) &&
      !x.entry.assertion,
  );
  const told = new Set(apart.flatMap((x) => x.entry.dogs));
  o.entry.dogs = o.entry.dogs.filter((d) => !told.has(d));
}
