/**
 * The outbox: a note is written on this device first and leaves it only when the server has acknowledged it. Sending
 * the same note twice keeps one, so an answer that was lost on the way costs nothing but another try.
 */
import { signal } from '@preact/signals';
import { v7 } from 'uuid';
import { postNotes } from '../api.ts';
import { refreshStatus } from '../status.ts';
import { localIso } from '../times.ts';
import { Trouble } from '../trouble.ts';
import {
  allWaiting,
  dropWaiting,
  lastSent,
  moveToSent,
  type OutNote,
  putWaiting,
  type Sent,
  type Waiting,
} from './db.ts';

export interface Outbox {
  waiting: Waiting[];
  /** Last acknowledged notes, newest first. */
  sent: Sent[];
  sending: boolean;
  /** Why the last try to send went wrong. */
  trouble?: Trouble;
  /** The browser keeps nothing for this page: notes go straight to the server or stay in the box. */
  closed: boolean;
}
/** What stands on this device; the pages show it. */
export const outbox = signal<Outbox>({ waiting: [], sent: [], sending: false, closed: false });

/** Most notes in one request. */
const BATCH = 25;
/** Seconds to wait before the next try, growing while the server stays away. */
const RETRY = [3, 6, 12, 30, 60, 120];

let tries = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
let running: Promise<void> | undefined;
let again = false;

/** A new note with its own id and the local time. */
export function newNote(text: string, source: OutNote['source'], by?: string): OutNote {
  return { id: v7(), text, at: localIso(), source, ...(by ? { by } : {}) };
}

/** Reads what stands on the device. */
export async function readOutbox(): Promise<void> {
  try {
    const [waiting, sent] = await Promise.all([allWaiting(), lastSent()]);
    outbox.value = { ...outbox.value, waiting, sent, closed: false };
  } catch {
    outbox.value = { ...outbox.value, closed: true };
  }
}

/**
 * Keeps a note on the device and starts sending. Resolves when it is safe: on the device's disk or, where the browser
 * keeps nothing, with the server. Rejects with a Trouble when it is in neither place; then the caller keeps the words.
 */
export async function keepNote(note: OutNote): Promise<void> {
  try {
    await putWaiting(note);
  } catch {
    outbox.value = { ...outbox.value, closed: true };
    await sendStraight(note);
    return;
  }
  await readOutbox();
  void send();
}

/** Where the browser keeps nothing. */
async function sendStraight(note: OutNote): Promise<void> {
  const kept = 'The note is not kept yet: this browser stores nothing for this page. The words stay in the box.';
  try {
    const answer = (await postNotes([note])).get(note.id);
    if (answer?.kept === 'no')
      throw new Trouble({ code: 'refused', message: answer.error ?? 'The note was not taken.', kept });
  } catch (error) {
    const trouble = Trouble.of(error);
    throw new Trouble({ ...trouble, message: trouble.message, kept });
  }
  outbox.value = { ...outbox.value, sent: [{ ...note, sentAt: localIso() }, ...outbox.value.sent].slice(0, 12) };
}

/** Sends what waits. Calls that come while one is under way are served by it. */
export function send(): Promise<void> {
  if (running) {
    again = true;
    return running;
  }
  clearTimeout(timer);
  outbox.value = { ...outbox.value, sending: true };
  running = sendAll().finally(() => {
    running = undefined;
    outbox.value = { ...outbox.value, sending: false };
    if (again) {
      again = false;
      void send();
    }
  });
  return running;
}

async function sendAll(): Promise<void> {
  try {
    let some = false;
    for (;;) {
      const batch = (await allWaiting()).filter((note) => !note.refused).slice(0, BATCH);
      if (batch.length === 0) break;
      await sendBatch(batch);
      some = true;
    }
    tries = 0;
    outbox.value = { ...outbox.value, trouble: undefined };
    await readOutbox();
    if (some) await refreshStatus();
  } catch (error) {
    await readOutbox();
    outbox.value = { ...outbox.value, trouble: Trouble.of(error) };
    timer = setTimeout(() => void send(), (RETRY[Math.min(tries++, RETRY.length - 1)] as number) * 1000);
  }
}

/** Sends some notes and books each by its answer; throws when any of them has to be tried again later. */
async function sendBatch(batch: Waiting[]): Promise<void> {
  let answers: Awaited<ReturnType<typeof postNotes>>;
  try {
    answers = await postNotes(batch);
  } catch (error) {
    const { status, message } = Trouble.of(error);
    const atFault = status >= 400 && status < 500;
    if (!atFault) throw error;
    // The request as a whole was refused. One by one it shows which note is at fault; the others must not wait for it.
    if (batch.length === 1) await putWaiting({ ...(batch[0] as Waiting), refused: message });
    else for (const note of batch) await sendBatch([note]);
    return;
  }
  const sentAt = localIso();
  const good: Sent[] = [];
  let later: string | undefined;
  for (const note of batch) {
    const answer = answers.get(note.id);
    if (!answer) later ??= 'The server said nothing of a note. It waits on this device.';
    else if (answer.kept !== 'no') good.push({ ...note, sentAt, warning: answer.warning });
    else if (answer.status === 503) later ??= answer.error;
    else await putWaiting({ ...note, refused: answer.error });
  }
  await moveToSent(good);
  await readOutbox();
  if (later) throw new Trouble({ code: 'not-kept', status: 503, message: later });
}

/** Takes a note off the device for good: its words stand in the box again, or nobody wants them. */
export async function drop(note: Waiting): Promise<void> {
  await dropWaiting(note.id);
  await readOutbox();
}

/** Sends at once, when the connection comes back, and when the page is looked at again. */
export function startSending(): void {
  const wake = () => {
    if (document.visibilityState === 'hidden') return;
    tries = 0;
    void readOutbox().then(send);
  };
  window.addEventListener('online', wake);
  document.addEventListener('visibilitychange', wake);
  wake();
}
