/**
 * The calls of the server, typed by its own routes. Every call gives the body of a good answer or throws a Trouble that
 * holds the server's sentence.
 */
import { type ClientResponse, hc } from 'hono/client';
import type { SuccessStatusCode } from 'hono/utils/http-status';
import type { AppType } from '../server/app.ts';
import type { Dog, Settings } from '../server/model.ts';
import type { KeptNote, NoteView, ReviewRequest } from '../server/routes/schemas.ts';
import type { OutNote } from './outbox/db.ts';
import { Trouble } from './trouble.ts';

/** No answer in this time counts as away; long enough for a flush behind a season's import. */
const PATIENCE_MS = 30_000;
const { api } = hc<AppType>('/', {
  fetch: (input: RequestInfo | URL, init?: RequestInit) =>
    fetch(input, { ...init, signal: AbortSignal.timeout(PATIENCE_MS) }),
});

type GoodBody<R> =
  R extends ClientResponse<infer T, infer S, string> ? (S extends SuccessStatusCode ? T : never) : never;

/** The body of a good answer; throws the server's error otherwise. */
async function good<R extends ClientResponse<unknown, number, string>>(call: Promise<R>): Promise<GoodBody<R>> {
  const response = await call;
  const body = (await response.json().catch(() => undefined)) as unknown;
  if (response.ok && body !== undefined) return body as GoodBody<R>;
  throw troubleOf(body, response.status);
}

function troubleOf(body: unknown, status: number): Trouble {
  const error = (body as { error?: { code?: string; message?: string; kept?: string } } | undefined)?.error;
  return new Trouble({
    status,
    code: error?.code ?? 'broken',
    message: error?.message ?? `The server answered ${status} with something that is not Snackstop's.`,
    kept: error?.kept,
  });
}

const param = (id: string) => ({ param: { id } });

// Status, settings, context
export const getStatus = () => good(api.status.$get());
export const getSettings = async () => (await good(api.settings.$get())).settings;
export const putSettings = (json: Settings) => good(api.settings.$put({ json }));
export const getContext = async (at: string, by?: string) =>
  (await good(api.context.$get({ query: by ? { at, by } : { at } }))).context;

// Notes and their review
/** What became of each note that was sent, by its id. A 409 or 503 that tells of each note is such an answer as well. */
export async function postNotes(notes: readonly OutNote[]): Promise<Map<string, KeptNote>> {
  const sent = notes.map(({ id, text, at, by, source }) => ({ id, text, at, by, source }));
  const response = await api.notes.$post({ json: { notes: sent } });
  const body = (await response.json().catch(() => undefined)) as { notes?: KeptNote[] } | undefined;
  if (!body?.notes) throw troubleOf(body, response.status);
  return new Map(body.notes.map((note) => [note.id ?? '', note]));
}
export type NotesAsked = { season?: string; state?: NoteView['state'] | 'all'; order?: 'time' | 'newest' | 'doubt' };
export const getNotes = (query: NotesAsked & { limit?: string }) => good(api.notes.$get({ query }));
export const getNote = async (id: string) => (await good(api.notes[':id'].$get(param(id)))).note;
export const review = (id: string, json: ReviewRequest) => good(api.notes[':id'].review.$post({ ...param(id), json }));

// Runs
export const getRuns = async (season?: string) => (await good(api.runs.$get({ query: { season } }))).runs;
export const getRun = (id: string) => good(api.runs[':id'].$get(param(id)));
export const joinRun = (id: string) => good(api.runs[':id'].join.$post({ ...param(id), json: { to: 'before' } }));
export const cutRun = (id: string, note: string) => good(api.runs[':id'].cut.$post({ ...param(id), json: { note } }));
export const moveNote = (id: string, note: string, toRunOf: string) =>
  good(api.runs[':id'].move.$post({ ...param(id), json: { note, toRunOf } }));
export const setDistance = (id: string, json: { value: number; unit: 'mi' | 'km'; why?: string }) =>
  good(api.runs[':id'].distance.$put({ ...param(id), json }));
export const clearDistance = (id: string) => good(api.runs[':id'].distance.$delete(param(id)));

// Dogs and people
export type DogIn = Pick<Dog, 'name' | 'sex'> & Partial<Pick<Dog, 'aliases' | 'heard' | 'born' | 'retired'>>;
export type DogChange = Partial<Omit<DogIn, 'born'>> & { born?: string | null };
export const getDogs = async () => (await good(api.dogs.$get())).dogs;
export const addDog = (json: DogIn) => good(api.dogs.$post({ json }));
export const changeDog = (id: string, json: DogChange) => good(api.dogs[':id'].$patch({ ...param(id), json }));
export const learnHeard = (id: string, heard: string) =>
  good(api.dogs[':id'].heard.$post({ ...param(id), json: { heard } }));
export const removeDog = (id: string) => good(api.dogs[':id'].$delete(param(id)));
export const getPeople = async () => (await good(api.people.$get())).people;
export const addPerson = (name: string) => good(api.people.$post({ json: { name } }));
export const renamePerson = (id: string, name: string) =>
  good(api.people[':id'].$patch({ ...param(id), json: { name } }));
export const retirePerson = (id: string, retired: boolean) =>
  good(api.people[':id'].$patch({ ...param(id), json: { retired } }));
export const removePerson = (id: string) => good(api.people[':id'].$delete(param(id)));

// Load
export const getLoad = (on?: string) => good(api.load.$get({ query: { on } }));

// What keeps coming back
/** As it stood on a day, or stands in the season shown. `open`: only what is open, and notices that still stand. */
export const getWatch = (query: { on?: string; state?: 'open' } = {}) => good(api.watch.$get({ query }));
export type Watched = Awaited<ReturnType<typeof getWatch>>;
export type Episode = Watched['episodes'][number];
export type Caution = Watched['cautions'][number];

// One dog's season
export const getDogSeason = (id: string, season?: string) =>
  good(api.dogs[':id'].season.$get({ ...param(id), query: { season } }));

// Search
export type SearchAsked = Parameters<typeof api.search.$get>[0]['query'];
export const search = (query: SearchAsked) => good(api.search.$get({ query }));

// Old notebooks
/** Finds the notes in a text; keeps nothing. The notes found are then sent like any others. */
export const findNotes = (text: string, name: string | undefined, offset: string) =>
  good(api.import.$post({ query: { dry: '1' }, json: { text, name, offset } }));
