/** The load table holds the figures that `loadOf` gives, on every day and for every dog. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seasonsOf } from '../../server/export/season-data.ts';
import type { Column } from '../../server/export/table.ts';
import { load } from '../../server/export/table-load.ts';
import { dayNumber, dayOf, loadOf } from '../../server/load/index.ts';
import { type Season, seasonOf } from '../../server/model.ts';
import { runsOf } from '../../server/records/index.ts';
import { dog, hitch, id, note, SETTINGS, season, total } from '../records/build.ts';
import { kennelOf, OPTIONS, sourceOf } from './kennel.ts';

const dogs = [dog('Juniper', { id: id(201) }), dog('Moss', { id: id(202) })];
const FIRST = dayNumber('2026-05-20');

describe('the load table', () => {
  it('is what loadOf gives', async () => {
    const days = fc.uniqueArray(fc.record({ day: fc.nat(110), km: fc.nat(40), team: fc.integer({ min: 1, max: 3 }) }), {
      selector: (one) => one.day,
      minLength: 1,
      maxLength: 40,
    });
    await fc.assert(
      fc.asyncProperty(days, async (ran) => {
        const notes = ran.map(({ day, km, team }) =>
          note(`${dayOf(FIRST + day)}T10:00`, [
            hitch(dogs.filter((_, i) => team & (i + 1)).map((one) => one.name)),
            total(km, 'km'),
          ]),
        );
        const names = [...new Set(notes.map((one) => seasonOf(one.at.slice(0, 10))))].sort();
        const seasons: Season[] = names.map((name) => ({
          ...season(notes.filter((one) => seasonOf(one.at.slice(0, 10)) === name)),
          season: name,
        }));
        const runs = seasons.flatMap((one) => runsOf(one, dogs, SETTINGS).runs);
        const until = dayOf(FIRST + 130);
        let rows = 0;
        for await (const data of seasonsOf(sourceOf(kennelOf(dogs), seasons), names, until)) {
          for (const row of load.rows(data)) {
            const cell = Object.fromEntries(
              (load.columns as readonly Column<unknown>[]).map((column) => [column.name, column.of(row)]),
            );
            const [want] = loadOf(runs, [String(cell.dog)], String(cell.day));
            const near = (value: number | undefined, to: number) =>
              value === undefined ? undefined : Math.round(value * to) / to;
            expect(cell).toMatchObject({
              metres: near(want?.today, 1000),
              metres_7_days: near(want?.metres7, 1000),
              mean_week_28_days: near(want?.meanWeek28, 1000),
              ratio: near(want?.coupled, 10_000),
              ratio_weighted: near(want?.ewma, 10_000),
              monotony: near(want?.monotony, 10_000),
              strain: near(want?.strain, 1000),
            });
            rows++;
          }
        }
        const firsts = dogs.map(({ name }) => runs.find((run) => run.dogs.some((one) => one.dog === name))?.day);
        const expected = firsts.reduce((sum, day) => sum + (day ? dayNumber(until) - dayNumber(day) + 1 : 0), 0);
        // Seasons without a note have no file, and so no rows.
        const gaps = ['2025-26', '2026-27'].filter((name) => !names.includes(name)).length;
        if (gaps === 0) expect(rows).toBe(expected);
        expect(rows).toBeGreaterThan(0);
      }),
      { numRuns: 15 },
    );
    expect(OPTIONS.until > dayOf(FIRST)).toBe(true);
  });
});
