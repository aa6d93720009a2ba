/**
 * Keeps the pages on the device, so that they come up without a connection from the second visit on and, once this has
 * been installed, from the first. Notes and everything else the server knows are never answered from here.
 */
import type { Kept } from '../vite.config.ts';

/** The parts of the service worker's world that are used; the DOM library does not describe it. */
interface Extendable extends Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Fetching extends Extendable {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
declare const self: {
  addEventListener(type: 'install' | 'activate', listener: (event: Extendable) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  readonly location: Location;
};
/** The files of this build, put in by the build itself. */
declare const __KEPT__: Kept;

const PREFIX = 'snackstop-pages-';
const CACHE = PREFIX + __KEPT__.version;
/** The page for every address; the page takes the address apart. */
const PAGE = '/';
/** A server that has not answered a page by now is as good as away, in ms. */
const PATIENCE = 4_000;

self.addEventListener('install', (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(CACHE);
      // Past the browser's own cache: what is kept here must be this build.
      await cache.addAll(__KEPT__.files.map((file) => new Request(file, { cache: 'reload' })));
      await self.skipWaiting();
    })(),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      const old = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
      // The newest of the older builds stays for a page that is still open with it.
      await Promise.all(old.slice(0, -1).map((name) => caches.delete(name)));
      await self.clients.claim();
    })(),
  );
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin || url.pathname.startsWith('/api/')) return;
  event.respondWith(request.mode === 'navigate' ? page(request) : file(request));
});

/** The page as the server has it now, so that a new build is seen at once; the kept one where the server is away. */
async function page(request: Request): Promise<Response> {
  try {
    return await fetch(request, { signal: AbortSignal.timeout(PATIENCE) });
  } catch (away) {
    const kept = await keptHere(PAGE);
    if (kept) return kept;
    throw away;
  }
}

/** Built files have their content's hash in their names: kept is as good as new. */
async function file(request: Request): Promise<Response> {
  return (await keptHere(request)) ?? fetch(request);
}

/** From this build, else from the one before it. */
async function keptHere(wanted: Request | string): Promise<Response | undefined> {
  const cache = await caches.open(CACHE);
  return (await cache.match(wanted)) ?? caches.match(wanted);
}
