import { describe, expect, it } from 'vitest';
import { importNotebook } from '../../server/import/index.ts';

const zone = { offset: 'America/Anchorage' };

describe('dates at the head of a page', () => {
  const heads = [
    '2026-10-14',
    '2026/10/14',
    '2026.10.14',
    '14 October 2026',
    '14 oct 2026',
    '14. October 2026',
    '14th of October, 2026',
    '14-Oct-2026',
    'October 14, 2026',
    'Oct 14, 2026',
    'Oct. 14th 2026',
    'Wednesday 14 Oct 2026',
    'Wed, Oct 14, 2026',
    'WEDNESDAY, OCTOBER 14 2026',
    'wed 14 october 2026:',
    '# 2026-10-14',
    '### Wed 14 October 2026',
    '**14 October 2026**',
    '__Oct 14, 2026:__',
    '14.10.2026',
    '10/14/2026',
    '14/10/2026',
    '2026-10-14 –',
  ];
  it.each(heads)('%s', (head) => {
    const { notes, problems, headings } = importNotebook(`${head}\n10:40 all ate`, zone);
    expect(problems).toEqual([]);
    expect(headings).toEqual([1]);
    expect(notes.map((n) => [n.at, n.text])).toEqual([['2026-10-14T10:40:00-08:00', 'all ate']]);
  });

  it.each([
    ['2026-10-14.txt', '10:40 all ate', '2026-10-14T10:40:00-08:00'],
    ['trail_notes_2026-10-14.md', '10:40 all ate', '2026-10-14T10:40:00-08:00'],
    ['C:\\notes\\14 Oct 2026.txt', '10:40 all ate', '2026-10-14T10:40:00-08:00'],
    ['2026-10.txt', '14 October\n10:40 all ate', '2026-10-14T10:40:00-08:00'],
    ['October 2026.txt', 'Wed Oct 14\n10:40 all ate', '2026-10-14T10:40:00-08:00'],
  ])('a date in the file name %s', (name, text, at) => {
    const { notes, problems } = importNotebook(text, { ...zone, name });
    expect(problems).toEqual([]);
    expect(notes.map((n) => n.at)).toEqual([at]);
  });

  it('a date without a year is the one nearest to the date before it', () => {
    const text =
      'Dec 30, 2026\n9:10 cold\n\n3 January\n9:20 colder\n\nFeb 2\n9:30 mild\n\n31 December\n9:00 looking back';
    const { notes } = importNotebook(text, zone);
    expect(notes.map((n) => n.at.slice(0, 10))).toEqual(['2026-12-30', '2027-01-03', '2027-02-02', '2026-12-31']);
  });

  it('a month heading tells the year', () => {
    const { notes, problems, headings } = importNotebook('# October 2026\n\nSat 3\n\n## Sat 3 Oct\n8:00 cool', zone);
    expect(headings).toEqual([1, 5]);
    expect(problems.map((p) => p.line)).toEqual([3]);
    expect(problems[0]?.says).toContain('the month alone');
    expect(notes.map((n) => n.at)).toEqual(['2026-10-03T08:00:00-08:00']);
  });

  it('a year told by the caller is used only where nothing else tells one', () => {
    const bare = 'Oct 14\n8:00 cool';
    expect(importNotebook(bare, { ...zone, defaultYear: 2026 }).notes[0]?.at).toBe('2026-10-14T08:00:00-08:00');
    const { notes, problems } = importNotebook(bare, zone);
    expect(notes).toEqual([]);
    expect(problems.map((p) => p.line)).toEqual([1, 2]);
    expect(problems[0]?.says).toContain('No year is known');
  });

  it('3/4/2027 is read only if another date of the text shows the order', () => {
    expect(importNotebook('3/4/2027\n8:00 cool', zone).problems[0]?.says).toContain('day or the month first');
    const settled = importNotebook('2/27/2027\n8:00 cool\n\n3/4/2027\n8:00 cool', zone);
    expect(settled.notes.map((n) => n.at.slice(0, 10))).toEqual(['2027-02-27', '2027-03-04']);
  });

  it('a weekday that is not that day is taken and told', () => {
    const { notes, problems } = importNotebook('Tuesday 14 October 2026\n8:00 cool', zone);
    expect(notes).toHaveLength(1);
    expect(problems).toEqual([
      { line: 1, text: 'Tuesday 14 October 2026', says: expect.stringContaining('which is a Wednesday') },
    ]);
  });

  it('a sentence that begins with a date is a sentence', () => {
    const text = '2026-10-16\n8:00 slow today\n14 October was better\nMay 5 dogs do this in spring';
    expect(importNotebook(text, zone).notes.map((n) => n.text)).toEqual([
      'slow today\n14 October was better\nMay 5 dogs do this in spring',
    ]);
  });
});

