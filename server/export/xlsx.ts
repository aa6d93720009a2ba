/**
 * A season as a spreadsheet file: the tables of the CSV files a sheet each, and a first sheet that says what each column
 * means. Written here, on top of the ZIP writer: of the libraries for Node that write several sheets, those that are
 * kept up hold the whole book in memory, and the one that writes as it goes drops characters that the format can hold.
 * What is written needs six kinds of part (ECMA-376); two readers by others check them.
 */
import type { Readable } from 'node:stream';
import { dayNumber } from '../load/days.ts';
import { ABOUT_ESCAPE } from './cell.ts';
import { cellText } from './csv.ts';
import { type SeasonData, type Source, seasonsOf } from './season-data.ts';
import type { ExportOptions } from './season-zip.ts';
import type { AnyTable, Column, ColumnType, Value } from './table.ts';
import { TABLES } from './tables.ts';
import * as parts from './xlsx-parts.ts';
import { zipOf } from './zip.ts';

/** Spreadsheets take no longer text in a cell ("Excel specifications and limits", Microsoft). */
export const CELL_MAX = 32_767;
const CUT = ' … (cut; the CSV files have the whole of it)';
/** And no more rows in a sheet. */
const ROWS_MAX = 1_048_576;
const ROWS_AT_ONCE = 250;
/** A spreadsheet's day 25,569 is 1 January 1970; its days before 1 March 1900 are one off, and stay text here. */
const DAYS_TO_1970 = 25_569;
const FIRST_DAY = '1900-03-01';

/** The last season asked for as one file; the others before it only count for the load. */
export function seasonXlsx(source: Source, season: string, options: ExportOptions): Readable {
  return zipOf(async (zip) => {
    for await (const data of seasonsOf(source, [season], options.until)) {
      const names = ['about', ...TABLES.map((table) => table.name)];
      await zip.add('[Content_Types].xml', [parts.contentTypes(names.length)]);
      await zip.add('_rels/.rels', [parts.rootRels()]);
      await zip.add('xl/workbook.xml', [parts.workbook(names)]);
      await zip.add('xl/_rels/workbook.xml.rels', [parts.workbookRels(names.length)]);
      await zip.add('xl/styles.xml', [parts.styles()]);
      await zip.add('xl/worksheets/sheet1.xml', sheet(aboutTable(data), data));
      for (const [i, table] of TABLES.entries()) await zip.add(`xl/worksheets/sheet${i + 2}.xml`, sheet(table, data));
    }
  }, options.at);
}

function* sheet(table: AnyTable, season: SeasonData): Generator<string> {
  const columns = table.columns as readonly Column<unknown>[];
  const letters = columns.map((_, i) => parts.columnLetters(i));
  yield parts.sheetStart(columns.map(widthOf));
  const row = (n: number, cells: string[]) => `<row r="${n}">${cells.join('')}</row>`;
  let lines = [
    row(
      1,
      columns.map((column, i) => textCell(`${letters[i]}1`, column.name, parts.STYLE.head)),
    ),
  ];
  let n = 1;
  for (const one of table.rows(season)) {
    n++;
    if (n > ROWS_MAX)
      throw new RangeError(`The table ${table.name} has more rows than a spreadsheet takes; use the CSV files.`);
    lines.push(
      row(
        n,
        columns.map((column, i) => cellOf(`${letters[i]}${n}`, column.type, column.of(one))),
      ),
    );
    if (lines.length < ROWS_AT_ONCE) continue;
    yield lines.join('');
    lines = [];
  }
  yield lines.join('') + parts.sheetEnd(columns.length, n);
}

function cellOf(at: string, type: ColumnType, value: Value): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return `<c r="${at}"><v>${value}</v></c>`;
  if (typeof value === 'boolean') return `<c r="${at}" t="b"><v>${value ? 1 : 0}</v></c>`;
  if (type === 'date' && typeof value === 'string' && value >= FIRST_DAY)
    return `<c r="${at}" s="${parts.STYLE.day}"><v>${dayNumber(value) + DAYS_TO_1970}</v></c>`;
  return textCell(at, cellText(value), parts.STYLE.plain);
}

function textCell(at: string, text: string, style: number): string {
  const fits = text.length <= CELL_MAX ? text : text.slice(0, CELL_MAX - CUT.length) + CUT;
  return `<c r="${at}"${style === 0 ? '' : ` s="${style}"`} t="inlineStr"><is><t xml:space="preserve">${parts.xmlText(fits)}</t></is></c>`;
}

const WIDTHS: Record<ColumnType, number> = {
  string: 14,
  number: 11,
  integer: 8,
  boolean: 8,
  date: 12,
  datetime: 27,
  array: 22,
  object: 22,
};
function widthOf({ name, type }: Column<unknown>): number {
  if (name === 'text' || name === 'words' || name === 'meaning') return 60;
  return Math.max(WIDTHS[type], name.length + 3);
}

interface AboutRow {
  table: string;
  column?: string;
  type?: string;
  unit?: string;
  meaning: string;
}

/** The first sheet: what every table and column holds. */
function aboutTable({ season, kennel }: SeasonData): AnyTable {
  const rows: AboutRow[] = [
    {
      table: '',
      meaning: `${kennel.settings.kennel || 'The kennel'}, season ${season.season}. Records of what was said and seen; no diagnosis.`,
    },
    { table: '', meaning: ABOUT_ESCAPE },
    ...TABLES.flatMap((one) => [
      { table: one.name, meaning: one.says },
      ...(one.columns as readonly Column<unknown>[]).map(({ name, type, unit, says }) => ({
        table: one.name,
        column: name,
        type,
        ...(unit ? { unit } : {}),
        meaning: says,
      })),
    ]),
  ];
  const text = (name: keyof AboutRow): Column<AboutRow> => ({ name, type: 'string', says: '', of: (row) => row[name] });
  return {
    name: 'about',
    title: 'About',
    says: 'What each column means.',
    primaryKey: [],
    foreignKeys: [],
    columns: (['table', 'column', 'type', 'unit', 'meaning'] as const).map(text),
    rows: () => rows,
  } as unknown as AnyTable;
}
