/**
 * Step "merging": the same thing said twice in a note is one entry. Something told present and then gone is resolved; told
 * for an earlier day and then gone is resolved too; a later word on how bad it is completes the earlier one.
 */
import type { Entry, EntryOf } from '../entry.ts';

type Finding = EntryOf<'finding'>;

/** Entries with repetitions joined, in the order they were read. */
export function merge(entries: readonly Entry[]): Entry[] {
  const out: Entry[] = [];
  for (const e of entries) {
    if (e.kind === 'finding') {
      mergeFinding(out, e);
      continue;
    }
    const twin = out.find((o) => o.kind === e.kind && sameFields(o, e));
    if (twin) twin.span = join(twin.span, e.span);
    else out.push(e);
  }
  return out;
}

const SILENT = new Set(['span', 'rule', 'doubt', 'because']);

function sameFields(a: Entry, b: Entry): boolean {
  const [x, y] = [a as Record<string, unknown>, b as Record<string, unknown>];
  for (const k in x) if (!SILENT.has(k) && !sameValue(x[k], y[k])) return false;
  for (const k in y) if (!SILENT.has(k) && !(k in x) && y[k] !== undefined) return false;
  return true;
}

/** Fields hold words, numbers and lists of these. */
const sameValue = (a: unknown, b: unknown): boolean =>
  a === b || (typeof a === 'object' && typeof b === 'object' && JSON.stringify(a) === JSON.stringify(b));

const join = (a: [number, number] | undefined, b: [number, number] | undefined): [number, number] | undefined =>
  a && b ? [Math.min(a[0], b[0]), Math.max(a[1], b[1])] : (a ?? b);

const state = (e: Finding) => e.assertion ?? 'present';

function mergeFinding(out: Entry[], e: Finding): void {
  const same = (o: Entry): o is Finding =>
    o.kind === 'finding' &&
    o.sign === e.sign &&
    o.part === e.part &&
    o.side === e.side &&
    o.end === e.end &&
    o.dogs.join() === e.dogs.join();
  // "a weepy, pussy sort of eye": the first word has its place from the second
  const bare =
    e.part && e.sign !== 'lame' && e.sign !== 'any'
      ? out.find(
          (o) =>
            o.kind === 'finding' &&
            o.sign === e.sign &&
            !o.part &&
            o.dogs.join() === e.dogs.join() &&
            state(o) === state(e) &&
            (e.span?.[0] ?? 0) - (o.span?.[1] ?? 0) < 30,
        )
      : undefined;
  if (bare) out.splice(out.indexOf(bare), 1);
  const twin = out.find(same);
  if (!twin) {
    out.push(e);
    return;
  }
  const [before, now] = [state(twin), state(e)];
  if (before === now || (before === 'present' && now === 'possible')) absorb(twin, e);
  else if ((before === 'present' || before === 'past') && (now === 'absent' || now === 'resolved')) {
    absorb(twin, e);
    twin.assertion = 'resolved';
  } else if (before === 'resolved' && now === 'absent') absorb(twin, e);
  else if (before === 'past' && now === 'present') {
    absorb(twin, e);
    delete twin.assertion;
  } else if (before === 'possible' && now === 'present') {
    absorb(twin, e);
    delete twin.assertion;
  } else out.push(e);
}

function absorb(into: Finding, e: Finding): void {
  into.span = join(into.span, e.span);
  if (e.severity) into.severity = e.severity;
  if (e.trend) into.trend = e.trend;
}
