/**
 * A ZIP written as it is read: one file at a time, each made only when its turn has come, so that memory does not grow
 * with the archive. Written by yazl: Node's own zlib, back-pressure, ZIP64 where it is needed.
 */
import { createHash } from 'node:crypto';
import { PassThrough, Readable } from 'node:stream';
import { ZipFile } from 'yazl';

export type Chunks = Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>;

export interface Added {
  name: string;
  bytes: number;
  /** SHA-256 of the content, hexadecimal. */
  sha256: string;
}

export interface ZipSink {
  /** Resolves when the file has been read to its end. */
  add(name: string, chunks: Chunks): Promise<Added>;
}

/**
 * The archive that `fill` makes. Where `fill` or a reader of its chunks fails, the stream fails; where the stream is
 * destroyed (the browser has gone), `fill` is stopped at its next file.
 * @param at the time that stands beside each file
 */
export function zipOf(fill: (zip: ZipSink) => Promise<void>, at: Date): Readable {
  const file = new ZipFile();
  const out = new PassThrough();
  file.on('error', (error: Error) => out.destroy(error));
  file.outputStream.pipe(out);
  const gone = new Promise<never>((_, reject) => {
    out.once('close', () => reject(new Error('The archive is not wanted any more.')));
  });
  gone.catch(() => {});
  const add = (name: string, chunks: Chunks) => Promise.race([gone, addTo(file, name, { chunks }, at)]);
  const filled = async () => {
    try {
      await fill({ add });
      file.end();
    } catch (error) {
      out.destroy(error as Error);
    }
  };
  void filled();
  return out;
}

/**
 * Adds one file. The archive holds on to what it was given until its end, so the content lies in a box of its own that
 * is emptied as soon as somebody reads: of ten seasons one is in memory.
 */
function addTo(file: ZipFile, name: string, box: { chunks?: Chunks }, mtime: Date): Promise<Added> {
  return new Promise((resolve, reject) => {
    file.addReadStreamLazy(name, { mtime, mode: 0o100644 }, (ready) => {
      const done = (bytes: number, sha256: string) => resolve({ name, bytes, sha256 });
      ready(null, Readable.from(measured(take(box), done, reject), { objectMode: false }));
    });
  });
}

function take(box: { chunks?: Chunks }): Chunks {
  const { chunks = [] } = box;
  delete box.chunks;
  return chunks;
}

/** Passes chunks on as bytes, counting and summing them. */
async function* measured(
  chunks: Chunks,
  done: (bytes: number, sha256: string) => void,
  failed: (error: unknown) => void,
): AsyncGenerator<Uint8Array> {
  const hash = createHash('sha256');
  let bytes = 0;
  try {
    for await (const chunk of chunks) {
      const buffer = typeof chunk === 'string' ? Buffer.from(chunk) : chunk;
      bytes += buffer.length;
      hash.update(buffer);
      if (buffer.length > 0) yield buffer;
    }
  } catch (error) {
    failed(error);
    throw error;
  }
  done(bytes, hash.digest('hex'));
}
