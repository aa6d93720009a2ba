/**
 * Sites of a front limb that are commonly confused on the trail (common practice): wrist, elbow, shoulder, triceps and
 * the front leg, and a lameness with no leg named. They are listed side by side, never merged.
 */
import type { Part } from '../../grammar/entry.ts';
import type { Episode, Site, Together } from './schema.ts';

const FRONT_LIMB: ReadonlySet<Part> = new Set(['wrist', 'elbow', 'shoulder', 'triceps']);

/** Where a site stands in this: on a front limb's side, perhaps on one, or not. */
function limbOf(site: Site): 'left' | 'right' | 'perhaps' | undefined {
  if (site.group === 'lameness') return 'perhaps';
  if (site.part === 'leg') return site.end === 'hind' ? undefined : ((site.end && site.side) ?? 'perhaps');
  return site.part && FRONT_LIMB.has(site.part) ? (site.side ?? 'perhaps') : undefined;
}

/**
 * Groups of one dog's episodes in a season, left, right, or of no known side; only where at least two sites are named
 * in one, since a single site is confused with nothing.
 */
export function togetherOf(dog: string, episodes: readonly Episode[]): Together[] {
  const out: Together[] = [];
  for (const season of [...new Set(episodes.map((episode) => episode.season))]) {
    const mine = episodes.filter((episode) => episode.season === season);
    const on = (limb: ReturnType<typeof limbOf>) => mine.filter((episode) => limbOf(episode.site) === limb);
    const perhaps = on('perhaps');
    const sides = (['left', 'right'] as const).filter((side) => on(side).length > 0);
    for (const side of sides.length > 0 ? sides : (['not-said'] as const)) {
      const told = side === 'not-said' ? [] : on(side);
      // "Left leg" may be the left front, never the right one.
      const may = perhaps.filter(({ site }) => side === 'not-said' || (site.side ?? side) === side);
      const sites = new Set([...told, ...may].map((episode) => episode.site.key));
      if (sites.size < 2) continue;
      out.push({ dog, season, side, episodes: told.map(({ id }) => id), perhaps: may.map(({ id }) => id) });
    }
  }
  return out;
}
