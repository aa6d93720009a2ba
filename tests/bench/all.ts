/** `npm run bench`: every benchmark of this folder, each a ratio against a baseline timed in the same run. */
import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import type { Bench } from './row.ts';

console.log(`node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}`);
const only = process.argv[2];
for (const file of readdirSync(new URL('.', import.meta.url))
  .filter((f) => f.endsWith('.bench.ts'))
  .sort()) {
  if (only && !file.startsWith(only)) continue;
  const { bench } = (await import(`./${file}`)) as { bench: () => Bench[] | Promise<Bench[]> };
  for (const row of await bench()) console.log(`${row.ratio.toFixed(2).padStart(9)} ×  ${row.name}   (${row.detail})`);
}
