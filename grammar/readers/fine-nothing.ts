/** Reads that nothing was found: "nothing wrong with Freya's front feet", "nothing in that foot", "Moss, Fern: nothing". */
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import { anyFinding, footThere, lastSite, type ReadFinding, wholeTeam } from './finding-parts.ts';
import { feetToldAbove } from './fine-feet.ts';
import { feetTold } from './fine-told.ts';
import { refined } from './where-carried.ts';

/** "nothing wrong with Freya's front feet", "nothing in that foot", "can't see anything wrong with it". */
export function readNothing(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding[] {
  // "nothing else wrong with her"
  const next = f.low(m.to) === 'else' ? f.low(m.to + 1) : f.low(m.to);
  const words = f.text.slice(...f.span([m.from, m.to])).toLowerCase();
  // "drank half a litre no problem": only how easily
  if (
    /^no problems?$/.test(words) &&
    !/^(with|in|on|at)$/.test(next) &&
    f.m
      .of('drank')
      .concat(f.m.of('ate'))
      .some((x) => x.to <= m.from && f.sentence(x.from) === f.sentence(m.from) && !f.strongBetween(x.to, m.from))
  )
    return [];
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
  if (words === 'nothing' && !/^(in|on|wrong|amiss|there|between|with|swollen|to)$/.test(next)) return [];
  if (words === 'nothing' && next === 'to') return [];
  if (words === 'anything wrong' && f.assertion(m.from, m.to) !== 'absent') return [];
  let k = m.to;
  while (
    /^(with|w|\/|in|on|of|to|from|the|either|any|about|wrong|else|amiss|between|at|all|there)$/.test(f.low(k)) &&
    k - m.to < 6
  )
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
  } else if (!site && words === 'nothing' && !(dog && /^(on|in|wrong|amiss|with)$/.test(next))) return [];
  // "lame on the left hind, nothing in the paw": the paw of that leg
  if (site?.part && !site.side && !site.plural && owner.dogs.length === 1)
    site = refined(f, site, owner, found, m.from);
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
