import { describe, expect, it } from 'vitest';
import { importNotebook } from '../../server/import/index.ts';
import { readSample } from '../../server/import/sample.ts';
import { noteInSchema, seasonOf } from '../../server/model.ts';
import { expected } from './expected.ts';

const { kennel, files } = readSample();
const read = files.map((file) => ({
  file: file.name,
  lines: file.text.split('\n'),
  ...importNotebook(file.text, { name: file.name, offset: kennel.zone, people: kennel.people }),
}));
const notes = read.flatMap((r) => r.notes);
const days = new Set(notes.map((n) => n.at.slice(0, 10)));

describe('the sample season, as a notebook', () => {
  it('reads without a problem', () => {
    expect(read.flatMap((r) => r.problems.map((p) => `${r.file}:${p.line} ${p.says}`))).toEqual([]);
  });

  it('has 400 notes and more, each with an id of its own, of one season, from September to April', () => {
    expect(notes.length).toBeGreaterThanOrEqual(400);
    expect(new Set(notes.map((n) => n.id)).size).toBe(notes.length);
    for (const note of notes) expect(noteInSchema.parse(note)).toEqual(note);
    expect(new Set(notes.map((n) => seasonOf(n.at)))).toEqual(new Set(['2026-27']));
    const sorted = [...days].sort();
    expect([sorted[0]?.slice(0, 7), sorted.at(-1)?.slice(0, 7)]).toEqual(['2026-09', '2027-04']);
  });

  it('puts every note into the month of its file, in the order written', () => {
    for (const r of read) {
      expect([...new Set(r.notes.map((n) => `${n.at.slice(0, 7)}.txt`))]).toEqual([r.file]);
      const at = r.notes.map((n) => Date.parse(n.at));
      expect([...at].sort((a, b) => a - b)).toEqual(at);
    }
  });

  it('puts every note under the day of the heading above it, found here by its digits alone', () => {
    for (const r of read)
      for (const [i, note] of r.notes.entries()) {
        const own = r.lines[(r.placed[i]?.line ?? 0) - 1] as string;
        const above = r.headings.filter((line) => line < (r.placed[i]?.line ?? 0)).at(-1);
        const head = /^20\d\d-/.test(own) ? own.slice(0, 10) : (r.lines[(above ?? 0) - 1] as string);
        const numbers = [...head.replace(/\b20\d\d\b-?/, '').matchAll(/\d+/g)].map((m) => Number(m[0]));
        expect(Number(note.at.slice(8, 10)), `${r.file}: ${head}`).toBe(numbers.at(-1));
      }
  });

  it('takes every time off the front of its note', () => {
    for (const { text } of notes) expect(text, text).not.toMatch(/^\W*(?:\d{1,2}[:.]\d{2}|\d{4})\b/);
  });

  it('uses the offset of its zone: an hour less from the first Sunday of November to the second of March', () => {
    // Energy Policy Act of 2005, section 110 (USA): 1 November 2026, 14 March 2027.
    for (const { at } of notes) {
      const day = at.slice(0, 10);
      expect(at.slice(-6), at).toBe(day >= '2026-11-01' && day < '2027-03-14' ? '-09:00' : '-08:00');
    }
  });

  it('tells of 60 days with runs and more, each with notes, eight with a second driver', () => {
    const runs = Object.keys(expected.totals);
    expect(runs.length).toBeGreaterThanOrEqual(60);
    for (const day of runs) expect([...days].includes(day), day).toBe(true);
    const second = Object.entries(expected.totals).filter(([, teams]) => teams.Colm !== undefined);
    expect(second).toHaveLength(8);
    for (const [day] of second)
      expect(
        notes.some((n) => n.at.startsWith(day) && n.by === 'Colm'),
        day,
      ).toBe(true);
    expect(new Set(notes.map((n) => n.by))).toEqual(new Set([undefined, 'Colm']));
  });

  it('names no dog twice, and expects only dogs of the roster', () => {
    const names = kennel.dogs.flatMap((dog) => [dog.name, ...(dog.aliases ?? [])]).map((n) => n.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
    const roster = new Set(kennel.dogs.map((dog) => dog.name));
    const told = expected.runs.flatMap((run) => [...Object.keys(run.dogs), ...Object.keys(run.byPosition ?? {})]);
    for (const dog of told) expect(roster.has(dog), dog).toBe(true);
    expect(kennel.dogs.filter((dog) => !dog.retired)).toHaveLength(21);
    for (const run of expected.runs) expect(expected.totals[run.day]?.[run.team]).toBe(run.miles);
  });

  it('says no two notes in the same words', () => {
    // "all ate" may come twice in a season; sentences may not
    const long = notes.map((n) => n.text.toLowerCase()).filter((text) => text.length > 40);
    expect(long.filter((text, i) => long.indexOf(text) !== i)).toEqual([]);
  });
});
