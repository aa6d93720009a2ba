/**
 * A program that dies, and a power cut, at every single step: whatever was acknowledged is there at the next start, once,
 * in a file that can be read, without the help of the earlier copy.
 */
import { expect, it } from 'vitest';
import { openStore, type Store } from '../../server/store/index.ts';
import { chances } from './chances.ts';
import { add, ids, modelProcesses, note, SEASON, uuid } from './helpers.ts';
import { CHANGING, ModelDisk } from './model-disk.ts';

class Death extends Error {}
let starts = 0;
const open = (disk: ModelDisk) =>
  openStore(disk.folder, { files: disk, processes: modelProcesses(++starts, new Set()), now: () => new Date(0) });

/** What a program does until it is over or dies. Tells what was acknowledged. */
type Story = (store: Store, acknowledged: (what: string) => void) => Promise<void>;

const takesNotes: Story = async (store, acknowledged) => {
  for (const n of [10, 11, 12]) {
    await store.changeSeason(SEASON, add(note(n)));
    acknowledged(uuid(n));
  }
  await Promise.all(
    [20, 21].map(async (n) => {
      await store.changeSeason(SEASON, add(note(n)));
      acknowledged(uuid(n));
    }),
  );
  await store.changeKennel((k) => [{ ...k, settings: { ...k.settings, kennel: 'Hollow Spruce' } }, 0]);
  acknowledged('kennel');
};

/** Folders to begin with, and what they hold. */
const folders: Record<string, () => Promise<{ disk: ModelDisk; has: string[] }>> = {
  'an empty folder': async () => ({ disk: new ModelDisk(), has: [] }),
  'a folder with notes': async () => {
    const disk = new ModelDisk();
    const store = await open(disk);
    for (const n of [1, 2]) await store.changeSeason(SEASON, add(note(n)));
    await store.close();
    return { disk: disk.afterKill(), has: [uuid(1), uuid(2)] };
  },
  'a folder whose season must be set aside': async () => {
    const { disk } = await (folders['a folder with notes'] as () => Promise<{ disk: ModelDisk }>)();
    disk.put('season-2026-27.json', '{"notes": [');
    return { disk, has: [uuid(1)] };
  },
  'a folder of an earlier schema': async () => {
    const disk = new ModelDisk();
    disk.put('kennel.json', '{"dogs": []}');
    const { received: _, history: __, unknownNames: ___, aside: ____, ...earliest } = note(1);
    disk.put('season-2026-27.json', JSON.stringify({ notes: [earliest] }));
    return { disk, has: [uuid(1)] };
  },
  'a folder edited by hand': async () => {
    const { disk } = await (folders['a folder with notes'] as () => Promise<{ disk: ModelDisk }>)();
    disk.put('season-2026-27.json', JSON.stringify(JSON.parse(disk.contents()['season-2026-27.json'] ?? ''), null, 1));
    return { disk, has: [uuid(1), uuid(2)] };
  },
};

/** The story until the disk has taken `steps` steps that change something. */
async function until(steps: number, begin: () => Promise<{ disk: ModelDisk; has: string[] }>) {
  const { disk, has } = await begin();
  let left = steps;
  let dead = false;
  disk.before = (step) => {
    if (dead || (CHANGING.includes(step) && left-- <= 0)) {
      dead = true;
      throw new Death();
    }
  };
  const known = [...has];
  const store = await open(disk).catch(() => undefined);
  await store?.changeKennel((k) => [k, 0]);
  if (store && !dead) await takesNotes(store, (what) => known.push(what)).catch(() => {});
  await store?.close();
  return { disk, known, dead };
}

async function mustBeThere(disk: ModelDisk, known: string[], begun: string) {
  for (const [name, text] of Object.entries(disk.contents()))
    if (
      /^(kennel|season-2026-27)(\.earlier)?\.json$/.test(name) &&
      !(begun.includes('set aside') && text === '{"notes": [')
    )
      expect(() => JSON.parse(text), `${name}: ${text}`).not.toThrow();
  const store = await open(disk);
  const found = ids(store.season(SEASON));
  expect(new Set(found).size).toBe(found.length);
  expect(found).toEqual(expect.arrayContaining(known.filter((what) => what !== 'kennel')));
  if (known.includes('kennel')) expect(store.kennel().settings.kennel).toBe('Hollow Spruce');
  // Nobody is told of damage but where there was some to begin with.
  const damage = store.warnings.filter((warning) => /earlier copy/.test(warning));
  if (!begun.includes('set aside')) expect(damage).toEqual([]);
  expect(await store.changeSeason(SEASON, add(note(99)))).toBe(found.length + 1);
  await store.close();
}

for (const [begun, begin] of Object.entries(folders)) {
  it(`holds what was acknowledged when the program dies at any step: ${begun}`, async () => {
    let steps = 0;
    for (let dead = true; dead; steps++) {
      const end = await until(steps, begin);
      await mustBeThere(end.disk.afterKill(), end.known, begun);
      dead = end.dead;
      if (!dead) expect(end.known).toEqual(expect.arrayContaining([uuid(21), 'kennel']));
    }
    expect(steps).toBeGreaterThan(40);
  });

  it(`holds what was acknowledged when the power is cut at any step: ${begun}`, async () => {
    for (let steps = 0, dead = true; dead; steps++) {
      const end = await until(steps, begin);
      for (let seed = 0; seed < 6; seed++)
        await mustBeThere(end.disk.afterPowerCut(chances(steps * 100 + seed)), end.known, begun);
      dead = end.dead;
    }
  });
}

it('the model is one in which a careless write is caught', async () => {
  // Writing in place, unflushed, as a plain writeFile does: some power cut must lose it, or these tests prove nothing.
  const disk = new ModelDisk();
  disk.put('plain.json', '{"notes":[1]}');
  const file = await disk.create('/kennel/plain.json');
  await file.write(Buffer.from('{"notes":[1,2]}'));
  await file.close();
  const left = new Set(
    Array.from({ length: 50 }, (_, seed) => disk.afterPowerCut(chances(seed)).contents()['plain.json']),
  );
  expect(left.size).toBeGreaterThan(2);
  expect(left).toContain('{"notes":[1]}');
});
