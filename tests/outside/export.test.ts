/**
 * Exports read by others: csv-parse and Papa Parse (RFC 4180), the reference library of the Frictionless Data Package
 * specification, version 1, with its published profiles (`datapackage`), SheetJS and hucre for the spreadsheet, fflate
 * for the ZIP.
 */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { read as readSheetJs, utils } from '@e965/xlsx';
import { parse as csvParse } from 'csv-parse/sync';
import fc from 'fast-check';
import { readXlsx } from 'hucre/xlsx';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { cellText } from '../../server/export/csv.ts';
import { asSaid, seasonXlsx, seasonZip, TABLES } from '../../server/export/index.ts';
import { seasonsOf } from '../../server/export/season-data.ts';
import type { Column } from '../../server/export/table.ts';
import { CELL_MAX } from '../../server/export/xlsx.ts';
import type { Note } from '../../server/model.ts';
import { AWKWARD, awkward, filesIn, kennelOf, OPTIONS, sourceOf } from '../export/kennel.ts';
import { note, season } from '../records/build.ts';

const { kennel, season: sample } = awkward();
const source = sourceOf(kennel, [sample]);
/** Each table's cells as this program means them, straight from the rows. */
let meant: Record<string, string[][]>;
let files: Record<string, Buffer>;
let book: Buffer;

beforeAll(async () => {
  files = await filesIn(seasonZip(source, ['2026-27'], OPTIONS));
  book = await bytesOf(seasonXlsx(source, '2026-27', OPTIONS));
  meant = {};
  for await (const data of seasonsOf(source, ['2026-27'], OPTIONS.until))
    for (const table of TABLES) {
      const columns = table.columns as readonly Column<unknown>[];
      const rows = [...table.rows(data)].map((row) => columns.map((column) => cellText(column.of(row))));
      meant[table.name] = [columns.map((column) => column.name), ...rows];
    }
});

async function bytesOf(stream: AsyncIterable<Buffer>): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk);
  return Buffer.concat(chunks);
}
const at = (column: string, rows: readonly string[][]) => {
  const i = rows[0]?.indexOf(column) ?? -1;
  return rows.slice(1).map((row) => row[i] as string);
};

describe('CSV', () => {
  it('csv-parse and Papa Parse read every table as it was meant', () => {
    for (const { name } of TABLES) {
      const text = (files[`${name}.csv`] as Buffer).toString('utf8');
      expect(csvParse(text), name).toEqual(meant[name]);
      const papa = Papa.parse<string[]>(text, { skipEmptyLines: false, newline: '\r\n' });
      expect(papa.errors, name).toEqual([]);
      // Papa Parse gives one empty row more for the line break at the end, which RFC 4180 leaves open.
      expect(
        papa.data.filter((row) => row.length > 1 || row[0] !== ''),
        name,
      ).toEqual(meant[name]);
      expect(meant[name]?.length, name).toBeGreaterThan(1);
    }
  });

  it('every awkward text comes back as it was said', () => {
    const rows = csvParse(files['notes.csv'] as Buffer) as string[][];
    expect(at('text', rows).map(asSaid).slice(0, AWKWARD.length)).toEqual(AWKWARD);
    const entries = csvParse(files['entries.csv'] as Buffer) as string[][];
    expect(at('text', entries).map(asSaid).filter(Boolean)).toEqual(AWKWARD);
    const dogs = csvParse(files['dogs.csv'] as Buffer) as string[][];
    expect(JSON.parse(at('aliases', dogs)[0] as string)).toEqual(['=June', "O'Juni"]);
  });

  it('lines end in CR LF, and there is no mark in front', () => {
    const text = (files['dogs.csv'] as Buffer).toString('utf8');
    expect(text.startsWith('id,name,sex,')).toBe(true);
    expect(text.split('\r\n')).toHaveLength(kennel.dogs.length + 2);
  });
});

