/** The description against what there is, and against the published schema of OpenAPI 3.1 (by @seriousme/openapi-schema-validator). */
import { Validator } from '@seriousme/openapi-schema-validator';
import { describe, expect, it } from 'vitest';
import { KINDS_IN_CONTRACT, newKennel } from './setup.ts';

interface Description {
  openapi: string;
  info: { version: string };
  paths: Record<
    string,
    Record<string, { responses: Record<string, { content?: Record<string, { schema: unknown }> }>; summary?: string }>
  >;
  components: { schemas: Record<string, Record<string, unknown>> };
}
const describeIt = async () => {
  const kennel = await newKennel();
  return { kennel, doc: (await kennel.get<Description>('/api/openapi.json')).json };
};

describe('the OpenAPI description', () => {
  it('is valid OpenAPI 3.1', async () => {
    const { doc } = await describeIt();
    const result = await new Validator().validate(structuredClone(doc) as unknown as Record<string, unknown>);
    expect(result.errors ?? []).toEqual([]);
    expect(result.valid).toBe(true);
    expect(doc.openapi).toBe('3.1.0');
    expect(doc.info.version).toBe('0.0.0-test');
  });

  it('lists every route there is, and no other: among them those that pages and phones are built on', async () => {
    const { kennel, doc } = await describeIt();
    const described = Object.entries(doc.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    const served = kennel.app.routes
      .filter(({ method, path }) => method !== 'ALL' && path.startsWith('/api/') && path !== '/api/openapi.json')
      .map(({ method, path }) => `${method} ${path.replace(/:(\w+)/g, '{$1}')}`);
    expect(described.sort()).toEqual([...new Set(served)].sort());
    expect(described).toEqual(
      expect.arrayContaining([
        'DELETE /api/dogs/{id}',
        'DELETE /api/people/{id}',
        'DELETE /api/runs/{id}/distance',
        'GET /api/context',
        'GET /api/dogs',
        'GET /api/load',
        'GET /api/notes',
        'GET /api/notes/{id}',
        'GET /api/people',
        'GET /api/runs',
        'GET /api/runs/{id}',
        'GET /api/search',
        'GET /api/settings',
        'GET /api/status',
        'PATCH /api/dogs/{id}',
        'PATCH /api/people/{id}',
        'POST /api/dogs',
        'POST /api/dogs/{id}/heard',
        'POST /api/import',
        'POST /api/notes',
        'POST /api/notes/{id}/review',
        'POST /api/people',
        'POST /api/runs/{id}/cut',
        'POST /api/runs/{id}/join',
        'POST /api/runs/{id}/move',
        'PUT /api/runs/{id}/distance',
        'PUT /api/settings',
      ]),
    );
  });

  it('tells of each call what it is for, and the one shape of errors', async () => {
    const { doc } = await describeIt();
    for (const [path, methods] of Object.entries(doc.paths))
      for (const [method, call] of Object.entries(methods)) {
        expect(call.summary, `${method} ${path}`).toBeTruthy();
        for (const [status, answer] of Object.entries(call.responses)) {
          if (Number(status) < 400 || path === '/api/notes') continue;
          expect(answer.content?.['application/json']?.schema).toEqual({ $ref: '#/components/schemas/Error' });
        }
      }
  });

  it('describes an entry by the contract: every kind, once', async () => {
    const { doc } = await describeIt();
    const { oneOf } = doc.components.schemas.Entry as { oneOf: { properties: { kind: { enum: string[] } } }[] };
    expect(oneOf.flatMap((one) => one.properties.kind.enum)).toEqual(KINDS_IN_CONTRACT);
  });
});
