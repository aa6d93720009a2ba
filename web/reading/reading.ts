/**
 * What the grammar reads from the words in the note box, on this device, at once. The grammar is fetched when the first
 * word is there; until then, and where it can't be fetched, the page works without it.
 */
import type { Context } from '../../grammar/entry.ts';
import type { Reading } from '../../grammar/parse.ts';
import { getContext } from '../api.ts';
import { localIso } from '../times.ts';
import type { ReadAnswer, ReadJob } from './worker.ts';

let worker: Worker | undefined;
let number = 0;
const open = new Map<number, { resolve: (reading: Reading) => void; reject: (error: Error) => void }>();

function theWorker(): Worker {
  if (worker) return worker;
  const made = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  made.addEventListener('message', ({ data }: MessageEvent<ReadAnswer>) => {
    const asked = open.get(data.number);
    open.delete(data.number);
    if ('reading' in data) asked?.resolve(data.reading);
    else asked?.reject(new Error(data.error));
  });
  // It could not be fetched, or it broke: give up on what was asked, and start afresh with the next word.
  made.addEventListener('error', () => {
    worker = undefined;
    made.terminate();
    for (const asked of open.values()) asked.reject(new Error('The grammar could not be loaded on this device.'));
    open.clear();
  });
  worker = made;
  return made;
}

/** Reads a text on this device. Rejects when the grammar can't be loaded here. */
export function readHere(text: string, context: Context): Promise<Reading> {
  const job: ReadJob = { number: ++number, text, context };
  return new Promise((resolve, reject) => {
    open.set(job.number, { resolve, reject });
    theWorker().postMessage(job);
  });
}

/** Fetches the grammar ahead of the first word, so that it is there when the word comes. */
export function warmUp(): void {
  readHere('', NOTHING).catch(() => undefined);
}

const NOTHING: Context = { dogs: [], people: [], lineup: [], units: 'imperial' };
const KEY = 'snackstop.context';

/** The last context the server gave, kept on the device so that names are known without a connection. */
export function keptContext(): Context {
  try {
    return { ...NOTHING, ...JSON.parse(localStorage.getItem(KEY) ?? '{}') };
  } catch {
    return NOTHING;
  }
}

/** Asks the server for roster and line-up as they are now; keeps and gives the last known where it is away. */
export async function freshContext(by?: string): Promise<Context> {
  try {
    const context = await getContext(localIso(), by);
    try {
      localStorage.setItem(KEY, JSON.stringify(context));
    } catch {
      // No room on the device: the context holds until the page is left.
    }
    return context;
  } catch {
    return keptContext();
  }
}
