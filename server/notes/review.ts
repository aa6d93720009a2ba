/**
 * The acts of review as pure functions: a note and an act in, the next note out. A note's text never changes here.
 * Every act that changes something remembers what stood before it, so that undo restores it exactly, act by act.
 * An act that changes nothing gives back the same note, so that accepting all twice is one act.
 */
import { isDeepStrictEqual } from 'node:util';
import type { Entry } from '../../grammar/entry.ts';
import type { Dog, Note, ReviewAct, ReviewedEntry } from '../model.ts';
import { dogNamed } from './names.ts';
import { Refusal } from './refusal.ts';
import { stateOf } from './state.ts';

/** What a person did. */
export type Act =
  | { act: 'accept'; entry: string }
  | { act: 'accept-all' }
  | { act: 'change'; entry: string; to: Entry }
  | { act: 'remove'; entry: string }
  | { act: 'add'; to: Entry }
  | { act: 'set-aside'; aside: boolean }
  | { act: 'undo' };

/** What an act needs beside the note. */
export interface Desk {
  dogs: readonly Dog[];
  /** Time of the act, ISO 8601 with offset. */
  at: string;
  newId: () => string;
}

/**
 * The note after the act.
 * @throws Refusal not-found when the entry is not in the note, bad-input when an entry given is not right for the note
 * and the roster, conflict when there is nothing to undo.
 */
export function review(note: Note, act: Act, desk: Desk): Note {
  switch (act.act) {
    case 'undo':
      return undo(note);
    case 'accept':
      return accept(note, act.entry, desk);
    case 'accept-all':
      return acceptAll(note, desk);
    case 'change':
      return change(note, act.entry, act.to, desk);
    case 'remove':
      return remove(note, act.entry, desk);
    case 'add':
      return add(note, act.to, desk);
    case 'set-aside':
      return setAside(note, act.aside, desk);
  }
}

function undo(note: Note): Note {
  const last = note.history.at(-1);
  if (!last) throw new Refusal('conflict', 'There is nothing to undo in this note.');
  return { ...note, ...last.before, history: note.history.slice(0, -1) };
}

function accept(note: Note, id: string, desk: Desk): Note {
  const entry = find(note, id);
  if (entry.state === 'accepted') return note;
  return next(note, 'accept', desk, { entries: replace(note, { ...entry, state: 'accepted' }) });
}

/** Accepts what is proposed; what was removed stays removed. On a note in which nothing was read it says: looked at. */
function acceptAll(note: Note, desk: Desk): Note {
  const proposed = note.entries.some((e) => e.state === 'proposed');
  if (!proposed && (note.entries.length > 0 || note.history.length > 0)) return note;
  const entries = note.entries.map((e): ReviewedEntry => (e.state === 'proposed' ? { ...e, state: 'accepted' } : e));
  return next(note, 'accept-all', desk, { entries });
}

/** What a person has written counts: a changed entry is accepted. `was` keeps what the grammar had read. */
function change(note: Note, id: string, to: Entry, desk: Desk): Note {
  const entry = find(note, id);
  const span = to.span ?? entry.entry.span;
  const checked = check(note, span ? { ...to, span } : to, desk.dogs);
  if (isDeepStrictEqual(checked, byHand(entry.entry))) return accept(note, id, desk);
  const { was: before, ...rest } = entry;
  const read = entry.from === 'read' ? (before ?? entry.entry) : undefined;
  const changed: ReviewedEntry = { ...rest, entry: checked, state: 'accepted' };
  if (read && isDeepStrictEqual(byHand(read), checked)) changed.entry = read;
  else if (read) changed.was = read;
  return next(note, 'change', desk, { entries: replace(note, changed) });
}

function remove(note: Note, id: string, desk: Desk): Note {
  const entry = find(note, id);
  if (entry.state === 'removed') return note;
  return next(note, 'remove', desk, { entries: replace(note, { ...entry, state: 'removed' }) });
}

function add(note: Note, to: Entry, desk: Desk): Note {
  const added: ReviewedEntry = {
    id: desk.newId(),
    entry: check(note, to, desk.dogs),
    from: 'person',
    state: 'accepted',
  };
  return next(note, 'add', desk, { entries: [...note.entries, added] });
}

function setAside(note: Note, aside: boolean, desk: Desk): Note {
  if (note.aside === aside) return note;
  return next(note, 'set-aside', desk, { aside });
}

function next(note: Note, act: ReviewAct['act'], desk: Desk, to: Partial<Pick<Note, 'aside' | 'entries'>>): Note {
  const before = { aside: note.aside, entries: note.entries };
  return { ...note, ...to, history: [...note.history, { act, at: desk.at, before }] };
}

function find(note: Note, id: string): ReviewedEntry {
  const entry = note.entries.find((e) => e.id === id.toLowerCase());
  if (!entry)
    throw new Refusal(
      'not-found',
      stateOf(note) === 'waiting'
        ? 'That entry is no longer part of the note; it may have been read again since. Nothing was changed.'
        : 'That entry is not part of the note. Nothing was changed.',
    );
  return entry;
}

const replace = (note: Note, entry: ReviewedEntry) => note.entries.map((e) => (e.id === entry.id ? entry : e));

/** An entry without what only a reading has: its rule and its doubt. A person who writes an entry has no doubt. */
function byHand(entry: Entry): Entry {
  const { rule: _rule, doubt: _doubt, because: _because, ...rest } = entry;
  return rest as Entry;
}

/** The entry as it is kept: dogs by their names of now, each once; its span inside the note. */
function check(note: Note, entry: Entry, dogs: readonly Dog[]): Entry {
  const named = entry.dogs.map((name) => {
    if (name === '*') return name;
    const dog = dogNamed(dogs, name);
    if (!dog)
      throw new Refusal('bad-input', `No dog in the roster is called “${name}”. Add the dog first, or pick another.`);
    return dog.name;
  });
  if (named.includes('*') && named.length > 1)
    throw new Refusal('bad-input', '“*” stands for the whole team, so no other dog can stand beside it.');
  if (entry.span && (entry.span[0] > entry.span[1] || entry.span[1] > note.text.length))
    throw new Refusal('bad-input', `The words of an entry lie inside the note, which is ${note.text.length} long.`);
  return byHand({ ...entry, dogs: [...new Set(named)] });
}
