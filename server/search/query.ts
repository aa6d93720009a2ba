/**
 * A search as parts: what the words of a query were read as, and what a page or a program may ask for without words. A
 * list means any of its values. A part that is left out asks for nothing.
 */
import { z } from 'zod';
import {
  ACTS,
  CONDITIONS,
  endSchema,
  entrySchema,
  gaitSchema,
  gearSchema,
  type Kind,
  MANNERS,
  measureSchema,
  PARTS,
  POSITIONS,
  SIGNS,
  SURFACES,
  sideSchema,
} from '../../grammar/entry.ts';

/** Every kind of entry, in the order of the contract. */
export const KINDS = entrySchema.options.map((o) => o.shape.kind.value) as unknown as readonly [Kind, ...Kind[]];
export const STATES = ['on', 'off', 'lost', 'torn', 'changed'] as const;
export const TOOK = ['all', 'most', 'some', 'none'] as const;
export const WHAT = ['water', 'snack', 'meal'] as const;
export const DROPS = ['dropped', 'loaded', 'home'] as const;
/** What a number can be asked of. `air` is the weather's temperature, `temperature` a dog's, `distance` a run's length. */
export const AMOUNTS = ['weight', 'temperature', 'body-condition', 'heart-rate', 'air', 'distance', 'wind'] as const;
export const UNITS = ['lb', 'kg', 'F', 'C', 'bpm', 'mi', 'km', 'm', 'ft', 'yd', 'mph', 'km/h', 'kn', 'm/s'] as const;
/**
 * `so`: what was told to be so (now, perhaps, earlier, or planned). `not`: what was told not to be there or to be over.
 * `all`: both.
 */
export const SHOWN = ['so', 'not', 'all'] as const;

const day = z.iso.date('a day is YYYY-MM-DD, like 2027-01-14');

/** A number asked for: at least, at most, or both alike for just this one. */
export const amountSchema = z.object({
  of: z.enum(AMOUNTS),
  atLeast: z.number().optional(),
  atMost: z.number().optional(),
  unit: z.enum(UNITS).optional(),
});

export const querySchema = z.object({
  /** Call names of now. */
  dogs: z.array(z.string()).optional(),
  kinds: z.array(z.enum(KINDS)).optional(),
  parts: z.array(z.enum(PARTS)).optional(),
  side: sideSchema.optional(),
  end: endSchema.optional(),
  signs: z.array(z.enum(SIGNS)).optional(),
  acts: z.array(z.enum(ACTS)).optional(),
  /** Of booties. */
  states: z.array(z.enum(STATES)).optional(),
  took: z.array(z.enum(TOOK)).optional(),
  what: z.array(z.enum(WHAT)).optional(),
  manners: z.array(z.enum(MANNERS)).optional(),
  positions: z.array(z.enum(POSITIONS)).optional(),
  drops: z.array(z.enum(DROPS)).optional(),
  gaits: z.array(gaitSchema.shape.gait).optional(),
  gear: z.array(gearSchema.shape.state).optional(),
  measured: z.array(measureSchema.shape.quantity).optional(),
  surfaces: z.array(z.enum(SURFACES)).optional(),
  conditions: z.array(z.enum(CONDITIONS)).optional(),
  amount: amountSchema.optional(),
  /** Local days, both counted in. */
  from: day.optional(),
  to: day.optional(),
  season: z.string().optional(),
  /** Id of a run. */
  run: z.string().optional(),
  /** The rest, looked for in the notes' own words. */
  words: z.string().optional(),
  show: z.enum(SHOWN).optional(),
});
export type Query = z.infer<typeof querySchema>;
export type Amount = z.infer<typeof amountSchema>;
export type Shown = (typeof SHOWN)[number];

/** The parts that are lists, in the order in which they are told. */
export const LISTS = [
  'dogs',
  'kinds',
  'parts',
  'signs',
  'acts',
  'states',
  'took',
  'what',
  'manners',
  'drops',
  'gaits',
  'gear',
  'measured',
  'positions',
  'surfaces',
  'conditions',
] as const;
export type List = (typeof LISTS)[number];

/** A query without the parts that ask for nothing. */
export function tidy(query: Query): Query {
  return Object.fromEntries(
    Object.entries(query).filter(([, v]) => v !== undefined && v !== '' && !(Array.isArray(v) && v.length === 0)),
  ) as Query;
}

/** Does it ask for anything? */
export function asksNothing(query: Query): boolean {
  const { show: _, ...rest } = tidy(query);
  return Object.keys(rest).length === 0;
}
