/** Runs over the interface, and what a person chooses about them. */
import fc from 'fast-check';
import { v4 } from 'uuid';
import { describe, expect, it } from 'vitest';
import { type Note, type RunChoices, runChoicesSchema, settingsSchema } from '../../server/model.ts';
import { cut, join, move } from '../../server/notes/run-choices.ts';
import { runsOf as computeRuns, metres } from '../../server/records/index.ts';
import type { RunRecord } from '../../server/records/types.ts';
import type { NoteView } from '../../server/routes/schemas.ts';
import { type Kennel, newKennel, type Wrong } from './setup.ts';

const MILE = metres(1, 'mi');
type Opened = {
  run: RunRecord;
  notes: NoteView[];
  before?: { id: string; day: string };
  after?: { id: string };
} & Wrong;
type OneRun = { run: RunRecord } & Wrong;

/** Notes sent and accepted; their ids. */
async function said(kennel: Kennel, ...notes: [string, string, Record<string, unknown>?][]): Promise<string[]> {
  const kept = await kennel.notes(...notes);
  for (const { id } of kept) await kennel.review(id, { act: 'accept-all' });
  return kept.map(({ id }) => id);
}
const runsIn = async (kennel: Kennel, query = '') =>
  (await kennel.get<{ runs: RunRecord[] }>(`/api/runs${query}`)).json.runs;
/** The runs in the order of time, each as its notes. */
const notesOf = async (kennel: Kennel) => (await runsIn(kennel)).reverse().map((run) => run.notes);

/** Two runs of one day, five and a half hours apart, and one the day after. */
async function threeRuns() {
  const kennel = await newKennel();
  await kennel.dogs('Juniper', 'Moss', 'Otter');
  const [a1 = '', a2 = '', b1 = '', b2 = '', c1 = ''] = await said(
    kennel,
    ['08:00', 'Juniper and Moss in lead'],
    ['09:00', '10 miles'],
    ['15:00', 'Juniper and Otter in lead'],
    ['16:00', '6 miles'],
    ['2027-01-15T08:00:00-09:00', 'Moss in lead, 4 miles'],
  );
  expect(await notesOf(kennel)).toEqual([[a1, a2], [b1, b2], [c1]]);
  return { kennel, a1, a2, b1, b2, c1 };
}

describe('listing and opening', () => {
  it('gives the season’s runs, newest first', async () => {
    const { kennel, a1, b1, c1 } = await threeRuns();
    const runs = await runsIn(kennel);
    expect(runs.map((run) => run.id)).toEqual([c1, b1, a1]);
    expect(runs.map((run) => (run.metres ?? 0) / MILE)).toEqual([4, 6, 10]);
    expect(runs[2]?.dogs.map((dog) => dog.dog).sort()).toEqual(['Juniper', 'Moss']);
    expect(await runsIn(kennel, '?season=2026-27')).toEqual(runs);
    expect(await runsIn(kennel, '?season=2025-26')).toEqual([]);
    expect((await kennel.get<Wrong>('/api/runs?season=now')).status).toBe(400);
  });

  it('opens one with its notes and its neighbours, by its own id or any note in it', async () => {
    const { kennel, a1, a2, b1, b2, c1 } = await threeRuns();
    const { status, json } = await kennel.get<Opened>(`/api/runs/${b1}`);
    expect(status).toBe(200);
    expect(json.run.notes).toEqual([b1, b2]);
    expect(json.notes.map((note) => [note.id, note.run])).toEqual([
      [b1, b1],
      [b2, b1],
    ]);
    expect(json.before).toEqual({ id: a1, day: '2027-01-14' });
    expect(json.after).toEqual({ id: c1, day: '2027-01-15' });
    const [first, byNote] = [
      await kennel.get<Opened>(`/api/runs/${a1}`),
      await kennel.get<Opened>(`/api/runs/${a2.toUpperCase()}`),
    ];
    expect(first.json.before).toBeUndefined();
    expect(byNote.json).toEqual(first.json);
    const { json: listed } = await kennel.get<{ notes: NoteView[] }>(`/api/notes?run=${b1}`);
    expect(listed.notes.map((note) => note.id)).toEqual([b1, b2]);
  });

  it('keeps two drivers’ teams apart, each with its own neighbours', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss', 'Fern', 'Cricket');
    await kennel.post('/api/people', { name: 'Wren' });
    const [mine = ''] = await said(kennel, ['08:00', 'Juniper and Moss in lead, 20 miles']);
    await kennel.review(mine, { act: 'add', to: { kind: 'hitch', dogs: ['Fern', 'Cricket'], driver: 'Wren' } });
    const runs = await runsIn(kennel);
    expect(runs.map((run) => [run.id, run.driver, run.dogs.map((dog) => dog.dog).sort()]).sort()).toEqual([
      [mine, undefined, ['Juniper', 'Moss']],
      [`${mine}~Wren`, 'Wren', ['Cricket', 'Fern']],
    ]);
    const wrens = await kennel.get<Opened>(`/api/runs/${mine}~Wren`);
    expect(wrens.json.run.driver).toBe('Wren');
    expect(wrens.json.before).toBeUndefined();
    // A length set for one team leaves the other’s alone.
    await kennel.ask('PUT', `/api/runs/${mine}~Wren/distance`, { value: 8, unit: 'mi' });
    const lengths = Object.fromEntries((await runsIn(kennel)).map((run) => [run.id, (run.metres ?? 0) / MILE]));
    expect(lengths[mine]).toBeCloseTo(20);
    expect(lengths[`${mine}~Wren`]).toBeCloseTo(8);
  });

  it('answers 404 for what is no run', async () => {
    const kennel = await newKennel();
    const [yard = ''] = await said(kennel, ['08:00', 'cleaned the yard']);
    for (const id of [v4(), 'x', yard, `${v4()}~Wren`]) {
      expect((await kennel.get<Wrong>(`/api/runs/${id}`)).status, id).toBe(404);
      for (const [method, path, body] of [
        ['POST', 'join', { to: 'before' }],
        ['POST', 'cut', { note: yard }],
        ['PUT', 'distance', { value: 3, unit: 'mi' }],
        ['DELETE', 'distance', undefined],
      ] as const)
        expect(
          (await kennel.ask<Wrong>(method, `/api/runs/${id}/${path}`, body)).json.error.code,
          `${id} ${path}`,
        ).toBe('not-found');
    }
  });
});