describe('datapackage.json', () => {
  it('is valid for the published profile, and every row has the types, keys and relations it tells of', async () => {
    const { Package } = (await import('datapackage' as string)) as {
      Package: { load(d: string, o: object): Promise<DataPackage> };
    };
    interface DataPackage {
      valid: boolean;
      errors: unknown[];
      resources: { name: string; valid: boolean; errors: unknown[]; read(o: object): Promise<unknown[]> }[];
    }
    const folder = await mkdtemp(join(tmpdir(), 'snackstop-package-'));
    try {
      for (const [name, bytes] of Object.entries(files)) await writeFile(join(folder, name), bytes);
      const found = await Package.load(join(folder, 'datapackage.json'), { strict: true });
      expect(found.errors).toEqual([]);
      expect(found.valid).toBe(true);
      expect(found.resources.map((resource) => resource.name)).toEqual(TABLES.map((table) => table.name));
      for (const resource of found.resources) {
        const rows = await resource.read({ keyed: true, cast: true, relations: true });
        expect(rows.length, resource.name).toBe((meant[resource.name]?.length ?? 0) - 1);
      }
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });

  it('tells of each column what it holds, and of each quantity its unit', () => {
    const { resources } = JSON.parse((files['datapackage.json'] as Buffer).toString()) as {
      resources: {
        name: string;
        schema: { fields: { name: string; type: string; description: string; unit?: string }[] };
      }[];
    };
    for (const { name, schema } of resources) {
      expect(
        schema.fields.map((field) => field.name),
        name,
      ).toEqual(meant[name]?.[0]);
      for (const field of schema.fields) expect(field.description.length, `${name}.${field.name}`).toBeGreaterThan(3);
      for (const field of schema.fields)
        if (/metres|miles|minutes|celsius|ratio/.test(field.name) && field.type === 'number' && name !== 'entries')
          expect(field.unit, `${name}.${field.name}`).toBeTruthy();
    }
  });
});

describe('spreadsheet', () => {
  it('SheetJS and hucre find every table with its cells', async () => {
    const sheets = readSheetJs(book, { cellDates: false });
    expect(sheets.SheetNames).toEqual(['about', ...TABLES.map((table) => table.name)]);
    const other = await readXlsx(book);
    for (const table of TABLES) {
      const want = meant[table.name] as string[][];
      const dates = new Set(table.columns.flatMap((column, i) => (column.type === 'date' ? [i] : [])));
      const plain = (value: unknown, i: number) =>
        dates.has(i) && typeof value === 'number'
          ? new Date((value - 25_569) * 864e5).toISOString().slice(0, 10)
          : value instanceof Date
            ? value.toISOString().slice(0, 10)
            : String(value ?? '');
      const sheet = sheets.Sheets[table.name];
      if (!sheet) throw new Error(`there is no sheet ${table.name}`);
      const first = utils.sheet_to_json<unknown[]>(sheet, { header: 1, raw: true, defval: '', blankrows: true });
      // SheetJS gives every line break as LF; hucre, below, gives them as they are.
      const asLf = (rows: readonly (readonly (string | undefined)[] | undefined)[]) =>
        rows.map((row) => row?.map((cell) => cell?.replaceAll('\r\n', '\n')));
      expect(asLf(first.map((row) => want[0]?.map((_, i) => plain(row[i], i)))), table.name).toEqual(asLf(want));
      const rows = other.sheets.find((one) => one.name === table.name)?.rows ?? [];
      expect(
        rows.map((row) => want[0]?.map((_, i) => plain(row[i], i))),
        `${table.name}, hucre`,
      ).toEqual(want);
    }
  });

  it('no cell is a formula, and numbers are numbers', () => {
    const sheets = readSheetJs(book, { cellFormula: true });
    for (const name of sheets.SheetNames)
      for (const cell of Object.values(sheets.Sheets[name] ?? {}))
        expect((cell as { f?: string }).f, name).toBeUndefined();
    const load = utils.sheet_to_json<{ metres: number }>(sheets.Sheets.load as object);
    expect(Math.max(...load.map((row) => row.metres))).toBeCloseTo(20 * 1609.344);
  });

  it('any text comes back from both files', async () => {
    const texts = fc.sample(
      fc.oneof(fc.string({ unit: 'binary', maxLength: 60 }), fc.string({ unit: 'binary-ascii' })),
      {
        numRuns: 250,
        seed: 7,
      },
    );
    const notes: Note[] = texts.map((text, i) =>
      note(`2026-11-02T${String(Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}`, [], {
        text,
      }),
    );
    const many = sourceOf(kennelOf([]), [season(notes)]);
    const csv = await filesIn(seasonZip(many, ['2026-27'], OPTIONS));
    const rows = csvParse(csv['notes.csv'] as Buffer) as string[][];
    expect(at('text', rows).map(asSaid)).toEqual(texts);
    const { sheets } = await readXlsx(await bytesOf(seasonXlsx(many, '2026-27', OPTIONS)));
    const cells = sheets.find((one) => one.name === 'notes')?.rows.map((row) => row.map((cell) => String(cell ?? '')));
    expect(at('text', cells ?? []).map(asSaid)).toEqual(texts);
  });

  it('a text longer than a cell may hold is cut, and says so; the CSV has all of it', async () => {
    const text = 'Juniper '.repeat(6000);
    const long = sourceOf(kennelOf([]), [season([note('2026-11-02T09:00', [], { text })])]);
    const sheets = readSheetJs(await bytesOf(seasonXlsx(long, '2026-27', OPTIONS)));
    const [row] = utils.sheet_to_json<{ text: string }>(sheets.Sheets.notes as object);
    expect(row?.text).toHaveLength(CELL_MAX);
    expect(row?.text).toMatch(/cut; the CSV files have the whole of it/);
    const csv = await filesIn(seasonZip(long, ['2026-27'], OPTIONS));
    expect(at('text', csvParse(csv['notes.csv'] as Buffer) as string[][])).toEqual([text]);
  });
});
