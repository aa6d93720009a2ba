/** The tables of what is kept: dogs, notes, entries. */
import { ASSERTIONS, type Entry, entrySchema } from '../../grammar/entry.ts';
import type { Dog, Note, ReviewedEntry } from '../model.ts';
import { byTime, stateOf } from '../notes/state.ts';
import { type Column, table } from './table.ts';

export const dogs = table<Dog>({
  name: 'dogs',
  title: 'Dogs',
  says: 'Every dog of the kennel, retired ones too.',
  primaryKey: ['id'],
  foreignKeys: [],
  columns: [
    { name: 'id', type: 'string', says: 'The dog, whatever it is called.', required: true, of: (dog) => dog.id },
    { name: 'name', type: 'string', says: 'Call name.', required: true, unique: true, of: (dog) => dog.name },
    { name: 'sex', type: 'string', says: 'F female, M male.', oneOf: ['F', 'M'], of: (dog) => dog.sex },
    { name: 'born', type: 'date', says: 'Day of birth, where it is known.', of: (dog) => dog.born },
    { name: 'retired', type: 'boolean', says: 'Runs no more.', required: true, of: (dog) => dog.retired },
    { name: 'aliases', type: 'array', says: 'Other names it is called by.', of: (dog) => dog.aliases },
    { name: 'former_names', type: 'array', says: 'Call names it had before.', of: (dog) => dog.formerNames },
    { name: 'heard', type: 'array', says: 'Forms in which its name was misheard.', of: (dog) => dog.heard },
  ],
  rows: ({ kennel }) => [...kennel.dogs].sort((a, b) => a.name.localeCompare(b.name, 'en')),
});

interface NoteRow {
  note: Note;
  run?: string;
}
export const notes = table<NoteRow>({
  name: 'notes',
  title: 'Notes',
  says: 'Every note of the season word for word, in the order of time.',
  primaryKey: ['id'],
  foreignKeys: [{ fields: 'run_id', table: 'runs', key: 'id' }],
  columns: [
    { name: 'id', type: 'string', says: 'The note.', required: true, of: ({ note }) => note.id },
    { name: 'at', type: 'datetime', says: 'When it was spoken.', required: true, of: ({ note }) => note.at },
    { name: 'by', type: 'string', says: 'Who spoke; empty for the musher.', of: ({ note }) => note.by },
    {
      name: 'source',
      type: 'string',
      says: 'How it came in.',
      oneOf: ['typed', 'dictated', 'recording', 'import'],
      of: ({ note }) => note.source,
    },
    { name: 'received', type: 'datetime', says: 'When it was kept.', required: true, of: ({ note }) => note.received },
    {
      name: 'state',
      type: 'string',
      says: 'waiting: an entry is still to be reviewed; reviewed; aside: put away, counts for nothing.',
      oneOf: ['waiting', 'reviewed', 'aside'],
      of: ({ note }) => stateOf(note),
    },
    { name: 'run_id', type: 'string', says: 'The run that holds the note, the first of two.', of: ({ run }) => run },
    { name: 'text', type: 'string', says: 'The words, as they came in.', of: ({ note }) => note.text },
  ],
  *rows({ season, runs }) {
    const runOf = new Map<string, string>();
    for (const run of runs) for (const id of run.notes) if (!runOf.has(id)) runOf.set(id, run.id);
    for (const note of [...season.notes].sort(byTime)) {
      const run = runOf.get(note.id);
      yield run === undefined ? { note } : { note, run };
    }
  },
});