describe('joining and cutting', () => {
  it('joins a run with the one before, and cuts it in two again', async () => {
    const { kennel, a1, a2, b1, b2, c1 } = await threeRuns();
    const joined = await kennel.post<OneRun>(`/api/runs/${b1}/join`, { to: 'before' });
    expect(joined.status).toBe(200);
    expect(joined.json.run.notes).toEqual([a1, a2, b1, b2]);
    expect(await notesOf(kennel)).toEqual([[a1, a2, b1, b2], [c1]]);
    // Two lengths in one run do not fit together, and it says so.
    expect(joined.json.run.conflicts.map((conflict) => conflict.kind)).toContain('two-totals');
    const cut = await kennel.post<{ runs: RunRecord[] }>(`/api/runs/${a1}/cut`, { note: b1 });
    expect(cut.json.runs.map((run) => run.notes)).toEqual([
      [a1, a2],
      [b1, b2],
    ]);
    const elsewhere = await kennel.post<{ runs: RunRecord[] }>(`/api/runs/${b1}/cut`, { note: b2 });
    expect(elsewhere.json.runs.map((run) => run.notes)).toEqual([[b1], [b2]]);
    const again = await kennel.post<OneRun>(`/api/runs/${b2}/join`, { to: 'before' });
    expect(again.json.run.notes).toEqual([b1, b2]);
  });

  it('a note that only tells of a dog is cut off and moved as well: what a person chose goes before where the dog ran', async () => {
    const { kennel, a1, a2, b1, b2 } = await threeRuns();
    const [evening = ''] = await said(kennel, ['09:30', 'Moss is lame']);
    expect((await notesOf(kennel))[0]).toEqual([a1, a2, evening]);
    const cut = await kennel.post<{ runs: RunRecord[] }>(`/api/runs/${a1}/cut`, { note: evening });
    expect(cut.status).toBe(200);
    expect((await notesOf(kennel))[0]).toEqual([a1, a2]);
    // It is in no run now, and still told of the dog.
    const { json } = await kennel.get<{ episodes: { dog: string }[] }>('/api/watch');
    expect(json.episodes.map(({ dog }) => dog)).toEqual(['Moss']);
    const moved = await kennel.post<OneRun>(`/api/runs/${evening}/move`, { note: evening, toRunOf: b1 });
    expect(moved.status).toBe(200);
    expect((await notesOf(kennel)).slice(0, 2)).toEqual([
      [a1, a2],
      [evening, b1, b2],
    ]);
    expect((await kennel.get<{ episodes: { dog: string }[] }>('/api/watch')).json.episodes).toHaveLength(1);
  });

  it('joins runs of two days that follow each other, but not of days apart', async () => {
    const { kennel, b1, b2, c1 } = await threeRuns();
    const [late = ''] = await said(kennel, ['2027-01-20T08:00:00-09:00', 'Moss in lead, 4 miles']);
    const overnight = await kennel.post<OneRun>(`/api/runs/${c1}/join`, { to: 'before' });
    expect(overnight.json.run.notes).toEqual([b1, b2, c1]);
    const apart = await kennel.post<Wrong>(`/api/runs/${late}/join`, { to: 'before' });
    expect(apart.status).toBe(409);
    expect(apart.json.error.message).toMatch(/only runs of one day/);
  });

  it('refuses what can’t be, and changes nothing', async () => {
    const { kennel, a1, a2, b1, b2, c1 } = await threeRuns();
    const before = kennel.store.season('2026-27').runs;
    for (const [path, body, status, says] of [
      [`${a1}/join`, { to: 'before' }, 409, /no run of this driver before/],
      [`${a1}/join`, { to: 'after' }, 400, /“to” has to be “before”/],
      [`${a1}/join`, {}, 400, /“to” has to be “before”/],
      [`${a1}/cut`, { note: a1 }, 409, /starts with that note already/],
      [`${a1}/cut`, { note: b2 }, 404, /not in this run/],
      [`${a1}/cut`, { note: 'two' }, 400, /“note” has to be a UUID/],
      [`${a1}/move`, { note: b1, toRunOf: c1 }, 404, /not in this run/],
      [`${a1}/move`, { note: a2, toRunOf: a1 }, 409, /in that run already/],
      [`${a1}/move`, { note: a2, toRunOf: v4() }, 404, /in no run/],
      [`${a1}/move`, { note: a2 }, 400, /“toRunOf” is missing/],
    ] as const) {
      const { status: got, json } = await kennel.post<Wrong>(`/api/runs/${path}`, body);
      expect(got, path).toBe(status);
      expect(json.error.message).toMatch(says);
    }
    expect(kennel.store.season('2026-27').runs).toBe(before);
  });
});

