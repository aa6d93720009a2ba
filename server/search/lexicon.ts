/** What the entries of a query and the lexicon's words in it ask for, part by part. */
import type { Context, Entry, Part } from '../../grammar/index.ts';
import type { Frame } from '../../grammar/steps/frame.ts';
import type { Query } from './query.ts';

type Take = (span: readonly [number, number]) => void;

/** Parts that are gathered as the words go by. */
interface Gathered extends Omit<Query, 'side' | 'end'> {
  side?: Query['side'];
  end?: Query['end'];
}

function add<K extends keyof Gathered>(into: Gathered, key: K, value: unknown): void {
  const list = (into[key] as unknown[] | undefined) ?? [];
  if (!list.includes(value)) (into as Record<string, unknown>)[key] = [...list, value];
}

/**
 * The parts of a query. `take` marks the words they were read from, `taken` tells whether a place is marked already.
 * Where on the body comes from the words alone: an entry's part that no word named ("left front splits" as a foot) would
 * leave out what was told of a pad.
 */
export function fromLexicon(
  f: Frame,
  entries: readonly Entry[],
  context: Context,
  take: Take,
  taken: (at: number) => boolean,
): Query {
  const parts: Gathered = {};
  const span = (m: { from: number; to: number }) => f.span([m.from, m.to]);
  readDogs(f, context, parts, take);
  // "not limping" beside "stiff" is no sign that is asked for.
  const told = entries.filter((e) => e.kind === 'finding');
  const asked = told.some((e) => !denied(e)) ? entries.filter((e) => e.kind !== 'finding' || !denied(e)) : entries;
  for (const e of entries) {
    if (e.kind === 'trail' && e.surface === 'good' && !ofTrail(f)) continue;
    if ((e.kind === 'trail' || e.kind === 'weather') && taken(e.span?.[0] ?? 0)) continue;
    if (asked.includes(e)) readEntry(f, e, parts, take);
    else takeTags(f, e, take, 'sign', 'fine', 'nothing');
  }
  readSites(f, parts, take);
  for (const { tag, read } of BY_TAG) {
    for (const m of f.m.of(tag)) {
      if (taken(span(m)[0]) || !read(parts, m.value, f, m)) continue;
      take(span(m));
    }
  }
  return parts;
}

/** Does the query speak of the trail? Without that "fine" and "good" are not said of it. */
const ofTrail = (f: Frame) => /\b(?:trails?|going|track|snow|glide)\b/i.test(f.text);
const denied = (e: Entry) => e.assertion === 'absent' || e.assertion === 'resolved';

/** Every dog that is named, beside what and with whom it may be; the girls and the boys of the roster. */
function readDogs(f: Frame, context: Context, parts: Gathered, take: Take): void {
  const known = new Set(context.dogs.map((d) => d.name));
  for (const d of f.dogs) {
    const names = d.kind === 'names' ? d.dogs.filter((name) => known.has(name)) : [];
    if (names.length) {
      for (const name of names) add(parts, 'dogs', name);
      take(f.span([d.from, d.to]));
    }
    if (d.kind !== 'group') continue;
    if (d.value === 'F' || d.value === 'M')
      for (const dog of context.dogs) if (dog.sex === d.value) add(parts, 'dogs', dog.name);
    const [side, position] = /^(?:(left|right)-)?(lead|swing|team|wheel)$/.exec(d.value ?? '')?.slice(1) ?? [];
    if (position) add(parts, 'positions', position);
    if (side) parts.side = side as 'left';
    take(f.span([d.from, d.to]));
  }
  // A name in a place where a note would not have one ("wrist juniper sore").
  for (const t of f.tokens) {
    const low = t.low.replace(/s$/, '');
    const form = (f.roster.forms.get(t.low) ?? f.roster.forms.get(low))?.find((one) => one.words.length === 1);
    if (!form || !known.has(form.dog) || parts.dogs?.includes(form.dog)) continue;
    add(parts, 'dogs', form.dog);
    take([t.start, t.end]);
  }
}

/** Is there a word of this tag among an entry's words? */
function says(f: Frame, e: Entry, tag: string, value?: unknown): boolean {
  const [a, b] = e.span ?? [0, 0];
  return f.m.of(tag).some((m) => {
    const t = f.tokens[m.from];
    return t !== undefined && t.start >= a && t.start < b && (value === undefined || m.value === value);
  });
}

/** Takes the words of these tags inside an entry's span, and no others: "lost in the moose meadow" keeps its meadow. */
function takeTags(f: Frame, e: Entry, take: Take, ...tags: string[]): void {
  const [a, b] = e.span ?? [0, 0];
  for (const tag of [...tags, 'severity', 'trend'])
    for (const m of f.m.of(tag)) {
      const span = f.span([m.from, m.to]);
      if (span[0] >= a && span[1] <= b) take(span);
    }
}

