/**
 * The team as mushers hitch it (common practice; no publication): pairs from the front are lead, swing, team, wheel; with eight
 * dogs two each; what a second driver hitches on another sled is another team and another run.
 */
import { describe, expect, test } from 'vitest';
import { lineupBefore } from '../../server/records/index.ts';
import { clock, hitch, inMiles, note, runs, total } from '../records/build.ts';

const PAIRS = [
  ['lead', ['Juniper', 'Moss']],
  ['swing', ['Otter', 'Bramble']],
  ['team', ['Sable', 'Heron']],
  ['wheel', ['Tansy', 'Kodiak']],
] as const;

describe('an eight-dog team told pair by pair, and a second driver with two dogs', () => {
  const notes = [
    ...PAIRS.map(([position, [left, right]], i) =>
      note(`2027-01-14T08:4${i}`, [
        hitch([left], position, { side: 'left' }),
        hitch([right], position, { side: 'right' }),
      ]),
    ),
    note('2027-01-14T08:50', [hitch(['Fern', 'Cricket'], undefined, { driver: 'Wren' }), clock('start', '08:50')]),
    note('2027-01-14T12:00', [clock('finish', '11:50'), total(24)]),
  ];
  const all = runs(notes).runs;

  test('is lead, swing, team and wheel, two each, one on either side', () => {
    const [own] = all;
    const seats = own?.dogs.map(({ dog, stretches: [first] }) => [dog, first?.position, first?.side]);
    expect(seats).toEqual(
      PAIRS.flatMap(([position, [left, right]]) => [
        [left, position, 'left'],
        [right, position, 'right'],
      ]),
    );
    expect(own?.dogs.map(({ metres }) => inMiles(metres))).toEqual(Array(8).fill(24));
    expect(own?.conflicts).toEqual([]);
  });

  test('the second driver’s two dogs are a run of their own', () => {
    expect(all.map(({ driver, dogs }) => [driver, dogs.map(({ dog }) => dog)])).toEqual([
      [undefined, ['Juniper', 'Moss', 'Otter', 'Bramble', 'Sable', 'Heron', 'Tansy', 'Kodiak']],
      ['Wren', ['Cricket', 'Fern']],
    ]);
  });

  test('on the gangline stand the eight', () => {
    const now = lineupBefore(notes, '2027-01-14T09:30:00-09:00', []);
    expect(now.map(({ position }) => position)).toEqual([
      'lead',
      'lead',
      'swing',
      'swing',
      'team',
      'team',
      'wheel',
      'wheel',
    ]);
  });
});