describe('moving a note', () => {
  it('puts it into another run, and back', async () => {
    const { kennel, a1, a2, b1, b2, c1 } = await threeRuns();
    const moved = await kennel.post<OneRun>(`/api/runs/${a1}/move`, { note: a2, toRunOf: c1 });
    expect(moved.json.run.notes).toEqual([a2, c1]);
    expect(await notesOf(kennel)).toEqual(expect.arrayContaining([[a1], [b1, b2], [a2, c1]]));
    const back = await kennel.post<OneRun>(`/api/runs/${c1}/move`, { note: a2, toRunOf: a1 });
    expect(back.json.run.notes).toEqual([a1, a2]);
    expect(kennel.store.season('2026-27').runs.moved).toHaveLength(1);
  });

  it('never lets two moves chase each other', async () => {
    const { kennel, a1, a2, b1, b2, c1 } = await threeRuns();
    await kennel.post(`/api/runs/${a1}/move`, { note: a2, toRunOf: b2 });
    // What had been tied to the note that goes now stays where it was put.
    await kennel.post(`/api/runs/${b1}/move`, { note: b2, toRunOf: a1 });
    expect(await notesOf(kennel)).toEqual(expect.arrayContaining([[a1, b2], [a2, b1], [c1]]));
    await kennel.post(`/api/runs/${a1}/move`, { note: a1, toRunOf: a2 });
    expect(await notesOf(kennel)).toEqual(expect.arrayContaining([[a1, a2, b1, b2], [c1]]));
  });

  it('keeps every note that tells of a run in one run, whatever is joined, cut and moved', () => {
    const notes = Array.from(
      { length: 6 },
      (_, i): Note => ({
        id: `00000000-0000-7000-8000-00000000000${i}`,
        text: 'Juniper in lead',
        at: `2027-01-14T${String(6 + i * 3).padStart(2, '0')}:00:00-09:00`,
        received: '2027-01-15T09:00:00-09:00',
        aside: false,
        entries: [
          {
            id: `00000000-0000-7000-8000-00000000001${i}`,
            from: 'read',
            state: 'accepted',
            entry: { kind: 'hitch', dogs: ['Juniper'], position: 'lead' },
          },
        ],
        unknownNames: [],
        history: [],
      }),
    );
    const settings = settingsSchema.parse({ runGapHours: 4 });
    const runsWith = (runs: RunChoices) =>
      computeRuns({ schema: 1, season: '2026-27', notes, runs }, [], settings).runs;
    const choiceArb = fc.record({ what: fc.constantFrom('join', 'cut', 'move'), note: fc.nat(5), to: fc.nat(5) });
    fc.assert(
      fc.property(fc.array(choiceArb, { maxLength: 12 }), (made) => {
        let choices = runChoicesSchema.parse({});
        for (const { what, note, to } of made) {
          const holding = (n: number) => runsWith(choices).find((run) => run.notes.includes(notes[n]?.id ?? ''));
          const [run, other] = [holding(note), holding(to)];
          if (!run || !other) throw new Error('a note was lost');
          const id = notes[note]?.id ?? '';
          if (what === 'join') choices = join(choices, run);
          else if (what === 'cut' && run.notes[0] !== id) choices = cut(choices, run, id);
          else if (what === 'move' && run !== other && !other.notes.includes(id))
            choices = move(choices, run, id, other);
          expect(
            runsWith(choices)
              .flatMap((r) => r.notes)
              .sort(),
          ).toEqual(notes.map((n) => n.id));
          if (what === 'move' && !other.notes.includes(id))
            expect(runsWith(choices).find((r) => r.notes.includes(id))?.notes).toEqual(
              expect.arrayContaining(other.notes),
            );
        }
      }),
    );
  });

  it('takes a note of the yard into a run by its own id, and a run that loses its last word of a run is none', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const [yard = '', run = '', remark = ''] = await said(
      kennel,
      ['06:00', 'everyone ate'],
      ['12:30', 'Juniper in lead, 5 miles'],
      ['13:00', 'what a day'],
    );
    const [other = ''] = await said(kennel, ['2027-01-15T08:00:00-09:00', 'Juniper in lead, 3 miles']);
    const into = await kennel.post<OneRun>(`/api/runs/${yard}/move`, { note: yard, toRunOf: run });
    expect(into.json.run.notes).toEqual([yard, run, remark]);
    const away = await kennel.post<OneRun>(`/api/runs/${yard}/move`, { note: run, toRunOf: other });
    expect(away.status).toBe(200);
    expect(away.json.run.notes).toContain(run);
    expect((await kennel.get<Wrong>(`/api/runs/${remark}`)).status).toBe(404);
  });
});

