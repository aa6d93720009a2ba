/** How far each dog went, and where it stood: hand-worked examples. */
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../grammar/entry.ts';
import {
  clock,
  dogIn,
  drop,
  duration,
  finding,
  hitch,
  inMiles,
  kinds,
  leg,
  MILE,
  mark,
  miles,
  move,
  note,
  remaining,
  run,
  stretches,
  type TestEntry,
  total,
} from './build.ts';

const DAY = '2027-01-14';
/** Six dogs told at 8:50, on no side but the leaders'. */
const hookUp = (more: TestEntry[] = []) =>
  note(`${DAY}T08:50`, [
    hitch(['Juniper'], 'lead', { side: 'left' }),
    hitch(['Moss'], 'lead', { side: 'right' }),
    hitch(['Otter', 'Bramble'], 'swing'),
    hitch(['Tansy', 'Kodiak'], 'wheel'),
    ...more,
  ]);
const at = (time: string, entries: TestEntry[], text?: string) =>
  note(`${DAY}T${time}`, entries, text === undefined ? {} : { text });
const home = (length = 20) => at('12:00', [clock('finish', '11:55'), total(length)]);

describe('a dog that does not go all the way', () => {
  test('loaded at mile 12 of 20 it has 12 miles', () => {
    const text = 'Loaded Bramble at mile twelve, three legged.';
    const record = run([
      hookUp(),
      at(
        '10:40',
        [
          [drop(['Bramble'], 'loaded'), 'Loaded Bramble'],
          [mark(12), 'mile twelve'],
        ],
        text,
      ),
      home(20),
    ]);
    expect(inMiles(record.metres)).toBe(20);
    expect(record.metresFrom).toBe('total');
    expect(miles(record, 'Bramble')).toBe(12);
    expect(stretches(record, 'Bramble')).toEqual(['swing 0–12']);
    expect(dogIn(record, 'Bramble').left).toEqual({ manner: 'loaded', atMetres: 12 * MILE });
    expect(miles(record, 'Otter')).toBe(20);
    expect(stretches(record, 'Juniper')).toEqual(['lead left 0–20']);
    expect(record.conflicts).toEqual([]);
  });

  test('put back in at 15 it has 17', () => {
    const record = run([
      hookUp(),
      at('10:40', [drop(['Bramble'], 'loaded'), mark(12)]),
      at('11:00', [move(['Bramble'], 'team', { side: 'left' }), mark(15)]),
      home(20),
    ]);
    expect(miles(record, 'Bramble')).toBe(17);
    expect(stretches(record, 'Bramble')).toEqual(['swing 0–12', 'team left 15–20']);
    const bramble = dogIn(record, 'Bramble');
    expect(bramble.left).toBeUndefined();
    expect(inMiles(bramble.byPosition.swing)).toBe(12);
    expect(inMiles(bramble.byPosition.team)).toBe(5);
    expect(inMiles(bramble.bySide.unknown)).toBe(12);
    expect(inMiles(bramble.bySide.left)).toBe(5);
  });

  test('in and out again and again: 0–5, 8–12, 15–20 are 14 miles', () => {
    const record = run([
      hookUp(),
      at('09:30', [drop(['Otter'], 'loaded'), mark(5)]),
      at('09:50', [move(['Otter'], 'swing'), mark(8)]),
      at('10:20', [drop(['Otter'], 'loaded'), mark(12)]),
      at('10:40', [move(['Otter'], 'wheel'), mark(15)]),
      home(20),
    ]);
    expect(stretches(record, 'Otter')).toEqual(['swing 0–5', 'swing 8–12', 'wheel 15–20']);
    expect(miles(record, 'Otter')).toBe(14);
  });

  test('a dog changed in for a dropped one starts there', () => {
    const text = 'Left Moss at the road crossing, 14 miles in. Fern in for him, right lead.';
    const record = run([
      hookUp(),
      at(
        '10:50',
        [
          [drop(['Moss'], 'dropped'), 'Left Moss'],
          [mark(14), '14 miles in'],
          [move(['Fern'], 'lead', { side: 'right' }), 'Fern in for him'],
        ],
        text,
      ),
      home(20),
    ]);
    expect(miles(record, 'Moss')).toBe(14);
    expect(stretches(record, 'Fern')).toEqual(['lead right 14–20']);
    expect(record.conflicts).toEqual([]);
  });

  test('a dog left at home is not in, even if hitched before', () => {
    const record = run([
      hookUp(),
      at('08:55', [drop(['Bramble'], 'home'), hitch(['Fern'], 'swing')]),
      at('09:00', [clock('start', '09:00')]),
      home(20),
    ]);
    expect(record.dogs.map(({ dog }) => dog).sort()).toEqual(['Fern', 'Juniper', 'Kodiak', 'Moss', 'Otter', 'Tansy']);
    expect(record.conflicts).toEqual([]);
  });

  test('a drop that is only planned, or did not happen, changes nothing', () => {
    const entries: Entry[] = [
      drop(['Otter'], 'loaded', { assertion: 'planned' }),
      drop(['Moss'], 'loaded', { assertion: 'absent' }),
      hitch(['Fern'], 'wheel', { assertion: 'past' }),
      hitch(['Cricket'], 'wheel', { assertion: 'planned' }),
    ];
    const record = run([hookUp(), at('10:40', [mark(12), ...entries]), home(20)]);
    expect(miles(record, 'Otter')).toBe(20);
    expect(miles(record, 'Moss')).toBe(20);
    expect(record.dogs).toHaveLength(6);
  });
});

