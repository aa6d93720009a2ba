/** The whole store as one ZIP and back: to the byte, or refused with nothing written. */
import { createHash } from 'node:crypto';
import { createWriteStream, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { pipeline } from 'node:stream/promises';
import fc from 'fast-check';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { beforeEach, describe, expect, it } from 'vitest';
import { readFolder, restore, storeZip } from '../../server/export/index.ts';
import { disk, type Files } from '../../server/store/files.ts';
import { openStore } from '../../server/store/index.ts';
import { dog } from '../records/build.ts';
import { add, note, temporaryFolder } from '../store/helpers.ts';
import { OPTIONS } from './kennel.ts';

let place: string;
let archive: string;
beforeEach(() => {
  place = temporaryFolder();
  archive = join(place, 'store.zip');
});

/** Every file of a folder but the locks of those who have it open, with its bytes. */
function bytesIn(folder: string): Record<string, string> {
  const names = readdirSync(folder).filter((name) => !name.startsWith('lock-'));
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(folder, name), 'latin1')]));
}

/** A kennel of two seasons with earlier copies, and a file set aside. */
async function filled(folder: string): Promise<void> {
  const store = await openStore(folder);
  await store.changeKennel((kennel) => [{ ...kennel, dogs: [dog('Juniper')] }, null]);
  await store.changeKennel((kennel) => [{ ...kennel, dogs: [...kennel.dogs, dog('Moss')] }, null]);
  await store.changeSeason('2025-26', add({ ...note(1), at: '2025-11-02T10:40:00-09:00' }));
  await store.changeSeason('2026-27', add(note(2), note(3, 'Grüße, 犬 and a tab\t')));
  await store.changeSeason('2026-27', add(note(4)));
  await store.close();
  writeFileSync(join(folder, 'season-2026-27.unreadable-20270114T104000Z.json'), '{"schema":1, half');
}

async function zipped(folder: string): Promise<Buffer> {
  return buffer(await storeZip(folder, OPTIONS));
}

async function archived(): Promise<string> {
  const folder = join(place, 'data');
  await filled(folder);
  writeFileSync(archive, await zipped(folder));
  return folder;
}

/** The archive again after a change to its files, written by another library. */
function rewritten(change: (files: Record<string, Uint8Array>) => void): void {
  const files = unzipSync(readFileSync(archive));
  change(files);
  writeFileSync(archive, zipSync(files));
}
const reworded = (files: Record<string, Uint8Array>, change: (manifest: { files: { name: string }[] }) => void) => {
  const manifest = JSON.parse(Buffer.from(files['manifest.json'] as Uint8Array).toString());
  change(manifest);
  files['manifest.json'] = strToU8(JSON.stringify(manifest));
};

describe('restore', () => {
  it('gives every file back to the byte, and the same state', async () => {
    const folder = await archived();
    const back = join(place, 'deep', 'back');
    const { manifest } = await restore(archive, back);
    expect(bytesIn(back)).toEqual(bytesIn(folder));
    expect(manifest.files.map((file) => file.name).sort()).toEqual(Object.keys(bytesIn(folder)).sort());
    const [a, b] = [await openStore(folder), await openStore(back)];
    expect(b.kennel()).toEqual(a.kennel());
    for (const name of a.seasonNames()) expect(b.season(name)).toEqual(a.season(name));
    expect(b.warnings).toEqual(a.warnings);
    await a.close();
    await b.close();
  });

  it('tells name, size and SHA-256 of each file in its manifest', async () => {
    const folder = await archived();
    const files = unzipSync(readFileSync(archive));
    const manifest = JSON.parse(Buffer.from(files['manifest.json'] as Uint8Array).toString());
    for (const { name, bytes, sha256 } of manifest.files) {
      const content = readFileSync(join(folder, name));
      expect([bytes, sha256], name).toEqual([content.length, createHash('sha256').update(content).digest('hex')]);
    }
  });

  it('copies while a server has the folder open, and leaves its lock out', async () => {
    const folder = join(place, 'data');
    await filled(folder);
    const store = await openStore(folder);
    const names = Object.keys(unzipSync(await zipped(folder)));
    expect(names).toContain('kennel.json');
    expect(names.some((name) => name.startsWith('lock-'))).toBe(false);
    expect((await readFolder(folder)).kennel).toEqual(store.kennel());
    await store.changeSeason('2026-27', add(note(9)));
    await store.close();
  });

  it('fills a folder where a Snackstop was started once and told nothing', async () => {
    const folder = await archived();
    const back = join(place, 'back');
    const store = await openStore(back);
    await store.changeKennel((kennel) => [{ ...kennel, settings: { ...kennel.settings, units: 'metric' } }, null]);
    await store.close();
    expect(Object.keys(bytesIn(back)).sort()).toEqual(['kennel.earlier.json', 'kennel.json']);
    await restore(archive, back);
    expect(bytesIn(back)).toEqual(bytesIn(folder));
  });
});

