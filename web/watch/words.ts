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

/** Groups that are told by the sign alone: "urine" says less than "dark urine". */
const BY_SIGN = new Set([
  'vomiting',
  'stool',
  'coughing',
  'urine',
  'water',
  'heat',
  'cold',
  'collapse',
  'condition',
  'in-season',
]);

/** Where it is, and what: "left wrist · sore, mild"; "dark urine" alone for a sign of the whole dog. */
export function whatWords(episode: Pick<Episode, 'site' | 'signs' | 'doubtful'>): { name: string; signs: string } {
  const signs = signsWords(episode);
  if (episode.site.group && BY_SIGN.has(episode.site.group)) return { name: signs, signs: '' };
  return { name: `${episode.doubtful ? 'maybe ' : ''}${episode.site.label}`, signs };
}

/** The first day is day 1. */
export const dayOfEpisode = ({ from }: Pick<Episode, 'from'>, on: string): number => daysBetween(from, on) + 1;

/** "day 3, told last on Thu 14 Jan" for an open one; "not seen since …", "told over …" for an ended one. */
export function stateWords({ from, lastSeen, state, until }: Episode, on: string): string {
  if (state === 'over') return `told over ${dayWords(until ?? lastSeen)}`;
  if (state === 'not-seen-since') return `not seen since ${dayWords(lastSeen)}`;
  const last = lastSeen === from ? '' : `told last ${dayWords(lastSeen)}`;
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
  `${whatWords(episode).name}, day ${dayOfEpisode(episode, on)}`;

/** Open episodes by dog, in the order in which they come. */
export function openByDog(episodes: readonly Episode[]): Map<string, Episode[]> {
  const by = new Map<string, Episode[]>();
  for (const episode of episodes)
    if (episode.state === 'open') by.set(episode.dog, [...(by.get(episode.dog) ?? []), episode]);
  return by;
}

/** Cautions to be shown: they still stand, and were told of now or as possible; the sure ones first. */
export const standingOf = (cautions: readonly Caution[]): Caution[] =>
  cautions
    .filter(({ standing, told }) => standing && (told === 'now' || told === 'possible'))
    .sort((a, b) => Number(a.told === 'possible') - Number(b.told === 'possible'));
