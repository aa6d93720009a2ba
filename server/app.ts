/** The HTTP interface and the pages put together, nothing else. */
import { bodyLimit } from 'hono/body-limit';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import { type HouseOptions, openHouse } from './notes/house.ts';
import { dogRoutes } from './routes/dog.ts';
import { dogsRoutes } from './routes/dogs.ts';
import { fail, newRoutes, onError } from './routes/errors.ts';
import { exportRoutes } from './routes/export.ts';
import { checkHost, checkOrigin } from './routes/guard.ts';
import { importRoutes } from './routes/import.ts';
import { kennelRoutes } from './routes/kennel.ts';
import { loadRoutes } from './routes/load.ts';
import { notesRoutes } from './routes/notes.ts';
import { pages } from './routes/pages.ts';
import { peopleRoutes } from './routes/people.ts';
import { runsRoutes } from './routes/runs.ts';
import { searchRoutes } from './routes/search.ts';
import { watchRoutes } from './routes/watch.ts';

export interface AppOptions extends HouseOptions {
  /** The port it listens on, once it is known; requests that name another are refused. */
  port?: () => number | undefined;
  /** The folder of the built pages; none are served without it. */
  web?: string;
}

/** Most bytes of one request's body; a notebook may be longer than a note. */
const BODY_MAX = 1024 * 1024;
const NOTEBOOK_MAX = 8 * 1024 * 1024;
/** A copy of the whole store: ten times ten seasons of a large kennel. */
const STORE_MAX = 1024 * 1024 * 1024;
const MOST: Record<string, number> = { '/api/import': NOTEBOOK_MAX, '/api/restore': STORE_MAX };

const limit = (maxSize: number) =>
  bodyLimit({
    maxSize,
    onError: () => {
      throw new HTTPException(413);
    },
  });

/** The whole application over an open store. */
export function createApp(options: AppOptions) {
  const house = openHouse(options);
  const base = newRoutes();
  base.onError(onError);
  base.use(
    '*',
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'self'"],
        // Charts carry a style element of their own inside the picture.
        styleSrc: ["'self'", "'unsafe-inline'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        mediaSrc: ["'self'", 'blob:'],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
      xFrameOptions: 'DENY',
      referrerPolicy: 'no-referrer',
      // Plain HTTP on this machine: there is no secure transport to insist on.
      strictTransportSecurity: false,
      permissionsPolicy: { microphone: ['self'], camera: [], geolocation: [] },
    }),
  );
  base.use('*', checkHost(options.port ?? (() => undefined)));
  base.use('/api/*', checkOrigin);
  base.use('/api/*', async (c, next) => {
    await next();
    c.header('Cache-Control', 'no-store');
  });
  base.use('/api/*', (c, next) => limit(MOST[c.req.path] ?? BODY_MAX)(c, next));

  const app = base
    .route('/api', notesRoutes(house))
    .route('/api', runsRoutes(house))
    .route('/api', dogsRoutes(house))
    .route('/api', dogRoutes(house))
    .route('/api', peopleRoutes(house))
    .route('/api', kennelRoutes(house))
    .route('/api', loadRoutes(house))
    .route('/api', watchRoutes(house))
    .route('/api', importRoutes(house))
    .route('/api', exportRoutes(house))
    .route('/api', searchRoutes(house));
  app.doc31('/api/openapi.json', {
    openapi: '3.1.0',
    info: {
      title: 'Snackstop',
      version: options.version,
      description: 'Notes of a sled-dog musher, the entries read out of them, their review, runs and load. Local only.',
      license: { name: 'MIT' },
    },
  });
  app.all('/api/*', (c) => fail(c, 'not-found', `There is no ${c.req.method} ${c.req.path} here.`));
  if (options.web) app.route('/', pages(options.web));
  return Object.assign(app, { house });
}

/** For the typed client: `hc<AppType>('/')`. */
export type AppType = ReturnType<typeof createApp>;