describe('changes of place', () => {
  test('a swap: each has its miles in both places', () => {
    const text = 'swapped otter and juniper at mile eight';
    const record = run([
      hookUp(),
      at(
        '10:00',
        [
          [move(['Otter'], 'lead', { side: 'left' }), 'otter'],
          [move(['Juniper'], 'swing'), 'juniper'],
          [mark(8), 'mile eight'],
        ],
        text,
      ),
      home(20),
    ]);
    expect(stretches(record, 'Otter')).toEqual(['swing 0–8', 'lead left 8–20']);
    expect(stretches(record, 'Juniper')).toEqual(['lead left 0–8', 'swing 8–20']);
    expect(record.conflicts).toEqual([]);
  });

  test('each change takes the mark it is told with, in every order of telling', () => {
    const cases: [string, [string, string], [string, string]][] = [
      [
        'Dropped Bramble at mile 12, put Fern in at mile 15.',
        ['Dropped Bramble', 'mile 12'],
        ['put Fern in', 'mile 15'],
      ],
      ['dropped bramble at mile 12 put fern in at mile 15', ['dropped bramble', 'mile 12'], ['put fern in', 'mile 15']],
      [
        'At mile 12 dropped Bramble, at mile 15 put Fern in.',
        ['dropped Bramble', 'mile 12'],
        ['put Fern in', 'mile 15'],
      ],
      ['at mile 12 dropped bramble at mile 15 put fern in', ['dropped bramble', 'mile 12'], ['put fern in', 'mile 15']],
      ['Mile 12. Dropped Bramble. Mile 15. Put Fern in.', ['Dropped Bramble', 'Mile 12'], ['Put Fern in', 'Mile 15']],
    ];
    for (const [text, [out, twelve], [into, fifteen]] of cases) {
      const entries: [Entry, string][] = [
        [drop(['Bramble'], 'dropped'), out],
        [mark(12), twelve],
        [move(['Fern'], 'swing'), into],
        [mark(15), fifteen],
      ];
      entries.sort((a, b) => text.indexOf(a[1]) - text.indexOf(b[1]));
      const record = run([hookUp(), at('11:00', entries, text), home(20)]);
      expect([text, miles(record, 'Bramble'), stretches(record, 'Fern')]).toEqual([text, 12, ['swing 15–20']]);
    }
  });

  test('a mark of something else in the note is not taken: the same sentence comes first', () => {
    const text = 'Mile 12: everybody snacked. Dropped Bramble at mile 15.';
    const record = run([
      hookUp(),
      at(
        '11:00',
        [
          [mark(12), 'Mile 12'],
          [drop(['Bramble'], 'dropped'), 'Dropped Bramble'],
          [mark(15), 'mile 15'],
        ],
        text,
      ),
      home(20),
    ]);
    expect(miles(record, 'Bramble')).toBe(15);
  });

  test('without a mark in the note the place is worked out between the marks before and after, and said to be so', () => {
    // Mile 4 at 9:30, mile 12 at 10:30; half way between in time is mile 8.
    const record = run([
      hookUp([clock('start', '09:00')]),
      at('09:30', [mark(4)]),
      at('10:00', [move(['Otter'], 'lead')]),
      at('10:30', [mark(12)]),
      home(20),
    ]);
    expect(stretches(record, 'Otter')).toEqual(['swing 0–8 about', 'lead 8–20 about']);
  });

  test('before the first mark it is worked out from the start, after the last one to the finish', () => {
    // Start 9:00, mile 6 at 10:00; finish 11:55, total 20. At 10:57.5 half of the last 14 miles are done.
    const record = run([
      hookUp([clock('start', '09:00')]),
      at('09:30', [drop(['Kodiak'], 'loaded')]),
      at('10:00', [mark(6)]),
      note(`${DAY}T10:57:30-09:00`, [drop(['Moss'], 'loaded')]),
      home(20),
    ]);
    expect(stretches(record, 'Kodiak')).toEqual(['wheel 0–3 about']);
    expect(stretches(record, 'Moss')).toEqual(['lead right 0–13 about']);
  });

  test('with nothing known behind it, the last mark before counts', () => {
    const record = run([hookUp(), at('10:00', [mark(9)]), at('11:00', [drop(['Moss'], 'loaded')])]);
    expect(record.metresFrom).toBe('last-mark');
    expect(stretches(record, 'Moss')).toEqual(['lead right 0–9 about']);
  });

  test('told twice before leaving, the later place counts; nothing is a conflict', () => {
    const record = run([
      hookUp(),
      at('08:56', [hitch(['Otter'], 'wheel')]),
      at('09:05', [clock('start', '09:00')]),
      home(20),
    ]);
    expect(stretches(record, 'Otter')).toEqual(['wheel 0–20']);
    expect(record.conflicts).toEqual([]);
  });

  test('"Tansy and Kody at wheel. Moved her up to swing", told in one breath before leaving, is swing', () => {
    const record = run([at('08:50', [hitch(['Tansy', 'Kodiak'], 'wheel'), move(['Tansy'], 'swing')]), home(20)]);
    expect(stretches(record, 'Tansy')).toEqual(['swing 0–20']);
    expect(record.conflicts).toEqual([]);
  });

  test('a hitch told on the trail: there from the start while the line-up is told in part, from there when it was told as a whole', () => {
    const part = run([
      at('08:50', [hitch(['Juniper', 'Moss'], 'lead')]),
      at('10:00', [mark(10), hitch(['Tansy', 'Kodiak'], 'wheel')]),
      home(20),
    ]);
    expect(miles(part, 'Tansy')).toBe(20);
    const whole = run([hookUp(), at('10:00', [mark(10), hitch(['Fern'], 'team')]), home(20)]);
    expect(stretches(whole, 'Fern')).toEqual(['team 10–20']);
  });

  test('a side told later completes the place from its beginning', () => {
    const record = run([hookUp(), at('10:00', [mark(10), hitch(['Otter'], 'swing', { side: 'right' })]), home(20)]);
    expect(stretches(record, 'Otter')).toEqual(['swing right 0–20']);
  });
});

