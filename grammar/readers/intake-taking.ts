/** Reader "intake", what a dog took: "ate all", "picked at it", "left half", "wouldn't drink". */
import type { DogPhrase, Frame, Mention, Owner } from '../steps/frame.ts';
import { foodFor, type Intake, mealTold, phrase, type Served, type What, whatOf } from './intake-food.ts';
import { amountFor } from './intake-giving.ts';
import { doubted, said } from './places.ts';

export function readTaking(
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
    // "gave her some broth"
    if (
      f.m
        .of('gave')
        .some(
          (g) =>
            g.to <= m.from &&
            m.from - g.to <= 3 &&
            /^(gave|give|giving|gives|handed|tossed|fed|offered)$/.test(f.low(g.from)),
        )
    )
      return false;
    const dog = f.dogs.find((d) => d.from >= m.to && d.from - m.to <= 1 && d.possessive);
    return (
      (Boolean(dog) && topic) ||
      (food.own && /^(left|had|took|ate|finished|got|her|his|only|their|just)$/.test(prev) && food.at - m.to < 4) ||
      (/^(left|ate|took|had)$/.test(prev) && served.at >= 0)
    );
  }
  if (/^(mouthfuls?|bites)$/.test(words))
    return f.quantities.some((q) => q.to === m.from) || /^(few|couple|several|some|small|little|tiny)$/.test(prev);
  // "tried to eat the balm", "ate his bootie"
  if (
    EATING.test(words) &&
    /^(the|his|her|my|a|an|their)$/.test(next) &&
    (f.m.at('act', m.to + 1) || f.m.at('item', m.to + 1) || f.m.at('bootie', m.to + 1)) &&
    !f.m.at('food', m.to + 1)
  )
    return false;
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
  // what is no food
  const thing =
    /^(socks?|gloves?|mitts?|mittens?|rocks?|stick|rope|plastic|hat|bootie|booties|poop|poo|crap|garbage|mouse|rabbit|squirrel|sandwich|grass|moss|dirt|toy|towel)$/;
  if (/^(ate|eats|eating|eaten|eat)$/.test(words) && [0, 1, 2].some((n) => thing.test(f.low(m.to + n)))) return false;
  // "took a few steps"
  if (
    /^took/.test(words) &&
    [0, 1].some((n) =>
      /^(steps?|strides?|minutes|days|miles|laps|turns?|looks?|falls?|spills?|tumbles?|hours?|breaths?)$/.test(
        f.low(m.to + n),
      ),
    )
  )
    return false;
  // "wouldn't take my commands"
  if (
    /\btake$/.test(words) &&
    /^(my|commands?|the (gee|haw|lead|turn|corner|trail|fork)|a (gee|haw|turn)|gee|haw|direction)/.test(
      `${next} ${f.low(m.to + 1)}`,
    )
  )
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
