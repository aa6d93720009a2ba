/** Whether a note that was sent can be taken, and as what. Pure. */
import { type NoteIn, noteInSchema } from '../model.ts';

/** Longest text of one note, in UTF-16 units, as spans count them. */
export const NOTE_MAX = 20_000;
/** How far ahead of the machine's clock a note may be before its date is called odd: clocks and zones differ. */
const AHEAD = 24 * 3600 * 1000;

export type Checked = { note: NoteIn; warning?: string } | { says: string };

/**
 * The note as it is kept, or the sentence that says why not. The text is taken as it is, to the last control character.
 * Ids are kept in lower case (RFC 9562: upper case is read, lower case written).
 */
export function checkNote(sent: unknown, now: string): Checked {
  if (typeof sent !== 'object' || sent === null || Array.isArray(sent))
    return { says: 'A note is an object with an id, a text and a time.' };
  const { id, text, at, by, source } = sent as Record<string, unknown>;
  const idOk = noteInSchema.shape.id.safeParse(id);
  if (!idOk.success) return { says: 'The id of a note is a UUID, made where the note is made. The note was not kept.' };
  if (typeof text !== 'string') return { says: 'The text of the note is missing. The note was not kept.' };
  if (!/[\p{L}\p{M}\p{N}\p{P}\p{S}]/u.test(text)) return { says: 'The note is empty; there was nothing to keep.' };
  if (text.length > NOTE_MAX)
    return {
      says:
        `The note is ${text.length.toLocaleString('en')} characters long; a note has at most ` +
        `${NOTE_MAX.toLocaleString('en')}. It was not kept: cut it into parts and send them.`,
    };
  const time = typeof at === 'string' ? readTime(at) : undefined;
  if (!time)
    return {
      says: 'The time of a note is ISO 8601 with its offset, like 2027-01-14T10:40:00-09:00. The note was not kept.',
    };
  if (Number(time.slice(0, 4)) < 1900)
    return { says: `The year of the note is ${time.slice(0, 4)}; no season can hold it. The note was not kept.` };
  const speaker = typeof by === 'string' && by.trim() === '' ? undefined : (by ?? undefined);
  const speakerOk = noteInSchema.shape.by.safeParse(speaker);
  if (!speakerOk.success)
    return { says: 'The speaker of a note is a name of at most 60 characters. The note was not kept.' };
  const sourceOk = noteInSchema.shape.source.safeParse(source ?? undefined);
  if (!sourceOk.success)
    return { says: 'The source of a note is typed, dictated, recording or import. The note was not kept.' };
  const note: NoteIn = {
    id: idOk.data.toLowerCase(),
    text,
    at: time,
    ...(speakerOk.data ? { by: speakerOk.data } : {}),
    ...(sourceOk.data ? { source: sourceOk.data } : {}),
  };
  const warning = oddTime(time, now);
  return warning ? { note, warning } : { note };
}

/** A sentence where a note's time lies more than a day after the time it came in. */
export function oddTime(at: string, received: string): string | undefined {
  if (Date.parse(at) - Date.parse(received) <= AHEAD) return undefined;
  return `The note is dated ${at.slice(0, 10)}, which had not come yet when it came in on ${received.slice(0, 10)}. It was kept under that date.`;
}

/**
 * A time as RFC 3339 or ISO 8601 writes it with an offset, in the one form that is kept. Lower-case t and z, a space for
 * the T, left-out seconds and an offset without colon or minutes are read; a leap second is kept as the second before it.
 */
export function readTime(at: string): string | undefined {
  const m = /^(\d{4}-\d{2}-\d{2})[Tt ](\d{2}:\d{2})(?::(\d{2})([.,]\d{1,9})?)?(?:([Zz])|([+-]\d{2}):?(\d{2})?)$/.exec(
    at,
  );
  if (!m) return undefined;
  const [, day, time, second = '00', fraction = '', z, hours, minutes = '00'] = m;
  const leap = second === '60';
  const part = leap ? '' : fraction.replace(',', '.');
  const kept = `${day}T${time}:${leap ? '59' : second}${part}${z ? 'Z' : `${hours}:${minutes}`}`;
  return noteInSchema.shape.at.safeParse(kept).success ? kept : undefined;
}
