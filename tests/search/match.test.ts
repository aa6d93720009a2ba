/** Which entries satisfy which query, by hand: each row is a query, the entries of a note, and those that are hits. */
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../grammar/entry.ts';
import { joinedSpans } from '../../server/notes/spans.ts';
import { aroundNote } from '../../server/search/around.ts';
import { ask, verdict } from '../../server/search/match.ts';
import type { Query } from '../../server/search/query.ts';

const J = ['Juniper'];
const M = ['Moss'];
const sore = (more: object): Entry => ({ kind: 'finding', dogs: J, part: 'wrist', sign: 'sore', ...more }) as Entry;
const hitch = (position: string): Entry => ({ kind: 'hitch', dogs: J, position }) as Entry;
const icy: Entry = { kind: 'trail', dogs: [], surface: 'icy' };
const cold: Entry = { kind: 'temperature', dogs: [], value: -30, unit: 'F' };
const refused: Entry = { kind: 'intake', dogs: J, what: 'snack', took: 'none' };
const lostLeft: Entry = { kind: 'booties', dogs: J, state: 'lost', paws: ['LF'] };

const ROWS: [what: string, query: Query, entries: Entry[], hits: number[]][] = [
  ['a dog, and no other', { dogs: J }, [sore({}), sore({ dogs: M })], [0]],
  ['either of two dogs', { dogs: [...J, ...M] }, [sore({}), sore({ dogs: M })], [0, 1]],
  ['the whole team only where the run tells who ran', { dogs: J, signs: ['sore'] }, [sore({ dogs: ['*'] })], []],
  [
    'a sign sorts out absent and resolved',
    { signs: ['sore'] },
    [sore({}), sore({ assertion: 'absent' }), sore({ assertion: 'resolved' })],
    [0],
  ],
  [
    'and keeps possible, past and planned',
    { signs: ['sore'] },
    [sore({ assertion: 'possible' }), sore({ assertion: 'past' }), sore({ assertion: 'planned' })],
    [0, 1, 2],
  ],
  ['all of them where asked', { signs: ['sore'], show: 'all' }, [sore({}), sore({ assertion: 'absent' })], [0, 1]],
  ['the denied alone where asked', { signs: ['sore'], show: 'not' }, [sore({}), sore({ assertion: 'absent' })], [1]],
  [
    '"fine now" denies the sign asked for',
    { signs: ['sore'], parts: ['wrist'], show: 'all' },
    [sore({ sign: 'any', assertion: 'resolved' })],
    [0],
  ],
  [
    '"looks good" of a foot says nothing of a sign of the whole dog',
    { signs: ['vomiting'], show: 'all' },
    [sore({ part: 'foot', sign: 'any', assertion: 'absent' })],
    [],
  ],
  ['something seen, not named, is no sign asked for', { signs: ['sore'], show: 'all' }, [sore({ sign: 'any' })], []],
  [
    'left is told of both sides too',
    { parts: ['wrist'], side: 'left' },
    [sore({ side: 'left' }), sore({ side: 'both' }), sore({ side: 'right' }), sore({})],
    [0, 1],
  ],
  [
    'both sides only where both were told',
    { parts: ['wrist'], side: 'both' },
    [sore({ side: 'left' }), sore({ side: 'both' })],
    [1],
  ],
  [
    'a wrist is in front',
    { side: 'left', end: 'front' },
    [sore({ side: 'left' }), sore({ side: 'left', part: 'hock' })],
    [0],
  ],
  ['a hock is behind', { end: 'hind' }, [sore({}), sore({ part: 'hock' })], [1]],
  [
    'a foot is its pads and webs',
    { parts: ['foot'], signs: ['split'] },
    [sore({ part: 'web', sign: 'split' }), sore({ part: 'leg', sign: 'split' })],
    [0],
  ],
  ['a pad is not the whole foot', { parts: ['pad'] }, [sore({ part: 'foot' })], []],
  ['a bootie by its foot', { states: ['lost'], side: 'left' }, [lostLeft, { ...lostLeft, paws: ['RH'] } as Entry], [0]],
  [
    'a bootie with no foot told meets no side',
    { states: ['lost'], side: 'left' },
    [{ kind: 'booties', dogs: J, state: 'lost' }],
    [],
  ],
  ['two matters: both in the note, of one dog', { signs: ['sore'], took: ['none'] }, [sore({}), refused], [0, 1]],
  ['two matters of two dogs are none', { signs: ['sore'], took: ['none'] }, [sore({ dogs: M }), refused], []],
  ['two matters, one of them missing', { signs: ['sore'], took: ['none'] }, [sore({})], []],
  ['a trail asked for by itself', { surfaces: ['icy'] }, [icy, sore({})], [0]],
  ['a trail as where it was', { signs: ['sore'], surfaces: ['icy'] }, [icy, sore({})], [1]],
  ['and not where it was another', { signs: ['sore'], surfaces: ['soft'] }, [icy, sore({})], []],
  [
    'a trail denied is no trail',
    { signs: ['sore'], surfaces: ['icy'] },
    [{ ...icy, assertion: 'absent' }, sore({})],
    [],
  ],
  [
    'a place in the team asked for by itself',
    { dogs: J, positions: ['wheel'] },
    [hitch('wheel'), hitch('lead'), sore({})],
    [0],
  ],
  [
    'a place as where the dog was',
    { signs: ['sore'], positions: ['wheel'] },
    [hitch('wheel'), sore({}), sore({ dogs: M })],
    [1],
  ],
  ['the cold, asked for by itself', { amount: { of: 'air', atMost: -20, unit: 'F' } }, [cold], [0]],
  ['the cold in the other unit: −30 °F is −34.4 °C', { amount: { of: 'air', atMost: -34, unit: 'C' } }, [cold], [0]],
  ['and not colder than it was', { amount: { of: 'air', atMost: -35, unit: 'C' } }, [cold], []],
  [
    'the cold as when it was',
    { signs: ['sore'], amount: { of: 'air', atMost: -20, unit: 'F' } },
    [cold, sore({})],
    [1],
  ],
  [
    'a weight in the other unit: 50 lb is 22.68 kg',
    { amount: { of: 'weight', atLeast: 22, atMost: 23, unit: 'kg' } },
    [
      { kind: 'measure', dogs: J, quantity: 'weight', value: 50, unit: 'lb' },
      { kind: 'measure', dogs: J, quantity: 'weight', value: 52, unit: 'lb' },
    ],
    [0],
  ],
  [
    'a dog’s temperature is not the air’s',
    { amount: { of: 'temperature', atLeast: 103, unit: 'F' } },
    [
      { kind: 'temperature', dogs: [], value: 104, unit: 'F' },
      { kind: 'measure', dogs: J, quantity: 'temperature', value: 103.4, unit: 'F' },
    ],
    [1],
  ],
  ['a kind by its name', { kinds: ['booties'] }, [lostLeft, sore({})], [0]],
  ['remarks only where asked for', { dogs: J }, [{ kind: 'remark', dogs: J, text: 'x' }], []],
];

describe('an entry satisfies a query', () => {
  it.each(ROWS)('%s', (_, query, entries, hits) => {
    const asking = ask(query);
    const all = entries.map((entry) => ({ entry, dogs: entry.dogs }));
    const note = { all: () => all, around: () => aroundNote(all, [], []) };
    const found = all.flatMap((one, i) => (verdict(asking, one, note) === 'hit' ? [i] : []));
    expect(found).toEqual(hits);
  });
});

describe('marks', () => {
  it('are put together where they touch, in order, inside the text', () => {
    expect(
      joinedSpans(
        [
          [5, 9],
          [0, 2],
          [8, 12],
          [2, 3],
          [20, 40],
          [50, 60],
        ],
        30,
      ),
    ).toEqual([
      [0, 3],
      [5, 12],
      [20, 30],
    ]);
  });
});
