/** Export and restore over the interface, and the pages to print. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { Sheet, Summary } from '../../server/report/schema.ts';
import { type Kennel, newKennel, type Wrong } from '../routes/setup.ts';

const get = async (kennel: Kennel, path: string) => {
  const response = await kennel.app.request(`http://127.0.0.1${path}`);
  return { status: response.status, headers: response.headers, bytes: Buffer.from(await response.arrayBuffer()) };
};
const restore = async <T>(kennel: Kennel, bytes: Uint8Array, headers: Record<string, string> = {}) => {
  const response = await kennel.app.request('http://127.0.0.1/api/restore', {
    method: 'POST',
    headers: { 'content-type': 'application/zip', ...headers },
    body: new Uint8Array(bytes),
  });
  return { status: response.status, json: (await response.json()) as T };
};
const bytesIn = (kennel: Kennel) =>
  Object.fromEntries(
    readdirSync(kennel.store.folder)
      .filter((name) => !name.startsWith('lock-'))
      .map((name) => [name, readFileSync(join(kennel.store.folder, name), 'latin1')]),
  );

async function full() {
  const kennel = await newKennel();
  const ids = await kennel.dogs('Juniper', 'Moss');
  for (const { id } of await kennel.notes(
    ['09:00', 'Juniper and Moss in lead'],
    ['11:00', '20 miles'],
    ['12:00', '=1+1'],
  ))
    await kennel.review(id, { act: 'accept-all' });
  return { kennel, ids };
}

describe('export', () => {
  it('tells what there is, and gives season, spreadsheet and store as files to keep', async () => {
    const { kennel } = await full();
    expect((await kennel.get('/api/export')).json).toEqual({
      season: '2026-27',
      seasons: [{ season: '2026-27', notes: 3 }],
      empty: false,
    });
    const zip = await get(kennel, '/api/export/season.zip');
    expect(zip.headers.get('content-disposition')).toBe('attachment; filename="snackstop-2026-27.zip"');
    expect(zip.headers.get('content-type')).toBe('application/zip');
    const files = unzipSync(zip.bytes);
    expect(Buffer.from(files['notes.csv'] as Uint8Array).toString()).toContain("'=1+1");
    const all = await get(kennel, '/api/export/season.zip?season=all');
    expect(all.headers.get('content-disposition')).toContain('snackstop-all.zip');
    const xlsx = await get(kennel, '/api/export/season.xlsx?season=2026-27');
    expect(Object.keys(unzipSync(xlsx.bytes))).toContain('xl/workbook.xml');
    const store = await get(kennel, '/api/export/store.zip');
    expect(Object.keys(unzipSync(store.bytes)).sort()).toEqual(
      ['manifest.json', ...Object.keys(bytesIn(kennel))].sort(),
    );
  });

  it.each([
    ['/api/export/season.zip?season=2020-21', 404, /Nothing is kept of the season 2020-21/],
    ['/api/export/season.xlsx?season=all', 400, /named like 2026-27/],
    ['/api/export/season.zip?season=soon', 400, /season/],
  ])('%s: %i and a sentence', async (path, status, says) => {
    const { kennel } = await full();
    const answer = await kennel.get<Wrong>(path);
    expect(answer.status).toBe(status);
    expect(answer.json.error.message).toMatch(says);
  });
});

describe('restore', () => {
  it('fills an empty Snackstop while it runs, to the byte, and goes on from there', async () => {
    const { kennel, ids } = await full();
    const { bytes } = await get(kennel, '/api/export/store.zip');
    const other = await newKennel();
    expect((await other.get<{ empty: boolean }>('/api/export')).json.empty).toBe(true);
    const { status, json } = await restore(other, bytes);
    expect([status, json]).toEqual([200, { files: 4, seasons: ['2026-27'], notes: 3, dogs: 2 }]);
    expect(bytesIn(other)).toEqual(bytesIn(kennel));
    expect((await other.get('/api/load')).json).toEqual((await kennel.get('/api/load')).json);
    expect((await other.get('/api/dogs')).json).toEqual((await kennel.get('/api/dogs')).json);
    const [note] = await other.notes(['13:00', 'Moss in lead']);
    expect(note?.kept).toBe('new');
    expect((await other.ask('PATCH', `/api/dogs/${ids.Moss}`, { name: 'Lichen' })).status).toBe(200);
  });

  it('is refused where something is kept, and changes nothing', async () => {
    const { kennel } = await full();
    const before = bytesIn(kennel);
    const { status, json } = await restore<Wrong>(kennel, (await get(kennel, '/api/export/store.zip')).bytes);
    expect(status).toBe(409);
    expect(json.error.message).toMatch(/only where nothing is kept yet/);
    expect(bytesIn(kennel)).toEqual(before);
  });

  it('is refused for a damaged archive, another file, and what is no ZIP by its header; nothing is changed', async () => {
    const { kennel } = await full();
    const { bytes } = await get(kennel, '/api/export/store.zip');
    const season = (await get(kennel, '/api/export/season.zip')).bytes;
    const other = await newKennel();
    const before = bytesIn(other);
    for (const bad of [bytes.subarray(0, 400), Buffer.from('Juniper'), Buffer.alloc(0), season]) {
      const { status, json } = await restore<Wrong>(other, bad);
      expect(status).toBe(400);
      expect(json.error.message).toMatch(/archive|season exported/);
      expect(json.error.kept).toBe('Nothing was changed.');
    }
    expect((await restore<Wrong>(other, bytes, { 'content-type': 'text/plain' })).status).toBe(400);
    expect((await restore<Wrong>(other, bytes, { origin: 'http://example.invalid' })).status).toBe(403);
    expect(bytesIn(other)).toEqual(before);
    expect((await restore(other, bytes)).status).toBe(200);
  });
});

describe('the printed pages', () => {
  it('a dog’s sheet: runs, findings, weights, food and care, up to a day', async () => {
    const kennel = await newKennel();
    const ids = await kennel.dogs('Juniper', 'Moss');
    const notes = await kennel.notes(
      ['09:00', 'Juniper and Moss in lead'],
      ['11:00', '20 miles'],
      ['18:00', 'Juniper in the yard'],
    );
    for (const { id } of notes) await kennel.review(id, { act: 'accept-all' });
    const yard = notes[2]?.id ?? '';
    for (const to of [
      { kind: 'finding', dogs: ['Juniper'], part: 'wrist', side: 'left', sign: 'sore', severity: 'mild' },
      { kind: 'measure', dogs: ['Juniper'], quantity: 'weight', value: 47.5, unit: 'lb' },
      { kind: 'measure', dogs: ['Juniper', 'Moss'], quantity: 'body-condition', value: 4 },
      { kind: 'intake', dogs: ['Juniper'], what: 'meal', took: 'none' },
      { kind: 'intake', dogs: ['Moss'], what: 'meal', took: 'some' },
      { kind: 'care', dogs: ['Juniper'], act: 'massaged', part: 'wrist', side: 'left' },
    ])
      await kennel.review(yard, { act: 'add', to });
    const { json } = await kennel.get<{ sheet: Sheet }>(`/api/dogs/${ids.Juniper}/sheet`);
    const { sheet } = json;
    expect(sheet).toMatchObject({ season: '2026-27', on: '2027-01-15', runsInSeason: 1, intakeTold: 1 });
    expect(sheet.episodes.map((one) => [one.site.label, one.state])).toEqual([['left wrist', 'open']]);
    expect(sheet.measures.map((one) => [one.quantity, one.value, one.unit])).toEqual([
      ['weight', 47.5, 'lb'],
      ['body-condition', 4, undefined],
    ]);
    expect(sheet.offFood).toMatchObject([{ what: 'meal', took: 'none' }]);
    expect(sheet.care).toMatchObject([{ act: 'massaged', part: 'wrist' }]);
    expect(sheet.runs[0]?.metres).toBeCloseTo(32_186.88);
    expect(sheet.about.join(' ')).toMatch(/for your veterinarian.*no diagnosis/);
    const before = await kennel.get<{ sheet: Sheet }>(`/api/dogs/${ids.Juniper}/sheet?on=2027-01-13`);
    expect(before.json.sheet).toMatchObject({ runs: [], episodes: [], measures: [], care: [] });
    expect((await kennel.get('/api/dogs/0192f000-0000-7000-8000-000000000000/sheet')).status).toBe(404);
  });

  it('the season’s summary: runs, miles a dog, findings, what still waits', async () => {
    const { kennel } = await full();
    await kennel.notes(['15:00', 'Moss in lead']);
    const { json } = await kennel.get<{ summary: Summary }>('/api/summary');
    expect(json.summary).toMatchObject({ season: '2026-27', days: 1, notes: { waiting: 1, all: 4 } });
    expect(json.summary.metres).toBeCloseTo(32_186.88);
    expect(json.summary.dogs.map((one) => [one.dog, Math.round(one.shares.metres), one.lastRun])).toEqual([
      ['Juniper', 32_187, '2027-01-14'],
      ['Moss', 32_187, '2027-01-14'],
    ]);
    expect(json.summary.months).toMatchObject([{ month: '2027-01', runs: 1 }]);
    const empty = await kennel.get<{ summary: Summary }>('/api/summary?season=2024-25');
    expect(empty.json.summary).toMatchObject({ on: '2025-06-30', runs: [], metres: 0 });
  });
});
