/** A season at a glance: runs, miles a dog, positions, findings. Pure. */
import { dayNumber, loadOf, ranIn } from '../load/index.ts';
import { type Note, seasonOf } from '../model.ts';
import { stateOf } from '../notes/state.ts';
import type { RunRecord } from '../records/types.ts';
import { ABOUT_EPISODES, episodesOf } from '../watch/index.ts';
import { dogNames, type Records, seasonIn } from './records.ts';
import type { Summary } from './schema.ts';
import { meanOf } from './sheet.ts';

/**
 * The season up to a day.
 * @param notes the season's, to tell how many still wait
 * @throws RangeError where `on` is no day
 */
export function summaryOf(records: Records, season: string, on: string, notes: readonly Note[]): Summary {
  const inSeason = seasonIn(records, season);
  const last = dayNumber(on);
  const runs = inSeason.runs.filter((run) => dayNumber(run.day) <= last);
  const names = dogNames(records, inSeason);
  const watch = episodesOf(
    records.runs,
    records.yard,
    names,
    { on, silenceDays: records.kennel.settings.silenceDays },
    records.load,
  );
  const begun = watch.episodes.filter((episode) => episode.season === season);
  const longest = longestOf(runs);
  return {
    kennel: records.kennel.settings.kennel,
    units: records.kennel.settings.units,
    season,
    on,
    runs: runs.map((run) => ({
      id: run.id,
      day: run.day,
      ...(run.driver ? { driver: run.driver } : {}),
      ...(run.metres === undefined ? {} : { metres: run.metres }),
      ...(run.minutes === undefined ? {} : { minutes: run.minutes }),
      dogs: run.dogs.filter(ranIn).length,
      surfaces: [...new Set(run.surfaces.map((said) => said.entry.surface))],
      ...(run.celsius.length > 0 ? { celsius: meanOf(run.celsius) } : {}),
    })),
    metres: sumOf(runs, 'metres'),
    minutes: sumOf(runs, 'minutes'),
    days: new Set(runs.map((run) => run.day)).size,
    runsWithoutDistance: runs.filter((run) => run.metres === undefined).length,
    months: monthsOf(runs),
    dogs: loadOf(records.load, names, on).map((load) => ({
      dog: load.dog,
      retired: records.kennel.dogs.find((dog) => dog.name === load.dog)?.retired ?? false,
      longest: longest.get(load.dog) ?? 0,
      // The last run of an earlier season is no run of this one.
      ...(load.lastRun && seasonOf(load.lastRun) === season ? { lastRun: load.lastRun } : {}),
      shares: load.season,
      episodes: begun.filter((episode) => episode.dog === load.dog).length,
      open: watch.episodes.filter((episode) => episode.dog === load.dog && episode.state === 'open').length,
    })),
    episodes: begun
      .map(({ id, dog, site, from, lastSeen, state, until, signs, worst, number, doubtful, sinceBefore }) => ({
        ...{ id, dog, site, from, lastSeen, state, until, signs, worst, number, doubtful, sinceBefore },
      }))
      .sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.dog.localeCompare(b.dog, 'en'))),
    notes: { waiting: notes.filter((note) => stateOf(note) === 'waiting').length, all: notes.length },
    about: [
      'Records of what was said and seen; no diagnosis. Distances count reviewed notes alone, in teams of every driver.',
      ABOUT_EPISODES,
    ],
  };
}

function sumOf(runs: readonly RunRecord[], what: 'metres' | 'minutes'): number {
  return runs.reduce((sum, run) => sum + (run[what] ?? 0), 0);
}

function longestOf(runs: readonly RunRecord[]): Map<string, number> {
  const longest = new Map<string, number>();
  for (const run of runs)
    for (const { dog, metres = 0 } of run.dogs) longest.set(dog, Math.max(longest.get(dog) ?? 0, metres));
  return longest;
}

function monthsOf(runs: readonly RunRecord[]): Summary['months'] {
  const months = new Map<string, RunRecord[]>();
  for (const run of runs) {
    const month = run.day.slice(0, 7);
    months.set(month, [...(months.get(month) ?? []), run]);
  }
  return [...months].map(([month, all]) => ({
    month,
    runs: all.length,
    metres: sumOf(all, 'metres'),
    days: new Set(all.map((run) => run.day)).size,
  }));
}
