/** What the two printed pages hold, as Zod schemas. Distances in metres, times in minutes, days YYYY-MM-DD. */
import { z } from 'zod';
import {
  careSchema,
  intakeSchema,
  leftRightSchema,
  measureSchema,
  positionSchema,
  SURFACES,
} from '../../grammar/entry.ts';
import { dogLoadSchema, sharesSchema } from '../load/schema.ts';
import { dogSchema } from '../model.ts';
import { cautionSchema, episodeSchema } from '../watch/schema.ts';

const metres = z.number().nonnegative();
/** Something told of the dog, with its day and the run it was told in. */
const told = { day: z.string(), at: z.string(), run: z.string().optional() };

export const sheetRunSchema = z.object({
  id: z.string(),
  day: z.string(),
  driver: z.string().optional(),
  metres: metres.optional(),
  minutes: z.number().nonnegative().optional(),
  position: positionSchema.optional(),
  side: leftRightSchema.optional(),
  surfaces: z.array(z.enum(SURFACES)),
  celsius: z.number().optional(),
  left: z.enum(['dropped', 'loaded']).optional(),
});

/** A dog's health sheet: records for its veterinarian, nothing concluded from them. */
export const sheetSchema = z.object({
  kennel: z.string(),
  units: z.enum(['imperial', 'metric']),
  season: z.string(),
  on: z.string(),
  dog: dogSchema,
  load: dogLoadSchema,
  /** Whole record, open ones first. */
  episodes: z.array(episodeSchema),
  cautions: z.array(cautionSchema),
  /** Of the season, oldest first. Body condition is on the nine-point chart. */
  measures: z.array(
    z.object({ ...told, ...measureSchema.pick({ quantity: true, value: true, unit: true, assertion: true }).shape }),
  ),
  /** What it did not take all of, newest first. */
  offFood: z.array(
    z.object({
      ...told,
      ...intakeSchema.pick({ what: true, took: true, item: true, amount: true, unit: true, assertion: true }).shape,
    }),
  ),
  /** How often its taking was told of in the season. */
  intakeTold: z.number().int().nonnegative(),
  care: z.array(
    z.object({
      ...told,
      ...careSchema.pick({ act: true, part: true, side: true, end: true, item: true, assertion: true }).shape,
    }),
  ),
  /** The last ones, newest first. */
  runs: z.array(sheetRunSchema),
  runsInSeason: z.number().int().nonnegative(),
  about: z.array(z.string()),
});
export type Sheet = z.infer<typeof sheetSchema>;

export const summarySchema = z.object({
  kennel: z.string(),
  units: z.enum(['imperial', 'metric']),
  season: z.string(),
  on: z.string(),
  runs: z.array(
    z.object({
      id: z.string(),
      day: z.string(),
      driver: z.string().optional(),
      metres: metres.optional(),
      minutes: z.number().nonnegative().optional(),
      dogs: z.number().int(),
      surfaces: z.array(z.enum(SURFACES)),
      celsius: z.number().optional(),
    }),
  ),
  metres,
  minutes: z.number().nonnegative(),
  days: z.number().int(),
  runsWithoutDistance: z.number().int(),
  months: z.array(z.object({ month: z.string(), runs: z.number().int(), metres, days: z.number().int() })),
  dogs: z.array(
    z.object({
      dog: z.string(),
      retired: z.boolean(),
      longest: metres,
      lastRun: z.string().optional(),
      shares: sharesSchema,
      episodes: z.number().int(),
      open: z.number().int(),
    }),
  ),
  /** Begun in the season, in the order of their first day. */
  episodes: z.array(
    episodeSchema.pick({
      id: true,
      dog: true,
      site: true,
      from: true,
      lastSeen: true,
      state: true,
      until: true,
      signs: true,
      worst: true,
      number: true,
      doubtful: true,
      sinceBefore: true,
    }),
  ),
  notes: z.object({ waiting: z.number().int(), all: z.number().int() }),
  about: z.array(z.string()),
});
export type Summary = z.infer<typeof summarySchema>;