function readEntry(f: Frame, e: Entry, parts: Gathered, take: Take): void {
  switch (e.kind) {
    case 'finding':
      if (e.sign === 'any') add(parts, 'kinds', 'finding');
      else add(parts, 'signs', e.sign);
      takeTags(f, e, take, 'sign', 'fine', 'nothing');
      return;
    case 'care':
      add(parts, 'acts', e.act);
      // What was used is looked for as a word: "zinc cream".
      if (!e.item || e.item === e.act) takeTags(f, e, take, 'act');
      return;
    case 'booties':
      add(parts, 'states', e.state);
      takeTags(f, e, take, 'bootie', 'boot-state', 'boot-verb');
      return;
    case 'intake': {
      add(parts, 'took', e.took);
      const water = e.what === 'water';
      if (
        water ||
        says(f, e, 'food', e.what) ||
        (e.what === 'snack' ? says(f, e, 'snack-time') : says(f, e, 'meal-time'))
      )
        add(parts, 'what', e.what);
      takeTags(f, e, take, 'ate', 'drank', 'gave', 'snack-time', 'meal-time');
      for (const m of f.m.of('food')) if (m.value !== 'solid') take(f.span([m.from, m.to]));
      return;
    }
    case 'hitch':
    case 'move':
      if (!e.position) return;
      add(parts, 'positions', e.position);
      if (e.side) parts.side = e.side;
      if (e.kind === 'move') add(parts, 'kinds', 'move');
      takeTags(f, e, take, 'position', 'move', 'move-only', 'swap', 'hitch', 'side');
      return;
    case 'drop':
      add(parts, 'drops', e.manner);
      if (e.span) take(e.span);
      return;
    case 'attitude':
      add(parts, 'manners', e.manner);
      takeTags(f, e, take, 'manner');
      return;
    case 'gait':
      add(parts, 'gaits', e.gait);
      takeTags(f, e, take, 'gait');
      return;
    case 'trail':
      add(parts, 'surfaces', e.surface);
      takeTags(f, e, take, 'surface', 'surface-weak');
      return;
    case 'weather':
      add(parts, 'conditions', e.condition);
      takeTags(f, e, take, 'condition');
      return;
    case 'gear':
      add(parts, 'gear', e.state);
      takeTags(f, e, take, 'gear-state');
      return;
    default:
      // Numbers of their own are read as amounts or stay words.
      return;
  }
}

function readSites(f: Frame, parts: Gathered, take: Take): void {
  for (const s of f.sites) {
    if (s.anaphor) continue;
    if (s.part) add(parts, 'parts', s.part as Part);
    if (s.side) parts.side = s.side;
    if (s.end) parts.end = s.end;
    if (s.part || s.side || s.end) take(f.span([s.from, s.to]));
  }
}

interface TagRow {
  tag: string;
  /** Puts the value into the parts; false where the word is none of this query. */
  read: (parts: Gathered, value: unknown, f: Frame, m: { from: number; to: number }) => boolean;
}
const into = (key: keyof Gathered) => (parts: Gathered, value: unknown) => {
  add(parts, key, value);
  return true;
};
const nothingElse = (parts: Gathered) => Object.keys(parts).every((k) => k === 'dogs');

/** The lexicon's tags for words that no entry took; the order is that of who has the better claim to a word. */
const BY_TAG: readonly TagRow[] = [
  {
    tag: 'bootie',
    read: (parts, _, f, m) => {
      const state = [m.from - 1, m.to]
        .map((k) => f.m.at('boot-state', k))
        .find((s) => s && !/^(in|with|on)$/.test(f.low(s.from)));
      if (state) add(parts, 'states', state.value);
      else if (!parts.states) add(parts, 'kinds', 'booties');
      return true;
    },
  },
  { tag: 'boot-state', read: (parts, value) => Boolean(parts.states?.includes(value as 'lost')) },
  { tag: 'sign', read: into('signs') },
  { tag: 'part', read: (parts, value, f, m) => f.low(m.from) !== 'back' && into('parts')(parts, value) },
  {
    tag: 'side',
    read: (parts, value) => {
      parts.side ??= value as 'left';
      return parts.side === value;
    },
  },
  {
    tag: 'end',
    read: (parts, value, f, m) => {
      if (!/^(front|fronts|hind|hinds|rear|rears)$/.test(f.low(m.from))) return false;
      parts.end ??= value as 'front';
      return parts.end === value;
    },
  },
  { tag: 'condition', read: into('conditions') },
  {
    tag: 'surface',
    read: (parts, value, f, m) =>
      (value !== 'good' || ofTrail(f)) &&
      !/^(quick|fresh|ran|glass|grass|corn)$/.test(f.low(m.from)) &&
      into('surfaces')(parts, value),
  },
  { tag: 'position', read: into('positions') },
  { tag: 'ate', read: (parts, value) => !parts.took && into('took')(parts, value) },
  { tag: 'drank', read: (parts, value) => into('took')(parts, value) && into('what')(parts, 'water') },
  {
    tag: 'food',
    read: (parts, value) => {
      if (value === 'appetite') return into('kinds')(parts, 'intake');
      return value !== 'solid' && into('what')(parts, value);
    },
  },
  {
    tag: 'manner',
    read: (parts, value, f, m) => !/^(good|ok|fine|super|fresh)$/.test(f.low(m.from)) && into('manners')(parts, value),
  },
  {
    tag: 'drop',
    read: (parts, value, f, m) => f.low(m.from) !== 'left' && nothingElse(parts) && into('drops')(parts, value),
  },
  {
    tag: 'act',
    read: (parts, value, f, m) =>
      nothingElse(parts) && !/^(zinc|honey|oil|wax|shot|drops)$/.test(f.low(m.from)) && into('acts')(parts, value),
  },
  { tag: 'gait', read: (parts, value) => nothingElse(parts) && into('gaits')(parts, value) },
  {
    tag: 'quantity',
    read: (parts, value) => !parts.amount && nothingElse(parts) && into('measured')(parts, value),
  },
];
