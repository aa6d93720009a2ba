/**
 * Reader "intake": who ate and drank what, and how much went down. Giving counts as taking only where the note does not
 * tell afterwards how each dog took it.
 */
import type { Frame } from '../steps/frame.ts';
import { deniedInside } from '../steps/mentions.ts';
import { type Intake, itemAt, ownFood, phrase, type Served, serve, whatOf } from './intake-food.ts';
import { amountFor, readGiving, UNIT } from './intake-giving.ts';
import { readLeft } from './intake-left.ts';
import { tidy } from './intake-lists.ts';
import { readBrought, readMeasured, readNoneLeft } from './intake-measured.ts';
import { readTaking } from './intake-taking.ts';
import { said } from './places.ts';

/** Reads intake, left to right. */
export function readIntake(f: Frame): void {
  const served: Served = { at: -1 };
  const out: { entry: Intake; at: number; giving: boolean }[] = [];
  const events = [
    ...f.m.of('ate').map((m) => ({ m, kind: 'ate' as const })),
    ...f.m.of('drank').map((m) => ({ m, kind: 'drank' as const })),
    ...f.m.of('gave').map((m) => ({ m, kind: 'gave' as const })),
    ...f.m.of('food').map((m) => ({ m, kind: 'food' as const })),
  ].sort((a, b) => a.m.from - b.m.from || order(a.kind) - order(b.kind) || b.m.to - a.m.to);
  const place = (e: Intake) => f.tokens.findIndex((t) => t.end > (e.span?.[0] ?? 0));
  const first = [...readNoneLeft(f), ...readLeft(f), ...readBrought(f)];
  let covered = 0;
  for (const { m, kind } of events) {
    if (kind === 'food') {
      serve(f, m, served);
      continue;
    }
    if (m.from < covered || f.isClaimed(m.from, m.to) || deniedInside(f.tokens, m)) continue;
    const entry =
      kind === 'gave'
        ? readGiving(f, m, served)
        : readTaking(
            f,
            m,
            kind,
            served,
            out.map((o) => o.entry),
          );
    if (!entry) continue;
    out.push(...entry.map((e) => ({ entry: e, at: m.from, giving: kind === 'gave' })));
    covered = m.to;
    f.claim(m.from, m.to);
  }
  const told = [...first, ...out.map((o) => o.entry)];
  for (const e of [...first, ...readMeasured(f, told)]) out.push({ entry: e, at: place(e), giving: false });
  out.sort((a, b) => a.at - b.at);
  served0(f, out);
  for (const o of tidy(f, out)) f.add(o);
}

/** "Broth all round, a ladle apiece", "water for everybody": food and for whom, with no verb; as if it was given. */
function served0(f: Frame, out: { entry: Intake; at: number; giving: boolean }[]): void {
  for (const m of f.m.of('food')) {
    if (!/^(water|solid)$/.test(m.value) || f.dogAt(m.from) || f.isClaimed(m.from, m.to) || ownFood(f, m.from))
      continue;
    // "Half a cup of kibble for Storm"
    const measure = f.low(m.from - 1) === 'of' ? f.quantityAt(m.from - 2) : f.quantityAt(m.from - 1);
    const amount =
      measure?.unit && measure.unit in UNIT && !f.isClaimed(measure.from, measure.to) ? measure : undefined;
    const start = amount ? amount.from : m.from;
    if (start > 0 && !f.isStrong(start - 1) && !/^(,|then|and|;|-|some|more|:)$/.test(f.low(start - 1))) continue;
    let k = m.to;
    const group = /^(all (round|around)|all round|for all|to all)$/.test(`${f.low(k)} ${f.low(k + 1)}`);
    if (/^(for|to)$/.test(f.low(k))) k++;
    const d = f.dogFrom(k);
    const each = f.m.of('per-dog').find((p) => p.from >= m.to && p.from - m.to < 8 && !f.strongBetween(m.to, p.from));
    const dogs = group || (each && !d) ? f.lineup(m.from).map((l) => l.dog) : d && k > m.to ? d.dogs : undefined;
    if (!dogs) continue;
    // "Chicken skins all round, only Alvin left his": one told apart takes nothing from the others
    const told = out.filter(
      (o) =>
        !f.strongBetween(Math.min(o.at, m.from), Math.max(o.at, m.from)) &&
        (m.value === 'water') === (o.entry.what === 'water'),
    );
    const everyone = group || d?.kind === 'group';
    if (told.some((o) => !everyone || o.entry.took === 'all' || o.entry.dogs.length > 2)) continue;
    const apart = new Set(told.flatMap((o) => o.entry.dogs));
    const entry: Intake = {
      kind: 'intake',
      dogs: dogs.length ? dogs.filter((x) => !apart.has(x)) : ['*'],
      what: m.value === 'water' ? 'water' : whatOf(f, { item: phrase(f, m), at: m.from, own: true }, m),
      took: 'all',
      ...(phrase(f, m) === 'water' ? {} : { item: itemAt(f, m) }),
      ...(each || (amount && dogs.length === 1) ? amountFor(f, m, { dogs: ['a'] }) : {}),
      ...said(f.assertion(m.from, m.to)),
      span: f.span([m.from, m.to], d && k > m.to ? [d.from, d.to] : undefined),
      rule: '<food> for <dogs>',
    };
    out.push({ entry, at: m.from, giving: true });
    out.sort((a, b) => a.at - b.at);
  }
}

const order = (kind: string) => (kind === 'food' ? 0 : kind === 'drank' ? 1 : kind === 'ate' ? 2 : 3);
