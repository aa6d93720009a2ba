/** Puts the sample season into an empty folder, by the way that everyone's notes take: import, intake, review. */
import { DateTime } from 'luxon';
import { v7 } from 'uuid';
import { addDog, addPerson } from '../kennel/roster.ts';
import { type Kennel, seasonOf } from '../model.ts';
import { openHouse } from '../notes/house.ts';
import { takeIn } from '../notes/intake.ts';
import { review } from '../notes/review.ts';
import { dayOf } from '../notes/state.ts';
import { openStore } from '../store/index.ts';
import { notesOf, readSample, type Sample, type SampleKennel } from './sample.ts';

export interface LoadedSample {
  season: string;
  notes: number;
  /** Notes left for review: those of the last days. */
  waiting: number;
  /** Evening of the season's last day, ISO 8601 with offset. */
  end: string;
}

/**
 * Fills the folder. Everything is accepted but the notes of the last `waitingDays` days. Throws where the folder can't be
 * used or a note of the sample is not taken; a sample that is not whole is none.
 */
export async function loadSample(
  folder: string,
  { waitingDays = 7, sample = readSample() }: { waitingDays?: number; sample?: Sample } = {},
): Promise<LoadedSample> {
  const notes = notesOf(sample);
  const days = notes.map((note) => dayOf(note.at)).sort();
  const last = DateTime.fromISO(days.at(-1) as string, { zone: sample.kennel.zone });
  const end = last.set({ hour: 20 }).toISO({ suppressMilliseconds: true }) as string;
  const waitingFrom = last.minus({ days: waitingDays - 1 }).toISODate() as string;
  const season = seasonOf(days[0] as string);

  const store = await openStore(folder);
  try {
    await store.changeKennel((kennel) => [withRoster(kennel, sample.kennel, season), undefined]);
    const house = openHouse({ store, version: 'sample', now: () => end });
    const refused = (await takeIn(house, notes)).filter((answer) => answer.kept !== 'new');
    if (refused.length > 0) throw new Error(`The sample season was not taken in: ${refused[0]?.error}`);
    const waiting = await store.changeSeason(season, (now) => {
      const desk = { dogs: store.kennel().dogs, at: end, newId: house.newId };
      const reviewed = now.notes.map((note) =>
        dayOf(note.at) >= waitingFrom ? note : review(note, { act: 'accept-all' }, desk),
      );
      return [{ ...now, notes: reviewed }, reviewed.filter((note) => dayOf(note.at) >= waitingFrom).length];
    });
    return { season, notes: notes.length, waiting, end };
  } finally {
    await store.close();
  }
}

/** The kennel with the sample's dogs, people and settings. */
function withRoster(kennel: Kennel, sample: SampleKennel, season: string): Kennel {
  let next: Kennel = {
    ...kennel,
    settings: { ...kennel.settings, kennel: sample.kennel, units: sample.units, season },
  };
  for (const name of sample.people) [next] = addPerson(next, name, v7());
  for (const dog of sample.dogs) [next] = addDog(next, dog, v7());
  return next;
}
