/** Two drivers in one note, in one yard, in two notebooks. */
import { describe, expect, test } from 'vitest';
import type { Note } from '../../server/model.ts';
import type { RunRecord } from '../../server/records/index.ts';
import {
  clock,
  drop,
  duration,
  finding,
  hitch,
  inMiles,
  intake,
  kinds,
  METRIC,
  mark,
  miles,
  note,
  runs,
  stretches,
  type TestEntry,
  temperature,
  total,
  trail,
} from './build.ts';

const at = (time: string, entries: TestEntry[], more: Partial<Note> = {}) => note(`2027-02-03T${time}`, entries, more);
const shape = (all: RunRecord[]) => all.map(({ driver, dogs }) => [driver, dogs.map(({ dog }) => dog)]);

describe('a second driver told of in the musher’s notes', () => {
  const notes = [
    at('08:50', [
      hitch(['Juniper', 'Moss'], 'lead'),
      hitch(['Otter', 'Bramble'], 'wheel'),
      hitch(['Fern', 'Cricket'], undefined, { driver: 'Wren' }),
    ]),
    at('10:00', [mark(10), finding(['Fern'], 'lame'), finding(['Moss']), trail('icy'), temperature(5)]),
    at('10:30', [drop(['Cricket'], 'loaded'), mark(12)]),
    at('12:00', [clock('finish', '11:55'), total(20), intake(['*'], 'meal')]),
  ];

  test('is a run of its own, with what is told of its dogs', () => {
    const [own, wren] = runs(notes).runs as [RunRecord, RunRecord];
    expect(shape([own, wren])).toEqual([
      [undefined, ['Juniper', 'Moss', 'Bramble', 'Otter']],
      ['Wren', ['Cricket', 'Fern']],
    ]);
    expect([own.id, wren.id]).toEqual([notes[0]?.id, `${notes[0]?.id}~Wren`]);
    expect(wren.dogs.find(({ dog }) => dog === 'Fern')?.findings).toHaveLength(1);
    expect(own.dogs.find(({ dog }) => dog === 'Moss')?.findings).toHaveLength(1);
    expect(wren.notes).toEqual(notes.slice(0, 3).map(({ id }) => id));
  });

  test('shares weather and trail, not the distance: that is to be set by hand', () => {
    const [own, wren] = runs(notes).runs as [RunRecord, RunRecord];
    expect([inMiles(own.metres), wren.metres]).toEqual([20, undefined]);
    expect([own.surfaces.length, wren.surfaces.length, own.celsius.length, wren.celsius.length]).toEqual([1, 1, 1, 1]);
    expect(own.conflicts).toEqual([]);
    expect(wren.conflicts.map(({ kind, says, dogs }) => [kind, says, dogs])).toEqual([
      [
        'no-distance',
        'No note tells how far Wren’s team went, so its dogs’ distance is not known. Set its distance by hand.',
        ['Cricket', 'Fern'],
      ],
    ]);
    // Where a dog was loaded was told all the same.
    expect(miles(wren, 'Cricket')).toBe(12);
    expect(miles(own, 'Juniper')).toBe(20);
  });

  test('gets its distance by hand', () => {
    const distances = [
      { note: notes[0]?.id as string, driver: 'Wren', value: 18, unit: 'mi' as const, at: '2027-02-03T20:00:00Z' },
    ];
    const [own, wren] = runs(notes, { distances }).runs as [RunRecord, RunRecord];
    expect([own.metresFrom, inMiles(wren.metres), wren.metresFrom, kinds(wren)]).toEqual([
      'total',
      18,
      'corrected',
      [],
    ]);
    expect(miles(wren, 'Fern')).toBe(18);
  });

  test('the whole team is the speaker’s', () => {
    const [own, wren] = runs(notes).runs as [RunRecord, RunRecord];
    expect(own.dogs.every(({ intake }) => intake.length === 1)).toBe(true);
    expect(wren.dogs.every(({ intake }) => intake.length === 0)).toBe(true);
  });
});

