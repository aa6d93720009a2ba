/** The index is only a short cut: brought up to date it is the one built anew, and it finds what asking every entry finds. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Entry, POSITIONS, SURFACES } from '../../grammar/entry.ts';
import type { Dog, Note, Season } from '../../server/model.ts';
import { runsOf } from '../../server/records/index.ts';
import { aroundNote } from '../../server/search/around.ts';
import { find, type Ground } from '../../server/search/find.ts';
import { IndexKeeper } from '../../server/search/keeper.ts';
import { ask, verdict } from '../../server/search/match.ts';
import { entriesOf } from '../../server/search/postings.ts';
import type { Query } from '../../server/search/query.ts';

const uuid = (n: number) => `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
const DOGS: Dog[] = ['Juniper', 'Moss', 'Otter', 'Tansy'].map((name, i) => ({
  id: uuid(1_000_000 + i),
  name,
  sex: i % 2 ? 'M' : 'F',
  aliases: [],
  formerNames: name === 'Moss' ? ['Fern'] : [],
  heard: [],
  retired: false,
}));
const SETTINGS = { kennel: '', units: 'imperial' as const, runGapHours: 5, silenceDays: 14 };
const PARTS = ['wrist', 'web', 'foot', 'shoulder'] as const;
const SIGNS = ['sore', 'split', 'lame', 'any'] as const;
const WORDS = 'sore wrist juniper moose river the trail was hard again today snack refused left bootie'.split(' ');

const dogs = fc.oneof(
  { weight: 5, arbitrary: fc.subarray(['Juniper', 'Fern', 'Moss', 'Otter', 'Tansy'], { minLength: 1, maxLength: 2 }) },
  { weight: 1, arbitrary: fc.constant(['*']) },
);
const assertion = fc.constantFrom(undefined, 'possible', 'absent', 'resolved', 'past', 'planned');
const side = fc.constantFrom(undefined, 'left', 'right', 'both');
const entry: fc.Arbitrary<Entry> = fc.oneof(
  fc.record({
    kind: fc.constant('finding'),
    dogs,
    part: fc.constantFrom(undefined, ...PARTS),
    side,
    sign: fc.constantFrom(...SIGNS),
    assertion,
  }),
  fc.record({
    kind: fc.constant('intake'),
    dogs,
    what: fc.constantFrom('snack', 'water'),
    took: fc.constantFrom('all', 'none'),
    assertion,
  }),
  fc.record({
    kind: fc.constant('booties'),
    dogs,
    state: fc.constantFrom('on', 'lost'),
    paws: fc.constantFrom(undefined, ['LF'], ['RH']),
    assertion,
  }),
  fc.record({ kind: fc.constant('hitch'), dogs, position: fc.constantFrom(...POSITIONS) }),
  fc.record({
    kind: fc.constant('trail'),
    dogs: fc.constant([]),
    surface: fc.constantFrom(...SURFACES.slice(0, 3)),
    assertion,
  }),
  fc.record({
    kind: fc.constant('distance'),
    dogs: fc.constant([]),
    measure: fc.constant('total'),
    value: fc.integer({ min: 1, max: 40 }),
    unit: fc.constant('mi'),
  }),
  fc.record({
    kind: fc.constant('temperature'),
    dogs: fc.constant([]),
    value: fc.integer({ min: -40, max: 30 }),
    unit: fc.constant('F'),
  }),
) as fc.Arbitrary<Entry>;

const note = (n: number): fc.Arbitrary<Note> =>
  fc
    .record({
      day: fc.integer({ min: 1, max: 12 }),
      hour: fc.integer({ min: 8, max: 11 }),
      words: fc.array(fc.constantFrom(...WORDS), { minLength: 1, maxLength: 8 }),
      aside: fc.boolean().map((b) => b && n % 5 === 0),
      entries: fc.array(fc.tuple(entry, fc.constantFrom('accepted', 'proposed', 'removed')), { maxLength: 4 }),
    })
    .map(({ day, hour, words, aside, entries }) => {
      const at = `2027-01-${String(day).padStart(2, '0')}T${String(hour).padStart(2, '0')}:00:00-09:00`;
      return {
        id: uuid(n),
        text: words.join(' '),
        at,
        received: at,
        aside,
        entries: entries.map(([one, state], i) => ({
          id: uuid(n * 100 + i),
          entry: one,
          from: 'read' as const,
          state: state as 'accepted',
        })),
        unknownNames: [],
        history: [],
      };
    });
const notes = fc
  .integer({ min: 0, max: 25 })
  .chain((size) => fc.tuple(...Array.from({ length: size }, (_, n) => note(n + 1))));

const query: fc.Arbitrary<Query> = fc.record(
  {
    dogs: fc.subarray(['Juniper', 'Moss', 'Otter'], { minLength: 1 }),
    parts: fc.subarray([...PARTS], { minLength: 1 }),
    side: fc.constantFrom('left', 'right', 'both'),
    signs: fc.subarray([...SIGNS], { minLength: 1 }),
    took: fc.constant(['none']),
    states: fc.constant(['lost']),
    positions: fc.subarray([...POSITIONS], { minLength: 1 }),
    surfaces: fc.constant(['icy']),
    kinds: fc.subarray(['finding', 'trail', 'intake'], { minLength: 1 }),
    amount: fc.constantFrom({ of: 'air', atMost: 0, unit: 'F' }, { of: 'distance', atLeast: 20, unit: 'mi' }),
    from: fc.constantFrom('2027-01-03', '2027-01-06'),
    to: fc.constantFrom('2027-01-08', '2027-01-11'),
    show: fc.constantFrom('so', 'not', 'all'),
  },
  { requiredKeys: [] },
) as fc.Arbitrary<Query>;

const seasonOf = (list: readonly Note[]): Season => ({
  schema: 1,
  season: '2026-27',
  notes: [...list],
  runs: { cutBefore: [], joinBefore: [], moved: [], distances: [] },
});

function groundOf(keeper: IndexKeeper, season: Season): Ground {
  const { runs } = runsOf(season, DOGS, SETTINGS);
  const ofNote = new Map<string, string[]>();
  for (const run of runs) for (const id of run.notes) ofNote.set(id, [...(ofNote.get(id) ?? []), run.id]);
  return { postings: keeper.postings, words: keeper.words, dogs: DOGS, runsOf: () => ({ runs, ofNote }) };
}

/** A store's seasons that a test may change. */
const shelf = (season: Season) => ({
  now: season,
  seasonNames: () => ['2026-27'],
  season() {
    return this.now;
  },
});