describe('told afterwards', () => {
  test('a whole run told in the yard', () => {
    const text =
      'Hazel and Dash up front, Bear and Misty in wheel. Loaded Misty at mile 20. Back at 17:10, 31.5 miles.';
    const record = run([
      note(
        '2027-01-09T18:20',
        [
          [hitch(['Hazel', 'Dash'], 'lead'), 'Hazel and Dash up front'],
          [hitch(['Bear', 'Misty'], 'wheel'), 'Bear and Misty in wheel'],
          [drop(['Misty'], 'loaded'), 'Loaded Misty'],
          [mark(20), 'mile 20'],
          [clock('finish', '17:10'), '17:10'],
          [total(31.5), '31.5 miles'],
        ],
        { text },
      ),
    ]);
    expect(miles(record, 'Hazel')).toBe(31.5);
    expect(miles(record, 'Misty')).toBe(20);
    expect(record.finishedAt).toBe('2027-01-09T17:10:00-09:00');
    expect(record.conflicts).toEqual([]);
  });

  test('changes told backwards stand by their marks', () => {
    const text = 'Put Misty back in at mile 15, I had loaded her at mile 12. 20 miles.';
    const record = run([
      at('08:50', [hitch(['Hazel', 'Misty'], 'lead')]),
      at(
        '13:00',
        [
          [move(['Misty'], 'wheel'), 'Put Misty back in'],
          [mark(15), 'mile 15'],
          [drop(['Misty'], 'loaded'), 'loaded her'],
          [mark(12), 'mile 12'],
          [total(20), '20 miles'],
        ],
        text,
      ),
    ]);
    expect(stretches(record, 'Misty')).toEqual(['lead 0–12', 'wheel 15–20']);
    expect(miles(record, 'Misty')).toBe(17);
    expect(record.conflicts).toEqual([]);
  });

  test('a place told with its mark afterwards is better than one worked out', () => {
    const record = run([
      hookUp([clock('start', '09:00')]),
      at('10:00', [mark(10)]),
      at('10:30', [drop(['Moss'], 'loaded')]),
      at('11:00', [mark(16)]),
      at('12:00', [clock('finish', '11:55'), total(20), drop(['Moss'], 'loaded'), mark(12)]),
    ]);
    expect(stretches(record, 'Moss')).toEqual(['lead right 0–12']);
  });

  test('no mark, no time: the miles are left open and it is said', () => {
    const record = run([at('18:00', [hitch(['Hazel', 'Dash'], 'lead'), drop(['Dash'], 'loaded'), total(20)])]);
    expect(dogIn(record, 'Dash').metres).toBeUndefined();
    expect(dogIn(record, 'Dash').byPosition).toEqual({});
    expect(miles(record, 'Hazel')).toBe(20);
    expect(kinds(record)).toEqual(['unknown-place']);
  });

  test('a move without a place: all miles are the dog’s, by place they can’t be told apart', () => {
    const record = run([at('18:00', [hitch(['Hazel', 'Dash'], 'lead'), total(20), move(['Dash'], 'wheel')])]);
    expect(miles(record, 'Dash')).toBe(20);
    expect(inMiles(dogIn(record, 'Dash').byPosition.unknown)).toBe(20);
    expect(stretches(record, 'Dash')).toEqual(['lead 0–?', 'wheel ?–20']);
    expect(kinds(record)).toEqual(['unknown-place']);
  });
});

