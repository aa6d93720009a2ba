/** Findings among the hits, numbered by their episodes: which time it is, and every time on the same place in the season. */
import type { ReviewedEntry } from '../model.ts';
import type { Episode } from '../watch/index.ts';
import type { Ground } from './find.ts';
import type { Query } from './query.ts';

/** An episode that a hit was seen in. */
export interface InEpisode {
  dog: string;
  id: string;
  /** The place in words. */
  site: string;
  /** Which time in its season; left out where nobody was sure. */
  number?: number;
  /** The oldest of these hits that is of the episode: what lies before it is told there. */
  first: boolean;
  sinceBefore?: Episode['sinceBefore'];
}

/** A place where something was found more than once in a season. */
export interface CameBack {
  dog: string;
  season: string;
  site: Episode['site'];
  /** Oldest first; `found` where a hit is of it. */
  episodes: (Pick<Episode, 'id' | 'from' | 'lastSeen' | 'state' | 'until' | 'signs' | 'number' | 'sinceBefore'> & {
    found: boolean;
  })[];
}

interface HitEntry {
  dogs: readonly string[];
  entry: ReviewedEntry;
}

/** Places listed at most: more say nothing that the dogs' own pages do not say better. */
const MOST = 12;

/** For each entry among the hits the episodes it was seen in, by its id; of the dogs asked for, where some are. */
export function episodesByEntry(
  hits: readonly HitEntry[],
  query: Query,
  { episodesOf }: Ground,
): Map<string, InEpisode[]> {
  const found = new Map<string, InEpisode[]>();
  if (!episodesOf) return found;
  const wanted = new Map<string, Set<string>>();
  for (const { dogs, entry } of hits) {
    const as = entry.entry.assertion ?? 'present';
    const told =
      entry.entry.kind === 'finding' && entry.state === 'accepted' && (as === 'present' || as === 'possible');
    if (!told) continue;
    for (const dog of dogs)
      if (dog !== '*' && (query.dogs?.includes(dog) ?? true))
        wanted.set(dog, (wanted.get(dog) ?? new Set()).add(entry.id));
  }
  for (const [dog, ids] of wanted)
    for (const episode of episodesOf(dog)) {
      const seen = episode.seen.filter(({ id }) => ids.has(id));
      seen.forEach(({ id }, i) => {
        const { number, sinceBefore, site } = episode;
        const one: InEpisode = {
          dog,
          id: episode.id,
          site: site.label,
          ...(number === undefined ? {} : { number }),
          first: i === 0,
          ...(sinceBefore === undefined ? {} : { sinceBefore }),
        };
        found.set(id, [...(found.get(id) ?? []), one]);
      });
    }
  return found;
}

/** The places of these episodes where something was found more than once in the season: the most times first, those with a side before those without, then the newest. */
export function cameBack(
  byEntry: ReadonlyMap<string, readonly InEpisode[]>,
  query: Query,
  { episodesOf }: Ground,
): CameBack[] {
  const ids = new Set<string>();
  const dogs = new Set<string>();
  for (const episodes of byEntry.values())
    for (const { id, dog } of episodes) {
      ids.add(id);
      dogs.add(dog);
    }
  const places: CameBack[] = [];
  for (const dog of dogs) {
    const counted = (episodesOf?.(dog) ?? []).filter(({ number }) => number !== undefined);
    for (const episodes of byPlace(counted).values()) {
      const [one] = episodes;
      if (!one || episodes.length < 2 || !episodes.some(({ id }) => ids.has(id))) continue;
      if (query.season !== undefined && one.season !== query.season) continue;
      places.push({
        dog,
        season: one.season,
        site: one.site,
        episodes: episodes
          .sort((a, b) => (a.number ?? 0) - (b.number ?? 0))
          .map(({ id, from, lastSeen, state, until, signs, number, sinceBefore }) => ({
            id,
            from,
            lastSeen,
            state,
            ...(until === undefined ? {} : { until }),
            signs,
            ...(number === undefined ? {} : { number }),
            ...(sinceBefore === undefined ? {} : { sinceBefore }),
            found: ids.has(id),
          })),
      });
    }
  }
  const last = (place: CameBack) => place.episodes.at(-1)?.from ?? '';
  const key = ({ dog, site }: CameBack) => `${dog} ${site.key}`;
  return places
    .sort(
      (a, b) =>
        b.episodes.length - a.episodes.length ||
        Number(b.site.side !== undefined) - Number(a.site.side !== undefined) ||
        (last(a) < last(b) ? 1 : last(a) > last(b) ? -1 : key(a) < key(b) ? -1 : 1),
    )
    .slice(0, MOST);
}

const placeKey = ({ site, season }: Episode) => `${season} ${site.key}`;

function byPlace(episodes: readonly Episode[]): Map<string, Episode[]> {
  const by = new Map<string, Episode[]>();
  for (const one of episodes) {
    const key = placeKey(one);
    const list = by.get(key);
    if (list) list.push(one);
    else by.set(key, [one]);
  }
  return by;
}
