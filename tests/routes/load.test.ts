/** Only what a person has reviewed counts: the load before review, after it, and after undo. */
import { describe, expect, it } from 'vitest';
import { metres } from '../../server/records/index.ts';
import type { RunRecord } from '../../server/records/types.ts';
import { type Kennel, newKennel, TODAY, type Wrong } from './setup.ts';

interface Load {
  on: string;
  season: string;
  dogs: {
    dog: string;
    id: string;
    retired: boolean;
    today: number;
    metres7: number;
    metres28: number;
    runs7: number;
    daysSinceLastRun?: number;
  }[];
  about: Record<string, string>;
}
const MILE = metres(1, 'mi');
const loadOf = async (kennel: Kennel, query = '') => (await kennel.get<Load>(`/api/load${query}`)).json;
const milesOf = async (kennel: Kennel) =>
  Object.fromEntries(
    (await loadOf(kennel)).dogs.map((dog) => [dog.dog, Math.round((dog.metres7 / MILE) * 1000) / 1000]),
  );
const runsOf = async (kennel: Kennel) => (await kennel.get<{ runs: RunRecord[] }>('/api/runs')).json.runs;

describe('only reviewed entries count', () => {
  it('before review nothing does, after it what was accepted, after undo nothing again', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss');
    const [start, end] = await kennel.notes(['09:00', 'Juniper and Moss in lead'], ['11:00', '20 miles']);
    const nothing = { Juniper: 0, Moss: 0 };
    expect(await milesOf(kennel)).toEqual(nothing);
    expect(await runsOf(kennel)).toEqual([]);

    await kennel.review(start?.id ?? '', { act: 'accept-all' });
    await kennel.review(end?.id ?? '', { act: 'accept-all' });
    expect(await milesOf(kennel)).toEqual({ Juniper: 20, Moss: 20 });
    expect(await runsOf(kennel)).toHaveLength(1);

    await kennel.review(end?.id ?? '', { act: 'undo' });
    expect(await milesOf(kennel)).toEqual(nothing);
    await kennel.review(start?.id ?? '', { act: 'undo' });
    expect(await runsOf(kennel)).toEqual([]);
    expect(await milesOf(kennel)).toEqual(nothing);
  });

  it('a change, a removal, an added entry and setting aside count at once, and undo takes each back', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss', 'Otter');
    const [note] = await kennel.notes(['09:00', 'Juniper and Moss in lead, 20 miles']);
    const id = note?.id ?? '';
    const [hitch, distance] = (await kennel.note(id)).entries;
    const acts: [unknown, Record<string, number>][] = [
      [{ act: 'accept-all' }, { Juniper: 20, Moss: 20, Otter: 0 }],
      [
        { act: 'change', entry: distance?.id, to: { ...distance?.entry, value: 12 } },
        { Juniper: 12, Moss: 12, Otter: 0 },
      ],
      [
        { act: 'change', entry: hitch?.id, to: { ...hitch?.entry, dogs: ['Juniper', 'Otter'] } },
        { Juniper: 12, Moss: 0, Otter: 12 },
      ],
      [
        { act: 'add', to: { kind: 'hitch', dogs: ['Moss'], position: 'wheel' } },
        { Juniper: 12, Moss: 12, Otter: 12 },
      ],
      [
        { act: 'remove', entry: hitch?.id },
        { Juniper: 0, Moss: 12, Otter: 0 },
      ],
      [
        { act: 'set-aside', aside: true },
        { Juniper: 0, Moss: 0, Otter: 0 },
      ],
    ];
    for (const [act, miles] of acts) {
      expect((await kennel.review(id, act)).status).toBe(200);
      expect(await milesOf(kennel)).toEqual(miles);
    }
    for (const [, miles] of acts.slice(0, -1).reverse()) {
      await kennel.review(id, { act: 'undo' });
      expect(await milesOf(kennel)).toEqual(miles);
    }
    await kennel.review(id, { act: 'undo' });
    expect(await milesOf(kennel)).toEqual({ Juniper: 0, Moss: 0, Otter: 0 });
  });

  it('reading a note again makes nothing count', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    await kennel.notes(['09:00', 'Fennel and Juniper in lead, 20 miles']);
    const { json } = await kennel.post<{ reread: number }>('/api/dogs', { name: 'Fennel', sex: 'F' });
    expect(json.reread).toBe(1);
    expect(await milesOf(kennel)).toEqual({ Fennel: 0, Juniper: 0 });
  });
});