describe('whose distance it is', () => {
  test('a total right behind a driver’s hitch, with no hitch of one’s own: that driver’s', () => {
    const text = 'pelle took dagny and ulv out on skis this afternoon 7 k';
    const all = runs(
      [
        at(
          '18:05',
          [
            [hitch(['Dagny', 'Ulv'], undefined, { driver: 'Pelle' }), 'pelle took dagny and ulv'],
            [total(7, 'km'), '7 k'],
            [intake(['Dagny', 'Ulv'], 'water'), 'ulv'],
          ],
          { text },
        ),
      ],
      {},
      [],
      METRIC,
    ).runs;
    expect(shape(all)).toEqual([['Pelle', ['Dagny', 'Ulv']]]);
    expect([all[0]?.metres, all[0]?.conflicts]).toEqual([7000, []]);
    expect(all[0]?.dogs.map(({ metres, intake }) => [metres, intake.length])).toEqual([
      [7000, 1],
      [7000, 1],
    ]);
  });

  test('the same in the evening of the musher’s own run', () => {
    const text = 'Anders took Ask out on skis. 9 km, 41 min. Ask ran well.';
    const [own, anders] = runs([
      at('08:50', [hitch(['Sif', 'Vidar'], 'lead')]),
      at('17:10', [clock('finish', '17:05'), total(64, 'km')]),
      at(
        '18:30',
        [
          [hitch(['Ask'], undefined, { driver: 'Anders' }), 'Anders took Ask out on skis'],
          [total(9, 'km'), '9 km'],
          [duration('run', 41), '41 min'],
        ],
        { text },
      ),
    ]).runs as [RunRecord, RunRecord];
    expect([own.metres, anders.metres, anders.minutes]).toEqual([64_000, 9000, 41]);
    expect([own.conflicts, anders.conflicts]).toEqual([[], []]);
    expect(own.minutes).toBeUndefined();
  });

  test('told with one’s own hitch: one’s own', () => {
    const text = "Liv's team: Krill and Dory lead. Mine: Sif and Vidar lead. 18 km.";
    const [own, liv] = runs([
      at(
        '18:30',
        [
          [hitch(['Krill', 'Dory'], 'lead', { driver: 'Liv' }), 'Krill and Dory lead'],
          [hitch(['Sif', 'Vidar'], 'lead'), 'Sif and Vidar lead'],
          [total(18, 'km'), '18 km'],
        ],
        { text },
      ),
    ]).runs as [RunRecord, RunRecord];
    expect([own.metres, liv.metres, kinds(liv)]).toEqual([18_000, undefined, ['no-distance']]);
  });

  test('two lengths told: each is of the team told before it', () => {
    const text = 'Liv had Krill and Dory, 12 km. I had Sif and Vidar, 18 km.';
    const [own, liv] = runs([
      at(
        '18:30',
        [
          [hitch(['Krill', 'Dory'], undefined, { driver: 'Liv' }), 'Liv had Krill and Dory'],
          [total(12, 'km'), '12 km'],
          [hitch(['Sif', 'Vidar']), 'I had Sif and Vidar'],
          [total(18, 'km'), '18 km'],
        ],
        { text },
      ),
    ]).runs as [RunRecord, RunRecord];
    expect([own.metres, liv.metres]).toEqual([18_000, 12_000]);
  });

  test('in another sentence, with a run of one’s own under way: one’s own', () => {
    const text = 'Ingrid is skiing behind us with Biscuit. Home at ten to five, 26 k all told.';
    const [own, ingrid] = runs([
      at('10:00', [hitch(['Saga', 'Loki'], 'lead'), mark(3, 'km')]),
      at(
        '17:00',
        [
          [hitch(['Biscuit'], undefined, { driver: 'Ingrid' }), 'Ingrid is skiing behind us with Biscuit'],
          [clock('finish', '16:50'), 'ten to five'],
          [total(26, 'km'), '26 k'],
        ],
        { text },
      ),
    ]).runs as [RunRecord, RunRecord];
    expect([own.metres, own.finishedAt, ingrid.metres]).toEqual([26_000, '2027-02-03T16:50:00-09:00', undefined]);
  });

  test('a driver’s later outing, told with its own length, is another run', () => {
    const all = runs([
      at('08:50', [hitch(['Saga', 'Loki'], 'lead'), hitch(['Ember', 'Skerry'], undefined, { driver: 'Pelle' })]),
      at('12:00', [clock('finish', '11:50'), total(20, 'km')]),
      at('18:00', [hitch(['Dagny', 'Ulv'], undefined, { driver: 'Pelle' }), total(7, 'km')]),
    ]).runs;
    expect(all.map(({ driver, metres }) => [driver, metres])).toEqual([
      [undefined, 20_000],
      ['Pelle', undefined],
      ['Pelle', 7000],
    ]);
    expect(new Set(all.map(({ id }) => id)).size).toBe(3);
  });
});

