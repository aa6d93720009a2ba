/** What holds for every season, however unlikely. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry, Kind } from '../../grammar/entry.ts';
import type { Note, ReviewedEntry, Season } from '../../server/model.ts';
import { type RunDog, type RunRecord, runsOf } from '../../server/records/index.ts';
import { DOGS, entry, season, seasonWithChoices } from './arbitrary.ts';
import { dog, id, SETTINGS } from './build.ts';

const ROSTER = DOGS.map((name) => dog(name));
const of = (one: Season) => runsOf(one, ROSTER, SETTINGS);
const close = (a: number, b: number) => Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(a), Math.abs(b));
const sum = (values: Iterable<number>) => [...values].reduce((total, one) => total + one, 0);
const RUNS = { numRuns: 250 };

function eachDog(made: Season, check: (dog: RunDog, run: RunRecord) => void): void {
  for (const run of of(made).runs) for (const one of run.dogs) check(one, run);
}

describe('miles', () => {
  test('by position and by side they add up to the dog’s miles', () => {
    fc.assert(
      fc.property(seasonWithChoices, (made) => {
        eachDog(made, ({ metres, byPosition, bySide }) => {
          expect(close(sum(Object.values(byPosition)), metres ?? 0)).toBe(true);
          expect(close(sum(Object.values(bySide)), metres ?? 0)).toBe(true);
        });
      }),
      RUNS,
    );
  });

  test('no dog exceeds the run; its stretches lie in it, one after the other', () => {
    fc.assert(
      fc.property(seasonWithChoices, (made) => {
        eachDog(made, ({ metres, stretches, metresBooted, minutes }, run) => {
          const end = run.metres ?? Number.POSITIVE_INFINITY;
          expect(metres ?? 0).toBeLessThanOrEqual(end + 1e-6);
          expect(metres ?? 0).toBeGreaterThanOrEqual(0);
          expect(metresBooted ?? 0).toBeLessThanOrEqual((metres ?? 0) + 1e-6);
          expect(minutes ?? 0).toBeLessThanOrEqual((run.minutes ?? 0) + 1e-6);
          expect(stretches.length).toBeGreaterThan(0);
          let reached = 0;
          for (const { fromMetres, toMetres } of stretches) {
            if (fromMetres !== undefined) expect(fromMetres).toBeGreaterThanOrEqual(reached);
            reached = Math.max(reached, fromMetres ?? 0);
            if (toMetres !== undefined) expect(toMetres).toBeGreaterThanOrEqual(reached);
            reached = Math.max(reached, toMetres ?? 0);
          }
          expect(reached).toBeLessThanOrEqual(end + 1e-6);
        });
      }),
      RUNS,
    );
  });

  test('twice every distance told is twice every dog’s miles', () => {
    fc.assert(
      fc.property(season, (made) => {
        const doubled = withEntries(made, (one) => (one.kind === 'distance' ? { ...one, value: one.value * 2 } : one));
        const [once, twice] = [of(made).runs, of(doubled).runs];
        // A floor of ten metres below which two totals are the same, and one metre for two places, do not double.
        fc.pre(once.length === twice.length);
        once.forEach((run, i) => {
          const other = twice[i] as RunRecord;
          expect(close((run.metres ?? 0) * 2, other.metres ?? 0)).toBe(true);
          run.dogs.forEach((one, j) => {
            expect(other.dogs[j]?.dog).toBe(one.dog);
            expect(close((one.metres ?? 0) * 2, other.dogs[j]?.metres ?? 0)).toBe(true);
          });
        });
      }),
      RUNS,
    );
  });

  test('a length set by hand: who was in to the end has the difference, nobody has more than it', () => {
    fc.assert(
      fc.property(season, fc.integer({ min: 1, max: 80 }), fc.nat(), (made, value, pick) => {
        const all = of(made).runs;
        const run = all[pick % Math.max(1, all.length)];
        fc.pre(run !== undefined);
        const distance = { note: run.notes[0] as string, value, unit: 'km' as const, at: '2027-02-01T00:00:00Z' };
        const distances = [run.driver === undefined ? distance : { ...distance, driver: run.driver }];
        const after = of({ ...made, runs: { ...made.runs, distances } }).runs;
        const changed = after.filter(({ metresFrom }) => metresFrom === 'corrected');
        expect(changed.map(({ metres }) => metres)).toEqual([value * 1000]);
        expect(changed[0]?.metresSaid).toBe(all.find(({ id }) => id === changed[0]?.id)?.metres);
        changed[0]?.dogs.forEach((dog) => {
          expect(dog.metres ?? 0).toBeLessThanOrEqual(value * 1000 + 1e-6);
          const [only, ...more] = dog.stretches;
          if (!dog.left && more.length === 0 && only?.fromMetres === 0) expect(dog.metres).toBe(value * 1000);
          // A dog that had left at a mark told within both lengths did not run farther or less.
          const was = all.find(({ id }) => id === changed[0]?.id)?.dogs.find((one) => one.dog === dog.dog);
          const told = was?.stretches.every(
            ({ toMetres = Infinity, estimated }) => !estimated && toMetres < Math.min(value * 1000, run.metres ?? 0),
          );
          if (was?.left && told && !remains(made)) expect(dog.metres).toBe(was.metres);
        });
        // All other runs are as they were.
        expect(after.filter(({ id }) => id !== changed[0]?.id)).toEqual(all.filter(({ id }) => id !== changed[0]?.id));
      }),
      RUNS,
    );
  });
});

describe('what counts', () => {
  test('the order in which notes arrive does not matter', () => {
    fc.assert(
      fc.property(
        seasonWithChoices.chain((made) =>
          fc.tuple(fc.constant(made), fc.shuffledSubarray(made.notes, { minLength: made.notes.length })),
        ),
        ([made, notes]) => {
          expect(of({ ...made, notes })).toEqual(of(made));
        },
      ),
      RUNS,
    );
  });

  test('an entry that is not accepted has no effect, nor has one that is planned, nor a note aside', () => {
    fc.assert(
      fc.property(seasonWithChoices, (made) => {
        const bare = {
          ...made,
          notes: made.notes.map((note) => ({
            ...note,
            entries: note.entries.filter(({ state, entry }) => state === 'accepted' && entry.assertion !== 'planned'),
          })),
        };
        expect(of(bare)).toEqual(of(made));
        // An aside note can still be named by a choice, and has no more effect there.
        expect(of({ ...made, notes: made.notes.filter(({ aside }) => !aside) })).toEqual(of(made));
      }),
      RUNS,
    );
  });

  test('taking back an acceptance takes back its effect', () => {
    fc.assert(
      fc.property(seasonWithChoices, fc.array(entry, { minLength: 1, maxLength: 4 }), fc.nat(), (made, more, pick) => {
        fc.pre(made.notes.length > 0);
        const target = made.notes[pick % made.notes.length] as Note;
        const withMore = (state: ReviewedEntry['state']) => ({
          ...made,
          notes: made.notes.map((note) =>
            note === target
              ? {
                  ...note,
                  entries: [
                    ...note.entries,
                    ...more.map((entry, i) => ({ id: id(9_000_000 + i), entry, from: 'person' as const, state })),
                  ],
                }
              : note,
          ),
        });
        expect(of(withMore('proposed'))).toEqual(of(made));
        expect(of(withMore('removed'))).toEqual(of(made));
      }),
      RUNS,
    );
  });

  test('the same season twice gives the same, and the season is left as it was', () => {
    fc.assert(
      fc.property(seasonWithChoices, (made) => {
        const before = JSON.stringify(made);
        const first = of(made);
        expect(of(made)).toEqual(first);
        expect(JSON.stringify(made)).toBe(before);
      }),
      { numRuns: 100 },
    );
  });

  test('dogs that were renamed have the same record under their new names', () => {
    const renamed = DOGS.map((name, i) => dog(`Zora${i}`, { formerNames: [name] }));
    fc.assert(
      fc.property(seasonWithChoices, (made) => {
        const text = JSON.stringify(strip(runsOf(made, ROSTER, SETTINGS).runs));
        const as = DOGS.reduce((all, name, i) => all.replaceAll(`"${name}"`, `"Zora${i}"`), text);
        const miles = (runs: RunRecord[]) =>
          runs.map((run) => run.dogs.map(({ dog, metres }) => `${dog} ${metres}`).sort());
        expect(miles(runsOf(made, renamed, SETTINGS).runs)).toEqual(miles(JSON.parse(as)));
      }),
      { numRuns: 100 },
    );
  });
});

describe('runs', () => {
  test('a join, then a cut at the same note, gives back the same', () => {
    fc.assert(
      fc.property(season, fc.nat(), (made, pick) => {
        const all = of(made);
        const own = all.runs.filter(({ id }) => !id.includes('~'));
        fc.pre(own.length > 0);
        const first = own[pick % own.length]?.notes[0] as string;
        expect(of({ ...made, runs: { ...made.runs, joinBefore: [first], cutBefore: [first] } })).toEqual(all);
      }),
      RUNS,
    );
  });

  test('a moved note is in the run it was moved to', () => {
    fc.assert(
      fc.property(season, fc.nat(), fc.nat(), (made, a, b) => {
        const own = of(made).runs.filter(({ id }) => !id.includes('~'));
        fc.pre(own.length > 1);
        const from = own[a % own.length] as RunRecord;
        const to = own[b % own.length] as RunRecord;
        const note = from.notes.at(-1) as string;
        const goal = to.notes[0] as string;
        fc.pre(from !== to && note !== goal);
        const after = of({ ...made, runs: { ...made.runs, moved: [{ note, toRunOf: goal }] } }).runs;
        // The goal may also tell of somebody else's team, and stands in that run too; the moved note need not.
        const holding = after.filter(
          ({ id, notes, driver }) => !id.includes('~') && driver === to.driver && notes.includes(goal),
        );
        if (holding.length > 0) expect(holding.some(({ notes }) => notes.includes(note))).toBe(true);
      }),
      RUNS,
    );
  });

  test('ids are unique; a run is of the day of a note, its notes in the order of time, none twice', () => {
    fc.assert(
      fc.property(seasonWithChoices, (made) => {
        const { runs } = of(made);
        expect(new Set(runs.map(({ id }) => id)).size).toBe(runs.length);
        const known = new Map(made.notes.map((note) => [note.id, note]));
        for (const run of runs) {
          expect(run.notes.length).toBeGreaterThan(0);
          const keys = run.notes.map((id) => `${Date.parse(known.get(id)?.at ?? '')} ${id}`);
          expect(keys).toEqual([...new Set(keys)].sort());
          if (!run.id.includes('~')) expect(run.notes[0]).toBe(run.id);
        }
      }),
      RUNS,
    );
  });

  test('every accepted entry of a dog is in one place: its run, or the yard', () => {
    fc.assert(
      fc.property(seasonWithChoices, (made) => {
        const told: string[] = [];
        for (const note of made.notes) {
          if (note.aside) continue;
          for (const { id, entry, state } of note.entries)
            if (state === 'accepted' && counts(entry)) for (const dog of new Set(entry.dogs)) told.push(`${id} ${dog}`);
        }
        const { runs, yard } = of(made);
        const kept: string[] = [];
        for (const run of runs)
          for (const { dog, findings, intake, booties } of run.dogs)
            for (const said of [...findings, ...intake, ...booties])
              if (!said.entry.dogs.includes('*')) kept.push(`${said.id} ${dog}`);
        for (const { said } of yard)
          for (const { id, entry, dogs } of said)
            if (OF_DOGS.has(entry.kind) && !entry.dogs.includes('*')) for (const dog of dogs) kept.push(`${id} ${dog}`);
        expect(kept.sort()).toEqual(told.filter((one) => !one.endsWith('*')).sort());
      }),
      RUNS,
    );
  });
});

/** Whether any distance is told as what remains: it counts back from the end, and moves with it. */
function remains(made: Season): boolean {
  return made.notes.some(({ entries }) =>
    entries.some(({ entry }) => entry.kind === 'distance' && entry.measure === 'remaining'),
  );
}

const OF_DOGS: ReadonlySet<Kind> = new Set(['finding', 'intake', 'booties']);
/** A finding whatever is said of it but planned; food and booties where they are held to be so. */
function counts({ kind, assertion = 'present' }: Entry): boolean {
  if (kind === 'finding') return assertion !== 'planned';
  return OF_DOGS.has(kind) && (assertion === 'present' || assertion === 'possible');
}

function strip(runs: RunRecord[]): RunRecord[] {
  return runs.map((run) => ({ ...run, conflicts: [] }));
}

function withEntries(made: Season, change: (entry: Entry) => Entry): Season {
  return {
    ...made,
    notes: made.notes.map((note) => ({
      ...note,
      entries: note.entries.map((one) => ({ ...one, entry: change(one.entry) })),
    })),
  };
}