describe('the index', () => {
  it('after any changes is the index built anew', async () => {
    await fc.assert(
      fc.asyncProperty(notes, notes, fc.array(fc.nat()), async (first, second, gone) => {
        const seasons = shelf(seasonOf(first));
        const kept = new IndexKeeper(seasons);
        await kept.ready();
        // Some notes stay the same objects, some are others of the same id, some are new, some are gone.
        const next = new Map<string, Note>(first.map((n, i) => [n.id, gone.includes(i) ? n : (second[i] ?? n)]));
        for (const n of second.slice(first.length)) next.set(n.id, n);
        for (const i of gone) if (i % 3 === 0) next.delete(uuid((i % 25) + 1));
        seasons.now = seasonOf([...next.values()]);
        await kept.ready();
        const anew = new IndexKeeper(shelf(seasons.now));
        await anew.ready();
        expect(kept.postings.contents()).toEqual(anew.postings.contents());
        expect(sorted(kept.words.contents())).toEqual(sorted(anew.words.contents()));
        expect(kept.progress).toEqual({ notes: next.size, of: next.size });
      }),
      { numRuns: 150 },
    );
  });

  it('finds what asking every entry of every note finds', async () => {
    await fc.assert(
      fc.asyncProperty(notes, query, async (list, asked) => {
        const season = seasonOf(list);
        const keeper = new IndexKeeper(shelf(season));
        await keeper.ready();
        const ground = groundOf(keeper, season);
        const found = find(asked, ground);
        expect(new Set(found.hits.map((hit) => entriesOf(hit.at.note)[hit.index]?.id))).toEqual(
          asking(asked, list, ground),
        );
        const times = found.hits.map((hit) => hit.at.ms);
        expect(times).toEqual([...times].sort((a, b) => b - a));
      }),
      { numRuns: 400 },
    );
  });

  it('finds the notes that hold all the words, and no other', async () => {
    const word = fc.constantFrom(...WORDS.filter((w) => w.length > 2));
    await fc.assert(
      fc.asyncProperty(notes, fc.uniqueArray(word, { minLength: 1, maxLength: 3 }), async (list, words) => {
        const season = seasonOf(list);
        const keeper = new IndexKeeper(shelf(season));
        await keeper.ready();
        const found = find({ words: words.join(' ') }, groundOf(keeper, season));
        const expected = list.filter((n) => words.every((w) => n.text.split(' ').includes(w)));
        expect(new Set(found.notes.map((at) => at.note.id))).toEqual(new Set(expected.map((n) => n.id)));
      }),
      { numRuns: 200 },
    );
  });
});

const sorted = (map: Map<string, string[]>) => [...map].sort(([a], [b]) => (a < b ? -1 : 1));

/** Ids of the entries that satisfy a query, by asking each; the names of a dog are told apart by the roster alone. */
function asking(query: Query, list: readonly Note[], ground: Ground): Set<string> {
  const question = ask(query);
  const ids = new Set<string>();
  if (!question.ofEntries) return ids;
  const { runs } = ground.runsOf('2026-27');
  for (const n of list) {
    const day = n.at.slice(0, 10);
    if ((query.from && day < query.from) || (query.to && day > query.to)) continue;
    const all = entriesOf(n).map((e) => ({ ...e, dogs: e.entry.dogs.map((d) => (d === 'Fern' ? 'Moss' : d)) }));
    const mine = runs.filter((run) => run.notes.includes(n.id));
    const note = { all: () => all, around: () => aroundNote(entriesOf(n), mine, DOGS) };
    for (const one of all) if (verdict(question, one, note) === 'hit') ids.add(one.id);
  }
  return ids;
}
