/**
 * Reader "intake": who ate and drank what, and how much went down. Giving counts as taking only where the note does not
 * tell afterwards how each dog took it.
 */
import type { EntryOf } from '../entry.ts';
import type { DogPhrase, Frame, Mention, Owner, Quantity } from '../steps/frame.ts';
import { deniedInside } from '../steps/mentions.ts';
import { doubted, said } from './places.ts';

type Intake = EntryOf<'intake'>;
type What = Intake['what'];

interface Served {
  item?: string;
  what?: What;
  at: number;
}

const UNIT: Record<string, NonNullable<Intake['unit']>> = {
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

/** Reads intake, left to right. */
export function readIntake(f: Frame): void {
  const served: Served = { at: -1 };
  const out: { entry: Intake; at: number; giving: boolean }[] = [];
  const events = [
    ...f.m.of('ate').map((m) => ({ m, kind: 'ate' as const })),
    ...f.m.of('drank').map((m) => ({ m, kind: 'drank' as const })),
    ...f.m.of('gave').map((m) => ({ m, kind: 'gave' as const })),
    ...f.m.of('food').map((m) => ({ m, kind: 'food' as const })),
  ].sort((a, b) => a.m.from - b.m.from || order(a.kind) - order(b.kind) || b.m.to - a.m.to);
  let covered = 0;
  for (const { m, kind } of events) {
    if (kind === 'food') {
      serve(f, m, served);
      continue;
    }
    if (m.from < covered || f.isClaimed(m.from, m.to) || deniedInside(f.tokens, m)) continue;
    const entry =
      kind === 'gave'
        ? readGiving(f, m, served)
        : readTaking(
            f,
            m,
            kind,
            served,
            out.map((o) => o.entry),
          );
    if (!entry) continue;
    out.push(...entry.map((e) => ({ entry: e, at: m.from, giving: kind === 'gave' })));
    covered = m.to;
    f.claim(m.from, m.to);
  }
  served0(f, out);
  for (const o of tidy(f, out)) f.add(o);
}

/** "Broth all round, a ladle apiece", "water for everybody": food and for whom, with no verb; as if it was given. */
function served0(f: Frame, out: { entry: Intake; at: number; giving: boolean }[]): void {
  for (const m of f.m.of('food')) {
    if (!/^(water|solid)$/.test(m.value) || f.dogAt(m.from) || f.isClaimed(m.from, m.to) || ownFood(f, m.from))
      continue;
    if (m.from > 0 && !f.isStrong(m.from - 1) && !/^(,|then|and|;|-|some|more|:)$/.test(f.low(m.from - 1))) continue;
    let k = m.to;
    const group = /^(all (round|around)|all round|for all|to all)$/.test(`${f.low(k)} ${f.low(k + 1)}`);
    if (/^(for|to)$/.test(f.low(k))) k++;
    const d = f.dogFrom(k);
    const each = f.m.of('per-dog').find((p) => p.from >= m.to && p.from - m.to < 8 && !f.strongBetween(m.to, p.from));
    const dogs = group || (each && !d) ? f.lineup(m.from).map((l) => l.dog) : d && k > m.to ? d.dogs : undefined;
    if (!dogs) continue;
    if (
      out.some(
        (o) =>
          !f.strongBetween(Math.min(o.at, m.from), Math.max(o.at, m.from)) &&
          (m.value === 'water') === (o.entry.what === 'water'),
      )
    )
      continue;
    const entry: Intake = {
      kind: 'intake',
      dogs: dogs.length ? dogs : ['*'],
      what: m.value === 'water' ? 'water' : whatOf(f, { item: phrase(f, m), at: m.from, own: true }, m),
      took: 'all',
      ...(phrase(f, m) === 'water' ? {} : { item: itemAt(f, m) }),
      ...(each ? amountFor(f, m, { dogs: ['a'] }) : {}),
      ...said(f.assertion(m.from, m.to)),
      span: f.span([m.from, m.to], d && k > m.to ? [d.from, d.to] : undefined),
      rule: '<food> for <dogs>',
    };
    out.push({ entry, at: m.from, giving: true });
    out.sort((a, b) => a.at - b.at);
  }
}

const order = (kind: string) => (kind === 'food' ? 0 : kind === 'drank' ? 1 : kind === 'ate' ? 2 : 3);

/** Keeps the food named last, so that "hers" and "it" can stand for it. */
function serve(f: Frame, m: Mention, served: Served): void {
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
function ownFood(f: Frame, i: number): boolean {
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

const phrase = (f: Frame, m: { from: number; to: number }) =>
  f.tokens
    .slice(m.from, m.to)
    .map((t) => t.low)
    .join(' ');

/** The food as said, with a word before it that belongs to it: "beaver stew", "turkey skins". */
function itemAt(f: Frame, m: Mention): string {
  let { from, to } = m;
  while (f.m.from('food', to) && /^(solid|water)$/.test(f.m.from('food', to)?.value) && !f.dogAt(to))
    to = f.m.from('food', to)?.to ?? to;
  return f.text
    .slice((f.tokens[from] as { start: number }).start, (f.tokens[to - 1] as { end: number }).end)
    .toLowerCase();
}

/** The food of this statement: named right behind the verb, or before it in the clause; else what was served. */
function foodFor(f: Frame, m: Mention, served: Served): Served & { own: boolean } {
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
const mealTold = (f: Frame) => f.m.of('meal-time').some((x) => !(f.out && TRAIL_MEAL.test(f.low(x.from))));
const snackTold = (f: Frame) =>
  f.m.of('snack-time').length > 0 || f.entries.some((e) => e.kind === 'distance' && e.measure === 'mark');

/** Snack on the trail, meal in the yard. */
function whatOf(f: Frame, food: Served & { own: boolean }, m: Mention): What {
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

function readTaking(
  f: Frame,
  m: Mention,
  kind: 'ate' | 'drank',
  served: Served,
  before: readonly Intake[],
): Intake[] | undefined {
  const words = phrase(f, m);
  let food = foodFor(f, m, served);
  if (kind === 'ate' && food.what === 'water' && !food.own && EATING.test(words)) food = { at: food.at, own: false };
  if (
    WEAK_NONE.test(words) &&
    before.some((e) => e.took !== 'none' && f.lastDogs(m.from)?.dogs.join() === e.dogs.join())
  )
    return undefined;
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
    : kind === 'drank' || /\bwater|drink\b/.test(words)
      ? 'water'
      : whatOf(f, food, m);
  took = refine(f, m, took, words, kind);
  const asserted = f.asserted(m.from, m.to);
  // A denial of something else does not reach over to eating.
  const far =
    asserted.assertion === 'absent' &&
    asserted.cue &&
    f.m.of('sign').some((x) => x.from >= (asserted.cue?.to ?? 0) && x.to <= m.from);
  const assertion = far ? 'present' : asserted.assertion;
  if (owner.phrase?.negative && took === 'all') took = 'none';
  if (assertion === 'absent' && took === 'all') took = 'none';
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
  const both = secondFood(f, m, base);
  return both ? [base, both] : [base];
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

/** Verbs that no water is taken by. */
const EATING =
  /^(only |hardly |barely |just |nearly |almost )?(ate|eat|eats|eaten|eating|wolf|inhal|devour|gobbl|polish|scarf|munch|crunch|nibbl|picked at|picks at|chow|demolish)/;
/** Turning away, which says nothing new of a dog that was just told to have eaten some. */
const WEAK_NONE =
  /^(walked off|walked away|looked away|turned away|sniffed|sniffed at|left it|passed|dropped it|ignored it)$/;

function takingStands(
  f: Frame,
  m: Mention,
  words: string,
  kind: 'ate' | 'drank',
  food: Served & { own: boolean },
  served: Served,
): boolean {
  const prev = f.low(m.from - 1);
  const next = f.low(m.to);
  const topic = food.own || served.at >= 0 || mealTold(f) || f.m.of('drank').some((x) => x.to <= m.from);
  if (/^(left|left half|left some)$/.test(words) && f.siteAt(m.from)) return false;
  if (kind === 'drank') {
    if (words === 'drunk' && /^(a|like|the)$/.test(prev)) return false;
    if (
      /^(drinks|drink|drank|drinking)$/.test(words) &&
      f.dogs.some((d) => d.to === m.from && /^(when|after|before|whenever|if|while|as)$/.test(f.low(d.from - 1))) &&
      f.m.of('sign').some((x) => x.to <= m.from && !f.strongBetween(x.to, m.from))
    )
      return false;
    if (words === 'drink' && /^(his|her|their|my|the|for|soft)$/.test(prev)) return false;
    if (/^(drink|swallow|sip|dip|dips)$/.test(words) && /^(to|hot|my|of)$/.test(prev) && prev !== 'to') return false;
    if (/^(water|watered)$/.test(words) && !f.dogs.length) return false;
    if (/^(drained|knocked back|some water|a little water)$/.test(words) && !topic) return false;
    if (/^(some water|a little water|a bit of water)$/.test(words)) return false;
    if (words === 'no water') return f.dogs.some((d) => d.to <= m.from && m.from - d.to < 8);
    return true;
  }
  if (
    /^(some|some of|half|half of|most|most of|part of|a half|three quarters|two thirds|a third of|a quarter of|3\/4|only some of|half his|half her|half their|half hers|half theirs)$/.test(
      words,
    )
  ) {
    const dog = f.dogs.find((d) => d.from >= m.to && d.from - m.to <= 1 && d.possessive);
    return (
      (Boolean(dog) && topic) ||
      (food.own && /^(left|had|took|ate|finished|got|her|his|only|their|just)$/.test(prev) && food.at - m.to < 4) ||
      (/^(left|ate|took|had)$/.test(prev) && served.at >= 0)
    );
  }
  if (/^(mouthfuls?|bites)$/.test(words))
    return f.quantities.some((q) => q.to === m.from) || /^(few|couple|several|some|small|little|tiny)$/.test(prev);
  if (/^(nearly|almost) all$/.test(words) && (next === ':' || next === 'of')) return false;
  // the pill, not the food
  if (
    /^(spat|spit)/.test(words) &&
    f.m.of('act').some((a) => a.value === 'medicated' && a.to <= m.from && m.from - a.to < 12)
  )
    return false;
  // "none of them would touch it": only of nobody
  if (/^(would (touch|take|eat|look at|so much as touch)|wanted|wants|wanted any)$/.test(words))
    return f.dogs.some((d) => d.to === m.from && d.negative);
  // "didn't want to cross"
  if (/\bwant$/.test(words) && next === 'to' && !/^(eat|drink|touch|take|have|try|finish)$/.test(f.low(m.to + 1)))
    return false;
  if (words === 'picked') return next === 'at';
  // "ate through her neckline"
  if (
    /^(ate|eats|eaten|eating)$/.test(words) &&
    (next === 'through' || f.m.at('gear-state', m.from)?.to !== m.to) &&
    next === 'through'
  )
    return false;
  if (/^(ate|eat|eats|eaten)$/.test(words) && f.m.at('item', m.to + 1)) return false;
  if (/^(refused|refuse|refuses|refusing)$/.test(words) && (f.m.at('manner', m.from)?.to ?? 0) > m.to) return false;
  if (/^(refused|refuse|refuses|refusing)$/.test(words))
    return !!(next !== 'to' || /^(eat|drink|take|touch)$/.test(f.low(m.to + 1)));
  if (/^(passed|pass|passed on|missed|skip|skips|skipped|skipping)$/.test(words))
    return (
      (topic &&
        !/^(the (bridge|cabin|lake|hut|road|river)|a|another|two|out|by|it)\b/.test(`${next} ${f.low(m.to + 1)}`) &&
        !/^(we|i|just)$/.test(prev)) ||
      (food.own && food.at - m.to < 3)
    );
  if (/^(nothing|none|none of|nope|zip|nada|zilch|gone|all gone|no thanks|said no|untouched|nothing left)$/.test(words))
    return (
      served.at >= 0 &&
      f.dogs.some((d) => d.to <= m.from && m.from - d.to <= 2) &&
      !/^(in|wrong|on|of it|since|to)$/.test(next)
    );
  if (/^(cleaned out|cleaned up|cleans up|cleaning up|cleaned|clean)$/.test(words))
    return topic || /^(everything|theirs|hers|his|it all)$/.test(next) || f.dogs.some((d) => d.to === m.from)
      ? (!f.entries.some((e) => e.kind === 'care') && next !== 'the') || food.own
      : false;
  if (
    /^(finished|finish|finishes|bolted|polished|put away|put down|accepted|emptied|crushed|crushed it|swallowed|snatched|dug in|tucked in|picky|fussy|quiet|hungry|ravenous|starving|partial|not all|not much|ignored|ignored it|ignores|turned away|walked away|walked off|looked away|buried|buried it|left it|left his|left hers|left theirs|dropped it|declined|rejected|reluctantly|went without|missed|mouthed|licked up|took it|took the|gone before|had none|had all|took all|had some|a bite|a taste|a lick)$/.test(
      words,
    )
  )
    return topic;
  if (
    /^(left half|left some|left a little|left a bit|left most|left a lot|left all|left everything|left a quarter)$/.test(
      words,
    )
  )
    return true;
  if (/^could n't (be bothered|care less|care)$/.test(words))
    return food.own || (served.at >= 0 && f.sentence(served.at) === f.sentence(m.from));
  if (/^(whole|vanished|every crumb|every last bite|in one (breath|bite|gulp)|went at it)$/.test(words)) return false;
  if (/^(sniffed|sniffed at)$/.test(words)) return topic && !/^(around|the)$/.test(next);
  return true;
}

/** Who ate: the dog before the verb, a list behind a colon, or "for the leaders". */
function whoTook(f: Frame, m: Mention, _kind: string, before: readonly Intake[]): Owner {
  // "Ate: Sif, Tyra." and "refused: Nemo"
  if (f.low(m.to) === ':' || f.low(m.to) === '-') {
    const d = f.dogFrom(m.to + 1);
    if (d) return { dogs: d.dogs, phrase: d };
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
    const a = f.m.from('ate', k) ?? f.m.from('drank', k);
    if (a && (a.value === 'some' || a.value === 'most') && !/^(picked)$/.test(f.low(k))) {
      f.claim(a.from, a.to);
      return a.value;
    }
    if (/^(nothing|none)$/.test(f.low(k))) {
      f.claim(k, k + 1);
      return 'none';
    }
    if (/^(little|slowly|reluctantly)$/.test(f.low(k)) && f.low(k - 1) !== 'a') return 'some';
  }
  const prev = f.low(m.from - 1);
  if (/^(barely|hardly|scarcely)$/.test(prev)) return 'some';
  return took;
}

/** Amount per dog: "half a pound each", "drank .5 l". */
function amountFor(
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
    if (owner.dogs.length === 1 || each) {
      f.claim(q.from, q.to);
      return { amount: q.value, unit: UNIT[q.unit as string] as NonNullable<Intake['unit']> };
    }
  }
  return undefined;
}

/** Giving: "gave everybody a biscuit", "snacked everyone, salmon", "broth for the leaders". */
function readGiving(f: Frame, m: Mention, served: Served): Intake[] | undefined {
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
  if (
    /^(snack|snacks|feed|bait)$/.test(words) &&
    (/^(his|her|their|the|a|of|this|that|each|every|its|for|at|no|first|second|after|mile|water|quick|fish|meat|half|whole|beef)$/.test(
      f.low(m.from - 1),
    ) ||
      !f.dogFrom(m.to))
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
  const item = food.item ?? commaItem(f, m);
  const amount = amountFor(f, m, { dogs: each ? ['a'] : dogs });
  const assertion = f.assertion(m.from, m.to);
  const entry: Intake = {
    kind: 'intake',
    dogs,
    what,
    took: 'all',
    ...(item ? { item } : {}),
    ...(amount ?? {}),
    ...said(assertion),
    span: f.span([m.from, m.to], dog ? [dog.from, dog.to] : undefined, food.own ? [food.at, food.at + 1] : undefined),
    rule: offered ? '<offered> <dogs>' : '<gave> <dogs> <food>',
    ...doubted(dog?.doubt),
  };
  return [entry];
}

/** "snacked everyone, salmon" */
function commaItem(f: Frame, m: Mention): string | undefined {
  const food = f.m
    .of('food')
    .find(
      (x) => x.from >= m.to && x.from - m.to < 6 && (x.value === 'solid' || x.value === 'water') && !f.dogAt(x.from),
    );
  return food && phrase(f, food) !== 'water' && !f.strongBetween(m.to, food.from) ? itemAt(f, food) : undefined;
}

/** A giving that is told more closely afterwards gives way; the same thing said twice is one. */
function tidy(f: Frame, out: { entry: Intake; at: number; giving: boolean }[]): Intake[] {
  const keep: Intake[] = [];
  for (const o of out) {
    if (o.giving) {
      const later = out.filter((x) => x !== o && !x.giving && x.at > o.at && x.entry.what === o.entry.what);
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
          for (const l of later) l.entry.item ??= o.entry.item;
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
      /\b(nearly|almost|mostly|only|just|but|well)\b[^.]{0,24}$/.test(
        f.text.slice(Math.max(0, (one.span?.[0] ?? 0) - 30), one.span?.[0] ?? 0).toLowerCase(),
      );
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
  listedTakings(f, keep);
  amountsListed(f, keep);
  amountsBefore(f, keep);
  return keep;
}

const TAKEN: Record<string, Intake['took']> = {
  all: 'all',
  everything: 'all',
  clean: 'all',
  most: 'most',
  half: 'some',
  some: 'some',
  little: 'some',
  bits: 'some',
  none: 'none',
  nothing: 'none',
  zero: 'none',
  nil: 'none',
  refused: 'none',
};

/** "Fed at two, kibble. Gantry / Shim: all. Piston: half. Tesla: none.": after food was told, a word behind a colon. */
function listedTakings(f: Frame, list: Intake[]): void {
  const food = f.m.of('food').find((x) => x.value !== 'appetite' && !f.dogAt(x.from));
  if (!food) return;
  for (const d of f.dogs) {
    const took = TAKEN[f.low(d.to + 1)];
    if (f.low(d.to) !== ':' || !took || d.from < food.from || !d.dogs.length || !/^([.,;/]|)$/.test(f.low(d.to + 2)))
      continue;
    if (list.some((x) => x.dogs.some((y) => d.dogs.includes(y)) && x.dogs.length <= d.dogs.length)) continue;
    const m: Mention = { tag: 'ate', value: took, from: d.to + 1, to: d.to + 2 };
    const what =
      food.value === 'water'
        ? 'water'
        : whatOf(f, { what: food.value === 'meal' ? 'meal' : undefined, at: food.from, own: false }, m);
    const item =
      food.value === 'solid' || (food.value === 'water' && phrase(f, food) !== 'water') ? itemAt(f, food) : undefined;
    list.push({
      kind: 'intake',
      dogs: d.dogs,
      what,
      took,
      ...(item ? { item } : {}),
      span: f.span([d.from, d.to + 2]),
      rule: '<dogs>: <how much>',
      ...doubted(d.doubt),
    });
    f.claim(d.from, d.to + 2);
  }
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
