/** Small choices of this device (day or night, single keys, who speaks), kept in its local storage as signals. */
import { effect, type Signal, signal } from '@preact/signals';

/** Reads a kept text; null where nothing was kept or storage is closed to the page. */
function kept(key: string): string | null {
  try {
    return localStorage.getItem(`snackstop.${key}`);
  } catch {
    return null;
  }
}

/** A signal whose text value outlives the page. `known`: the values it may have; any text when left out. */
export function keptSignal<T extends string>(key: string, fallback: T, known?: readonly T[]): Signal<T> {
  const before = kept(key) as T | null;
  const value = signal<T>(before !== null && (!known || known.includes(before)) ? before : fallback);
  effect(() => {
    const now = value.value;
    try {
      localStorage.setItem(`snackstop.${key}`, now);
    } catch {
      // Storage is closed to the page or full: the choice holds until the page is left.
    }
  });
  return value;
}

const painted = document.documentElement.dataset.theme === 'night' ? 'night' : 'day';
/** Black on white by day, dim dark at night. */
export const theme = keptSignal<'day' | 'night'>('theme', painted, ['day', 'night']);
effect(() => {
  document.documentElement.dataset.theme = theme.value;
});

/** Single keys on the review page. They can be turned off (WCAG 2.1.4) where they get in the way of a screen reader. */
export const singleKeys = keptSignal<'on' | 'off'>('keys', 'on', ['on', 'off']);
/** What was understood is read back aloud after a note is kept. */
export const readBack = keptSignal<'on' | 'off'>('readback', 'off', ['on', 'off']);
/** The person who speaks on this device; "" is nobody named. */
export const speaker = keptSignal<string>('speaker', '');
/** The text in the note box, so that a closed page loses nothing. */
export const draft = keptSignal<string>('draft', '');
