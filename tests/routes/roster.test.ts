import { v4 } from 'uuid';
import { describe, expect, it } from 'vitest';
import type { Dog, Person } from '../../server/model.ts';
import { type Kennel, newKennel, type Wrong } from './setup.ts';

type OneDog = { dog: Dog; reread: number } & Wrong;
type OnePerson = { person: Person; reread: number } & Wrong;
const rosterOf = async (kennel: Kennel) => (await kennel.get<{ dogs: Dog[] }>('/api/dogs')).json.dogs;

describe('dogs', () => {
  it('are added, listed by name, changed and removed', async () => {
    const kennel = await newKennel();
    const added = await kennel.post<OneDog>('/api/dogs', {
      name: '  Moss ',
      sex: 'M',
      aliases: ['Mossy', 'MOSS', 'mossy'],
      born: '2022-04-02',
    });
    expect(added.status).toBe(201);
    const { dog } = added.json;
    expect(dog).toEqual({
      id: expect.any(String),
      name: 'Moss',
      sex: 'M',
      aliases: ['Mossy'],
      formerNames: [],
      heard: [],
      born: '2022-04-02',
      retired: false,
    });
    await kennel.dogs('Juniper');
    expect((await rosterOf(kennel)).map((d) => d.name)).toEqual(['Juniper', 'Moss']);
    const path = `/api/dogs/${dog.id}`;
    const changed = await kennel.ask<OneDog>('PATCH', path, { retired: true, born: null, sex: 'F' });
    expect(changed.json.dog).toEqual({ ...dog, retired: true, sex: 'F', born: undefined });
    expect((await kennel.ask<OneDog>('PATCH', path, {})).json.dog).toEqual(changed.json.dog);
    const removed = await kennel.ask<OneDog>('DELETE', path);
    expect(removed.status).toBe(200);
    expect((await rosterOf(kennel)).map((d) => d.name)).toEqual(['Juniper']);
    expect((await kennel.ask<Wrong>('DELETE', path)).status).toBe(404);
  });

  it('keep their old entries after a rename', async () => {
    const kennel = await newKennel();
    const { Juniper = '' } = await kennel.dogs('Juniper');
    const [note] = await kennel.notes(['09:00', 'Juniper is lame']);
    await kennel.review(note?.id ?? '', { act: 'accept-all' });
    const renamed = await kennel.ask<OneDog>('PATCH', `/api/dogs/${Juniper}`, { name: 'Spark' });
    expect(renamed.json.dog).toMatchObject({ name: 'Spark', formerNames: ['Juniper'] });
    // Kept as it was accepted, shown under the name of now.
    expect(kennel.store.findNote(note?.id ?? '')?.note.entries[0]?.entry.dogs).toEqual(['Juniper']);
    expect((await kennel.note(note?.id ?? '')).entries[0]?.entry.dogs).toEqual(['Spark']);
    // The old name is still the dog's for the grammar, and for nobody else.
    const [later] = await kennel.notes(['10:00', 'Juniper is lame']);
    expect(later?.entries).toMatchObject([{ dogs: ['Spark'] }]);
    const taken = await kennel.post<Wrong>('/api/dogs', { name: 'juniper', sex: 'F' });
    expect(taken.status).toBe(409);
    expect(taken.json.error.message).toMatch(/Spark was called that before/);
    // Back to the old name: the one between becomes the former one.
    const back = await kennel.ask<OneDog>('PATCH', `/api/dogs/${Juniper}`, { name: 'Juniper' });
    expect(back.json.dog).toMatchObject({ name: 'Juniper', formerNames: ['Spark'] });
  });

  it('keep entries through a rename that changes letter case alone', async () => {
    const kennel = await newKennel();
    const { juniper = '' } = await kennel.dogs('juniper');
    const [note] = await kennel.notes(['09:00', 'juniper is lame']);
    await kennel.review(note?.id ?? '', { act: 'accept-all' });
    const renamed = await kennel.ask<OneDog>('PATCH', `/api/dogs/${juniper}`, { name: 'Juniper' });
    expect(renamed.status).toBe(200);
    expect((await kennel.note(note?.id ?? '')).entries[0]?.entry.dogs).toEqual(['Juniper']);
  });

  it.each([
    ['the name', { name: 'MOSS' }, /a dog in the roster is called Moss/],
    ['an alias as a name', { name: 'mossy' }, /Moss is called that too/],
    ['a name as an alias', { name: 'Otter', aliases: ['Tuft', 'moss'] }, /“moss” is taken/],
    ['a former name as an alias', { name: 'Otter', aliases: ['Lichen'] }, /Moss was called that before/],
    ['a heard form as a name', { name: 'Mars' }, /learned as a way Moss is heard/],
    ['a name as a heard form', { name: 'Otter', heard: ['Moss'] }, /“Moss” is taken/],
    ['a name in full-width letters (NFKC)', { name: 'Ｍｏｓｓ' }, /a dog in the roster is called Moss/],
    ['a name with other spaces', { name: 'big\u00a0 moss' }, /Moss is called that too/],
  ])('never share a name: %s', async (_what, dog, says) => {
    const kennel = await newKennel();
    const { Lichen = '' } = await kennel.dogs('Lichen');
    await kennel.ask('PATCH', `/api/dogs/${Lichen}`, { name: 'Moss', aliases: ['Mossy', 'Big Moss'], heard: ['Mars'] });
    const { status, json } = await kennel.post<Wrong>('/api/dogs', { sex: 'F', ...dog });
    expect(status).toBe(409);
    expect(json.error.code).toBe('conflict');
    expect(json.error.message).toMatch(says);
    const { json: other } = await kennel.post<OneDog>('/api/dogs', { name: 'Quill', sex: 'F' });
    expect((await kennel.ask<Wrong>('PATCH', `/api/dogs/${other.dog.id}`, dog)).status).toBe(409);
    expect((await rosterOf(kennel)).map((d) => d.name)).toEqual(['Moss', 'Quill']);
  });

  it('two requests for one name at the same moment make one dog', async () => {
    const kennel = await newKennel();
    const both = await Promise.all(
      ['Moss', 'moss'].map((name) => kennel.post<OneDog>('/api/dogs', { name, sex: 'M' })),
    );
    expect(both.map(({ status }) => status).sort()).toEqual([201, 409]);
  });

  it('with entries are not removed, but retired', async () => {
    const kennel = await newKennel();
    const { Juniper = '', Moss = '', Otter = '' } = await kennel.dogs('Juniper', 'Moss', 'Otter');
    const [accepted, removed, waiting] = await kennel.notes(
      ['09:00', 'Juniper is lame'],
      ['10:00', 'Moss is lame'],
      ['11:00', 'Otter is lame'],
    );
    await kennel.review(accepted?.id ?? '', { act: 'accept-all' });
    await kennel.ask('PATCH', `/api/dogs/${Juniper}`, { name: 'Spark' });
    // Undo could bring this one back.
    const entry = (await kennel.note(removed?.id ?? '')).entries[0]?.id;
    await kennel.review(removed?.id ?? '', { act: 'remove', entry });
    for (const [id, name] of [
      [Juniper, 'Spark'],
      [Moss, 'Moss'],
    ]) {
      const { status, json } = await kennel.ask<Wrong>('DELETE', `/api/dogs/${id}`);
      expect(status).toBe(409);
      expect(json.error.message).toMatch(new RegExp(`${name} stands in one entry .*Retire ${name} instead`));
    }
    // Nobody has reviewed that note: it is read again without the dog.
    const gone = await kennel.ask<OneDog>('DELETE', `/api/dogs/${Otter}`);
    expect(gone.status).toBe(200);
    expect(gone.json.reread).toBe(1);
    expect((await kennel.note(waiting?.id ?? '')).unknownNames).toMatchObject([{ name: 'Otter' }]);
  });

  it('learn a form of their name, once', async () => {
    const kennel = await newKennel();
    const { Juniper = '', Moss = '' } = await kennel.dogs('Juniper', 'Moss');
    const learn = (id: string, heard: unknown) => kennel.post<OneDog>(`/api/dogs/${id}/heard`, { heard });
    expect((await learn(Juniper, ' Jennifer ')).json.dog.heard).toEqual(['Jennifer']);
    expect((await learn(Juniper, 'JENNIFER')).json.dog.heard).toEqual(['Jennifer']);
    expect((await learn(Juniper, 'Juniper')).json.dog.heard).toEqual(['Jennifer']);
    const other = await learn(Moss, 'jennifer');
    expect(other.status).toBe(409);
    expect(other.json.error.message).toMatch(/a way Juniper is heard/);
    expect((await learn(v4(), 'x')).status).toBe(404);
    expect((await learn(Juniper, '')).status).toBe(400);
  });

  it.each([
    ['no name', { sex: 'F' }, /“name” is missing/],
    ['an empty name', { name: ' ', sex: 'F' }, /“name” is not right: a name is at least one character/],
    ['no letter in the name', { name: '***', sex: 'F' }, /a letter or a digit/],
    ['a control character', { name: 'Mo\u0007ss', sex: 'F' }, /no control characters/],
    ['a name too long', { name: 'x'.repeat(61), sex: 'F' }, /at most 60/],
    ['no sex', { name: 'Moss' }, /“sex” has to be one of “F” or “M”/],
    ['a day of birth that is none', { name: 'Moss', sex: 'M', born: '2022-02-30' }, /“born”.*YYYY-MM-DD/],
    ['a field nobody knows', { name: 'Moss', sex: 'M', colour: 'grey' }, /“colour” is not known here/],
    ['aliases that are no list', { name: 'Moss', sex: 'M', aliases: 'Mossy' }, /“aliases” has to be an array/],
    ['no object', [], /has to be an object/],
  ])('%s is answered with 400 and a sentence', async (_what, dog, says) => {
    const kennel = await newKennel();
    const { status, json } = await kennel.post<Wrong>('/api/dogs', dog);
    expect(status).toBe(400);
    expect(json.error.message).toMatch(says);
    expect(await rosterOf(kennel)).toEqual([]);
  });

  it('that are not there are 404', async () => {
    const kennel = await newKennel();
    for (const [method, body] of [
      ['PATCH', {}],
      ['DELETE', undefined],
    ] as const) {
      const { status, json } = await kennel.ask<Wrong>(method, `/api/dogs/${v4()}`, body);
      expect(status).toBe(404);
      expect(json.error).toEqual({ code: 'not-found', message: 'There is no dog of this id in the roster.' });
    }
  });
});

