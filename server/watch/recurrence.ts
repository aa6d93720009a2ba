/** Numbers an episode among those on its site, and sets what the dog did before it beside its own usual. */

import { dayOf, seasonDays } from '../load/days.ts';
import {
  type DogHistory,
  type LoadIndex,
  median,
  type Row,
  rowsBetween,
  type Shares,
  sharesOf,
  sumDays,
} from '../load/index.ts';
import { seasonOf } from '../model.ts';
import { type Draft, graver } from './draft.ts';
import type { Episode, EpisodeSign, Onset } from './schema.ts';

const WEEK = 7;

/**
 * The episodes of one dog, from its drafts in any order. An episode that nobody was sure of has no number, and the
 * count and the days between go past it.
 * @param on the day it is worked out for, as a number
 */
export function episodesOfDog(dog: string, drafts: readonly Draft[], index: LoadIndex, on: number): Episode[] {
  const history = index.dogs.get(dog);
  const usual = usualBySeason(history, on);
  const before = new Map<string, { last: Draft; id: string; all: number; season: string; inSeason: number }>();
  return [...drafts]
    .sort((a, b) => a.from - b.from || (a.site.key < b.site.key ? -1 : 1))
    .map((draft) => {
      const season = seasonOf(dayOf(draft.from));
      const episode = plainEpisode(dog, draft, season, onsetOf(draft.from, history, usual(season)));
      const previous = before.get(draft.site.key);
      if (previous) episode.sinceBefore = between(previous.id, previous.last.lastSeen, draft.from, history);
      if (!episode.doubtful) {
        episode.numberInAll = (previous?.all ?? 0) + 1;
        episode.number = previous?.season === season ? previous.inSeason + 1 : 1;
        before.set(draft.site.key, {
          last: draft,
          id: episode.id,
          all: episode.numberInAll,
          season,
          inSeason: episode.number,
        });
      }
      return episode;
    });
}

function plainEpisode(dog: string, draft: Draft, season: string, onset: Onset): Episode {
  const signs = [...draft.signs.values()].map(({ lastDay, ...sign }): EpisodeSign => sign);
  const worst = signs.reduce<EpisodeSign['worst']>((gravest, sign) => graver(gravest, sign.worst), undefined);
  return {
    id: `${dog}|${draft.site.key}|${dayOf(draft.from)}`,
    dog,
    site: draft.site,
    season,
    from: dayOf(draft.from),
    lastSeen: dayOf(draft.lastSeen),
    ...(draft.lastSure === undefined ? {} : { lastSure: dayOf(draft.lastSure) }),
    doubtful: draft.lastSure === undefined,
    state: draft.end?.how ?? 'open',
    ...(draft.end ? { until: dayOf(draft.end.day) } : {}),
    signs,
    ...(worst ? { worst } : {}),
    seen: draft.seen,
    evidence: draft.evidence,
    past: draft.past,
    onset,
  };
}

/** What lies between two episodes: whole days apart, and the dog's own runs on the days in between. */
function between(episode: string, lastSeen: number, from: number, history?: DogHistory): Episode['sinceBefore'] {
  const rows = history ? rowsBetween(history, lastSeen + 1, from - 1) : [];
  let metres = 0;
  let runsWithoutDistance = 0;
  for (const { in: mine } of rows) {
    metres += mine.metres ?? 0;
    if (mine.metres === undefined) runsWithoutDistance++;
  }
  return { episode, days: from - lastSeen, runs: rows.length, metres, runsWithoutDistance };
}

function onsetOf(from: number, history: DogHistory | undefined, usual: Onset['usual']): Onset {
  const week = keptShares(history ? rowsBetween(history, from - WEEK, from - 1) : []);
  return {
    metres7: week.metres,
    daysOfRecord: history ? Math.max(0, Math.min(WEEK, from - history.first)) : 0,
    week,
    day: keptShares(history ? rowsBetween(history, from, from) : []),
    usual,
  };
}

const NO_SHARES = sharesOf([]);
const NOTHING: Onset['usual'] = { season: NO_SHARES };

/** By the first row: after one review most weeks of a dog have the very rows they had. */
const shares = new WeakMap<Row, { rows: readonly Row[]; shares: Shares }[]>();
const MOST_KEPT = 4;

/** The shares of some rows, not worked out again for the same ones. */
function keptShares(rows: readonly Row[]): Shares {
  const [first] = rows;
  if (!first) return NO_SHARES;
  const kept = shares.get(first) ?? [];
  const known = kept.find((one) => sameRows(one.rows, rows));
  if (known) return known.shares;
  const made = sharesOf(rows);
  shares.set(first, [{ rows, shares: made }, ...kept].slice(0, MOST_KEPT));
  return made;
}

function sameRows(a: readonly Row[], b: readonly Row[]): boolean {
  return a.length === b.length && a.every((row, i) => row === b[i]);
}

/** A dog's usual in a season, worked out once a season. */
function usualBySeason(history: DogHistory | undefined, on: number): (season: string) => Onset['usual'] {
  const known = new Map<string, Onset['usual']>();
  return (season) => {
    let usual = known.get(season);
    if (!usual) {
      usual = history ? usualOf(history, season, on) : NOTHING;
      known.set(season, usual);
    }
    return usual;
  };
}

/**
 * The middle one of the sums of every seven days in a row between the dog's first and last run of the season, up to
 * `on`; none where these are less than seven days. Off-season weeks are left out: they would make every week look hard.
 */
function usualOf(history: DogHistory, season: string, on: number): Onset['usual'] {
  const { first, last } = seasonDays(season);
  const rows = rowsBetween(history, first, Math.min(last, on));
  const [key] = rows;
  if (!key) return NOTHING;
  const kept = usuals.get(key);
  if (kept && sameRows(kept.rows, rows)) return kept.usual;
  const usual = usualOfRows(history, rows);
  usuals.set(key, { rows, usual });
  return usual;
}

/** By a season's first row: after one review nine seasons of ten have the very rows they had. */
const usuals = new WeakMap<Row, { rows: readonly Row[]; usual: Onset['usual'] }>();

function usualOfRows(history: DogHistory, rows: readonly Row[]): Onset['usual'] {
  const season = sharesOf(rows);
  const begin = rows[0]?.day;
  const end = rows.at(-1)?.day;
  if (begin === undefined || end === undefined) return { season };
  const sums: number[] = [];
  for (let day = begin + WEEK - 1; day <= end; day++) sums.push(sumDays(history, 'metres', day - WEEK + 1, day));
  const middle = median(sums);
  return middle === undefined ? { season } : { metres7: middle, season };
}
