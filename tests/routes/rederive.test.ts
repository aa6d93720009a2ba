/** Computing the runs around what has changed gives what computing all of them gives. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../grammar/entry.ts';
import { type Dog, dogSchema, type Note, runChoicesSchema, type Season, settingsSchema } from '../../server/model.ts';
import { type Computed, deriveAll, rederive } from '../../server/routes/rederive.ts';

const id = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const DOGS: Dog[] = ['Juniper', 'Moss', 'Otter', 'Bramble'].map((name, i) =>
  dogSchema.parse({ id: id(900 + i), name, sex: 'F' }),
);
const SETTINGS = settingsSchema.parse({});

const dogsArb = fc.subarray(
  DOGS.map((dog) => dog.name),
  { minLength: 1 },
);
const time = fc.integer({ min: 0, max: 23 }).map((hour) => `${String(hour).padStart(2, '0')}:30`);
const entryArb: fc.Arbitrary<Entry> = fc.oneof(
  fc.record({
    kind: fc.constant('hitch' as const),
    dogs: dogsArb,
    position: fc.constantFrom('lead' as const, 'swing' as const),
  }),
  fc.record({ kind: fc.constant('hitch' as const), dogs: dogsArb, driver: fc.constant('Wren') }),
  fc.record({
    kind: fc.constant('drop' as const),
    dogs: dogsArb,
    manner: fc.constantFrom('loaded' as const, 'home' as const),
  }),
  fc.record({
    kind: fc.constant('distance' as const),
    dogs: fc.constant<string[]>([]),
    measure: fc.constantFrom('total' as const, 'mark' as const),
    value: fc.integer({ min: 1, max: 30 }),
    unit: fc.constant('mi' as const),
  }),
  fc.record({
    kind: fc.constant('clock' as const),
    dogs: fc.constant<string[]>([]),
    event: fc.constantFrom('start' as const, 'finish' as const),
    time,
  }),
  fc.record({ kind: fc.constant('finding' as const), dogs: dogsArb, sign: fc.constant('lame' as const) }),
  fc.record({
    kind: fc.constant('intake' as const),
    dogs: fc.constant<string[]>(['*']),
    what: fc.constant('snack' as const),
    took: fc.constant('all' as const),
  }),
);

/** A note on one of 16 days at any hour, so that runs go over midnight as well. */
const noteArb = fc.record({
  hour: fc.integer({ min: 0, max: 16 * 24 - 1 }),
  by: fc.constantFrom(undefined, undefined, undefined, 'Wren'),
  entries: fc.array(entryArb, { maxLength: 3 }),
  accepted: fc.boolean(),
});
type Made = typeof noteArb extends fc.Arbitrary<infer T> ? T : never;

function noteOf({ hour, by, entries, accepted }: Made, n: number): Note {
  const at = new Date(Date.UTC(2027, 0, 1, hour, n % 60)).toISOString().replace('.000Z', '-09:00');
  return {
    id: id(n),
    text: 'a note',
    at,
    ...(by ? { by } : {}),
    received: at,
    aside: false,
    entries: entries.map((entry, i) => ({
      id: id(1000 + n * 10 + i),
      entry,
      from: 'read',
      state: accepted ? 'accepted' : 'proposed',
    })),
    unknownNames: [],
    history: [],
  };
}
const changed = (note: Note, state: 'accepted' | 'proposed'): Note => ({
  ...note,
  entries: note.entries.map((entry) => ({ ...entry, state })),
});
const all = (season: Season): Computed => deriveAll(season, DOGS, SETTINGS);

const seasonArb = fc.record({
  notes: fc.array(noteArb, { minLength: 1, maxLength: 60 }),
  moved: fc.array(fc.tuple(fc.nat(59), fc.nat(59)), { maxLength: 2 }),
  joins: fc.array(fc.nat(59), { maxLength: 3 }),
  steps: fc.array(fc.oneof(fc.nat(59), noteArb), { minLength: 1, maxLength: 6 }),
});

describe('after changes of notes', () => {
  it('the runs and the yard are those that computing everything gives', () => {
    fc.assert(
      fc.property(seasonArb, ({ notes: made, moved, joins, steps }) => {
        const notes = made.map(noteOf);
        const pick = (n: number) => (notes[n % notes.length] as Note).id;
        const runs = runChoicesSchema.parse({
          joinBefore: joins.map(pick),
          moved: moved.map(([note, to]) => ({ note: pick(note), toRunOf: pick(to) })),
        });
        let season: Season = { schema: 1, season: '2026-27', notes, runs };
        let computed = all(season);
        for (const [i, step] of steps.entries()) {
          const next =
            typeof step === 'number'
              ? season.notes.map((note, n) =>
                  n === step % season.notes.length ? changed(note, i % 2 ? 'accepted' : 'proposed') : note,
                )
              : [...season.notes, noteOf(step, 200 + i)];
          const after = { ...season, notes: next };
          const near = rederive(season, computed, after, DOGS, SETTINGS);
          const full = all(after);
          expect(near).toEqual(full);
          season = after;
          computed = near as Computed;
        }
      }),
      { numRuns: 150 },
    );
  });

  it('what lies apart is taken over as it is', () => {
    const hitch: Entry = { kind: 'hitch', dogs: ['Juniper'], position: 'lead' };
    const notes = [0, 10, 20].map((day, n) =>
      noteOf({ hour: day * 24 + 9, by: undefined, entries: [hitch], accepted: true }, n),
    );
    const season: Season = { schema: 1, season: '2026-27', notes, runs: runChoicesSchema.parse({}) };
    const before = all(season);
    const [a, b, c] = notes as [Note, Note, Note];
    const after = rederive(season, before, { ...season, notes: [a, changed(b, 'proposed'), c] }, DOGS, SETTINGS);
    expect(after?.runs).toHaveLength(2);
    expect(after?.runs[0]).toBe(before.runs[0]);
    expect(after?.runs[1]).toBe(before.runs[2]);
    expect(rederive(season, before, season, DOGS, SETTINGS)).toBe(before);
  });

  it('leaves it where choices have changed, or a great many notes', () => {
    const notes = Array.from({ length: 50 }, (_, n) =>
      noteOf({ hour: n, by: undefined, entries: [], accepted: true }, n),
    );
    const season: Season = { schema: 1, season: '2026-27', notes, runs: runChoicesSchema.parse({}) };
    const before = all(season);
    expect(rederive(season, before, { ...season, runs: { ...season.runs } }, DOGS, SETTINGS)).toBeUndefined();
    expect(
      rederive(season, before, { ...season, notes: notes.map((note) => ({ ...note })) }, DOGS, SETTINGS),
    ).toBeUndefined();
    expect(rederive(season, before, { ...season, notes: notes.slice(1) }, DOGS, SETTINGS)).toBeUndefined();
  });
});
