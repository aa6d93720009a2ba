/** The tables of what is worked out: runs, the dogs in them, findings, food and water. */
import { ASSERTIONS, type Entry, type EntryOf, PARTS, SIGNS } from '../../grammar/entry.ts';
import { ranIn } from '../load/index.ts';
import type { RunDog, RunRecord, Said } from '../records/types.ts';
import type { SeasonData } from './season-data.ts';
import { type Column, metresCell, milesCell, table } from './table.ts';

const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0);
const mean = (numbers: readonly number[]) => (numbers.length === 0 ? undefined : sum(numbers) / numbers.length);
const unique = <T>(all: readonly T[]) => [...new Set(all)];

export const runs = table<RunRecord>({
  name: 'runs',
  title: 'Runs',
  says: 'One team’s run on one local day, worked out from the accepted entries.',
  primaryKey: ['id'],
  foreignKeys: [],
  columns: [
    {
      name: 'id',
      type: 'string',
      says: 'Id of the run’s first note; a second driver’s team has ~driver behind it.',
      required: true,
      of: (run) => run.id,
    },
    { name: 'day', type: 'date', says: 'Local day.', required: true, of: (run) => run.day },
    { name: 'driver', type: 'string', says: 'Who drove; empty for the musher.', of: (run) => run.driver },
    { name: 'started', type: 'datetime', says: 'Start, where it is known.', of: (run) => run.startedAt },
    { name: 'finished', type: 'datetime', says: 'Back, where it is known.', of: (run) => run.finishedAt },
    {
      name: 'metres',
      type: 'number',
      unit: 'm',
      says: 'Length; empty where not known.',
      of: (run) => metresCell(run.metres),
    },
    {
      name: 'miles',
      type: 'number',
      unit: '[mi_i]',
      says: 'The same length in miles.',
      of: (run) => milesCell(run.metres),
    },
    {
      name: 'metres_from',
      type: 'string',
      says: 'Where the length came from.',
      oneOf: ['corrected', 'total', 'last-mark', 'legs', 'unknown'],
      of: (run) => run.metresFrom,
    },
    { name: 'minutes', type: 'number', unit: 'min', says: 'How long.', of: (run) => metresCell(run.minutes) },
    { name: 'dogs', type: 'integer', unit: '1', says: 'Dogs in the team.', of: (run) => run.dogs.filter(ranIn).length },
    { name: 'stops', type: 'integer', unit: '1', says: 'Stops told of.', of: (run) => run.stops.length },
    { name: 'surfaces', type: 'array', says: 'Trail.', of: (run) => unique(run.surfaces.map((s) => s.entry.surface)) },
    {
      name: 'weather',
      type: 'array',
      says: 'Weather.',
      of: (run) => unique(run.weather.map((s) => s.entry.condition)),
    },
    {
      name: 'celsius',
      type: 'number',
      unit: 'Cel',
      says: 'Mean of the air temperatures told.',
      of: (run) => metresCell(mean(run.celsius)),
    },
    {
      name: 'wind_metres_per_second',
      type: 'number',
      unit: 'm/s',
      says: 'Mean of the wind speeds told.',
      of: (run) => metresCell(mean(run.windMetresPerSecond)),
    },
    {
      name: 'does_not_fit',
      type: 'array',
      says: 'What does not fit together in its notes.',
      of: (run) => run.conflicts.map((c) => c.says),
    },
  ],
  rows: (season) => season.runs,
});

interface RunDogRow {
  run: RunRecord;
  in: RunDog;
  id?: string;
}
const position = (name: 'lead' | 'swing' | 'team' | 'wheel' | 'unknown'): Column<RunDogRow> => ({
  name: `metres_${name === 'unknown' ? 'position_unknown' : name}`,
  type: 'number',
  unit: 'm',
  says: name === 'unknown' ? 'Distance in a place that was not told.' : `Distance in ${name}.`,
  of: (row) => metresCell(row.in.byPosition[name]),
});
const side = (name: 'left' | 'right' | 'unknown'): Column<RunDogRow> => ({
  name: `metres_${name === 'unknown' ? 'side_unknown' : name}`,
  type: 'number',
  unit: 'm',
  says: name === 'unknown' ? 'Distance on a side that was not told.' : `Distance on the ${name}.`,
  of: (row) => metresCell(row.in.bySide[name]),
});

