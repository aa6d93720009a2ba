/** `npm run report`: what the pages show, for the terminal. Works without a running server, and beside one. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Readable, type Writable } from 'node:stream';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  BadArchiveError,
  NotEmptyError,
  readFolder,
  restore,
  seasonXlsx,
  seasonZip,
  storeZip,
} from './export/index.ts';
import { seasonOf } from './model.ts';
import { localNow } from './notes/house.ts';
import { type Answer, askedOf, loadReport, searchReport, theDog, watchReport } from './report/answers.ts';
import { FileError, writeOut, writeTo } from './report/files.ts';
import { type Flags, readReportFlags, UsageError } from './report/flags.ts';
import { HELP } from './report/help.ts';
import { recordsOf } from './report/records.ts';
import { sheetOf } from './report/sheet.ts';
import { summaryOf } from './report/summary.ts';
import { FolderInUseError, FolderUnusableError } from './store/index.ts';

/** What the command line stands on; tests put others in place. */
export interface Surroundings {
  env: Record<string, string | undefined>;
  out: Writable & { isTTY?: boolean };
  /** A line for standard error. */
  say: (line: string) => void;
  /** Now, ISO 8601 with the place's offset. */
  now: () => string;
}

/** Errors that are a sentence for a person. */
const TOLD = [UsageError, FileError, BadArchiveError, NotEmptyError, FolderInUseError, FolderUnusableError, RangeError];

/** Runs one command. @returns the exit status: 0, 1 where a folder or file can't be used, 2 for a wrong command line */
export async function report(args: string[], around: Surroundings): Promise<0 | 1 | 2> {
  try {
    const flags = readReportFlags(args, around.env);
    await run(flags, around);
    return 0;
  } catch (error) {
    if (!TOLD.some((kind) => error instanceof kind)) throw error;
    around.say((error as Error).message);
    if (!(error instanceof UsageError)) return 1;
    around.say('npm run --silent report -- help tells how it is used.');
    return 2;
  }
}

async function run(flags: Flags, around: Surroundings): Promise<void> {
  const text = (words: string) => writeOut(around.out, Readable.from([words]));
  switch (flags.command) {
    case 'help':
      return text(`${HELP}\n`);
    case 'restore':
      return restoring(flags, around);
    case 'export':
      return exporting(flags, around);
    default:
      return text(formatted(await answerOf(flags, around), flags.format));
  }
}

function formatted(answer: Answer, format = 'json'): string {
  return format === 'csv' ? answer.csv() : `${JSON.stringify(answer.json, null, 2)}\n`;
}

async function answerOf(flags: Flags, { now, say }: Surroundings): Promise<Answer> {
  const { command, rest, season, dog, on } = flags;
  const words = rest.join(' ').trim();
  if (command === 'search' && words === '')
    throw new UsageError('search needs words to look for, like “juniper sore wrist”.');
  if (command !== 'search' && words !== '')
    throw new UsageError(`${command} takes no further words, and “${words}” was given.`);
  if (command === 'sheet' && dog === undefined) throw new UsageError('sheet needs a dog: --dog NAME.');
  const source = await readFolder(flags.folder);
  try {
    if (command === 'search') return await searchReport(source, { words, season, dog, on, limit: flags.limit }, now());
    const records = await recordsOf(source);
    const asked = askedOf(records, { season, dog, on }, now().slice(0, 10));
    if (command === 'load') return loadReport(records, asked);
    if (command === 'watch') return watchReport(records, asked);
    const { notes } = await source.season(asked.season);
    const json =
      command === 'sheet'
        ? sheetOf(records, asked.dog ?? theDog(source.kennel.dogs, dog ?? ''), asked.season, asked.on)
        : summaryOf(records, asked.season, asked.on, notes);
    return { json, csv: () => '' };
  } finally {
    for (const warning of source.warnings) say(warning);
  }
}

async function exporting(flags: Flags, { out, say, now }: Surroundings): Promise<void> {
  if (flags.rest.length > 0)
    throw new UsageError(
      `export takes no further words, and “${flags.rest.join(' ')}” was given; a file to write goes behind --to.`,
    );
  if (flags.store && (flags.season !== undefined || flags.format !== undefined))
    throw new UsageError('--store exports everything as it is kept; it goes with no --season and no --format.');
  const toOut = flags.to === undefined || flags.to === '-';
  if (toOut && out.isTTY)
    throw new UsageError('An export is no text to look at: give a file with --to, or send it on with > FILE.');
  const today = now().slice(0, 10);
  const options = { at: new Date(now()), version: version(), until: flags.on ?? today };
  let stream: Readable;
  let warnings: readonly string[] = [];
  if (flags.store) stream = await storeZip(flags.folder, options);
  else {
    const source = await readFolder(flags.folder);
    warnings = source.warnings;
    const season = flags.season ?? source.kennel.settings.season ?? seasonOf(today);
    const names = season === 'all' ? [...source.seasonNames()] : [season];
    if (names.length === 0 || (season !== 'all' && !source.seasonNames().includes(season)))
      throw new RangeError(
        `Nothing is kept of ${season === 'all' ? 'any season' : `the season ${season}`} in ${flags.folder}.`,
      );
    if (flags.format === 'xlsx' && season === 'all')
      throw new UsageError('A spreadsheet holds one season; give --season, or leave --format xlsx away.');
    stream = flags.format === 'xlsx' ? seasonXlsx(source, season, options) : seasonZip(source, names, options);
  }
  if (toOut) await writeOut(out, stream);
  else await writeTo(resolve(flags.to as string), stream, flags.replace);
  for (const warning of warnings) say(warning);
}

async function restoring(flags: Flags, { out }: Surroundings): Promise<void> {
  const [file, ...more] = flags.rest;
  if (file === undefined || more.length > 0) throw new UsageError('restore needs one file: the ZIP of a whole store.');
  if (!flags.folderGiven) throw new UsageError('restore needs the folder to fill written out: --data FOLDER.');
  const { manifest } = await restore(resolve(file), flags.folder);
  const answer = { restored: flags.folder, from: resolve(file), created: manifest.created, files: manifest.files };
  await writeOut(out, Readable.from([`${JSON.stringify(answer, null, 2)}\n`]));
}

/** The version in package.json. */
function version(): string {
  const file = fileURLToPath(new URL('../package.json', import.meta.url));
  return (JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version;
}

// Imported by a test, it only lends its functions.
if (process.argv[1] && import.meta.url === pathToFileURL(resolve(process.argv[1])).href)
  process.exitCode = await report(process.argv.slice(2), {
    env: process.env,
    out: process.stdout,
    say: (line) => console.error(line),
    now: localNow,
  });
