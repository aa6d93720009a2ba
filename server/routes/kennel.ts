/** Settings, status and the grammar's context; and what every change of the kennel does afterwards. */
import type { Kennel, Note } from '../model.ts';
import { seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { contextOf } from '../notes/reading.ts';
import { rereadAll } from '../notes/reread-all.ts';
import { byTime, dayOf } from '../notes/state.ts';
import { NotKeptError, type Store } from '../store/index.ts';
import { waitingIn } from './derived.ts';
import { newRoutes } from './errors.ts';
import { getContext, getSettings, getStatus, putSettings } from './kennel-routes.ts';
import { shownSeason } from './view.ts';

export function kennelRoutes(house: House) {
  const { store } = house;
  return newRoutes()
    .openapi(getStatus, (c) => {
      const { settings } = store.kennel();
      const season = shownSeason(house);
      const seasons = [...new Set([...store.seasonNames(), season])].sort();
      const waiting = seasons.map((name) => ({ season: name, waiting: waitingIn(store.season(name)) }));
      return c.json(
        {
          version: house.version,
          season,
          seasons,
          today: dayOf(house.now()),
          waiting: waiting.find((w) => w.season === season)?.waiting ?? 0,
          waitingElsewhere: waiting.filter((w) => w.season !== season && w.waiting > 0),
          warnings: [...store.warnings],
          units: settings.units,
          kennel: settings.kennel,
          folder: store.folder,
        },
        200,
      );
    })
    .openapi(getSettings, (c) => c.json({ settings: store.kennel().settings }, 200))
    .openapi(putSettings, async (c) => {
      const settings = c.req.valid('json');
      const before = store.kennel().settings.units;
      await store.changeKennel((kennel): [Kennel, null] => [{ ...kennel, settings }, null], 'The settings');
      // The grammar hears of the units alone.
      const changed = settings.units === before ? 0 : await reread(house, 'The settings were kept.');
      return c.json({ settings: store.kennel().settings, reread: changed }, 200);
    })
    .openapi(getContext, (c) => {
      const { at = house.now(), by } = c.req.valid('query');
      const day = dayOf(at);
      const earlier = store
        .season(seasonOf(day))
        .notes.filter((note) => dayOf(note.at) === day && Date.parse(note.at) < Date.parse(at))
        .sort(byTime);
      const kennel = store.kennel();
      return c.json({ context: contextOf(kennel, house.lineupBefore(earlier, at, kennel.dogs, by), at) }, 200);
    });
}

/** Every note of every season. */
export function* allNotes(store: Store): Iterable<Note> {
  for (const name of store.seasonNames()) yield* store.season(name).notes;
}

/**
 * Reads the notes that wait again after a change of the kennel, which has been kept by then.
 * @throws NotKeptError that says so, when the notes could not be written.
 */
export async function reread(house: House, kept: string): Promise<number> {
  try {
    return await rereadAll(house);
  } catch (error) {
    if (!(error instanceof NotKeptError)) throw error;
    throw new NotKeptError(`${kept} The notes that wait could not be read again: ${error.message}`, error);
  }
}
