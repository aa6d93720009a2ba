/** Dogs and people: what the calls take and answer. */
import { createRoute, z } from '@hono/zod-openapi';
import { body, conflict, idParam, json, notFound, writing } from './answers.ts';
import { dogSchema, personSchema } from './schemas.ts';

/** A name that can be said: a letter or a digit in it, no control characters, at most 60 characters. */
const nameSchema = z
  .string()
  .transform((name) => name.normalize('NFC').replace(/\s+/g, ' ').trim())
  .pipe(
    z
      .string()
      .min(1, 'a name is at least one character')
      .max(60, 'a name is at most 60 characters')
      .regex(/[\p{L}\p{N}]/u, 'a name has a letter or a digit in it')
      .regex(/^\P{Cc}*$/u, 'a name has no control characters in it'),
  )
  .openapi({ type: 'string', minLength: 1, maxLength: 60 });
const names = z.array(nameSchema).max(20, 'at most 20 names');

const newDogSchema = z
  .strictObject({
    name: nameSchema,
    sex: z.enum(['F', 'M']),
    aliases: names.optional(),
    /** Forms a recogniser writes for the name. */
    heard: names.optional(),
    born: z.iso.date('a day of birth is YYYY-MM-DD').optional(),
    retired: z.boolean().optional(),
  })
  .openapi('NewDog');
export type NewDog = z.output<typeof newDogSchema>;

const dogChangeSchema = newDogSchema
  .partial()
  /** null takes the day of birth away. */
  .extend({ born: newDogSchema.shape.born.unwrap().nullable().optional() })
  .openapi('DogChange');
export type DogChange = z.output<typeof dogChangeSchema>;

const oneDog = z.object({
  dog: dogSchema,
  /** How many notes that wait for review were read anew, with another result. */
  reread: z.number().int(),
});
const onePerson = z.object({ person: personSchema, reread: z.number().int() });
const ofDog = idParam('Id of the dog');
const ofPerson = idParam('Id of the person');

export const getDogs = createRoute({
  method: 'get',
  path: '/dogs',
  summary: 'The roster, by name',
  responses: { 200: json(z.object({ dogs: z.array(dogSchema) }), 'The dogs') },
});
export const postDog = createRoute({
  method: 'post',
  path: '/dogs',
  summary: 'Add a dog',
  request: { body: body(newDogSchema) },
  responses: { 201: json(oneDog, 'The dog'), ...writing, ...conflict },
});
export const patchDog = createRoute({
  method: 'patch',
  path: '/dogs/{id}',
  summary: 'Change a dog; an old name stays the dog’s',
  request: { params: ofDog, body: body(dogChangeSchema) },
  responses: { 200: json(oneDog, 'The dog'), ...writing, ...notFound, ...conflict },
});
export const postHeard = createRoute({
  method: 'post',
  path: '/dogs/{id}/heard',
  summary: 'Learn a form of a dog’s name that a recogniser writes',
  request: { params: ofDog, body: body(z.strictObject({ heard: nameSchema })) },
  responses: { 200: json(oneDog, 'The dog'), ...writing, ...notFound, ...conflict },
});
export const deleteDog = createRoute({
  method: 'delete',
  path: '/dogs/{id}',
  summary: 'Remove a dog that no reviewed note names',
  request: { params: ofDog },
  responses: { 200: json(oneDog, 'The dog that was removed'), ...writing, ...notFound, ...conflict },
});

export const getPeople = createRoute({
  method: 'get',
  path: '/people',
  summary: 'Drivers and handlers, by name',
  responses: { 200: json(z.object({ people: z.array(personSchema) }), 'The people') },
});
export const postPerson = createRoute({
  method: 'post',
  path: '/people',
  summary: 'Add a person',
  request: { body: body(z.strictObject({ name: nameSchema })) },
  responses: { 201: json(onePerson, 'The person'), ...writing, ...conflict },
});
export const patchPerson = createRoute({
  method: 'patch',
  path: '/people/{id}',
  summary: 'Rename a person whom no note names yet; retire one, or take them back',
  request: {
    params: ofPerson,
    body: body(z.strictObject({ name: nameSchema.optional(), retired: z.boolean().optional() })),
  },
  responses: { 200: json(onePerson, 'The person'), ...writing, ...notFound, ...conflict },
});
export const deletePerson = createRoute({
  method: 'delete',
  path: '/people/{id}',
  summary: 'Remove a person whom no note names',
  request: { params: ofPerson },
  responses: { 200: json(onePerson, 'The person that was removed'), ...writing, ...notFound, ...conflict },
});
