/** Runs and the choices a person makes about them: what the calls take and answer. */
import { createRoute, z } from '@hono/zod-openapi';
import { badInput, body, conflict, idParam, json, notFound, writing } from './answers.ts';
import { runAnswerSchema, runSchema } from './run-schemas.ts';
import { seasonNameSchema } from './schemas.ts';

const ofRun = idParam('Id of the run, or of any note in it');
const oneRun = json(z.object({ run: runSchema }), 'The run as it stands now');

export const getRuns = createRoute({
  method: 'get',
  path: '/runs',
  summary: 'Runs of a season, newest first',
  request: { query: z.object({ season: seasonNameSchema.optional() }) },
  responses: { 200: json(z.object({ runs: z.array(runSchema) }), 'The runs'), ...badInput },
});

export const getRun = createRoute({
  method: 'get',
  path: '/runs/{id}',
  summary: 'One run with its notes',
  request: { params: ofRun },
  responses: { 200: json(runAnswerSchema, 'The run'), ...notFound },
});

export const postJoin = createRoute({
  method: 'post',
  path: '/runs/{id}/join',
  summary: 'Join a run with the one before it',
  request: { params: ofRun, body: body(z.strictObject({ to: z.literal('before') })) },
  responses: { 200: oneRun, ...writing, ...notFound, ...conflict },
});

export const postCut = createRoute({
  method: 'post',
  path: '/runs/{id}/cut',
  summary: 'Cut a run in two; the note named starts the second',
  request: { params: ofRun, body: body(z.strictObject({ note: z.uuid() })) },
  responses: {
    200: json(z.object({ runs: z.array(runSchema) }), 'The runs that hold the notes now'),
    ...writing,
    ...notFound,
    ...conflict,
  },
});

export const postMove = createRoute({
  method: 'post',
  path: '/runs/{id}/move',
  summary: 'Move a note into the run that holds another note',
  request: { params: ofRun, body: body(z.strictObject({ note: z.uuid(), toRunOf: z.uuid() })) },
  responses: { 200: oneRun, ...writing, ...notFound, ...conflict },
});

export const putDistance = createRoute({
  method: 'put',
  path: '/runs/{id}/distance',
  summary: 'Set the length of a run by hand; what was said is kept beside it',
  request: {
    params: ofRun,
    body: body(
      z.strictObject({
        value: z.number().positive('a distance is more than nothing').max(10_000, 'a distance is at most 10,000'),
        unit: z.enum(['mi', 'km', 'm', 'ft', 'yd']),
        why: z.string().trim().max(200).optional(),
      }),
    ),
  },
  responses: { 200: oneRun, ...writing, ...notFound },
});

export const deleteDistance = createRoute({
  method: 'delete',
  path: '/runs/{id}/distance',
  summary: 'Take back the length set by hand',
  request: { params: ofRun },
  responses: { 200: oneRun, ...notFound, ...writing },
});
