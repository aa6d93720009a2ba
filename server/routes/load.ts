/** The load of every dog. */
import { ABOUT_EWMA, ABOUT_MONOTONY, ABOUT_RATIO, ABOUT_SURFACES, lastDaysOf, loadOf } from '../load/index.ts';
import { type Dog, seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { newRoutes } from './errors.ts';
import { getLoad } from './load-routes.ts';
import { dayFor, dogsShown, loadIndexOf } from './together.ts';
import { shownSeason } from './view.ts';

/** Days of the picture beside the table: six weeks. */
const DAYS = 42;

export function loadRoutes(house: House) {
  return newRoutes().openapi(getLoad, (c) => {
    const query = c.req.valid('query');
    const season = query.season ?? (query.on ? seasonOf(query.on) : shownSeason(house));
    const on = query.on ?? dayFor(house, season);
    const shown = dogsShown(house, season);
    const names = shown.map((dog) => dog.name);
    const index = loadIndexOf(house);
    return c.json(
      {
        on,
        season,
        dogs: loadOf(index, names, on).map((load, i) => {
          const { id, name, retired } = shown[i] as Dog;
          return { ...load, id, retired, days: lastDaysOf(index, name, on, DAYS) };
        }),
        about: { ratio: ABOUT_RATIO, ewma: ABOUT_EWMA, monotony: ABOUT_MONOTONY, surfaces: ABOUT_SURFACES },
      },
      200,
    );
  });
}