describe('times in front of a note', () => {
  it.each([
    ['10:40 all ate', '10:40', 'all ate'],
    ['10:40: all ate', '10:40', 'all ate'],
    ['10.40 all ate', '10:40', 'all ate'],
    ['7.50: all ate', '07:50', 'all ate'],
    ['1040 all ate', '10:40', 'all ate'],
    ['0640 all ate', '06:40', 'all ate'],
    ['10h40 all ate', '10:40', 'all ate'],
    ['10:40 am - all ate', '10:40', 'all ate'],
    ['10:40pm all ate', '22:40', 'all ate'],
    ['7 a.m. all ate', '07:00', 'all ate'],
    ['12:15 am all ate', '00:15', 'all ate'],
    ['12:15 pm all ate', '12:15', 'all ate'],
    ['- 10:40 all ate', '10:40', 'all ate'],
    ['* 10:40 – all ate', '10:40', 'all ate'],
    ['2026-10-14 10:40 all ate', '10:40', 'all ate'],
    ['14 October 2026, 10:40 all ate', '10:40', 'all ate'],
    ['Oct 14 1040 all ate', '10:40', 'all ate'],
    ['10:40 feet all good', '10:40', 'feet all good'],
    ['1040 feet all good', '10:40', 'feet all good'],
    ['10:40 miles is limping', '10:40', 'miles is limping'],
    ['1040 Miles is limping', '10:40', 'Miles is limping'],
    ['0735 mi 4. all ate', '07:35', 'mi 4. all ate'],
    ['1035 mi 4. all ate', '10:35', 'mi 4. all ate'],
    ['1105 mile eleven all ate', '11:05', 'mile eleven all ate'],
    // a minus sign is the note's own
    ['10:40 -18 and calm', '10:40', '-18 and calm'],
    ['10:40 - 18 and calm', '10:40', '18 and calm'],
    ['2026-10-14 10:40 -18 and calm', '10:40', '-18 and calm'],
    // two times: the note keeps both
    ['10:40-13:20 out and back', '10:40', '10:40-13:20 out and back'],
    ['10:40 to 13:20 out and back', '10:40', '10:40 to 13:20 out and back'],
  ])('%s', (line, hhmm, text) => {
    const { notes, problems } = importNotebook(`2026-10-14\n${line}`, zone);
    expect(problems).toEqual([]);
    expect(notes.map((n) => [n.at, n.text])).toEqual([[`2026-10-14T${hhmm}:00-08:00`, text]]);
  });

  it.each([
    '7.50 miles today',
    '1200 ft of climb',
    '1200 feet of climb',
    '2:50 hours out',
    '47.50 lb after supper',
    '1500 kcal each',
    '8 dogs out',
    '10 below',
    '- 18 this morning',
    '-18 this morning',
    '3456789 is the vet',
  ])('an amount is no time: %s', (line) => {
    const { notes, problems } = importNotebook(`2026-10-14\n${line}`, zone);
    expect(problems).toEqual([]);
    expect(notes.map((n) => [n.at, n.text])).toEqual([['2026-10-14T12:00:00-08:00', line]]);
  });

  it('an ISO time keeps its own offset', () => {
    const text = '2026-10-14T10:40:00-07:00 all ate\n2026-10-14T18:40Z by Colm: all ate';
    expect(importNotebook(text, zone).notes.map((n) => [n.at, n.by])).toEqual([
      ['2026-10-14T10:40:00-07:00', undefined],
      ['2026-10-14T18:40:00Z', 'Colm'],
    ]);
  });

  it('after midnight is the next day', () => {
    const { notes } = importNotebook('2026-10-14\n23:50 camped\n00:20 quiet\n01:30 snow', zone);
    expect(notes.map((n) => n.at.slice(0, 16))).toEqual(['2026-10-14T23:50', '2026-10-15T00:20', '2026-10-15T01:30']);
  });

  it('1:15 after 11:30 is taken as written, and told', () => {
    const { notes, problems } = importNotebook('2026-10-14\n11:30 out\n1:15 in', zone);
    expect(notes.map((n) => n.at.slice(11, 16))).toEqual(['11:30', '01:15']);
    expect(problems).toEqual([{ line: 3, text: '1:15 in', says: expect.stringContaining('am or pm') }]);
  });
});

