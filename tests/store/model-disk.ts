/**
 * A disk in memory that can fail at any step, and on which the power can be cut. It keeps apart what programs see and
 * what would be left after a power cut: a file's content counts from its flush on, a folder's names from the folder's
 * flush on. What was not flushed may or may not be there: each change of a name by itself, each content whole, in part,
 * or not at all. That is as little as POSIX promises (fsync, POSIX.1-2017, rationale), and less than most file systems
 * keep.
 */
import { basename, dirname } from 'node:path';
import type { FileStamp, Files } from '../../server/store/files.ts';

interface Inode {
  ino: number;
  content: Buffer;
  flushed: Buffer;
  mtimeMs: number;
}
type NameChange = Map<string, Inode | undefined>;

export type Step =
  | 'makeFolder'
  | 'list'
  | 'read'
  | 'stamp'
  | 'create'
  | 'write'
  | 'sync'
  | 'close'
  | 'rename'
  | 'link'
  | 'remove'
  | 'touch'
  | 'syncFolder';
/** Steps that change what is on the disk; the others can't break anything when a program dies at them. */
export const CHANGING: readonly Step[] = ['create', 'write', 'sync', 'rename', 'link', 'remove', 'syncFolder'];

export function systemError(code: string): NodeJS.ErrnoException {
  return Object.assign(new Error(`${code}: made by the test`), { code });
}

export class ModelDisk implements Files {
  /** Called before each step; what it throws is what the step throws. A failing `write` has written a half before. */
  before: (step: Step, name: string) => void = () => {};
  /** Lets other work go on in the middle of a step. */
  turn: () => Promise<void> = async () => {};
  readonly steps: { step: Step; name: string }[] = [];
  linksAreKnown = true;

  #names = new Map<string, Inode>();
  #flushedNames = new Map<string, Inode>();
  #changes: NameChange[] = [];
  #nextIno = 1;
  #clock = Date.parse('2020-01-14T10:40:00Z');

  constructor(readonly folder = '/kennel') {}

