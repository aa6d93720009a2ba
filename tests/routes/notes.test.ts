import { v4, v7 } from 'uuid';
import { describe, expect, it } from 'vitest';
import type { KeptNote, NoteView } from '../../server/routes/schemas.ts';
import { disk, type Files } from '../../server/store/files.ts';
import { NOW, newKennel, TODAY, type Wrong } from './setup.ts';

type Kept = { notes: KeptNote[] } & Partial<Wrong>;
type Listed = { notes: NoteView[]; total: number };
const note = (more: Record<string, unknown> = {}) => ({
  id: v7(),
  text: 'Juniper is lame',
  at: '2027-01-14T10:40:00-09:00',
  ...more,
});

describe('POST /api/notes', () => {
  it('keeps notes word for word and answers what was read', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss');
    const [first, second] = [note({ by: ' Wren ', source: 'dictated' }), note({ text: 'Whoa there.  \n' })];
    const { status, json } = await kennel.post<Kept>('/api/notes', { notes: [first, second] });
    expect(status).toBe(200);
    expect(json.notes).toEqual([
      {
        id: first.id,
        kept: 'new',
        entries: [{ kind: 'finding', dogs: ['Juniper'], sign: 'lame', span: [0, 15] }],
        unknownNames: [],
      },
      {
        id: second.id,
        kept: 'new',
        entries: [{ kind: 'remark', dogs: [], text: 'Whoa there.  \n', span: [0, 14] }],
        unknownNames: [],
      },
    ]);
    expect(await kennel.note(first.id)).toEqual({
      id: first.id,
      text: 'Juniper is lame',
      at: '2027-01-14T10:40:00-09:00',
      by: 'Wren',
      source: 'dictated',
      received: NOW,
      aside: false,
      state: 'waiting',
      entries: [
        {
          id: expect.any(String),
          from: 'read',
          state: 'proposed',
          entry: { kind: 'finding', dogs: ['Juniper'], sign: 'lame', span: [0, 15] },
        },
      ],
      unknownNames: [],
      canUndo: false,
    });
    expect((await kennel.note(second.id)).text).toBe('Whoa there.  \n');
  });

  it('keeps one note however often it is sent, and lets the first text stand', async () => {
    const kennel = await newKennel();
    const first = note();
    await kennel.post('/api/notes', { notes: [first] });
    const again = await kennel.post<Kept>('/api/notes', { notes: [first] });
    expect(again.status).toBe(200);
    expect(again.json.notes[0]).toMatchObject({ id: first.id, kept: 'already', entries: [{ kind: 'finding' }] });
    const upper = await kennel.post<Kept>('/api/notes', { notes: [{ ...first, id: first.id.toUpperCase() }] });
    expect(upper.json.notes[0]).toMatchObject({ id: first.id.toUpperCase(), kept: 'already' });

    const other = await kennel.post<Kept>('/api/notes', { notes: [{ ...first, text: 'Moss is lame' }] });
    expect(other.status).toBe(409);
    expect(other.json.notes).toEqual([
      { id: first.id, kept: 'no', status: 409, error: expect.stringContaining('the first text stands') },
    ]);
    expect(other.json.error).toMatchObject({ code: 'conflict', message: expect.stringContaining('first text stands') });
    expect((await kennel.note(first.id)).text).toBe('Juniper is lame');
    expect((await kennel.get<Listed>('/api/notes')).json.total).toBe(1);
  });

  it('knows a note that is sent again with a date in another season', async () => {
    const kennel = await newKennel();
    const first = note();
    const sent = await Promise.all([
      kennel.post<Kept>('/api/notes', { notes: [first] }),
      kennel.post<Kept>('/api/notes', { notes: [{ ...first, at: '2025-01-14T10:40:00-09:00' }] }),
    ]);
    expect(sent.map(({ json }) => json.notes[0]?.kept).sort()).toEqual(['already', 'new']);
    const later = await kennel.post<Kept>('/api/notes', { notes: [{ ...first, at: '2024-01-14T10:40:00-09:00' }] });
    expect(later.json.notes[0]?.kept).toBe('already');
    expect(kennel.store.seasonNames()).toEqual(['2026-27']);
  });

  it('takes the good ones of many and says what is wrong with each of the others', async () => {
    const kennel = await newKennel();
    const twice = v4();
    const bad = [
      note({ text: '' }),
      note({ text: ' \n\t\u0000\u200b' }),
      note({ text: 'x'.repeat(20_001) }),
      note({ text: 'x'.repeat(100 * 1024) }),
      note({ text: 7 }),
      note({ id: '12' }),
      note({ id: undefined }),
      note({ at: '2027-01-14T10:40:00' }),
      note({ at: 1 }),
      note({ at: '0001-01-14T10:40:00Z' }),
      note({ by: 'x'.repeat(61) }),
      note({ by: 7 }),
      note({ source: 'shouted' }),
      'a note',
      null,
      [],
    ];
    const good = [note(), note({ id: twice }), note({ id: twice }), note({ id: twice, text: 'another' })];
    const { status, json } = await kennel.post<Kept>('/api/notes', { notes: [...bad, ...good] });
    expect(status).toBe(200);
    expect(json.notes.slice(0, bad.length).map(({ kept, status }) => [kept, status])).toEqual(
      bad.map(() => ['no', 400]),
    );
    const says = json.notes.map((n) => n.error ?? '');
    for (const [i, pattern] of [
      /empty/,
      /empty/,
      /20,001 characters/,
      /102,400 characters.*cut it into parts/,
      /text.*missing/,
      /UUID/,
      /UUID/,
      /offset/,
      /offset/,
      /year of the note is 0001/,
      /60 characters/,
      /60 characters/,
      /typed, dictated/,
      /object/,
      /object/,
      /object/,
    ].entries())
      expect(says[i]).toMatch(pattern);
    expect(json.notes.slice(bad.length).map(({ kept, status }) => [kept, status])).toEqual([
      ['new', undefined],
      ['new', undefined],
      ['already', undefined],
      ['no', 409],
    ]);
    expect((await kennel.get<Listed>('/api/notes')).json.total).toBe(2);
  });

  it('answers 200 when nothing but the notes themselves was at fault, and keeps nothing', async () => {
    const kennel = await newKennel();
    const { status, json } = await kennel.post<Kept>('/api/notes', { notes: [note({ text: '' })] });
    expect(status).toBe(200);
    expect(json.notes[0]).toMatchObject({ kept: 'no', status: 400 });
    expect(kennel.store.seasonNames()).toEqual([]);
  });

  it.each([
    ['emoji', 'Juniper is lame 🐕‍🦺❄️'],
    ['other scripts', '朝のフォレストラン。 Собаки бежали хорошо. הכלבים רצו'],
    ['control characters', 'bell \u0007 escape \u001b[31m null \u0000 end'],
    ['half of a surrogate pair', 'broken \ud83d here'],
    ['bidirectional marks', '\u202eemal si repinuJ\u202c'],
    ['a combining mark that stands alone', '\u0301'],
    ['line ends of every kind', 'a\r\nb\nc\rd\u2028e'],
    ['as many characters as there may be', 'é'.repeat(20_000)],
    ['markup', '<script>alert(1)</script>'],
  ])('keeps %s as they are', async (_name, text) => {
    const kennel = await newKennel();
    const sent = note({ text });
    const { json } = await kennel.post<Kept>('/api/notes', { notes: [sent] });
    expect(json.notes[0]).toMatchObject({ kept: 'new' });
    expect((await kennel.note(sent.id)).text).toBe(text);
    const [entry] = (await kennel.note(sent.id)).entries;
    expect(entry?.entry.span?.[1]).toBeLessThanOrEqual(text.length);
  });

  it('keeps a note that is dated in the future, and says so', async () => {
    const kennel = await newKennel();
    const [soon, far] = [note({ at: '2027-01-16T08:00:00-09:00' }), note({ at: '2127-01-14T10:00:00-09:00' })];
    const { json } = await kennel.post<Kept>('/api/notes', { notes: [soon, far] });
    expect(json.notes[0]).not.toHaveProperty('warning');
    expect(json.notes[1]).toMatchObject({ kept: 'new', warning: expect.stringContaining('2127-01-14') });
    expect((await kennel.note(far.id)).warning).toMatch(/had not come yet/);
    expect((await kennel.note(soon.id)).warning).toBeUndefined();
  });

  it('puts a note into the season of its own local day', async () => {
    const kennel = await newKennel();
    const sent = note({ at: '2026-06-30T23:30:00-09:00' });
    await kennel.post('/api/notes', { notes: [sent] });
    expect(kennel.store.findNote(sent.id)?.season).toBe('2025-26');
  });

  it('never loses a note to a reading that fails', async () => {
    const kennel = await newKennel();
    const [boom, crooked] = [note({ text: 'BOOM goes Moss' }), note({ text: 'CROOKED gait' })];
    const { json } = await kennel.post<Kept>('/api/notes', { notes: [boom, crooked] });
    expect(json.notes).toMatchObject([
      { kept: 'new', entries: [{ kind: 'remark', text: 'BOOM goes Moss', span: [0, 14], doubt: 'much' }] },
      { kept: 'new', entries: [{ kind: 'remark', text: 'CROOKED', span: [0, 7], doubt: 'much' }] },
    ]);
    expect((await kennel.note(boom.id)).text).toBe('BOOM goes Moss');
  });

  it('reports a name that the roster does not hold', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const { json } = await kennel.post<Kept>('/api/notes', { notes: [note({ text: 'Juniper and Fennel in lead' })] });
    expect(json.notes[0]).toMatchObject({
      entries: [{ kind: 'hitch', dogs: ['Juniper'] }],
      unknownNames: [{ name: 'Fennel', span: [12, 18] }],
    });
  });

  it('takes what many senders send at once, each note once', async () => {
    const kennel = await newKennel();
    const all = Array.from({ length: 60 }, (_, i) =>
      note({ at: `2027-01-14T10:${String(i).padStart(2, '0')}:00-09:00` }),
    );
    const answers = await Promise.all([...all, ...all].map((one) => kennel.post<Kept>('/api/notes', { notes: [one] })));
    const kept = answers.flatMap(({ json }) => json.notes.map((n) => n.kept));
    expect(kept.filter((k) => k === 'new')).toHaveLength(60);
    expect(kept.filter((k) => k === 'already')).toHaveLength(60);
    expect((await kennel.get<Listed>('/api/notes')).json.total).toBe(60);
  });

  it.each([
    ['no body', undefined, 415, 'wrong-type'],
    ['no JSON', '{"notes": [}', 400, 'bad-input'],
    ['no notes', {}, 400, 'bad-input'],
    ['an empty list', { notes: [] }, 400, 'bad-input'],
    ['a note that is not in a list', { notes: note() }, 400, 'bad-input'],
    ['a list alone', [note()], 400, 'bad-input'],
    ['more than one request may carry', { notes: [note({ text: 'x'.repeat(1024 * 1024) })] }, 413, 'too-large'],
  ])('answers %s with a sentence', async (_name, body, status, code) => {
    const kennel = await newKennel();
    const got = await kennel.ask<Wrong>('POST', '/api/notes', body, body ? {} : { 'content-type': 'text/plain' });
    expect(got.status).toBe(status);
    expect(got.json.error.code).toBe(code);
    expect(got.json.error.message).toMatch(/^[A-Z“].*\.$/);
  });
});

