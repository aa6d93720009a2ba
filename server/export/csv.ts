/** A table as CSV: RFC 4180, UTF-8 without a mark, lines that end in CR LF, the columns' names in the first one. */
import { stringify } from 'csv-stringify/sync';
import { harmless } from './cell.ts';
import type { SeasonData } from './season-data.ts';
import type { AnyTable, Column, Value } from './table.ts';

/** Rows made into text at a time: enough that it costs little, little enough that it takes no memory. */
const ROWS = 250;

/** A value as it stands in a cell; '' where there is none. Lists and objects are JSON. */
export function cellText(value: Value): string {
  if (value === undefined) return '';
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  return harmless(typeof value === 'string' ? value : JSON.stringify(value));
}

/** @param counted gets the number of rows at the end */
export function* csvOf(table: AnyTable, season: SeasonData, counted?: (rows: number) => void): Generator<string> {
  const columns = table.columns as readonly Column<unknown>[];
  let batch: string[][] = [columns.map((column) => column.name)];
  let rows = -1;
  const text = () => {
    rows += batch.length;
    const lines = stringify(batch, { record_delimiter: '\r\n' });
    batch = [];
    return lines;
  };
  for (const row of table.rows(season)) {
    batch.push(columns.map((column) => cellText(column.of(row))));
    if (batch.length === ROWS) yield text();
  }
  if (batch.length > 0) yield text();
  counted?.(rows);
}
