/** Who is on the gangline when the next note is spoken. */
import { describe, expect, test } from 'vitest';
import type { Note } from '../../server/model.ts';
import { currentName, lineupBefore } from '../../server/records/index.ts';
import { clock, dog, drop, hitch, intake, mark, move, note, type TestEntry, total } from './build.ts';

const at = (time: string, entries: TestEntry[], more: Partial<Note> = {}) => note(`2027-01-14T${time}`, entries, more);
const proposed = (one: Note): Note => ({
  ...one,
  entries: one.entries.map((entry) => ({ ...entry, state: 'proposed' })),
});
const out = () =>
  at('08:50', [
    hitch(['Tansy', 'Kodiak'], 'wheel'),
    hitch(['Moss'], 'lead', { side: 'right' }),
    hitch(['Juniper'], 'lead', { side: 'left' }),
  ]);
const lineup = (notes: Note[], time: string, by?: string) =>
  lineupBefore(notes, `2027-01-14T${time}:00-09:00`, [], by).map(({ dog, position, side }) =>
    [dog, position, side].filter(Boolean).join(' '),
  );
const WHOLE = ['Juniper lead left', 'Moss lead right', 'Tansy wheel', 'Kodiak wheel'];

describe('from the day’s earlier notes', () => {
  test('from lead to wheel, left before right, proposed or accepted', () => {
    expect(lineup([out()], '09:30')).toEqual(WHOLE);
    expect(lineup([proposed(out())], '09:30')).toEqual(WHOLE);
  });

  test('in whatever order they arrive; a note of the same moment or later is not earlier', () => {
    const notes = [at('10:00', [move(['Tansy'], 'lead'), drop(['Moss'], 'loaded')]), out()];
    expect(lineup(notes, '09:30')).toEqual(WHOLE);
    expect(lineup(notes, '10:00')).toEqual(WHOLE);
    expect(lineup(notes, '10:01')).toEqual(['Juniper lead left', 'Tansy lead', 'Kodiak wheel']);
    expect(lineup(notes, '08:50')).toEqual([]);
  });

  test('moved, loaded, back in', () => {
    const notes = [out(), at('10:00', [drop(['Moss'], 'loaded')]), at('10:30', [move(['Moss'], 'wheel')])];
    expect(lineup(notes, '10:15')).toEqual(['Juniper lead left', 'Tansy wheel', 'Kodiak wheel']);
    expect(lineup(notes, '11:00')).toEqual(['Juniper lead left', 'Tansy wheel', 'Kodiak wheel', 'Moss wheel']);
  });

  test('a side told before is kept when the position is told again', () => {
    expect(lineup([out(), at('09:00', [hitch(['Moss'], 'lead')])], '09:30')).toEqual(WHOLE);
  });

  test('removed entries, notes aside, what is planned or past do not count', () => {
    const removed = out();
    for (const entry of removed.entries) entry.state = 'removed';
    const planned = at('09:00', [
      hitch(['Fern'], 'lead', { assertion: 'planned' }),
      drop(['Moss'], 'loaded', { assertion: 'planned' }),
    ]);
    expect(lineup([removed, planned, { ...out(), aside: true }], '09:30')).toEqual([]);
    expect(lineup([out(), planned], '09:30')).toEqual(WHOLE);
  });

  test('another day’s notes do not count, nor do those before a long silence', () => {
    expect(lineup([note('2027-01-13T15:00', [hitch(['Fern'], 'lead')])], '09:30')).toEqual([]);
    expect(lineup([out()], '15:00')).toEqual([]);
    expect(lineup([out(), at('11:00', [mark(20)])], '15:00')).toEqual(WHOLE);
  });

  test('over midnight the team is still out', () => {
    const notes = [note('2027-01-13T22:00', [hitch(['Fern', 'Birch'], 'lead')]), note('2027-01-13T23:30', [mark(12)])];
    expect(lineup(notes, '00:40')).toEqual(['Fern lead', 'Birch lead']);
    expect(lineup([...notes, at('00:30', [hitch(['Sable'], 'lead')])], '00:40')).toEqual(['Sable lead']);
  });

  test('a time without an offset is a local clock', () => {
    expect(lineupBefore([out()], '2027-01-14T09:30', []).map(({ dog }) => dog)).toEqual([
      'Juniper',
      'Moss',
      'Tansy',
      'Kodiak',
    ]);
    expect(lineupBefore([out()], '2027-01-14T08:30', [])).toEqual([]);
  });

  test('names of now', () => {
    const roster = [dog('Juniper', { formerNames: ['Moss'] })];
    expect(lineupBefore([at('08:50', [hitch(['Moss'], 'lead')])], '2027-01-14T09:30', roster)).toEqual([
      { dog: 'Juniper', position: 'lead' },
    ]);
  });
});

describe('after coming home', () => {
  const day = [out(), at('12:10', [clock('finish', '12:00'), total(24)])];

  test('nobody is on the gangline, also when a place is told over', () => {
    expect(lineup(day, '12:30')).toEqual([]);
    expect(
      lineup(
        [...day, at('12:40', [hitch(['Juniper', 'Moss'], 'lead')]), at('12:50', [intake(['*'], 'meal')])],
        '13:00',
      ),
    ).toEqual([]);
  });

  test('a new team is', () => {
    expect(lineup([...day, at('13:00', [hitch(['Sable', 'Fern'], 'lead')])], '13:10')).toEqual([
      'Sable lead',
      'Fern lead',
    ]);
    const same = [
      ...day,
      at('13:00', [hitch(['Juniper', 'Moss'], 'lead')]),
      at('13:02', [hitch(['Tansy'], 'wheel')]),
      at('13:10', [clock('start', '13:10')]),
    ];
    expect(lineup(same, '13:20')).toEqual(['Juniper lead', 'Moss lead', 'Tansy wheel']);
  });
});

describe('of two drivers', () => {
  const notes = [
    at('08:50', [hitch(['Juniper', 'Moss'], 'lead'), hitch(['Fern', 'Cricket'], undefined, { driver: 'Wren' })]),
    at('09:00', [hitch(['Sable'], 'wheel')], { by: 'Wren' }),
  ];

  test('each has her own team, as anyone told it', () => {
    expect(lineup(notes, '09:30')).toEqual(['Juniper lead', 'Moss lead']);
    expect(lineup(notes, '09:30', 'wren')).toEqual(['Sable wheel', 'Fern', 'Cricket']);
    expect(lineup(notes, '09:30', 'Tobias')).toEqual([]);
  });

  test('a dog given to the other driver has left', () => {
    expect(lineup([...notes, at('09:10', [hitch(['Moss'], undefined, { driver: 'Wren' })])], '09:30')).toEqual([
      'Juniper lead',
    ]);
  });
});

test('names: call name, alias, former name; a name nobody bears stays', () => {
  const roster = [dog('Juniper', { aliases: ['June'], formerNames: ['Nipper'] }), dog('Moss')];
  expect(['Juniper', 'june', 'NIPPER', 'moss', 'Fern'].map((name) => currentName(roster, name))).toEqual([
    'Juniper',
    'Juniper',
    'Juniper',
    'Moss',
    'Fern',
  ]);
});