  /** File names and contents as programs see them. */
  contents(): Record<string, string> {
    return Object.fromEntries([...this.#names].map(([name, { content }]) => [name, content.toString()]).sort());
  }

  /** Puts a file there as another program would, flushed. */
  put(name: string, content: string | Buffer): void {
    const bytes = Buffer.from(content);
    const inode = { ino: this.#nextIno++, content: bytes, flushed: bytes, mtimeMs: this.#clock++ };
    this.#names.set(name, inode);
    this.#flushedNames.set(name, inode);
  }

  delete(name: string): void {
    this.#names.delete(name);
    this.#flushedNames.delete(name);
  }

  /** The disk as the next start finds it after the program was killed. */
  afterKill(): ModelDisk {
    const next = new ModelDisk(this.folder);
    const copies = new Map<Inode, Inode>();
    for (const [name, inode] of this.#names) {
      const copy = copies.get(inode) ?? { ...inode, flushed: inode.content };
      copies.set(inode, copy);
      next.#names.set(name, copy);
      next.#flushedNames.set(name, copy);
    }
    next.#nextIno = this.#nextIno;
    next.#clock = this.#clock;
    return next;
  }

  /** The disk as the next start finds it after a power cut; `chance` decides what of the unflushed is there. */
  afterPowerCut(chance: () => number): ModelDisk {
    const names = new Map(this.#flushedNames);
    for (const change of this.#changes) {
      if (chance() < 0.5) continue;
      for (const [name, inode] of change) {
        if (inode) names.set(name, inode);
        else names.delete(name);
      }
    }
    const next = new ModelDisk(this.folder);
    const copies = new Map<Inode, Inode>();
    for (const [name, inode] of names) {
      const copy = copies.get(inode) ?? { ...inode, content: survivor(inode, chance) };
      copy.flushed = copy.content;
      copies.set(inode, copy);
      next.#names.set(name, copy);
      next.#flushedNames.set(name, copy);
    }
    next.#nextIno = this.#nextIno;
    next.#clock = this.#clock;
    return next;
  }

  async makeFolder(): Promise<void> {
    await this.#step('makeFolder', this.folder);
  }

  async list(): Promise<string[]> {
    await this.#step('list', this.folder);
    return [...this.#names.keys()];
  }

  async read(path: string): Promise<Buffer | undefined> {
    const name = await this.#step('read', path);
    const inode = this.#names.get(name);
    return inode && Buffer.from(inode.content);
  }

  async stamp(path: string): Promise<FileStamp | undefined> {
    const name = await this.#step('stamp', path);
    const inode = this.#names.get(name);
    return inode && { ino: inode.ino, size: inode.content.length, mtimeMs: inode.mtimeMs };
  }

  async create(path: string) {
    const name = await this.#step('create', path);
    const inode: Inode = this.#names.get(name) ?? {
      ino: this.#nextIno++,
      content: Buffer.alloc(0),
      flushed: Buffer.alloc(0),
      mtimeMs: 0,
    };
    inode.content = Buffer.alloc(0);
    inode.mtimeMs = this.#clock++;
    this.#rename(new Map([[name, inode]]));
    const add = (bytes: Uint8Array) => {
      inode.content = Buffer.concat([inode.content, bytes]);
      inode.mtimeMs = this.#clock++;
    };
    return {
      write: async (bytes: Uint8Array) => {
        try {
          await this.#step('write', path);
        } catch (error) {
          add(bytes.subarray(0, bytes.length / 2));
          throw error;
        }
        add(bytes);
      },
      sync: async () => {
        await this.#step('sync', path);
        inode.flushed = inode.content;
      },
      close: async () => {
        await this.#step('close', path);
      },
    };
  }

  async rename(from: string, to: string): Promise<void> {
    const name = await this.#step('rename', to);
    const inode = this.#at(from);
    // POSIX.1-2017, rename: two names of one file: nothing is done.
    if (this.#names.get(name) === inode) return;
    this.#rename(
      new Map([
        [basename(from), undefined],
        [name, inode],
      ]),
    );
  }

  async link(from: string, to: string): Promise<void> {
    const name = await this.#step('link', to);
    if (!this.linksAreKnown) throw systemError('EPERM');
    if (this.#names.has(name)) throw systemError('EEXIST');
    this.#rename(new Map([[name, this.#at(from)]]));
  }

  async remove(path: string): Promise<void> {
    const name = await this.#step('remove', path);
    if (this.#names.has(name)) this.#rename(new Map([[name, undefined]]));
  }

  async touch(path: string): Promise<void> {
    await this.#step('touch', path);
    this.#at(path).mtimeMs = Date.now();
  }

  async syncFolder(folder: string): Promise<void> {
    await this.#step('syncFolder', folder);
    this.#flushedNames = new Map(this.#names);
    this.#changes = [];
  }

  #at(path: string): Inode {
    const inode = this.#names.get(basename(path));
    if (!inode) throw systemError('ENOENT');
    return inode;
  }

  #rename(change: NameChange): void {
    for (const [name, inode] of change) {
      if (inode) this.#names.set(name, inode);
      else this.#names.delete(name);
    }
    this.#changes.push(change);
  }

  async #step(step: Step, path: string): Promise<string> {
    if (dirname(path) !== this.folder && path !== this.folder) throw new Error(`outside the folder: ${path}`);
    const name = basename(path);
    await this.turn();
    this.before(step, name);
    this.steps.push({ step, name });
    return name;
  }
}

function survivor(inode: Inode, chance: () => number): Buffer {
  if (inode.content === inode.flushed) return inode.content;
  const fate = chance();
  if (fate < 0.3) return inode.flushed;
  if (fate < 0.6) return inode.content;
  return inode.content.subarray(0, Math.floor(inode.content.length * chance()));
}
