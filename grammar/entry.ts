/**
 * The contract: what a note is turned into. This is the one definition of an entry; server, web, store and export
 * import these schemas and the types inferred from them.
 *
 * Wire names are fixed. A field that was not said is left out; nothing is guessed.
 */
import { z } from 'zod';

export const PARTS = [
  'wrist',
  'shoulder',
  'elbow',
  'triceps',
  'chest',
  'neck',
  'back',
  'hip',
  'knee',
  'hock',
  'thigh',
  'groin',
  'armpit',
  'tail',
  'leg',
  'foot',
  'pad',
  'web',
  'toe',
  'nail',
  'dewclaw',
  'eye',
  'ear',
  'nose',
  'mouth',
] as const;
/** Parts that need a word for front or hind; a wrist is always in front and a hock always behind. */
export const PARTS_WITH_END = ['leg', 'foot', 'pad', 'web', 'toe', 'nail', 'dewclaw'] as const;
export const SIGNS = [
  'lame',
  'sore',
  'stiff',
  'swollen',
  'hot',
  'bruised',
  'bleeding',
  'infected',
  'cut',
  'split',
  'worn',
  'torn',
  'rub',
  'iced',
  'frostbite',
  'licking',
  'vomiting',
  'loose-stool',
  'bloody-stool',
  'coughing',
  'dark-urine',
  'dehydrated',
  'overheated',
  'shivering',
  'collapsed',
  'thin',
  'in-season',
  'any',
] as const;
export const POSITIONS = ['lead', 'swing', 'team', 'wheel'] as const;
export const ASSERTIONS = ['present', 'possible', 'absent', 'resolved', 'past', 'planned'] as const;
export const PAWS = ['LF', 'RF', 'LH', 'RH'] as const;
export const SURFACES = [
  'icy',
  'hard',
  'soft',
  'punchy',
  'sugar',
  'fresh',
  'deep',
  'drifted',
  'slush',
  'overflow',
  'bare',
  'rough',
  'fast',
  'slow',
  'good',
] as const;
export const CONDITIONS = [
  'clear',
  'cloudy',
  'flat-light',
  'snowing',
  'blowing',
  'windy',
  'calm',
  'fog',
  'rain',
  'freezing-rain',
  'storm',
] as const;
export const ACTS = [
  'massaged',
  'wrapped',
  'ointment',
  'stretched',
  'warmed',
  'cooled',
  'cleaned',
  'medicated',
  'checked',
  'trimmed',
  'rested',
] as const;
export const MANNERS = ['eager', 'strong', 'good', 'slack', 'tired', 'nervous', 'balky', 'quarrelsome'] as const;
export const INTAKE_UNITS = [
  'l',
  'ml',
  'oz',
  'lb',
  'g',
  'kg',
  'cup',
  'qt',
  'pt',
  'gal',
  'ladle',
  'scoop',
  'piece',
] as const;

export const partSchema = z.enum(PARTS);
export const signSchema = z.enum(SIGNS);
export const positionSchema = z.enum(POSITIONS);
export const assertionSchema = z.enum(ASSERTIONS);
export const pawSchema = z.enum(PAWS);
export const leftRightSchema = z.enum(['left', 'right']);
export const sideSchema = z.enum(['left', 'right', 'both']);
export const endSchema = z.enum(['front', 'hind', 'both']);
export const doubtSchema = z.enum(['none', 'some', 'much']);

/** What every entry carries beside its kind and fields. */
const common = {
  /** Call names as the roster spells them; `[]` when no dog is meant, `['*']` for the whole team with no line-up known. */
  dogs: z.array(z.string().min(1)),
  /** `present` when left out. */
  assertion: assertionSchema.optional(),
  /** Start and end (exclusive) of the words it was read from, in UTF-16 units of the note's text. */
  span: z.tuple([z.number().int().nonnegative(), z.number().int().nonnegative()]).optional(),
  /** The rule that made it. */
  rule: z.string().optional(),
  /** How sure the reading is, and why not, in words. `none` when left out. */
  doubt: doubtSchema.optional(),
  because: z.string().optional(),
};
const time = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time is HH:MM, 24 hours');
const value = z.number().finite();
const text = z.string().min(1);

