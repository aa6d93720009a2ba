/** One process a folder, with real processes and with processes of a model. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { FolderInUseError, NotKeptError, openStore } from '../../server/store/index.ts';
import { processes } from '../../server/store/processes.ts';
import { chances } from './chances.ts';
import { add, ids, modelProcesses, note, SEASON, temporaryFolder, uuid } from './helpers.ts';
import { ModelDisk } from './model-disk.ts';

const script = fileURLToPath(new URL('child.ts', import.meta.url));
const children: ChildProcess[] = [];
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
});

/** A child with the folder open; `line` gives what it says next. */
async function child(folder: string, ...command: string[]) {
  const process_ = spawn(process.execPath, ['--import', 'tsx', script, folder, ...command], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  children.push(process_);
  const lines = createInterface({ input: process_.stdout })[Symbol.asyncIterator]();
  const line = async () => JSON.parse((await lines.next()).value ?? 'null');
  return { process: process_, line, opening: await line() };
}
const locks = (folder: string) => readdirSync(folder).filter((name) => name.startsWith('lock-'));

describe('real processes', () => {
  it('refuse a folder that another one has, and say which', async () => {
    const folder = temporaryFolder();
    const holder = await child(folder, 'hold');
    expect(await holder.line()).toBe('held');
    const opening = openStore(folder);
    await expect(opening).rejects.toThrow(FolderInUseError);
    await expect(opening).rejects.toThrow(
      new RegExp(
        `^The folder ${folder} is in use: Snackstop is already running there \\(process ${holder.process.pid}, at http://127\\.0\\.0\\.1:4600, since .* UTC\\)\\. Use that one, or stop it first\\.$`,
      ),
    );
    await expect(opening).rejects.toMatchObject({ holder: { pid: holder.process.pid, port: 4600 } });
    expect(locks(folder)).toHaveLength(1);
  });

  it('take a folder at once when the one that had it was killed', async () => {
    const folder = temporaryFolder();
    const holder = await child(folder, 'hold');
    await holder.line();
    holder.process.kill('SIGKILL');
    // Not waited for: the process may still be going when the store looks.
    const store = await openStore(folder);
    expect(store.warnings).toEqual([]);
    expect(locks(folder)).toHaveLength(1);
    await store.close();
    expect(locks(folder)).toEqual([]);
  });

  it('keep a folder while they are too busy to say so', async () => {
    const folder = temporaryFolder();
    const holder = await child(folder, 'busy');
    expect(await holder.line()).toBe('busy');
    // As if nothing had been heard of it for a day.
    const [name = ''] = locks(folder);
    const yesterday = new Date(Date.now() - 86_400_000);
    utimesSync(join(folder, name), yesterday, yesterday);
    await expect(openStore(folder)).rejects.toThrow(FolderInUseError);
    writeFileSync(join(folder, 'enough'), '');
    expect(await holder.line()).toBe('done');
  });

  it('open a folder once even within one process', async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder);
    await expect(openStore(folder)).rejects.toThrow(FolderInUseError);
    await store.changeSeason(SEASON, add(note(1)));
    await store.close();
    await (await openStore(folder)).close();
  });

  it('are told from others that have their number now', async () => {
    const folder = temporaryFolder();
    const self = await processes.self();
    // The lock of a dead process whose number this very process has got.
    const dead = { ...self, started: '1', since: '2026-01-01T00:00:00.000Z' };
    writeFileSync(join(folder, `lock-${self.pid}-00000000.json`), JSON.stringify(dead));
    // And one that a power cut left empty.
    writeFileSync(join(folder, 'lock-77-00000000.json'), '');
    await (await openStore(folder)).close();
    expect(locks(folder)).toEqual([]);
    expect(await processes.runs(self)).toBe(true);
    expect(await processes.runs({ ...self, started: '1' })).toBe(self.started === undefined);
  });

  it('that were killed and not waited for do not run any more', async () => {
    // The shell kills its child and never waits for it: the child stays a zombie as long as the shell lives.
    const shell = spawn('sh', ['-c', 'sleep 60 & echo $!; kill -9 $!; exec sleep 60'], {
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    children.push(shell);
    const [data] = await once(shell.stdout, 'data');
    const pid = Number(String(data));
    const self = await processes.self();
    await expect.poll(() => processes.runs({ ...self, pid, started: undefined })).toBe(false);
  });
});

describe('processes of a model', () => {
  it.each(Array.from({ length: 40 }, (_, seed) => seed))(
    'that come at the same moment: one gets the folder (%i)',
    async (seed) => {
      const disk = new ModelDisk();
      const chance = chances(seed);
      disk.turn = async () => {
        for (let turns = Math.floor(chance() * 6); turns > 0; turns--) await new Promise(setImmediate);
      };
      const running = new Set<number>();
      // One was killed before.
      disk.put(
        'lock-1-00000000.json',
        JSON.stringify({
          pid: 1,
          started: 'start of 1',
          machine: 'here',
          host: 'kennelbox',
          since: '2026-01-01T00:00:00.000Z',
        }),
      );
      const openings = [2, 3, 4].map((pid) =>
        openStore(disk.folder, { files: disk, processes: modelProcesses(pid, running) }),
      );
      const results = await Promise.allSettled(openings);
      const got = results.filter((r) => r.status === 'fulfilled');
      expect(got).toHaveLength(1);
      for (const r of results) if (r.status === 'rejected') expect(r.reason).toBeInstanceOf(FolderInUseError);
      expect(Object.keys(disk.contents()).filter((name) => name.startsWith('lock-'))).toHaveLength(1);
      await got[0]?.value.close();
    },
  );

  it('on another machine have the folder as long as their file is touched', async () => {
    const disk = new ModelDisk();
    const there = await openStore(disk.folder, { files: disk, processes: modelProcesses(1, new Set(), 'there') });
    const name = Object.keys(disk.contents()).find((n) => n.startsWith('lock-')) as string;
    await disk.touch(`${disk.folder}/${name}`);
    const here = { files: disk, processes: modelProcesses(1, new Set(), 'here') };
    await expect(openStore(disk.folder, here)).rejects.toThrow(
      /on the machine kennelbox \(process 1, since .*\)\. Stop that one first; if it is gone already, wait half a minute/,
    );
    // Put back as a file last touched long ago: the other machine was switched off.
    disk.put(name, disk.contents()[name] as string);
    const store = await openStore(disk.folder, here);
    await store.changeSeason(SEASON, add(note(1)));
    // The other one was only asleep. It finds its folder taken, and keeps its hands off.
    await disk.touch(`${disk.folder}/${Object.keys(disk.contents()).find((n) => n.startsWith('lock-'))}`);
    const late = there.changeSeason(SEASON, add(note(2)));
    await expect(late).rejects.toThrow(NotKeptError);
    await expect(late).rejects.toThrow(/^The note was not kept: The folder \/kennel is in use/);
    expect(ids(JSON.parse(disk.contents()['season-2026-27.json'] ?? ''))).toEqual([uuid(1)]);
    await there.close();
    await store.close();
  });

  it('go on when a person has deleted their lock file', async () => {
    const disk = new ModelDisk();
    const store = await openStore(disk.folder, { files: disk, processes: modelProcesses(1, new Set()) });
    for (const name of Object.keys(disk.contents())) if (name.startsWith('lock-')) disk.delete(name);
    expect(await store.changeSeason(SEASON, add(note(1)))).toBe(1);
    expect(Object.keys(disk.contents()).filter((name) => name.startsWith('lock-'))).toHaveLength(1);
    await store.close();
  });
});