describe('nothing is written', () => {
  const refused = async (says: RegExp) => {
    const back = join(place, 'back');
    await expect(restore(archive, back)).rejects.toThrow(says);
    expect(existsSync(back)).toBe(false);
  };

  it('where a byte of the archive is another, wherever it is', async () => {
    await archived();
    const good = readFileSync(archive);
    const back = join(place, 'back');
    const wanted = bytesIn(join(place, 'data'));
    await fc.assert(
      fc.asyncProperty(fc.nat(good.length - 1), fc.integer({ min: 1, max: 255 }), async (at, change) => {
        const bad = Buffer.from(good);
        bad[at] = (bad[at] as number) ^ change;
        writeFileSync(archive, bad);
        const error = await restore(archive, back).then(
          () => undefined,
          (error: Error) => error,
        );
        // A change of what counts for nothing (the time beside a file) may pass: then all is as it was.
        if (error) {
          expect(error.message).toMatch(/archive/);
          expect(existsSync(back)).toBe(false);
        } else {
          expect(bytesIn(back)).toEqual(wanted);
          for (const name of readdirSync(back)) await disk.remove(join(back, name));
          await import('node:fs/promises').then((fs) => fs.rmdir(back));
        }
      }),
      { numRuns: 40, seed: 11 },
    );
  });

  it('where it was cut short, or is no archive', async () => {
    await archived();
    const good = readFileSync(archive);
    for (const length of [0, 1, 100, good.length >> 1, good.length - 1]) {
      writeFileSync(archive, good.subarray(0, length));
      await refused(/damaged, was cut short, or is no ZIP file/);
    }
    writeFileSync(archive, 'Juniper and Moss in lead.');
    await refused(/no ZIP file/);
  });

  it.each<[string, (files: Record<string, Uint8Array>) => void, RegExp]>([
    [
      'a file was changed',
      (f) => (f['season-2026-27.json'] = strToU8('{}')),
      /season-2026-27.json in the archive is not what its manifest says/,
    ],
    ['a file is missing', (f) => delete f['season-2025-26.json'], /holds no season-2025-26.json/],
    ['there is a file more', (f) => (f['season-2024-25.json'] = strToU8('{}')), /which its manifest does not tell of/],
    ['there is no manifest', (f) => delete f['manifest.json'], /holds no manifest.json/],
    ['the manifest is no JSON', (f) => (f['manifest.json'] = strToU8('{')), /not JSON/],
    [
      'it is a season’s export',
      (f) => {
        delete f['manifest.json'];
        f['datapackage.json'] = strToU8('{}');
      },
      /only a whole store can be restored/,
    ],
    ['it is a later program’s', (f) => reworded(f, (m) => Object.assign(m, { formatVersion: 2 })), /newer Snackstop/],
    [
      'no kennel is among the files',
      (f) => reworded(f, (m) => (m.files = m.files.filter((x) => !x.name.startsWith('kennel')))),
      /kennel.json is not among the files/,
    ],
    [
      'a name leads out of the folder',
      (f) => reworded(f, (m) => Object.assign(m.files[0] as object, { name: '../kennel.json' })),
      /not the name of a kept file/,
    ],
  ])('where %s', async (_, change, says) => {
    await archived();
    rewritten(change);
    await refused(says);
  });

  it('where what it holds can’t be used, though its sums are right', async () => {
    const folder = join(place, 'data');
    await mkdir(folder);
    writeFileSync(join(folder, 'kennel.json'), '{"schema":1,"dogs":"none"}');
    writeFileSync(archive, await zipped(folder));
    await refused(/kennel.json in the archive can't be used: dogs/);
    writeFileSync(join(folder, 'kennel.json'), '{"schema":99}');
    writeFileSync(archive, await zipped(folder));
    await refused(/newer/);
  });

  it('where the folder holds anything, or a Snackstop runs in it', async () => {
    const folder = await archived();
    const before = bytesIn(folder);
    await expect(restore(archive, folder)).rejects.toThrow(/into an empty folder only.*season-2025-26/);
    expect(bytesIn(folder)).toEqual(before);
    const strange = join(place, 'strange');
    await mkdir(strange);
    writeFileSync(join(strange, 'letter.txt'), 'Dear Wren');
    await expect(restore(archive, strange)).rejects.toThrow(/holds letter.txt/);
    const running = join(place, 'running');
    const store = await openStore(running);
    const empty = bytesIn(running);
    await expect(restore(archive, running)).rejects.toThrow(/in use/);
    expect(bytesIn(running)).toEqual(empty);
    await store.close();
  });

  it('where the disk fails, at whatever step', async () => {
    await archived();
    const back = join(place, 'back');
    let steps = 0;
    const failing = (at: number): Files => {
      const step = () => {
        // From then on: a full disk stays full.
        if (++steps >= at) throw Object.assign(new Error('no space'), { code: 'ENOSPC' });
      };
      return {
        ...disk,
        create: async (path) => {
          step();
          return disk.create(path);
        },
        rename: async (from, to) => {
          step();
          return disk.rename(from, to);
        },
        syncFolder: async (folder) => {
          step();
          return disk.syncFolder(folder);
        },
      };
    };
    let failures = 0;
    for (let at = 1; ; at++) {
      steps = 0;
      const error = await restore(archive, back, failing(at)).then(
        () => undefined,
        (error: Error) => error,
      );
      if (!error) break;
      failures++;
      expect(error.message, `step ${at}`).toMatch(/disk is full/);
      expect(existsSync(back) ? readdirSync(back) : [], `step ${at}`).toEqual([]);
    }
    expect(failures).toBeGreaterThan(10);
    expect(bytesIn(back)).toEqual(bytesIn(join(place, 'data')));
  });
});

describe('storeZip', () => {
  it('refuses a folder without a kennel', async () => {
    await expect(storeZip(place, OPTIONS)).rejects.toThrow(/holds no kennel.json/);
  });

  it('gives what another reader can open, in the same bytes for the same moment', async () => {
    const folder = await archived();
    await pipeline(await storeZip(folder, OPTIONS), createWriteStream(`${archive}.2`));
    expect(readFileSync(`${archive}.2`).equals(readFileSync(archive))).toBe(true);
  });
});
