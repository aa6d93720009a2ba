/** What shows that a team went out, and who is told to stand where. Only entries that are held to be so count. */
import type { Position } from '../../grammar/entry.ts';
import { heldIn, holds, type Item, person, type Told } from './items.ts';

/** An entry that only a run gives rise to. A dog left at home, a meal or a time of day makes no run. */
export function showsRun(told: Told): boolean {
  const { entry } = told;
  if (!holds(entry)) return false;
  switch (entry.kind) {
    case 'hitch':
    case 'move':
    case 'distance':
      return true;
    case 'drop':
      return entry.manner !== 'home';
    case 'clock':
      return entry.event !== 'other';
    case 'duration':
      // A rest is told of a team in the yard too ("two weeks rest").
      return entry.of === 'run';
    default:
      return false;
  }
}

/** An entry that shows the team to be out on the trail already; a total may be a plan for the day. */
export function showsUnderway(told: Told): boolean {
  const { entry } = told;
  if (!showsRun(told)) return false;
  switch (entry.kind) {
    case 'distance':
      return entry.measure !== 'total' && !(entry.measure === 'mark' && entry.value === 0);
    case 'drop':
    case 'clock':
    case 'duration':
      return true;
    default:
      return false;
  }
}

/** The driver a hitch names when that is another person than the one whose team the note tells of. */
export function otherDriver(told: Told, by: string): string | undefined {
  if (told.entry.kind !== 'hitch' || told.entry.driver === undefined) return undefined;
  return person(told.entry.driver) === by ? undefined : told.entry.driver;
}

/** The hitches of a note that tell the team of `by`, not another driver's. */
export function ownHitches(item: Item, by: string) {
  return heldIn(item, 'hitch').filter((told) => otherDriver(told, by) === undefined && !told.dogs.includes('*'));
}

/** A line-up being told: dog → position. */
export type Lineup = Map<string, Position | undefined>;

/**
 * Whether a line-up has been told as a whole, so that a dog told later on the trail has come in later: the leaders and
 * another position, or four dogs and more. Of a line-up told in part ("Juniper and Moss in lead") the others were there too.
 */
export function toldInFull(lineup: Lineup): boolean {
  if (lineup.size >= 4) return true;
  const positions = new Set(lineup.values());
  return positions.has('lead') && positions.size >= 2;
}
