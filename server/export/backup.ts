/**
 * The whole store as one ZIP: every file of the data folder byte for byte, and a manifest with their names, sizes and
 * SHA-256 sums, from which `restore` makes the same folder again.
 *
 * Seasons are read first and kennel.json last, so that a note kept meanwhile never tells of a dog that the copy's
 * roster does not know yet. Each file is replaced whole by the store, so each is read as it was at one moment.
 */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { z } from 'zod';
import { codeOf, FolderUnusableError } from '../store/errors.ts';
import { isKeptFile, KENNEL_FILE, keptNames } from './kept-files.ts';
import { type Added, zipOf } from './zip.ts';

export const MANIFEST = 'manifest.json';
const FORMAT = 'snackstop-store';

export const manifestSchema = z.object({
  format: z.literal(FORMAT),
  /** Of this file; a later program that changes what it means counts on. */
  formatVersion: z.literal(1),
  /** Of the program that wrote it. */
  version: z.string(),
  created: z.iso.datetime(),
  files: z
    .array(
      z.object({
        name: z.string().refine(isKeptFile, 'this is not the name of a kept file'),
        bytes: z.number().int().nonnegative(),
        sha256: z.string().regex(/^[0-9a-f]{64}$/),
      }),
    )
    .refine((files) => new Set(files.map((file) => file.name)).size === files.length, 'a file is named twice')
    .refine((files) => files.some((file) => file.name === KENNEL_FILE), `${KENNEL_FILE} is not among the files`),
});
export type Manifest = z.infer<typeof manifestSchema>;

/**
 * The archive of a folder, made while it is read; the largest file is in memory at a time.
 * @throws FolderUnusableError where there is no kennel in the folder
 */
export async function storeZip(folder: string, { at, version }: { at: Date; version: string }): Promise<Readable> {
  const names = await keptNames(folder);
  if (names.at(-1) !== KENNEL_FILE)
    throw new FolderUnusableError(`There is no kennel in ${folder}: it holds no kennel.json. Nothing was exported.`);
  return zipOf(async (zip) => {
    const files: Added[] = [];
    for (const name of names) {
      const bytes = await readFile(join(folder, name)).catch((error: unknown) => {
        // An earlier copy or a file set aside may have gone since the folder was listed.
        if (codeOf(error) === 'ENOENT' && name.includes('.', 0) && name.split('.').length > 2) return undefined;
        throw error;
      });
      if (bytes) files.push(await zip.add(name, [bytes]));
    }
    const manifest: Manifest = { format: FORMAT, formatVersion: 1, version, created: at.toISOString(), files };
    await zip.add(MANIFEST, [`${JSON.stringify(manifest, null, 2)}\n`]);
  }, at);
}
