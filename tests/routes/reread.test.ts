/** Notes that nobody has reviewed are read again; all others stay as they are. */
import fc from 'fast-check';
import { v7 } from 'uuid';
import { describe, expect, it } from 'vitest';
import type { Context } from '../../grammar/entry.ts';
import { rereadAll } from '../../server/notes/reread-all.ts';
import type { NoteView } from '../../server/routes/schemas.ts';
import { read } from './reader.ts';
import { type Kennel, newKennel } from './setup.ts';

const dogsOf = (note: NoteView) => note.entries.flatMap((e) => e.entry.dogs);
const proposedOf = async (kennel: Kennel, id: string | undefined) => dogsOf(await kennel.note(id ?? ''));

describe('after a change of the roster', () => {
  it('reads the notes that wait again, and says how many came out differently', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const [unknown, known, remark] = await kennel.notes(
      ['09:00', 'Fennel in lead'],
      ['10:00', 'Juniper in lead'],
      ['11:00', 'a fine day'],
    );
    const before = await kennel.note(known?.id ?? '');
    const { status, json } = await kennel.post<{ reread: number }>('/api/dogs', { name: 'Fennel', sex: 'F' });
    expect(status).toBe(201);
    expect(json.reread).toBe(1);
    expect(await kennel.note(unknown?.id ?? '')).toMatchObject({
      unknownNames: [],
      entries: [{ entry: { dogs: ['Fennel'] }, state: 'proposed' }],
    });
    // What was read as before keeps its entries' ids.
    expect(await kennel.note(known?.id ?? '')).toEqual(before);
    expect((await kennel.note(remark?.id ?? '')).entries).toHaveLength(1);
  });

  it('leaves alone what a person has reviewed, set aside, or begun', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const [accepted, begun, aside, undone] = await kennel.notes(
      ['09:00', 'Fennel in lead'],
      ['10:00', 'Fennel in lead, Fennel is lame'],
      ['11:00', 'Fennel in lead'],
      ['12:00', 'Fennel in lead'],
    );
    await kennel.review(accepted?.id ?? '', { act: 'accept-all' });
    await kennel.review(begun?.id ?? '', { act: 'remove', entry: (await kennel.note(begun?.id ?? '')).entries[0]?.id });
    await kennel.review(aside?.id ?? '', { act: 'set-aside', aside: true });
    await kennel.review(undone?.id ?? '', { act: 'accept-all' });
    await kennel.review(undone?.id ?? '', { act: 'undo' });
    const before = await Promise.all([accepted, begun, aside].map((n) => kennel.note(n?.id ?? '')));
    const { json } = await kennel.post<{ reread: number }>('/api/dogs', { name: 'Fennel', sex: 'F' });
    expect(json.reread).toBe(1);
    expect(await Promise.all([accepted, begun, aside].map((n) => kennel.note(n?.id ?? '')))).toEqual(before);
    expect(await proposedOf(kennel, undone?.id)).toEqual(['Fennel']);
  });

  it('goes over every season', async () => {
    const kennel = await newKennel();
    await kennel.notes(
      ['2025-01-14T09:00:00-09:00', 'Fennel in lead'],
      ['2026-01-14T09:00:00-09:00', 'Fennel is lame'],
    );
    const { json } = await kennel.post<{ reread: number }>('/api/dogs', { name: 'Fennel', sex: 'F' });
    expect(json.reread).toBe(2);
  });

  it('reads with a learned form of a name, with other units, and not again for other settings', async () => {
    let reads = 0;
    const kennel = await newKennel({
      read: (text, context) => {
        reads++;
        return read(text, context);
      },
    });
    const ids = await kennel.dogs('Juniper');
    const [heard, units] = await kennel.notes(['09:00', 'Jennifer is lame'], ['10:00', 'ran 20']);
    const learned = await kennel.post<{ reread: number }>(`/api/dogs/${ids.Juniper}/heard`, { heard: 'Jennifer' });
    expect(learned.json.reread).toBe(1);
    expect(await proposedOf(kennel, heard?.id)).toEqual(['Juniper']);
    const metric = await kennel.ask<{ reread: number }>('PUT', '/api/settings', { units: 'metric' });
    expect(metric.json.reread).toBe(1);
    expect((await kennel.note(units?.id ?? '')).entries[0]?.entry).toMatchObject({ unit: 'km' });
    const before = reads;
    const name = await kennel.ask<{ reread: number }>('PUT', '/api/settings', {
      units: 'metric',
      kennel: 'Hollow Spruce',
    });
    expect(name.json.reread).toBe(0);
    expect(reads).toBe(before);
  });

  it('tells the grammar of former names, of people, and the local time of speaking', async () => {
    const told: Context[] = [];
    const kennel = await newKennel({
      read: (text, context) => {
        told.push(context);
        return read(text, context);
      },
    });
    const { Juniper = '' } = await kennel.dogs('Juniper');
    await kennel.ask('PATCH', `/api/dogs/${Juniper}`, { name: 'Spark', aliases: ['Sparky', 'Juniper'] });
    await kennel.post('/api/people', { name: 'Wren' });
    await kennel.notes(['2027-01-14T09:05:30+05:30', 'Juniper is lame']);
    expect(told.at(-1)).toEqual({
      dogs: [{ name: 'Spark', sex: 'F', aliases: ['Sparky', 'Juniper'], heard: [] }],
      people: ['Wren'],
      lineup: [],
      units: 'imperial',
      at: '2027-01-14T09:05',
    });
  });
});

