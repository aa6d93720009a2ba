/**
 * Load figures against published ones.
 * - Three athletes' 28 days: worked example of Williams and others 2017, Br J Sports Med 51:209.
 * - Monotony and strain: the formulas of Foster 1998, Med Sci Sports Exerc 30:1164, on weeks worked by hand.
 */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { lambda, loadOf, monotonyOf } from '../../server/load/index.ts';
import { daily } from '../load/build.ts';

const FILE = '../shared/external/load-three-athletes.json';
const fileSchema = z.object({
  athletes: z.array(
    z.object({
      athlete: z.number(),
      dailyLoad: z.array(z.number()).length(28),
      published: z.object({ day28RollingCoupled7_28: z.number(), day28Ewma7_28: z.number() }),
    }),
  ),
});

if (!existsSync(FILE)) console.info(`Skipped: the published 28-day loads are not at ${FILE}.`);
describe.skipIf(!existsSync(FILE))('three athletes of 28 days (Williams 2017)', () => {
  const { athletes } = existsSync(FILE) ? fileSchema.parse(JSON.parse(readFileSync(FILE, 'utf8'))) : { athletes: [] };

  it('are three', () => expect(athletes).toHaveLength(3));
  it.each(athletes)('athlete $athlete has the published ratios on day 28', ({ dailyLoad, published }) => {
    const [load] = loadOf(daily('Juniper', '2027-01-01', dailyLoad), ['Juniper'], '2027-01-28');
    expect(load?.tooShort).toBe(false);
    // Published to two places.
    expect(load?.coupled?.toFixed(2)).toBe(published.day28RollingCoupled7_28.toFixed(2));
    expect(load?.ewma?.toFixed(2)).toBe(published.day28Ewma7_28.toFixed(2));
  });
});

it('λ = 2/(N + 1): 0.25 for 7 days, 2/29 for 28 (Williams 2017)', () => {
  expect(lambda(7)).toBe(0.25);
  expect(lambda(28)).toBeCloseTo(0.0689655, 7);
});

describe('monotony and strain of hand-worked weeks (Foster 1998, sample SD)', () => {
  it.each([
    {
      // Mean 4; deviations −3 −2 −1 0 1 2 3, squares 28, 28/6, SD √4.6667 = 2.160247; 4/SD = 1.851640; × 28.
      week: [1, 2, 3, 4, 5, 6, 7],
      monotony: 1.85164,
      strain: 51.845926,
    },
    {
      // One hard day: mean 2; squares 144 + 6 × 4 = 168, 168/6 = 28, SD 5.291503; 2/SD = 0.377964; × 14.
      week: [0, 0, 0, 14, 0, 0, 0],
      monotony: 0.377964,
      strain: 5.291503,
    },
    {
      // Every other day: mean 12/7; squares 4 × (9/7)² + 3 × (12/7)² = 756/49, /6 = 2.571429, SD 1.603567; × 12.
      week: [3, 0, 3, 0, 3, 0, 3],
      monotony: 1.069045,
      strain: 12.828538,
    },
    {
      // Miles: mean 110/7 = 15.714286; squares 2450 − 110²/7 = 721.428571, /6 = 120.238095, SD 10.965313; × 110.
      week: [20, 25, 20, 0, 20, 25, 0],
      monotony: 1.43309,
      strain: 157.639949,
    },
  ])('$week', ({ week, monotony, strain }) => {
    const got = monotonyOf(week);
    expect(got?.monotony).toBeCloseTo(monotony, 5);
    expect(got?.strain).toBeCloseTo(strain, 4);
  });

  it('seven equal days, or seven days of rest, give no number', () => {
    expect(monotonyOf([5, 5, 5, 5, 5, 5, 5])).toBeUndefined();
    expect(monotonyOf([0, 0, 0, 0, 0, 0, 0])).toBeUndefined();
    // 0.1 + 0.2 is not 0.3 in binary; the days are equal all the same.
    expect(monotonyOf([0.3, 0.1 + 0.2, 0.3, 0.3, 0.1 + 0.2, 0.3, 0.3])).toBeUndefined();
  });
});
