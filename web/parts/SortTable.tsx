/** A table that sorts by a press on a column's head. */
import { type ComponentChildren, Fragment } from 'preact';
import { useState } from 'preact/hooks';

export interface Column<T> {
  key: string;
  name: string;
  /** What stands in the cell. */
  cell: (row: T) => ComponentChildren;
  /** What it is sorted by; undefined goes last both ways. */
  by: (row: T) => number | string | undefined;
  /** The first press sorts from the largest down. */
  largestFirst?: boolean;
  numeric?: boolean;
  /** Left out on a narrow screen, where it stands under the row's head instead. */
  wideOnly?: boolean;
}
interface Props<T> {
  caption: string;
  columns: readonly Column<T>[];
  rows: readonly T[];
  keyOf: (row: T) => string;
  /** A line under the row's head. */
  under?: (row: T) => ComponentChildren;
  /** What stands across the whole width under a row; it stays with its row in every order. */
  below?: (row: T) => ComponentChildren;
  start: string;
}

/** Rows in the order of a column; equal ones keep theirs. */
export function sorted<T>(rows: readonly T[], by: Column<T>['by'], down: boolean): T[] {
  return [...rows].sort((a, b) => {
    const x = by(a);
    const y = by(b);
    if (x === undefined || y === undefined) return (x === undefined ? 1 : 0) - (y === undefined ? 1 : 0);
    const order = typeof x === 'string' ? x.localeCompare(String(y)) : x - (y as number);
    return down ? -order : order;
  });
}

export function SortTable<T>({ caption, columns, rows, keyOf, under, below, start }: Props<T>) {
  const [by, setBy] = useState({ key: start, down: columns.find((c) => c.key === start)?.largestFirst ?? false });
  const column = columns.find((c) => c.key === by.key) ?? columns[0];
  const press = (c: Column<T>) =>
    setBy((was) =>
      was.key === c.key ? { key: c.key, down: !was.down } : { key: c.key, down: c.largestFirst ?? false },
    );
  const classOf = (c: Column<T>) => [c.numeric && 'right', c.wideOnly && 'wide-only'].filter(Boolean).join(' ');
  return (
    <table class="table sortable">
      <caption class="unseen">{caption}; sorted by the column whose head says so</caption>
      <thead>
        <tr>
          {columns.map((c) => (
            <th
              key={c.key}
              scope="col"
              class={classOf(c)}
              aria-sort={c.key === by.key ? (by.down ? 'descending' : 'ascending') : undefined}
            >
              <button type="button" onClick={() => press(c)}>
                {c.name}
                <span class="way" aria-hidden="true">
                  {c.key === by.key ? (by.down ? '↓' : '↑') : '↕'}
                </span>
              </button>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {(column ? sorted(rows, column.by, by.down) : rows).map((row) => (
          <Fragment key={keyOf(row)}>
            <tr>
              {columns.map((c, i) =>
                i === 0 ? (
                  <th key={c.key} scope="row">
                    {c.cell(row)}
                    {under && <span class="under hush">{under(row)}</span>}
                  </th>
                ) : (
                  <td key={c.key} class={classOf(c)}>
                    {c.cell(row)}
                  </td>
                ),
              )}
            </tr>
            <Below columns={columns.length}>{below?.(row)}</Below>
          </Fragment>
        ))}
      </tbody>
    </table>
  );
}

function Below({ columns, children }: { columns: number; children: ComponentChildren }) {
  if (!children || (Array.isArray(children) && children.length === 0)) return null;
  return (
    <tr class="below">
      <td colSpan={columns}>{children}</td>
    </tr>
  );
}
