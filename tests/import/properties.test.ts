import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ImportResult, importNotebook } from '../../server/import/index.ts';
import { noteInSchema } from '../../server/model.ts';

const zone = { offset: 'America/Anchorage' };

const date = fc.constantFrom(
  '2026-10-14',
  '# 15 October 2026',
  'Oct 16, 2026',
  '31 Feb 2027',
  '3/4/2027',
  'Nov 2',
  'May 2027',
);
const time = fc.constantFrom(
  '',
  '10:40 ',
  '1040 ',
  '7.50: ',
  '25:70 ',
  '11:10 pm - ',
  '2026-12-01 09:00 ',
  '[Colm] ',
  '- ',
);
const words = fc
  .array(fc.constantFrom('Sedge', 'ate', 'all', '-18', '5', 'miles', 'ok.', '“no”', 'é', '14 October', '\u0007'), {
    minLength: 1,
  })
  .map((w) => w.join(' '));
const note = fc.tuple(fc.constantFrom('', '  ', '\t'), time, words).map((parts) => parts.join(''));
const line = fc.oneof(
  { weight: 1, arbitrary: date },
  { weight: 6, arbitrary: note },
  fc.constantFrom('', '  ', '---'),
  fc.string(),
);
const notebook = fc
  .tuple(fc.array(line, { maxLength: 40 }), fc.constantFrom('\n', '\r\n'))
  .map(([l, end]) => l.join(end));

const linesOf = (text: string) => text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
/** Letters and digits, without what stands between them. */
const squeezed = (text: string) => text.replace(/[^\p{L}\p{N}]+/gu, '');

function accounted(text: string, result: ImportResult): void {
  const wanted = linesOf(text).flatMap((l, i) => (l.trim() === '' ? [] : [i + 1]));
  const taken = result.placed.flatMap((p) => p.lines).concat(result.headings);
  expect(new Set(taken).size).toBe(taken.length);
  expect([...new Set(taken.concat(result.problems.map((p) => p.line)))].sort((a, b) => a - b)).toEqual(wanted);
}

describe('any text', () => {
  it('every line that is not blank is a heading, in one note, or a problem', () => {
    fc.assert(
      fc.property(notebook, (text) => accounted(text, importNotebook(text, zone))),
      { numRuns: 1000 },
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => accounted(text, importNotebook(text, zone))),
    );
  });

  it('a note is the end of its first line and then its other lines, word for word', () => {
    fc.assert(
      fc.property(notebook, (text) => {
        const lines = linesOf(text);
        const { notes, placed } = importNotebook(text, zone);
        for (const [i, got] of notes.entries()) {
          const [first = 0, ...more] = placed[i]?.lines ?? [];
          const own = got.text.split('\n').filter((l) => l.trim() !== '');
          const rest = more.map((n) => (lines[n - 1] as string).trim());
          const head = own.slice(0, own.length - rest.length);
          expect(own.slice(head.length)).toEqual(rest);
          expect(head.length).toBeLessThanOrEqual(1);
          expect((lines[first - 1] as string).trimEnd().endsWith(head[0] ?? '')).toBe(true);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('a problem shows its line as it stands', () => {
    fc.assert(
      fc.property(notebook, (text) => {
        const lines = linesOf(text);
        for (const p of importNotebook(text, zone).problems) {
          expect(p.text).toBe(lines[p.line - 1]);
          expect(p.says).toMatch(/\.$/);
        }
      }),
    );
  });

  it('ids are those of a version 5 UUID, all different, and the same every time', () => {
    fc.assert(
      fc.property(notebook, (text) => {
        const once = importNotebook(text, zone).notes;
        expect(importNotebook(text, { ...zone, offset: '+02:00' }).notes.map((n) => n.id)).toEqual(
          once.map((n) => n.id),
        );
        expect(new Set(once.map((n) => n.id)).size).toBe(once.length);
        for (const got of once) {
          expect(noteInSchema.parse(got)).toEqual(got);
          expect(got.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
        }
      }),
    );
  });

  it('a page written later leaves the ids of the pages before it as they were', () => {
    fc.assert(
      fc.property(notebook, fc.array(note, { maxLength: 6 }), (text, more) => {
        const once = importNotebook(text, zone).notes;
        const grown = importNotebook(`${text}\n\n# 2027-04-20\n${more.join('\n')}`, zone).notes;
        expect(grown.slice(0, once.length).map((n) => n.id)).toEqual(once.map((n) => n.id));
      }),
    );
  });
});

describe('a well-kept notebook', () => {
  const page = fc.record({
    day: fc.integer({ min: 0, max: 200 }).map((d) => new Date(Date.UTC(2026, 8, 1 + d)).toISOString().slice(0, 10)),
    notes: fc.array(
      fc.tuple(
        fc.integer({ min: 5 * 60, max: 19 * 60 }),
        fc.boolean(),
        words.map((w) => `so ${w}`),
      ),
      { minLength: 1, maxLength: 8 },
    ),
  });
  it('each note comes out on its day, in order, with its time and its words', () => {
    fc.assert(
      fc.property(fc.uniqueArray(page, { maxLength: 5, selector: (p) => p.day }), (pages) => {
        const hhmm = (m: number) => `${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
        const sorted = pages.map((p) => ({ ...p, notes: [...p.notes].sort((a, b) => a[0] - b[0]) }));
        const text = sorted
          .map(
            (p) => `# ${p.day}\n${p.notes.map(([m, timed, w]) => `${timed ? `${hhmm(m)} ` : '\n'}${w}`).join('\n')}\n`,
          )
          .join('\n');
        const { notes, problems } = importNotebook(text, zone);
        expect(problems).toEqual([]);
        const want = sorted.flatMap((p) =>
          p.notes.map(([m, timed, w]) => ({ day: p.day, time: timed ? hhmm(m) : '', words: squeezed(w) })),
        );
        expect(notes.map((n) => ({ day: n.at.slice(0, 10), words: squeezed(n.text) }))).toEqual(
          want.map(({ day, words: w }) => ({ day, words: w })),
        );
        for (const [i, w] of want.entries()) if (w.time) expect(notes[i]?.at.slice(11, 16)).toBe(w.time);
        for (const p of sorted) {
          const at = notes.filter((n) => n.at.startsWith(p.day)).map((n) => n.at.slice(11, 19));
          expect([...at].sort()).toEqual(at);
        }
      }),
      { numRuns: 500 },
    );
  });
});
