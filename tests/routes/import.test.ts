/** Old notebooks, by the same way in as every note. */
import { describe, expect, it } from 'vitest';
import type { ImportReport, KeptNote, NoteView } from '../../server/routes/schemas.ts';
import { newKennel, type Wrong } from './setup.ts';

type Imported = {
  report: ImportReport;
  notes?: { id: string; text: string; at: string; by?: string; source: string }[];
};

const NOTEBOOK = `2026-12-03
8:10 Juniper and Moss in lead
9:40 everyone ate
11:05 20 miles

2026-12-04
07:50 by Wren: Moss is lame
`;

describe('POST /api/import', () => {
  it('takes a notebook in: read, waiting for review, each note once', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss');
    await kennel.post('/api/people', { name: 'Wren' });
    const { status, json } = await kennel.post<Imported>('/api/import', { text: NOTEBOOK, offset: '-09:00' });
    expect(status).toBe(200);
    expect(json).toEqual({ report: { found: 4, taken: 4, already: 0, refused: [], problems: [], warnings: [] } });
    const { json: listed } = await kennel.get<{ notes: NoteView[] }>('/api/notes');
    expect(listed.notes.map((n) => [n.at, n.text, n.by, n.source, n.state])).toEqual([
      ['2026-12-03T08:10:00-09:00', 'Juniper and Moss in lead', undefined, 'import', 'waiting'],
      ['2026-12-03T09:40:00-09:00', 'everyone ate', undefined, 'import', 'waiting'],
      ['2026-12-03T11:05:00-09:00', '20 miles', undefined, 'import', 'waiting'],
      ['2026-12-04T07:50:00-09:00', 'Moss is lame', 'Wren', 'import', 'waiting'],
    ]);
    // The line-up of the day's earlier note was known when "everyone" was read.
    expect(listed.notes[1]?.entries[0]?.entry.dogs).toEqual(['Juniper', 'Moss']);
    const again = await kennel.post<Imported>('/api/import', { text: `${NOTEBOOK}9:00 home`, offset: '-09:00' });
    expect(again.json.report).toMatchObject({ found: 5, taken: 1, already: 4 });
  });

  it('only looks when it is asked to, and answers notes that can be sent in parts', async () => {
    const kennel = await newKennel();
    const { json } = await kennel.post<Imported>('/api/import?dry=1', { text: NOTEBOOK, offset: '-09:00' });
    expect(json.report).toEqual({ found: 4, taken: 0, already: 0, refused: [], problems: [], warnings: [] });
    expect(json.notes).toHaveLength(4);
    expect((await kennel.get<{ total: number }>('/api/notes')).json.total).toBe(0);
    const sent = await kennel.post<{ notes: KeptNote[] }>('/api/notes', { notes: json.notes?.slice(0, 2) });
    expect(sent.json.notes.map((n) => n.kept)).toEqual(['new', 'new']);
    const rest = await kennel.post<Imported>('/api/import', { text: NOTEBOOK, offset: '-09:00' });
    expect(rest.json.report).toMatchObject({ taken: 2, already: 2 });
  });

  it('takes day, speaker and offset from what is told beside the text', async () => {
    const kennel = await newKennel();
    await kennel.post('/api/import', {
      text: '8:10 Juniper in lead',
      heading: { at: '2026-12-05T00:00:00+01:00' },
      by: 'Tobias',
    });
    await kennel.post('/api/import', { text: '8:20 fine day', name: '2026-12-06 evening.txt', offset: 'Europe/Oslo' });
    const { json } = await kennel.get<{ notes: NoteView[] }>('/api/notes');
    expect(json.notes.map((n) => [n.at, n.by])).toEqual([
      ['2026-12-05T08:10:00+01:00', 'Tobias'],
      ['2026-12-06T08:20:00+01:00', undefined],
    ]);
  });

  it('reports the lines that could not be placed, and takes the others', async () => {
    const kennel = await newKennel();
    const { json } = await kennel.post<Imported>('/api/import', {
      text: '8:10 no day is known\n\n2026-12-03\n25:99 no such time\n9:00 a fine day\n',
      offset: '-09:00',
    });
    expect(json.report).toMatchObject({ found: 1, taken: 1 });
    expect(json.report.problems.map((p) => [p.line, p.text])).toEqual([
      [1, '8:10 no day is known'],
      [4, '25:99 no such time'],
    ]);
    for (const problem of json.report.problems) expect(problem.says).toMatch(/\.$/);
  });

  it('reports notes that can’t be taken and dates that are odd', async () => {
    const kennel = await newKennel();
    const { json } = await kennel.post<Imported>('/api/import', {
      text: `2026-12-03\n9:00 ${'long '.repeat(5_000)}\n\n2031-01-01\n9:00 too early\n`,
      offset: '-09:00',
    });
    expect(json.report).toMatchObject({ found: 2, taken: 1 });
    expect(json.report.refused).toMatchObject([
      { at: '2026-12-03T09:00:00-09:00', says: expect.stringMatching(/at most 20,000/) },
    ]);
    expect(json.report.warnings).toEqual([expect.stringContaining('2031-01-01')]);
  });

  it('takes a season of notes in one go', async () => {
    const kennel = await newKennel();
    const days = Array.from({ length: 90 }, (_, i) => new Date(Date.UTC(2026, 9, 1 + i)).toISOString().slice(0, 10));
    const text = days
      .map((day) => `${day}\n${Array.from({ length: 8 }, (_, i) => `${8 + i}:15 note ${i}`).join('\n')}\n`)
      .join('\n');
    const { json } = await kennel.post<Imported>('/api/import', { text, offset: '-09:00' });
    expect(json.report).toMatchObject({ found: 720, taken: 720, refused: [], problems: [] });
    expect((await kennel.get<{ total: number }>('/api/notes')).json.total).toBe(720);
  });

  it.each([
    ['no text', {}, 400, /“text” is missing/],
    ['an empty text', { text: '' }, 400, /no text/],
    ['an offset nobody knows', { text: 'x', offset: 'Middle/Nowhere' }, 400, /Middle\/Nowhere/],
    ['a heading without an offset', { text: 'x', heading: { at: '2026-12-05' } }, 400, /“heading.at”.*offset/],
    ['a year that is none', { text: 'x', defaultYear: 7 }, 400, /“defaultYear” is too small/],
    ['more than a notebook', { text: 'x'.repeat(8 * 1024 * 1024) }, 413, /more than one request/],
  ])('answers %s with a sentence', async (_what, body, status, says) => {
    const kennel = await newKennel();
    const got = await kennel.post<Wrong>('/api/import', body);
    expect(got.status).toBe(status);
    expect(got.json.error.message).toMatch(says);
  });

  it('takes a text without any note for what it is', async () => {
    const kennel = await newKennel();
    const { json } = await kennel.post<Imported>('/api/import', { text: ' \n\n' });
    expect(json.report).toMatchObject({ found: 0, taken: 0 });
  });
});
