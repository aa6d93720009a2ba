/** Reads that there is nothing: "nothing wrong with", "feet look clean", "fine all over", "rest clean". */
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import { ofOthersToo } from './finding-lists.ts';
import { anyFinding, type Finding, footThere, lastSite, type ReadFinding, wholeTeam } from './finding-parts.ts';
import { feetTold } from './fine-told.ts';
import { doubted } from './places.ts';
import { refined } from './where-carried.ts';

/** "nothing wrong with Freya's front feet", "nothing in that foot", "can't see anything wrong with it". */
export function readNothing(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding[] {
  const next = f.low(m.to);
  const words = f.text.slice(...f.span([m.from, m.to])).toLowerCase();
  // "checked Penny's wrist, nothing"
  const last1 = f.sites.filter((s) => s.part && !s.anaphor && s.to < m.from && m.from - s.to <= 2).at(-1);
  if (
    (words === 'nothing' ||
      (last1 && f.m.of('act').some((a) => a.value === 'checked' && a.to <= last1.from && last1.from - a.to <= 4))) &&
    last1 &&
    /^[,:-]$/.test(f.low(m.from - 1)) &&
    /^([.,;!]|)$/.test(next) &&
    !f.isClaimed(last1.from, last1.to)
  ) {
    const told = f.owner(last1.from, m.to, last1);
    // "Checked all feet, nothing": everybody's
    const own = !told.dogs.length && !told.human && (last1.plural || last1.paws.length === 4) ? wholeTeam(f) : told;
    if (!own.human && own.dogs.length)
      return [{ entry: anyFinding(f, m, own, last1, 'absent'), from: last1.from, to: m.to, site: last1 }];
  }
  const listed = words === 'nothing' ? nothingListed(f, m) : undefined;
  if (listed) return [listed];
  if (words === 'nothing' && !/^(in|on|wrong|there|between|with|swollen|to)$/.test(next)) return [];
  if (words === 'nothing' && next === 'to') return [];
  if (words === 'anything wrong' && f.assertion(m.from, m.to) !== 'absent') return [];
  let k = m.to;
  while (/^(with|w|\/|in|on|of|to|the|either|any|about|wrong|between|at|all|there)$/.test(f.low(k)) && k - m.to < 5)
    k++;
  // "Echo feet: textbook, not a mark on em"
  const them =
    /^(them|em|it|those|him|her|either)$/.test(f.low(k)) && /\b(mark|scratch)\b/.test(words)
      ? f.sites
          .filter((s) => s.part && !s.anaphor && s.to <= m.from && f.sentence(s.from) === f.sentence(m.from))
          .at(-1)
      : undefined;
  const its = them && f.owner(them.from, them.to, them);
  if (them && its && !its.human && its.dogs.length && /^(them|em|it|those|either)$/.test(f.low(k)))
    return [{ entry: anyFinding(f, m, its, them, 'absent'), from: m.from, to: k + 1, site: them }];
  // "found nothing Ronja lies …": a name right behind, without a word that joins it, begins the next statement
  const joined = k > m.to || /^(with|on|in|of|at|to)$/.test(f.low(m.to - 1));
  const dog = joined ? f.dogFrom(k) : undefined;
  let site =
    f.sites.find((s) => s.from >= k && s.from <= (dog ? dog.to + 1 : k) && s.to > k) ??
    f.sites.find((s) => s.from < k && s.to >= k && s.from >= m.to);
  // "went over the wheel dogs and found nothing"
  const gone =
    !joined && /\bfound\b/.test(words)
      ? f.dogs.findLast(
          (d) =>
            d.to <= m.from &&
            m.from - d.to <= 8 &&
            d.dogs.length &&
            !d.possessive &&
            !f.strongBetween(d.to, m.from) &&
            f.tokens
              .slice(d.to, m.from)
              .every((t) =>
                /^(and|i|we|but|,|over|up|down|all|from|nose|head|tip|to|tail|toe|carefully|well|twice|again|thoroughly|quickly|now|on|the|table|then)$/.test(
                  t.low,
                ),
              ),
        )
      : undefined;
  const owner: Owner = gone
    ? { dogs: gone.dogs, phrase: gone, doubt: gone.doubt }
    : dog && !(dog.possessive && !site)
      ? { dogs: dog.dogs, phrase: dog, doubt: dog.doubt }
      : f.owner(m.from, m.to, site);
  if (/^no (injur|wounds|foot)/.test(words) && !owner.dogs.length && !owner.human && !site)
    return [{ entry: anyFinding(f, m, wholeTeam(f), undefined, 'absent'), from: m.from, to: m.to }];
  if (owner.human || (!owner.dogs.length && !site)) return [];
  // "Feet after the run. Split in Ivy's web. Nothing on Gus or Tank": the note goes over feet
  if (!site && dog && words === 'nothing') site = feetTold(f, m, found);
  const it = f.low(k) === 'it' || f.low(k) === 'that' || /^(there|them|em|either|those)$/.test(f.low(k));
  if (site?.anaphor || (!site && it)) {
    const last = lastSite(f, m.from, found);
    if (last)
      site = {
        ...last,
        from: site?.from ?? k,
        to: site?.to ?? k + 1,
        part: footThere(f, site) ?? last.part,
        anaphor: true,
      };
  } else if (site?.side && !site.part && !site.end) {
    // "the right triceps is tight. Nothing in the left one"
    const last = lastSite(f, m.from, found);
    if (last?.part) site = { ...site, part: last.part, end: last.end };
  } else if (!site && words === 'nothing' && !(dog && /^(on|in|wrong|with)$/.test(next))) return [];
  // "nothing wrong with his shoulder anymore"
  const end = Math.max(m.to, site?.to ?? 0, dog?.to ?? 0);
  const over = /^(anymore|any (more|longer)|now)\b/.test(`${f.low(end)} ${f.low(end + 1)}`) && site?.part !== undefined;
  return [
    {
      entry: anyFinding(f, m, owner, site, over ? 'resolved' : 'absent'),
      from: m.from,
      to: Math.max(m.to, site?.to ?? 0),
      site,
    },
  ];
}

const FINE_LINK =
  /^(is|are|was|were|'s|'re|look|looks|looked|feel|feels|felt|seem|seems|all|both|both|still|pretty|really|very|is|just|been|has|have|:|so|fine|good|ok|nice|and|also|perfectly|as|too|checked|out|now|quite|holding|up|came|come|back|doing|far|well|stayed|staying|mostly|completely|totally|absolutely|nearly|of|them|em|today|done|s|again|down|everywhere|there|here|gone|apart|in)$/;

/** "wrists ok", "feet all look clean", "the shoulder is fine now"; of a whole dog only in words that can be nothing else. */
export function readFine(
  f: Frame,
  m: Mention,
  found: readonly ReadFinding[],
  takenSites: ReadonlySet<Site>,
): ReadFinding[] {
  const words = f.text.slice(...f.span([m.from, m.to])).toLowerCase();
  const asserted = f.assertion(m.from, m.to);
  if (asserted === 'absent' || toDry(f, m)) return [];
  // "ripped a nail clean off"
  if (words === 'clean' && /^(off|through|out|away|across|over|in)$/.test(f.low(m.to))) return [];
  // "maybe it's the hip, well, we'll see"
  if (words === 'well' && !/^([.,;!]|and|but|too|so|now|today|)$/.test(f.low(m.to))) return [];
  let k = m.from - 1;
  let hyd = false;
  while (k >= 0 && m.from - k < 9 && !f.isStrong(k) && !f.sites.some((s) => s.to === k + 1)) {
    const low = f.low(k);
    if (/^(hyd|hydration|gums)$/.test(low)) {
      hyd = true;
      break;
    }
    // "the foot under it clean"
    if (low === 'it' && /^(under|below|above|beneath|on)$/.test(f.low(k - 1))) {
      k -= 2;
      continue;
    }
    const d = f.dogAt(k);
    if (d?.value === 'all' && !d.company && !d.prep) {
      k = d.from - 1;
      continue;
    }
    // "the wrists on both leaders are fine"
    if (d?.prep && !d.company && f.sites.some((s) => s.to === d.from - 1 && s.part)) {
      k = d.from - 2;
      continue;
    }
    if (d && !d.company) {
      // "feet clean on everybody" has its dog elsewhere; "Fjord next to him fine all over" has it here.
      break;
    }
    if (!FINE_LINK.test(low) && !f.m.at('severity', k) && !f.m.at('except', k) && !d) break;
    k--;
  }
  if (hyd) return readHydration(f, m, k);
  const two = bothFine(f, m, found);
  if (two.length) return two;
  const they = theyFine(f, m);
  if (they) return [they];
  let site = f.sites.find((s) => s.to === k + 1 && !s.anaphor && !takenSites.has(s)) ?? siteBehindFine(f, m);
  const anaphor = f.sites.find((s) => s.to === k + 1 && s.anaphor);
  if (!site && anaphor && footThere(f, anaphor)) {
    const last = lastSite(f, m.from, found);
    if (last) site = { ...last, ...anaphor, part: footThere(f, anaphor), side: last.side, end: last.end };
  }
  // "left front foot is iced up, right one's clear"
  const told = found.at(-1);
  if (
    site?.side &&
    !site.part &&
    !site.end &&
    told?.site &&
    f.low(site.to - 1) === 'one' &&
    f.sentence(m.from) - f.sentence(told.from) <= 1
  )
    site = { ...site, part: told.entry.part, end: told.entry.end };
  if (site && (site.part || site.end)) {
    if (f.isClaimed(site.from, site.to)) return [];
    const owner = f.owner(m.from, m.to, site);
    if (site.part && site.part !== 'foot' && !(site.plural && /^(pad|nail|web|toe)$/.test(site.part)))
      site = refined(f, site, owner, found, m.from);
    // "All feet look good": everybody's; "both fronts" are one dog's
    const allFeet = site.paws.length === 4 && f.low(site.from) === 'all' && !/^(four|4)$/.test(f.low(site.from + 1));
    const own: Owner = owner.dogs.length || owner.human || (site.side && !allFeet) ? owner : wholeTeam(f);
    if (own.human) return [];
    const now =
      /^(now|again|today)$/.test(f.low(m.to)) ||
      f.low(m.from - 1) === 'now' ||
      asserted === 'resolved' ||
      /\bback to\b/.test(f.text.slice(...f.span([Math.max(0, m.from - 2), m.to])));
    const state =
      asserted === 'past' || asserted === 'planned' || asserted === 'possible'
        ? asserted
        : now && !/^today$/.test(f.low(m.to))
          ? 'resolved'
          : 'absent';
    const as = state === 'possible' ? 'absent' : state;
    // "Rook's ear and Ivy's nose are fine"
    const others = ofOthersToo(f, m, [site], takenSites).map((o) => ({
      entry: anyFinding(f, m, { dogs: o.dogs }, o.site, as),
      from: o.site.from,
      to: m.to,
      site: o.site,
    }));
    return [...others, { entry: anyFinding(f, m, own, site, as), from: site.from, to: m.to, site }];
  }
  // "went through all the feet. Clean on everybody except …"
  const onAll = /^(on|for|with)$/.test(f.low(m.to)) ? f.dogFrom(m.to + 1) : undefined;
  const feetBefore =
    onAll?.kind === 'group' && (m.from === 0 || f.isStrong(m.from - 1) || f.low(m.from - 1) === ',')
      ? f.sites
          .filter(
            (s) => s.part === 'foot' && s.plural && s.to <= m.from && f.sentence(m.from) - f.sentence(s.from) <= 1,
          )
          .at(-1)
      : undefined;
  if (onAll && feetBefore) {
    const site: Site = { from: m.from, to: m.to, part: 'foot', plural: true, anaphor: false, paws: [] };
    return [
      {
        entry: anyFinding(f, m, { dogs: onAll.dogs, phrase: onAll }, site, 'absent'),
        from: m.from,
        to: onAll.to,
        site,
      },
    ];
  }
  const listedFeet = feetHeading(f, m, k);
  if (listedFeet) return [listedFeet];
  const rest = restClean(f, m, found);
  if (rest) return [rest];
  const feet = checkedBefore(f, m, k);
  if (feet) {
    // "checked all the feet, Lark has a crack, everyone else is good"
    const else_ = f.dogs.find((d) => d.value === 'rest' && d.to <= m.from && m.from - d.to <= 3);
    const told = new Set(found.flatMap((r) => r.entry.dogs));
    const but = f.dogs.find((d) => d.excepted && d.from >= m.to && d.from - m.to <= 3)?.dogs ?? [];
    const team = wholeTeam(f);
    const who: Owner = else_
      ? { dogs: else_.dogs.filter((d) => !told.has(d)), phrase: else_ }
      : { ...team, dogs: team.dogs.filter((d) => !but.includes(d)) };
    return [{ entry: anyFinding(f, m, who, feet, 'absent'), from: else_ ? m.from : feet.from, to: m.to, site: feet }];
  }
  return readFineDog(f, m, words, k, found);
}

/** "Evening round. Moss, Fern: nothing.": a dog gone over, where no food was told that it could have left. */
function nothingListed(f: Frame, m: Mention): ReadFinding | undefined {
  const mark = m.from - 1;
  const d = /^[:-]$/.test(f.low(mark)) ? f.dogs.find((x) => x.to === mark) : undefined;
  if (!d?.dogs.length || d.possessive || !/^([.,;!/]|)$/.test(f.low(m.to))) return undefined;
  if (f.m.of('food').some((x) => x.from < d.from && !f.dogAt(x.from)) || f.m.of('ate').some((x) => x.to <= d.from))
    return undefined;
  const feet = feetToldAbove(f, d.from);
  const site: Site | undefined = feet
    ? { from: m.from, to: m.to, part: 'foot', plural: true, anaphor: false, paws: [] }
    : undefined;
  const owner = { dogs: d.dogs, phrase: d, doubt: d.doubt };
  return { entry: anyFinding(f, m, owner, site, 'absent'), from: d.from, to: m.to, site };
}

/** Feet are the heading of what stands in the sentences before `at`. */
const feetToldAbove = (f: Frame, at: number): boolean =>
  f.tokens.some(
    (t) =>
      t.i < at &&
      /^(feet|foot|paws?|pads?)$/.test(t.low) &&
      f.sentence(t.i) < f.sentence(at) &&
      !f.dogs.some((x) => x.to <= t.i && f.sentence(x.from) === f.sentence(t.i)),
  );

/** "Foot check. Moss: clean. Tansy clean.": feet were the heading. */
function feetHeading(f: Frame, m: Mention, k: number): ReadFinding | undefined {
  if (!/^(clean|fine|good|ok|okay|perfect|great|spotless|nil|nad|nsf|wnl)$/.test(f.low(m.from)) || m.to - m.from > 1)
    return undefined;
  const d =
    f.dogAt(k) ??
    f.dogAt(m.from - 1) ??
    (f.low(m.from - 1) === ':' ? f.dogs.find((x) => x.to === m.from - 1) : undefined);
  if (
    !d?.dogs.length ||
    d.company ||
    f.strongBetween(d.to, m.from) ||
    !/^([.,;]|but|except|apart|save|bar|)$/.test(f.low(m.to))
  )
    return undefined;
  // "everybody's good" is what they are
  if (d.possessive && !(d.to === m.from && f.low(d.to - 1) === "'s")) return undefined;
  if (d.value === 'rest') return undefined;
  if (!feetToldAbove(f, d.from)) return undefined;
  const site: Site = { from: m.from, to: m.to, part: 'foot', plural: true, anaphor: false, paws: [] };
  return {
    entry: anyFinding(f, m, { dogs: d.dogs, phrase: d, doubt: d.doubt }, site, 'absent'),
    from: d.from,
    to: m.to,
    site,
  };
}

/** "I checked Tank's feet twice and they are fine": the feet, not the dogs. */
function theyFine(f: Frame, m: Mention): ReadFinding | undefined {
  let k = m.from - 1;
  while (/^(are|were|look|looked|feel|felt|all|just|perfectly|totally|'re|both)$/.test(f.low(k))) k--;
  if (f.low(k) !== 'they' || k === m.from - 1) return undefined;
  const s = f.sites.filter((x) => x.plural && x.part && !x.anaphor && x.to <= k && k - x.to <= 6).at(-1);
  if (!s || f.sentence(s.from) !== f.sentence(m.from) || f.isClaimed(s.from, s.to)) return undefined;
  if (f.dogs.some((d) => d.from >= s.to && d.to <= k)) return undefined;
  const owner = f.owner(s.from, s.to, s);
  if (owner.human || !owner.dogs.length) return undefined;
  return { entry: anyFinding(f, m, owner, s, 'absent'), from: s.from, to: m.to, site: s };
}

/** "checked the shoulder and the wrist and both are fine": the two places named before. */
function bothFine(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding[] {
  let k = m.from - 1;
  while (/^(are|were|look|looked|feel|felt|seem|is|was|'re|perfectly|totally|just|all)$/.test(f.low(k))) k--;
  if (!/^(both|neither|they)$/.test(f.low(k)) || k === m.from - 1) return [];
  if (f.low(k) === 'they' && f.low(k + 1) !== 'both' && !f.commaBetween(k - 1, k)) return [];
  const two = f.sites
    .filter((s) => s.to <= k && s.part && !s.anaphor && !s.plural && f.sentence(s.from) === f.sentence(m.from))
    .slice(-2);
  const [a, b] = two;
  if (!a || !b || k - b.to > 3 || b.from - a.to > 3 || f.isClaimed(a.from, b.to)) return [];
  return two
    .map((s) => {
      const owner = f.owner(s.from, s.to, s);
      const site = refined(f, s, owner, found, m.from);
      return { entry: anyFinding(f, m, owner, site, 'absent'), from: s.from, to: m.to, site };
    })
    .filter((r) => r.entry.dogs.length);
}

/** "Gus small cut RF web, Kestrel LH pad pink, rest clean": the feet of those not told of. */
function restClean(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding | undefined {
  const d = f.dogs.find(
    (x) =>
      /^(rest|left|right|lead|swing|wheel|team)$/.test(x.value ?? '') &&
      !x.groups &&
      x.to <= m.from &&
      m.from - x.to <= 3,
  );
  const feetTold = f.sites.some((s) => s.part === 'foot' && s.plural && s.to <= m.from);
  const footish = found.some((r) => r.site !== undefined || /^(iced|split|worn|lame)$/.test(r.entry.sign));
  if (!d || (!footish && !feetTold) || !/^(clean|good|fine|ok|perfect|great|normal|clear|okay)$/.test(f.low(m.from)))
    return undefined;
  // Under "Feet:" only what is told since counts.
  const head = f.sites.filter((s) => s.part === 'foot' && s.plural && s.to <= m.from && f.low(s.to) === ':').at(-1);
  if (
    !found.every(
      (r) => !r.site || (head && r.to <= head.from) || /^(foot|pad|web|toe|nail|dewclaw)$/.test(r.entry.part ?? ''),
    )
  )
    return undefined;
  const told = new Set(found.flatMap((r) => r.entry.dogs));
  const all = f.lineup(d.from).map((l) => l.dog);
  const dogs =
    d.value !== 'rest' ? d.dogs.filter((x) => !told.has(x)) : all.length ? all.filter((x) => !told.has(x)) : ['*'];
  if (
    !dogs.length ||
    (d.value !== 'rest' &&
      !found.some((r) => r.entry.sign === 'iced' || /^(foot|pad|web|toe|nail)$/.test(r.entry.part ?? '')))
  )
    return undefined;
  const site: Site = { from: m.from, to: m.to, part: 'foot', plural: true, anaphor: false, paws: [] };
  return { entry: anyFinding(f, m, { dogs, phrase: d }, site, 'absent'), from: d.from, to: m.to, site };
}

/** "checked feet, all good": the part that was gone over. */
function checkedBefore(f: Frame, m: Mention, k: number): Site | undefined {
  const all = f.dogAt(m.from - 1) ?? f.dogAt(k);
  if (f.low(m.from - 1) !== 'all' && all?.value !== 'all' && f.low(m.from) !== 'all') return undefined;
  const checked = f.m.of('act').filter((a) => a.value === 'checked');
  return f.sites.find(
    (s) =>
      s.part &&
      s.to <= m.from &&
      // "checked feet, all good"; "foot check at the cabin, all good"
      ((m.from - s.to <= 4 && checked.some((a) => a.to <= s.from && s.from - a.to <= 2)) ||
        (m.from - s.to <= 9 && checked.some((a) => a.from === s.to) && !f.strongBetween(s.to, m.from))),
  );
}

/** "let his feet dry", "so the pads can dry": what they are to do. */
const toDry = (f: Frame, m: Mention): boolean =>
  f.low(m.from) === 'dry' &&
  [1, 2, 3, 4, 5].some((n) => /^(let|lets|letting|can|could|to|help|helps)$/.test(f.low(m.from - n))) &&
  !/^(is|are|was|were|look|looks|'s|and)$/.test(f.low(m.from - 1));

/** "good feet", "clean wrists all round". */
function siteBehindFine(f: Frame, m: Mention): Site | undefined {
  if (
    !/^(good|clean|perfect|healthy|great|fine|nice|beautiful|normal|cool|cold|dry)$/.test(f.low(m.from)) ||
    m.to - m.from > 1
  )
    return undefined;
  return f.sites.find((s) => s.from === m.to && s.part && /^(foot|wrist|pad|web|shoulder|nail)$/.test(s.part));
}

function readHydration(f: Frame, m: Mention, k: number): ReadFinding[] {
  const owner = f.owner(k, m.to);
  if (owner.human) return [];
  const entry: Finding = {
    kind: 'finding',
    dogs: owner.dogs,
    sign: 'dehydrated',
    assertion: 'absent',
    span: f.span([k, m.to]),
    rule: 'hydration is fine',
    ...doubted(owner.doubt),
  };
  return [{ entry, from: k, to: m.to }];
}

/** Of the whole dog: "unhurt", "fine all over", "sound"; plain praise is left to the attitude. */
function readFineDog(f: Frame, m: Mention, words: string, k: number, found: readonly ReadFinding[]): ReadFinding[] {
  const allOver =
    /^(all over|everywhere|otherwise|to me|physically|healthwise|nose to tail)/.test(
      `${f.low(m.to)} ${f.low(m.to + 1)}`,
    ) && !/^(to me|otherwise)/.test(`${f.low(m.to)} ${f.low(m.to + 1)}`);
  const strong =
    /^(unhurt|uninjured|unharmed|sound|sound as a bell|none the worse|checked out fine|checked out|checks out|passed|intact|pain free|healthy|unremarkable|nad|nsf|wnl)$/.test(
      words,
    ) ||
    allOver ||
    // "Rook's got a bruise on the hip, Gus is clean": where dogs are gone over
    (words === 'clean' &&
      /^(is|'s|was|are|were|looks)$/.test(f.low(m.from - 1)) &&
      found.length > 0 &&
      f.dogAt(k)?.kind === 'names' &&
      !f.tokens.some((t) => t.i < m.from && /^(feet|foot|paws?)$/.test(t.low)) &&
      !f.m.of('food').some((x) => x.to <= m.from));
  if (!strong) return [];
  const d = f.dogAt(k) ?? f.dogs.filter((x) => x.to <= m.from && !x.company).at(-1);
  if (!d?.dogs.length || f.strongBetween(d.to, m.from)) return [];
  const now = f.low(m.to) === 'now';
  const entry: Finding = {
    kind: 'finding',
    dogs: d.dogs,
    sign: words.startsWith('sound') && now ? 'lame' : 'any',
    assertion: now ? 'resolved' : 'absent',
    span: f.span([Math.max(d.from, m.from - 8), m.to]),
    rule: '<dog> is fine',
    ...doubted(d.doubt),
  };
  return [{ entry, from: m.from, to: m.to }];
}
