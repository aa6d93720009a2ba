/** Runs: listed, opened, and the choices a person makes about them. */
import type { RunChoices, Season } from '../model.ts';
import type { House } from '../notes/house.ts';
import { Refusal } from '../notes/refusal.ts';
import { cut, dropDistance, join, move, setDistance } from '../notes/run-choices.ts';
import type { RunRecord } from '../records/types.ts';
import { type Derived, notesById } from './derived.ts';
import { newRoutes } from './errors.ts';
import { deleteDistance, getRun, getRuns, postCut, postJoin, postMove, putDistance } from './runs-routes.ts';
import { runsIn, shownSeason, viewOf } from './view.ts';

export function runsRoutes(house: House) {
  const { store } = house;
  return newRoutes()
    .openapi(getRuns, (c) => {
      const season = c.req.valid('query').season ?? shownSeason(house);
      return c.json({ runs: runsIn(house, store.season(season)).runs.toReversed() }, 200);
    })
    .openapi(getRun, (c) => {
      const { run, season, derived } = open(house, c.req.valid('param').id);
      const notes = notesById(season);
      const [before, after] = neighbours(derived, run);
      const views = run.notes.flatMap((id) => {
        const note = notes.get(id);
        return note ? [viewOf(note, store.kennel(), derived)] : [];
      });
      return c.json(
        { run, notes: views, ...(before ? { before: name(before) } : {}), ...(after ? { after: name(after) } : {}) },
        200,
      );
    })
    .openapi(postJoin, async (c) => {
      const run = await choose(house, c.req.valid('param').id, (choices, run, derived) => {
        const [before] = neighbours(derived, run);
        if (!before) throw new Refusal('conflict', 'There is no run before this one in the season to join it with.');
        return [join(choices, run), (after) => sharing(after, before.notes, run.notes)];
      });
      return c.json({ run: run.run }, 200);
    })
    .openapi(postCut, async (c) => {
      const note = c.req.valid('json').note.toLowerCase();
      const { run, derived } = await choose(house, c.req.valid('param').id, (choices, run) => {
        const earlier = run.notes.slice(0, run.notes.indexOf(note));
        return [cut(choices, run, note), (after) => !sharing(after, earlier, [note]) && heldBy(after, note)];
      });
      return c.json({ runs: derived.runs.filter((r) => r.notes.some((id) => run.notes.includes(id))) }, 200);
    })
    .openapi(postMove, async (c) => {
      const body = c.req.valid('json');
      const [note, toRunOf] = [body.note.toLowerCase(), body.toRunOf.toLowerCase()];
      const moved = await choose(house, c.req.valid('param').id, (choices, run, derived) => {
        const to = heldBy(derived, toRunOf, run.driver);
        if (!to) throw new Refusal('not-found', 'The other note is in no run of this season.');
        return [move(choices, run, note, to), (after) => sharing(after, to.notes, [note])];
      });
      return c.json({ run: heldBy(moved.derived, note, moved.run.driver) ?? moved.run }, 200);
    })
    .openapi(putDistance, async (c) => {
      const { run } = await choose(house, c.req.valid('param').id, (choices, run) => [
        setDistance(choices, run, { ...c.req.valid('json'), at: house.now() }),
        () => true,
      ]);
      return c.json({ run }, 200);
    })
    .openapi(deleteDistance, async (c) => {
      const { run } = await choose(house, c.req.valid('param').id, (choices, run) => [
        dropDistance(choices, run),
        () => true,
      ]);
      return c.json({ run }, 200);
    });
}

type Choice = (
  choices: RunChoices,
  run: RunRecord,
  derived: Derived,
) => [RunChoices, worked: (after: Derived) => unknown];

/**
 * Makes a choice about a run, and answers the run and all runs as they came out.
 * @throws Refusal conflict when the runs did not come out as the choice meant them; nothing is kept then.
 */
async function choose(house: House, id: string, choice: Choice): Promise<{ run: RunRecord; derived: Derived }> {
  const { season } = open(house, id);
  await house.store.changeSeason(
    season.season,
    (now): [Season, null] => {
      const { run, derived } = open(house, id, now);
      const [runs, worked] = choice(now.runs, run, derived);
      if (runs === now.runs) return [now, null];
      const next = { ...now, runs };
      if (!worked(runsIn(house, next)))
        throw new Refusal('conflict', 'These notes can’t be put together that way; the runs were left as they were.');
      return [next, null];
    },
    'The change of the runs',
  );
  return open(house, id);
}

interface Open {
  run: RunRecord;
  season: Season;
  derived: Derived;
}

/** The run of this id; after a join, a cut or a note that came in late, the one that holds the note it was named by. */
function open(house: House, id: string, given?: Season): Open {
  const [note = '', driver] = id.split('~');
  const name = house.store.findNote(note.toLowerCase())?.season;
  const season = given ?? (name === undefined ? undefined : house.store.season(name));
  const derived = season && runsIn(house, season);
  const run = derived && (derived.runs.find((r) => r.id === id) ?? heldBy(derived, note.toLowerCase(), driver));
  if (!season || !derived || !run) throw new Refusal('not-found', 'There is no run of this id.');
  return { run, season, derived };
}

/** The run that holds a note; of two teams in one note the driver's own, else the first. */
function heldBy(derived: Derived, note: string, driver?: string): RunRecord | undefined {
  const runs = derived.runs.filter((run) => run.notes.includes(note));
  return runs.find((run) => run.driver === driver) ?? runs[0];
}

/** Whether one run holds notes of both. */
function sharing(derived: Derived, some: readonly string[], others: readonly string[]): boolean {
  return derived.runs.some(
    (run) => run.notes.some((id) => some.includes(id)) && run.notes.some((id) => others.includes(id)),
  );
}

/** The runs of the same team before and after in time. */
function neighbours(derived: Derived, run: RunRecord): [RunRecord | undefined, RunRecord | undefined] {
  const same = derived.runs.filter((r) => r.driver === run.driver);
  const at = same.indexOf(run);
  return [same[at - 1], same[at + 1]];
}

const name = ({ id, day, driver }: RunRecord) => ({ id, day, ...(driver ? { driver } : {}) });
