/** One dog's season put together from load, watch and what was told. No figure is worked out a second way here. */
import { dayOf, type LoadIndex, loadOf, ranIn, seasonDays, seriesOf } from '../load/index.ts';
import type { Dog, Note } from '../model.ts';
import type { Episode, Watch } from '../watch/index.ts';
import { notesAbout } from './notes.ts';
import type { DogSeason } from './schema.ts';
import { sitesCounted } from './sites.ts';
import { appetiteOf, measuresOf, type SeasonTold } from './told.ts';

export interface StoryAsked {
  dog: Dog;
  season: string;
  /** The day it is told for, inclusive, YYYY-MM-DD. */
  on: string;
  /** Run and yard records of the season. */
  told: SeasonTold;
  /** Over the runs of every season: the first weeks' lines and an earlier season's wrist need the seasons before. */
  load: LoadIndex;
  /** The watch of this dog, on that same day, over every season. */
  watch: Watch;
  notes: readonly Note[];
  runsOfNote: ReadonlyMap<string, readonly string[]>;
  /** Is this the dog's name, now or before? */
  isDog: (name: string) => boolean;
}

/** The season of one dog. @throws RangeError with a sentence when `on` is not a day */
export function storyOf({ dog, season, on, told, load, watch, notes, runsOfNote, isDog }: StoryAsked): DogSeason {
  const { name } = dog;
  const [stood] = loadOf(load, [name], on);
  if (!stood) throw new RangeError(`There is no load for ${name}.`);
  const bounds = seasonDays(season);
  const first = dayOf(bounds.first);
  const last = on < dayOf(bounds.last) ? on : dayOf(bounds.last);
  const inSeason = (day: string) => day >= first && day <= last;
  // One of a season before that is open in this one belongs here too; one that begins later does not.
  const here = (one: Episode) => one.from <= last && (one.lastSeen >= first || one.state === 'open');
  const episodes = watch.episodes.filter((one) => one.dog === name && here(one));
  return {
    dog,
    season,
    on,
    load: stood,
    days: first <= last ? seriesOf(load, name, first, last) : [],
    runs: told.runs.flatMap((run) => {
      const mine = inSeason(run.day) ? run.dogs.find((one) => one.dog === name) : undefined;
      if (!mine || !ranIn(mine)) return [];
      const { metres, minutes } = mine;
      return [
        {
          id: run.id,
          day: run.day,
          ...(metres === undefined ? {} : { metres }),
          ...(minutes === undefined ? {} : { minutes }),
        },
      ];
    }),
    episodes,
    sites: sitesCounted(episodes, first),
    cautions: watch.cautions.filter((one) => one.dog === name && inSeason(one.last)),
    together: watch.together.filter((one) => one.dog === name && one.season === season),
    appetite: appetiteOf(told, name, last),
    measures: measuresOf(told, name, last),
    notes: notesAbout({ notes, isDog, on: last, runsOfNote }),
  };
}
