/** Notes into runs: by day, driver and time, over midnight, told afterwards; cut, joined and moved by hand. */
import { describe, expect, test } from 'vitest';
import type { Note, RunChoices } from '../../server/model.ts';
import { settingsSchema } from '../../server/model.ts';
import {
  clock,
  drop,
  duration,
  finding,
  hitch,
  inMiles,
  intake,
  kinds,
  mark,
  miles,
  move,
  note,
  run,
  runs,
  type TestEntry,
  temperature,
  total,
} from './build.ts';

const on = (day: string, time: string, entries: TestEntry[], more: Partial<Note> = {}) =>
  note(`2027-01-${day}T${time}`, entries, more);
/** Which notes make which runs: the numbers of the notes, a list a run. */
function split(notes: Note[], choices: Partial<RunChoices> = {}, gap = 5): number[][] {
  const settings = settingsSchema.parse({ runGapHours: gap });
  return runs(notes, choices, [], settings).runs.map((one) =>
    one.notes.map((id) => notes.findIndex((note) => note.id === id)),
  );
}
const four = (a = 'Juniper', b = 'Moss', c = 'Otter', d = 'Bramble') => [hitch([a, b], 'lead'), hitch([c, d], 'wheel')];

describe('one day, one driver', () => {
  test('all notes of the day are one run', () => {
    expect(
      split([
        on('14', '08:50', four()),
        on('14', '09:05', [clock('start', '09:00')]),
        on('14', '10:00', [mark(8)]),
        on('14', '12:10', [clock('finish', '12:00'), total(24)]),
      ]),
    ).toEqual([[0, 1, 2, 3]]);
  });

  test('another local day is another run, by the note’s own offset', () => {
    // 23:30 at -09:00 is 08:30 of the next day in UTC.
    const notes = [
      on('14', '20:00', [...four(), clock('start', '20:00')]),
      on('14', '23:30', [clock('finish', '23:20'), total(20)]),
      on('15', '09:00', [...four(), clock('start', '09:00')]),
      on('15', '11:00', [clock('finish', '11:00'), total(12)]),
    ];
    expect(split(notes)).toEqual([
      [0, 1],
      [2, 3],
    ]);
    expect(runs(notes).runs.map(({ day, season }) => [day, season])).toEqual([
      ['2027-01-14', '2026-27'],
      ['2027-01-15', '2026-27'],
    ]);
  });

  test('after a finish, a hook-up with a start is a new run', () => {
    expect(
      split([
        on('14', '08:50', four()),
        on('14', '11:10', [clock('finish', '11:00'), total(14)]),
        on('14', '13:00', four()),
        on('14', '13:20', [clock('start', '13:15')]),
        on('14', '14:00', [mark(6)]),
        on('14', '15:05', [clock('finish', '15:00'), total(12)]),
      ]),
    ).toEqual([
      [0, 1],
      [2, 3, 4, 5],
    ]);
  });

  test('after a finish, another team hooked up is a new run before anything else is told', () => {
    expect(
      split([
        on('14', '08:50', four()),
        on('14', '11:10', [clock('finish', '11:00')]),
        on('14', '13:00', four('Sable', 'Heron', 'Fern', 'Birch')),
      ]),
    ).toEqual([[0, 1], [2]]);
  });

  test('a start alone after a finish is a new run', () => {
    expect(
      split([
        on('14', '08:50', [...four(), clock('start', '09:00')]),
        on('14', '11:10', [clock('finish', '11:00')]),
        on('14', '13:20', [clock('start', '13:15')]),
        on('14', '14:00', [mark(6)]),
      ]),
    ).toEqual([
      [0, 1],
      [2, 3],
    ]);
  });

  test('a second run nobody hooked up or started in words shows by its finish', () => {
    const notes = [
      on('14', '08:50', four()),
      on('14', '11:10', [clock('finish', '11:00'), total(14)]),
      on('14', '14:00', [mark(6)]),
      on('14', '15:05', [clock('finish', '15:00'), total(12)]),
    ];
    expect(split(notes)).toEqual([
      [0, 1],
      [2, 3],
    ]);
    expect(kinds(runs(notes).runs[1] as never)).toEqual(['no-lineup']);
  });

  test('length and time told in one breath end a run as a finish does', () => {
    expect(
      split([
        on('14', '08:50', four()),
        on('14', '11:10', [total(14), duration('run', 130)]),
        on('14', '13:00', four('Sable', 'Heron', 'Fern', 'Birch')),
      ]),
    ).toEqual([[0, 1], [2]]);
  });

  test('silence of more than the set hours starts a new run; less does not', () => {
    const notes = [on('14', '07:00', [...four(), mark(2)]), on('14', '12:30', [mark(9)])];
    expect(split(notes, {}, 5)).toEqual([[0], [1]]);
    expect(split(notes, {}, 6)).toEqual([[0, 1]]);
  });

  test('a finish or a total ends the run that is out, however long nothing was said on the trail', () => {
    expect(split([on('14', '08:50', four()), on('14', '17:10', [clock('finish', '17:05'), total(64)])])).toEqual([
      [0, 1],
    ]);
    expect(split([on('14', '08:50', four()), on('14', '17:10', [total(64)])])).toEqual([[0, 1]]);
    // A run told whole after silence is another one.
    const whole = [clock('start', '15:00'), clock('finish', '17:00'), total(12)];
    expect(split([on('14', '08:50', four()), on('14', '17:10', whole)])).toEqual([[0], [1]]);
  });

  test('a second start without a finish is a new run', () => {
    expect(
      split([
        on('14', '08:50', [...four(), clock('start', '09:00')]),
        on('14', '10:00', [mark(8)]),
        on('14', '13:10', [clock('start', '13:00')]),
        on('14', '14:00', [mark(6)]),
      ]),
    ).toEqual([
      [0, 1],
      [2, 3],
    ]);
  });

  test('leaders told anew, of a team with none of the first, are another run even where the finish was forgotten', () => {
    expect(
      split([
        on('14', '08:50', four()),
        on('14', '10:00', [mark(8)]),
        on('14', '12:00', four('Sable', 'Heron', 'Fern', 'Birch')),
      ]),
    ).toEqual([[0, 1], [2]]);
  });

  test('a line-up told pair by pair is one', () => {
    expect(
      split([
        on('14', '08:40', [hitch(['Juniper', 'Moss'], 'lead')]),
        on('14', '08:45', [hitch(['Otter', 'Bramble'], 'swing')]),
        on('14', '08:50', [hitch(['Sable', 'Heron'], 'team')]),
        on('14', '08:55', [hitch(['Tansy', 'Kodiak'], 'wheel')]),
        on('14', '09:30', [mark(4)]),
      ]),
    ).toEqual([[0, 1, 2, 3, 4]]);
  });
});

