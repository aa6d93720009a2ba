/** What a statement that leaves something out can look back at, and where it ends. */
import type { Entry, EntryOf } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';

export type Told = EntryOf<'finding'> | EntryOf<'attitude'> | EntryOf<'intake'>;
export const isTold = (e: Entry): e is Told => e.kind === 'finding' || e.kind === 'attitude' || e.kind === 'intake';

export const ENDS = /^([.,;!?:]|and|but|so|though|)$/;

/** Does the statement end before token `k`: at a mark, a joining word, a new subject, or behind "either", "at all", "today"? */
export function endsAt(f: Frame, k: number): boolean {
  if (ENDS.test(f.low(k)) || /^(i|we|although|while|because)$/.test(f.low(k)) || f.dogFrom(k)) return true;
  if (/^(either|yet|today|now|though)$/.test(f.low(k))) return ENDS.test(f.low(k + 1));
  return (f.low(k) === 'at' && f.low(k + 1) === 'all') || (f.low(k) === 'so' && f.low(k + 1) === 'far');
}

/** The entry told last before token `i`, of the kinds that can be left out. */
export function before(f: Frame, i: number, fits: (e: Told) => boolean = () => true): Told | undefined {
  const at = f.tokens[i]?.start ?? 0;
  return f.entries
    .filter((e): e is Told => isTold(e) && e.span !== undefined && e.span[0] < at && fits(e))
    .sort((a, b) => (a.span?.[1] ?? 0) - (b.span?.[1] ?? 0))
    .at(-1);
}

/** The entry told last, if it stands close before token `i` and nothing of another kind was told since. */
export function justBefore(f: Frame, i: number): Told | undefined {
  const at = f.tokens[i]?.start ?? 0;
  const last = f.entries
    .filter((e) => e.span !== undefined && e.span[0] < at && e.kind !== 'remark')
    .sort((a, b) => (a.span?.[1] ?? 0) - (b.span?.[1] ?? 0))
    .at(-1);
  if (!last?.span || !isTold(last)) return undefined;
  const end = last.span[1];
  return f.tokens.filter((t) => t.start >= end && t.i < i).length <= 14 ? last : undefined;
}
