/**
 * The batch command: one `{"id", "text", "context"}` a line on standard input, one `{"id", "entries"}` a line on standard
 * output, in order. A line that is no such object gives an error in its place, and the exit status is 1.
 * `--text` reads plain notes, one a line, against the kennel in the data folder (`--data FOLDER`, `SNACKSTOP_DATA`, `~/.snackstop`).
 */
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { type Context, contextSchema, parse } from '../index.ts';

const caseSchema = z.object({ id: z.string(), text: z.string(), context: contextSchema });
/** One object for each distinct context, so that its roster is looked up once. */
const contexts = new Map<string, Context>();

function readCase(line: string, number: number): { out: object; ok: boolean } {
  let raw: unknown;
  try {
    raw = JSON.parse(line);
  } catch (e) {
    return { out: { id: null, error: `line ${number}: not JSON: ${(e as Error).message}` }, ok: false };
  }
  const hit = caseSchema.safeParse(raw);
  if (!hit.success) {
    const issue = hit.error.issues[0];
    return {
      out: { id: null, error: `line ${number}: ${issue?.path.join('.') || 'the line'}: ${issue?.message}` },
      ok: false,
    };
  }
  const key = JSON.stringify(hit.data.context);
  const context = contexts.get(key) ?? hit.data.context;
  contexts.set(key, context);
  return { out: { id: hit.data.id, entries: parse(hit.data.text, context) }, ok: true };
}

const { values } = parseArgs({ options: { text: { type: 'boolean' }, data: { type: 'string' } } });

/** The roster, people and units of the kennel in the data folder; an empty kennel where there is none yet. */
function kennelContext(): Context {
  const folder = values.data ?? process.env.SNACKSTOP_DATA ?? join(homedir(), '.snackstop');
  const file = join(folder, 'kennel.json');
  if (!existsSync(file)) {
    process.stderr.write(`no kennel in ${folder}; notes are read with no roster\n`);
    return contextSchema.parse({});
  }
  const kennel = JSON.parse(readFileSync(file, 'utf8')) as {
    dogs: { retired?: boolean }[];
    people: { name: string }[];
    settings: { units?: string };
  };
  return contextSchema.parse({
    dogs: kennel.dogs.filter((d) => !d.retired),
    people: kennel.people.map((p) => p.name),
    units: kennel.settings.units,
  });
}

const kennel = values.text ? kennelContext() : undefined;

let number = 0;
for await (const line of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
  number++;
  if (!line.trim()) continue;
  if (kennel) {
    process.stdout.write(`${JSON.stringify({ id: `line-${number}`, text: line, entries: parse(line, kennel) })}\n`);
    continue;
  }
  const { out, ok } = readCase(line, number);
  if (!ok) process.exitCode = 1;
  process.stdout.write(`${JSON.stringify(out)}\n`);
}
