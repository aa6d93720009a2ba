/** Run records as the HTTP interface answers them: the same shape as server/records/types.ts, described for OpenAPI. */
import { z } from '@hono/zod-openapi';
import {
  attitudeSchema,
  bootiesSchema,
  careSchema,
  findingSchema,
  gearSchema,
  intakeSchema,
  leftRightSchema,
  measureSchema,
  positionSchema,
  trailSchema,
  weatherSchema,
} from '../../grammar/entry.ts';
import type { RunRecord } from '../records/types.ts';
import { noteViewSchema } from './schemas.ts';

/** An accepted entry with the reviewed entry, note and time it came from. */
const said = <T extends z.ZodType>(entry: T) => z.object({ entry, id: z.string(), note: z.string(), at: z.string() });
const metres = z.number();

export const stretchSchema = z
  .object({
    position: positionSchema.optional(),
    side: leftRightSchema.optional(),
    fromMetres: metres.optional(),
    toMetres: metres.optional(),
    estimated: z.literal(true).optional(),
  })
  .openapi('Stretch');

export const runDogSchema = z
  .object({
    dog: z.string(),
    stretches: z.array(stretchSchema),
    metres: metres.optional(),
    minutes: z.number().optional(),
    byPosition: z.partialRecord(z.enum([...positionSchema.options, 'unknown']), metres),
    bySide: z.partialRecord(z.enum([...leftRightSchema.options, 'unknown']), metres),
    metresBooted: metres.optional(),
    left: z.object({ manner: z.enum(['dropped', 'loaded']), atMetres: metres.optional() }).optional(),
    findings: z.array(said(findingSchema)),
    care: z.array(said(careSchema)),
    intake: z.array(said(intakeSchema)),
    booties: z.array(said(bootiesSchema)),
    attitude: z.array(said(attitudeSchema)),
    measures: z.array(said(measureSchema)),
  })
  .openapi('RunDog');

export const conflictSchema = z
  .object({
    kind: z.enum([
      'two-totals',
      'mark-beyond-total',
      'dog-in-two-places',
      'finding-on-absent-dog',
      'mark-goes-back',
      'no-distance',
      'no-lineup',
      'two-dogs-in-one-place',
      'unknown-place',
      'finish-before-start',
    ]),
    says: z.string(),
    dogs: z.array(z.string()),
    notes: z.array(z.string()),
  })
  .openapi('Conflict');

export const runSchema = z
  .object({
    id: z.string(),
    day: z.string(),
    season: z.string(),
    driver: z.string().optional(),
    notes: z.array(z.string()),
    startedAt: z.string().optional(),
    finishedAt: z.string().optional(),
    metres: metres.optional(),
    metresFrom: z.enum(['corrected', 'total', 'last-mark', 'legs', 'unknown']),
    metresSaid: metres.optional(),
    saidFrom: z.enum(['total', 'last-mark', 'legs']).optional(),
    correction: z
      .object({
        value: z.number(),
        unit: z.enum(['mi', 'km', 'm', 'ft', 'yd']),
        why: z.string().optional(),
        at: z.string(),
      })
      .optional(),
    minutes: z.number().optional(),
    stops: z.array(
      z.object({ at: z.string().optional(), minutes: z.number().optional(), atMetres: metres.optional() }),
    ),
    surfaces: z.array(said(trailSchema)),
    weather: z.array(said(weatherSchema)),
    celsius: z.array(z.number()),
    windMetresPerSecond: z.array(z.number()),
    gear: z.array(said(gearSchema)),
    dogs: z.array(runDogSchema),
    conflicts: z.array(conflictSchema),
  })
  .openapi('Run');

/** A neighbour of a run, enough to name it and to go there. */
export const runNeighbourSchema = z
  .object({ id: z.string(), day: z.string(), driver: z.string().optional() })
  .openapi('RunNeighbour');

export const runAnswerSchema = z.object({
  run: runSchema,
  notes: z.array(noteViewSchema),
  /** The run of the same team before and after it in time. */
  before: runNeighbourSchema.optional(),
  after: runNeighbourSchema.optional(),
  /** How cold it felt on bare skin, °C, where air and wind were told; the caution where skin can freeze; what it can't tell. */
  windChill: z
    .object({
      celsius: z.number(),
      metresPerSecond: z.number(),
      chill: z.number(),
      frostbite: z.string().optional(),
      about: z.string(),
    })
    .optional(),
});

/** Compile-time proof that the described shape and the computed one are the same. */
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;
const same: Same<z.infer<typeof runSchema>, RunRecord> = true;
void same;
