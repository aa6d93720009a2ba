/** Words that are a sign only in some company, each with what must stand around it. */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import type { ReadFinding } from './findings.ts';
import { plainGuards } from './sign-plain.ts';

export type Guard = (g: {
  f: Frame;
  m: Mention;
  words: string;
  sites: readonly Site[];
  prev: string;
  next: string;
  found: readonly ReadFinding[];
}) => boolean;

const LINE_WORDS = /^(tug|tugs|line|lines|tugline|tuglines|harness|neckline|gangline|snap|collar|rope)$/;

const STOOL = /^(poo|poop|poops|poos|stool|stools|bowels|droppings)$/;
/** Words for a loose stool count only where stools are spoken of. */
const stoolTold: Guard = ({ f, m }) =>
  f.tokens.some((t) => STOOL.test(t.low)) ||
  (bloodBehind(f, m) && f.siteAt(m.from - 1) === undefined && f.siteAt(m.to) === undefined);
/** "runny since the lake, no blood that I could see": blood is looked for in a stool. */
const bloodBehind = (f: Frame, m: Mention) =>
  f.tokens.slice(m.to, m.to + 14).some((t) => t.low === 'blood' && f.sentence(t.i) - f.sentence(m.from) <= 2);
/** "loose x3", "loose twice": so many stools. */
const timesBehind = (f: Frame, m: Mention) =>
  (f.low(m.to) === 'x' && f.tokens[m.to + 1]?.kind === 'number') ||
  (f.tokens[m.to]?.kind === 'number' && f.low(m.to + 1) === 'x') ||
  /^(once|twice)$/.test(f.low(m.to)) ||
  f.low(m.to + 1) === 'times';
/** Said of a dog named right before it: "Ivy: loose x3". */
const looseDog: Guard = ({ f, m }) => {
  const mark = /^[:-]$/.test(f.low(m.from - 1)) ? m.from - 1 : m.from;
  const d = f.dogs.find((x) => x.to === mark);
  return Boolean(d?.dogs.length && !d.possessive) && (timesBehind(f, m) || bloodBehind(f, m));
};

/** "it's too warm for them" is the day; "he's too hot" is the dog. */
const tooHot: Guard = ({ f, m }) =>
  f.dogs.some(
    (d) =>
      d.to <= m.from &&
      m.from - d.to <= 4 &&
      !d.possessive &&
      d.dogs.length > 0 &&
      !d.company &&
      !/^(them|him|it)$/.test(f.low(d.from)) &&
      !f.strongBetween(d.to, m.from) &&
      !f.tokens.slice(d.to, m.from).some((t) => /^(it|weather|day|sun|temperature|temps?|,|and)$/.test(t.low)),
  );

/** "his tug is all in a knot": the line's, no muscle's. */
const muscleKnot: Guard = ({ f, m }) =>
  ![1, 2, 3, 4, 5, 6, 7, 8].some((n) => LINE_WORDS.test(f.low(m.from - n)) && !f.strongBetween(m.from - n, m.from));

