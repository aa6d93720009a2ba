/**
 * A query's words to its parts, read by the grammar that reads the notes and by the same lexicon. The steps, in order:
 *
 * 1. times and amounts   "since the new year", "over 103": taken out first, for a note tells no spans of days
 * 2. asking words        "who", "when did", "show me": a question is no entry in a note, so these are taken out
 * 3. slips               words nobody knows, mended to a dog's name or a word of the lexicon where one is near
 * 4. the reading         as a note would be read; a query that names no dog is read as if said of one ("refused snack")
 * 5. the lexicon         what no entry took but has a word of its own ("rh web", "booties")
 * 6. the rest            looked for in the notes' own words
 */
import {
  type Context,
  type Entry,
  read as grammarRead,
  type Kind,
  type Reading,
  type Surface,
} from '../../grammar/index.ts';
import type { Frame } from '../../grammar/steps/frame.ts';
import { amountIn } from './amounts.ts';
import { type Calendar, whenIn } from './dates.ts';
import { fromLexicon } from './lexicon.ts';
import { type Query, tidy } from './query.ts';
import { mend, type Slip } from './slips.ts';

/** What was made of a query's words. */
export interface Understood {
  query: Query;
  /** Words that were read as others: "junipr" as Juniper. */
  slips: Slip[];
}

/** A dog that is in no kennel; a query that names none is read as if it were said of this one. */
const STAND_IN = 'Xyzzydog';
const LEAD = `${STAND_IN} `;