export const runDogs = table<RunDogRow>({
  name: 'run-dogs',
  title: 'Dogs in runs',
  says: 'One dog in one run.',
  primaryKey: ['run_id', 'dog'],
  foreignKeys: [
    { fields: 'run_id', table: 'runs', key: 'id' },
    { fields: 'dog_id', table: 'dogs', key: 'id' },
  ],
  columns: [
    { name: 'run_id', type: 'string', says: 'The run.', required: true, of: ({ run }) => run.id },
    { name: 'dog', type: 'string', says: 'Call name of now.', required: true, of: (row) => row.in.dog },
    { name: 'dog_id', type: 'string', says: 'The dog; empty for one not on the roster.', of: ({ id }) => id },
    { name: 'day', type: 'date', says: 'Local day of the run.', required: true, of: ({ run }) => run.day },
    {
      name: 'ran',
      type: 'boolean',
      says: 'It was in the team; false for a dog that was only told of.',
      required: true,
      of: (row) => ranIn(row.in),
    },
    {
      name: 'metres',
      type: 'number',
      unit: 'm',
      says: 'Distance under harness; empty while it can’t be known.',
      of: (row) => metresCell(row.in.metres),
    },
    {
      name: 'miles',
      type: 'number',
      unit: '[mi_i]',
      says: 'The same in miles.',
      of: (row) => milesCell(row.in.metres),
    },
    {
      name: 'minutes',
      type: 'number',
      unit: 'min',
      says: 'Time under harness.',
      of: (row) => metresCell(row.in.minutes),
    },
    {
      name: 'position',
      type: 'string',
      says: 'Place at the start.',
      oneOf: ['lead', 'swing', 'team', 'wheel'],
      of: (row) => row.in.stretches[0]?.position,
    },
    {
      name: 'side',
      type: 'string',
      says: 'Side at the start.',
      oneOf: ['left', 'right'],
      of: (row) => row.in.stretches[0]?.side,
    },
    ...(['lead', 'swing', 'team', 'wheel', 'unknown'] as const).map(position),
    ...(['left', 'right', 'unknown'] as const).map(side),
    {
      name: 'metres_booted',
      type: 'number',
      unit: 'm',
      says: 'Distance with at least one bootie on; empty where nothing was told.',
      of: (row) => metresCell(row.in.metresBooted),
    },
    {
      name: 'left_team',
      type: 'string',
      says: 'How it left the team, where it did not come back in.',
      oneOf: ['dropped', 'loaded'],
      of: (row) => row.in.left?.manner,
    },
    {
      name: 'left_at_metres',
      type: 'number',
      unit: 'm',
      says: 'Where it left.',
      of: (row) => metresCell(row.in.left?.atMetres),
    },
    {
      name: 'attitude',
      type: 'array',
      says: 'How it went.',
      of: (row) => unique(row.in.attitude.map((s) => s.entry.manner)),
    },
  ],
  *rows(season) {
    for (const run of season.runs) for (const one of run.dogs) yield { run, in: one, id: season.dog(one.dog)?.id };
  },
});

/** One entry told of one dog. */
interface ToldRow<K extends 'finding' | 'intake'> {
  said: Said<EntryOf<K>>;
  dog: string;
  id?: string;
  day: string;
  run?: string;
}