describe('a driver who speaks herself', () => {
  const musher = [
    at('08:50', [hitch(['Juniper', 'Moss'], 'lead'), hitch(['Fern', 'Cricket'], undefined, { driver: 'Wren' })]),
    at('10:00', [mark(10), finding(['Fern'], 'lame')]),
    at('12:00', [clock('finish', '11:55'), total(20)]),
  ];
  const wren = [
    at('09:10', [clock('start', '09:05')], { by: 'Wren' }),
    at('10:10', [mark(9), drop(['Cricket'], 'loaded')], { by: 'wren' }),
    at('12:10', [clock('finish', '12:05'), total(19)], { by: 'Wren' }),
  ];

  test('has one run, wherever it is told of', () => {
    const [own, hers, ...rest] = runs([...musher, ...wren]).runs as [RunRecord, RunRecord];
    expect(rest).toEqual([]);
    expect(shape([own, hers])).toEqual([
      [undefined, ['Juniper', 'Moss']],
      ['Wren', ['Cricket', 'Fern']],
    ]);
    expect(hers.id).toBe(wren[0]?.id);
    expect([miles(hers, 'Fern'), miles(hers, 'Cricket'), miles(own, 'Moss')]).toEqual([19, 9, 20]);
    expect(hers.dogs.find(({ dog }) => dog === 'Fern')?.findings).toHaveLength(1);
    expect([own.conflicts, hers.conflicts]).toEqual([[], []]);
    // Her record begins with her own first note; the musher's notes that came before it stay with the musher's run.
    expect(hers.notes).toEqual([wren[0]?.id, musher[1]?.id, wren[1]?.id, wren[2]?.id]);
  });

  test('is not the speaker of her own hitch with her name', () => {
    const all = runs([at('08:50', [hitch(['Fern'], 'lead', { driver: 'Wren' }), total(5)], { by: 'Wren' })]).runs;
    expect(all.map(({ id, driver }) => [id.includes('~'), driver])).toEqual([[false, 'Wren']]);
    expect(miles(all[0] as RunRecord, 'Fern')).toBe(5);
  });

  test('a handler’s yard notes make no run and go to the dogs’ runs', () => {
    const { runs: all, yard } = runs([...musher, at('18:00', [intake(['Moss', 'Pika'], 'meal')], { by: 'Tobias' })]);
    expect(all.map(({ driver }) => driver)).toEqual([undefined, 'Wren']);
    expect(all[0]?.dogs.find(({ dog }) => dog === 'Moss')?.intake).toHaveLength(1);
    expect(yard.map(({ said }) => said.map(({ dogs }) => dogs))).toEqual([[['Pika']]]);
  });
});

describe('a dog in two teams', () => {
  test('told in one breath: the last told has it, both runs say so', () => {
    const [own, wren] = runs([
      at('08:50', [
        hitch(['Juniper', 'Moss', 'Fern'], 'lead'),
        hitch(['Fern', 'Cricket'], undefined, { driver: 'Wren' }),
      ]),
      at('12:00', [total(20)]),
    ]).runs as [RunRecord, RunRecord];
    expect(shape([own, wren])).toEqual([
      [undefined, ['Juniper', 'Moss']],
      ['Wren', ['Cricket', 'Fern']],
    ]);
    expect(kinds(own)).toEqual(['dog-in-two-places']);
    expect(kinds(wren)).toEqual(['no-distance', 'dog-in-two-places']);
  });

  test('given to the other driver before leaving: no conflict', () => {
    const [own, wren] = runs([
      at('08:50', [hitch(['Juniper', 'Moss', 'Fern'], 'lead')]),
      at('08:55', [hitch(['Fern', 'Cricket'], undefined, { driver: 'Wren' })]),
      at('09:05', [clock('start', '09:00')]),
      at('12:00', [total(20)]),
    ]).runs as [RunRecord, RunRecord];
    expect(own.dogs.map(({ dog }) => dog)).toEqual(['Juniper', 'Moss']);
    expect([kinds(own), kinds(wren)]).toEqual([[], ['no-distance']]);
  });

  test('in two people’s notebooks at the same hours: counted in both, and both say so', () => {
    const all = runs([
      at('09:00', [hitch(['Juniper', 'Fern'], 'lead'), clock('start', '09:00')]),
      at('12:00', [clock('finish', '12:00'), total(20)]),
      at('10:00', [hitch(['Fern', 'Cricket'], 'lead'), clock('start', '10:00')], { by: 'Wren' }),
      at('11:00', [clock('finish', '11:00'), total(8)], { by: 'Wren' }),
    ]).runs;
    expect(all.map(kinds)).toEqual([['dog-in-two-places'], ['dog-in-two-places']]);
    expect(all[0]?.conflicts[0]?.says).toContain('Wren’s run');
  });

  test('in one run after the other the same day: nothing is wrong', () => {
    const all = runs([
      at('09:00', [hitch(['Juniper', 'Fern'], 'lead'), clock('start', '09:00')]),
      at('12:00', [clock('finish', '12:00'), total(20)]),
      at('13:00', [hitch(['Fern', 'Cricket'], 'lead'), clock('start', '13:00')], { by: 'Wren' }),
      at('14:00', [clock('finish', '14:00'), total(8)], { by: 'Wren' }),
    ]).runs;
    expect(all.map(kinds)).toEqual([[], []]);
    expect(all.map((one) => stretches(one, 'Fern'))).toEqual([['lead 0–20'], ['lead 0–8']]);
  });
});
