/**
 * Step "dogs": where the note speaks of dogs. Names (decided by their slot), groups, pronouns, lists of them and
 * exceptions, as phrases with their places; who is meant is settled in `groups.ts`.
 */
import {
  ADJECTIVE_BEFORE,
  AFTER_DOG,
  AFTER_OBJECT,
  AFTER_THING,
  AFTER_WISH,
  BEFORE_THING,
  COPULA,
  IMPERSONAL,
  TAKES_DOG,
  VERB_AFTER_S,
} from '../words/slots.ts';
import { heardNames } from './hearing-slots.ts';
import type { Mentions } from './mentions.ts';
import type { Roster } from './roster.ts';
import type { Token } from './tokens.ts';

export interface DogPhrase {
  /** Token range, end exclusive; a possessive ending belongs to it. */
  from: number;
  to: number;
  kind: 'names' | 'group' | 'pronoun';
  /** Group or pronoun as the lexicon names it. */
  value?: string;
  /** Call names; filled for groups and pronouns when they are resolved. */
  dogs: string[];
  /** Names that are listed with a group: "leaders and Tansy". */
  also?: string[];
  groups?: string[];
  /** "'s", "his", "their". */
  possessive: boolean;
  /** "nobody", "neither": what is said is denied. */
  negative: boolean;
  /** Stands beside another dog ("with June", "growling at him"): not the one spoken of. */
  company: boolean;
  /** Taken out of a group ("everyone but Moss"). */
  excepted: boolean;
  /** Excepted after the group's own statement: what follows is said of the exception ("all ate exc Nemo - walked off"). */
  owns?: boolean;
  /** Phrase whose dogs are taken out of this one. */
  except?: DogPhrase;
  /** The preposition right before it. */
  prep?: string;
  /** Why the reading is in doubt, in words. */
  doubt?: string;
  /** The reading is not to be taken without a second look. */
  much?: boolean;
}

/** A person's name in the note. */
export interface PersonMention {
  from: number;
  to: number;
  name: string;
  possessive: boolean;
}

const LIST_LINK = new Set(['and', '&', '+', '/', ',', 'n', 'plus', 'or']);
const PREPS = new Set(['on', 'in', 'of', 'to', 'off', 'into', 'onto', 'for', 'from']);

interface NameAt {
  from: number;
  to: number;
  dog: string;
  possessive: boolean;
}

/** Is there a possessive ending at `k`? Gives the token behind it. */
function possessiveEnd(tokens: readonly Token[], k: number): number {
  const t = tokens[k];
  if (t && !t.gap && (t.low === "'s" || t.low === "'")) return k + 1;
  return k;
}

