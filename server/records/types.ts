/**
 * A run as it is derived from the accepted entries of its notes. Pure data; computed, never kept.
 * Distances in metres, time in minutes, temperature in °C, wind in m/s, weight in kg. What was said stays in the entry.
 */
import type { Entry, EntryOf, LeftRight, Position } from '../../grammar/entry.ts';

/** An accepted entry with where it came from. */
export interface Said<E extends Entry = Entry> {
  entry: E;
  /** Id of the reviewed entry, and of the note it stands in. */
  id: string;
  note: string;
  /** The note's time, ISO 8601 with offset. */
  at: string;
}

/** A dog in one place in the team from one distance to another. */
export interface Stretch {
  position?: Position;
  side?: LeftRight;
  /** Left out where no note tells it and it can't be estimated (a change told afterwards without a mark). */
  fromMetres?: number;
  /** Left out for the same reason, or while the run's length is not known. */
  toMetres?: number;
  /** One of its ends was worked out from the times of notes, not told: show it as "about". */
  estimated?: true;
}

/** One dog in one run. */
export interface RunDog {
  dog: string;
  stretches: Stretch[];
  /** Distance under harness; left out while it can't be known. */
  metres?: number;
  /** Time under harness, minutes; the run's time in proportion to the distance; left out when unknown. */
  minutes?: number;
  /** Metres by position ('unknown' where none was said) and by side. */
  byPosition: Partial<Record<Position | 'unknown', number>>;
  bySide: Partial<Record<LeftRight | 'unknown', number>>;
  /** Metres with at least one bootie on; left out when nothing was told of booties, or not where. */
  metresBooted?: number;
  /** How and where it left the team, when it did not come back in. */
  left?: { manner: 'dropped' | 'loaded'; atMetres?: number };
  findings: Said<EntryOf<'finding'>>[];
  care: Said<EntryOf<'care'>>[];
  intake: Said<EntryOf<'intake'>>[];
  booties: Said<EntryOf<'booties'>>[];
  attitude: Said<EntryOf<'attitude'>>[];
  measures: Said<EntryOf<'measure'>>[];
}

/** Something in the notes that does not fit together; shown on the run, never swallowed. */
export interface Conflict {
  kind:
    | 'two-totals'
    | 'mark-beyond-total'
    | 'dog-in-two-places'
    | 'finding-on-absent-dog'
    | 'mark-goes-back'
    | 'no-distance'
    /** No note tells who was in the team; `dogs` are those named. */
    | 'no-lineup'
    /** Two dogs told in the same place on the same side at once. */
    | 'two-dogs-in-one-place'
    /** A dog left the team or changed its place, and nothing tells where. */
    | 'unknown-place'
    | 'finish-before-start';
  /** One sentence a person understands. */
  says: string;
  dogs: string[];
  /** Notes it is about. */
  notes: string[];
}

/** One team's run on one local day. */
export interface RunRecord {
  /** Id of the run's first note; a second driver's team in the same notes has `~driver` behind it. */
  id: string;
  /** Local day, YYYY-MM-DD. */
  day: string;
  season: string;
  driver?: string;
  /** Note ids in the order of time. */
  notes: string[];
  /** Start and end of the run where they are known, ISO 8601 with offset. */
  startedAt?: string;
  finishedAt?: string;
  metres?: number;
  /** Where the length came from. */
  metresFrom: 'corrected' | 'total' | 'last-mark' | 'legs' | 'unknown';
  /** What was said, when a person has set another length by hand, and where that came from. */
  metresSaid?: number;
  saidFrom?: 'total' | 'last-mark' | 'legs';
  /** The length set by hand, as it was set. */
  correction?: { value: number; unit: EntryOf<'distance'>['unit']; why?: string; at: string };
  minutes?: number;
  stops: { at?: string; minutes?: number; atMetres?: number }[];
  surfaces: Said<EntryOf<'trail'>>[];
  weather: Said<EntryOf<'weather'>>[];
  /** Air temperatures in °C, in order. */
  celsius: number[];
  windMetresPerSecond: number[];
  gear: Said<EntryOf<'gear'>>[];
  dogs: RunDog[];
  conflicts: Conflict[];
}

/** An accepted entry with the dogs of it that it is told of here, by the names they bear now. */
export interface YardSaid extends Said {
  dogs: string[];
}

/** What was told on a day of dogs that were in no run that day, and of the yard itself. Each dog's entry is either here or in a run. */
export interface YardRecord {
  day: string;
  said: YardSaid[];
}
