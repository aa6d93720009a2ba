/** One dog's season told from small records worked out by hand. */
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../grammar/entry.ts';
import { storyOf } from '../../server/dog/index.ts';
import { indexLoad } from '../../server/load/index.ts';
import type { Dog, Note } from '../../server/model.ts';
import type { RunRecord, Said, YardRecord } from '../../server/records/types.ts';
import { episodesOf } from '../../server/watch/index.ts';
import { dogIn, run } from '../load/build.ts';
import { note, runWith, tell } from '../watch/build.ts';

const JUNIPER = { id: 'j', name: 'Juniper', sex: 'F', aliases: [], formerNames: ['June'], heard: [], retired: false };
const LISTS = { care: [], intake: [], booties: [], attitude: [], measures: [], findings: [] };

interface Told {
  runs?: object[];
  yard?: YardRecord[];
  earlier?: object[];
  notes?: Partial<Note>[];
  season?: string;
  on: string;
}
function story({ runs = [], yard = [], earlier = [], notes = [], season = '2026-27', on }: Told) {
  const whole = (some: object[]) =>
    (some as RunRecord[]).map((one) => ({ ...one, dogs: one.dogs.map((dog) => ({ ...LISTS, ...dog })) }));
  const all = [...whole(earlier), ...whole(runs)];
  const load = indexLoad(all);
  return storyOf({
    dog: JUNIPER as unknown as Dog,
    season,
    on,
    told: { runs: whole(runs), yard },
    load,
    watch: episodesOf(all, yard, ['Juniper'], { on }, load),
    notes: notes.map((one, i) => ({ id: `n${i}`, aside: false, entries: [], ...one }) as Note),
    runsOfNote: new Map([['n0', ['run-a', 'run-b']]]),
    isDog: (name) => name === 'Juniper' || name === 'June',
  });
}
const said = (at: string, entry: object, id = `${at}-${JSON.stringify(entry)}`): Said =>
  ({ entry: { dogs: ['Juniper'], ...entry } as Entry, id, note: `note of ${at}`, at }) as Said;

describe('days and runs', () => {
  it('every elapsed day from the first run to the day asked for, the lines as load has them', () => {
    const told = story({
      earlier: [run('2026-06-20', { Juniper: 7000 })],
      runs: [run('2026-07-02', { Juniper: 1000 }), run('2026-07-04', { Juniper: 500, Moss: 9 }, { id: 'r' })],
      on: '2026-07-20',
    });
    expect(told.days.map(({ day }) => day)).toEqual(
      Array.from({ length: 20 }, (_, i) => `2026-07-${String(i + 1).padStart(2, '0')}`),
    );
    expect(told.days[3]).toEqual({ day: '2026-07-04', metres: 500, minutes: 0, runs: 1, sum7: 1500 });
    // 28 days of record on 17 July: 20 June is the first of them. 8,500 m in four weeks are 2,125 m a week.
    expect(told.days.findIndex((day) => day.meanWeek28 !== undefined)).toBe(16);
    expect(told.days[16]).toMatchObject({ day: '2026-07-17', sum7: 0, meanWeek28: 2125 });
    expect(told.runs.map(({ day, metres }) => [day, metres])).toEqual([
      ['2026-07-02', 1000],
      ['2026-07-04', 500],
    ]);
    expect(told.load).toMatchObject({ on: '2026-07-20', daysSinceLastRun: 16, metres28: 1500 });
  });

  it('a run after the day, a run of another dog, and a run the dog only was told of are none of its own', () => {
    const told = story({
      runs: [
        run('2026-11-01', [dogIn('Juniper', undefined, { stretches: [] })]),
        run('2026-11-02', { Moss: 4000 }),
        run('2026-11-09', { Juniper: 4000 }),
      ],
      on: '2026-11-05',
    });
    expect(told.runs).toEqual([]);
    expect(told.days).toEqual([]);
    expect(told.load.daysOfRecord).toBe(0);
  });
});

describe('findings', () => {
  it('counts episodes and days by site, the most first, and numbers what came back', () => {
    const told = story({
      runs: [
        runWith('2026-10-01', { Juniper: 5000 }, note('2026-10-01', 'Juniper', 'wrist left sore')),
        runWith('2026-10-10', { Juniper: 6000 }),
        runWith('2026-10-20', { Juniper: 7000 }),
        runWith(
          '2026-12-01',
          { Juniper: 8000 },
          note('2026-12-01', 'Juniper', 'wrist left sore', 'pad left front cut'),
        ),
      ],
      yard: [tell('2026-10-02', 'Juniper', 'wrist left swollen'), tell('2026-10-03', 'Moss', 'wrist left sore')],
      on: '2026-12-05',
    });
    expect(told.sites).toEqual([
      {
        site: expect.objectContaining({ label: 'left wrist' }),
        episodes: 2,
        doubtful: 0,
        days: ['2026-10-01', '2026-10-02', '2026-12-01'],
        open: true,
      },
      {
        site: expect.objectContaining({ label: 'left front pad' }),
        episodes: 1,
        doubtful: 0,
        days: ['2026-12-01'],
        open: true,
      },
    ]);
    const second = told.episodes.find((one) => one.site.label === 'left wrist' && one.number === 2);
    expect(second).toMatchObject({
      from: '2026-12-01',
      state: 'open',
      sinceBefore: { days: 60, runs: 2, metres: 13000 },
    });
  });

  it('an episode of the season before has its number there, and comes back as known', () => {
    const told = story({
      earlier: [runWith('2026-03-01', { Juniper: 5000 }, note('2026-03-01', 'Juniper', 'wrist left sore'))],
      runs: [runWith('2026-10-01', { Juniper: 5000 }, note('2026-10-01', 'Juniper', 'wrist left sore'))],
      on: '2026-10-02',
    });
    expect(told.episodes).toHaveLength(1);
    expect(told.episodes[0]).toMatchObject({ number: 1, numberInAll: 2, sinceBefore: { days: 214, runs: 0 } });
    expect(told.sites[0]?.days).toEqual(['2026-10-01']);
  });

  it('what was only possible is counted apart; a finding after the day not at all', () => {
    const told = story({
      yard: [
        tell('2026-10-01', 'Juniper', 'wrist left sore possible'),
        tell('2026-10-09', 'Juniper', 'knee left sore'),
      ],
      on: '2026-10-05',
    });
    expect(told.sites).toEqual([expect.objectContaining({ episodes: 0, doubtful: 1, days: ['2026-10-01'] })]);
  });
});