describe('a length set by hand', () => {
  it('counts in place of what was said, which is kept beside it, and is taken back', async () => {
    const { kennel, a1, a2 } = await threeRuns();
    const set = await kennel.ask<OneRun>('PUT', `/api/runs/${a1}/distance`, {
      value: 18,
      unit: 'km',
      why: ' GPS track ',
    });
    expect(set.status).toBe(200);
    expect(set.json.run).toMatchObject({
      metres: 18_000,
      metresFrom: 'corrected',
      metresSaid: metres(10, 'mi'),
      saidFrom: 'total',
      correction: { value: 18, unit: 'km', why: 'GPS track' },
    });
    expect(set.json.run.dogs.map((dog) => dog.metres)).toEqual([18_000, 18_000]);
    // Set again, by another note of the run: the last one stands, alone.
    await kennel.ask('PUT', `/api/runs/${a2}/distance`, { value: 12, unit: 'mi' });
    expect(kennel.store.season('2026-27').runs.distances).toHaveLength(1);
    const back = await kennel.ask<OneRun>('DELETE', `/api/runs/${a1}/distance`);
    expect(back.json.run.metresFrom).toBe('total');
    expect((back.json.run.metres ?? 0) / MILE).toBeCloseTo(10);
    expect(kennel.store.season('2026-27').runs.distances).toEqual([]);
    expect((await kennel.ask('DELETE', `/api/runs/${a1}/distance`)).status).toBe(200);
  });

  it('stays with the run when an earlier note comes in and the run has another id', async () => {
    const { kennel, a1, a2 } = await threeRuns();
    await kennel.ask('PUT', `/api/runs/${a1}/distance`, { value: 18, unit: 'km' });
    const [first = ''] = await said(kennel, ['07:30', 'Otter in swing']);
    const { json } = await kennel.get<Opened>(`/api/runs/${a1}`);
    expect(json.run).toMatchObject({ id: first, notes: [first, a1, a2], metres: 18_000 });
  });

  it.each([
    [{ unit: 'mi' }, /“value” is missing/],
    [{ value: 0, unit: 'mi' }, /more than nothing/],
    [{ value: -3, unit: 'mi' }, /more than nothing/],
    [{ value: 10_001, unit: 'mi' }, /at most 10,000/],
    [{ value: '12', unit: 'mi' }, /“value” has to be a number/],
    [{ value: 12, unit: 'leagues' }, /“unit” has to be one of/],
    [{ value: 12, unit: 'mi', why: 'x'.repeat(201) }, /“why” is too long/],
  ])('%j is answered with 400 and a sentence', async (body, says) => {
    const { kennel, a1 } = await threeRuns();
    const { status, json } = await kennel.ask<Wrong>('PUT', `/api/runs/${a1}/distance`, body);
    expect(status).toBe(400);
    expect(json.error.message).toMatch(says);
  });
});

it('is computed once for a season that does not change', async () => {
  const { kennel } = await threeRuns();
  const { house } = kennel.app;
  const { runsIn: derivedIn } = await import('../../server/routes/view.ts');
  const once = derivedIn(house, kennel.store.season('2026-27'));
  await runsIn(kennel);
  await kennel.get('/api/notes');
  expect(derivedIn(house, kennel.store.season('2026-27'))).toBe(once);
  await said(kennel, ['17:00', 'home']);
  expect(derivedIn(house, kennel.store.season('2026-27'))).not.toBe(once);
});
