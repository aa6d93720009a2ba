/**
 * The store beside the plain thing, in one run on one disk:
 * - a note written into a season of 10,000 notes, beside writing that same file plainly (its bytes made already, one
 *   write, one fsync, nothing kept, nothing acknowledged safely);
 * - start-up with ten seasons of 10,000 notes, beside reading those files and JSON.parse.
 */
import { randomUUID } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Note, Season } from '../../server/model.ts';
import { openStore } from '../../server/store/index.ts';
import { chances } from '../store/chances.ts';

export interface BenchResult {
  name: string;
  /** Ours divided by the plain thing: below 1 is faster. */
  ratio: number;
  detail: string;
}

const NOTES = 10_000;
const SEASONS = 10;
const WRITES = 25;
const STARTS = 3;

/** The shortest of some rounds: the one least disturbed by what else the machine does. */
const least = (values: number[]): number => Math.min(...values);
const median = (values: number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
const ms = (value: number) => `${value < 100 ? value.toFixed(1) : Math.round(value)} ms`;

async function timed(work: () => unknown): Promise<number> {
  const begun = performance.now();
  await work();
  return performance.now() - begun;
}

/** An invented note as it is after its review, of the usual length. */
function note(n: number, year: number, chance: () => number): Note {
  const at = `${year}-12-${String(1 + (n % 28)).padStart(2, '0')}T${String(8 + (n % 12)).padStart(2, '0')}:40:00-09:00`;
  const dogs = ['Juniper', 'Moss', 'Otter', 'Bramble', 'Tansy', 'Kodiak'].filter(() => chance() < 0.5);
  const finding = (sign: 'sore' | 'swollen') => ({
    id: randomUUID(),
    entry: {
      kind: 'finding' as const,
      dogs,
      part: 'wrist' as const,
      side: 'left' as const,
      sign,
      span: [40, 58] as [number, number],
      rule: 'finding',
    },
    from: 'read' as const,
    state: 'accepted' as const,
  });
  return {
    id: randomUUID(),
    text: `Snack stop at mile ${n % 40}. ${dogs.join(', ')} with a sore left wrist, a little swollen; everyone else ate well, trail hard and fast.`,
    at,
    by: 'Wren',
    source: 'dictated',
    received: at,
    aside: false,
    entries: [
      finding('sore'),
      finding('swollen'),
      {
        id: randomUUID(),
        entry: { kind: 'trail', dogs: [], surface: 'hard', span: [90, 94] },
        from: 'read',
        state: 'accepted',
      },
      {
        id: randomUUID(),
        entry: { kind: 'distance', dogs: [], measure: 'mark', value: n % 40, unit: 'mi', span: [14, 21] },
        from: 'read',
        state: 'accepted',
      },
    ],
    unknownNames: [],
    history: [{ act: 'accept-all', at, before: { aside: false, entries: [] } }],
  };
}

function plainly(path: string, bytes: Uint8Array | string): void {
  const file = openSync(path, 'w');
  if (typeof bytes === 'string') writeFileSync(file, bytes);
  else for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
  fsyncSync(file);
  closeSync(file);
}

async function writing(folder: string, name: string, chance: () => number): Promise<BenchResult[]> {
  const store = await openStore(folder);
  const year = Number(name.slice(0, 4));
  const add = (n: number) =>
    store.changeSeason(name, (s): [Season, null] => [{ ...s, notes: [...s.notes, note(n, year, chance)] }, null]);
  const review = (n: number) =>
    store.changeSeason(name, (s): [Season, null] => [
      { ...s, notes: s.notes.map((kept, i) => (i === n ? { ...kept, aside: !kept.aside } : kept)) },
      null,
    ]);
  const path = join(folder, `season-${name}.json`);
  const beside = join(folder, 'plain');
  const first = await timed(() => add(0));
  const ours: number[] = [];
  const reviews: number[] = [];
  const plain: number[] = [];
  const text: number[] = [];
  // By turns, so that whatever else the machine does falls on all alike.
  for (let n = 1; n <= WRITES; n++) {
    const bytes = readFileSync(path);
    const string = bytes.toString();
    ours.push(await timed(() => add(n)));
    plain.push(await timed(() => plainly(beside, bytes)));
    text.push(await timed(() => plainly(beside, string)));
    reviews.push(await timed(() => review(Math.floor(chance() * NOTES))));
  }
  const many = await timed(() => Promise.all(Array.from({ length: 100 }, (_, n) => add(n))));
  await store.close();
  const size = `${(statSync(path).size / 1e6).toFixed(1)} MB`;
  rmSync(beside);
  const [one, other, bare, made] = [least(ours), least(reviews), least(plain), least(text)];
  return [
    {
      name: 'one note into a season of 10,000, beside writing the file plainly',
      ratio: one / bare,
      detail: `${ms(one)} beside ${ms(bare)} for one write of its ${size} and one fsync, the bytes made already (${ms(made)} from a string); medians ${ms(median(ours))} and ${ms(median(plain))}`,
    },
    {
      name: 'one review in a season of 10,000, beside writing the file plainly',
      ratio: other / bare,
      detail: `${ms(other)} beside ${ms(bare)}`,
    },
    {
      name: 'a hundred notes at once into that season, beside writing the file plainly once',
      ratio: many / bare,
      detail: `${ms(many)} beside ${ms(bare)}; the first write after a start: ${ms(first)}`,
    },
  ];
}

async function starting(folder: string, names: string[]): Promise<BenchResult[]> {
  const files = readdirSync(folder).filter((file) => /^season-\d{4}-\d{2}\.json$/.test(file));
  const size = `${Math.round(files.reduce((sum, file) => sum + statSync(join(folder, file)).size, 0) / 1e6)} MB`;
  const ours: number[] = [];
  const all: number[] = [];
  const plain: number[] = [];
  for (let n = 0; n < STARTS; n++) {
    plain.push(await timed(() => files.map((file) => JSON.parse(readFileSync(join(folder, file), 'utf8')))));
    const begun = performance.now();
    const store = await openStore(folder);
    ours.push(performance.now() - begun);
    for (const name of names) store.season(name);
    all.push(performance.now() - begun);
    await store.close();
  }
  // As after an update that changed the shapes, or after edits by hand: each note is checked, each file written anew.
  for (const file of files) {
    const text = readFileSync(join(folder, file), 'utf8');
    writeFileSync(join(folder, file), text.replace(/"shape":"[0-9a-f]+"/, '"shape":"00000000"'));
  }
  const checked = await timed(async () => (await openStore(folder)).close());
  const bare = least(plain);
  const beside = `beside ${ms(bare)} for reading the ${size} and JSON.parse`;
  return [
    {
      name: 'start-up with ten seasons, beside JSON.parse of the files',
      ratio: least(ours) / bare,
      detail: `${ms(least(ours))} ${beside}`,
    },
    {
      name: 'start-up with ten seasons and a look into each, beside JSON.parse of the files',
      ratio: least(all) / bare,
      detail: `${ms(least(all))} ${beside}`,
    },
    {
      name: 'the first start-up after the shapes have changed, every note checked and every file written anew',
      ratio: checked / bare,
      detail: `${ms(checked)} ${beside}`,
    },
  ];
}

export async function bench(): Promise<BenchResult[]> {
  const folder = mkdtempSync(join(tmpdir(), 'snackstop-bench-'));
  const chance = chances(1);
  try {
    const names = Array.from({ length: SEASONS }, (_, i) => `${2017 + i}-${String(18 + i)}`);
    const store = await openStore(folder);
    for (const name of names) {
      const notes = Array.from({ length: NOTES }, (_, n) => note(n, Number(name.slice(0, 4)), chance));
      await store.changeSeason(name, (s) => [{ ...s, notes }, null]);
    }
    await store.close();
    const starts = await starting(folder, names);
    return [...(await writing(folder, names.at(-1) as string, chance)), ...starts];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
