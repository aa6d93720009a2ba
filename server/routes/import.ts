/** Old notebooks as plain text: found, then taken in by the same way as every note. */
import { importNotebook, UnknownZoneError } from '../import/index.ts';
import type { NoteIn } from '../model.ts';
import type { House } from '../notes/house.ts';
import { takeIn } from '../notes/intake.ts';
import { Refusal } from '../notes/refusal.ts';
import { newRoutes } from './errors.ts';
import { postImport } from './kennel-routes.ts';
import type { ImportReport, KeptNote } from './schemas.ts';

/** Notes taken in at one go: one flush each, and the server answers others in between. */
const BATCH = 250;

export function importRoutes(house: House) {
  return newRoutes().openapi(postImport, async (c) => {
    const { text, name, heading, offset, by, defaultYear } = c.req.valid('json');
    const dry = c.req.valid('query').dry === '1';
    const at = heading?.at;
    const found = (() => {
      try {
        return importNotebook(text, {
          ...(name ? { name } : {}),
          ...(at ? { day: at.slice(0, 10) } : {}),
          ...(offset || at ? { offset: offset ?? /[+-]\d\d:\d\d$/.exec(at ?? '')?.[0] ?? '+00:00' } : {}),
          ...(by ? { by } : {}),
          ...(defaultYear ? { defaultYear } : {}),
          people: house.store.kennel().people.map((person) => person.name),
        });
      } catch (error) {
        if (error instanceof UnknownZoneError) throw new Refusal('bad-input', error.message, 'Nothing was taken in.');
        throw error;
      }
    })();
    const { notes, problems } = found;
    const answers: KeptNote[] = [];
    if (!dry)
      for (let i = 0; i < notes.length; i += BATCH) answers.push(...(await takeIn(house, notes.slice(i, i + BATCH))));
    return c.json({ report: reportOf(notes, problems, answers), ...(dry ? { notes } : {}) }, 200);
  });
}

function reportOf(notes: NoteIn[], problems: ImportReport['problems'], answers: KeptNote[]): ImportReport {
  const refused = answers.flatMap((answer, i) => {
    const note = notes[i] as NoteIn;
    return answer.kept === 'no' ? [{ text: note.text, at: note.at, says: answer.error ?? '' }] : [];
  });
  return {
    found: notes.length,
    taken: answers.filter((answer) => answer.kept === 'new').length,
    already: answers.filter((answer) => answer.kept === 'already').length,
    refused,
    problems,
    warnings: [...new Set(answers.flatMap((answer) => answer.warning ?? []))],
  };
}
