/** The team on its gangline, and a dog's stretches in words. Pairing and order are common practice: lead, swing, team, wheel. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { RunDog, Stretch } from '../../../server/records/types.ts';
import { leftWords, stretchesWords, teamOf } from '../../../web/runs/team.ts';

const MILE = 1609.344; // NIST SP 811, appendix B.8
const dog = (name: string, ...stretches: Stretch[]): RunDog => ({
  dog: name,
  stretches,
  byPosition: {},
  bySide: {},
  findings: [],
  care: [],
  intake: [],
  booties: [],
  attitude: [],
  measures: [],
});
const start = { fromMetres: 0, toMetres: 20 * MILE };
const shown = (dogs: RunDog[]) =>
  teamOf(dogs).rows.map(({ position, left, right, centre }) => [position, left?.dog, right?.dog, centre?.dog]);

test('an eight-dog team stands in pairs, leaders first, told sides first', () => {
  const dogs = [
    dog('Tansy', { ...start, position: 'wheel' }),
    dog('Kodiak', { ...start, position: 'wheel', side: 'left' }),
    dog('Fern', { ...start, position: 'team' }),
    dog('Cricket', { ...start, position: 'team' }),
    dog('Otter', { ...start, position: 'swing', side: 'right' }),
    dog('Bramble', { ...start, position: 'swing' }),
    dog('Juniper', { ...start, position: 'lead' }),
    dog('Moss', { ...start, position: 'lead' }),
  ];
  expect(shown(dogs)).toEqual([
    ['lead', 'Juniper', 'Moss', undefined],
    ['swing', 'Bramble', 'Otter', undefined],
    ['team', 'Fern', 'Cricket', undefined],
    ['wheel', 'Kodiak', 'Tansy', undefined],
  ]);
});

test('a single leader stands on the line, a dog told left stands left alone', () => {
  expect(shown([dog('Vega', { ...start, position: 'lead' })])).toEqual([['lead', undefined, undefined, 'Vega']]);
  expect(shown([dog('Orion', { ...start, position: 'wheel', side: 'left' })])).toEqual([
    ['wheel', 'Orion', undefined, undefined],
  ]);
});

test('a dog put in on the way is told apart; a dog without a place stands before the wheel', () => {
  const team = teamOf([
    dog('Otter', { position: 'lead', fromMetres: 5 * MILE }),
    dog('Moss', start),
    dog('Tansy', { ...start, position: 'wheel' }),
  ]);
  expect(team.later.map((one) => one.dog)).toEqual(['Otter']);
  expect(team.rows.map((row) => row.position)).toEqual(['unknown', 'wheel']);
});

test('every dog stands in the picture once, whatever was told of it', () => {
  const told = fc.record({
    position: fc.option(fc.constantFrom('lead' as const, 'swing' as const, 'team' as const, 'wheel' as const), {
      nil: undefined,
    }),
    side: fc.option(fc.constantFrom('left' as const, 'right' as const), { nil: undefined }),
    fromMetres: fc.option(fc.constantFrom(0, 3000), { nil: undefined }),
  });
  fc.assert(
    fc.property(fc.array(fc.option(told, { nil: undefined }), { maxLength: 20 }), (stretches) => {
      const dogs = stretches.map((stretch, i) => (stretch ? dog(`Dog ${i}`, stretch) : dog(`Dog ${i}`)));
      const { rows, later } = teamOf(dogs);
      const drawn = [...rows.flatMap((row) => [row.left, row.right, row.centre]), ...later].flatMap((d) =>
        d ? [d.dog] : [],
      );
      expect(drawn.sort()).toEqual(dogs.map((d) => d.dog).sort());
      for (const { left, right } of rows) {
        expect(left?.stretches[0]?.side).not.toBe('right');
        expect(right?.stretches[0]?.side).not.toBe('left');
      }
    }),
  );
});

test('stretches in words', () => {
  const run = 20 * MILE;
  expect(stretchesWords(dog('Juniper', { ...start, position: 'lead', side: 'left' }), run, 'imperial')).toBe(
    'left lead',
  );
  expect(
    stretchesWords(
      dog(
        'Otter',
        { position: 'swing', fromMetres: 0, toMetres: 12 * MILE },
        { position: 'lead', fromMetres: 12 * MILE, toMetres: run },
      ),
      run,
      'imperial',
    ),
  ).toBe('swing 0–12 mi, then lead 12–20 mi');
  expect(
    stretchesWords(dog('Moss', { position: 'team', fromMetres: 0, toMetres: 8000, estimated: true }), 20_000, 'metric'),
  ).toBe('team about 0–about 8 km');
  expect(leftWords({ ...dog('Bramble'), left: { manner: 'loaded', atMetres: 12 * MILE } }, 'imperial')).toBe(
    'loaded at 12 mi',
  );
});
