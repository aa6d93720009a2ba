/**
 * Groups into teams, a run record each: the speaker's own, and one for each other driver told of. A driver who speaks notes
 * of her own has one run, wherever it is told of.
 */
import { ownHitches } from './evidence.ts';
import { figuresOf, tellsOfOwn } from './figures.ts';
import type { Group } from './group.ts';
import { holds, type Item, person, type Told } from './items.ts';
import { type Phases, phasesOf } from './phases.ts';
import { type Dispute, OWN, type Seats, seatsOf } from './seats.ts';
import { HOUR } from './time.ts';

/** A hitch, move or drop with those of its dogs that are this team's. */
export interface Placing {
  told: Told;
  dogs: string[];
}

export interface Team {
  id: string;
  /** As written; left out for the musher's own where her notes bear no name. */
  driver?: string;
  /** The speaker's own, not one told of in passing. */
  own: boolean;
  group: Group;
  phases: Phases;
  /** Who is in it; dogs left at home are not. */
  members: Set<string>;
  placings: Placing[];
  /** Distances, clocks and durations told of it. */
  figures: Told[];
  /** Weather, trail, temperature, wind and gear told while it was out. */
  around: Told[];
  /** Notes that tell of it. */
  items: Set<Item>;
  disputes: Dispute[];
  /** A second outing of a driver's, told after the speaker's run: another time of day, other weather. */
  later: boolean;
}

/** A group that is a run, with its teams; dogs told to have stayed at home. */
export interface Outing {
  group: Group;
  phases: Phases;
  own?: Team;
  others: Team[];
  home: Set<string>;
}

/** The outings of groups, each with its teams; a driver's team joined with the run she speaks of herself. */
export function outingsOf(groups: readonly Group[], gapHours: number): Outing[] {
  const plans = groups.filter((group) => group.isRun).map(plan);
  const spoken = new Map<string, Plan[]>();
  for (const one of plans) {
    if (!one.teams.has(OWN)) continue;
    const list = spoken.get(one.outing.group.by);
    if (list) list.push(one);
    else spoken.set(one.outing.group.by, [one]);
  }
  for (const one of plans) mergeSpoken(one, spoken, gapHours);
  for (const { outing, teams } of plans)
    for (const [key, team] of teams) {
      if (key === OWN) outing.own = team;
      else if (!team.own) outing.others.push(team);
    }
  return plans.map(({ outing }) => outing);
}

/** An outing being made: its teams by key. */
interface Plan {
  outing: Outing;
  teams: Map<string, Team>;
}

function plan(group: Group): Plan {
  const phases = phasesOf(group.items);
  const seats = seatsOf(group, phases);
  const teams = teamsIn(group, phases, seats);
  for (const [dog, key] of seats.dogs) teams.get(key)?.members.add(dog);
  for (const item of group.items) for (const told of item.told) addPlacing(told, item, seats, teams);
  for (const { told, key } of figuresOf(group, seats)) {
    const team = teams.get(key) ?? teams.get(OWN) ?? [...teams.values()][0];
    team?.figures.push(told);
    team?.items.add(told.item);
  }
  for (const dispute of seats.disputes) for (const key of new Set(dispute.keys)) teams.get(key)?.disputes.push(dispute);
  return { outing: { group, phases, others: [], home: seats.home }, teams };
}

function teamsIn(group: Group, phases: Phases, seats: Seats): Map<string, Team> {
  const teams = new Map<string, Team>();
  const first = group.items[0] as Item;
  const blank = () => ({
    group,
    phases,
    members: new Set<string>(),
    placings: [],
    figures: [],
    around: [],
    disputes: [],
  });
  if (group.items.some((item) => tellsOfOwn(item, seats))) {
    const speaker = group.items.find((item) => item.by === group.by)?.note.by;
    const driver = speaker === undefined ? {} : { driver: speaker };
    teams.set(OWN, { ...blank(), id: first.note.id, ...driver, own: true, later: false, items: new Set(group.items) });
  }
  for (const [hitch, key] of seats.teamOf) {
    if (key === OWN || teams.has(key) || hitch.entry.kind !== 'hitch') continue;
    const driver = hitch.entry.driver as string;
    teams.set(key, {
      ...blank(),
      id: `${hitch.note}~${driver}`,
      driver,
      own: false,
      later: key.includes('\n'),
      items: new Set([hitch.item]),
    });
  }
  return teams;
}

/** A hitch goes to the team it tells of; a move or drop to the teams of its dogs. Dogs that are in another team now are left out. */
function addPlacing(told: Told, item: Item, seats: Seats, teams: Map<string, Team>): void {
  const { entry } = told;
  if (!holds(entry)) return;
  if (entry.kind !== 'hitch' && entry.kind !== 'move' && (entry.kind !== 'drop' || entry.manner === 'home')) return;
  const hitched = seats.teamOf.get(told);
  const byKey = new Map<string, string[]>();
  for (const dog of told.dogs) {
    if (dog === '*') {
      // The whole team, its dogs known or not: the speaker's own.
      if (entry.kind === 'hitch') continue;
      const own = [...(teams.get(OWN)?.members ?? [])];
      byKey.set(OWN, [...(byKey.get(OWN) ?? []), ...own]);
      continue;
    }
    const key = seats.dogs.get(dog);
    if (key === undefined || (hitched !== undefined && hitched !== key)) continue;
    byKey.set(key, [...(byKey.get(key) ?? []), dog]);
  }
  for (const [key, dogs] of byKey) {
    const team = teams.get(key);
    team?.placings.push({ told, dogs });
    team?.items.add(item);
  }
}

/** Where a driver told of in passing speaks of her own run that day, the two are one team. */
function mergeSpoken(one: Plan, spoken: ReadonlyMap<string, readonly Plan[]>, gapHours: number): void {
  for (const [key, team] of one.teams) {
    if (key === OWN || team.driver === undefined) continue;
    const home = ownRunOf(team, spoken.get(person(team.driver)) ?? [], gapHours)?.teams.get(OWN);
    if (!home) continue;
    for (const dog of team.members) home.members.add(dog);
    home.placings = [...home.placings, ...team.placings].sort(
      (a, b) =>
        a.told.item.when.ms - b.told.item.when.ms ||
        (a.told.note < b.told.note ? -1 : a.told.note > b.told.note ? 1 : a.told.order - b.told.order),
    );
    home.figures.push(...team.figures);
    home.disputes.push(...team.disputes);
    for (const item of team.items) home.items.add(item);
    one.teams.set(key, home);
  }
}

/**
 * The driver's own run that day which a team told of in passing is: near it in time, and with some dog in common unless one of them
 * names none, or at the same time.
 */
function ownRunOf(team: Team, runs: readonly Plan[], gapHours: number): Plan | undefined {
  const at = Math.min(...[...team.items].map((item) => item.when.ms));
  let best: Plan | undefined;
  let bestAway = gapHours * HOUR;
  for (const run of runs) {
    const { group } = run.outing;
    if (group.day !== team.group.day) continue;
    const from = (group.items[0] as Item).begin;
    const to = (group.items.at(-1) as Item).when.ms;
    const away = Math.max(from - at, at - to, 0);
    const named = new Set(group.items.flatMap((item) => ownHitches(item, group.by).flatMap((told) => told.dogs)));
    const alike = named.size === 0 || [...team.members].some((dog) => named.has(dog)) || away === 0;
    if (alike && away <= bestAway) {
      if (best && away === bestAway) continue;
      best = run;
      bestAway = away;
    }
  }
  return best;
}
