/**
 * How far a statement that something is gone, or was not there, reaches: which open episodes it is about. The rule
 * behind all rows is the usual caution: what could be about another limb or another sign ends nothing.
 */
import type { Sign } from '../../grammar/entry.ts';
import type { Mention, Site } from './schema.ts';
import { endOf, FOOT_FAMILY, groupOf, wholeDogGroup } from './sites.ts';

/**
 * - `sure`: it names this site, or says it of all sites of its kind.
 * - `wide`: it names less (no side, no end, no part), so it may be about this site.
 * - `close`: it names more than the episode does ("right shoulder" where the episode has no side).
 * - `dog`: it was said of the dog as a whole ("fine now").
 * - `none`: it is about something else.
 */
export type Reach = 'sure' | 'wide' | 'close' | 'dog' | 'none';

/** How a statement reaches a site. */
export function reachOf(statement: Mention, site: Site): Reach {
  if (wholeDogGroup(statement.sign)) return site.group === groupOf(statement) ? 'sure' : 'none';
  if (site.group && wholeDogSite(site))
    return statement.part === undefined && statement.sign === 'any' ? 'dog' : 'none';
  if (statement.part === undefined) return withoutPart(statement, site);
  if (site.group) return aboutLameness(statement, site) ? 'close' : 'none';
  return worst([
    partReach(statement, site),
    placeReach(statement.side, site.side),
    placeReach(endOf(statement), site.end),
  ]);
}

/** Signs that a statement takes from an episode that holds these. `any` takes all; a named sign takes itself. */
export function takes(statement: Mention, sign: Sign): boolean {
  return statement.sign === 'any' || statement.sign === sign;
}

/** "The feet look good": said of all feet at once, with neither side nor end. */
export function isAllFeet(statement: Mention): boolean {
  return statement.part === 'foot' && statement.side === undefined && endOf(statement) === undefined;
}

function wholeDogSite(site: Site): boolean {
  return site.group !== 'lameness' && site.group !== 'soreness' && site.group !== 'unplaced';
}

function withoutPart(statement: Mention, site: Site): Reach {
  if (statement.sign === 'any') return 'dog';
  // A dog that does not limp does not limp on any leg; a dog "not sore" may not have been felt everywhere.
  if (statement.sign === 'lame') return 'sure';
  return site.group === groupOf(statement) ? 'sure' : 'wide';
}

/** "Left front is fine now" may be the leg of a lameness that had none named. */
function aboutLameness(statement: Mention, site: Site): boolean {
  return (
    site.group === 'lameness' && (statement.sign === 'lame' || (statement.sign === 'any' && statement.part === 'leg'))
  );
}

function partReach(statement: Mention, site: Site): Reach {
  if (statement.part === site.part) return 'sure';
  // The foot is the whole of its parts; a part says nothing of the rest of the foot.
  return statement.part === 'foot' && site.part && FOOT_FAMILY.has(site.part) ? 'sure' : 'none';
}

function placeReach(told: string | undefined, site: string | undefined): Reach {
  if (told === site || told === 'both') return 'sure';
  if (told === undefined) return 'wide';
  return site === undefined ? 'close' : 'none';
}

/** The least certain of several; wide in one way and close in another is no match one could build on. */
function worst(reaches: readonly Reach[]): Reach {
  if (reaches.includes('none')) return 'none';
  if (reaches.includes('close')) return 'close';
  return reaches.includes('wide') ? 'wide' : 'sure';
}
