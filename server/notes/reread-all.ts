/** Reading every untouched note of every season again, a little at a time, so that the server goes on answering. */
import { setImmediate as breathe } from 'node:timers/promises';
import type { Note, Season } from '../model.ts';
import type { House } from './house.ts';
import { byDay, readDay, readDays, replaceNotes } from './reread.ts';
import { untouched } from './state.ts';

/** Longest stretch of reading before others get their turn, in ms. */
const TURN = 15;

/**
 * Reads every note that no person has reviewed again with the kennel as it is now; one reading-again at a time. Writes a
 * season only where something came out differently. Answers how many notes did.
 * @throws NotKeptError when a season could not be written; the seasons before it were.
 */
export function rereadAll(house: House): Promise<number> {
  const run = async () => {
    let changed = 0;
    // The newest first: its notes are the ones that are looked at.
    for (const name of house.store.seasonNames().reverse()) changed += await rereadSeason(house, name);
    return changed;
  };
  const result = house.rereading.then(run, run);
  house.rereading = result.catch(() => undefined);
  return result;
}

async function rereadSeason(house: House, name: string): Promise<number> {
  const kennel = house.store.kennel();
  const season = house.store.season(name);
  const days = [...byDay(season.notes)].filter(([, notes]) => notes.some(untouched));
  const changed = new Map<string, Note>();
  let began = performance.now();
  for (const [, notes] of days) {
    const before = new Set(notes);
    for (const note of readDay(notes, kennel, house)) if (!before.has(note)) changed.set(note.id, note);
    if (performance.now() - began > TURN) {
      await breathe();
      began = performance.now();
    }
  }
  const same = house.store.season(name) === season && house.store.kennel() === kennel;
  if (changed.size === 0 && same) return 0;
  return house.store.changeSeason(
    name,
    (now): [Season, number] => {
      if (now === season) return [replaceNotes(now, changed), changed.size];
      // Something was written meanwhile: the days that it touched are read here, from what stands now.
      const was = new Map(days);
      const asBefore = (day: string, notes: readonly Note[]) => {
        const old = was.get(day);
        return old?.length === notes.length && notes.every((note, i) => note === old[i]);
      };
      const moved = [...byDay(now.notes)].filter(([day, notes]) => notes.some(untouched) && !asBefore(day, notes));
      const movedDays = new Map(moved.map(([day]) => [day, Number.NEGATIVE_INFINITY]));
      const kept = new Map([...changed].filter(([, note]) => !movedDays.has(note.at.slice(0, 10))));
      const [next, again] = readDays(replaceNotes(now, kept), movedDays, house.store.kennel(), house);
      return [next, kept.size + again.length];
    },
    'What was read again',
  );
}
