/** What holds of every reading, whatever is said. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contextSchema, entrySchema, parse, read } from '../../grammar/index.ts';
import { casesOf, contextOf, corpusNames } from '../corpus/corpora.ts';

const cases = corpusNames().flatMap(casesOf);
const context = contextSchema.parse({
  dogs: [
    { name: 'Storm', sex: 'F' },
    { name: 'Miles', sex: 'M', aliases: ['Milo'] },
    { name: 'Biscuit', sex: 'F' },
    { name: 'Rook', sex: 'M' },
  ],
  people: ['Hope'],
  lineup: [
    { dog: 'Storm', position: 'lead', side: 'left' },
    { dog: 'Miles', position: 'lead', side: 'right' },
  ],
  at: '2027-01-14T10:40',
});
const WORDS =
  'storm miles biscuit rook she he they everyone both left right front hind wrist foot pad sore lame limping not no swelling ate refused snack water mile fourteen and a half minus ten lead swing wheel moved dropped loaded bootie lost put on off wait sorry scratch that tomorrow if yesterday fine now 10:40 , . ; and but the of in with LF RH'.split(
    ' ',
  );
const note = fc.oneof(
  fc.string({ maxLength: 200 }),
  fc.string({ unit: 'binary', maxLength: 120 }),
  fc.array(fc.constantFrom(...WORDS), { maxLength: 40 }).map((w) => w.join(' ')),
);
const facts = (text: string) =>
  parse(text, context)
    .filter((e) => e.kind !== 'remark')
    .map(({ span: _s, rule: _r, doubt: _d, because: _b, ...e }) =>
      JSON.stringify({ ...e, item: 'item' in e ? String(e.item).toLowerCase() : undefined }),
    )
    .sort();

describe('every reading', () => {
  it('never throws, gives entries of the contract with spans inside the text and in order', () => {
    fc.assert(
      fc.property(note, (text) => {
        const entries = parse(text, context);
        let last = 0;
        for (const e of entries) {
          entrySchema.parse(e);
          const [start, end] = e.span ?? [-1, -1];
          expect(start).toBeGreaterThanOrEqual(last);
          expect(end).toBeLessThanOrEqual(text.length);
          expect(start).toBeLessThanOrEqual(end);
          last = start;
        }
      }),
      { numRuns: 400 },
    );
  });

  it('names no dog that is not in the roster', () => {
    const known = new Set([...context.dogs.map((d) => d.name), '*']);
    fc.assert(
      fc.property(note, (text) => {
        for (const e of parse(text, context)) for (const d of e.dogs) expect(known.has(d)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('is the same twice', () => {
    fc.assert(
      fc.property(note, (text) => {
        expect(read(text, context)).toEqual(read(text, context));
      }),
      { numRuns: 150 },
    );
  });

  it('is the same in capitals and in small letters', () => {
    for (const c of cases) {
      const plain = (t: string) =>
        parse(t, contextOf(c))
          .filter((e) => e.kind !== 'remark')
          .map((e) => `${e.kind} ${e.dogs.join()} ${e.assertion ?? ''}`)
          .sort();
      expect(plain(c.text.toLowerCase()), c.id).toEqual(plain(c.text));
    }
    expect(facts('STORM IS LIMPING, LEFT WRIST')).toEqual(facts('storm is limping, left wrist'));
  });

  it('leaves no word that matters unseen: entries and remarks together hold every dog and every number', () => {
    for (const c of cases) {
      const spans = parse(c.text, contextOf(c)).map((e) => e.span ?? [0, 0]);
      for (const hit of c.text.matchAll(/\p{L}{5,}|\d+/gu)) {
        const at = hit.index;
        const word = hit[0].toLowerCase();
        if (
          /^(thats|theres|theyre|theyve|everybodys|there|their|would|could|about|which|these|those|still|again|where|while|being)$/.test(
            word,
          )
        )
          continue;
        const seen = spans.some(([a, b]) => (a as number) <= at && at + hit[0].length <= (b as number));
        expect(seen, `${c.id}: "${hit[0]}" in "${c.text}"`).toBe(true);
      }
    }
  });
});

describe('a remark added at the end', () => {
  it('changes nothing before it', () => {
    const end = ' The kettle is on.';
    for (const c of cases.filter((x) => /[.!]$/.test(x.text))) {
      const cut = (t: string) =>
        parse(t, contextOf(c))
          .filter((e) => e.kind !== 'remark')
          .map(({ span: _s, ...e }) => e);
      expect(cut(c.text + end), c.id).toEqual(cut(c.text));
    }
  });
});
