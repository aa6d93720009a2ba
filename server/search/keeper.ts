/**
 * The index, kept beside the store: built in the background a few milliseconds at a time, and brought up to date by
 * comparing seasons and notes by identity, for what has not changed keeps it. It can be thrown away at any time.
 */
import { setImmediate } from 'node:timers/promises';
import type { Note, Season } from '../model.ts';
import { FullText } from './fulltext.ts';
import { Postings } from './postings.ts';

/** Longest work in one go, in milliseconds; whoever waits for an answer meanwhile gets it then. V8 tidies up in between. */
const SLICE_MS = 4;
/** Up to so many changed notes are taken in at once, on the way of a search. */
const AT_ONCE = 100;

/** What the keeper reads: a part of the store. */
export interface Seasons {
  seasonNames(): string[];
  season(name: string): Season;
}

interface Kept {
  season: Season;
  /** Notes to be taken in, the next one last: taken off the end, so that none is gone through twice. */
  waiting: Note[];
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
    let of = 0;
    for (const name of this.#seasons.seasonNames()) of += this.#seasons.season(name).notes.length;
    return { notes: this.postings.size, of };
  }

  /** Everything that is kept is in the index. */
  get upToDate(): boolean {
    return this.#waiting === 0 && this.#changed().length === 0;
  }

  /** Takes in what has changed: a little at once, more in the background. */
  sync(): void {
    const changed = this.#changed();
    // A review changes one season; more than one at once are looked through in the background.
    if (changed.length === 1) this.#compare(changed[0] as string);
    if (changed.length < 2 && this.#waiting > 0 && this.#waiting <= AT_ONCE) this.#work(Number.POSITIVE_INFINITY);
    if (!this.upToDate) void this.#build();
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
    for (const { waiting } of this.#kept.values()) n += waiting.length;
    return n;
  }

  /** Seasons that are other objects than when they were looked through last. */
  #changed(): string[] {
    return this.#seasons.seasonNames().filter((name) => this.#kept.get(name)?.season !== this.#seasons.season(name));
  }

  /** What of a season is other than in the index. */
  #compare(name: string): void {
    const season = this.#seasons.season(name);
    const before = this.#kept.get(name)?.season.notes ?? [];
    const isNew = (note: Note) => this.postings.get(note.id)?.note !== note;
    // Of a season that is looked through for the first time every note is new; asking for each would hold others up.
    const waiting = before.length === 0 ? [...season.notes] : season.notes.filter(isNew);
    if (before.some((note, i) => note.id !== season.notes[i]?.id)) {
      const ids = new Set(season.notes.map((note) => note.id));
      for (const { id } of before) if (!ids.has(id)) this.#gone.push(id);
    }
    this.#kept.set(name, { season, waiting: waiting.reverse() });
  }

  async #build(): Promise<void> {
    if (this.#building) return this.#building;
    this.#building = (async () => {
      while (!this.upToDate && !this.#closed) {
        const [name] = this.#waiting === 0 ? this.#changed() : [];
        if (name) this.#compare(name);
        else this.#work(SLICE_MS);
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
      for (let note = waiting.pop(); note !== undefined; note = waiting.pop()) {
        const old = this.postings.get(note.id)?.note;
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
