/**
 * The batch command: one `{"id", "text", "context"}` a line on standard input, one `{"id", "entries"}` a line on standard
 * output, in order. A line that is no such object gives an error in its place, and the exit status is 1.
 */
import { createInterface } from 'node:readline';
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

let number = 0;
for await (const line of createInterface({ input: process.stdin, crlfDelay: Number.POSITIVE_INFINITY })) {
  number++;
  if (!line.trim()) continue;
  const { out, ok } = readCase(line, number);
  if (!ok) process.exitCode = 1;
  process.stdout.write(`${JSON.stringify(out)}\n`);
}
