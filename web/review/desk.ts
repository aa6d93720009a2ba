/**
 * The review desk: the notes that lie on it, the one looked at, and the acts of review. Acts run one after the other in
 * the order in which the keys were pressed, and each works on what is looked at when its turn comes; none is dropped.
 */
import { computed, signal } from '@preact/signals';
import type { Entry } from '../../grammar/entry.ts';
import type { NoteView, Offer, ReviewRequest } from '../../server/routes/schemas.ts';
import { getNote, getNotes, review } from '../api.ts';
import { counted } from '../labels.ts';
import { refreshStatus } from '../status.ts';
import { clockOf, dayWords } from '../times.ts';
import { Trouble } from '../trouble.ts';
import { sentence } from '../words.ts';

export type Show = 'waiting' | 'reviewed' | 'aside' | 'all';
export type Order = 'doubt' | 'time' | 'newest';

/** Most notes on the desk at once. */
const MOST = '2000';
const nameOf = (note: NoteView) => `the note of ${dayWords(note.at)}, ${clockOf(note.at)}`;
const isDoubtful = (entry: Entry) => entry.doubt !== undefined && entry.doubt !== 'none';

/** Where to look first in a note: what is doubtful, else what is still to be accepted, else the beginning. */
export function firstLook({ entries }: Pick<NoteView, 'entries'>): number {
  const open = entries.findIndex((e) => e.state === 'proposed');
  const doubtful = entries.findIndex((e) => e.state === 'proposed' && isDoubtful(e.entry));
  return Math.max(0, doubtful >= 0 ? doubtful : open);
}

export class Desk {
  readonly notes = signal<NoteView[]>([]);
  /** Index of the note looked at; one past the last when all are done. */
  readonly at = signal(0);
  /** Index of the entry looked at. */
  readonly looked = signal(0);
  /** Index of the entry under the mouse; only its words stand out, nothing is chosen by it. */
  readonly pointed = signal<number | undefined>(undefined);
  readonly form = signal<'none' | 'change' | 'add'>('none');
  readonly offer = signal<Offer | undefined>(undefined);
  /** What the last act did; read out by screen readers. */
  readonly told = signal('');
  readonly trouble = signal<Trouble | undefined>(undefined);
  readonly state = signal<'loading' | 'here' | 'failed'>('loading');
  readonly note = computed<NoteView | undefined>(() => this.notes.value[this.at.value]);
  readonly open = computed(() => this.notes.value.filter((note) => note.state === 'waiting').length);
  /** Ids of the notes acted on, newest last, for undo. */
  #acted: string[] = [];
  #turn: Promise<void> = Promise.resolve();

