/** What in the notes of a run does not fit together, each with a sentence a person understands and can act upon. */
import type { Course, Mark } from './course.ts';
import { of, type Told } from './items.ts';
import { clock, far, list, markAt, type Units } from './speak.ts';
import type { Clash, DogWay } from './stretches.ts';
import type { Team } from './teams.ts';
import type { Conflict, RunRecord } from './types.ts';

/** What the conflicts of one team's run are found from. */
export interface Found {
  team: Team;
  course: Course;
  ways: ReadonlyMap<string, DogWay>;
  /** Dogs named on the trail that are not in the team. */
  absent: ReadonlyMap<string, readonly Told[]>;
  units: Units;
  /** Start and finish, ms. */
  start?: number;
  finish?: number;
}

export function conflictsOf(found: Found): Conflict[] {
  return [
    ...lengths(found),
    ...marks(found),
    ...places(found),
    ...taken(found),
    ...lineups(found),
    ...(found.start !== undefined && found.finish !== undefined && found.finish <= found.start ? [times(found)] : []),
  ];
}

const noteIds = (told: readonly Told[]) => [...new Set(told.map(({ note }) => note))];

function times({ team }: Found): Conflict {
  const told = of(team.figures, 'clock').filter(({ entry }) => entry.event === 'start' || entry.event === 'finish');
  const says = 'The finish told lies before the start: one of the two times can’t be right, so the run has no time.';
  return { kind: 'finish-before-start', says, dogs: [], notes: noteIds(told) };
}

/** Totals that differ by more than rounding from one unit to another does (half a percent, ten metres at least). */
function differ(a: number, b: number): boolean {
  return Math.abs(a - b) > Math.max(10, 0.005 * Math.max(a, b));
}

function lengths({ team, course, units }: Found): Conflict[] {
  const out: Conflict[] = [];
  const first = course.totals[0];
  if (first && course.from !== 'corrected' && course.totals.some(({ metres }) => differ(metres, first.metres))) {
    const told = course.totals.map(({ metres, told }) => `${far(metres, units)} (${clock(told.at)})`);
    const says = `Different lengths are told for this run: ${list(told)}. ${far(course.length ?? 0, units)} counts; set the right one by hand.`;
    out.push({ kind: 'two-totals', says, dogs: [], notes: noteIds(course.totals.map(({ told }) => told)) });
  }
  if (course.length === undefined) {
    const dogs = [...team.members].sort();
    const whose = team.own || team.driver === undefined ? 'this run' : `${team.driver}’s team`;
    const says = `No note tells how far ${whose} went, so ${dogs.length > 0 ? 'its dogs’ distance is not known' : 'it has no length'}. Set its distance by hand.`;
    out.push({ kind: 'no-distance', says, dogs, notes: [...team.items].map((item) => item.note.id) });
  }
  return out;
}

function marks({ course, units }: Found): Conflict[] {
  const out: Conflict[] = [];
  const { length } = course;
  if (length !== undefined && (course.from === 'total' || course.from === 'corrected')) {
    const beyond = course.marks.filter((mark) => mark.metres > length && differ(mark.metres, length));
    if (beyond.length > 0) {
      const told = beyond.map((mark) => `${markAt(mark.metres, units)} (${clock(mark.told.at)})`);
      const says = `The run is ${far(length, units)} long, but ${list(told)} ${beyond.length > 1 ? 'are' : 'is'} told in its notes. No dog is given more than the run.`;
      out.push({ kind: 'mark-beyond-total', says, dogs: [], notes: noteIds(beyond.map(({ told }) => told)) });
    }
  }
  for (const mark of course.astray) {
    const other = against(mark, course);
    const when = other && other.told.item.when.ms < mark.told.item.when.ms ? 'after' : 'before';
    const than = other
      ? ` is told ${when} ${markAt(other.metres, units)} (${clock(other.told.at)})`
      : ' does not fit in';
    const says = `${capital(markAt(mark.metres, units))} (${clock(mark.told.at)})${than}: one of them is wrong, or it looks back. It places only what its own note tells.`;
    out.push({ kind: 'mark-goes-back', says, dogs: [], notes: noteIds(other ? [other.told, mark.told] : [mark.told]) });
  }
  return out;
}

/** A mark that fits in with the others and that a mark astray contradicts. */
function against(astray: Mark, course: Course): Mark | undefined {
  const gone = new Set(course.astray);
  return course.marks.findLast(
    (mark) =>
      !gone.has(mark) &&
      (mark.item.when.ms < astray.item.when.ms ? mark.metres > astray.metres : mark.metres < astray.metres) &&
      mark.item !== astray.item,
  );
}

function places({ team, course, ways, units }: Found): Conflict[] {
  const out: Conflict[] = team.disputes.map(({ dog, items, keys }) => {
    const notes = [...new Set(items.map((item) => item.note.id))];
    const says =
      keys.length > 1
        ? `${dog} is told in two teams at once (${[...new Set(items.map((item) => clock(item.note.at)))].join(' and ')}); the one told last has the dog.`
        : `${dog} is told in the team and at home (${[...new Set(items.map((item) => clock(item.note.at)))].join(' and ')}); it counts as ${team.members.has(dog) ? 'in the team' : 'at home'}.`;
    return { kind: 'dog-in-two-places', says, dogs: [dog], notes };
  });
  for (const [dog, { clashes }] of ways)
    for (const clash of clashes) {
      // Without a length nothing can be placed anyway; that is a conflict of its own.
      if (clash.how === 'unknown-place' && course.length === undefined) continue;
      out.push(ofClash(dog, clash, units));
    }
  return out;
}

