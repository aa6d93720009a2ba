/** What does not fit together is shown on the run, with a sentence. */
import { describe, expect, test } from 'vitest';
import type { Note } from '../../server/model.ts';
import { settingsSchema } from '../../server/model.ts';
import { clock, drop, hitch, kinds, METRIC, mark, miles, move, note, run, type TestEntry, total } from './build.ts';

const at = (time: string, entries: TestEntry[], more: Partial<Note> = {}) => note(`2027-01-14T${time}`, entries, more);
const out = () => at('08:50', [hitch(['Juniper', 'Moss'], 'lead'), hitch(['Tansy', 'Kodiak'], 'wheel')]);
const said = (...args: Parameters<typeof run>) => run(...args).conflicts.map(({ kind, says }) => [kind, says]);

describe('lengths', () => {
  test('two totals', () => {
    const notes = [out(), at('12:10', [total(31.5)]), at('12:30', [total(33)])];
    expect(said(notes)).toEqual([
      [
        'two-totals',
        'Different lengths are told for this run: 31.5 mi (12:10) and 33 mi (12:30). 33 mi counts; set the right one by hand.',
      ],
    ]);
    expect(run(notes).conflicts[0]?.notes).toEqual([notes[1]?.id, notes[2]?.id]);
  });

  test('the same length told in two units is one', () => {
    expect(said([out(), at('12:10', [total(31.5)]), at('12:30', [total(50.7, 'km')])])).toEqual([]);
  });

  test('a mark beyond the total, in the kennel’s units', () => {
    const notes = [out(), at('10:00', [mark(34, 'km')]), at('12:10', [total(32, 'km')])];
    expect(said(notes, {}, [], METRIC)).toEqual([
      [
        'mark-beyond-total',
        'The run is 32 km long, but km 34 (10:00) is told in its notes. No dog is given more than the run.',
      ],
    ]);
    expect(run(notes).dogs.every(({ metres }) => metres === 32_000)).toBe(true);
  });

  test('a mark that goes back', () => {
    expect(said([out(), at('10:00', [mark(18)]), at('10:30', [mark(16)]), at('12:10', [total(30)])])).toEqual([
      [
        'mark-goes-back',
        'Mile 16 (10:30) is told after mile 18 (10:00): one of them is wrong, or it looks back. It places only what its own note tells.',
      ],
    ]);
    expect(
      said([out(), at('09:30', [mark(8)]), at('10:00', [mark(28)]), at('10:30', [mark(16)]), at('11:00', [mark(20)])]),
    ).toEqual([
      [
        'mark-goes-back',
        'Mile 28 (10:00) is told before mile 20 (11:00): one of them is wrong, or it looks back. It places only what its own note tells.',
      ],
    ]);
  });

  test('a note that names an earlier place beside its own does not go back', () => {
    expect(said([out(), at('10:00', [mark(18)]), at('10:30', [mark(16), mark(20)]), at('12:10', [total(30)])])).toEqual(
      [],
    );
  });

  test('marks told afterwards are of no time', () => {
    expect(said([out(), at('10:00', [mark(18)]), at('12:10', [clock('finish', '12:00'), total(30), mark(9)])])).toEqual(
      [],
    );
  });

  test('no distance', () => {
    expect(said([out()])).toEqual([
      [
        'no-distance',
        'No note tells how far this run went, so its dogs’ distance is not known. Set its distance by hand.',
      ],
    ]);
  });
});

