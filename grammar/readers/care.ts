/** Reader "care": what was done about it, on which part, with what. */
import type { Frame, Mention } from '../steps/frame.ts';
import { type Act, actStands, type Care, phrase, WARM_THING } from './care-acts.ts';
import { itemOf } from './care-items.ts';
import { targetsOf } from './care-targets.ts';
import type { ReadFinding } from './findings.ts';
import { doubted, said } from './places.ts';
import { underPlan } from './plan-day.ts';
import { gearDoes } from './sign-words.ts';

/** Reads care. */
export function readCare(f: Frame, found: readonly ReadFinding[]): void {
  const out: { entry: Care; at: number }[] = [];
  let covered = 0;
  for (const m of [...blanketed(f), ...f.m.of('act')].sort((a, b) => a.from - b.from)) {
    if (m.from < covered || f.isClaimed(m.from, m.to)) continue;
    const act = m.value as Act;
    const words = phrase(f, m);
    if (!actStands(f, m, act, words) || (act === 'massaged' && gearDoes(f, m))) continue;
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
    const heard = f.assertion(m.from, object && !object.possessive ? object.to : m.to);
    const assertion =
      heard === 'present' &&
      (promised(f, m) || (act === 'rested' && (toRest(f, m) || /\b(tomorrow|tmrw)\b/.test(words))))
        ? 'planned'
        : heard;
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
        : r.entry.dogs.some((d) => c.dogs.includes(d) || d === '*' || c.dogs[0] === '*'),
    );
  for (const o of out) if (o.entry.act !== 'checked' || !tells(o.entry)) f.add(o.entry);
}

/** "wanted rested", "is to be rested", and what stands under a plan for another day: the rest is to come. */
function toRest(f: Frame, m: Mention): boolean {
  const d = f.dogs.find((x) => x.to === m.from);
  const wanted = d && /^(want|wanted|wants|need|needs)$/.test(f.low(d.from - 1));
  return Boolean(wanted) || (f.low(m.from - 1) === 'be' && f.low(m.from - 2) === 'to') || underPlan(f, m.from);
}

/** "gets a massage after", "needs salve tonight": what is still to be given. */
function promised(f: Frame, m: Mention): boolean {
  let k = m.from - 1;
  while (/^(a|an|another|some|more|his|her|the|good|quick|light|to|be|little|long|proper)$/.test(f.low(k))) k--;
  if (!/^(gets|get|getting|needs|need|wants)$/.test(f.low(k))) return false;
  // "his nails need trimming"
  if (/^(needs|need|wants)$/.test(f.low(k)) && /ing$/.test(f.low(m.from))) return true;
  for (let n = m.to; n < m.to + 4 && !/^[.;]$/.test(f.low(n)); n++)
    if (/^(after|afterwards|later|tonight|tomorrow|tmrw|then|when|once|before|next)$/.test(f.low(n))) return true;
  return false;
}

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
    // "I warm her with my down vest"
    if (
      /^(warm|warmed|warming|warms)$/.test(verb) &&
      d.kind === 'pronoun' &&
      /^(with|under|in|against|by|inside|on)$/.test(f.low(d.to)) &&
      /^(i|we|and|to|then|'m|am|,)$/.test(f.low(d.from - 2))
    ) {
      out.push({ tag: 'act', value: 'warmed', from: d.from - 1, to: d.from });
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
