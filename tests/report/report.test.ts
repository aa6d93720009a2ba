/** The command line: the same figures as the pages, as JSON and CSV, without a running server and beside one. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { parse as csvParse } from 'csv-parse/sync';
import { unzipSync } from 'fflate';
import { beforeEach, describe, expect, it } from 'vitest';
import { createApp } from '../../server/app.ts';
import type { Season } from '../../server/model.ts';
import { report } from '../../server/report.ts';
import { openStore } from '../../server/store/index.ts';
import { dog, finding, hitch, id, note, total } from '../records/build.ts';
import { temporaryFolder } from '../store/helpers.ts';

const NOW = '2027-01-15T09:00:00.000-09:00';
let folder: string;

/** Runs a command; gives its exit status, what it printed, and what it said beside that. */
async function run(...args: string[]) {
  const out = new PassThrough();
  const said: string[] = [];
  const printed = buffer(out);
  const status = await report(args, {
    env: { SNACKSTOP_DATA: folder },
    out,
    say: (line) => said.push(line),
    now: () => NOW,
  });
  out.end();
  const bytes = await printed;
  return { status, bytes, text: bytes.toString(), said: said.join('\n') };
}
const json = async <T>(...args: string[]) => {
  const { status, text, said } = await run(...args);
  if (status !== 0) throw new Error(said);
  return JSON.parse(text) as T;
};
const rows = async (...args: string[]) =>
  csvParse((await run(...args, '--format', 'csv')).text, { columns: true }) as Record<string, string>[];

const day = (date: string, metres: number, more: Parameters<typeof note>[1] = []) =>
  note(`${date}T10:00`, [hitch(['Juniper', 'Moss'], 'lead'), total(metres, 'm'), ...more], {
    text: 'Juniper and Moss in lead.',
  });
const sore = { ...finding(['Juniper']), part: 'wrist', side: 'left' } as Parameters<typeof note>[1][number];
const well = { ...finding(['Juniper'], 'any', { assertion: 'resolved' }), part: 'wrist', side: 'left' } as typeof sore;

beforeEach(async () => {
  folder = join(temporaryFolder(), 'data');
  const store = await openStore(folder);
  await store.changeKennel((kennel) => [
    { ...kennel, dogs: [dog('Juniper', { id: id(301), aliases: ['June'] }), dog('Moss', { id: id(302), sex: 'M' })] },
    null,
  ]);
  await store.changeSeason('2026-27', (season): [Season, null] => [
    {
      ...season,
      notes: [
        day('2026-12-01', 10_000, [sore]),
        day('2026-12-05', 20_000, [well]),
        day('2026-12-10', 30_000),
        day('2027-01-14', 12_000, [sore]),
      ],
    },
    null,
  ]);
  await store.close();
});

describe('load, watch, search, sheet, summary', () => {
  it('load: as the interface answers it, and as rows', async () => {
    const told = await json<{ on: string; dogs: object[] }>('load');
    const store = await openStore(folder);
    const app = createApp({ store, version: '0', now: () => NOW });
    const asked = (await (await app.request('http://127.0.0.1/api/load')).json()) as { on: string; dogs: object[] };
    await store.close();
    expect(told.on).toBe(asked.on);
    for (const [i, one] of told.dogs.entries()) expect(asked.dogs[i]).toMatchObject(one);
    const [juniper] = await rows('load', '--dog', 'june');
    expect(juniper).toMatchObject({ dog: 'Juniper', on: '2027-01-15', metres_7_days: '12000', metres_season: '72000' });
    const [then] = await rows('load', '--dog', 'Moss', '--on', '2026-12-05');
    expect(then).toMatchObject({ metres_today: '20000', metres_7_days: '30000', ratio: '' });
  });

  it('watch: the wrist that came back, with days, runs and metres between', async () => {
    const all = await rows('watch', '--season', '2026-27');
    expect(all).toMatchObject([
      {
        dog: 'Juniper',
        site: 'left wrist',
        state: 'open',
        from: '2027-01-14',
        days_since_before: '44',
        runs_since_before: '2',
        metres_since_before: '50000',
      },
      { site: 'left wrist', state: 'over', from: '2026-12-01', until: '2026-12-05' },
    ]);
    const told = await json<{ episodes: unknown[]; about: { cautions: string } }>('watch', '--dog', 'Moss');
    expect(told.episodes).toEqual([]);
    expect(told.about.cautions).toMatch(/gives no diagnosis/);
  });

  it('search: the words read as the page reads them', async () => {
    const told = await json<{
      understood: string;
      hitsInAll: number;
      cameBack: { dog: string; site: { label: string }; episodes: { number: number; from: string }[] }[];
    }>('search', 'juniper', 'sore', 'wrist');
    expect(told.hitsInAll).toBe(2);
    expect(told.cameBack.map(({ dog, site, episodes }) => [dog, site.label, episodes.map((one) => one.from)])).toEqual([
      ['Juniper', 'left wrist', ['2026-12-01', '2027-01-14']],
    ]);
    expect(told.understood).toMatch(/Juniper/);
    const found = await rows('search', 'sore wrist', '--on', '2026-12-31');
    expect(found).toMatchObject([{ day: '2026-12-01', dogs: 'Juniper', part: 'wrist', sign: 'sore' }]);
    expect(await rows('search', 'sore wrist', '--dog', 'Moss')).toEqual([]);
  });

  it('sheet and summary: what the printed pages hold', async () => {
    const sheet = await json<{ dog: { name: string }; runs: unknown[]; episodes: unknown[] }>('sheet', '--dog', 'June');
    expect([sheet.dog.name, sheet.runs.length, sheet.episodes.length]).toEqual(['Juniper', 4, 2]);
    const summary = await json<{ metres: number; days: number; dogs: { dog: string }[] }>('summary');
    expect([summary.metres, summary.days, summary.dogs.length]).toEqual([72_000, 4, 2]);
  });

  it('takes nothing away from a Snackstop that runs, and touches no file', async () => {
    const store = await openStore(folder);
    const before = readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'latin1')]);
    for (const args of [['load'], ['watch'], ['search', 'wrist'], ['export'], ['export', '--store']])
      expect((await run(...args)).status).toBe(0);
    expect(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'latin1')])).toEqual(before);
    await store.changeSeason('2026-27', (season) => [
      { ...season, notes: [...season.notes, day('2027-01-15', 1)] },
      null,
    ]);
    await store.close();
  });

  it('takes the earlier copy of a file that can’t be read, and says so', async () => {
    const store = await openStore(folder);
    await store.changeSeason('2026-27', (season) => [
      { ...season, notes: [...season.notes, day('2027-01-15', 1)] },
      null,
    ]);
    await store.close();
    writeFileSync(join(folder, 'season-2026-27.json'), '{"schema":1,');
    const { status, said } = await run('load');
    expect(status).toBe(0);
    expect(said).toMatch(
      /season-2026-27.json could not be read: .* the earlier copy, season-2026-27.earlier.json, was used/,
    );
  });
});

