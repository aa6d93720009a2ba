/** What was round an entry: the trail, the weather and the places in the team of its run and of its note. */
import type { Entry } from '../../grammar/entry.ts';
import type { Dog } from '../model.ts';
import { celsius, metresPerSecond } from '../records/index.ts';
import type { RunRecord } from '../records/types.ts';
import { type Around, isDenied } from './match.ts';
import { nameNow } from './names.ts';

interface Facts {
  surfaces: Set<string>;
  conditions: Set<string>;
  air: number[];
  wind: number[];
  /** "Juniper lead". */
  places: Set<string>;
}

const none = (): Facts => ({ surfaces: new Set(), conditions: new Set(), air: [], wind: [], places: new Set() });
const ofRuns = new WeakMap<RunRecord, Facts & { dogs: Set<string> }>();

function factsOf(run: RunRecord): Facts & { dogs: Set<string> } {
  let facts = ofRuns.get(run);
  if (facts) return facts;
  facts = { ...none(), dogs: new Set(run.dogs.map((d) => d.dog)) };
  for (const { entry } of run.surfaces) if (!isDenied(entry.assertion)) facts.surfaces.add(entry.surface);
  for (const { entry } of run.weather) if (!isDenied(entry.assertion)) facts.conditions.add(entry.condition);
  facts.air.push(...run.celsius);
  facts.wind.push(...run.windMetresPerSecond);
  for (const { dog, stretches } of run.dogs)
    for (const { position } of stretches) if (position) facts.places.add(`${dog} ${position}`);
  ofRuns.set(run, facts);
  return facts;
}

function factsToldIn(entries: readonly { entry: Entry }[], dogs: readonly Dog[]): Facts {
  const facts = none();
  for (const { entry: e } of entries) {
    if (isDenied(e.assertion)) continue;
    if (e.kind === 'trail') facts.surfaces.add(e.surface);
    else if (e.kind === 'weather') facts.conditions.add(e.condition);
    else if (e.kind === 'temperature') facts.air.push(celsius(e.value, e.unit));
    else if (e.kind === 'wind') facts.wind.push(metresPerSecond(e.value, e.unit));
    else if (e.kind === 'hitch' || e.kind === 'move')
      for (const dog of e.dogs) if (e.position) facts.places.add(`${nameNow(dogs, dog)} ${e.position}`);
  }
  return facts;
}

/**
 * The circumstances of a note: those of the runs that hold it and those it tells itself, so that a note that waits for
 * review has some too.
 */
export function aroundNote(
  entries: readonly { entry: Entry }[],
  runs: readonly RunRecord[],
  dogs: readonly Dog[],
): Around {
  const ofNote = factsToldIn(entries, dogs);
  const ofRun = runs.map(factsOf);
  const all: Facts[] = [ofNote, ...ofRun];
  return {
    ran: (dog) => ofRun.some((f) => f.dogs.has(dog)),
    surface: (s) => all.some((f) => f.surfaces.has(s)),
    condition: (c) => all.some((f) => f.conditions.has(c)),
    position: (dog, p) => all.some((f) => f.places.has(`${dog} ${p}`)),
    air: (test) => all.some((f) => f.air.some(test)),
    wind: (test) => all.some((f) => f.wind.some(test)),
    metres: runs.find((run) => run.metres !== undefined)?.metres,
  };
}
