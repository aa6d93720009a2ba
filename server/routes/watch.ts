/** What keeps coming back, of every dog. */
import { seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { ABOUT_CAUTIONS, ABOUT_EPISODES, ABOUT_ONSET, ABOUT_TOGETHER } from '../watch/index.ts';
import { newRoutes } from './errors.ts';
import { dayFor, dogsShown, watchOn } from './together.ts';
import { shownSeason } from './view.ts';
import { getWatch } from './watch-routes.ts';

export function watchRoutes(house: House) {
  return newRoutes().openapi(getWatch, (c) => {
    const query = c.req.valid('query');
    const season = query.season ?? (query.on ? seasonOf(query.on) : shownSeason(house));
    const on = query.on ?? dayFor(house, season);
    const open = query.state === 'open';
    const ids = new Map(dogsShown(house, season).map((dog) => [dog.name, dog.id]));
    const within = (day: string) => !open && seasonOf(day) === season;
    const watch = watchOn(
      house,
      on,
      [...ids.keys()],
      (one) => one.state === 'open' || (!open && one.season === season),
    );
    const known = <T extends { dog: string }>(one: T) => ({ ...one, dogId: ids.get(one.dog) as string });
    return c.json(
      {
        ...watch,
        season,
        episodes: watch.episodes.map(known),
        cautions: watch.cautions.filter(({ standing, last }) => standing || within(last)).map(known),
        history: watch.history.filter(({ mention }) => within(mention.day)),
        noDog: watch.noDog.filter(({ day }) => within(day)),
        about: {
          episodes: ABOUT_EPISODES,
          together: ABOUT_TOGETHER,
          onset: ABOUT_ONSET,
          cautions: ABOUT_CAUTIONS,
        },
      },
      200,
    );
  });
}
