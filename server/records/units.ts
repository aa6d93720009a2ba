/**
 * What was said, in the unit that was said, to the units of records: metres, °C, kilograms, metres per second, litres.
 * Factors: NIST Special Publication 811 (2008), appendix B.8, where they are printed to seven digits; a factor that is
 * exact by definition (mile, yard, foot, pound, US gallon) stands here with all its digits.
 */

/** Metres in one of each. Exact: international foot 0.3048 m. */
const METRES = { mi: 1609.344, km: 1000, m: 1, ft: 0.3048, yd: 0.9144 } as const;
/** Kilograms in one of each. Exact: avoirdupois pound 0.453 592 37 kg, of 16 ounces. */
const KILOGRAMS = { lb: 0.45359237, oz: 0.45359237 / 16, kg: 1, g: 0.001 } as const;
/** Metres per second in one of each. Exact: international knot 1852 m in an hour. */
const METRES_PER_SECOND = { mph: 1609.344 / 3600, 'km/h': 1000 / 3600, kn: 1852 / 3600, 'm/s': 1 } as const;
/** Litres in one of each. Exact: US gallon of 231 cubic inches, four quarts, eight pints, sixteen cups. */
const LITRES = {
  l: 1,
  ml: 0.001,
  gal: 3.785411784,
  qt: 3.785411784 / 4,
  pt: 3.785411784 / 8,
  cup: 3.785411784 / 16,
} as const;

export type LengthUnit = keyof typeof METRES;
export type MassUnit = keyof typeof KILOGRAMS;
export type SpeedUnit = keyof typeof METRES_PER_SECOND;
export type VolumeUnit = keyof typeof LITRES;

/** A distance in metres. */
export function metres(value: number, unit: LengthUnit): number {
  return value * METRES[unit];
}

/** Metres told in another unit. */
export function fromMetres(value: number, unit: LengthUnit): number {
  return value / METRES[unit];
}

/** A temperature in °C. */
export function celsius(value: number, unit: 'F' | 'C'): number {
  return unit === 'C' ? value : (value - 32) / 1.8;
}

/** A weight in kilograms; an ounce is one of weight. */
export function kilograms(value: number, unit: MassUnit): number {
  return value * KILOGRAMS[unit];
}

/** A speed in metres per second. */
export function metresPerSecond(value: number, unit: SpeedUnit): number {
  return value * METRES_PER_SECOND[unit];
}

/** A volume in litres; gallon, quart, pint and cup are the US ones. A ladle, a scoop or a piece has no volume. */
export function litres(value: number, unit: VolumeUnit): number {
  return value * LITRES[unit];
}
