/** Files of earlier schemas are brought forward by the steps in their order, and kept as they were. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openStore } from '../../server/store/index.ts';
import { migrate, NewerSchemaError, SCHEMA, STEPS, type Step } from '../../server/store/migrate.ts';
import { add, ids, note, SEASON, temporaryFolder, uuid } from './helpers.ts';

/** The earliest shape: no schema, no people, settings, learned words or runs; notes with their entries and no more. */
const earliestKennel = {
  dogs: [{ id: uuid(500), name: 'Juniper', sex: 'F' }],
};
const earliestSeason = {
  notes: [
    {
      id: uuid(1),
      text: 'Juniper in lead.',
      at: '2026-10-01T09:00:00-08:00',
      entries: [{ id: uuid(2), entry: { kind: 'hitch', dogs: ['Juniper'], position: 'lead' } }],
    },
    { id: uuid(3), text: 'Fine day.', at: '2026-10-01T10:00:00-08:00' },
  ],
};

it('brings a folder of the earliest shape forward, keeps what it was, and starts quickly the next time', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'kennel.json'), JSON.stringify(earliestKennel, null, 2));
  writeFileSync(join(folder, 'season-2026-27.json'), JSON.stringify(earliestSeason, null, 2));
  let store = await openStore(folder);
  expect(store.warnings).toEqual([]);
  expect(store.kennel()).toEqual({
    schema: SCHEMA,
    dogs: [{ id: uuid(500), name: 'Juniper', sex: 'F', aliases: [], formerNames: [], heard: [], retired: false }],
    people: [],
    settings: { kennel: '', units: 'imperial', runGapHours: 5, silenceDays: 14 },
    learned: [],
  });
  const season = store.season(SEASON);
  expect(season).toMatchObject({
    schema: SCHEMA,
    season: SEASON,
    runs: { cutBefore: [], joinBefore: [], moved: [], distances: [] },
  });
  expect(season.notes[0]).toEqual({
    ...earliestSeason.notes[0],
    received: '2026-10-01T09:00:00-08:00',
    aside: false,
    unknownNames: [],
    history: [],
    entries: [{ ...earliestSeason.notes[0]?.entries?.[0], from: 'read', state: 'proposed' }],
  });
  expect(season.notes[1]?.entries).toEqual([]);
  await store.close();

  for (const [name, was] of [
    ['kennel', earliestKennel],
    ['season-2026-27', earliestSeason],
  ] as const)
    expect(JSON.parse(readFileSync(join(folder, `${name}.schema-0.json`), 'utf8'))).toEqual(was);
  const migrated = readdirSync(folder).sort();
  store = await openStore(folder);
  expect(store.season(SEASON)).toEqual(season);
  expect(await store.changeSeason(SEASON, add(note(9)))).toBe(3);
  await store.close();
  expect(readdirSync(folder).sort()).toEqual(migrated);
});

it('takes an earlier copy of an earlier schema', async () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'kennel.json'), '{"dogs": [}');
  writeFileSync(join(folder, 'kennel.earlier.json'), JSON.stringify(earliestKennel));
  const store = await openStore(folder);
  expect(store.kennel().dogs.map((d) => d.name)).toEqual(['Juniper']);
  await store.close();
  expect(JSON.parse(readFileSync(join(folder, 'kennel.json'), 'utf8')).schema).toBe(SCHEMA);
});

it('fills a field that has a default and came later, though the schema is the same', async () => {
  const folder = temporaryFolder();
  let store = await openStore(folder);
  await store.changeSeason(SEASON, add(note(1)));
  await store.close();
  const file = join(folder, 'season-2026-27.json');
  // As a program with other shapes would have left it: without the field, under its own mark.
  const { crc32 } = await import('node:zlib');
  const [first = '', ...rest] = readFileSync(file, 'utf8').replace('"aside":false,', '').split('\n');
  const body = rest.join('\n');
  const head = first
    .replace(/"shape":"[0-9a-f]+"/, '"shape":"00000000"')
    .replace(/"sum":"[0-9a-f]+"/, `"sum":"${crc32(body).toString(16).padStart(8, '0')}"`);
  writeFileSync(file, `${head}\n${body}`);
  store = await openStore(folder);
  expect(store.warnings).toEqual([]);
  expect(store.season(SEASON).notes).toEqual([note(1)]);
  await store.close();
  expect(readFileSync(file, 'utf8')).toContain('"aside":false,');
  expect(ids(JSON.parse(readFileSync(file, 'utf8')))).toEqual([uuid(1)]);
});

it('takes each step once, from where the file stands', () => {
  const step = (to: number): Step => ({
    to,
    name: `step ${to}`,
    kennel: (file) => ({ ...file, schema: to, way: `${file.way ?? ''}k${to}` }),
    season: (file) => ({ ...file, schema: to, way: `${file.way ?? ''}s${to}` }),
  });
  const steps = [step(1), step(2), step(3)];
  expect(migrate('kennel', {}, steps)).toEqual({ file: { schema: 3, way: 'k1k2k3' }, from: 0 });
  expect(migrate('season', { schema: 1 }, steps)).toEqual({ file: { schema: 3, way: 's2s3' }, from: 1 });
  expect(migrate('season', { schema: 3, way: 'as it was' }, steps).file).toEqual({ schema: 3, way: 'as it was' });
  expect(() => migrate('season', { schema: 4 }, steps)).toThrow(NewerSchemaError);
});

it('has its steps in order, each with a name of its own', () => {
  expect(STEPS.map((step) => step.to)).toEqual(STEPS.map((_, i) => i + 1));
  expect(new Set(STEPS.map((step) => step.name)).size).toBe(STEPS.length);
});
