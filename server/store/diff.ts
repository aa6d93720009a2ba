/** What a change did to a season's notes. */
import type { Note } from '../model.ts';

export interface NotesDiff {
  /** Notes that are new or no longer the same object. */
  fresh: Note[];
  /** Notes as they were before, that are gone or replaced by others. */
  gone: Note[];
}

/** Compares by identity, quick where little has changed: what both share at the start and the end is passed over. */
export function diffNotes(before: readonly Note[], after: readonly Note[]): NotesDiff {
  if (before === after) return { fresh: [], gone: [] };
  let start = 0;
  while (start < before.length && start < after.length && before[start] === after[start]) start++;
  let end = 0;
  const most = Math.min(before.length, after.length) - start;
  while (end < most && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
  const old = before.slice(start, before.length - end);
  const now = after.slice(start, after.length - end);
  const inOld = new Set(old);
  const inNow = new Set(now);
  return { fresh: now.filter((n) => !inOld.has(n)), gone: old.filter((n) => !inNow.has(n)) };
}
