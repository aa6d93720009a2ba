/**
 * Which dog's record each accepted entry goes to. An entry of dogs goes, dog by dog, to the run the dog was in, else to the
 * yard of that day: to one place, never to none. What is told of no dog goes to the teams that were out.
 */
import type { Kind } from '../../grammar/entry.ts';
import { inOrder } from './course.ts';
import { showsRun } from './evidence.ts';
import type { Group } from './group.ts';
import { grouped, holds, type Item, said, type Told } from './items.ts';
import { phaseOf } from './phases.ts';
import type { Outing, Team } from './teams.ts';
import type { YardRecord, YardSaid } from './types.ts';

/** Kinds that are told of a dog and kept with it. */
const OF_DOGS: ReadonlySet<Kind> = new Set(['finding', 'care', 'intake', 'booties', 'attitude', 'measure']);
/** Kinds that tell what was around the team. */
const AROUND: ReadonlySet<Kind> = new Set(['trail', 'weather', 'temperature', 'wind', 'gear']);

export interface Sayings {
  /** For each team and dog the entries of its record. */
  dogs: Map<Team, Map<string, Told[]>>;
  /** Dogs named on the trail that were in no team then, with the entries. */
  absent: Map<Team, Map<string, Told[]>>;
  yard: YardRecord[];
}

/** Whether an entry is kept: a finding whatever is said of it, the rest where it is held to be so; weather and trail only as told for sure. */
function counts({ entry }: Told): boolean {
  if (entry.kind === 'finding') return true;
  if (entry.kind === 'weather' || entry.kind === 'trail' || entry.kind === 'temperature' || entry.kind === 'wind')
    return (entry.assertion ?? 'present') === 'present';
  // "No booties today" is told of the dog and tells how it went.
  if (entry.kind === 'booties') return holds(entry) || entry.assertion === 'absent';
  return holds(entry);
}

/** Gives every entry its place. Adds to the teams what was around them and the notes that tell of their dogs. */
export function sayingsOf(groups: readonly Group[], outings: readonly Outing[]): Sayings {
  const teams = [...new Set(outings.flatMap(({ own, others }) => (own ? [own, ...others] : others)))];
  const sorting = new Sorting(teams);
  const outingOf = new Map(outings.map((outing) => [outing.group, outing]));
  for (const group of groups) {
    const outing = outingOf.get(group);
    for (const item of group.items)
      for (const told of item.told) {
        if (!counts(told)) continue;
        const { kind } = told.entry;
        if (OF_DOGS.has(kind)) sorting.ofDogs(told, item, group, outing);
        else if (AROUND.has(kind)) sorting.around(told, item, outing);
      }
  }
  return sorting.done();
}

class Sorting {
  private readonly dogs = new Map<Team, Map<string, Told[]>>();
  private readonly absent = new Map<Team, Map<string, Told[]>>();
  private readonly yard = new Map<string, YardSaid[]>();
  private readonly byDay: Map<string, Team[]>;
  private readonly starts: Map<Team, number>;

  constructor(teams: readonly Team[]) {
    this.starts = new Map(teams.map((team) => [team, startOf(team)]));
    const byStart = [...teams].sort((a, b) => this.startOf(a) - this.startOf(b) || (a.id < b.id ? -1 : 1));
    this.byDay = grouped(byStart, (team) => team.group.day);
  }

  private startOf(team: Team): number {
    return this.starts.get(team) ?? Number.POSITIVE_INFINITY;
  }

  ofDogs(told: Told, item: Item, group: Group, outing: Outing | undefined): void {
    const phase = outing ? phaseOf(outing.phases, item) : 'after';
    const left: string[] = [];
    for (const dog of expanded(told, item, outing)) {
      const team = teamIn(outing, dog) ?? this.elsewhere(dog, item, group, phase === 'trail');
      if (team) {
        add(this.dogs, team, dog, told);
        team.items.add(item);
        continue;
      }
      left.push(dog);
      const speaker = outing?.own ?? outing?.others[0];
      const onTheWay = phase === 'trail' && item.when.ms <= (outing?.phases.shown ?? 0);
      if (speaker && onTheWay && dog !== '*' && !outing?.home.has(dog)) add(this.absent, speaker, dog, told);
    }
    if (holds(told.entry) || told.entry.kind === 'finding')
      if (left.length > 0 || told.dogs.length === 0) this.inYard(told, item, left);
  }

