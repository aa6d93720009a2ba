/** The store on a real disk: what is kept, how it lies there, who sees what when. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Season } from '../../server/model.ts';
import { ChangeRefusedError, NotKeptError, openStore } from '../../server/store/index.ts';
import { add, ids, note, SEASON, temporaryFolder, uuid } from './helpers.ts';

const read = (folder: string, name: string) => readFileSync(join(folder, name), 'utf8');

describe('what is kept', () => {
  it('is there again after the next start, in the same order, to the letter', async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder);
    const texts = [
      'Ünïcödé ❄ 🛷',
      'line\nbreak\r\n\u2028and\u0000null',
      'a lone half \ud83d of a pair',
      '"quoted" \\ back',
      '',
    ];
    await store.changeSeason(SEASON, add(...texts.map((text, i) => note(i, text))));
    await store.changeKennel((k) => [{ ...k, settings: { ...k.settings, kennel: 'Hollow Spruce' } }, null]);
    const before = structuredClone(store.season(SEASON));
    await store.close();
    const again = await openStore(folder);
    expect(again.season(SEASON)).toEqual(before);
    expect(again.season(SEASON).notes.map((n) => n.text)).toEqual(texts);
    expect(again.kennel().settings.kennel).toBe('Hollow Spruce');
    expect(again.warnings).toEqual([]);
    await again.close();
  });

  it('lies in a file a person can read: valid JSON, one note a line, the id first', async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder);
    await store.changeSeason(SEASON, add(note(1), note(2), note(3)));
    await store.close();
    const text = read(folder, 'season-2026-27.json');
    const lines = text.split('\n');
    expect(JSON.parse(text).notes).toEqual([note(1), note(2), note(3)]);
    expect(lines.filter((line) => line.startsWith('{"id":"'))).toHaveLength(3);
    expect(lines[0]).toMatch(/^\{"schema":1,"season":"2026-27",/);
    expect(text.endsWith('}\n')).toBe(true);
  });

  it('is one file for the kennel, one a season, and the copy before the last of each', async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder);
    await store.changeSeason('2025-26', add(note(1)));
    await store.changeSeason(SEASON, add(note(2)));
    await store.changeSeason(SEASON, add(note(3)));
    expect(store.seasonNames()).toEqual(['2025-26', '2026-27']);
    await store.close();
    expect(readdirSync(folder).sort()).toEqual([
      'kennel.json',
      'season-2025-26.json',
      'season-2026-27.earlier.json',
      'season-2026-27.json',
    ]);
    expect(JSON.parse(read(folder, 'season-2026-27.earlier.json')).notes.map((n: { id: string }) => n.id)).toEqual([
      uuid(2),
    ]);
  });

  it('writes the same bytes whether a file was made note by note, at once, or after a restart', async () => {
    const [slow, quick] = [temporaryFolder(), temporaryFolder()];
    let store = await openStore(slow);
    for (let n = 0; n < 5; n++) await store.changeSeason(SEASON, add(note(n)));
    await store.close();
    store = await openStore(slow);
    for (let n = 5; n < 8; n++) await store.changeSeason(SEASON, add(note(n)));
    const reviewed = (s: Season): [Season, null] => [
      { ...s, notes: s.notes.map((n, i) => (i === 2 ? { ...n, aside: true } : n)) },
      null,
    ];
    await store.changeSeason(SEASON, reviewed);
    await store.close();
    store = await openStore(quick);
    await store.changeSeason(SEASON, (s) => reviewed({ ...s, notes: [0, 1, 2, 3, 4, 5, 6, 7].map((n) => note(n)) }));
    await store.close();
    expect(read(slow, 'season-2026-27.json')).toBe(read(quick, 'season-2026-27.json'));
  });

  it('starts with an empty kennel in an empty folder, and makes the folder', async () => {
    const folder = join(temporaryFolder(), 'deep', 'er');
    const store = await openStore(folder);
    expect(store.kennel()).toMatchObject({ dogs: [], people: [], learned: [], settings: { units: 'imperial' } });
    expect(store.season(SEASON)).toMatchObject({ season: SEASON, notes: [], runs: { cutBefore: [] } });
    expect(store.seasonNames()).toEqual([]);
    expect(readdirSync(folder)).toContain('kennel.json');
    await store.close();
  });
});

describe('who sees what when', () => {
  it('shows a note only once it is on the disk, but tells the next change of it', async () => {
    const store = await openStore(temporaryFolder());
    const first = store.changeSeason(SEASON, add(note(1)));
    expect(store.season(SEASON).notes).toEqual([]);
    expect(store.findNote(uuid(1))).toBeUndefined();
    const second = store.changeSeason(SEASON, (s) => [s, ids(s)]);
    expect(await second).toEqual([uuid(1)]);
    expect(await first).toBe(1);
    expect(ids(store.season(SEASON))).toEqual([uuid(1)]);
    expect(store.findNote(uuid(1))).toEqual({ season: SEASON, note: note(1) });
    await store.close();
  });

  it('keeps the identity of notes that were not changed', async () => {
    const store = await openStore(temporaryFolder());
    await store.changeSeason(SEASON, add(note(1), note(2)));
    const [one, two] = store.season(SEASON).notes;
    await store.changeSeason(SEASON, (s) => [
      { ...s, notes: s.notes.map((n) => (n === one ? { ...n, aside: true } : n)) },
      null,
    ]);
    expect(store.season(SEASON).notes[0]).not.toBe(one);
    expect(store.season(SEASON).notes[1]).toBe(two);
    await store.close();
  });

  it('finds a note by its id in any season, also after a restart and before the season was asked for', async () => {
    const folder = temporaryFolder();
    let store = await openStore(folder);
    await store.changeSeason('2024-25', add(note(1), note(2)));
    await store.changeSeason(SEASON, add(note(3)));
    await store.close();
    store = await openStore(folder);
    expect(store.findNote(uuid(2))).toEqual({ season: '2024-25', note: note(2) });
    expect(store.findNote(uuid(3).toUpperCase())?.season).toBe(SEASON);
    expect(store.findNote(uuid(4))).toBeUndefined();
    await store.close();
  });

  it('waits on close for what is on its way, and takes nothing more', async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder);
    const change = store.changeSeason(SEASON, add(note(1)));
    await store.close();
    expect(await change).toBe(1);
    await expect(store.changeSeason(SEASON, add(note(2)))).rejects.toThrow(NotKeptError);
    const again = await openStore(folder);
    expect(ids(again.season(SEASON))).toEqual([uuid(1)]);
    await again.close();
  });
});

describe('rules', () => {
  const refused: [string, (s: Season) => [Season, unknown]][] = [
    ['a note of a wrong shape', (s) => [{ ...s, notes: [...s.notes, { ...note(9), at: 'yesterday' }] }, 0]],
    ['other words for a note', (s) => [{ ...s, notes: s.notes.map((n) => ({ ...n, text: 'other' })) }, 0]],
    [
      'another time for a note',
      (s) => [{ ...s, notes: s.notes.map((n) => ({ ...n, at: '2027-01-01T00:00:00Z' })) }, 0],
    ],
    ['a note thrown away', (s) => [{ ...s, notes: [] }, 0]],
    ['an id used twice', add(note(1))],
    ['an id used twice at once', add(note(5), note(5))],
    ['an id of another season', add(note(3))],
    ['an id of another season that differs in letter case', add({ ...note(3), id: note(3).id.toUpperCase() })],
    ['another season', (s) => [{ ...s, season: '2020-21' }, 0]],
    ['choices of runs of a wrong shape', (s) => [{ ...s, runs: { ...s.runs, cutBefore: ['x'] } }, 0]],
  ];
  it.each(refused)('refuses %s, and changes nothing', async (_what, change) => {
    const store = await openStore(temporaryFolder());
    await store.changeSeason(SEASON, add(note(1)));
    await store.changeSeason('2025-26', add(note(3)));
    const before = store.season(SEASON);
    await expect(store.changeSeason(SEASON, change)).rejects.toThrow(ChangeRefusedError);
    expect(store.season(SEASON)).toBe(before);
    expect(await store.changeSeason(SEASON, add(note(2)))).toBe(2);
    await store.close();
  });

  it('refuses an id that is on its way to another season at the same moment', async () => {
    const store = await openStore(temporaryFolder());
    const results = await Promise.allSettled([
      store.changeSeason('2025-26', add(note(1))),
      store.changeSeason(SEASON, add(note(1))),
    ]);
    expect(results.map((r) => r.status)).toEqual(['fulfilled', 'rejected']);
    await store.close();
  });

  it('refuses a kennel of a wrong shape and a season that is none', async () => {
    const store = await openStore(temporaryFolder());
    const dog = { id: 'x', name: 'Moss', sex: 'M' as const, aliases: [], formerNames: [], heard: [], retired: false };
    await expect(store.changeKennel((k) => [{ ...k, dogs: [dog] }, 0])).rejects.toThrow(/dogs\.0\.id/);
    for (const name of ['2026-28', '../x', '', '26-27']) {
      await expect(store.changeSeason(name, add(note(1)))).rejects.toThrow(RangeError);
      expect(() => store.season(name)).toThrow(RangeError);
    }
    await store.close();
  });

  it('leaves everything as it was when a change throws', async () => {
    const store = await openStore(temporaryFolder());
    const thrown = new Error('no such dog');
    const throwing = store.changeKennel(() => {
      throw thrown;
    });
    await expect(throwing).rejects.toBe(thrown);
    expect(await store.changeKennel((k) => [k, k.dogs.length])).toBe(0);
    await store.close();
  });

  it('freezes what was kept, so that no later slip changes it behind the file', async () => {
    const store = await openStore(temporaryFolder());
    await store.changeSeason(SEASON, add(note(1)));
    const [kept] = store.season(SEASON).notes;
    expect(() => kept?.entries.pop()).toThrow(TypeError);
    await store.close();
  });
});

describe('another program at the files while the store is open', () => {
  it('loses neither what it wrote nor what the store knows', async () => {
    const folder = temporaryFolder();
    const store = await openStore(folder, { now: () => new Date('2027-01-14T10:40:00Z') });
    await store.changeSeason(SEASON, add(note(1)));
    await store.changeSeason(SEASON, add(note(2)));
    writeFileSync(join(folder, 'season-2026-27.json'), '{"mine": true}');
    await store.changeSeason(SEASON, add(note(3)));
    expect(read(folder, 'season-2026-27.changed-20270114T104000Z.json')).toBe('{"mine": true}');
    expect(JSON.parse(read(folder, 'season-2026-27.json')).notes).toHaveLength(3);
    expect(JSON.parse(read(folder, 'season-2026-27.earlier.json')).notes).toHaveLength(1);
    expect(store.warnings).toEqual([
      expect.stringMatching(/^season-2026-27\.json was changed by another program while/),
    ]);
    await store.close();
  });
});
