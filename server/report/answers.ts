/** The reports that answer with rows: load, watch, search. Each as it is (JSON), and as flat rows (CSV). */
import { stringify } from 'csv-stringify/sync';
import { harmless } from '../export/cell.ts';
import type { Source } from '../export/season-data.ts';
import { ABOUT_EWMA, ABOUT_MONOTONY, ABOUT_RATIO, loadOf } from '../load/index.ts';
import { type Dog, type Season, seasonOf } from '../model.ts';
import { dogNamed } from '../notes/names.ts';
import { contextOf } from '../notes/reading.ts';
import { IndexKeeper, numbered, queryWords, search, tidy, understand } from '../search/index.ts';
import {
  ABOUT_CAUTIONS,
  ABOUT_EPISODES,
  type Episode,
  episodesOf,
  indexWatch,
  type WatchIndex,
  watchOf,
} from '../watch/index.ts';
import { dayIn, dogNames, type Records, recordsOf, seasonIn } from './records.ts';

/** An answer both ways; CSV is made only when it is asked for. */
export interface Answer {
  json: object;
  csv: () => string;
}

/** What a report is asked for. */
export interface Asked {
  season: string;
  dog?: Dog;
  on: string;
}

type Cell = string | number | boolean | undefined;

/** Rows as CSV (RFC 4180); texts that a spreadsheet would run are made harmless as in the export. */
export function csvRows(columns: readonly string[], rows: readonly Record<string, Cell>[]): string {
  const cell = (value: Cell) =>
    value === undefined ? '' : typeof value === 'string' ? harmless(value) : String(value);
  return stringify([[...columns], ...rows.map((row) => columns.map((column) => cell(row[column])))], {
    record_delimiter: '\r\n',
  });
}

const round = (value: number | undefined, to = 1000) => (value === undefined ? undefined : Math.round(value * to) / to);

/** The dog of a name. @throws RangeError with a sentence */
export function theDog(dogs: readonly Dog[], name: string): Dog {
  const dog = dogNamed(dogs, name);
  if (dog) return dog;
  const names = dogs.map((one) => one.name).sort((a, b) => a.localeCompare(b, 'en'));
  throw new RangeError(
    `No dog is called “${name}” here. ${names.length ? `There are ${names.join(', ')}.` : 'There is no dog yet.'}`,
  );
}

/** Season, dog and day from the flags and the kennel's own settings. */
export function askedOf(
  records: Records,
  { season, dog, on }: { season?: string; dog?: string; on?: string },
  today: string,
): Asked {
  const { settings, dogs } = records.kennel;
  const name = season ?? (on ? seasonOf(on) : (settings.season ?? seasonOf(today)));
  return {
    season: name,
    on: on ?? dayIn(seasonIn(records, name), today),
    ...(dog === undefined ? {} : { dog: theDog(dogs, dog) }),
  };
}

const namesFor = (records: Records, { season, dog }: Asked) =>
  dog ? [dog.name] : dogNames(records, seasonIn(records, season));

export function loadReport(records: Records, asked: Asked): Answer {
  const dogs = loadOf(records.load, namesFor(records, asked), asked.on);
  const columns = [
    ...['dog', 'on', 'since', 'days_of_record', 'metres_today', 'metres_7_days', 'metres_28_days', 'minutes_7_days'],
    ...['runs_7_days', 'runs_28_days', 'mean_week_28_days', 'ratio', 'ratio_weighted', 'monotony', 'strain'],
    ...['last_run', 'days_since_last_run', 'days_in_a_row', 'longest_gap_days', 'metres_season', 'runs_season'],
  ];
  return {
    json: {
      on: asked.on,
      season: asked.season,
      dogs,
      about: { ratio: ABOUT_RATIO, ewma: ABOUT_EWMA, monotony: ABOUT_MONOTONY },
    },
    csv: () =>
      csvRows(
        columns,
        dogs.map((load) => ({
          dog: load.dog,
          on: load.on,
          since: load.since,
          days_of_record: load.daysOfRecord,
          metres_today: round(load.today),
          metres_7_days: round(load.metres7),
          metres_28_days: round(load.metres28),
          minutes_7_days: round(load.minutes7),
          runs_7_days: load.runs7,
          runs_28_days: load.runs28,
          mean_week_28_days: round(load.meanWeek28),
          ratio: round(load.coupled, 10_000),
          ratio_weighted: round(load.ewma, 10_000),
          monotony: round(load.monotony, 10_000),
          strain: round(load.strain),
          last_run: load.lastRun,
          days_since_last_run: load.daysSinceLastRun,
          days_in_a_row: load.daysInARow,
          longest_gap_days: load.longestGap?.days,
          metres_season: round(load.season.metres),
          runs_season: load.season.runs,
        })),
      ),
  };
}

