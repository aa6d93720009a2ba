/** What keeps coming back: what the call takes and answers. */
import { createRoute, z } from '@hono/zod-openapi';
import { cautionSchema as computedCautionSchema, episodeSchema, watchSchema } from '../watch/index.ts';
import { badInput, json } from './answers.ts';
import { daySchema, seasonNameSchema } from './schemas.ts';

const dogId = z.uuid();

export const getWatch = createRoute({
  method: 'get',
  path: '/watch',
  summary: 'Findings joined into episodes, open ones first; what came before each; when to call a veterinarian',
  request: {
    query: z.object({
      /** Left out: today, or the last day with a run where the season is over. What was told later does not count. */
      on: daySchema.optional(),
      /** Left out: the season of `on`, or the one shown. Episodes that began in it, and any that are open. */
      season: seasonNameSchema.optional(),
      /** `open`: only what is open, and cautions that still stand. */
      state: z.enum(['open', 'all']).optional(),
    }),
  },
  responses: {
    200: json(
      watchSchema.extend({
        season: z.string(),
        episodes: z.array(episodeSchema.extend({ dogId })),
        /** Told in the season, or still standing. */
        cautions: z.array(computedCautionSchema.extend({ dogId })),
        /** Sentences that stand beside these: what they are and what they can't tell. */
        about: z.object({ episodes: z.string(), together: z.string(), onset: z.string(), cautions: z.string() }),
      }),
      'The watch',
    ),
    ...badInput,
  },
});
