/** The way in for notes, the same for everyone: checked one by one, kept word for word, read, flushed, answered. */
import type { Note, NoteIn, Season } from '../model.ts';
import { seasonOf } from '../model.ts';
import type { KeptNote } from '../routes/schemas.ts';
import { ChangeRefusedError, NotKeptError } from '../store/index.ts';
import { checkNote } from './check.ts';
import type { House } from './house.ts';
import { readDays } from './reread.ts';
import { dayOf } from './state.ts';

/** A checked note with its place in what was sent. */
interface Arrived {
  index: number;
  sentId: string;
  note: NoteIn;
  warning?: string;
}

/**
 * Takes notes in. Answers one by one, in the order in which they were sent, when all that were taken have been flushed.
 * Idempotent by id; a text that is kept is never changed. Never throws for what the notes hold, nor for a disk that does
 * not take them: that is told in their answers.
 */
export async function takeIn(house: House, sent: readonly unknown[]): Promise<KeptNote[]> {
  const now = house.now();
  const answers: KeptNote[] = new Array(sent.length);
  const bySeason = new Map<string, Arrived[]>();
  for (const [index, one] of sent.entries()) {
    const id = (one as { id?: unknown } | null | undefined)?.id;
    const checked = checkNote(one, now);
    if ('says' in checked) {
      answers[index] = { id: typeof id === 'string' ? id : null, kept: 'no', error: checked.says, status: 400 };
      continue;
    }
    const { note, warning } = checked;
    // An id that is known, or on its way, is looked up where it is, whatever date it has this time.
    const season = house.store.findNote(note.id)?.season ?? house.onTheirWay.get(note.id) ?? seasonOf(dayOf(note.at));
    house.onTheirWay.set(note.id, season);
    const arrived: Arrived = { index, sentId: id as string, note, ...(warning ? { warning } : {}) };
    bySeason.set(season, [...(bySeason.get(season) ?? []), arrived]);
  }
  await Promise.all(
    [...bySeason].map(async ([season, notes]) => {
      try {
        for (const [index, answer] of await keep(house, season, notes, now)) answers[index] = answer;
      } finally {
        for (const { note } of notes) house.onTheirWay.delete(note.id);
      }
    }),
  );
  return answers;
}

async function keep(house: House, name: string, arrived: Arrived[], now: string): Promise<[number, KeptNote][]> {
  try {
    return await house.store.changeSeason(name, (season) => keepIn(season, arrived, house, now));
  } catch (error) {
    if (error instanceof NotKeptError) return arrived.map((one) => [one.index, notWritten(house, one, error)]);
    if (!(error instanceof ChangeRefusedError)) throw error;
    // One of them breaks a rule of the store; the others must not suffer for it.
    const [only, ...others] = arrived;
    if (only && others.length === 0)
      return [
        [only.index, { id: only.sentId, kept: 'no', error: `The note was not kept: ${error.message}.`, status: 409 }],
      ];
    const fates: [number, KeptNote][] = [];
    for (const one of arrived) fates.push(...(await keep(house, name, [one], now)));
    return fates;
  }
}

/** The season with the notes that are new to it, read; and what became of each. */
function keepIn(season: Season, arrived: Arrived[], house: House, now: string): [Season, [number, KeptNote][]] {
  const ids = new Set(arrived.map(({ note }) => note.id));
  const texts = new Map(season.notes.filter((note) => ids.has(note.id)).map((note) => [note.id, note.text]));
  const fate = new Map<Arrived, KeptNote['kept']>();
  const fresh: Note[] = [];
  const from = new Map<string, number>();
  for (const one of arrived) {
    const { note } = one;
    const text = texts.get(note.id);
    fate.set(one, text === undefined ? 'new' : text === note.text ? 'already' : 'no');
    if (text !== undefined) continue;
    texts.set(note.id, note.text);
    fresh.push({ ...note, received: now, aside: false, entries: [], unknownNames: [], history: [] });
    const day = dayOf(note.at);
    from.set(day, Math.min(from.get(day) ?? Number.POSITIVE_INFINITY, Date.parse(note.at)));
  }
  const grown = fresh.length > 0 ? { ...season, notes: [...season.notes, ...fresh] } : season;
  const [next] = readDays(grown, from, house.store.kennel(), house);
  const kept = new Map(next.notes.filter((note) => ids.has(note.id)).map((note) => [note.id, note]));
  return [next, arrived.map((one) => [one.index, answerFor(one, fate.get(one) ?? 'no', kept.get(one.note.id))])];
}

function answerFor(one: Arrived, kept: KeptNote['kept'], note: Note | undefined): KeptNote {
  if (kept === 'no' || !note)
    return {
      id: one.sentId,
      kept: 'no',
      error: 'Another text was kept under this id before; the first text stands, and this one was not kept.',
      status: 409,
    };
  return {
    id: one.sentId,
    kept,
    entries: note.entries.filter((e) => e.state !== 'removed').map((e) => e.entry),
    unknownNames: note.unknownNames,
    ...(one.warning ? { warning: one.warning } : {}),
  };
}

/** After a flush that failed: what had been flushed before still stands. */
function notWritten(house: House, one: Arrived, error: NotKeptError): KeptNote {
  const before = house.store.findNote(one.note.id)?.note;
  if (before) return answerFor(one, before.text === one.note.text ? 'already' : 'no', before);
  return { id: one.sentId, kept: 'no', error: error.message, status: 503 };
}
