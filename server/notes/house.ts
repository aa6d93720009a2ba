/** What the rooms of the server share while it runs: the store, the grammar, the clock, and who is reading again. */
import { DateTime } from 'luxon';
import { v7 } from 'uuid';
import { read as grammarRead } from '../../grammar/index.ts';
import { lineupBefore as recordsLineupBefore } from '../records/index.ts';
import type { Store } from '../store/index.ts';
import type { Read } from './reading.ts';
import type { LineupBefore, Reader } from './reread.ts';

export interface House extends Reader {
  store: Store;
  version: string;
  /** Now, ISO 8601 with the machine's offset. */
  now: () => string;
  /** Seasons of notes that are on their way to the disk, by note id: the same id sent meanwhile goes the same way. */
  onTheirWay: Map<string, string>;
  /** The reading-again under way; the next one waits for it. */
  rereading: Promise<unknown>;
}

export interface HouseOptions {
  store: Store;
  version: string;
  read?: Read;
  lineupBefore?: LineupBefore;
  now?: () => string;
  newId?: () => string;
}

/** The machine's local time with its offset, to the millisecond. */
export function localNow(): string {
  return DateTime.now().toISO();
}

export function openHouse(options: HouseOptions): House {
  return {
    store: options.store,
    version: options.version,
    read: options.read ?? grammarRead,
    lineupBefore: options.lineupBefore ?? recordsLineupBefore,
    now: options.now ?? localNow,
    newId: options.newId ?? (() => v7()),
    onTheirWay: new Map(),
    rereading: Promise.resolve(),
  };
}
