/** The whole lexicon, compiled once; a wrong row stops the program here, with its words. */
import { body } from './body.ts';
import { ways } from './dogs-ways.ts';
import { feet } from './feet.ts';
import { food } from './food.ts';
import { signs } from './signs.ts';
import { compile, type Phrase, phrasesOf } from './table.ts';
import { talk } from './talk.ts';
import { team } from './team.ts';
import { trail, weather } from './trail.ts';

export const LEXICON = compile({ team, body, signs, feet, food, trail, weather, ways, talk });

/** Every single word of the lexicon. */
export const LEXICON_WORDS: ReadonlySet<string> = new Set([...phrasesOf(LEXICON)].flatMap((p) => p.words));

/** The meanings of a word that stands alone. */
export const meaningsOf = (word: string): readonly Phrase[] => LEXICON.next?.get(word)?.phrases ?? [];
