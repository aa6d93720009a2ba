/** Taking the season along: files to download, a copy restored, and the pages to print. */
import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream } from 'node:stream/web';
import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import {
  BadArchiveError,
  checkArchive,
  checkEmpty,
  NotEmptyError,
  putFiles,
  type Source,
  seasonXlsx,
  seasonZip,
  storeZip,
} from '../export/index.ts';
import { seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { Refusal } from '../notes/refusal.ts';
import { dayOf } from '../notes/state.ts';
import { dayIn, recordsOf, seasonIn } from '../report/records.ts';
import { sheetOf } from '../report/sheet.ts';
import { summaryOf } from '../report/summary.ts';
import { newRoutes } from './errors.ts';
import {
  getExport,
  getSeasonXlsx,
  getSeasonZip,
  getSheet,
  getStoreZip,
  getSummary,
  postRestore,
  XLSX,
} from './export-routes.ts';
import { runsIn, shownSeason } from './view.ts';

export function exportRoutes(house: House) {
  const { store } = house;
  const source: Source = {
    get kennel() {
      return store.kennel();
    },
    seasonNames: () => store.seasonNames(),
    season: (name) => store.season(name),
    runs: (season) => runsIn(house, season),
  };
  const options = () => ({ until: dayOf(house.now()), at: new Date(house.now()), version: house.version });
  const kept = (season: string) => {
    if (!store.seasonNames().includes(season))
      throw new Refusal('not-found', `Nothing is kept of the season ${season}, so there is nothing to export.`);
    return season;
  };
  const isEmpty = () => {
    const { dogs, people, learned } = store.kennel();
    return dogs.length + people.length + learned.length + store.seasonNames().length === 0;
  };

  return newRoutes()
    .openapi(getExport, (c) =>
      c.json(
        {
          season: shownSeason(house),
          seasons: store.seasonNames().map((season) => ({ season, notes: store.season(season).notes.length })),
          empty: isEmpty(),
        },
        200,
      ),
    )
    .openapi(getSeasonZip, (c) => {
      const { season = shownSeason(house) } = c.req.valid('query');
      const names = season === 'all' ? store.seasonNames() : [kept(season)];
      if (names.length === 0) throw new Refusal('not-found', 'Nothing is kept of any season yet.');
      return download(c, seasonZip(source, names, options()), `snackstop-${season}.zip`, 'application/zip');
    })
    .openapi(getSeasonXlsx, (c) => {
      const season = kept(c.req.valid('query').season ?? shownSeason(house));
      return download(c, seasonXlsx(source, season, options()), `snackstop-${season}.xlsx`, XLSX);
    })
    .openapi(getStoreZip, async (c) => {
      const archive = await storeZip(store.folder, options());
      return download(c, archive, `snackstop-store-${dayOf(house.now())}.zip`, 'application/zip');
    })
    .openapi(postRestore, async (c) => {
      if (!/^application\/(?:zip|x-zip-compressed)$/.test(c.req.header('content-type') ?? ''))
        throw new Refusal(
          'bad-input',
          'What is restored is a ZIP; send it with the header Content-Type: application/zip.',
          NOTHING,
        );
      if (!isEmpty()) throw new Refusal('conflict', NOT_HERE, 'Nothing was changed.');
      const files = await restoreInto(house, c.req.raw.body);
      const seasons = store.seasonNames();
      const notes = seasons.reduce((sum, name) => sum + store.season(name).notes.length, 0);
      return c.json({ files, seasons, notes, dogs: store.kennel().dogs.length }, 200);
    })
    .openapi(getSheet, async (c) => {
      const { id } = c.req.valid('param');
      const query = c.req.valid('query');
      const dog = store.kennel().dogs.find((one) => one.id === id.toLowerCase());
      if (!dog) throw new Refusal('not-found', 'There is no dog of this id.');
      const records = await recordsOf(source);
      const season = query.season ?? (query.on ? seasonOf(query.on) : shownSeason(house));
      const on = query.on ?? dayIn(seasonIn(records, season), dayOf(house.now()));
      return c.json({ sheet: sheetOf(records, dog, season, on) }, 200);
    })
    .openapi(getSummary, async (c) => {
      const query = c.req.valid('query');
      const records = await recordsOf(source);
      const season = query.season ?? (query.on ? seasonOf(query.on) : shownSeason(house));
      const on = query.on ?? dayIn(seasonIn(records, season), dayOf(house.now()));
      return c.json({ summary: summaryOf(records, season, on, store.season(season).notes) }, 200);
    });
}

const NOTHING = 'Nothing was changed.';
const NOT_HERE =
  'A copy is restored only where nothing is kept yet, and here there are dogs, people or notes. Start Snackstop on an ' +
  'empty folder (npm start -- --data FOLDER) and restore there, or use npm run report -- restore.';

/** A file to keep, sent while it is made; one that fails half-way breaks off, so that no half is taken for a whole. */
function download(c: Context, stream: Readable, name: string, type: string): Response {
  return c.body(Readable.toWeb(stream) as unknown as globalThis.ReadableStream, 200, {
    'Content-Type': type,
    'Content-Disposition': `attachment; filename="${name}"`,
  });
}

/** Takes the upload into a file of its own, checks all of it, and only then lets the store be filled. */
async function restoreInto(house: House, body: globalThis.ReadableStream | null): Promise<number> {
  const { store } = house;
  const place = await mkdtemp(join(tmpdir(), 'snackstop-restore-'));
  const archive = join(place, 'store.zip');
  try {
    await pipeline(Readable.fromWeb((body ?? new Blob([]).stream()) as ReadableStream), createWriteStream(archive));
    const manifest = await checkArchive(archive);
    await store.refill(async () => {
      await checkEmpty(store.folder);
      await putFiles(archive, manifest, store.folder);
    });
    return manifest.files.length;
  } catch (error) {
    if (error instanceof BadArchiveError) throw new Refusal('bad-input', error.message, NOTHING);
    if (error instanceof NotEmptyError) throw new Refusal('conflict', error.message, NOTHING);
    if ((error as Error).name === 'BodyLimitError') throw new HTTPException(413);
    throw error;
  } finally {
    await rm(place, { recursive: true, force: true });
  }
}
