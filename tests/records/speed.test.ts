/** A season of ten thousand notes is worked out in well under a second. */
import { expect, test } from 'vitest';
import type { Note } from '../../server/model.ts';
import { lineupBefore, runsOf } from '../../server/records/index.ts';
import { clock, dog, drop, finding, hitch, intake, mark, move, note, SETTINGS, season, total } from './build.ts';

const NAMES = Array.from({ length: 60 }, (_, i) => `Dog${i}`);
const ROSTER = NAMES.map((name) => dog(name));

/** Milliseconds the processor worked; the clock would count what else this machine is busy with. */
function cpuSince(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** One run a day of 16 dogs with `each` notes on the trail, for `days` days. */
function big(days: number, each: number): Note[] {
  const notes: Note[] = [];
  for (let i = 0; i < days; i++) {
    const day = new Date(Date.UTC(2026, 8, 1 + i)).toISOString().slice(0, 10);
    const team = Array.from({ length: 16 }, (_, j) => NAMES[(i * 7 + j) % 60] as string);
    notes.push(
      note(`${day}T08:00`, [
        hitch(team.slice(0, 2), 'lead'),
        hitch(team.slice(2, 4), 'swing'),
        hitch(team.slice(4, 14), 'team'),
        hitch(team.slice(14), 'wheel'),
        clock('start', '08:00'),
      ]),
    );
    for (let j = 1; j <= each; j++) {
      const time = new Date(Date.UTC(2027, 0, 1, 8, 0, Math.floor((j * 36_000) / (each + 1))))
        .toISOString()
        .slice(11, 19);
      notes.push(
        note(`${day}T${time}-09:00`, [
          mark(j),
          intake(j % 3 === 0 ? team : team.slice(j % 16, (j % 16) + 2)),
          finding([team[j % 16] as string]),
          ...(j % 5 === 0 ? [move([team[j % 14] as string], 'lead'), drop([team[15] as string], 'loaded')] : []),
        ]),
      );
    }
    notes.push(note(`${day}T18:30`, [clock('finish', '18:20'), total(each + 1)]));
  }
  return notes;
}

test.each([
  ['two hundred runs of fifty notes', 200, 48],
  ['ten days of a thousand notes', 10, 998],
])('%s', (_, days, each) => {
  const notes = big(days, each);
  expect(notes).toHaveLength(10_000);
  const one = season(notes);
  // The best of three: the first also compiles the code.
  let took = Number.POSITIVE_INFINITY;
  let { runs } = runsOf(one, ROSTER, SETTINGS);
  for (let i = 0; i < 3; i++) {
    const before = process.cpuUsage();
    runs = runsOf(one, ROSTER, SETTINGS).runs;
    took = Math.min(took, cpuSince(before));
  }
  console.log(`${notes.length} notes, ${runs.length} runs: ${Math.round(took)} ms`);
  expect(runs).toHaveLength(days);
  expect(took).toBeLessThan(1000);
});

test('the line-up is found among ten thousand notes in a few milliseconds', () => {
  const notes = big(200, 48);
  const before = process.cpuUsage();
  const lineup = lineupBefore(notes, notes[5010]?.at as string, ROSTER);
  const took = cpuSince(before);
  console.log(`line-up among ${notes.length} notes: ${took.toFixed(1)} ms`);
  expect(lineup.length).toBeGreaterThan(10);
  expect(took).toBeLessThan(100);
});
