/** The load of every dog. */
import {
  ABOUT_EWMA,
  ABOUT_MONOTONY,
  ABOUT_RATIO,
  ABOUT_SURFACES,
  indexLoad,
  type LoadIndex,
  loadOf,
  withRuns,
} from '../load/index.ts';
import { type Dog, seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { dayOf } from '../notes/state.ts';
import type { RunRecord } from '../records/types.ts';
import { newRoutes } from './errors.ts';
import { getLoad } from './load-routes.ts';
import { runsIn, shownSeason } from './view.ts';

export function loadRoutes(house: House) {
  const index = keptIndex();
  return newRoutes().openapi(getLoad, (c) => {
    const query = c.req.valid('query');
    const season = query.season ?? (query.on ? seasonOf(query.on) : shownSeason(house));
    const on = query.on ?? dayFor(house, season);
    const dogs = [...house.store.kennel().dogs].sort((a, b) => a.name.localeCompare(b.name, 'en'));
    // Every season's runs: the first weeks of a season are compared with the weeks before it.
    const seasons = house.store.seasonNames().map((name) => runsIn(house, house.store.season(name)).runs);
    const ran = new Set(
      runsIn(house, house.store.season(season)).runs.flatMap((run) => run.dogs.map((dog) => dog.dog)),
    );
    const shown = dogs.filter((dog) => !dog.retired || ran.has(dog.name));
    const loads = loadOf(
      index(seasons),
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

/** The index over all seasons' runs. Laid out anew only for the dogs of runs that are other objects than the last time. */
function keptIndex(): (seasons: RunRecord[][]) => LoadIndex {
  let last: { seasons: RunRecord[][]; index: LoadIndex<RunRecord> } | undefined;
  return (seasons) => {
    const same = last?.seasons.length === seasons.length && seasons.every((runs, i) => runs === last?.seasons[i]);
    if (last && same) return last.index;
    const all = seasons.flat();
    const before = last?.seasons.flat() ?? [];
    const [old, now] = [new Set(before), new Set(all)];
    const gone = before.filter((run) => !now.has(run));
    const come = all.filter((run) => !old.has(run));
    const few = gone.length + come.length < all.length / 4;
    last = { seasons, index: last && few ? withRuns(last.index, gone, come) : indexLoad(all) };
    return last.index;
  };
}
