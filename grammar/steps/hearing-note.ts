/**
 * Step "hearing" over a whole note, before anything is read from it: slips of spelling and trade words that were written as
 * another word. A token's word is changed, never its place, so that what is read can still be pointed at in the text.
 */
import type { Entry } from '../entry.ts';
import { LEXICON_WORDS, meaningsOf } from '../words/index.ts';
import type { DogPhrase } from './dogs.ts';
import { earsFor, soundsLike, tradeWordHeard } from './hearing.ts';
import { DOG_VERBS } from './hearing-slots.ts';
import type { Roster } from './roster.ts';
import { makeSpeller, SHORTEST_MENDED } from './spelling.ts';
import { isEnglish, type Token } from './tokens.ts';

/** A word read as another one, with its place in the text. */
export interface WordHeard {
  heard: string;
  means: string;
  start: number;
  end: number;
}

const speller = makeSpeller(LEXICON_WORDS);

/** Do all words mean the same to the lexicon ("massage", "massaged")? */
function sameMeaning(words: readonly string[]): boolean {
  const key = (w: string) =>
    meaningsOf(w)
      .map((p) => `${p.tag}=${p.value}`)
      .sort()[0];
  const first = key(words[0] as string);
  return first !== undefined && words.every((w) => key(w) === first);
}

/** A dog is likelier than a trade word at the start of a sentence and behind "loaded". */
const namePlace = (before: Token | undefined) => !before || before.kind === 'mark' || DOG_VERBS.has(before.low);

/** Trade words one slip off ("swolen", "massagd"); names of the kennel and words that English has are left alone. */
function mendSpelling(tokens: readonly Token[], roster: Roster): void {
  for (const t of tokens) {
    if (
      t.known ||
      t.kind !== 'word' ||
      t.low.length < SHORTEST_MENDED ||
      roster.forms.has(t.low) ||
      roster.people.has(t.low) ||
      isEnglish(t.low)
    )
      continue;
    if (t.low.endsWith('s') && roster.forms.has(t.low.slice(0, -1))) continue;
    const name = soundsLike(t.low, earsFor(roster.dogs)).how;
    if (name === 'misspelt' || (name === 'sounds' && namePlace(tokens[t.i - 1]))) continue;
    // A name one trade word looks like ("sandi" for Sandy) is for the dogs' slots to hear.
    const among = speller.among(t.low);
    if (among.some((w) => roster.forms.has(w))) continue;
    if (among.length === 1 || (among.length > 1 && sameMeaning(among))) t.low = among[0] as string;
  }
}

/** A dog's name, or a word that English does not have and that sounds like one. */
function mayBeDog(t: Token | undefined, roster: Roster): boolean {
  if (t?.kind !== 'word') return false;
  return roster.forms.has(t.low) || (!t.known && soundsLike(t.low, earsFor(roster.dogs)).dogs.length === 1);
}

/** Mends the words of `tokens` in place; gives those that are a guess by sound, for the doubt of what is read from them. */
export function hear(tokens: readonly Token[], roster: Roster): WordHeard[] {
  mendSpelling(tokens, roster);
  const out: WordHeard[] = [];
  for (const t of tokens) {
    if (roster.forms.has(t.low) || roster.people.has(t.low)) continue;
    const means = tradeWordHeard(tokens, t.i, (k) => mayBeDog(tokens[k], roster));
    if (!means) continue;
    out.push({ heard: t.low, means, start: t.start, end: t.end });
    t.low = means;
  }
  return out;
}

/** Where a name could be two dogs, the entry or remark that holds it says which; nothing is chosen. */
export function offerNames(entries: Entry[], phrases: readonly DogPhrase[], tokens: readonly Token[]): void {
  for (const p of phrases) {
    const at = tokens[p.from]?.start;
    if (!p.doubt || p.dogs.length || p.kind !== 'names' || at === undefined) continue;
    for (const e of entries) {
      if (!e.span || e.span[0] > at || at >= e.span[1]) continue;
      if (e.because?.includes(p.doubt)) continue;
      e.doubt = 'much';
      e.because = e.because && e.because !== 'no dog was named' ? `${p.doubt}; ${e.because}` : p.doubt;
    }
  }
}
