/** The days of a dog's pictures, and one day in words. Pure. */
import type { DogSeason } from '../../server/dog/index.ts';
import { counted } from '../labels.ts';
import { dayWords } from '../times.ts';
import { distanceWords, type Units } from '../units.ts';
import { minutesWords } from '../words.ts';
import { ordinal } from './words.ts';

const DAY_MS = 864e5;
const number = (day: string) => Date.parse(`${day}T00:00:00Z`) / DAY_MS;

/** The first of the season's days on which anything is told of the dog, to the day it is told for; none where nothing is. */
export function spanOf({
  days,
  appetite,
  measures,
  episodes,
  season,
  on,
}: DogSeason): { from: string; to: string } | undefined {
  const first = `${season.slice(0, 4)}-07-01`;
  const told = [days[0]?.day, appetite[0]?.day, measures[0]?.day, ...episodes.map((one) => one.from)]
    .filter((day) => day !== undefined)
    .map((day) => (day < first ? first : day))
    .sort();
  return told[0] === undefined ? undefined : { from: told[0], to: on < told[0] ? told[0] : on };
}

/** How many days lie from the first day of a span to a day. */
export const stepOf = (day: string, from: string): number => number(day) - number(from);
export const dayOfStep = (step: number, from: string): string =>
  new Date((number(from) + step) * DAY_MS).toISOString().slice(0, 10);

/** A day as it is read out: "Sat 12 Dec: 24 mi in 1 run; 7 days 101 mi; a week of the last 28 days 88 mi. Left wrist, 2nd time." */
export function dayReadout(story: DogSeason, day: string, units: Units): string {
  const point = story.days.find((one) => one.day === day);
  const begins = story.episodes.filter((one) => one.from === day);
  const refused = story.appetite.filter((one) => one.day === day && one.took !== 'all' && isSo(one.assertion));
  const load = point
    ? [
        point.runs === 0
          ? 'no run'
          : `${distanceWords(point.metres, units)} in ${counted(point.runs, 'run')}${point.minutes > 0 ? `, ${minutesWords(point.minutes)}` : ''}`,
        `7 days ${distanceWords(point.sum7, units)}`,
        point.meanWeek28 === undefined
          ? 'less than 28 days of record'
          : `a week of the last 28 days ${distanceWords(point.meanWeek28, units)}`,
      ].join('; ')
    : 'before its first run';
  const found = begins.map(
    (one) =>
      `${one.doubtful ? 'Maybe ' : ''}${one.site.label} begins${one.number === undefined ? '' : `, ${ordinal(one.number)} time`}.`,
  );
  const ate = refused.map((one) => `${one.what}: took ${one.took}.`);
  const sentences = [...found, ...ate].map((one) => one.replace(/^./, (first) => first.toUpperCase()));
  return [`${dayWords(day)}: ${load}.`, ...sentences].join(' ');
}

/** Told to be so, or maybe; not what was denied or planned. */
export const isSo = (assertion: string | undefined): boolean =>
  assertion === undefined || assertion === 'present' || assertion === 'possible';
