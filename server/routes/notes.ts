/** Notes: taken in, listed, reviewed. */
import { type Kennel, type Note, type Season, seasonOf } from '../model.ts';
import type { House } from '../notes/house.ts';
import { takeIn } from '../notes/intake.ts';
import { type Correction, correctionsOf, count, offerFor } from '../notes/learning.ts';
import { Refusal } from '../notes/refusal.ts';
import { readDays, replaceNotes } from '../notes/reread.ts';
import { type Act, review } from '../notes/review.ts';
import { dayOf, doubtOf, stateOf } from '../notes/state.ts';
import { NotKeptError } from '../store/index.ts';
import { inOrder } from './derived.ts';
import { newRoutes } from './errors.ts';
import { getNote, getNotes, postNotes, postReview } from './notes-routes.ts';
import type { ErrorAnswer, Offer } from './schemas.ts';
import { runsIn, shownSeason, viewOf } from './view.ts';

export function notesRoutes(house: House) {
  const { store } = house;
  return newRoutes()
    .openapi(postNotes, async (c) => {
      const notes = await takeIn(house, c.req.valid('json').notes);
      const refused = notes.filter((note) => note.kept === 'no');
      // A note at fault by itself is told in its own answer; see the description of the call.
      if (refused.length === notes.length && refused.every((note) => note.status === 409))
        return c.json({ notes, ...error('conflict', refused[0]?.error ?? '') }, 409);
      if (refused.length === notes.length && refused.some((note) => note.status === 503)) {
        const first = refused.find((note) => note.status === 503);
        return c.json({ notes, ...error('not-kept', first?.error ?? '') }, 503);
      }
      return c.json({ notes }, 200);
    })
    .openapi(getNotes, (c) => {
      const { season, state = 'all', day, run, order = 'time', limit = 200, offset = 0 } = c.req.valid('query');
      const kept = store.season(season ?? seasonFor(house, { day, run }));
      const derived = runsIn(house, kept);
      let notes = inOrder(kept);
      if (run !== undefined) {
        const ids = new Set(derived.runs.find((r) => r.id === run)?.notes);
        if (ids.size === 0) throw new Refusal('not-found', 'There is no run of this id in the season.');
        notes = notes.filter((note) => ids.has(note.id));
      }
      if (day !== undefined) notes = notes.filter((note) => dayOf(note.at) === day);
      if (state !== 'all') notes = notes.filter((note) => stateOf(note) === state);
      if (order === 'newest') notes = [...notes].reverse();
      if (order === 'doubt')
        notes = notes
          .map((note) => ({ note, doubt: doubtOf(note) }))
          .sort((a, b) => b.doubt - a.doubt)
          .map(({ note }) => note);
      const kennel = store.kennel();
      const page = notes.slice(offset, offset + limit).map((note) => viewOf(note, kennel, derived));
      return c.json({ notes: page, total: notes.length }, 200);
    })
    .openapi(getNote, (c) => {
      const { season, note } = found(house, c.req.valid('param').id);
      return c.json({ note: viewOf(note, store.kennel(), runsIn(house, store.season(season))) }, 200);
    })
    .openapi(postReview, async (c) => {
      const id = c.req.valid('param').id.toLowerCase();
      const { season } = found(house, id);
      const done = await store.changeSeason(
        season,
        (now) => reviewIn(now, id, c.req.valid('json'), house),
        'The review',
      );
      const offer = await learn(house, done);
      const view = viewOf(done.note, store.kennel(), runsIn(house, store.season(season)));
      return c.json({ note: view, reread: done.reread, ...(offer ? { offer } : {}) }, 200);
    });
}

/** A day's season is the day's own, a run's the one its first note lies in; otherwise the season shown. */
function seasonFor(house: House, { day, run }: { day?: string; run?: string }): string {
  if (run !== undefined) return house.store.findNote(run.split('~')[0] ?? '')?.season ?? shownSeason(house);
  return day === undefined ? shownSeason(house) : seasonOf(day);
}

interface Reviewed {
  note: Note;
  /** Ids of later notes of the day whose reading came out differently now. */
  reread: string[];
  before: Correction[];
  after: Correction[];
}

/** The season after an act of review; the day's later notes that nobody has reviewed are read with the line-up it leaves. */
function reviewIn(season: Season, id: string, act: Act, house: House): [Season, Reviewed] {
  const kennel = house.store.kennel();
  const note = season.notes.find((n) => n.id === id);
  if (!note) throw new Refusal('not-found', 'There is no note of this id.');
  const next = review(note, act, { dogs: kennel.dogs, at: house.now(), newId: house.newId });
  const before = correctionsOf(note, kennel.dogs);
  if (next === note) return [season, { note, reread: [], before, after: before }];
  const changed = replaceNotes(season, new Map([[id, next]]));
  // From the next moment on: the note itself, undone to its first state, stays exactly as it was.
  const [after, reread] = readDays(changed, new Map([[dayOf(note.at), Date.parse(note.at) + 1]]), kennel, house);
  return [after, { note: next, reread, before, after: correctionsOf(next, kennel.dogs) }];
}

/** Counts the corrections of names that the act added or took back; an offer where one was made often enough. */
async function learn(house: House, { before, after }: Reviewed): Promise<Offer | undefined> {
  const added = after.filter((one) => !before.some((old) => old.dogId === one.dogId && old.heard === one.heard));
  if (count(house.store.kennel(), before, after) === house.store.kennel()) return undefined;
  try {
    return await house.store.changeKennel((kennel): [Kennel, Offer | undefined] => {
      const next = count(kennel, before, after);
      return [next, offerFor(next, added)];
    });
  } catch (error) {
    // The review itself is on the disk; a count that is not costs one more correction before the offer.
    if (error instanceof NotKeptError) return undefined;
    throw error;
  }
}

function found(house: House, id: string): { season: string; note: Note } {
  const found = house.store.findNote(id.toLowerCase());
  if (!found) throw new Refusal('not-found', 'There is no note of this id.');
  return found;
}

const error = (code: ErrorAnswer['error']['code'], message: string): ErrorAnswer => ({ error: { code, message } });
