/** Everything that is worked out of a kennel, every season of it, for reports that look back further than one. */
import type { Source } from '../export/season-data.ts';
import { indexLoad, type LoadIndex } from '../load/index.ts';
import { type Kennel, seasonOf } from '../model.ts';
import { runsOf } from '../records/index.ts';
import type { RunRecord, YardRecord } from '../records/types.ts';

export interface SeasonRecords {
  name: string;
  /** In the order of time. */
  runs: readonly RunRecord[];
  yard: readonly YardRecord[];
}

export interface Records {
  kennel: Kennel;
  /** In their order. */
  seasons: readonly SeasonRecords[];
  runs: readonly RunRecord[];
  yard: readonly YardRecord[];
  load: LoadIndex;
}

/** Works out the runs of every season. */
export async function recordsOf(source: Source): Promise<Records> {
  const { kennel } = source;
  const seasons: SeasonRecords[] = [];
  for (const name of source.seasonNames()) {
    const season = await source.season(name);
    const { runs, yard } = source.runs?.(season) ?? runsOf(season, kennel.dogs, kennel.settings);
    seasons.push({ name, runs, yard });
  }
  const runs = seasons.flatMap((season) => season.runs);
  return { kennel, seasons, runs, yard: seasons.flatMap((season) => season.yard), load: indexLoad(runs) };
}

/** The season's records; none where nothing is kept of it. */
export function seasonIn({ seasons }: Records, name: string): SeasonRecords {
  return seasons.find((season) => season.name === name) ?? { name, runs: [], yard: [] };
}

/**
 * The day a season is looked at on: today while it lasts, its last day with a run once it is over, its first day while
 * it is still to come.
 */
export function dayIn(season: SeasonRecords, today: string): string {
  const now = seasonOf(today);
  if (season.name === now) return today;
  const year = Number(season.name.slice(0, 4));
  if (season.name > now) return `${year}-07-01`;
  return season.runs.at(-1)?.day ?? `${year + 1}-06-30`;
}

/** Names for reports: dogs by name, retired ones only where they ran in the season. */
export function dogNames({ kennel }: Records, season: SeasonRecords): string[] {
  const ran = new Set(season.runs.flatMap((run) => run.dogs.map((dog) => dog.dog)));
  return kennel.dogs
    .filter((dog) => !dog.retired || ran.has(dog.name))
    .map((dog) => dog.name)
    .sort((a, b) => a.localeCompare(b, 'en'));
}
