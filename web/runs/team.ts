/** A run's team as rows on the gangline, leaders first. Pure. */
import { POSITIONS, type Position } from '../../grammar/entry.ts';
import type { RunDog, Stretch } from '../../server/records/types.ts';
import { distanceFigure, distanceUnit, type Units } from '../units.ts';

/** One row across the gangline: a pair, or one dog on the line itself. */
export interface TeamRow {
  position: Position | 'unknown';
  left?: RunDog;
  right?: RunDog;
  /** A single dog whose side nobody told. */
  centre?: RunDog;
}
export interface Team {
  rows: TeamRow[];
  /** Dogs that were put into the team on the way. */
  later: RunDog[];
}

/** Dogs told for a row, paired: told sides first, the others where there is room, in the order in which they were told. */
function pairs(position: TeamRow['position'], dogs: readonly RunDog[]): TeamRow[] {
  const sided = (side: 'left' | 'right') => dogs.filter((dog) => dog.stretches[0]?.side === side);
  const left = sided('left');
  const right = sided('right');
  const free = dogs.filter((dog) => !dog.stretches[0]?.side);
  const rows: TeamRow[] = [];
  while (left.length + right.length + free.length > 0) {
    if (left.length + right.length === 0 && free.length === 1) {
      rows.push({ position, centre: free.shift() });
      continue;
    }
    rows.push({ position, left: left.shift() ?? free.shift(), right: right.shift() ?? free.shift() });
  }
  return rows;
}

/** The team as it left the yard, lead at the top, wheel next to the sled; dogs whose place was not told between them. */
export function teamOf(dogs: readonly RunDog[]): Team {
  const began = dogs.filter((dog) => !((dog.stretches[0]?.fromMetres ?? 0) > 0));
  const order: TeamRow['position'][] = [...POSITIONS.filter((p) => p !== 'wheel'), 'unknown', 'wheel'];
  const rows = order.flatMap((position) =>
    pairs(
      position,
      began.filter((dog) => (dog.stretches[0]?.position ?? 'unknown') === position),
    ),
  );
  return { rows, later: dogs.filter((dog) => !began.includes(dog)) };
}

/** A place in the team: "left lead", "in the team". */
export function placeOf(stretch: Stretch): string {
  return [stretch.side, stretch.position ?? (stretch.side ? '' : 'in the team')].filter(Boolean).join(' ');
}

/** A dog's stretches in words: "swing to mile 12, then lead to 20". One place for the whole run is said without figures. */
export function stretchesWords(dog: RunDog, runMetres: number | undefined, units: Units): string {
  const [only, ...more] = dog.stretches;
  if (!only) return '';
  const at = (metres: number, estimated?: true) =>
    `${estimated ? 'about ' : ''}${distanceFigure(metres, units)} ${distanceUnit(units)}`;
  if (more.length === 0 && !(only.fromMetres ?? 0) && (only.toMetres === undefined || only.toMetres === runMetres))
    return placeOf(only);
  return dog.stretches
    .map((stretch) => {
      const from = stretch.fromMetres === undefined ? '' : at(stretch.fromMetres, stretch.estimated);
      const to = stretch.toMetres === undefined ? '' : at(stretch.toMetres, stretch.estimated);
      const span = from && to ? `${from.replace(/ (mi|km)$/, '')}–${to}` : from ? `from ${from}` : to && `to ${to}`;
      return [placeOf(stretch), span].filter(Boolean).join(' ');
    })
    .join(', then ');
}

/** How a dog left the team: "loaded at 12 mi". */
export function leftWords(dog: RunDog, units: Units): string {
  if (!dog.left) return '';
  const at =
    dog.left.atMetres === undefined ? '' : ` at ${distanceFigure(dog.left.atMetres, units)} ${distanceUnit(units)}`;
  return `${dog.left.manner}${at}`;
}
