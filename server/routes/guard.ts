/**
 * Who may talk to the server: programs on this machine, and pages that it served itself. The Host header is checked, so
 * that a foreign name that points at this machine (DNS rebinding) gets nothing; a request that a page from elsewhere makes
 * is refused by its Origin (RFC 6454) or its Sec-Fetch-Site (W3C Fetch Metadata).
 */
import type { MiddlewareHandler } from 'hono';
import { fail } from './errors.ts';

const NAMES = new Set(['127.0.0.1', 'localhost', '[::1]']);

/** Lets through only requests that name this machine and, where it is known, the port it listens on. */
export function checkHost(port: () => number | undefined): MiddlewareHandler {
  return async (c, next) => {
    const host = hostOf(c.req.raw);
    const [, name = '', named = '80'] = /^(\[[^\]]*\]|[^:]*)(?::(\d{1,5}))?$/.exec(host) ?? [];
    const wanted = port();
    if (!NAMES.has(name.toLowerCase()) || (wanted !== undefined && Number(named) !== wanted))
      return fail(
        c,
        'foreign-host',
        `Snackstop answers on this machine alone, as http://127.0.0.1${wanted ? `:${wanted}` : ''}; it was asked for under another name.`,
      );
    return next();
  };
}

/** Refuses what a page from another origin asks for. Programs that are no browser send neither header. */
export const checkOrigin: MiddlewareHandler = async (c, next) => {
  const origin = c.req.header('origin');
  const site = c.req.header('sec-fetch-site');
  const own = origin === undefined || origin.toLowerCase() === `http://${hostOf(c.req.raw)}`.toLowerCase();
  if (!own || (site !== undefined && site !== 'same-origin' && site !== 'none'))
    return fail(
      c,
      'foreign-origin',
      'A page from another address asked for this; only Snackstop’s own pages may.',
      'Nothing was changed.',
    );
  return next();
};

/** The Host header; a request made inside the program has it in its address alone. */
function hostOf(request: Request): string {
  return request.headers.get('host') ?? new URL(request.url).host;
}