describe('speakers', () => {
  it.each([
    ['10:40 [Colm] all ate', 'Colm', 'all ate'],
    ['10:40 by Colm: all ate', 'Colm', 'all ate'],
    ['10:40 By Anna Lee: all ate', 'Anna Lee', 'all ate'],
    ['[Colm] all ate', 'Colm', 'all ate'],
    ['10:40 [LF] web split', 'Hedda', '[LF] web split'],
    ['10:40 [BCS] 4', 'Hedda', '[BCS] 4'],
    ['10:40 by noon: all home', 'Hedda', 'by noon: all home'],
    ['10:40 [Colm] -18 here', 'Colm', '-18 here'],
  ])('%s', (line, by, text) => {
    const { notes } = importNotebook(`2026-10-14\n${line}`, { ...zone, by: 'Hedda' });
    expect(notes.map((n) => [n.by, n.text])).toEqual([[by, text]]);
  });

  it('with the people told, only their names count, whatever the letter case', () => {
    const { notes } = importNotebook('2026-10-14\n10:40 [colm] all ate\n10:50 [Marten] sore', {
      ...zone,
      people: ['Colm'],
    });
    expect(notes.map((n) => [n.by, n.text])).toEqual([
      ['Colm', 'all ate'],
      [undefined, '[Marten] sore'],
    ]);
  });
});

describe('where a note ends', () => {
  it('goes on till the blank line, and over deeper lines after it', () => {
    const text = '2026-10-14\n10:40 snack at five\nall ate\n\n   but one\n\nnext thing\n11:00 home';
    expect(importNotebook(text, zone).notes.map((n) => n.text)).toEqual([
      'snack at five\nall ate\n\nbut one',
      'next thing',
      'home',
    ]);
  });

  it('items of a list are notes of their own, deeper items are not', () => {
    const text = '2026-10-14\n- Sedge ate\n- Rook did not\n  - nor at supper\n\n10:40 feet\n  - all clean';
    expect(importNotebook(text, zone).notes.map((n) => n.text)).toEqual([
      'Sedge ate',
      'Rook did not\n- nor at supper',
      'feet\n- all clean',
    ]);
  });

  it('a time alone takes the words below it; a time with none is a problem', () => {
    const { notes, problems } = importNotebook('2026-10-14\n10:40\nall ate\n\n11:00\n\n12:00 home', zone);
    expect(notes.map((n) => [n.at.slice(11, 16), n.text])).toEqual([
      ['10:40', 'all ate'],
      ['12:00', 'home'],
    ]);
    expect(problems).toEqual([{ line: 5, text: '11:00', says: expect.stringContaining('no words') }]);
  });
});

describe('notes without a time', () => {
  const times = (text: string) => importNotebook(`2026-10-14\n${text}`, zone).notes.map((n) => n.at.slice(11, 19));
  it('stand evenly between two times', () => {
    expect(times('10:00 a\n\nb\n\nc\n\nd\n11:00 e')).toEqual([
      '10:00:00',
      '10:15:00',
      '10:30:00',
      '10:45:00',
      '11:00:00',
    ]);
  });
  it('stand ten minutes apart before the first and after the last', () => {
    expect(times('a\n\nb\n\n10:00 c\n\nd\n\ne')).toEqual(['09:40:00', '09:50:00', '10:00:00', '10:10:00', '10:20:00']);
  });
  it('begin at noon on a day with no times', () => {
    expect(times('a\n\nb\n\nc')).toEqual(['12:00:00', '12:10:00', '12:20:00']);
  });
  it('keep the order at one minute', () => {
    expect(times('10:00 a\n10:00 b\n10:00 c')).toEqual(['10:00:00', '10:00:01', '10:00:02']);
  });
  it('crowd up before midnight rather than leave the day', () => {
    const at = times(`23:50 a\n\n${'b\n\n'.repeat(30)}`);
    expect(new Set(at).size).toBe(31);
    expect([...at].sort()).toEqual(at);
    expect(at.at(-1)?.startsWith('23:59')).toBe(true);
  });
});