  /** Lays the notes on the desk. `wanted` is looked at first, and fetched by itself when it is not among them. */
  load(show: Show, order: Order, wanted?: string): Promise<void> {
    return this.#queue(async () => {
      this.state.value = 'loading';
      try {
        const { notes } = await getNotes({ state: show, order, limit: MOST });
        if (wanted && !notes.some((note) => note.id === wanted)) notes.unshift(await getNote(wanted));
        this.notes.value = notes;
        this.#look(Math.max(0, wanted ? notes.findIndex((note) => note.id === wanted) : 0));
        this.state.value = 'here';
      } catch (error) {
        this.state.value = 'failed';
        throw error;
      }
    });
  }

  /** Fetches the notes again that are still open, after the roster has changed; the order on the desk stays. */
  refresh(): Promise<void> {
    return this.#queue(async () => {
      const { notes } = await getNotes({ state: 'waiting', limit: MOST });
      const fresh = new Map(notes.map((note) => [note.id, note]));
      this.notes.value = this.notes.value.map((note) => fresh.get(note.id) ?? note);
      const note = this.note.value;
      if (note) this.looked.value = firstLook(note);
      void refreshStatus();
    });
  }

  /** Goes `step` notes on or back. */
  go(step: number): Promise<void> {
    return this.#queue(async () => {
      const to = this.at.value + step;
      if (to >= 0 && to <= this.notes.value.length) this.#look(to);
    });
  }
  /** Goes `step` entries down or up. */
  choose(step: number): Promise<void> {
    return this.#queue(async () => {
      const last = (this.note.value?.entries.length ?? 0) - 1;
      this.looked.value = Math.max(0, Math.min(last, this.looked.value + step));
    });
  }
  lookAt(entry: number): void {
    this.looked.value = entry;
  }

  accept(index?: number): Promise<void> {
    return this.#onEntry(index, async (note, { id, entry, state }) => {
      if (state === 'accepted') return;
      await this.#act(note, { act: 'accept', entry: id }, `Accepted: ${sentence(entry)}.`);
      this.#lookOn();
    });
  }
  remove(index?: number): Promise<void> {
    return this.#onEntry(index, async (note, { id, entry, state }) => {
      if (state === 'removed') return;
      await this.#act(note, { act: 'remove', entry: id }, `Removed: ${sentence(entry)}.`);
      this.#lookOn();
    });
  }
  change(to: Entry): Promise<void> {
    return this.#onEntry(undefined, async (note, { id }) => {
      await this.#act(note, { act: 'change', entry: id, to }, `Changed and accepted: ${sentence(to)}.`);
      this.form.value = 'none';
      this.#lookOn();
    });
  }
  add(to: Entry): Promise<void> {
    return this.#onNote(async (note) => {
      await this.#act(note, { act: 'add', to }, `Added: ${sentence(to)}.`);
      this.form.value = 'none';
      this.looked.value = (this.note.value?.entries.length ?? 1) - 1;
    });
  }
  /** Accepts what is still open in the note and goes on to the next one that waits. */
  acceptAll(): Promise<void> {
    return this.#onNote(async (note) => {
      const open = note.entries.filter((e) => e.state === 'proposed').length;
      await this.#act(note, { act: 'accept-all' }, `Accepted ${counted(open, 'entry', 'entries')} of ${nameOf(note)}.`);
      this.#goOn();
    });
  }
  /** Puts the note aside, or takes it back. */
  setAside(): Promise<void> {
    return this.#onNote(async (note) => {
      const aside = !note.aside;
      await this.#act(note, { act: 'set-aside', aside }, `${aside ? 'Set aside' : 'Taken back'}: ${nameOf(note)}.`);
      if (aside) this.#goOn();
    });
  }
  /** Takes back the last act, in whichever note it was. */
  undo(): Promise<void> {
    return this.#queue(async () => {
      const id = this.#acted.at(-1) ?? (this.note.value?.canUndo ? this.note.value.id : undefined);
      if (!id) {
        this.told.value = 'There is nothing to take back.';
        return;
      }
      const { note } = await review(id, { act: 'undo' });
      this.#acted.pop();
      this.#put(note);
      this.#look(
        Math.max(
          0,
          this.notes.value.findIndex((one) => one.id === id),
        ),
      );
      this.told.value = `Taken back, in ${nameOf(note)}.`;
      void refreshStatus();
    });
  }

  async #act(note: NoteView, request: ReviewRequest, told: string): Promise<void> {
    const answer = await review(note.id, request);
    this.#acted.push(note.id);
    this.#put(answer.note);
    this.offer.value = answer.offer ?? this.offer.value;
    this.told.value = told;
    void refreshStatus();
  }
  #put(note: NoteView): void {
    const known = this.notes.value.some((one) => one.id === note.id);
    this.notes.value = known
      ? this.notes.value.map((one) => (one.id === note.id ? note : one))
      : [note, ...this.notes.value];
  }
  #look(at: number): void {
    this.at.value = at;
    this.form.value = 'none';
    this.pointed.value = undefined;
    const note = this.notes.value[at];
    this.looked.value = note ? firstLook(note) : 0;
  }
  /** To the next entry that is still open, below first, then from the top. */
  #lookOn(): void {
    const entries = this.note.value?.entries ?? [];
    const open = entries.flatMap((e, i) => (e.state === 'proposed' ? [i] : []));
    this.looked.value = open.find((i) => i > this.looked.value) ?? open[0] ?? this.looked.value;
  }
  /** To the next note that waits: behind this one first, then from the front; past the last when none does. */
  #goOn(): void {
    const open = this.notes.value.flatMap((note, i) => (note.state === 'waiting' ? [i] : []));
    this.#look(open.find((i) => i > this.at.value) ?? open[0] ?? this.notes.value.length);
  }

  #onNote(act: (note: NoteView) => Promise<void>): Promise<void> {
    return this.#queue(async () => {
      if (this.note.value) await act(this.note.value);
    });
  }
  #onEntry(
    index: number | undefined,
    act: (note: NoteView, entry: NoteView['entries'][number]) => Promise<void>,
  ): Promise<void> {
    return this.#onNote(async (note) => {
      if (index !== undefined) this.looked.value = index;
      const entry = note.entries[this.looked.value];
      if (entry) await act(note, entry);
    });
  }
  #queue(task: () => Promise<void>): Promise<void> {
    this.#turn = this.#turn.then(async () => {
      try {
        await task();
        this.trouble.value = undefined;
      } catch (error) {
        this.trouble.value = Trouble.of(error);
      }
    });
    return this.#turn;
  }
}
