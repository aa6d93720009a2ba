/** Reads that a part is fine: "feet look clean", "the wrists on both leaders are fine", "clean on everybody". */
import type { Frame, Mention, Owner, Site } from '../steps/frame.ts';
import { ofOthersToo } from './finding-lists.ts';
import { anyFinding, footThere, lastSite, type ReadFinding, wholeTeam } from './finding-parts.ts';
import { readFineDog, readHydration } from './fine-dog.ts';
import { checkedBefore, feetHeading, restClean } from './fine-feet.ts';
import { bothFine, siteBehindFine, theyFine } from './fine-places.ts';
import { refined } from './where-carried.ts';

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
    const else_ =
      f.dogs.find((d) => d.value === 'rest' && d.to <= m.from && m.from - d.to <= 3) ??
      // "went through the feet and all the boys are clean"
      f.dogs.find((d) => d === (f.dogAt(m.from - 1) ?? f.dogAt(k)) && d.kind === 'group' && d.value !== 'all');
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

/** "let his feet dry", "so the pads can dry": what they are to do. */
const toDry = (f: Frame, m: Mention): boolean =>
  f.low(m.from) === 'dry' &&
  [1, 2, 3, 4, 5].some((n) => /^(let|lets|letting|can|could|to|help|helps)$/.test(f.low(m.from - n))) &&
  !/^(is|are|was|were|look|looks|'s|and)$/.test(f.low(m.from - 1));
