/** Call names and people in the note. Whether a word is the dog or the thing is decided by the slot it stands in. */
import { NUMBERS } from '../words/numbers.ts';
import {
  ADJECTIVE_BEFORE,
  ADJECTIVE_Y,
  AFTER_DOG,
  AFTER_THING,
  AFTER_WISH,
  BEFORE_THING,
  COPULA,
  IMPERSONAL,
  TAKES_DOG,
  VERB_AFTER_S,
} from '../words/slots.ts';
import type { PersonMention } from './dog-phrase.ts';
import { heardNames } from './hearing-slots.ts';
import type { Mentions } from './mentions.ts';
import type { Roster } from './roster.ts';
import type { Token } from './tokens.ts';

/** What joins the members of a list. */
export const LIST_LINK = new Set(['and', '&', '+', '/', ',', 'n', 'plus', 'or', 'nor']);

/** A name where it stands. */
export interface NameAt {
  from: number;
  to: number;
  dog: string;
  possessive: boolean;
}

/** Is there a possessive ending at `k`? Gives the token behind it. */
export function possessiveEnd(tokens: readonly Token[], k: number): number {
  const t = tokens[k];
  if (t && !t.gap && (t.low === "'s" || t.low === "'")) return k + 1;
  return k;
}

/** "Loki's been chewing", "Saga's riding": the 's of is and has, told by what follows. */
function isVerbS(tokens: readonly Token[], m: Mentions, k: number): boolean {
  const next = tokens[k]?.low ?? '';
  if (NUMBERS.has(next) || tokens[k]?.kind === 'number') return !m.at('part', k + 1);
  if (VERB_AFTER_S.has(next)) return !(m.at('part', k) || (m.at('end', k) && m.at('part', k + 1)));
  const noun = (i: number) =>
    Boolean(
      m.at('part', i) ||
        m.at('end', i) ||
        m.at('paw', i) ||
        m.at('side', i) ||
        m.at('bootie', i) ||
        m.at('item', i) ||
        m.at('food', i) ||
        m.at('quantity', i),
    );
  const tag =
    m.at('sign', k) ?? m.at('manner', k) ?? m.at('gait', k) ?? m.at('drop', k) ?? m.at('ate', k) ?? m.at('drank', k);
  if (!tag || noun(k)) return false;
  // "Tansy's sore wrist" is hers; "Tansy's sore in the wrist" is Tansy.
  return !noun(tag.to);
}

/** Names as they stand, with their possessive; "junipers" for "juniper's" where no dog is called that. */
export function namesIn(tokens: readonly Token[], m: Mentions, roster: Roster): NameAt[] {
  const out: NameAt[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const low = (tokens[i] as Token).low;
    let bare = false;
    let forms = roster.forms.get(low);
    if (!forms && low.length > 3 && low.endsWith('s')) {
      forms = roster.forms.get(low.slice(0, -1))?.filter((f) => f.words.length === 1);
      bare = true;
    }
    if (!forms) continue;
    for (const f of forms) {
      let ok = true;
      for (let w = 1; w < f.words.length && ok; w++) ok = tokens[i + w]?.low === f.words[w];
      if (!ok) continue;
      const end = i + f.words.length;
      let to = bare ? end : possessiveEnd(tokens, end);
      const verb = to > end && isVerbS(tokens, m, to);
      if (verb) to = end;
      out.push({ from: i, to, dog: f.dog, possessive: (bare && !isVerbS(tokens, m, end)) || to > end });
      i = to - 1;
      break;
    }
  }
  return out;
}

/** Tags of the lexicon that a call name may share its word with, so that its slot must speak for the dog. */
const THING_TAGS = [
  'food',
  'condition',
  'surface',
  'bootie',
  'item',
  'surface-weak',
  'part',
  'position',
  'gait',
  'sign',
  'act',
] as const;

