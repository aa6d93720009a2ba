/** How a dog's metres were made up: by position, side, surface and temperature, with booties on and off. */
import type { LeftRight, Position, Surface } from '../../grammar/entry.ts';
import type { LoadRun, Row } from './index-runs.ts';
import { type Share, type Shares, TEMPERATURE_BANDS, type TemperatureBand } from './schema.ts';

/** The shares of some rows of one dog. */
export function sharesOf(rows: readonly Row[]): Shares {
  const byPosition = new Map<Position | 'unknown', number>();
  const bySide = new Map<LeftRight | 'unknown', number>();
  const bySurface = new Map<Surface | 'unknown', number>();
  const byTemperature = new Map<TemperatureBand | 'unknown', number>();
  const byBooties = new Map<'on' | 'off' | 'unknown', number>();
  let metres = 0;
  let minutes = 0;
  let runsWithoutDistance = 0;
  for (const row of rows) {
    minutes += row.in.minutes ?? 0;
    const went = row.in.metres;
    if (went === undefined) {
      runsWithoutDistance++;
      continue;
    }
    metres += went;
    addBooties(byBooties, row.in.metresBooted, went);
    addAll(byPosition, row.in.byPosition);
    addAll(bySide, row.in.bySide);
    for (const surface of surfacesOf(row.run)) add(bySurface, surface, went);
    add(byTemperature, bandOf(row.run.celsius), went);
  }
  const share = (part: number): Share => (metres > 0 ? { metres: part, share: part / metres } : { metres: part });
  const record = <K extends string>(from: Map<K, number>) =>
    Object.fromEntries([...from].filter(([, part]) => part > 0).map(([key, part]) => [key, share(part)])) as Partial<
      Record<K, Share>
    >;
  return {
    metres,
    minutes,
    runs: rows.length,
    runsWithoutDistance,
    byPosition: record(byPosition),
    bySide: record(bySide),
    bySurface: record(bySurface),
    byTemperature: record(byTemperature),
    byBooties: record(byBooties),
  };
}

/** Each surface told of a run, once; a forecast, a doubt or a denial is none. */
export function surfacesOf(run: Pick<LoadRun, 'surfaces'>): (Surface | 'unknown')[] {
  const told = new Set<Surface>();
  for (const said of run.surfaces) if ((said.entry.assertion ?? 'present') === 'present') told.add(said.entry.surface);
  return told.size > 0 ? [...told] : ['unknown'];
}

/** The band of the mean of a run's temperatures, °C. */
export function bandOf(celsius: readonly number[]): TemperatureBand | 'unknown' {
  if (celsius.length === 0) return 'unknown';
  const mean = celsius.reduce((total, value) => total + value, 0) / celsius.length;
  return TEMPERATURE_BANDS.find((band) => mean < band.below)?.key ?? 'unknown';
}

/** Left out means that nothing was told of booties, which is not the same as bare feet. */
function addBooties(to: Map<'on' | 'off' | 'unknown', number>, booted: number | undefined, went: number): void {
  if (booted === undefined) return add(to, 'unknown', went);
  const on = Math.min(booted, went);
  add(to, 'on', on);
  add(to, 'off', went - on);
}
function addAll<K extends string>(to: Map<K, number>, parts: Partial<Record<K, number>>): void {
  for (const key in parts) add(to, key, parts[key] ?? 0);
}
function add<K>(to: Map<K, number>, key: K, value: number): void {
  to.set(key, (to.get(key) ?? 0) + value);
}