/** "Harness rubbed both his armpits", "her harness has rubbed": the gear does it, nobody's hand. */
export const gearDoes = (f: Frame, m: Mention): boolean => {
  let k = m.from - 1;
  while (/^(has|have|had|'s|been|is|was|keeps|kept|just|also|already)$/.test(f.low(k))) k--;
  return f.m.at('item', k) !== undefined && !f.siteAt(k);
};

/** "gave the shoulder a five-minute rub": what was done for it. */
function givenRub(f: Frame, m: Mention): boolean {
  for (let k = m.from - 1; k >= 0 && m.from - k < 10 && !f.isStrong(k); k--) {
    if (/^(harness|collar|bootie|booties|boot|strap|tug)$/.test(f.low(k))) return false;
    if (/^(gave|give|gives|giving|given)$/.test(f.low(k)))
      return ![k - 1, k - 2, k - 3].some((i) => /^(harness|collar|bootie|booties|boot|strap|tug)$/.test(f.low(i)));
  }
  return false;
}

/** A piece of gear close by makes "worn" and "torn" its own. */
export function nearItem(f: Frame, m: Mention): boolean {
  for (let k = m.from - 5; k < m.to + 3; k++) {
    const item = f.m.at('item', k);
    // "isn't raw and the harness is worn": the next statement's
    const next = item && k >= m.to && f.low(m.to) === 'and' && /^(is|'s|was|are)$/.test(f.low(item.to));
    if (item && !next && !f.siteAt(k)) return true;
  }
  return false;
}

/** Where balls of ice gather. */
export const iceHolds = (part: string | undefined): boolean =>
  !/^(wrist|shoulder|elbow|triceps|neck|back|hip|knee|hock|thigh|eye|ear|nose|mouth)$/.test(part ?? 'foot');

/** "chewing his left hind", "nibbled on her pad": a part of the dog right behind, and nothing that it wears. */
const atItself: Guard = ({ f, m, sites }) => {
  const s = sites.find((x) => x.from >= m.to && x.from - m.to <= 3 && (x.part || x.end));
  return Boolean(
    s &&
      !f.m.at('bootie', s.to) &&
      !f.m.at('item', s.to) &&
      f.tokens
        .slice(m.to, s.from)
        .every((t) => /^(his|her|their|its|'s|the|at|on|that|own|both|away)$/.test(t.low) || f.dogAt(t.i)),
  );
};

/** "not as swollen as yesterday but it's a little warm": the part just told is the "it". */
function ofIt(f: Frame, m: Mention): boolean {
  let k = m.from - 1;
  while (
    /^(a|bit|little|touch|still|also|just|slightly|pretty|quite|rather|very|really|kind|kinda|of|too|now|tad)$/.test(
      f.low(k),
    )
  )
    k--;
  return /^('s|is|feels|felt|was|stays|seems)$/.test(f.low(k)) && /^(it|that|and|but)$/.test(f.low(k - 1));
}

export const guards: Record<string, Guard> = {
  ...plainGuards,
  knot: muscleKnot,
  knots: muscleKnot,
  knotted: muscleKnot,
  goo: ({ f, m, prev, next }) =>
    !f.m.at('act', m.from) ||
    !(/^(on|in)$/.test(next) || /^(same|pink|blue|green|purple|put|some|more|of|with|the)$/.test(prev)),
  'is loose': ({ f, m }) =>
    f.dogs.some((d) => d.to === m.from && !d.possessive) && !/^(from|off|in|and|on)$/.test(f.low(m.to)),
  'been loose': ({ f, m }) => f.dogs.some((d) => (d.to === m.from || d.to === m.from - 1) && !d.possessive),
  'was loose': ({ f, m }) =>
    f.dogs.some((d) => d.to === m.from && !d.possessive) && !/^(from|off|in|and|on)$/.test(f.low(m.to)),
  red: ({ next, sites, found, m }) =>
    !/^(vet|tape|wrap|bootie|booties|harness|sled|light|collar|snap|bag|salve|bandage)$/.test(next) &&
    (sites.length > 0 || found.some((r) => r.site && m.from - r.to < 12)),
  wear: ({ sites, prev, next }) =>
    sites.length > 0 &&
    !/^(must|to|should|can|will|not|n't|'ll)$/.test(prev) &&
    !/^(a|the|his|her|booties|boots)$/.test(next),
  'too warm': tooHot,
  'too hot': tooHot,
  'way too hot': tooHot,
  'running hot': tooHot,
  'getting hot': tooHot,
  'got hot': tooHot,
  'just folded': ({ next }) => /^([.,;!]|and|on|at|in|under|there|right|)$/.test(next),
  runny: stoolTold,
  loose: looseDog,
  watery: stoolTold,
  liquid: stoolTold,
  mushy: stoolTold,
  // "iced Gus's shoulder": no ice gathers there; it was cooled
  iced: ({ f, m, next, sites }) =>
    !/^(it|that|them|down|her|his|him)$/.test(next) &&
    !f.dogFrom(m.to)?.possessive &&
    sites.some((s) => iceHolds(s.part)),
  off: ({ f, m, sites, prev, next }) => {
    if (
      /^(took|take|taking|taken|pulled|pulling|came|come|comes|fell|kicked|go|going|goes|went|gone|dropped|turn|turned|cut|set|put|blew|blow|run|ran|from|walked|polished|finished|show|showed|head|headed|warm|shut|slid|flew|shook|worn|rubbed|split|tore|ripped|hold|held|lay|get|got|step|stepped|cool|cooled|drop|licked|knocked)$/.test(
        prev,
      )
    )
      return false;
    // "wore the skin off her pad", "lost the nail off his toe"
    if (/^(skin|hair|fur|hide|tip|end|piece|chunk|nail|toenail|claw|dewclaw|scab)$/.test(prev)) return false;
    if (f.m.at('bootie', m.from - 1) || f.m.at('bootie', m.to) || (/^(her|his|their)$/.test(next) && !sites.length))
      return false;
    if (/^(appetite|timing|snap|harness|brake|count|watch|clock|thermometer|number)$/.test(f.low(m.from - 2)))
      return false;
    const site = sites.find((s) => s.from >= m.to && s.from - m.to <= 4);
    if (site) return site.end !== undefined || site.part === 'leg' || Boolean(site.part && /^(in|on)$/.test(next));
    const copula =
      /^(is|'s|was|looks|looked|seems|seemed|little|bit|slightly|touch|definitely|way|still|really|tad)$/.test(prev);
    return (
      copula &&
      /^([.,;!]|today|since|on|in|again|after|this|and|at|when|but|)$/.test(next) &&
      Boolean(f.lastDogs(m.from)) &&
      !(f.low(m.from - 1) === "'s" && f.m.at('me', m.from - 2))
    );
  },
  // "worn the hair off in his armpit"
  'off in': ({ f, m, sites, prev }) =>
    sites.some((x) => x.end ?? /^(shoulder|wrist|elbow|hip|hock|knee|leg|back)$/.test(x.part ?? '')) &&
    !/^(hair|fur|skin|it|them|bootie|boot)$/.test(prev) &&
    !f.m.at('sign', m.from - 1),
  stiff: ({ prev }) => !/^(scared|bored|frozen|worried)$/.test(prev),
  runs: ({ f, m, prev }) =>
    (/^[:-]$/.test(prev) && timesBehind(f, m)) || /^(had|has|have|got|with|the|having|some|bad)$/.test(prev),
  blood: ({ f, m, sites, found }) =>
    sites.length > 0 ||
    found.some((r) => r.entry.sign !== 'any' && m.from - r.to < 12) ||
    /^(in|on)$/.test(f.low(m.to)),
  bit: ({ prev, next, sites }) =>
    /^(got|get|gets|been|was|were)$/.test(prev) && /^(on|in|by|under|across)$/.test(next) && sites.some((s) => s.part),
  // "his tail is limp" tells no lameness
  limp: ({ sites, f, m }) => sites[0]?.part !== 'tail' && f.siteAt(m.to)?.part !== 'tail',
  hole: ({ sites, prev }) => prev !== 'boot' && sites.some((s) => /^(pad|web|ear|toe)$/.test(s.part ?? '')),
  // "too wound up to eat"
  wound: ({ next, sites, prev }) =>
    next !== 'up' && (sites.length > 0 || /^(a|the|that|his|her|open|small|old|bite|no|any)$/.test(prev)),
  bite: ({ prev, sites }) =>
    /^(a|the|no|small|little|bad|nasty|deep|that|dog|any|his|her)$/.test(prev) && sites.length > 0,
  bites: ({ prev, sites }) => /^(no|some|few|any|two|three|small|with)$/.test(prev) && sites.length > 0,
  nip: ({ prev, sites }) => /^(a|the|small|little|that)$/.test(prev) && sites.length > 0,
  nipped: ({ sites, prev }) => sites.length > 0 && /^(got|was|is|been|'s)$/.test(prev),
  bloody: ({ sites }) => sites.length > 0,
  bleed: ({ sites, found }) => sites.length > 0 || found.length > 0,
  cut: ({ f, m, prev, next, sites, found }) => {
    if (
      /^(i|we|and|then|to|carl|you|us|will|'ll|can|could|should|through|over|down|across)$/.test(prev) &&
      !sites.some((s) => s.from - m.to <= 3)
    )
      return false;
    if (
      /^(through|across|over|the|down|off|out|wood|straight|it|up|back|short|loose|into|some)$/.test(next) &&
      !sites.some((s) => s.from - m.to <= 2)
    )
      return false;
    if (sites.length) return true;
    if (
      (/^(his|her|that|the|its)$/.test(prev) || f.dogs.some((d) => d.possessive && d.to === m.from)) &&
      /^(is|'s|looks|has|was|healed|healing)$/.test(next)
    )
      return Boolean(f.lastDogs(m.from));
    if (/^(is|'s|are|was|been|got|gets|getting|n't)$/.test(prev) && /^([.,;!]|or|and|up|badly|bad|at|)$/.test(next))
      return Boolean(f.lastDogs(m.from));
    if (/^(a|no|small|little|big|bad|deep|nasty|tiny|any|new|minor|not|fresh|single)$/.test(prev))
      return Boolean(f.lastDogs(m.from)) || found.length > 0;
    return false;
  },
  cuts: ({ prev, sites }) => sites.length > 0 || /^(no|any|or|,|some|few|small|and|without)$/.test(prev),
  split: ({ prev, sites, found, next }) =>
    sites.length > 0 ||
    found.length > 0 ||
    /^(a|no|any|small|new|little|deep|tiny|the)$/.test(prev) ||
    next === 'there',
  splits: () => true,
  sick: () => true,
  heat: ({ sites, found, prev }) =>
    sites.length > 0 || (/^(no|any|some|more|much|or|,)$/.test(prev) && found.some((r) => r.site)),
  ice: ({ f, m, prev, found, sites, next }) =>
    (/^(no|any)$/.test(prev) &&
      found.some((r) => r.site && /foot|pad|web|toe/.test(r.entry.part ?? '')) &&
      !/^(on|fog)$/.test(next)) ||
    (/^(in|between)$/.test(next) &&
      sites.some((s) => s.from >= m.to && /foot|web|pad|toe/.test(s.part ?? 'foot') && s.from - m.to < 6)) ||
    (/^(up|'s)$/.test(next) && f.siteAt(m.from - 1) !== undefined),
  thin: ({ f, m, prev, next }) =>
    !/^(hair|fur|coat|ice|snow|trail|cover|cloud|air)$/.test(f.low(m.from - 2)) &&
    (f.dogs.some((d) => d.to === m.from && !d.possessive) ||
      /^(is|'s|looks|looking|looked|too|bit|little|getting|got|become|becoming|became|gone|grown|pretty|,|:|very|really|so|still|seems|was|gone|a|feels|quite|rather|tad)$/.test(
        prev,
      )) &&
    !/^(ice|snow|cover|trail|spot|spots|crust|layer|air|skinned)$/.test(next) &&
    !(next === 'at' && f.m.from('quantity', m.to + 1)?.value !== 'body-condition') &&
    !f.m.at('item', m.from - 1) &&
    !f.m.at('item', m.from - 2) &&
    !f.m.at('trail-word', m.from - 2) &&
    Boolean(f.lastDogs(m.from)),
  'went down': ({ f, m, next }) =>
    Boolean(f.dogs.some((d) => d.to === m.from)) &&
    /^([.,;!]|and|in|hard|on|at|just|like|right|once|twice|briefly|before|when|while|as|again|around|near|)$/.test(
      next,
    ) &&
    !(next === 'the' && /^(trail|hill|bank)$/.test(f.low(m.to + 1))),
  'goes down': ({ f, m }) => Boolean(f.dogs.some((d) => d.to === m.from)),
  // "the swelling hasn't gone down" is no collapse; "she hasn't gone down" denies one
  'gone down': ({ f, m, next }) => {
    let k = m.from;
    while (/^(has|have|'s|'ve|had|not|n't|never|just|already|actually|now|once)$/.test(f.low(k - 1))) k--;
    return f.dogs.some((d) => d.to === k && !d.possessive) && !/^(well|the|to|in|a|some|by|from|another)$/.test(next);
  },
  'going down': ({ f, m }) =>
    Boolean(f.dogs.some((d) => d.to === m.from || d.to === m.from - 1)) && !/^(well|the|to)$/.test(f.low(m.to)),
  stumbling: ({ f, m }) => Boolean(f.lastDogs(m.from)),
  'fell down': ({ f, m }) => Boolean(f.dogs.some((d) => d.to === m.from)),
  'fell over': ({ f, m }) => Boolean(f.dogs.some((d) => d.to === m.from)),
  shaking: ({ f, m, next }) =>
    Boolean(f.lastDogs(m.from)) && (!/^(off|hands|his|her|the|out|my|our)$/.test(next) || f.low(m.to + 1) === 'whole'),
  shakes: ({ f, m, next }) => Boolean(f.lastDogs(m.from)) && !/^(off|it)$/.test(next),
  chilled: ({ f, m }) => Boolean(f.lastDogs(m.from)),
  'bring up': () => false,
  'brings up': () => false,
  'bringing up': () => false,
  heave: () => false,
  break: () => false,
  breaks: () => false,
  rub: ({ f, m, prev, next, sites }) =>
    !/^(down|her|him|them|his|it|some)$/.test(next) &&
    (/^([.;!]|a|the|no|that|harness|bootie|bit|of|any|new|small|little|her|his|same|raw|old|collar|strap|:|slight)$/.test(
      prev,
    ) ||
      sites.length > 0 ||
      m.to - m.from > 1) &&
    !f.m.at('act', m.from - 1) &&
    !givenRub(f, m),
  rubbed: ({ f, m, next, sites, prev }) =>
    (gearDoes(f, m) && sites.length > 0) ||
    (!/^(down|her|him|them|some|it|in|out|zinc|salve|ointment|his|their|both)$/.test(next) &&
      // "Rubbed Tank's shoulders with liniment"
      !(f.dogFrom(m.to)?.possessive && /^([.,;]|and|then|i|we|)$/.test(prev)) &&
      sites.length > 0 &&
      !/^(i|we|and|carl|then)$/.test(prev)),
  rubbing: ({ sites, prev, next }) =>
    sites.length > 0 || (/^(is|'s|harness|bootie|no|booties|was)$/.test(prev) && !/^(down|in|out)$/.test(next)),
  frozen: ({ sites, f, m }) =>
    sites.some((s) => s.part && /ear|groin|tail|toe|pad|nose/.test(s.part)) && !f.m.at('item', m.from - 2),
  froze: ({ sites }) => sites.some((s) => s.part && /ear|groin|tail|toe|pad|nose/.test(s.part)),
  frost: ({ sites }) => sites.length > 0,
  lost: ({ sites }) => sites.some((s) => /nail|dewclaw|toe|mouth/.test(s.part ?? '')),
  missing: ({ sites }) => sites.some((s) => /nail|dewclaw|toe|mouth/.test(s.part ?? '')),
  caught: ({ sites }) => sites.some((s) => /nail|dewclaw/.test(s.part ?? '')),
  tore: ({ sites }) => sites.some((s) => s.part),
  torn: ({ sites }) => sites.some((s) => s.part),
  broke: ({ sites }) => sites.some((s) => /nail|dewclaw|toe|mouth|tail|leg/.test(s.part ?? '')),
  tight: ({ f, m, prev, next, sites, found }) => {
    if (
      LINE_WORDS.test(next) ||
      LINE_WORDS.test(prev) ||
      LINE_WORDS.test(f.low(m.from - 2)) ||
      (f.m.at('manner', m.from) && !f.siteAt(m.from - 1))
    )
      return false;
    return (
      sites.some((s) => s.part && s.part !== 'foot') ||
      found.some((r) => r.site && m.from - r.to < 10) ||
      (/^(in|through)$/.test(next) && sites.length > 0)
    );
  },
  hot: ({ sites, found, f, m, prev }) =>
    sites.some((s) => s.part || s.end) ||
    (/^(not|n't|or|nor|neither)$/.test(prev) &&
      (found.some((r) => r.site) || f.sites.some((x) => x.part && x.to <= m.from && m.from - x.to < 10))) ||
    found.some((r) => r.site && m.from - r.to < (ofIt(f, m) ? 14 : 5) && !f.strongBetween(r.to, m.from)),
  warm: ({ sites, found, f, m, prev, next }) =>
    !f.m.at('food', m.to) &&
    !/^(water|broth|day|soup|enough|out|up|inside|night)$/.test(next) &&
    (sites.some((s) => s.part || s.end) ||
      (/^(not|n't|or|nor|neither)$/.test(prev) &&
        (found.some((r) => r.site) || f.sites.some((x) => x.part && x.to <= m.from && m.from - x.to < 10))) ||
      found.some(
        (r) =>
          r.site &&
          m.from - r.to < (ofIt(f, m) ? 14 : f.commaBetween(r.to, m.from) ? 10 : 5) &&
          !f.strongBetween(r.to, m.from),
      )),
  worn: ({ sites, f, m, next }) =>
    next !== 'out' && sites.some((s) => s.part || s.end) && !f.m.at('bootie', m.from - 2) && !nearItem(f, m),
  pink: ({ sites, found, next, f, m }) =>
    !f.m.at('item', m.to) &&
    !/^(salve|goo|stuff|ointment|cream)$/.test(next) &&
    (sites.length > 0 || found.some((r) => r.site) || f.sites.some((s) => s.to <= m.from && m.from - s.to < 8)),
  raw: ({ sites, found, f, m, next }) =>
    !f.m.at('food', m.to) &&
    !/^(meat|fish|wind)$/.test(next) &&
    (sites.length > 0 || found.some((r) => r.site) || f.sites.some((s) => s.to <= m.from && m.from - s.to < 10)),
  rough: ({ sites }) => sites.some((s) => /pad|foot|web/.test(s.part ?? '')),
  licks: ({ sites, next }) => sites.length > 0 && !/^(of)$/.test(next),
  licking: ({ sites, f, m, next, found }) =>
    sites.length > 0 ||
    (next === 'at' && (f.m.at('anaphor', m.to + 1) !== undefined || f.low(m.to + 1) === 'it')) ||
    (found.some((r) => r.site) && !/^(the|his|her|their|bowls?|snow)$/.test(next)) ||
    f.sites.some((s) => s.to <= m.from && m.from - s.to < 10),
  'licking at': () => true,
  chew: atItself,
  chews: atItself,
  chewed: atItself,
  chewing: atItself,
  nibble: atItself,
  nibbles: atItself,
  nibbled: atItself,
  nibbling: atItself,
  mouthing: atItself,
  'chewing on': ({ sites }) => sites.length > 0,
  'pulling at': ({ sites }) => sites.length > 0,
  'going after': ({ sites }) => sites.length > 0,
  cough: ({ f, m }) => Boolean(f.lastDogs(m.from)) || f.dogs.length > 0,
  gag: ({ f, m }) => Boolean(f.lastDogs(m.from)),
  rattle: () => false,
  rattly: () => false,
  // "the big lump, with his elbow in my ribs"
  lump: ({ f, m, sites, prev }) =>
    sites.length > 0 && !(/^(big|great|old|dear|huge|lovely)$/.test(prev) && f.low(m.from - 2) === 'the'),
  bump: ({ sites, prev }) => sites.length > 0 && prev === 'a',
  'dragging the': ({ sites }) => sites.some((s) => s.part === 'leg' || s.part === 'foot' || s.end),
  pain: ({ f, m, sites, prev }) => prev !== 'a' && (sites.length > 0 || Boolean(f.lastDogs(m.from))),
  sensitive: ({ f, m }) => Boolean(f.lastDogs(m.from)),
  tents: ({ prev }) => prev === 'skin' || prev === 'it',
  hack: ({ f, m }) => Boolean(f.lastDogs(m.from)),
  bile: ({ f, m }) => Boolean(f.lastDogs(m.from)),
};
