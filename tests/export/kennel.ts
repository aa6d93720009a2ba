/** Invented kennels for the export's tests: a small one with awkward texts, and a large one of ten seasons. */
import type { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { unzipSync } from 'fflate';
import type { Entry } from '../../grammar/entry.ts';
import type { Source } from '../../server/export/season-data.ts';
import { dayNumber, dayOf } from '../../server/load/index.ts';
import { type Dog, type Kennel, type Note, type Season, settingsSchema } from '../../server/model.ts';
import { dog, finding, hitch, id, intake, note, season, total } from '../records/build.ts';

export const OPTIONS = { until: '2027-04-30', at: new Date('2027-04-30T18:00:00Z'), version: '0.0.0-test' };

export function kennelOf(dogs: Dog[], more: Partial<Kennel> = {}): Kennel {
  return {
    schema: 1,
    dogs,
    people: [],
    settings: settingsSchema.parse({ kennel: 'Hollow Spruce' }),
    learned: [],
    ...more,
  };
}

export function sourceOf(kennel: Kennel, seasons: Season[]): Source {
  return {
    kennel,
    seasonNames: () => seasons.map((one) => one.season).sort(),
    season: (name) => seasons.find((one) => one.season === name) ?? { ...season([]), season: name },
  };
}

/** Texts that break careless exports: what a spreadsheet would run, line breaks, quotes, other writing. */
export const AWKWARD = [
  '=HYPERLINK("http://example.invalid","Juniper")',
  '+1 for Moss',
  '-18 and glare ice',
  '@SUM(A1:A9)',
  '\tindented',
  '\rreturned',
  " '=twice",
  "'=1+1",
  '＝1+1',
  'a "quoted" word, and a comma; and a semicolon',
  'two\nlines',
  'two\r\nlines',
  'déjà vu 犬 🐕',
  ' spaces round it ',
  'x_x000D_y',
  '\u0001\u0000 bell',
  "'only quoted'",
];

/** A season whose notes hold the awkward texts, with two runs in it. */
export function awkward(): { kennel: Kennel; season: Season } {
  const dogs = [
    dog('Juniper', { id: id(101), aliases: ['=June', "O'Juni"], born: '2021-05-04' }),
    dog('Moss', { id: id(102), sex: 'M', formerNames: ['Mossy, the "loud"'] }),
    dog('Otter', { id: id(103), sex: 'M', retired: true }),
  ];
  const notes: Note[] = AWKWARD.map((text, i) =>
    note(`2026-11-${String(i + 2).padStart(2, '0')}T09:00`, [{ kind: 'remark', dogs: [], text }], {
      text,
      by: text.trim() || 'Wren',
    }),
  );
  notes.push(
    note('2026-12-01T10:00', [
      hitch(['Juniper', 'Moss'], 'lead'),
      total(20),
      { kind: 'finding', dogs: ['Juniper'], part: 'wrist', side: 'left', sign: 'sore', severity: 'mild' },
      { kind: 'intake', dogs: ['Moss'], what: 'snack', took: 'none', item: '=fish' },
      { kind: 'temperature', dogs: [], value: -18, unit: 'F' },
      { kind: 'booties', dogs: ['Moss'], state: 'lost', paws: ['LF', 'RH'] },
    ]),
    note('2026-12-03T10:00', [hitch(['Moss'], 'lead'), total(8), finding(['Fennel'], 'lame')]),
    note('2026-12-04T18:00', [
      finding(['Juniper', 'Moss'], 'any', { assertion: 'absent' }),
      intake(['Juniper'], 'meal'),
    ]),
  );
  return { kennel: kennelOf(dogs), season: season(notes) };
}

const TEAM = 12;

/** A season of so many dogs in teams of twelve: two notes a team and run day, some 25 entries. */
export function synthetic(name: string, dogs: number, runDays: number): Season {
  const first = dayNumber(`${name.slice(0, 4)}-10-01`);
  const notes: Note[] = [];
  for (let i = 0; i < runDays; i++)
    for (let team = 0; team * TEAM < dogs; team++) {
      const names = Array.from({ length: Math.min(TEAM, dogs - team * TEAM) }, (_, k) => dogName(team * TEAM + k));
      const day = dayOf(first + i);
      const driver = `Driver ${team + 1}`;
      const by = { by: driver };
      const told: Entry[] = names.map((one) => ({
        kind: 'intake',
        dogs: [one],
        what: 'snack',
        took: 'all',
        item: 'fish',
      }));
      notes.push(
        note(
          `${day}T09:00`,
          [...names.map((one) => hitch([one], 'team')), finding([names[i % names.length] as string])],
          by,
        ),
        note(
          `${day}T12:00`,
          [...told, total(10 + ((i + team) % 20)), { kind: 'trail', dogs: [], surface: 'hard' }],
          by,
        ),
      );
    }
  return { ...season(notes), season: name };
}
export const dogName = (n: number) => `Dog ${n + 1}`;
export const manyDogs = (n: number) => Array.from({ length: n }, (_, i) => dog(dogName(i), { id: id(9000 + i) }));

/** The files of an archive, read by another library than the one that wrote it. */
export async function filesIn(stream: Readable): Promise<Record<string, Buffer>> {
  const files = unzipSync(new Uint8Array(await buffer(stream)));
  return Object.fromEntries(Object.entries(files).map(([name, bytes]) => [name, Buffer.from(bytes)]));
}
