/** The days of the picture: where one stands in it, and what a dog did on it. */
import type { Episode } from '../api.ts';
import { counted } from '../labels.ts';
import { units } from '../status.ts';
import { daysBetween, shiftDay } from '../times.ts';
import { distanceWords } from '../units.ts';
import type { DogLoad } from './columns.tsx';

/** What a dog did on a day, in words. */
export function workWords(dog: DogLoad, index: number): string {
  const day = shiftDay(dog.days.from, index);
  if (dog.since === undefined || day < dog.since) return 'no record yet';
  const runs = dog.days.runs[index] ?? 0;
  if (runs === 0) return 'no run';
  const metres = dog.days.metres[index] ?? 0;
  const least = dog.days.unknown.includes(day);
  if (least && metres === 0) return `${counted(runs, 'run')}, distance not known`;
  return `${least ? 'at least ' : ''}${distanceWords(metres, units.value)}${runs > 1 ? ` in ${runs} runs` : ''}`;
}

/** The last day an episode is drawn to. */
export const lastDay = (episode: Episode, on: string): string => (episode.state === 'open' ? on : episode.lastSeen);

/** Whole days from the first day of the picture; below 0 before it. */
export const place = (from: string, day: string): number => daysBetween(from, day);