describe('export and restore', () => {
  it('to a file, left alone when it is there, and on standard output', async () => {
    const file = join(folder, '..', 'season.zip');
    expect((await run('export', '--to', file)).status).toBe(0);
    expect(Object.keys(unzipSync(readFileSync(file)))).toContain('datapackage.json');
    const first = readFileSync(file);
    writeFileSync(file, 'mine');
    const again = await run('export', '--to', file);
    expect([again.status, readFileSync(file, 'utf8')]).toEqual([1, 'mine']);
    expect(again.said).toMatch(/is there already and was left alone/);
    expect((await run('export', '--to', file, '--replace')).status).toBe(0);
    expect(readFileSync(file).equals(first)).toBe(true);
    const { bytes } = await run('export', '--season', 'all');
    expect(Object.keys(unzipSync(bytes))).toContain('datapackage.json');
    expect(unzipSync((await run('export', '--format', 'xlsx')).bytes)['xl/workbook.xml']).toBeDefined();
    expect(readdirSync(join(folder, '..')).sort()).toEqual(['data', 'season.zip']);
  });

  it('the whole store, and back', async () => {
    const file = join(folder, '..', 'store.zip');
    const back = join(folder, '..', 'back');
    await run('export', '--store', '--to', file);
    expect((await run('restore', file, '--data', back)).status).toBe(0);
    for (const name of readdirSync(folder))
      expect(readFileSync(join(back, name)).equals(readFileSync(join(folder, name))), name).toBe(true);
    const again = await run('restore', file, '--data', back);
    expect([again.status, again.text]).toEqual([1, '']);
    expect(again.said).toMatch(/into an empty folder only/);
  });
});

describe('a command line that is not right', () => {
  it.each<[string[], RegExp]>([
    [['loud'], /“loud” is no report/],
    [['load', '--season', '2026'], /“2026” is no season/],
    [['load', '--season', 'all'], /“all” is no season/],
    [['load', '--on', '2027-02-30'], /“2027-02-30” is no day/],
    [['load', '--format', 'xml'], /json or csv, not as “xml”/],
    [['load', 'juniper'], /takes no further words/],
    [['search'], /needs words/],
    [['sheet'], /needs a dog/],
    [['restore'], /needs one file/],
    [['restore', 'x.zip'], /--data FOLDER/],
    [['export', '--store', '--season', '2026-27'], /goes with no --season/],
    [['export', '--format', 'xlsx', '--season', 'all'], /one season/],
    [['load', '--nothing'], /--nothing/],
  ])('%j is refused with a sentence and status 2', async (args, says) => {
    const { status, text, said } = await run(...args);
    expect([status, text]).toEqual([2, '']);
    expect(said).toMatch(says);
    expect(existsSync(folder)).toBe(true);
  });

  it.each<[string[], RegExp]>([
    [['load', '--dog', 'Nimbus'], /No dog is called “Nimbus” here. There are Juniper, Moss./],
    [['export', '--season', '2020-21'], /Nothing is kept of the season 2020-21/],
    [['load', '--data', '/nowhere/at/all'], /There is no kennel in/],
  ])('%j can’t be done: a sentence and status 1', async (args, says) => {
    const { status, text, said } = await run(...args);
    expect([status, text]).toEqual([1, '']);
    expect(said).toMatch(says);
  });

  it.each([[['help']], [['--help']], [['load', '--help']], [[]]])('%j explains it', async (args) => {
    const { status, text } = await run(...args);
    expect(status).toBe(0);
    for (const command of ['load', 'watch', 'search', 'sheet', 'summary', 'export', 'restore'])
      expect(text).toContain(`report -- ${command}`);
  });
});
