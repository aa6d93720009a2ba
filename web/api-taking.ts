/** The calls for taking things along: what there is to export, restoring a copy, and the pages to print. */
import { hc } from 'hono/client';
import type { AppType } from '../server/app.ts';
import type { Sheet, Summary } from '../server/report/schema.ts';
import { Trouble } from './trouble.ts';

const { api } = hc<AppType>('/');

/** The body of a good answer; throws the server's sentence otherwise. */
async function good<T>(call: Promise<{ ok: boolean; status: number; json(): Promise<unknown> }>): Promise<T> {
  const response = await call;
  const body = await response.json().catch(() => undefined);
  if (response.ok && body !== undefined) return body as T;
  const error = (body as { error?: { code?: string; message?: string; kept?: string } } | undefined)?.error;
  throw new Trouble({
    status: response.status,
    code: error?.code ?? 'broken',
    message: error?.message ?? `The server answered ${response.status} with something that is not Snackstop's.`,
    kept: error?.kept,
  });
}

export interface Exportable {
  season: string;
  seasons: { season: string; notes: number }[];
  empty: boolean;
}
export interface Restored {
  files: number;
  seasons: string[];
  notes: number;
  dogs: number;
}

export const getExportable = () => good<Exportable>(api.export.$get());
export const getSheet = async (id: string, season?: string) =>
  (await good<{ sheet: Sheet }>(api.dogs[':id'].sheet.$get({ param: { id }, query: { season } }))).sheet;
export const getSummary = async (season?: string) =>
  (await good<{ summary: Summary }>(api.summary.$get({ query: { season } }))).summary;

/** Sends the ZIP of a whole store; large ones take their time, so no patience ends. */
export const restoreStore = (file: Blob) =>
  good<Restored>(fetch('/api/restore', { method: 'POST', headers: { 'content-type': 'application/zip' }, body: file }));
