/** Settings, status, the grammar's context, import: what the calls take and answer. */
import { createRoute, z } from '@hono/zod-openapi';
import { settingsSchema as keptSettingsSchema } from '../model.ts';
import { badInput, body, json, writing } from './answers.ts';
import {
  contextSchema,
  importReportSchema,
  instantSchema,
  seasonNameSchema,
  settingsSchema,
  statusSchema,
} from './schemas.ts';

export const getStatus = createRoute({
  method: 'get',
  path: '/status',
  summary: 'Season, notes that wait, warnings',
  responses: { 200: json(statusSchema, 'The status') },
});

export const getSettings = createRoute({
  method: 'get',
  path: '/settings',
  summary: 'Settings of the kennel',
  responses: { 200: json(z.object({ settings: settingsSchema }), 'The settings') },
});
export const putSettings = createRoute({
  method: 'put',
  path: '/settings',
  summary: 'Set the settings; what is left out takes its default',
  request: { body: body(z.strictObject({ ...keptSettingsSchema.shape, season: seasonNameSchema.optional() })) },
  responses: {
    200: json(z.object({ settings: settingsSchema, reread: z.number().int() }), 'The settings as they stand now'),
    ...writing,
  },
});

export const getContext = createRoute({
  method: 'get',
  path: '/context',
  summary: 'What the grammar is told beside the text, for reading in the browser',
  request: {
    query: z.object({
      /** The time of speaking; now when left out. */
      at: instantSchema.optional(),
      /** The person who speaks. */
      by: z.string().trim().min(1).max(60).optional(),
    }),
  },
  responses: { 200: json(z.object({ context: contextSchema }), 'The context'), ...badInput },
});

export const postImport = createRoute({
  method: 'post',
  path: '/import',
  summary: 'Take in a notebook as plain text, a date and time in front of each note or in its heading',
  request: {
    query: z.object({
      /** 1: only find the notes and answer them, keep nothing. */
      dry: z.enum(['0', '1']).optional(),
    }),
    body: body(
      z.strictObject({
        text: z.string().min(1, 'there was no text in what was sent'),
        /** Name of the file, which may hold a date. */
        name: z.string().max(255).optional(),
        /** Day and time of a text that has none of its own. */
        heading: z.strictObject({ at: instantSchema.optional() }).optional(),
        /** Offset of the times in the text from UTC, like -09:00, or a time zone's name; the machine's own when left out. */
        offset: z.string().min(1).max(60).optional(),
        /** Who speaks where no note says so. */
        by: z.string().trim().min(1).max(60).optional(),
        /** Year of dates written without one, where nothing else tells it. */
        defaultYear: z.number().int().min(1900).max(9999).optional(),
      }),
    ),
  },
  responses: {
    200: json(
      z.object({
        report: importReportSchema,
        /** Only with dry=1: the notes that were found, ready to be sent to /api/notes. */
        notes: z
          .array(
            z.object({
              id: z.uuid(),
              text: z.string(),
              at: z.string(),
              by: z.string().optional(),
              source: z.enum(['typed', 'dictated', 'recording', 'import']).optional(),
            }),
          )
          .optional(),
      }),
      'What became of the text',
    ),
    ...writing,
  },
});
