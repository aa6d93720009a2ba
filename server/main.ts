/** `npm start`: flags and environment, then start. */
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';

const USAGE = `Snackstop keeps a musher's notes on this machine and answers on 127.0.0.1 alone.

  npm start -- [--port N] [--data FOLDER]

  --port N       the port to answer on; 4600 when left out, 0 for any free one
  --data FOLDER  where the notes are kept; else SNACKSTOP_DATA, else snackstop in
                 XDG_DATA_HOME, else .snackstop in the home folder
  --help         this text`;

/** What the flags and the environment ask for, or the sentence that says what is wrong with them. */
export function readFlags(
  args: string[],
  env: Record<string, string | undefined>,
): { port: number; folder: string } | { help: true } | { says: string } {
  let values: { port?: string; data?: string; help?: boolean };
  try {
    ({ values } = parseArgs({
      args,
      options: { port: { type: 'string' }, data: { type: 'string' }, help: { type: 'boolean', short: 'h' } },
      strict: true,
      allowPositionals: false,
    }));
  } catch (error) {
    return { says: (error as Error).message };
  }
  if (values.help) return { help: true };
  const port = values.port ?? '4600';
  if (!/^\d{1,5}$/.test(port) || Number(port) > 65_535)
    return { says: `“${port}” is no port: a port is a whole number from 0 to 65535.` };
  if (values.data !== undefined && values.data.trim() === '') return { says: '--data needs the name of a folder.' };
  return { port: Number(port), folder: resolve(values.data ?? dataFolder(env)) };
}

/** Where the notes are kept when no flag says. XDG Base Directory Specification 0.8: a relative path there is no path. */
export function dataFolder(env: Record<string, string | undefined>): string {
  if (env.SNACKSTOP_DATA) return env.SNACKSTOP_DATA;
  if (env.XDG_DATA_HOME?.startsWith('/')) return join(env.XDG_DATA_HOME, 'snackstop');
  return join(homedir(), '.snackstop');
}

async function main(): Promise<void> {
  const flags = readFlags(process.argv.slice(2), process.env);
  if ('help' in flags) {
    console.log(USAGE);
    return;
  }
  if ('says' in flags) {
    console.error(`${flags.says}\n\n${USAGE}`);
    process.exitCode = 2;
    return;
  }
  // Loaded only now: a wrong flag is answered at once.
  const { PortInUseError, serve } = await import('./serve.ts');
  const { FolderInUseError, FolderUnusableError } = await import('./store/index.ts');
  try {
    const { url, folder, warnings, stop } = await serve(flags);
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop());
    console.log([`Snackstop answers at ${url} and keeps its notes in ${folder}`, ...warnings].join(' · '));
  } catch (error) {
    const known = [FolderInUseError, FolderUnusableError, PortInUseError].some((kind) => error instanceof kind);
    console.error(known ? (error as Error).message : error);
    process.exitCode = 1;
  }
}

// Imported by a test, it only lends its functions.
if (process.argv[1] && import.meta.url === pathToFileURL(resolve(process.argv[1])).href) await main();
