/** Reader "trail": one entry a surface. Words that mean other things need a trail about. */
import type { Frame, Mention } from '../steps/frame.ts';
import { said } from './places.ts';
import { deniesOther, ofDog, phrase } from './weather.ts';

/** Surfaces that need a trail word close by, or another surface in the same list. */
const WEAK_SURFACE = new Set(
  'hard;soft;firm;solid;loose;deep;fresh;powder;crust;crusty;rough;bumpy;choppy;lumpy;chunky;holes;bumps;fast;quick;flying;slow;heavy;sticky;dragging;draggy;tacky;sluggish;slower;grind;a grind;slog;a slog;good;great;beautiful;perfect;excellent;lovely;nice;in good shape;in great shape;awesome;superb;wonderful;terrific;fantastic;smooth;pretty good;amazing;super;fine;prime;sweet;mint;gorgeous;fabulous;ideal;just right;a dream;great shape;good shape;in excellent shape;ice;iced;iced over;glaze;glass;pavement;concrete;set up;packed;soup;slop;sloppy;drift;rocks;rock;dirt;mud;gravel;grass;sticks;sandy;exposed;bare;sand;leaves;tundra;stones;melting;roots;faster;softer;rougher;concrete;dusting;wet ice;melted out;rattly;chewed up;torn up;beat up;cut up;tore up;broken up;footprints;ruts;moguls;mush;mushy;rotten;greasy;glide;gliding;glides;speedy;zippy;crawling;slushed;seep;slick;wallowing;watery;corn;boilerplate;punching;punch;breaks through;fluff;blown in;blown over;filled in;drifting in;blowing over;breaking trail;gone soft;going soft;fresh snow;new snow;rutted;packed down;groomed;blown full;slippery;nice and smooth;in fine shape;in nice shape;frozen dirt;hard crust;lake ice;river ice;rocky;muddy;frozen ground;on the trail;frozen hard;grainy;pitted;exposed rock;flowing;fresh powder;sticking;tough going;grinding;softening;softened;softening up;squishy;spongy'.split(
    ';',
  ),
);

