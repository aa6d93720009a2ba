/** Small parts that every route definition shares: JSON bodies, the error answers, numbers in a query. */
import { z } from '@hono/zod-openapi';
import { errorSchema } from './schemas.ts';

/** A JSON answer of this schema. */
export const json = <T extends z.ZodType>(schema: T, description: string) => ({
  description,
  content: { 'application/json': { schema } },
});

/** A JSON body of this schema, which has to be there. */
export const body = <T extends z.ZodType>(schema: T) => ({
  required: true as const,
  content: { 'application/json': { schema } },
});

export const badInput = { 400: json(errorSchema, 'What was sent is not right; the sentence says what') };
export const notFound = { 404: json(errorSchema, 'There is nothing of this id') };
export const conflict = { 409: json(errorSchema, 'It does not go with what is kept already') };
export const tooLarge = { 413: json(errorSchema, 'More than one request may carry') };
export const wrongType = { 415: json(errorSchema, 'The body is not JSON') };
export const notKept = { 503: json(errorSchema, 'It could not be written to disk, and was not kept') };
/** What every call that writes can answer. */
export const writing = { ...badInput, ...tooLarge, ...wrongType, ...notKept };

/** A whole number in a query, from `min` to `max`. */
export const count = (min: number, max: number) =>
  z
    .string()
    .regex(/^\d{1,9}$/, `a whole number from ${min} to ${max}`)
    .transform(Number)
    .refine((n) => n >= min && n <= max, `a whole number from ${min} to ${max}`)
    .openapi({ type: 'integer', minimum: min, maximum: max });

/** The id in a path. Any text is let through: one that nobody has is a 404, not a 400. */
export const idParam = (what: string) =>
  z.object({ id: z.string().openapi({ param: { name: 'id', in: 'path' }, description: what }) });
