/**
 * Search over 100,000 notes of ten seasons and 60 dogs: each query as a ratio to a plain pass over the same notes that asks
 * each text with includes(); and how long the building of the index keeps others waiting.
 */

import type { Dog, Note, Season } from '../../server/model.ts';
import { runsOf } from '../../server/records/index.ts';
import { type Ground, IndexKeeper, search, understand } from '../../server/search/index.ts';
import type { Bench } from './row.ts';

const SEASONS = 10;
const NOTES = 10_000;
const ROUNDS = 7;
const SYLLABLES = ['ka', 'lo', 'mi', 'ra', 'ten', 'vo', 'shu', 'bel', 'dar', 'ni'];
const uuid = (n: number) => `00000000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
const NAMES = Array.from({ length: 60 }, (_, i) => {
  const name = [SYLLABLES[i % 10], SYLLABLES[(i * 7 + 3) % 10], SYLLABLES[Math.floor(i / 10)]].join('');
  return `${name[0]?.toUpperCase()}${name.slice(1)}${i}`.replace(/\d+$/, i % 2 ? 'ek' : 'ash');
});
const DOGS: Dog[] = NAMES.map((name, i) => ({
  id: uuid(9_000_000 + i),
  name,
  sex: i % 2 ? 'M' : 'F',
  aliases: [],
  formerNames: [],
  heard: [],
  retired: false,
}));
const SETTINGS = { kennel: '', units: 'imperial' as const, runGapHours: 5, silenceDays: 14 };
const QUERIES = [
  'DOG sore wrist',
  'who lost booties on ice in january',
  'left front splits since the new year',
  'refused snack',
  `${NAMES[22]} wheel`,
  'coughing',
  'moose',
  'mooose by the cabbin',
  'trail',
  'moon over the river in february',
  'lame in lead colder than minus 20',
  `${NAMES[3]}`,
  'wrist',
];

/** The figures; a minute or so, most of it the building. */
export async function bench(): Promise<Bench[]> {
  const seasons = tenSeasons();
  const notes = seasons.flatMap((season) => season.notes);
  const shelf = new Map(seasons.map((season) => [season.season, season]));
  const store = { seasonNames: () => [...shelf.keys()], season: (name: string) => shelf.get(name) as Season };

  const keeper = new IndexKeeper(store);
  const building = performance.now();
  const held = await longestHold(() => keeper.ready());
  const built = performance.now() - building;

  const ground = groundOf(keeper, shelf);
  for (const season of shelf.keys()) ground.runsOf(season);
  const context = { dogs: DOGS, people: [], lineup: [], units: 'imperial' as const };
  const plain = await time(() => {
    let n = 0;
    for (const note of notes) if (note.text.includes('wrist') && note.text.includes('sore')) n++;
    return n;
  });
  const rows: Bench[] = [];
  const sore = notes.find(({ text }) => /sore \w+ wrist/.test(text))?.text.split(' ')[0] ?? '';
  for (const q of QUERIES.map((one) => one.replace('DOG', sore))) {
    let found = 0;
    const ms = await time(() => {
      const { query } = understand(q, context, { today: '2027-03-15', season: '2026-27' });
      const result = search(query, ground, store.seasonNames(), { limit: 100, offset: 0 });
      found = Math.max(result.hitsInAll, result.notesInAll);
    });
    rows.push(row(`search “${q}” in 100,000 notes`, ms, plain, `, ${found} found`));
  }

  // One note reviewed: the season is another object, its other notes are the same.
  let turn = 0;
  const review = await time(async () => {
    const season = shelf.get('2026-27') as Season;
    const at = turn++ % season.notes.length;
    const list = [...season.notes];
    const old = list[at] as Note;
    list[at] = { ...old, entries: old.entries.map((e) => ({ ...e, state: 'removed' as const })) };
    shelf.set('2026-27', { ...season, notes: list });
    await keeper.ready();
  });
  rows.push(row('index brought up to date after one review', review, plain, ''));
  rows.push({
    name: 'index of 100,000 notes built in the background',
    ratio: built / plain,
    detail: `${built.toFixed(0)} ms in slices; the longest that others waited was ${held.toFixed(1)} ms; heap ${(process.memoryUsage().heapUsed / 1e6).toFixed(0)} MB with the notes`,
  });
  return rows;
}

const row = (name: string, ms: number, plain: number, more: string): Bench => ({
  name,
  ratio: ms / plain,
  detail: `${ms.toFixed(1)} ms beside ${plain.toFixed(1)} ms for a plain pass with includes()${more}`,
});

/** The longest time between two turns of the event loop while `work` is under way, in milliseconds. */
async function longestHold(work: () => Promise<void>): Promise<number> {
  let longest = 0;
  let last = performance.now();
  let done = false;
  const tick = () => {
    const now = performance.now();
    longest = Math.max(longest, now - last);
    last = now;
    if (!done) setImmediate(tick);
  };
  setImmediate(tick);
  await work();
  done = true;
  return longest;
}

/** The shortest of some rounds after one that is not counted, in milliseconds. */
async function time(work: () => unknown): Promise<number> {
  await work();
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ROUNDS; i++) {
    const start = performance.now();
    await work();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

function groundOf(keeper: IndexKeeper, shelf: Map<string, Season>): Ground {
  const kept = new Map<string, ReturnType<Ground['runsOf']>>();
  return {
    postings: keeper.postings,
    words: keeper.words,
    dogs: DOGS,
    runsOf: (name) => {
      let one = kept.get(name);
      if (!one) {
        const { runs } = runsOf(shelf.get(name) as Season, DOGS, SETTINGS);
        const ofNote = new Map<string, string[]>();
        for (const run of runs) for (const id of run.notes) ofNote.set(id, [...(ofNote.get(id) ?? []), run.id]);
        one = { runs, ofNote };
        kept.set(name, one);
      }
      return one;
    },
  };
}

/** Invented seasons: five runs a day by turns of twelve dogs, a start, findings and asides, an end with the distance. */
function tenSeasons(): Season[] {
  const parts = ['wrist', 'shoulder', 'web', 'pad', 'foot'] as const;
  const signs = ['sore', 'lame', 'split', 'swollen', 'stiff', 'any'] as const;
  const asides = [
    'the moon came up over the river and nobody said a word',
    'met a moose on the trail by the old cabin and waited it out',
    'northern lights all the way home, cold but quiet',
    'new lead worked well, tried the long loop round the lake',
    'checked the trail markers and turned back at the creek',
  ];
  return Array.from({ length: SEASONS }, (_, s) => {
    const year = 2017 + s;
    const notes: Note[] = [];
    for (let n = 0; n < NOTES; n++) {
      const day = new Date(Date.UTC(year, 9, 1 + Math.floor(n / 60))).toISOString().slice(0, 10);
      const turn = n % 10;
      const team = Math.floor(n / 10) % 5;
      const dog = DOGS[team * 12 + ((Math.floor(n / 50) + s) % 12)] as Dog;
      const hour = String(8 + Math.floor((n % 60) / 10)).padStart(2, '0');
      const at = `${day}T${hour}:${String(turn * 5).padStart(2, '0')}:00-09:00`;
      const m = Math.floor(n / 10) * 31 + turn;
      const part = parts[(m + s) % parts.length] as (typeof parts)[number];
      const sign = signs[(Math.floor(m / 5) + s) % signs.length] as (typeof signs)[number];
      const side = m % 2 ? ('left' as const) : ('right' as const);
      const name = dog.name;
      const by = team ? `Driver ${team}` : undefined;
      const told: [string, Note['entries'][number]['entry'][]][] = [
        [
          `${DOGS.slice(team * 12, team * 12 + 12)
            .map((d) => d.name)
            .join(', ')} in the team, glare ice`,
          [
            ...(['lead', 'swing', 'team', 'wheel'] as const).map((position, i) => ({
              kind: 'hitch' as const,
              dogs: DOGS.slice(team * 12 + i * 3, team * 12 + i * 3 + 3).map((d) => d.name),
              position,
            })),
            { kind: 'trail', dogs: [], surface: n % 3 ? 'icy' : 'hard' },
            { kind: 'temperature', dogs: [], value: -30 + (n % 40), unit: 'F' },
          ],
        ],
        [
          `${name} has a ${sign} ${side} ${part}, kept an eye on it`,
          [{ kind: 'finding', dogs: [name], part, side, sign, ...(n % 7 ? {} : { assertion: 'absent' as const }) }],
        ],
        [
          `${name} would not touch the snack`,
          [{ kind: 'intake', dogs: [name], what: 'snack', took: n % 3 ? 'none' : 'all' }],
        ],
        [
          `${name} lost a bootie, ${side} front`,
          [{ kind: 'booties', dogs: [name], state: 'lost', paws: [side === 'left' ? 'LF' : 'RF'] }],
        ],
        [asides[Math.floor(n / 10) % asides.length] as string, []],
        [`Salve on ${name}'s ${part}`, [{ kind: 'care', dogs: [name], act: 'ointment', part }]],
        [
          `${name} coughing after the climb`,
          [{ kind: 'finding', dogs: [name], sign: n % 11 ? 'licking' : 'coughing' }],
        ],
        [`${name} pulled hard all day`, [{ kind: 'attitude', dogs: [name], manner: 'strong' }]],
        [`${asides[(Math.floor(n / 10) + 2) % asides.length]}, note ${n}`, []],
        [
          `Back in the yard, ${10 + (n % 30)} miles`,
          [{ kind: 'distance', dogs: [], measure: 'total', value: 10 + (n % 30), unit: 'mi' }],
        ],
      ];
      const [text, entries] = told[turn] as (typeof told)[number];
      notes.push({
        id: uuid(s * NOTES + n),
        text,
        at,
        ...(by ? { by } : {}),
        received: at,
        aside: false,
        entries: entries.map((entry, i) => ({
          id: uuid(20_000_000 + (s * NOTES + n) * 10 + i),
          entry,
          from: 'read' as const,
          state: n % 50 === 0 ? ('proposed' as const) : ('accepted' as const),
        })),
        unknownNames: [],
        history: [],
      });
    }
    return {
      schema: 1,
      season: `${year}-${String((year + 1) % 100).padStart(2, '0')}`,
      notes,
      runs: { cutBefore: [], joinBefore: [], moved: [], distances: [] },
    };
  });
}
