/** The store over one folder: opening it, and what the rest of the server sees of it. */
import { join } from 'node:path';
import { Low } from 'lowdb';
import { type Kennel, kennelSchema, type Note, runChoicesSchema, type Season, settingsSchema } from '../model.ts';
import { type Kept, kennelCodec, SealedKept, seasonCodec } from './codec.ts';
import { DurableFile, type Surroundings, UnsureWriteError } from './durable.ts';
import { ChangeRefusedError, FolderInUseError, FolderUnusableError, NotKeptError, reasonOf } from './errors.ts';
import { disk, type Files } from './files.ts';
import { Keeper } from './keeper.ts';
import { type Lock, takeLock } from './lock.ts';
import { SCHEMA } from './migrate.ts';
import { freeze, NoteIndex } from './note-index.ts';
import { type Processes, processes } from './processes.ts';

export interface Store {
  readonly folder: string;
  /** Sentences for the start-up line and a banner: files set aside, earlier copies used. Grows while the store is open. */
  readonly warnings: readonly string[];
  /** What is on the disk. Immutable. */
  kennel(): Kennel;
  /** Sorted. */
  seasonNames(): string[];
  /** What is on the disk; an empty season where none is kept yet. Immutable. */
  season(name: string): Season;
  /** A note that is on the disk. */
  findNote(id: string): { season: string; note: Note } | undefined;
  /**
   * `change` gets the newest state, with what is still on its way to the disk, and returns the next one and an answer;
   * what it does not change keeps its identity. Resolves with the answer after the flush. `what` begins the sentence
   * where that fails: "The dog was not kept: …".
   * @throws NotKeptError, ChangeRefusedError, and whatever `change` throws; nothing is changed then.
   */
  changeKennel<T>(change: (kennel: Kennel) => [Kennel, T], what?: string): Promise<T>;
  /** The same for a season. */
  changeSeason<T>(name: string, change: (season: Season) => [Season, T], what?: string): Promise<T>;
  /**
   * Lets `fill` put a kennel's files into the folder, and reads them: only for a store that holds nothing. Changes that
   * come meanwhile are refused.
   * @throws ChangeRefusedError where it holds something, and whatever `fill` throws; the store is as before then.
   */
  refill(fill: () => Promise<void>): Promise<void>;
  /** Tells other processes that want the folder where this one answers. */
  announce(port: number): Promise<void>;
  /** Waits for what is on its way, then leaves the folder to others. */
  close(): Promise<void>;
}

/** What the store stands on; tests put others in place. */
export interface Parts {
  files: Files;
  processes: Processes;
  now(): Date;
}

const SEASON_FILE = /^season-(\d{4}-\d{2})(\.earlier)?\.json$/;
const LEFTOVER = /^(kennel|season-\d{4}-\d{2})(\..+)?\.json\.tmp$/;
const SET_ASIDE = /^(kennel|season-\d{4}-\d{2})\.unreadable-.+\.json$/;

/**
 * Opens a folder, and makes it where there is none.
 * @throws FolderInUseError, FolderUnusableError
 */
export async function openStore(folder: string, parts: Partial<Parts> = {}): Promise<Store> {
  const files = parts.files ?? disk;
  let lock: Lock;
  try {
    await files.makeFolder(folder);
    lock = await takeLock(folder, files, parts.processes ?? processes);
  } catch (error) {
    if (error instanceof FolderInUseError) throw error;
    throw new FolderUnusableError(`The folder ${folder} can't be used: ${reasonOf(error)}.`, { cause: error });
  }
  const store = new FolderStore(folder, files, lock, parts.now ?? (() => new Date()));
  try {
    await store.read();
    return store;
  } catch (error) {
    await lock.release();
    if (error instanceof FolderUnusableError) throw error;
    throw new FolderUnusableError(`The folder ${folder} can't be used: ${reasonOf(error)}.`, { cause: error });
  }
}

interface SeasonFile {
  file: DurableFile<Season>;
  keeper: Keeper<Season>;
  /** There is a file on the disk. */
  kept: boolean;
}

