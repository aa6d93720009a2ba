import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contextSchema } from '../../grammar/entry.ts';
import { createApp } from '../../server/app.ts';
import { openStore } from '../../server/store/index.ts';
import { Kennel, NOW, newKennel, TODAY, type Wrong } from './setup.ts';

interface Status {
  season: string;
  seasons: string[];
  waiting: number;
  waitingElsewhere: { season: string; waiting: number }[];
  warnings: string[];
  folder: string;
}

describe('GET /api/status', () => {
  it('tells an empty kennel’s', async () => {
    const kennel = await newKennel();
    expect((await kennel.get('/api/status')).json).toEqual({
      version: '0.0.0-test',
      season: '2026-27',
      seasons: ['2026-27'],
      today: TODAY,
      waiting: 0,
      waitingElsewhere: [],
      warnings: [],
      units: 'imperial',
      kennel: '',
      folder: kennel.store.folder,
    });
  });

  it('counts what waits, in the season shown and elsewhere', async () => {
    const kennel = await newKennel();
    const [first, second] = await kennel.notes(
      ['09:00', 'one'],
      ['10:00', 'two'],
      ['2025-12-01T09:00:00-09:00', 'three'],
    );
    await kennel.review(first?.id ?? '', { act: 'accept-all' });
    const status = async () => (await kennel.get<Status>('/api/status')).json;
    expect(await status()).toMatchObject({
      seasons: ['2025-26', '2026-27'],
      waiting: 1,
      waitingElsewhere: [{ season: '2025-26', waiting: 1 }],
    });
    await kennel.review(second?.id ?? '', { act: 'set-aside', aside: true });
    expect((await status()).waiting).toBe(0);
    await kennel.ask('PUT', '/api/settings', { season: '2025-26' });
    expect(await status()).toMatchObject({ season: '2025-26', waiting: 1, waitingElsewhere: [] });
  });

  it('passes on what the store warns of: a file with a comma missing', async () => {
    const first = await newKennel();
    await first.dogs('Juniper');
    await first.notes(['09:00', 'Juniper is lame']);
    await first.notes(['10:00', 'Juniper in lead']);
    await first.store.close();
    await writeFile(join(first.store.folder, 'season-2026-27.json'), '{"schema": 1 "season": "2026-27"}');
    const store = await openStore(first.store.folder);
    const kennel = new Kennel(createApp({ store, version: 'test', now: () => NOW }), store);
    const { warnings } = (await kennel.get<Status>('/api/status')).json;
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatch(/season-2026-27/);
    expect((await kennel.get<{ total: number }>('/api/notes')).json.total).toBeGreaterThan(0);
    await store.close();
  });

  it('shows today’s season where the one set has no name a season can have', async () => {
    const kennel = await newKennel();
    await kennel.store.changeKennel((k) => [{ ...k, settings: { ...k.settings, season: '2026-31' } }, null]);
    expect((await kennel.get<Status>('/api/status')).json.season).toBe('2026-27');
    expect((await kennel.get('/api/notes')).status).toBe(200);
  });
});

describe('settings', () => {
  it('are read and set; what is left out takes its default', async () => {
    const kennel = await newKennel();
    const get = async () => (await kennel.get<{ settings: unknown }>('/api/settings')).json.settings;
    expect(await get()).toEqual({ kennel: '', units: 'imperial', runGapHours: 5, silenceDays: 14 });
    const set = { kennel: 'Hollow Spruce', units: 'metric', season: '2025-26', runGapHours: 3, silenceDays: 21 };
    const { status, json } = await kennel.ask('PUT', '/api/settings', set);
    expect([status, json]).toEqual([200, { settings: set, reread: 0 }]);
    expect(await get()).toEqual(set);
    await kennel.ask('PUT', '/api/settings', {});
    expect(await get()).toEqual({ kennel: '', units: 'imperial', runGapHours: 5, silenceDays: 14 });
  });

  it.each([
    [{ units: 'leagues' }, /“units” has to be one of “imperial” or “metric”/],
    [{ season: '2026' }, /“season”.*like 2026-27/],
    [{ season: '2026-28' }, /two years that follow/],
    [{ runGapHours: 0 }, /“runGapHours” is too small \(at least 0.5\)/],
    [{ silenceDays: 0 }, /“silenceDays” is too small \(at least 1\)/],
    [{ silenceDays: 2.5 }, /“silenceDays”/],
    [{ runGapHours: 'five' }, /“runGapHours” has to be a number/],
    [{ kennel: 'x'.repeat(81) }, /“kennel” is too long \(at most 80 characters\)/],
    [{ theme: 'dark' }, /“theme” is not known here/],
    [{ units: 'x', season: 'y', runGapHours: 'z', kennel: 7 }, /, and 1 more\.$/],
    ['null', /has to be an object/],
  ])('%j is answered with 400 and a sentence', async (body, says) => {
    const kennel = await newKennel();
    const { status, json } = await kennel.ask<Wrong>('PUT', '/api/settings', body);
    expect(status).toBe(400);
    expect(json.error.message).toMatch(says);
    expect(kennel.store.kennel().settings.units).toBe('imperial');
  });
});

describe('GET /api/context', () => {
  it('is what the grammar is told: the roster, the people, the line-up at that time', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss');
    await kennel.post('/api/people', { name: 'Wren' });
    await kennel.notes(['09:00', 'Juniper and Moss in lead'], [`${TODAY}T08:00:00-09:00`, 'Moss in wheel']);
    const context = async (query: string) => {
      const { json } = await kennel.get<{ context: unknown }>(`/api/context${query}`);
      return contextSchema.parse(json.context);
    };
    expect(await context(`?at=${encodeURIComponent('2027-01-14T10:00:00-09:00')}`)).toMatchObject({
      dogs: [
        { name: 'Juniper', sex: 'F' },
        { name: 'Moss', sex: 'M' },
      ],
      people: ['Wren'],
      lineup: [
        { dog: 'Juniper', position: 'lead' },
        { dog: 'Moss', position: 'lead' },
      ],
      units: 'imperial',
      at: '2027-01-14T10:00',
    });
    expect((await context(`?at=${encodeURIComponent('2027-01-14T08:00:00-09:00')}`)).lineup).toEqual([]);
    expect(await context('')).toMatchObject({ at: `${TODAY}T09:00`, lineup: [{ dog: 'Moss', position: 'wheel' }] });
    const wrong = await kennel.get<Wrong>('/api/context?at=noon');
    expect(wrong.status).toBe(400);
    expect(wrong.json.error.message).toMatch(/“at”.*with its offset/);
  });
});
