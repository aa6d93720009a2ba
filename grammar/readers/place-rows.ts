/** Readers "hitch" and "move", the rows that are told without the name of their place: "Moss right", "behind them", "on the left". */
import type { Frame } from '../steps/frame.ts';
import { type Assignment, sideBehind } from './place-assignments.ts';
import { besides, sideMoves } from './place-beside.ts';
import { verbPlaces } from './place-verbs.ts';
import { SIDE } from './place-words.ts';

/** What the rows that are told with their place say of those without. */
export function rows(f: Frame, told: readonly Assignment[]): Assignment[] {
  const verbs = verbPlaces(f, told);
  const known = [...told, ...verbs];
  return [
    ...sameRow(f, told),
    ...behindThem(f, known),
    ...sidesAlone(f, known),
    ...verbs,
    ...besides(f, known),
    ...sideMoves(f, known),
  ];
}

/** "Miles and Ivy in lead, Storm and Rook in swing, Penny and Gus behind them": in the team, with no place of a name. */
function behindThem(f: Frame, told: readonly Assignment[]): Assignment[] {
  const out: Assignment[] = [];
  if (!told.some((a) => a.kind === 'hitch')) return out;
  for (const d of f.dogs) {
    if (d.kind !== 'names' || d.possessive || told.some((a) => a.phrases.includes(d))) continue;
    // "led, with Penny and Gus behind them"
    if (d.company && !(f.low(d.from - 1) === 'with' && f.low(d.from - 2) === ',')) continue;
    const words = `${f.low(d.to)} ${f.low(d.to + 1)}`;
    if (!/^(behind (them|those|that|him|her)|after (them|that)|next( |,|$)|then( |,|$))/.test(words)) continue;
    const near = told.some((a) => a.kind === 'hitch' && a.to <= d.from && d.from - a.to <= 3);
    const to = d.to + (/^behind/.test(words) ? 2 : 0);
    // one row alone is told before: only "behind" says that a row follows
    if (!near || (told.length < 2 && to === d.to) || f.m.from('position', to) || f.m.from('position', to + 1)) continue;
    const onSide = /^(on|to)$/.test(f.low(to)) && f.low(to + 1) === 'the' ? SIDE[f.low(to + 2)] : undefined;
    const end = onSide && !f.siteAt(to + 2) ? to + 3 : to;
    out.push({
      phrases: [d],
      dogs: d.dogs,
      ...(end > to ? { side: onSide } : {}),
      kind: 'hitch',
      from: d.from,
      to: end,
    });
  }
  return out;
}

/** "Miles, Storm and Penny on the left, Ivy, Rook and Gus on the right", "boys on the left, girls on the right": the sides alone are told. */
function sidesAlone(f: Frame, told: readonly Assignment[]): Assignment[] {
  if (told.length) return [];
  const out: Assignment[] = [];
  for (const d of f.dogs) {
    if (d.possessive || d.company || d.excepted || !d.dogs.length || d.dogs[0] === '*') continue;
    if (d.kind !== 'names' && !(d.kind === 'group' && /^(F|M|rest)$/.test(d.value ?? ''))) continue;
    let k = d.to;
    if (/^(are|were|is|was|go|goes|went|ran|run|all)$/.test(f.low(k))) k++;
    const side = f.low(k) === 'on' && f.low(k + 1) === 'the' ? SIDE[f.low(k + 2)] : undefined;
    if (!side || f.siteAt(k + 2)) continue;
    const end = f.low(k + 3) === 'side' ? k + 4 : k + 3;
    if (!/^([.,;]|and|today|tonight|this|tomorrow|again|)$/.test(f.low(end))) continue;
    out.push({ phrases: [d], dogs: d.dogs, side, kind: 'hitch', from: d.from, to: end });
  }
  const sides = new Set(out.map((a) => a.side));
  const apart = out.every((a, i) => out.every((b, n) => i === n || !a.dogs.some((x) => b.dogs.includes(x))));
  return out.length === 2 && sides.size === 2 && apart ? out : [];
}

/** "Juniper left lead, Moss right": the second stands in the same row. */
function sameRow(f: Frame, told: readonly Assignment[]): Assignment[] {
  const out: Assignment[] = [];
  for (const d of f.dogs) {
    if (d.kind !== 'names' || d.possessive || told.some((t) => t.phrases.includes(d))) continue;
    const side = sideBehind(f, d.to);
    if (!side) continue;
    const end = side.to;
    const next = f.low(end);
    const row = [...told]
      .reverse()
      .find((t) => t.to <= d.from && d.from - t.to <= 3 && t.side && t.side !== side.value);
    if (row)
      out.push({
        phrases: [d],
        dogs: d.dogs,
        position: row.position,
        side: side.value,
        kind: row.kind,
        from: d.from,
        to: end,
      });
    // "Penny left, Gus right in team": the row is told behind the second
    const later = row
      ? undefined
      : told.find(
          (t) => t.from >= end && t.from - end <= 1 && t.side && t.side !== side.value && /^(,|and)$/.test(next),
        );
    if (later)
      out.push({
        phrases: [d],
        dogs: d.dogs,
        position: later.position,
        side: side.value,
        kind: later.kind,
        from: d.from,
        to: end,
      });
  }
  return out;
}
