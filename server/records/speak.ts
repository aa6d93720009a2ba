/** Words for the sentences about a run, in the kennel's units. */
import type { Settings } from '../model.ts';
import { fromMetres } from './units.ts';

export type Units = Settings['units'];

/** "31.5 mi", "50.7 km"; a short way in metric is told in metres. */
export function far(metres: number, units: Units): string {
  if (units === 'imperial') return `${rounded(fromMetres(metres, 'mi'))} mi`;
  return metres < 1000 ? `${Math.round(metres)} m` : `${rounded(metres / 1000)} km`;
}

/** "mile 12.5", "km 20". */
export function markAt(metres: number, units: Units): string {
  return units === 'imperial' ? `mile ${rounded(fromMetres(metres, 'mi'))}` : `km ${rounded(metres / 1000)}`;
}

/** "Juniper", "Juniper and Moss", "Juniper, Moss and Otter". */
export function list(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? '';
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** The local clock of a note's time. */
export function clock(at: string): string {
  return at.slice(11, 16);
}

function rounded(value: number): string {
  return String(Math.round(value * 100) / 100);
}
