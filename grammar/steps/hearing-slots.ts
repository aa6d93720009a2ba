/**
 * Step "hearing", part three: words that are no name and stand where only a dog can. A word that English does not have
 * needs an ordinary dog's slot; a word that English has ("potter", "castro") needs one that can hold nothing else, and stays
 * in much doubt.
 */
import { LEXICON_WORDS } from '../words/index.ts';
import { NUMBERS } from '../words/numbers.ts';
import { AFTER_THING, BEFORE_THING } from '../words/slots.ts';
import { earsFor, type Heard, soundsLike } from './hearing.ts';
import type { Mentions } from './mentions.ts';
import type { Roster } from './roster.ts';
import type { Token } from './tokens.ts';

/** A word that may be a dog: one dog where it is clear, none where two are about as near. */
export interface HeardName {
  from: number;
  to: number;
  dogs: string[];
  possessive: boolean;
  /** The reason, in words. */
  doubt: string;
  /** The word is an English one: the reading needs a second look. */
  much: boolean;
}

const set = (s: string): ReadonlySet<string> => new Set(s.split(' '));
/** Little words that a subject's place may hold and that are never a call name. */
const LITTLE = set(
  'and or but so then when while after before since because if though although that this these those there here who what which where why how also still yet now again never always maybe perhaps probably just only even else both all none nobody somebody someone something anything nothing everything everyone everybody anyone it he she they we you i me him her them us my your his its our their not no yes yeah ok okay well oh sorry hope think guess today tonight yesterday tomorrow morning afternoon evening night last first next other another one two on in at to of for from with by up down off out over under into through around about near is was are were be been has had have did do does will would can could should may might must got get gets went goes go came come took take put gave give made make said say says says told tell looks looked seems seemed feels felt',
);
/** Words that mean something else: of the lexicon, little ones, numbers. One look-up for most words of a note. */
const NO_NAME: ReadonlySet<string> = new Set([...LEXICON_WORDS, ...LITTLE, ...NUMBERS.keys()]);
/** Only these findings, said right behind a word, make it a dog: snow is hot, hard and broken too. */
const DOG_SIGNS = set(
  'lame sore stiff swollen vomiting loose-stool bloody-stool coughing dark-urine dehydrated shivering thin in-season licking',
);
/** Verbs whose object, with nothing else behind it, is a dog. */
export const DOG_VERBS = set(
  'loaded loading load dropped dropping drop massaged massaging bagged unhooked harnessed watered weighed booted snacked',
);
const BE = set("is was 's has had got looks looked seems seemed came went being been were");
const JOIN = set('and , & + / or');
/** Where a clause begins. */
const OPENS = set('. , ; : ! ? - – — and but so then while because');

const opens = (tokens: readonly Token[], i: number) => i === 0 || OPENS.has((tokens[i - 1] as Token).low);

/** "left wrist", "wrist", "RH": a place on the body begins at `k`. */
function bodyAt(m: Mentions, k: number): boolean {
  if (m.at('part', k) || m.at('paw', k)) return true;
  if (!m.at('side', k)) return m.at('end', k) !== undefined && m.at('part', k + 1) !== undefined;
  return Boolean(m.at('part', k + 1) || m.at('end', k + 1));
}

