import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../grammar/entry.ts';
import { type Dog, dogSchema, type Note, noteSchema } from '../../server/model.ts';
import { Refusal } from '../../server/notes/refusal.ts';
import { type Act, type Desk, review } from '../../server/notes/review.ts';
import { stateOf, untouched } from '../../server/notes/state.ts';

const id = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const DOGS: Dog[] = [
  dogSchema.parse({ id: id(901), name: 'Juniper', sex: 'F', aliases: ['June'] }),
  dogSchema.parse({ id: id(902), name: 'Moss', sex: 'M', formerNames: ['Mossy'] }),
];
const TEXT = 'Juniper is lame, 20 miles, Moss in lead.';
const READ: Entry[] = [
  { kind: 'finding', dogs: ['Juniper'], sign: 'lame', span: [0, 15], rule: 'lame', doubt: 'some', because: 'why not' },
  { kind: 'distance', dogs: [], measure: 'total', value: 20, unit: 'mi', span: [17, 25] },
  { kind: 'hitch', dogs: ['Moss'], position: 'lead', span: [27, 39] },
];

function desk(): Desk {
  let made = 100;
  return { dogs: DOGS, at: '2027-01-15T09:00:00-09:00', newId: () => id(made++) };
}
function fresh(entries: Entry[] = READ): Note {
  return {
    id: id(1),
    text: TEXT,
    at: '2027-01-14T10:00:00-09:00',
    received: '2027-01-14T10:00:01-09:00',
    aside: false,
    entries: entries.map((entry, i) => ({ id: id(10 + i), entry, from: 'read', state: 'proposed' })),
    unknownNames: [],
    history: [],
  };
}
const refusal = (act: () => unknown): Refusal => {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('it was not refused');
};

describe('single acts', () => {
  it('accepts one entry and leaves the others', () => {
    const note = review(fresh(), { act: 'accept', entry: id(11) }, desk());
    expect(note.entries.map((e) => e.state)).toEqual(['proposed', 'accepted', 'proposed']);
    expect(stateOf(note)).toBe('waiting');
    expect(untouched(note)).toBe(false);
  });

  it('accepts all that is proposed; what was removed stays removed', () => {
    const removed = review(fresh(), { act: 'remove', entry: id(10) }, desk());
    const note = review(removed, { act: 'accept-all' }, desk());
    expect(note.entries.map((e) => e.state)).toEqual(['removed', 'accepted', 'accepted']);
    expect(stateOf(note)).toBe('reviewed');
    expect(review(note, { act: 'accept-all' }, desk())).toBe(note);
  });

  it('marks a note in which nothing was read as looked at', () => {
    const note = fresh([]);
    expect(stateOf(note)).toBe('waiting');
    const seen = review(note, { act: 'accept-all' }, desk());
    expect(stateOf(seen)).toBe('reviewed');
    expect(review(seen, { act: 'accept-all' }, desk())).toBe(seen);
    expect(review(seen, { act: 'undo' }, desk())).toEqual(note);
  });

  it('keeps what was read beside a change, through further changes, and forgets it when it is changed back', () => {
    const to: Entry = { kind: 'finding', dogs: ['Moss'], sign: 'sore', part: 'wrist', side: 'left' };
    const once = review(fresh(), { act: 'change', entry: id(10), to }, desk());
    expect(once.entries[0]).toEqual({
      id: id(10),
      from: 'read',
      state: 'accepted',
      entry: { ...to, span: [0, 15] },
      was: READ[0],
    });
    const twice = review(once, { act: 'change', entry: id(10), to: { ...to, side: 'right' } }, desk());
    expect(twice.entries[0]?.was).toEqual(READ[0]);
    const back = review(
      twice,
      { act: 'change', entry: id(10), to: { kind: 'finding', dogs: ['June'], sign: 'lame' } },
      desk(),
    );
    expect(back.entries[0]).toEqual({ id: id(10), from: 'read', state: 'accepted', entry: READ[0] });
  });

  it('takes a change that changes nothing as accepting', () => {
    const to: Entry = { kind: 'distance', dogs: [], measure: 'total', value: 20, unit: 'mi' };
    const note = review(fresh(), { act: 'change', entry: id(11), to }, desk());
    expect(note.entries[1]).toEqual({ ...fresh().entries[1], state: 'accepted' });
    expect(note.history.map((act) => act.act)).toEqual(['accept']);
    expect(review(note, { act: 'change', entry: id(11), to }, desk())).toBe(note);
  });

  it('adds an entry of a person’s own, under the dogs’ names of now, each once', () => {
    const to: Entry = { kind: 'gait', dogs: ['mossy', 'JUNE', 'Moss'], gait: 'lope', doubt: 'much', rule: 'mine' };
    const note = review(fresh(), { act: 'add', to }, desk());
    expect(note.entries[3]).toEqual({
      id: id(100),
      from: 'person',
      state: 'accepted',
      entry: { kind: 'gait', dogs: ['Moss', 'Juniper'], gait: 'lope' },
    });
    const changed = review(note, { act: 'change', entry: id(100), to: { ...to, gait: 'trot' } }, desk());
    expect(changed.entries[3]?.was).toBeUndefined();
  });

  it('sets aside and takes back', () => {
    const note = review(fresh(), { act: 'set-aside', aside: true }, desk());
    expect(stateOf(note)).toBe('aside');
    expect(review(note, { act: 'set-aside', aside: true }, desk())).toBe(note);
    expect(stateOf(review(note, { act: 'set-aside', aside: false }, desk()))).toBe('waiting');
  });

  it('never changes the note it is given, nor the text', () => {
    const note = fresh();
    const frozen = structuredClone(note);
    review(note, { act: 'accept-all' }, desk());
    review(note, { act: 'remove', entry: id(10) }, desk());
    expect(note).toEqual(frozen);
  });
});

