/** Readers "weather" and "trail": one entry a condition, one a surface. Words that mean other things need a trail or a sky about. */
import type { Assertion } from '../entry.ts';
import type { Frame, Mention } from '../steps/frame.ts';
import { deniedInside } from '../steps/mentions.ts';
import { said } from './places.ts';

/** Surfaces that need a trail word close by, or another surface in the same list. */
const WEAK_SURFACE = new Set(
  'hard;soft;firm;solid;loose;deep;fresh;powder;crust;crusty;rough;bumpy;choppy;lumpy;chunky;holes;bumps;fast;quick;flying;slow;heavy;sticky;dragging;draggy;tacky;sluggish;slower;grind;a grind;slog;a slog;good;great;beautiful;perfect;excellent;lovely;nice;in good shape;in great shape;awesome;superb;wonderful;terrific;fantastic;smooth;pretty good;amazing;super;fine;prime;sweet;mint;gorgeous;fabulous;ideal;just right;a dream;great shape;good shape;in excellent shape;ice;iced;iced over;glaze;glass;pavement;concrete;set up;packed;soup;slop;sloppy;drift;rocks;rock;dirt;mud;gravel;grass;sticks;sandy;exposed;bare;sand;leaves;tundra;stones;melting;roots;faster;softer;rougher;concrete;dusting;wet ice;melted out;rattly;chewed up;torn up;beat up;cut up;tore up;broken up;footprints;ruts;moguls;mush;mushy;rotten;greasy;glide;gliding;glides;speedy;zippy;crawling;slushed;seep;slick;wallowing;watery;corn;boilerplate;punching;punch;breaks through;fluff;blown in;blown over;filled in;drifting in;blowing over;breaking trail;gone soft;going soft;fresh snow;new snow;rutted;packed down;groomed;blown full;slippery;nice and smooth;in fine shape;in nice shape;frozen dirt;hard crust;lake ice;river ice;rocky;muddy;frozen ground;on the trail;frozen hard;grainy;pitted;exposed rock;flowing;fresh powder;sticking;tough going;grinding;softening;softened;softening up;squishy;spongy'.split(
    ';',
  ),
);
const SKY_ALONE = new Set([
  'clear',
  'bright',
  'fair',
  'still',
  'sun',
  'stars',
  'clearing',
  'clearing up',
  'cleared up',
  'cleared off',
  'dull',
  'gray',
  'grey',
  'cloud',
  'clouds',
  'haze',
  'gloomy',
  'blowing',
  'blowing hard',
  'calm',
  'showers',
  'shower',
  'sprinkles',
  'pouring',
  'soup out there',
  'gale',
  'building',
  'frost',
  'storm',
  'inches of snow',
  'centimetres of snow',
  'centimeters of snow',
  'cm of snow',
  'in of snow',
  'ten of snow',
  'feet of snow',
  'storms',
  'breeze',
  'a breeze',
  'dumping',
  'flakes',
  'howling',
  'fog',
  'mist',
  'misty',
  'snows',
  'sprinkle',
  'rain',
  'leaden',
  'broken clouds',
  'blowin',
]);

/** Reads weather and trail. */
export function readConditions(f: Frame): void {
  for (const m of f.m.of('condition')) {
    if (f.isClaimed(m.from, m.to) || ofDog(f, m) || inCue(f, m) || !skyStands(f, m)) continue;
    if (deniedInside(f.tokens, m)) continue;
    const assertion = forecast(f, m);
    f.add({
      kind: 'weather',
      dogs: [],
      condition: m.value,
      ...said(windBy(f, m) ? 'present' : assertion),
      span: f.span([m.from, m.to]),
      rule: '<weather>',
    });
    f.claim(m.from, m.to);
  }
  let last = -9;
  const marks = [...f.m.of('surface'), ...f.m.of('surface-weak')].sort((a, b) => a.from - b.from);
  const seen: Mention[] = [];
  for (const m of marks) {
    if (f.isClaimed(m.from, m.to) || ofDog(f, m) || seen.some((s) => s.from <= m.from && m.from < s.to)) continue;
    if (!surfaceStands(f, m, last)) continue;
    const heard = f.asserted(m.from, m.to);
    const assertion =
      heard.assertion === 'absent' && heard.cue && deniesOther(f, heard.cue, m) ? 'present' : heard.assertion;
    f.add({
      kind: 'trail',
      dogs: [],
      surface: m.value,
      ...said(assertion),
      span: f.span([m.from, m.to]),
      rule: '<surface>',
    });
    f.claim(m.from, m.to);
    seen.push(m);
    last = m.to;
  }
}