describe('told afterwards', () => {
  test('a dog’s place told over in the evening makes no second run', () => {
    const notes = [
      on('14', '08:50', four()),
      on('14', '12:10', [clock('finish', '12:00'), total(24)]),
      on('14', '18:30', [hitch(['Juniper', 'Moss'], 'lead'), finding(['Moss'])]),
    ];
    expect(split(notes)).toEqual([[0, 1, 2]]);
    expect(miles(run(notes), 'Moss')).toBe(24);
  });

  test('a line-up told only in the evening is the run’s', () => {
    const record = run([
      on('14', '09:05', [clock('start', '09:00')]),
      on('14', '12:10', [clock('finish', '12:00'), total(24)]),
      on('14', '18:30', four()),
    ]);
    expect(miles(record, 'Juniper')).toBe(24);
    expect(record.conflicts).toEqual([]);
  });

  test('two teams told in the yard after the numbers', () => {
    const notes = [
      on('09', '17:20', [clock('finish', '17:10'), total(31.5), duration('run', 200)]),
      on('09', '18:20', [
        hitch(['Trip', 'Sandy', 'Lucky'], undefined, { driver: 'Hope' }),
        hitch(['Hazel', 'Dash'], 'lead'),
        hitch(['Bear', 'Misty'], 'wheel'),
      ]),
    ];
    const [own, hope] = runs(notes).runs;
    expect(own?.dogs.map(({ dog }) => dog)).toEqual(['Dash', 'Hazel', 'Bear', 'Misty']);
    expect(inMiles(own?.metres)).toBe(31.5);
    expect(own?.conflicts).toEqual([]);
    expect(hope?.id).toBe(`${notes[1]?.id}~Hope`);
    expect(hope?.metres).toBeUndefined();
    expect(kinds(hope as never)).toEqual(['no-distance']);
  });

  test('the length told in the evening, hours after, is the run’s', () => {
    const record = run([
      on('14', '08:50', four()),
      on('14', '12:10', [clock('finish', '12:00')]),
      on('14', '19:00', [total(24)]),
    ]);
    expect(inMiles(record.metres)).toBe(24);
  });

  test('where it happened, told in the evening, makes no run', () => {
    const notes = [
      on('14', '08:50', four()),
      on('14', '12:10', [clock('finish', '12:00'), total(24)]),
      on('14', '19:00', [finding(['Moss'], 'lame'), mark(9)]),
    ];
    expect(split(notes)).toEqual([[0, 1, 2]]);
    expect(run(notes).conflicts).toEqual([]);
  });

  test('another outing told in the evening, with other dogs and its own time, is a run', () => {
    const notes = [
      on('14', '08:50', four()),
      on('14', '12:10', [clock('finish', '12:00'), total(24)]),
      on('14', '18:30', [hitch(['Trip']), duration('run', 25)]),
    ];
    expect(split(notes)).toEqual([[0, 1], [2]]);
    expect(runs(notes).runs[1]?.minutes).toBe(25);
  });

  test('a day told after midnight belongs to the day it began', () => {
    const record = run([on('15', '00:30', [clock('start', '18:00'), clock('finish', '23:50'), total(40), ...four()])]);
    expect(record.day).toBe('2027-01-14');
    expect(record.startedAt).toBe('2027-01-14T18:00:00-09:00');
    expect(record.finishedAt).toBe('2027-01-14T23:50:00-09:00');
    expect(record.minutes).toBe(350);
  });
});

