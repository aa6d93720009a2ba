/**
 * The shapes of what keeps coming back, as Zod schemas; the types are inferred from them. Distances in metres, days
 * YYYY-MM-DD, times ISO 8601.
 */
import { z } from 'zod';
import { CAUTION_REASONS } from '../../grammar/cautions.ts';
import { assertionSchema, findingSchema, leftRightSchema, partSchema, signSchema } from '../../grammar/entry.ts';
import { sharesSchema } from '../load/schema.ts';

/** Signs of the whole dog, or told with no part, by what they are followed under. See sites.ts. */
export const GROUPS = [
  'lameness',
  'soreness',
  'unplaced',
  'vomiting',
  'stool',
  'coughing',
  'urine',
  'water',
  'heat',
  'cold',
  'collapse',
  'condition',
  'in-season',
] as const;

/** Where something is: a part with side and end, or a group where no part was named. */
export const siteSchema = z.object({
  /** Unique for a dog; the same words give the same key. */
  key: z.string(),
  part: partSchema.optional(),
  group: z.enum(GROUPS).optional(),
  side: leftRightSchema.optional(),
  end: z.enum(['front', 'hind']).optional(),
  /** In words: "left wrist", "shoulder, side not said". */
  label: z.string(),
});

/** A finding as it was told, with where it stands. */
export const mentionSchema = z.object({
  id: z.string(),
  note: z.string(),
  at: z.string(),
  day: z.string(),
  run: z.string().optional(),
  assertion: assertionSchema,
  ...findingSchema.pick({ part: true, side: true, end: true, sign: true, severity: true, trend: true }).shape,
});

/** A statement that something is gone or was not there, and what it did to the episode it stands with. */
export const evidenceSchema = mentionSchema.extend({
  /** Signs it ended here; empty where it only was noted. */
  ended: z.array(signSchema),
});

export const episodeSignSchema = z.object({
  sign: signSchema,
  first: z.string(),
  last: z.string(),
  times: z.number().int().positive(),
  worst: findingSchema.shape.severity,
  /** The last word on whether it gets better. */
  trend: findingSchema.shape.trend,
  /** Only ever told as possible. */
  doubtful: z.boolean(),
  /** The day it was told gone. */
  gone: z.string().optional(),
});

/** What the dog did before an onset, beside its own usual. */
export const onsetSchema = z.object({
  /** Metres in the seven days before the day of onset, which is not counted: nobody knows at which mile it began. */
  metres7: z.number().nonnegative(),
  /** How many of these seven days lie in the dog's record. */
  daysOfRecord: z.number().int().min(0).max(7),
  /** How these metres were made up, and the day of onset by itself. */
  week: sharesSchema,
  day: sharesSchema,
  /** The dog's usual in the same season: the middle one of all its 7-day sums, and the season's make-up. */
  usual: z.object({ metres7: z.number().nonnegative().optional(), season: sharesSchema }),
});

export const episodeSchema = z.object({
  id: z.string(),
  dog: z.string(),
  site: siteSchema,
  /** Season of its first day. */
  season: z.string(),
  from: z.string(),
  /** Last day it was told present or possible, and the last day it was told present. */
  lastSeen: z.string(),
  lastSure: z.string().optional(),
  /** Never told present, only possible. Such an episode has no number and is none to count from. */
  doubtful: z.boolean(),
  state: z.enum(['open', 'over', 'not-seen-since']),
  /** The day it was told over, or the day the silence was long enough. */
  until: z.string().optional(),
  signs: z.array(episodeSignSchema),
  worst: findingSchema.shape.severity,
  /** Every present and possible finding of it, oldest first. */
  seen: z.array(mentionSchema),
  /** Statements that a sign was gone or not there, oldest first. */
  evidence: z.array(evidenceSchema),
  /** Told while it was open, of an earlier day. */
  past: z.array(mentionSchema),
  /** 1 for the first on this site in the season; and over the whole record. */
  number: z.number().int().positive().optional(),
  numberInAll: z.number().int().positive().optional(),
  /** From the last time the episode before was seen to this one's first day; the runs of neither day are counted. */
  sinceBefore: z
    .object({
      episode: z.string(),
      days: z.number().int().positive(),
      runs: z.number().int().nonnegative(),
      metres: z.number().nonnegative(),
      runsWithoutDistance: z.number().int().nonnegative(),
    })
    .optional(),
  onset: onsetSchema,
});

export const cautionSchema = z.object({
  dog: z.string(),
  reason: z.enum(CAUTION_REASONS),
  /** Told of now, as possible, as of an earlier day, or only when it was over. */
  told: z.enum(['now', 'possible', 'earlier', 'over']),
  first: z.string(),
  last: z.string(),
  times: z.number().int().positive(),
  /** The newest note and entry it was told in. */
  note: z.string(),
  id: z.string(),
  episode: z.string().optional(),
  /** Still to be shown on top: its episode is open, or it was told within the days of silence. */
  standing: z.boolean(),
  says: z.string(),
});

/** Sites of a front limb that are easily taken for one another. Shown side by side, never merged. */
export const togetherSchema = z.object({
  dog: z.string(),
  season: z.string(),
  side: z.enum(['left', 'right', 'not-said']),
  episodes: z.array(z.string()),
  /** Episodes that may belong to this limb, but whose side or end was not said. */
  perhaps: z.array(z.string()),
});

export const watchSchema = z.object({
  on: z.string(),
  silenceDays: z.number(),
  /** Open ones first, each part newest first. */
  episodes: z.array(episodeSchema),
  cautions: z.array(cautionSchema),
  together: z.array(togetherSchema),
  /** Told of an earlier day, or told as over, with no episode it belongs to. */
  history: z.array(z.object({ dog: z.string(), site: siteSchema, mention: mentionSchema })),
  /** Findings told of a team whose dogs nobody knows. */
  noDog: z.array(mentionSchema),
});

export type Group = (typeof GROUPS)[number];
export type Site = z.infer<typeof siteSchema>;
export type Mention = z.infer<typeof mentionSchema>;
export type Evidence = z.infer<typeof evidenceSchema>;
export type EpisodeSign = z.infer<typeof episodeSignSchema>;
export type Onset = z.infer<typeof onsetSchema>;
export type Episode = z.infer<typeof episodeSchema>;
export type Caution = z.infer<typeof cautionSchema>;
export type Together = z.infer<typeof togetherSchema>;
export type Watch = z.infer<typeof watchSchema>;
