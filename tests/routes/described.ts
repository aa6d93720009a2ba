/** Holds every answer of the tests against what the route's definition says of it. */
import type { z } from 'zod';
import * as dog from '../../server/routes/dog-routes.ts';
import * as taken from '../../server/routes/export-routes.ts';
import * as kennel from '../../server/routes/kennel-routes.ts';
import * as load from '../../server/routes/load-routes.ts';
import * as notes from '../../server/routes/notes-routes.ts';
import * as roster from '../../server/routes/roster-routes.ts';
import * as runs from '../../server/routes/runs-routes.ts';
import { errorSchema } from '../../server/routes/schemas.ts';
import * as search from '../../server/routes/search-routes.ts';
import * as watch from '../../server/routes/watch-routes.ts';

interface Route {
  method: string;
  path: string;
  responses: Record<number, { content: { 'application/json': { schema: z.ZodType } } }>;
}

const ROUTES = [taken, dog, kennel, load, notes, roster, runs, search, watch].flatMap((module) =>
  Object.values(module).filter((one): one is typeof one & Route => typeof one === 'object' && 'responses' in one),
) as unknown as Route[];
const PATTERNS = ROUTES.map((route) => ({
  route,
  pattern: new RegExp(`^/api${route.path.replace(/\{\w+\}/g, '[^/]+')}$`),
}));

/** The answer as the definition describes it, with nothing that it does not tell of. */
export function asDescribed(method: string, path: string, status: number, json: unknown): unknown {
  const found = PATTERNS.find(
    ({ route, pattern }) => route.method === method.toLowerCase() && pattern.test(path.replace(/\?.*$/, '')),
  );
  if (!found || status === 403) return errorOr(json, path);
  const described = found.route.responses[status];
  if (!described) throw new Error(`${method} ${path} answered ${status}, which its definition does not tell of`);
  return described.content['application/json'].schema.parse(json);
}

function errorOr(json: unknown, path: string): unknown {
  return path.startsWith('/api/openapi.json') ? json : errorSchema.parse(json);
}
