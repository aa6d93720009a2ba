/** A run of ten notes, from the words to the miles, with the grammar that the pages use. */
import { describe, expect, it } from 'vitest';
import { read } from '../../grammar/index.ts';
import { metres } from '../../server/records/index.ts';
import type { RunRecord } from '../../server/records/types.ts';
import { newKennel } from './setup.ts';

const MILE = metres(1, 'mi');

describe('a run told in ten notes', () => {
  it('is ten miles for the dog that was loaded, and eighteen for the others', async () => {
    const kennel = await newKennel({ read });
    for (const [name, sex] of [
      ['Juniper', 'F'],
      ['Moss', 'M'],
      ['Otter', 'M'],
      ['Bramble', 'F'],
      ['Tansy', 'F'],
      ['Kodiak', 'M'],
    ])
      await kennel.post('/api/dogs', { name, sex });
    const notes = await kennel.notes(
      ['08:55', 'Juniper and Moss in lead, Otter and Bramble in swing, Tansy and Kodiak in wheel.'],
      ['09:00', 'Left the yard at nine, minus eighteen and clear.'],
      ['09:30', 'Everyone pulling well.'],
      ['09:50', 'Glare ice on the river.'],
      ['10:10', 'Snack stop at mile six, everyone ate.'],
      ['10:15', 'Bramble is limping.'],
      ['10:40', 'Loaded Bramble at mile ten.'],
      ['11:20', 'Kodiak lost a bootie.'],
      ['11:50', 'Back in the yard at ten to twelve, 18 miles.'],
      ['12:20', 'Fed everyone.'],
    );
    expect(notes.map((note) => note.kept)).toEqual(notes.map(() => 'new'));
    for (const { id } of notes)
      expect((await kennel.review(id, { act: 'accept-all' })).json.note.state).toBe('reviewed');
    const { json } = await kennel.get<{ dogs: { dog: string; today: number }[] }>('/api/load?on=2027-01-14');
    const miles = Object.fromEntries(json.dogs.map((dog) => [dog.dog, Math.round((dog.today / MILE) * 10) / 10]));
    expect(miles).toEqual({ Bramble: 10, Juniper: 18, Kodiak: 18, Moss: 18, Otter: 18, Tansy: 18 });
    const { runs } = (await kennel.get<{ runs: RunRecord[] }>('/api/runs')).json;
    expect(runs).toHaveLength(1);
    expect(runs[0]?.dogs.find((dog) => dog.dog === 'Bramble')?.findings).toMatchObject([{ entry: { sign: 'lame' } }]);
    expect(runs[0]?.startedAt).toBe('2027-01-14T09:00:00-09:00');
  });

  it('reads a name that nobody knows as a new dog, once she is in the roster', async () => {
    const kennel = await newKennel({ read });
    await kennel.dogs('Juniper');
    const [note] = await kennel.notes(['09:00', 'Juniper and Pippin in lead.']);
    expect(note?.unknownNames).toMatchObject([{ name: 'Pippin', span: [12, 18] }]);
    await kennel.post('/api/dogs', { name: 'Pippin', sex: 'F' });
    const view = await kennel.note(note?.id ?? '');
    expect(view.unknownNames).toEqual([]);
    expect(view.entries.flatMap((e) => e.entry.dogs).sort()).toEqual(['Juniper', 'Pippin']);
  });
});
