/** Reader "drop": a dog stops pulling: left at a stop, loaded into the sled, or kept at home. */
import type { DogPhrase, Frame, Mention } from '../steps/frame.ts';
import { notDone } from './denied.ts';
import { readHandedOver } from './drop-handed.ts';
import { exceptedHome, readKeptBack } from './drop-home.ts';
import { apposed, loadedThen, mayCome, readStays } from './drop-stays.ts';
import { doubted, said } from './places.ts';
import { underPlan } from './plan-day.ts';

type Manner = 'dropped' | 'loaded' | 'home';

const OBJECT_ONLY = new Set([
  'load',
  'loading',
  'loads',
  'drop',
  'drops',
  'dropping',
  'left',
  'leave',
  'leaving',
  'carrying',
  'carry',
  'bag',
  'bagging',
  'returned',
  'returning',
  'bagged',
]);
const HOME_ALONE = new Set([
  'home',
  'off today',
  'day off',
  'a day off',
  'the day off',
  'rest day',
  'resting today',
  'benched',
  'resting at home',
]);

const droppedBefore = (f: Frame, d: DogPhrase): boolean =>
  f.entries.some(
    (e) =>
      e.kind === 'drop' &&
      e.manner !== 'home' &&
      !e.assertion &&
      d.dogs.every((dog) => e.dogs.includes(dog)) &&
      (e.span?.[1] ?? 0) <= (f.tokens[d.from]?.start ?? 0),
  );

