/** The files of a data folder as they lie there, read and nothing else: no lock is taken and no file is touched. */
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Kennel, Season } from '../model.ts';
import { UnreadableError } from '../store/check.ts';
import { type Codec, kennelCodec, seasonCodec } from '../store/codec.ts';
import { codeOf, FolderUnusableError, reasonOf } from '../store/errors.ts';
import { NewerSchemaError } from '../store/migrate.ts';
import type { Source } from './season-data.ts';

/** A file the store keeps, has kept before, or has set aside: `kennel.json`, `season-2026-27.earlier.json` … */
const KEPT = /^(kennel|season-\d{4}-\d{2})((?:\.[A-Za-z0-9-]{1,60})?)\.json$/;
const SEASON = /^season-(\d{4}-\d{2})(?:\.earlier)?\.json$/;
/** Of a process that has the folder now, and of writes under way: these belong to no copy. */
const PASSING = /^lock-\d+-[0-9a-f]{8}\.json$|\.tmp$/;

export const isKeptFile = (name: string) => KEPT.test(name);
export const isPassingFile = (name: string) => PASSING.test(name);

/** The one that marks a folder as a kennel's. */
export const KENNEL_FILE = 'kennel.json';

/** What is checked of a file before it is taken into a folder. Set-aside files are kept as they are, readable or not. */
export function checkOf(name: string): ((bytes: Buffer) => void) | undefined {
  const [, base = '', more] = KEPT.exec(name) ?? [];
  if (more !== '' && more !== '.earlier') return undefined;
  return base === 'kennel'
    ? (bytes) => void kennelCodec().open(bytes).kept.state
    : (bytes) => void seasonCodec(base.slice('season-'.length)).open(bytes).kept.state;
}

/** The name of the copy before the last: `kennel.json` → `kennel.earlier.json`. */
export const earlierOf = (name: string) => name.replace(/\.json$/, '.earlier.json');
/** Whether it is a file in use, not an earlier copy or one set aside. */
export const isMainFile = (name: string) => KEPT.exec(name)?.[2] === '';

/** The names of the kept files, seasons first, kennel.json last: see backup.ts. Empty where there is no folder. */
export async function keptNames(folder: string): Promise<string[]> {
  const names = (await namesIn(folder)).filter(isKeptFile).sort();
  return [...names.filter((name) => name !== KENNEL_FILE), ...names.filter((name) => name === KENNEL_FILE)];
}

/** Every name in a folder; none where there is no folder. */
export async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return [];
    throw new FolderUnusableError(`The folder ${folder} can't be read: ${reasonOf(error)}.`, { cause: error });
  }
}

/** A kennel read from its folder, beside the server that may be running there. */
export interface ReadFolder extends Source {
  /** Sentences about files that could not be read, where the earlier copy was taken instead. */
  warnings: string[];
}

/**
 * Opens a folder for reading. Files are replaced whole, so each is read as it was at one moment; a server that is
 * running keeps its lock and never knows. A file that can't be read is told of, and its earlier copy is taken.
 * @throws FolderUnusableError with a sentence
 */
export async function readFolder(folder: string): Promise<ReadFolder> {
  const names = await namesIn(folder);
  const warnings: string[] = [];
  const seasons = [...new Set(names.flatMap((name) => SEASON.exec(name)?.[1] ?? []))].sort();
  if (!names.some((name) => name === KENNEL_FILE || name === 'kennel.earlier.json'))
    throw new FolderUnusableError(
      `There is no kennel in ${folder}: it holds no kennel.json. Give the folder that Snackstop keeps its notes in with --data.`,
    );
  const kennel = await readKept<Kennel>(folder, 'kennel', kennelCodec(), warnings);
  return {
    kennel,
    warnings,
    seasonNames: () => seasons,
    season: (name) =>
      seasons.includes(name)
        ? readKept<Season>(folder, `season-${name}`, seasonCodec(name), warnings)
        : {
            schema: kennel.schema,
            season: name,
            notes: [],
            runs: { cutBefore: [], joinBefore: [], moved: [], distances: [] },
          },
  };
}

async function readKept<S>(folder: string, base: string, codec: Codec<S>, warnings: string[]): Promise<S> {
  const faults: string[] = [];
  for (const name of [`${base}.json`, `${base}.earlier.json`]) {
    try {
      const { state } = codec.open(await readFile(join(folder, name))).kept;
      if (faults.length > 0) warnings.push(`${faults[0]}; the earlier copy, ${name}, was used.`);
      return state;
    } catch (error) {
      const why =
        error instanceof UnreadableError || error instanceof NewerSchemaError ? error.message : reasonOf(error);
      faults.push(`${name} could not be read: ${why}`);
    }
  }
  throw new FolderUnusableError(`The folder ${folder} can't be used: ${faults.join('; ')}. Nothing was changed.`);
}
