/** Seasons as a ZIP of CSV files with their description. */
import type { Readable } from 'node:stream';
import { csvOf } from './csv.ts';
import { packageOf, type WrittenTable } from './package.ts';
import { type SeasonData, type Source, seasonsOf } from './season-data.ts';
import { TABLES } from './tables.ts';
import { type ZipSink, zipOf } from './zip.ts';

export interface ExportOptions {
  /** The last day that counts, YYYY-MM-DD: today. */
  until: string;
  /** The moment of the export. */
  at: Date;
  /** Of the program. */
  version: string;
}

/**
 * One season's files at the top of the archive; of several, each in a folder of its season's name. Made while it is
 * read: one season is in memory at a time.
 */
export function seasonZip(source: Source, seasons: readonly string[], options: ExportOptions): Readable {
  return zipOf(async (zip) => {
    for await (const season of seasonsOf(source, seasons, options.until))
      await addSeason(zip, season, seasons.length > 1 ? `${season.season.season}/` : '', options);
  }, options.at);
}

async function addSeason(zip: ZipSink, season: SeasonData, folder: string, options: ExportOptions): Promise<void> {
  const files: WrittenTable[] = [];
  for (const table of TABLES) {
    let rows = 0;
    const csv = csvOf(table, season, (counted) => {
      rows = counted;
    });
    const added = await zip.add(`${folder}${table.name}.csv`, csv);
    files.push({ ...added, table, rows });
  }
  await zip.add(`${folder}datapackage.json`, [`${JSON.stringify(packageOf(season, files, options), null, 2)}\n`]);
}
