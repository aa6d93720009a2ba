/** Is what was read from a file what it should be, and if not: what is wrong, and in which line? */
import { crc32 } from 'node:zlib';
import { findNodeAtLocation, type ParseError, parse as parseJson, parseTree, printParseErrorCode } from 'jsonc-parser';
import { z } from 'zod';
import { type Kennel, kennelSchema, type Season, seasonSchema } from '../model.ts';
import { migrate, type Raw } from './migrate.ts';

/** A file that can't be used. The message goes on from "could not be read: ". */
export class UnreadableError extends Error {
  override readonly name = 'UnreadableError';
}

export interface Checked<S> {
  state: S;
  /** The schema the file had before it was brought forward. */
  from: number;
}

/** @throws UnreadableError, NewerSchemaError */
export function checkKennel(bytes: Uint8Array): Checked<Kennel> {
  return check('kennel', kennelSchema, bytes, {});
}

/** @throws UnreadableError, NewerSchemaError */
export function checkSeason(bytes: Uint8Array, season: string): Checked<Season> {
  const checked = check('season', seasonSchema, bytes, { season });
  if (checked.state.season !== season)
    throw new UnreadableError(`it says that it holds the season ${checked.state.season}`);
  return checked;
}

function check<S>(kind: 'kennel' | 'season', schema: z.ZodType<S>, bytes: Uint8Array, known: Raw): Checked<S> {
  const text = decode(bytes);
  const raw = parse(text);
  const { file, from } = migrate(kind, { ...known, ...raw });
  const result = schema.safeParse(file);
  if (result.success) return { state: result.data, from };
  const issue = result.error.issues[0] ?? { path: [], message: 'unknown' };
  throw new UnreadableError(
    `${pathWords(issue.path)} is not as it should be (${issue.message})${placeOf(text, issue.path)}`,
  );
}

function decode(bytes: Uint8Array): string {
  if (bytes.length === 0) throw new UnreadableError('it is empty');
  try {
    // An editor's byte order mark is dropped by the decoder.
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new UnreadableError('it is not UTF-8 text; an editor may have saved it in another encoding');
  }
}

function parse(text: string): Raw {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new UnreadableError(jsonFault(text) ?? (error as Error).message);
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new UnreadableError('it does not hold one JSON object');
  return value as Raw;
}

/** What JSON error there is and where; JSON.parse does not always say. */
function jsonFault(text: string): string | undefined {
  const errors: ParseError[] = [];
  parseJson(text, errors, { disallowComments: true, allowTrailingComma: false });
  const first = errors[0];
  if (!first) return undefined;
  const end = text.trimEnd().length;
  const fault = printParseErrorCode(first.error);
  const cutText = fault === 'UnexpectedEndOfString' && !text.slice(first.offset, end).includes('\n');
  if (first.offset >= end || cutText) return `it ends too early, ${at(text, end)}`;
  return `${FAULTS[fault] ?? 'there is an error in the JSON'}, ${at(text, first.offset)}`;
}

const FAULTS: Record<string, string> = {
  InvalidSymbol: 'there is a word or sign that is no JSON value',
  PropertyNameExpected: 'a name in double quotes is missing, or there is a comma too many',
  ValueExpected: 'a value is missing, or there is a comma too many',
  ColonExpected: 'a colon is missing',
  CommaExpected: 'a comma is missing',
  CloseBraceExpected: 'a closing } is missing',
  CloseBracketExpected: 'a closing ] is missing',
  EndOfFileExpected: 'there is more behind the end',
  InvalidCommentToken: 'there is a comment, which JSON does not know',
  UnexpectedEndOfComment: 'there is a comment, which JSON does not know',
  UnexpectedEndOfString: 'a text is not closed by a double quote',
  UnexpectedEndOfNumber: 'a number is not finished',
  InvalidUnicode: 'there is a wrong \\u in a text',
  InvalidEscapeCharacter: 'there is a wrong \\ in a text',
  InvalidCharacter: 'there is a control character in a text',
};

/** "at line 12, column 3", counted from 1, the column in characters as editors count them. */
function at(text: string, offset: number): string {
  const before = text.slice(0, offset);
  const line = before.split('\n').length;
  return `at line ${line}, column ${offset - before.lastIndexOf('\n')}`;
}

function placeOf(text: string, path: readonly PropertyKey[]): string {
  const tree = parseTree(text);
  // Where a field is missing the nearest thing around it is pointed at.
  for (let length = path.length; tree && length > 0; length--) {
    const node = findNodeAtLocation(tree, path.slice(0, length) as (string | number)[]);
    if (node) return `, ${at(text, node.offset)}`;
  }
  return '';
}

function pathWords(path: readonly PropertyKey[]): string {
  if (path.length === 0) return 'the whole';
  return path
    .map((part) => (typeof part === 'number' ? `[${part + 1}]` : String(part)))
    .join(' ')
    .replaceAll(' [', '[');
}

/**
 * A mark of the shape that a file was checked against: where the shapes of this program are others, by as little as a
 * new field with a default, the file is checked again and filled.
 */
export function shapeMark(schema: z.ZodType): string {
  const shape = JSON.stringify(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }));
  return crc32(shape).toString(16).padStart(8, '0');
}