/** Reads drops. */
export function readDrops(f: Frame): void {
  const taken = new Set<DogPhrase>();
  for (const m of f.m.of('drop')) {
    if (f.m.at('back-in', m.from)) continue;
    if (/^(day|a|the|rest)$/.test(f.low(m.from)) && /^(off|day)$/.test(f.low(m.to - 1)) && givenRest(f, m)) continue;
    // "drunk every drop"
    if (f.m.at('sign', m.from)?.value === 'thin') continue;
    // "tried to climb in the sled"
    if (
      [2, 3].some(
        (n) =>
          /^(try|tried|tries|trying|wanted|wants|want|begged|begging|asked|asking)$/.test(f.low(m.from - n)) &&
          f.low(m.from - n + 1) === 'to',
      )
    )
      continue;
    // "before we dropped onto the ice": the team goes down there
    if (
      /^drop/.test(f.low(m.from)) &&
      /^(onto|into|down|through|below|over|back)$/.test(f.low(m.to)) &&
      /^(we|i|they|trail|it|team)$/.test(f.low(m.from - 1))
    )
      continue;
    if (f.low(m.from) === 'drop' && /^(every|a|last|the|each|no|one|another)$/.test(f.low(m.from - 1))) continue;
    const words = f.text.slice(...f.span([m.from, m.to])).toLowerCase();
    // "Rook can't go on": tired or hurt, but not at home
    if (/^(can't|can n't|ca n't|can not|cannot) go$/.test(words) && f.low(m.to) === 'on') continue;
    const d = m.value === 'home' ? homeDog(f, m, words) : whose(f, m, words);
    if (!d?.dogs.length || taken.has(d)) continue;
    let manner = m.value as Manner;
    if (manner === 'dropped' && goesHome(f, d)) manner = 'home';
    if (manner === 'home' && leftOnTheWay(f, d, m, words)) manner = 'dropped';
    // "I dropped Gus. So that's Gus staying behind": where it was dropped, once more
    if (/^(staying|stays|stayed|stay) behind$/.test(words) && droppedBefore(f, d)) continue;
    const from = Math.min(m.from, d.from);
    const to = Math.max(m.to, d.to);
    const heard = f.assertion(m.from, m.to) === 'present' ? f.assertionWithin(from, to) : f.assertion(m.from, m.to);
    // "nobody dropped", "didn't have to load Gus": it did not happen
    if (d.negative || notDone(f, m.from, m.to)) continue;
    taken.add(d);
    if (manner === 'dropped' && loadedThen(f, m, d)) continue;
    const may = /^(present|planned)$/.test(heard) && mayCome(f, from, m.from);
    f.add({
      kind: 'drop',
      dogs: d.dogs,
      manner,
      ...said(
        may
          ? 'possible'
          : goingIn(f, d, m) || onADayToCome(f, d, m) || (manner === 'home' && underPlan(f, from))
            ? 'planned'
            : heard,
      ),
      span: f.span([from, to]),
      rule: `<dog> ${manner}`,
      ...doubted(d.doubt),
    });
    f.claim(m.from, m.to);
  }
  if (f.out) readTakenOut(f, taken);
  readHandedOver(f, taken);
  readKeptBack(f, taken);
  readStays(f, taken);
}

/** "stays behind at the road with Nora": out on the trail, a dog of the team that goes no further. */
const leftOnTheWay = (f: Frame, d: DogPhrase, m: Mention, words: string) =>
  f.out &&
  /^(stays|stayed|stay|staying) behind$/.test(words) &&
  /^(at|in|by|near)$/.test(f.low(m.to)) &&
  !/^(home|yard|kennel|house|barn|lodge|base)$/.test(f.low(m.to + 2)) &&
  f.low(m.to + 1) !== 'home' &&
  d.dogs.every((x) => f.lineup(m.from).some((l) => l.dog === x));

/** "for the tour on Thursday Fern stays home": nobody stays in the past. */
const onADayToCome = (f: Frame, d: DogPhrase, m: Mention) =>
  /^(stays|stay|staying|gets|sits|rests)$/.test(f.low(m.from)) &&
  d.to <= m.from &&
  f.assertion(m.from, m.to) === 'past';

/** "Gunnar's going in the sled bag at the lake": said of what is to come. */
const goingIn = (f: Frame, d: DogPhrase, m: Mention) =>
  /^(in|into)$/.test(f.low(m.from)) && f.low(m.from - 1) === 'going' && m.from - d.to <= 3;

/** "took Storm out and put Lark in", "pulled Gus out at the road": taken out of the team, the dog between. */
function readTakenOut(f: Frame, taken: Set<DogPhrase>): void {
  for (const d of f.dogs) {
    if (
      taken.has(d) ||
      !d.dogs.length ||
      d.possessive ||
      d.dogs.length > 3 ||
      !/^(took|pulled|taking|pulling|take|pull|had)$/.test(f.low(d.from - 1)) ||
      f.low(d.to) !== 'out'
    )
      continue;
    if (f.low(d.from - 1) === 'had') continue;
    const next = `${f.low(d.to + 1)} ${f.low(d.to + 2)}`;
    if (
      !/^([.,;] |and put|and (replaced|moved|hooked)|at (mile|km|the)|because|since|there|here|of (the )?(team|line|harness|lead|swing|wheel)|early| )/.test(
        next,
      )
    )
      continue;
    // "took Ivy out of lead", "took Fern out of swing, put Storm there": her place is another's now, she runs on
    const place = f.low(d.to + 1) === 'of' ? f.low(d.to + 2) : '';
    const filled = f.tokens.some(
      (t) => t.i > d.to && f.sentence(t.i) === f.sentence(d.to) && t.low === 'put' && f.dogFrom(t.i + 1),
    );
    if (place === 'lead' || (/^(swing|wheel)$/.test(place) && filled)) continue;
    // "took Fern out of swing and put her in team"
    if (
      f.low(d.to + 1) === 'of' &&
      f.m
        .of('position')
        .some(
          (p) =>
            p.from > d.to + 4 &&
            f.sentence(p.from) === f.sentence(d.to) &&
            f.tokens.slice(d.to + 3, p.from).some((t) => /^(put|moved|into)$/.test(t.low)),
        )
    )
      continue;
    if (f.entries.some((e) => e.kind === 'drop' && e.dogs.some((x) => d.dogs.includes(x)))) continue;
    taken.add(d);
    f.add({
      kind: 'drop',
      dogs: d.dogs,
      manner: 'dropped',
      ...said(f.assertionWithin(d.from - 1, d.to + 1)),
      span: f.span([d.from - 1, d.to + 1]),
      rule: 'took <dog> out',
      ...doubted(d.doubt),
    });
    f.claim(d.from - 1, d.to + 1);
  }
}

const DROPPED_THING =
  /^(off|(some|a|a bit of|a lot of|too much|much|more|her|his|their|the|two|three|four|five|few)? ?(few |couple |bit |little )?(weight|pounds?|lbs?|kilos?|kg|condition|heads?|tails?|ears|pace|speed|stool|poop|ball|mitten|glove)\b)/;

/** The dog that is loaded or dropped: the object right behind the verb, else the subject before it. */
function whose(f: Frame, m: Mention, words: string): DogPhrase | undefined {
  if (words === 'pulled' || words === 'took out' || words === 'taken out') return undefined;
  // "Nobody complains, except in the sled", "no trouble apart from in the bag": others, not the dogs
  if (f.m.at('except', m.from - 1) || /^(except|but|besides|from)$/.test(f.low(m.from - 1))) return undefined;
  if (f.siteAt(m.from)) return undefined;
  // "Gladys dropped back to wheel": another place in the team
  for (let k = m.to; k < m.to + 4; k++) {
    if (f.m.from('position', k) && /^(to|into|in|at)$/.test(f.low(k - 1)) && /^(dropp|mov|sent)/.test(words))
      return undefined;
    if (!/^(back|down|up|to|into|in|him|her|it)$/.test(f.low(k)) && !f.dogAt(k)) break;
  }
  // "dropped weight", "dropped a few pounds", "dropped his head"
  if (/^dropp?(ed|ing|s)?$/.test(words) && DROPPED_THING.test(`${f.low(m.to)} ${f.low(m.to + 1)} ${f.low(m.to + 2)}`))
    return undefined;
  // "dropped into a lope", "dropped down to a walk"
  if (
    /^dropp?(ed|ing|s)?$/.test(words) &&
    /^(into|down|to)$/.test(f.low(m.to)) &&
    f.m.of('gait').some((g) => g.from > m.to && g.from - m.to < 7)
  )
    return undefined;
  // "thirteen and a half left": what remains to go
  if (
    words === 'left' &&
    f.quantities.some((q) => q.to === m.from && !q.weak && (q.dimension === 'distance' || q.dimension === 'number'))
  )
    return undefined;
  // "seven of us left"
  if (words === 'left' && /^(us|them|dogs|all)$/.test(f.low(m.from - 1)) && !/^(we|i|they)$/.test(f.low(m.from - 2)))
    return undefined;
  const object = objectOf(f, m.to);
  // "nibbled the edges and left the rest for the magpies"
  if (
    object?.value === 'rest' &&
    (/^(of|for|to|in|on|lying|there)$/.test(f.low(object.to)) ||
      f.m.of('ate').some((a) => a.to <= m.from && m.from - a.to < 8))
  )
    return undefined;
  // "leaving her in team" keeps her where she is
  if (object && /^(in|at|up)$/.test(f.low(object.to)) && f.m.from('position', object.to + 1)) return undefined;
  if (object) return object.possessive ? undefined : object;
  if (words === 'left' || words === 'leave' || words === 'leaving') return undefined;
  // The object before a phrase: "put Fern in the sled bag", "Moss loaded"
  const before = f.dogs.filter((d) => d.to <= m.from && !d.excepted && !d.company).at(-1);
  // "Riding in the basket now.": the dog spoken of last
  if (
    before &&
    m.from > 0 &&
    f.isStrong(m.from - 1) &&
    /^(riding|in the|loaded|bagged)\b/.test(words) &&
    m.to - m.from > 1
  )
    return before.dogs.length === 1 ? before : undefined;
  if (!before || f.strongBetween(before.to, m.from) || before.possessive) return undefined;
  const gap = m.from - before.to;
  const between = f.tokens
    .slice(before.to, m.from)
    .map((t) => t.low)
    .join(' ');
  if (OBJECT_ONLY.has(words)) {
    return /^(is|was|got|gets|'s|to|be|being|will be|has been|had to be|needs to be|had to|is being|'s being)?( just| now)?$/.test(
      between,
    ) &&
      gap <= 3 &&
      between !== ''
      ? before
      : undefined;
  }
  if (/\b(ride|rides|rode|riding)$/.test(words) && gap > 4) return undefined;
  return gap <= 7 && !/\b(booties?|snow|salmon|gear|straw|lines?|harness)\b/.test(between) ? before : undefined;
}

function objectOf(f: Frame, i: number): DogPhrase | undefined {
  let k = f.low(i) === ':' ? i + 1 : i;
  // "returned two dogs, Gus and Tank"
  if (/^(two|three|four|2|3|4)$/.test(f.low(k))) {
    const named = apposed(f, /^(dogs|more|of)$/.test(f.low(k + 1)) ? k + 2 : k + 1);
    if (named) return named;
  }
  while (/^(up|off|poor|old|both|out|my|our|behind|back|just)$/.test(f.low(k)) && !f.dogFrom(k) && k - i < 2) k++;
  const d = f.dogFrom(k);
  if (!d || (d.kind === 'pronoun' && /^(he|she|they)$/.test(f.low(d.from)))) return undefined;
  return d;
}

/** "left Pika and Flint home today". */
const goesHome = (f: Frame, d: DogPhrase) => {
  const next = `${f.low(d.to)} ${f.low(d.to + 1)}`;
  return (
    (/^(home|at home|in the|behind home|out today|out this|out tomorrow)\b/.test(next) &&
      (f.low(d.to) !== 'in' || f.low(d.to + 2) === 'yard' || f.low(d.to + 2) === 'kennel')) ||
    // "left Lark in her house"
    (/^in (the|her|his|their) (house|houses|doghouse|dog house|pen|box|crate|barn|run|kennel|dog yard|yard)\b/.test(
      `${next} ${f.low(d.to + 2)}`,
    ) &&
      !d.dogs.every((x) => f.lineup(d.from).some((l) => l.dog === x)))
  );
};

/** "gets the day off" is a rest that is given, not a dog that was left at home. */
const givenRest = (f: Frame, m: Mention) =>
  /^(gets|get|give|gave|giving|getting|got|earned|deserves|deserve|needs|need|take|takes)$/.test(f.low(m.from - 1)) ||
  f.dogs.some((d) => d.to === m.from && /^(give|gave|giving|gives)$/.test(f.low(d.from - 1)));

/** Home needs its dog close: "she's home", "Rime can stay home", "kept Teal home". */
function homeDog(f: Frame, m: Mention, words: string): DogPhrase | undefined {
  if (f.low(m.to) === ':' && f.dogFrom(m.to + 1)?.kind === 'names') return f.dogFrom(m.to + 1);
  const object = /^(kept|keeping|keep|left|benched|held|holding|hold)/.test(words) ? objectOf(f, m.to) : undefined;
  if (object) return object;
  const out = exceptedHome(f, m.from);
  if (out) return out;
  // "left the two old boys home, Tank and Gus"
  if (
    words === 'home' &&
    f.dogs.some((d) => d.to === m.from && d.kind === 'group' && /^(left|kept|leaving)$/.test(f.low(d.from - 1)))
  ) {
    const named = apposed(f, m.to);
    if (named) return named;
  }
  const before = f.dogs.filter((d) => d.to <= m.from && !d.excepted && !d.company).at(-1);
  if (!before || f.strongBetween(before.to, m.from) || before.possessive) return undefined;
  const between = f.tokens
    .slice(before.to, m.from)
    .map((t) => t.low)
    .join(' ');
  if (/home/.test(words) && f.tokens.slice(before.to, m.from).some((t) => f.m.at('ate', t.i) || f.m.at('drank', t.i)))
    return undefined;
  // "you'd say they didn't run since Christmas", "didn't run well": of how it went, not of who stayed
  if (
    /\brun$/.test(words) &&
    /^(since|well|far|away|off|hard|fast|long|much|straight|very|out|into|over|as|so|that)$/.test(f.low(m.to))
  )
    return undefined;
  const verb = f.low(before.from - 1);
  if (/^(takes|take|took|taking|bring|brings|brought|drive|drives|drove|driving|bringing)$/.test(verb))
    return undefined;
  if (/^(left|leave|leaving|kept|keep|keeping|held)$/.test(verb) && m.from - before.to <= 2) return before;
  if (words === 'home' && between === '' && /^([.,;:!]|and|with|today|tonight|resting|for|again|)$/.test(f.low(m.to)))
    return before;
  if (HOME_ALONE.has(words))
    return /^('s|is|are|r|was|were|at|both|all|to|stays|stayed|gets|got|has|have|can|be|'re|will be|sat|had)?( at| both| all| back)?$/.test(
      between,
    ) && between !== ''
      ? before
      : undefined;
  // "in season since this morning, stayed home from the run"
  if (/^(stayed|stays|staying)\b/.test(words) && /^(,|and|so)$/.test(f.low(m.from - 1)) && m.from - before.to <= 12)
    return before;
  return m.from - before.to <= (/\b(will|'ll|must|should|has to|had to|can)\b/.test(between) ? 9 : 5)
    ? before
    : undefined;
}