describe('how long the run was', () => {
  const lengthOf = (...rows: Entry[][]) => {
    const record = run([hookUp(), ...rows.map((entries, i) => at(`1${i}:00`, entries))]);
    return [inMiles(record.metres), record.metresFrom];
  };

  test('a total before anything else; of two the last', () => {
    expect(lengthOf([mark(8)], [total(28), mark(20)])).toEqual([28, 'total']);
    expect(lengthOf([total(28)], [total(30)])).toEqual([30, 'total']);
  });
  test('a total told for sure before one thought possible', () => {
    expect(lengthOf([total(28)], [total(30, 'mi', { assertion: 'possible' })])).toEqual([28, 'total']);
  });
  test('a planned total does not count', () => {
    expect(lengthOf([total(40, 'mi', { assertion: 'planned' }), mark(12)])).toEqual([12, 'last-mark']);
  });
  test('else the last mark', () => expect(lengthOf([mark(8)], [leg(6), mark(14)])).toEqual([14, 'last-mark']));
  test('else the legs', () => expect(lengthOf([leg(6)], [leg(7.5)])).toEqual([13.5, 'legs']));
  test('what remains is a mark when the total is known', () => {
    const record = run([hookUp(), at('10:40', [remaining(8), drop(['Moss'], 'loaded')]), home(20)]);
    expect(miles(record, 'Moss')).toBe(12);
    expect(stretches(record, 'Moss')).toEqual(['lead right 0–12']);
  });
  test('legs place what is told with them when no mark is', () => {
    const record = run([hookUp(), at('10:00', [leg(6), drop(['Moss'], 'loaded')]), at('11:00', [leg(7)])]);
    expect(miles(record, 'Moss')).toBe(6);
    expect(miles(record, 'Juniper')).toBe(13);
  });
  test('kilometres and metres', () => {
    const record = run([hookUp(), at('10:00', [total(26, 'km')])]);
    expect(record.metres).toBe(26_000);
    expect(run([at('10:00', [hitch(['Ember'], 'lead'), total(800, 'm')])]).metres).toBe(800);
  });
  test('a mark heard wrong does not lengthen the run nor move what comes after', () => {
    const record = run([
      hookUp(),
      at('09:30', [mark(5)]),
      at('10:00', [mark(28)]),
      at('10:30', [mark(12)]),
      at('11:00', [mark(16)]),
    ]);
    expect(inMiles(record.metres)).toBe(16);
    expect(kinds(record)).toEqual(['mark-goes-back']);
  });
});

