/** What every page knows of the server: season, units, notes that wait, warnings. */
import { computed, signal } from '@preact/signals';
import type { Status } from '../server/routes/schemas.ts';
import { getStatus } from './api.ts';
import type { Units } from './units.ts';

/** The last status the server gave; null until it has answered once. */
export const status = signal<Status | null>(null);
/** Whether the server answered when it was last asked; null before the first answer. */
export const reached = signal<boolean | null>(null);
/** The kennel's units. */
export const units = computed<Units>(() => status.value?.units ?? 'imperial');

/** Asks again; silent when the server is away, since pages work on without it. */
export async function refreshStatus(): Promise<void> {
  try {
    status.value = await getStatus();
    reached.value = true;
  } catch {
    reached.value = false;
  }
}
