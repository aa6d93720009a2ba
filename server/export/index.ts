/**
 * Taking it along: a season as CSV files with their description or as a spreadsheet, the whole store as one ZIP, and that
 * ZIP back into an empty folder.
 *
 * tables.ts (table-kept, table-runs, table-load) → csv.ts + package.ts → season-zip.ts; the same tables → xlsx.ts
 * the folder's files → backup.ts → a ZIP → unzip.ts → restore.ts → an empty folder
 */
export { manifestSchema, storeZip } from './backup.ts';
export { ABOUT_ESCAPE, asSaid, harmless } from './cell.ts';
export { readFolder } from './kept-files.ts';
export { checkArchive, checkEmpty, NotEmptyError, putFiles, restore } from './restore.ts';
export type { Source } from './season-data.ts';
export { type ExportOptions, seasonZip } from './season-zip.ts';
export { TABLES } from './tables.ts';
export { BadArchiveError } from './unzip.ts';
export { seasonXlsx } from './xlsx.ts';