describe('people', () => {
  it('are added, listed, renamed and removed', async () => {
    const kennel = await newKennel();
    const { status, json } = await kennel.post<OnePerson>('/api/people', { name: 'Wren' });
    expect(status).toBe(201);
    await kennel.post('/api/people', { name: 'Tobias' });
    const path = `/api/people/${json.person.id}`;
    expect((await kennel.ask<OnePerson>('PATCH', path, { name: 'Zora' })).json.person).toEqual({
      ...json.person,
      name: 'Zora',
    });
    const list = async () => (await kennel.get<{ people: Person[] }>('/api/people')).json.people.map((p) => p.name);
    expect(await list()).toEqual(['Tobias', 'Zora']);
    expect((await kennel.ask('DELETE', path)).status).toBe(200);
    expect(await list()).toEqual(['Tobias']);
    for (const method of ['PATCH', 'DELETE'])
      expect((await kennel.ask<Wrong>(method, path, method === 'PATCH' ? { name: 'A' } : undefined)).status).toBe(404);
  });

  it('never share a name, and keep theirs while notes name them', async () => {
    const kennel = await newKennel();
    const { json } = await kennel.post<OnePerson>('/api/people', { name: 'Wren' });
    expect((await kennel.post<Wrong>('/api/people', { name: 'WREN' })).json.error.message).toMatch(
      /Wren is in the list already/,
    );
    await kennel.notes(['09:00', 'a fine day', { by: 'wren' }]);
    const path = `/api/people/${json.person.id}`;
    for (const [method, body] of [
      ['PATCH', { name: 'Zora' }],
      ['DELETE', undefined],
    ] as const) {
      const { status, json } = await kennel.ask<Wrong>(method, path, body);
      expect(status).toBe(409);
      expect(json.error.message).toMatch(/Wren stands in one note/);
    }
    expect((await kennel.ask('PATCH', path, { name: 'Wren' })).status).toBe(200);
    expect((await kennel.post<Wrong>('/api/people', { name: '' })).status).toBe(400);
    expect((await kennel.post<Wrong>('/api/people', {})).status).toBe(400);
  });

  it('retire: notes keep the name, new ones are no longer read with it, and they can come back', async () => {
    const kennel = await newKennel();
    const { json } = await kennel.post<OnePerson>('/api/people', { name: 'Wren' });
    const [note] = await kennel.notes(['09:00', 'a fine day', { by: 'Wren' }]);
    const path = `/api/people/${json.person.id}`;
    const named = async () => (await kennel.get<{ context: { people: string[] } }>('/api/context')).json.context.people;
    expect(await named()).toEqual(['Wren']);
    expect((await kennel.ask<OnePerson>('PATCH', path, { retired: true })).json.person).toEqual({
      ...{ id: json.person.id, name: 'Wren', retired: true },
    });
    expect(await named()).toEqual([]);
    expect((await kennel.note(note?.id ?? '')).by).toBe('Wren');
    // The name is still hers.
    expect((await kennel.post<Wrong>('/api/people', { name: 'wren' })).status).toBe(409);
    expect((await kennel.ask<Wrong>('DELETE', path)).json.error.message).toMatch(/Retire Wren instead/);
    expect((await kennel.ask<OnePerson>('PATCH', path, { retired: false })).json.person).toEqual({
      ...{ id: json.person.id, name: 'Wren' },
    });
    expect(await named()).toEqual(['Wren']);
  });

  it('keep their name while a reviewed entry has them as the driver', async () => {
    const kennel = await newKennel();
    const { json } = await kennel.post<OnePerson>('/api/people', { name: 'Wren' });
    const { Juniper } = await kennel.dogs('Juniper');
    expect(Juniper).toBeDefined();
    const [note] = await kennel.notes(['09:00', 'Juniper in lead']);
    await kennel.review(note?.id ?? '', { act: 'add', to: { kind: 'hitch', dogs: ['Juniper'], driver: 'Wren' } });
    expect((await kennel.ask('DELETE', `/api/people/${json.person.id}`)).status).toBe(409);
  });
});
