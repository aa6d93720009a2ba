/** Snackstop running: the store opened, the app on a port of this machine, and the way to stop it. */
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { createAdaptorServer } from '@hono/node-server';
import { type AppOptions, createApp } from './app.ts';
import { rereadAll } from './notes/reread-all.ts';
import { openStore } from './store/index.ts';

const ADDRESS = '127.0.0.1';
/** How long requests under way get to finish when it is stopped, in ms. */
const GRACE = 5_000;

export interface ServeOptions extends Partial<Pick<AppOptions, 'read' | 'now'>> {
  /** 0 takes any free port. */
  port: number;
  /** Where the notes are kept. */
  folder: string;
}

export interface Serving {
  url: string;
  port: number;
  folder: string;
  /** Sentences about files set aside and earlier copies used. */
  warnings: readonly string[];
  /** Resolves when the notes that wait have been read again with the grammar of now. */
  ready: Promise<void>;
  /** Takes no more requests, lets those under way finish, and closes the store. */
  stop: () => Promise<void>;
}

/** Another program has the port. */
export class PortInUseError extends Error {
  override readonly name = 'PortInUseError';
}

/** The version in package.json. */
export function version(): string {
  const file = fileURLToPath(new URL('../package.json', import.meta.url));
  return (JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version;
}

/**
 * Opens the folder and answers on the port; resolves when it does.
 * @throws FolderInUseError, FolderUnusableError, PortInUseError with a sentence; nothing is left open then.
 */
export async function serve(options: ServeOptions): Promise<Serving> {
  const store = await openStore(options.folder);
  let port: number | undefined;
  const app = createApp({
    store,
    version: version(),
    port: () => port,
    web: fileURLToPath(new URL('../dist/web', import.meta.url)),
    ...(options.read ? { read: options.read } : {}),
    ...(options.now ? { now: options.now } : {}),
  });
  const server = createAdaptorServer({ fetch: app.fetch, hostname: ADDRESS });
  try {
    server.listen(options.port, ADDRESS);
    await once(server, 'listening');
  } catch (error) {
    await store.close();
    if ((error as NodeJS.ErrnoException).code === 'EADDRINUSE')
      throw new PortInUseError(
        `Port ${options.port} is taken by another program. Stop it, or give Snackstop another one: --port ${options.port + 1}`,
      );
    if ((error as NodeJS.ErrnoException).code === 'EACCES')
      throw new PortInUseError(
        `This account may not use port ${options.port}. Ports from 1024 on are free for everyone.`,
      );
    throw error;
  }
  port = (server.address() as AddressInfo).port;
  await store.announce(port);
  // The grammar may have improved since the notes that wait were read.
  const ready = rereadAll(app.house).then(
    () => undefined,
    (error: unknown) => console.error(`The notes that wait could not be read again: ${(error as Error).message}`),
  );

  let stopping: Promise<void> | undefined;
  const stop = async () => {
    const closed = once(server, 'close');
    server.close();
    // A connection that is kept alive has to be let go of once its last request has been answered.
    const idle = setInterval(() => 'closeIdleConnections' in server && server.closeIdleConnections(), 20);
    const late = setTimeout(() => 'closeAllConnections' in server && server.closeAllConnections(), GRACE);
    await closed;
    clearInterval(idle);
    clearTimeout(late);
    await app.house.rereading;
    await store.close();
  };
  return {
    url: `http://${ADDRESS}:${port}`,
    port,
    folder: store.folder,
    warnings: store.warnings,
    ready,
    stop: () => {
      stopping ??= stop();
      return stopping;
    },
  };
}