/** What each field of an entry means; the kind it belongs to tells the rest. */
const FIELDS: Record<string, Pick<Column<EntryRow>, 'type' | 'says'>> = {
  position: { type: 'string', says: 'Place in the team: lead, swing, team, wheel.' },
  side: { type: 'string', says: 'left, right, or both.' },
  driver: { type: 'string', says: 'Who drives that team.' },
  manner: { type: 'string', says: 'How the dog left the team, or how it went.' },
  measure: { type: 'string', says: 'Which distance: total, mark, leg, remaining.' },
  value: { type: 'number', says: 'The number as it was said, in `unit`.' },
  unit: { type: 'string', says: 'The unit that was said.' },
  event: { type: 'string', says: 'What happened at `time`.' },
  time: { type: 'string', says: 'Clock, HH:MM.' },
  of: { type: 'string', says: 'What lasted `minutes`: run, stop, other.' },
  minutes: { type: 'number', says: 'How long, in minutes.' },
  part: { type: 'string', says: 'Part of the body.' },
  end: { type: 'string', says: 'front, hind, or both.' },
  sign: { type: 'string', says: 'What was seen.' },
  severity: { type: 'string', says: 'mild, moderate, severe, where it was said.' },
  trend: { type: 'string', says: 'better, worse, same, where it was said.' },
  act: { type: 'string', says: 'What was done.' },
  item: { type: 'string', says: 'The thing, as it was said.' },
  state: { type: 'string', says: 'State of booties or gear.' },
  paws: { type: 'array', says: 'Which paws: LF RF LH RH.' },
  what: { type: 'string', says: 'water, snack, meal.' },
  took: { type: 'string', says: 'all, most, some, none.' },
  amount: { type: 'number', says: 'How much each dog took, in `unit`.' },
  condition: { type: 'string', says: 'Weather.' },
  surface: { type: 'string', says: 'Trail.' },
  gait: { type: 'string', says: 'walk, trot, lope, pace.' },
  quantity: { type: 'string', says: 'What was measured; body condition is on the nine-point chart, of 9.' },
  text: { type: 'string', says: 'Words that no other kind took.' },
};
const COMMON = ['kind', 'dogs', 'assertion', 'span', 'rule', 'doubt', 'because'];
/** Every field that entries of any kind have beside those that all share. */
const fieldNames = [...new Set(entrySchema.options.flatMap((option) => Object.keys(option.shape)))].filter(
  (name) => !COMMON.includes(name),
);

interface EntryRow extends ReviewedEntry {
  note: Note;
}
const field = (entry: Entry, name: string) => (entry as unknown as Record<string, string | number | string[]>)[name];

export const entries = table<EntryRow>({
  name: 'entries',
  title: 'Entries',
  says: 'Every entry of every note: what was read or added, and what became of it in review. Only accepted ones of notes that are not aside count.',
  primaryKey: ['id'],
  foreignKeys: [{ fields: 'note_id', table: 'notes', key: 'id' }],
  columns: [
    { name: 'id', type: 'string', says: 'The entry.', required: true, of: (row) => row.id },
    { name: 'note_id', type: 'string', says: 'The note it stands in.', required: true, of: (row) => row.note.id },
    {
      name: 'review',
      type: 'string',
      says: 'What a person made of it; proposed: nobody has looked yet.',
      oneOf: ['proposed', 'accepted', 'removed'],
      of: (row) => row.state,
    },
    { name: 'from', type: 'string', says: 'Who made it.', oneOf: ['read', 'person'], of: (row) => row.from },
    { name: 'kind', type: 'string', says: 'What it tells of.', required: true, of: ({ entry }) => entry.kind },
    { name: 'dogs', type: 'array', says: 'Dogs as they were called then; * the team.', of: ({ entry }) => entry.dogs },
    {
      name: 'assertion',
      type: 'string',
      says: 'present: so; possible: perhaps; absent: not so; resolved: was so and is over; past: on an earlier day; planned.',
      oneOf: ASSERTIONS,
      of: ({ entry }) => entry.assertion ?? 'present',
    },
    ...fieldNames.map(
      (name): Column<EntryRow> => ({
        name,
        ...(FIELDS[name] ?? { type: 'string', says: `The field “${name}” of the entry.` }),
        of: ({ entry }) => field(entry, name),
      }),
    ),
    {
      name: 'words',
      type: 'string',
      says: 'The words it was read from.',
      of: ({ entry, note }) => wordsOf(entry, note),
    },
    { name: 'doubt', type: 'string', says: 'How sure the reading is.', of: ({ entry }) => entry.doubt },
    { name: 'because', type: 'string', says: 'Why it is in doubt.', of: ({ entry }) => entry.because },
    { name: 'was', type: 'object', says: 'What had been read, where a person changed it.', of: (row) => row.was },
  ],
  *rows({ season }) {
    for (const note of [...season.notes].sort(byTime)) for (const one of note.entries) yield { ...one, note };
  },
});

function wordsOf(entry: Entry, note: Note): string | undefined {
  return entry.span && note.text.slice(entry.span[0], entry.span[1]);
}