function ofClash(dog: string, clash: Clash, units: Units): Conflict {
  const { event, with: earlier } = clash;
  const notes = noteIds(earlier ? [earlier.told, event.told] : [event.told]);
  const at = clock(event.told.at);
  const conflict = (kind: Conflict['kind'], says: string): Conflict => ({ kind, says, dogs: [dog], notes });
  const out = event.manner === 'dropped' ? 'dropped' : 'loaded';
  const place = (one: typeof event) => [one.side, one.position].filter(Boolean).join(' ') || 'the team';
  switch (clash.how) {
    case 'two-places':
      return conflict(
        'dog-in-two-places',
        `${dog} is told in ${earlier ? place(earlier) : 'one place'} and in ${place(event)} at once (${at}); the last one counts.`,
      );
    case 'told-otherwise':
      return conflict(
        'dog-in-two-places',
        `${dog} is told in ${place(event)} afterwards (${at}), but in ${earlier ? place(earlier) : 'another place'} before; what was told first counts.`,
      );
    case 'out-twice':
      return conflict(
        'dog-in-two-places',
        `${dog} is ${out} at ${markAt(event.place.metres ?? 0, units)} (${at}) as well as at ${markAt(earlier?.place.metres ?? 0, units)}; what was told first counts.`,
      );
    case 'unlisted':
      return conflict(
        'finding-on-absent-dog',
        `${dog} is ${out} (${at}), but no line-up of this run has the dog; it counts as in the team from the start to there.`,
      );
    case 'unknown-place':
      return conflict(
        'unknown-place',
        event.what === 'out'
          ? `No mark tells where ${dog} was ${out} (${at}), so the dog’s distance is not known. Add the distance to that note.`
          : `No mark tells where ${dog} was moved to ${place(event)} (${at}), so its distance can’t be told apart by place. Add the distance to that note.`,
      );
  }
}

/** Two dogs on one side of lead, swing or wheel over the same part of the way; team pairs are many. */
function taken({ course, ways, units }: Found): Conflict[] {
  const seats = new Map<string, { dog: string; from: number; to: number }[]>();
  for (const [dog, { stretches }] of ways)
    for (const { position, side, fromMetres: from, toMetres } of stretches) {
      if (!position || !side || position === 'team' || from === undefined) continue;
      // Without a length the last stretch is open; what lies behind a change without a place can't be compared.
      const open = course.length === undefined && stretches.length === 1 ? Number.POSITIVE_INFINITY : undefined;
      const to = toMetres ?? open;
      if (to === undefined) continue;
      const seat = `${side} ${position}`;
      seats.set(seat, [...(seats.get(seat) ?? []), { dog, from, to }]);
    }
  const out: Conflict[] = [];
  for (const [seat, sitting] of seats) {
    sitting.sort((a, b) => a.from - b.from || (a.dog < b.dog ? -1 : 1));
    for (const [i, one] of sitting.entries())
      for (const other of sitting.slice(i + 1)) {
        const from = Math.max(one.from, other.from);
        if (other.dog === one.dog || Math.min(one.to, other.to) - from <= 1) continue;
        const dogs = [one.dog, other.dog].sort();
        const where = from > 0 ? ` from ${markAt(from, units)} on` : '';
        out.push({
          kind: 'two-dogs-in-one-place',
          says: `${list(dogs)} are both told in ${seat}${where}.`,
          dogs,
          notes: [],
        });
      }
  }
  return out;
}

function lineups({ team, ways, absent }: Found): Conflict[] {
  const told = [...absent.values()].flat();
  const named = [...absent.keys()].sort();
  if (team.placings.some((placing) => placing.told.entry.kind === 'hitch' && placing.dogs.length > 0)) {
    return named.map((dog) => ({
      kind: 'finding-on-absent-dog',
      says: `${dog} is told of in this run’s notes but is not in its line-up. If the dog ran, add it to the line-up; if it is another dog, change the entry.`,
      dogs: [dog],
      notes: noteIds(absent.get(dog) ?? []),
    }));
  }
  const known = [...ways.keys()].sort();
  const dogs = [...new Set([...known, ...named])].sort();
  const missing =
    known.length > 0
      ? `No note tells the line-up; only ${list(known)} ${known.length > 1 ? 'are' : 'is'} known to have run.`
      : 'No note tells who was in the team, so no dog is given this run’s distance.';
  const who = named.length > 0 ? ` Named in its notes: ${list(named)}.` : '';
  const says = `${missing}${who} Add the line-up to one of its notes.`;
  return [{ kind: 'no-lineup', says, dogs, notes: noteIds(told) }];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Dogs in two runs at one time, told by two people; counted in both until one of them is changed. Adds to both runs. */
export function addDoubles(runs: readonly { record: RunRecord; from?: number; to?: number }[]): void {
  const byDog = new Map<string, { record: RunRecord; from: number; to: number }[]>();
  for (const { record, from, to } of runs) {
    if (from === undefined || to === undefined) continue;
    for (const { dog } of record.dogs) {
      const key = `${record.day}\n${dog}`;
      const others = byDog.get(key) ?? [];
      for (const other of others)
        if (Math.min(to, other.to) > Math.max(from, other.from)) addDouble(dog, record, other.record);
      byDog.set(key, [...others, { record, from, to }]);
    }
  }
}

function addDouble(dog: string, one: RunRecord, other: RunRecord): void {
  for (const [here, there] of [
    [one, other],
    [other, one],
  ] as const) {
    const who = there.driver ? `${there.driver}’s run` : 'another run';
    here.conflicts.push({
      kind: 'dog-in-two-places',
      says: `${dog} is told in ${who} of the same hours too, and counts in both until one of them is changed.`,
      dogs: [dog],
      notes: [...new Set([...here.notes.slice(0, 1), ...there.notes.slice(0, 1)])],
    });
  }
}
