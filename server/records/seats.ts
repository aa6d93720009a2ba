/** Which team each dog of an outing belongs to: the speaker's own, or that of a driver a hitch names. */
import { otherDriver } from './evidence.ts';
import type { Group } from './group.ts';
import { heldIn, holds, type Item, person, type Told } from './items.ts';
import { type Phases, phaseOf } from './phases.ts';

/** The speaker's own team; the keys of others are their drivers' folded names, never empty. */
export const OWN = '';

/** A dog told to be in two teams, or in a team and at home, in one breath or with the team on the trail already. */
export interface Dispute {
  dog: string;
  items: [Item, Item];
  /** Teams it is about; the last told has the dog. */
  keys: string[];
}

export interface Seats {
  /** For each hitch the key of its team. */
  teamOf: Map<Told, string>;
  /** Dog → key of its team. */
  dogs: Map<string, string>;
  /** Dogs told to have stayed at home. */
  home: Set<string>;
  disputes: Dispute[];
}

/**
 * Goes through the notes in the order of time. Before the team leaves, what is told later counts without a word; on the trail it
 * counts too, and is a dispute; after the run nobody who was in it was at home. A dog only moved or dropped is in the speaker's own team.
 */
export function seatsOf(group: Group, phases: Phases): Seats {
  const seats: Seats = { teamOf: teamKeys(group, phases), dogs: new Map(), home: new Set(), disputes: [] };
  const toldIn = new Map<string, Item>();
  for (const item of group.items) {
    const phase = phaseOf(phases, item);
    const before = phase === 'before';
    const take = (dog: string, key: string | undefined) => {
      const earlier = toldIn.get(dog);
      const was = seats.dogs.get(dog);
      if (earlier && was !== key && (!before || earlier === item)) {
        const keys = [was, key].filter((one) => one !== undefined);
        seats.disputes.push({ dog, items: [earlier, item], keys });
      }
      // "Drank at home", told after the run, does not take a dog out of it.
      if (key === undefined && was !== undefined && phase === 'after') return;
      toldIn.set(dog, item);
      if (key === undefined) {
        seats.dogs.delete(dog);
        seats.home.add(dog);
      } else {
        seats.dogs.set(dog, key);
        seats.home.delete(dog);
      }
    };
    for (const told of item.told) {
      const { entry } = told;
      if (!holds(entry)) continue;
      const key = seats.teamOf.get(told);
      for (const dog of told.dogs) {
        if (dog === '*') continue;
        if (key !== undefined) take(dog, key);
        else if (entry.kind === 'drop' && entry.manner === 'home') take(dog, undefined);
        else if (entry.kind === 'move' || entry.kind === 'drop') take(dog, seats.dogs.get(dog) ?? OWN);
      }
    }
  }
  return seats;
}

/**
 * The key of each hitch. What a driver drove later, told after the run with a length or time of its own, is another outing
 * and has another key.
 */
function teamKeys(group: Group, phases: Phases): Map<Told, string> {
  const keys = new Map<Told, string>();
  const latest = new Map<string, { item: Item; outing: number }>();
  for (const item of group.items)
    for (const told of heldIn(item, 'hitch')) {
      const driver = otherDriver(told, group.by);
      if (driver === undefined) {
        keys.set(told, OWN);
        continue;
      }
      const name = person(driver);
      let known = latest.get(name) ?? { item, outing: 1 };
      const afterwards = phaseOf(phases, item) === 'after' && phaseOf(phases, known.item) !== 'after';
      if (afterwards && tellsLength(item)) known = { item, outing: known.outing + 1 };
      latest.set(name, known);
      keys.set(told, known.outing === 1 ? name : `${name}\n${known.outing}`);
    }
  return keys;
}

function tellsLength(item: Item): boolean {
  const total = heldIn(item, 'distance').some(({ entry }) => entry.measure === 'total');
  return total || heldIn(item, 'duration').some(({ entry }) => entry.of === 'run');
}
