/**
 * Search: a query read by the notes' own grammar, over an index that is derived and can be thrown away.
 *
 * words → understand.ts (dates.ts, amounts.ts, slips.ts, lexicon.ts) → a Query → match.ts: does an entry satisfy it
 * store → keeper.ts (postings.ts: who tells what; fulltext.ts: the notes' words) → find.ts → search.ts: the answer
 */
export { within } from './amounts.ts';
export { type CameBack, dogsToNumber, type InEpisode, type Numbered, numbered } from './came-back.ts';
export { type Calendar, whenIn } from './dates.ts';
export type { Ground } from './find.ts';
export { IndexKeeper } from './keeper.ts';
export { between } from './miles.ts';
export { asksNothing, type Query, querySchema, tidy } from './query.ts';
export { type Hit, type NoteHit, type Page, type Result, search } from './search.ts';
export { type Understood, understand } from './understand.ts';
export { type Chip, chipsOf, queryWords } from './words.ts';
