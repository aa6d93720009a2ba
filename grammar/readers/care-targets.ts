/** Reader "care", on whom and where: beside the act, or the finding it was done about. */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import { type Act, type Care, frontedSite } from './care-acts.ts';
import type { ReadFinding } from './findings.ts';

/** These are done to the whole dog; no site is carried to them. */
const WHOLE: ReadonlySet<Act> = new Set<Act>(['medicated', 'rested']);

interface Target {
  dogs: string[];
  site?: Site;
  doubt?: string;
}

/** Whom and where: the part named with the act, the one "it" or "both" points back at, or the finding before. */
export function targetsOf(
  f: Frame,
  m: Mention,
  act: Act,
  found: readonly ReadFinding[],
  before: readonly Care[],
): Target[] {
  const whole = WHOLE.has(act);
  const said = whole ? undefined : (siteOf(f, m, act) ?? (act === 'checked' ? frontedSite(f, m) : undefined));
  const told = said && found.find((r) => r.site && r.site.from <= said.from && said.to <= r.site.to && r.from < m.from);
  const site = told ? siteFrom(told) : said;
  const object = objectDog(f, m);
  const next = f.low(m.to);
  const past = found.filter((r) => r.from < m.from && r.entry.assertion !== 'absent');
  const multi = bothAt(f, m);
  if (multi && !site) {
    const own = object?.dogs ?? [];
    const withSites = distinct(
      past.filter((r) => r.site && (!own.length || r.entry.dogs.some((d) => own.includes(d)))),
    );
    const chosen = multi === 'both' ? withSites.slice(-2) : withSites;
    if (chosen.length > 1 || multi === 'all')
      if (chosen.length) return chosen.map((r) => ({ dogs: r.entry.dogs, site: siteFrom(r) }));
  }
  if (site) {
    const owner =
      object && !object.company && object.possessive
        ? { dogs: object.dogs, doubt: object.doubt, human: false }
        : f.owner(m.from, Math.max(m.to, site.to), site, true);
    if (owner.human && !owner.dogs.length) return [];
    let dogs = owner.dogs;
    if (!dogs.length) dogs = past.at(-1)?.entry.dogs ?? [];
    // "massage the knee" of the dog whose right knee was told
    const same =
      site.part && !site.side && !site.plural
        ? [...past]
            .reverse()
            .find((r) => r.entry.part === site.part && r.entry.side && r.entry.dogs.join() === dogs.join())
        : undefined;
    const sided = same ? { ...site, side: same.entry.side, end: site.end ?? same.entry.end } : site;
    return dogs.length ? [{ dogs, site: sided, doubt: owner.doubt }] : [];
  }
  const last = past.at(-1);
  // "with Miles taking a day off"
  const subject =
    act === 'rested' && !object
      ? f.dogs.filter((d) => d.to <= m.from && m.from - d.to <= 2 && d.dogs.length).at(-1)
      : undefined;
  if (subject) return [{ dogs: subject.dogs, doubt: subject.doubt }];
  // "stiff in both hips, so I rubbed those for him"
  if (!whole && last?.site && /^(those|these)$/.test(next) && !f.m.at('part', m.to + 1))
    return [{ dogs: last.entry.dogs, site: siteFrom(last) }];
  const them =
    object &&
    object.kind === 'pronoun' &&
    /^(them|em)$/.test(f.low(object.from)) &&
    last?.site &&
    // the balls of ice are several, also in one foot
    (last.site.plural || last.site.side === 'both' || last.site.side === undefined || last.entry.sign === 'iced')
      ? last
      : undefined;
  if (them && !WHOLE.has(act)) return [{ dogs: them.entry.dogs, site: siteFrom(them) }];
  const owner = object ? { dogs: object.dogs, doubt: object.doubt } : f.owner(m.from, m.to, undefined, true);
  let dogs = owner.dogs;
  if (!dogs.length) dogs = last?.entry.dogs ?? before.at(-1)?.dogs ?? [];
  if (!dogs.length) return [];
  const person =
    object && !object.possessive && object.kind === 'pronoun' && /^(him|her|them)$/.test(f.low(object.from));
  if (whole || (person && act !== 'massaged')) return [{ dogs, doubt: owner.doubt }];
  const carried = [...past].reverse().find((r) => r.entry.dogs.some((d) => dogs.includes(d)) && r.site);
  if (act === 'trimmed' && !carried) {
    const nail = f.sites
      .filter((s) => /^(nail|dewclaw)$/.test(s.part ?? '') && s.to <= m.from && m.from - s.to < 16)
      .at(-1);
    if (nail) return [{ dogs, site: nail, doubt: owner.doubt }];
  }
  const overheat = past.some((r) => r.entry.sign === 'overheated' && r.entry.dogs.some((d) => dogs.includes(d)));
  if (object && !object.possessive && object.kind === 'names' && !/^(it|that)$/.test(next))
    return [{ dogs, doubt: owner.doubt }];
  if ((act === 'cooled' || act === 'warmed') && overheat) return [{ dogs, doubt: owner.doubt }];
  const prior = !carried
    ? [...before].reverse().find((c) => c.part && c.dogs.some((d) => dogs.includes(d)))
    : undefined;
  if (prior)
    return [
      {
        dogs,
        site: {
          from: m.from,
          to: m.to,
          part: prior.part,
          side: prior.side,
          end: prior.end,
          plural: false,
          anaphor: true,
          paws: [],
        },
        doubt: owner.doubt,
      },
    ];
  const possible = [...found]
    .reverse()
    .find((r) => r.from < m.from && r.site && r.entry.dogs.some((d) => dogs.includes(d)));
  const from = carried ?? possible;
  // "Burr's got a nick on the left hind, Sedge one on a pad, both cleaned": nobody else's leg
  const others = from?.site ? dogs.filter((d) => !from.entry.dogs.includes(d)) : [];
  if (from && others.length)
    return [
      { dogs: dogs.filter((d) => !others.includes(d)), site: siteFrom(from), doubt: owner.doubt },
      { dogs: others, doubt: owner.doubt },
    ];
  return [{ dogs, site: from ? siteFrom(from) : undefined, doubt: owner.doubt }];
}

