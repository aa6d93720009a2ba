/** What stands beside the figures on every page, sheet and command: what they are and what they can't tell. */

/** Beside every acute:chronic ratio. */
export const ABOUT_RATIO =
  'A change of load, not a chance of injury: the last 7 days beside the last 28, which hold the same 7 days, and in ' +
  'Impellizzeri and others 2020 (Sports Med, doi 10.1007/s40279-020-01378-6) such a ratio foretold injuries hardly better than guessing.';

/** Beside monotony and strain. */
export const ABOUT_MONOTONY =
  'Monotony is the mean of the seven daily distances over their sample standard deviation (n − 1), strain the week times ' +
  'monotony (Foster 1998, Med Sci Sports Exerc 30:1164); made for people who train, so for a dog they only tell how alike the days were.';

/** Beside the exponentially weighted ratio. */
export const ABOUT_EWMA =
  'Each day counts λ = 2/(N + 1) of the average, N 7 and 28, starting from the first recorded day (Williams 2017, Br J Sports Med 51:209).';

/** Beside shares by surface. */
export const ABOUT_SURFACES =
  'A run counts in full for each surface that was told of it, so these can add up to more than the distance.';

/** Beside the wind chill. */
export const ABOUT_WIND_CHILL =
  'The 2001 index was made for a bare human face; nobody has measured it on a running dog. Use it for yourself, and look at the dogs.';

/**
 * How soon bare human skin can freeze at a wind chill, °C, rounded as the index is given. Environment and Climate Change Canada,
 * "Wind chill hazards and what to do".
 */
const FROSTBITE = [
  { from: -55, says: 'in less than 2 minutes' },
  { from: -48, says: 'in 2 to 5 minutes' },
  { from: -40, says: 'in 5 to 10 minutes' },
  { from: -28, says: 'in 10 to 30 minutes' },
] as const;

/** The caution beside a wind chill, °C; none where the risk of frostbite is low (warmer than −28). */
export function frostbiteSentence(chill: number): string | undefined {
  const band = FROSTBITE.find(({ from }) => Math.round(chill) <= from);
  if (!band) return undefined;
  return `Bare skin can freeze ${band.says}, sooner in winds over 50 km/h (31 mph). Cover it, and look for white or numb places on people; on dogs at ears, scrotum, teats and flanks. (Times: Environment and Climate Change Canada.)`;
}

/** What a dog with a short record shows in place of a ratio. */
export function tooShortSentence(dog: string, daysOfRecord: number): string {
  if (daysOfRecord === 0) return `${dog} has no run yet, so there is nothing to compare.`;
  const days = daysOfRecord === 1 ? '1 day' : `${daysOfRecord} days`;
  return `${dog} has ${days} of record; a comparison with the last four weeks needs 28.`;
}

/** Beside the ratio of a dog that has come back from a long rest. */
export function afterBreakSentence(dog: string, days: number, back: string): string {
  return `${dog} came back on ${back} after ${days} days without a run, so its last four weeks start from nothing and the comparison is high for that reason.`;
}
