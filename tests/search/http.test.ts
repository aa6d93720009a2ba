/** Search over the interface: what is understood, what is found, what is sorted out, and faults told in sentences. */
import { describe, expect, it } from 'vitest';
import { read } from '../../grammar/index.ts';
import type { Numbered, Query } from '../../server/search/index.ts';
import { type Kennel, newKennel, type Wrong } from '../routes/setup.ts';

interface Answer extends Numbered {
  query: Query;
  understood: string;
  chips: { part: string; value?: string; label: string }[];
  slips: { said: string; as: string }[];
  index: { notes: number; of: number };
}

const find = async (kennel: Kennel, q: string, more = '') =>
  (await kennel.get<Answer>(`/api/search?q=${encodeURIComponent(q)}${more}`)).json;
const textsOf = (answer: Answer) => answer.notes.map((note) => note.text);

/** Two dogs, a run of 20 miles on 3 and 6 January, findings round them, and a note that nobody has reviewed. */
async function season(): Promise<Kennel> {
  const kennel = await newKennel({ read });
  await kennel.dogs('Juniper', 'Moss');
  const notes = await kennel.notes(
    ['2027-01-02T10:00:00-09:00', "Juniper's left wrist is sore"],
    ['2027-01-03T09:00:00-09:00', 'Juniper and Moss in lead'],
    ['2027-01-03T11:00:00-09:00', 'Back in the yard, 20 miles'],
    ['2027-01-06T09:00:00-09:00', 'Juniper and Moss in wheel, glare ice'],
    ['2027-01-06T10:00:00-09:00', 'Moss lost a bootie, left hind'],
    ['2027-01-06T11:00:00-09:00', 'Back in the yard, 12 miles'],
    ['2027-01-07T09:00:00-09:00', "Juniper's left wrist is sore again"],
    ['2027-01-08T09:00:00-09:00', "Juniper's wrist, no soreness"],
    ['2027-01-09T09:00:00-09:00', 'A moose stood on the trail and would not move'],
  );
  for (const { id } of notes) await kennel.review(id, { act: 'accept-all' });
  await kennel.notes(['2027-01-10T09:00:00-09:00', 'Moss has a sore right wrist']);
  return kennel;
}

