/** Load: what the call takes and answers. */
import { createRoute, z } from '@hono/zod-openapi';
import { dogLoadSchema as computedDogLoadSchema, lastDaysSchema } from '../load/index.ts';
import { badInput, json } from './answers.ts';
import { daySchema, seasonNameSchema } from './schemas.ts';

/** A dog's load with who it is in the roster, and its last six weeks day by day. */
export const dogLoadSchema = computedDogLoadSchema
  .extend({ id: z.uuid(), retired: z.boolean(), days: lastDaysSchema })
  .openapi('DogLoad');

export const getLoad = createRoute({
  method: 'get',
  path: '/load',
  summary: 'The load of every dog on a day, by name; retired dogs only where they ran in that season',
  request: {
    query: z.object({
      /** Left out: today, or the last day with a run where the season is over. */
      on: daySchema.optional(),
      /** Left out: the season of `on`, or the one shown. */
      season: seasonNameSchema.optional(),
    }),
  },
  responses: {
    200: json(
      z.object({
        on: z.string(),
        season: z.string(),
        dogs: z.array(dogLoadSchema),
        /** Sentences that stand beside the figures: what they are and what they can't tell. */
        about: z.object({ ratio: z.string(), ewma: z.string(), monotony: z.string(), surfaces: z.string() }),
      }),
      'The load',
    ),
    ...badInput,
  },
});
