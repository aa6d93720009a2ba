/** Where each note is, and the rules that hold for notes over all seasons. */
import { type Note, noteSchema, runChoicesSchema, type Season } from '../model.ts';
import { diffNotes } from './diff.ts';
import { ChangeRefusedError } from './errors.ts';

/** UUIDs differ in letters' case only by the way they are written (RFC 9562, section 4). */
const keyOf = (id: string) => id.toLowerCase();

export class NoteIndex {
  /** Season of each note that is on the disk. */
  readonly #seasons = new Map<string, string>();
  /** Season of each note that is on its way to the disk. */
  readonly #coming = new Map<string, string>();
  /** The notes of each season that has been asked for. */
  readonly #notes = new Map<string, Map<string, Note>>();

  /** A season as it was read. @returns ids that are there twice, or in another season as well. */
  add(season: string, ids: readonly string[]): string[] {
    const twice: string[] = [];
    for (const id of ids) {
      const key = keyOf(id);
      if (this.#seasons.has(key)) twice.push(id);
      else this.#seasons.set(key, season);
    }
    return twice;
  }

  seasonOf(id: string): string | undefined {
    return this.#seasons.get(keyOf(id));
  }

  noteOf(id: string, season: Season): Note | undefined {
    let notes = this.#notes.get(season.season);
    if (!notes) {
      // Backwards: of two notes with one id the first is the one that counts.
      notes = new Map(season.notes.toReversed().map((note) => [keyOf(note.id), note]));
      this.#notes.set(season.season, notes);
    }
    return notes.get(keyOf(id));
  }

  /**
   * Whether a change keeps the rules: the shape; a note's words and time never change; a note never goes; an id is there
   * once in all seasons. Notes that came through are frozen, because they are not looked at again.
   * @throws ChangeRefusedError
   */
  check(name: string, before: Season, after: Season): void {
    if (after.season !== name) throw new ChangeRefusedError(`the season ${name} can't become ${after.season}`);
    if (after.runs !== before.runs) refuse(`choices of runs of ${name}`, runChoicesSchema.safeParse(after.runs));
    const { fresh, gone } = diffNotes(before.notes, after.notes);
    const replaced = new Map(gone.map((note) => [keyOf(note.id), note]));
    const added = new Set<string>();
    for (const note of fresh) {
      refuse(`note ${note.id}`, noteSchema.safeParse(note));
      const key = keyOf(note.id);
      const old = replaced.get(key);
      replaced.delete(key);
      if (old) {
        if (old.text !== note.text || old.at !== note.at || old.id !== note.id)
          throw new ChangeRefusedError(`note ${note.id} was said once; its words and its time do not change`);
      } else {
        const there = this.#seasons.get(key) ?? this.#coming.get(key) ?? (added.has(key) ? name : undefined);
        if (there) throw new ChangeRefusedError(`there is a note ${note.id} already, in the season ${there}`);
        added.add(key);
      }
    }
    const [lost] = replaced.values();
    if (lost) throw new ChangeRefusedError(`note ${lost.id} can be put aside, but not thrown away`);
    for (const note of fresh) freeze(note);
    for (const key of added) this.#coming.set(key, name);
  }

  /** What was checked is on the disk now. */
  flushed(name: string, before: Season, after: Season): void {
    const notes = this.#notes.get(name);
    for (const note of diffNotes(before.notes, after.notes).fresh) {
      const key = keyOf(note.id);
      this.#seasons.set(key, name);
      this.#coming.delete(key);
      notes?.set(key, note);
    }
    // What came after this flush began is still on its way; its ids stay in `coming`.
  }

  /** What was checked and not flushed is taken back. */
  dropped(name: string): void {
    for (const [key, season] of this.#coming) if (season === name) this.#coming.delete(key);
  }
}

function refuse(
  what: string,
  result: { success: boolean; error?: { issues: { path: PropertyKey[]; message: string }[] } },
) {
  const issue = result.error?.issues[0];
  if (!result.success) throw new ChangeRefusedError(`${what}: ${issue?.path.map(String).join('.')}: ${issue?.message}`);
}

export function freeze(value: unknown): void {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return;
  Object.freeze(value);
  for (const inner of Object.values(value)) freeze(inner);
}
