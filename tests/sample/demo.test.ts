import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, rmSync, watch } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { describe, expect, it } from 'vitest';
import { FolderNotEmptyError, readDemoFlags, startDemo } from '../../server/demo.ts';
import { PortInUseError } from '../../server/serve.ts';

const root = new URL('../../', import.meta.url);
const demo = (env: Record<string, string>, ...args: string[]) =>
  spawn(process.execPath, ['--import', 'tsx', 'server/demo.ts', ...args], {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });

describe('the demo', () => {
  it('serves the season with the last week waiting, and leaves nothing behind', async () => {
    const { url, folder, sample, stop } = await startDemo(0);
    try {
      const status = (await (await fetch(`${url}/api/status`)).json()) as Record<string, unknown>;
      expect(status).toMatchObject({
        season: '2026-27',
        today: '2027-04-23',
        units: 'imperial',
        kennel: 'Kettle Hill',
      });
      expect(status.waiting).toBe(sample.waiting);
      expect(sample.waiting).toBeGreaterThan(10);
      const waiting = (await (await fetch(`${url}/api/notes?state=waiting&limit=500`)).json()) as {
        total: number;
        notes: { at: string }[];
      };
      expect(waiting.total).toBe(sample.waiting);
      for (const note of waiting.notes) expect(note.at >= '2027-04-17').toBe(true);
      const reviewed = (await (await fetch(`${url}/api/notes?state=reviewed&limit=1`)).json()) as { total: number };
      expect(reviewed.total).toBe(sample.notes - sample.waiting);
      expect(existsSync(folder)).toBe(true);
    } finally {
      await stop();
    }
    expect(existsSync(folder)).toBe(false);
  });

  it('fills an empty folder that is named, leaves it there, and takes none that holds something', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'snackstop-demo-kept-'));
    try {
      const { stop, folder: filled } = await startDemo(0, folder);
      await stop();
      expect(filled).toBe(folder);
      const held = readdirSync(folder).sort();
      expect(held.length).toBeGreaterThan(0);
      await expect(startDemo(0, folder)).rejects.toThrow(FolderNotEmptyError);
      expect(readdirSync(folder).sort()).toEqual(held);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it.each(['SIGINT', 'SIGTERM'] as const)('stops at %s and removes its folder', async (signal) => {
    const child = demo({}, '--port', '0');
    const ended = once(child, 'exit');
    const [line] = (await once(createInterface({ input: child.stdout }), 'line')) as [string];
    const folder = / in (\S+) till it stops/.exec(line)?.[1] as string;
    expect(line).toMatch(
      /^Snackstop answers at http:\/\/127\.0\.0\.1:\d+ with \d+ notes of the season 2026-27, \d+ of them/,
    );
    expect(existsSync(folder)).toBe(true);
    child.kill(signal);
    expect(await ended).toEqual([0, null]);
    expect(existsSync(folder)).toBe(false);
  });

  it('stopped while the season is still being read in, it removes its folder too', async () => {
    const temporary = await mkdtemp(join(tmpdir(), 'snackstop-demo-test-'));
    const child = demo({ TMPDIR: temporary }, '--port', '0');
    const ended = once(child, 'exit');
    const watcher = watch(temporary);
    await once(watcher, 'change');
    watcher.close();
    child.kill('SIGTERM');
    await ended;
    expect(readdirSync(temporary).filter((name) => name.startsWith('snackstop-demo-'))).toEqual([]);
    rmSync(temporary, { recursive: true });
  });

  it('says so when the port is taken, and removes its folder', async () => {
    const other = createServer();
    other.listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as { port: number };
    try {
      await expect(startDemo(port)).rejects.toThrow(PortInUseError);
    } finally {
      other.close();
    }
  });

  it('reads its flags', () => {
    expect(readDemoFlags([])).toEqual({ port: 4600 });
    expect(readDemoFlags(['--port', '0'])).toEqual({ port: 0 });
    expect(readDemoFlags(['--data', 'x'])).toEqual({ port: 4600, data: 'x' });
    expect(readDemoFlags(['-h'])).toEqual({ help: true });
    for (const wrong of [['--port', '70000'], ['--port', 'x'], ['--folder', '/tmp'], ['now']])
      expect(readDemoFlags(wrong)).toHaveProperty('says');
  });
});
