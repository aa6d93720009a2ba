/** The built pages: files as they are, and the one page for every other address, which the page itself takes apart. */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';

const NOT_BUILT =
  '<!doctype html><html lang="en"><meta charset="utf-8"><title>Snackstop</title>' +
  '<p>The pages have not been built yet. Stop Snackstop and start it with <code>npm start</code>, which builds them.</p>';

/** Names with a hash of their content in them never change what they hold. */
const FOR_GOOD = 'public, max-age=31536000, immutable';
const ASK_FIRST = 'no-cache';

/** Serves the folder that the build writes. */
export function pages(folder: string): Hono {
  const app = new Hono();
  app.use('*', async (c, next) => {
    if (c.req.method !== 'GET' && c.req.method !== 'HEAD') return c.text('There is only something to get here.', 405);
    await next();
    if (c.res.ok) c.header('Cache-Control', c.req.path.startsWith('/assets/') ? FOR_GOOD : ASK_FIRST);
  });
  if (existsSync(folder)) app.use('*', serveStatic({ root: folder }));
  app.get('*', async (c) => {
    // A file that is asked for by name and is not there is not a page.
    if (/\.[a-z0-9]{1,8}$/i.test(c.req.path)) return c.text('There is no such file.', 404);
    const index = join(folder, 'index.html');
    return existsSync(index) ? c.html(await readFile(index, 'utf8')) : c.html(NOT_BUILT, 503);
  });
  return app;
}
