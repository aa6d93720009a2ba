/** When a word for a group means dogs: "all", "both" and "the team" mean other things too. */
import { type DogPhrase, phraseOf } from './dog-phrase.ts';
import type { Mention, Mentions } from './mentions.ts';
import type { Roster } from './roster.ts';
import { lowAt, type Token } from './tokens.ts';

/** What is told of a group begins here: "the girls in swing | are nervous". */
const TELLS =
  /^(is|'s|are|'re|was|were|have|has|had|look|looks|looked|did|do|does|got|get|need|needs|seem|seems|all|both|still|wo|would|just|keep|keeps|can|could|pull|pulled|went|came|ran|should)$/;

/** "the girls in swing are …", "the other dogs on the left": only those of the group that stand there. */
export function restrict(tokens: readonly Token[], m: Mentions, p: DogPhrase): void {
  if (p.kind !== 'group' || p.possessive || !/^(F|M|rest|rest-F|rest-M|all|mine)$/.test(p.value ?? '')) return;
  const low = (i: number) => tokens[i]?.low ?? '';
  if (!/^(in|at|on)$/.test(low(p.to))) return;
  let k = p.to + 1;
  if (/^(the|my|that)$/.test(low(k))) k++;
  const place = m.from('position', k) ?? m.from('position', p.to);
  if (place && low(p.to) !== 'on') {
    const told = ['sign', 'manner', 'ate', 'drank', 'gait'].some((tag) => m.at(tag, place.to));
    if (!TELLS.test(low(place.to)) && !told) return;
    p.place = place.value;
    p.to = place.to;
  } else if (low(p.to) === 'on' && /^(left|right)$/.test(low(k)) && !m.at('part', k + 1) && !m.at('end', k + 1)) {
    p.onSide = low(k);
    p.to = low(k + 1) === 'side' ? k + 2 : k + 1;
  }
}

/** "The boy in wheel is limping": the one of them who stands there. */
export function theOneIn(tokens: readonly Token[], m: Mentions, taken: readonly boolean[]): DogPhrase[] {
  const out: DogPhrase[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const word = /^(boy|male|dog)$/.test(tokens[i]?.low ?? '')
      ? 'M'
      : /^(girl|female|bitch)$/.test(tokens[i]?.low ?? '')
        ? 'F'
        : '';
    if (!word || taken[i] || !/^(the|my|our)$/.test(tokens[i - 1]?.low ?? '')) continue;
    const p = phraseOf(i - 1, i + 1, 'group', [], false);
    p.value = tokens[i]?.low === 'dog' ? 'all' : word;
    restrict(tokens, m, p);
    if (!p.place) continue;
    p.single = true;
    out.push(p);
  }
  return out;
}

/** "Feet: tiny crack in Ritz's pad, everyone else clean": the token of the heading that the rest is told under. */
export function headingBefore(tokens: readonly Token[], i: number): number | undefined {
  for (let k = i - 1; k >= 0 && i - k < 40; k--) {
    const low = tokens[k]?.low ?? '';
    if (/^[.;!?]$/.test(low)) return undefined;
    if (low === ':' && (k < 3 || [1, 2, 3].some((n) => k - n < 0 || /^[.;!?]$/.test(tokens[k - n]?.low ?? ''))))
      return k;
  }
  return undefined;
}

/** "Grant's three did six miles", "Nora's dogs": those whom a person drives. */
export function ofPeople(tokens: readonly Token[], roster: Roster, taken: readonly boolean[]): DogPhrase[] {
  const out: DogPhrase[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const name = roster.people.get(tokens[i]?.low ?? '');
    const end = i + 2;
    if (!name || taken[i] || tokens[i + 1]?.low !== "'s" || taken[end]) continue;
    if (!/^(two|three|four|five|six|seven|eight|dogs|team|string|lot|bunch|crew|pair)$/.test(tokens[end]?.low ?? ''))
      continue;
    if (!TELLS.test(tokens[end + 1]?.low ?? '') && !/^(all|both)$/.test(tokens[i - 1]?.low ?? '')) continue;
    const p = phraseOf(i, end + 1, 'group', [], false);
    p.value = `of-${name}`;
    out.push(p);
  }
  return out;
}

/** Marks the phrases of whom eating and drinking is told, up to the next. */
export function eating(m: Mentions, phrases: readonly DogPhrase[], length: number): void {
  phrases.forEach((p, n) => {
    const end = Math.min(phrases[n + 1]?.from ?? length, p.to + 9);
    for (let k = p.from - 3; k < end && !p.eats; k++)
      if (m.at('ate', k) || m.at('drank', k) || (k < p.from && m.at('gave', k))) p.eats = true;
  });
}

/** Does a sign and then "nor" follow? "neither of them" and "neither Storm nor Rook" are of dogs. */
function denialOfTwo(tokens: readonly Token[], m: Mentions, k: number): boolean {
  if (!m.at('sign', k) && !m.at('severity', k) && !m.at('manner', k)) return false;
  for (let n = k + 1; n < k + 6; n++) if (tokens[n]?.low === 'nor') return true;
  return false;
}

