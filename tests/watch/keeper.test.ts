/** The keeper: whatever changes from one call to the next, load and watch are what they are from scratch. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayOf, indexLoad, loadOf } from '../../server/load/index.ts';
import type { RunRecord, YardRecord } from '../../server/records/types.ts';
import { episodesOf, keeper, type SeasonRecords, watchOf } from '../../server/watch/index.ts';
import { dogIn, run } from '../load/build.ts';
import { note, tell } from './build.ts';

const DOGS = ['Juniper', 'Moss', 'Otter'];
const FIRST = 20_700;
const TOLD = [
  'wrist left sore',
  'wrist left any resolved',
  'lame severe',
  'web right front split possible',
  'lame absent',
];

const change = fc.record({
  day: fc.integer({ min: 0, max: 60 }),
  what: fc.constantFrom('run', 'yard', 'gone'),
  dog: fc.constantFrom(...DOGS),
  told: fc.option(fc.constantFrom(...TOLD), { nil: undefined }),
  metres: fc.integer({ min: 1000, max: 60_000 }),
});
type Change = typeof change extends fc.Arbitrary<infer T> ? T : never;

/** The records after a change: one run or yard record of a day is another object, comes, or goes. */
function after({ runs, yard }: SeasonRecords, { day, what, dog, told, metres }: Change): SeasonRecords {
  const on = dayOf(FIRST + day);
  const others = runs.filter((one) => one.day !== on);
  if (what === 'gone') return { runs: others, yard: yard.filter((one) => one.day !== on) };
  if (what === 'yard') {
    const record: YardRecord = tell(on, dog, ...(told ? [told] : []));
    return { runs, yard: [...yard.filter((one) => one.day !== on), record] };
  }
  const made = run(on, [dogIn(dog, metres)], { id: `run-${day}` });
  const dogs = made.dogs.map((one) => ({ ...one, findings: told ? note(on, dog, told) : [] }));
  return { runs: [...others, { ...made, dogs } as unknown as RunRecord], yard };
}

test('after every change the same as from scratch', () => {
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 25 }), (changes) => {
      const keep = keeper();
      const last: SeasonRecords = { runs: [], yard: [] };
      let now: SeasonRecords = { runs: [], yard: [] };
      for (const one of changes) {
        now = after(now, one);
        const { load, watch } = keep([last, now]);
        const on = dayOf(FIRST + 62);
        const settings = { on, silenceDays: 14 };
        expect(loadOf(load, DOGS, on)).toEqual(loadOf(indexLoad(now.runs), DOGS, on));
        expect(watchOf(watch, load, DOGS, settings)).toEqual(episodesOf(now.runs, now.yard, DOGS, settings));
      }
    }),
    { numRuns: 60 },
  );
});

test('nothing changed: the same object; a season that is another object: another one', () => {
  const keep = keeper();
  const season: SeasonRecords = { runs: [], yard: [] };
  const first = keep([season]);
  expect(keep([season])).toBe(first);
  expect(keep([{ ...season }])).not.toBe(first);
});
