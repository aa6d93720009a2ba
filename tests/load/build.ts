/** Run records for the tests, written short. Invented dogs; a mile is 1,609.344 m (NIST SP 811). */
import type { Surface } from '../../grammar/entry.ts';
import { dayNumber, dayOf, type LoadDog, type LoadRun } from '../../server/load/index.ts';
import type { Said } from '../../server/records/types.ts';

export const MILE = 1609.344;

/** A dog in a run: its metres, and what else is to be told of it. */
export function dogIn(dog: string, metres: number | undefined, more: Partial<LoadDog> = {}): LoadDog {
  const went = metres === undefined ? {} : { metres };
  return { dog, stretches: [{ fromMetres: 0 }], ...went, byPosition: {}, bySide: {}, ...more };
}

let made = 0;
/** A run of a day. Dogs told as `{ Juniper: 1000 }` go that many metres. */
export function run(
  day: string,
  dogs: Record<string, number | undefined> | LoadDog[],
  more: { id?: string; surfaces?: Surface[]; celsius?: number[] } = {},
): LoadRun {
  const list = Array.isArray(dogs) ? dogs : Object.entries(dogs).map(([dog, metres]) => dogIn(dog, metres));
  return {
    id: more.id ?? `run-${++made}`,
    day,
    surfaces: (more.surfaces ?? []).map((surface) => surfaceSaid(surface)),
    celsius: more.celsius ?? [],
    dogs: list,
  };
}

export function surfaceSaid(surface: Surface, assertion?: 'planned' | 'absent'): Said<never> {
  const entry = { kind: 'trail', dogs: [], surface, ...(assertion ? { assertion } : {}) };
  return { entry, id: `e-${surface}`, note: 'n', at: '2027-01-01T10:00:00-07:00' } as Said<never>;
}

/** One run a day from a first day on; a load of 0 is a day without a run. */
export function daily(dog: string, first: string, loads: readonly number[]): LoadRun[] {
  return loads.flatMap((metres, i) => (metres > 0 ? [run(dayOf(dayNumber(first) + i), { [dog]: metres })] : []));
}
