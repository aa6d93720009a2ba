/** What the tables of one season are made from, and the walk over the seasons that keeps only one of them at a time. */
import { indexLoad, type LoadIndex, type LoadRun, ranIn } from '../load/index.ts';
import type { Dog, Kennel, Season } from '../model.ts';
import { dogNamed } from '../notes/names.ts';
import { runsOf } from '../records/index.ts';
import type { RunRecord, YardRecord } from '../records/types.ts';

/** Where the seasons come from: an open store, or the files of a folder that is only read. */
export interface Source {
  kennel: Kennel;
  /** Sorted. */
  seasonNames(): readonly string[];
  season(name: string): Season | Promise<Season>;
  /** A season's runs, where somebody keeps them already; worked out otherwise. */
  runs?(season: Season): { runs: RunRecord[]; yard: YardRecord[] };
}

export interface SeasonData {
  season: Season;
  kennel: Kennel;
  runs: readonly RunRecord[];
  yard: readonly YardRecord[];
  /** Runs of this season and all before it. */
  load: LoadIndex;
  /** The last day that counts, YYYY-MM-DD: elapsed days without a run are zeros up to it. */
  until: string;
  /** The dog of a name, of now or of before. */
  dog(name: string): Dog | undefined;
}

/**
 * The wanted seasons in their order, one after the other. Of the seasons before only what the load needs is kept, some
 * 100 bytes a dog and run, so that ten seasons take hardly more memory than one.
 * @param until the last day that counts, YYYY-MM-DD
 */
export async function* seasonsOf(
  source: Source,
  wanted: readonly string[],
  until: string,
): AsyncGenerator<SeasonData, void, undefined> {
  const last = [...wanted].sort().at(-1) ?? '';
  const past: LoadRun[] = [];
  for (const name of [...new Set([...source.seasonNames(), ...wanted])].sort()) {
    if (name > last) return;
    const season = await source.season(name);
    const { dogs, settings } = source.kennel;
    const { runs, yard } = source.runs?.(season) ?? runsOf(season, dogs, settings);
    for (const run of runs) past.push(slim(run));
    if (!wanted.includes(name)) continue;
    yield {
      season,
      kennel: source.kennel,
      runs,
      yard,
      load: indexLoad(past),
      until,
      dog: (dogName) => dogNamed(dogs, dogName),
    };
  }
}

const NO_SHARES = Object.freeze({});
const NOWHERE: never[] = [];
const SOMEWHERE = [{}];

/** A run with only its dogs' distance and time. */
function slim({ id, day, dogs }: RunRecord): LoadRun {
  return {
    id,
    day,
    surfaces: NOWHERE,
    celsius: NOWHERE,
    dogs: dogs.filter(ranIn).map(({ dog, metres, minutes, stretches }) => ({
      dog,
      stretches: stretches.length > 0 ? SOMEWHERE : NOWHERE,
      ...(metres === undefined ? {} : { metres }),
      ...(minutes === undefined ? {} : { minutes }),
      byPosition: NO_SHARES,
      bySide: NO_SHARES,
    })),
  };
}
