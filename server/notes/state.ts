/** Where a note stands in its review. Pure. */
import type { Entry } from '../../grammar/entry.ts';
import type { Note } from '../model.ts';

/** `waiting`: an entry is proposed, or nothing was read and nobody has looked. `aside` goes before both. */
export function stateOf(note: Note): 'waiting' | 'reviewed' | 'aside' {
  if (note.aside) return 'aside';
  if (note.entries.length === 0) return note.history.length === 0 ? 'waiting' : 'reviewed';
  return note.entries.some((e) => e.state === 'proposed') ? 'waiting' : 'reviewed';
}

/** No person has reviewed it: it may be read again. */
export function untouched(note: Note): boolean {
  return (
    !note.aside && note.history.length === 0 && note.entries.every((e) => e.state === 'proposed' && e.from === 'read')
  );
}

const DOUBT = { none: 0, some: 1, much: 2 } as const;

/** How doubtful the note's waiting entries are, 0 to 3: an unknown name counts as the most doubtful. */
export function doubtOf(note: Note): number {
  if (note.unknownNames.length > 0) return 3;
  const doubt = (entry: Entry) => DOUBT[entry.doubt ?? 'none'];
  return Math.max(0, ...note.entries.filter((e) => e.state === 'proposed').map((e) => doubt(e.entry)));
}

/** The local day a time with offset falls on, as whoever spoke saw it. */
export function dayOf(at: string): string {
  return at.slice(0, 10);
}

/** Order of time; notes of one moment by id, so that the order in which they arrive never matters. */
export function byTime(a: { id: string; at: string }, b: { id: string; at: string }): number {
  return Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}
