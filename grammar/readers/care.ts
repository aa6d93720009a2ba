/** Reader "care": what was done about it, on which part, with what. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Mention, Site } from '../steps/frame.ts';
import type { ReadFinding } from './findings.ts';
import { doubted, said } from './places.ts';

type Care = EntryOf<'care'>;
type Act = Care['act'];

/** These are done to the whole dog; no site is carried to them. */
const WHOLE: ReadonlySet<Act> = new Set<Act>(['medicated', 'rested']);
const DOES =
  /^(i|we|and|then|,|so|just|also|\.|;|:|-|\+|to|'ve|have|had|got|she|he|wren|being|been|was|is|all|again|will|'ll|have|still|&|n|ve)$/;

/** Reads care. */
export function readCare(f: Frame, found: readonly ReadFinding[]): void {
  const out: { entry: Care; at: number }[] = [];
  let covered = 0;
  for (const m of [...f.m.of('act'), ...blanketed(f)].sort((a, b) => a.from - b.from)) {
    if (m.from < covered || f.isClaimed(m.from, m.to)) continue;
    const act = m.value as Act;
    const words = phrase(f, m);
    if (!actStands(f, m, act, words)) continue;
    const targets = targetsOf(
      f,
      m,
      act,
      found,
      out.map((o) => o.entry),
    );
    if (!targets.length) continue;
    // "rest Hector tomorrow": the dog stands between
    const object = f.dogFrom(m.to);
    const assertion = f.assertion(m.from, object && !object.possessive ? object.to : m.to);
    if (assertion === 'absent') continue;
    const item = itemOf(f, m, act, words);
    for (const t of targets) {
      const site = t.site;
      const part = site ? (site.part ?? (site.end ? 'foot' : undefined)) : undefined;
      const entry: Care = {
        kind: 'care',
        dogs: t.dogs,
        act,
        ...(part ? { part } : {}),
        ...(part && site?.side ? { side: site.side } : {}),
        ...(part && site?.end && /^(leg|foot|pad|web|toe|nail|dewclaw)$/.test(part) ? { end: site.end } : {}),
        ...(item ? { item } : {}),
        ...said(assertion),
        span: f.span([m.from, m.to], site && Math.abs(site.from - m.from) < 8 ? [site.from, site.to] : undefined),
        rule: `<${act}> <dog>`,
        ...doubted(t.doubt),
      };
      const twin = out.find(
        (o) =>
          o.entry.act === act &&
          o.entry.dogs.join() === entry.dogs.join() &&
          (o.entry.assertion ?? '') === (entry.assertion ?? '') &&
          (o.entry.part === entry.part || !entry.part || !o.entry.part) &&
          (o.entry.side === entry.side || !entry.side || !o.entry.side),
      );
      if (twin) {
        twin.entry.item ??= entry.item;
        if (!twin.entry.part && entry.part && act !== 'cooled')
          Object.assign(twin.entry, {
            part: entry.part,
            ...(entry.side ? { side: entry.side } : {}),
            ...(entry.end ? { end: entry.end } : {}),
          });
      } else out.push({ entry, at: m.from });
    }
    covered = m.to;
    f.claim(m.from, m.to);
  }
  // What was found where it was checked is told instead of the checking.
  const footPart = (p: string | undefined) => (/^(foot|pad|web|toe|nail|dewclaw)$/.test(p ?? '') ? 'foot' : p);
  const tells = (c: Care) =>
    found.some((r) =>
      c.part
        ? footPart(r.entry.part) === footPart(c.part) || (!r.entry.part && r.entry.sign === 'any')
        : r.entry.dogs.some((d) => c.dogs.includes(d) || d === '*'),
    );
  for (const o of out) if (o.entry.act !== 'checked' || !tells(o.entry)) f.add(o.entry);
}

const WARM_THING = /^(blanket|blankets|coat|jacket|jackets|parka|fleece|sleeping|towel|stove|fire|heater|straw|quilt)$/;

