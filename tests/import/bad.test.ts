import { describe, expect, it } from 'vitest';
import { importNotebook, UnknownZoneError } from '../../server/import/index.ts';

const zone = { offset: '-09:00' };

describe('bad input is told, line by line, and nothing is dropped', () => {
  it('a day that no calendar has takes the lines under it along', () => {
    const text =
      '2027-02-01\n8:00 good\n\n31 Feb 2027\n8:10 where does this go\nand this\n\n# 2027-03-01\n8:20 good again';
    const { notes, problems } = importNotebook(text, zone);
    expect(notes.map((n) => n.text)).toEqual(['good', 'good again']);
    expect(problems).toEqual([
      { line: 4, text: '31 Feb 2027', says: '“31 Feb 2027” is no day of the calendar.' },
      { line: 5, text: '8:10 where does this go', says: expect.stringContaining('on line 4, could not be read') },
      { line: 6, text: 'and this', says: 'This goes on from line 5, which could not be placed.' },
    ]);
  });

  it.each(['2027-02-29', '2026-13-01', '2026-10-00', '00 October 2026', '13.13.2026'])('%s is no day', (head) => {
    const { notes, problems } = importNotebook(`${head}\n8:00 lost`, zone);
    expect(notes).toEqual([]);
    expect(problems.map((p) => p.line)).toEqual([1, 2]);
  });

  it.each(['25:70', '24:00', '10:60', '13:00 am', '2027-02-01 25:10', '2027-02-01T10:61'])('%s is no time', (time) => {
    const { notes, problems } = importNotebook(`2027-02-01\n${time} Sedge ate\n  and Rook`, zone);
    expect(notes).toEqual([]);
    expect(problems.map((p) => [p.line, p.text])).toEqual([
      [2, `${time} Sedge ate`],
      [3, '  and Rook'],
    ]);
    expect(problems[0]?.says).toContain('no time of day');
  });

  it('words before any date', () => {
    const { notes, problems } = importNotebook('my notebook\nkeep out\n\n10:40 all ate\n\n2027-02-01\n8:00 good', zone);
    expect(notes.map((n) => n.text)).toEqual(['good']);
    expect(problems.map((p) => p.line)).toEqual([1, 2, 4]);
    expect(problems[0]?.says).toContain('No date is known');
  });

  it('CRLF, CR alone and a byte order mark change nothing', () => {
    const plain = '2027-02-01\n8:00 good\nand on\n\n9:00 better';
    const want = importNotebook(plain, zone).notes;
    expect(want).toHaveLength(2);
    for (const text of [plain.replaceAll('\n', '\r\n'), plain.replaceAll('\n', '\r'), `\uFEFF${plain}`])
      expect(importNotebook(text, zone).notes).toEqual(want);
  });

  it('control characters stay in the words; a line with NUL is a problem', () => {
    const { notes, problems } = importNotebook(
      '2027-02-01\n8:00 go\u0007od\u001b[31m\n8:10 b\0ad\nand on\n8:20 good',
      zone,
    );
    expect(notes.map((n) => n.text)).toEqual(['go\u0007od\u001b[31m', 'good']);
    expect(problems.map((p) => p.line)).toEqual([3, 4]);
    expect(problems[0]?.says).toContain('NUL');
  });

  it('emoji and other scripts stay as they are', () => {
    const { notes } = importNotebook('2027-02-01\n8:00 Сэдж ate 🐕‍🦺 — 橇犬', zone);
    expect(notes.map((n) => n.text)).toEqual(['Сэдж ate 🐕‍🦺 — 橇犬']);
  });

  it.each(['Mars/Olympus', '+25:00', '-09:75', 'nine'])('the zone %s is refused with a sentence', (offset) => {
    expect(() => importNotebook('2027-02-01\n8:00 good', { offset })).toThrow(UnknownZoneError);
    expect(() => importNotebook('2027-02-01\n8:00 good', { offset })).toThrow(offset);
  });

  it.each(['', '\n\n \n\t\n', '\uFEFF'])('nothing gives nothing', (text) => {
    expect(importNotebook(text, zone)).toEqual({ notes: [], problems: [], placed: [], headings: [] });
  });

  it('five megabytes, in many notes, in one line, and in a form made to make patterns work', () => {
    const size = 5_000_000;
    const many = `2027-02-01\n${'10:40 Sedge and Rook in lead, all ate at five\n'.repeat(Math.ceil(size / 46))}`;
    const read = importNotebook(many, zone);
    expect(read.notes).toHaveLength(Math.ceil(size / 46));
    expect(read.problems).toEqual([]);
    expect(new Set(read.notes.map((n) => n.id)).size).toBe(read.notes.length);
    const long = 'Sedge '.repeat(size / 6);
    expect(importNotebook(`2027-02-01\n10:40 ${long}`, zone).notes[0]?.text).toHaveLength(long.length - 1);
    for (const nasty of ['[A a', '**2027', '1 1 1 1', '- - - -', '10:40:', '   \t'])
      importNotebook(nasty.repeat(size / 10 / nasty.length), zone);
  });
});