/** Every entry of a kind, once a dog; with its run where it has one, the first run of two. */
function* toldOf<K extends 'finding' | 'intake'>(
  season: SeasonData,
  kind: K,
  list: (dog: RunDog) => Said<EntryOf<K>>[],
): Iterable<ToldRow<K>> {
  const seen = new Set<string>();
  const fresh = (id: string, dog: string) => {
    const key = `${id} ${dog}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  };
  for (const run of season.runs)
    for (const one of run.dogs)
      for (const said of list(one))
        if (fresh(said.id, one.dog))
          yield { said, dog: one.dog, id: season.dog(one.dog)?.id, day: run.day, run: run.id };
  for (const { day, said: all } of season.yard)
    for (const said of all) {
      if (said.entry.kind !== kind) continue;
      for (const dog of said.dogs)
        if (fresh(said.id, dog)) yield { said: said as unknown as Said<EntryOf<K>>, dog, id: season.dog(dog)?.id, day };
    }
}

function toldColumns<K extends 'finding' | 'intake'>(): Column<ToldRow<K>>[] {
  return [
    { name: 'entry_id', type: 'string', says: 'The entry that tells it.', required: true, of: ({ said }) => said.id },
    {
      name: 'dog',
      type: 'string',
      says: 'Call name of now; * for a team nobody told.',
      required: true,
      of: ({ dog }) => dog,
    },
    { name: 'dog_id', type: 'string', says: 'The dog; empty for one not on the roster.', of: ({ id }) => id },
    { name: 'note_id', type: 'string', says: 'The note it stands in.', required: true, of: ({ said }) => said.note },
    { name: 'run_id', type: 'string', says: 'The run it was told in; empty for the yard.', of: ({ run }) => run },
    { name: 'day', type: 'date', says: 'Local day.', required: true, of: ({ day }) => day },
    { name: 'at', type: 'datetime', says: 'When it was told.', required: true, of: ({ said }) => said.at },
    {
      name: 'assertion',
      type: 'string',
      says: 'Whether it is so.',
      oneOf: ASSERTIONS,
      of: ({ said }) => (said.entry as Entry).assertion ?? 'present',
    },
  ];
}
const TOLD_KEYS = {
  primaryKey: ['entry_id', 'dog'],
  foreignKeys: [
    { fields: 'entry_id', table: 'entries', key: 'id' },
    { fields: 'note_id', table: 'notes', key: 'id' },
    { fields: 'run_id', table: 'runs', key: 'id' },
    { fields: 'dog_id', table: 'dogs', key: 'id' },
  ],
} as const;

export const findings = table<ToldRow<'finding'>>({
  name: 'findings',
  title: 'Findings',
  says: 'What was seen on a dog, one row a dog, from accepted entries. Words as they were said: no grade and no diagnosis.',
  ...TOLD_KEYS,
  columns: [
    ...toldColumns<'finding'>(),
    {
      name: 'part',
      type: 'string',
      says: 'Part of the body, where one was named.',
      oneOf: PARTS,
      of: ({ said }) => said.entry.part,
    },
    {
      name: 'side',
      type: 'string',
      says: 'Side, where one was named.',
      oneOf: ['left', 'right', 'both'],
      of: ({ said }) => said.entry.side,
    },
    {
      name: 'end',
      type: 'string',
      says: 'Front or hind, for parts of a foot or leg.',
      oneOf: ['front', 'hind', 'both'],
      of: ({ said }) => said.entry.end,
    },
    {
      name: 'sign',
      type: 'string',
      says: 'What was seen; any: nothing particular named.',
      oneOf: SIGNS,
      required: true,
      of: ({ said }) => said.entry.sign,
    },
    {
      name: 'severity',
      type: 'string',
      says: 'How bad, in the speaker’s words.',
      oneOf: ['mild', 'moderate', 'severe'],
      of: ({ said }) => said.entry.severity,
    },
    {
      name: 'trend',
      type: 'string',
      says: 'Whether it changes.',
      oneOf: ['better', 'worse', 'same'],
      of: ({ said }) => said.entry.trend,
    },
  ],
  rows: (season) => toldOf(season, 'finding', (dog) => dog.findings),
});

export const intake = table<ToldRow<'intake'>>({
  name: 'intake',
  title: 'Food and water',
  says: 'What a dog ate and drank, one row a dog, from accepted entries.',
  ...TOLD_KEYS,
  columns: [
    ...toldColumns<'intake'>(),
    {
      name: 'what',
      type: 'string',
      says: 'What it was.',
      oneOf: ['water', 'snack', 'meal'],
      required: true,
      of: ({ said }) => said.entry.what,
    },
    {
      name: 'took',
      type: 'string',
      says: 'How much of it.',
      oneOf: ['all', 'most', 'some', 'none'],
      required: true,
      of: ({ said }) => said.entry.took,
    },
    { name: 'item', type: 'string', says: 'The food, as it was said.', of: ({ said }) => said.entry.item },
    { name: 'amount', type: 'number', says: 'How much each dog took, in `unit`.', of: ({ said }) => said.entry.amount },
    { name: 'unit', type: 'string', says: 'The unit that was said.', of: ({ said }) => said.entry.unit },
  ],
  rows: (season) => toldOf(season, 'intake', (dog) => dog.intake),
});
