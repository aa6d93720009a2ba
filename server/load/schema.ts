/**
 * The shape of a dog's load, as Zod schemas; the types are inferred from them. Distances in metres, time in minutes,
 * shares from 0 to 1, days YYYY-MM-DD.
 */
import { z } from 'zod';
import { leftRightSchema, positionSchema, SURFACES } from '../../grammar/entry.ts';

/**
 * Bands of air temperature, °C, `from` inclusive and `below` exclusive. Round figures for counting, with no authority:
 * no published temperature rule for dogs' work or feet was found.
 */
export const TEMPERATURE_BANDS = [
  { key: 'under -30', from: Number.NEGATIVE_INFINITY, below: -30 },
  { key: '-30 to -20', from: -30, below: -20 },
  { key: '-20 to -10', from: -20, below: -10 },
  { key: '-10 to 0', from: -10, below: 0 },
  { key: '0 and over', from: 0, below: Number.POSITIVE_INFINITY },
] as const;
const bandKeys = TEMPERATURE_BANDS.map((band) => band.key);

const metres = z.number().nonnegative();
/** `share` of the window's metres; left out where the window has none. */
export const shareSchema = z.object({ metres, share: z.number().nonnegative().optional() });

/** How a window's metres were made up. Keys that never occurred are left out; 'unknown' is what was not said. */
export const sharesSchema = z.object({
  metres,
  minutes: z.number().nonnegative(),
  runs: z.number().int().nonnegative(),
  /** Runs in which the dog's distance could not be known; they count no metres, so the sums are the least it did. */
  runsWithoutDistance: z.number().int().nonnegative(),
  byPosition: z.partialRecord(z.enum([...positionSchema.options, 'unknown']), shareSchema),
  bySide: z.partialRecord(z.enum([...leftRightSchema.options, 'unknown']), shareSchema),
  /** A run counts in full for each surface told of it, so these can add up to more than the whole. */
  bySurface: z.partialRecord(z.enum([...SURFACES, 'unknown']), shareSchema),
  /** By the mean of the run's temperatures. */
  byTemperature: z.partialRecord(z.enum([...bandKeys, 'unknown']), shareSchema),
  /** At least one bootie on; none on; nothing told of booties. */
  byBooties: z.partialRecord(z.enum(['on', 'off', 'unknown']), shareSchema),
});

export const dogLoadSchema = z.object({
  dog: z.string(),
  /** The day it is worked out for, inclusive. */
  on: z.string(),
  /** First recorded day; left out where the dog has no run yet. */
  since: z.string().optional(),
  /** Days from `since` to `on`, both counted. */
  daysOfRecord: z.number().int().nonnegative(),
  /** Less than 28 days of record: no four-week mean and no ratio. */
  tooShort: z.boolean(),
  today: metres,
  metres7: metres,
  metres28: metres,
  minutesToday: z.number().nonnegative(),
  minutes7: z.number().nonnegative(),
  minutes28: z.number().nonnegative(),
  runs7: z.number().int().nonnegative(),
  runs28: z.number().int().nonnegative(),
  /** Runs of the last 28 days without a known distance. */
  runsWithoutDistance28: z.number().int().nonnegative(),
  /** A quarter of `metres28`. */
  meanWeek28: metres.optional(),
  /** Mean of 7 days over mean of 28, rolling and coupled (the 7 are among the 28). None where the 28 are empty. */
  coupled: z.number().nonnegative().optional(),
  /** The same from exponentially weighted averages. */
  ewma: z.number().nonnegative().optional(),
  /** The two averages themselves, metres a day. */
  ewma7: metres.optional(),
  ewma28: metres.optional(),
  /** Of the last seven days; none before seven days of record and where all days were equal. */
  monotony: z.number().nonnegative().optional(),
  /** Metres: the week times monotony. */
  strain: z.number().nonnegative().optional(),
  lastRun: z.string().optional(),
  daysSinceLastRun: z.number().int().nonnegative().optional(),
  /** Days with a run, one after the other, up to `on` or the day before; and the runs on them. */
  daysInARow: z.number().int().nonnegative(),
  runsInARow: z.number().int().nonnegative(),
  /** The most days without a run since the season's first one. `open` while it still lasts. */
  longestGap: z
    .object({ days: z.number().int().positive(), from: z.string(), to: z.string(), open: z.boolean() })
    .optional(),
  /** The dog came back within these 28 days after at least 28 without a run: its four-week mean starts from nothing. */
  afterBreak: z.object({ days: z.number().int().positive(), back: z.string() }).optional(),
  last28: sharesSchema,
  season: sharesSchema,
});

/** One day of a dog's series, for a picture. */
export const loadPointSchema = z.object({
  day: z.string(),
  metres,
  minutes: z.number().nonnegative(),
  runs: z.number().int().nonnegative(),
  /** Sum of the seven days that end here, or of those there are. */
  sum7: metres,
  /** Mean week of the 28 days that end here; left out before there are 28. */
  meanWeek28: metres.optional(),
});

/** A dog's last days, one value a day, oldest first. */
export const lastDaysSchema = z.object({
  /** The first of them. */
  from: z.string(),
  metres: z.array(metres),
  runs: z.array(z.number().int().nonnegative()),
  /** Days with a run whose distance is not known: what stands for them is the least it did. */
  unknown: z.array(z.string()),
});

export type Share = z.infer<typeof shareSchema>;
export type Shares = z.infer<typeof sharesSchema>;
export type DogLoad = z.infer<typeof dogLoadSchema>;
export type LastDays = z.infer<typeof lastDaysSchema>;
export type LoadPoint = z.infer<typeof loadPointSchema>;
export type TemperatureBand = (typeof bandKeys)[number];