describe('a disk that does not take it', () => {
  it('answers 503, says that the note was not kept, and takes it the next time', async () => {
    let full = false;
    const files: Files = {
      ...disk,
      create: async (path) => {
        if (full) throw Object.assign(new Error('no space left'), { code: 'ENOSPC' });
        return disk.create(path);
      },
    };
    const kennel = await newKennel({ parts: { files } });
    const [before, lost] = [note(), note({ text: 'Moss is lame' })];
    await kennel.post('/api/notes', { notes: [before] });
    full = true;
    const got = await kennel.post<Kept>('/api/notes', { notes: [lost] });
    expect(got.status).toBe(503);
    expect(got.json.notes).toEqual([
      { id: lost.id, kept: 'no', status: 503, error: expect.stringMatching(/not kept.*disk is full/) },
    ]);
    expect(got.json.error).toMatchObject({ code: 'not-kept', message: expect.stringContaining('not kept') });
    expect((await kennel.get<Wrong>(`/api/notes/${lost.id}`)).status).toBe(404);
    // What was on the disk before is still told to be there.
    const mixed = await kennel.post<Kept>('/api/notes', { notes: [before, lost, { ...before, text: 'other' }] });
    expect(mixed.status).toBe(200);
    expect(mixed.json.notes.map(({ kept, status }) => [kept, status])).toEqual([
      ['already', undefined],
      ['no', 503],
      ['no', 409],
    ]);
    const review = await kennel.review<Wrong>(before.id, { act: 'accept-all' });
    expect(review.status).toBe(503);
    expect(review.json.error.message).toMatch(/The review was not kept/);
    expect((await kennel.note(before.id)).state).toBe('waiting');
    full = false;
    expect((await kennel.post<Kept>('/api/notes', { notes: [lost] })).json.notes[0]?.kept).toBe('new');
  });
});

