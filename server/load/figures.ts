/**
 * The figures of load over a plain row of daily loads, one number a day, oldest first. Any unit goes in; sums, means and
 * averages come out in that unit, ratios and monotony without one.
 */

/** Days of the short and the long window. */
export const ACUTE_DAYS = 7;
export const CHRONIC_DAYS = 28;

/** Smoothing factor of an exponentially weighted average over N days: λ = 2 / (N + 1). Williams 2017, Br J Sports Med 51:209. */
export function lambda(days: number): number {
  return 2 / (days + 1);
}

/** One step of the exponentially weighted average: today's load × λ + yesterday's average × (1 − λ). Williams 2017. */
export function ewmaStep(load: number, before: number, days: number): number {
  const weight = lambda(days);
  return load * weight + before * (1 - weight);
}

/**
 * Exponentially weighted averages, one a day, seeded with the first day's load. Williams 2017, Br J Sports Med 51:209.
 * @param loads daily loads, oldest first
 * @param days N, 7 for the short and 28 for the long average
 */
export function ewma(loads: ArrayLike<number>, days: number): Float64Array {
  const out = new Float64Array(loads.length);
  for (let i = 0; i < loads.length; i++) {
    const load = loads[i] as number;
    out[i] = i === 0 ? load : ewmaStep(load, out[i - 1] as number, days);
  }
  return out;
}

/** Sum of a row. */
export function sum(loads: ArrayLike<number>): number {
  let total = 0;
  for (let i = 0; i < loads.length; i++) total += loads[i] as number;
  return total;
}

/** Sample standard deviation (divisor n − 1); none for fewer than two values. */
export function sampleSd(loads: ArrayLike<number>): number | undefined {
  if (loads.length < 2) return undefined;
  const mean = sum(loads) / loads.length;
  let squares = 0;
  for (let i = 0; i < loads.length; i++) squares += ((loads[i] as number) - mean) ** 2;
  return Math.sqrt(squares / (loads.length - 1));
}

/**
 * Monotony and strain of one week. Monotony = mean of the seven daily loads / their standard deviation; strain = the
 * week's load × monotony. Foster 1998, Med Sci Sports Exerc 30:1164. Programs differ in the deviation they take; this
 * is the sample deviation (n − 1). None where the deviation is 0: seven equal days give no number, not infinity.
 * @param week seven daily loads; any other count gives none
 */
export function monotonyOf(week: ArrayLike<number>): { monotony: number; strain: number } | undefined {
  if (week.length !== ACUTE_DAYS) return undefined;
  const total = sum(week);
  const mean = total / ACUTE_DAYS;
  const sd = sampleSd(week);
  // Equal days whose sums round differently must still count as a deviation of 0: a part in 10⁹ is no training.
  if (sd === undefined || sd <= mean * 1e-9) return undefined;
  return { monotony: mean / sd, strain: total * (mean / sd) };
}

/**
 * Short mean over long mean; none where the long one is 0 (nothing was run, so there is nothing to compare with).
 * The rolling form is coupled: the last 7 days are part of the 28, so it can't be more than 4.
 */
export function ratioOf(short: number, long: number): number | undefined {
  return long > 0 ? short / long : undefined;
}

/** Middle value of a row, the mean of the two middle ones for an even count; none for an empty row. */
export function median(values: readonly number[]): number | undefined {
  if (values.length === 0) return undefined;
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] as number) + upper) / 2;
}
