/**
 * A season's file as bytes, made again after each change without making everything again. A note's line is kept as long
 * as the note itself (notes are immutable, so an unchanged note is the same object), and what stands before the first
 * changed note stays in place in one buffer, together with its checksum.
 */
import { crc32 } from 'node:zlib';
import type { Note, Season } from '../model.ts';
import { head, type SealedSeason, sealedLine } from './layout.ts';

const SEPARATOR = Buffer.from(',\n');

export class SeasonImage {
  readonly #shape: string;
  /** Lines of notes that were written or read before. */
  readonly #lines = new WeakMap<Note, Uint8Array>();
  #buffer = Buffer.alloc(0);
  /** What the buffer holds: the notes, and behind each of them the length and the checksum of the lines so far. */
  #notes: readonly Note[] = [];
  #ends: number[] = [];
  #sums: number[] = [];
  #sealed?: { file: SealedSeason; notes: readonly Note[] };

  constructor(shape: string) {
    this.#shape = shape;
  }

  /** Takes the lines of a file that was read, so that its notes need not be made into text again. */
  adopt(file: SealedSeason, notes: readonly Note[]): void {
    this.#sealed = { file, notes };
  }

  /** The whole file. The bytes are good until the next call. */
  bytes(season: Season): Uint8Array {
    this.#openSealed();
    const { schema: _, season: name, notes, ...rest } = season;
    const opening = Buffer.from(`${head(this.#shape, 0, name)}"notes":[\n`);
    const same = this.#sameNotes(notes);
    // Nothing holds good while it is being made, in case that fails half-way.
    this.#notes = [];
    this.#ends.length = same;
    this.#sums.length = same;
    const body = opening.indexOf('\n') + 1;
    let at = this.#ends[same - 1] ?? opening.length;
    let sum = this.#sums[same - 1] ?? crc32(opening.subarray(body));
    if (same === 0) {
      this.#room(opening.length, 0);
      this.#buffer.set(opening);
    }
    for (let i = same; i < notes.length; i++) {
      const line = this.#line(notes[i] as Note);
      const from = at;
      this.#room(at + line.length + SEPARATOR.length, at);
      if (i > 0) {
        this.#buffer.set(SEPARATOR, at);
        at += SEPARATOR.length;
      }
      this.#buffer.set(line, at);
      at += line.length;
      sum = crc32(this.#buffer.subarray(from, at), sum);
      this.#ends.push(at);
      this.#sums.push(sum);
    }
    this.#notes = notes;
    const closing = Buffer.from(closingOf(notes.length > 0, rest));
    this.#room(at + closing.length, at);
    this.#buffer.set(closing, at);
    this.#buffer.write(head(this.#shape, crc32(closing, sum), name), 0, 'latin1');
    return this.#buffer.subarray(0, at + closing.length);
  }

  #line(note: Note): Uint8Array {
    const kept = this.#lines.get(note);
    if (kept) return kept;
    // The id first: a reader finds it there without taking the line apart.
    const { id, ...rest } = note;
    const line = Buffer.from(JSON.stringify({ id, ...rest }));
    this.#lines.set(note, line);
    return line;
  }

  #openSealed(): void {
    if (!this.#sealed) return;
    const { file, notes } = this.#sealed;
    this.#sealed = undefined;
    for (const [i, note] of notes.entries()) this.#lines.set(note, sealedLine(file, i));
  }

  /** How many notes at the start are the ones the buffer holds already. */
  #sameNotes(notes: readonly Note[]): number {
    let same = 0;
    while (same < notes.length && same < this.#notes.length && notes[same] === this.#notes[same]) same++;
    return same;
  }

  /** Makes the buffer large enough, keeping what it holds up to `used`. */
  #room(length: number, used: number): void {
    if (length <= this.#buffer.length) return;
    const larger = Buffer.allocUnsafeSlow(Math.ceil(length * 1.25) + 65_536);
    this.#buffer.copy(larger, 0, 0, used);
    this.#buffer = larger;
  }
}

/** What stands behind the notes: each other part on a line of its own, and of the runs each kind of choice. */
function closingOf(notes: boolean, rest: Omit<Season, 'schema' | 'season' | 'notes'>): string {
  const parts = Object.entries(rest).map(([key, value]) => {
    const inner = Object.entries(value).map(([k, v]) => `${JSON.stringify(k)}:${JSON.stringify(v)}`);
    return `,\n${JSON.stringify(key)}:{\n${inner.join(',\n')}\n}`;
  });
  return `${notes ? '\n' : ''}]${parts.join('')}}\n`;
}