/** Reads what the trail is like. */
export function readTrail(f: Frame): void {
  let last = -9;
  const marks = [...f.m.of('surface'), ...f.m.of('surface-weak')].sort((a, b) => a.from - b.from);
  const seen: Mention[] = [];
  for (const m of marks) {
    if (f.isClaimed(m.from, m.to) || ofDog(f, m) || seen.some((s) => s.from <= m.from && m.from < s.to)) continue;
    if (!surfaceStands(f, m, last)) continue;
    const heard = f.asserted(m.from, m.to);
    // "the snow feels like concrete": the cue ends in the word's own "like"
    const own = heard.cue && f.low(m.from) === 'like' && heard.cue.to === m.from + 1;
    const assertion =
      own || (heard.assertion === 'absent' && heard.cue && deniesOther(f, heard.cue, m)) ? 'present' : heard.assertion;
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

function surfaceStands(f: Frame, m: Mention, last: number): boolean {
  // "Tank's slow on the punchy trail": the dog
  if (/^(slow|slower|fast|faster|quick|speedy)$/.test(f.low(m.from)) && /^('s|is|was)$/.test(f.low(m.from - 1)))
    if (f.dogs.some((d) => d.kind !== 'group' && (d.to === m.from - 1 || d.to === m.from))) return false;
  // "he's firmed up now"
  if (f.cues.some((c) => c.gives === 'resolved' && c.from <= m.from && m.to <= c.to)) return false;
  // "she won't hold still", "he wouldn't hold his head up": a dog's doing
  if (f.low(m.to - 1) === 'hold' && /^(still|it|his|her|that|the|on|steady|up|down|water)$/.test(f.low(m.to)))
    return false;
  const words = phrase(f, m);
  // "nervous about the open water", "along the open water": what lies beside the trail
  if (
    words === 'open water' &&
    /^(about|of|by|near|at|along|past|beside|around|from)$/.test(
      f.low(f.low(m.from - 1) === 'the' ? m.from - 2 : m.from - 1),
    )
  )
    return false;
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
  // "snow hook won't hold", "Storm was rock solid"
  if (/\bhold$/.test(words) && f.m.at('item', m.from - 1)) return false;
  if (
    f.m.at('manner', m.from) &&
    /^(is|was|'s|were|are|has been)$/.test(f.low(m.from - 1)) &&
    f.dogs.some((d) => d.to === m.from - 1 && !d.possessive && d.dogs.length)
  )
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
  // "super deep", "super fast": how very much so
  if (/^(super|fine)$/.test(words) && ['surface', 'surface-weak', 'manner'].some((tag) => f.m.from(tag, m.to)))
    return false;
  if (everythingIs(f, m)) return true;
  // "deep in the woods": where, unless the snow is said to be
  if (words === 'deep' && f.low(m.to) === 'in' && !snowIs(f, m)) return false;
  // "nice and firm" is firm
  if (words === 'nice' && f.low(m.to) === 'and') return false;
  // A list of surfaces: "fast and hard", "deep sugar", "10 cm fresh on trail, slow"
  const gap = f.tokens.slice(last, m.from).map((t) => t.low);
  if (
    last >= 0 &&
    m.from - last <= 6 &&
    gap.every((w) =>
      /^(and|,|&|\+|but|then|n|consequently|therefore|thus|quite|fairly|extremely|rather|fairly|mostly|even|almost|really|pretty|very|also|a|bit|so|super|now|you|know|like|well|bloody|damn|dead|proper|on|trail|in|there|here|out|it|'s|gets|getting)$/.test(
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
  // "sugar all down the fence line, slow as a wet week"
  if (
    /^(slow|fast|hard|soft|slick)$/.test(words) &&
    f.low(m.to) === 'as' &&
    (f.low(m.from - 1) === ',' ||
      (/^(a|the|an)$/.test(f.low(m.to + 1)) && !f.dogs.some((d) => f.sentence(d.from) === f.sentence(m.from)))) &&
    f.entries.some((e) => e.kind === 'trail' && f.sentence(tokenOf(f, e.span?.[0] ?? 0)) === f.sentence(m.from))
  )
    return true;
  // "the lower half is in good shape"
  if (
    /^in (good|great|fine|nice|excellent) shape$/.test(words) &&
    /^(is|'s|was)$/.test(f.low(m.from - 1)) &&
    /^(half|section|stretch|part|end|loop|bit|rest)$/.test(f.low(m.from - 2))
  )
    return true;
  // "soft trail to the lake, then hard", "glare ice past the cabin then soft"
  if (
    f.low(m.from - 1) === 'then' &&
    /^([.,;]|and|after|from|past|to|until|till|all|the|)$/.test(f.low(m.to)) &&
    /^(hard|soft|fast|slow|deep|rough|bare|icy|bumpy|firm|good|sticky|drifted|packed)$/.test(words) &&
    !f.dogs.some((d) => f.sentence(d.from) === f.sentence(m.from) && d.from < m.from) &&
    f.entries.some((e) => e.kind === 'trail' && f.sentence(tokenOf(f, e.span?.[0] ?? 0)) === f.sentence(m.from))
  )
    return true;
  // "the lower half is in good shape", once the trail is spoken of
  if (partOfTrail(f, m.from - 1) && f.entries.some((e) => e.kind === 'trail')) return true;
  // "the trail's drifted over so we're slow"
  if (
    /^(slow|slower)$/.test(words) &&
    /^('re|are|is|'s)$/.test(f.low(m.from - 1)) &&
    /^(we|it)$/.test(f.low(m.from - 2)) &&
    f.entries.some((e) => e.kind === 'trail' && f.sentence(tokenOf(f, e.span?.[0] ?? 0)) === f.sentence(m.from))
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
  // "wiped by the end because it's so soft out there"
  if (/^(out|in) (there|here)$/.test(`${f.low(m.to)} ${f.low(m.to + 1)}`) && itIs(f, m.from - 1)) return true;
  if (
    itIs(f, m.from - 1) &&
    f.entries.some((e) => e.kind === 'trail') &&
    /^(fast|hard|soft|slow|rough|deep|bare|bumpy|punchy|sticky|packed|firm|good)$/.test(words)
  )
    return true;
  return trailNear(f, m) || afterTrail(f, m);
}

/** "10 cm of fresh snow, everything slow": all of the way. */
function everythingIs(f: Frame, m: Mention): boolean {
  if (!OF_TRAIL.test(f.low(m.from)) && !/^(deep|slower|faster|heavy)$/.test(f.low(m.from))) return false;
  let k = m.from - 1;
  while (/^('s|is|was|just|really|pretty|so|all|very|super|still|a|bit|too|gone|got|going)$/.test(f.low(k))) k--;
  return (
    f.low(k) === 'everything' &&
    /^([.,;!]|and|but|out|today|tonight|now|so|in|on|with|from|up|here|there|again|)$/.test(f.low(m.to))
  );
}

/** "the snow's really deep in the woods" */
function snowIs(f: Frame, m: Mention): boolean {
  let k = m.from - 1;
  while (/^('s|is|was|really|pretty|so|very|super|still|too|quite|gets|got|gotten|getting|it|lay|lies)$/.test(f.low(k)))
    k--;
  return /^(snow|powder|trail|drifts|sugar|slush|track)$/.test(f.low(k));
}

const tokenOf = (f: Frame, offset: number) => f.tokens.findIndex((t) => t.end > offset);

/** "My jacket is like glass", "the booties were like cement": a thing worn or carried, said to be so. */
function ofThing(f: Frame, m: Mention): boolean {
  let k = m.from - 1;
  while (/^(is|'s|are|'re|was|were|feels|feel|felt|all|now|just|got|gets|go|went|gone|goes|both)$/.test(f.low(k))) k--;
  if (k === m.from - 1) return false;
  const thing = f.low(k);
  return (
    f.m.at('item', k) !== undefined ||
    f.m.at('bootie', k) !== undefined ||
    (f.m.at('food', k) !== undefined && !f.m.at('trail-word', k)) ||
    /^(jacket|coat|parka|pants|bibs|beard|moustache|mustache|eyelashes|lashes|mitts|mittens|gloves|hands|fingers|feet|toes|face|lines|line|rope|ropes|boots|bags?|zipper|zippers|buckles?|snaps?|thermos|coffee|soup|sandwich)$/.test(
      thing,
    ) ||
    (/^(they|those|these)$/.test(thing) && f.entries.some((e) => e.kind === 'booties' || e.kind === 'gear'))
  );
}

/** Does "it is", perhaps with a word of degree, end at `k`? A thumb leaves the mark out of "it's". */
function itIs(f: Frame, k: number): boolean {
  let j = k;
  while (/^(so|really|very|pretty|super|all|just|still|kinda|quite|too|getting|gone|a|bit)$/.test(f.low(j))) j--;
  return f.low(j) === 'its' || (/^('s|is|was|gets|got|gone|been)$/.test(f.low(j)) && subjectBefore(f, j) === 'it');
}

/** "the lower half is", "the far end was": a stretch of the trail, and its verb at `k`. */
const partOfTrail = (f: Frame, k: number): boolean =>
  /^('s|is|was)$/.test(f.low(k)) &&
  /^(half|section|stretch|end|loop|part|third|bit|leg|side)$/.test(f.low(k - 1)) &&
  /^(lower|upper|first|second|last|other|top|bottom|far|near|outer|inner|back|middle|north|south|east|west)$/.test(
    f.low(k - 2),
  ) &&
  /^(the|our|that)$/.test(f.low(k - 3)) &&
  !f.siteAt(k - 1);

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
    (e) => e.kind === 'trail' && e.span && f.sentence(tokenOf(f, e.span[0])) === f.sentence(a) - 1 && at >= 0,
  );
}

const s2 = (f: Frame, a: number, b: number) => f.tokens.slice(a, b).every((t) => /^(and|,|&|\+)$/.test(t.low));
const pulled = (f: Frame, m: Mention) =>
  f.dogs.some((d) => d.to <= m.from && m.from - d.to <= 3) &&
  !f.m.at('trail-word', m.from - 1) &&
  !f.m.at('trail-word', m.from - 2) &&
  !f.m.at('trail-word', m.to);

const OF_TRAIL =
  /^(hard|fast|soft|slow|firm|deep|smooth|rough|punchy|icy|slick|sticky|bumpy|rutted|choppy|lumpy|mushy|crusty|slushy|sugary|loose|packed)$/;

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
    if (/^(going|footing|conditions|underfoot)$/.test(f.low(k))) return true;
    if (f.low(k) === 'in' && /^(there|here)$/.test(f.low(k + 1))) return true;
    if (/^(by|on|past|at|along|the|in|and|over|through|across|all|for|from)$/.test(f.low(k))) continue;
    if (f.m.at('surface', k)) continue;
    break;
  }
  return false;
}