describe('after an earlier note of the day has changed the line-up', () => {
  it('reads the later ones again when the earlier one is reviewed, and again when that is undone', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss', 'Otter');
    const [lead, ate, reviewed, nextDay] = await kennel.notes(
      ['09:00', 'Juniper and Moss in lead'],
      ['10:00', 'everyone ate'],
      ['11:00', 'everyone ate'],
      ['2027-01-15T08:00:00-09:00', 'everyone ate'],
    );
    expect(await proposedOf(kennel, ate?.id)).toEqual(['Juniper', 'Moss']);
    expect(await proposedOf(kennel, nextDay?.id)).toEqual(['*']);
    await kennel.review(reviewed?.id ?? '', { act: 'accept-all' });
    const entry = (await kennel.note(lead?.id ?? '')).entries[0]?.id;
    const to = { kind: 'hitch', dogs: ['Juniper', 'Otter'], position: 'lead' };
    const { json } = await kennel.review(lead?.id ?? '', { act: 'change', entry, to });
    expect(json.reread).toEqual([ate?.id]);
    expect(await proposedOf(kennel, ate?.id)).toEqual(['Juniper', 'Otter']);
    expect(await proposedOf(kennel, reviewed?.id)).toEqual(['Juniper', 'Moss']);
    const undone = await kennel.review(lead?.id ?? '', { act: 'undo' });
    expect(undone.json.reread).toEqual([ate?.id]);
    expect(await proposedOf(kennel, ate?.id)).toEqual(['Juniper', 'Moss']);
  });

  it('reads the later ones again when a note comes in late', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss');
    const [ate] = await kennel.notes(['10:00', 'everyone ate']);
    expect(await proposedOf(kennel, ate?.id)).toEqual(['*']);
    await kennel.notes(['09:00', 'Juniper and Moss in lead']);
    expect(await proposedOf(kennel, ate?.id)).toEqual(['Juniper', 'Moss']);
  });

  it('gives the same, in whatever order and in whatever parts the notes arrive', async () => {
    const texts: [string, string][] = [
      ['09:00', 'Juniper and Moss in lead'],
      ['09:30', 'everyone ate'],
      ['10:00', 'Otter and Bramble in swing'],
      ['10:30', 'everyone ate'],
      ['11:00', 'Fennel in wheel'],
    ];
    const outcome = async (order: number[], parts: number) => {
      const kennel = await newKennel();
      await kennel.dogs('Juniper', 'Moss', 'Otter', 'Bramble');
      const ids = texts.map(() => v7());
      for (let i = 0; i < order.length; i += parts) {
        const notes = order.slice(i, i + parts).map((n) => {
          const [time, text] = texts[n] as [string, string];
          return { id: ids[n], text, at: `2027-01-14T${time}:00-09:00` };
        });
        await kennel.post('/api/notes', { notes });
      }
      const notes = await Promise.all(ids.map((id) => kennel.note(id)));
      return notes.map((note) => [note.entries.map((e) => e.entry), note.unknownNames]);
    };
    const straight = await outcome([0, 1, 2, 3, 4], 5);
    expect(straight[3]).toMatchObject([[{ dogs: ['Juniper', 'Moss', 'Otter', 'Bramble'] }], []]);
    const orders = fc.sample(
      fc.tuple(fc.shuffledSubarray([0, 1, 2, 3, 4], { minLength: 5 }), fc.integer({ min: 1, max: 3 })),
      {
        numRuns: 12,
        seed: 20270114,
      },
    );
    for (const [order, parts] of orders) expect(await outcome(order, parts), `${order} by ${parts}`).toEqual(straight);
  });

  it('does not read what would come out the same', async () => {
    let reads = 0;
    const kennel = await newKennel({
      read: (text, context) => {
        reads++;
        return read(text, context);
      },
    });
    await kennel.dogs('Juniper');
    const [first] = await kennel.notes(['09:00', 'fine day'], ['10:00', 'everyone ate'], ['11:00', 'everyone ate']);
    const before = reads;
    await kennel.review(first?.id ?? '', { act: 'accept-all' });
    expect(reads).toBe(before);
  });
});

describe('while other things happen', () => {
  it('does not undo what was reviewed or sent meanwhile', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const days = Array.from(
      { length: 40 },
      (_, i) => `2027-01-${String((i % 28) + 1).padStart(2, '0')}T10:00:00-09:00`,
    );
    const notes = await kennel.notes(...days.map((at): [string, string] => [at, 'Fennel in lead']));
    const first = notes[0]?.id ?? '';
    const [added] = await Promise.all([
      kennel.post<{ reread: number }>('/api/dogs', { name: 'Fennel', sex: 'F' }),
      kennel.review(first, { act: 'accept-all' }),
      kennel.notes(['2027-01-01T12:00:00-09:00', 'Fennel is lame']),
    ]);
    expect(added.status).toBe(201);
    await rereadAll(kennel.app.house);
    const reviewed = await kennel.note(first);
    expect(reviewed.entries.map((e) => e.state)).toEqual(['accepted']);
    for (const one of notes.slice(1)) expect(await proposedOf(kennel, one.id)).toEqual(['Fennel']);
    const { json } = await kennel.get<{ total: number }>('/api/notes');
    expect(json.total).toBe(41);
  });

  it('writes nothing when nothing comes out differently', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    await kennel.notes(['09:00', 'Juniper in lead']);
    const season = kennel.store.season('2026-27');
    expect(await rereadAll(kennel.app.house)).toBe(0);
    expect(kennel.store.season('2026-27')).toBe(season);
  });
});
