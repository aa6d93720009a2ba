/** Export, restore and the printed pages: what the calls take and answer. */
import { createRoute, z } from '@hono/zod-openapi';
import { sheetSchema, summarySchema } from '../report/schema.ts';
import { badInput, conflict, idParam, json, notFound, tooLarge, writing } from './answers.ts';
import { daySchema, seasonNameSchema } from './schemas.ts';

const binary = (type: string, description: string) => ({
  description,
  content: { [type]: { schema: z.string().openapi({ format: 'binary' }) } },
});
const ZIP = 'application/zip';
export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export const getExport = createRoute({
  method: 'get',
  path: '/export',
  summary: 'What there is to export, and whether a copy can be restored here',
  responses: {
    200: json(
      z.object({
        season: z.string(),
        seasons: z.array(z.object({ season: z.string(), notes: z.number().int() })),
        /** Nothing is kept yet: a whole store can be restored. */
        empty: z.boolean(),
      }),
      'Seasons with their notes',
    ),
  },
});
export const getSeasonZip = createRoute({
  method: 'get',
  path: '/export/season.zip',
  summary: 'A season, or every one, as CSV files with their description (a Frictionless Data Package) in a ZIP',
  request: { query: z.object({ season: z.union([seasonNameSchema, z.literal('all')]).optional() }) },
  responses: { 200: binary(ZIP, 'The archive'), ...badInput, ...notFound },
});
export const getSeasonXlsx = createRoute({
  method: 'get',
  path: '/export/season.xlsx',
  summary: 'A season as a spreadsheet',
  request: { query: z.object({ season: seasonNameSchema.optional() }) },
  responses: { 200: binary(XLSX, 'The spreadsheet'), ...badInput, ...notFound },
});
export const getStoreZip = createRoute({
  method: 'get',
  path: '/export/store.zip',
  summary: 'The whole store, byte for byte, to keep and to restore from',
  responses: { 200: binary(ZIP, 'The archive') },
});
export const postRestore = createRoute({
  method: 'post',
  path: '/restore',
  summary: 'Restore a whole store from its ZIP; only where nothing is kept yet',
  request: { body: { required: true, content: { [ZIP]: { schema: z.string().openapi({ format: 'binary' }) } } } },
  responses: {
    200: json(
      z.object({
        files: z.number().int(),
        seasons: z.array(z.string()),
        notes: z.number().int(),
        dogs: z.number().int(),
      }),
      'What is there now',
    ),
    ...writing,
    ...tooLarge,
    ...conflict,
  },
});
export const getSheet = createRoute({
  method: 'get',
  path: '/dogs/{id}/sheet',
  summary: 'A dog’s health sheet, for a veterinarian',
  request: {
    params: idParam('The dog'),
    query: z.object({ season: seasonNameSchema.optional(), on: daySchema.optional() }),
  },
  responses: {
    200: json(z.object({ sheet: sheetSchema.extend({}).openapi('Sheet') }), 'The sheet'),
    ...badInput,
    ...notFound,
  },
});
export const getSummary = createRoute({
  method: 'get',
  path: '/summary',
  summary: 'A season at a glance',
  request: { query: z.object({ season: seasonNameSchema.optional(), on: daySchema.optional() }) },
  responses: {
    200: json(z.object({ summary: summarySchema.extend({}).openapi('Summary') }), 'The summary'),
    ...badInput,
  },
});