/** Episodes begun in the season, and those that are open; the older ones they are counted from are in the figures. */
export function watchReport(records: Records, asked: Asked): Answer {
  const watch = episodesOf(
    records.runs,
    records.yard,
    namesFor(records, asked),
    { on: asked.on, silenceDays: records.kennel.settings.silenceDays },
    records.load,
  );
  const shown = (episode: { season: string; state?: string }) =>
    episode.season === asked.season || episode.state === 'open';
  const episodes = watch.episodes.filter(shown);
  const columns = [
    ...['dog', 'site', 'state', 'from', 'last_seen', 'until', 'signs', 'worst', 'doubtful', 'time_this_season'],
    ...['days_since_before', 'runs_since_before', 'metres_since_before', 'metres_7_days_before', 'usual_metres_7_days'],
  ];
  return {
    json: {
      ...watch,
      season: asked.season,
      episodes,
      together: watch.together.filter(shown),
      about: { episodes: ABOUT_EPISODES, cautions: ABOUT_CAUTIONS },
    },
    csv: () => csvRows(columns, episodes.map(episodeRow)),
  };
}

function episodeRow(episode: Episode) {
  return {
    dog: episode.dog,
    site: episode.site.label,
    state: episode.state,
    from: episode.from,
    last_seen: episode.lastSeen,
    until: episode.until,
    signs: episode.signs.map((sign) => sign.sign).join(' '),
    worst: episode.worst,
    doubtful: episode.doubtful,
    time_this_season: episode.number,
    days_since_before: episode.sinceBefore?.days,
    runs_since_before: episode.sinceBefore?.runs,
    metres_since_before: round(episode.sinceBefore?.metres),
    metres_7_days_before: round(episode.onset.metres7),
    usual_metres_7_days: round(episode.onset.usual.metres7),
  };
}

/** The season, dog and day of the flags narrow what the words ask for. */
export interface SearchAsked {
  words: string;
  season?: string;
  dog?: string;
  on?: string;
  limit: number;
}

/** @throws RangeError where no dog has the name */
export async function searchReport(source: Source, asked: SearchAsked, now: string): Promise<Answer> {
  const { kennel } = source;
  const seasons = new Map<string, Season>();
  for (const name of source.seasonNames()) seasons.set(name, await source.season(name));
  const names = [...seasons.keys()];
  const records = await recordsOf({ ...source, season: (name) => seasons.get(name) as Season });
  const today = asked.on ?? now.slice(0, 10);
  const shown = asked.season ?? kennel.settings.season ?? seasonOf(today);
  const told = understand(asked.words, contextOf(kennel, [], now), { today, season: shown });
  const query = tidy({
    ...told.query,
    ...(asked.dog === undefined ? {} : { dogs: [theDog(kennel.dogs, asked.dog).name] }),
    ...(asked.season === undefined ? {} : { season: asked.season }),
    ...(asked.on === undefined || (told.query.to ?? '9') < asked.on ? {} : { to: asked.on }),
  });
  const keeper = new IndexKeeper({ seasonNames: () => names, season: (name) => seasons.get(name) as Season });
  await keeper.ready();
  const found = search(
    query,
    { postings: keeper.postings, words: keeper.words, dogs: kennel.dogs, runsOf: groundOf(records) },
    names,
    {
      limit: asked.limit,
      offset: 0,
    },
  );
  keeper.close();
  const texts = new Map(found.notes.map((note) => [note.id, note]));
  const columns = [
    ...['day', 'at', 'dogs', 'kind', 'assertion', 'part', 'side', 'end', 'sign', 'severity', 'unreviewed'],
    ...['days_since', 'runs_since', 'metres_since', 'season', 'run_id', 'note_id', 'text'],
  ];
  const hits = found.hits.map((hit) => {
    const entry = hit.entry as unknown as Record<string, string | undefined>;
    const since = hit.since.length === 1 ? hit.since[0] : undefined;
    return {
      day: hit.day,
      at: hit.at,
      dogs: hit.entry.dogs.join(' '),
      kind: hit.entry.kind,
      assertion: hit.entry.assertion ?? 'present',
      part: entry.part,
      side: entry.side,
      end: entry.end,
      sign: entry.sign,
      severity: entry.severity,
      unreviewed: hit.unreviewed,
      days_since: since?.days,
      runs_since: since?.runs,
      metres_since: round(since?.metres),
      season: hit.season,
      run_id: hit.run,
      note_id: hit.note,
      text: texts.get(hit.note)?.text,
    };
  });
  const notes = found.notes.map(({ day, at, season, run, id, text }) => ({
    day,
    at,
    season,
    run_id: run,
    note_id: id,
    text,
  }));
  return {
    json: {
      query,
      understood: queryWords(query),
      slips: told.slips,
      ...numbered(found, query, episodesIn(records, today)),
    },
    // A query that asks for words alone finds notes, not entries.
    csv: () => csvRows(columns, hits.length > 0 ? hits : notes),
  };
}

function groundOf(records: Records) {
  const kept = new Map(
    records.seasons.map(({ name, runs }) => {
      const ofNote = new Map<string, string[]>();
      for (const run of runs) for (const note of run.notes) ofNote.set(note, [...(ofNote.get(note) ?? []), run.id]);
      return [name, { runs, ofNote }];
    }),
  );
  return (season: string) => kept.get(season) ?? { runs: [], ofNote: new Map<string, string[]>() };
}

/** A dog's episodes as they stood on a day, laid out when the first is asked for. */
function episodesIn(records: Records, on: string): (dog: string) => readonly Episode[] {
  const { silenceDays } = records.kennel.settings;
  let watch: WatchIndex | undefined;
  return (dog) => {
    watch ??= indexWatch(records);
    return watchOf(watch, records.load, [dog], { on, silenceDays }).episodes;
  };
}