  around(told: Told, item: Item, outing: Outing | undefined): void {
    if (!outing || (phaseOf(outing.phases, item) === 'after' && told.entry.kind !== 'gear')) {
      this.inYard(told, item, told.dogs);
      return;
    }
    const { own, others } = outing;
    if (told.entry.kind === 'gear') {
      const team = told.dogs.map((dog) => teamIn(outing, dog)).find((one) => one) ?? own ?? others[0];
      if (team) team.around.push(told);
      else this.inYard(told, item, told.dogs);
      return;
    }
    const out = [...(own ? [own] : []), ...others.filter((team) => !team.later || team.items.has(item))];
    for (const team of out) team.around.push(told);
    if (out.length === 0) this.inYard(told, item, told.dogs);
  }

  /**
   * The run of that day a dog was in, told of in another driver's notes or in the yard afterwards: the last that began before. On
   * the trail only another driver's run is meant; a dog of one's own earlier run is not in this one. What a person put
   * elsewhere by hand, or cut off from the run before, does not go back there.
   */
  private elsewhere(dog: string, item: Item, group: Group, trail: boolean): Team | undefined {
    if (group.moved?.has(item.note.id)) return undefined;
    const notOwn =
      trail || (group.cut === true && (!group.isRun || (item === group.items[0] && !item.told.some(showsRun))));
    for (const day of new Set([group.day, item.when.day])) {
      const found = (this.byDay.get(day) ?? []).findLast(
        (team) =>
          team.members.has(dog) &&
          (this.startOf(team) <= item.when.ms || trail) &&
          !(notOwn && team.group.by === group.by),
      );
      if (found) return found;
    }
    return undefined;
  }

  private inYard(told: Told, item: Item, dogs: string[]): void {
    const { day } = item.when;
    const list = this.yard.get(day);
    const one: YardSaid = { ...said(told), dogs };
    if (list) list.push(one);
    else this.yard.set(day, [one]);
  }

  done(): Sayings {
    const yard = [...this.yard].map(([day, list]) => ({
      day,
      said: list.sort((a, b) => (a.at === b.at ? compare(a, b) : Date.parse(a.at) - Date.parse(b.at) || compare(a, b))),
    }));
    for (const lists of this.dogs.values()) for (const list of lists.values()) list.sort(inOrder);
    return { dogs: this.dogs, absent: this.absent, yard: yard.sort((a, b) => (a.day < b.day ? -1 : 1)) };
  }
}

/** Notes of one time by id, entries of one note as they stand in it. */
function compare(a: YardSaid, b: YardSaid): number {
  return a.note === b.note ? 0 : a.note < b.note ? -1 : 1;
}

function add(to: Map<Team, Map<string, Told[]>>, team: Team, dog: string, told: Told): void {
  const lists = to.get(team) ?? new Map<string, Told[]>();
  to.set(team, lists);
  const list = lists.get(dog);
  if (list) list.push(told);
  else lists.set(dog, [told]);
}

function startOf(team: Team): number {
  let first = Number.POSITIVE_INFINITY;
  for (const item of team.items) first = Math.min(first, item.begin);
  return first;
}

function teamIn(outing: Outing | undefined, dog: string): Team | undefined {
  if (!outing) return undefined;
  if (outing.own?.members.has(dog)) return outing.own;
  return outing.others.find((team) => team.members.has(dog));
}

/** The dogs an entry is told of; `*` is the speaker's team, without those dropped by then; told in the yard alone it stays `*`. */
function expanded(told: Told, item: Item, outing: Outing | undefined): string[] {
  if (!told.dogs.includes('*')) return told.dogs;
  const { own, others = [] } = outing ?? {};
  const team = own && own.members.size > 0 ? own : others.length === 1 ? others[0] : undefined;
  if (!team) return told.dogs;
  const gone = new Set<string>();
  for (const { told: placing, dogs } of [...team.placings].sort((a, b) => inOrder(a.told, b.told))) {
    if (placing.item.when.ms >= item.when.ms) break;
    const dropped = placing.entry.kind === 'drop' && placing.entry.manner === 'dropped';
    for (const dog of dogs)
      if (dropped) gone.add(dog);
      else if (placing.entry.kind === 'move' || placing.entry.kind === 'hitch') gone.delete(dog);
  }
  const whole = [...team.members].filter((dog) => !gone.has(dog));
  return [...new Set([...told.dogs.filter((dog) => dog !== '*'), ...whole])];
}
