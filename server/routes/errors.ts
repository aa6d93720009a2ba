/** Every error as one JSON shape with a sentence that a person understands. */
import { OpenAPIHono } from '@hono/zod-openapi';
import type { Context, Env, ErrorHandler } from 'hono';
import { HTTPException } from 'hono/http-exception';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { z } from 'zod';
import { Refusal } from '../notes/refusal.ts';
import { ChangeRefusedError, NotKeptError } from '../store/index.ts';
import type { ErrorAnswer, ErrorCode } from './schemas.ts';

const STATUS: Record<ErrorCode, ContentfulStatusCode> = {
  'bad-input': 400,
  'foreign-host': 403,
  'foreign-origin': 403,
  'not-found': 404,
  conflict: 409,
  'too-large': 413,
  'wrong-type': 415,
  broken: 500,
  'not-kept': 503,
};

/** The answer for an error of this code. */
export function fail(c: Context, code: ErrorCode, message: string, kept?: string): Response {
  const answer: ErrorAnswer = { error: { code, message, ...(kept ? { kept } : {}) } };
  // What is left of a body that is too long is not read, so nothing more can come over this connection.
  if (code === 'too-large') c.header('Connection', 'close');
  return c.json(answer, STATUS[code]);
}

/** A router whose inputs, where they are not right, are answered with a sentence. */
export function newRoutes<E extends Env = Env>(): OpenAPIHono<E> {
  return new OpenAPIHono<E>({
    defaultHook: (result, c) => {
      if (!result.success) return fail(c, 'bad-input', sentenceOf(result.error, result.target));
    },
  });
}

/** What to do with whatever a route throws. What nobody foresaw is printed for whoever runs the server. */
export const onError: ErrorHandler = (error, c) => {
  if (error instanceof Refusal) return fail(c, error.code, error.message, error.kept);
  if (error instanceof NotKeptError) return fail(c, 'not-kept', error.message, 'What was there before still stands.');
  if (error instanceof ChangeRefusedError) return fail(c, 'conflict', error.message, 'Nothing was changed.');
  if (error instanceof HTTPException) {
    if (error.status === 413)
      return fail(
        c,
        'too-large',
        'That is more than one request may carry; send it in parts.',
        'Nothing of it was kept.',
      );
    if (error.status === 415)
      return fail(
        c,
        'wrong-type',
        'What is sent here is JSON; send it with the header Content-Type: application/json.',
      );
    if (error.status === 400)
      return fail(
        c,
        'bad-input',
        'What was sent is not JSON that can be read; a comma, a quote or a brace may be missing.',
        'Nothing of it was kept.',
      );
  }
  console.error(error);
  return fail(
    c,
    'broken',
    'Something went wrong in Snackstop itself; the window it runs in says more.',
    'What was kept before still stands.',
  );
};

/** The first faults of an input as one sentence: where, and what was expected. */
export function sentenceOf(error: z.core.$ZodError, target: string): string {
  const where = target === 'query' ? 'the address, ' : '';
  const faults = error.issues.slice(0, 3).flatMap((issue) => faultsOf(issue, []));
  const more = error.issues.length > 3 ? `, and ${error.issues.length - 3} more` : '';
  return `In ${where || 'what was sent, '}${faults.slice(0, 3).join('; ')}${more}.`;
}

function faultsOf(issue: z.core.$ZodIssue, above: PropertyKey[]): string[] {
  const path = [...above, ...issue.path];
  const name = path.length > 0 ? `“${path.map(String).join('.')}” ` : '';
  switch (issue.code) {
    case 'invalid_type':
      return [
        issue.input === undefined && /undefined$/.test(issue.message)
          ? `${name || 'everything '}is missing`
          : `${name}has to be ${article(issue.expected)}`,
      ];
    case 'invalid_value':
      return [`${name}has to be ${oneOf(issue.values)}`];
    case 'unrecognized_keys':
      return [
        `${name}${issue.keys.map((key) => `“${key}”`).join(', ')} ${issue.keys.length === 1 ? 'is' : 'are'} not known here`,
      ];
    case 'invalid_union':
      if (issue.errors[0]) return issue.errors[0].flatMap((inner) => faultsOf(inner, path)).slice(0, 1);
      return [`${name}is none of the kinds there are`];
    case 'invalid_format':
      if (issue.format === 'uuid') return [`${name}has to be a UUID`];
      break;
    case 'too_big':
    case 'too_small':
      if (/^Too (big|small)/.test(issue.message)) return [`${name}is too ${bound(issue)}`];
  }
  return [`${name}is not right: ${issue.message}`];
}

function bound(issue: z.core.$ZodIssueTooBig | z.core.$ZodIssueTooSmall): string {
  const big = issue.code === 'too_big';
  const limit = big ? issue.maximum : issue.minimum;
  const [words, unit] =
    issue.origin === 'string' ? [big ? 'long' : 'short', ' characters'] : [big ? 'large' : 'small', ''];
  return `${words} (${big ? 'at most' : 'at least'} ${limit}${unit})`;
}

const article = (expected: string) => (/^[aeiou]/.test(expected) ? `an ${expected}` : `a ${expected}`);

function oneOf(values: readonly unknown[]): string {
  const said = values.map((value) => `“${String(value)}”`);
  return said.length > 1 ? `one of ${said.slice(0, -1).join(', ')} or ${said.at(-1)}` : String(said[0]);
}
