/** What keeps coming back, over HTTP: only what was reviewed, open ones first, and the same after each review as from scratch. */
import { describe, expect, it } from 'vitest';
import { indexLoad } from '../../server/load/index.ts';
import { metres, runsOf } from '../../server/records/index.ts';
import { type Caution, type Episode, episodesOf, type Watch } from '../../server/watch/index.ts';
import { type Kennel, newKennel, TODAY, type Wrong } from './setup.ts';

type Answer = Omit<Watch, 'episodes' | 'cautions'> & {
  season: string;
  episodes: (Episode & { dogId: string })[];
  cautions: (Caution & { dogId: string })[];
  about: Record<string, string>;
};
const MILE = metres(1, 'mi');
const watchOf = async (kennel: Kennel, query = '') => (await kennel.get<Answer>(`/api/watch${query}`)).json;
const lines = ({ episodes }: Answer) =>
  episodes.map(({ dog, site, state, from, number }) => [dog, site.label, state, from, number].join(' · '));

/** Accepted entries of their own, so that what is tested does not hang on the grammar. */
async function told(kennel: Kennel, ...notes: [at: string, ...entries: object[]][]): Promise<string[]> {
  const kept = await kennel.notes(...notes.map(([at]): [string, string] => [at, 'Told.']));
  for (const [i, { id }] of kept.entries()) {
    for (const entry of notes[i]?.slice(1) ?? []) await kennel.review(id, { act: 'add', to: entry });
    for (const { id: entry, from } of (await kennel.note(id)).entries)
      if (from === 'read') await kennel.review(id, { act: 'remove', entry });
  }
  return kept.map(({ id }) => id);
}
const day = (date: string, clock = '09:00') => `${date}T${clock}:00-09:00`;
const team = { kind: 'hitch', dogs: ['Juniper', 'Moss'], position: 'lead' };
const ran = (value: number) => ({ kind: 'distance', dogs: [], measure: 'total', value, unit: 'mi' });
const wrist = (assertion?: string) => ({
  ...{ kind: 'finding', dogs: ['Juniper'], part: 'wrist', side: 'left', sign: 'sore' },
  ...(assertion ? { assertion } : {}),
});

async function story() {
  const kennel = await newKennel();
  const ids = await kennel.dogs('Juniper', 'Moss');
  await told(
    kennel,
    [day('2026-10-20'), team, ran(10), wrist()],
    [day('2026-10-25'), team, ran(8), wrist('resolved')],
    [day('2026-11-20'), team, ran(12)],
    [day('2026-11-24'), team, ran(20)],
    [day('2026-11-26'), team, ran(20), { ...wrist(), severity: 'moderate' }],
    [day('2027-01-10'), team, ran(15)],
    [day('2027-01-14'), team, ran(5), wrist(), { kind: 'finding', dogs: ['Juniper'], part: 'shoulder', sign: 'stiff' }],
    [day('2027-01-14', '11:00'), { kind: 'finding', dogs: ['Moss'], sign: 'dark-urine', assertion: 'possible' }],
  );
  return { kennel, ids };
}

