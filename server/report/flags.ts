/** What the command line asks for: read, checked, or told what is wrong with it. */
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { dataFolder } from '../main.ts';

export const COMMANDS = ['load', 'watch', 'search', 'sheet', 'summary', 'export', 'restore', 'help'] as const;
export type Command = (typeof COMMANDS)[number];

export interface Flags {
  command: Command;
  /** What stands behind the command: the words of a search, the file to restore, the command to explain. */
  rest: string[];
  folder: string;
  /** `--data` was given. */
  folderGiven: boolean;
  season?: string;
  dog?: string;
  on?: string;
  format?: string;
  to?: string;
  store: boolean;
  replace: boolean;
  limit: number;
}

/** A flag or word that is not right. The message is a sentence. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

const FORMATS: Partial<Record<Command, readonly string[]>> = {
  load: ['json', 'csv'],
  watch: ['json', 'csv'],
  search: ['json', 'csv'],
  sheet: ['json'],
  summary: ['json'],
  export: ['csv', 'xlsx'],
};

/** @throws UsageError */
export function readReportFlags(args: string[], env: Record<string, string | undefined>): Flags {
  const { values, positionals } = parse(args);
  const [first = 'help', ...rest] = positionals;
  const command = values.help ? 'help' : (first as Command);
  if (!COMMANDS.includes(command))
    throw new UsageError(`“${first}” is no report; there are ${COMMANDS.slice(0, -1).join(', ')} and help.`);
  const { season, on, format, limit = '100' } = values;
  if (season !== undefined && !isSeason(season) && !(season === 'all' && command === 'export'))
    throw new UsageError(
      `“${season}” is no season: one is named like 2026-27${command === 'export' ? ', or all' : ''}.`,
    );
  if (on !== undefined && !isDay(on))
    throw new UsageError(`“${on}” is no day: a day is written YYYY-MM-DD, like 2027-01-14.`);
  const formats = FORMATS[command];
  if (format !== undefined && !formats?.includes(format))
    throw new UsageError(
      formats
        ? `${command} can be had as ${formats.join(' or ')}, not as “${format}”.`
        : `${command} knows no --format.`,
    );
  if (!/^[1-9]\d{0,5}$/.test(limit))
    throw new UsageError(`“${limit}” is no limit: give a whole number from 1 to 999999.`);
  if (values.data !== undefined && values.data.trim() === '')
    throw new UsageError('--data needs the name of a folder.');
  return {
    command,
    rest: values.help && first !== 'help' ? [first, ...rest] : rest,
    folder: resolve(values.data ?? dataFolder(env)),
    folderGiven: values.data !== undefined,
    store: values.store ?? false,
    replace: values.replace ?? false,
    limit: Number(limit),
    ...(season === undefined ? {} : { season }),
    ...(values.dog === undefined ? {} : { dog: values.dog }),
    ...(on === undefined ? {} : { on }),
    ...(format === undefined ? {} : { format }),
    ...(values.to === undefined ? {} : { to: values.to }),
  };
}

function parse(args: string[]) {
  try {
    return parseArgs({
      args,
      options: {
        data: { type: 'string' },
        season: { type: 'string' },
        dog: { type: 'string' },
        on: { type: 'string' },
        format: { type: 'string' },
        to: { type: 'string' },
        limit: { type: 'string' },
        store: { type: 'boolean' },
        replace: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
      strict: true,
      allowPositionals: true,
    });
  } catch (error) {
    throw new UsageError((error as Error).message);
  }
}

function isSeason(name: string): boolean {
  const [, first, second] = /^(\d{4})-(\d{2})$/.exec(name) ?? [];
  return first !== undefined && (Number(first) + 1) % 100 === Number(second);
}

function isDay(day: string): boolean {
  const ms = Date.parse(`${day}T00:00:00Z`);
  return /^\d{4}-\d{2}-\d{2}$/.test(day) && !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(day);
}
