/** What is told of a dog goes to the run it was in, else to the yard: to one place, never to none. */
import { describe, expect, test } from 'vitest';
import type { Note } from '../../server/model.ts';
import {
  attitude,
  clock,
  dog,
  dogIn,
  drop,
  finding,
  hitch,
  intake,
  kinds,
  mark,
  miles,
  note,
  run,
  runs,
  type TestEntry,
  temperature,
  total,
  trail,
} from './build.ts';

const at = (time: string, entries: TestEntry[], more: Partial<Note> = {}) => note(`2027-01-14T${time}`, entries, more);
const out = () => at('08:50', [hitch(['Juniper', 'Moss'], 'lead'), hitch(['Tansy', 'Kodiak'], 'wheel')]);
const home = () => at('12:10', [clock('finish', '12:00'), total(24)]);

describe('in the evening', () => {
  test('a finding of a dog that ran is the run’s; of one that did not, the yard’s; neither is a conflict', () => {
    const notes = [out(), home(), at('17:00', [finding(['Moss', 'Pika'])])];
    const { runs: all, yard } = runs(notes);
    expect(all).toHaveLength(1);
    expect(dogIn(all[0] as never, 'Moss').findings.map(({ note }) => note)).toEqual([notes[2]?.id]);
    expect(all[0]?.conflicts).toEqual([]);
    expect(yard).toEqual([
      { day: '2027-01-14', said: [expect.objectContaining({ dogs: ['Pika'], note: notes[2]?.id })] },
    ]);
  });

  test('without a finish told, the first meal in the yard begins it', () => {
    const record = run([
      out(),
      at('11:00', [mark(20)]),
      at('13:00', [intake(['Moss', 'Pika'], 'meal'), finding(['Pika'])]),
    ]);
    expect(record.conflicts).toEqual([]);
    expect(dogIn(record, 'Moss').intake).toHaveLength(1);
  });

  test('where no end is told, what follows the last mark may be from the yard; a later mark shows that it was not', () => {
    const notes = [out(), at('11:00', [mark(20)]), at('11:40', [finding(['Pika'])])];
    expect(run(notes).conflicts).toEqual([]);
    expect(kinds(run([...notes, at('12:00', [mark(24)])]))).toEqual(['finding-on-absent-dog']);
  });

  test('a supper for the whole team is every dog’s but those dropped on the way', () => {
    const record = run([
      out(),
      at('10:00', [drop(['Tansy'], 'dropped'), mark(9)]),
      home(),
      at('17:00', [intake(['*'], 'meal')]),
    ]);
    expect(record.dogs.map(({ dog, intake }) => [dog, intake.length])).toEqual([
      ['Juniper', 1],
      ['Moss', 1],
      ['Kodiak', 1],
      ['Tansy', 0],
    ]);
  });

  test('weather in the yard afterwards is not the run’s', () => {
    const { runs: all, yard } = runs([
      out(),
      at('10:00', [temperature(5), trail('icy')]),
      home(),
      at('20:00', [temperature(-30)]),
    ]);
    expect(all[0]?.celsius).toEqual([-15]);
    expect(yard[0]?.said.map(({ entry }) => entry.kind)).toEqual(['temperature']);
  });

  test('of two runs it is the last one the dog was in', () => {
    const notes = [
      out(),
      home(),
      at('13:00', [hitch(['Sable', 'Moss'], 'lead'), hitch(['Fern', 'Birch'], 'wheel'), clock('start', '13:05')]),
      at('15:00', [clock('finish', '14:50'), total(10)]),
      at('17:00', [finding(['Moss', 'Juniper'])]),
    ];
    const [first, second] = runs(notes).runs;
    expect(dogIn(first as never, 'Juniper').findings).toHaveLength(1);
    expect(dogIn(first as never, 'Moss').findings).toHaveLength(0);
    expect(dogIn(second as never, 'Moss').findings).toHaveLength(1);
  });
});

