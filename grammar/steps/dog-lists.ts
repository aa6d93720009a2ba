/** Lists of dogs: "June and Moss" is one phrase, "up front with Ivy and Miles is in team" two. */
import { LIST_LINK } from './dog-names.ts';
import type { DogPhrase } from './dog-phrase.ts';
import type { Mentions } from './mentions.ts';
import type { Token } from './tokens.ts';

/** What may stand behind two dogs to whom something is done. */
const OBJECTS_END = /^([.,;!?]|both|too|a|some|with|on|in|at|for|as|to|today|tonight|up|down|off|)$/;

/** Joins "June and Moss", "Sif, Tyra + Embla", "sable heron fern and birch", "leaders and swing". */
export function joinLists(tokens: readonly Token[], m: Mentions, phrases: DogPhrase[]): DogPhrase[] {
  const out: DogPhrase[] = [];
  for (const [i, p] of phrases.entries()) {
    const before = out[out.length - 1];
    const pair =
      before?.kind === 'pronoun' &&
      p.kind === 'names' &&
      p.from === before.to + 1 &&
      /^(and|&|\+)$/.test(tokens[before.to]?.low ?? '') &&
      !p.possessive &&
      (/^(he|she)$/.test(tokens[before.from]?.low ?? '') ||
        // "booties on her and Tank", but not "booties on her and Tank limped"
        (/^(him|her)$/.test(tokens[before.from]?.low ?? '') && OBJECTS_END.test(tokens[p.to]?.low ?? '')));
    if (before && pair) {
      before.also = [...(before.also ?? []), ...p.dogs];
      before.to = p.to;
      continue;
    }
    // "her leaders, Lark and Sunny": the names say who they are
    const whose =
      before?.kind === 'group' &&
      p.kind === 'names' &&
      p.from === before.to + 1 &&
      tokens[before.to]?.low === ',' &&
      (/^(her|his|their)$/.test(tokens[before.from - 1]?.low ?? '') || before.value === 'told');
    if (before && whose) {
      out[out.length - 1] = { ...p, from: before.from, dogs: [...p.dogs] };
      continue;
    }
    // "neither Storm nor Rook"
    if (
      before?.kind === 'group' &&
      before.negative &&
      before.value === 'both' &&
      before.to === p.from &&
      p.kind === 'names'
    ) {
      out[out.length - 1] = { ...p, from: before.from, dogs: [...p.dogs], negative: true };
      continue;
    }
    if (
      before &&
      before.kind !== 'pronoun' &&
      p.kind !== 'pronoun' &&
      joins(tokens, m, before, p) &&
      !heads(tokens, p, phrases[i + 1])
    ) {
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
      if (
        place &&
        !/^(at|in)$/.test(tokens[place.from]?.low ?? '') &&
        !out.some((o) => o.from >= p.to && o.from <= p.to + 1)
      ) {
        p.groups = [...(p.groups ?? []), place.value];
        p.to = place.to;
      }
    }
  }
  return out;
}

/** "Leaders: Ivy and Storm, | wheelers: Tank and Gus", "…, wheelers Tank and Gus": a place that heads its own list. */
const heads = (tokens: readonly Token[], p: DogPhrase, next: DogPhrase | undefined): boolean =>
  p.kind === 'group' &&
  /^(lead|swing|team|wheel)$/.test(p.value ?? '') &&
  (/^[:=]$/.test(tokens[p.to]?.low ?? '') ||
    (/^[,;]$/.test(tokens[p.from - 1]?.low ?? '') &&
      next?.kind === 'names' &&
      next.from - p.to <= 1 &&
      (next.from === p.to || /^(are|were|is|was|-)$/.test(tokens[p.to]?.low ?? ''))));

/** A verb that one dog has, not two. */
const SINGULAR = new Set(
  "is 's was has does rests goes runs gets stays comes takes looks sits needs pulls wants starts moves slides slips keeps limps rides seems drops trots lopes paces".split(
    ' ',
  ),
);

/** "turbos in team", written for "Turbo's". */
const bareIs = (tokens: readonly Token[], b: DogPhrase): boolean =>
  !b.possessive && tokens[b.to - 1]?.low === `${(b.dogs[0] ?? '').toLowerCase()}s`;

