/** The load of every dog. */
import { ABOUT_EWMA, ABOUT_MONOTONY, ABOUT_RATIO, ABOUT_SURFACES, loadOf } from '../load/index.ts';
import { type Dog, seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { dayOf } from '../notes/state.ts';
import { newRoutes } from './errors.ts';
import { getLoad } from './load-routes.ts';
import { loadIndexOf } from './together.ts';
import { runsIn, shownSeason } from './view.ts';

export function loadRoutes(house: House) {
  return newRoutes().openapi(getLoad, (c) => {
    const query = c.req.valid('query');
    const season = query.season ?? (query.on ? seasonOf(query.on) : shownSeason(house));
    const on = query.on ?? dayFor(house, season);
    const dogs = [...house.store.kennel().dogs].sort((a, b) => a.name.localeCompare(b.name, 'en'));
    const ran = new Set(
      runsIn(house, house.store.season(season)).runs.flatMap((run) => run.dogs.map((dog) => dog.dog)),
    );
    const shown = dogs.filter((dog) => !dog.retired || ran.has(dog.name));
    const loads = loadOf(
      // Every season's runs: the first weeks of a season are compared with the weeks before it.
      loadIndexOf(house),
      shown.map((dog) => dog.name),
      on,
    );
    return c.json(
      {
        on,
        season,
        dogs: loads.map((load, i) => {
          const { id, retired } = shown[i] as Dog;
          return { ...load, id, retired };
        }),
        about: { ratio: ABOUT_RATIO, ewma: ABOUT_EWMA, monotony: ABOUT_MONOTONY, surfaces: ABOUT_SURFACES },
      },
      200,
    );
  });

  /** Today where it lies in the season; in a season that is over the last day with a run, in one to come its first day. */
  function dayFor(house: House, season: string): string {
    const today = dayOf(house.now());
    const now = seasonOf(today);
    if (season === now) return today;
    if (season > now) return `${season.slice(0, 4)}-07-01`;
    const last = runsIn(house, house.store.season(season)).runs.at(-1)?.day;
    return last ?? `${Number(season.slice(0, 4)) + 1}-06-30`;
  }
}
