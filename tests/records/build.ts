/** Notes, seasons and runs for the tests, written short. Every name is invented. */
import type { Entry, Span } from '../../grammar/entry.ts';
import {
  type Dog,
  type Note,
  type RunChoices,
  type Season,
  type Settings,
  seasonOf,
  settingsSchema,
} from '../../server/model.ts';
import { type RunDog, type RunRecord, runsOf, type YardRecord } from '../../server/records/index.ts';

/** A mile in metres (NIST SP 811, appendix B.8). */
export const MILE = 1609.344;

export const SETTINGS: Settings = settingsSchema.parse({});
export const METRIC: Settings = settingsSchema.parse({ units: 'metric' });

/** An id that sorts as its number does. */
export function id(n: number): string {
  return `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
}

export function dog(name: string, more: Partial<Dog> = {}): Dog {
  return {
    id: id(name.length * 1000 + name.charCodeAt(0)),
    name,
    sex: 'F',
    aliases: [],
    formerNames: [],
    heard: [],
    retired: false,
    ...more,
  };
}

/** An entry told by the words it was read from: `[entry, words]`; the span is looked up in the text. */
export type TestEntry = Entry | [Entry, string];

let made = 0;
/**
 * A reviewed note. Its text may be left out where no span matters.
 * @param at local time; without an offset it is that of the test kennel, -09:00
 */
export function note(at: string, entries: TestEntry[], more: Partial<Note> = {}): Note {
  const n = ++made;
  const text = more.text ?? `note ${n}`;
  const full = at.length > 16 ? at : `${at}:00-09:00`;
  let from = 0;
  return {
    id: id(n),
    text,
    at: full,
    received: full,
    aside: false,
    unknownNames: [],
    history: [],
    ...more,
    entries: entries.map((one, i) => {
      const [entry, words] = Array.isArray(one) ? one : [one, undefined];
      const at = words === undefined ? -1 : text.indexOf(words, from);
      const start = at < 0 && words !== undefined ? text.indexOf(words) : at;
      if (words !== undefined && start < 0) throw new Error(`"${words}" is not in "${text}"`);
      if (words !== undefined) from = start;
      const span: { span?: Span } = words === undefined ? {} : { span: [start, start + words.length] };
      return { id: id(n * 1000 + i + 500_000_000), entry: { ...entry, ...span }, from: 'read', state: 'accepted' };
    }),
  };
}

export function season(notes: Note[], choices: Partial<RunChoices> = {}): Season {
  return {
    schema: 1,
    season: seasonOf(notes[0]?.at.slice(0, 10) ?? '2027-01-14'),
    notes,
    runs: { cutBefore: [], joinBefore: [], moved: [], distances: [], ...choices },
  };
}

/** The runs of some notes, and the yard. */
export function runs(
  notes: Note[],
  choices: Partial<RunChoices> = {},
  dogs: Dog[] = [],
  settings = SETTINGS,
): { runs: RunRecord[]; yard: YardRecord[] } {
  return runsOf(season(notes, choices), dogs, settings);
}

/** The one run of some notes. */
export function run(
  notes: Note[],
  choices: Partial<RunChoices> = {},
  dogs: Dog[] = [],
  settings = SETTINGS,
): RunRecord {
  const all = runs(notes, choices, dogs, settings).runs;
  if (all.length !== 1) throw new Error(`one run was to come out, not ${all.length}`);
  return all[0] as RunRecord;
}

export function dogIn(record: RunRecord, name: string): RunDog {
  const found = record.dogs.find((one) => one.dog === name);
  if (!found) throw new Error(`${name} is not in the run: ${record.dogs.map((one) => one.dog)}`);
  return found;
}

/** A dog's miles, to a thousandth. */
export function miles(record: RunRecord, name: string): number | undefined {
  return inMiles(dogIn(record, name).metres);
}

export function inMiles(metres: number | undefined): number | undefined {
  return metres === undefined ? undefined : Math.round((metres / MILE) * 1000) / 1000;
}

/** A dog's stretches in words: "lead left 0–12". */
export function stretches(record: RunRecord, name: string): string[] {
  return dogIn(record, name).stretches.map(({ position, side, fromMetres, toMetres, estimated }) =>
    [
      ...[position, side].filter(Boolean),
      `${inMiles(fromMetres) ?? '?'}–${inMiles(toMetres) ?? '?'}`,
      ...(estimated ? ['about'] : []),
    ].join(' '),
  );
}

export function kinds(record: RunRecord): string[] {
  return record.conflicts.map(({ kind }) => kind);
}

// Entries, written short.
type Position = 'lead' | 'swing' | 'team' | 'wheel';
type More = Partial<Pick<Entry, 'assertion'>>;
export const hitch = (
  dogs: string[],
  position?: Position,
  more: More & { side?: 'left' | 'right'; driver?: string } = {},
): Entry => ({
  kind: 'hitch',
  dogs,
  ...(position ? { position } : {}),
  ...more,
});
export const move = (dogs: string[], position: Position, more: More & { side?: 'left' | 'right' } = {}): Entry => ({
  kind: 'move',
  dogs,
  position,
  ...more,
});
export const drop = (dogs: string[], manner: 'dropped' | 'loaded' | 'home', more: More = {}): Entry => ({
  kind: 'drop',
  dogs,
  manner,
  ...more,
});
const distance =
  (measure: 'total' | 'mark' | 'leg' | 'remaining') =>
  (value: number, unit: 'mi' | 'km' | 'm' = 'mi', more: More = {}): Entry => ({
    kind: 'distance',
    dogs: [],
    measure,
    value,
    unit,
    ...more,
  });
export const total = distance('total');
export const mark = distance('mark');
export const leg = distance('leg');
export const remaining = distance('remaining');
export const clock = (event: 'start' | 'stop' | 'finish' | 'other', time: string, more: More = {}): Entry => ({
  kind: 'clock',
  dogs: [],
  event,
  time,
  ...more,
});
export const duration = (of: 'run' | 'stop' | 'other', minutes: number): Entry => ({
  kind: 'duration',
  dogs: [],
  of,
  minutes,
});
export const finding = (
  dogs: string[],
  sign: 'lame' | 'sore' | 'any' | 'split' | 'vomiting' = 'sore',
  more: More = {},
): Entry => ({ kind: 'finding', dogs, sign, ...more });
export const intake = (dogs: string[], what: 'water' | 'snack' | 'meal' = 'snack', more: More = {}): Entry => ({
  kind: 'intake',
  dogs,
  what,
  took: 'all',
  ...more,
});
export const booties = (
  dogs: string[],
  state: 'on' | 'off' | 'lost' | 'torn' | 'changed',
  more: More & { paws?: ('LF' | 'RF' | 'LH' | 'RH')[] } = {},
): Entry => ({ kind: 'booties', dogs, state, ...more });
export const attitude = (dogs: string[], more: More = {}): Entry => ({
  kind: 'attitude',
  dogs,
  manner: 'good',
  ...more,
});
export const temperature = (value: number, unit: 'F' | 'C' = 'F'): Entry => ({
  kind: 'temperature',
  dogs: [],
  value,
  unit,
});
export const trail = (surface: 'icy' | 'hard' | 'soft', more: More = {}): Entry => ({
  kind: 'trail',
  dogs: [],
  surface,
  ...more,
});
