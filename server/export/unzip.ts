/** Reading a ZIP file entry by entry, with every doubt about it as a sentence. */
import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { crc32 } from 'node:zlib';
import yauzl, { type Entry, type ZipFile } from 'yauzl';
import { codeOf } from '../store/errors.ts';

/** The archive can't be used. The message is a sentence. */
export class BadArchiveError extends Error {
  override readonly name = 'BadArchiveError';
}

const open = promisify<string, yauzl.Options, ZipFile>(yauzl.open);

export interface Unzipped {
  /** Names in the archive, in their order. */
  names: string[];
  /** One entry's content. @throws BadArchiveError */
  read(name: string): Promise<Buffer>;
  close(): void;
}

/**
 * Opens an archive and lists it.
 * @param largest the most bytes that one entry may hold unpacked: a small archive may claim to hold a great deal
 * @throws BadArchiveError
 */
export async function openZip(path: string, largest: number): Promise<Unzipped> {
  const zip = await open(path, { autoClose: false, lazyEntries: true, strictFileNames: true }).catch(
    (error: unknown) => {
      if (codeOf(error) === 'ENOENT') throw new BadArchiveError(`There is no file ${path}.`);
      throw damaged(error);
    },
  );
  try {
    const entries = new Map<string, Entry>();
    for await (const entry of entriesOf(zip)) {
      if (entries.has(entry.fileName)) throw new BadArchiveError(`The archive holds ${entry.fileName} twice.`);
      entries.set(entry.fileName, entry);
    }
    return {
      names: [...entries.keys()],
      read: (name) => contentOf(zip, entries.get(name), name, largest),
      close: () => zip.close(),
    };
  } catch (error) {
    zip.close();
    throw error;
  }
}

async function* entriesOf(zip: ZipFile): AsyncGenerator<Entry> {
  for (;;) {
    const entry = await new Promise<Entry | undefined>((resolve, reject) => {
      const done = () => {
        zip.off('entry', found);
        zip.off('end', ended);
        zip.off('error', failed);
      };
      const found = (one: Entry) => {
        done();
        resolve(one);
      };
      const ended = () => {
        done();
        resolve(undefined);
      };
      const failed = (error: unknown) => {
        done();
        reject(damaged(error));
      };
      zip.on('entry', found).on('end', ended).on('error', failed);
      zip.readEntry();
    });
    if (!entry) return;
    yield entry;
  }
}

async function contentOf(zip: ZipFile, entry: Entry | undefined, name: string, largest: number): Promise<Buffer> {
  if (!entry) throw new BadArchiveError(`The archive holds no ${name}.`);
  if (entry.uncompressedSize > largest)
    throw new BadArchiveError(
      `${name} in the archive is larger (${entry.uncompressedSize} bytes) than a kept file ever is.`,
    );
  try {
    const stream = await promisify(
      zip.openReadStream.bind(zip) as (e: Entry, cb: (error: Error | null, s: NodeJS.ReadableStream) => void) => void,
    )(entry);
    const chunks: Buffer[] = [];
    for await (const chunk of stream) chunks.push(chunk as Buffer);
    const bytes = Buffer.concat(chunks);
    if (crc32(bytes) !== entry.crc32) throw new Error(`the checksum of ${name} is wrong`);
    return bytes;
  } catch (error) {
    throw damaged(error);
  }
}

/** SHA-256 as a manifest writes it. */
export const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

function damaged(error: unknown): BadArchiveError {
  const why = error instanceof Error ? error.message : String(error);
  return new BadArchiveError(`The archive can't be read: it is damaged, was cut short, or is no ZIP file (${why}).`);
}
