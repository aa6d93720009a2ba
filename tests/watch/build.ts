/** Histories for the tests, written short: `tell('2027-01-03', 'Juniper', 'wrist left sore mild')`. Invented dogs. */
import { ASSERTIONS, type EntryOf, PARTS, SIGNS } from '../../grammar/entry.ts';
import type { Said, YardRecord } from '../../server/records/types.ts';
import type { WatchRun } from '../../server/watch/index.ts';
import { dogIn, run } from '../load/build.ts';

type Finding = EntryOf<'finding'>;
type Told = Said<Finding>;

const FIELDS: [keyof Finding, readonly string[]][] = [
  ['part', PARTS],
  ['sign', SIGNS],
  ['assertion', ASSERTIONS],
  ['side', ['left', 'right']],
  ['end', ['front', 'hind']],
  ['severity', ['mild', 'moderate', 'severe']],
  ['trend', ['better', 'worse', 'same']],
];

/** A finding from its words: "web right front split mild", "foot sides-both ends-both sore", "wrist left any resolved". */
export function finding(dog: string, words: string): Finding {
  const entry: Record<string, unknown> = { kind: 'finding', dogs: [dog] };
  for (const word of words.split(' ')) {
    const field = FIELDS.find(([, values]) => values.includes(word))?.[0];
    if (word === 'sides-both') entry.side = 'both';
    else if (word === 'ends-both') entry.end = 'both';
    else if (field) entry[field] = word;
    else throw new Error(`"${word}" is no word of a finding.`);
  }
  return entry as Finding;
}

let made = 0;
/** One note: findings of one dog, in the order they were said. `when` is a day, or a day with a time. */
export function note(when: string, dog: string, ...findings: string[]): Told[] {
  const id = `note-${++made}`;
  const at = `${when.length > 10 ? when : `${when}T12:00`}:00-07:00`;
  return findings.map((words, i) => ({
    entry: { ...finding(dog, words), span: [i * 10, i * 10 + 9] },
    id: `${id}-${i}`,
    note: id,
    at,
  }));
}

/** A run of some metres with the notes told on it; every dog of `metres` ran. */
export function runWith(day: string, metres: Record<string, number | undefined>, ...notes: Told[][]): WatchRun {
  const told = notes.flat();
  const dogs = new Set([...Object.keys(metres), ...told.flatMap((said) => said.entry.dogs)]);
  const plain = run(day, {}, { id: `run-${day}-${++made}` });
  return {
    ...plain,
    dogs: [...dogs].map((dog) => ({
      ...dogIn(dog, metres[dog], dog in metres ? {} : { stretches: [] }),
      findings: told.filter((said) => said.entry.dogs.includes(dog)),
    })),
  };
}

/** What was told in the yard on a day. */
export function yardWith(day: string, ...notes: Told[][]): YardRecord {
  return { day, said: notes.flat().map((said) => ({ ...said, dogs: said.entry.dogs })) };
}

/** A day's note in the yard: the shortest way to tell a history. */
export function tell(when: string, dog: string, ...findings: string[]): YardRecord {
  return yardWith(when.slice(0, 10), note(when, dog, ...findings));
}
