/**
 * One dog's season, as Zod schemas; the types are inferred from them. Distances in metres, time in minutes, weight in
 * kilograms, temperature in °C, days YYYY-MM-DD, times ISO 8601 with offset.
 */
import { z } from 'zod';
import { intakeSchema, measureSchema } from '../../grammar/entry.ts';
import { dogLoadSchema, loadPointSchema } from '../load/schema.ts';
import { dogSchema } from '../model.ts';
import { cautionSchema, episodeSchema, siteSchema, togetherSchema } from '../watch/schema.ts';

/** Something told of the dog: the entry, its note, and the run it was told in. */
const told = { id: z.string(), note: z.string(), at: z.string(), day: z.string(), run: z.string().optional() };

/** Where something was found, and how often. */
export const siteCountSchema = z.object({
  site: siteSchema,
  /** Episodes somebody was sure of, and those told only as possible. */
  episodes: z.number().int().nonnegative(),
  doubtful: z.number().int().nonnegative(),
  /** Days on which it was told present or possible, each once, in order. */
  days: z.array(z.string()),
  open: z.boolean(),
});

export const appetiteSchema = z.object({
  ...told,
  ...intakeSchema.pick({ what: true, took: true, item: true, amount: true, unit: true, assertion: true }).shape,
});

export const measuredSchema = z.object({
  ...told,
  ...measureSchema.pick({ quantity: true, value: true, unit: true, assertion: true }).shape,
  /** In kg or °C; body condition and heart rate as they were said. Left out where the unit was not said. */
  inRecordUnits: z.number().optional(),
});

export const dogNoteSchema = z.object({
  id: z.string(),
  text: z.string(),
  at: z.string(),
  by: z.string().optional(),
  /** The run that holds it. */
  run: z.string().optional(),
  /** An entry of it about this dog is not reviewed yet. */
  waiting: z.boolean(),
  /** It tells of this dog only where it stood in the team. */
  placeOnly: z.boolean(),
  /** The words that entries about this dog were read from, UTF-16 units, none overlapping, in order. */
  marks: z.array(z.tuple([z.number().int(), z.number().int()])),
});

export const dogRunSchema = z.object({
  id: z.string(),
  day: z.string(),
  metres: z.number().nonnegative().optional(),
  minutes: z.number().nonnegative().optional(),
});

export const dogSeasonSchema = z.object({
  dog: dogSchema,
  season: z.string(),
  /** The day it is told for, inclusive. */
  on: z.string(),
  /** How it stood on that day. */
  load: dogLoadSchema,
  /** From the season's first day, or the dog's first run where that is later, to `on`; each elapsed day, also without a run. */
  days: z.array(loadPointSchema),
  /** Its runs of the season, oldest first. */
  runs: z.array(dogRunSchema),
  /** Begun in the season, or still seen in it; open ones first, then the one seen last. */
  episodes: z.array(episodeSchema),
  /** By site, the most episodes first. */
  sites: z.array(siteCountSchema),
  /** Told last in the season; those that still stand first. */
  cautions: z.array(cautionSchema),
  together: z.array(togetherSchema),
  /** Oldest first. */
  appetite: z.array(appetiteSchema),
  /** Oldest first. */
  measures: z.array(measuredSchema),
  /** Newest first. */
  notes: z.array(dogNoteSchema),
});

export type SiteCount = z.infer<typeof siteCountSchema>;
export type Appetite = z.infer<typeof appetiteSchema>;
export type Measured = z.infer<typeof measuredSchema>;
export type DogNote = z.infer<typeof dogNoteSchema>;
export type DogSeason = z.infer<typeof dogSeasonSchema>;
