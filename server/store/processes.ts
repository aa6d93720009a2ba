/**
 * Who holds a folder, and whether that process still runs. A process is known by its number and the moment it was
 * started, because numbers are used again; the numbers count only on the machine (on Linux: since that boot, in that
 * process namespace, so that two containers do not take each other's numbers for their own).
 */
import { execFile } from 'node:child_process';
import { readdir, readFile, readlink } from 'node:fs/promises';
import { hostname } from 'node:os';
import { setTimeout } from 'node:timers/promises';
import { promisify } from 'node:util';
import { codeOf } from './errors.ts';

export interface ProcessId {
  pid: number;
  /** When it was started, in the system's own way of writing it; left out where the system does not tell. */
  started?: string;
  /** Where the number counts. */
  machine: string;
  /** The machine's name, for people. */
  host: string;
}

export interface Processes {
  self(): Promise<ProcessId>;
  /** Only for a process whose `machine` is the own one. When in doubt it runs. */
  runs(process: ProcessId): Promise<boolean>;
  /** Until looking again, in milliseconds. */
  pause(ms: number): Promise<void>;
}

/** The real processes of this machine. */
export const processes: Processes = {
  async self() {
    const host = hostname();
    const started = await startOf(process.pid);
    return { pid: process.pid, ...(started && { started }), machine: await machine(host), host };
  },
  async runs({ pid, started }) {
    try {
      process.kill(pid, 0);
    } catch (error) {
      // EPERM: it runs, under another account.
      if (codeOf(error) === 'ESRCH') return false;
    }
    if (started !== undefined) {
      const now = await startOf(pid);
      if (now !== undefined && now !== started) return false;
    }
    return !(await isOver(pid));
  },
  pause: (ms) => setTimeout(ms),
};

async function machine(host: string): Promise<string> {
  if (process.platform !== 'linux') return host;
  try {
    const boot = await readFile('/proc/sys/kernel/random/boot_id', 'latin1');
    return `${boot.trim()} ${await readlink('/proc/self/ns/pid')}`;
  } catch {
    return host;
  }
}

/** State and start (clock ticks since boot) from a stat line, proc(5): fields 3 and 22; field 2 may hold any character. */
function statOf(line: string): { state: string; start: string } {
  const fields = line.slice(line.lastIndexOf(')') + 2).split(' ');
  return { state: fields[0] ?? '', start: fields[19] ?? '' };
}

async function startOf(pid: number): Promise<string | undefined> {
  try {
    if (process.platform === 'linux') return statOf(await readFile(`/proc/${pid}/stat`, 'latin1')).start || undefined;
    if (process.platform === 'win32') return undefined;
    const { stdout } = await promisify(execFile)('ps', ['-o', 'lstart=', '-p', String(pid)], {
      env: { LC_ALL: 'C', TZ: 'UTC', PATH: process.env.PATH },
    });
    return stdout.trim() || undefined;
  } catch {
    return undefined;
  }
}

/**
 * A killed process that nobody has waited for yet still has its number, and a thread of it may still be finishing a call
 * to the disk; it is over once every thread is (states Z and X, proc(5)). Waits a moment for the last ones.
 */
async function isOver(pid: number): Promise<boolean> {
  if (process.platform !== 'linux') return false;
  for (let look = 0; look < 50; look++) {
    const states = await statesOf(pid);
    if (!OVER.includes(states[0] ?? '')) return false;
    if (states.every((state) => OVER.includes(state))) return true;
    await setTimeout(20);
  }
  return false;
}
const OVER = ['Z', 'X'];

/** The states of a process's threads, its own first. */
async function statesOf(pid: number): Promise<string[]> {
  const read = (path: string) => readFile(path, 'latin1').then((line) => statOf(line).state);
  try {
    const first = await read(`/proc/${pid}/stat`);
    const threads = await readdir(`/proc/${pid}/task`).catch(() => []);
    return [first, ...(await Promise.all(threads.map((t) => read(`/proc/${pid}/task/${t}/stat`).catch(() => 'X'))))];
  } catch (error) {
    // Gone since it was asked for, or hidden from this account.
    return codeOf(error) === 'ESRCH' ? ['X'] : [];
  }
}
