/** A note as the pages see it. */
import type { Entry } from '../../grammar/entry.ts';
import type { Kennel, Note, Season } from '../model.ts';
import { seasonOf } from '../model.ts';
import { oddTime } from '../notes/check.ts';
import type { House } from '../notes/house.ts';
import { dogNamed } from '../notes/names.ts';
import { dayOf, stateOf } from '../notes/state.ts';
import { type Derived, derive } from './derived.ts';
import { type NoteView, seasonNameSchema } from './schemas.ts';

/** The season that is shown: the one set, or the one that today falls in. */
export function shownSeason(house: House): string {
  const { season } = house.store.kennel().settings;
  // A file edited by hand may hold a name that no season has.
  return seasonNameSchema.safeParse(season).data ?? seasonOf(dayOf(house.now()));
}

/** A season's runs with the kennel as it is. */
export function runsIn(house: House, season: Season): Derived {
  const kennel = house.store.kennel();
  return derive(season, kennel.dogs, kennel.settings);
}

/** The note with its dogs by their names of now, its state, and the run that holds it. */
export function viewOf(note: Note, kennel: Kennel, derived: Derived): NoteView {
  const named = (entry: Entry): Entry => ({
    ...entry,
    dogs: entry.dogs.map((name) => dogNamed(kennel.dogs, name)?.name ?? name),
  });
  const run = derived.runsOfNote.get(note.id)?.[0];
  const warning = oddTime(note.at, note.received);
  const last = note.history.at(-1);
  return {
    id: note.id,
    text: note.text,
    at: note.at,
    ...(note.by ? { by: note.by } : {}),
    ...(note.source ? { source: note.source } : {}),
    received: note.received,
    aside: note.aside,
    state: stateOf(note),
    entries: note.entries.map((e) => ({ ...e, entry: named(e.entry), ...(e.was ? { was: named(e.was) } : {}) })),
    unknownNames: note.unknownNames,
    canUndo: last !== undefined,
    ...(last ? { lastAct: last.act } : {}),
    ...(run ? { run } : {}),
    ...(warning ? { warning } : {}),
  };
}