/** Is a dog told moved right behind: "back in swing", "goes up to lead"? */
function ownPlace(tokens: readonly Token[], m: Mentions, k: number): boolean {
  let moved = false;
  for (let n = k; n < k + 4; n++) {
    if (m.from('position', n)) return moved;
    if (/^(back|to|into|moved|went|goes)$/.test(tokens[n]?.low ?? '')) moved = true;
    if (!/^(back|in|at|up|to|into|moved|went|goes|down|is|'s)$/.test(tokens[n]?.low ?? '')) return false;
  }
  return false;
}

const lowsOf = (tokens: readonly Token[]) => tokens.map((t) => t.low).join(' ');

function joins(tokens: readonly Token[], m: Mentions, a: DogPhrase, b: DogPhrase): boolean {
  const between = tokens.slice(a.to, b.from);
  const listed = tokens[b.to]?.low === "'s" && /^(,|and|&)$/.test(tokens[b.to + 1]?.low ?? '');
  const samePossessive = !a.possessive || listed || (b.possessive && between.every((t) => t.low !== ','));
  if (!samePossessive || (b.kind === 'names' && b.dogs.some((d) => a.dogs.includes(d)))) return false;
  if (a.kind === 'group' && b.kind === 'group' && (a.value === 'rest' || b.value === 'rest')) return false;
  // "of the boys, Birk refused": one out of the group
  if (between[0]?.low === ',' && a.kind === 'group' && /^(of|out)$/.test(tokens[a.from - 1]?.low ?? '')) return false;
  // "in booties but the leaders and the girls all drank": the exception is over
  const except = m.at('except', a.from - 1) ?? m.at('except', a.from - 2);
  if (
    except &&
    b.kind === 'group' &&
    between[0]?.low === 'and' &&
    (/^(all|both|did|had|were|are|got|just|only|would|have)$/.test(tokens[b.to]?.low ?? '') ||
      m.at('ate', b.to) ||
      m.at('drank', b.to))
  )
    return false;
  // "shoulders on all of them, Gus the only sore one": one of the group
  if (a.kind === 'group' && /^(is |was |'s )?the only/.test(lowsOf(tokens.slice(b.to, b.to + 3)))) return false;
  // "now the girls, Penny's got ice balls": a heading, and one of them told of
  if (
    between.length === 1 &&
    between[0]?.low === ',' &&
    a.kind === 'group' &&
    b.kind === 'names' &&
    b.dogs.length === 1 &&
    (SINGULAR.has(tokens[b.to]?.low ?? '') || bareIs(tokens, b) || (tokens[b.to]?.low === 'got' && !b.possessive))
  )
    return false;
  // "booted the girls, boys without": two statements
  if (between[0]?.low === ',' && /^[FM]$/.test(a.value ?? '') && /^[FM]$/.test(b.value ?? '')) return false;
  // "Fern in lead with Moss, Otter and Sable in swing"
  // "… see the leaders and Gus's got a rub": one of them does something
  if (
    a.kind === 'group' &&
    !b.possessive &&
    between.length === 1 &&
    between[0]?.low === 'and' &&
    b.kind === 'names' &&
    b.dogs.length === 1 &&
    /^('s|is|was|has)$/.test(tokens[b.to]?.low ?? '')
  )
    return false;
  // "both shoulders on the two of them and Sigrun's leg was …": the name begins anew
  if (a.kind === 'group' && !a.possessive && b.possessive) return false;
  const beside =
    /^(with|beside|alongside|behind)$/.test(tokens[a.from - 1]?.low ?? '') ||
    (tokens[a.from - 1]?.low === 'to' && tokens[a.from - 2]?.low === 'next');
  if (between[0]?.low === ',' && beside) return false;
  // "Fern up front with Moss and Otter back in swing": the second has a place of its own.
  if (beside && (m.at('position', a.from - 2) || m.at('position', a.from - 3)) && ownPlace(tokens, m, b.to))
    return false;
  // "up front with Ivy and Miles is in team": one of the two has a verb of its own
  if (
    beside &&
    between.length === 1 &&
    between[0]?.low === 'and' &&
    b.kind === 'names' &&
    b.dogs.length === 1 &&
    (SINGULAR.has(tokens[b.to]?.low ?? '') || bareIs(tokens, b))
  )
    return false;
  if (a.kind === 'group' && a.value === 'all') return false;
  // "leaders Ivy and Storm swing Rook": the names stand in the place, and the next place follows
  if (between[0]?.low === ',' && /^(lead|swing|team|wheel)$/.test(a.value ?? '') && b.kind === 'names') {
    let k = b.to;
    while (/^(and|&|\+)$/.test(tokens[k]?.low ?? '')) k += 2;
    if (m.from('position', k)) return false;
  }
  // "Sam gets Fern and Moss, Otter stays home": the "and" has closed the list, and one dog does something
  if (
    between.length === 1 &&
    /^(,|and)$/.test(between[0]?.low ?? '') &&
    b.kind === 'names' &&
    b.dogs.length === 1 &&
    tokens.slice(a.from, a.to).some((t) => t.low === 'and') &&
    SINGULAR.has(tokens[b.to]?.low ?? '')
  )
    return false;
  if (
    b.kind === 'group' &&
    (b.value === 'all' || b.value === 'both' || b.value?.startsWith('rest') || b.value?.startsWith('other'))
  )
    return false;
  // "trimmed Bacon and Jam | Honey's dewclaw is torn": the one behind begins anew
  if (between.length === 0) return a.kind === 'names' && b.kind === 'names' && (a.possessive || !b.possessive);
  // "Rook's and Ivy's feet": a possessive for each
  if (between[0]?.low === "'s" && a.kind === 'names' && b.kind === 'names')
    return (b.possessive || tokens[b.to]?.low === "'s") && /^(and|&|\+|,|, and|, &)$/.test(lowsOf(between.slice(1)));
  if (between.length === 1) {
    const link = (between[0] as Token).low;
    if (!LIST_LINK.has(link)) return false;
    if (link === 'and' && a.possessive !== b.possessive && !b.possessive) return false;
    return true;
  }
  return between.length === 2 && (between[0] as Token).low === ',' && /^(and|&|\+)$/.test((between[1] as Token).low);
}
