/** Seasons that fast-check makes up: any entries in any order, as unlikely as they come. */
import fc from 'fast-check';
import type { Entry } from '../../grammar/entry.ts';
import { ASSERTIONS, PAWS, POSITIONS } from '../../grammar/entry.ts';
import type { Note, ReviewedEntry, RunChoices, Season } from '../../server/model.ts';
import { id } from './build.ts';

export const DOGS = ['Juniper', 'Moss', 'Otter', 'Bramble', 'Tansy', 'Kodiak', 'Fern'];
const PEOPLE = ['Wren', 'Tobias'];
const some = fc.subarray(DOGS, { minLength: 1, maxLength: 4 });
const dogs = fc.oneof({ weight: 8, arbitrary: some }, { weight: 1, arbitrary: fc.constant(['*']) });
const optional = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });
const assertion = optional(
  fc.oneof({ weight: 4, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: fc.constantFrom(...ASSERTIONS) }),
);
const side = optional(fc.constantFrom('left' as const, 'right' as const));
const unit = fc.constantFrom('mi' as const, 'km' as const);
const length = fc.integer({ min: 0, max: 400 }).map((n) => n / 10);
const time = fc
  .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map(([h, m]) => `${String(h).padStart(2, '0')}:${String(m).padStart(2, '0')}`);

/** Any entry that run records look at. Fields that were not made are left out, as in a real one. */
export const entry: fc.Arbitrary<Entry> = fc
  .oneof(
    {
      weight: 4,
      arbitrary: fc.record({
        kind: fc.constant('hitch' as const),
        dogs,
        position: optional(fc.constantFrom(...POSITIONS)),
        side,
        driver: optional(fc.constantFrom(...PEOPLE)),
        assertion,
      }),
    },
    {
      weight: 2,
      arbitrary: fc.record({
        kind: fc.constant('move' as const),
        dogs,
        position: fc.constantFrom(...POSITIONS),
        side,
        assertion,
      }),
    },
    {
      weight: 2,
      arbitrary: fc.record({
        kind: fc.constant('drop' as const),
        dogs,
        manner: fc.constantFrom('dropped' as const, 'loaded' as const, 'home' as const),
        assertion,
      }),
    },
    {
      weight: 4,
      arbitrary: fc.record({
        kind: fc.constant('distance' as const),
        dogs: fc.constant([]),
        measure: fc.constantFrom(
          'total' as const,
          'mark' as const,
          'mark' as const,
          'leg' as const,
          'remaining' as const,
        ),
        value: length,
        unit,
        assertion,
      }),
    },
    {
      weight: 2,
      arbitrary: fc.record({
        kind: fc.constant('clock' as const),
        dogs: fc.constant([]),
        event: fc.constantFrom('start' as const, 'stop' as const, 'finish' as const, 'other' as const),
        time,
        assertion,
      }),
    },
    fc.record({
      kind: fc.constant('duration' as const),
      dogs: fc.constant([]),
      of: fc.constantFrom('run' as const, 'stop' as const, 'other' as const),
      minutes: fc.integer({ min: 1, max: 600 }),
      assertion,
    }),
    fc.record({
      kind: fc.constant('finding' as const),
      dogs,
      sign: fc.constantFrom('lame' as const, 'sore' as const),
      assertion,
    }),
    fc.record({
      kind: fc.constant('intake' as const),
      dogs,
      what: fc.constantFrom('snack' as const, 'meal' as const),
      took: fc.constant('all' as const),
      assertion,
    }),
    fc.record({
      kind: fc.constant('booties' as const),
      dogs,
      state: fc.constantFrom('on' as const, 'off' as const, 'lost' as const, 'torn' as const, 'changed' as const),
      paws: optional(fc.subarray([...PAWS], { minLength: 1 })),
      assertion,
    }),
    fc.record({
      kind: fc.constant('temperature' as const),
      dogs: fc.constant([]),
      value: fc.integer({ min: -40, max: 40 }),
      unit: fc.constantFrom('F' as const, 'C' as const),
      assertion,
    }),
  )
  .map(
    (made) => Object.fromEntries(Object.entries(made).filter(([, value]) => value !== undefined)) as unknown as Entry,
  );

const reviewed = fc.record({
  entry,
  state: fc.oneof(
    { weight: 6, arbitrary: fc.constant('accepted' as const) },
    { weight: 1, arbitrary: fc.constantFrom('proposed' as const, 'removed' as const) },
  ),
  spanned: fc.boolean(),
});

/** A note of one of six days; times to the quarter of an hour, so that some fall together. Entries stand in the text one after the other. */
const note = fc.record({
  day: fc.integer({ min: 10, max: 15 }),
  quarter: fc.integer({ min: 0, max: 95 }),
  by: optional(
    fc.oneof({ weight: 3, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: fc.constantFrom(...PEOPLE) }),
  ),
  aside: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
  entries: fc.array(reviewed, { maxLength: 6 }),
});

export const season: fc.Arbitrary<Season> = fc.array(note, { maxLength: 40 }).map((made) => {
  let entries = 0;
  const notes = made.map(({ day, quarter, by, aside, entries: row }, n): Note => {
    const clock = `${String(Math.floor(quarter / 4)).padStart(2, '0')}:${String((quarter % 4) * 15).padStart(2, '0')}`;
    const at = `2027-01-${day}T${clock}:00-09:00`;
    const words = row.map((_, i) => `words${i}`);
    return {
      id: id(n + 1),
      text: words.join(n % 2 ? '. ' : ' at '),
      at,
      received: at,
      aside,
      ...(by === undefined ? {} : { by }),
      unknownNames: [],
      history: [],
      entries: row.map(({ entry, state, spanned }, i): ReviewedEntry => {
        const start = words.slice(0, i).join(n % 2 ? '. ' : ' at ').length + (i > 0 ? (n % 2 ? 2 : 4) : 0);
        const span: [number, number] = [start, start + 6];
        return { id: id(1_000_000 + ++entries), entry: spanned ? { ...entry, span } : entry, from: 'read', state };
      }),
    };
  });
  return { schema: 1, season: '2026-27', notes, runs: { cutBefore: [], joinBefore: [], moved: [], distances: [] } };
});

/** A season with choices about some of its notes. */
export const seasonWithChoices: fc.Arbitrary<Season> = season.chain((made) => {
  if (made.notes.length === 0) return fc.constant(made);
  const one = fc.constantFrom(...made.notes.map(({ id }) => id));
  const choices: fc.Arbitrary<RunChoices> = fc.record({
    cutBefore: fc.array(one, { maxLength: 3 }),
    joinBefore: fc.array(one, { maxLength: 3 }),
    moved: fc.array(fc.record({ note: one, toRunOf: one }), { maxLength: 3 }),
    distances: fc.array(
      fc.record({
        note: one,
        value: fc.integer({ min: 1, max: 60 }),
        unit,
        at: fc.constantFrom('2027-01-20T10:00:00Z', '2027-01-21T10:00:00Z'),
      }),
      { maxLength: 2 },
    ),
  });
  return choices.map((runs) => ({ ...made, runs }));
});
