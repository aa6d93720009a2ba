/** What was round an entry: the trail, the weather and the places in the team of its run and of its note. */
import type { Dog, Note } from '../model.ts';
import { celsius, currentName, metresPerSecond } from '../records/index.ts';
import type { RunRecord } from '../records/types.ts';
import { type Around, isDenied } from './match.ts';
import { entriesOf } from './postings.ts';

const NONE: ReadonlySet<string> = new Set();

/**
 * The circumstances of a note: those of the runs that hold it and those it tells itself, so that a note that waits for
 * review has some too.
 */
export function aroundNote(note: Note, runs: readonly RunRecord[], dogs: Dog[]): Around {
  const surfaces = new Set<string>();
  const conditions = new Set<string>();
  const air: number[] = [];
  const wind: number[] = [];
  const positions = new Map<string, Set<string>>();
  const place = (dog: string, position: string | undefined) => {
    if (!position) return;
    const mine = positions.get(dog);
    if (mine) mine.add(position);
    else positions.set(dog, new Set([position]));
  };
  for (const run of runs) {
    for (const { entry } of run.surfaces) if (!isDenied(entry.assertion)) surfaces.add(entry.surface);
    for (const { entry } of run.weather) if (!isDenied(entry.assertion)) conditions.add(entry.condition);
    air.push(...run.celsius);
    wind.push(...run.windMetresPerSecond);
    for (const { dog, stretches } of run.dogs) for (const { position } of stretches) place(dog, position);
  }
  for (const { entry: e } of entriesOf(note)) {
    if (isDenied(e.assertion)) continue;
    if (e.kind === 'trail') surfaces.add(e.surface);
    else if (e.kind === 'weather') conditions.add(e.condition);
    else if (e.kind === 'temperature') air.push(celsius(e.value, e.unit));
    else if (e.kind === 'wind') wind.push(metresPerSecond(e.value, e.unit));
    else if (e.kind === 'hitch' || e.kind === 'move')
      for (const dog of e.dogs) place(currentName(dogs, dog), e.position);
  }
  const metres = runs.find((run) => run.metres !== undefined)?.metres;
  return {
    ...(runs.length ? { runDogs: new Set(runs.flatMap((run) => run.dogs.map((d) => d.dog))) } : {}),
    surfaces,
    conditions,
    air,
    wind,
    ...(metres === undefined ? {} : { metres }),
    positionsOf: (dog) => positions.get(dog) ?? NONE,
  };
}
