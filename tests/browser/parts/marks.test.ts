/** A note's text cut at its entries: nothing is lost, everything read is marked, everything else that matters is seen. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Marked, pieces, unreadWords } from '../../../web/parts/marks.ts';

const mark = (number: number, start: number, end: number, kind: Marked['entry']['kind'] = 'finding'): Marked => ({
  number,
  entry: { kind, span: [start, end] },
});
const spans = fc.array(fc.tuple(fc.nat(60), fc.nat(60)), { maxLength: 8 });

test('the pieces put together are the text again, and each entry marks exactly its own words', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 50 }), spans, (text, ends) => {
      const marked = ends.map(([a, b], i) => mark(i + 1, Math.min(a, b), Math.max(a, b)));
      const found = pieces(text, marked);
      expect(found.map((piece) => piece.text).join('')).toBe(text);
      for (const { number, entry } of marked) {
        const [start, end] = entry.span as [number, number];
        const own = found.filter((piece) => piece.marks.includes(number));
        expect(own.map((piece) => piece.text).join('')).toBe(text.slice(start, end));
        expect(found.filter((piece) => piece.ends.includes(number))).toHaveLength(own.length > 0 ? 1 : 0);
      }
    }),
  );
});

test('words nothing was read from are seen, small words between readings are not', () => {
  const text = "Juniper's left wrist is sore, and then we hooked the gee turn by the cabin.";
  const read = [mark(1, 0, text.indexOf(','))];
  expect(unreadWords(text, read)).toEqual(['hooked the gee turn by the cabin']);
  expect(unreadWords(text, [...read, mark(2, text.indexOf('hooked'), text.length)])).toEqual([]);
});

test('a remark keeps words, it reads nothing from them', () => {
  expect(unreadWords('Moon rose late', [mark(1, 0, 14, 'remark')])).toEqual(['Moon rose late']);
  expect(unreadWords('Moon rose late', [mark(1, 0, 14)])).toEqual([]);
});

test('other scripts are words as well, marks and spaces are none', () => {
  expect(unreadWords('Снег … !', [])).toEqual(['Снег']);
  expect(unreadWords(' … 🐕 —', [])).toEqual([]);
});