const ASKING =
  /^\s*(?:(?:please|show(?: me)?|find(?: me)?|list|search(?: for)?|look(?:ing)? for|who(?:'s| has| had| have| is| was| were)?|whose|which(?: dogs?| runs?| notes?)?|what|when(?: did| was| were| has| have| is)?|where(?: did| was| were)?|how (?:often|many|much|many times)(?: did| was| has| have)?|did|does|do|has|have|any(?:body|one)?|all|every|the|notes?|entries|findings?|times?|anything|something|last time|about|with|on|for|that|there|been|was|were|is|are|when)(?=[\s,.?!:]|$))/iu;
/** Words that say nothing to look for. */
const SMALL = new Set(
  `a about again all also an and any anybody anyone anything are as at be been but by can case did do dog dogs does done
  entries entry ever every everybody everyone everything for four from gait get gets got had has have he her hers him his how i in into is it
  its last like list many me mention mentioned mentions more most much my near no not note notes now of off on or our out
  over race ran run running runs said says see she show since so some somebody someone something still team than that the their them then there
  they this time times to told too trail up us was we were what when where which while who whose why will with without
  yet you`.split(/\s+/),
);
/** Of what is wrong in general: "wrist trouble". They ask for findings. */
const TROUBLE =
  /^(?:troubles?|problems?|issues?|injur(?:y|ies|ed)|hurts?|hurting|findings?|ailments?|wrong|bad|unwell|sick)$/;
/** What says that something is over, beside what it is said of. */
const FINE = /^(?:fine|ok|okay|good|well|gone|healed|over|better)$/i;
/** Kinds of entry that are asked for by their own name. */
const KIND_WORDS: Record<string, Kind> = {
  gear: 'gear',
  weather: 'weather',
  care: 'care',
  treatment: 'care',
  attitude: 'attitude',
  drops: 'drop',
};
/** "On ice" is an idiom in a note; in a query it is where. */
const SURFACE_WORDS: Record<string, Surface> = { ice: 'icy' };
const WORD = /[\p{L}\p{N}]+(?:['’.-][\p{L}\p{N}]+)*/gu;

type Read = (text: string, context: Context, trace?: string[], look?: (f: Frame) => void) => Reading;

/** Reads a query. Never throws on any text; what is not understood becomes words to look for. */
export function understand(text: string, context: Context, calendar: Calendar, read: Read = grammarRead): Understood {
  const plain = text.replace(/[\n\r\t?]/g, ' ').replace(/[’‘]/g, "'");
  const when = whenIn(plain, calendar, namesOf(context));
  const { amount, text: rest } = amountIn(when.text, context);
  const { text: mended, slips } = mend(withoutAsking(rest), context);
  const known = { ...context, lineup: [], dogs: [...context.dogs, { name: STAND_IN }] };
  const parts = readParts(mended, known, context, read);
  const { text: _, ...days } = when;
  // "trail" by itself asks for what was told of it; beside anything else it says nothing.
  const trail = !Object.keys(parts).length && /\btrails?\b/i.test(rest) ? { kinds: ['trail' as const] } : {};
  const query = tidy({ ...parts, ...trail, ...days, ...(amount ? { amount } : {}) });
  return { query, slips };
}

/** Names and aliases of the roster, lower case: a dog called June is no month, unless "in" stands before it. */
const namesOf = (context: Context) =>
  new Set(context.dogs.flatMap((d) => [d.name, ...(d.aliases ?? [])]).map((name) => name.toLowerCase()));

/** Blanks out what only asks, from the front. */
function withoutAsking(text: string): string {
  let at = 0;
  for (;;) {
    const m = ASKING.exec(text.slice(at));
    if (!m?.[0].trim()) break;
    at += m[0].length;
  }
  return ' '.repeat(at) + text.slice(at);
}

function readParts(text: string, known: Context, context: Context, read: Read): Query {
  if (!text.trim()) return {};
  let frame: Frame | undefined;
  let reading = read(text, known, undefined, (f) => {
    frame = f;
  });
  const named = frame?.dogs.some((d) => d.kind === 'names' || d.kind === 'group') ?? false;
  let shift = 0;
  if (!named) {
    shift = LEAD.length;
    // The blanks in front go, so that the words stand right behind the dog.
    const from = text.length - text.trimStart().length;
    reading = read(LEAD + text.slice(from), known, undefined, (f) => {
      frame = f;
    });
    shift -= from;
  }
  if (!frame) return { words: text.trim() };
  const taken = new Uint8Array(text.length);
  const take = ([a, b]: readonly [number, number]) => taken.fill(1, Math.max(0, a - shift), Math.max(0, b - shift));
  const entries = reading.entries.filter((e) => e.kind !== 'remark');
  const parts = fromLexicon(frame, entries, context, take, (a) => Boolean(taken[a - shift]));
  const show = denies(entries) ? 'not' : undefined;
  const words = restOf(text, taken).filter((w) => !SURFACE_WORDS[w.toLowerCase()] && !(show && FINE.test(w)));
  const surfaces = [
    ...(parts.surfaces ?? []),
    ...restOf(text, taken).flatMap((w) => SURFACE_WORDS[w.toLowerCase()] ?? []),
  ];
  const trouble = words.some((w) => TROUBLE.test(w));
  const kinds = words.map((w) => KIND_WORDS[w.toLowerCase()]).filter((k) => k !== undefined);
  const rest = words.filter((w) => !TROUBLE.test(w) && !KIND_WORDS[w.toLowerCase()]);
  return {
    ...parts,
    ...(surfaces.length ? { surfaces: [...new Set(surfaces)] } : {}),
    ...(kinds.length ? { kinds } : trouble && !parts.signs && !parts.kinds ? { kinds: ['finding'] } : {}),
    ...(rest.length ? { words: rest.join(' ') } : {}),
    ...(show ? { show } : {}),
  };
}

/** "no soreness", "wrist fine now": the query itself asks for what was denied. */
function denies(entries: readonly Entry[]): boolean {
  const told = entries.filter((e) => e.kind === 'finding');
  return told.length > 0 && told.every((e) => e.assertion === 'absent' || e.assertion === 'resolved');
}

/** The words that no part took and that say something. */
function restOf(text: string, taken: Uint8Array): string[] {
  const out: string[] = [];
  for (const m of text.matchAll(WORD)) {
    if (taken[m.index]) continue;
    const word = m[0].replace(/['’]s$/i, '');
    if (!SMALL.has(word.toLowerCase())) out.push(word);
  }
  return out;
}