describe('over midnight', () => {
  const night = [
    on('14', '19:50', [...four(), clock('start', '20:00')]),
    on('14', '23:20', [mark(28)]),
    on('15', '00:40', [mark(36), drop(['Otter'], 'loaded')]),
    on('15', '01:20', [clock('finish', '01:10'), total(40)]),
    on('15', '01:50', [intake(['Juniper'], 'meal')]),
    on('15', '09:00', [...four(), clock('start', '09:10')]),
    on('15', '10:00', [mark(5)]),
  ];

  test('a run that goes over midnight is one, of the day it began', () => {
    expect(split(night)).toEqual([
      [0, 1, 2, 3, 4],
      [5, 6],
    ]);
    const [first, second] = runs(night).runs;
    expect([first?.day, second?.day]).toEqual(['2027-01-14', '2027-01-15']);
    expect(first?.finishedAt).toBe('2027-01-15T01:10:00-09:00');
    expect(first?.minutes).toBe(310);
    expect(miles(first as never, 'Otter')).toBe(36);
  });

  test('its finish told in the morning is still its own', () => {
    const notes = [
      on('14', '19:50', [...four(), clock('start', '20:00')]),
      on('14', '23:20', [mark(28)]),
      on('15', '07:30', [clock('finish', '01:10'), total(40)]),
    ];
    expect(split(notes)).toEqual([[0, 1, 2]]);
    expect(run(notes).minutes).toBe(310);
  });

  test('yard notes after midnight belong to their own day', () => {
    const notes = [
      on('14', '18:50', four()),
      on('14', '22:00', [clock('finish', '21:50'), total(20)]),
      on('15', '07:00', [finding(['Sable'])]),
    ];
    expect(split(notes)).toEqual([[0, 1]]);
    expect(runs(notes).yard.map(({ day }) => day)).toEqual(['2027-01-15']);
  });

  test('a hook-up after midnight is a run of the new day', () => {
    const notes = [on('14', '22:50', [...four(), mark(3)]), on('15', '00:30', four('Sable', 'Heron', 'Fern', 'Birch'))];
    expect(split(notes)).toEqual([[0], [1]]);
  });

  test('a very long silence set by the kennel does not tie one day to the next', () => {
    const notes = [on('14', '15:00', [...four(), mark(20)]), on('15', '07:00', [temperature(-20)])];
    expect(split(notes, {}, 24)).toEqual([[0]]);
  });
});

describe('what makes no run', () => {
  test('a day with yard notes only', () => {
    const out = runs([
      on('14', '08:00', [finding(['Moss']), intake(['Moss'], 'meal')]),
      on('14', '18:00', [
        clock('other', '18:00'),
        drop(['Pika'], 'home'),
        hitch(['Moss'], 'lead', { assertion: 'planned' }),
      ]),
    ]);
    expect(out.runs).toEqual([]);
    expect(out.yard.map(({ day, said }) => [day, said.map(({ entry }) => entry.kind)])).toEqual([
      ['2027-01-14', ['finding', 'intake']],
    ]);
  });

  test('a rest of two weeks told in the yard', () => {
    expect(runs([on('14', '09:00', [duration('stop', 20_160), finding(['Moss'])])]).runs).toEqual([]);
  });

  test('notes set aside, and entries proposed or removed', () => {
    const proposed = on('14', '08:50', four());
    for (const entry of proposed.entries) entry.state = 'proposed';
    const removed = on('14', '09:50', [mark(8)]);
    for (const entry of removed.entries) entry.state = 'removed';
    expect(runs([proposed, removed, on('14', '12:00', [total(20)], { aside: true })]).runs).toEqual([]);
  });
});

