/** Notes and their review: what the calls take and answer. */
import { createRoute, z } from '@hono/zod-openapi';
import { type NoteIn, noteInSchema } from '../model.ts';
import { badInput, body, conflict, count, idParam, json, notFound, writing } from './answers.ts';
import {
  daySchema,
  errorSchema,
  keptNoteSchema,
  noteStateSchema,
  noteViewSchema,
  reviewAnswerSchema,
  reviewRequestSchema,
  seasonNameSchema,
} from './schemas.ts';

/** Longest text of one note, in UTF-16 units. */
export const NOTE_MAX = 20_000;
/** Most notes one request may carry. */
export const NOTES_MAX = 2_000;

/**
 * A note as it is sent. Described in full, but checked one by one after the body has been taken apart: a note that
 * can't be taken must not keep the others out.
 */
const sentNoteSchema = z
  .custom<NoteIn>(() => true)
  .openapi({
    type: 'object',
    required: ['id', 'text', 'at'],
    properties: {
      id: { type: 'string', format: 'uuid', description: 'Made where the note is made; sending it twice keeps one' },
      text: { type: 'string', minLength: 1, maxLength: NOTE_MAX },
      at: { type: 'string', format: 'date-time', description: 'ISO 8601 with its offset' },
      by: { type: 'string', description: 'The person who said it' },
      source: { type: 'string', enum: noteInSchema.shape.source.unwrap().options },
    },
  });

const manyKept = z.object({ notes: z.array(keptNoteSchema) });

export const postNotes = createRoute({
  method: 'post',
  path: '/notes',
  summary: 'Take notes in',
  description:
    'Answers when every note that was taken has been flushed to disk. Idempotent by id. A note is taken or refused by ' +
    'itself: the answer is 200 as soon as one was taken or nothing but the notes themselves was at fault, 409 when ' +
    'every refusal is an id that has another text already and none was taken, 503 when none was taken because the ' +
    'disk did not take them.',
  request: {
    body: body(
      z.object({
        notes: z
          .array(sentNoteSchema)
          .min(1, 'there was no note in what was sent')
          .max(NOTES_MAX, `more than ${NOTES_MAX} notes at once; send them in parts`),
      }),
    ),
  },
  responses: {
    200: json(manyKept, 'What became of each note, in the order in which they were sent'),
    ...writing,
    409: json(manyKept.extend(errorSchema.shape), 'None was taken: their ids have other texts, which stand'),
    503: json(manyKept.extend(errorSchema.shape), 'None was taken: it could not be written to disk'),
  },
});

export const getNotes = createRoute({
  method: 'get',
  path: '/notes',
  summary: 'Notes of a season',
  request: {
    query: z.object({
      /** The season shown when left out. */
      season: seasonNameSchema.optional(),
      state: z.enum([...noteStateSchema.options, 'all']).optional(),
      /** Local day. */
      day: daySchema.optional(),
      /** Id of a run: its notes. */
      run: z.string().optional(),
      /** `time` oldest first (the default), `newest` first, `doubt` the doubtful ones first. */
      order: z.enum(['time', 'newest', 'doubt']).optional(),
      limit: count(1, 2_000).optional(),
      offset: count(0, 999_999_999).optional(),
    }),
  },
  responses: {
    200: json(z.object({ notes: z.array(noteViewSchema), total: z.number().int() }), 'The notes asked for'),
    ...badInput,
    ...notFound,
  },
});

export const getNote = createRoute({
  method: 'get',
  path: '/notes/{id}',
  summary: 'One note with its entries and their review',
  request: { params: idParam('Id of the note') },
  responses: { 200: json(z.object({ note: noteViewSchema }), 'The note'), ...notFound },
});

export const postReview = createRoute({
  method: 'post',
  path: '/notes/{id}/review',
  summary: 'One act of review',
  request: { params: idParam('Id of the note'), body: body(reviewRequestSchema) },
  responses: {
    200: json(reviewAnswerSchema, 'The note as it stands now'),
    ...writing,
    ...notFound,
    ...conflict,
  },
});