describe('GET /api/notes', () => {
  it('lists a season in the order of time, by state, by day, a page at a time', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const [late, early, other, aside, old] = await kennel.notes(
      ['11:00', 'Juniper in lead'],
      ['09:00', 'first'],
      ['2027-01-13T09:00:00-09:00', 'the day before'],
      ['12:00', 'put away'],
      ['2025-12-13T09:00:00-09:00', 'last season'],
    );
    await kennel.review(early?.id ?? '', { act: 'accept-all' });
    await kennel.review(aside?.id ?? '', { act: 'set-aside', aside: true });
    const list = async (query: string) => {
      const { status, json } = await kennel.get<Listed>(`/api/notes${query}`);
      expect(status).toBe(200);
      return [json.notes.map((n) => n.id), json.total];
    };
    const [l, e, o, a, p] = [late, early, other, aside, old].map((n) => n?.id);
    expect(await list('')).toEqual([[o, e, l, a], 4]);
    expect(await list('?order=newest')).toEqual([[a, l, e, o], 4]);
    expect(await list('?limit=2&offset=1')).toEqual([[e, l], 4]);
    expect(await list('?state=waiting')).toEqual([[o, l], 2]);
    expect(await list('?state=reviewed')).toEqual([[e], 1]);
    expect(await list('?state=aside')).toEqual([[a], 1]);
    expect(await list('?state=all&day=2027-01-13')).toEqual([[o], 1]);
    expect(await list('?season=2025-26')).toEqual([[p], 1]);
    expect(await list('?day=2025-12-13')).toEqual([[p], 1]);
    expect(await list('?season=1999-00')).toEqual([[], 0]);
    expect(await list('?offset=99')).toEqual([[], 4]);
  });

  it('puts the doubtful ones first where it is asked to', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const [plain, unknown, broken] = await kennel.notes(
      ['09:00', 'Juniper in lead'],
      ['10:00', 'Fennel in lead'],
      ['08:00', 'BOOM'],
    );
    const { json } = await kennel.get<Listed>('/api/notes?order=doubt&state=waiting');
    expect(json.notes.map((n) => n.id)).toEqual([unknown?.id, broken?.id, plain?.id]);
  });

  it.each([
    ['?season=2026', /“season”.*like 2026-27/],
    ['?season=2026-29', /two years that follow/],
    ['?state=lost', /“state” has to be one of/],
    ['?day=14.1.2027', /“day”/],
    ['?limit=0', /“limit”.*1 to 2000/],
    ['?limit=many', /“limit”/],
    ['?offset=-1', /“offset”/],
    ['?order=random', /“order”/],
  ])('answers %s with 400 and a sentence', async (query, says) => {
    const kennel = await newKennel();
    const { status, json } = await kennel.get<Wrong>(`/api/notes${query}`);
    expect(status).toBe(400);
    expect(json.error.code).toBe('bad-input');
    expect(json.error.message).toMatch(says);
    expect(json.error.message).toMatch(/^In the address, /);
  });

  it('answers 404 for a run and a note that are not there', async () => {
    const kennel = await newKennel();
    for (const path of [`/api/notes?run=${v4()}`, `/api/notes/${v4()}`, '/api/notes/1', '/api/notes/%00']) {
      const { status, json } = await kennel.get<Wrong>(path);
      expect(status, path).toBe(404);
      expect(json.error.code).toBe('not-found');
    }
  });

  it('shows the season that is set, and today’s where none is', async () => {
    const kennel = await newKennel();
    await kennel.notes([`${TODAY}T08:00:00-09:00`, 'now'], ['2025-12-13T09:00:00-09:00', 'then']);
    const texts = async () => (await kennel.get<Listed>('/api/notes')).json.notes.map((n) => n.text);
    expect(await texts()).toEqual(['now']);
    await kennel.ask('PUT', '/api/settings', { season: '2025-26' });
    expect(await texts()).toEqual(['then']);
  });
});