describe('places', () => {
  test('one dog told in two places at once: the last told counts', () => {
    const record = run([
      at('08:50', [hitch(['Juniper', 'Moss'], 'lead'), hitch(['Moss'], 'wheel')]),
      at('12:00', [total(20)]),
    ]);
    expect(record.conflicts.map(({ kind, says, dogs }) => [kind, says, dogs])).toEqual([
      ['dog-in-two-places', 'Moss is told in lead and in wheel at once (08:50); the last one counts.', ['Moss']],
    ]);
    expect(miles(record, 'Moss')).toBe(20);
  });

  test('told otherwise afterwards: the first told counts', () => {
    const notes = [out(), at('12:10', [clock('finish', '12:00'), total(20)]), at('18:00', [hitch(['Moss'], 'wheel')])];
    expect(said(notes)).toEqual([
      [
        'dog-in-two-places',
        'Moss is told in wheel afterwards (18:00), but in lead before; what was told first counts.',
      ],
    ]);
  });

  test('hitched and at home in one breath', () => {
    const notes = [at('08:50', [hitch(['Juniper', 'Moss'], 'lead'), drop(['Moss'], 'home')]), at('12:00', [total(20)])];
    expect(said(notes)).toEqual([
      ['dog-in-two-places', 'Moss is told in the team and at home (08:50); it counts as at home.'],
    ]);
    expect(run(notes).dogs.map(({ dog }) => dog)).toEqual(['Juniper']);
  });

  test('at home after the run: it ran all the same', () => {
    const notes = [out(), at('12:10', [clock('finish', '12:00'), total(20)]), at('13:00', [drop(['Moss'], 'home')])];
    expect(said(notes)).toEqual([
      ['dog-in-two-places', 'Moss is told in the team and at home (08:50 and 13:00); it counts as in the team.'],
    ]);
    expect(miles(run(notes), 'Moss')).toBe(20);
  });

  test('loaded at two places with no way back in between', () => {
    const notes = [
      out(),
      at('10:00', [drop(['Moss'], 'loaded'), mark(9)]),
      at('11:00', [drop(['Moss'], 'loaded'), mark(14)]),
      at('12:00', [total(20)]),
    ];
    expect(said(notes)).toEqual([
      ['dog-in-two-places', 'Moss is loaded at mile 14 (11:00) as well as at mile 9; what was told first counts.'],
    ]);
  });

  test('loaded on the way and left at the checkpoint is no conflict: it pulled to where it was loaded', () => {
    const notes = [
      out(),
      at('10:00', [drop(['Moss'], 'loaded'), mark(9)]),
      at('11:00', [drop(['Moss'], 'dropped'), mark(14)]),
      at('12:00', [total(20)]),
    ];
    expect(said(notes)).toEqual([]);
    expect(miles(run(notes), 'Moss')).toBe(9);
  });

  test('two dogs in one place on one side, from where they are', () => {
    const notes = [
      at('08:50', [
        hitch(['Juniper'], 'lead', { side: 'left' }),
        hitch(['Moss'], 'lead', { side: 'right' }),
        hitch(['Otter'], 'swing', { side: 'left' }),
      ]),
      at('10:00', [mark(9), move(['Otter'], 'lead', { side: 'left' })]),
      at('12:00', [total(20)]),
    ];
    expect(said(notes)).toEqual([
      ['two-dogs-in-one-place', 'Juniper and Otter are both told in left lead from mile 9 on.'],
    ]);
    const swapped = [
      ...notes.slice(0, 1),
      at('10:00', [mark(9), move(['Otter'], 'lead', { side: 'left' }), move(['Juniper'], 'swing', { side: 'left' })]),
      at('12:00', [total(20)]),
    ];
    expect(said(swapped)).toEqual([]);
  });

  test('team pairs are many: two dogs left in team are no conflict', () => {
    const notes = [
      at('08:50', [hitch(['Sable', 'Heron', 'Fern'], 'team', { side: 'left' })]),
      at('12:00', [total(20)]),
    ];
    expect(said(notes)).toEqual([]);
  });

  test('a dog loaded that no line-up has', () => {
    const notes = [out(), at('10:00', [drop(['Fern'], 'loaded'), mark(9)]), at('12:00', [total(20)])];
    expect(said(notes)).toEqual([
      [
        'finding-on-absent-dog',
        'Fern is loaded (10:00), but no line-up of this run has the dog; it counts as in the team from the start to there.',
      ],
    ]);
  });

  test('no place known', () => {
    const notes = [at('18:00', [hitch(['Hazel', 'Dash'], 'lead'), drop(['Dash'], 'loaded'), total(20)])];
    expect(said(notes)).toEqual([
      [
        'unknown-place',
        'No mark tells where Dash was loaded (18:00), so the dog’s distance is not known. Add the distance to that note.',
      ],
    ]);
  });
});

test('a finish before the start: no time, and it is said', () => {
  const notes = [out(), at('09:05', [clock('start', '13:00')]), at('12:10', [clock('finish', '12:00'), total(20)])];
  const record = run(notes);
  expect(kinds(record)).toEqual(['finish-before-start']);
  expect(record.minutes).toBeUndefined();
});

test('every sentence is one: it begins with a capital and ends with a full stop', () => {
  const all = [
    ...run([out()]).conflicts,
    ...run([at('18:00', [hitch(['Dash'], 'lead'), drop(['Dash'], 'loaded'), total(20), mark(30)])]).conflicts,
    ...run([at('18:00', [total(20)])], {}, [], settingsSchema.parse({ units: 'metric' })).conflicts,
  ];
  expect(all.length).toBeGreaterThanOrEqual(3);
  for (const { says } of all) expect(says).toMatch(/^[A-Z].*\.$/);
});
