/** What the trail and the air of a run were, as load counts them. */
import type { Surface } from '../../grammar/entry.ts';
import type { RunRecord } from '../records/types.ts';
import { TEMPERATURE_BANDS, type TemperatureBand } from './schema.ts';

/** Each surface told of a run, once; a forecast, a doubt or a denial is none. */
export function surfacesOf(told: RunRecord['surfaces']): (Surface | 'unknown')[] {
  const surfaces = new Set<Surface>();
  for (const { entry } of told) if ((entry.assertion ?? 'present') === 'present') surfaces.add(entry.surface);
  return surfaces.size > 0 ? [...surfaces] : ['unknown'];
}

/** The band of the mean of a run's temperatures, °C. */
export function bandOf(celsius: readonly number[]): TemperatureBand | 'unknown' {
  if (celsius.length === 0) return 'unknown';
  const mean = celsius.reduce((total, value) => total + value, 0) / celsius.length;
  return TEMPERATURE_BANDS.find((band) => mean < band.below)?.key ?? 'unknown';
}