const siteFrom = (r: ReadFinding): Site | undefined =>
  r.entry.part && r.site ? { ...r.site, part: r.entry.part, side: r.entry.side, end: r.entry.end } : r.site;

function distinct(list: readonly ReadFinding[]): ReadFinding[] {
  const seen = new Map<string, ReadFinding>();
  for (const r of list) seen.set([r.entry.dogs.join(), r.entry.part, r.entry.side, r.entry.end].join('|'), r);
  return [...seen.values()];
}

/** "both of them", "on all of em": several findings before are meant. */
function bothAt(f: Frame, m: Mention): 'both' | 'all' | undefined {
  for (let k = m.to; k < Math.min(f.tokens.length, m.to + 4); k++) {
    if (f.isStrong(k) || f.low(k) === ',') break;
    if (f.low(k) === 'both' && !f.m.at('part', k + 1) && !f.m.at('end', k + 1)) return 'both';
    if (f.low(k) === 'all' && /^(of|them|em)$/.test(f.low(k + 1)) && /^(of|them|em)$/.test(f.low(k + 1))) return 'all';
    if (/^(each|those two|the two)$/.test(f.low(k))) return 'both';
    if (f.dogFrom(k) && f.dogFrom(k)?.kind === 'names') break;
  }
  return undefined;
}

function siteOf(f: Frame, m: Mention, act: Act): Site | undefined {
  // "a wrist wrap on Gus, right side"
  const inside = f.sites.find((s) => s.from >= m.from && s.to <= m.to && s.part);
  if (inside) {
    const side = f.sites.find((s) => s.from >= m.to && s.from - m.to <= 5 && s.side && !s.part && !s.end);
    return side && !f.strongBetween(m.to, side.from) ? { ...inside, side: side.side } : inside;
  }
  for (const s of f.sites) {
    if (s.anaphor) continue;
    const gap = s.from - m.to;
    if (gap >= 0 && gap <= 6 && !f.strongBetween(m.to, s.from) && plainBetween(f, m.to, s.from)) {
      if (f.m.at('bootie', s.to) && !s.part) continue;
      return s;
    }
  }
  // "nail trim", "right front: balm on"
  const before = f.sites.filter((s) => s.to <= m.from && m.from - s.to <= 4 && !s.anaphor).at(-1);
  if (
    before &&
    !/^(it|that|both|them|em)$/.test(f.low(m.to)) &&
    !f.strongBetween(before.to, m.from) &&
    f.tokens
      .slice(before.to, m.from)
      .every((t) =>
        /^(-|:|,|was|is|got|'s|are|were|gets|get|getting|needs|need|wants|a|an|another|some|more|good|to|be)$/.test(
          t.low,
        ),
      )
  )
    return before.part || before.end ? before : undefined;
  void act;
  return undefined;
}

const plainBetween = (f: Frame, a: number, b: number) => {
  for (let k = a; k < b; k++) {
    const low = f.low(k);
    const d = f.dogAt(k);
    if (d) {
      if (d.kind === 'names' && !d.possessive && !/^(on|of|in|for)$/.test(f.low(d.from - 1)) && k > a) return false;
      continue;
    }
    if (
      !/^(the|his|her|their|its|on|in|into|of|to|both|some|that|'s|a|for|all|back|out|down|up|over|it|on|onto|around|between|with|hair|from|any|new|more|bit|really|good|thick|-|each|every|under|and|little)$/.test(
        low,
      ) &&
      !f.m.at('act', k) &&
      // "cleaned up the cut on Gus's foot"
      !/^(cut|split|torn|worn|bleeding|infected|rub)$/.test(f.m.at('sign', k)?.value ?? '')
    )
      return false;
    if (low === 'and' && f.m.at('act', k + 1)) return false;
  }
  return true;
};

/** The dog that the act was done to. */
function objectDog(f: Frame, m: Mention) {
  // "picked them clean": the object stands in the act's own words
  const inside = f.dogs.find((d) => d.from > m.from && d.to <= m.to && d.kind === 'pronoun');
  if (inside) return inside;
  // "stretched it Selkirk has …": the object was said
  if (/^(it|them|em|that)$/.test(f.low(m.to - 1)) && m.to - m.from > 1) return undefined;
  for (let k = m.to; k < m.to + 6 && k < f.tokens.length; k++) {
    const d = f.dogFrom(k);
    // "washed it out Gopher's chewing at …": another statement
    if (
      d?.possessive &&
      d.kind === 'names' &&
      !f.sites.some((s) => s.from >= d.to && s.from - d.to <= 1) &&
      !f.m.at('paws', d.to)
    )
      return undefined;
    if (d)
      return (d.company && f.low(d.from - 1) !== 'for') ||
        (d.kind === 'pronoun' && /^(he|she|they)$/.test(f.low(d.from)))
        ? undefined
        : d.kind === 'group' && d.value === 'both' && !d.dogs.length
          ? undefined
          : d;
    if (
      f.isStrong(k) ||
      !/^(nails|on|of|the|some|in|into|for|up|out|down|to|claws|a|back|toenails|all|both|poor|old|with|ointment|salve|balm|a|jacket|coat|snow|ice|cold|water|over|around|onto|under)$/.test(
        f.low(k),
      )
    )
      return undefined;
  }
  return undefined;
}
