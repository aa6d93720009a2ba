/**
 * Sites: what an episode is about. A named part has a site for each side and, on the leg and its foot, each end. What
 * was not said stays not said: "shoulder sore" is a site of its own beside the left and the right shoulder.
 */
import { type EntryOf, PARTS_WITH_END, type Part, type Sign } from '../../grammar/entry.ts';
import type { Group, Site } from './schema.ts';

type Finding = Pick<EntryOf<'finding'>, 'part' | 'side' | 'end' | 'sign'>;

/** The foot and what belongs to it: a word about the whole foot is a word about these. */
export const FOOT_FAMILY: ReadonlySet<Part> = new Set(['foot', 'pad', 'web', 'toe', 'nail', 'dewclaw']);

const WITH_END: ReadonlySet<Part> = new Set(PARTS_WITH_END);
/** Parts of which a dog has one; with all others a missing side is a side that was not said. */
const SINGLE: ReadonlySet<Part> = new Set(['chest', 'neck', 'back', 'groin', 'tail', 'nose', 'mouth']);

/** Signs of the whole dog: followed by themselves, whatever part was named with them. */
const WHOLE_DOG: Partial<Record<Sign, Group>> = {
  vomiting: 'vomiting',
  'loose-stool': 'stool',
  'bloody-stool': 'stool',
  coughing: 'coughing',
  'dark-urine': 'urine',
  dehydrated: 'water',
  overheated: 'heat',
  shivering: 'cold',
  collapsed: 'collapse',
  thin: 'condition',
  'in-season': 'in-season',
};
/** Signs of a part, told with no part named. */
const NO_PART: Partial<Record<Sign, Group>> = { lame: 'lameness', sore: 'soreness', stiff: 'soreness' };

const GROUP_LABELS: Record<Group, string> = {
  lameness: 'lame, no leg named',
  soreness: 'sore or stiff, no part named',
  unplaced: 'no part named',
  vomiting: 'vomiting',
  stool: 'stool',
  coughing: 'coughing',
  urine: 'urine',
  water: 'short of water',
  heat: 'too hot',
  cold: 'cold',
  collapse: 'collapse',
  condition: 'condition',
  'in-season': 'in season',
};

/** The group of a sign that is followed without a part; none for a sign that belongs to the part it was told of. */
export function wholeDogGroup(sign: Sign): Group | undefined {
  return WHOLE_DOG[sign];
}

/** The group a finding is followed under when it has no part, or its sign is one of the whole dog. */
export function groupOf(finding: Pick<Finding, 'part' | 'sign'>): Group | undefined {
  const whole = wholeDogGroup(finding.sign);
  if (whole) return whole;
  return finding.part === undefined ? (NO_PART[finding.sign] ?? 'unplaced') : undefined;
}

/**
 * The sites of a finding: one; two where it was told of both sides or both ends; four for all four feet.
 */
export function sitesOf(finding: Finding): Site[] {
  const group = groupOf(finding);
  if (group) return [siteFor({ group })];
  const part = finding.part as Part;
  const sides = finding.side === 'both' ? (['left', 'right'] as const) : [finding.side];
  const told = endOf(finding);
  const ends = told === 'both' ? (['front', 'hind'] as const) : [told];
  return sides.flatMap((side) => ends.map((end) => siteFor({ part, side, end })));
}

/** The end of a finding, where its part has one: a wrist is always in front, whatever was said. */
export function endOf(finding: Pick<Finding, 'part' | 'end'>): Finding['end'] {
  return finding.part && WITH_END.has(finding.part) ? finding.end : undefined;
}

const known = new Map<string, Site>();
function siteFor(where: Pick<Site, 'part' | 'group' | 'side' | 'end'>): Site {
  const key = [where.part ?? where.group, where.side ?? '', where.end ?? ''].join('|');
  let site = known.get(key);
  if (!site) {
    const told = Object.fromEntries(Object.entries(where).filter(([, value]) => value !== undefined));
    site = Object.freeze({ key, ...told, label: labelOf(where) });
    known.set(key, site);
  }
  return site;
}

function labelOf({ part, group, side, end }: Pick<Site, 'part' | 'group' | 'side' | 'end'>): string {
  if (group) return GROUP_LABELS[group];
  const name = [side, end, part].filter(Boolean).join(' ');
  const missing = [
    side === undefined && !SINGLE.has(part as Part) ? 'side' : '',
    end === undefined && WITH_END.has(part as Part) ? 'front or hind' : '',
  ].filter(Boolean);
  return missing.length > 0 ? `${name}, ${missing.join(' and ')} not said` : name;
}
