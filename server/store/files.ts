/** The file system as the store needs it: small, so that tests can put a failing or a crashing one in its place. */
import { constants } from 'node:fs';
import * as fs from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { codeOf } from './errors.ts';

/** Tells whether a file is still the one that was seen last. */
export interface FileStamp {
  ino: number;
  size: number;
  mtimeMs: number;
}

/** A file being written. */
export interface OpenFile {
  /** All of the bytes, at the end of what was written before. */
  write(bytes: Uint8Array): Promise<void>;
  /** Resolves once the content is on the disk itself. */
  sync(): Promise<void>;
  close(): Promise<void>;
}

export interface Files {
  makeFolder(path: string): Promise<void>;
  /** Names in a folder. */
  list(folder: string): Promise<string[]>;
  /** Undefined where there is no such file. */
  read(path: string): Promise<Buffer | undefined>;
  /** Undefined where there is no such file. */
  stamp(path: string): Promise<FileStamp | undefined>;
  /** A new empty file, in place of one that has the name. */
  create(path: string): Promise<OpenFile>;
  /** Takes the place of a file named `to` in one step. */
  rename(from: string, to: string): Promise<void>;
  /** A second name for the same file; an error where `to` exists. */
  link(from: string, to: string): Promise<void>;
  /** Quiet where there is no such file. */
  remove(path: string): Promise<void>;
  /** Sets the time of last change to now. */
  touch(path: string): Promise<void>;
  /** Resolves once the folder's names are on the disk itself. */
  syncFolder(folder: string): Promise<void>;
}

async function orMissing<T>(work: Promise<T>): Promise<T | undefined> {
  try {
    return await work;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/** The real disk. */
export const disk: Files = {
  async makeFolder(path) {
    const first = await fs.mkdir(path, { recursive: true });
    if (first === undefined) return;
    // The new folders' names must be on the disk as well, or a power cut takes the notes away with them.
    for (let at = resolve(path); at !== dirname(first); at = dirname(at)) await disk.syncFolder(dirname(at));
  },
  list: (folder) => fs.readdir(folder),
  read: (path) => orMissing(fs.readFile(path)),
  async stamp(path) {
    const found = await orMissing(fs.stat(path));
    return found && { ino: found.ino, size: found.size, mtimeMs: found.mtimeMs };
  },
  async create(path) {
    const handle = await fs.open(path, 'w', 0o666);
    return {
      async write(bytes) {
        // One call for the whole file where the system takes it; writeFile would go in small pieces.
        for (let from = 0; from < bytes.length; ) {
          const { bytesWritten } = await handle.write(bytes, from, bytes.length - from);
          from += bytesWritten;
        }
      },
      sync: () => handle.sync(),
      close: () => handle.close(),
    };
  },
  rename: (from, to) => fs.rename(from, to),
  link: (from, to) => fs.link(from, to),
  async remove(path) {
    await orMissing(fs.unlink(path));
  },
  async touch(path) {
    const now = new Date();
    await fs.utimes(path, now, now);
  },
  async syncFolder(folder) {
    // Windows keeps names by itself and lets no program flush a folder.
    if (process.platform === 'win32') return;
    const handle = await fs.open(folder, constants.O_RDONLY);
    try {
      await handle.sync();
    } catch (error) {
      // Some network shares flush names by themselves and know no such call.
      if (!['EINVAL', 'ENOTSUP', 'EOPNOTSUPP'].includes(codeOf(error) ?? '')) throw error;
    } finally {
      await handle.close();
    }
  },
};

/**
 * Gives the content of `from` the name `to` as well, replacing what had that name, in one step: at every instant `to` is
 * whole. `from` stays. `to + '.tmp'` is used on the way. The caller flushes the folder.
 */
export async function keepAs(files: Files, from: string, to: string): Promise<void> {
  const between = `${to}.tmp`;
  try {
    await files.link(from, between).catch(async (error: unknown) => {
      // Left over by a program that was killed.
      if (codeOf(error) !== 'EEXIST') throw error;
      await files.remove(between);
      await files.link(from, between);
    });
  } catch (error) {
    // Sticks formatted as FAT and some network shares know no second name: copy there.
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'].includes(codeOf(error) ?? '')) throw error;
    return copyAs(files, from, to);
  }
  try {
    await files.rename(between, to);
  } finally {
    // Also after a success: rename() does nothing where both names are one file already (POSIX.1-2017, rename).
    await files.remove(between);
  }
}

/** The same by a copy: a program that later writes into the one file does not change the other. */
export async function copyAs(files: Files, from: string, to: string): Promise<void> {
  const bytes = await files.read(from);
  if (!bytes) throw Object.assign(new Error(`no such file: ${from}`), { code: 'ENOENT' });
  await writeWhole(files, `${to}.tmp`, bytes);
  await files.rename(`${to}.tmp`, to);
}

/** Writes and flushes a file of its own; takes it away again when that fails, so that a full disk is not kept full. */
export async function writeWhole(files: Files, path: string, bytes: Uint8Array): Promise<void> {
  try {
    const file = await files.create(path);
    try {
      await file.write(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
  } catch (error) {
    await files.remove(path).catch(() => {});
    throw error;
  }
}
