/**
 * Notes into groups: one outing of one driver, or a stretch of yard notes. First by day, driver and time, then by what a
 * person chose: a cut starts a group, a join goes on with the run before, a moved note goes where it was put.
 */
import type { RunChoices } from '../model.ts';
import { showsRun } from './evidence.ts';
import { byTime, type Item } from './items.ts';
import { goOn, type Open, openWith, startsRun } from './starts.ts';
import { daysBetween } from './time.ts';

export interface Group {
  /** The speaker, folded; '' for the musher's own phone. */
  by: string;
  /** Local day on which it began. */
  day: string;
  /** In the order of time. */
  items: Item[];
  /** Whether any accepted entry shows that a team went out; else these are yard notes. */
  isRun: boolean;
  /** A person chose that its first note begins something of its own: nothing in it goes back to the speaker's runs before. */
  cut?: true;
  /** Notes that a person put here. */
  moved?: Set<string>;
}

/** Groups of a season's notes (`items` in the order of time), in the order of their first notes. */
export function groupsOf(items: readonly Item[], choices: RunChoices, gapHours: number): Group[] {
  const anchors = anchorsOf(items, choices.moved);
  const cuts = new Set(choices.cutBefore);
  const joins = new Set(choices.joinBefore.filter((id) => !cuts.has(id)));
  const chains = new Map<string, Item[]>();
  for (const item of items) {
    if (anchors.has(item.note.id)) continue;
    const chain = chains.get(item.by);
    if (chain) chain.push(item);
    else chains.set(item.by, [item]);
  }
  const groups: Group[] = [];
  for (const chain of chains.values()) groups.push(...joined(inChain(chain, cuts, gapHours), joins));
  moveIn(groups, items, anchors);
  return groups.sort((a, b) => byTime(a.items[0] as Item, b.items[0] as Item));
}

function inChain(chain: readonly Item[], cuts: ReadonlySet<string>, gapHours: number): Group[] {
  const groups: Group[] = [];
  let open: Open | undefined;
  for (const [i, item] of chain.entries()) {
    const group = groups.at(-1);
    if (open && group && !cuts.has(item.note.id) && !startsRun(open, chain, i, gapHours)) {
      goOn(open, item);
      group.items.push(item);
      group.isRun = open.isRun;
    } else {
      open = openWith(item);
      const cut = cuts.has(item.note.id) ? { cut: true as const } : {};
      groups.push({ by: item.by, day: open.day, items: [item], isRun: open.isRun, ...cut });
    }
  }
  return groups;
}

/**
 * Joins by choice: the group that begins with the note goes on with the same driver's run before it, of the same local day
 * or the day before. Yard notes between the two stay yard notes.
 */
function joined(groups: Group[], joins: ReadonlySet<string>): Group[] {
  const kept: Group[] = [];
  for (const group of groups) {
    const first = (group.items[0] as Item).note.id;
    const before = joins.has(first) ? kept.findLast((one) => one.isRun) : undefined;
    const near = before && daysBetween((before.items.at(-1) as Item).when.day, group.day) <= 1;
    if (before && near) {
      before.items = [...before.items, ...group.items].sort(byTime);
    } else kept.push(group);
  }
  return kept;
}

/** For each moved note the note that it goes with in the end. A note moved to one that is not there, or in a circle, stays. */
function anchorsOf(items: readonly Item[], moved: RunChoices['moved']): Map<string, string> {
  const anchors = new Map<string, string>();
  if (moved.length === 0) return anchors;
  const known = new Set(items.map((item) => item.note.id));
  const to = new Map(
    moved.filter((one) => known.has(one.note) && known.has(one.toRunOf)).map((one) => [one.note, one.toRunOf]),
  );
  for (const note of to.keys()) {
    const passed = new Set<string>([note]);
    let goal = to.get(note) as string;
    while (to.has(goal) && !passed.has(goal)) {
      passed.add(goal);
      goal = to.get(goal) as string;
    }
    if (known.has(goal) && !passed.has(goal)) anchors.set(note, goal);
  }
  return anchors;
}

function moveIn(groups: Group[], items: readonly Item[], anchors: ReadonlyMap<string, string>): void {
  if (anchors.size === 0) return;
  const home = new Map<string, Group>();
  for (const group of groups) for (const item of group.items) home.set(item.note.id, group);
  const touched = new Set<Group>();
  for (const item of items) {
    const anchor = anchors.get(item.note.id);
    const group = anchor === undefined ? undefined : home.get(anchor);
    if (!group) continue;
    group.items.push(item);
    group.moved = (group.moved ?? new Set()).add(item.note.id);
    group.isRun ||= item.told.some(showsRun);
    touched.add(group);
  }
  for (const group of touched) group.items.sort(byTime);
}
