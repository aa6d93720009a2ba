/** What is expected of the sample season, worked out by hand from its notes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { POSITIONS } from '../../grammar/entry.ts';
import { SAMPLE_FOLDER } from '../../server/import/sample.ts';

const day = z.iso.date();
const miles = z.number().positive();
const position = z.enum(POSITIONS);
const expectedSchema = z.strictObject({
  about: z.string(),
  totals: z.record(day, z.record(z.string(), miles)),
  /** Dogs in each team at its start. */
  sizes: z.record(day, z.record(z.string(), z.number().int().positive())),
  runs: z.array(
    z.strictObject({
      day,
      team: z.string(),
      miles,
      why: z.string(),
      dogs: z.record(z.string(), miles),
      positions: z.partialRecord(position, z.array(z.string())).optional(),
      byPosition: z.record(z.string(), z.partialRecord(position, miles)).optional(),
    }),
  ),
  wrist: z.strictObject({
    dog: z.string(),
    part: z.literal('wrist'),
    side: z.literal('left'),
    episodes: z.array(z.strictObject({ from: day, resolved: day })),
  }),
  weights: z.record(z.string(), z.record(day, miles)),
  firstIn: z.record(z.string(), z.partialRecord(position, day)),
  home: z.record(z.string(), z.strictObject({ from: day, to: day })),
});
export const expected = expectedSchema.parse(JSON.parse(readFileSync(join(SAMPLE_FOLDER, 'expected.json'), 'utf8')));