/** What the sky will do is a forecast, and a forecast is possible; under an "if" it is planned with the rest. */
function forecast(f: Frame, m: Mention): Assertion {
  const { assertion, cue } = f.asserted(m.from, m.to);
  if (assertion === 'absent' && cue && deniesOther(f, cue, m)) return 'present';
  if (assertion === 'present' && /^(calling for|chance of|snow (predicted|forecast))\b/.test(phrase(f, m)))
    return 'possible';
  return assertion === 'planned' && !cue?.group.condition ? 'possible' : assertion;
}

/** "no wind, trail's hard": the denial is of something else, unless an "or" goes on with it. */
function deniesOther(f: Frame, cue: { from: number; to: number }, m: Mention): boolean {
  if (cue.to > m.from) return false;
  if (m.from - cue.to > 3) return true;
  for (let k = cue.to; k < m.from; k++)
    if (f.m.at('condition', k) || f.m.at('sign', k) || f.low(k) === 'wind') return true;
  return f.commaBetween(cue.to, m.from) && !f.tokens.slice(cue.to, m.from).some((t) => /^(or|nor)$/.test(t.low));
}

/** "no wind" is calm, not the absence of something. */
const windBy = (f: Frame, m: Mention) => /^(no|not|hardly|without|zero|n't|ca|could|barely)$/.test(f.low(m.from));

/** "Sun" the day is a word of time. */
const inCue = (f: Frame, m: Mention) => f.low(m.from) === 'sun' && f.cues.some((c) => c.from <= m.from && m.to <= c.to);

const ofDog = (f: Frame, m: Mention) =>
  f.dogs.some((d) => (d.kind === 'names' || d.also !== undefined) && d.from < m.to && m.from < d.to) ||
  f.siteAt(m.from) !== undefined;

const phrase = (f: Frame, m: Mention) =>
  f.tokens
    .slice(m.from, m.to)
    .flatMap((t) => (t.low === '-' ? [] : t.low.replace('-', ' ')))
    .join(' ');

function skyStands(f: Frame, m: Mention): boolean {
  const words = phrase(f, m);
  const prev = f.low(m.from - 1);
  const next = f.low(m.to);
  // "a ten mile an hour breeze" is told by its speed
  if (m.value === 'windy' && f.quantities.some((q) => q.dimension === 'speed' && q.to === m.from)) return false;
  // "a breeze of 10 knots"
  if (m.value === 'windy' && /^(of|at|about|around)$/.test(next) && f.quantityAt(m.to + 1)?.dimension === 'speed')
    return false;
  if (!SKY_ALONE.has(words)) {
    if (/^(little wind|a little wind|windy|wind up)$/.test(words) && /^(break|chill|burn)$/.test(next)) return false;
    if (
      m.value === 'windy' &&
      f.quantities.some(
        (q) =>
          (q.dimension === 'speed' || q.dimension === 'number') &&
          q.from >= m.to &&
          q.from - m.to < (q.dimension === 'speed' ? 10 : 4) &&
          f.sentence(q.from) === f.sentence(m.from) &&
          !q.weak &&
          (q.dimension === 'speed' || /^(at|to|of|about|around|maybe|roughly)$/.test(f.low(q.from - 1))),
      )
    )
      return false;
    return true;
  }
  if (m.value === 'clear') {
    if (words === 'sun' && /^(gets|hits|softens|can)$/.test(next)) return false;
    const sky = /^(sky|skies|it|day|weather|morning|night)$/.test(f.low(m.from - 2)) && /^(is|'s|was|are)$/.test(prev);
    if (
      /^(the|of|a|to|through|away|up|out|in|her|his|thinking|head|conscience|view|shot|run|path)$/.test(next) &&
      words === 'clear' &&
      !sky
    )
      return false;
    if (/^(trail|pretty|all|steer|crystal-|lungs|eyes?|nose|urine|pee|poop|stool|feet|road|perfectly)$/.test(prev))
      return false;
    if (/cleared up|clearing/.test(words) && f.entries.some((e) => e.kind === 'finding')) return false;
    if (
      words === 'clear' &&
      f.entries.some((e) => e.kind === 'finding' && /urine|cough|any/.test(e.sign) && e.span && spanNear(f, e.span, m))
    )
      return false;
    if (words === 'sun' && /^(dog|dogs)$/.test(next)) return false;
    if (/^(bright|fair)$/.test(words))
      return /^(and|,|is|'s|it|sky|day|out)$/.test(prev) && !f.dogs.some((d) => d.to === m.from || d.to === m.from - 1);
    return true;
  }
  if (m.value === 'calm') {
    if (words === 'still') return false;
    const d = f.dogs.find((x) => x.to <= m.from && m.from - x.to <= 3 && !x.company);
    return !d || f.strongBetween(d.to, m.from) || f.low(m.from - 1) === ',' || f.low(m.from - 1) === 'dead';
  }
  if (words === 'blowing' || words === 'blowing hard' || words === 'blowin')
    return (
      next !== 'snow' &&
      prev !== 'mind' &&
      !/^(through|past|by|off|it|out|his|her)$/.test(next) &&
      !f.dogs.some((d) => d.to === m.from)
    );
  if (words === 'howling')
    return /^(wind|it|'s|is)$/.test(prev) && !f.dogs.some((d) => d.to >= m.from - 2 && d.to <= m.from);
  if (words === 'pouring') return /^(it|is|'s|was)$/.test(prev) && !f.entries.some((e) => e.kind === 'finding');
  if (words === 'storm' || words === 'storms') return prev !== 'a_' && next !== 'door' && next !== 'out';
  if (words === 'soup out there') return true;
  if (words === 'sun')
    return !/^(gets|hits|softens|dog|dogs|up|came|went|has)$/.test(next) || next === 'came' || next === 'up';
  if (words === 'rain') return prev !== 'as';
  if (words === 'breeze' || words === 'a breeze')
    return !(prev === 'the' && /^(into|in|to|of)$/.test(f.low(m.from - 2)));
  // snow by the inch is weather while it is to come
  if (/ of snow$/.test(words) && /^(inches|centimet|cm|in|ten|feet)/.test(words))
    return /^(possible|planned)$/.test(f.assertion(m.from, m.to));
  if (words === 'flakes') return /^(soft|big|fat|few|wet|huge|tiny|fluffy|,|small|first|some)$/.test(prev);
  if (words === 'building') return false;
  if (words === 'cloud' || words === 'clouds') return !/^(of)$/.test(next);
  if (words === 'dull' || words === 'gray' || words === 'grey')
    return (
      /^(is|'s|was|and|,|it|sky|day|a|,|skies|light|flat)$/.test(prev) &&
      !f.dogs.some((d) => d.to >= m.from - 2 && d.to <= m.from)
    );
  return true;
}

/** Is a finding's span close before the mention? */
const spanNear = (f: Frame, span: readonly [number, number] | number[], m: Mention) => {
  const at = f.tokens[m.from]?.start ?? 0;
  return at - (span[1] as number) < 60 && at >= (span[0] as number);
};

function surfaceStands(f: Frame, m: Mention, last: number): boolean {
  const words = phrase(f, m);
  const weak = m.tag === 'surface-weak' || WEAK_SURFACE.has(words);
  if (f.low(m.from - 1) === 'like' && !f.m.at('trail-word', m.from - 2)) return false;
  // "got rattled by the snowmobiles": a dog's nerves
  if (words === 'rattled' && (f.low(m.to) === 'by' || f.dogFrom(m.from - 1) !== undefined)) return false;
  // "turned around at the moose tracks"
  if (
    /\btracks$/.test(words) &&
    /^(at|the|some|those|of|on)$/.test(f.low(m.from - 1)) &&
    !/^(all|everywhere|and)$/.test(f.low(m.to))
  )
    return false;
  if (words === 'packed' && /^(him|her|them|em|it|with|in|the|snow|up|on)$/.test(f.low(m.to))) return false;
  if (
    words === 'sugar' &&
    (f.m.at('food', m.from - 2) || f.m.at('food', m.from - 1) || /^(with|some|of)$/.test(f.low(m.from - 1))) &&
    !f.m.at('trail-word', m.to)
  )
    return false;
  if (words === 'overflow' || words === 'glare ice') return true;
  if (/^(like|hard|stiff|frozen)\b/.test(words) && ofThing(f, m)) return false;
  if (words === 'sugar' && /^(shack|cube|cubes|maple|maples|bush|house|water|beet|beets|lump|lumps)$/.test(f.low(m.to)))
    return false;
  if (m.to - m.from === 1 && (f.m.at('bootie', m.to) || f.m.at('item', m.to))) return false;
  if (!weak) return !(f.m.at('act', m.from) && f.dogFrom(m.to)) && !/^(hot|coffee)$/.test(f.low(m.from - 1));
  if (
    /^(set up|packed|ice|glass|soup|iced|good|great|cut up|chewed up|chunky|sticky|soft|hard)$/.test(words) &&
    f.m.at('food', m.to)
  )
    return false;
  if (f.m.at('manner', m.from) && pulled(f, m)) return false;
  if (
    words === 'moose tracks' &&
    f.low(m.from - 1) === 'the' &&
    /^(at|past|by|near|after|before|of)$/.test(f.low(m.from - 2))
  )
    return false;
  if (pair(f, m)) return true;
  // "nice and firm" is firm
  if (words === 'nice' && f.low(m.to) === 'and') return false;
  // A list of surfaces: "fast and hard", "deep sugar", "10 cm fresh on trail, slow"
  const gap = f.tokens.slice(last, m.from).map((t) => t.low);
  if (
    last >= 0 &&
    m.from - last <= 6 &&
    gap.every((w) =>
      /^(and|,|&|\+|but|then|n|consequently|therefore|thus|quite|fairly|extremely|rather|fairly|mostly|even|almost|really|pretty|very|also|a|bit|so|super|now|on|trail|in|there|here|out|it|'s|gets|getting)$/.test(
        w,
      ),
    )
  )
    return !/^(feet|foot|paws?)$/.test(f.low(m.to));
  const follows = [...f.m.of('surface')].find(
    (s) => s.from >= m.to && s.from - m.to <= 1 && !WEAK_SURFACE.has(phrase(f, s)),
  );
  if (follows && (s2(f, m.to, follows.from) || follows.from === m.to)) return true;
  if (
    /fresh/.test(words) &&
    (/^(of|snow|on|powder|in|overnight)$/.test(f.low(m.to)) ||
      f.quantities.some((q) => q.to === m.from || q.to === m.from - 1) ||
      f.low(m.from - 1) === 'of')
  )
    return true;
  if (
    words === 'powder' ||
    words === 'new snow' ||
    words === 'fresh snow' ||
    words === 'mud' ||
    words === 'gravel' ||
    words === 'breaking trail' ||
    words === 'fresh powder' ||
    words === 'ruts' ||
    words === 'moguls' ||
    words === 'rocks' ||
    words === 'dirt'
  )
    return (
      !f.dogs.some((d) => d.to === m.from && d.possessive) &&
      (f.low(m.from - 1) !== 'the' || !/^(gravel|rocks|dirt|mud)$/.test(words) || trailNear(f, m)) &&
      !/^(road|pit|bar|truck|bike|room)$/.test(f.low(m.to)) &&
      !(words === 'mud' && f.low(m.to) === 'bath')
    );
  // "drifted in past the fence and deep"
  if (
    f.low(m.from - 1) === 'and' &&
    /^([.,;]|)$/.test(f.low(m.to)) &&
    m.from - last <= 6 &&
    f.tokens.slice(last, m.from - 1).every((t) => t.kind === 'word' && !f.dogAt(t.i) && !f.m.at('sign', t.i))
  )
    return true;
  // "so far it's only soft"
  if (
    /^(only|just|still|all|mostly|pretty)$/.test(f.low(m.from - 1)) &&
    /^('s|its)$/.test(f.low(m.from - 2)) &&
    f.m.of('surface').some((x) => x.to <= m.from && x !== m) &&
    !f.dogs.some((d) => d.to >= m.from - 3 && d.to <= m.from)
  )
    return true;
  // "its slow as heck in there"
  if (
    f.low(m.to) === 'as' &&
    /^(its|'s|is|was)$/.test(f.low(m.from - 1)) &&
    (f.low(m.from - 1) === 'its' || /^(it|trail|snow|going)$/.test(f.low(m.from - 2))) &&
    !f.dogs.some((d) => d.to >= m.from - 2 && d.to <= m.from)
  )
    return true;
  // "it's fast and hard on the other side", "it may well be bare", once the trail is spoken of
  if (
    /^('s|is|was|be|been|gets|got|gone|getting|goes|went|runs|ran|becomes|became|becoming|turns|turned|stays|stayed)$/.test(
      f.low(m.from - 1),
    ) &&
    subjectBefore(f, m.from - 1) === 'it' &&
    (f.entries.some((e) => e.kind === 'trail') || /^(goes|runs|ran)$/.test(f.low(m.from - 1))) &&
    !f.m.at('manner', m.from)
  )
    return true;
  if (
    f.low(m.from - 1) === "'s" &&
    f.low(m.from - 2) === 'it' &&
    f.entries.some((e) => e.kind === 'trail') &&
    /^(fast|hard|soft|slow|rough|deep|good|bare)$/.test(words)
  )
    return true;
  return trailNear(f, m) || afterTrail(f, m);
}

/** "My jacket is like glass", "the booties were like cement": a thing worn or carried, said to be so. */
function ofThing(f: Frame, m: Mention): boolean {
  let k = m.from - 1;
  while (/^(is|'s|are|'re|was|were|feels|feel|felt|all|now|just|got|gets|go|went|gone|goes|both)$/.test(f.low(k))) k--;
  if (k === m.from - 1) return false;
  const thing = f.low(k);
  return (
    f.m.at('item', k) !== undefined ||
    f.m.at('bootie', k) !== undefined ||
    f.m.at('food', k) !== undefined ||
    /^(jacket|coat|parka|pants|bibs|beard|moustache|mustache|eyelashes|lashes|mitts|mittens|gloves|hands|fingers|feet|toes|face|lines|line|rope|ropes|boots|bags?|zipper|zippers|buckles?|snaps?|thermos|coffee|soup|sandwich)$/.test(
      thing,
    ) ||
    (/^(they|those|these)$/.test(thing) && f.entries.some((e) => e.kind === 'booties' || e.kind === 'gear'))
  );
}

/** The word before the helping verbs that end at `k`: "it may well be". */
function subjectBefore(f: Frame, k: number): string {
  let j = k - 1;
  while (
    /^(may|might|could|should|will|'ll|would|'d|must|has|have|'s|well|probably|likely|surely|now|just)$/.test(f.low(j))
  )
    j--;
  return f.low(j);
}

/** "Trail is like concrete. Very fast.": a sentence of nothing but surfaces behind one about the trail. */
function afterTrail(f: Frame, m: Mention): boolean {
  let a = m.from;
  while (a > 0 && !f.isStrong(a - 1)) a--;
  let b = m.to;
  while (b < f.tokens.length && !f.isStrong(b)) b++;
  for (let k = a; k < b; k++)
    if (
      !f.m.at('surface', k) &&
      !f.m.at('surface-weak', k) &&
      !/^(very|really|pretty|and|,|super|so|too|but|nice|mostly|all|quite|a|bit|in|places|spots|here|there)$/.test(
        f.low(k),
      )
    )
      return false;
  const at = f.tokens[a - 2]?.start ?? -1;
  return f.entries.some(
    (e) =>
      e.kind === 'trail' &&
      e.span &&
      f.sentence(f.tokens.findIndex((t) => t.end > (e.span?.[0] ?? 0))) === f.sentence(a) - 1 &&
      at >= 0,
  );
}

const s2 = (f: Frame, a: number, b: number) => f.tokens.slice(a, b).every((t) => /^(and|,|&|\+)$/.test(t.low));
const pulled = (f: Frame, m: Mention) =>
  f.dogs.some((d) => d.to <= m.from && m.from - d.to <= 3) &&
  !f.m.at('trail-word', m.from - 1) &&
  !f.m.at('trail-word', m.from - 2) &&
  !f.m.at('trail-word', m.to);

const OF_TRAIL = /^(hard|fast|soft|slow|firm|deep|smooth|rough|punchy|icy|slick|sticky|bumpy)$/;

/** "Hard and fast, glare ice on the corners": two surfaces joined, and nobody before them in the part of the sentence. */
function pair(f: Frame, m: Mention): boolean {
  if (!OF_TRAIL.test(f.low(m.from))) return false;
  const joined = (k: number) => /^(and|&|n|\/|but)$/.test(f.low(k));
  const first =
    joined(m.from - 1) && OF_TRAIL.test(f.low(m.from - 2))
      ? m.from - 2
      : joined(m.to) && OF_TRAIL.test(f.low(m.to + 1))
        ? m.from
        : -1;
  if (first < 0) return false;
  const before = f.low(first - 1);
  return first === 0 || f.isStrong(first - 1) || /^(,|:|-|;)$/.test(before);
}

/** A trail word right before ("the trail is still hard") or right behind ("fast trail", "soft on the river"). */
function trailNear(f: Frame, m: Mention): boolean {
  for (let k = m.from - 1; k >= Math.max(0, m.from - 8); k--) {
    if (f.isStrong(k)) break;
    const t = f.m.at('trail-word', k);
    if (t && f.low(k) !== 'top') {
      const between = f.tokens.slice(t.to, m.from).map((x) => x.low);
      const near = between.every(
        (w) =>
          /^('s|its|where|be|will|'ll|would|is|was|are|were|has|have|had|been|gone|got|getting|gets|still|really|pretty|very|so|too|all|a|an|just|in|out|here|there|and|,|not|n't|quite|super|up|to|nice|bit|little|set|been|looking|looks|running|ran|back|turned|starting|today|now|like|kind|of|kinda|good|going|:|from|the|yard|it|stayed|hard|fast|again|mostly|becoming|on|near|by|went|off|over|super|section|frozen|through|-|into|that|half|yesterday|way|as|sharp|icy|wet|dry|nice)$/.test(
            w,
          ) || f.m.at('surface', m.from - 1),
      );
      if (near) return true;
    }
    if (f.dogAt(k) || f.m.at('sign', k)) return false;
  }
  for (let k = m.to; k < Math.min(f.tokens.length, m.to + 5); k++) {
    if (f.isStrong(k) || f.low(k) === ',') break;
    if (f.m.at('trail-word', k) && f.low(k) !== 'top') return true;
    if (/^(going|footing|conditions|underfoot|in there|out there|out here|in here)$/.test(f.low(k))) return true;
    if (f.low(k) === 'in' && /^(there|here)$/.test(f.low(k + 1))) return true;
    if (
      f.low(k) === 'by' ||
      f.low(k) === 'on' ||
      f.low(k) === 'past' ||
      f.low(k) === 'at' ||
      f.low(k) === 'along' ||
      f.low(k) === 'the' ||
      f.low(k) === 'in' ||
      f.low(k) === 'and' ||
      f.low(k) === 'over' ||
      f.low(k) === 'through' ||
      f.low(k) === 'across' ||
      f.low(k) === 'all' ||
      f.low(k) === 'for' ||
      f.low(k) === 'from'
    )
      continue;
    if (f.m.at('surface', k)) continue;
    break;
  }
  return false;
}
