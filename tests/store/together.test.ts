/** Changes that come at the same time: they share flushes, keep their order, and fail together. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Season } from '../../server/model.ts';
import { NotKeptError, openStore } from '../../server/store/index.ts';
import { chances } from './chances.ts';
import { add, ids, modelProcesses, note, SEASON, uuid } from './helpers.ts';
import { ModelDisk, systemError } from './model-disk.ts';

let starts = 0;
const open = (disk: ModelDisk) =>
  openStore(disk.folder, { files: disk, processes: modelProcesses(++starts, new Set()) });
const flushes = (disk: ModelDisk) =>
  disk.steps.filter(({ step, name }) => step === 'rename' && name === 'season-2026-27.json').length;

/** Adds a note unless it is there, as a request that may be sent twice does. */
const once =
  (n: number) =>
  (season: Season): [Season, 'new' | 'already'] =>
    season.notes.some((kept) => kept.id === uuid(n)) ? [season, 'already'] : [add(note(n))(season)[0], 'new'];

describe('changes that arrive together', () => {
  it('share one flush', async () => {
    const disk = new ModelDisk();
    const store = await open(disk);
    const answers = await Promise.all(Array.from({ length: 100 }, (_, n) => store.changeSeason(SEASON, add(note(n)))));
    expect(answers).toEqual(Array.from({ length: 100 }, (_, n) => n + 1));
    expect(flushes(disk)).toBe(1);
    await store.close();
  });

  it('gather while a flush is under way, and share the next one', async () => {
    const disk = new ModelDisk();
    const store = await open(disk);
    const late: Promise<number>[] = [];
    disk.before = (step) => {
      if (step === 'sync' && late.length < 10)
        for (let n = 1; n <= 10; n++) late.push(store.changeSeason(SEASON, add(note(n))));
    };
    expect(await store.changeSeason(SEASON, add(note(0)))).toBe(1);
    await Promise.all(late);
    expect(flushes(disk)).toBe(2);
    await store.close();
  });

  it('never have two flushes of one file at a time, but files do not wait for each other', async () => {
    const disk = new ModelDisk();
    const store = await open(disk);
    const under = new Map<string, number>();
    let most = 0;
    let files = 0;
    disk.turn = () => new Promise(setImmediate);
    disk.before = (step, name) => {
      if (step === 'create') under.set(name, (under.get(name) ?? 0) + 1);
      if (step === 'create') most = Math.max(most, under.get(name) ?? 0);
      if (step === 'create') files = Math.max(files, [...under.values()].filter((n) => n > 0).length);
      if (step === 'rename' && !name.includes('earlier')) under.set(`${name}.tmp`, 0);
    };
    const changes: Promise<number>[] = [];
    for (let n = 0; n < 30; n++) {
      changes.push(store.changeSeason(n % 2 ? SEASON : '2025-26', add(note(n))));
      await new Promise(setImmediate);
    }
    await Promise.all(changes);
    expect(most).toBe(1);
    expect(files).toBe(2);
    await store.close();
  });

  it('make one note of a request that comes twice, and both answers wait for the disk', async () => {
    const disk = new ModelDisk();
    const store = await open(disk);
    expect(await Promise.all([store.changeSeason(SEASON, once(1)), store.changeSeason(SEASON, once(1))])).toEqual([
      'new',
      'already',
    ]);
    disk.before = (step) => {
      if (step === 'sync') throw systemError('ENOSPC');
    };
    const results = await Promise.allSettled([
      store.changeSeason(SEASON, once(2)),
      store.changeSeason(SEASON, once(2)),
      store.changeSeason(SEASON, once(1)),
    ]);
    // Of a note that did not reach the disk nobody may hear that it is kept already. The third asked for one that is, but
    // in a state that was taken back.
    expect(results.map((r) => r.status)).toEqual(['rejected', 'rejected', 'rejected']);
    disk.before = () => {};
    expect(await store.changeSeason(SEASON, once(1))).toBe('already');
    expect(ids(store.season(SEASON))).toEqual([uuid(1)]);
    await store.close();
  });

  it('that find what they want in the flush under way wait for its end', async () => {
    const disk = new ModelDisk();
    const store = await open(disk);
    const order: string[] = [];
    let second: Promise<unknown> | undefined;
    disk.before = (step) => {
      if (step === 'sync') second ??= store.changeSeason(SEASON, once(1)).then((answer) => order.push(answer));
      if (step === 'syncFolder') order.push('flushed');
    };
    await store.changeSeason(SEASON, once(1));
    await second;
    expect(order).toEqual(['flushed', 'already']);
    await store.close();
  });

  it('fail together where one builds on another that failed, and not because of a change that was refused', async () => {
    const disk = new ModelDisk();
    const store = await open(disk);
    let late: Promise<unknown> | undefined;
    disk.before = (step) => {
      if (step !== 'sync' || late) return;
      late = store.changeSeason(SEASON, add(note(2)));
      late.catch(() => {});
      throw systemError('EIO');
    };
    await expect(store.changeSeason(SEASON, add(note(1)))).rejects.toThrow(NotKeptError);
    await expect(late).rejects.toThrow(NotKeptError);
    const results = await Promise.allSettled([
      store.changeSeason(SEASON, add(note(1))),
      store.changeSeason(SEASON, add({ ...note(3), at: 'never' })),
      store.changeSeason(SEASON, add(note(2))),
    ]);
    expect(results.map((r) => r.status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    expect(ids(store.season(SEASON))).toEqual([uuid(1), uuid(2)]);
    await store.close();
  });
});

/** One act of a story: a note, a note sent again, a review, a change that is refused, a pause, a restart. */
const act = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      act: fc.constant('note' as const),
      n: fc.nat(25),
      season: fc.constantFrom('2025-26', SEASON),
    }),
  },
  { weight: 3, arbitrary: fc.record({ act: fc.constant('aside' as const), n: fc.nat(25) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('refused' as const) }) },
  { weight: 3, arbitrary: fc.record({ act: fc.constant('wait' as const), turns: fc.nat(12) }) },
  {
    weight: 1,
    arbitrary: fc.record({ act: fc.constant('restart' as const), how: fc.constantFrom('close', 'kill' as const) }),
  },
);

