/** Readers "hitch" and "move", the rows that are told without the name of their place: "Moss right", "behind them", "on the left". */
import type { Frame } from '../steps/frame.ts';
import { type Assignment, sideBehind } from './place-assignments.ts';
import { besides, sideMoves } from './place-beside.ts';
import { verbPlaces } from './place-verbs.ts';

/** What the rows that are told with their place say of those without. */
export function rows(f: Frame, told: readonly Assignment[]): Assignment[] {
  const verbs = verbPlaces(f, told);
  const known = [...told, ...verbs];
  return [...sameRow(f, told), ...behindThem(f, told), ...verbs, ...besides(f, known), ...sideMoves(f, known)];
}

/** "Miles and Ivy in lead, Storm and Rook in swing, Penny and Gus behind them": in the team, with no place of a name. */
function behindThem(f: Frame, told: readonly Assignment[]): Assignment[] {
  const out: Assignment[] = [];
  if (told.filter((a) => a.kind === 'hitch').length < 2) return out;
  for (const d of f.dogs) {
    if (d.kind !== 'names' || d.possessive || d.company || told.some((a) => a.phrases.includes(d))) continue;
    const words = `${f.low(d.to)} ${f.low(d.to + 1)}`;
    if (!/^(behind (them|those|that|him|her)|after (them|that)|next( |,|$)|then( |,|$))/.test(words)) continue;
    const near = told.some((a) => a.kind === 'hitch' && a.to <= d.from && d.from - a.to <= 3);
    if (near)
      out.push({ phrases: [d], dogs: d.dogs, kind: 'hitch', from: d.from, to: d.to + (/^behind/.test(words) ? 2 : 0) });
  }
  return out;
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
