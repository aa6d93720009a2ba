/** What the store's tests share. All people and dogs are invented. */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import type { Note, Season } from '../../server/model.ts';
import type { Processes } from '../../server/store/processes.ts';

export const SEASON = '2026-27';

/** A UUID of version 7 (RFC 9562) whose last part is the number. */
export function uuid(n: number): string {
  return `0192f000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
}

export function note(n: number, text = `Note ${n}: Juniper’s left wrist is a bit sore.`): Note {
  return {
    id: uuid(n),
    text,
    at: '2026-11-02T10:40:00-09:00',
    by: 'Wren',
    source: 'typed',
    received: '2026-11-02T19:40:00Z',
    aside: false,
    entries: [
      {
        id: uuid(1_000_000 + n),
        entry: {
          kind: 'finding',
          dogs: ['Juniper'],
          part: 'wrist',
          side: 'left',
          sign: 'sore',
          severity: 'mild',
          span: [0, 10],
        },
        from: 'read',
        state: 'proposed',
      },
    ],
    unknownNames: [],
    history: [],
  };
}

/** A change that adds notes; its answer is how many there are then. */
export function add(...notes: Note[]) {
  return (season: Season): [Season, number] => {
    const next = { ...season, notes: [...season.notes, ...notes] };
    return [next, next.notes.length];
  };
}

export const ids = (season: Season) => season.notes.map((n) => n.id);

/** Processes of a model: only those whose number is in the set run. */
export function modelProcesses(pid: number, running: Set<number>, machine = 'here'): Processes {
  running.add(pid);
  return {
    self: async () => ({ pid, started: `start of ${pid}`, machine, host: 'kennelbox' }),
    runs: async (process) => running.has(process.pid),
    pause: async () => {
      for (let turns = 0; turns < 100; turns++) await new Promise(setImmediate);
    },
  };
}

/** A new folder, removed after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'snackstop-store-'));
  made.push(folder);
  return folder;
}
const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});