describe('acts that are refused', () => {
  it.each<[string, Act, Refusal['code'], RegExp]>([
    ['an entry that is not there', { act: 'accept', entry: id(77) }, 'not-found', /no longer part of the note/],
    ['nothing to undo', { act: 'undo' }, 'conflict', /nothing to undo/],
    [
      'a dog nobody knows',
      { act: 'add', to: { kind: 'gait', dogs: ['Nobody'], gait: 'trot' } },
      'bad-input',
      /“Nobody”/,
    ],
    [
      'the whole team and a dog',
      { act: 'add', to: { kind: 'gait', dogs: ['*', 'Moss'], gait: 'trot' } },
      'bad-input',
      /whole team/,
    ],
    [
      'words after the end',
      { act: 'add', to: { kind: 'gait', dogs: [], gait: 'trot', span: [30, 41] } },
      'bad-input',
      /40 long/,
    ],
    [
      'words that end before they begin',
      { act: 'add', to: { kind: 'gait', dogs: [], gait: 'trot', span: [9, 3] } },
      'bad-input',
      /inside the note/,
    ],
  ])('%s', (_name, act, code, says) => {
    const got = refusal(() => review(fresh(), act, desk()));
    expect(got.code).toBe(code);
    expect(got.message).toMatch(says);
  });
});

const entryArb: fc.Arbitrary<Entry> = fc.oneof(
  fc.record({
    kind: fc.constant('gait' as const),
    dogs: fc.subarray(['Juniper', 'Moss']),
    gait: fc.constantFrom('trot' as const, 'lope' as const),
  }),
  fc.record({
    kind: fc.constant('finding' as const),
    dogs: fc.subarray(['June', 'Mossy']),
    sign: fc.constantFrom('sore' as const, 'lame' as const),
  }),
);
/** An act that may fit the note or not; `which` picks an entry of those that are there. */
const actArb = fc.oneof(
  fc.record({ act: fc.constant('accept' as const), which: fc.nat(8) }),
  fc.record({ act: fc.constant('accept-all' as const) }),
  fc.record({ act: fc.constant('change' as const), which: fc.nat(8), to: entryArb }),
  fc.record({ act: fc.constant('remove' as const), which: fc.nat(8) }),
  fc.record({ act: fc.constant('add' as const), to: entryArb }),
  fc.record({ act: fc.constant('set-aside' as const), aside: fc.boolean() }),
);

/** Every state the note went through, the first one first; acts that changed nothing are left out. */
function walk(acts: (typeof actArb extends fc.Arbitrary<infer A> ? A : never)[]): { states: Note[]; desk: Desk } {
  const states = [fresh()];
  const at = desk();
  for (const one of acts) {
    const note = states.at(-1) as Note;
    const act = 'which' in one ? { ...one, entry: note.entries[one.which % note.entries.length]?.id } : one;
    const next = review(note, act as Act, at);
    if (next !== note) states.push(next);
  }
  return { states, desk: at };
}

describe('whatever is done', () => {
  it('undo restores every state on the way back, exactly, to the first one', () => {
    fc.assert(
      fc.property(fc.array(actArb, { maxLength: 25 }), (acts) => {
        const { states, desk } = walk(acts);
        let note = states.at(-1) as Note;
        for (const earlier of states.slice(0, -1).reverse()) {
          note = review(note, { act: 'undo' }, desk);
          expect(note).toEqual(earlier);
        }
        expect(note).toEqual(fresh());
        expect(untouched(note)).toBe(true);
      }),
    );
  });

  it('one act is one step of history, and the note is always one that can be kept', () => {
    fc.assert(
      fc.property(fc.array(actArb, { maxLength: 25 }), (acts) => {
        const { states } = walk(acts);
        for (const [i, note] of states.entries()) expect(note.history).toHaveLength(i);
        const last = states.at(-1) as Note;
        expect(noteSchema.parse(JSON.parse(JSON.stringify(last)))).toEqual(last);
        expect(last.text).toBe(TEXT);
      }),
    );
  });

  it('accepting all twice is accepting all once, and leaves nothing proposed', () => {
    fc.assert(
      fc.property(fc.array(actArb, { maxLength: 25 }), (acts) => {
        const { states, desk } = walk(acts);
        const once = review(states.at(-1) as Note, { act: 'accept-all' }, desk);
        expect(once.entries.some((e) => e.state === 'proposed')).toBe(false);
        expect(review(once, { act: 'accept-all' }, desk)).toBe(once);
      }),
    );
  });

  it('only a person’s act makes an entry count', () => {
    fc.assert(
      fc.property(fc.array(actArb, { maxLength: 25 }), (acts) => {
        const { states } = walk(acts);
        const last = states.at(-1) as Note;
        const touched = new Set(
          acts.flatMap((one) =>
            one.act === 'accept' || one.act === 'accept-all' || one.act === 'change' || one.act === 'add'
              ? [one.act]
              : [],
          ),
        );
        if (touched.size === 0) expect(last.entries.filter((e) => e.state === 'accepted')).toEqual([]);
        for (const e of last.entries) {
          if (e.from === 'person') expect(e.was).toBeUndefined();
          if (e.was) expect(e.from).toBe('read');
        }
      }),
    );
  });
});
