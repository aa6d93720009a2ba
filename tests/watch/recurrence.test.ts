/** A wrist that comes back three times: miles between, and what the dog did before each, worked by hand. */
import { describe, expect, it } from 'vitest';
import { dayNumber, dayOf, type LoadDog } from '../../server/load/index.ts';
import { episodesOf, timesSentence, type WatchRun } from '../../server/watch/index.ts';
import { surfaceSaid } from '../load/build.ts';
import { note, runWith, tell } from './build.ts';

const DOG = 'Juniper';
const day = (offset: number) => dayOf(dayNumber('2027-01-01') + offset);

/**
 * 1,000 m a day from 1 January (offset 0) on, 40 days; 3,000 m on the seven days before the third onset (offsets 28 to
 * 34), in lead on ice and in booties. Sore on offset 10, fine on 12; sore on 20, nothing said after; sore on 35.
 */
function story(): WatchRun[] {
  return Array.from({ length: 40 }, (_, offset) => {
    const hard = offset >= 28 && offset <= 34;
    const metres = hard ? 3000 : 1000;
    const told = [10, 20, 35].includes(offset) ? [note(day(offset), DOG, 'wrist left sore')] : [];
    if (offset === 12) told.push(note(day(offset), DOG, 'wrist left any resolved'));
    const run = runWith(day(offset), { [DOG]: metres, Moss: metres }, ...told);
    const place: Partial<LoadDog> = hard
      ? { byPosition: { lead: metres }, metresBooted: metres }
      : { byPosition: { wheel: metres }, metresBooted: 0 };
    if (hard) run.surfaces.push(surfaceSaid('icy'));
    return { ...run, dogs: run.dogs.map((dog) => ({ ...dog, ...place })) };
  });
}

describe('a wrist three times in a season', () => {
  const { episodes } = episodesOf(story(), [], [DOG, 'Moss'], { on: day(39) });
  const [third, second, first] = episodes;

  it('is found as three, the open one first', () => {
    expect(episodes.map(({ from, state, number }) => [from, state, number])).toEqual([
      [day(35), 'open', 3],
      [day(20), 'not-seen-since', 2],
      [day(10), 'over', 1],
    ]);
    expect(episodes.map(timesSentence)).toEqual(['third time this season', 'second time this season', undefined]);
    expect(second?.until).toBe(day(35));
  });

  it('knows days, runs and metres between, of the days in between', () => {
    expect(first?.sinceBefore).toBeUndefined();
    // Days 11 to 19: nine runs of 1,000 m.
    expect(second?.sinceBefore).toEqual({
      episode: first?.id,
      days: 10,
      runs: 9,
      metres: 9000,
      runsWithoutDistance: 0,
    });
    // Days 21 to 34: seven of 1,000 m and seven of 3,000 m.
    expect(third?.sinceBefore).toMatchObject({ days: 15, runs: 14, metres: 28_000 });
  });

  it('sets the seven days before each onset beside the dog’s own usual', () => {
    expect(first?.onset).toMatchObject({ metres7: 7000, daysOfRecord: 7 });
    expect(second?.onset).toMatchObject({ metres7: 7000 });
    expect(third?.onset).toMatchObject({ metres7: 21_000, day: { metres: 1000 } });
    // 34 sums of seven days: 22 of 7,000 (ending on 6 to 27), then 9 … 21 thousand (28 to 34) and 19 … 11 thousand (35 to 39).
    expect(third?.onset.usual.metres7).toBe(7000);
  });

  it('shows position, surface and booties of that week beside those of the season', () => {
    expect(third?.onset.week).toMatchObject({
      byPosition: { lead: { share: 1 } },
      bySurface: { icy: { share: 1 } },
      byBooties: { on: { share: 1 } },
    });
    // 33 days of 1,000 m in wheel and 7 of 3,000 m in lead: 54,000 m.
    expect(third?.onset.usual.season).toMatchObject({
      metres: 54_000,
      byPosition: { lead: { metres: 21_000, share: 21 / 54 }, wheel: { metres: 33_000, share: 33 / 54 } },
      bySurface: { icy: { metres: 21_000 }, unknown: { metres: 33_000 } },
      byBooties: { on: { metres: 21_000 }, off: { metres: 33_000 } },
    });
  });
});

it('an onset in the first days says how few of the seven it knows', () => {
  const runs = [
    runWith(day(0), { [DOG]: 500 }),
    runWith(day(2), { [DOG]: 700 }, note(day(2), DOG, 'pad left front cut')),
  ];
  const [episode] = episodesOf(runs, [], [DOG], { on: day(2) }).episodes;
  expect(episode?.onset).toMatchObject({ metres7: 500, daysOfRecord: 2, day: { metres: 700 } });
  expect(episode?.onset.usual.metres7).toBeUndefined();
});

it('a dog that never ran has an episode all the same', () => {
  const [episode] = episodesOf([], [tell(day(3), DOG, 'eye left infected')], [DOG], { on: day(3) }).episodes;
  expect(episode).toMatchObject({ number: 1, onset: { metres7: 0, daysOfRecord: 0 } });
});

it('runs after the day asked for are no part of the usual', () => {
  const runs = story();
  const early = episodesOf(runs, [], [DOG], { on: day(20) });
  expect(early).toEqual(episodesOf(runs.slice(0, 21), [], [DOG], { on: day(20) }));
});
