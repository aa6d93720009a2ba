/** The notes that tell of a dog, with the words it was told in. */
import type { Note } from '../model.ts';
import { joinedSpans } from '../notes/spans.ts';
import type { DogNote } from './schema.ts';

export interface NotesAsked {
  /** Any order. */
  notes: readonly Note[];
  /** Is this a name the dog has or had? Entries keep the name they were accepted under. */
  isDog: (name: string) => boolean;
  /** The last day that counts. */
  on: string;
  /** Ids of the runs that hold a note. */
  runsOfNote: ReadonlyMap<string, readonly string[]>;
}

/** Newest first. A note put aside tells nothing; one with an entry that is not reviewed yet is marked as waiting. */
export function notesAbout({ notes, isDog, on, runsOfNote }: NotesAsked): DogNote[] {
  const found: DogNote[] = [];
  for (const note of notes) {
    if (note.aside || note.at.slice(0, 10) > on) continue;
    const mine = note.entries.filter(({ state, entry }) => state !== 'removed' && entry.dogs.some(isDog));
    if (mine.length === 0) continue;
    const run = runsOfNote.get(note.id)?.[0];
    found.push({
      id: note.id,
      text: note.text,
      at: note.at,
      ...(note.by === undefined ? {} : { by: note.by }),
      ...(run === undefined ? {} : { run }),
      waiting: mine.some(({ state }) => state === 'proposed'),
      placeOnly: mine.every(({ entry }) => entry.kind === 'hitch'),
      marks: joinedSpans(
        mine.flatMap(({ entry }) => (entry.span ? [entry.span] : [])),
        note.text.length,
      ),
    });
  }
  return found.sort((a, b) => Date.parse(b.at) - Date.parse(a.at) || (a.id < b.id ? 1 : -1));
}
