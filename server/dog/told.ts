/** What was told of a dog in a season, entry by entry: what it ate and drank, and what was measured. */
import type { EntryOf } from '../../grammar/entry.ts';
import type { RunDog, RunRecord, Said, YardRecord } from '../records/types.ts';
import { celsius, kilograms } from '../records/units.ts';
import type { Appetite, Measured } from './schema.ts';

/** The records of one season. */
export interface SeasonTold {
  runs: readonly RunRecord[];
  yard: readonly YardRecord[];
}

const LIST = { intake: 'intake', measure: 'measures' } as const satisfies Record<string, keyof RunDog>;
type ToldKind = keyof typeof LIST;

interface ToldEntry<K extends ToldKind> {
  said: Said<EntryOf<K>>;
  day: string;
  run?: string;
}

/** Every accepted entry of a kind told of a dog up to a day, each once, oldest first; a run's entries have its day. */
function toldOf<K extends ToldKind>({ runs, yard }: SeasonTold, dog: string, kind: K, on: string): ToldEntry<K>[] {
  const found = new Map<string, ToldEntry<K>>();
  const keep = (one: ToldEntry<K>) => {
    if (!found.has(one.said.id)) found.set(one.said.id, one);
  };
  for (const run of runs) {
    if (run.day > on) continue;
    for (const mine of run.dogs)
      if (mine.dog === dog)
        for (const said of mine[LIST[kind]] as unknown as Said<EntryOf<K>>[]) keep({ said, day: run.day, run: run.id });
  }
  for (const { day, said: all } of yard) {
    if (day > on) continue;
    for (const said of all)
      if (said.entry.kind === kind && said.dogs.includes(dog)) keep({ said: said as Said as Said<EntryOf<K>>, day });
  }
  return [...found.values()].sort(
    (a, b) => Date.parse(a.said.at) - Date.parse(b.said.at) || (a.said.id < b.said.id ? -1 : 1),
  );
}

const placeOf = <K extends ToldKind>({ said, day, run }: ToldEntry<K>) => ({
  id: said.id,
  note: said.note,
  at: said.at,
  day,
  ...(run === undefined ? {} : { run }),
});

/** What it took of each snack, meal and water. */
export function appetiteOf(season: SeasonTold, dog: string, on: string): Appetite[] {
  return toldOf(season, dog, 'intake', on).map((one) => {
    const { what, took, item, amount, unit, assertion } = one.said.entry;
    return {
      ...placeOf(one),
      what,
      took,
      ...(item === undefined ? {} : { item }),
      ...(amount === undefined ? {} : { amount }),
      ...(unit === undefined ? {} : { unit }),
      ...(assertion === undefined ? {} : { assertion }),
    };
  });
}

/** What was measured of it: weight, temperature, body condition, heart rate. */
export function measuresOf(season: SeasonTold, dog: string, on: string): Measured[] {
  return toldOf(season, dog, 'measure', on).map((one) => {
    const { quantity, value, unit, assertion } = one.said.entry;
    const known = inRecordUnits(one.said.entry);
    return {
      ...placeOf(one),
      quantity,
      value,
      ...(unit === undefined ? {} : { unit }),
      ...(assertion === undefined ? {} : { assertion }),
      ...(known === undefined ? {} : { inRecordUnits: known }),
    };
  });
}

function inRecordUnits({ quantity, value, unit }: EntryOf<'measure'>): number | undefined {
  switch (quantity) {
    case 'weight':
      return unit === 'lb' || unit === 'kg' ? kilograms(value, unit) : undefined;
    case 'temperature':
      return unit === 'F' || unit === 'C' ? celsius(value, unit) : undefined;
    default:
      return value;
  }
}
