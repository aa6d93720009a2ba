/** Places of several dogs listed before what is wrong with them: "Right wrist on Gus, left wrist on Tank, both puffy". */
import type { DogPhrase, Frame, Mention, Site } from '../steps/frame.ts';

interface DogsPlace {
  site: Site;
  dogs: string[];
  from: number;
}

/** Between the list and its sign. */
const TO_SIGN =
  /^(are|is|were|look|looks|looked|feel|felt|both|all|each|also|:|-|,|a|bit|little|touch|slightly|pretty|very|still|really|with|some|small)$/;
const APART = /^(,|and|&|\+|\/|;|then)$/;

const named = (d: DogPhrase | undefined): d is DogPhrase =>
  d !== undefined && d.kind === 'names' && d.dogs.length === 1 && !d.excepted;
const placed = (f: Frame, s: Site | undefined): s is Site =>
  s !== undefined && !s.anaphor && Boolean(s.side) && Boolean(s.part ?? s.end) && !f.isClaimed(s.from, s.to);

/** One place with its dog that ends at token `to`: "left wrist on Tank", "Tank's left wrist", "Tank left wrist". */
function placeEnding(f: Frame, to: number): DogsPlace | undefined {
  const behind = f.dogs.find((d) => d.to === to);
  if (named(behind) && /^(on|for|in)$/.test(f.low(behind.from - 1))) {
    const site = f.sites.find((s) => s.to === behind.from - 1);
    if (placed(f, site))
      return {
        site,
        dogs: behind.dogs,
        from: /^(the|his|her)$/.test(f.low(site.from - 1)) ? site.from - 1 : site.from,
      };
  }
  const site = f.sites.find((s) => s.to === to);
  if (!placed(f, site)) return undefined;
  const at = /^(the|his|her|:|-)$/.test(f.low(site.from - 1)) ? site.from - 1 : site.from;
  const ahead = f.dogs.find((d) => d.to === at);
  return named(ahead) ? { site, dogs: ahead.dogs, from: ahead.from } : undefined;
}

/** The places of two or more dogs that end right before the sign; none where only one stands there. */
export function placesListed(f: Frame, m: Mention, taken: ReadonlySet<Site>): DogsPlace[] {
  let k = m.from;
  while (k > 0 && TO_SIGN.test(f.low(k - 1)) && (!f.dogAt(k - 1) || f.low(k - 1) === 'both')) k--;
  const out: DogsPlace[] = [];
  for (let at = k; at > 0; ) {
    const place = placeEnding(f, at);
    if (!place || taken.has(place.site)) break;
    out.unshift(place);
    at = place.from;
    while (APART.test(f.low(at - 1))) at--;
  }
  return new Set(out.map((p) => p.dogs[0])).size === out.length && out.length > 1 ? out : [];
}
