/**
 * The description that lies beside the CSV files: a Frictionless Tabular Data Package, version 1
 * (specs.frictionlessdata.io), with type, unit and meaning of each column. `unit` is a property of our own, written as
 * the Unified Code for Units of Measure has it (ucum.org); the specification lets a field have others.
 */
import { ABOUT_ESCAPE } from './cell.ts';
import type { SeasonData } from './season-data.ts';
import type { AnyTable, Column } from './table.ts';
import type { Added } from './zip.ts';

/** A file as it was written. */
export interface WrittenTable extends Added {
  table: AnyTable;
  rows: number;
}

/** The descriptor for one season's files. */
export function packageOf(
  { season, kennel, until }: Pick<SeasonData, 'season' | 'kennel' | 'until'>,
  files: readonly WrittenTable[],
  { at, version }: { at: Date; version: string },
): object {
  const { kennel: name, units } = kennel.settings;
  return {
    profile: 'tabular-data-package',
    name: `snackstop-${season.season}`,
    title: `${name ? `${name}, ` : ''}season ${season.season}`,
    description:
      `Notes, runs, findings, food and load of a sled-dog kennel from 1 July ${season.season.slice(0, 4)} up to ${until}. ` +
      'Distances in metres (and miles beside them), to the millimetre; what was said keeps the unit it was said in. ' +
      'Times carry the offset of the place. Records of what was said and seen; no diagnosis. ' +
      ABOUT_ESCAPE,
    created: at.toISOString(),
    version,
    kennel_units: units,
    resources: files.map(({ table, name: path, bytes, sha256, rows }) => ({
      profile: 'tabular-data-resource',
      name: table.name,
      path: path.slice(path.lastIndexOf('/') + 1),
      title: table.title,
      description: table.says,
      format: 'csv',
      mediatype: 'text/csv',
      encoding: 'utf-8',
      bytes,
      hash: `sha256:${sha256}`,
      rows,
      dialect: {
        csvddfVersion: 1.2,
        delimiter: ',',
        lineTerminator: '\r\n',
        quoteChar: '"',
        doubleQuote: true,
        header: true,
      },
      schema: schemaOf(table),
    })),
  };
}

/** A table's schema. */
export function schemaOf(table: AnyTable): object {
  return {
    fields: (table.columns as readonly Column<unknown>[]).map((column) => {
      const constraints = {
        ...(column.required ? { required: true } : {}),
        ...(column.unique ? { unique: true } : {}),
        ...(column.oneOf ? { enum: column.oneOf } : {}),
      };
      return {
        name: column.name,
        type: column.type,
        // The default of a datetime is UTC alone; ours carry the offset of the place.
        ...(column.type === 'datetime' ? { format: 'any' } : {}),
        description: column.says,
        ...(column.unit ? { unit: column.unit } : {}),
        ...(Object.keys(constraints).length > 0 ? { constraints } : {}),
      };
    }),
    missingValues: [''],
    primaryKey: table.primaryKey,
    ...(table.foreignKeys.length > 0
      ? {
          foreignKeys: table.foreignKeys.map(({ fields, table: resource, key }) => ({
            fields,
            reference: { resource, fields: key },
          })),
        }
      : {}),
  };
}
