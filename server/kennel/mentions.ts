/** Where a dog or a person stands in what has been kept. Pure. */
import type { Dog, Note } from '../model.ts';
import { fold } from '../notes/names.ts';
import { untouched } from '../notes/state.ts';

/**
 * How many entries name the dog, under any name it has or had, in notes that a person has reviewed. Entries that were
 * removed or that only undo would bring back count too. Notes that nobody has reviewed don't: they are read again.
 */
export function entriesNaming(notes: Iterable<Note>, dog: Dog): number {
  const names = new Set([dog.name, ...dog.aliases, ...dog.formerNames].map(fold));
  const named = (dogs: readonly string[]) => dogs.some((name) => names.has(fold(name)));
  let found = 0;
  for (const note of notes) {
    if (untouched(note)) continue;
    const ids = new Set<string>();
    for (const entries of [note.entries, ...note.history.map((act) => act.before.entries)])
      for (const { id, entry, was } of entries) if (named(entry.dogs) || (was && named(was.dogs))) ids.add(id);
    found += ids.size;
  }
  return found;
}

/** How many notes name the person: as the one who speaks, or as a driver in an entry that a person has reviewed. */
export function notesNaming(notes: Iterable<Note>, person: string): number {
  const name = fold(person);
  let found = 0;
  for (const note of notes) {
    const drives = note.entries.some(
      ({ entry }) => entry.kind === 'hitch' && entry.driver && fold(entry.driver) === name,
    );
    if ((note.by && fold(note.by) === name) || (drives && !untouched(note))) found++;
  }
  return found;
}
