/** Feet gone over dog by dog: their heading, "rest clean", "checked feet, all good". */
import type { Frame, Mention, Site } from '../steps/frame.ts';
import { anyFinding, type ReadFinding } from './finding-parts.ts';

/** Feet are the heading of what stands in the sentences before `at`. */
export const feetToldAbove = (f: Frame, at: number): boolean =>
  f.tokens.some(
    (t) =>
      t.i < at &&
      /^(feet|foot|paws?|pads?)$/.test(t.low) &&
      (f.sentence(t.i) < f.sentence(at)
        ? !f.dogs.some((x) => x.to <= t.i && f.sentence(x.from) === f.sentence(t.i))
        : // "did everyone's feet before bed: Moss good, Fern good"
          !f.dogs.some((x) => x.to <= t.i && x.kind === 'names' && f.sentence(x.from) === f.sentence(t.i)) &&
          f.tokens.slice(t.i, at).some((x) => x.low === ':')),
  );

/** "Foot check. Moss: clean. Tansy clean.": feet were the heading. */
export function feetHeading(f: Frame, m: Mention, k: number): ReadFinding | undefined {
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

/** "Gus small cut RF web, Kestrel LH pad pink, rest clean": the feet of those not told of. */
export function restClean(f: Frame, m: Mention, found: readonly ReadFinding[]): ReadFinding | undefined {
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
export function checkedBefore(f: Frame, m: Mention, k: number): Site | undefined {
  const all = f.dogAt(m.from - 1) ?? f.dogAt(k);
  const some = all?.kind === 'group' && !all.prep && /^([FM]|lead|swing|wheel|left|right)$/.test(all.value ?? '');
  if (f.low(m.from - 1) !== 'all' && all?.value !== 'all' && !some && f.low(m.from) !== 'all') return undefined;
  const checked = f.m.of('act').filter((a) => a.value === 'checked');
  return f.sites.find(
    (s) =>
      s.part &&
      s.to <= m.from &&
      // "checked feet, all good"; "foot check at the cabin, all good"
      (((m.from - s.to <= 4 || (some && all.from - s.to <= 2)) &&
        checked.some((a) => a.to <= s.from && s.from - a.to <= 2)) ||
        (m.from - s.to <= 9 && checked.some((a) => a.from === s.to) && !f.strongBetween(s.to, m.from))),
  );
}
