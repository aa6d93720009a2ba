/** The whole way of the sample season: notebook → intake → grammar → everything accepted → run records, against figures worked out by hand. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EntryOf } from '../../grammar/entry.ts';
import { loadSample } from '../../server/import/load-sample.ts';
import type { Season } from '../../server/model.ts';
import { runsOf } from '../../server/records/index.ts';
import type { RunRecord } from '../../server/records/types.ts';
import { openStore } from '../../server/store/index.ts';
import { expected } from './expected.ts';

/** NIST Special Publication 811, appendix B.8. */
const MILE = 1609.344;

let folder: string;
let season: Season;
let runs: RunRecord[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'snackstop-sample-'));
  const loaded = await loadSample(folder, { waitingDays: 0 });
  expect(loaded.waiting).toBe(0);
  const store = await openStore(folder);
  const kennel = store.kennel();
  season = store.season(loaded.season);
  ({ runs } = runsOf(season, kennel.dogs, kennel.settings));
  await store.close();
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const own = 'own';
const of = (day: string, team: string) => runs.filter((run) => run.day === day && (run.driver ?? own) === team);
const miles = (metres: number | undefined) =>
  metres === undefined ? undefined : Math.round((metres / MILE) * 100) / 100;

describe('run records of the sample season', () => {
  it('a run for every team that was out, on its day, and no others', () => {
    const want = Object.entries(expected.totals).flatMap(([day, teams]) =>
      Object.keys(teams).map((team) => `${day} ${team}`),
    );
    expect(runs.map((run) => `${run.day} ${run.driver ?? own}`).sort()).toEqual(want.sort());
  });

  it('the length of every run', () => {
    const got = Object.fromEntries(runs.map((run) => [`${run.day} ${run.driver ?? own}`, miles(run.metres)]));
    const want = Object.entries(expected.totals).flatMap(([day, teams]) =>
      Object.entries(teams).map(([team, total]) => [`${day} ${team}`, total]),
    );
    expect(got).toEqual(Object.fromEntries(want));
  });

  it.each(expected.runs)('$day $team: $why', ({ day, team, miles: total, dogs, positions, byPosition }) => {
    const [run] = of(day, team);
    expect(miles(run?.metres)).toBe(total);
    expect(Object.fromEntries(run?.dogs.map((d) => [d.dog, miles(d.metres)]) ?? [])).toEqual(dogs);
    for (const [position, names] of Object.entries(positions ?? {}))
      expect(
        run?.dogs
          .filter((d) => d.stretches[0]?.position === position)
          .map((d) => d.dog)
          .sort(),
      ).toEqual([...names].sort());
    for (const [dog, parts] of Object.entries(byPosition ?? {})) {
      const got = run?.dogs.find((d) => d.dog === dog)?.byPosition ?? {};
      expect(Object.fromEntries(Object.entries(got).map(([k, v]) => [k, miles(v)]))).toEqual(parts);
    }
  });

  it('the first run of the young dog in each position', () => {
    for (const [dog, firsts] of Object.entries(expected.firstIn))
      for (const [position, day] of Object.entries(firsts)) {
        const days = runs.filter((run) =>
          run.dogs.some((d) => d.dog === dog && d.stretches.some((s) => s.position === position)),
        );
        expect(days.map((run) => run.day).sort()[0], `${dog} in ${position}`).toBe(day);
      }
  });

  it('a dog at home runs with nobody', () => {
    for (const [dog, { from, to }] of Object.entries(expected.home)) {
      const days = runs.filter((run) => run.dogs.some((d) => d.dog === dog)).map((run) => run.day);
      expect(days.filter((day) => day >= from && day <= to)).toEqual([]);
      expect(days.some((day) => day < from) && days.some((day) => day > to), dog).toBe(true);
    }
  });
});

describe('findings and weights of the sample season', () => {
  const accepted = () =>
    season.notes
      .flatMap((note) => note.entries.map(({ entry }) => ({ day: note.at.slice(0, 10), entry })))
      .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));

  it('the wrist that comes back: three times sore, three times well', () => {
    const { dog, part, side, episodes } = expected.wrist;
    const told = accepted().filter(
      (one): one is { day: string; entry: EntryOf<'finding'> } =>
        one.entry.kind === 'finding' &&
        one.entry.dogs.includes(dog) &&
        one.entry.part === part &&
        one.entry.side === side,
    );
    const days = (assertion: string) => [
      ...new Set(told.filter(({ entry }) => (entry.assertion ?? 'present') === assertion).map(({ day }) => day)),
    ];
    const sore = days('present');
    for (const { from, resolved } of episodes) {
      expect(sore).toContain(from);
      expect(days('resolved')).toContain(resolved);
    }
    const inside = (day: string) => episodes.some(({ from, resolved }) => from <= day && day < resolved);
    expect(sore.filter((day) => !inside(day))).toEqual([]);
  });

  it('the weights of the dog off her food', () => {
    for (const [dog, weights] of Object.entries(expected.weights)) {
      const got = accepted().flatMap(({ day, entry }) =>
        entry.kind === 'measure' && entry.quantity === 'weight' && entry.dogs.includes(dog) ? [[day, entry.value]] : [],
      );
      expect(Object.fromEntries(got)).toEqual(weights);
    }
  });
});
