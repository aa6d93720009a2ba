/**
 * Every season's records together, kept as long as the seasons, the dogs and the settings are the same objects: the load
 * index and the watch look back further than one season, and several calls want them.
 */
import { indexLoad, type LoadIndex, withRuns } from '../load/index.ts';
import type { House } from '../notes/house.ts';
import type { RunRecord } from '../records/types.ts';
import { episodesOf, type Watch } from '../watch/index.ts';
import type { Derived } from './derived.ts';
import { runsIn } from './view.ts';

interface Kept {
  seasons: Derived[];
  index: LoadIndex<RunRecord>;
  /** By day, silence and dogs asked for. */
  watches: Map<string, Watch>;
}
const keptOf = new WeakMap<House, Kept>();
/** Days and silences of which a watch is kept at once; a browser asks for one or two. */
const WATCHES = 8;

/** Each season's records, the load index over all of them, and what was watched on them. */
function together(house: House): Kept {
  const { store } = house;
  const seasons = store.seasonNames().map((name) => runsIn(house, store.season(name)));
  const last = keptOf.get(house);
  if (last && last.seasons.length === seasons.length && seasons.every((one, i) => one === last.seasons[i])) return last;
  const kept = { seasons, index: indexAfter(last, seasons), watches: new Map() };
  keptOf.set(house, kept);
  return kept;
}

/** Laid out anew only for the dogs of runs that are other objects than the last time. */
function indexAfter(last: Kept | undefined, seasons: readonly Derived[]): LoadIndex<RunRecord> {
  const all = seasons.flatMap(({ runs }) => runs);
  if (!last) return indexLoad(all);
  const before = last.seasons.flatMap(({ runs }) => runs);
  const [old, now] = [new Set(before), new Set(all)];
  const gone = before.filter((run) => !now.has(run));
  const come = all.filter((run) => !old.has(run));
  return gone.length + come.length < all.length / 4 ? withRuns(last.index, gone, come) : indexLoad(all);
}

/** The load index over every season's runs. */
export function loadIndexOf(house: House): LoadIndex<RunRecord> {
  return together(house).index;
}

/**
 * What keeps coming back, of every dog of the kennel, as it stood on a day, with the kennel's own days of silence.
 * @throws RangeError with a sentence when `on` is not a day
 */
export function watchOn(house: House, on: string): Watch {
  const { dogs, settings } = house.store.kennel();
  const { seasons, index, watches } = together(house);
  const { silenceDays } = settings;
  const key = JSON.stringify([on, silenceDays, dogs.map((dog) => dog.name)]);
  let watch = watches.get(key);
  if (!watch) {
    const runs = seasons.flatMap((season) => season.runs);
    const yard = seasons.flatMap((season) => season.yard);
    watch = episodesOf(
      runs,
      yard,
      dogs.map((dog) => dog.name),
      { on, silenceDays },
      index,
    );
    if (watches.size >= WATCHES) watches.clear();
    watches.set(key, watch);
  }
  return watch;
}
