/** Parts of the pages that are made to be printed. */
import type { ComponentChildren } from 'preact';
import { dayWords } from '../times.ts';

/** A local day without its weekday, which keeps a printed column narrow: "14 Jan 2027". */
export const dayShort = (day: string): string => dayWords(day, true).replace(/^\p{L}+ (?=\d)/u, '');

/** A button that prints; not on the paper itself. */
export function PrintButton() {
  return (
    <p class="no-print row">
      <button type="button" class="button first" onClick={() => window.print()}>
        Print
      </button>
      <a class="button" href="/export">
        Export
      </a>
    </p>
  );
}

/** Name and value pairs; those without a value are left out. */
export function Facts({ of }: { of: readonly (readonly [string, ComponentChildren])[] }) {
  return (
    <dl class="facts">
      {of
        .filter(([, value]) => value !== undefined && value !== '')
        .map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
    </dl>
  );
}

interface RowsProps<T> {
  title: string;
  rows: readonly T[];
  keyOf: (row: T, index: number) => string;
  /** Head of each column and what stands in it; the first is the row's head. A number is set to the right. */
  columns: readonly (readonly [head: string, cell: (row: T) => ComponentChildren, right?: 'right'])[];
  /** Said in place of a table without rows. */
  none: string;
  children?: ComponentChildren;
}

/** A section with its table. */
export function Rows<T>({ title, rows, keyOf, columns, none, children }: RowsProps<T>) {
  return (
    <section>
      <h2>{title}</h2>
      {rows.length === 0 ? (
        <p class="hush">{none}</p>
      ) : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways on a phone has to be reached by the keyboard.
        <section class="wide" tabIndex={0} aria-label={`${title}, as a table`}>
          <table class="table">
            <thead>
              <tr>
                {columns.map(([head, , right]) => (
                  <th key={head} scope="col" class={right}>
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row, n) => (
                <tr key={keyOf(row, n)}>
                  {columns.map(([head, cell, right], i) =>
                    i === 0 ? (
                      <th key={head} scope="row">
                        {cell(row)}
                      </th>
                    ) : (
                      <td key={head} class={right}>
                        {cell(row)}
                      </td>
                    ),
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {children}
    </section>
  );
}

/** What stands under a sheet: how far its figures go. */
export function FinePrint({ about }: { about: readonly string[] }) {
  return (
    <section class="fineprint">
      {about.map((says) => (
        <p key={says} class="small hush">
          {says}
        </p>
      ))}
    </section>
  );
}
