/** The real application over a real store in a folder of its own, with a clock that stands still. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { v7 } from 'uuid';
import { expect, onTestFinished } from 'vitest';
import { createApp } from '../../server/app.ts';
import type { HouseOptions } from '../../server/notes/house.ts';
import type { KeptNote, NoteView } from '../../server/routes/schemas.ts';
import { openStore, type Parts, type Store } from '../../server/store/index.ts';
import { asDescribed } from './described.ts';
import { read } from './reader.ts';

export const NOW = '2027-01-15T09:00:00.000-09:00';
export const TODAY = '2027-01-15';

export interface Answer<T> {
  status: number;
  json: T;
  headers: Headers;
}
export type Wrong = { error: { code: string; message: string; kept?: string } };

export class Kennel {
  constructor(
    readonly app: ReturnType<typeof createApp>,
    readonly store: Store,
  ) {}

  /** Sends JSON as the pages do. */
  async ask<T>(method: string, path: string, body?: unknown, headers: Record<string, string> = {}): Promise<Answer<T>> {
    const response = await this.app.request(`http://127.0.0.1${path}`, {
      method,
      headers: { ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const json: unknown = await response.json();
    // Every answer of every test is as it is described, to the last field.
    expect(asDescribed(method, path, response.status, json)).toEqual(json);
    return { status: response.status, json: json as T, headers: response.headers };
  }

  get<T>(path: string) {
    return this.ask<T>('GET', path);
  }

  post<T>(path: string, body: unknown) {
    return this.ask<T>('POST', path, body);
  }

  /** Adds dogs, females first named; answers their ids by name. */
  async dogs(...names: string[]): Promise<Record<string, string>> {
    const ids: Record<string, string> = {};
    for (const [i, name] of names.entries()) {
      const sex = i % 2 === 0 ? 'F' : 'M';
      const { json } = await this.post<{ dog: { id: string } }>('/api/dogs', { name, sex });
      ids[name] = json.dog.id;
    }
    return ids;
  }

  /** Sends notes, each a time and a text; answers what became of them, with the ids. */
  async notes(
    ...notes: [at: string, text: string, more?: Record<string, unknown>][]
  ): Promise<(KeptNote & { id: string })[]> {
    const { json } = await this.post<{ notes: (KeptNote & { id: string })[] }>('/api/notes', {
      notes: notes.map(([at, text, more]) => ({
        id: v7(),
        at: at.length === 5 ? `2027-01-14T${at}:00-09:00` : at,
        text,
        ...more,
      })),
    });
    return json.notes;
  }

  async note(id: string): Promise<NoteView> {
    return (await this.get<{ note: NoteView }>(`/api/notes/${id}`)).json.note;
  }

  review<T = { note: NoteView; reread: string[]; offer?: { heard: string; dog: string; dogId: string } }>(
    id: string,
    act: unknown,
  ) {
    return this.post<T>(`/api/notes/${id}/review`, act);
  }
}

/** A new kennel; gone when the test is finished. */
export async function newKennel(options: Partial<HouseOptions> & { parts?: Partial<Parts> } = {}): Promise<Kennel> {
  const folder = await mkdtemp(join(tmpdir(), 'snackstop-routes-'));
  const { parts, ...house } = options;
  const store = await openStore(folder, parts);
  onTestFinished(async () => {
    await store.close();
    await rm(folder, { recursive: true, force: true });
  });
  return new Kennel(createApp({ store, version: '0.0.0-test', read, now: () => NOW, ...house }), store);
}

/** The kinds of entry, in the order of the contract's table. */
export const KINDS_IN_CONTRACT = [
  'hitch',
  'move',
  'drop',
  'distance',
  'clock',
  'duration',
  'speed',
  'finding',
  'care',
  'booties',
  'intake',
  'temperature',
  'wind',
  'weather',
  'trail',
  'attitude',
  'gait',
  'measure',
  'gear',
  'remark',
];
