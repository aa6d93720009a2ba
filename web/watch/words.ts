/** What keeps coming back, in words: an episode's signs, its day, which time it is and what lies between. */
import type { Caution, Episode } from '../api.ts';
import { counted, valueWord } from '../labels.ts';
import { daysBetween, dayWords } from '../times.ts';
import { distanceWords, type Units } from '../units.ts';

/** "sore, mild, worse; swollen, gone Thu 14 Jan". */
export function signsWords(episode: Pick<Episode, 'signs'>): string {
  return episode.signs
    .map(({ sign, worst, trend, gone, doubtful }) => {
      const name = sign === 'any' ? 'something seen' : valueWord('finding', 'sign', sign);
      const more = [worst, trend === 'same' ? 'no change' : trend, gone && `gone ${dayWords(gone)}`].filter(Boolean);
      return [doubtful ? `maybe ${name}` : name, ...more].join(', ');
    })
    .join('; ');
}

/** The first day is day 1. */
export const dayOfEpisode = ({ from }: Pick<Episode, 'from'>, on: string): number => daysBetween(from, on) + 1;

/** "day 3, told last on Thu 14 Jan" for an open one; "not seen since …", "told over …" for an ended one. */
export function stateWords({ from, lastSeen, state, until }: Episode, on: string): string {
  if (state === 'over') return `told over ${dayWords(until ?? lastSeen)}`;
  if (state === 'not-seen-since') return `not seen since ${dayWords(lastSeen)}`;
  const last = lastSeen === on ? 'told today' : lastSeen === from ? '' : `told last ${dayWords(lastSeen)}`;
  return [`day ${dayOfEpisode({ from }, on)}`, last].filter(Boolean).join(', ');
}

const TIMES = ['second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
/** "third time this season"; "" for the first and for one that nobody was sure of. */
export function timesWords({ number }: Pick<Episode, 'number'>): string {
  if (number === undefined || number < 2) return '';
  return `${TIMES[number - 2] ?? `${number}th`} time this season`;
}

/** "49 days, 1 run, 15 mi after the one before"; "" where there was none. */
export function sinceWords({ sinceBefore }: Pick<Episode, 'sinceBefore'>, units: Units): string {
  if (!sinceBefore) return '';
  const { days, runs, metres, runsWithoutDistance } = sinceBefore;
  const least = runsWithoutDistance > 0 ? 'at least ' : '';
  return `${counted(days, 'day')}, ${counted(runs, 'run')}, ${least}${distanceWords(metres, units)} after the one before`;
}

/** "left wrist, day 3". */
export const shortWords = (episode: Episode, on: string): string =>
  `${episode.doubtful ? 'maybe ' : ''}${episode.site.label}, day ${dayOfEpisode(episode, on)}`;

/** Open episodes by dog, in the order in which they come. */
export function openByDog(episodes: readonly Episode[]): Map<string, Episode[]> {
  const by = new Map<string, Episode[]>();
  for (const episode of episodes)
    if (episode.state === 'open') by.set(episode.dog, [...(by.get(episode.dog) ?? []), episode]);
  return by;
}

/** Cautions to be shown: they still stand, and were told of now or as possible. */
export const standingOf = (cautions: readonly Caution[]): Caution[] =>
  cautions.filter(({ standing, told }) => standing && (told === 'now' || told === 'possible'));