/** "Loki's been chewing", "Saga's riding": the 's of is and has, told by what follows. */
function isVerbS(tokens: readonly Token[], m: Mentions, k: number): boolean {
  const next = tokens[k]?.low ?? '';
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
function namesIn(tokens: readonly Token[], m: Mentions, roster: Roster): NameAt[] {
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

/** What a dog is, does or has begins here. */
function dogFollows(tokens: readonly Token[], m: Mentions, to: number, names: ReadonlySet<number>): boolean {
  const t = tokens[to];
  if (!t) return true;
  if (AFTER_DOG.has(t.low) || names.has(to)) return true;
  return Boolean(
    m.at('sign', to) ||
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
  if (BEFORE_THING.has(prev)) {
    if (
      prev === 'that' &&
      follows &&
      !THING_TAGS.some((tag) => m.at(tag, at.from)) &&
      (at.possessive || /^('s|is|was|has|had|wo|would|did|needs|looks|seems)$/.test(next))
    )
      return true;
    if (prev === 'that' && m.at('sign', at.to) && !m.at('condition', at.from)) return true;
    if (prev === 'that' || prev === 'the' || prev === 'a' || prev === 'an') return false;
    if (/^(my|your)$/.test(prev)) return follows && !THING_TAGS.some((tag) => m.at(tag, at.from));
    if (prev === 'her' || prev === 'his' || prev === 'its' || prev === 'their') return at.possessive && follows;
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
    if (prev === 'that') return false;
    if (prev === 'of')
      return (
        inList ||
        m.at('company', at.from - 1) !== undefined ||
        m.at('except', at.from - 1) !== undefined ||
        /^(all|both|each|side|out|rid|most|some|half|care|ahead|front)$/.test(prev2)
      );
    if (prev === 'no') return follows && [1, 2, 3, 4, 5].some((n) => names.has(at.from - n));
    if (inList) return true;
    if (!follows || next === ',' || next === 'so' || next === 'and' || next === '.' || next === '') return false;
    if (prev2 === 'a' || prev2 === 'an' || prev2 === 'the') return false;
  }
  if (word.endsWith('y') && COPULA.has(prev) && !names.has(at.from - 2) && !at.possessive) {
    const subject = prev === "'s" || prev === 'is' || prev === 'was' ? prev2 : '';
    if (
      IMPERSONAL.has(subject) ||
      /^(got|gets|get|getting|so|very|really|pretty|too|looks|gone|turned|feels|quite|bit)$/.test(prev)
    )
      return false;
  }
  if (prev === 'and' && (m.at('surface', at.from - 2) || m.at('condition', at.from - 2)) && m.at('surface', at.from))
    return false;
  if (AFTER_THING.has(next) && !at.possessive && !inList) {
    if (next !== 'the' && next !== 'that' && next !== 'this' && next !== 'about') return false;
    if (prev === '' || prev === '.' || prev === 'to') return false;
  }
  if (!at.possessive && THING_TAGS.some((tag) => m.at(tag, at.from))) {
    return (
      inList ||
      (follows && (next !== 'on' || prev === '' || prev === '.') && next !== '.' && next !== '') ||
      TAKES_DOG.has(prev) ||
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

const blank = { possessive: false, negative: false, company: false, excepted: false };

/** Bare "all" and "both" are groups only where they stand for dogs; "the team" is one unless somebody is in it. */
function groupStands(tokens: readonly Token[], m: Mentions, g: { from: number; to: number; value: string }): boolean {
  const prev = tokens[g.from - 1]?.low ?? '';
  const next = tokens[g.to]?.low ?? '';
  const words = tokens
    .slice(g.from, g.to)
    .map((t) => t.low)
    .join(' ');
  const verb = () =>
    Boolean(
      m.at('ate', g.to) || m.at('drank', g.to) || m.at('manner', g.to) || m.at('fine', g.to) || m.at('sign', g.to),
    ) ||
    /^(are|were|was|had|have|did|do|look|looks|looked|got|get|took|seem|seemed|on|in|going|went|came|ran|pulling|wearing|booted|still|well|wanted|would|just|only|refused|'re|need|needed|hyd|to)$/.test(
      next,
    );
  if (words === 'all') {
    if (
      /^('s|is|was|it|at|after|above|that|for|in|of|by|and|not|with|we|i|us|are|were|have|had|side|dogs|leaders|wheelers|girls|boys|they|pair)$/.test(
        prev,
      )
    )
      return false;
    if (m.at('end', g.to) || m.at('part', g.to) || m.at('paws', g.from)) return false;
    return verb() && !/^(to|in|on|still|well)$/.test(next);
  }
  if (/^all (\d+|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fourteen|sixteen)$/.test(words))
    return !(
      m.at('part', g.to) ||
      m.at('paws', g.from) ||
      /^(day|days|miles|feet|nights|hours|km|legs|paws|of|minutes)$/.test(next)
    );
  // "feet clean all round" is everybody; "booted all round" is of the feet
  if (words === 'all round' || words === 'all around') return [1, 2, 3, 4, 5, 6].some((n) => m.at('part', g.from - n));
  if (words === 'both') {
    if (m.at('part', g.to) || m.at('end', g.to) || m.at('paws', g.from) || m.at('side', g.to)) return false;
    if (/^(ways|sides|times|days|ends|hands|runs|of)$/.test(next)) return false;
    // "feet are both a bit puffy"
    if (/^(are|were|is|'re)$/.test(prev) && m.at('part', g.from - 2)) return false;
    return true;
  }
  if (words === 'the team' || words === 'team' || words === 'the string' || words === 'the crew') {
    if (/^(in|into|to|of|on|for|from|with|at|out)$/.test(prev) && !/^(feet|paws|booties|wrists)$/.test(next))
      return false;
    return (
      verb() || next === "'s" || /^(whole|entire)$/.test(prev) || /^(snacked|watered|fed|booted|gave|give)$/.test(prev)
    );
  }
  if (words === 'dogs')
    return (
      prev !== 'of' &&
      !/^(two|three|four|five|six|seven|eight|nine|ten|twelve|fourteen|sixteen|\d+|sled|hot|other|loose|young|old|these|those|no|her|his|their|of|only|few|some|with)$/.test(
        prev,
      ) &&
      verb()
    );
  if (words === 'the dogs') return prev !== 'of';
  if (words === 'the bunch' || words === 'the gang' || words === 'the string') return verb();
  if (words === 'the other' || words === 'other one' || words === 'the other one')
    return (
      !/^(side|day|night|week|end|foot|leg|way|sled|team|hind|front|sleds|wrist|paw|pad|web|ear|eye)$/.test(next) &&
      !m.at('part', g.to) &&
      !m.at('end', g.to)
    );
  if (words === 'rest')
    return (
      prev !== 'to' &&
      prev !== 'a' &&
      (verb() || m.at('boot-state', g.to) !== undefined || /^(left|passed|cleaned|picked)$/.test(next))
    );
  if (words === 'the rest') return next !== 'of' || /^(them|em)$/.test(tokens[g.to + 1]?.low ?? '');
  if (words === 'others' || words === 'dogs') return verb() || prev === 'the';
  if (g.value === 'left' || g.value === 'right') {
    if (m.at('position', g.from - 1) || m.at('position', g.from - 2) || /^(on|to)$/.test(prev)) return false;
    if (/^(the )?(left|right) side$/.test(words))
      return (
        verb() || /^(all|'s|is|has|looks|going|pulling)$/.test(next) || Boolean(m.at('part', g.to) || m.at('ate', g.to))
      );
  }
  if (g.value === 'lead' || g.value === 'swing' || g.value === 'wheel') {
    if (words === 'leads') return /^(both|my|two)$/.test(prev);
    if (words === 'wheels' || words === 'swings' || words === 'the swing' || words === 'the leads') return verb();
  }
  if (words === 'the pair' || words === 'pair' || words === 'the two') return next !== 'of' && !m.at('part', g.to);
  if (/^(girls|boys|ladies|males|females|gals|lads|bitches)$/.test(words))
    return !/^(good|you|hey|ok|okay|small|little|school|young|one|two|three|some|local|teenage|birthday|a|few)$/.test(
      prev,
    );
  if (words === 'the guys' || words === 'these guys') return verb();
  if (words === 'anyone' || words === 'anybody') return !/^(does|did|if|has|is|can|know|seen)$/.test(prev);
  return true;
}

/** Words that are no name as they stand, in a dog's slot, and sound like one. */
function misheard(
  tokens: readonly Token[],
  m: Mentions,
  roster: Roster,
  raw: readonly NameAt[],
  names: readonly NameAt[],
) {
  const taken = new Set(raw.flatMap((r) => Array.from({ length: r.to - r.from }, (_, k) => r.from + k)));
  return heardNames(tokens, m, roster, (i) => taken.has(i), new Set(names.map((n) => n.from)));
}

/** The single names that stand in a dog's slot: what a correction can replace. */
export function namesInSlots(tokens: readonly Token[], m: Mentions, roster: Roster): { from: number; to: number }[] {
  const raw = namesIn(tokens, m, roster);
  const starts = new Set(raw.map((r) => r.from));
  const names = raw.filter((r) => inDogSlot(tokens, m, r, starts) && !quantityOwns(tokens, r));
  return [...names, ...misheard(tokens, m, roster, raw, names)];
}

/** All phrases that speak of dogs, left to right. `people` are passed so that "she says" stays with the person. */
export function findDogs(tokens: readonly Token[], m: Mentions, roster: Roster): DogPhrase[] {
  const raw = namesIn(tokens, m, roster);
  const starts = new Set(raw.map((r) => r.from));
  const phrases: DogPhrase[] = [];
  let names: NameAt[] = raw.filter((r) => inDogSlot(tokens, m, r, starts));
  names = names.filter((r) => !quantityOwns(tokens, r));
  const taken: boolean[] = [];
  for (const n of names) {
    phrases.push({ ...blank, from: n.from, to: n.to, kind: 'names', dogs: [n.dog], possessive: n.possessive });
    for (let k = n.from; k < n.to; k++) taken[k] = true;
  }
  for (const n of misheard(tokens, m, roster, raw, names)) {
    phrases.push({ ...blank, ...n, kind: 'names' });
    for (let k = n.from; k < n.to; k++) taken[k] = true;
  }
  for (const g of m.of('group')) {
    if (taken[g.from] || taken[g.to - 1] || !groupStands(tokens, m, g)) continue;
    const to = possessiveEnd(tokens, g.to);
    const bare =
      /^(everyones|everybodys|leaders|wheelers|dogs|girls|boys)$/.test((tokens[g.to - 1] as Token).low) &&
      Boolean(m.at('part', g.to) || m.at('paws', g.to) || m.at('bootie', g.to));
    phrases.push({
      ...blank,
      from: g.from,
      to,
      kind: 'group',
      value: g.value === 'none' ? 'all' : g.value === 'neither' ? 'both' : g.value,
      dogs: [],
      possessive: to > g.to || bare,
      negative:
        g.value === 'none' ||
        g.value === 'neither' ||
        /^(no one|nobody|none)\b/.test(
          tokens
            .slice(g.from, g.to)
            .map((t) => t.low)
            .join(' '),
        ),
    });
    for (let k = g.from; k < to; k++) taken[k] = true;
  }
  for (const p of m.of('pronoun')) {
    if (taken[p.from]) continue;
    const low = (tokens[p.from] as Token).low;
    // "moved her up": the dog; "her left wrist": whose.
    const owns =
      low === 'her'
        ? !(
            AFTER_OBJECT.has(tokens[p.to]?.low ?? '.') &&
            !m.at('part', p.to) &&
            !(m.at('end', p.to) && m.at('part', p.to + 1))
          )
        : /^(his|hers|theirs?)$/.test(low);
    if (low === 'em' && tokens[p.from - 1]?.low === 'a') continue;
    phrases.push({
      ...blank,
      from: p.from,
      to: p.to,
      kind: 'pronoun',
      value: p.value,
      dogs: [],
      possessive: owns,
    });
    taken[p.from] = true;
  }
  phrases.sort((a, b) => a.from - b.from);
  return exceptions(tokens, m, joinLists(tokens, m, phrases));
}

/** "twelve miles": the unit, not the dog Miles. */
function quantityOwns(tokens: readonly Token[], n: NameAt): boolean {
  const prev = tokens[n.from - 1];
  return Boolean(
    prev &&
      /^(miles|mile|penny|foot|yard|pounds|stone)$/.test((tokens[n.from] as Token).low) &&
      (prev.kind === 'number' ||
        /(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|teen|ty|half|quarter|hundred|few|of|dozen|couple|many|more)$/.test(
          prev.low,
        )),
  );
}

/** Joins "June and Moss", "Sif, Tyra + Embla", "sable heron fern and birch", "leaders and swing". */
function joinLists(tokens: readonly Token[], m: Mentions, phrases: DogPhrase[]): DogPhrase[] {
  const out: DogPhrase[] = [];
  for (const p of phrases) {
    const before = out[out.length - 1];
    const pair =
      before?.kind === 'pronoun' &&
      /^(he|she)$/.test(tokens[before.from]?.low ?? '') &&
      p.kind === 'names' &&
      p.from === before.to + 1 &&
      tokens[before.to]?.low === 'and' &&
      !p.possessive;
    if (before && pair) {
      before.also = [...(before.also ?? []), ...p.dogs];
      before.to = p.to;
      continue;
    }
    if (before && before.kind !== 'pronoun' && p.kind !== 'pronoun' && joins(tokens, before, p)) {
      if (p.kind === 'names') {
        if (before.kind === 'names') before.dogs.push(...p.dogs.filter((d) => !before.dogs.includes(d)));
        else before.also = [...(before.also ?? []), ...p.dogs];
      } else if (before.kind === 'names') {
        before.also = before.dogs;
        before.dogs = [];
        before.kind = 'group';
        before.value = p.value;
      } else before.groups = [...(before.groups ?? []), p.value as string];
      before.to = p.to;
      before.possessive = p.possessive;
      if (p.doubt) before.doubt = before.doubt ? `${before.doubt}; ${p.doubt}` : p.doubt;
      if (p.much) before.much = true;
      continue;
    }
    out.push({ ...p, dogs: [...p.dogs] });
  }
  for (const p of out) {
    // "booted leaders and swing": a place after a group of places is its dogs.
    if (
      p.kind === 'group' &&
      /^(lead|swing|team|wheel)$/.test(p.value ?? '') &&
      /^(and|&|\+|n)$/.test(tokens[p.to]?.low ?? '')
    ) {
      const place = m.from('position', p.to + 1);
      if (place && !out.some((o) => o.from >= p.to && o.from <= p.to + 1)) {
        p.groups = [...(p.groups ?? []), place.value];
        p.to = place.to;
      }
    }
  }
  return out;
}

function joins(tokens: readonly Token[], a: DogPhrase, b: DogPhrase): boolean {
  const between = tokens.slice(a.to, b.from);
  const samePossessive = !a.possessive || (b.possessive && between.every((t) => t.low !== ','));
  if (!samePossessive || (b.kind === 'names' && b.dogs.some((d) => a.dogs.includes(d)))) return false;
  if (a.kind === 'group' && b.kind === 'group' && (a.value === 'rest' || b.value === 'rest')) return false;
  // "Fern in lead with Moss, Otter and Sable in swing"
  if (between[0]?.low === ',' && /^(with|beside|alongside)$/.test(tokens[a.from - 1]?.low ?? '')) return false;
  if (a.kind === 'group' && a.value === 'all') return false;
  if (
    b.kind === 'group' &&
    (b.value === 'all' || b.value === 'both' || b.value === 'rest' || b.value?.startsWith('other'))
  )
    return false;
  if (between.length === 0) return a.kind === 'names' && b.kind === 'names';
  if (between.length === 1) {
    const link = (between[0] as Token).low;
    if (!LIST_LINK.has(link)) return false;
    if (link === 'and' && a.possessive !== b.possessive && !b.possessive) return false;
    return true;
  }
  return between.length === 2 && (between[0] as Token).low === ',' && /^(and|&|\+)$/.test((between[1] as Token).low);
}

/** Sets company and prepositions, and takes exceptions out of their group. */
function exceptions(tokens: readonly Token[], m: Mentions, phrases: DogPhrase[]): DogPhrase[] {
  const out: DogPhrase[] = [];
  for (const p of phrases) {
    if (p.kind === 'pronoun' && /^(he|she|they)$/.test(tokens[p.from]?.low ?? '')) {
      out.push(p);
      continue;
    }
    let before = p.from - 1;
    if (/^(the|all|poor|old|our|my|even|just)$/.test(tokens[before]?.low ?? '')) before--;
    const prev = tokens[before]?.low ?? '';
    if (PREPS.has(prev)) p.prep = prev;
    const company = m.at('company', before);
    if (company && company.to === before + 1) p.company = true;
    const ex = m.at('except', before);
    if (ex && ex.to === before + 1 && p.kind !== 'pronoun' && exceptStands(tokens, ex, p, out)) {
      const group = [...out].reverse().find((q) => q.kind === 'group' && !q.excepted);
      const near = group && !strongBetween(tokens, group.to, p.from) ? group : undefined;
      p.excepted = true;
      p.company = true;
      p.owns = !near || near.to < ex.from;
      if (near) {
        near.except = p;
        if (near.to >= ex.from) near.to = p.to;
      } else {
        out.push({ ...blank, from: ex.from, to: p.to, kind: 'group', value: 'all', dogs: [], except: p, prep: 'on' });
      }
    }
    out.push(p);
  }
  return out;
}

const strongBetween = (tokens: readonly Token[], a: number, b: number) =>
  tokens.slice(a, b).some((t) => t.low === '.' || t.low === ';' || t.low === '!' || t.low === '?');

/** "but" and "save" except a dog only right behind a group, or where the dog ends the sentence. */
function exceptStands(
  tokens: readonly Token[],
  ex: { from: number; to: number },
  p: DogPhrase,
  before: readonly DogPhrase[],
): boolean {
  const word = (tokens[ex.from] as Token).low;
  if (word !== 'but' && word !== 'save' && word !== 'minus' && word !== 'bar' && word !== 'besides' && word !== 'ex')
    return true;
  const group = before[before.length - 1];
  if (group?.kind === 'group' && group.to === ex.from) {
    // "no lameness in anybody, but Kestrel's shortening up"
    const verb = /^('s|is|was|has|looks|got|'ll)$/.test(tokens[p.to]?.low ?? '');
    return !(word === 'but' && group.prep !== undefined && verb && !p.possessive);
  }
  if (tokens[ex.from]?.low === 'but' && tokens[ex.from - 1]?.low === 'all') return true;
  const next = tokens[p.to]?.low ?? '';
  return group?.kind === 'group' && (next === '' || next === '.' || next === ';' || next === '!' || next === ',');
}