export const hitchSchema = z.object({
  kind: z.literal('hitch'),
  ...common,
  position: positionSchema.optional(),
  side: leftRightSchema.optional(),
  driver: text.optional(),
});
export const moveSchema = z.object({
  kind: z.literal('move'),
  ...common,
  position: positionSchema,
  side: leftRightSchema.optional(),
});
export const dropSchema = z.object({
  kind: z.literal('drop'),
  ...common,
  manner: z.enum(['dropped', 'loaded', 'home']),
});
export const distanceSchema = z.object({
  kind: z.literal('distance'),
  ...common,
  measure: z.enum(['total', 'mark', 'leg', 'remaining']),
  value: value.nonnegative(),
  unit: z.enum(['mi', 'km', 'm', 'ft', 'yd']),
});
export const clockSchema = z.object({
  kind: z.literal('clock'),
  ...common,
  event: z.enum(['start', 'stop', 'finish', 'other']),
  time,
});
export const durationSchema = z.object({
  kind: z.literal('duration'),
  ...common,
  of: z.enum(['run', 'stop', 'other']),
  minutes: value.nonnegative(),
});
export const speedSchema = z.object({
  kind: z.literal('speed'),
  ...common,
  value: value.nonnegative(),
  unit: z.enum(['mph', 'km/h']),
});
export const findingSchema = z.object({
  kind: z.literal('finding'),
  ...common,
  part: partSchema.optional(),
  side: sideSchema.optional(),
  end: endSchema.optional(),
  sign: signSchema,
  severity: z.enum(['mild', 'moderate', 'severe']).optional(),
  trend: z.enum(['better', 'worse', 'same']).optional(),
});
export const careSchema = z.object({
  kind: z.literal('care'),
  ...common,
  act: z.enum(ACTS),
  part: partSchema.optional(),
  side: sideSchema.optional(),
  end: endSchema.optional(),
  item: text.optional(),
});
export const bootiesSchema = z.object({
  kind: z.literal('booties'),
  ...common,
  state: z.enum(['on', 'off', 'lost', 'torn', 'changed']),
  paws: z.array(pawSchema).optional(),
});
export const intakeSchema = z.object({
  kind: z.literal('intake'),
  ...common,
  what: z.enum(['water', 'snack', 'meal']),
  took: z.enum(['all', 'most', 'some', 'none']),
  item: text.optional(),
  amount: value.nonnegative().optional(),
  unit: z.enum(INTAKE_UNITS).optional(),
});
export const temperatureSchema = z.object({
  kind: z.literal('temperature'),
  ...common,
  value,
  unit: z.enum(['F', 'C']),
});
export const windSchema = z.object({
  kind: z.literal('wind'),
  ...common,
  value: value.nonnegative(),
  unit: z.enum(['mph', 'km/h', 'kn', 'm/s']),
});
export const weatherSchema = z.object({ kind: z.literal('weather'), ...common, condition: z.enum(CONDITIONS) });
export const trailSchema = z.object({ kind: z.literal('trail'), ...common, surface: z.enum(SURFACES) });
export const attitudeSchema = z.object({ kind: z.literal('attitude'), ...common, manner: z.enum(MANNERS) });
export const gaitSchema = z.object({
  kind: z.literal('gait'),
  ...common,
  gait: z.enum(['walk', 'trot', 'lope', 'pace']),
});
export const measureSchema = z.object({
  kind: z.literal('measure'),
  ...common,
  quantity: z.enum(['weight', 'temperature', 'body-condition', 'heart-rate']),
  value,
  unit: z.enum(['lb', 'kg', 'F', 'C', 'bpm']).optional(),
});
export const gearSchema = z.object({
  kind: z.literal('gear'),
  ...common,
  item: text,
  state: z.enum(['broken', 'chewed', 'lost', 'tangled', 'worn', 'replaced']),
});
/** Words that no other kind took; never thrown away. */
export const remarkSchema = z.object({ kind: z.literal('remark'), ...common, text });

/** Any entry. `kind` tells which. */
export const entrySchema = z.discriminatedUnion('kind', [
  hitchSchema,
  moveSchema,
  dropSchema,
  distanceSchema,
  clockSchema,
  durationSchema,
  speedSchema,
  findingSchema,
  careSchema,
  bootiesSchema,
  intakeSchema,
  temperatureSchema,
  windSchema,
  weatherSchema,
  trailSchema,
  attitudeSchema,
  gaitSchema,
  measureSchema,
  gearSchema,
  remarkSchema,
]);

export type Entry = z.infer<typeof entrySchema>;
export type Kind = Entry['kind'];
/** The entry of one kind: `EntryOf<'finding'>`. */
export type EntryOf<K extends Kind> = Extract<Entry, { kind: K }>;
export type Part = z.infer<typeof partSchema>;
export type Sign = z.infer<typeof signSchema>;
export type Side = z.infer<typeof sideSchema>;
export type LeftRight = z.infer<typeof leftRightSchema>;
export type End = z.infer<typeof endSchema>;
export type Position = z.infer<typeof positionSchema>;
export type Assertion = z.infer<typeof assertionSchema>;
export type Paw = z.infer<typeof pawSchema>;
export type Doubt = z.infer<typeof doubtSchema>;
export type Surface = (typeof SURFACES)[number];
/** Start and end (exclusive), UTF-16 units of the note's text. */
export type Span = [number, number];

/** A dog as the grammar knows it. `heard` are forms of the name that a recogniser wrote and a person confirmed. */
export const contextDogSchema = z.object({
  name: text,
  sex: z.enum(['F', 'M']).optional(),
  aliases: z.array(text).optional(),
  heard: z.array(text).optional(),
});
/** A dog's place on the gangline now. */
export const placeSchema = z.object({
  dog: text,
  position: positionSchema.optional(),
  side: leftRightSchema.optional(),
});
/** What the parser is told beside the text. */
export const contextSchema = z.object({
  dogs: z.array(contextDogSchema).default([]),
  people: z.array(text).default([]),
  lineup: z.array(placeSchema).default([]),
  units: z.enum(['imperial', 'metric']).default('imperial'),
  /** Local time of speaking, ISO 8601. */
  at: z.string().optional(),
});
export type ContextDog = z.infer<typeof contextDogSchema>;
export type Place = z.infer<typeof placeSchema>;
export type Context = z.infer<typeof contextSchema>;
