/** Search: what the call takes and answers. */
import { createRoute, z } from '@hono/zod-openapi';
import { AMOUNTS, querySchema, SHOWN, UNITS } from '../search/query.ts';
import { episodeSchema, siteSchema } from '../watch/schema.ts';
import { badInput, count, json } from './answers.ts';
import { daySchema, entrySchema, seasonNameSchema } from './schemas.ts';

/** Longest query, in UTF-16 units. */
export const QUERY_MAX = 300;

/** A part that may be named more than once in the address: `dog=Juniper&dog=Moss`. */
const many = <T extends z.ZodType<string, string>>(value: T) =>
  z
    .union([value, z.array(value)])
    .transform((one) => (Array.isArray(one) ? one : [one]) as z.output<T>[])
    .openapi({ type: 'array', items: { type: 'string' } });
const { shape } = querySchema;
const number = z
  .string()
  .regex(/^-?\d{1,6}(\.\d{1,4})?$/, 'a number, like 103 or -20.5')
  .transform(Number)
  .openapi({ type: 'number' });

/** The parts as they stand in an address: one name for each of `Query`'s. */
export const partsSchema = z.object({
  dog: many(z.string().min(1).max(60)).optional(),
  kind: many(shape.kinds.unwrap().element).optional(),
  part: many(shape.parts.unwrap().element).optional(),
  side: shape.side,
  end: shape.end,
  sign: many(shape.signs.unwrap().element).optional(),
  act: many(shape.acts.unwrap().element).optional(),
  state: many(shape.states.unwrap().element).optional(),
  took: many(shape.took.unwrap().element).optional(),
  what: many(shape.what.unwrap().element).optional(),
  manner: many(shape.manners.unwrap().element).optional(),
  drop: many(shape.drops.unwrap().element).optional(),
  gait: many(shape.gaits.unwrap().element).optional(),
  gear: many(shape.gear.unwrap().element).optional(),
  measured: many(shape.measured.unwrap().element).optional(),
  position: many(shape.positions.unwrap().element).optional(),
  surface: many(shape.surfaces.unwrap().element).optional(),
  condition: many(shape.conditions.unwrap().element).optional(),
  /** A number asked for: of what, at least, at most, in which unit. */
  of: z.enum(AMOUNTS).optional(),
  least: number.optional(),
  most: number.optional(),
  unit: z.enum(UNITS).optional(),
  from: daySchema.optional(),
  to: daySchema.optional(),
  season: seasonNameSchema.optional(),
  /** Id of a run. */
  run: z.string().optional(),
  /** Words to look for in the notes themselves. */
  words: z.string().max(QUERY_MAX).optional(),
  /** `so` leaves out what was told absent or over (the default), `not` gives only that, `all` both. */
  show: z.enum(SHOWN).optional(),
});
export type Parts = z.output<typeof partsSchema>;

const spanSchema = z.tuple([z.number().int(), z.number().int()]);

export const searchHitSchema = z
  .object({
    id: z.string(),
    note: z.string(),
    at: z.string(),
    day: z.string(),
    season: z.string(),
    run: z.string().optional(),
    entry: entrySchema,
    /** Waits for review: shown, but it counts for nothing yet. */
    unreviewed: z.boolean(),
    /** From the next older hit of each of its dogs to this one; the runs of neither day counted in. */
    since: z.array(
      z.object({
        dog: z.string(),
        days: z.number().int(),
        metres: z.number(),
        runs: z.number().int(),
        runsWithoutDistance: z.number().int(),
      }),
    ),
    /** The episodes it was seen in, with which time in the season that was. */
    episodes: z.array(
      z.object({
        dog: z.string(),
        id: z.string(),
        site: z.string(),
        number: z.number().int().optional(),
        first: z.boolean(),
        sinceBefore: episodeSchema.shape.sinceBefore,
      }),
    ),
  })
  .openapi('SearchHit');

export const searchNoteSchema = z
  .object({
    id: z.string(),
    text: z.string(),
    at: z.string(),
    day: z.string(),
    season: z.string(),
    by: z.string().optional(),
    run: z.string().optional(),
    aside: z.boolean(),
    marks: z.array(spanSchema),
  })
  .openapi('SearchNote');

const tallySchema = z.array(z.object({ value: z.string(), hits: z.number().int() }));

export const searchAnswerSchema = z
  .object({
    /** What was searched for, part by part, and in words. */
    query: querySchema,
    understood: z.string(),
    chips: z.array(z.object({ part: z.string(), value: z.string().optional(), label: z.string() })),
    /** Words that were read as others. */
    slips: z.array(z.object({ said: z.string(), as: z.string() })),
    /** Words that no note with all the rest has; the answer is without them. */
    leftOut: z.string().optional(),
    hits: z.array(searchHitSchema),
    hitsInAll: z.number().int(),
    notes: z.array(searchNoteSchema),
    notesInAll: z.number().int(),
    /** Entries left out because of how they were told (absent or over, or, with `show=not`, so). */
    sortedOut: z.number().int(),
    unreviewed: z.number().int(),
    dogs: tallySchema,
    seasons: tallySchema,
    /** Of the places in these hits those where something was found more than once, with every time in the season. */
    cameBack: z.array(
      z.object({
        dog: z.string(),
        season: z.string(),
        site: siteSchema,
        /** Oldest first; `found` where one of these hits is of it. */
        episodes: z.array(
          episodeSchema
            .pick({
              id: true,
              from: true,
              lastSeen: true,
              state: true,
              until: true,
              signs: true,
              number: true,
              sinceBefore: true,
            })
            .extend({ found: z.boolean() }),
        ),
      }),
    ),
    /** Notes in the index, and notes there are: fewer only while it is being built. */
    index: z.object({ notes: z.number().int(), of: z.number().int() }),
  })
  .openapi('SearchAnswer');

export const getSearch = createRoute({
  method: 'get',
  path: '/search',
  summary: 'Find entries and notes',
  description:
    'With `q` the words are read as a note would be, and what they were understood as is told in `query`; parts named beside ' +
    'it take the place of those understood. Without `q` the parts are searched for as they stand. Newest first.',
  request: {
    query: partsSchema.extend({
      q: z.string().max(QUERY_MAX, `a search of at most ${QUERY_MAX} letters`).optional(),
      limit: count(1, 500).optional(),
      offset: count(0, 999_999_999).optional(),
    }),
  },
  responses: { 200: json(searchAnswerSchema, 'What was understood and found'), ...badInput },
});
