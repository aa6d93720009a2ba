/** Findings among the hits, numbered by their episodes: which time it is, and every time on the same place in the season. */
import type { Episode } from '../watch/index.ts';
import type { Query } from './query.ts';
import type { Hit, Result } from './search.ts';

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

/** Places listed at most: more say nothing that the dogs' own pages do not say better. */
const MOST = 12;

/** A result whose findings are numbered. */
export interface Numbered extends Omit<Result, 'hits'> {
  /** Each with the episodes it was seen in; none for what is not a finding told to be so, or not reviewed. */
  hits: (Hit & { episodes: InEpisode[] })[];
  /** Of the places in these hits those where something was found more than once. */
  cameBack: CameBack[];
}

/** The dogs whose episodes are asked for: those of the findings, only the ones searched for where some are. */
export function dogsToNumber({ hits }: Pick<Result, 'hits'>, query: Query): string[] {
  return [...wantedBy(hits, query).keys()];
}

/** Numbers the findings of a result. @param episodesOf the episodes of each of `dogsToNumber`, of every season */
export function numbered(result: Result, query: Query, episodesOf: (dog: string) => readonly Episode[]): Numbered {
  const episodes = episodesByEntry(wantedBy(result.hits, query), episodesOf);
  return {
    ...result,
    hits: result.hits.map((hit) => ({ ...hit, episodes: episodes.get(hit.id) ?? [] })),
    cameBack: cameBack(episodes, query, episodesOf),
  };
}

/** Ids of the findings told to be so and reviewed, by dog. */
function wantedBy(hits: readonly Hit[], query: Query): Map<string, Set<string>> {
  const wanted = new Map<string, Set<string>>();
  for (const { entry, id, unreviewed } of hits) {
    const as = entry.assertion ?? 'present';
    if (entry.kind !== 'finding' || unreviewed || (as !== 'present' && as !== 'possible')) continue;
    for (const dog of entry.dogs)
      if (dog !== '*' && (query.dogs?.includes(dog) ?? true)) wanted.set(dog, (wanted.get(dog) ?? new Set()).add(id));
  }
  return wanted;
}

/** For each entry the episodes it was seen in, by its id. */
function episodesByEntry(
  wanted: ReadonlyMap<string, ReadonlySet<string>>,
  episodesOf: (dog: string) => readonly Episode[],
): Map<string, InEpisode[]> {
  const found = new Map<string, InEpisode[]>();
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

/**
 * The places of these episodes where something was found more than once in the season: the most times first, those with
 * a side before those without, then the newest.
 */
function cameBack(
  byEntry: ReadonlyMap<string, readonly InEpisode[]>,
  query: Query,
  episodesOf: (dog: string) => readonly Episode[],
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
    const counted = episodesOf(dog).filter(({ number }) => number !== undefined);
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
