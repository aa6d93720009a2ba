/**
 * One process a folder. Each process that wants the folder puts a file of its own there (`lock-PID-RANDOM.json`), then
 * looks at the others': it has the folder if it then sees no file of a process that runs. Of two that come at once at
 * least the later one sees the other, so never both have it; the one whose file sorts first waits for the other to step
 * back. No file is ever taken over, so nothing depends on the time between looking and taking, and the file of a process
 * that was killed holds nobody up: that the process is gone is asked of the system, not guessed from a time (a server
 * busy for a minute keeps its folder). Only where the other process is out of sight, on another machine or in another
 * container, its file counts as long as it is touched every few seconds.
 */
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { z } from 'zod';
import { FolderInUseError } from './errors.ts';
import type { Files } from './files.ts';
import type { Processes, ProcessId } from './processes.ts';

const TOUCH_MS = 5_000;
/** Six touches missed. */
const UNSEEN_MS = 30_000;
/** A process that was killed this moment gets half a second to be gone. */
const LOOKS = 10;
const LOOK_MS = 50;
const LOCK_FILE = /^lock-\d+-[0-9a-f]{8}\.json$/;
const LOCK_LEFTOVER = /^lock-\d+-[0-9a-f]{8}\.json\.tmp$/;

const holderSchema = z.object({
  pid: z.number().int().positive(),
  started: z.string().optional(),
  machine: z.string(),
  host: z.string(),
  since: z.string(),
  port: z.number().int().optional(),
});
/** Who has a folder: written in the lock file, for other processes and for people. */
export type Holder = z.infer<typeof holderSchema>;

export interface Lock {
  /** Why the lock file could not be written (a full or read-only disk); nobody else had the folder then. */
  readonly missing?: unknown;
  /** Before each write. FolderInUseError where another process has the folder by now; the system's error where the lock can't be written. */
  ensure(): Promise<void>;
  /** Says at which port the server answers, for the sentence another process is refused with. */
  announce(port: number): Promise<void>;
  release(): Promise<void>;
}

/** @throws FolderInUseError */
export async function takeLock(folder: string, files: Files, processes: Processes): Promise<Lock> {
  const self = await processes.self();
  const lock = new FolderLock(folder, files, processes, { ...self, since: new Date().toISOString() });
  try {
    await lock.take();
  } catch (error) {
    if (error instanceof FolderInUseError) throw error;
    lock.missing = error;
  }
  return lock;
}

class FolderLock implements Lock {
  missing?: unknown;
  readonly #name: string;
  readonly #path: string;
  #touching?: NodeJS.Timeout;
  #taking?: Promise<void>;

  constructor(
    private readonly folder: string,
    private readonly files: Files,
    private readonly processes: Processes,
    private holder: Holder,
  ) {
    this.#name = `lock-${holder.pid}-${randomBytes(4).toString('hex')}.json`;
    this.#path = join(folder, this.#name);
  }

  async take(): Promise<void> {
    let failed: unknown;
    let placed = false;
    for (let look = 1; ; look++) {
      if (!placed) {
        failed = await this.#write().catch((error: unknown) => error ?? new Error('unknown'));
        placed = failed === undefined;
      }
      const others = await this.#others();
      const first = others[0];
      if (!first) {
        if (failed !== undefined) throw failed;
        break;
      }
      const late = look === LOOKS;
      if (placed && (late || first.name < this.#name)) {
        await this.files.remove(this.#path);
        placed = false;
      }
      if (late) throw inUse(this.folder, first, this.holder);
      await this.processes.pause(LOOK_MS);
    }
    this.missing = undefined;
    clearInterval(this.#touching);
    this.#touching = setInterval(() => this.files.touch(this.#path).catch(() => {}), TOUCH_MS).unref();
  }

  async ensure(): Promise<void> {
    if (this.missing === undefined && (await this.files.stamp(this.#path))) return;
    // Two files may be about to be written: the lock is taken once for both.
    this.#taking ??= this.take().finally(() => {
      this.#taking = undefined;
    });
    await this.#taking;
  }

  async announce(port: number): Promise<void> {
    this.holder = { ...this.holder, port };
    // Only for a sentence: a disk that is full keeps nobody from starting.
    if (this.missing === undefined) await this.#write().catch(() => {});
  }

  async release(): Promise<void> {
    clearInterval(this.#touching);
    await this.files.remove(this.#path).catch(() => {});
  }

  /** Under another name first: a lock file that is seen is whole. Not flushed: after a power cut nobody holds anything. */
  async #write(): Promise<undefined> {
    const between = `${this.#path}.tmp`;
    try {
      const file = await this.files.create(between);
      try {
        await file.write(Buffer.from(`${JSON.stringify(this.holder)}\n`));
      } finally {
        await file.close();
      }
      await this.files.rename(between, this.#path);
    } catch (error) {
      await this.files.remove(between).catch(() => {});
      throw error;
    }
  }

  /** The living other holders, sorted by file name. Files of processes that are gone are taken away. */
  async #others(): Promise<Other[]> {
    const living: Other[] = [];
    for (const name of (await this.files.list(this.folder)).sort()) {
      if (name === this.#name) continue;
      if (LOCK_LEFTOVER.test(name)) await this.#sweep(name);
      if (!LOCK_FILE.test(name)) continue;
      const path = join(this.folder, name);
      const bytes = await this.files.read(path);
      if (!bytes) continue;
      const holder = parse(bytes);
      if (holder && (await this.#lives(holder, path))) living.push({ name, holder });
      else await this.files.remove(path).catch(() => {});
    }
    return living;
  }

  async #lives(holder: Holder, path: string): Promise<boolean> {
    if (holder.machine === this.holder.machine) return this.processes.runs(holder satisfies ProcessId);
    const stamp = await this.files.stamp(path);
    return stamp !== undefined && Date.now() - stamp.mtimeMs < UNSEEN_MS;
  }

  /** A lock file that was never finished; one that another process is writing this moment is young. */
  async #sweep(name: string): Promise<void> {
    const path = join(this.folder, name);
    const stamp = await this.files.stamp(path);
    if (stamp && Date.now() - stamp.mtimeMs > UNSEEN_MS) await this.files.remove(path).catch(() => {});
  }
}

interface Other {
  name: string;
  holder: Holder;
}

/** Undefined for a file that is not whole: left by a power cut, because a living process's file always is. */
function parse(bytes: Buffer): Holder | undefined {
  try {
    return holderSchema.parse(JSON.parse(bytes.toString()));
  } catch {
    return undefined;
  }
}

function inUse(folder: string, { name, holder }: Other, self: Holder): FolderInUseError {
  const where = holder.port === undefined ? '' : `, at http://127.0.0.1:${holder.port}`;
  const machine = holder.machine === self.machine ? '' : ` on the machine ${holder.host}`;
  const since = holder.since.slice(0, 16).replace('T', ' ');
  const way =
    holder.machine !== self.machine
      ? 'Stop that one first; if it is gone already, wait half a minute and start again.'
      : holder.started === undefined
        ? `Use that one, or stop it first; if that process is another program, delete ${name} in the folder.`
        : 'Use that one, or stop it first.';
  return new FolderInUseError(
    `The folder ${folder} is in use: Snackstop is already running there${machine} (process ${holder.pid}${where}, since ${since} UTC). ${way}`,
    { pid: holder.pid, port: holder.port, host: holder.host },
  );
}
