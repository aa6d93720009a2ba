/** Reads the annotated notes, and gives what the grammar reads from them. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Context, contextSchema, type Entry, parse } from '../../grammar/index.ts';

export interface Case {
  id: string;
  text: string;
  context: string;
  entries: Entry[];
}

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const contexts: Record<string, Context> = Object.fromEntries(
  ['contexts.json', 'speakers.contexts.json'].flatMap((file) =>
    Object.entries(JSON.parse(readFileSync(here(file), 'utf8')) as Record<string, unknown>).map(
      ([name, c]) => [name, contextSchema.parse(c)] as const,
    ),
  ),
);

/** Names of the corpus files, without their ending. */
export const corpusNames = (): string[] =>
  readdirSync(here('.'))
    .filter((f) => f.endsWith('.jsonl'))
    .map((f) => f.replace('.jsonl', ''))
    .sort();

/** The annotated notes of one file. */
export const casesOf = (name: string): Case[] =>
  readFileSync(here(`${name}.jsonl`), 'utf8')
    .split('\n')
    .filter((l) => l.trim())
    .map((l) => JSON.parse(l) as Case);

/** The context a case refers to. Throws where there is none of that name. */
export function contextOf(c: Case): Context {
  const context = contexts[c.context];
  if (!context) throw new Error(`${c.id} refers to a context "${c.context}" that contexts.json does not hold`);
  return context;
}

/** What the grammar reads, in the scorer's shape. */
export const outputOf = (cases: readonly Case[]): { id: string; entries: Entry[] }[] =>
  cases.map((c) => ({ id: c.id, entries: parse(c.text, contextOf(c)) }));

/** The note as a recogniser writes it: lower case, no marks but those inside numbers and words. */
export const asHeard = (text: string): string =>
  text
    .toLowerCase()
    .replace(/(?<!\d)[.,:;!?](?!\d)|[.,;!?](?!\d)|[!?;"()]/g, ' ')
    .replace(/ [-–—] |[–—]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