/** Bare "all" and "both" are groups only where they stand for dogs; "the team" is one unless somebody is in it. */
export function groupStands(
  tokens: readonly Token[],
  m: Mentions,
  g: { from: number; to: number; value: string },
): boolean {
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
  if (words === 'neither' && (m.at('part', g.to) || m.at('end', g.to) || m.at('side', g.to))) return false;
  // "neither warm nor swollen": a denial of two signs
  if (words === 'neither' && denialOfTwo(tokens, m, g.to)) return false;
  // "you guys, it is so much better": said to people
  if (words === 'you guys' || (words === 'guys' && prev === 'you')) return false;
  // "Ivy 96, Gus 104, no swelling in either"; of parts where one dog's two were told
  if (words === 'either') {
    if (!/^(in|on|with|from|for)$/.test(prev) || !/^([.,;!]|)$/.test(next)) return false;
    for (let k = g.from - 1; k > g.from - 16 && k >= 0; k--) if (m.at('part', k) || m.at('end', k)) return false;
    return true;
  }
  if (words === 'all') {
    // "the boys would go again, they're all barking at me": those spoken of
    if (prev === "'re" && tokens[g.from - 2]?.low === 'they') return false;
    // "booties on all.", "salve for all"; "once and for all" says of nobody
    // "lope, all; exc. Gus"
    if (m.from('except', g.to) || (next === ';' && m.from('except', g.to + 1))) return !/^(at|after|with)$/.test(prev);
    if (/^(on|for|off)$/.test(prev) && /^([.,;!/]|)$/.test(next) && tokens[g.from - 2]?.low !== 'and') return true;
    if (
      /^('s|is|was|it|its|at|after|above|that|for|in|of|by|and|not|with|we|i|us|are|were|have|had|side|dogs|leaders|wheelers|girls|boys|they|pair|gone|went|goes|got|getting|gets|going|acting|looking|came)$/.test(
        prev,
      )
    )
      return false;
    // "rubbed all the hair off"
    if (/^(the|his|her|its|my|that|this)$/.test(next)) return false;
    // "with her tug all droopy", "his tail all limp": of the one thing
    if (/^(his|her|its)$/.test(tokens[g.from - 2]?.low ?? '') && !prev.endsWith('s')) return false;
    // "Fern, feet all good": all four of hers
    if (m.at('part', g.from - 1) && m.at('fine', g.to)) return false;
    if (m.at('end', g.to) || m.at('part', g.to) || m.at('paws', g.from)) return false;
    return verb() && !/^(to|in|on|still|well)$/.test(next);
  }
  // "all four get booties": so many dogs, unless a foot or a leg was spoken of
  if (words === 'all four')
    return (
      (/^(ate|drank|ran|run|go|went|stay)$/.test(next) || /^(get|need|wear|got)$/.test(next)) &&
      !/^(on|his|her|its|the|with|of|:)$/.test(prev) &&
      ![1, 2, 3, 4, 5, 6, 7, 8].some((n) => m.at('part', g.from - n))
    );
  if (/^all (\d+|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fourteen|sixteen)$/.test(words))
    return !(
      m.at('part', g.to) ||
      m.at('paws', g.from) ||
      /^(day|days|miles|feet|nights|hours|km|legs|paws|of|minutes)$/.test(next)
    );
  // "his hind pads, both of them": the pads
  if (/^(the )?(both|two) of (them|em)$/.test(words)) {
    const part = m.at('part', g.from - 1) ?? (prev === ',' ? m.at('part', g.from - 2) : undefined);
    if (
      part &&
      /^(feet|.*s)$/.test(tokens[part.to - 1]?.low ?? '') &&
      !/^(are|were|have|had|ate|drank|got|is|look|'re|went|ran)$/.test(next)
    )
      return false;
  }
  // "feet clean all round" is everybody; "booted all round" is of the feet
  if (words === 'all round' || words === 'all around')
    return (
      Boolean(m.at('food', g.from - 1) && /^([.,;!]|gone|and|they|which|at|but|)$/.test(next)) ||
      [1, 2, 3, 4, 5, 6].some((n) => m.at('part', g.from - n))
    );
  if (words === 'both') {
    if (m.at('part', g.to) || m.at('end', g.to) || m.at('paws', g.from) || m.at('side', g.to)) return false;
    if (/^(ways|sides|times|days|ends|hands|runs|of)$/.test(next)) return false;
    // "both her front feet", "both of his armpits"
    if (/^(his|her|their|its)$/.test(next) && ['part', 'end', 'side', 'paws'].some((tag) => m.at(tag, g.to + 1)))
      return false;
    // "feet are both a bit puffy"
    if (/^(are|were|is|'re)$/.test(prev) && m.at('part', g.from - 2)) return false;
    return true;
  }
  if (words === 'the team' || words === 'team' || words === 'the string' || words === 'the crew') {
    if (/^(in|into|to|of|on|for|from|with|at|out)$/.test(prev) && !/^(feet|paws|booties|wrists)$/.test(next))
      return false;
    if (/^(is|has|seems|ran|pulled|worked|finished|stayed|kept|held|looks)$/.test(next) && howTold(tokens, m, g.to))
      return true;
    return (
      verb() || next === "'s" || /^(whole|entire)$/.test(prev) || /^(snacked|watered|fed|booted|gave|give)$/.test(prev)
    );
  }
  // "dogs in heat: one, Ivy", "the number of dogs limping is two": so many, and not all
  const counted = m.at('sign', g.to);
  if (
    words === 'dogs' &&
    counted &&
    /^(:|is|are|-)$/.test(tokens[counted.to]?.low ?? '') &&
    (tokens[counted.to + 1]?.kind === 'number' ||
      /^(one|two|three|four|five|six|seven|eight)$/.test(tokens[counted.to + 1]?.low ?? ''))
  )
    return false;
  if (words === 'dogs')
    return (
      prev !== 'of' &&
      !/^(two|three|four|five|six|seven|eight|nine|ten|twelve|fourteen|sixteen|\d+|sled|hot|other|loose|young|old|these|those|no|her|his|their|of|only|few|some|with)$/.test(
        prev,
      ) &&
      verb()
    );
  if (words === 'the dogs') return prev !== 'of';
  if (/^(the|those|these|all) (three|four|five|six)$/.test(words) || words === 'the trio')
    return verb() && !m.at('part', g.to) && !m.at('paws', g.from) && !m.at('end', g.to);
  if (words === 'the lot')
    return (
      next !== 'of' &&
      !/^(a|the|in)$/.test(prev) &&
      (verb() || /^(off|on|to|for|booted|fed|watered|gave|of|with|checked|snacked)$/.test(prev))
    );
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
      (verb() ||
        next === ':' ||
        restApart(tokens, g) ||
        m.at('boot-state', g.to) !== undefined ||
        /^(left|passed|cleaned|picked)$/.test(next))
    );
  if (words === 'the rest') return next !== 'of' || /^(them|em)$/.test(tokens[g.to + 1]?.low ?? '');
  if (words === 'others' || words === 'dogs') return verb() || prev === 'the' || restApart(tokens, g);
  if (g.value === 'left' || g.value === 'right') {
    // "booties on the whole left side", "booted the right side"
    if (/\bside$/.test(words) && bootsOn(tokens, m, g.from)) return !/^(of|and|but|only)$/.test(next);
    if (m.at('position', g.from - 1) || m.at('position', g.from - 2) || /^(on|to)$/.test(prev)) return false;
    if (/^(the )?(left|right|l|r) side$/.test(words))
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

/** Are booties told to go on what stands at `i`? */
const bootsOn = (tokens: readonly Token[], m: Mentions, i: number): boolean =>
  /^booted( up)?$/.test(lowAt(tokens, i - 1)) ||
  (lowAt(tokens, i - 1) === 'on' && [1, 2, 3].some((n) => m.at('bootie', i - 1 - n)?.to === i - n));

/** "Ivy - half; rest - all", "Ivy picked at hers, rest all": the rest as a heading of its own; "rest - 10 min" is a halt. */
function restApart(tokens: readonly Token[], g: { from: number; to: number }): boolean {
  const prev = tokens[g.from - 1];
  if (prev && !/^[.,;/]$/.test(prev.low)) return false;
  const next = tokens[g.to];
  if (/^(all|most|half|none|refused|drank|ate)$/.test(next?.low ?? '')) return true;
  const behind = tokens[g.to + 1];
  return (next?.low === ':' || (next?.low === '-' && next.gap)) && behind !== undefined && behind.kind === 'word';
}

/** Is it told right behind token `i` how they went, ate or drank? */
function howTold(tokens: readonly Token[], m: Mentions, i: number): boolean {
  for (let k = i; k < i + 6 && !/^[.,;:]?$/.test(lowAt(tokens, k)); k++)
    if (['manner', 'ate', 'drank', 'gait'].some((tag) => m.from(tag, k))) return true;
  return false;
}

/** "Team is happy": the bare word is everybody where it begins what is told of them; it also begins a row of the line-up. */
export const bareTeams = (tokens: readonly Token[], m: Mentions): Mention[] =>
  m
    .of('position')
    .filter(
      (p) =>
        lowAt(tokens, p.from) === 'team' &&
        p.to - p.from === 1 &&
        !m.at('group', p.from) &&
        /^([.,;!]|and|but|)$/.test(lowAt(tokens, p.from - 1)) &&
        /^(is|was|has|had|looked|looks|ran|did|came|went|seems|seemed|are|were|still|all)$/.test(lowAt(tokens, p.to)) &&
        howTold(tokens, m, p.to),
    )
    .map((p) => ({ tag: 'group', value: 'all', from: p.from, to: p.to }));
