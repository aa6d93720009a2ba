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
  const add = (name: string, chunks: Chunks) =>
    Promise.race([
      gone,
      new Promise<Added>((resolve, reject) => {
        const measure = new Measure(chunks, (bytes, sha256) => resolve({ name, bytes, sha256 }), reject);
        file.addReadStreamLazy(name, { mtime: at, mode: 0o100644 }, (done) =>
          done(null, Readable.from(measure, { objectMode: false })),
        );
      }),
    ]);
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

/** Passes chunks on as bytes, counting and summing them. */
class Measure implements AsyncIterable<Uint8Array> {
  constructor(
    private readonly chunks: Chunks,
    private readonly done: (bytes: number, sha256: string) => void,
    private readonly failed: (error: unknown) => void,
  ) {}

  async *[Symbol.asyncIterator](): AsyncIterator<Uint8Array> {
    const hash = createHash('sha256');
    let bytes = 0;
    try {
      for await (const chunk of this.chunks) {
        const buffer = typeof chunk === 'string' ? Buffer.from(chunk) : chunk;
        bytes += buffer.length;
        hash.update(buffer);
        if (buffer.length > 0) yield buffer;
      }
    } catch (error) {
      this.failed(error);
      throw error;
    }
    this.done(bytes, hash.digest('hex'));
  }
}
