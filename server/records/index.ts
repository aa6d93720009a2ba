/**
 * Run records: from a season's notes and what a person chose about them to runs that count. Pure functions; everything they
 * give can be thrown away and computed again. The steps, in their order:
 *
 * 1. items.ts      notes in the order of time, their accepted entries under the dogs' names of now
 * 2. group.ts      notes into outings by day, driver and time (starts.ts), then cut, joined and moved by choice
 * 3. teams.ts      an outing into teams: whose dog (seats.ts), whose distance (figures.ts), told when (phases.ts)
 * 4. sayings.ts    every entry of a dog to the run it was in, else to the yard
 * 5. course.ts     how long the run was, which marks hold, where the team was when
 *    events.ts     what changed for each dog, and where; stretches.ts: its stretches and sums; booties.ts; stops.ts
 * 6. run.ts        the record; conflicts.ts: what does not fit together
 */
import type { Dog, Season, Settings } from '../model.ts';
import { addDoubles } from './conflicts.ts';
import type { SetByHand } from './course.ts';
import { groupsOf } from './group.ts';
import { itemsOf, person } from './items.ts';
import { recordOf } from './run.ts';
import { sayingsOf } from './sayings.ts';
import { type Outing, outingsOf, type Team } from './teams.ts';
import type { RunRecord, YardRecord } from './types.ts';

export { lineupBefore } from './lineup.ts';
export { currentName } from './names.ts';
export type * from './types.ts';
export * from './units.ts';

/**
 * The runs of a season in the order of time, and what was told of dogs that were in none. Only accepted entries of notes that
 * are not aside count, and none that is planned. The order in which the notes stand in the season does not matter.
 */
export function runsOf(season: Season, dogs: Dog[], settings: Settings): { runs: RunRecord[]; yard: YardRecord[] } {
  const items = itemsOf(season.notes, dogs);
  const groups = groupsOf(items, season.runs, settings.runGapHours);
  const outings = outingsOf(groups, settings.runGapHours);
  const sayings = sayingsOf(groups, outings);
  const lengths = setByHand(outings, season.runs.distances);
  const none = new Map();
  const timed = outings.flatMap(({ own, others }) =>
    (own ? [own, ...others] : others).map((team) =>
      recordOf(
        team,
        { dogs: sayings.dogs.get(team) ?? none, absent: sayings.absent.get(team) ?? none },
        lengths.get(team),
        settings.units,
      ),
    ),
  );
  addDoubles(timed);
  return { runs: timed.map(({ record }) => record), yard: sayings.yard };
}

/** The length set by hand for each team: of several the one set last. */
function setByHand(outings: readonly Outing[], distances: readonly SetByHand[]): Map<Team, SetByHand> {
  const lengths = new Map<Team, SetByHand>();
  if (distances.length === 0) return lengths;
  const holding = new Map<string, Set<Team>>();
  for (const { own, others } of outings)
    for (const team of own ? [own, ...others] : others)
      for (const { note } of [...team.items, ...team.group.items])
        holding.set(note.id, (holding.get(note.id) ?? new Set()).add(team));
  for (const distance of [...distances].sort((a, b) => Date.parse(a.at) - Date.parse(b.at))) {
    const teams = [...(holding.get(distance.note) ?? [])];
    const telling = (team: Team) => [...team.items].some(({ note }) => note.id === distance.note);
    const named = teams.filter((team) => person(team.driver) === person(distance.driver));
    const own = distance.driver === undefined ? teams.find((team) => team.own) : undefined;
    const team = named.find(telling) ?? named[0] ?? own;
    if (team) lengths.set(team, distance);
  }
  return lengths;
}
