/**
 * Export of ten seasons of 60 dogs, each as a ratio to JSON.stringify of the same seasons in the same process: as CSV
 * files with their description in a ZIP, with the runs worked out on the way or known already, and as a spreadsheet a season.
 */
import { type Readable, Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { seasonXlsx, seasonZip } from '../../server/export/index.ts';
import type { Source } from '../../server/export/season-data.ts';
import type { Season } from '../../server/model.ts';
import { runsOf } from '../../server/records/index.ts';
import { kennelOf, manyDogs, OPTIONS, sourceOf, synthetic } from '../export/kennel.ts';
import type { Bench } from './row.ts';

const SEASONS = 10;
const DOGS = 60;
/** Five teams of twelve on each, two notes a team. */
const RUN_DAYS = 100;
const ROUNDS = 2;

export async function bench(): Promise<Bench[]> {
  const seasons = tenSeasons();
  const kennel = kennelOf(manyDogs(DOGS));
  const source = sourceOf(kennel, seasons);
  const names = source.seasonNames();
  const plain = await time(async () => seasons.reduce((n, season) => n + JSON.stringify(season).length, 0));
  const known = new Map(seasons.map((season) => [season, runsOf(season, kennel.dogs, kennel.settings)]));
  const withRuns: Source = {
    ...source,
    runs: (season) => known.get(season) ?? runsOf(season, kennel.dogs, kennel.settings),
  };
  const last = names.at(-1) as string;
  const csv = await time(() => bytesOf(seasonZip(withRuns, names, OPTIONS)));
  const whole = await time(() => bytesOf(seasonZip(source, names, OPTIONS)));
  const xlsx = await time(() => bytesOf(seasonXlsx(withRuns, last, OPTIONS)));
  const notes = seasons.reduce((n, season) => n + season.notes.length, 0);
  const entries = seasons.reduce((n, season) => n + season.notes.reduce((m, note) => m + note.entries.length, 0), 0);
  const row = (name: string, { ms, value }: Timed, beside = plain.ms): Bench => ({
    name,
    ratio: ms / beside,
    detail:
      `${ms.toFixed(0)} ms for ${(value / 2 ** 20).toFixed(1)} MB beside ${beside.toFixed(0)} ms; ` +
      `${notes} notes, ${entries} entries in all`,
  });
  return [
    row('export of ten seasons of 60 dogs as CSV in a ZIP, runs known, beside JSON.stringify', csv),
    row('export of ten seasons of 60 dogs as CSV in a ZIP, runs worked out, beside JSON.stringify', whole),
    row('export of the last season as a spreadsheet, beside a tenth of JSON.stringify', xlsx, plain.ms / SEASONS),
  ];
}

interface Timed {
  ms: number;
  value: number;
}

/** The shortest of some rounds, in milliseconds: the one least disturbed. */
async function time(work: () => Promise<number>): Promise<Timed> {
  let ms = Number.POSITIVE_INFINITY;
  let value = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    value = await work();
    ms = Math.min(ms, performance.now() - start);
  }
  return { ms, value };
}

async function bytesOf(stream: Readable): Promise<number> {
  let bytes = 0;
  const sink = new Writable({
    write(chunk: Buffer, _, done) {
      bytes += chunk.length;
      done();
    },
  });
  await pipeline(stream, sink);
  return bytes;
}

/** One season ten times, each a year later. */
function tenSeasons(): Season[] {
  const first = synthetic('2017-18', DOGS, RUN_DAYS);
  return Array.from({ length: SEASONS }, (_, i) => ({
    ...first,
    season: `${2017 + i}-${String(18 + i).padStart(2, '0')}`,
    notes: first.notes.map((note) => ({
      ...note,
      id: `${String(i).padStart(8, '0')}${note.id.slice(8)}`,
      at: `${Number(note.at.slice(0, 4)) + i}${note.at.slice(4)}`,
    })),
  }));
}
