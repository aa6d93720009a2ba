/** How far a dog went with booties on, from the notes that put them on and take them off. */
import type { EntryOf, Paw } from '../../grammar/entry.ts';
import { PAWS } from '../../grammar/entry.ts';
import type { Course } from './course.ts';
import type { Find } from './events.ts';
import type { Told } from './items.ts';
import { looksBack } from './phases.ts';
import type { DogWay } from './stretches.ts';
import type { Team } from './teams.ts';

/**
 * Metres in harness with at least one bootie on. Undefined when nothing was told of the dog's booties, or not where on the way. A bootie lost, torn, changed or
 * taken off was on before: from the start, when nobody told of putting it on. "No booties" told is none.
 * @param told the dog's booties, present and absent ones, in the order of time
 */
export function metresBooted(
  told: readonly Told<EntryOf<'booties'>>[],
  way: DogWay,
  team: Team,
  course: Course,
  find: Find,
): number | undefined {
  if (told.length === 0 || way.metres === undefined || course.length === undefined) return undefined;
  const worn: { from: number; to: number }[] = [];
  let on = new Set<Paw>();
  let since = 0;
  let any = false;
  for (const one of told) {
    const { state, paws, assertion } = one.entry;
    const takenOff = state === 'off' || assertion === 'absent';
    if (!any && state !== 'on' && assertion !== 'absent') on = new Set(PAWS);
    any = true;
    const next = new Set(on);
    if (takenOff) for (const paw of paws ?? PAWS) next.delete(paw);
    else if (state === 'lost') for (const paw of paws ?? []) next.delete(paw);
    else if (state !== 'torn') for (const paw of paws ?? (state === 'on' || next.size === 0 ? PAWS : [])) next.add(paw);
    if (on.size > 0 !== next.size > 0) {
      const place = placeOf(one, takenOff, team, course, find);
      if (place === undefined) return undefined;
      if (on.size > 0) worn.push({ from: since, to: Math.max(place, since) });
      since = Math.max(place, since);
    }
    on = next;
  }
  if (on.size > 0) worn.push({ from: since, to: course.length });
  let metres = 0;
  for (const spell of way.spells)
    for (const { from, to } of worn)
      metres += Math.max(0, Math.min(to, spell.to ?? 0) - Math.max(from, spell.from ?? 0));
  return Math.min(metres, way.metres);
}

/** Taken off, told afterwards without a mark, is at the run's end; put on, told afterwards without a mark, can't be placed. */
function placeOf(told: Told, takenOff: boolean, team: Team, course: Course, find: Find): number | undefined {
  const place = find(told, false);
  if (!looksBack(team.phases, told.item) || (place.metres !== undefined && !place.estimated)) return place.metres;
  return takenOff ? course.length : undefined;
}
