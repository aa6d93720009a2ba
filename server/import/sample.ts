/** The sample season, read from its folder: the kennel and the files of notes, as a person would paste them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import type { NoteIn } from '../model.ts';
import { importNotebook } from './index.ts';

/** The folder that comes with the program. */
export const SAMPLE_FOLDER = fileURLToPath(new URL('../../sample-notes/', import.meta.url));

const name = z.string().min(1);
const kennelFileSchema = z.strictObject({
  kennel: name,
  units: z.enum(['imperial', 'metric']),
  /** IANA zone of the notes' times. */
  zone: name,
  musher: name,
  people: z.array(name),
  dogs: z.array(
    z.strictObject({
      name,
      sex: z.enum(['F', 'M']),
      aliases: z.array(name).optional(),
      born: z.iso.date().optional(),
      retired: z.boolean().optional(),
    }),
  ),
});
export type SampleKennel = z.infer<typeof kennelFileSchema>;
export interface Sample {
  kennel: SampleKennel;
  /** In the order of time. */
  files: { name: string; text: string }[];
}

/** Reads the sample. Throws where a file is missing or kennel.json is not of its shape. */
export function readSample(folder = SAMPLE_FOLDER): Sample {
  const kennel = kennelFileSchema.parse(JSON.parse(readFileSync(join(folder, 'kennel.json'), 'utf8')));
  const names = readdirSync(folder)
    .filter((file) => file.endsWith('.txt'))
    .sort();
  return { kennel, files: names.map((file) => ({ name: file, text: readFileSync(join(folder, file), 'utf8') })) };
}

/** The notes of all files. Throws where a line could not be placed. */
export function notesOf({ kennel, files }: Sample): NoteIn[] {
  return files.flatMap(({ name, text }) => {
    const { notes, problems } = importNotebook(text, { name, offset: kennel.zone, people: kennel.people });
    const first = problems[0];
    if (first) throw new Error(`${name}, line ${first.line}: ${first.says}`);
    return notes;
  });
}