describe('by hand', () => {
  const notes = [
    on('14', '08:50', [...four(), clock('start', '09:00')]),
    on('14', '10:00', [mark(8)]),
    on('14', '11:10', [clock('finish', '11:00'), total(14)]),
    on('14', '13:15', [...four(), clock('start', '13:15')]),
    on('14', '14:00', [mark(6)]),
    on('14', '15:05', [clock('finish', '15:00'), total(12)]),
  ];
  const of = (n: number) => notes[n]?.id as string;

  test('a cut starts a run, a join takes it away again', () => {
    expect(split(notes, { cutBefore: [of(1)] })).toEqual([[0], [1, 2], [3, 4, 5]]);
    expect(split(notes, { joinBefore: [of(3)] })).toEqual([[0, 1, 2, 3, 4, 5]]);
    expect(split(notes, { joinBefore: [of(3)], cutBefore: [of(3)] })).toEqual(split(notes));
  });

  test('a join of a note that does not begin a run does nothing', () => {
    expect(split(notes, { joinBefore: [of(4)] })).toEqual(split(notes));
  });

  test('three runs joined one to the next are one', () => {
    expect(split(notes, { cutBefore: [of(1)], joinBefore: [of(3)] })).toEqual([[0], [1, 2, 3, 4, 5]]);
    const three = [...notes, on('14', '17:00', [...four(), clock('start', '17:00')])];
    expect(split(three, { joinBefore: [of(3), three[6]?.id as string] })).toEqual([[0, 1, 2, 3, 4, 5, 6]]);
  });

  test('a join goes to the day before at most', () => {
    const far = [...notes, on('17', '09:00', [...four(), clock('start', '09:00')])];
    expect(split(far, { joinBefore: [far[6]?.id as string] })).toHaveLength(3);
    const near = [...notes, on('15', '09:00', [...four(), clock('start', '09:00')])];
    expect(split(near, { joinBefore: [near[6]?.id as string] })).toEqual([
      [0, 1, 2],
      [3, 4, 5, 6],
    ]);
  });

  test('a moved note is in the other run, and what it tells with it', () => {
    expect(split(notes, { moved: [{ note: of(4), toRunOf: of(0) }] })).toEqual([
      [0, 1, 2, 4],
      [3, 5],
    ]);
  });

  test('moves to nowhere, in a circle, or after one another', () => {
    const nowhere = '00000000-0000-7000-8000-ffffffffffff';
    expect(split(notes, { moved: [{ note: of(4), toRunOf: nowhere }] })).toEqual(split(notes));
    const circle = [
      { note: of(1), toRunOf: of(4) },
      { note: of(4), toRunOf: of(1) },
    ];
    expect(split(notes, { moved: circle })).toEqual(split(notes));
    const chain = [
      { note: of(4), toRunOf: of(1) },
      { note: of(5), toRunOf: of(4) },
    ];
    expect(split(notes, { moved: chain })).toEqual([[0, 1, 2, 4, 5], [3]]);
  });

  test('a note of another speaker’s can be moved into a run', () => {
    const mixed = [...notes.slice(0, 3), on('14', '10:30', [drop(['Otter'], 'loaded'), mark(10)], { by: 'Wren' })];
    expect(split(mixed)).toEqual([[0, 1, 2], [3]]);
    const record = run(mixed, { moved: [{ note: mixed[3]?.id as string, toRunOf: of(0) }] });
    expect(miles(record, 'Otter')).toBe(10);
    expect(miles(record, 'Moss')).toBe(14);
  });

  test('choices about notes that are gone do nothing', () => {
    const gone = '00000000-0000-7000-8000-ffffffffffff';
    const distances = [{ note: gone, value: 3, unit: 'mi' as const, at: '2027-01-14T20:00:00Z' }];
    expect(
      split(notes, { cutBefore: [gone], joinBefore: [gone], moved: [{ note: gone, toRunOf: of(0) }], distances }),
    ).toEqual(split(notes));
  });
});

test('a page with a date and no times: notes from noon on, clocks in them as told', () => {
  // The same-day clocks lie before and after the times the notes were given.
  const record = run([
    note('2027-01-14T12:00:00-09:00', four(), { source: 'import' }),
    note('2027-01-14T12:10:00-09:00', [clock('start', '13:50'), mark(2)], { source: 'import' }),
    note('2027-01-14T12:20:00-09:00', [mark(9), move(['Otter'], 'lead')], { source: 'import' }),
    note('2027-01-14T12:30:00-09:00', [clock('finish', '17:10'), total(31.5)], { source: 'import' }),
    note('2027-01-14T12:40:00-09:00', [finding(['Sable'])], { source: 'import' }),
  ]);
  expect(record.minutes).toBe(200);
  expect(inMiles(record.dogs.find(({ dog }) => dog === 'Otter')?.byPosition.lead)).toBe(22.5);
  expect(record.conflicts).toEqual([]);
});
