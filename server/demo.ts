/** `npm run demo`: Snackstop on the sample season, in a temporary folder of which nothing stays, or in an empty one of yours. */
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { DateTime } from 'luxon';
import { type LoadedSample, loadSample } from './import/load-sample.ts';
import { PortInUseError, type Serving, serve } from './serve.ts';

const USAGE = `Snackstop on the sample season, in a temporary folder that is removed at the end.

  npm run demo -- [--port N] [--data FOLDER]

  --port N       the port to answer on; 4600 when left out, 0 for any free one
  --data FOLDER  fill this folder instead, new or empty, and leave it there
  --help         this text`;

/** The folder that was named holds something already; nothing was changed in it. */
export class FolderNotEmptyError extends Error {}

export interface Demo extends Serving {
  sample: LoadedSample;
}

/**
 * Fills a temporary folder, or the new or empty folder `data`, with the sample season and serves it. The clock stands at the evening of the season's last day
 * and goes on from there, so that the pages show a season that has just ended. `stop` removes a temporary folder.
 * Throws FolderNotEmptyError.
 */
export async function startDemo(port: number, data?: string): Promise<Demo> {
  if (data !== undefined && existsSync(data) && readdirSync(data).length > 0)
    throw new FolderNotEmptyError(
      `${data} is not empty. The sample season goes into a new or an empty folder only; nothing was changed there.`,
    );
  const folder = data === undefined ? mkdtempSync(join(tmpdir(), 'snackstop-demo-')) : resolve(data);
  const remove = () => {
    if (data === undefined) rmSync(folder, { recursive: true, force: true });
  };
  // Also where the process ends without a stop: an error, a second interrupt.
  process.once('exit', remove);
  try {
    const sample = await loadSample(folder);
    const began = Date.now();
    const end = DateTime.fromISO(sample.end, { setZone: true });
    const now = () => end.plus({ milliseconds: Date.now() - began }).toISO() as string;
    const serving = await serve({ port, folder, now });
    const stop = async () => {
      await serving.stop();
      remove();
      process.removeListener('exit', remove);
    };
    return { ...serving, sample, stop };
  } catch (error) {
    remove();
    process.removeListener('exit', remove);
    throw error;
  }
}

/** The port that the flags ask for, or the sentence that says what is wrong with them. */
export function readDemoFlags(args: string[]): { port: number; data?: string } | { help: true } | { says: string } {
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
  if (values.data === '') return { says: '--data names no folder.' };
  return { port: Number(port), ...(values.data === undefined ? {} : { data: values.data }) };
}

async function main(): Promise<void> {
  const flags = readDemoFlags(process.argv.slice(2));
  if ('help' in flags) {
    console.log(USAGE);
    return;
  }
  if ('says' in flags) {
    console.error(`${flags.says}\n\n${USAGE}`);
    process.exitCode = 2;
    return;
  }
  let running: Demo | undefined;
  // Set before the season is read in: a stop meanwhile ends the process, and its exit removes the folder.
  const end = () => {
    if (!running) process.exit(1);
    running.stop().catch((error: unknown) => {
      console.error(error);
      process.exitCode = 1;
    });
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, end);
  try {
    running = await startDemo(flags.port, flags.data);
    const { url, folder, sample, warnings } = running;
    const notes = `${sample.notes} notes of the season ${sample.season}, ${sample.waiting} of them waiting for review`;
    console.log(
      [
        `Snackstop answers at ${url} with ${notes}, in ${folder}${flags.data === undefined ? ' till it stops' : ''}`,
        ...warnings,
      ].join(' · '),
    );
  } catch (error) {
    console.error(error instanceof PortInUseError || error instanceof FolderNotEmptyError ? error.message : error);
    process.exitCode = 1;
  }
}

// Imported by a test, it only lends its functions.
if (process.argv[1] && import.meta.url === new URL(`file://${resolve(process.argv[1])}`).href) await main();