/** "covered him with the wool blanket", "put my coat on her", "set him by the stove", "tucked her into the sleeping bag". */
function blanketed(f: Frame): Mention[] {
  const out: Mention[] = [];
  for (const d of f.dogs) {
    if (d.possessive || !d.dogs.length) continue;
    const verb = f.low(d.from - 1);
    const put = /^(on|over|around|onto)$/.test(verb)
      ? [2, 3, 4, 5].map((n) => d.from - n).find((k) => WARM_THING.test(f.low(k)))
      : undefined;
    if (
      put !== undefined &&
      [1, 2, 3, 4].some((n) => /^(put|threw|wrapped|laid|draped|buckled|zipped|tied|with|had)$/.test(f.low(put - n)))
    ) {
      out.push({ tag: 'act', value: 'warmed', from: put, to: put + 1 });
      continue;
    }
    if (!/^(covered|wrapped|tucked|bundled|rolled|set|laid|put|zipped|buried|bedded|draped|sat)$/.test(verb)) continue;
    let k = d.to;
    if (/^(up|down|all)$/.test(f.low(k))) k++;
    if (!/^(with|in|under|by|into|near|inside|beside)$/.test(f.low(k))) continue;
    const thing = [1, 2, 3, 4].map((n) => k + n).find((i) => WARM_THING.test(f.low(i)));
    if (thing === undefined || (f.low(thing) === 'straw' && !/^(covered|buried)$/.test(verb))) continue;
    if (/^(put|set|sat|laid|bedded)$/.test(verb) && /^(in|into|inside)$/.test(f.low(k)) && f.low(thing) !== 'sleeping')
      continue;
    out.push({ tag: 'act', value: 'warmed', from: d.from - 1, to: d.from });
  }
  return out;
}

const phrase = (f: Frame, m: { from: number; to: number }) =>
  f.tokens
    .slice(m.from, m.to)
    .map((t) => t.low)
    .filter((w) => w !== '-')
    .join(' ');

