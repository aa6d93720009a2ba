/** The assertion that the words around give: row by row, and what holds for any note. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ASSERTIONS } from '../../grammar/entry.ts';
import { buildTable, compile } from '../../grammar/steps/scope-table.ts';
import { assertionAt, assertionOf, cuesOf } from '../../grammar/steps/scopes.ts';
import { tokenize } from '../../grammar/steps/tokens.ts';
import { ENDS, INNER_DENIALS, NOT_CUES } from '../../grammar/words/scope-ends.ts';
import { CUES, type CueGroup, LISTS } from '../../grammar/words/scopes.ts';
import { FIRST_ROWS } from './scopes-rows.ts';
import { LATER_ROWS } from './scopes-rows-later.ts';

const ROWS = [...FIRST_ROWS, ...LATER_ROWS];

function spanOf(text: string, target: string): [number, number] {
  const [words, nth] = target.split('#') as [string, string?];
  let at = text.indexOf(words);
  if (nth === '2') at = text.indexOf(words, at + 1);
  if (at < 0) throw new Error(`"${words}" does not stand in "${text}"`);
  return [at, at + words.length];
}

/** Token index of a word in `text`. */
const indexOf = (text: string, word: string) => tokenize(text).findIndex((t) => t.low === word);

describe('what the words around say of a finding', () => {
  it.each(ROWS.map((r) => [...r]))('%s [%s] is %s', (text, target, assertion) => {
    expect(assertionAt(text, spanOf(text, target))).toBe(assertion);
  });

  it.each(ROWS.map((r) => [...r]))('%s [%s] is %s in capitals too', (text, target, assertion) => {
    expect(assertionAt(text.toUpperCase(), spanOf(text, target))).toBe(assertion);
  });
});

describe('as a recogniser writes it', () => {
  const bare = (s: string) =>
    s
      .toLowerCase()
      .replace(/[.,;:!?]+(?=\s|$)/g, '')
      .replace(/(^|\s)[-+/] /g, '$1');
  it('19 of 20 stay as they are without capitals and marks', () => {
    const marked = ROWS.filter(
      ([text, target]) => bare(text) !== text && bare(text).includes(bare(target.split('#')[0] ?? '')),
    );
    const lost = marked.filter(
      ([text, target, assertion]) => assertionAt(bare(text), spanOf(bare(text), bare(target))) !== assertion,
    );
    console.log(`scopes without marks: ${marked.length - lost.length} of ${marked.length} rows stay`);
    expect(lost.length / marked.length).toBeLessThan(0.05);
  });
});

describe('stops that the caller knows', () => {
  const read = (text: string, word: string, names: string[]) => {
    const tokens = tokenize(text);
    const at = indexOf(text, word);
    const stops = tokens.filter((t) => names.includes(t.low)).map((t) => t.i);
    return assertionOf(tokens, cuesOf(tokens), at, at + 1, stops).assertion;
  };
  it.each([
    ["a new dog's name ends a denial", 'no swelling fern limping', 'limping', ['fern'], 'absent', 'present'],
    ['a name right after "with" does not', "nothing wrong with fern's feet", 'feet', ['fern'], 'absent', 'absent'],
    [
      'a plan goes on over the names it places',
      "i'll have fern and oak in lead",
      'lead',
      ['fern', 'oak'],
      'planned',
      'planned',
    ],
    [
      'and ends where something is told of a name',
      'will load oak at the hut fern limping',
      'limping',
      ['fern', 'oak'],
      'planned',
      'present',
    ],
    [
      'an earlier day is that of its own dog',
      'oak limping fern sore tuesday',
      'limping',
      ['fern', 'oak'],
      'past',
      'present',
    ],
    [
      'what is gone is gone for its own dog',
      'oak limping fern coughing fine now',
      'limping',
      ['fern', 'oak'],
      'resolved',
      'present',
    ],
  ] as const)('%s', (_why, text, word, names, without, withStops) => {
    expect(read(text, word, [])).toBe(without);
    expect(read(text, word, [...names])).toBe(withStops);
  });
});

describe('cues', () => {
  it('are found with their place, the longest at each', () => {
    const text = 'no change, no longer limping, might be the wrist';
    const tokens = tokenize(text);
    const found = cuesOf(tokens).map((c) => [
      tokens
        .slice(c.from, c.to)
        .map((t) => t.low)
        .join(' '),
      c.gives,
    ]);
    expect(found).toEqual([
      ['no change', 'absent'],
      ['no longer', 'resolved'],
      ['might be', 'possible'],
    ]);
  });

  it('tell which of them was followed', () => {
    const tokens = tokenize('i think he is no longer limping');
    const { cue } = assertionOf(tokens, cuesOf(tokens), 6, 7);
    expect(cue?.name).toBe('no longer …');
  });

  it('are written as the tokens that a note is cut into', () => {
    // A phrase that is cut otherwise in a note would never be found.
    const texts = [
      ...CUES.map((c) => c.phrases),
      NOT_CUES,
      INNER_DENIALS,
      ...ENDS.map((e) => e.phrases),
      ...Object.values(LISTS),
    ];
    const words = new Set(texts.join(' ').match(/[a-z'.0-9]+/g));
    const odd = [...words].filter(
      (w) => /[a-z]/.test(w) && !(w in LISTS) && !w.includes("'") && tokenize(`x ${w} x`).length !== 3,
    );
    expect(odd).toEqual([]);
  });
});

describe('the table is checked when it loads', () => {
  const group = (phrases: string): CueGroup => ({
    name: 'try',
    gives: 'absent',
    direction: 'forward',
    reach: 'list',
    phrases,
  });
  it.each([
    ['{no|not', /"\{no\|not" cannot be read/],
    ['no <bird> of', /names a list "bird"/],
    ['No sign of', /"No sign of" has a capital/],
    ['… anymore', /names no word to begin/],
    ['none $ since', /"none \$ since" goes on after/],
  ])('%s', (phrase, message) => {
    expect(() => compile(phrase)).toThrow(message);
  });
  it('a phrase that stands twice', () => {
    expect(() => buildTable([group('no ; no')], '', [])).toThrow(/"no" stands in "try" and in "try"/);
  });
});

describe('any note', () => {
  const words = [...new Set(ROWS.flatMap(([text]) => text.split(/(?<=\s)|(?=[.,;:])/)))];
  const note = fc.array(fc.constantFrom(...words), { maxLength: 40 }).map((w) => w.join(''));

  it('gives one of the six assertions for any span, and the same twice', () => {
    fc.assert(
      fc.property(
        fc.oneof(note, fc.string({ unit: 'binary', maxLength: 80 })),
        fc.nat(200),
        fc.nat(40),
        (text, a, n) => {
          const said = assertionAt(text, [a, a + n]);
          expect(ASSERTIONS).toContain(said);
          expect(assertionAt(text, [a, a + n])).toBe(said);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('has its cues in order and inside the note', () => {
    fc.assert(
      fc.property(note, (text) => {
        const tokens = tokenize(text);
        let last = 0;
        for (const cue of cuesOf(tokens)) {
          expect(cue.from).toBeGreaterThanOrEqual(last);
          expect(cue.to).toBeGreaterThan(cue.from);
          expect(cue.to).toBeLessThanOrEqual(tokens.length);
          last = cue.from;
        }
      }),
      { numRuns: 200 },
    );
  });

  it('keeps its answers when a sentence of its own follows', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ROWS), ([text, target, assertion]) => {
        expect(assertionAt(`${text}\nThe dogs are asleep.`, spanOf(text, target))).toBe(assertion);
      }),
      { numRuns: 300 },
    );
  });
});
