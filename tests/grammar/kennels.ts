/** Rosters drawn from names that nobody here chose, by a seeded shuffle, for the tests of hearing. */
import { existsSync, readFileSync } from 'node:fs';

/** A city dog-licence name, how it sounds (CMUdict), and other words that sound the same. */
export interface NameRow {
  name: string;
  phones: string;
  homophones: string[];
}

const FILE = new URL('../../../shared/external/name-homophones.jsonl', import.meta.url);
export const nameRowsHere = existsSync(FILE);
if (!nameRowsHere)
  console.log(
    'Skipped: ../shared/external/name-homophones.jsonl is not here, so names heard wrong are not checked against it.',
  );
export const nameRows: NameRow[] = nameRowsHere
  ? readFileSync(FILE, 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as NameRow)
  : [];

/** Sounds without the stress marks. */
export const soundOf = (row: NameRow) => row.phones.replace(/\d/g, '');

/** Names of `n` rows that do not sound like `row`, the same for the same seed. */
export function others(row: NameRow, n: number, seed: number): string[] {
  let state = seed + 1;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const pool = nameRows.filter((r) => soundOf(r) !== soundOf(row) && r.name !== row.name).map((r) => r.name);
  for (let i = pool.length - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    [pool[i], pool[j]] = [pool[j] as string, pool[i] as string];
  }
  return pool.slice(0, n);
}
