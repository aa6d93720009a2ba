/** Of ten seasons one at a time is held in memory while they are exported. */
import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { seasonXlsx, seasonZip, storeZip } from '../../server/export/index.ts';
import type { Source } from '../../server/export/season-data.ts';
import { temporaryFolder } from '../store/helpers.ts';
import { kennelOf, manyDogs, OPTIONS, synthetic } from './kennel.ts';

setFlagsFromString('--expose-gc');
const gc = runInNewContext('gc') as () => void;
const MB = 1024 * 1024;
const DOGS = 24;
const RUN_DAYS = 24;
/** Four figures of eight bytes, and as much again for what holds them. */
const BYTES_A_DAY = 64;
const NAMES = Array.from({ length: 10 }, (_, i) => `${2017 + i}-${String(18 + i).padStart(2, '0')}`);

/** What is in use after a collection, buffers counted in. */
function inUse(): number {
  gc();
  gc();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

describe('memory', () => {
  it.each([
    ['CSV', (source: Source) => seasonZip(source, NAMES, OPTIONS)],
    ['a spreadsheet of the last', (source: Source) => seasonXlsx(source, NAMES.at(-1) as string, OPTIONS)],
  ])('ten seasons as %s: never more than two are alive, and little of them stays', async (_, make) => {
    const given: WeakRef<object>[] = [];
    const alive: number[] = [];
    const used: number[] = [];
    const source: Source = {
      kennel: kennelOf(manyDogs(DOGS)),
      seasonNames: () => NAMES,
      async season(name) {
        // A weak reference holds on to its object until the turn of the event loop is over.
        await new Promise(setImmediate);
        used.push(inUse());
        alive.push(given.filter((one) => one.deref() !== undefined).length);
        const season = synthetic(name, DOGS, RUN_DAYS);
        given.push(new WeakRef(season));
        return season;
      },
    };
    let bytes = 0;
    for await (const chunk of make(source)) bytes += (chunk as Buffer).length;
    expect(bytes).toBeGreaterThan(10_000);
    expect(given).toHaveLength(10);
    expect(Math.max(...alive)).toBeLessThanOrEqual(2);
    // What stays of a season are the load's daily figures: some numbers a dog and day. From the third season on, when
    // everything has been compiled.
    expect((used[9] as number) - (used[2] as number)).toBeLessThan(DOGS * 3652 * BYTES_A_DAY);
  });

  it('of the whole store one file at a time', async () => {
    const folder = join(temporaryFolder(), 'data');
    mkdirSync(folder);
    const filling = Buffer.alloc(4 * MB, 'x');
    writeFileSync(join(folder, 'kennel.json'), '{}');
    for (const name of NAMES) writeFileSync(join(folder, `season-${name}.json`), filling);
    const before = inUse();
    let most = 0;
    let seen = 0;
    for await (const chunk of await storeZip(folder, OPTIONS)) {
      seen += (chunk as Buffer).length;
      most = Math.max(most, inUse() - before);
    }
    expect(seen).toBeGreaterThan(1000);
    expect(statSync(join(folder, 'season-2026-27.json')).size * 10).toBeGreaterThan(3 * most);
  });
});
