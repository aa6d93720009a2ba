/** A dog's season against a plain recomputation that goes through all runs and all findings anew. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { storyOf } from '../../server/dog/index.ts';
import { dayNumber, dayOf, indexLoad } from '../../server/load/index.ts';
import type { Dog } from '../../server/model.ts';
import type { RunRecord, YardRecord } from '../../server/records/types.ts';
import { episodesOf, type WatchRun } from '../../server/watch/index.ts';
import { note, runWith, yardWith } from '../watch/build.ts';

const FIRST = dayNumber('2026-05-20');
const SPAN = 160;
const DOGS = ['Juniper', 'Moss'] as const;
const FINDINGS = [
  'wrist left sore',
  'wrist left any resolved',
  'wrist left sore possible',
  'pad left front cut',
  'wrist sore',
];

const day = fc.integer({ min: 0, max: SPAN }).map((n) => dayOf(FIRST + n));
const runs = fc.array(
  fc
    .record({
      day,
      dogs: fc.subarray([...DOGS], { minLength: 1 }),
      metres: fc.integer({ min: 1, max: 90_000 }),
      told: fc.option(fc.constantFrom(...FINDINGS), { nil: undefined }),
    })
    .map(({ day, dogs, metres, told }): WatchRun => {
      const went = Object.fromEntries(dogs.map((dog) => [dog, metres]));
      return told ? runWith(day, went, note(day, dogs[0] as string, told)) : runWith(day, went);
    }),
  { maxLength: 60 },
);
const yard = fc.array(
  fc
    .record({ day, dog: fc.constantFrom(...DOGS), told: fc.constantFrom(...FINDINGS) })
    .map(({ day, dog, told }): YardRecord => yardWith(day, note(day, dog, told))),
  { maxLength: 30 },
);
const LISTS = { care: [], intake: [], booties: [], attitude: [], measures: [] };

function story(all: WatchRun[], yardAll: YardRecord[], on: string) {
  const inSeason = (one: { day: string }) => one.day >= '2026-07-01';
  const load = indexLoad(all);
  const records = all.map((one) => ({ ...one, dogs: one.dogs.map((dog) => ({ ...LISTS, ...dog })) }));
  return storyOf({
    dog: { id: 'j', name: 'Juniper', sex: 'F', aliases: [], formerNames: [], heard: [], retired: false } as Dog,
    season: '2026-27',
    on,
    told: { runs: records.filter(inSeason) as unknown as RunRecord[], yard: yardAll.filter(inSeason) },
    load,
    watch: episodesOf(all, yardAll, ['Juniper'], { on }, load),
    notes: [],
    runsOfNote: new Map(),
    isDog: () => true,
  });
}

it('days, sums and means equal those of the plain list of runs, the season before counted in', () => {
  fc.assert(
    fc.property(runs, fc.integer({ min: 45, max: SPAN + 20 }), (all, at) => {
      const on = dayOf(FIRST + at);
      const mine = all.filter((one) => one.day <= on && one.dogs.some((dog) => dog.dog === 'Juniper'));
      const first = mine.map((one) => one.day).sort()[0];
      const begin = first === undefined ? undefined : first > '2026-07-01' ? first : '2026-07-01';
      const metresOf = (from: number, to: number) =>
        mine
          .filter((one) => dayNumber(one.day) >= from && dayNumber(one.day) <= to)
          .reduce((sum, one) => sum + (one.dogs.find((dog) => dog.dog === 'Juniper')?.metres ?? 0), 0);
      const told = story(all, [], on);
      expect(told.days.map((one) => one.day)).toEqual(
        begin === undefined
          ? []
          : Array.from({ length: dayNumber(on) - dayNumber(begin) + 1 }, (_, i) => dayOf(dayNumber(begin) + i)),
      );
      for (const one of told.days) {
        const n = dayNumber(one.day);
        expect(one.metres).toBe(metresOf(n, n));
        expect(one.sum7).toBe(metresOf(n - 6, n));
        const recorded = n - dayNumber(first as string) + 1;
        expect(one.meanWeek28).toBe(recorded < 28 ? undefined : (metresOf(n - 27, n) * 7) / 28);
      }
      expect(told.runs.length).toBe(mine.filter((one) => one.day >= '2026-07-01').length);
      expect(told.runs.reduce((sum, one) => sum + (one.metres ?? 0), 0)).toBe(
        told.days.reduce((sum, one) => sum + one.metres, 0),
      );
    }),
    { numRuns: 120 },
  );
});

it('sites count each episode and each day once, and every sight of the season is in one of them', () => {
  fc.assert(
    fc.property(runs, yard, fc.integer({ min: 45, max: SPAN + 20 }), (all, yardAll, at) => {
      const on = dayOf(FIRST + at);
      const told = story(all, yardAll, on);
      expect(told.sites.reduce((sum, one) => sum + one.episodes + one.doubtful, 0)).toBe(told.episodes.length);
      expect(told.sites.filter((one) => one.open).length).toBe(
        new Set(told.episodes.filter((one) => one.state === 'open').map((one) => one.site.key)).size,
      );
      const sights = [
        ...all.flatMap((one) =>
          one.dogs
            .filter((dog) => dog.dog === 'Juniper')
            .flatMap((dog) => dog.findings.map((said) => ({ said, day: one.day }))),
        ),
        ...yardAll.flatMap((one) =>
          one.said.filter((said) => said.dogs.includes('Juniper')).map((said) => ({ said, day: one.day })),
        ),
      ].filter(({ said, day }) => {
        const { entry } = said;
        const as = entry.assertion ?? 'present';
        return entry.kind === 'finding' && (as === 'present' || as === 'possible') && day >= '2026-07-01' && day <= on;
      });
      const plain = new Map<string, Set<string>>();
      for (const { said, day } of sights) {
        const { part, side, end } = said.entry as { part?: string; side?: string; end?: string };
        const key = [part, side ?? '', end ?? ''].join('|');
        plain.set(key, (plain.get(key) ?? new Set()).add(day));
      }
      const counted = told.sites.filter((one) => one.days.length > 0);
      expect(new Map(counted.map((one) => [one.site.key, one.days.join()]))).toEqual(
        new Map([...plain].map(([key, days]) => [key, [...days].sort().join()])),
      );
      // Numbers on a site go up by one through the season, and each but the first knows what it follows.
      for (const { site } of told.sites) {
        const numbers = told.episodes
          .filter((one) => one.site.key === site.key && one.season === '2026-27' && !one.doubtful)
          .sort((a, b) => (a.from < b.from ? -1 : 1));
        expect(numbers.map((one) => one.number)).toEqual(numbers.map((_, i) => i + 1));
        for (const one of numbers.slice(1)) expect(one.sinceBefore).toBeDefined();
      }
    }),
    { numRuns: 120 },
  );
});