describe('GET /api/watch', () => {
  it('gives open episodes first, recurrences with what lies between, and what came before beside the usual', async () => {
    const { kennel, ids } = await story();
    const watch = await watchOf(kennel);
    expect([watch.on, watch.season, watch.silenceDays]).toEqual([TODAY, '2026-27', 14]);
    expect(lines(watch)).toEqual([
      'Juniper · shoulder, side not said · open · 2027-01-14 · 1',
      'Juniper · left wrist · open · 2027-01-14 · 3',
      'Moss · urine · open · 2027-01-14 · ',
      'Juniper · left wrist · not-seen-since · 2026-11-26 · 2',
      'Juniper · left wrist · over · 2026-10-20 · 1',
    ]);
    const third = watch.episodes[1];
    expect(third?.dogId).toBe(ids.Juniper);
    // Last seen on 26 November, and a run of 15 miles in the 49 days between.
    expect(third?.sinceBefore).toMatchObject({ days: 49, runs: 1 });
    expect((third?.sinceBefore?.metres ?? 0) / MILE).toBeCloseTo(15);
    expect((third?.onset.metres7 ?? 0) / MILE).toBeCloseTo(15);
    expect(third?.onset.usual.metres7).toBeGreaterThanOrEqual(0);
    expect(watch.together).toMatchObject([{ dog: 'Juniper', season: '2026-27', side: 'left' }]);
    expect(watch.cautions).toMatchObject([
      { dog: 'Moss', dogId: ids.Moss, reason: 'dark-urine', told: 'possible', standing: true },
    ]);
    expect(watch.about.cautions).toMatch(/no diagnosis/);
  });

  it('counts what was accepted alone, and looks at another day', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const [note] = await kennel.notes(['09:00', 'Juniper in lead. Juniper is lame']);
    expect((await watchOf(kennel)).episodes).toEqual([]);
    await kennel.review(note?.id ?? '', { act: 'accept-all' });
    expect(lines(await watchOf(kennel))).toEqual(['Juniper · lame, no leg named · open · 2027-01-14 · 1']);
    expect((await watchOf(kennel, '?on=2027-01-13')).episodes).toEqual([]);
    await kennel.review(note?.id ?? '', { act: 'undo' });
    expect((await watchOf(kennel)).episodes).toEqual([]);
  });

  it('state=open leaves the ended ones out; another season gives its own', async () => {
    const { kennel } = await story();
    const open = await watchOf(kennel, '?state=open');
    expect(open.episodes.map(({ state }) => state)).toEqual(['open', 'open', 'open']);
    expect(open.cautions).toHaveLength(1);
    const before = await watchOf(kennel, '?on=2026-11-27&state=open');
    expect(lines(before)).toEqual(['Juniper · left wrist · open · 2026-11-26 · 2']);
    expect(before.cautions).toEqual([]);
    expect((await watchOf(kennel, '?season=2025-26')).episodes).toEqual([]);
  });

  it('goes by the kennel’s own days of silence', async () => {
    const { kennel } = await story();
    await kennel.ask('PUT', '/api/settings', { silenceDays: 60 });
    const watch = await watchOf(kennel);
    expect(watch.silenceDays).toBe(60);
    // 49 days are no silence now: the third one is the second, which goes on.
    expect(lines(watch)).toContain('Juniper · left wrist · open · 2026-11-26 · 2');
  });

  it('leaves out a retired dog that did not run', async () => {
    const { kennel, ids } = await story();
    await kennel.ask('PATCH', `/api/dogs/${ids.Moss}`, { retired: true });
    expect((await watchOf(kennel)).cautions).toHaveLength(1);
    expect((await watchOf(kennel, '?season=2027-28&on=2027-07-01')).cautions).toEqual([]);
  });

  it('after each review it is what it is from scratch', async () => {
    const { kennel } = await story();
    const kept = await kennel.notes(
      [day('2027-01-12'), 'Juniper and Moss in lead, 9 miles. Moss is lame'],
      [day('2027-01-13'), 'Juniper and Moss in lead, 12 miles. Juniper is lame'],
      [day('2026-11-25'), 'Moss is lame'],
    );
    const acts = kept.flatMap(({ id }) => [
      [id, { act: 'accept-all' }] as const,
      [id, { act: 'undo' }] as const,
      [id, { act: 'accept-all' }] as const,
      [id, { act: 'set-aside', aside: true }] as const,
    ]);
    for (const [id, act] of acts) {
      expect((await kennel.review(id, act)).status).toBe(200);
      const { dogs, settings } = kennel.store.kennel();
      const season = kennel.store.season('2026-27');
      const { runs, yard } = runsOf(season, dogs, settings);
      const names = dogs.map((dog) => dog.name).sort();
      const scratch = episodesOf(runs, yard, names, { on: TODAY, silenceDays: 14 }, indexLoad(runs));
      const { episodes, cautions, together } = await watchOf(kennel);
      const plain = <T extends { dogId: string }>({ dogId, ...one }: T) => one;
      expect({ episodes: episodes.map(plain), cautions: cautions.map(plain), together }).toEqual({
        episodes: scratch.episodes,
        cautions: scratch.cautions,
        together: scratch.together,
      });
    }
  });

  it.each([
    ['?on=soon', /“on”.*YYYY-MM-DD/],
    ['?season=27', /“season”/],
    ['?state=shut', /“state” has to be one of “open” or “all”/],
  ])('answers %s with 400 and a sentence', async (query, says) => {
    const { status, json } = await (await newKennel()).get<Wrong>(`/api/watch${query}`);
    expect(status).toBe(400);
    expect(json.error.message).toMatch(says);
  });
});
