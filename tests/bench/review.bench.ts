/**
 * What one more review costs, from the notes on: ten seasons of 60 dogs are kept as worked out, one entry of one note is
 * accepted or taken back, and records, load and watch of every dog are asked for. As a ratio to a plain pass over the same
 * data in the same process (each entry of each note looked at, each dog's metres added to its day), and to working
 * everything out from the notes.
 */
import type { Entry } from '../../grammar/entry.ts';
import { dayNumber, dayOf, loadOf } from '../../server/load/index.ts';
import type { Dog, Note, Season, Settings } from '../../server/model.ts';
import { derive } from '../../server/routes/derived.ts';
import { deriveAll } from '../../server/routes/rederive.ts';
import { keeper, type SeasonRecords, watchOf } from '../../server/watch/index.ts';
import type { Bench } from './row.ts';

const SEASONS = 10;
const TEAMS = 5;
const TEAM = 12;
const RUN_DAYS = 150;
const ON = '2027-03-30';
const ROUNDS = 9;
const SETTINGS: Settings = { kennel: '', units: 'imperial', runGapHours: 5, silenceDays: 14 };
const uuid = (n: number) => `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
const NAMES = Array.from({ length: TEAMS * TEAM }, (_, i) => `Dog ${i + 1}`);
const DOGS: Dog[] = NAMES.map((name, i) => ({
  id: uuid(9_000_000 + i),
  name,
  sex: i % 2 ? 'M' : 'F',
  aliases: [],
  formerNames: [],
  heard: [],
  retired: false,
}));

/** The figures; half a minute, most of it the first working out. */
export function bench(): Bench[] {
  const seasons = tenSeasons();
  const notes = seasons.reduce((sum, season) => sum + season.notes.length, 0);
  const keep = keeper();
  const answer = (records: readonly SeasonRecords[]) => {
    const { load, watch } = keep(records);
    loadOf(load, NAMES, ON);
    watchOf(watch, load, NAMES, { on: ON }, (one) => one.state === 'open' || one.season === '2026-27');
  };
  const records = seasons.map((season) => derive(season, DOGS, SETTINGS));
  const plain = least(() => plainPass(seasons, records));
  const scratch = least(() => {
    const all = seasons.map((season) => deriveAll(season, DOGS, SETTINGS));
    const fresh = keeper()(all);
    loadOf(fresh.load, NAMES, ON);
    watchOf(fresh.watch, fresh.load, NAMES, { on: ON });
  }, 2);

  answer(records);
  let last = seasons.at(-1) as Season;
  let turn = 0;
  const review = least(() => {
    last = reviewed(last, turn++);
    answer([...records.slice(0, -1), derive(last, DOGS, SETTINGS)]);
  });
  const again = least(() => answer([...records.slice(0, -1), derive(last, DOGS, SETTINGS)]));

  const runs = records.reduce((sum, one) => sum + one.runs.length, 0);
  const size = `${notes} notes, ${runs} runs`;
  const row = (name: string, ms: number, beside: number, what: string): Bench => ({
    name,
    ratio: ms / beside,
    detail: `${ms.toFixed(1)} ms beside ${beside.toFixed(1)} ms for ${what}; ${size}`,
  });
  return [
    row('one entry accepted: records, load and watch of all dogs', review, plain, 'the plain pass'),
    row(
      'one entry accepted, beside everything from the notes',
      review,
      scratch,
      'records, load and watch from scratch',
    ),
    row('load and watch asked for again, nothing changed', again, plain, 'the plain pass'),
  ];
}

/** What any answer must do at least: look at each entry of each note, and add each dog's metres to its day. */
function plainPass(seasons: readonly Season[], records: readonly SeasonRecords[]): number {
  let accepted = 0;
  for (const season of seasons)
    for (const note of season.notes) for (const entry of note.entries) if (entry.state === 'accepted') accepted++;
  const days = new Map<string, Map<string, number>>();
  for (const { runs } of records)
    for (const run of runs)
      for (const { dog, metres } of run.dogs) {
        let mine = days.get(dog);
        if (!mine) {
          mine = new Map();
          days.set(dog, mine);
        }
        mine.set(run.day, (mine.get(run.day) ?? 0) + (metres ?? 0));
      }
  return accepted + days.size;
}

/** The season after one more act of review: a finding of one note is accepted, or taken back. */
function reviewed(season: Season, turn: number): Season {
  const findings = season.notes.flatMap((note, i) => (note.entries[0]?.entry.kind === 'finding' ? [i] : []));
  const at = findings[(turn * 37) % findings.length] as number;
  const notes = [...season.notes];
  const note = notes[at] as Note;
  notes[at] = {
    ...note,
    entries: note.entries.map((one) => ({ ...one, state: one.state === 'accepted' ? 'proposed' : 'accepted' })),
  };
  return { ...season, notes };
}

/** The shortest of some rounds after one that is not counted, in milliseconds. */
function least(work: () => unknown, rounds = ROUNDS): number {
  work();
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < rounds; i++) {
    const start = performance.now();
    work();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

/** Invented seasons: five drivers with twelve dogs each on 150 days, four notes a run. */
function tenSeasons(): Season[] {
  const parts = ['wrist', 'shoulder', 'web', 'pad'] as const;
  const signs = ['sore', 'lame', 'split', 'any'] as const;
  let id = 0;
  return Array.from({ length: SEASONS }, (_, s) => {
    const year = 2017 + s;
    const first = dayNumber(`${year}-10-01`);
    const notes: Note[] = [];
    for (let i = 0; i < RUN_DAYS; i++) {
      const day = dayOf(first + Math.floor((i * 180) / RUN_DAYS));
      for (let team = 0; team < TEAMS; team++) {
        const dogs = NAMES.slice(team * TEAM, (team + 1) * TEAM);
        const add = (clock: string, entries: Entry[]) => {
          const at = `${day}T${clock}:00-09:00`;
          notes.push({
            ...{ id: uuid(++id), text: `Note ${id} of an invented season`, at, by: `Driver ${team}`, received: at },
            ...{ aside: false, unknownNames: [], history: [] },
            entries: entries.map((entry) => ({ id: uuid(20_000_000 + ++id), entry, from: 'read', state: 'accepted' })),
          });
        };
        const n = i * TEAMS + team + s;
        add(
          '08:00',
          (['lead', 'swing', 'team', 'wheel'] as const).map((position, p) => ({
            ...{ kind: 'hitch', dogs: dogs.slice(p * 3, p * 3 + 3), position },
          })),
        );
        add('09:30', [
          { kind: 'intake', dogs: [dogs[n % TEAM] as string], what: 'snack', took: n % 3 ? 'all' : 'none' },
        ]);
        add('10:00', [
          {
            ...{ kind: 'finding', dogs: [dogs[(n * 7) % TEAM] as string], side: n % 2 ? 'left' : 'right' },
            ...{ part: parts[n % parts.length], sign: signs[n % signs.length] ?? 'any' },
            ...(n % 4 === 3 ? { assertion: 'resolved' } : {}),
          },
        ]);
        add('11:00', [{ kind: 'distance', dogs: [], measure: 'total', value: 8 + (n % 30), unit: 'mi' }]);
      }
    }
    return {
      ...{ schema: 1, season: `${year}-${String((year + 1) % 100).padStart(2, '0')}`, notes },
      runs: { cutBefore: [], joinBefore: [], moved: [], distances: [] },
    };
  });
}
