/** Search over everything that is kept. */
import { setImmediate } from 'node:timers/promises';
import type { House } from '../notes/house.ts';
import { contextOf } from '../notes/reading.ts';
import { dayOf } from '../notes/state.ts';
import { currentName } from '../records/index.ts';
import {
  chipsOf,
  dogsToNumber,
  type Ground,
  IndexKeeper,
  type Numbered,
  numbered,
  type Query,
  queryWords,
  type Result,
  search,
  tidy,
  understand,
} from '../search/index.ts';
import type { Episode } from '../watch/index.ts';
import { newRoutes } from './errors.ts';
import { getSearch, type Parts } from './search-routes.ts';
import { watchOfDog } from './together.ts';
import { runsIn, shownSeason } from './view.ts';

/** How long a search waits for an index that is not ready; then it answers from what there is, and says so. */
const PATIENCE_MS = 1_500;

export function searchRoutes(house: House) {
  const { store } = house;
  const keeper = new IndexKeeper(store);
  // Built while nobody waits for it.
  keeper.sync();
  return newRoutes().openapi(getSearch, async (c) => {
    const { q, limit = 100, offset = 0, ...parts } = c.req.valid('query');
    const kennel = store.kennel();
    const told = q
      ? understand(q, contextOf(kennel, [], house.now()), { today: dayOf(house.now()), season: shownSeason(house) })
      : { query: {}, slips: [] };
    const query = tidy({ ...told.query, ...queryOf(parts) });
    const named = query.dogs?.map((dog) => currentName(kennel.dogs, dog));
    const asked = named ? { ...query, dogs: [...new Set(named)] } : query;
    await keeper.ready(PATIENCE_MS);
    await deriveInTurn(house);
    const ground: Ground = {
      postings: keeper.postings,
      words: keeper.words,
      dogs: kennel.dogs,
      runsOf: (season) => {
        const { runs, runsOfNote } = runsIn(house, store.season(season));
        return { runs, ofNote: runsOfNote };
      },
    };
    const found = await numberedInTurn(house, search(asked, ground, store.seasonNames(), { limit, offset }), asked);
    return c.json(
      {
        query: asked,
        understood: queryWords(asked),
        chips: chipsOf(asked),
        slips: told.slips,
        ...found,
        index: keeper.progress,
      },
      200,
    );
  });
}

/** Every season's runs, one season after the other where they are not known yet, for the same reason as below. */
async function deriveInTurn(house: House): Promise<void> {
  for (const name of house.store.seasonNames()) {
    runsIn(house, house.store.season(name));
    await setImmediate();
  }
}

/** The findings numbered by their episodes. One dog after the other: whoever wants to leave a note meanwhile does not wait. */
async function numberedInTurn(house: House, found: Result, query: Query): Promise<Numbered> {
  const today = dayOf(house.now());
  const episodes = new Map<string, readonly Episode[]>();
  for (const dog of dogsToNumber(found, query)) {
    episodes.set(dog, watchOfDog(house, dog, today).episodes);
    await setImmediate();
  }
  return numbered(found, query, (dog) => episodes.get(dog) ?? []);
}

/** The parts of an address as a query. */
export function queryOf({ of, least, most, unit, ...p }: Parts): Query {
  const amount =
    of && (least !== undefined || most !== undefined) ? { of, atLeast: least, atMost: most, unit } : undefined;
  return tidy({
    dogs: p.dog,
    kinds: p.kind,
    parts: p.part,
    side: p.side,
    end: p.end,
    signs: p.sign,
    acts: p.act,
    states: p.state,
    took: p.took,
    what: p.what,
    manners: p.manner,
    drops: p.drop,
    gaits: p.gait,
    gear: p.gear,
    measured: p.measured,
    positions: p.position,
    surfaces: p.surface,
    conditions: p.condition,
    ...(amount ? { amount } : {}),
    from: p.from,
    to: p.to,
    season: p.season,
    run: p.run,
    words: p.words,
    show: p.show,
  });
}
