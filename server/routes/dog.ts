/** A dog's own page. */
import { type DogSeason, storyOf } from '../dog/index.ts';
import { ABOUT_RATIO, ABOUT_SURFACES } from '../load/index.ts';
import { type Dog, seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { dogNamed } from '../notes/names.ts';
import { Refusal } from '../notes/refusal.ts';
import { ABOUT_CAUTIONS, ABOUT_EPISODES, ABOUT_ONSET, ABOUT_TOGETHER, type Watch } from '../watch/index.ts';
import { getDogSeason } from './dog-routes.ts';
import { newRoutes } from './errors.ts';
import { dayFor, loadIndexOf, watchOfDog } from './together.ts';
import { runsIn, shownSeason } from './view.ts';

const ABOUT = {
  ratio: ABOUT_RATIO,
  surfaces: ABOUT_SURFACES,
  episodes: ABOUT_EPISODES,
  onset: ABOUT_ONSET,
  together: ABOUT_TOGETHER,
  cautions: ABOUT_CAUTIONS,
};

export function dogRoutes(house: House) {
  const { store } = house;
  return newRoutes().openapi(getDogSeason, (c) => {
    const { id } = c.req.valid('param');
    const query = c.req.valid('query');
    const dog = store.kennel().dogs.find((one) => one.id === id.toLowerCase());
    if (!dog) throw new Refusal('not-found', 'There is no dog of this id.');
    const season = query.season ?? (query.on ? seasonOf(query.on) : shownSeason(house));
    if (query.on && seasonOf(query.on) !== season)
      throw new Refusal('bad-input', `The day ${query.on} is not in the season ${season}.`);
    const on = query.on ?? dayFor(house, season);
    return c.json({ story: keptStory(house, dog, season, on), seasons: store.seasonNames(), about: ABOUT }, 200);
  });
}

/** A dog's stories by season, as long as its watch is the same object: that one hangs on every season, roster and setting. */
const kept = new WeakMap<Watch, Map<string, DogSeason>>();

function keptStory(house: House, dog: Dog, season: string, on: string): DogSeason {
  const watch = watchOfDog(house, dog.name, on);
  const stories = kept.get(watch) ?? new Map<string, DogSeason>();
  kept.set(watch, stories);
  let story = stories.get(season);
  if (!story) {
    const { dogs } = house.store.kennel();
    const notes = house.store.season(season);
    const derived = runsIn(house, notes);
    story = storyOf({
      dog,
      season,
      on,
      told: derived,
      load: loadIndexOf(house),
      watch,
      notes: notes.notes,
      runsOfNote: derived.runsOfNote,
      isDog: (name) => dogNamed(dogs, name)?.id === dog.id,
    });
    stories.set(season, story);
  }
  return story;
}
