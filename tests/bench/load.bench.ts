/**
 * Load and watch over ten seasons of 60 dogs, each as a ratio to a plain pass over the same runs in the same process:
 * adding up every dog's metres by day.
 */
import { dayNumber, dayOf, indexLoad, loadOf, withRuns } from '../../server/load/index.ts';
import { episodesOf, type WatchRun } from '../../server/watch/index.ts';
import { dogIn, run } from '../load/build.ts';
import { note } from '../watch/build.ts';
import type { Bench } from './row.ts';

const SEASONS = 10;
const TEAMS = 5;
const TEAM = 12;
const RUN_DAYS = 150;
const DOGS = Array.from({ length: TEAMS * TEAM }, (_, i) => `Dog ${i + 1}`);
const ON = '2027-03-15';
const ROUNDS = 7;

/** The figures; about ten seconds. */
export function bench(): Bench[] {
  const runs = tenSeasons();
  const dogRuns = runs.reduce((sum, one) => sum + one.dogs.length, 0);
  const findings = runs.reduce((sum, one) => sum + one.dogs.reduce((n, dog) => n + dog.findings.length, 0), 0);
  const plain = time(() => plainPass(runs));
  const scratch = time(() => loadOf(indexLoad(runs), DOGS, ON));

  const index = indexLoad(runs);
  loadOf(index, DOGS, ON);
  const changed = runs.at(-1) as WatchRun;
  const reviewed = { ...changed, dogs: changed.dogs.map((dog) => ({ ...dog, metres: (dog.metres ?? 0) + 100 })) };
  const review = time(() => loadOf(withRuns(index, [changed], [reviewed]), DOGS, ON));
  const watch = time(() => episodesOf(runs, [], DOGS, { on: ON }, index));

  const size = `${runs.length} runs, ${dogRuns} dog-runs`;
  const row = (name: string, ms: number, more = ''): Bench => ({
    name,
    ratio: ms / plain,
    detail: `${ms.toFixed(1)} ms beside ${plain.toFixed(1)} ms for the plain pass; ${size}${more}`,
  });
  return [
    row('load of all dogs from scratch, ten seasons of 60 dogs', scratch),
    row('load of all dogs after one more review', review, '; the 12 dogs of the run are laid out again'),
    row('episodes of all dogs from scratch, ten seasons of 60 dogs', watch, `, ${findings} findings`),
  ];
}

/** What any answer must do at least: look at each dog of each run and add its metres to its day. */
function plainPass(runs: readonly WatchRun[]): Map<string, Map<string, number>> {
  const days = new Map<string, Map<string, number>>();
  for (const one of runs)
    for (const { dog, metres } of one.dogs) {
      let mine = days.get(dog);
      if (!mine) {
        mine = new Map();
        days.set(dog, mine);
      }
      mine.set(one.day, (mine.get(one.day) ?? 0) + (metres ?? 0));
    }
  return days;
}

/** The shortest of some rounds, in milliseconds, after one that is not counted: the one least disturbed. */
function time(work: () => unknown): number {
  work();
  const taken = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...taken);
}

/** Invented runs: five teams of twelve on 150 days of each season; each tenth dog-run has a finding, in twelve kinds. */
function tenSeasons(): WatchRun[] {
  const told = [
    'wrist left sore mild',
    'wrist left any resolved',
    'web right front split',
    'foot any absent',
    'shoulder right stiff',
    'lame',
    'lame absent',
    'loose-stool',
    'loose-stool resolved',
    'pad left hind worn possible',
    'wrist right swollen',
    'foot sides-both ends-both sore mild',
  ];
  const runs: WatchRun[] = [];
  let turn = 0;
  for (let season = 0; season < SEASONS; season++) {
    const first = dayNumber(`${2017 + season}-10-01`);
    for (let i = 0; i < RUN_DAYS; i++) {
      const day = dayOf(first + Math.floor((i * 180) / RUN_DAYS));
      for (let team = 0; team < TEAMS; team++) {
        const plain = run(
          day,
          {},
          { id: `${day}-${team}`, surfaces: i % 3 === 0 ? ['icy'] : ['hard'], celsius: [-5 - (i % 30)] },
        );
        const metres = 8000 + ((i * 37 + team * 911) % 50) * 1000;
        const dogs = DOGS.slice(team * TEAM, (team + 1) * TEAM).map((dog, seat) => {
          turn++;
          const position = seat < 2 ? 'lead' : seat < 4 ? 'swing' : seat < 10 ? 'team' : 'wheel';
          const place = { byPosition: { [position]: metres }, bySide: { [seat % 2 ? 'right' : 'left']: metres } };
          const words = told[(turn / 10) % told.length];
          return {
            ...dogIn(dog, metres, { ...place, minutes: metres / 250 }),
            findings: turn % 10 === 0 && words ? note(day, dog, words) : [],
          };
        });
        runs.push({ ...plain, dogs });
      }
    }
  }
  return runs;
}
