/** The device's own store: notes that have not been acknowledged, and the last ones that were. */
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A note on this device, as it will be sent. Its id is made here, so that sending it twice keeps one. */
export interface OutNote {
  id: string;
  text: string;
  /** Local time of speaking with its offset. */
  at: string;
  by?: string;
  source: 'typed' | 'dictated' | 'import';
}
/** A note that waits. `refused` is the server's sentence when it would not take the note; it is then not sent again. */
export interface Waiting extends OutNote {
  refused?: string;
}
/** A note that the server has acknowledged. */
export interface Sent extends OutNote {
  sentAt: string;
  warning?: string;
}

interface Schema extends DBSchema {
  outbox: { key: string; value: Waiting };
  sent: { key: string; value: Sent; indexes: { sentAt: string } };
}
export type OutboxDb = IDBPDatabase<Schema>;

/** How many acknowledged notes stay on the device, to look back on. */
const KEEP_SENT = 12;

let opened: Promise<OutboxDb> | undefined;
/** Opens the store once. Rejects where the browser has none (a private window, say); the next call tries again. */
export function database(): Promise<OutboxDb> {
  opened ??= openDB<Schema>('snackstop', 1, {
    upgrade(db) {
      db.createObjectStore('outbox', { keyPath: 'id' });
      db.createObjectStore('sent', { keyPath: 'id' }).createIndex('sentAt', 'sentAt');
    },
  }).catch((error) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

/** Everything that waits, in the order in which it was spoken. */
export async function allWaiting(): Promise<Waiting[]> {
  const notes = await (await database()).getAll('outbox');
  return notes.sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : 1));
}
/** The last acknowledged notes, newest first. */
export async function lastSent(): Promise<Sent[]> {
  return (await (await database()).getAllFromIndex('sent', 'sentAt')).reverse();
}
/** Writes a note; resolves once the browser says that it stands on the device's disk. */
export async function putWaiting(note: Waiting): Promise<void> {
  const tx = (await database()).transaction('outbox', 'readwrite', { durability: 'strict' });
  await Promise.all([tx.store.put(note), tx.done]);
}
export async function dropWaiting(id: string): Promise<void> {
  await (await database()).delete('outbox', id);
}
/** Acknowledged: out of the outbox and into the look-back list, in one transaction. */
export async function moveToSent(notes: readonly Sent[]): Promise<void> {
  const tx = (await database()).transaction(['outbox', 'sent'], 'readwrite');
  const sent = tx.objectStore('sent');
  for (const note of notes) {
    void tx.objectStore('outbox').delete(note.id);
    void sent.put(note);
  }
  const keys = await sent.index('sentAt').getAllKeys();
  for (const key of keys.slice(0, Math.max(0, keys.length - KEEP_SENT))) void sent.delete(key);
  await tx.done;
}
