/**
 * The lowdb adapter for one file: what is written is on the disk when `write` resolves, and at every instant, also in the
 * middle of a write, both the file and the copy before it are whole.
 *
 * The order of a write: the new content into a file beside it, flushed; the file gets a second name, `.earlier`, in
 * place of the copy that had it; the new file takes the file's name; the folder is flushed. A crash at any point leaves
 * the file as it was before or as it is after, never nothing and never a half.
 */
import { join } from 'node:path';
import type { Adapter } from 'lowdb';
import { UnreadableError } from './check.ts';
import type { Codec, Kept, Opened } from './codec.ts';
import { FolderUnusableError, reasonOf } from './errors.ts';
import { copyAs, type FileStamp, type Files, keepAs, writeWhole } from './files.ts';
import { NewerSchemaError, SCHEMA } from './migrate.ts';

export interface Surroundings {
  folder: string;
  files: Files;
  /** For the names of files that are set aside. */
  now(): Date;
  warn(sentence: string): void;
  /** Before every write: is the folder still ours? */
  ensureLock(): Promise<void>;
}

/** A write that failed after the new file had its name, and could not be taken back either. */
export class UnsureWriteError extends Error {
  readonly code?: string;
  constructor(cause: unknown) {
    super(reasonOf(cause), { cause });
    this.code = (cause as { code?: string }).code;
  }
}

type Look<S> = { is: 'good'; opened: Opened<S>; stamp?: FileStamp } | { is: 'missing' } | { is: 'bad'; why: string };

export class DurableFile<S> implements Adapter<Kept<S>> {
  readonly name: string;
  readonly #main: string;
  readonly #earlier: string;
  readonly #earlierName: string;
  /** The file as it was read or written last; another stamp means that another program was there. */
  #seen?: FileStamp;
  /** What is to be done before the next write, so that nothing is written over. */
  #first: (() => Promise<void>)[] = [];
  /** It is not as this program writes it. */
  #stale = false;
  /** What a person is told about the reading; `failed`: why the above could not be done at once. */
  #notice?: (failed?: string) => string;

  constructor(
    private readonly base: string,
    private readonly codec: Codec<S>,
    private readonly around: Surroundings,
  ) {
    this.name = `${base}.json`;
    this.#earlierName = `${base}.earlier.json`;
    this.#main = join(around.folder, this.name);
    this.#earlier = join(around.folder, this.#earlierName);
  }

  /**
   * Reads the file, or the earlier copy where the file can't be read; null where there is neither. Changes nothing on
   * the disk: that is `settle`, once every file of the folder has been read.
   * @throws FolderUnusableError
   */
  async read(): Promise<Kept<S> | null> {
    const main = await this.#look(this.#main);
    if (main.is === 'good') {
      this.#seen = main.stamp;
      await this.#afterReading(main.opened);
      return main.opened.kept;
    }
    const earlier = await this.#look(this.#earlier);
    if (main.is === 'missing' && earlier.is === 'missing') return null;
    if (earlier.is !== 'good') throw this.#unusable(main, earlier);
    this.#seen = await this.around.files.stamp(this.#main);
    await this.#useEarlier(main, earlier.opened);
    return earlier.opened.kept;
  }

