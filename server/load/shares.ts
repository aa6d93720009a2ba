/** How a dog's metres were made up: by position, side, surface and temperature, with booties on and off. */
import type { LeftRight, Position, Surface } from '../../grammar/entry.ts';
import type { Row } from './index-runs.ts';
import type { Share, Shares, TemperatureBand } from './schema.ts';

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
    for (const surface of row.facts.surfaces) add(bySurface, surface, went);
    add(byTemperature, row.facts.band, went);
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

/** Left out means that nothing was told of booties, which is not the same as bare feet. */
function addBooties(to: Map<'on' | 'off' | 'unknown', number>, booted: number | undefined, went: number): void {
  const on = Math.min(booted ?? 0, went);
  add(to, 'on', on);
  add(to, booted === undefined ? 'unknown' : 'off', went - on);
}
function addAll<K extends string>(to: Map<K, number>, parts: Partial<Record<K, number>>): void {
  for (const key in parts) add(to, key, parts[key] ?? 0);
}
function add<K>(to: Map<K, number>, key: K, value: number): void {
  to.set(key, (to.get(key) ?? 0) + value);
}
