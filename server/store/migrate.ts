/**
 * The steps that bring a file of an earlier schema forward, in their order. A step is written once and never changed
 * again; it knows nothing of today's types, because those will have moved on. A new field with a default needs no step.
 */

/** JSON as it was read. */
export type Raw = Record<string, unknown>;

export interface Step {
  /** The schema it makes; it takes the one before. */
  to: number;
  name: string;
  kennel(file: Raw): Raw;
  season(file: Raw): Raw;
}

const list = (value: unknown): Raw[] => (Array.isArray(value) ? value : []);
const isRaw = (value: unknown): value is Raw => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Fills the fields that the earliest files did without: there was a roster and notes with entries, nothing else. */
const fillFirst: Step = {
  to: 1,
  name: 'fill what the earliest files did without',
  kennel: (file) => ({ people: [], settings: {}, learned: [], ...file, schema: 1 }),
  season: (file) => ({
    runs: {},
    ...file,
    schema: 1,
    notes: Array.isArray(file.notes) ? file.notes.map((note) => (isRaw(note) ? fillNote(note) : note)) : file.notes,
  }),
};

function fillNote(note: Raw): Raw {
  return {
    // When it came in was not kept then; the best that is known is when it was said.
    received: note.at,
    aside: false,
    unknownNames: [],
    history: [],
    ...note,
    entries: list(note.entries).map((kept) => (isRaw(kept) ? { from: 'read', state: 'proposed', ...kept } : kept)),
  };
}

export const STEPS: readonly Step[] = [fillFirst];
/** The schema this program writes. */
export const SCHEMA = STEPS.length;

/** A file of a schema that only a later program knows. */
export class NewerSchemaError extends Error {
  override readonly name = 'NewerSchemaError';
  constructor(readonly schema: number) {
    super(`it was written by a newer Snackstop (schema ${schema}; this one knows schemas up to ${SCHEMA})`);
  }
}

/**
 * Brings a file forward, step by step.
 * @returns the file, and the schema it had: 0 where it says none.
 * @throws NewerSchemaError
 */
export function migrate(
  kind: 'kennel' | 'season',
  file: Raw,
  steps: readonly Step[] = STEPS,
): { file: Raw; from: number } {
  const from = file.schema ?? 0;
  // A schema that is no number is left for the check of the shape to say.
  if (typeof from !== 'number') return { file, from: steps.length };
  if (from > steps.length) throw new NewerSchemaError(from);
  return { file: steps.filter((step) => step.to > from).reduce((at, step) => step[kind](at), file), from };
}