describe('search over the interface', () => {
  it('tells what it understood, sorts out what was denied, and counts the miles between', async () => {
    const kennel = await season();
    const answer = await find(kennel, 'juniper sore wrist');
    expect(answer.query).toEqual({ dogs: ['Juniper'], parts: ['wrist'], signs: ['sore'] });
    expect(answer.understood).toBe('Juniper · wrist · sore, not counting “no soreness” and “fine now”');
    expect(answer.hits.map((hit) => hit.day)).toEqual(['2027-01-07', '2027-01-02']);
    expect(answer.sortedOut).toBe(1);
    const [since] = answer.hits[0]?.since ?? [];
    expect(since).toMatchObject({ dog: 'Juniper', days: 5, runs: 2, runsWithoutDistance: 0 });
    // 32 international miles of 1609.344 m (NIST SP 811, appendix B.8).
    expect(since?.metres).toBeCloseTo(32 * 1609.344, 6);
    expect(answer.hits[1]?.since).toEqual([]);
    expect(answer.index.notes).toBe(answer.index.of);
  });

  it('numbers the times a place came back, with what was run between, also times that the words do not name', async () => {
    const kennel = await newKennel({ read });
    await kennel.dogs('Juniper', 'Moss');
    const notes = await kennel.notes(
      ['2026-11-01T10:00:00-09:00', "Juniper's left wrist is sore"],
      ['2026-11-02T10:00:00-09:00', "Juniper's left wrist is still sore"],
      ['2026-11-10T09:00:00-09:00', 'Juniper and Moss in lead'],
      ['2026-11-10T11:00:00-09:00', 'Back in the yard, 20 miles'],
      ['2026-12-10T10:00:00-09:00', "Juniper's left wrist is swollen"],
      ['2026-12-12T09:00:00-09:00', 'Juniper and Moss in lead'],
      ['2026-12-12T11:00:00-09:00', 'Back in the yard, 12 miles'],
      ['2027-01-10T10:00:00-09:00', "Juniper's left wrist is sore, Moss's right shoulder is sore"],
    );
    for (const { id } of notes) await kennel.review(id, { act: 'accept-all' });
    const answer = await find(kennel, 'sore wrist');
    expect(answer.hits.map((hit) => [hit.day, hit.episodes.map(({ number, first }) => [number, first])])).toEqual([
      ['2027-01-10', [[3, true]]],
      ['2026-11-02', [[1, false]]],
      ['2026-11-01', [[1, true]]],
    ]);
    expect(answer.hits[0]?.episodes[0]?.sinceBefore).toMatchObject({ days: 31, runs: 1 });
    expect(answer.hits[0]?.episodes[0]?.sinceBefore?.metres).toBeCloseTo(12 * 1609.344, 6);
    const [place, ...others] = answer.cameBack;
    expect(others).toEqual([]);
    expect([place?.dog, place?.site.label, place?.season]).toEqual(['Juniper', 'left wrist', '2026-27']);
    expect(
      place?.episodes.map(({ number, from, found, sinceBefore }) => [number, from, found, sinceBefore?.runs]),
    ).toEqual([
      [1, '2026-11-01', true, undefined],
      [2, '2026-12-10', false, 1],
      [3, '2027-01-10', true, 1],
    ]);
    // One time is no coming back; and what nobody has reviewed is in no episode.
    expect((await find(kennel, 'moss sore shoulder')).cameBack).toEqual([]);
    await kennel.review(notes[7]?.id ?? '', { act: 'undo' });
    const undone = await find(kennel, 'sore wrist');
    expect(undone.hits[0]?.unreviewed).toBe(true);
    expect(undone.hits[0]?.episodes).toEqual([]);
    expect(undone.cameBack[0]?.episodes.length).toBe(2);
  });

  it('marks the words of the notes', async () => {
    const kennel = await season();
    const { notes } = await find(kennel, 'juniper sore wrist');
    const [first] = notes;
    const marked = first?.marks.map(([a, b]) => first.text.slice(a, b)).join(' ');
    expect(marked).toContain('wrist');
    expect(marked).toContain('sore');
    for (const note of notes)
      for (const [a, b] of note.marks) expect(a >= 0 && a < b && b <= note.text.length).toBe(true);
  });

  it('shows what was denied where it is asked for', async () => {
    const kennel = await season();
    expect((await find(kennel, 'juniper sore wrist', '&show=all')).hitsInAll).toBe(3);
    const denied = await find(kennel, 'juniper no soreness');
    expect(denied.query.show).toBe('not');
    expect(denied.hits.map((hit) => hit.day)).toEqual(['2027-01-08']);
  });

  it('marks what nobody has reviewed, and takes the mark away with the review', async () => {
    const kennel = await season();
    const before = await find(kennel, 'moss wrist');
    expect(before.hits.map((hit) => hit.unreviewed)).toEqual([true]);
    expect(before.unreviewed).toBe(1);
    await kennel.review(before.notes[0]?.id ?? '', { act: 'accept-all' });
    expect((await find(kennel, 'moss wrist')).unreviewed).toBe(0);
  });

  it('forgets an entry that was removed and a note that was put aside', async () => {
    const kennel = await season();
    const [hit] = (await find(kennel, 'moss wrist')).hits;
    await kennel.review(hit?.note ?? '', { act: 'remove', entry: hit?.id });
    expect((await find(kennel, 'moss wrist')).hitsInAll).toBe(0);
    await kennel.review(hit?.note ?? '', { act: 'undo' });
    expect((await find(kennel, 'moss wrist')).hitsInAll).toBe(1);
    await kennel.review(hit?.note ?? '', { act: 'set-aside', aside: true });
    expect((await find(kennel, 'moss wrist')).hitsInAll).toBe(0);
  });

  it('finds by the circumstances of the run', async () => {
    const kennel = await season();
    const ice = await find(kennel, 'who lost booties on ice in january');
    expect(ice.hits.map((hit) => hit.entry.dogs)).toEqual([['Moss']]);
    expect(ice.dogs).toEqual([{ value: 'Moss', hits: 1 }]);
    expect((await find(kennel, 'lost booties on soft trail')).hitsInAll).toBe(0);
    const wheel = await find(kennel, 'moss wheel');
    expect(wheel.hits.map((hit) => hit.day)).toEqual(['2027-01-06']);
  });

  it('finds words in spite of a slip, and says which words stand nowhere', async () => {
    const kennel = await season();
    expect(textsOf(await find(kennel, 'moose'))).toEqual(['A moose stood on the trail and would not move']);
    expect(textsOf(await find(kennel, 'mooose'))).toEqual(['A moose stood on the trail and would not move']);
    const without = await find(kennel, 'juniper sore wrist zeppelin');
    expect(without.leftOut).toBe('zeppelin');
    expect(without.hitsInAll).toBe(2);
    expect((await find(kennel, 'zeppelin')).notesInAll).toBe(0);
  });

  it('takes parts without words, and a dog by any name it has had', async () => {
    const kennel = await season();
    const byParts = (await kennel.get<Answer>('/api/search?dog=Juniper&part=wrist&sign=sore&sign=swollen')).json;
    expect(byParts.hitsInAll).toBe(2);
    expect(byParts.query).toEqual({ dogs: ['Juniper'], parts: ['wrist'], signs: ['sore', 'swollen'] });
    const { dogs } = (await kennel.get<{ dogs: { id: string; name: string }[] }>('/api/dogs')).json;
    const id = dogs.find((dog) => dog.name === 'Juniper')?.id;
    await kennel.ask('PATCH', `/api/dogs/${id}`, { name: 'Savin' });
    const renamed = await find(kennel, 'juniper sore wrist');
    expect(renamed.query.dogs).toEqual(['Savin']);
    expect(renamed.hits.map((hit) => hit.entry.dogs)).toEqual([['Savin'], ['Savin']]);
  });

  it('keeps to a season, to days, and to a run', async () => {
    const kennel = await season();
    expect((await find(kennel, 'juniper sore wrist', '&season=2025-26')).hitsInAll).toBe(0);
    expect((await find(kennel, 'juniper sore wrist', '&to=2027-01-02')).hitsInAll).toBe(1);
    const { hits } = await find(kennel, 'lost booties');
    const run = hits[0]?.run ?? '';
    expect(run).not.toBe('');
    const ofRun = (await kennel.get<Answer>(`/api/search?run=${encodeURIComponent(run)}`)).json;
    expect(ofRun.notesInAll).toBe(3);
  });

  it('gives pages that put together are the whole', async () => {
    const kennel = await season();
    const all = await find(kennel, 'juniper');
    const parts: string[] = [];
    for (let offset = 0; offset < all.hitsInAll; offset += 2)
      parts.push(...(await find(kennel, 'juniper', `&limit=2&offset=${offset}`)).hits.map((hit) => hit.id));
    expect(parts).toEqual(all.hits.map((hit) => hit.id));
  });

  it.each([
    ['?side=middle', /“side”/],
    ['?from=yesterday', /“from”.*YYYY-MM-DD/],
    ['?sign=happy', /“sign”/],
    [`?q=${'a'.repeat(301)}`, /“q”.*300/],
    ['?season=27', /“season”/],
  ])('answers %s with 400 and a sentence', async (query, says) => {
    const kennel = await newKennel();
    const { status, json } = await kennel.get<Wrong>(`/api/search${query}`);
    expect(status).toBe(400);
    expect(json.error.message).toMatch(says);
  });

  it('answers an empty store and an empty query', async () => {
    const kennel = await newKennel();
    const { status, json } = await kennel.get<Answer>('/api/search');
    expect(status).toBe(200);
    expect(json).toMatchObject({ hits: [], notes: [], understood: 'nothing yet', index: { notes: 0, of: 0 } });
  });
});
