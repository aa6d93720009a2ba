/** GET /api/dogs/:id/season: one dog's season, kept up with every review, and refused in sentences. */
import { describe, expect, it } from 'vitest';
import type { DogSeason } from '../../server/dog/index.ts';
import type { DogLoad } from '../../server/load/index.ts';
import { metres } from '../../server/records/index.ts';
import { type Kennel, newKennel, TODAY, type Wrong } from './setup.ts';

interface Answer {
  story: DogSeason;
  seasons: string[];
  about: Record<string, string>;
}
const MILE = metres(1, 'mi');
const seasonOf = async (kennel: Kennel, id: string, query = '') =>
  (await kennel.get<Answer>(`/api/dogs/${id}/season${query}`)).json;

async function filled() {
  const kennel = await newKennel();
  const ids = await kennel.dogs('Juniper', 'Moss');
  const notes = await kennel.notes(
    ['2026-03-10T09:00:00-09:00', 'Juniper in lead, 5 miles'],
    ['2026-12-01T09:00:00-09:00', 'Juniper and Moss in lead, 10 miles'],
    ['2027-01-10T09:00:00-09:00', 'Juniper in lead, 8 miles'],
  );
  for (const { id } of notes) await kennel.review(id, { act: 'accept-all' });
  const add = (n: number, to: object) => kennel.review(notes[n]?.id ?? '', { act: 'add', to });
  const wrist = { kind: 'finding', dogs: ['Juniper'], part: 'wrist', side: 'left', sign: 'sore' };
  await add(1, wrist);
  await add(2, wrist);
  await add(1, { kind: 'intake', dogs: ['Juniper', 'Moss'], what: 'snack', took: 'none' });
  await add(2, { kind: 'measure', dogs: ['Juniper'], quantity: 'weight', value: 50, unit: 'lb' });
  return { kennel, notes, juniper: ids.Juniper ?? '', moss: ids.Moss ?? '' };
}

describe('GET /api/dogs/:id/season', () => {
  it('tells the days, what came back, appetite, weight and notes of the season shown', async () => {
    const { kennel, notes, juniper } = await filled();
    const { story, seasons, about } = await seasonOf(kennel, juniper);
    expect([story.dog.name, story.season, story.on]).toEqual(['Juniper', '2026-27', TODAY]);
    expect(seasons).toEqual(['2025-26', '2026-27']);
    expect(story.days).toHaveLength(199);
    expect(story.days.filter((day) => day.metres > 0).map((day) => [day.day, Math.round(day.metres / MILE)])).toEqual([
      ['2026-12-01', 10],
      ['2027-01-10', 8],
    ]);
    expect(story.sites.map(({ site, episodes, days }) => [site.label, episodes, days.length])).toEqual([
      ['left wrist', 2, 2],
    ]);
    expect(story.episodes[0]).toMatchObject({ number: 2, state: 'open', sinceBefore: { days: 40, runs: 0 } });
    expect(story.appetite.map(({ what, took, day }) => [what, took, day])).toEqual([['snack', 'none', '2026-12-01']]);
    expect(story.measures.map(({ value, unit }) => [value, unit])).toEqual([[50, 'lb']]);
    expect(story.notes.map((note) => note.id)).toEqual([notes[2]?.id, notes[1]?.id]);
    expect(about.cautions).toMatch(/veterinarian/);
  });

  it('says of the load what GET /api/load says of the same day', async () => {
    const { kennel, juniper } = await filled();
    const { story } = await seasonOf(kennel, juniper, '?on=2027-01-12');
    const { dogs } = (await kennel.get<{ dogs: (DogLoad & { id: string })[] }>('/api/load?on=2027-01-12')).json;
    expect(dogs.find((dog) => dog.id === juniper)).toMatchObject(story.load);
    expect(story.days.at(-1)?.day).toBe('2027-01-12');
  });

  it('another season, another day, a dog that told nothing', async () => {
    const { kennel, juniper, moss } = await filled();
    const before = await seasonOf(kennel, juniper, '?season=2025-26');
    expect([before.story.on, before.story.days.length, before.story.episodes]).toEqual(['2026-03-10', 1, []]);
    expect((await seasonOf(kennel, juniper, '?on=2026-12-02')).story.episodes).toHaveLength(1);
    const empty = (await seasonOf(kennel, moss, '?season=2025-26')).story;
    expect([empty.days, empty.runs, empty.episodes, empty.notes, empty.load.daysOfRecord]).toEqual([[], [], [], [], 0]);
  });

  it('keeps up with every review, undo, rename and with the days of silence', async () => {
    const { kennel, notes, juniper } = await filled();
    const count = async () => {
      const { story } = await seasonOf(kennel, juniper);
      return [story.runs.length, story.episodes.length, story.measures.length];
    };
    expect(await count()).toEqual([2, 2, 1]);
    const id = notes[2]?.id ?? '';
    await kennel.review(id, { act: 'set-aside', aside: true });
    expect(await count()).toEqual([1, 1, 0]);
    await kennel.review(id, { act: 'undo' });
    expect(await count()).toEqual([2, 2, 1]);
    await kennel.ask('PATCH', `/api/dogs/${juniper}`, { name: 'Spark' });
    expect((await seasonOf(kennel, juniper)).story.notes).toHaveLength(2);
    expect(await count()).toEqual([2, 2, 1]);
    const { settings } = (await kennel.get<{ settings: object }>('/api/settings')).json;
    await kennel.ask('PUT', '/api/settings', { ...settings, silenceDays: 60 });
    // Not silent for 60 days: what was two episodes is one.
    expect(await count()).toEqual([2, 1, 1]);
  });

  it.each([
    ['?season=27', 400, /“season”/],
    ['?on=2027-02-30', 400, /“on”/],
    ['?season=2025-26&on=2027-01-10', 400, /2027-01-10 is not in the season 2025-26/],
  ])('answers %s with %i and a sentence', async (query, status, says) => {
    const { kennel, juniper } = await filled();
    const answer = await kennel.get<Wrong>(`/api/dogs/${juniper}/season${query}`);
    expect(answer.status).toBe(status);
    expect(answer.json.error.message).toMatch(says);
  });

  it('answers an id that no dog has with 404', async () => {
    const kennel = await newKennel();
    for (const id of ['nobody', '0190b3a0-0000-7000-8000-000000000000']) {
      const answer = await kennel.get<Wrong>(`/api/dogs/${id}/season`);
      expect([answer.status, answer.json.error.message]).toEqual([404, 'There is no dog of this id.']);
    }
  });
});
