/**
 * How a state is laid out in its file: JSON that a person can read in an editor, one note or dog a line, under a first
 * line that says the schema, the shapes it was checked against, and a checksum of all the lines after it:
 *
 *     {"schema":1,"season":"2026-27","shape":"5d0a…","sum":"91c2…",
 *     "notes":[
 *     {"id":"0192…","text":"Juniper and Moss in lead.",…},
 *     {"id":"0192…",…}
 *     ],
 *     "runs":{…}}
 *
 * Nothing is ever written that was not checked, so a file whose checksum is right is right; it need not be taken apart
 * before somebody asks for it. A file that a person has edited has a wrong checksum, and is checked in full.
 */
import { crc32 } from 'node:zlib';
import type { Kennel, Season } from '../model.ts';
import { SCHEMA } from './migrate.ts';

/** A CRC-32 as it stands in a file. */
const hex = (sum: number) => sum.toString(16).padStart(8, '0');
const LINE = 0x0a;
const COMMA = 0x2c;

/** The first line; always of one length for the same name, schema and shape. */
export function head(shape: string, sum: number, season?: string): string {
  const name = season === undefined ? '' : `"season":"${season}",`;
  return `{"schema":${SCHEMA},${name}"shape":"${shape}","sum":"${hex(sum)}",\n`;
}

/**
 * Whether the file is, byte for byte, one that this program has written with these shapes.
 * `ours`: it is. `changed`: it was once, and something else has changed it since. `other`: anything else.
 */
export function provenance(bytes: Buffer, shape: string, season?: string): 'ours' | 'changed' | 'other' {
  const body = bytes.indexOf(LINE) + 1;
  if (body === 0 || body > 200) return 'other';
  const first = bytes.toString('latin1', 0, body);
  const sum = /"sum":"([0-9a-f]{8})",\n$/.exec(first)?.[1];
  if (sum === undefined) return 'other';
  const right = crc32(bytes.subarray(body));
  if (hex(right) !== sum) return 'changed';
  // The first line is under no checksum: it must be the very one that would be written. An earlier program's is another.
  return first === head(shape, right, season) ? 'ours' : 'other';
}

/** Every list one element a line, everything else on one line. */
export function kennelBytes(kennel: Kennel, shape: string): Buffer {
  const { schema: _, ...rest } = kennel;
  const parts = Object.entries(rest).map(([key, value]) => {
    const text = Array.isArray(value) ? lines(value.map((v) => JSON.stringify(v))) : JSON.stringify(value);
    return `${JSON.stringify(key)}:${text}`;
  });
  const body = Buffer.from(`${parts.join(',\n')}}\n`);
  return Buffer.concat([Buffer.from(head(shape, crc32(body))), body]);
}

export function readKennel(bytes: Buffer): Kennel {
  const { shape: _, sum: __, ...kennel } = JSON.parse(bytes.toString());
  return kennel;
}

function lines(items: string[]): string {
  return items.length === 0 ? '[]' : `[\n${items.join(',\n')}\n]`;
}

/** A season's file that is known to be whole, not taken apart yet. */
export interface SealedSeason {
  bytes: Buffer;
  /** Note ids, in their order. */
  ids: string[];
  /** Where each note's line starts; one more, where the next would. */
  starts: number[];
}

const NOTES = '"notes":[\n';
const ID = '{"id":"';
const UUID_LENGTH = 36;
const CLOSING = 0x5d;

/** Finds the notes of a file that is `ours`; undefined where the lines are not as they should be after all. */
export function sealSeason(bytes: Buffer): SealedSeason | undefined {
  let at = bytes.indexOf(LINE) + 1;
  if (bytes.toString('latin1', at, at + NOTES.length) !== NOTES) return undefined;
  at += NOTES.length;
  const ids: string[] = [];
  const starts: number[] = [];
  // A line break inside a text is written \n in JSON: a line is a note.
  while (bytes[at] !== CLOSING) {
    const end = bytes.indexOf(LINE, at);
    if (end < 0 || bytes.toString('latin1', at, at + ID.length) !== ID) return undefined;
    ids.push(bytes.toString('latin1', at + ID.length, at + ID.length + UUID_LENGTH));
    starts.push(at);
    at = end + 1;
  }
  starts.push(at);
  return { bytes, ids, starts };
}

/** The line of one note, without the comma and the line break behind it. */
export function sealedLine({ bytes, starts }: SealedSeason, index: number): Uint8Array {
  const next = starts[index + 1] ?? 0;
  return bytes.subarray(starts[index], bytes[next - 2] === COMMA ? next - 2 : next - 1);
}

export function readSeason(bytes: Buffer): Season {
  const { shape: _, sum: __, ...season } = JSON.parse(bytes.toString());
  return season;
}
