/**
 * The choices a person makes about runs, as pure functions over what is kept of them. Choices are keyed by notes, because
 * runs are computed: a choice says "this note goes on with the run before it", and the runs come out accordingly.
 */
import type { RunChoices } from '../model.ts';
import type { RunRecord } from '../records/types.ts';
import { fold } from './names.ts';
import { Refusal } from './refusal.ts';

type Distance = RunChoices['distances'][number];
/** What of a run a choice needs. */
type Run = Pick<RunRecord, 'id' | 'notes' | 'driver'>;

const with_ = (ids: readonly string[], id: string) => (ids.includes(id) ? [...ids] : [...ids, id]);
const without = (ids: readonly string[], id: string) => ids.filter((other) => other !== id);

/** The run goes on with the one before it. */
export function join(choices: RunChoices, run: Run): RunChoices {
  const first = anchorOf(choices, run);
  return {
    ...choices,
    cutBefore: without(choices.cutBefore, first),
    joinBefore: with_(choices.joinBefore, first),
  };
}

/**
 * The note starts a new run; a note that had been moved into this run goes back to where it was said first.
 * @throws Refusal not-found when the note is not in the run, conflict when the run starts with it already.
 */
export function cut(choices: RunChoices, run: Run, note: string): RunChoices {
  if (!run.notes.includes(note)) throw new Refusal('not-found', 'That note is not in this run.');
  if (run.notes[0] === note) throw new Refusal('conflict', 'The run starts with that note already.');
  return {
    ...choices,
    cutBefore: with_(choices.cutBefore, note),
    joinBefore: without(choices.joinBefore, note),
    moved: choices.moved.filter((move) => move.note !== note),
  };
}

/**
 * The note belongs to the run that holds another one. It is tied to a note of that run that stands there by itself, so
 * that two moves can never chase each other.
 * @throws Refusal not-found when the note is not in the run, conflict when both are one run.
 */
export function move(choices: RunChoices, run: Run, note: string, to: Run): RunChoices {
  if (!run.notes.includes(note)) throw new Refusal('not-found', 'That note is not in this run.');
  if (to.notes.includes(note)) throw new Refusal('conflict', 'That note is in that run already.');
  return {
    ...choices,
    cutBefore: without(choices.cutBefore, note),
    joinBefore: without(choices.joinBefore, note),
    // Notes that had been tied to the one that goes now are tied to what stays, so that they stay too.
    moved: [
      ...choices.moved.flatMap((old) => {
        if (old.note === note) return [];
        if (old.toRunOf !== note) return [old];
        const stays = run.notes.find((id) => id !== note && !choices.moved.some((m) => m.note === id));
        return stays ? [{ ...old, toRunOf: stays }] : [old];
      }),
      { note, toRunOf: anchorOf(choices, to) },
    ],
  };
}

/** A length set by hand, in place of one set before. */
export function setDistance(
  choices: RunChoices,
  run: Run,
  distance: Pick<Distance, 'value' | 'unit' | 'why' | 'at'>,
): RunChoices {
  const { distances } = dropDistance(choices, run);
  const { why, ...rest } = distance;
  const set: Distance = {
    note: anchorOf(choices, run),
    ...(run.driver ? { driver: run.driver } : {}),
    ...rest,
    ...(why ? { why } : {}),
  };
  return { ...choices, distances: [...distances, set] };
}

/** The length set by hand taken back; what was said counts again. */
export function dropDistance(choices: RunChoices, run: Run): RunChoices {
  const ofRun = (d: Distance) => run.notes.includes(d.note) && fold(d.driver ?? '') === fold(run.driver ?? '');
  return choices.distances.some(ofRun)
    ? { ...choices, distances: choices.distances.filter((d) => !ofRun(d)) }
    : choices;
}

/** The first note that is in the run by itself and was not moved there. */
function anchorOf(choices: RunChoices, run: Run): string {
  const anchor = run.notes.find((id) => !choices.moved.some((move) => move.note === id)) ?? run.notes[0];
  if (!anchor) throw new Refusal('conflict', 'The run holds no note.');
  return anchor;
}