/** Is the word an act here? */
function actStands(f: Frame, m: Mention, act: Act, words: string): boolean {
  const prev = f.low(m.from - 1);
  const next = f.low(m.to);
  if (f.dogAt(m.from)) return false;
  const object = f.dogFrom(m.to) ?? f.dogFrom(m.to + 1);
  const site = f.sites.find((s) => s.from >= m.to && s.from - m.to <= 4);
  const it = /^(it|that|them|em|both|him|her|out|up|down|back)$/.test(next);
  // "Tank is wiped": how he went, not what was done.
  if (
    f.m.at('manner', m.from) &&
    /^(is|'s|are|was|were|looks|looked|totally|just|pretty|so)$/.test(prev) &&
    (/^([.,;!]|and|but|so|today|now|)$/.test(next) || (!it && !site && !object))
  )
    return false;
  const clauseStart = m.from === 0 || DOES.test(prev) || f.personAt(m.from - 1) !== undefined;
  switch (act) {
    case 'massaged':
      if (/^rub|^rubs$/.test(words) && words !== 'rubdown' && words !== 'rub down') {
        if (/^(some|in|into)$/.test(next)) return false;
        if (/^(harness|bootie|a|the|no|that)$/.test(prev))
          return words === 'rub' && prev === 'a' && /^(down)$/.test(next);
        return (Boolean(object) || Boolean(site) || it || /^down/.test(next)) && !/^(raw|on)$/.test(next);
      }
      if (/^rolled/.test(words)) return Boolean(site) || it;
      if (/^work|^loosened/.test(words))
        return site && words !== 'worked' && words !== 'working on'
          ? true
          : Boolean(site) && /^(on|her|his|the|out)$/.test(next);
      return true;
    case 'wrapped':
      if (
        /^(wrap|tape|glue|sleeve|brace|dress\w*|bound|strapped|padded|gauze|splint|bandage|stitches|neoprene sleeve)$/.test(
          words,
        )
      )
        return (
          Boolean(site) ||
          /^(on|it)$/.test(next) ||
          prev === 'a' ||
          (/^(:|\+|,|;|plus)$/.test(prev) && f.entries.some((e) => e.kind === 'finding'))
        );
      if (/^(wrapped up|bound up)$/.test(words))
        return /^(it|in|with|her|his|the|.|,|)$/.test(next) && f.entries.some((e) => e.kind === 'finding');
      return next !== 'around' && !f.m.at('item', m.from + 1);
    case 'ointment':
      if (
        /^(oil|honey|grease|wax|jelly|gel|cream|paste|goo|lotion|creme|honey|oiled)$/.test(words) &&
        !f.entries.some((e) => e.kind === 'finding') &&
        !site
      )
        return false;
      if (/^(paste|fish oil)$/.test(words) && f.m.at('food', m.from)) return false;
      if (/^(smear|dab|smeared|dabbed|slather|slathered|rubbed in|smeared on|dabbed on|slicked)$/.test(words))
        return true;
      return (
        !/^(more|need|needs|wants|wanting|want|bring|out|order|buy|get)$/.test(prev) &&
        !(prev === 'of' && /^(out|tube|jar|more)$/.test(f.low(m.from - 2)))
      );
    case 'stretched':
      return (Boolean(site) || it || Boolean(object) || clauseStart) && !/^(out|on|across|over|of|to)$/.test(next)
        ? f.dogs.length > 0
        : words === 'stretched out' && (Boolean(site) || Boolean(object));
    case 'warmed':
      if (
        WARM_THING.test(words) ||
        /^(covered|wrapped|tucked|bundled|rolled|set|laid|put|zipped|buried|bedded|draped|sat)$/.test(words)
      )
        return (m.to - m.from === 1 && !f.m.at('act', m.from)?.value) || f.m.at('act', m.from) !== m;
      if (/^(warmed up|warm up|warming|warming up|warms|thawed|thaw)$/.test(words))
        return Boolean(object && object.kind !== 'group') || (Boolean(site) && !/^(nicely|well|the)$/.test(next));
      if (/^(jacket|blanket|fleece|coated|a jacket|a coat|dog coat|dog jacket|hand warmers?)$/.test(words))
        return /^(on|over)$/.test(next) || /^(a|her|his|their|put)$/.test(prev);
      if (
        /^(hot water bottle|hot pack|heat pack|heating pad|heat wrap|hand warmers?|warm compress|hot compress)$/.test(
          words,
        )
      )
        return Boolean(site) || /^(on)$/.test(next);
      return f.dogs.length > 0;
    case 'cooled':
      if (/^(ice|iced|icing)$/.test(words)) return (Boolean(site) || it) && clauseStart && !/^(up|over)$/.test(next);
      if (
        /^(cool|cooled|cooling|cools|cool down|cool off|cooled down|cooled off|cooling down|cooling off)$/.test(words)
      )
        return (
          it ||
          Boolean(object) ||
          Boolean(site) ||
          (/\b(down|off)$/.test(words) && /^(with|in|w|him|her)$/.test(next)) ||
          (words === 'cooled' &&
            /^(with|in)$/.test(next) &&
            [1, 2, 3].some((n) => /^(snow|water|ice|creek)$/.test(f.low(m.to + n)))) ||
          f.dogFrom(m.from + 1) !== undefined
        );
      if (/^pack/.test(words))
        return (
          (it || Boolean(object) || Boolean(site) || /snow|ice/.test(words)) &&
          (/snow|ice/.test(words) || snowNear(f, m))
        );
      if (words === 'snow on')
        return (
          /^(put|packed|held|rubbed|and|slapped|some|stuck|had|with)$/.test(prev) &&
          (Boolean(site) || (/^(it|that|them|there|both)$/.test(next) && f.entries.some((e) => e.kind === 'finding')))
        );
      if (words === 'ice on')
        return (
          /^(put|and|with|held|some|slapped|stuck)$/.test(prev) &&
          (Boolean(site) || (/^(it|that|them|there|both)$/.test(next) && f.entries.some((e) => e.kind === 'finding')))
        );
      if (words === 'cold water') return Boolean(site) && /^(in|with)$/.test(prev);
      return true;
    case 'cleaned':
      if (
        /^(clean|clear|cleared|picked|popped out|melted|melted out|dug|dug out|soak|bath|broke out|pulled out|picking|knocked out|bit out|scraped out|cleared out|chipped out|picked out)$/.test(
          words,
        )
      ) {
        if (words === 'clean' || words === 'clear')
          return /^(it|them|em|that|the|her|his)$/.test(next) && /^(to|and|i|will|'ll)$/.test(prev);
        // "picked em out", "picked the ice out"
        if (words === 'picked')
          return (
            /^(it|them|em|that|those|the|all)$/.test(next) &&
            [1, 2, 3].some((n) => /^(out|off|clean)$/.test(f.low(m.to + n))) &&
            f.entries.some((e) => e.kind === 'finding')
          );
        return (
          (/^(it|them|em|that|the|her|his|snow|ice|out|both|all)$/.test(next) || Boolean(site)) &&
          f.entries.some((e) => e.kind === 'finding')
        );
      }
      if (words === 'cleaned up' || words === 'cleaned')
        return /^(it|them|em|that|the|her|his|out|both|and|with|,|.|;|)$/.test(next) ||
          f.m.from('act', m.to) !== undefined ||
          site ||
          object?.possessive
          ? f.entries.some((e) => e.kind === 'finding') || Boolean(site)
          : false;
      if (/^(saline|iodine|betadine|peroxide|epsom|epsom salts|chlorhexidine)$/.test(words))
        return !f.m.of('act').some((a) => a.value === 'cleaned' && a.from < m.from && m.from - a.to < 6);
      return f.entries.some((e) => e.kind === 'finding') || Boolean(site) || Boolean(object);
    case 'medicated':
      if (
        /^(shot|fluids|drops|syrup|dose|pill|tablet|charcoal|treated|electrolyte|electrolytes|supplement|supplements|vitamins?)$/.test(
          words,
        )
      )
        return (
          f.dogs.length > 0 &&
          ((next === 'for' && f.dogs.some((d) => d.from === m.to + 1)) ||
            /^(gave|give|a|her|his|got|some|on|with|giving|of|the|for|an|gets|,|;|pain|worm|cough|gut|vet|one|two|half|last|another|second|first|more)$/.test(
              prev,
            ) ||
            words === 'treated') &&
          !(words === 'fluids' && f.m.at('drank', m.from))
        );
      if (/^(med|medicine|medication|meds)$/.test(words)) return f.dogs.length > 0;
      return f.dogs.length > 0;
    case 'checked':
      return (
        (Boolean(site) || Boolean(object)) &&
        !/^(in|out|into|with)$/.test(next) &&
        !(words === 'check' && /^(water|foot|gear|bootie|weight|spot|quick|final|last|a|vet|sound)$/.test(prev))
      );
    case 'trimmed':
      if (
        /^(clipped|trimmed|filed|snipped)$/.test(words) &&
        f.entries.some(
          (e) =>
            e.kind === 'finding' &&
            /^(nail|dewclaw)$/.test(e.part ?? '') &&
            e.span &&
            Math.abs((f.tokens[m.from]?.start ?? 0) - e.span[1]) < 24,
        )
      )
        return true;
      if (/^(clip|clips|clipped|trim|file|filed|filing|cut off|snip|shaved|shortened)$/.test(words))
        return (
          Boolean(site && /nail|dewclaw|foot|toe/.test(site.part ?? 'nail')) ||
          it ||
          (f.m.of('part').some((x) => /nail|dewclaw/.test(x.value) && x.to <= m.from && m.from - x.to < 14) &&
            /^(the lot|all of|every|him|her|both)/.test(`${next} ${f.low(m.to + 1)}`))
        );
      return !(f.low(m.to) === 'the' && /^(trail|brush|list)$/.test(f.low(m.to + 1)));
    case 'rested': {
      if (/^(rest|rests|rested|resting)$/.test(words)) {
        if ((f.m.at('group', m.from) && f.dogAt(m.from)) || (/^(the|a|to)$/.test(prev) && prev !== 'to')) return false;
        const dog = f.dogFrom(m.to);
        if (dog && !(dog.kind === 'pronoun' && /^(he|she|they|their)$/.test(f.low(dog.from)))) return true;
        if (
          /^(shall|will|must|should|can|'ll|to|gets|needs)$/.test(prev) &&
          words !== 'rested' &&
          !/^(stop|of|area|day)$/.test(next)
        )
          return f.dogs.some((d) => d.to <= m.from && m.from - d.to < 14 && !f.strongBetween(d.to, m.from));
        const subject = f.dogs.some((d) => d.to <= m.from && m.from - d.to <= 2 && d.dogs.length < 3 && !d.possessive);
        return subject && !/^(of|stop|of the)$/.test(next) && words !== 'rested';
      }
      if (/^(day off|days off|rest day|day of rest)$/.test(words)) return f.dogs.length > 0;
      return f.dogs.length > 0;
    }
    default:
      return true;
  }
}

const snowNear = (f: Frame, m: Mention) =>
  [...Array(6).keys()].some((n) => f.low(m.to + n) === 'snow' || f.low(m.to + n) === 'ice');

interface Target {
  dogs: string[];
  site?: Site;
  doubt?: string;
}

/** Whom and where: the part named with the act, the one "it" or "both" points back at, or the finding before. */
function targetsOf(f: Frame, m: Mention, act: Act, found: readonly ReadFinding[], before: readonly Care[]): Target[] {
  const whole = WHOLE.has(act);
  const said = whole ? undefined : siteOf(f, m, act);
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
  const them =
    object &&
    object.kind === 'pronoun' &&
    /^(them|em)$/.test(f.low(object.from)) &&
    last?.site &&
    (last.site.plural || last.site.side === 'both' || last.site.side === undefined)
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
  for (const s of f.sites) {
    if (s.anaphor) continue;
    const gap = s.from - m.to;
    if (gap >= 0 && gap <= 6 && !f.strongBetween(m.to, s.from) && plainBetween(f, m.to, s.from)) {
      if (f.m.at('bootie', s.to) && !s.part) continue;
      return s;
    }
  }
  // "nail trim", "right front: balm on"
  const before = f.sites.filter((s) => s.to <= m.from && m.from - s.to <= 2 && !s.anaphor).at(-1);
  if (
    before &&
    !/^(it|that|both|them|em)$/.test(f.low(m.to)) &&
    !f.strongBetween(before.to, m.from) &&
    f.tokens.slice(before.to, m.from).every((t) => /^(-|:|,|was|is|got|'s|are|were)$/.test(t.low))
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
      !f.m.at('act', k)
    )
      return false;
    if (low === 'and' && f.m.at('act', k + 1)) return false;
  }
  return true;
};

/** The dog that the act was done to. */
function objectDog(f: Frame, m: Mention) {
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

const OINTMENT_WORD =
  /^(pink|green|purple|zinc|honey|foot|paw|petroleum|udder|antibiotic|antiseptic|blue|white|yellow|black|cooling|arnica|wax|pad|tea|tree|vitamin|calendula|wound|lanolin|salmon|coconut|aloe|silver|magic|home|made|homemade|bootie|healing|skin|diaper|rash|barrier|beeswax|pine|spruce|menthol|ichthyol|good|thick|warming|anti|inflammatory|muscle|joint)$/;

/** What it was done with, as said. */
function itemOf(f: Frame, m: Mention, act: Act, words: string): string | undefined {
  const text = (a: number, b: number) =>
    f.text.slice((f.tokens[a] as { start: number }).start, (f.tokens[b - 1] as { end: number }).end).toLowerCase();
  if (act === 'ointment') {
    if (
      /^(smear|dab|smeared|dabbed|slather|slathered|rubbed in|smeared on|dabbed on|salved|balmed|creamed|greased|waxed|anointed|gooped|oiled|slicked)$/.test(
        words,
      )
    ) {
      const next = f.m.of('act').find((a) => a.value === 'ointment' && a.from >= m.to && a.from - m.to <= 4);
      if (!next) return undefined;
      f.claim(next.from, next.to);
      return itemOf(f, next, act, phrase(f, next));
    }
    let from = m.from;
    while (
      from > 0 &&
      OINTMENT_WORD.test(f.low(from - 1)) &&
      !f.dogAt(from - 1) &&
      !(f.m.at('sign', from - 1) && /^(bit|is|'s|a)$/.test(f.low(from - 2)))
    )
      from--;
    let to = m.to;
    while (/^(cream|salve|ointment|balm|oxide|jelly|wax|paste|goo|stuff|lotion)$/.test(f.low(to))) to++;
    f.claim(from, to);
    return text(from, to);
  }
  if (act === 'medicated') {
    if (/^(medicated|wormed|dewormed|treated|dosed|injected|vaccinated|worming|deworming)$/.test(words))
      return undefined;
    f.claim(m.from, m.to);
    return text(medFrom(f, m), m.to);
  }
  if (/snow/.test(words)) return 'snow';
  if (/^(iced it|ice pack|icing it|iced|ice|ice bath|cold pack|iced down)$/.test(words))
    return act === 'cooled' ? (/pack|bath/.test(words) ? text(m.from, m.to) : 'ice') : undefined;
  if (/^(vet wrap|vetwrap|gauze|tape|glue|super glue|skin glue)$/.test(words)) return text(m.from, m.to);
  for (let k = m.to; k < Math.min(f.tokens.length, m.to + 8); k++) {
    if (f.isStrong(k) || f.low(k) === ',') break;
    if (!/^(with|w|in)$/.test(f.low(k))) continue;
    let a = k + 1;
    if (f.low(a) === '/') a++;
    while (/^(some|the|a|our|fresh|more|that)$/.test(f.low(a))) a++;
    if (f.dogAt(a) || f.siteAt(a) || !f.tokens[a]) break;
    const b = nounEnd(f, a);
    if (b === a || !ITEM_HEAD.test(f.low(b - 1))) break;
    f.claim(a, b);
    return text(a, b);
  }
  return undefined;
}

/** "worm pill", "anti-inflam", "kaolin paste": with a describing word. */
const medFrom = (f: Frame, m: Mention) =>
  /^(worm|kaolin|probiotic|gut|pain|cough|eye|ear|anti)$/.test(f.low(m.from - 1)) ? m.from - 1 : m.from;

const ITEM_HEAD =
  /^(snow|ice|gauze|saline|liniment|iodine|betadine|peroxide|water|soap|tape|wrap|vetwrap|bandage|chlorhexidine|balm|salve|cream|oil|ointment|salts|solution|cloth|towel|neoprene|pads?|blanket|jacket|coat|wipes?|rub|gel|antiseptic|alcohol|padding|cotton|compress|sleeve|disinfectant|foil|lotion|heat|arnica|boot|bootie|stuff)$/;

function nounEnd(f: Frame, a: number): number {
  let k = a;
  while (k < f.tokens.length && k - a < 3) {
    if (ITEM_HEAD.test(f.low(k))) {
      let e = k + 1;
      while (ITEM_HEAD.test(f.low(e))) e++;
      return e;
    }
    if ((f.tokens[k] as { kind: string }).kind !== 'word') break;
    k++;
  }
  return a;
}