describe('GET /api/load', () => {
  async function ran() {
    const kennel = await newKennel();
    const ids = await kennel.dogs('Moss', 'Juniper', 'Otter');
    for (const { id } of await kennel.notes(
      [`${TODAY}T07:00:00-09:00`, 'Juniper in lead, 3 miles'],
      ['2027-01-10T09:00:00-09:00', 'Juniper and Moss in lead, 10 miles'],
      ['2026-03-10T09:00:00-09:00', 'Otter in lead, 5 miles'],
    ))
      await kennel.review(id, { act: 'accept-all' });
    return { kennel, ids };
  }

  it('tells each dog’s miles today, in 7 and in 28 days, and the days since its last run, by name', async () => {
    const { kennel, ids } = await ran();
    const load = await loadOf(kennel);
    expect([load.on, load.season]).toEqual([TODAY, '2026-27']);
    const row = (dog: string) => load.dogs.find((one) => one.dog === dog);
    expect(load.dogs.map((dog) => dog.dog)).toEqual(['Juniper', 'Moss', 'Otter']);
    expect(row('Juniper')).toMatchObject({ id: ids.Juniper, retired: false, runs7: 2, daysSinceLastRun: 0 });
    expect((row('Juniper')?.today ?? 0) / MILE).toBeCloseTo(3);
    expect((row('Juniper')?.metres28 ?? 0) / MILE).toBeCloseTo(13);
    expect(row('Moss')).toMatchObject({ today: 0, runs7: 1, daysSinceLastRun: 5 });
    // Known from the season before.
    expect(row('Otter')).toMatchObject({ metres28: 0, daysSinceLastRun: 311 });
    expect(load.about.ratio).toMatch(/not a chance of injury/);
  });

  it('looks at another day, and at the last day with a run of a season that is over', async () => {
    const { kennel } = await ran();
    const earlier = await loadOf(kennel, '?on=2027-01-12');
    expect(earlier.dogs.map((dog) => Math.round(dog.metres7 / MILE))).toEqual([10, 10, 0]);
    const over = await loadOf(kennel, '?season=2025-26');
    expect([over.on, over.season]).toEqual(['2026-03-10', '2025-26']);
    expect(over.dogs.map((dog) => Math.round(dog.today / MILE))).toEqual([0, 0, 5]);
    expect((await loadOf(kennel, '?on=2025-12-01')).season).toBe('2025-26');
    expect((await loadOf(kennel, '?season=2024-25')).on).toBe('2025-06-30');
    expect((await loadOf(kennel, '?season=2027-28')).on).toBe('2027-07-01');
  });

  it('leaves a retired dog out where it did not run', async () => {
    const { kennel, ids } = await ran();
    await kennel.ask('PATCH', `/api/dogs/${ids.Otter}`, { retired: true });
    await kennel.ask('PATCH', `/api/dogs/${ids.Moss}`, { retired: true });
    expect((await loadOf(kennel)).dogs.map((dog) => [dog.dog, dog.retired])).toEqual([
      ['Juniper', false],
      ['Moss', true],
    ]);
    expect((await loadOf(kennel, '?season=2025-26')).dogs.map((dog) => dog.dog)).toEqual(['Juniper', 'Otter']);
  });

  it('follows a dog through a rename', async () => {
    const { kennel, ids } = await ran();
    await kennel.ask('PATCH', `/api/dogs/${ids.Juniper}`, { name: 'Spark' });
    const row = (await loadOf(kennel)).dogs.find((dog) => dog.id === ids.Juniper);
    expect(row?.dog).toBe('Spark');
    expect((row?.metres28 ?? 0) / MILE).toBeCloseTo(13);
  });

  it.each([
    ['?on=tomorrow', /“on”.*YYYY-MM-DD/],
    ['?on=2027-02-30', /“on”/],
    ['?season=27', /“season”/],
  ])('answers %s with 400 and a sentence', async (query, says) => {
    const kennel = await newKennel();
    const { status, json } = await kennel.get<Wrong>(`/api/load${query}`);
    expect(status).toBe(400);
    expect(json.error.message).toMatch(says);
  });
});