it('whatever comes in whatever order, with a disk that fails now and then: kept is exactly what was acknowledged', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(act, { maxLength: 40 }),
      fc.integer(),
      fc.double({ min: 0, max: 0.2, noNaN: true }),
      async (acts, seed, failing) => {
        const chance = chances(seed);
        let disk = new ModelDisk();
        let store = await open(disk);
        const unruly = () => {
          disk.turn = async () => {
            for (let turns = Math.floor(chance() * 3); turns > 0; turns--) await new Promise(setImmediate);
          };
          disk.before = (step, name) => {
            if (
              !name.startsWith('lock-') &&
              ['create', 'write', 'sync', 'link', 'rename', 'stamp'].includes(step) &&
              chance() < failing
            )
              throw systemError('ENOSPC');
          };
        };
        unruly();
        // The model: the acknowledged changes, in the order in which they were made.
        const made: { season: string; n: number; aside: boolean; acknowledged: boolean }[] = [];
        const going = new Set<Promise<unknown>>();
        const track = (change: Promise<unknown>, made?: () => void) => {
          const done = change
            .then(made, (error) => expect(error).toBeInstanceOf(NotKeptError))
            .finally(() => going.delete(done));
          going.add(done);
        };
        const expected = (season: string) => {
          const notes = new Map<number, boolean>();
          for (const change of made)
            if (change.acknowledged && change.season === season) notes.set(change.n, change.aside);
          return [...notes].map(([n, aside]) => ({ ...note(n), aside }));
        };
        const agree = () => {
          for (const season of ['2025-26', SEASON]) {
            expect(store.season(season).notes).toEqual(expected(season));
            for (const kept of store.season(season).notes)
              expect(store.findNote(kept.id)).toEqual({ season, note: kept });
          }
        };
        for (const step of acts) {
          if (step.act === 'note') {
            // An even and an odd season's notes have ids of their own.
            const n = step.n * 2 + (step.season === SEASON ? 0 : 1);
            const change = { season: step.season, n, aside: false, acknowledged: false };
            track(
              store.changeSeason(step.season, (s) => {
                const [next, answer] = once(n)(s);
                if (answer === 'new') made.push(change);
                return [next, answer];
              }),
              () => {
                change.acknowledged = true;
              },
            );
          } else if (step.act === 'aside') {
            const n = step.n * 2;
            const change = { season: SEASON, n, aside: true, acknowledged: false };
            track(
              store.changeSeason(SEASON, (s) => {
                if (!s.notes.some((kept) => kept.id === uuid(n))) return [s, 0];
                made.push(change);
                return [
                  { ...s, notes: s.notes.map((kept) => (kept.id === uuid(n) ? { ...kept, aside: true } : kept)) },
                  0,
                ];
              }),
              () => {
                change.acknowledged = true;
              },
            );
          } else if (step.act === 'refused') {
            await expect(store.changeSeason(SEASON, add({ ...note(1_000), at: 'never' }))).rejects.toThrow(
              /note .*: at: /,
            );
          } else if (step.act === 'wait') {
            for (let turn = 0; turn < step.turns; turn++) await new Promise(setImmediate);
          } else {
            await Promise.all(going);
            agree();
            if (step.how === 'close') await store.close();
            else store.close().catch(() => {});
            disk = disk.afterKill();
            store = await open(disk);
            unruly();
            agree();
          }
        }
        await Promise.all(going);
        agree();
        await store.close();
        disk = disk.afterKill();
        store = await open(disk);
        agree();
        for (const [name, text] of Object.entries(disk.contents())) expect(() => JSON.parse(text), name).not.toThrow();
        await store.close();
      },
    ),
    { numRuns: 150 },
  );
});
