/** What a table of the export is: its columns with type, unit and meaning, its keys, and its rows. */
import type { SeasonData } from './season-data.ts';

/** Types of the Table Schema (Frictionless Data, version 1). An array or object stands in its cell as JSON. */
export type ColumnType = 'string' | 'number' | 'integer' | 'boolean' | 'date' | 'datetime' | 'array' | 'object';
/** What a cell may hold before it is written; undefined is an empty cell. */
export type Value = string | number | boolean | readonly unknown[] | object | undefined;

export interface Column<R> {
  name: string;
  type: ColumnType;
  /** What it holds, one sentence. */
  says: string;
  /** As the Unified Code for Units of Measure writes it: m, min, Cel, kg; 1 for a pure number. */
  unit?: string;
  /** The words it may hold. */
  oneOf?: readonly string[];
  /** Never empty. */
  required?: true;
  unique?: true;
  of: (row: R) => Value;
}

/** A key into another table. */
export interface ForeignKey {
  fields: string;
  table: string;
  key: string;
}

export interface Table<R = unknown> {
  /** Name of the file without its ending, and of the sheet. */
  name: string;
  title: string;
  says: string;
  columns: readonly Column<R>[];
  primaryKey: readonly string[];
  foreignKeys: readonly ForeignKey[];
  rows: (season: SeasonData) => Iterable<R>;
}

/** A table whose rows only it knows the shape of. */
export type AnyTable = Table<never>;

/** Keeps the row's type inside while columns and rows are checked against each other. */
export function table<R>(one: Table<R>): AnyTable {
  return one as unknown as AnyTable;
}

const MILE = 1609.344;

/** To the millimetre: what is left behind it is only the arithmetic of floating point. */
export function metresCell(metres: number | undefined): number | undefined {
  return metres === undefined ? undefined : Math.round(metres * 1000) / 1000;
}

/** Metres in miles (NIST SP 811, appendix B.8), to a ten-thousandth. */
export function milesCell(metres: number | undefined): number | undefined {
  return metres === undefined ? undefined : Math.round((metres / MILE) * 10_000) / 10_000;
}

/** A figure to four decimals. */
export function figureCell(value: number | undefined): number | undefined {
  return value === undefined ? undefined : Math.round(value * 10_000) / 10_000;
}

/** An id as text that may be missing, with the table it points into told in the foreign keys. */
export function idColumn<R>(name: string, says: string, of: (row: R) => string | undefined): Column<R> {
  return { name, type: 'string', says, of };
}