describe('what was told of it', () => {
  const intake = said('2026-11-02T10:00:00-09:00', { kind: 'intake', what: 'snack', took: 'none' }, 'i1');
  it('appetite and measures oldest first, each once, in the run where there is one', () => {
    const told = story({
      runs: [
        run('2026-11-02', [dogIn('Juniper', 10, { intake: [intake] } as object)], { id: 'r' }),
        run('2026-11-03', [dogIn('Moss', 10, { intake: [said('2026-11-03T10:00:00-09:00', {})] } as object)]),
      ],
      yard: [
        { day: '2026-11-02', said: [{ ...intake, dogs: ['Juniper'] }] },
        {
          day: '2026-11-01',
          said: [
            { ...said('2026-11-01T08:00:00-09:00', { kind: 'intake', what: 'meal', took: 'all' }), dogs: ['Juniper'] },
            {
              ...said('2026-11-01T09:00:00-09:00', { kind: 'measure', quantity: 'weight', value: 50, unit: 'lb' }),
              dogs: ['Juniper'],
            },
            {
              ...said('2026-11-01T09:05:00-09:00', { kind: 'measure', quantity: 'weight', value: 50 }),
              dogs: ['Juniper'],
            },
            {
              ...said('2026-11-01T09:10:00-09:00', { kind: 'measure', quantity: 'temperature', value: 101, unit: 'F' }),
              dogs: ['Juniper'],
            },
            {
              ...said('2026-11-01T09:20:00-09:00', { kind: 'measure', quantity: 'weight', value: 44, unit: 'lb' }),
              dogs: ['Moss'],
            },
          ],
        },
      ],
      on: '2026-11-30',
    });
    expect(told.appetite.map(({ day, what, took, run: in_ }) => [day, what, took, in_])).toEqual([
      ['2026-11-01', 'meal', 'all', undefined],
      ['2026-11-02', 'snack', 'none', 'r'],
    ]);
    expect(told.measures.map(({ quantity, value, unit }) => [quantity, value, unit])).toEqual([
      ['weight', 50, 'lb'],
      ['weight', 50, undefined],
      ['temperature', 101, 'F'],
    ]);
    // 1 lb = 0.453 592 37 kg (NIST SP 811, appendix B.8); a weight without a unit is none that could be drawn.
    expect(told.measures[0]?.inRecordUnits).toBeCloseTo(22.6796185, 6);
    expect(told.measures[1]).not.toHaveProperty('inRecordUnits');
    expect(told.measures[2]?.inRecordUnits).toBeCloseTo(38.333, 3);
  });

  it('notes newest first, with the words marked, by former names too; put aside, removed and later ones are not', () => {
    const entry = (state: string, dogs: string[], span?: [number, number], kind = 'attitude') =>
      ({
        id: 'e',
        from: 'read',
        state,
        entry: { kind, dogs, ...(span ? { span } : {}) },
      }) as unknown as Note['entries'][number];
    const told = story({
      notes: [
        {
          at: '2026-11-02T10:00:00-09:00',
          text: 'June pulled hard',
          entries: [entry('accepted', ['June'], [0, 4]), entry('proposed', ['June'], [3, 11])],
        },
        {
          at: '2026-11-03T10:00:00-09:00',
          text: 'Juniper in lead',
          entries: [entry('accepted', ['Juniper'], [0, 99], 'hitch')],
        },
        { at: '2026-11-04T10:00:00-09:00', text: 'aside', aside: true, entries: [entry('accepted', ['Juniper'])] },
        { at: '2026-11-04T11:00:00-09:00', text: 'removed', entries: [entry('removed', ['Juniper'])] },
        { at: '2026-11-04T12:00:00-09:00', text: 'Moss', entries: [entry('accepted', ['Moss'])] },
        { at: '2026-11-30T12:00:00-09:00', text: 'later', entries: [entry('accepted', ['Juniper'])] },
      ],
      on: '2026-11-20',
    });
    expect(told.notes).toEqual([
      {
        id: 'n1',
        text: 'Juniper in lead',
        at: '2026-11-03T10:00:00-09:00',
        waiting: false,
        placeOnly: true,
        marks: [[0, 15]],
      },
      {
        id: 'n0',
        text: 'June pulled hard',
        at: '2026-11-02T10:00:00-09:00',
        run: 'run-a',
        waiting: true,
        placeOnly: false,
        marks: [[0, 11]],
      },
    ]);
  });
});