  /** Sets aside and keeps what reading found to be kept, and writes the file anew where it is not as this program writes it. */
  async settle(kept: Kept<S>, canWrite: boolean): Promise<void> {
    let failed = canWrite ? undefined : 'the folder can be read only';
    if (canWrite) {
      try {
        if (this.#stale) await this.write(kept);
        else await this.#doFirst();
      } catch (error) {
        // Nothing is lost: what is left to do is done before the next write, or that write fails.
        failed = reasonOf(error);
      }
    }
    if (this.#notice) this.around.warn(this.#notice(this.#first.length > 0 ? failed : undefined));
  }

  async write(kept: Kept<S>): Promise<void> {
    const { files, folder } = this.around;
    const bytes = this.codec.bytes(kept.state);
    await this.around.ensureLock();
    await this.#doFirst();
    const before = await this.#keepForeign();
    const fresh = `${this.#main}.tmp`;
    await writeWhole(files, fresh, bytes);
    let stamp: FileStamp | undefined;
    try {
      stamp = await files.stamp(fresh);
      if (before === 'own') await keepAs(files, this.#main, this.#earlier);
      await files.rename(fresh, this.#main);
    } catch (error) {
      await files.remove(fresh).catch(() => {});
      throw error;
    }
    this.#seen = stamp;
    try {
      await files.syncFolder(folder);
    } catch (error) {
      await this.#putBack(before === 'own' ? this.#earlier : before);
      throw error;
    }
    this.#stale = false;
  }

  async #look(path: string): Promise<Look<S>> {
    try {
      const stamp = await this.around.files.stamp(path);
      const bytes = await this.around.files.read(path);
      return bytes ? { is: 'good', opened: this.codec.open(bytes), stamp } : { is: 'missing' };
    } catch (error) {
      if (error instanceof NewerSchemaError && path === this.#main)
        throw new FolderUnusableError(
          `The folder ${this.around.folder} can't be opened: ${this.name} can't be used, because ${error.message}. ` +
            'Start the newer one. Nothing was changed.',
        );
      const known = error instanceof UnreadableError || error instanceof NewerSchemaError;
      return { is: 'bad', why: known ? error.message : reasonOf(error) };
    }
  }

  #unusable(main: Look<S>, earlier: Look<S>): FolderUnusableError {
    const first = main.is === 'bad' ? `could not be read: ${main.why}` : 'is missing';
    const second =
      earlier.is === 'bad'
        ? `the earlier copy, ${this.#earlierName}, could not be read either: ${earlier.why}`
        : 'there is no earlier copy';
    return new FolderUnusableError(
      `The folder ${this.around.folder} can't be opened: ${this.name} ${first}; ${second}. Nothing was changed, and ` +
        'nothing is started empty over what is there. Mend the file, or put a copy of your own in its place, and start again.',
    );
  }

  /** The file is good. Was it changed by somebody else, or written by another version? */
  async #afterReading(opened: Opened<S>): Promise<void> {
    this.#stale = opened.from !== 'ours';
    const { files, folder } = this.around;
    const earlier = await files.stamp(this.#earlier);
    const oneFile = earlier !== undefined && earlier.ino === this.#seen?.ino;
    if (oneFile) {
      // A write that was cut off left one file with two names: an editor could break both at once.
      this.#first.push(async () => {
        await copyAs(files, this.#main, this.#earlier);
        await files.syncFolder(folder);
      });
    }
    if (opened.schema < SCHEMA) {
      const name = await this.#freeName(`schema-${opened.schema}`);
      this.#first.push(() => this.#keep(this.#main, name));
    }
    if (opened.from !== 'changed') return;
    const changed = `${this.name} was changed by another program, or by hand, since Snackstop wrote it. It can be read and was taken as it is now.`;
    this.#notice = () => changed;
    if (!earlier || oneFile) return;
    const name = await this.#freeName(`before-edit-${this.#moment()}`);
    this.#first.push(() => this.#keep(this.#earlier, name));
    this.#notice = (failed) =>
      `${changed} The copy from before, as Snackstop wrote it, ${failed ? `is ${this.#earlierName}` : `is kept as ${name}`}.`;
  }

  async #useEarlier(main: Look<S>, opened: Opened<S>): Promise<void> {
    this.#stale = opened.from !== 'ours';
    const used = `The earlier copy, ${this.#earlierName}, was used; what was written last may be missing`;
    this.#notice = () => `${this.name} is missing. ${used}.`;
    if (main.is === 'bad') {
      const name = await this.#freeName(`unreadable-${this.#moment()}`);
      this.#first.push(() => this.#keep(this.#main, name));
      this.#notice = (failed) => {
        const where = failed
          ? `It stays where it is, because it could not be set aside yet: ${failed}; nothing is written over it.`
          : `It was set aside as ${name}.`;
        return `${this.name} could not be read: ${main.why}. ${where} ${used}${failed ? '' : ' and may be found there'}.`;
      };
    }
    this.#first.push(async () => {
      await copyAs(this.around.files, this.#earlier, this.#main);
      await this.around.files.syncFolder(this.around.folder);
      this.#seen = await this.around.files.stamp(this.#main);
    });
  }

  /** Another name for a file of the folder, flushed. */
  async #keep(path: string, name: string): Promise<void> {
    await keepAs(this.around.files, path, join(this.around.folder, name));
    await this.around.files.syncFolder(this.around.folder);
  }

  async #doFirst(): Promise<void> {
    for (let step = this.#first[0]; step; step = this.#first[0]) {
      await step();
      this.#first.shift();
    }
  }

  /**
   * Keeps what another program has put in the file's place while this one runs.
   * @returns `own` where the file is as it was written last, else where what lay there is kept; undefined for nothing.
   */
  async #keepForeign(): Promise<'own' | string | undefined> {
    const stamp = await this.around.files.stamp(this.#main);
    if (!stamp) return undefined;
    const seen = this.#seen;
    if (seen && stamp.ino === seen.ino && stamp.size === seen.size && stamp.mtimeMs === seen.mtimeMs) return 'own';
    const name = await this.#freeName(`changed-${this.#moment()}`);
    await this.#keep(this.#main, name);
    this.around.warn(
      `${this.name} was changed by another program while Snackstop was running. What it held is kept as ${name}; ` +
        'Snackstop went on with what it knew.',
    );
    return join(this.around.folder, name);
  }

  /** The folder could not be flushed: what is not acknowledged shall not be found after the next start. */
  async #putBack(from: string | undefined): Promise<void> {
    const { files } = this.around;
    try {
      if (from === undefined) await files.remove(this.#main);
      else await keepAs(files, from, this.#main);
      this.#seen = await files.stamp(this.#main);
      await files.syncFolder(this.around.folder).catch(() => {});
    } catch (error) {
      throw new UnsureWriteError(error);
    }
  }

  /** `20270114T104000Z`, for file names. */
  #moment(): string {
    return this.around
      .now()
      .toISOString()
      .replace(/[-:]|\.\d+/g, '');
  }

  async #freeName(what: string): Promise<string> {
    const names = new Set(await this.around.files.list(this.around.folder));
    for (let n = 1; ; n++) {
      const name = `${this.base}.${what}${n === 1 ? '' : `-${n}`}.json`;
      if (!names.has(name)) return name;
    }
  }
}
