/**
 * Whose distance, clock or time it is. Entries of no dog are the speaker's own team's, except where a note tells another
 * driver's outing: "Pelle took Dagny and Ulv out on skis, 7 k".
 */

import { showsRun } from './evidence.ts';
import type { Group } from './group.ts';
import { heldIn, holds, type Item, type Told } from './items.ts';
import { OWN, type Seats } from './seats.ts';
import { inOneSentence } from './text.ts';

export type Figure = Told;

/** Entries that tell a distance, a clock or a time. */
export function isFigure({ entry }: Told): boolean {
  return holds(entry) && (entry.kind === 'distance' || entry.kind === 'clock' || entry.kind === 'duration');
}

/** A figure of a whole outing: its length, its time, leaving, coming back. A mark or a stop is told on the way. */
function ofWholeOuting({ entry }: Told): boolean {
  if (entry.kind === 'distance') return entry.measure === 'total' || entry.measure === 'leg';
  if (entry.kind === 'duration') return entry.of === 'run';
  return entry.kind === 'clock' && (entry.event === 'start' || entry.event === 'finish');
}

const isTotal = ({ entry }: Told) => entry.kind === 'distance' && entry.measure === 'total';

/** Whether a note tells of the speaker's own team: of its dogs, or of a distance or time where no other team is told of. */
export function tellsOfOwn(item: Item, seats: Seats): boolean {
  const keys = keysIn(item, seats);
  if (keys.has(OWN)) return true;
  return keys.size === 0 && item.told.some(showsRun);
}

/** The teams whose dogs a note hitches, moves or drops. */
function keysIn(item: Item, seats: Seats): Set<string> {
  const keys = new Set<string>();
  for (const told of item.told) {
    const hitched = seats.teamOf.get(told);
    if (hitched !== undefined) keys.add(hitched);
    const { entry } = told;
    if (!holds(entry) || (entry.kind !== 'move' && (entry.kind !== 'drop' || entry.manner === 'home'))) continue;
    for (const dog of told.dogs) keys.add(seats.dogs.get(dog) ?? OWN);
  }
  return keys;
}

/**
 * The key of the team each figure is told of. A total told right behind a driver's hitch, in a note without a hitch of the
 * speaker's own, is that driver's; of several totals each goes with the hitch before it; what else can't be known is the
 * speaker's own.
 */
export function figuresOf(group: Group, seats: Seats): { told: Told; key: string }[] {
  const ownNotes = new Set(group.items.filter((item) => tellsOfOwn(item, seats)));
  const ownTotal = [...ownNotes].some(
    (item) => driversIn(item, seats).length === 0 && item.told.some((t) => holds(t.entry) && isTotal(t)),
  );
  const out: { told: Told; key: string }[] = [];
  let latest: string | undefined;
  for (const item of group.items) {
    const drivers = driversIn(item, seats);
    latest = drivers.at(-1)?.key ?? [...keysIn(item, seats)].find((key) => key !== OWN) ?? latest;
    const figures = item.told.filter(isFigure);
    const others = ownNotes.size > 0 ? undefined : latest;
    const keys = new Map(figures.map((told) => [told, keyOf(told, item, { seats, drivers, ownTotal, others })]));
    // The outing's time and clocks go with its length: "Anders took Ask out on skis. 9 km, 41 min."
    const total = figures.findLast(isTotal);
    const alone = figures.filter(isTotal).length === 1 && drivers.length === 1;
    for (const told of figures) {
      const key = keys.get(told) ?? OWN;
      out.push({
        told,
        key:
          total && alone && told.entry.kind === 'duration' && told.entry.of === 'run' ? (keys.get(total) ?? key) : key,
      });
    }
  }
  return out;
}

interface Driver {
  told: Told;
  key: string;
}

function driversIn(item: Item, seats: Seats): Driver[] {
  return heldIn(item, 'hitch').flatMap((told) => {
    const key = seats.teamOf.get(told) ?? OWN;
    return key === OWN ? [] : [{ told, key }];
  });
}

interface Known {
  seats: Seats;
  drivers: Driver[];
  /** The speaker's own team has a total told where no other team is told of. */
  ownTotal: boolean;
  /** Another driver's team, when the group tells of no team of the speaker's. */
  others: string | undefined;
}

function keyOf(told: Told, item: Item, { seats, drivers, ownTotal, others }: Known): string {
  const hitches = heldIn(item, 'hitch');
  const nearest = (among: readonly Told[]) => among.findLast((hitch) => hitch.order < told.order) ?? among[0];
  if (drivers.length === 0) return others ?? OWN;
  if (drivers.length < hitches.length) {
    // Both teams told in one note. Two lengths: each belongs to the team told before it. One: the speaker's own.
    const several = item.told.filter((one) => holds(one.entry) && isTotal(one)).length >= 2;
    const hitch = several && ofWholeOuting(told) ? nearest(hitches) : undefined;
    return (hitch && seats.teamOf.get(hitch)) ?? OWN;
  }
  const driver = nearest(drivers.map((one) => one.told)) as Told;
  const key = seats.teamOf.get(driver) ?? OWN;
  if (others !== undefined) return key;
  if (!ofWholeOuting(told)) return OWN;
  const behind = driver.order < told.order && inOneSentence(item.note.text, driver.entry.span, told.entry.span);
  return behind || (isTotal(told) && ownTotal) ? key : OWN;
}
