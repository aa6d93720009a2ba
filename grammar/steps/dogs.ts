/**
 * Step "dogs": where the note speaks of dogs. Names (decided by their slot), groups, pronouns, lists of them and
 * exceptions, as phrases with their places; who is meant is settled in `groups.ts`.
 */
import { AFTER_OBJECT } from '../words/slots.ts';
import { bareTeams, eating, groupStands, headingBefore, ofPeople, restrict, theOneIn } from './dog-groups.ts';
import { joinLists } from './dog-lists.ts';
import { inDogSlot, misheard, type NameAt, namesIn, possessiveEnd, quantityOwns } from './dog-names.ts';
import { type DogPhrase, phraseOf } from './dog-phrase.ts';
import type { Mentions } from './mentions.ts';
import type { Roster } from './roster.ts';
import { type Token, wordsIn } from './tokens.ts';

export { findPeople, inDogSlot, namesInSlots, takenBack } from './dog-names.ts';
export type { DogPhrase, PersonMention } from './dog-phrase.ts';

const PREPS = new Set(['on', 'in', 'of', 'to', 'off', 'into', 'onto', 'for', 'from']);

/** All phrases that speak of dogs, left to right. `people` are passed so that "she says" stays with the person. */
export function findDogs(tokens: readonly Token[], m: Mentions, roster: Roster): DogPhrase[] {
  const raw = namesIn(tokens, m, roster);
  const starts = new Set(raw.map((r) => r.from));
  const phrases: DogPhrase[] = [];
  let names: NameAt[] = raw.filter((r) => inDogSlot(tokens, m, r, starts));
  names = names.filter((r) => !quantityOwns(tokens, r));
  const taken: boolean[] = [];
  for (const n of names) {
    phrases.push(phraseOf(n.from, n.to, 'names', [n.dog], n.possessive));
    for (let k = n.from; k < n.to; k++) taken[k] = true;
  }
  for (const n of misheard(tokens, m, roster, raw, names)) {
    const p = phraseOf(n.from, n.to, 'names', n.dogs, n.possessive);
    p.doubt = n.doubt;
    p.much = n.much;
    phrases.push(p);
    for (let k = n.from; k < n.to; k++) taken[k] = true;
  }
  for (const g of [...m.of('group'), ...bareTeams(tokens, m)]) {
    if (taken[g.from] || taken[g.to - 1] || !groupStands(tokens, m, g) || tellsPlace(tokens, phrases, g)) continue;
    // "Ivy: clean feet all round": all of hers
    if (/^(round|around)$/.test(tokens[g.to - 1]?.low ?? '') && headed(tokens, phrases, g.from)) continue;
    // "the rest all pulled hard": all of those just named
    if (
      tokens[g.from]?.low === 'all' &&
      g.to === g.from + 1 &&
      phrases.some((d) => d.to === g.from && d.kind === 'group')
    )
      continue;
    const to = possessiveEnd(tokens, g.to);
    const none = tokens[g.from - 1]?.low === 'of' && /^(none|neither)$/.test(tokens[g.from - 2]?.low ?? '') ? 2 : 0;
    const bare =
      /^(everyones|everybodys|leaders|wheelers|dogs|girls|boys)$/.test((tokens[g.to - 1] as Token).low) &&
      Boolean(m.at('part', g.to) || m.at('paws', g.to) || m.at('bootie', g.to));
    // "everybody's got booties on": has
    const has =
      to > g.to &&
      /^(in|on|not|still|all|back|up|out|got|been|eaten|had|drunk|drank|finished|gone|lost|done|taken)$/.test(
        tokens[to]?.low ?? '',
      );
    const p = phraseOf(g.from - none, to, 'group', [], (to > g.to && !has) || bare);
    p.value = g.value === 'none' ? 'all' : g.value === 'neither' ? 'both' : g.value;
    if (/^(count|rest)/.test(g.value)) p.count = counted(tokens, g);
    if (g.value.startsWith('rest')) {
      const heading = headingBefore(tokens, g.from);
      // "Ivy: barking / Gus: same / rest: solid": a dog heads what is told of it alone
      if (!phrases.some((d) => d.kind === 'names' && d.to === heading)) p.since = heading;
    }
    // "the leader is Gus" tells who stands there
    if (/^the-/.test(g.value) && phrases.some((d) => d.kind === 'names' && d.from > to && d.from - to < 3)) continue;
    restrict(tokens, m, p);
    p.negative =
      none > 0 ||
      g.value === 'none' ||
      g.value === 'neither' ||
      /^(no one|nobody|none|not one)\b/.test(wordsIn(tokens, g.from, g.to));
    phrases.push(p);
    for (let k = g.from; k < Math.max(to, p.to); k++) taken[k] = true;
  }
  phrases.push(...ofPeople(tokens, roster, taken), ...theOneIn(tokens, m, taken));
  // "Swing still has the tugs tight": a place that does something is its dogs.
  for (const p of m.of('position')) {
    if (p.to - p.from > 1 || taken[p.from] || !/^(lead|swing|wheel)$/.test((tokens[p.from] as Token).low)) continue;
    const prev = tokens[p.from - 1];
    if (prev && !(prev.kind === 'mark' && /^[.,;]$/.test(prev.low)) && prev.low !== 'and') continue;
    const next = tokens[p.to]?.low ?? '';
    if (!/^(is|'s|are|has|have|looks|looked|look|still|pulling|pulled|ate|was|were|both|all|only|had)$/.test(next))
      continue;
    if (phrases.some((d) => d.kind === 'names' && d.from >= p.to && d.from - p.to <= 3)) continue;
    const phrase = phraseOf(p.from, p.to, 'group', [], false);
    phrase.value = p.value;
    phrases.push(phrase);
    taken[p.from] = true;
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
    // "gave her half a cup": to her
    const given =
      low === 'her' &&
      /^(gave|give|giving|gives|handed|tossed|fed|offered|threw)$/.test(tokens[p.from - 1]?.low ?? '') &&
      !m.at('part', p.to) &&
      !m.at('food', p.to);
    // "moved her back to wheel": the dog, not her back
    const backTo =
      low === 'her' &&
      tokens[p.to]?.low === 'back' &&
      /^(to|in|into|up|at|on|home|down|out|with|there|again)$/.test(tokens[p.to + 1]?.low ?? '');
    if (low === 'em' && tokens[p.from - 1]?.low === 'a') continue;
    // "nipped by one of theirs": another team's
    if (low === 'theirs' && tokens[p.from - 1]?.low === 'of') continue;
    if (/^(em|them)$/.test(low) && feetThem(tokens, m, p.from)) continue;
    // "Moss, her neighbour, may be …" is still said of Moss
    if (
      /^(his|her)$/.test(low) &&
      tokens[p.from - 1]?.low === ',' &&
      /^(neighbour|neighbor|partner|mate|teammate|sister|brother|mother|father|son|daughter|pup|littermate|pal|buddy|friend)$/.test(
        tokens[p.to]?.low ?? '',
      ) &&
      tokens[p.to + 1]?.low === ',' &&
      phrases.some((d) => d.to === p.from - 1 && d.kind === 'names')
    )
      continue;
    const phrase = phraseOf(p.from, p.to, 'pronoun', [], owns && !backTo && !given);
    phrase.value = p.value;
    phrases.push(phrase);
    taken[p.from] = true;
  }
  phrases.sort((a, b) => a.from - b.from);
  const all = exceptions(tokens, m, joinLists(tokens, m, phrases));
  eating(m, all, tokens.length);
  return all;
}

/** Does a dog head the statement that `i` stands in: "Ivy: …"? */
const headed = (tokens: readonly Token[], phrases: readonly DogPhrase[], i: number): boolean =>
  phrases.some(
    (d) =>
      d.kind === 'names' &&
      /^[:-]$/.test(tokens[d.to]?.low ?? '') &&
      d.to < i &&
      !tokens.slice(d.to + 1, i).some((t) => /^[.;!?]$/.test(t.low)),
  );

/** "Gus and Penny are my wheel dogs": the place of those named, nobody else. */
function tellsPlace(
  tokens: readonly Token[],
  phrases: readonly DogPhrase[],
  g: { from: number; value: string },
): boolean {
  if (!/^(the-)?(lead|swing|team|wheel)$/.test(g.value)) return false;
  let k = g.from;
  while (/^(my|our|the|both|all|still|now|again|going|to|be|today|today's)$/.test(tokens[k - 1]?.low ?? '')) k--;
  return (
    /^(is|are|'s|were|was|as|be|'re)$/.test(tokens[k - 1]?.low ?? '') &&
    phrases.some((d) => d.kind === 'names' && !d.possessive && d.to === k - 1)
  );
}

/** "both fronts iced up, cleaned em out": the feet, not the dogs. */
function feetThem(tokens: readonly Token[], m: Mentions, i: number): boolean {
  if (
    !/^(cleaned|clean|picked|pick|dug|wiped|washed|rinsed|scraped|salved|greased|clipped|trimmed|filed|snipped|dried|waxed|soaked|iced|wrapped|taped|touching)$/.test(
      tokens[i - 1]?.low ?? '',
    )
  )
    return false;
  for (let k = i - 2; k > i - 9 && k >= 0 && !/^[.;!?]$/.test((tokens[k] as Token).low); k--)
    if (m.at('paws', k) || (m.at('part', k) && /(s|feet)$/.test((tokens[k] as Token).low))) return true;
  return false;
}

const COUNTS: Record<string, number> = {
  two: 2,
  three: 3,
  trio: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  twelve: 12,
};
const counted = (tokens: readonly Token[], g: { from: number; to: number }) =>
  tokens
    .slice(g.from, g.to)
    .map((t) => COUNTS[t.low])
    .find(Boolean) ?? 0;

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
    // "one of the leaders": not both of them
    if (
      p.kind === 'group' &&
      prev === 'of' &&
      /^(one|two|three|some|couple|few|several|most|another)$/.test(tokens[before - 1]?.low ?? '') &&
      /^(lead|swing|team|wheel|left|right|F|M|all|rest)$/.test(p.value ?? '')
    )
      p.value = 'some-of';
    // "put Lark, not Sunny, in wheel"
    const last = out[out.length - 1];
    if (
      prev === 'not' &&
      p.kind === 'names' &&
      last?.kind === 'names' &&
      before - last.to <= 1 &&
      tokens[before - 1]?.low === ','
    ) {
      p.excepted = true;
      p.company = true;
      out.push(p);
      continue;
    }
    // "bled where Cutter caught him": who did it is not whose it is
    if (/^(where|when|because|after|since)$/.test(prev) && p.kind === 'names' && didToOther(tokens, p.to))
      p.company = true;
    const company = m.at('company', before);
    if (
      company &&
      company.to === before + 1 &&
      !m.at('nothing', before) &&
      // "after Gus balked at the bridge": what he did himself
      !(
        /^(after|before)$/.test(prev) &&
        !p.possessive &&
        (m.at('manner', p.to) ?? m.at('sign', p.to) ?? m.at('ate', p.to))
      ) &&
      !spokenOf(tokens, m, company.from, p) &&
      !eatenBy(tokens, m, company.from)
    )
      p.company = true;
    if (p.company && /^(at|to|toward|towards|past|near|like|than|over|against)$/.test(prev)) p.aside = true;
    if (
      p.possessive &&
      /^(in|into|onto|under)$/.test(prev) &&
      !m.at('part', p.to) &&
      !m.at('side', p.to) &&
      !m.at('paw', p.to)
    )
      p.aside = true;
    const ex = m.at('except', before);
    if (ex && ex.to === before + 1 && p.kind !== 'pronoun' && exceptStands(tokens, ex, p, out)) {
      const group = [...out].reverse().find((q) => isMany(tokens, q) && !q.excepted);
      // "all tight; exc. Rook"
      const until = tokens[ex.from - 1]?.low === ';' ? ex.from - 1 : p.from;
      const near = group && !strongBetween(tokens, group.to, until) ? group : undefined;
      p.excepted = true;
      p.company = true;
      // "feet fine on all but Rook, torn web": the group's statement stands before it
      p.owns = near ? near.to < ex.from || near.prep !== undefined : (tokens[ex.from] as Token).low !== 'all';
      // "of the dogs on the left all but Marit are trotting"
      if (near && near.prep === 'of' && near.to === ex.from && tokens[ex.from]?.low === 'all') {
        near.prep = undefined;
        near.to = p.to;
        p.owns = false;
      }
      if (near) {
        near.except = p;
        if (near.to >= ex.from) near.to = p.to;
      } else {
        const everyone = phraseOf(ex.from, p.to, 'group', [], false);
        everyone.value = 'all';
        everyone.except = p;
        everyone.prep = 'on';
        out.push(everyone);
      }
    }
    out.push(p);
  }
  return out;
}

/** "The salmon was polished off by everybody": who did it stands behind. */
const eatenBy = (tokens: readonly Token[], m: Mentions, by: number): boolean => {
  if (tokens[by]?.low !== 'by') return false;
  const eaten = m.at('ate', by - 1) ?? m.at('drank', by - 1);
  if (!eaten) return false;
  // "…, ignored by Miles"
  const apart = eaten.from === 0 || /^([.,;:!]|and|but)$/.test(tokens[eaten.from - 1]?.low ?? '');
  if (apart) return tokens[by - 1]?.low !== 'ate';
  return [1, 2, 3].some((n) => BEEN.test(tokens[eaten.from - n]?.low ?? ''));
};
const BEEN = /^(is|was|were|are|been|being|got|'s)$/;

/** "With Liesel the left hock is tender": at the head of a statement and before her part, she is the one spoken of. */
function spokenOf(tokens: readonly Token[], m: Mentions, from: number, p: DogPhrase): boolean {
  if (tokens[from]?.low !== 'with' || p.kind !== 'names') return false;
  if (from > 0 && !/^([.;,!?]|and|but)$/.test(tokens[from - 1]?.low ?? '')) return false;
  const k = /^(the|his|her|both)$/.test(tokens[p.to]?.low ?? '') ? p.to + 1 : p.to;
  return [k, k + 1, k + 2].some(
    (i) =>
      (m.at('part', i) || (i === k && m.at('item', i))) &&
      [k, k + 1].every((n) => n >= i || m.at('side', n) || m.at('end', n) || m.at('paw', n)),
  );
}

/** A verb and then "him", "her" or "it": what one dog did to another. */
const didToOther = (tokens: readonly Token[], k: number) =>
  /^(bit|caught|nipped|got|stepped|hit|kicked|grabbed|snapped|nailed|scratched|clawed|tagged|bumped|ran|raked|had)$/.test(
    tokens[k]?.low ?? '',
  ) && [1, 2, 3].some((n) => /^(him|her|it|them)$/.test(tokens[k + n]?.low ?? ''));

const strongBetween = (tokens: readonly Token[], a: number, b: number) =>
  tokens.slice(a, b).some((t) => t.low === '.' || t.low === ';' || t.low === '!' || t.low === '?');

/** A group, or "they": "they've been trotting, bar Gus". */
const isMany = (tokens: readonly Token[], d: DogPhrase): boolean =>
  d.kind === 'group' || (d.kind === 'pronoun' && tokens[d.from]?.low === 'they');

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
  return group !== undefined && isMany(tokens, group) && /^([.;!,]|who|whose|with|)$/.test(next);
}
