/** A disk that is full, read-only or broken: the change is rejected, nothing is lost, and it goes on once the disk does. */
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { FolderUnusableError, NotKeptError, openStore } from '../../server/store/index.ts';
import { add, ids, modelProcesses, note, SEASON, temporaryFolder, uuid } from './helpers.ts';
import { CHANGING, ModelDisk, type Step, systemError } from './model-disk.ts';

let starts = 0;
async function opened(disk = new ModelDisk()) {
  // Each start is a process of its own; the ones before are gone.
  const store = await openStore(disk.folder, { files: disk, processes: modelProcesses(++starts, new Set()) });
  return { disk, store };
}
const files = (disk: ModelDisk) =>
  Object.fromEntries(Object.entries(disk.contents()).filter(([name]) => !name.startsWith('lock-')));

/** The steps of writing one more note into a season that has two. */
async function stepsOfAWrite(): Promise<{ step: Step; name: string }[]> {
  const { disk, store } = await opened();
  await store.changeSeason(SEASON, add(note(1)));
  await store.changeSeason(SEASON, add(note(2)));
  const before = disk.steps.length;
  await store.changeSeason(SEASON, add(note(3)));
  await store.close();
  return disk.steps.slice(before).filter(({ name }) => !name.startsWith('lock-'));
}

it('writes in the order that keeps a whole file at every instant', async () => {
  const steps = (await stepsOfAWrite())
    .filter(({ step }) => step !== 'stamp')
    .map(({ step, name }) => `${step} ${name}`);
  expect(steps).toEqual([
    'create season-2026-27.json.tmp',
    'write season-2026-27.json.tmp',
    'sync season-2026-27.json.tmp',
    'close season-2026-27.json.tmp',
    'link season-2026-27.earlier.json.tmp',
    'rename season-2026-27.earlier.json',
    'remove season-2026-27.earlier.json.tmp',
    'rename season-2026-27.json',
    'syncFolder kennel',
  ]);
});

const steps = await stepsOfAWrite();
const failures = steps.flatMap(({ step, name }, at) =>
  ['ENOSPC', 'EROFS', 'EIO'].map((code) => ({ what: `${step} ${name}`, at, code })),
);

describe.each(['first write', 'later write'])('a failing step of a season’s %s', (which) => {
  it.each(failures)('$what fails with $code', async ({ at, code }) => {
    const { disk, store } = await opened();
    const notes = which === 'first write' ? [] : [note(1), note(2)];
    for (const n of notes) await store.changeSeason(SEASON, add(n));
    const before = { state: store.season(SEASON), files: files(disk) };

    // From that step of the write on nothing works, as it is with a full disk.
    let left = at;
    disk.before = (step, name) => {
      if (name.startsWith('lock-')) return;
      if (left-- <= 0 && CHANGING.includes(step)) throw systemError(code);
    };
    const results = await Promise.allSettled([
      store.changeSeason(SEASON, add(note(3))),
      store.changeSeason(SEASON, add(note(4))),
    ]);
    disk.before = () => {};
    if (results.every((r) => r.status === 'fulfilled')) {
      // Only the first write, which has nothing to keep a copy of, is over before the last of these steps.
      expect(which).toBe('first write');
      expect(ids(store.season(SEASON))).toEqual([...notes.map((n) => n.id), uuid(3), uuid(4)]);
      return;
    }
    for (const result of results) {
      const { reason } = result as PromiseRejectedResult;
      expect(reason).toBeInstanceOf(NotKeptError);
      expect(reason.code).toBe(code);
      expect(reason.message).toMatch(
        /^The note was not kept: season-2026-27\.json could not be written, because .*\(E[A-Z]+\)\. What was kept before is unharmed\./,
      );
    }
    // Memory is again what it was, and a start now finds it too, unless not even taking back worked, which is said.
    expect(ids(store.season(SEASON))).toEqual(ids(before.state));
    expect(store.findNote(uuid(3))).toBeUndefined();
    const unsure = (results[0] as PromiseRejectedResult).reason.message.includes(
      'It may be found there after the next start',
    );
    const restarted = await opened(disk.afterKill());
    const found = ids(restarted.store.season(SEASON));
    await restarted.store.close();
    const kept = notes.map((n) => n.id);
    if (unsure) expect([kept, [...kept, uuid(3), uuid(4)]]).toContainEqual(found);
    else expect(found).toEqual(kept);

    // The disk works again: the same notes are taken as if nothing had been.
    expect(await store.changeSeason(SEASON, add(note(3)))).toBe(notes.length + 1);
    expect(await store.changeSeason(SEASON, add(note(4)))).toBe(notes.length + 2);
    await store.close();
    const after = await opened(disk.afterKill());
    expect(ids(after.store.season(SEASON))).toEqual([...kept, uuid(3), uuid(4)]);
    expect(after.store.warnings).toEqual([]);
    expect(Object.keys(files(disk)).filter((name) => name.endsWith('.tmp'))).toEqual([]);
    await after.store.close();
  });
});

