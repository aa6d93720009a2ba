/**
 * Where on the drawing of a dog a site stands. The dog is seen from above with its nose at the top, so its own left is on
 * the left of the picture. Pure.
 */
import type { SiteCount } from '../../server/dog/index.ts';

export const WIDTH = 400;
export const HEIGHT = 500;
const MIDDLE = WIDTH / 2;

/** A spot on the drawing, with everything found there. */
export interface Spot {
  key: string;
  /** In words: "left front foot". */
  name: string;
  x: number;
  y: number;
  episodes: number;
  doubtful: number;
  days: number;
  open: boolean;
}

/** Spots of the left half, by part and end; the right half is their mirror. The foot stands for all that belongs to it. */
const SIDED: Record<string, readonly [number, number]> = {
  eye: [168, 62],
  ear: [158, 91],
  shoulder: [152, 137],
  armpit: [156, 182],
  triceps: [127, 153],
  elbow: [103, 169],
  'leg front': [82, 193],
  wrist: [58, 224],
  'foot front': [36, 256],
  hip: [160, 312],
  thigh: [131, 327],
  knee: [104, 343],
  'leg hind': [83, 366],
  hock: [60, 394],
  'foot hind': [38, 424],
};
/** Spots on the middle line; told of one side they stand a little to that side. */
const MIDLINE: Record<string, number> = {
  nose: 16,
  mouth: 42,
  neck: 112,
  chest: 150,
  back: 236,
  groin: 344,
  tail: 424,
};
/** The head is narrow. */
const aside = (y: number) => (y < 60 ? 14 : 26);
const FOOT = new Set(['foot', 'pad', 'web', 'toe', 'nail', 'dewclaw']);

/** The spot of a site; none where its side or end was not said, or it is of the whole dog. */
export function placeOf({ part, side, end }: SiteCount['site']): Pick<Spot, 'key' | 'name' | 'x' | 'y'> | undefined {
  if (part === undefined) return undefined;
  const middle = MIDLINE[part];
  if (middle !== undefined) {
    const x = MIDDLE + (side === 'left' ? -aside(middle) : side === 'right' ? aside(middle) : 0);
    return { key: `${part} ${side ?? ''}`.trim(), name: [side, part].filter(Boolean).join(' '), x, y: middle };
  }
  if (side === undefined) return undefined;
  const drawn = FOOT.has(part) ? 'foot' : part;
  const left = SIDED[drawn] ?? (end && SIDED[`${drawn} ${end}`]);
  if (!left) return undefined;
  const name = [side, end, drawn].filter(Boolean).join(' ');
  return { key: name, name, x: side === 'left' ? left[0] : WIDTH - left[0], y: left[1] };
}

/** Sites on the drawing, several of one foot together, and those that have no place on it. */
export function spotsOf(sites: readonly SiteCount[]): { spots: Spot[]; elsewhere: SiteCount[] } {
  const spots = new Map<string, Spot & { told: Set<string> }>();
  const elsewhere: SiteCount[] = [];
  for (const one of sites) {
    const place = placeOf(one.site);
    if (!place) {
      elsewhere.push(one);
      continue;
    }
    const spot = spots.get(place.key) ?? {
      ...place,
      episodes: 0,
      doubtful: 0,
      days: 0,
      open: false,
      told: new Set<string>(),
    };
    spot.episodes += one.episodes;
    spot.doubtful += one.doubtful;
    spot.open ||= one.open;
    for (const day of one.days) spot.told.add(day);
    spot.days = spot.told.size;
    spots.set(place.key, spot);
  }
  return { spots: [...spots.values()].map(({ told: _, ...spot }) => spot), elsewhere };
}
