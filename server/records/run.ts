/** One team's run record from its course, its dogs' ways and what was told of them. */
import { type EntryOf, POSITIONS } from '../../grammar/entry.ts';
import { seasonOf } from '../model.ts';
import { metresBooted } from './booties.ts';
import { conflictsOf } from './conflicts.ts';
import { type Course, clocksOf, courseOf, inOrder, type SetByHand } from './course.ts';
import { eventsOf, placesOf } from './events.ts';
import { byTime, holds, type Item, of, said, type Told } from './items.ts';
import { phaseOf } from './phases.ts';
import type { Units } from './speak.ts';
import { stopsOf } from './stops.ts';
import { type DogWay, wayOf } from './stretches.ts';
import type { Team } from './teams.ts';
import { iso, MINUTE } from './time.ts';
import type { RunDog, RunRecord } from './types.ts';
import { celsius, metresPerSecond } from './units.ts';

/** What was told of the dogs of a team, and of dogs named in its notes that are not in it. */
export interface OfDogs {
  dogs: ReadonlyMap<string, readonly Told[]>;
  absent: ReadonlyMap<string, readonly Told[]>;
}

/** A record with the hours it took, ms, as far as they are known. */
export interface Timed {
  record: RunRecord;
  from?: number;
  to?: number;
}

export function recordOf(team: Team, told: OfDogs, byHand: SetByHand | undefined, units: Units): Timed {
  const course = courseOf(team, byHand);
  const ways = new Map([...eventsOf(team, course)].map(([dog, events]) => [dog, wayOf(events, course)] as const));
  const { start, finish } = clocksOf(team);
  const minutes = minutesOf(team);
  const around = [...team.around].sort(inOrder);
  const record: RunRecord = {
    id: team.id,
    day: team.group.day,
    season: seasonOf(team.group.day),
    ...(team.driver === undefined ? {} : { driver: team.driver }),
    notes: notesOf(team),
    ...(start ? { startedAt: iso(start.ms, start.offset) } : {}),
    ...(finish ? { finishedAt: iso(finish.ms, finish.offset) } : {}),
    ...lengthOf(course, byHand),
    ...(minutes === undefined ? {} : { minutes }),
    stops: stopsOf(team, course),
    surfaces: of(around, 'trail').map(said),
    weather: of(around, 'weather').map(said),
    celsius: of(around, 'temperature').map(({ entry }) => celsius(entry.value, entry.unit)),
    windMetresPerSecond: of(around, 'wind').map(({ entry }) => metresPerSecond(entry.value, entry.unit)),
    gear: of(around, 'gear').map(said),
    dogs: dogsOf(team, course, ways, told.dogs, minutes),
    conflicts: conflictsOf({
      team,
      course,
      ways,
      absent: told.absent,
      units,
      ...(start ? { start: start.ms } : {}),
      ...(finish ? { finish: finish.ms } : {}),
    }),
  };
  return { record, ...hoursOf(team) };
}

function lengthOf(course: Course, byHand: SetByHand | undefined): Partial<RunRecord> & Pick<RunRecord, 'metresFrom'> {
  const { length, from, said: told } = course;
  return {
    ...(length === undefined ? {} : { metres: length }),
    metresFrom: from,
    ...(from === 'corrected' && told ? { metresSaid: told.metres, saidFrom: told.from } : {}),
    ...(from === 'corrected' && byHand
      ? {
          correction: {
            value: byHand.value,
            unit: byHand.unit,
            ...(byHand.why ? { why: byHand.why } : {}),
            at: byHand.at,
          },
        }
      : {}),
  };
}

/** From start to finish where both are told, else the time told for the run (the last told). */
function minutesOf(team: Team): number | undefined {
  const { start, finish } = clocksOf(team);
  if (start && finish && finish.ms > start.ms) return (finish.ms - start.ms) / MINUTE;
  return of(team.figures, 'duration')
    .filter(({ entry }) => entry.of === 'run')
    .sort(inOrder)
    .at(-1)?.entry.minutes;
}

/** Its notes in the order of time. A note of another person's that came before the team's first stays with that person's run. */
function notesOf(team: Team): string[] {
  const first = team.group.items[0] as Item;
  const mine = new Set(team.group.items);
  return [...team.items]
    .filter((item) => mine.has(item) || byTime(item, first) > 0)
    .sort(byTime)
    .map((item) => item.note.id);
}

function hoursOf(team: Team): { from?: number; to?: number } {
  const { start, finish } = clocksOf(team);
  const out = [...team.items].filter((item) => phaseOf(team.phases, item) === 'trail').map((item) => item.when.ms);
  const from = start?.ms ?? (out.length > 0 ? Math.min(...out) : undefined);
  const to = finish?.ms ?? (out.length > 0 ? Math.max(...out) : undefined);
  return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

function dogsOf(
  team: Team,
  course: Course,
  ways: ReadonlyMap<string, DogWay>,
  told: ReadonlyMap<string, readonly Told[]>,
  minutes: number | undefined,
): RunDog[] {
  const find = placesOf(team, course);
  const dogs = [...ways].map(([dog, way]): RunDog => {
    const all = told.get(dog) ?? [];
    const booties = all.filter((one): one is Told<EntryOf<'booties'>> => one.entry.kind === 'booties');
    const booted = metresBooted(booties, way, team, course, find);
    const time = minutesFor(way, course, minutes);
    return {
      dog,
      stretches: way.stretches,
      ...(way.metres === undefined ? {} : { metres: way.metres }),
      ...(time === undefined ? {} : { minutes: time }),
      byPosition: way.byPosition,
      bySide: way.bySide,
      ...(booted === undefined ? {} : { metresBooted: booted }),
      ...(way.left ? { left: way.left } : {}),
      findings: all.filter((one): one is Told<EntryOf<'finding'>> => one.entry.kind === 'finding').map(said),
      care: of(all, 'care').map(said),
      intake: of(all, 'intake').map(said),
      booties: booties.filter(({ entry }) => holds(entry)).map(said),
      attitude: of(all, 'attitude').map(said),
      measures: of(all, 'measure').map(said),
    };
  });
  return dogs.sort((a, b) => place(a) - place(b) || (a.dog < b.dog ? -1 : 1));
}

/** The run's time in proportion to the dog's distance; a dog that was in all the way has all of it, however long that was. */
function minutesFor(way: DogWay, course: Course, minutes: number | undefined): number | undefined {
  if (minutes === undefined) return undefined;
  if (course.length !== undefined && course.length > 0)
    return way.metres === undefined ? undefined : (minutes * way.metres) / course.length;
  const whole = way.spells.length === 1 && way.spells[0]?.from === 0 && !way.left;
  return whole ? minutes : undefined;
}

/** Order on the gangline: from lead to wheel, left before right. */
function place({ stretches }: RunDog): number {
  const first = stretches[0];
  const row = first?.position === undefined ? POSITIONS.length : POSITIONS.indexOf(first.position);
  return row * 3 + (first?.side === 'left' ? 0 : first?.side === 'right' ? 1 : 2);
}
