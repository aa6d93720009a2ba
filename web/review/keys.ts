/** The keys of the review page: what each does, in the order in which they stand on the page. */
import type { Desk } from './desk.ts';

export interface Key {
  /** Values of KeyboardEvent.key that do it. */
  keys: readonly string[];
  /** How the key is shown. */
  shown: string;
  does: string;
  act: (desk: Desk) => void;
}

export const KEYS: readonly Key[] = [
  { keys: ['A'], shown: 'Shift A', does: 'accept all, go on', act: (desk) => void desk.acceptAll() },
  { keys: ['a'], shown: 'A', does: 'accept', act: (desk) => void desk.accept() },
  { keys: ['c'], shown: 'C', does: 'change', act: (desk) => openForm(desk, 'change') },
  { keys: ['r'], shown: 'R', does: 'remove', act: (desk) => void desk.remove() },
  { keys: ['+', '='], shown: '+', does: 'add an entry', act: (desk) => openForm(desk, 'add') },
  { keys: ['u'], shown: 'U', does: 'take back', act: (desk) => void desk.undo() },
  { keys: ['s'], shown: 'S', does: 'set the note aside', act: (desk) => void desk.setAside() },
  { keys: ['ArrowDown', 'j'], shown: '↓', does: 'next entry', act: (desk) => void desk.choose(1) },
  { keys: ['ArrowUp', 'k'], shown: '↑', does: 'entry before', act: (desk) => void desk.choose(-1) },
  { keys: ['ArrowRight', 'n'], shown: 'N', does: 'next note', act: (desk) => void desk.go(1) },
  { keys: ['ArrowLeft', 'p'], shown: 'P', does: 'note before', act: (desk) => void desk.go(-1) },
];

/** Opens the form for the entry looked at, or for a new one. */
export function openForm(desk: Desk, form: 'change' | 'add'): void {
  const note = desk.note.value;
  if (!note || (form === 'change' && !note.entries[desk.looked.value])) return;
  desk.form.value = form;
}

/** Whether a key belongs to the thing that has the focus: a field takes every key, a button its own. */
function isTaken(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('input, select, textarea, [contenteditable]') !== null;
}

/** The act of a key, if it is one of the page's and the focus is not in a field. */
export function keyFor(event: KeyboardEvent): Key | undefined {
  if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || isTaken(event.target)) return undefined;
  // With the letters locked to capitals, "a" must not turn into "accept all".
  const key = event.getModifierState('CapsLock') && /^[a-z]$/i.test(event.key) ? swapCase(event.key) : event.key;
  return KEYS.find((one) => one.keys.includes(key));
}
const swapCase = (key: string) => (key === key.toUpperCase() ? key.toLowerCase() : key.toUpperCase());
