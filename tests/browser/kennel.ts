/** A real Snackstop over an empty folder, with an invented kennel in it, and a browser's page that tells of every error. */
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { type Serving, serve } from '../../server/serve.ts';

const INDEX = fileURLToPath(new URL('../../dist/web/index.html', import.meta.url));
/** The zone the browser stands in: its local day differs from UTC's for nine hours of each day. */
export const ZONE = 'America/Anchorage';

export interface Kennel {
  url: string;
  folder: string;
  /** One call of the interface; throws with its sentence when it is not answered well. */
  call<T>(method: string, path: string, body?: unknown): Promise<T>;
  /** Stops answering; the folder stays. */
  stop(): Promise<void>;
  /** Answers again, on the same port. */
  start(): Promise<void>;
  /** Stops for good and removes the folder. */
  end(): Promise<void>;
}

/**
 * Starts the real server on a free port over a new folder. The pages have to be built already.
 * @param now the server's clock; the machine's own when left out
 */
export async function openKennel(now?: () => string): Promise<Kennel> {
  if (!existsSync(INDEX)) throw new Error('The pages are not built: run "npm test", or "npx vite build" first.');
  const folder = await mkdtemp(join(tmpdir(), 'snackstop-browser-'));
  let serving: Serving | undefined = await serve({ port: 0, folder, now });
  const { url, port } = serving;
  return {
    url,
    folder,
    async call<T>(method: string, path: string, body?: unknown): Promise<T> {
      const response = await fetch(`${url}/api${path}`, {
        method,
        headers: body === undefined ? {} : { 'content-type': 'application/json' },
        body: body === undefined ? undefined : JSON.stringify(body),
      });
      const answer = await response.json();
      if (!response.ok) throw new Error(`${method} ${path}: ${response.status} ${JSON.stringify(answer)}`);
      return answer as T;
    },
    async stop() {
      await serving?.stop();
      serving = undefined;
    },
    async start() {
      serving ??= await serve({ port, folder, now });
    },
    async end() {
      await serving?.stop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

export const DOGS = [
  ['Juniper', 'F'],
  ['Moss', 'M'],
  ['Otter', 'M'],
  ['Bramble', 'F'],
  ['Tansy', 'F'],
  ['Kodiak', 'M'],
] as const;

/** Enters six dogs and two people. */
export async function enterKennel(kennel: Kennel): Promise<void> {
  await kennel.call('PUT', '/settings', { kennel: 'Hollow Spruce', units: 'imperial', runGapHours: 5 });
  for (const [name, sex] of DOGS) await kennel.call('POST', '/dogs', { name, sex });
  for (const name of ['Wren', 'Tobias']) await kennel.call('POST', '/people', { name });
}

export interface Watched {
  page: Page;
  /** Errors of the console and of scripts so far. */
  errors: string[];
  close(): Promise<void>;
}
export interface Look {
  width: number;
  height: number;
  theme?: 'day' | 'night';
}
export const PHONE: Look = { width: 390, height: 844 };
export const DESK: Look = { width: 1280, height: 900 };

/**
 * A page with storage of its own, as a device sees it for the first time. Its service worker is left out unless it is
 * what a test is about: it would fetch the whole grammar each time, and answer requests that a test wants to answer.
 */
export async function openPage(
  browser: Browser,
  { width, height, theme = 'day' }: Look,
  serviceWorkers: 'block' | 'allow' = 'block',
): Promise<Watched> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: theme === 'night' ? 'dark' : 'light',
    timezoneId: ZONE,
    locale: 'en-US',
    reducedMotion: 'reduce',
    serviceWorkers,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  const errors: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  return { page, errors, close: () => context.close() };
}