/** "the look of Minnow", "had enough of Trym": what is of a dog. */
const OF_DOG =
  /^(look|looks|sight|sound|sounds|enough|hold|photo|picture|video|fond|proud|tired|sick|afraid|scared|sure|one|none|neither|either|any|instead|weight|temp|temperature|because|speaking|think|thinking|heard|kind|way|shape|behind|inside|outside|back|top|heart|feet|view|track|thanks|best|worst|much|lot|lots)$/;

/** What a dog is, does or has begins here. */
function dogFollows(tokens: readonly Token[], m: Mentions, to: number, names: ReadonlySet<number>): boolean {
  const t = tokens[to];
  if (!t) return true;
  if (AFTER_DOG.has(t.low) || names.has(to)) return true;
  // "Storm used to pace"
  if (t.low === 'used' && tokens[to + 1]?.low === 'to') return true;
  return Boolean(
    m.at('sign', to) ||
      m.at('fine', to) ||
      m.at('manner', to) ||
      m.at('position', to) ||
      m.at('ate', to) ||
      m.at('drank', to) ||
      m.at('paw', to) ||
      m.at('gait', to) ||
      m.at('drop', to) ||
      m.at('gear-state', to) ||
      m.at('quantity', to),
  );
}

/** Does the word in `[from, to)` stand in a dog's slot? */
export function inDogSlot(
  tokens: readonly Token[],
  m: Mentions,
  at: { from: number; to: number; possessive: boolean },
  names: ReadonlySet<number>,
): boolean {
  const prev = tokens[at.from - 1]?.low ?? '';
  const prev2 = tokens[at.from - 2]?.low ?? '';
  const next = tokens[at.to]?.low ?? '';
  const word = (tokens[at.from] as Token).low;
  const follows = dogFollows(tokens, m, at.to, names);
  // "Fern will need hers trimmed", "Will may have torn a nail", where dogs have such names too
  if (
    /^(will|may|can|might|would|should)$/.test(word) &&
    names.has(at.from - 1) &&
    !at.possessive &&
    /^(be|have|need|not|n't|want|run|go|get|start|stay|rest|ride|take|come|lead|probably|still|also|just|do|eat|drink)$/.test(
      next,
    )
  )
    return false;
  const inList =
    (LIST_LINK.has(prev) && (names.has(at.from - 2) || names.has(at.from - 3))) ||
    (LIST_LINK.has(next) && (names.has(at.to + 1) || names.has(at.to + 2)));
  const idiom = m.at('idiom', at.from);
  if (idiom && idiom.to - idiom.from > 1 && idiom.from >= at.from - 1) {
    // "bear left at the fork" is a turn; "bear left hind" and "bear left lead" are the dog.
    const after = idiom.to;
    if (!(m.at('end', after) || m.at('part', after) || m.at('position', after) || m.at('paw', at.to))) return false;
  }
  if (prev === 'to' && (AFTER_THING.has(next) || (!follows && !at.possessive))) return false;
  // "while I was swearing at it Olive bit clean through …": the object of a preposition ends its clause.
  const objectIt =
    prev === 'it' &&
    follows &&
    (/^(at|of|with|on|about|in|for|to|by|over|into|from|off|took|left|ate|hit|had|put|got|inhaled|refused)$/.test(
      prev2,
    ) ||
      /[^e]ed$/.test(prev2) ||
      m.at('ate', at.from - 1) !== undefined ||
      m.at('drank', at.from - 1) !== undefined);
  // "oh that Goose, he's chewed his neckline"; "after that storm he was tired" is none
  if (
    prev === 'that' &&
    /^(he|she)$/.test(next === ',' ? (tokens[at.to + 1]?.low ?? '') : next) &&
    /^(oh|ah|and|but|well|now|man|boy|[.,;!]|)$/.test(prev2)
  )
    return true;
  if (BEFORE_THING.has(prev) && !objectIt) {
    if (prev === 'the' || prev === 'a' || prev === 'an') return false;
    if (/^(my|your)$/.test(prev)) return follows && !THING_TAGS.some((tag) => m.at(tag, at.from));
    // "its brindle she's nodding": its, written for it is
    if (prev === 'its' && !THING_TAGS.some((tag) => m.at(tag, at.from)))
      return at.possessive || follows || /^(i|the)$/.test(next);
    if (prev === 'her' || prev === 'his' || prev === 'its' || prev === 'their')
      return (
        (at.possessive && follows) ||
        (prev === 'her' &&
          /^(is|was|has|had|wo|ate|did|'s)$/.test(next) &&
          !THING_TAGS.some((tag) => m.at(tag, at.from)))
      );
    if (
      prev === 'i' ||
      prev === 'we' ||
      prev === 'you' ||
      prev === 'they' ||
      prev === 'he' ||
      prev === 'she' ||
      prev === 'it'
    )
      return (
        at.possessive ||
        (follows &&
          /^('s|is|was|has|had|wo|would|did|ate|drank|and|goes|went|came|comes|ran|lost|looks|keeps|got|gets|threw|refused|pulled|wo|does|still)$/.test(
            next,
          ))
      );
    return at.possessive && follows;
  }
  if (ADJECTIVE_BEFORE.has(prev) && !at.possessive) {
    // "he says that Ivy's coughing"; "that biscuit"
    if (prev === 'that')
      return (
        follows &&
        !THING_TAGS.some((tag) => m.at(tag, at.from)) &&
        (m.at('sign', at.to) !== undefined ||
          m.at('ate', at.to) !== undefined ||
          /^('s|is|was|has|had|wo|would|did|needs|looks|seems|ate|drank|lost|ran|and)$/.test(next))
      );
    if (prev === 'of')
      return (
        inList ||
        m.at('company', at.from - 1) !== undefined ||
        m.at('except', at.from - 1) !== undefined ||
        (OF_DOG.test(prev2) && !THING_TAGS.some((tag) => m.at(tag, at.from)) && !AFTER_THING.has(next)) ||
        /^(all|both|each|side|out|rid|most|some|half|care|ahead|front)$/.test(prev2)
      );
    if (prev === 'no') return follows && [1, 2, 3, 4, 5].some((n) => names.has(at.from - n));
    if (inList) return true;
    if (!follows || next === ',' || next === 'so' || next === 'and' || next === '.' || next === '') return false;
    if (prev2 === 'a' || prev2 === 'an' || prev2 === 'the') return false;
  }
  if (ADJECTIVE_Y.has(word) && COPULA.has(prev) && !names.has(at.from - 2) && !at.possessive) {
    const subject = prev === "'s" || prev === 'is' || prev === 'was' ? prev2 : '';
    if (
      IMPERSONAL.has(subject) ||
      /^(got|gets|get|getting|very|really|pretty|too|looks|gone|turned|feels|quite|bit)$/.test(prev) ||
      (prev === 'so' && (!follows || /^([,.;]|)$/.test(next)))
    )
      return false;
  }
  if (prev === 'and' && (m.at('surface', at.from - 2) || m.at('condition', at.from - 2)) && m.at('surface', at.from))
    return false;
  if (AFTER_THING.has(next) && !at.possessive && !inList) {
    if (next !== 'the' && next !== 'that' && next !== 'this' && next !== 'about') return false;
    if (prev === '' || prev === '.' || prev === 'to') return false;
  }
  // "sunny out": the weather
  if (
    !at.possessive &&
    !TAKES_DOG.has(prev) &&
    m.at('condition', at.from) &&
    /^(out|outside|skies|spells)$/.test(next) &&
    tokens[at.to + 1]?.low !== 'of'
  )
    return false;
  if (!at.possessive && THING_TAGS.some((tag) => m.at(tag, at.from))) {
    return (
      inList ||
      (follows && (next !== 'on' || prev === '' || prev === '.') && next !== '.' && next !== '') ||
      TAKES_DOG.has(prev) ||
      (prev === 'at' && m.at('manner', at.from - 2) !== undefined) ||
      // "Waffle 26.2" where dogs are weighed
      (tokens[at.to]?.kind === 'number' && m.of('quantity').length > 0) ||
      names.has(at.to + 1) ||
      ((prev === '' || prev === '.') && /^(i|we)$/.test(next))
    );
  }
  return true;
}

/** People of the kennel in the note. A name that is also a verb ("hope") is one only where a person can stand. */
export function findPeople(tokens: readonly Token[], roster: Roster): PersonMention[] {
  const out: PersonMention[] = [];
  for (let i = 0; i < tokens.length; i++) {
    let low = (tokens[i] as Token).low;
    let bare = false;
    let name = roster.people.get(low);
    if (!name && low.length > 3 && low.endsWith('s')) {
      low = low.slice(0, -1);
      name = roster.people.get(low);
      bare = true;
    }
    if (!name) continue;
    const prev = tokens[i - 1]?.low ?? '';
    const next = tokens[i + 1]?.low ?? '';
    if (/^(i|we|you|they|to|'d|really|just|the|a|sure|do|still|'ll|can|only)$/.test(prev) && !bare && next !== "'s")
      continue;
    if (AFTER_WISH.has(next) && !/^(to)$/.test(next)) continue;
    const to = bare ? i + 1 : possessiveEnd(tokens, i + 1);
    out.push({ from: i, to, name, possessive: bare || to > i + 1 });
  }
  return out;
}

/** "twelve miles": the unit, not the dog Miles. */
export function quantityOwns(tokens: readonly Token[], n: NameAt): boolean {
  const prev = tokens[n.from - 1];
  // "mile 9 Penny's foot": the number is the mile's
  if (/^(mile|km|kilometre|kilometer|k)$/.test(tokens[n.from - 2]?.low ?? '')) return false;
  return Boolean(
    prev &&
      /^(miles|mile|penny|foot|yard|pounds|stone)$/.test((tokens[n.from] as Token).low) &&
      (prev.kind === 'number' ||
        /(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|teen|ty|half|quarter|hundred|few|dozen|couple|many|more)$/.test(
          prev.low,
        ) ||
        // "a couple of miles", but "one of Penny's pads"
        (prev.low === 'of' &&
          !n.possessive &&
          /^(couple|lot|lots|number|dozen|dozens|bunch|hundreds|plenty|few)$/.test(tokens[n.from - 2]?.low ?? ''))),
  );
}

/** The single names that stand in a dog's slot: what a correction can replace. */
export function namesInSlots(tokens: readonly Token[], m: Mentions, roster: Roster): { from: number; to: number }[] {
  const raw = namesIn(tokens, m, roster);
  const starts = new Set(raw.map((r) => r.from));
  const names = raw.filter((r) => inDogSlot(tokens, m, r, starts) && !quantityOwns(tokens, r));
  return [...names, ...misheard(tokens, m, roster, raw, names)];
}

/** Words that are no name as they stand, in a dog's slot, and sound like one. */
export function misheard(
  tokens: readonly Token[],
  m: Mentions,
  roster: Roster,
  raw: readonly NameAt[],
  names: readonly NameAt[],
) {
  const taken: boolean[] = new Array(tokens.length).fill(false);
  for (const r of raw) taken.fill(true, r.from, r.to);
  return heardNames(tokens, m, roster, (i) => taken[i] === true, new Set(names.map((n) => n.from)));
}

/** Dogs that were named in the note as heard and that its corrections have taken out: "he" may still be one of them. */
export function takenBack(
  heard: readonly Token[],
  m: Mentions,
  tokens: readonly Token[],
  roster: Roster,
): { dog: string; start: number }[] {
  const kept = new Set(tokens.map((t) => t.start));
  const out: { dog: string; start: number }[] = [];
  for (const n of namesIn(heard, m, roster)) {
    const start = (heard[n.from] as Token).start;
    if (!kept.has(start)) out.push({ dog: n.dog, start });
  }
  return out;
}
