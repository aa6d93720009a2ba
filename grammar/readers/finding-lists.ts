/** Findings on more than one place: feet told together, sites of several dogs in one list, "in either". */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import { ENDS } from './elliptic-told.ts';
import type { ReadFinding } from './finding-parts.ts';

/** "LF and RH": feet that lie crosswise are two places, not all four. */
export function crosswise(s: Site | undefined): Site[] | undefined {
  const [a, b] = s?.paws ?? [];
  if (s?.paws.length !== 2 || !a || !b || a[0] === b[0] || a[1] === b[1]) return undefined;
  return s.paws.map((paw) => ({
    ...s,
    side: paw[0] === 'L' ? 'left' : 'right',
    end: paw[1] === 'F' ? 'front' : 'hind',
    paws: [paw],
  }));
}

/** "Rolf's ears are nipped, both of them", "triceps tight on both sides": told behind the sign. */
function onBothSides(f: Frame, m: Mention, s: Site | undefined): Site | undefined {
  if (!s?.part || s.side || s.anaphor || s.to > m.from) return s;
  const behind = [0, 1, 2, 3, 4].map((n) => f.low(m.to + n)).join(' ');
  const both =
    /^(, )?(both of (them|em)|(on|in) both sides|both sides|bilaterally|(on )?either side|(on )?each side|(on the )?left and right)( |$)/.test(
      behind,
    );
  return both && PAIRED.has(s.part) ? { ...s, side: 'both' } : s;
}
export const PAIRED = new Set('wrist shoulder elbow triceps hip knee hock thigh armpit eye ear leg foot'.split(' '));

/** "LF and RF webs": one site, both sides. */
export function merged(f: Frame, m: Mention, sites: (Site | undefined)[]): (Site | undefined)[] {
  const out: (Site | undefined)[] = [];
  for (const s of sites.map((x) => onBothSides(f, m, x)).flatMap((x) => crosswise(x) ?? [x])) {
    const twin =
      s &&
      out.find(
        (o) =>
          o &&
          o.part === s.part &&
          o.end === s.end &&
          o.side &&
          s.side &&
          o.side !== s.side &&
          o.side !== 'both' &&
          s.side !== 'both',
      );
    if (twin && s)
      out[out.indexOf(twin)] = {
        ...twin,
        side: 'both',
        from: Math.min(twin.from, s.from),
        to: Math.max(twin.to, s.to),
        paws: [...twin.paws, ...s.paws],
      };
    else out.push(s);
  }
  return out;
}

/** "Rook's left wrist | and Ivy's right wrist are swollen", "heat in Rook's wrist | and Ivy's hock": the sites of other dogs in one list. */
export function ofOthersToo(
  f: Frame,
  m: Mention,
  sites: readonly Site[],
  taken: ReadonlySet<Site>,
): { site: Site; dogs: string[] }[] {
  const out: { site: Site; dogs: string[] }[] = [];
  let next = sites[0];
  while (next && next.to <= m.from) {
    const at = next.from;
    const own = f.dogs.find((d) => d.possessive && d.kind === 'names' && d.to === at);
    if (!own || !/^(and|&|\+|,)$/.test(f.low(own.from - 1))) break;
    const site = f.sites.find((s) => s.to === own.from - 1 && s.part && !s.anaphor && !taken.has(s));
    const whose = site && f.dogs.find((d) => d.possessive && d.kind === 'names' && d.to === site.from);
    if (!site || !whose?.dogs.length || f.isClaimed(site.from, site.to)) break;
    if (!/^([.,;!:]|and|but|both|)$/.test(f.low(whose.from - 1))) break;
    out.unshift({ site, dogs: whose.dogs });
    next = site;
  }
  let last = sites.at(-1);
  while (last && last.from >= m.to) {
    const own = f.dogFrom(last.to + 1);
    if (!/^(and|&|\+)$/.test(f.low(last.to)) || !own?.possessive || own.kind !== 'names') break;
    const site = f.sites.find((s) => s.from === own.to && s.part && !s.anaphor && !taken.has(s));
    if (!site || !ENDS.test(f.low(site.to)) || f.isClaimed(site.from, site.to)) break;
    out.push({ site, dogs: own.dogs });
    last = site;
  }
  return out;
}

/** "Raw webs, Honey on the left front and Hedda on both fronts. No bleeding in either": of two dogs' places told last, each. */
export function eachOf(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding[] {
  const k = /^(in|on|of|at|from|with|around)$/.test(f.low(m.to - 1)) ? m.to : m.to + 1;
  if (!/^(in|on|of|at|from|with|around)$/.test(f.low(k - 1))) return [];
  const words = `${f.low(k)} ${f.low(k + 1)}`;
  if (!/^(either|both|any of|each|neither) /.test(words) || f.siteAt(k)?.part) return [];
  const last = found.at(-1);
  const told = found.filter((r) => r.site && r.entry.sign === last?.entry.sign && !r.entry.assertion);
  const dogs = new Set(told.flatMap((r) => r.entry.dogs));
  const near = last && f.sentence(m.from) - f.sentence(last.from) <= 1 && m.from - last.to < 14;
  return near && told.length > 1 && dogs.size === told.length && told.every((r) => r.entry.dogs.length === 1)
    ? told
    : [];
}