/** Is what stands at `k` done or suffered by nothing but a dog? */
function dogDoes(tokens: readonly Token[], m: Mentions, k: number): boolean {
  if (m.from('ate', k) || m.from('drank', k)) return true;
  const sign = (i: number) => DOG_SIGNS.has(m.from('sign', i)?.value);
  if (sign(k)) return true;
  const low = tokens[k]?.low ?? '';
  if (!BE.has(low)) return false;
  for (let i = k + 1; i < Math.min(k + 4, tokens.length); i++) {
    if (sign(i) || m.from('ate', i)) return true;
    if (!/^(a|an|been|not|n't|little|bit|pretty|very|still|slightly|really|some|badly)$/.test(tokens[i]?.low ?? ''))
      break;
  }
  return /^(has|had|got)$/.test(low) && bodyNear(tokens, m, k + 1);
}
const bodyNear = (tokens: readonly Token[], m: Mentions, k: number) => {
  if (!/^(a|an|her|his)$/.test(tokens[k]?.low ?? '')) return false;
  for (let i = k + 1; i < k + 7; i++) if (bodyAt(m, i)) return true;
  return false;
};

/** A slot that holds a dog and nothing else. */
function certain(tokens: readonly Token[], m: Mentions, i: number, to: number, possessive: boolean): boolean {
  const prev = tokens[i - 1]?.low ?? '';
  if (possessive && (bodyAt(m, to) || m.at('bootie', to))) return true;
  if (
    DOG_VERBS.has(prev) &&
    (to >= tokens.length || /^([.,;!?]|at|in|and|because|mile|for|with|after)$/.test(tokens[to]?.low ?? ''))
  )
    return true;
  if (!opens(tokens, i)) return false;
  if (dogDoes(tokens, m, to)) return true;
  // "castro left wrist sore", "castro stiff in the left hind"
  return bodyAt(m, to) && m.at('side', to) !== undefined;
}

/** A slot that a dog stands in, if the word is a name at all. */
function usual(
  tokens: readonly Token[],
  m: Mentions,
  i: number,
  to: number,
  possessive: boolean,
  names: ReadonlySet<number>,
): boolean {
  const prev = tokens[i - 1]?.low ?? '';
  const next = tokens[to]?.low ?? '';
  if (possessive) return true;
  if (JOIN.has(prev) && [i - 2, i - 3].some((k) => names.has(k))) return true;
  if (JOIN.has(next) && names.has(to + 1)) return true;
  if (/^(in|at|on|to|up)$/.test(next) && (m.at('position', to + 1) || m.at('position', to + 2))) return true;
  if (
    m.from('position', to) ||
    m.from('manner', to) ||
    m.from('drop', to) ||
    m.from('sign', to) ||
    m.from('gait', to) ||
    bodyAt(m, to)
  )
    return true;
  if (
    BE.has(next) ||
    m.from('quantity', to) ||
    /^(ran|did|pulled|lost|threw|ripped|chewed|tore|wo|would|does)$/.test(next)
  )
    return true;
  return /^(put|moved|swapped|wrapped|gave|fed|checked|on|with|except|hooked|left|kept|rested|bring|brought|move)$/.test(
    prev,
  );
}

function say(word: string, heard: Heard): string {
  if (heard.dogs.length === 1)
    return heard.how === 'misspelt'
      ? `"${word}" is one slip from ${heard.dogs[0]}`
      : `"${word}" was heard; ${heard.dogs[0]} sounds like it`;
  return `${heard.dogs.length === 2 ? 'two' : 'several'} dogs sound like "${word}": ${heard.dogs.join(', ')}`;
}

/** Names that were heard or typed wrong. `taken` are the tokens of names that stand as they are, `names` where these begin. */
export function heardNames(
  tokens: readonly Token[],
  m: Mentions,
  roster: Roster,
  taken: (i: number) => boolean,
  names: ReadonlySet<number>,
): HeardName[] {
  const out: HeardName[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const t = tokens[i] as Token;
    if (t.kind !== 'word' || t.low.length < 2 || NO_NAME.has(t.low)) continue;
    if (taken(i) || roster.people.has(t.low) || roster.people.has(t.low.replace(/s$/, ''))) continue;
    const prev = tokens[i - 1]?.low ?? '';
    if (BEFORE_THING.has(prev) || prev === 'of' || AFTER_THING.has(tokens[i + 1]?.low ?? '')) continue;
    const mark = tokens[i + 1];
    const to = mark && !mark.gap && (mark.low === "'s" || mark.low === "'") ? i + 2 : i + 1;
    // "castro's limping" is Kestrel, "castro's left wrist" is hers.
    const possessive = to > i + 1 && !dogDoes(tokens, m, to);
    const sure = certain(tokens, m, i, to, possessive);
    if (!sure && (t.known || !usual(tokens, m, i, to, possessive, names))) continue;
    let heard = soundsLike(t.low, earsFor(roster.dogs));
    let own = possessive;
    if (
      !heard.dogs.length &&
      to === i + 1 &&
      t.low.length > 4 &&
      t.low.endsWith('s') &&
      (bodyAt(m, to) || m.at('bootie', to))
    ) {
      heard = soundsLike(t.low.slice(0, -1), earsFor(roster.dogs));
      own = true;
    }
    if (!heard.dogs.length || (heard.how === 'near' && !sure)) continue;
    const several = heard.dogs.length > 1;
    out.push({
      from: i,
      to: possessive || to === i + 1 ? to : i + 1,
      dogs: several ? [] : heard.dogs,
      possessive: own,
      doubt: say(t.low, heard),
      much: t.known || several,
    });
  }
  return out;
}
