/** Where on the body a sign is: the site beside it, and whose that makes it. */
import type { Part, Sign } from '../entry.ts';
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import type { ReadFinding } from './findings.ts';

/** Signs of the whole dog: no part is looked for. */
export const WHOLE_BODY: ReadonlySet<Sign> = new Set<Sign>([
  'vomiting',
  'loose-stool',
  'bloody-stool',
  'coughing',
  'dark-urine',
  'dehydrated',
  'overheated',
  'shivering',
  'collapsed',
  'thin',
  'in-season',
]);
/** Signs of how a dog goes: a bare "left front" is the leg, else the foot. */
const OF_GOING: ReadonlySet<Sign> = new Set<Sign>(['lame', 'sore', 'stiff', 'swollen', 'hot']);

/** The part a bare side and end stand for. */
export function partFor(sign: Sign, site: Site | undefined): Part | undefined {
  if (!site) return undefined;
  if (site.part) return site.part;
  if (!site.end) return undefined;
  return OF_GOING.has(sign) ? 'leg' : 'foot';
}

/** Words that may stand between a sign and its site behind it. */
const TO_SITE =
  /^(in|on|of|the|his|her|their|its|a|an|at|to|up|between|'s|under|above|behind|over|around|along|inside|both|it|with|for|small|big|little|tiny|bad|new|one|-|from|down|across|near|through|all|is|about|that|his|leading|deep|nasty|really|top|bottom|back|outside|edge|tip|base|point|side|by|off|sort|kind|looking|looked|skin|patch|spot|area|mark|place|section|strip|streak|ridge|clear|stuck|underneath|when|i|you|we|press|pressed|pressing|touch|touched|squeeze|squeezed|bend|bent|flex|flexed|push|pushed|poke|poked|handle|handled|feel|felt|if|pinch|pinched|extend|extended|lift|lifted|rotate|thumb|palpate|palpated|palp|palpation|flexion|extension|manipulation|rotation|pressure|against|weight|any|much|own|pretty|slightly|vet|doc|leans?|leaned|leaning|straightens?|straightened|stretch(es|ed)?|presses|touches|squeezes|pushes|bends|flexes|pokes|handles|feels|pinches|lifts|rotates|rotated|moves?|moved|work|works|worked|even|every|time|only|put|puts|run|ran|runs|thumb|hand|finger|fingers|land|lands|landed|landing|steps|step|stepped|comes|came|away|hair|fur|bare|nudge|nudged|nudges|prod|prodded|prods|gland|glands|node|nodes|head|stride)$/;
/** Words that may stand between a site and its sign behind it. */
const FROM_SITE =
  /^(tip|base|root|edge|end|is|ai|are|was|were|'s|'re|a|an|the|looks|look|looked|feels|feel|felt|seems|seem|got|gets|getting|has|have|had|been|bit|little|touch|all|both|still|and|just|also|very|really|pretty|quite|fairly|slightly|somewhat|new|bad|not|n't|no|again|,|:|-|now|today|gone|going|starting|to|be|too|so|kind|kinda|of|sort|with|some|small|tiny|big|looking|feeling|did|do|does|is|this|morning|tonight|there|came|come|up|one|ones|more|less|isn|were|wasn|maybe|probably|might|may|possibly|definitely|only|barely|without|finding|found|seeing|saw|single|any|see|hair|tad|nice|s|his|her|it|its|that|which|above|below|underneath|beneath|under|around|near|like|could|would|must|should|if|even|as|nicely|broke|who|badly|noticeably|moderately|mildly|well|never|or|than|quarter|inch|mm|cm|\d+|half|\/|\+|n|seems|keeps|kept|good|right|down|longer|nearly|almost|completely|poss|possible)$/;

/** The sites that a sign was said of, nearest first; empty when none stands beside it. */
export function siteBeside(f: Frame, m: Mention, taken: ReadonlySet<Site>): Site[] {
  const inside = f.sites.filter((s) => s.to > m.from && s.from < m.to && (s.part || (s.side && s.end)));
  if (
    inside.length &&
    ![...Array(m.to - m.from).keys()].some((n) =>
      /^(rub|rubs|legged|legs?|toe|toes|head|hip|when)$/.test(f.low(m.from + n)),
    )
  )
    return inside;
  const before = leftSite(f, m, taken);
  const left = before && ofAnother(f, m, before) ? undefined : before;
  const right = withFoot(f, rightSite(f, m));
  // "limping, right wrist is warm": what stands behind a comma or before its own verb belongs to the next sign.
  if (right && left) {
    const gapL = m.from - left.to;
    const gapR = right.from - m.to;
    // "the back left one, there's a little cut in the pad": a place told with "in" is the sign's own
    const own =
      Boolean(right.part) && gapL > 3 && /^(in|on|between|under|above|behind|around|along|inside)$/.test(f.low(m.to));
    // "Feet: tiny crack in his left hind pad": a heading is not the place
    const heading = f.low(left.to) === ':' && left.plural && Boolean(right.part) && Boolean(right.side ?? right.end);
    const first = !taken.has(left) && gapR !== 0 && !own && !heading ? left : right;
    if (left.part && !right.part && right.side && !left.side && gapR <= 4)
      return [{ ...left, side: right.side, end: right.end ?? left.end, to: right.to, paws: right.paws }];
    if (right.part && !left.part && left.side && !right.side && gapL <= 3)
      return [{ ...right, side: left.side, end: left.end ?? right.end, from: left.from, paws: left.paws }];
    return listed(f, first, first === right, taken);
  }
  const one = left ?? right;
  return one ? listed(f, one, one === right, taken) : [];
}

/** "warmed his ears no frostbite on anyone": a part of one dog, and the sign is told of others right behind it. */
function ofAnother(f: Frame, m: Mention, s: Site): boolean {
  const whose = f.dogs.find((d) => d.possessive && (d.to === s.from || d.to === s.from - 1));
  const told = /^(on|in|with|from|of|for)$/.test(f.low(m.to)) ? f.dogFrom(m.to + 1) : undefined;
  return Boolean(whose && told && !told.possessive && told.dogs.length && told.dogs.join() !== whose.dogs.join());
}

/** "A crack in her pad, the back right": the foot told behind the part, as one place. */
function withFoot(f: Frame, s: Site | undefined): Site | undefined {
  if (!s?.part || s.side || s.end || s.anaphor || s.plural || !/^(foot|pad|web|toe|nail|dewclaw)$/.test(s.part))
    return s;
  // "one split web (Storm, left front)"
  const aside = f.low(s.to) === '(' ? f.dogFrom(s.to + 1) : undefined;
  const from = aside?.to ?? s.to;
  const k = /^[,:(]$/.test(f.low(from)) ? from + 1 : from;
  const at = /^(the|on|in|of)$/.test(f.low(k)) ? (f.low(k + 1) === 'the' ? k + 2 : k + 1) : k;
  const foot = f.sites.find((x) => x.from === at && !x.part && x.side && x.end && !x.anaphor);
  if (!foot || ownVerb(f, foot) || f.m.at('bootie', foot.to)) return s;
  return { ...s, side: foot.side, end: foot.end, to: foot.to, paws: foot.paws };
}

/** More sites in a list: "left wrist and right shoulder are sore", "splits in LF web and RH pad". */
function listed(f: Frame, site: Site, forward: boolean, taken: ReadonlySet<Site>): Site[] {
  const out = [site];
  let edge = site;
  for (let n = 0; n < 4; n++) {
    const next = f.sites.find(
      (s) =>
        (forward
          ? s.from > edge.from && s.from - edge.to <= 3 && s.from >= edge.to
          : s.to < edge.to && edge.from - s.to <= 3 && s.to <= edge.from) && !s.anaphor,
    );
    if (!next || (!forward && (taken.has(next) || f.isClaimed(next.from, next.to)))) break;
    const [a, b] = forward ? [edge.to, next.from] : [next.to, edge.from];
    const words = f.tokens.slice(a, b).map((t) => t.low);
    if (n === 0 && !words.some((w) => /^(and|&|\+|n|\/)$/.test(w))) break;
    if (
      !words.length ||
      !words.every((w) => /^(and|&|\+|,|in|on|the|his|her|n|\/)$/.test(w)) ||
      !words.some((w) => /^(and|&|\+|,|n|\/)$/.test(w))
    )
      break;
    if (forward && ownVerb(f, next)) break;
    if (words.includes(',') && !words.some((w) => w === 'and') && forward) break;
    if (forward) out.push(next);
    else out.unshift(next);
    edge = next;
  }
  return out;
}

/** A word of praise; "ripped a nail clean off" holds none. */
const fineFrom = (f: Frame, k: number) =>
  f.m.from('fine', k) !== undefined && !(f.low(k) === 'clean' && /^(off|through|out|away)$/.test(f.low(k + 1)));

/** Does the site begin a statement of its own: "right wrist is warm"? */
function ownVerb(f: Frame, s: Site): boolean {
  // "on his left front, and the wrist there is hot"
  const next = f.low(f.low(s.to) === 'there' ? s.to + 1 : s.to);
  if (/^(is|are|was|were|'s|looks|look|feels|seems|has)$/.test(next)) return true;
  // "not swollen, foot under it clean"
  const from = /^(under|below|above|beneath)$/.test(next) && f.low(s.to + 1) === 'it' ? s.to + 2 : s.to;
  if (fineFrom(f, from) && !f.m.at('sign', s.from - 1)) return true;
  for (let k = from; k < from + 3; k++) {
    if (f.isStrong(k) || f.low(k) === ',') return false;
    if (k > s.to && fineFrom(f, k)) return true;
    const g = f.m.from('sign', k);
    if (g) return !f.m.at('no-sign', k) && !/^(again)$/.test(f.low(k));
    if (!/^(a|bit|little|touch|slightly|pretty|really|very|still|all|not)$/.test(f.low(k))) return false;
  }
  return false;
}

/** "no heat, swelling or pain | in her wrists": behind the signs that share one place. */
function behindList(f: Frame, m: Mention): number {
  if (m.value === 'lame') return m.to;
  let k = m.to;
  let joined = false;
  for (;;) {
    const link = /^(,|or|nor|and|&|\/)$/.test(f.low(k)) ? (/^(or|nor|and)$/.test(f.low(k + 1)) ? k + 2 : k + 1) : k;
    if (link === k) break;
    const next = f.m.from('sign', /^(any|no|a)$/.test(f.low(link)) ? link + 1 : link);
    if (!next || next.value === 'lame' || WHOLE_BODY.has(next.value as Sign)) return m.to;
    joined ||= f.low(link - 1) !== ',' && f.low(link - 1) !== '/';
    k = next.to;
  }
  return joined && /^(in|on|at|around|to|of)$/.test(f.low(k)) ? k : m.to;
}

function rightSite(f: Frame, m: Mention): Site | undefined {
  let k = behindList(f, m);
  const last = k + 8;
  while (k < f.tokens.length && k < last) {
    const s = f.sites.find((x) => x.from === k);
    if (s) {
      if (s.anaphor) return k - m.to < 5 ? anaphorSite(f, s) : undefined;
      return ownVerb(f, s) && k - m.to < 2 && !/^(in|on|of)$/.test(f.low(k - 1)) ? undefined : s;
    }
    // "bald patch the size of a coin in his armpit"
    if (f.low(k) === 'the' && f.low(k + 1) === 'size') {
      k += /^(a|an|my|the)$/.test(f.low(k + 3)) ? 5 : 4;
      continue;
    }
    if (f.isStrong(k) || f.low(k) === ',')
      return k === m.to && f.low(k) === ',' ? (commaSite(f, m, k) ?? overAside(f, m, k)) : undefined;
    const d = f.dogAt(k);
    if (d) {
      // "chafed him in both armpits", "rubbed Moss in both armpits"
      if (
        !d.possessive &&
        !((d.kind === 'pronoun' || m.value === 'rub') && /^(in|on|under|at|across|along)$/.test(f.low(d.to))) &&
        !/^(him|them)$/.test(f.low(d.from)) &&
        f.sites.some((x) => x.from >= d.to && x.from <= d.to + 1) &&
        !/^(in|on|of)$/.test(f.low(d.from - 1))
      )
        return undefined;
      k = d.to;
      continue;
    }
    // "the same split as yesterday on her right front"
    if (f.low(k) === 'as' && /^(yesterday|before|last|ever)$/.test(f.low(k + 1))) {
      k += f.low(k + 1) === 'last' ? 3 : 2;
      continue;
    }
    // "blood in the bootie, right hind"
    if (m.value === 'bleeding' && f.m.at('bootie', k)) {
      k++;
      if (f.low(k) === ',') return commaSite(f, m, k);
      continue;
    }
    const cause = overCause(f, k);
    if (cause) {
      k = cause;
      continue;
    }
    // "ice balls out of Storm's feet"
    if (f.low(k) === 'out' && /^(of|from)$/.test(f.low(k + 1))) {
      k += 2;
      continue;
    }
    if (!TO_SITE.test(f.low(k)) && !f.m.at('severity', k) && !f.m.at('trend', k)) return overAside(f, m, k);
    k++;
  }
  return undefined;
}

/** "a rub from the harness in his left armpit", "a cut from that ice on the RF": where what did it ends; nothing when no place follows. */
function overCause(f: Frame, k: number): number | undefined {
  if (f.low(k) !== 'from') return undefined;
  let n = k + 1;
  while (/^(a|an|the|his|her|that|this|some|old|new|sharp|hard)$/.test(f.low(n))) n++;
  const end = (f.m.from('item', n) ?? f.m.from('bootie', n))?.to ?? n + 1;
  if (f.tokens[n]?.kind !== 'word' || f.dogAt(n) || f.siteAt(n)) return undefined;
  if (f.m.at('sign', n) && f.low(n) !== 'ice') return undefined;
  return /^(in|on|at|under|across|along|behind|inside)$/.test(f.low(end)) ? end : undefined;
}

/** "ripped a dewclaw, left front", "torn nail, RH": a bare foot behind the comma, with no sign of its own. */
function commaSite(f: Frame, m: Mention, k: number): Site | undefined {
  // "ice balls, Miles, both fronts"
  const named = f.dogFrom(k + 1);
  if (named && !named.possessive && f.low(named.to) === ',') k = named.to;
  const s = f.sites.find((x) => x.from === k + 1 || (x.from === k + 2 && /^(on|in|both|the)$/.test(f.low(k + 1))));
  if (!s || s.anaphor || ownVerb(f, s) || f.m.from('sign', s.to)) return undefined;
  const next = f.low(s.to);
  if (!/^([,.;:!]|)$/.test(next) && f.tokens[s.to]) return undefined;
  if (s.part && m.value === 'lame') return undefined;
  return s;
}

/** "limping, poor lamb, on the front left": the place of a limp behind an aside. */
function overAside(f: Frame, m: Mention, comma: number): Site | undefined {
  if (m.value !== 'lame') return undefined;
  const s = f.sites.find(
    (x) => x.from >= comma && x.from - comma < 9 && x.end && x.side && /^(on|in|the)$/.test(f.low(x.from - 1)),
  );
  if (!s || !/^(on|in)$/.test(f.low(f.low(s.from - 1) === 'the' ? s.from - 2 : s.from - 1))) return undefined;
  for (let k = comma + 1; k < s.from; k++)
    if (f.isStrong(k) || f.dogAt(k) || f.m.at('sign', k) || f.m.at('bootie', k) || f.m.at('act', k)) return undefined;
  return s;
}

function leftSite(f: Frame, m: Mention, taken: ReadonlySet<Site>): Site | undefined {
  let k = m.from - 1;
  while (k >= 0 && m.from - k < 12) {
    const s = f.sites.find((x) => x.to === k + 1);
    if (s) {
      if (s.anaphor) return anaphorSite(f, s);
      // "warm left wrist, not lame": carrying stops at lame
      const denied = m.value === 'lame' && f.tokens.slice(s.to, m.from).some((t) => /^(no|not|n't)$/.test(t.low));
      return denied && taken.has(s) && !f.tokens.slice(s.to, m.from).some((t) => BE.test(t.low)) ? undefined : s;
    }
    if (f.isStrong(k)) return undefined;
    const low = f.low(k);
    const d = f.dogAt(k);
    if (d) {
      // "feet clean except Gus, who has a split": the group's place is not the exception's
      if (f.dogs.some((x) => x.excepted && x.from <= k && k < x.to)) return undefined;
      // "her left dewclaw, the one she tore last week"
      if (d.kind === 'pronoun' && f.low(d.from - 1) === 'one' && f.low(d.from - 2) === 'the') {
        k = d.from - 3;
        continue;
      }
      if (d.company || d.prep) {
        k = d.from - 1;
        if (d.prep) k--;
        continue;
      }
      return undefined;
    }
    const sign = f.m.at('sign', k);
    if (sign) {
      // "sore and a little swollen" shares its site; any other sign has its own.
      const between = f.tokens.slice(sign.to, m.from).map((t) => t.low);
      if (!between.some((w) => /^(and|or|,|\/|\+|but|n|&)$/.test(w)) && between.length > 0) return undefined;
      k = sign.from - 1;
      continue;
    }
    if (f.m.at('boot-state', k) && f.m.at('bootie', k + 1)) return undefined;
    if (/^(it|that|there)$/.test(low) && /^(on|in|of|under|below|above|beneath)$/.test(f.low(k - 1))) {
      k -= 2;
      continue;
    }
    if (
      !FROM_SITE.test(low) &&
      !f.m.at('severity', k) &&
      !f.m.at('trend', k) &&
      !f.quantityAt(k) &&
      !f.m.at('condition', k)
    )
      return undefined;
    k--;
  }
  return undefined;
}

/** "that same leg", "that foot": of whatever was told there. */
const LIMB = /^(leg|foot)$/;
const BE = /^(is|was|'s|are|were|does|did|do|has)$/;

/** "that foot is iced": the side and end of the site before, the part as said now. */
function anaphorSite(f: Frame, s: Site): Site | undefined {
  const last = f.sites.filter((x) => x.to <= s.from && !x.anaphor && (x.part || x.end)).at(-1);
  const part = [...Array(s.to - s.from).keys()]
    .map((n) => f.m.at('part', s.from + n)?.value as Part | undefined)
    .find(Boolean);
  // "same shoulder as last year", or a dog named since: what was told of another dog is not meant
  const named = last && f.dogs.some((d) => d.kind === 'names' && d.from >= last.to && d.to <= s.from);
  if (!last || (named && part && last.part && part !== last.part && !LIMB.test(part)))
    return part ? { ...s, part } : undefined;
  return { ...last, from: s.from, to: s.to, part: part ?? last.part, anaphor: true };
}

/** "Lame: Gus. Sore shoulders: Ivy, Tank.": a sign at the head of the dogs that have it. */
function dogsHeaded(f: Frame, m: Mention, sites: readonly Site[]): Owner | undefined {
  const to = Math.max(m.to, ...sites.map((s) => s.to));
  const from = Math.min(m.from, ...sites.map((s) => s.from));
  if (f.low(to) !== ':' || !(from === 0 || f.isStrong(from - 1))) return undefined;
  const d = f.dogFrom(to + 1);
  return d?.dogs.length && !d.possessive && /^([.;,]|)$/.test(f.low(d.to))
    ? { dogs: d.dogs, phrase: d, doubt: d.doubt }
    : undefined;
}

/** "Two dogs with the runs, Fern and Moss, one with a cough, Birk": the names behind the count. */
function dogsCounted(f: Frame, m: Mention, sites: readonly Site[]): Owner | undefined {
  const to = Math.max(m.to, ...sites.map((s) => s.to));
  const d = /^[,:(-]$/.test(f.low(to)) ? f.dogFrom(to + 1) : undefined;
  if (d?.kind !== 'names' || d.possessive || !/^([.,;)!]|and|)$/.test(f.low(d.to))) return undefined;
  let k = Math.min(m.from, ...sites.map((s) => s.from)) - 1;
  while (/^(a|an|the|bad|some|sore|raw|small|little|bit|of|mild|case)$/.test(f.low(k))) k--;
  if (!/^(with|has|have|had|having)$/.test(f.low(k))) return undefined;
  const dog = /^(dogs?|others?)$/.test(f.low(k - 1)) ? k - 2 : k - 1;
  return /^(one|two|three|four|five|1|2|3|4|5|another|only)$/.test(f.low(dog))
    ? { dogs: d.dogs, phrase: d, doubt: d.doubt }
    : undefined;
}

/** "Fern nipped Birk on the muzzle": the one that was bitten. */
function bitten(f: Frame, m: Mention): Owner | undefined {
  if (!/^(nipped|bit|scratched|kicked|stepped on|punctured|cut)$/.test(f.low(m.to - 1))) return undefined;
  const d = f.dogFrom(m.to);
  const hurt = d?.kind === 'names' && !d.possessive && /^(on|in|across|by)$/.test(f.low(d.to)) && f.dogAt(m.from - 1);
  return hurt ? { dogs: d.dogs, phrase: d, doubt: d.doubt } : undefined;
}

/** Whose the sign is: the site's dog where words say so, else the clause's; with nobody named anywhere, the whole team for "no …". */
export function siteOwner(f: Frame, m: Mention, sites: readonly Site[], found: readonly ReadFinding[]): Owner {
  // "no swelling in that shoulder": the dog whose shoulder was told
  const that =
    sites[0]?.anaphor &&
    sites[0].part &&
    /^(that|this)$/.test(f.low(sites[0].from)) &&
    f.low(sites[0].from + 1) !== 'same'
      ? [...found].reverse().find((r) => r.entry.part === sites[0]?.part && r.entry.dogs.length === 1)
      : undefined;
  if (that) return { dogs: that.entry.dogs, carried: true };
  const headed = dogsHeaded(f, m, sites) ?? dogsCounted(f, m, sites) ?? bitten(f, m);
  if (headed) return headed;
  const owner = f.owner(m.from, m.to, sites[0]);
  if (owner.human || owner.dogs.length) return owner;
  const last = found.at(-1)?.entry;
  if (last?.dogs.length) return { dogs: last.dogs, carried: true };
  const plural = sites.some((s) => s.plural) || (f.assertion(m.from, m.to) === 'absent' && !sites.length);
  // "no limping tonight and she ate well": one dog's note, whose was not said
  const one = f.tokens.some((t) => /^(he|she|him|his|her|hers)$/.test(t.low) && !f.personAt(t.i));
  if (plural && !one && !f.dogs.some((d) => d.kind === 'names')) {
    const dogs = f.lineup(m.from).map((l) => l.dog);
    return { dogs: dogs.length ? dogs : ['*'] };
  }
  return owner;
}
