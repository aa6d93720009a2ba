/** The tables of a season's export, each after those it points to. */
import type { AnyTable } from './table.ts';
import { dogs, entries, notes } from './table-kept.ts';
import { load } from './table-load.ts';
import { findings, intake, runDogs, runs } from './table-runs.ts';

export const TABLES: readonly AnyTable[] = [dogs, runs, notes, entries, runDogs, findings, intake, load];
