/** Episodes in words: what it is, which time, what lies between, what it did before beside its usual. */
import type { DogSeason } from '../../server/dog/index.ts';
import type { Shares } from '../../server/load/schema.ts';
import { counted } from '../labels.ts';
import { dayWords } from '../times.ts';
import { distanceWords, type Units } from '../units.ts';

export type Episode = DogSeason['episodes'][number];

/** "1st", "2nd", "3rd", "4th", "11th". */
export function ordinal(n: number): string {
  const tens = n % 100;
  const suffix = tens > 10 && tens < 14 ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${suffix}`;
}

/** "open, last seen Sat 13 Feb"; what silence ended is never called healed. */
export function stateWords({ state, lastSeen, until }: Pick<Episode, 'state' | 'lastSeen' | 'until'>): string {
  if (state === 'open') return `open, last seen ${dayWords(lastSeen)}`;
  if (state === 'over') return `told over ${dayWords(until ?? lastSeen)}`;
  return `not seen since ${dayWords(lastSeen)}`;
}

/** What was run between two episodes: "212 mi and 14 runs", "no run". */
export function ranWords(
  { runs, metres, runsWithoutDistance }: NonNullable<Episode['sinceBefore']>,
  units: Units,
): string {
  if (runs === 0) return 'no run';
  const least = runsWithoutDistance > 0 ? 'at least ' : '';
  return `${least}${distanceWords(metres, units)} and ${counted(runs, 'run')}`;
}

/** "3rd time this season · 212 mi and 14 runs since the last, 62 days"; for a first one "1st time". */
export function timeWords({ number, numberInAll, sinceBefore, doubtful }: Episode, units: Units): string {
  const since = sinceBefore && `${ranWords(sinceBefore, units)} since the last, ${counted(sinceBefore.days, 'day')}`;
  const time = doubtful
    ? 'only told as possible, not counted'
    : number === undefined
      ? ''
      : `${ordinal(number)} time this season${numberInAll !== undefined && numberInAll > number ? `, ${ordinal(numberInAll)} on record` : ''}`;
  return [time, since].filter(Boolean).join(' · ');
}

type Parts = Partial<Record<string, { metres: number; share?: number }>>;

/** Shares of a distance, the largest first: "wheel 60 %, team 40 %". What was not said reads "not told". */
export function sharesWords(parts: Parts): string {
  return Object.entries(parts)
    .flatMap(([key, part]) => (part && part.metres > 0 ? [{ key, ...part }] : []))
    .sort((a, b) => b.metres - a.metres)
    .map(
      ({ key, share }) => `${key === 'unknown' ? 'not told' : key}${share === undefined ? '' : ` ${percent(share)}`}`,
    )
    .join(', ');
}

/** A share from 0 to 1 as "60 %", with a space that does not break; what is there but rounds to nothing as "under 1 %". */
export function percent(share: number): string {
  const whole = Math.round(share * 100);
  return whole === 0 && share > 0 ? 'under 1\u00a0%' : `${whole}\u00a0%`;
}

/** Rows of what it did before an onset, beside its own usual of the season; rows of which nothing was told are left out. */
export function beforeRows(
  { week, day, usual, metres7, daysOfRecord }: Episode['onset'],
  units: Units,
): { what: string; week: string; day: string; usual: string }[] {
  const row = (what: string, of: (shares: Shares) => Parts) => ({
    what,
    week: sharesWords(of(week)),
    day: sharesWords(of(day)),
    usual: sharesWords(of(usual.season)),
  });
  const rows = [
    {
      what: 'Distance',
      week: `${distanceWords(metres7, units)}${daysOfRecord < 7 ? ` (${counted(daysOfRecord, 'day')} of record)` : ''}`,
      day: day.runs > 0 ? distanceWords(day.metres, units) : 'no run',
      usual: usual.metres7 === undefined ? '' : `${distanceWords(usual.metres7, units)} in 7 days`,
    },
    row('Position', (shares) => shares.byPosition),
    row('Side', (shares) => shares.bySide),
    row('Trail', (shares) => shares.bySurface),
    row('Booties', (shares) => shares.byBooties),
  ];
  return rows.filter(({ week, day }) =>
    [week, day].some((words) => words !== '' && !/^not told( 100\u00a0%)?$/.test(words)),
  );
}
