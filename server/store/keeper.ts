/**
 * One file's state and the changes to it, kept in groups: changes apply in memory at once, in their order, each to what
 * the one before it made; while a flush is under way the next ones gather, and the next flush takes them all.
 *
 * What others read is always the state that is on the disk; only change functions see what is still on its way, so that
 * of two changes made at the same moment the second knows of the first. A change is acknowledged after the flush that
 * holds it. Where a flush fails, its changes and those that built on them are rejected, and the state is again the one
 * that is on the disk.
 */
import type { Low } from 'lowdb';
import type { Kept } from './codec.ts';

interface Waiting {
  keep(): void;
  reject(error: unknown): void;
}

export interface KeeperHooks<S> {
  /** Before a change counts; throws where it breaks a rule. */
  check(before: S, after: S): void;
  flushed(before: S, after: S): void;
  /** The changes since the last flush are taken back. */
  dropped(): void;
}

export class Keeper<S extends object> {
  /** What is on the disk. */
  #flushed: Kept<S>;
  /** What is to be. */
  #pending: Kept<S>;
  /** Changes since the flush under way began. */
  #waiting: Waiting[] = [];
  /** Changes in the flush under way. */
  #going: Waiting[] = [];
  #working?: Promise<void>;

  constructor(
    private readonly low: Low<Kept<S>>,
    private readonly hooks: KeeperHooks<S>,
  ) {
    this.#flushed = low.data;
    this.#pending = low.data;
  }

  /** The state that is on the disk. */
  get state(): S {
    return this.#flushed.state;
  }

  /**
   * Resolves after the flush that holds the change. A change function that throws, or makes what breaks a rule, changes
   * nothing. `failed` makes the error for a flush that failed.
   */
  change<T>(change: (state: S) => [S, T], failed: (cause: unknown) => Error): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      const before = this.#pending.state;
      const [after, answer] = change(before);
      const waiting: Waiting = { keep: () => resolve(answer), reject: (cause) => reject(failed(cause)) };
      if (after !== before) {
        this.hooks.check(before, after);
        this.#pending = { state: after };
        this.#waiting.push(waiting);
        this.#working ??= this.#work();
      } else if (this.#waiting.length > 0) {
        // It found what it wanted in changes that are not on the disk yet: it is true when they are.
        this.#waiting.push(waiting);
      } else if (this.#working) {
        this.#going.push(waiting);
      } else {
        waiting.keep();
      }
    });
  }

  /** Resolves when nothing is on its way any more. */
  async idle(): Promise<void> {
    await this.#working;
  }

  async #work(): Promise<void> {
    // Requests that came in together get their changes in before the first flush.
    await new Promise(setImmediate);
    while (this.#waiting.length > 0) {
      this.#going = this.#waiting;
      this.#waiting = [];
      const before = this.#flushed;
      const target = this.#pending;
      try {
        this.low.data = target;
        await this.low.write();
      } catch (error) {
        this.#takeBack(error);
        continue;
      }
      this.#flushed = target;
      this.hooks.flushed(before.state, target.state);
      const kept = this.#going;
      this.#going = [];
      for (const { keep } of kept) keep();
    }
    this.#working = undefined;
  }

  #takeBack(error: unknown): void {
    this.low.data = this.#flushed;
    this.#pending = this.#flushed;
    this.hooks.dropped();
    const lost = [...this.#going, ...this.#waiting];
    this.#going = [];
    this.#waiting = [];
    for (const { reject } of lost) reject(error);
  }
}
