/** Words of a query that nobody knows, mended where one word is near: a dog's name by sound or slip, else the lexicon's. */
import type { Context } from '../../grammar/index.ts';
import { type Ears, earsFor, soundsLike } from '../../grammar/steps/hearing.ts';
import { makeSpeller, oneSlip, type Speller } from '../../grammar/steps/spelling.ts';
import { tokenize } from '../../grammar/steps/tokens.ts';
import { LEXICON_WORDS } from '../../grammar/words/index.ts';

/** A word as it was written and what it was read as. */
export interface Slip {
  said: string;
  as: string;
}

const ears = new WeakMap<Context['dogs'], Ears>();
let speller: Speller | undefined;

/**
 * The query with its slips mended. Only words outside English and the lexicon are; a name's sound is trusted only where
 * it is the only one near. A mended word may be longer than what was written: places behind it move.
 */
export function mend(text: string, context: Context): { text: string; slips: Slip[] } {
  const slips: Slip[] = [];
  let heard = ears.get(context.dogs);
  if (!heard) {
    heard = earsFor(context.dogs);
    ears.set(context.dogs, heard);
  }
  speller ??= makeSpeller(LEXICON_WORDS);
  let out = '';
  let at = 0;
  for (const t of tokenize(text)) {
    if (t.kind !== 'word' || LEXICON_WORDS.has(t.low) || heard.exact.has(t.low) || t.low.length < 4) continue;
    const as = t.known ? undefined : nearest(t.low, heard, speller);
    if (!as) continue;
    slips.push({ said: text.slice(t.start, t.end), as });
    out += text.slice(at, t.start) + as;
    at = t.end;
  }
  return { text: out + text.slice(at), slips };
}

function nearest(low: string, heard: Ears, words: Speller): string | undefined {
  // "junipers" is the name with an s.
  if (low.endsWith('s') && heard.exact.has(low.slice(0, -1))) return undefined;
  const dog = soundsLike(low, heard);
  if (dog.dogs.length === 1 && (dog.how === 'misspelt' || dog.how === 'sounds')) return dog.dogs[0];
  const word = words.fix(low) ?? letterShort(low);
  if (word) return word;
  return dog.dogs.length === 1 && dog.how === 'near' ? dog.dogs[0] : undefined;
}

/** A word of four letters with one left out: "wrst". The speller mends only longer ones. */
function letterShort(low: string): string | undefined {
  if (low.length !== 4) return undefined;
  const near = [...LEXICON_WORDS].filter((w) => w.length === 5 && w[0] === low[0] && oneSlip(low, w));
  return near.length === 1 ? near[0] : undefined;
}
