/** Forms of names that corrections teach. */
import { describe, expect, it } from 'vitest';
import { learnedSchema } from '../../server/model.ts';
import { type Kennel, newKennel } from './setup.ts';

const learnedIn = (kennel: Kennel) => kennel.store.kennel().learned.map((l) => `${l.heard} ${l.times}`);

/** Corrects the dogs of a note's first entry. */
async function correct(kennel: Kennel, id: string | undefined, dogs: string[], more: Record<string, unknown> = {}) {
  const note = await kennel.note(id ?? '');
  const [first] = note.entries;
  const { json } = await kennel.review(id ?? '', {
    act: 'change',
    entry: first?.id,
    to: { ...first?.entry, dogs, ...more },
  });
  return json.offer;
}

describe('a name that is no dog’s', () => {
  it('is offered when it was corrected to the same dog twice, and learned when a person says so', async () => {
    const kennel = await newKennel();
    const { Juniper = '' } = await kennel.dogs('Juniper', 'Moss');
    const [one, two, three, waiting] = await kennel.notes(
      ['09:00', 'Jennifer is lame'],
      ['10:00', 'jennifer and Moss in lead'],
      ['11:00', 'JENNIFER is lame'],
      ['12:00', 'Jennifer is lame'],
    );
    expect(await correct(kennel, one?.id, ['Juniper'])).toBeUndefined();
    expect(await correct(kennel, two?.id, ['Juniper', 'Moss'])).toEqual({
      heard: 'jennifer',
      dog: 'Juniper',
      dogId: Juniper,
    });
    expect(await correct(kennel, three?.id, ['Juniper'])).toMatchObject({ dog: 'Juniper' });
    expect(learnedIn(kennel)).toEqual(['Jennifer 3']);
    const { json } = await kennel.post<{ reread: number }>(`/api/dogs/${Juniper}/heard`, { heard: 'Jennifer' });
    expect(json.reread).toBe(1);
    expect((await kennel.note(waiting?.id ?? '')).entries[0]?.entry.dogs).toEqual(['Juniper']);
    expect(learnedIn(kennel)).toEqual([]);
    expect(kennel.store.kennel().dogs.find((d) => d.id === Juniper)?.heard).toEqual(['Jennifer']);
  });

  it('counts once for a note, whatever is corrected back and forth', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss');
    const [note] = await kennel.notes(['09:00', 'Jennifer is lame, Jennifer in lead']);
    const id = note?.id ?? '';
    await correct(kennel, id, ['Juniper']);
    const second = (await kennel.note(id)).entries[1];
    const { json } = await kennel.review(id, {
      act: 'change',
      entry: second?.id,
      to: { ...second?.entry, dogs: ['Juniper'] },
    });
    expect(json.offer).toBeUndefined();
    expect(learnedIn(kennel)).toEqual(['Jennifer 1']);
    await correct(kennel, id, ['Moss']);
    expect(learnedIn(kennel)).toEqual(['Jennifer 1', 'Jennifer 1']);
    for (const left of [['Jennifer 1'], ['Jennifer 1'], []]) {
      await kennel.review(id, { act: 'undo' });
      expect(learnedIn(kennel)).toEqual(left);
    }
  });

  it('is forgotten with the dog, and is not offered when it has become a name', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper');
    const notes = await kennel.notes(['09:00', 'Jennifer is lame'], ['10:00', 'Jennifer is lame']);
    await correct(kennel, notes[0]?.id, ['Juniper']);
    await kennel.dogs('Jennifer');
    expect(await correct(kennel, notes[1]?.id, ['Juniper'])).toBeUndefined();
  });
});

describe('where the name lies outside the words that the entry was read from', () => {
  const away = (names: string[]) => (text: string) => ({
    entries: [
      {
        kind: 'finding' as const,
        dogs: [],
        sign: 'lame' as const,
        span: [text.indexOf('lame'), text.indexOf('lame') + 4] as [number, number],
      },
    ],
    unknownNames: names
      .filter((name) => text.includes(name))
      .map((name) => ({ name, span: [text.indexOf(name), text.indexOf(name) + name.length] as [number, number] })),
  });

  it('is the one unknown name of that sentence', async () => {
    const kennel = await newKennel({ read: away(['Jennifer', 'Maurice']) });
    await kennel.dogs('Juniper');
    const notes = await kennel.notes(
      ['09:00', 'Maurice ate. Jennifer is very lame; fine day'],
      ['10:00', 'jog, Jennifer and Maurice trot, one is lame'],
      ['11:00', 'Jennifer ate. One is lame.'],
    );
    for (const note of notes) await correct(kennel, note.id, ['Juniper']);
    expect(learnedIn(kennel)).toEqual(['Jennifer 1']);
  });
});

describe('a name heard as another dog’s', () => {
  it('is the word that sounds like the dog that was read', async () => {
    // The grammar took "Tansey" for Tansy; it was Stanzi who was meant.
    const kennel = await newKennel({
      read: () => ({ entries: [{ kind: 'finding', dogs: ['Tansy'], sign: 'lame', span: [0, 14] }], unknownNames: [] }),
    });
    const { Stanzi } = await kennel.dogs('Tansy', 'Stanzi');
    const notes = await kennel.notes(['09:00', 'Tansey is lame'], ['10:00', 'Tansey is lame']);
    expect(await correct(kennel, notes[0]?.id, ['Stanzi'])).toBeUndefined();
    expect(await correct(kennel, notes[1]?.id, ['Stanzi'])).toEqual({ heard: 'Tansey', dog: 'Stanzi', dogId: Stanzi });
  });
});

describe('nothing is learned', () => {
  it.each([
    ['from a dog that was said in so many words', 'Moss is lame', ['Juniper'], {}],
    ['where another field was changed as well', 'Jennifer is lame', ['Juniper'], { severity: 'mild' }],
    ['where two dogs came in', 'Jennifer in lead', ['Juniper', 'Moss'], {}],
    ['where two names are unknown', 'Jennifer and Maurice in lead', ['Juniper'], {}],
    ['where a dog was taken out', 'Juniper and Moss in lead', ['Juniper'], {}],
    ['from a group', 'everyone ate', ['Juniper'], {}],
  ])('%s', async (_what, text, dogs, more) => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss');
    const [note] = await kennel.notes(['09:00', text]);
    await correct(kennel, note?.id, dogs, more);
    expect((await kennel.note(note?.id ?? '')).entries[0]?.entry.dogs).toEqual(dogs);
    expect(learnedIn(kennel)).toEqual([]);
  });

  it('from an entry that a person added', async () => {
    const kennel = await newKennel();
    await kennel.dogs('Juniper', 'Moss');
    const [note] = await kennel.notes(['09:00', 'Jennifer is lame']);
    const { json } = await kennel.review(note?.id ?? '', {
      act: 'add',
      to: { kind: 'gait', dogs: ['Moss'], gait: 'trot', span: [0, 8] },
    });
    const added = json.note.entries.at(-1);
    await kennel.review(note?.id ?? '', {
      act: 'change',
      entry: added?.id,
      to: { kind: 'gait', dogs: ['Juniper'], gait: 'trot' },
    });
    expect(learnedIn(kennel)).toEqual([]);
    expect(learnedSchema.shape.times.safeParse(0).success).toBe(false);
  });
});
