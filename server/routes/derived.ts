/** What is computed from the seasons, kept as long as the season, the dogs and the settings are the same objects. */
import type { Dog, Note, Season, Settings } from '../model.ts';
import { byTime, stateOf } from '../notes/state.ts';
import type { RunRecord, YardRecord } from '../records/types.ts';
import { deriveAll, rederive } from './rederive.ts';

export interface Derived {
  /** In the order of time. */
  runs: RunRecord[];
  yard: YardRecord[];
  /** Ids of the runs that hold a note; a note with two drivers is in two. */
  runsOfNote: Map<string, string[]>;
}

interface Kept {
  season: Season;
  settings: Settings;
  derived: Derived;
}
/** For every season object; and, for every roster, the last one of each season, from which the next is computed. */
const runsKept = new WeakMap<Season, Kept & { dogs: Dog[] }>();
const lastKept = new WeakMap<Dog[], Map<string, Kept>>();

/** A season's runs. */
export function derive(season: Season, dogs: Dog[], settings: Settings): Derived {
  const kept = runsKept.get(season);
  if (kept && kept.dogs === dogs && kept.settings === settings) return kept.derived;
  const lasts = lastKept.get(dogs) ?? new Map<string, Kept>();
  lastKept.set(dogs, lasts);
  const last = lasts.get(season.season);
  const near = last?.settings === settings ? rederive(last.season, last.derived, season, dogs, settings) : undefined;
  const { runs, yard } = near ?? deriveAll(season, dogs, settings);
  const derived = { runs, yard, runsOfNote: runsByNote(runs) };
  runsKept.set(season, { season, dogs, settings, derived });
  lasts.set(season.season, { season, settings, derived });
  return derived;
}

function runsByNote(runs: readonly RunRecord[]): Map<string, string[]> {
  const byNote = new Map<string, string[]>();
  for (const run of runs)
    for (const note of run.notes) {
      const ids = byNote.get(note);
      if (ids) ids.push(run.id);
      else byNote.set(note, [run.id]);
    }
  return byNote;
}

const byIdKept = new WeakMap<Season, Map<string, Note>>();

export function notesById(season: Season): Map<string, Note> {
  let map = byIdKept.get(season);
  if (!map) {
    map = new Map(season.notes.map((note) => [note.id, note]));
    byIdKept.set(season, map);
  }
  return map;
}

const inOrderKept = new WeakMap<Season, Note[]>();

/** The season's notes in the order of time. */
export function inOrder(season: Season): Note[] {
  let notes = inOrderKept.get(season);
  if (!notes) {
    notes = [...season.notes].sort(byTime);
    inOrderKept.set(season, notes);
  }
  return notes;
}

const waitingKept = new WeakMap<Season, number>();

/** How many of the season's notes wait for review. */
export function waitingIn(season: Season): number {
  let waiting = waitingKept.get(season);
  if (waiting === undefined) {
    waiting = season.notes.filter((note) => stateOf(note) === 'waiting').length;
    waitingKept.set(season, waiting);
  }
  return waiting;
}
