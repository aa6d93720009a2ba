/** Where an export goes: a file that is whole or not there, or standard output. */
import { createWriteStream } from 'node:fs';
import { access, link, rename, rm } from 'node:fs/promises';
import type { Readable, Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { codeOf, reasonOf } from '../store/errors.ts';

/** A file can't be written or read. The message is a sentence. */
export class FileError extends Error {
  override readonly name = 'FileError';
}

/**
 * Writes beside the name first, so that a half is never taken for a whole.
 * @throws FileError where the file is there already, or can't be written; nothing is left behind then
 */
export async function writeTo(path: string, stream: Readable, replace: boolean): Promise<void> {
  const there = await access(path).then(
    () => true,
    () => false,
  );
  if (there && !replace) {
    stream.destroy();
    throw new FileError(
      `${path} is there already and was left alone. Give another name, or --replace to write over it.`,
    );
  }
  const between = `${path}.${process.pid}.tmp`;
  try {
    await pipeline(stream, createWriteStream(between, { flags: 'wx', flush: true }));
    if (replace) await rename(between, path);
    else await placeNew(between, path);
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    throw new FileError(`${path} could not be written: ${reasonOf(error)}. Nothing was exported.`, { cause: error });
  } finally {
    await rm(between, { force: true });
  }
}

/** Gives the file its name unless another has taken it meanwhile. */
async function placeNew(between: string, path: string): Promise<void> {
  try {
    await link(between, path);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') throw new FileError(`${path} is there by now and was left alone.`);
    // Sticks formatted as FAT know no second name.
    await rename(between, path);
  }
}

/** To standard output; quiet where the reader has seen enough and closed it. */
export async function writeOut(out: Writable, stream: Readable): Promise<void> {
  try {
    await pipeline(stream, out, { end: false });
  } catch (error) {
    if (codeOf(error) !== 'EPIPE') throw error;
  }
}
