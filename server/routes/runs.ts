/** Runs: listed, opened, and the choices a person makes about them. */
import { ABOUT_WIND_CHILL, chillOf, frostbiteSentence } from '../load/index.ts';
import type { RunChoices, Season } from '../model.ts';
import type { House } from '../notes/house.ts';
import { Refusal } from '../notes/refusal.ts';
import { cut, dropDistance, join, move, setDistance } from '../notes/run-choices.ts';
import { dayOf } from '../notes/state.ts';
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
      const { id } = c.req.valid('param');
      const season = store.season(seasonOfRun(house, id));
      const derived = runsIn(house, season);
      const run = theRun(derived, id);
      const notes = notesById(season);
      const [before, after] = neighbours(derived, run);
      const views = run.notes.flatMap((id) => {
        const note = notes.get(id);
        return note ? [viewOf(note, store.kennel(), derived)] : [];
      });
      return c.json(
        {
          run,
          notes: views,
          ...(before ? { before: name(before) } : {}),
          ...(after ? { after: name(after) } : {}),
          ...chillIn(run),
        },
        200,
      );
    })
    .openapi(postJoin, async (c) => {
      const { id } = c.req.valid('param');
      const derived = await choose(house, id, (choices, run, derived) => {
        const [before] = neighbours(derived, run, spoken);
        if (!before) throw new Refusal('conflict', 'There is no run of this driver before this one to join it with.');
        if (daysBetween(before.day, run.day) > 1)
          throw new Refusal(
            'conflict',
            `The run before this one was on ${before.day}; only runs of one day, or of two that follow each other, can be joined.`,
          );
        return [join(choices, run), (after) => sharing(after, before.notes, run.notes)];
      });
      return c.json({ run: theRun(derived, id) }, 200);
    })
    .openapi(postCut, async (c) => {
      const note = c.req.valid('json').note.toLowerCase();
      let held: readonly string[] = [];
      const derived = await choose(house, c.req.valid('param').id, (choices, run) => {
        held = run.notes;
        const earlier = run.notes.slice(0, run.notes.indexOf(note));
        return [cut(choices, run, note), (after) => !sharing(after, earlier, [note])];
      });
      return c.json({ runs: derived.runs.filter((run) => run.notes.some((id) => held.includes(id))) }, 200);
    })
    .openapi(postMove, async (c) => {
      const body = c.req.valid('json');
      const [note, toRunOf] = [body.note.toLowerCase(), body.toRunOf.toLowerCase()];
      const choice: Choice = (choices, run, derived) => {
        const to = heldBy(derived, toRunOf, run.driver);
        if (!to) throw new Refusal('not-found', 'The other note is in no run of this season.');
        return [move(choices, run, note, to), (after) => sharing(after, to.notes, [note])];
      };
      const derived = await choose(house, c.req.valid('param').id, choice, note);
      return c.json({ run: theRun(derived, note) }, 200);
    })
    .openapi(putDistance, async (c) => {
      const { id } = c.req.valid('param');
      const distance = { ...c.req.valid('json'), at: house.now() };
      const derived = await choose(house, id, (choices, run) => [setDistance(choices, run, distance), () => true]);
      return c.json({ run: theRun(derived, id) }, 200);
    })
    .openapi(deleteDistance, async (c) => {
      const { id } = c.req.valid('param');
      const derived = await choose(house, id, (choices, run) => [dropDistance(choices, run), () => true]);
      return c.json({ run: theRun(derived, id) }, 200);
    });
}

/** What a choice needs of a run; a note that is in no run stands for itself. */
type Chosen = Pick<RunRecord, 'id' | 'day' | 'driver' | 'notes'>;
type Choice = (choices: RunChoices, run: Chosen, derived: Derived) => [RunChoices, worked: (after: Derived) => unknown];

/**
 * Makes a choice about a run, and answers the season's runs as they came out. `note` may be named in place of a run, where
 * it is in none.
 * @throws Refusal conflict when the runs did not come out as the choice meant them; nothing is kept then.
 */
async function choose(house: House, id: string, choice: Choice, note?: string): Promise<Derived> {
  const season = seasonOfRun(house, id);
  await house.store.changeSeason(
    season,
    (now): [Season, null] => {
      const derived = runsIn(house, now);
      const [runs, worked] = choice(now.runs, runFor(now, derived, id, note), derived);
      if (runs === now.runs) return [now, null];
      const next = { ...now, runs };
      if (!worked(runsIn(house, next)))
        throw new Refusal('conflict', 'These notes can’t be put together that way; the runs were left as they were.');
      return [next, null];
    },
    'The change of the runs',
  );
  return runsIn(house, house.store.season(season));
}

function runFor(season: Season, derived: Derived, id: string, note: string | undefined): Chosen {
  const run = runOf(derived, id);
  if (run) return run;
  const alone = note === id.toLowerCase() ? notesById(season).get(note) : undefined;
  if (!alone) throw new Refusal('not-found', 'There is no run of this id.');
  return { id: note as string, day: dayOf(alone.at), notes: [alone.id], ...(alone.by ? { driver: alone.by } : {}) };
}

/** @throws Refusal not-found */
function theRun(derived: Derived, id: string): RunRecord {
  const run = runOf(derived, id);
  if (!run) throw new Refusal('not-found', 'There is no run of this id.');
  return run;
}

/** A run is named by a note, and lies in the season of that note. */
function seasonOfRun(house: House, id: string): string {
  const found = house.store.findNote((id.split('~')[0] as string).toLowerCase());
  if (!found) throw new Refusal('not-found', 'There is no run of this id.');
  return found.season;
}

/** The run of this id; after a join, a cut or a note that came in late, the one that holds the note it was named by. */
function runOf(derived: Derived, id: string): RunRecord | undefined {
  const [note = '', driver] = id.split('~');
  return derived.runs.find((run) => run.id === id) ?? heldBy(derived, note.toLowerCase(), driver);
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

/** The runs of the same driver before and after in time. */
function neighbours(
  derived: Derived,
  run: Pick<RunRecord, 'id' | 'driver'>,
  which: (run: RunRecord) => boolean = () => true,
): [RunRecord | undefined, RunRecord | undefined] {
  const same = derived.runs.filter((r) => r.id === run.id || (r.driver === run.driver && which(r)));
  const at = same.findIndex((r) => r.id === run.id);
  return [same[at - 1], same[at + 1]];
}

/** A run its driver speaks of, not one told of in another’s notes: only these are put together from notes. */
const spoken = (run: RunRecord) => !run.id.includes('~');

const daysBetween = (a: string, b: string) => Math.abs(Date.parse(b) - Date.parse(a)) / 86_400_000;

function chillIn({ celsius, windMetresPerSecond }: RunRecord) {
  const felt = chillOf(celsius, windMetresPerSecond);
  if (!felt) return {};
  const frostbite = frostbiteSentence(felt.chill);
  return { windChill: { ...felt, ...(frostbite ? { frostbite } : {}), about: ABOUT_WIND_CHILL } };
}

const name = ({ id, day, driver }: RunRecord) => ({ id, day, ...(driver ? { driver } : {}) });
