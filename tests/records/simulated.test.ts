/**
 * Runs that are driven first, step by step, and then told: what comes out of the notes has to be what was driven. The driving knows nothing
 * of notes; it moves each dog on by a hundred metres at a time and counts.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Entry, POSITIONS, type Position } from '../../grammar/entry.ts';
import { settingsSchema } from '../../server/model.ts';
import { clock, drop, hitch, mark, move, note, run, total } from './build.ts';

const STEP = 100;
/** However long nothing happens on the way, it is one run. */
const NEVER_SILENT = settingsSchema.parse({ runGapHours: 24 });
const DOGS = ['Juniper', 'Moss', 'Otter', 'Bramble', 'Tansy', 'Kodiak'];
/** Dogs that may come in for others on the way. */
const SPARE = ['Fern', 'Cricket'];

interface Change {
  at: number;
  dog: string;
  to: Position | 'out';
}

/** A run: its length and the changes on the way, in steps. */
const driven = fc
  .record({
    length: fc.integer({ min: 20, max: 900 }),
    changes: fc.array(
      fc.record({
        at: fc.integer({ min: 1, max: 899 }),
        dog: fc.constantFrom(...DOGS, ...SPARE),
        to: fc.constantFrom(...POSITIONS, 'out' as const),
      }),
      { maxLength: 12 },
    ),
  })
  .map(({ length, changes }) => ({
    length,
    changes: changes.filter(({ at }) => at < length).sort((a, b) => a.at - b.at),
  }));

const START: Position[] = ['lead', 'lead', 'swing', 'swing', 'wheel', 'wheel'];

/** Drives a run and counts each dog's metres by position. Changes that can't happen (out when out) are left out of the telling. */
function drive(length: number, changes: readonly Change[]) {
  const place = new Map<string, Position>(DOGS.map((dog, i) => [dog, START[i] as Position]));
  const metres = new Map<string, Partial<Record<Position, number>>>();
  const told: Change[] = [];
  for (let step = 0; step < length; step++) {
    for (const change of changes.filter(({ at }) => at === step)) {
      if ((place.get(change.dog) ?? 'out') === change.to) continue;
      if (told.some(({ at, dog }) => at === step && dog === change.dog)) continue;
      if (change.to === 'out') place.delete(change.dog);
      else place.set(change.dog, change.to);
      told.push(change);
    }
    for (const [dog, position] of place) {
      const sums = metres.get(dog) ?? {};
      sums[position] = (sums[position] ?? 0) + STEP;
      metres.set(dog, sums);
    }
  }
  return { metres, told };
}

/** Minutes after 8:00 as a clock. */
const timeAt = (minutes: number) =>
  `${String(8 + Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

function tell(length: number, told: readonly Change[]) {
  const hookUp = note(
    `2027-01-14T07:50`,
    POSITIONS.flatMap((position) => {
      const dogs = DOGS.filter((_, i) => START[i] === position);
      return dogs.length > 0 ? [hitch(dogs, position)] : [];
    }),
  );
  // Half a minute a step at most, so that a day holds it.
  const notes = [...new Set(told.map(({ at }) => at))].map((at) => {
    const entries = told
      .filter((change) => change.at === at)
      .map(({ dog, to }): Entry => (to === 'out' ? drop([dog], 'loaded') : move([dog], to)));
    return note(`2027-01-14T${timeAt(Math.ceil(at / 2))}`, [...entries, mark((at * STEP) / 1000, 'km')]);
  });
  const end = note('2027-01-14T20:00', [clock('finish', '19:55'), total((length * STEP) / 1000, 'km')]);
  return [hookUp, ...notes, end];
}

test('what was driven is what is counted, by dog and by position', () => {
  fc.assert(
    fc.property(driven, fc.nat(), ({ length, changes }, turn) => {
      const { metres, told } = drive(length, changes);
      const notes = tell(length, told);
      const turned = [...notes.slice(turn % notes.length), ...notes.slice(0, turn % notes.length)];
      const record = run(turned, {}, [], NEVER_SILENT);
      expect(record.metres).toBeCloseTo(length * STEP, 5);
      const counted = new Map(record.dogs.map(({ dog, byPosition }) => [dog, byPosition]));
      expect([...counted.keys()].sort()).toEqual([...metres.keys()].sort());
      for (const [dog, sums] of metres) {
        for (const position of POSITIONS) expect(counted.get(dog)?.[position] ?? 0).toBeCloseTo(sums[position] ?? 0, 5);
        expect(counted.get(dog)?.unknown).toBeUndefined();
        const whole = Object.values(sums).reduce((sum, one) => sum + one, 0);
        expect(record.dogs.find((one) => one.dog === dog)?.metres).toBeCloseTo(whole, 5);
      }
    }),
    { numRuns: 300 },
  );
});
