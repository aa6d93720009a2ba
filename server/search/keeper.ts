/**
 * The index, kept beside the store: built in the background a few milliseconds at a time, and brought up to date by
 * comparing seasons and notes by identity, for what has not changed keeps it. It can be thrown away at any time.
 */
import { setImmediate } from 'node:timers/promises';
import type { Note, Season } from '../model.ts';
import { FullText } from './fulltext.ts';
import { Postings } from './postings.ts';

/** Longest work in one go, in milliseconds; whoever waits for an answer meanwhile gets it then. */
const SLICE_MS = 8;
/** Up to so many changed notes are taken in at once, on the way of a search. */
const AT_ONCE = 100;

/** What the keeper reads: a part of the store. */
export interface Seasons {
  seasonNames(): string[];
  season(name: string): Season;
}

interface Kept {
  season: Season;
  ids: Set<string>;
  waiting: Map<string, Note>;
}

export class IndexKeeper {
  readonly #seasons: Seasons;
  postings = new Postings();
  words = new FullText();
  #kept = new Map<string, Kept>();
  #gone: string[] = [];
  #building: Promise<void> | undefined;
  #closed = false;

  constructor(seasons: Seasons) {
    this.#seasons = seasons;
  }

  /** How many notes the index holds, and how many there are. */
  get progress(): { notes: number; of: number } {
    let of = this.postings.size;
    for (const { waiting } of this.#kept.values()) for (const id of waiting.keys()) if (!this.postings.get(id)) of++;
    return { notes: this.postings.size, of };
  }

  /** Nothing is left to take in, as of the last look at the store. */
  get upToDate(): boolean {
    return this.#waiting === 0;
  }

  /** Takes in what has changed: a little at once, more in the background. */
  sync(): void {
    this.#compare();
    if (this.#waiting > 0 && this.#waiting <= AT_ONCE) this.#work(Number.POSITIVE_INFINITY);
    if (this.#waiting > 0) void this.#build();
  }

  /** Resolves when everything is taken in, or after `ms` at the latest. Rejects never. */
  async ready(ms = Number.POSITIVE_INFINITY): Promise<void> {
    this.sync();
    const until = performance.now() + ms;
    while (!this.upToDate && !this.#closed && performance.now() < until) await setImmediate();
  }

  /** Throws the index away; the next search builds it anew. */
  clear(): void {
    this.postings = new Postings();
    this.words = new FullText();
    this.#kept = new Map();
    this.#gone = [];
  }

  /** No more work in the background. */
  close(): void {
    this.#closed = true;
  }

  get #waiting(): number {
    let n = this.#gone.length;
    for (const { waiting } of this.#kept.values()) n += waiting.size;
    return n;
  }

  #compare(): void {
    for (const name of this.#seasons.seasonNames()) {
      const season = this.#seasons.season(name);
      const before = this.#kept.get(name);
      if (before?.season === season) continue;
      const ids = new Set<string>();
      const waiting = new Map<string, Note>();
      for (const note of season.notes) {
        ids.add(note.id);
        if (this.postings.get(note.id)?.note !== note) waiting.set(note.id, note);
      }
      for (const id of before?.ids ?? []) if (!ids.has(id)) this.#gone.push(id);
      this.#kept.set(name, { season, ids, waiting });
    }
  }

  async #build(): Promise<void> {
    if (this.#building) return this.#building;
    this.#building = (async () => {
      while (this.#waiting > 0 && !this.#closed) {
        this.#work(SLICE_MS);
        // Not for the index alone does the program stay up.
        await setImmediate(undefined, { ref: false });
      }
    })().finally(() => {
      this.#building = undefined;
    });
    return this.#building;
  }

  /** Takes notes in until there are none or the time is over. */
  #work(ms: number): void {
    const until = performance.now() + ms;
    for (let id = this.#gone.pop(); id !== undefined; id = this.#gone.pop()) {
      const old = this.postings.get(id);
      if (old) this.words.remove(old.note);
      this.postings.drop(id);
      if (performance.now() > until) return;
    }
    for (const [name, { waiting }] of this.#kept) {
      for (const [id, note] of waiting) {
        waiting.delete(id);
        const old = this.postings.get(id)?.note;
        // Review changes entries; the words stay, and with them their index.
        if (old?.text !== note.text) {
          if (old) this.words.remove(old);
          this.words.add(note);
        }
        this.postings.put(note, name);
        if (performance.now() > until) return;
      }
    }
  }
}
