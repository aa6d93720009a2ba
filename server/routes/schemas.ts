/**
 * What the HTTP interface answers, as Zod schemas: the OpenAPI description and the web client's types both come from
 * here. What is kept (dogs, people, settings, entries) is taken from the model and the grammar, never defined again.
 */
import { z } from '@hono/zod-openapi';
import {
  contextSchema as grammarContextSchema,
  entrySchema as grammarEntrySchema,
  placeSchema,
} from '../../grammar/entry.ts';
import {
  dogSchema as keptDogSchema,
  personSchema as keptPersonSchema,
  reviewedEntrySchema as keptReviewedEntrySchema,
  settingsSchema as keptSettingsSchema,
  reviewActSchema,
} from '../model.ts';

/**
 * A schema from elsewhere under a name of its own in the description. Called by way of the prototype: a schema made
 * before the OpenAPI package was loaded does not have the method.
 */
const named = <T extends z.ZodType>(schema: T, name: string): T => z.ZodType.prototype.openapi.call(schema, name) as T;

/** Every error has this one shape; `message` is a sentence for a person, `kept` says what was kept all the same. */
export const errorSchema = z
  .object({
    error: z.object({
      code: z.enum([
        'bad-input',
        'not-found',
        'conflict',
        'too-large',
        'wrong-type',
        'foreign-host',
        'foreign-origin',
        'not-kept',
        'broken',
      ]),
      message: z.string(),
      kept: z.string().optional(),
    }),
  })
  .openapi('Error');
export type ErrorAnswer = z.infer<typeof errorSchema>;
export type ErrorCode = ErrorAnswer['error']['code'];

export const entrySchema = named(grammarEntrySchema, 'Entry');
export const reviewedEntrySchema = keptReviewedEntrySchema
  .extend({ entry: entrySchema, was: entrySchema.optional() })
  .openapi('ReviewedEntry');
export const dogSchema = named(keptDogSchema, 'Dog');
export const personSchema = named(keptPersonSchema, 'Person');
export const settingsSchema = named(keptSettingsSchema, 'Settings');
export const contextSchema = grammarContextSchema
  .extend({ lineup: z.array(named(placeSchema, 'Place')).default([]) })
  .openapi('Context');

export const seasonNameSchema = z
  .string()
  .regex(/^\d{4}-\d{2}$/, { error: 'a season is named like 2026-27', abort: true })
  .refine(
    (name) => (Number(name.slice(0, 4)) + 1) % 100 === Number(name.slice(5)),
    'a season is named by two years that follow each other, like 2026-27',
  );
export const daySchema = z.iso.date('a day is YYYY-MM-DD, like 2027-01-14');
export const instantSchema = z.iso.datetime({
  offset: true,
  error: 'a time is ISO 8601 with its offset, like 2027-01-14T10:40:00-09:00',
});

/** `waiting`: at least one entry is proposed, or nothing was read and nobody has looked. `aside` goes before both. */
export const noteStateSchema = z.enum(['waiting', 'reviewed', 'aside']);
export type NoteState = z.infer<typeof noteStateSchema>;

/** A note as the pages see it. Dogs in its entries are called by the names they have now. */
export const noteViewSchema = z
  .object({
    id: z.uuid(),
    text: z.string(),
    at: z.string(),
    by: z.string().optional(),
    source: z.enum(['typed', 'dictated', 'recording', 'import']).optional(),
    received: z.string(),
    aside: z.boolean(),
    state: noteStateSchema,
    entries: z.array(reviewedEntrySchema),
    unknownNames: z.array(z.object({ name: z.string(), span: z.tuple([z.number().int(), z.number().int()]) })),
    canUndo: z.boolean(),
    /** The act that undo would take back. */
    lastAct: reviewActSchema.shape.act.optional(),
    /** Id of the run that holds the note. */
    run: z.string().optional(),
    /** Something odd about the note itself (its date, say), as a sentence. */
    warning: z.string().optional(),
  })
  .openapi('Note');
export type NoteView = z.infer<typeof noteViewSchema>;

/** What became of one note that was sent. Answers stand in the order in which the notes were sent. */
export const keptNoteSchema = z
  .object({
    /** As it was sent; null when there was none that could be read. */
    id: z.string().nullable(),
    kept: z.enum(['new', 'already', 'no']),
    /** Proposed entries (for a note kept already: its entries as they stand). */
    entries: z.array(entrySchema).optional(),
    unknownNames: noteViewSchema.shape.unknownNames.optional(),
    /** Why the note was not taken. */
    error: z.string().optional(),
    /** Only with `no`. 400: the note itself is at fault. 409: another text has this id. 503: try again later. */
    status: z.union([z.literal(400), z.literal(409), z.literal(503)]).optional(),
    /** The note was kept, but something about it is odd. */
    warning: z.string().optional(),
  })
  .openapi('KeptNote');
export type KeptNote = z.infer<typeof keptNoteSchema>;

/** One act of review. */
export const reviewRequestSchema = z
  .discriminatedUnion('act', [
    z.strictObject({ act: z.literal('accept'), entry: z.uuid() }),
    z.strictObject({ act: z.literal('accept-all') }),
    z.strictObject({ act: z.literal('change'), entry: z.uuid(), to: entrySchema }),
    z.strictObject({ act: z.literal('remove'), entry: z.uuid() }),
    z.strictObject({ act: z.literal('add'), to: entrySchema }),
    z.strictObject({ act: z.literal('set-aside'), aside: z.boolean() }),
    z.strictObject({ act: z.literal('undo') }),
  ])
  .openapi('ReviewAct');
export type ReviewRequest = z.infer<typeof reviewRequestSchema>;

/** A form of a name that was corrected to the same dog twice; adding it to the dog's `heard` makes it learned. */
export const offerSchema = z.object({ heard: z.string(), dog: z.string(), dogId: z.uuid() }).openapi('Offer');
export type Offer = z.infer<typeof offerSchema>;

export const reviewAnswerSchema = z.object({
  note: noteViewSchema,
  /** Ids of the day's later notes that nobody has reviewed and that read differently with the line-up as it is now. */
  reread: z.array(z.uuid()),
  offer: offerSchema.optional(),
});

export const statusSchema = z
  .object({
    version: z.string(),
    /** The season shown. */
    season: seasonNameSchema,
    seasons: z.array(z.string()),
    /** Local day of the machine, YYYY-MM-DD. */
    today: z.string(),
    /** Notes of the shown season that wait for review, and those of the other seasons. */
    waiting: z.number().int(),
    waitingElsewhere: z.array(z.object({ season: z.string(), waiting: z.number().int() })),
    /** Sentences about files set aside and earlier copies used; a banner on every page shows them. */
    warnings: z.array(z.string()),
    units: z.enum(['imperial', 'metric']),
    kennel: z.string(),
    /** Where the notes are kept on this machine. */
    folder: z.string(),
  })
  .openapi('Status');

/** What an import made of a text. Lines count from 1 in the text that was sent. */
export const importReportSchema = z
  .object({
    /** Notes found in the text. */
    found: z.number().int(),
    taken: z.number().int(),
    already: z.number().int(),
    refused: z.array(z.object({ text: z.string(), at: z.string(), says: z.string() })),
    problems: z.array(z.object({ line: z.number().int(), text: z.string(), says: z.string() })),
    warnings: z.array(z.string()),
  })
  .openapi('ImportReport');

export type Status = z.infer<typeof statusSchema>;
export type ImportReport = z.infer<typeof importReportSchema>;
export type ReviewAnswer = z.infer<typeof reviewAnswerSchema>;
