/**
 * A whole store back from its ZIP, into an empty folder. Everything is checked before anything is written: the archive,
 * the manifest, every sum, and that this program can read what it holds. Then the files are written beside their names,
 * and get them in the end, kennel.json as the last: a restore that is cut off leaves a folder that is refused, never one
 * that looks whole.
 */
import { rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { UnreadableError } from '../store/check.ts';
import { codeOf, FolderUnusableError, reasonOf } from '../store/errors.ts';
import { disk, type Files, writeWhole } from '../store/files.ts';
import { takeLock } from '../store/lock.ts';
import { NewerSchemaError } from '../store/migrate.ts';
import { processes } from '../store/processes.ts';
import { MANIFEST, type Manifest, manifestSchema } from './backup.ts';
import { checkOf, earlierOf, isMainFile, isPassingFile, KENNEL_FILE, namesIn, readFolder } from './kept-files.ts';
import { BadArchiveError, openZip, sha256, type Unzipped } from './unzip.ts';

/** The folder is not empty. Nothing was written. */
export class NotEmptyError extends Error {
  override readonly name = 'NotEmptyError';
}

const EARLIER = earlierOf(KENNEL_FILE);
/** Ten times what a season of a large kennel takes. */
const LARGEST = 256 * 1024 * 1024;

export interface Restored {
  folder: string;
  manifest: Manifest;
}

/**
 * Restores into a folder that no Snackstop is running in. The folder is made where there is none.
 * @throws BadArchiveError, NotEmptyError, FolderInUseError, FolderUnusableError; nothing is left behind then
 */
export async function restore(archive: string, folder: string, files: Files = disk): Promise<Restored> {
  const checked = await checkArchive(archive);
  const wasThere = await stat(folder).then(
    () => true,
    () => false,
  );
  try {
    await checkEmpty(folder);
    await files.makeFolder(folder);
    const lock = await takeLock(folder, files, processes);
    try {
      // Looked at again: from here on no other Snackstop can fill it.
      await checkEmpty(folder);
      await lock.ensure();
      await putFiles(archive, checked, folder, files);
    } finally {
      await lock.release();
    }
  } catch (error) {
    if (!wasThere && (await namesIn(folder)).length === 0) await rm(folder, { recursive: true, force: true });
    if (codeOf(error) === undefined) throw error;
    throw new FolderUnusableError(`Nothing was restored: ${folder} could not be written, because ${reasonOf(error)}.`, {
      cause: error,
    });
  }
  return { folder, manifest: checked };
}

/**
 * Reads an archive to its end and checks everything about it, writing nothing.
 * @throws BadArchiveError
 */
export async function checkArchive(archive: string): Promise<Manifest> {
  const zip = await openZip(archive, LARGEST);
  try {
    if (!zip.names.includes(MANIFEST))
      throw new BadArchiveError(
        zip.names.some((name) => name.endsWith('datapackage.json'))
          ? 'This is a season exported as CSV files, not a whole store: only a whole store can be restored.'
          : `This is not a whole store of Snackstop: it holds no ${MANIFEST}.`,
      );
    const manifest = manifestOf(await zip.read(MANIFEST));
    const named = new Set([MANIFEST, ...manifest.files.map((file) => file.name)]);
    const stray = zip.names.find((name) => !named.has(name));
    if (stray !== undefined)
      throw new BadArchiveError(`The archive holds ${stray}, which its manifest does not tell of.`);
    const unreadable = new Map<string, string>();
    for (const file of manifest.files) {
      const fault = faultOf(file.name, await fileOf(zip, file));
      if (fault !== undefined) unreadable.set(file.name, fault);
    }
    // A main file that can't be read is as it was where the copy was made: the store takes its earlier copy then.
    for (const [name, fault] of unreadable)
      if (isMainFile(name) && (!named.has(earlierOf(name)) || unreadable.has(earlierOf(name))))
        throw new BadArchiveError(`${name} in the archive can't be used: ${fault}.`);
    return manifest;
  } finally {
    zip.close();
  }
}

/** Writes the files of a checked archive into a folder that is empty and ours. All of them or none. */
export async function putFiles(
  archive: string,
  manifest: Manifest,
  folder: string,
  files: Files = disk,
): Promise<void> {
  const zip = await openZip(archive, LARGEST);
  const written: string[] = [];
  try {
    const inOrder = [...manifest.files].sort((a, b) => Number(a.name === KENNEL_FILE) - Number(b.name === KENNEL_FILE));
    for (const file of inOrder) {
      const path = join(folder, `${file.name}.tmp`);
      written.push(path);
      await writeWhole(files, path, await fileOf(zip, file));
    }
    for (const { name } of inOrder) {
      // An empty kennel's own file gives way.
      await files.rename(join(folder, `${name}.tmp`), join(folder, name));
      written.push(join(folder, name));
    }
    // The earlier copy of the empty kennel that was there.
    if (!inOrder.some(({ name }) => name === EARLIER)) await files.remove(join(folder, EARLIER));
    await files.syncFolder(folder);
  } catch (error) {
    for (const path of written) await files.remove(path).catch(() => {});
    throw error;
  } finally {
    zip.close();
  }
}

/**
 * @throws NotEmptyError where a folder holds anything but what an empty kennel leaves: a Snackstop that was started
 * there once and told nothing. Files whose name begins with a dot (a desk's own) do not count.
 */
export async function checkEmpty(folder: string): Promise<void> {
  const names = (await namesIn(folder)).filter((name) => !isPassingFile(name) && !name.startsWith('.'));
  const others = names.filter((name) => name !== KENNEL_FILE && name !== EARLIER);
  if (others.length > 0)
    throw notEmpty(folder, `it holds ${others.slice(0, 3).join(', ')}${others.length > 3 ? ' and more' : ''}`);
  if (names.length === 0) return;
  const { kennel } = await readFolder(folder);
  if (kennel.dogs.length + kennel.people.length + kennel.learned.length > 0)
    throw notEmpty(folder, 'it holds a kennel with dogs or people in it');
}

function notEmpty(folder: string, what: string): NotEmptyError {
  return new NotEmptyError(
    `A store is restored into an empty folder only, and ${folder} is not empty: ${what}. Nothing was changed. Give another folder, or move what is there away first.`,
  );
}

function manifestOf(bytes: Buffer): Manifest {
  let raw: unknown;
  try {
    raw = JSON.parse(bytes.toString());
  } catch {
    throw new BadArchiveError(`The ${MANIFEST} in the archive is not JSON that can be read.`);
  }
  const version = (raw as { formatVersion?: unknown } | null)?.formatVersion;
  if (typeof version === 'number' && version > 1)
    throw new BadArchiveError('The archive was written by a newer Snackstop; restore it with that one.');
  const result = manifestSchema.safeParse(raw);
  if (result.success) return result.data;
  const issue = result.error.issues[0];
  throw new BadArchiveError(
    `The ${MANIFEST} in the archive is not as it should be: ${issue?.path.join('.')}: ${issue?.message}.`,
  );
}

async function fileOf(zip: Unzipped, { name, bytes, sha256: sum }: Manifest['files'][number]): Promise<Buffer> {
  const content = await zip.read(name);
  if (content.length !== bytes || sha256(content) !== sum)
    throw new BadArchiveError(
      `${name} in the archive is not what its manifest says: the sum is another, so it was changed or damaged.`,
    );
  return content;
}

/** Why the store could not read a file; undefined where it can, or need not. */
function faultOf(name: string, bytes: Buffer): string | undefined {
  try {
    checkOf(name)?.(bytes);
    return undefined;
  } catch (error) {
    if (error instanceof UnreadableError) return error.message;
    if (error instanceof NewerSchemaError)
      throw new BadArchiveError(
        `${name} in the archive can't be used: ${error.message}. Restore it with the newer one.`,
      );
    throw error;
  }
}