class FolderStore implements Store {
  readonly warnings: string[] = [];
  readonly #around: Surroundings;
  readonly #index = new NoteIndex();
  readonly #seasons = new Map<string, SeasonFile>();
  readonly #kennelFile: DurableFile<Kennel>;
  #kennel!: Keeper<Kennel>;
  #closed = false;
  #filling = false;

  constructor(
    readonly folder: string,
    private readonly files: Files,
    private readonly lock: Lock,
    now: () => Date,
  ) {
    this.#around = {
      folder,
      files,
      now,
      warn: (sentence) => this.warnings.push(sentence),
      ensureLock: () => lock.ensure(),
    };
    this.#kennelFile = new DurableFile('kennel', kennelCodec(), this.#around);
  }

  /** Reads every file; only when all could be read anything is set aside or written. */
  async read(): Promise<void> {
    const names = await this.files.list(this.folder);
    const canWrite = this.lock.missing === undefined;
    if (!canWrite)
      this.warnings.push(
        `The folder ${this.folder} can't be written: ${reasonOf(this.lock.missing)}. What it holds can be read; ` +
          'no new note will be kept until that is mended.',
      );
    const empty = { state: emptyKennel() };
    const kennel = new Low<Kept<Kennel>>(this.#kennelFile, empty);
    await kennel.read();
    const seasons = new Set(names.flatMap((name) => SEASON_FILE.exec(name)?.[1] ?? []).filter(isSeasonName));
    const settling: (() => Promise<void>)[] = [];
    const reading = [...seasons].sort().map((name) => {
      const file = new DurableFile(`season-${name}`, seasonCodec(name), this.#around);
      const low = new Low<Kept<Season>>(file, { state: emptySeason(name) });
      return { name, file, low, read: low.read() };
    });
    await Promise.all(reading.map(({ read }) => read));
    for (const { name, file, low } of reading) {
      this.#take(name, file, low).kept = true;
      this.#addToIndex(name, file.name, low.data);
      settling.push(() => file.settle(low.data, canWrite));
    }
    const aside = names.filter((name) => SET_ASIDE.test(name));
    if (kennel.data === empty) {
      if (seasons.size > 0 || aside.some((name) => name.startsWith('kennel.'))) throw noKennel(this.folder);
      // This file marks the folder: where it is missing beside others, something was lost.
      await kennel.write();
    } else {
      await this.#kennelFile.settle(kennel.data, canWrite);
    }
    for (const settle of settling) await settle();
    this.#kennel = new Keeper(kennel, { check: checkKennel, flushed() {}, dropped() {} });
    for (const name of aside)
      this.warnings.push(
        `${name} lies in the folder: it was set aside at an earlier start because it could not be read. Take from it ` +
          'what you need, then move it away or delete it.',
      );
    // Half-written files of a process that was killed; nothing in them was acknowledged.
    if (canWrite)
      for (const name of names)
        if (LEFTOVER.test(name)) await this.files.remove(join(this.folder, name)).catch(() => {});
  }

  kennel(): Kennel {
    return this.#kennel.state;
  }

  seasonNames(): string[] {
    return [...this.#seasons].flatMap(([name, { kept }]) => (kept ? [name] : [])).sort();
  }

  season(name: string): Season {
    return this.#seasons.get(name)?.keeper.state ?? emptySeason(name);
  }

  findNote(id: string): { season: string; note: Note } | undefined {
    const season = this.#index.seasonOf(id);
    const note = season && this.#index.noteOf(id, this.season(season));
    return note ? { season, note } : undefined;
  }

  async changeKennel<T>(change: (kennel: Kennel) => [Kennel, T], what = 'The change'): Promise<T> {
    this.#mustBeOpen(what);
    return this.#kennel.change(change, (cause) => notKept(what, this.#kennelFile.name, cause));
  }

  async changeSeason<T>(name: string, change: (season: Season) => [Season, T], what = 'The note'): Promise<T> {
    this.#mustBeOpen(what);
    const { keeper, file } = this.#seasons.get(name) ?? this.#newSeason(name);
    return keeper.change(change, (cause) => notKept(what, file.name, cause));
  }

  async refill(fill: () => Promise<void>): Promise<void> {
    this.#mustBeOpen('The copy');
    this.#filling = true;
    try {
      await this.#idle();
      const { dogs, people, learned } = this.kennel();
      if (dogs.length + people.length + learned.length + this.seasonNames().length > 0)
        throw new ChangeRefusedError('A copy is restored only where nothing is kept yet; here there is something.');
      await this.lock.ensure();
      await fill();
      this.#seasons.clear();
      await this.read();
    } finally {
      this.#filling = false;
    }
  }

  announce(port: number): Promise<void> {
    return this.lock.announce(port);
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#idle();
    await this.lock.release();
  }

  async #idle(): Promise<void> {
    await this.#kennel.idle();
    for (const { keeper } of this.#seasons.values()) await keeper.idle();
  }

  #mustBeOpen(what: string): void {
    if (this.#closed) throw new NotKeptError(`${what} was not kept: Snackstop is shutting down. Send it again.`);
    if (this.#filling)
      throw new NotKeptError(`${what} was not kept: a copy is being restored just now. Send it again in a moment.`);
  }

  #newSeason(name: string): SeasonFile {
    const state = emptySeason(name);
    const file = new DurableFile(`season-${name}`, seasonCodec(name), this.#around);
    return this.#take(name, file, new Low<Kept<Season>>(file, { state }));
  }

  #take(name: string, file: DurableFile<Season>, low: Low<Kept<Season>>): SeasonFile {
    const keeper = new Keeper(low, {
      check: (before, after) => this.#index.check(name, before, after),
      flushed: (before, after) => {
        this.#index.flushed(name, before, after);
        season.kept = true;
      },
      dropped: () => this.#index.dropped(name),
    });
    const season: SeasonFile = { file, keeper, kept: false };
    this.#seasons.set(name, season);
    return season;
  }

  #addToIndex(name: string, fileName: string, kept: Kept<Season>): void {
    const ids = kept instanceof SealedKept ? kept.ids : kept.state.notes.map((note) => note.id);
    const [first, ...more] = this.#index.add(name, ids);
    if (first === undefined) return;
    const others = more.length === 0 ? '' : ` and ${more.length} more`;
    this.warnings.push(
      `${fileName} holds a note that is there already, in it or in an earlier season: ${first}${others}. Both are kept; ` +
        'take one of them out by hand while Snackstop is not running.',
    );
  }
}

function checkKennel(_before: Kennel, after: Kennel): void {
  const issue = kennelSchema.safeParse(after).error?.issues[0];
  if (issue) throw new ChangeRefusedError(`kennel ${issue.path.map(String).join('.')}: ${issue.message}`);
  freeze(after);
}

function emptyKennel(): Kennel {
  return { schema: SCHEMA, dogs: [], people: [], settings: settingsSchema.parse({}), learned: [] };
}

/** @throws RangeError for what is no season's name. */
function emptySeason(name: string): Season {
  if (!isSeasonName(name)) throw new RangeError(`${JSON.stringify(name)} is not a season; one is named like 2026-27`);
  return { schema: SCHEMA, season: name, notes: [], runs: runChoicesSchema.parse({}) };
}

/** 2026-27: a year and the next one. */
function isSeasonName(name: string): boolean {
  const [, first, second] = /^(\d{4})-(\d{2})$/.exec(name) ?? [];
  return first !== undefined && (Number(first) + 1) % 100 === Number(second);
}

function noKennel(folder: string): FolderUnusableError {
  return new FolderUnusableError(
    `The folder ${folder} can't be opened: it holds a kennel's files, but kennel.json and its earlier copy are missing. ` +
      'Nothing was changed, and no empty kennel is started over them. Put a copy of kennel.json back and start again, or use another folder.',
  );
}

function notKept(what: string, file: string, cause: unknown): NotKeptError {
  const reason =
    cause instanceof FolderInUseError ? cause.message : `${file} could not be written, because ${reasonOf(cause)}.`;
  const unsure = cause instanceof UnsureWriteError ? ' It may be found there after the next start all the same.' : '';
  return new NotKeptError(
    `${what} was not kept: ${reason} What was kept before is unharmed.${unsure} Send it again once that is mended.`,
    cause,
  );
}
