/**
 * Wind chill, the index of 2001 of the US National Weather Service and Environment Canada:
 * 35.74 + 0.6215 T − 35.75 V^0.16 + 0.4275 T V^0.16, T in °F, V in mph at 33 ft (10 m). Source: National Weather Service,
 * "Wind Chill Chart", effective 1 November 2001. Defined for T ≤ 50 °F and V ≥ 3 mph only.
 */
const WARMEST_F = 50;
const LIGHTEST_MPH = 3;
/** 1 mi = 1,609.344 m (NIST SP 811, appendix B.8). */
const METRES_PER_MILE = 1609.344;

/**
 * Wind chill in °F, not rounded; none outside the index's range (warmer than 50 °F, lighter than 3 mph).
 * @param fahrenheit air temperature, °F
 * @param mph wind speed, miles per hour
 */
export function windChillFahrenheit(fahrenheit: number, mph: number): number | undefined {
  if (!Number.isFinite(fahrenheit) || !Number.isFinite(mph)) return undefined;
  if (fahrenheit > WARMEST_F || mph < LIGHTEST_MPH) return undefined;
  const power = mph ** 0.16;
  return 35.74 + 0.6215 * fahrenheit - 35.75 * power + 0.4275 * fahrenheit * power;
}

/**
 * Wind chill in °C, not rounded; none outside the index's range.
 * @param celsius air temperature, °C
 * @param metresPerSecond wind speed, m/s
 */
export function windChill(celsius: number, metresPerSecond: number): number | undefined {
  // Rounding in the conversion must not put exactly 3 mph or 50 °F, as they were said, outside the range.
  const mph = roundedTo12((metresPerSecond * 3600) / METRES_PER_MILE);
  const chill = windChillFahrenheit(roundedTo12(celsius * 1.8 + 32), mph);
  return chill === undefined ? undefined : (chill - 32) / 1.8;
}

/** How cold a run felt on bare skin, from the coldest air and the strongest wind told of it. */
export interface RunChill {
  /** °C and m/s, as they went in. */
  celsius: number;
  metresPerSecond: number;
  /** The wind chill, °C, not rounded. */
  chill: number;
}

/**
 * The wind chill of a run; none where air or wind was not told, or outside the index's range. Coldest air and strongest wind
 * may not have been there at once: it is the most that the figures told can mean.
 */
export function chillOf(celsius: readonly number[], metresPerSecond: readonly number[]): RunChill | undefined {
  if (celsius.length === 0 || metresPerSecond.length === 0) return undefined;
  const [air, wind] = [Math.min(...celsius), Math.max(...metresPerSecond)];
  const chill = windChill(air, wind);
  return chill === undefined ? undefined : { celsius: air, metresPerSecond: wind, chill };
}

function roundedTo12(value: number): number {
  return Number(value.toPrecision(12));
}
