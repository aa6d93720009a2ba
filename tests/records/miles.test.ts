/** How far each dog went: hand-worked examples. */
import { describe, expect, test } from 'vitest';
import {
  clock,
  dogIn,
  drop,
  duration,
  hitch,
  kinds,
  leg,
  METRIC,
  MILE,
  mark,
  miles,
  move,
  note,
  remaining,
  run,
  stretches,
  total,
} from './build.ts';

const DAY = '2027-01-14';
const hookUp = () =>
  note(`${DAY}T08:50`, [
    hitch(['Juniper'], 'lead', { side: 'left' }),
    hitch(['Moss'], 'lead', { side: 'right' }),
    hitch(['Otter', 'Bramble'], 'swing'),
    hitch(['Tansy', 'Kodiak'], 'wheel'),
  ]);

describe('a dog that does not go all the way', () => {
  test('loaded at mile 12 of 20 it has 12 miles', () => {
    const text = 'Loaded Bramble at mile twelve, three legged.';
    const record = run([
      hookUp(),
      note(
        `${DAY}T10:40`,
        [
          [drop(['Bramble'], 'loaded'), 'Loaded Bramble'],
          [mark(12), 'mile twelve'],
        ],
        { text },
      ),
      note(`${DAY}T12:00`, [clock('finish', '11:55'), total(20)]),
    ]);
    expect(record.metres).toBeCloseTo(20 * MILE, 6);
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
      note(`${DAY}T10:40`, [drop(['Bramble'], 'loaded'), mark(12)]),
      note(`${DAY}T11:00`, [move(['Bramble'], 'team', { side: 'left' }), mark(15)]),
      note(`${DAY}T12:00`, [clock('finish', '11:55'), total(20)]),
    ]);
    expect(miles(record, 'Bramble')).toBe(17);
    expect(stretches(record, 'Bramble')).toEqual(['swing 0–12', 'team left 15–20']);
    expect(dogIn(record, 'Bramble').left).toBeUndefined();
    expect(dogIn(record, 'Bramble').byPosition.swing).toBeCloseTo(12 * MILE, 6);
    expect(dogIn(record, 'Bramble').byPosition.team).toBeCloseTo(5 * MILE, 6);
    expect(dogIn(record, 'Bramble').bySide.left).toBeCloseTo(5 * MILE, 6);
  });
});
