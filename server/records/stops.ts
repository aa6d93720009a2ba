/** The breaks of a run: when, how long, where, as far as each was told. */
import { type Course, inOrder, markFor, within } from './course.ts';
import { grouped, type Item, of, type Told } from './items.ts';
import { looksBack, phaseOf } from './phases.ts';
import type { Team } from './teams.ts';
import { clockAt, iso } from './time.ts';
import type { RunRecord } from './types.ts';

type Stop = RunRecord['stops'][number];

/**
 * Breaks in the order of telling. A clock and a length told in one note are one break. A length told looking back ("with a
 * twenty minute stop") is not counted again when the breaks told on the way have it already, one of them or together.
 */
export function stopsOf(team: Team, course: Course): Stop[] {
  const stops: Stop[] = [];
  const figures = [...team.figures].sort(inOrder);
  const marks = grouped(course.marks, (mark) => mark.item);
  for (const [item, told] of grouped(figures, (one) => one.item)) {
    // A rest told before the team left is none of the run's ("two weeks off").
    if (phaseOf(team.phases, item) === 'before') continue;
    const clocks = of(told, 'clock').filter(({ entry }) => entry.event === 'stop');
    const lengths = of(told, 'duration').filter(({ entry }) => entry.of === 'stop');
    const here = marks.get(item) ?? [];
    for (let i = 0; i < Math.max(clocks.length, lengths.length); i++) {
      const clock = clocks[i];
      const minutes = lengths[i]?.entry.minutes;
      if (!clock && looksBack(team.phases, item) && isKnown(minutes, stops)) continue;
      stops.push(stopOf(item, clock?.entry.time, minutes, whereOf(clock ?? (lengths[i] as Told), here, course)));
    }
  }
  return stops;
}

function stopOf(item: Item, time: string | undefined, minutes: number | undefined, at: number | undefined): Stop {
  return {
    ...(time === undefined ? {} : { at: iso(clockAt(item.when, time), item.when.offset) }),
    ...(minutes === undefined ? {} : { minutes }),
    ...(at === undefined ? {} : { atMetres: at }),
  };
}

function whereOf(told: Told, marks: Course['marks'], course: Course): number | undefined {
  const mark = markFor(told, marks, [told]);
  return mark && within(mark.metres, course);
}

function isKnown(minutes: number | undefined, stops: readonly Stop[]): boolean {
  const known = stops.flatMap((stop) => stop.minutes ?? []);
  const together = known.reduce((sum, one) => sum + one, 0);
  return known.some((one) => one === minutes) || (known.length > 0 && together === minutes);
}
