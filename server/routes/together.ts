/**
 * Every season's records together: the load index and the watch look back further than one season, and several calls want
 * them. Kept as long as the seasons, the dogs and the settings are the same objects.
 */
import type { LoadIndex } from '../load/index.ts';
import { type Dog, seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { dayOf } from '../notes/state.ts';
import type { RunRecord } from '../records/types.ts';
import { type Episode, keeper, type Laid, type Watch, watchOf } from '../watch/index.ts';
import { runsIn } from './view.ts';

const keepers = new WeakMap<House, ReturnType<typeof keeper>>();

function together(house: House): Laid {
  let keep = keepers.get(house);
  if (!keep) {
    keep = keeper();
    keepers.set(house, keep);
  }
  return keep(house.store.seasonNames().map((name) => runsIn(house, house.store.season(name))));
}

/** The load index over every season's runs: the first weeks of a season are compared with the weeks before it. */
export function loadIndexOf(house: House): LoadIndex<RunRecord> {
  return together(house).load;
}

/**
 * What keeps coming back, of the dogs named, as it stood on a day, with the kennel's own days of
 * silence.
 * @param which the episodes and groups wanted; all when left out
 * @throws RangeError with a sentence when `on` is not a day
 */
export function watchOn(
  house: House,
  on: string,
  names: readonly string[],
  which?: (one: Pick<Episode, 'season'> & Partial<Pick<Episode, 'state'>>) => boolean,
): Watch {
  const { silenceDays } = house.store.kennel().settings;
  const { watch, load } = together(house);
  return watchOf(watch, load, names, { on, silenceDays }, which);
}

const ofDogs = new WeakMap<Laid, Map<string, Watch>>();

/**
 * The same of one dog, as one object while nothing has changed.
 * @throws RangeError with a sentence when `on` is not a day
 */
export function watchOfDog(house: House, dog: string, on: string): Watch {
  const laid = together(house);
  const kept = ofDogs.get(laid) ?? new Map<string, Watch>();
  ofDogs.set(laid, kept);
  const key = `${on}|${dog}`;
  let watch = kept.get(key);
  if (!watch) {
    watch = watchOn(house, on, [dog]);
    kept.set(key, watch);
  }
  return watch;
}

/** Today where it lies in the season; in a season that is over the last day with a run, in one to come its first day. */
export function dayFor(house: House, season: string): string {
  const today = dayOf(house.now());
  const now = seasonOf(today);
  if (season === now) return today;
  if (season > now) return `${season.slice(0, 4)}-07-01`;
  const last = runsIn(house, house.store.season(season)).runs.at(-1)?.day;
  return last ?? `${Number(season.slice(0, 4)) + 1}-06-30`;
}

/** The kennel's dogs by name; retired ones only where they ran in the season. */
export function dogsShown(house: House, season: string): Dog[] {
  const ran = new Set(runsIn(house, house.store.season(season)).runs.flatMap((run) => run.dogs.map((dog) => dog.dog)));
  return house.store
    .kennel()
    .dogs.filter((dog) => !dog.retired || ran.has(dog.name))
    .sort((a, b) => a.name.localeCompare(b.name, 'en'));
}
