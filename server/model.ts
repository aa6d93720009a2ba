/**
 * What the store keeps, as Zod schemas, and the types inferred from them. Entries are the grammar's own; nothing here
 * defines an entry again. Everything that can be computed (runs, load, episodes) is left out: it is derived.
 */
import { z } from 'zod';
import { entrySchema } from '../grammar/entry.ts';

const name = z.string().trim().min(1).max(60);
/** ISO 8601 with an offset; the offset is kept, because a run belongs to its local day. */
export const instantSchema = z.iso.datetime({ offset: true });
export const uuidSchema = z.uuid();

export const dogSchema = z.object({
  id: uuidSchema,
  /** Call name. Unique over all dogs, aliases and former names of the kennel, whatever the letter case. */
  name,
  sex: z.enum(['F', 'M']),
  aliases: z.array(name).default([]),
  /** Names the dog had before a rename; entries that were accepted under them stay the dog's. */
  formerNames: z.array(name).default([]),
  /** Forms a recogniser wrote for this name and a person confirmed. */
  heard: z.array(name).default([]),
  born: z.iso.date().optional(),
  /** A dog with entries is never deleted; it retires. */
  retired: z.boolean().default(false),
});
export const personSchema = z.object({
  id: uuidSchema,
  name,
  /** No longer offered, nor heard in new notes; what notes tell of them stays. */
  retired: z.literal(true).optional(),
});
export const settingsSchema = z.object({
  kennel: z.string().trim().max(80).default(''),
  units: z.enum(['imperial', 'metric']).default('imperial'),
  /** The season shown, e.g. 2026-27; the current one when left out. */
  season: z
    .string()
    .regex(/^\d{4}-\d{2}$/)
    .optional(),
  /** Hours of silence after which a later note of the day starts a new run. */
  runGapHours: z.number().min(0.5).max(24).default(5),
  /** Days without a word of a finding after which it counts as "not seen since". */
  silenceDays: z.number().int().min(1).max(365).default(14),
});
/** A correction a person has made, counted; the second time it is offered as a learned word. */
export const learnedSchema = z.object({ heard: name, dog: uuidSchema, times: z.number().int().positive() });

export const kennelSchema = z.object({
  schema: z.number().int(),
  dogs: z.array(dogSchema),
  people: z.array(personSchema),
  settings: settingsSchema,
  learned: z.array(learnedSchema),
});

/** A note as it comes in. The id is made where the note is made, so that sending it twice keeps one. */
export const noteInSchema = z.object({
  id: uuidSchema,
  text: z.string(),
  at: instantSchema,
  by: name.optional(),
  source: z.enum(['typed', 'dictated', 'recording', 'import']).optional(),
});

/** One entry of a note with its review. `was` is what the grammar had read, kept when a person changed it. */
export const reviewedEntrySchema = z.object({
  id: uuidSchema,
  entry: entrySchema,
  from: z.enum(['read', 'person']),
  state: z.enum(['proposed', 'accepted', 'removed']),
  was: entrySchema.optional(),
});

/** One act of review, newest last; undo takes the last one back and restores `before`. */
export const reviewActSchema = z.object({
  act: z.enum(['accept', 'accept-all', 'change', 'remove', 'add', 'set-aside']),
  at: instantSchema,
  before: z.object({ aside: z.boolean(), entries: z.array(reviewedEntrySchema) }),
});

export const noteSchema = noteInSchema.extend({
  received: instantSchema,
  /** Put away by a person: keeps its words, counts for nothing. */
  aside: z.boolean().default(false),
  entries: z.array(reviewedEntrySchema),
  /** Words in a dog's slot that the roster does not hold. */
  unknownNames: z
    .array(z.object({ name: z.string(), span: z.tuple([z.number().int(), z.number().int()]) }))
    .default([]),
  history: z.array(reviewActSchema).default([]),
});

/**
 * Choices a person made about runs. All are keyed by note ids, because runs themselves are derived.
 * `cutBefore`: this note starts a new run. `joinBefore`: this note goes on with the run before it.
 * `moved`: this note belongs to the run that holds the other note.
 */
export const runChoicesSchema = z.object({
  cutBefore: z.array(uuidSchema).default([]),
  joinBefore: z.array(uuidSchema).default([]),
  moved: z.array(z.object({ note: uuidSchema, toRunOf: uuidSchema })).default([]),
  /** A distance set by hand for the team of `driver` (left out: the musher's own) in the run that holds `note`. */
  distances: z
    .array(
      z.object({
        note: uuidSchema,
        driver: name.optional(),
        value: z.number().positive().max(10_000),
        unit: z.enum(['mi', 'km', 'm', 'ft', 'yd']),
        why: z.string().max(200).optional(),
        at: instantSchema,
      }),
    )
    .default([]),
});

export const seasonSchema = z.object({
  schema: z.number().int(),
  /** 1 July to 30 June, named 2026-27. */
  season: z.string().regex(/^\d{4}-\d{2}$/),
  notes: z.array(noteSchema),
  runs: runChoicesSchema,
});

export type Dog = z.infer<typeof dogSchema>;
export type Person = z.infer<typeof personSchema>;
export type Settings = z.infer<typeof settingsSchema>;
export type Kennel = z.infer<typeof kennelSchema>;
export type NoteIn = z.infer<typeof noteInSchema>;
export type Note = z.infer<typeof noteSchema>;
export type ReviewedEntry = z.infer<typeof reviewedEntrySchema>;
export type ReviewAct = z.infer<typeof reviewActSchema>;
export type RunChoices = z.infer<typeof runChoicesSchema>;
export type Season = z.infer<typeof seasonSchema>;

/** The season a local date falls in: `2027-01-14` → `2026-27`. */
export function seasonOf(localDate: string): string {
  const year = Number(localDate.slice(0, 4));
  const first = Number(localDate.slice(5, 7)) >= 7 ? year : year - 1;
  return `${first}-${String((first + 1) % 100).padStart(2, '0')}`;
}