describe('on the trail', () => {
  test('a finding on a dog that is not in the team is a conflict, and is not lost', () => {
    const { runs: all, yard } = runs([out(), at('10:00', [mark(9), finding(['Fern'])]), home()]);
    expect(all[0]?.conflicts.map(({ kind, dogs }) => [kind, dogs])).toEqual([['finding-on-absent-dog', ['Fern']]]);
    expect(all[0]?.conflicts[0]?.says).toBe(
      'Fern is told of in this run’s notes but is not in its line-up. If the dog ran, add it to the line-up; if it is another dog, change the entry.',
    );
    expect(yard[0]?.said.map(({ dogs }) => dogs)).toEqual([['Fern']]);
  });

  test('a dog told to be at home may be told of', () => {
    const { runs: all, yard } = runs([
      out(),
      at('10:00', [mark(9), drop(['Pika'], 'home'), finding(['Pika'])]),
      home(),
    ]);
    expect(all[0]?.conflicts).toEqual([]);
    expect(yard[0]?.said.map(({ dogs }) => dogs)).toEqual([['Pika']]);
  });

  test('a dog of the morning’s run is not of the afternoon’s', () => {
    const [morning, afternoon] = runs([
      out(),
      home(),
      at('13:00', [hitch(['Sable', 'Heron'], 'lead'), hitch(['Fern', 'Birch'], 'wheel'), clock('start', '13:05')]),
      at('14:00', [mark(5), finding(['Moss'])]),
      at('15:00', [clock('finish', '14:50'), total(10)]),
    ]).runs;
    expect([kinds(morning as never), kinds(afternoon as never)]).toEqual([[], ['finding-on-absent-dog']]);
    expect(dogIn(morning as never, 'Moss').findings).toEqual([]);
  });

  test('with no line-up told, the dogs named are listed and given no miles', () => {
    const { runs: all, yard } = runs([at('10:00', [mark(9), attitude(['Moss']), intake(['Otter'])]), home()]);
    expect(all[0]?.dogs).toEqual([]);
    expect(all[0]?.conflicts.map(({ kind, says, dogs }) => [kind, says, dogs])).toEqual([
      [
        'no-lineup',
        'No note tells who was in the team, so no dog is given this run’s distance. Named in its notes: Moss and Otter. Add the line-up to one of its notes.',
        ['Moss', 'Otter'],
      ],
    ]);
    expect(yard[0]?.said).toHaveLength(2);
  });
});

describe('what is kept', () => {
  test('a finding whatever is said of it, but not one planned; food and manner only as they were', () => {
    const record = run([
      out(),
      at('10:00', [
        mark(9),
        finding(['Moss'], 'lame', { assertion: 'absent' }),
        finding(['Moss'], 'sore', { assertion: 'past' }),
        finding(['Moss'], 'split', { assertion: 'resolved' }),
        finding(['Moss'], 'any', { assertion: 'possible' }),
        finding(['Moss'], 'vomiting', { assertion: 'planned' }),
        intake(['Moss'], 'snack', { assertion: 'planned' }),
        intake(['Moss'], 'water', { assertion: 'past' }),
        attitude(['Moss'], { assertion: 'absent' }),
        trail('icy', { assertion: 'absent' }),
        trail('soft', { assertion: 'possible' }),
        trail('hard'),
      ]),
      home(),
    ]);
    const moss = dogIn(record, 'Moss');
    expect(moss.findings.map(({ entry }) => entry.assertion)).toEqual(['absent', 'past', 'resolved', 'possible']);
    expect([moss.intake, moss.attitude]).toEqual([[], []]);
    expect(record.surfaces.map(({ entry }) => entry.surface)).toEqual(['hard']);
  });

  test('entries under a former name or an alias are the dog’s of now', () => {
    const roster = [dog('Juniper', { aliases: ['June'], formerNames: ['Nipper'] }), dog('Moss')];
    const record = run(
      [
        at('08:50', [hitch(['Nipper', 'Moss'], 'lead')]),
        at('10:00', [mark(9), finding(['june']), drop(['Juniper'], 'loaded')]),
        home(),
      ],
      {},
      roster,
    );
    expect(record.dogs.map(({ dog }) => dog)).toEqual(['Juniper', 'Moss']);
    expect(miles(record, 'Juniper')).toBe(9);
    expect(dogIn(record, 'Juniper').findings).toHaveLength(1);
    expect(record.conflicts).toEqual([]);
  });
});
