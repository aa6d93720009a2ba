/** Where on a dog something was found, and how often: the episodes counted by site. */
import type { Episode } from '../watch/index.ts';
import type { SiteCount } from './schema.ts';

/**
 * Sites of these episodes, the most episodes first, then the most days, then by key so that the order is always the same.
 * @param first first day that counts; an episode of an earlier season that goes on counts with its later days alone
 */
export function sitesCounted(episodes: readonly Episode[], first: string): SiteCount[] {
  const byKey = new Map<string, Episode[]>();
  for (const episode of episodes) byKey.set(episode.site.key, [...(byKey.get(episode.site.key) ?? []), episode]);
  return [...byKey.values()].map((mine) => countOf(mine, first)).sort(byCount);
}

function countOf(mine: readonly Episode[], first: string): SiteCount {
  const seen = mine.flatMap((episode) => episode.seen.map(({ day }) => day)).filter((day) => day >= first);
  return {
    site: (mine[0] as Episode).site,
    episodes: mine.filter((episode) => !episode.doubtful).length,
    doubtful: mine.filter((episode) => episode.doubtful).length,
    days: [...new Set(seen)].sort(),
    open: mine.some((episode) => episode.state === 'open'),
  };
}

function byCount(a: SiteCount, b: SiteCount): number {
  return (
    b.episodes - a.episodes ||
    b.days.length - a.days.length ||
    b.doubtful - a.doubtful ||
    (a.site.key < b.site.key ? -1 : 1)
  );
}