it('takes a note back from the disk when only the flush of the folder failed', async () => {
  const { disk, store } = await opened();
  await store.changeSeason(SEASON, add(note(1)));
  let fail = true;
  disk.before = (step) => {
    if (step === 'syncFolder' && fail) {
      fail = false;
      throw systemError('EIO');
    }
  };
  await expect(store.changeSeason(SEASON, add(note(2)))).rejects.toThrow(/^The note was not kept: .*reported a fault/);
  const restarted = await opened(disk.afterKill());
  expect(ids(restarted.store.season(SEASON))).toEqual([uuid(1)]);
  await restarted.store.close();
  await store.close();
});

it('leaves no half of a file on a disk that is full, where it would take the room', async () => {
  const { disk, store } = await opened();
  await store.changeSeason(SEASON, add(note(1)));
  for (const full of ['write', 'sync', 'link', 'rename'] satisfies Step[]) {
    disk.before = (step) => {
      if (step === full) throw systemError('ENOSPC');
    };
    await expect(store.changeSeason(SEASON, add(note(2)))).rejects.toThrow(NotKeptError);
    expect(Object.keys(files(disk)).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  }
  disk.before = () => {};
  await store.close();
});

it('names what was not kept', async () => {
  const { disk, store } = await opened();
  disk.before = (step) => {
    if (step === 'create') throw systemError('ENOSPC');
  };
  await expect(store.changeKennel((k) => [{ ...k }, 0], 'The dog')).rejects.toThrow(
    'The dog was not kept: kennel.json could not be written, because the disk is full (ENOSPC). What was kept before is unharmed. Send it again once that is mended.',
  );
  disk.before = () => {};
  await store.close();
});

it('opens a folder on a disk that is full, shows what is kept, and takes notes again when there is room', async () => {
  const first = await opened();
  await first.store.changeSeason(SEASON, add(note(1)));
  await first.store.close();
  const disk = first.disk.afterKill();
  let full = true;
  disk.before = (step) => {
    if (full && ['create', 'write', 'link', 'rename'].includes(step)) throw systemError('ENOSPC');
  };
  const { store } = await opened(disk);
  expect(store.warnings).toEqual([
    expect.stringMatching(
      /^The folder \/kennel can't be written: the disk is full \(ENOSPC\)\. What it holds can be read/,
    ),
  ]);
  expect(ids(store.season(SEASON))).toEqual([uuid(1)]);
  await expect(store.changeSeason(SEASON, add(note(2)))).rejects.toThrow(NotKeptError);
  full = false;
  expect(await store.changeSeason(SEASON, add(note(2)))).toBe(2);
  await store.close();
});

it('does not start in an empty folder that can’t be written', async () => {
  const disk = new ModelDisk();
  disk.before = (step) => {
    if (step === 'create') throw systemError('EROFS');
  };
  const opening = opened(disk);
  await expect(opening).rejects.toThrow(FolderUnusableError);
  await expect(opening).rejects.toThrow("The folder /kennel can't be used: the disk is read-only (EROFS).");
});

it('leaves a damaged file in place while it can’t be set aside, and writes nothing over it', async () => {
  const first = await opened();
  await first.store.changeSeason(SEASON, add(note(1)));
  await first.store.changeSeason(SEASON, add(note(2)));
  await first.store.close();
  const disk = first.disk.afterKill();
  disk.put('season-2026-27.json', 'broken');
  let full = true;
  disk.before = (step, name) => {
    if (full && !name.startsWith('lock-') && ['create', 'link', 'rename'].includes(step)) throw systemError('ENOSPC');
  };
  const { store } = await opened(disk);
  expect(store.warnings).toEqual([
    expect.stringContaining('It stays where it is, because it could not be set aside yet: the disk is full (ENOSPC)'),
  ]);
  expect(ids(store.season(SEASON))).toEqual([uuid(1)]);
  await expect(store.changeSeason(SEASON, add(note(3)))).rejects.toThrow(NotKeptError);
  expect(disk.contents()['season-2026-27.json']).toBe('broken');
  full = false;
  await store.changeSeason(SEASON, add(note(3)));
  await store.close();
  expect(Object.entries(disk.contents()).find(([name]) => name.includes('unreadable'))?.[1]).toBe('broken');
});

it('keeps the earlier copy by copying where the file system knows no second name', async () => {
  const disk = new ModelDisk();
  disk.linksAreKnown = false;
  const { store } = await opened(disk);
  for (const n of [1, 2, 3]) await store.changeSeason(SEASON, add(note(n)));
  await store.close();
  const kept = files(disk);
  expect(Object.keys(kept).sort()).toEqual(['kennel.json', 'season-2026-27.earlier.json', 'season-2026-27.json']);
  expect(ids(JSON.parse(kept['season-2026-27.earlier.json'] ?? ''))).toEqual([uuid(1), uuid(2)]);
});

/** Runs tests/store/child.ts, which answers each note with a line. */
const child = fileURLToPath(new URL('child.ts', import.meta.url));
const node = ['--import', 'tsx', child];

describe('for real', () => {
  it('a folder this account may only read', async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder);
    await store.changeSeason(SEASON, add(note(1)));
    await store.close();
    chmodSync(folder, 0o555);
    // The administrator may write everywhere: go down to the account that owns nothing.
    const nobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
    const run = spawnSync(process.execPath, [...node, folder, 'add', uuid(2)], { encoding: 'utf8', ...nobody });
    chmodSync(folder, 0o755);
    expect(run.stderr).toBe('');
    const [opening, answer] = run.stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(opening).toMatchObject({
      notes: [uuid(1)],
      warnings: [expect.stringContaining('this account may not write there (EACCES)')],
    });
    expect(answer.error).toMatch(/^The note was not kept: .*\(EACCES\)/);
    expect(answer.notes).toEqual([uuid(1)]);
  });

  it('a disk that is really full, until there is room again', async (test) => {
    const folder = temporaryFolder();
    const mounted = `mount -t tmpfs -o size=1m snackstop ${folder}`;
    if (spawnSync('unshare', ['-rm', 'sh', '-c', mounted]).status !== 0)
      test.skip('this system lets the test make no small disk (unshare, mount -t tmpfs)');
    const run = spawn('unshare', [
      '-rm',
      'sh',
      '-c',
      `${mounted} && exec "$0" "$@"`,
      process.execPath,
      ...node,
      folder,
      'fill',
    ]);
    let output = '';
    for await (const part of run.stdout) output += part;
    const lines = output
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    const { kept, error, notes, after, warnings } = lines.at(-1);
    expect(kept).toBeGreaterThan(0);
    expect(error).toMatch(/^The note was not kept: .* the disk is full \(ENOSPC\)/);
    expect(notes).toBe(kept);
    expect(after).toBe(kept + 1);
    expect(warnings).toEqual([]);
  });
});