describe('a length set by hand', () => {
  const byHand = (value: number, day = 1) => ({
    value,
    unit: 'mi' as const,
    why: 'GPS',
    at: `2027-01-1${day}T20:00:00Z`,
  });

  test('counts before all others, and what was said stays beside it', () => {
    const first = hookUp();
    const record = run([first, at('10:40', [drop(['Bramble'], 'loaded'), mark(12)]), home(20)], {
      distances: [{ note: first.id, ...byHand(22) }],
    });
    expect([inMiles(record.metres), record.metresFrom, inMiles(record.metresSaid), record.saidFrom]).toEqual([
      22,
      'corrected',
      20,
      'total',
    ]);
    expect(record.correction).toEqual(byHand(22));
    expect(miles(record, 'Juniper')).toBe(22);
    // Where a dog was loaded was told as a mark; a mark does not move with the length.
    expect(miles(record, 'Bramble')).toBe(12);
  });

  test('shorter than a mark: no dog has more than the run, and it is said', () => {
    const first = hookUp();
    const record = run([first, at('10:40', [drop(['Bramble'], 'loaded'), mark(12)])], {
      distances: [{ note: first.id, ...byHand(10) }],
    });
    expect(miles(record, 'Bramble')).toBe(10);
    expect([inMiles(record.metresSaid), record.saidFrom]).toEqual([12, 'last-mark']);
    expect(kinds(record)).toEqual(['mark-beyond-total']);
  });

  test('of two the one set last counts, whichever stands first', () => {
    const first = hookUp();
    const distances = [
      { note: first.id, ...byHand(22, 6) },
      { note: first.id, ...byHand(21, 5) },
    ];
    expect(inMiles(run([first, home()], { distances }).metres)).toBe(22);
  });

  test('settles two totals', () => {
    const first = hookUp();
    const record = run([first, home(20), at('18:00', [total(25)])], { distances: [{ note: first.id, ...byHand(22) }] });
    expect(record.conflicts).toEqual([]);
  });
});

describe('dogs nobody hitched', () => {
  test('loaded at mile 20 without a line-up: it ran from the start to there', () => {
    const record = run([
      at('10:00', [drop(['Bramble'], 'loaded'), mark(20), finding(['Bramble'])]),
      at('12:00', [total(31.5)]),
    ]);
    expect(stretches(record, 'Bramble')).toEqual(['0–20']);
    expect(kinds(record)).toEqual(['no-lineup']);
  });

  test('moved at mile 8 with no line-up told: in from the start, in a place nobody told', () => {
    const record = run([at('10:00', [move(['Otter'], 'lead'), mark(8)]), at('12:00', [total(20)])]);
    expect(stretches(record, 'Otter')).toEqual(['0–8 about', 'lead 8–20']);
    expect(kinds(record)).toEqual(['no-lineup']);
  });

  test('moved at mile 8 with a whole line-up told without it: it came in there', () => {
    const record = run([hookUp(), at('10:00', [move(['Fern'], 'team'), mark(8)]), home(20)]);
    expect(stretches(record, 'Fern')).toEqual(['team 8–20']);
  });
});

describe('time', () => {
  test('from start to finish, in proportion for a dog that was loaded', () => {
    const record = run([
      hookUp([clock('start', '09:00')]),
      at('10:40', [drop(['Bramble'], 'loaded'), mark(12)]),
      at('12:10', [clock('finish', '12:00'), total(20), duration('run', 170)]),
    ]);
    expect(record.minutes).toBe(180);
    expect(dogIn(record, 'Juniper').minutes).toBeCloseTo(180, 9);
    expect(dogIn(record, 'Bramble').minutes).toBeCloseTo(108, 9);
    expect([record.startedAt, record.finishedAt]).toEqual(['2027-01-14T09:00:00-09:00', '2027-01-14T12:00:00-09:00']);
  });

  test('else the time told; a dog in all the way has it even where no distance is', () => {
    const record = run([at('12:00', [hitch(['Trip']), duration('run', 25)])]);
    expect(record.minutes).toBe(25);
    expect(dogIn(record, 'Trip').minutes).toBe(25);
    expect(dogIn(record, 'Trip').metres).toBeUndefined();
  });
});

test('the place a dog stands in now is shown, though it has gone no way in it yet', () => {
  const record = run([hookUp(), at('10:00', [move(['Otter'], 'lead'), mark(8)])]);
  expect(stretches(record, 'Otter')).toEqual(['swing 0–8', 'lead 8–8']);
  expect(inMiles(dogIn(record, 'Otter').byPosition.swing)).toBe(8);
  expect(dogIn(record, 'Otter').byPosition.lead).toBeUndefined();
});
