/** One dog's season: what the call takes and answers. */
import { createRoute, z } from '@hono/zod-openapi';
import { dogSeasonSchema } from '../dog/index.ts';
import { badInput, idParam, json, notFound } from './answers.ts';
import { daySchema, seasonNameSchema } from './schemas.ts';

export const getDogSeason = createRoute({
  method: 'get',
  path: '/dogs/{id}/season',
  summary: 'One dog’s season: its days and load, findings by episode and site, appetite, measures, notes',
  request: {
    params: idParam('The dog'),
    query: z.object({
      /** Left out: the season of `on`, or the one shown. */
      season: seasonNameSchema.optional(),
      /** A day of the season. Left out: today, or the last day with a run where the season is over. */
      on: daySchema.optional(),
    }),
  },
  responses: {
    200: json(
      z.object({
        story: dogSeasonSchema.extend({}).openapi('DogSeason'),
        /** Seasons of which something is kept, sorted. */
        seasons: z.array(z.string()),
        /** Sentences that stand beside the figures. */
        about: z.object({
          ratio: z.string(),
          surfaces: z.string(),
          episodes: z.string(),
          onset: z.string(),
          together: z.string(),
          cautions: z.string(),
        }),
      }),
      'The season of the dog',
    ),
    ...badInput,
    ...notFound,
  },
});
