/** From reviewed notes through run records to load and episodes: the rooms fit together. */
import { expect, it } from 'vitest';
import type { Entry } from '../../grammar/entry.ts';
import { loadOf } from '../../server/load/index.ts';
import type { Note } from '../../server/model.ts';
import { runsOf } from '../../server/records/index.ts';
import { episodesOf } from '../../server/watch/index.ts';
import { dog, MILE, note, SETTINGS, season } from '../records/build.ts';
import { finding } from './build.ts';

const DOGS = [dog('Juniper', { formerNames: ['Berry'] }), dog('Moss'), dog('Otter')];
const NAMES = DOGS.map((one) => one.name);
const lineup: Entry = { kind: 'hitch', dogs: ['Juniper', 'Moss'], position: 'lead' };
const total = (value: number): Entry => ({ kind: 'distance', dogs: [], measure: 'total', value, unit: 'mi' });

function worked(notes: Note[], on: string) {
  const { runs, yard } = runsOf(season(notes), DOGS, SETTINGS);
  return { runs, yard, load: loadOf(runs, NAMES, on), watch: episodesOf(runs, yard, NAMES, { on }) };
}

it('a wrist in two runs, healed in the yard between, has the miles of the run between', () => {
  const notes = [
    note('2027-01-04T10:00', [lineup]),
    note('2027-01-04T11:00', [finding('Juniper', 'wrist left sore')]),
    note('2027-01-04T14:00', [total(12)]),
    note('2027-01-06T09:00', [finding('Juniper', 'wrist left any resolved')]),
    note('2027-01-08T10:00', [lineup, total(20)]),
    note('2027-01-12T10:00', [lineup, total(8)]),
    // Under the name she had then; what was accepted stays hers.
    note('2027-01-12T12:00', [{ ...finding('Berry', 'wrist left sore') }]),
    note('2027-01-12T15:00', [finding('Otter', 'coughing')]),
  ];
  const { load, watch, runs } = worked(notes, '2027-01-13');
  expect(load.map(({ dog: name, metres28 }) => [name, metres28 / MILE])).toEqual([
    ['Juniper', 40],
    ['Moss', 40],
    ['Otter', 0],
  ]);
  const [second, cough, first] = watch.episodes;
  expect(cough).toMatchObject({ dog: 'Otter', state: 'open', number: 1 });
  expect(second).toMatchObject({ dog: 'Juniper', state: 'open', number: 2, from: '2027-01-12' });
  expect(second?.seen[0]?.run).toBe(runs.at(-1)?.id);
  expect(second?.sinceBefore).toMatchObject({ episode: first?.id, days: 8, runs: 1 });
  expect((second?.sinceBefore?.metres ?? 0) / MILE).toBeCloseTo(20, 9);
  expect((second?.onset.metres7 ?? 0) / MILE).toBeCloseTo(20, 9);
  expect(first).toMatchObject({ state: 'over', until: '2027-01-06' });
});

it('what nobody has reviewed, or a person removed, opens nothing', () => {
  const told = note('2027-01-04T11:00', [finding('Juniper', 'collapsed'), finding('Moss', 'dark-urine')]);
  const [first, second] = told.entries;
  const unreviewed: Note = {
    ...told,
    entries: [
      { ...(first as NonNullable<typeof first>), state: 'proposed' },
      { ...(second as NonNullable<typeof second>), state: 'removed' },
    ],
  };
  const { watch } = worked([note('2027-01-04T10:00', [lineup, total(5)]), unreviewed], '2027-01-04');
  expect(watch.episodes).toEqual([]);
  expect(watch.cautions).toEqual([]);
});

it('a finding of a whole team with no line-up known is kept apart, not lost', () => {
  const { watch } = worked([note('2027-01-04T10:00', [{ ...finding('*', 'loose-stool') }])], '2027-01-04');
  expect(watch.episodes).toEqual([]);
  expect(watch.noDog.map(({ sign, day }) => [sign, day])).toEqual([['loose-stool', '2027-01-04']]);
});
