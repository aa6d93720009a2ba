/** Step "sites", the words: what a token says of the body here, for "back", "front", "ft" and "hr" say other things too. */
import type { End, Part, Paw, Side } from '../entry.ts';
import type { DogPhrase } from './dogs.ts';
import type { Mention, Mentions } from './mentions.ts';
import type { Token } from './tokens.ts';

export interface Site {
  /** Token range, end exclusive. */
  from: number;
  to: number;
  part?: Part;
  side?: Side;
  end?: End;
  /** A plural without a number: "feet look good". */
  plural: boolean;
  /** "that foot", "it", "there": points back at the site before. */
  anaphor: boolean;
  /** Whose, where the words say so: index into the dog phrases. */
  owner?: DogPhrase;
  /** Every single foot that was said, for booties. */
  paws: Paw[];
}

export const WITH_END = new Set<Part>(['leg', 'foot', 'pad', 'web', 'toe', 'nail', 'dewclaw']);
export const LINK = new Set([',', 'and', '&', '+', '/', 'n']);

/** May "back" here be the body's back? Else it is the end of a foot, or no part at all. */
function backIsPart(tokens: readonly Token[], m: Mentions, i: number): boolean {
  const t = tokens[i] as Token;
  if (t.low !== 'back' && t.low !== 'backs') return true;
  const prev = tokens[i - 1]?.low ?? '';
  const next = tokens[i + 1]?.low ?? '';
  // "the back of his dewclaws"
  if (/^(of|end)$/.test(next) && prev !== 'lower') return false;
  if (m.at('part', i + 1) || m.at('bootie', i + 1)) return false;
  if (/^(in|to|at|up|into|on|from|home|down|together|out|then|off|over|again|there)$/.test(next) && prev !== 'lower')
    return false;
  if (
    /^(left|right|both|l|r|moved|put|pulled|come|came|go|got|going|went|be|get|brought|all|way|sent|headed|bring|turned)$/.test(
      prev,
    )
  )
    return false;
  return Boolean(
    /^(his|her|their|'s|lower|mid|the|its|a|dogs)$/.test(prev) ||
      m.at('sign', i - 1) ||
      m.at('sign', i + 1) ||
      /^('s|is|was|looks|feels|muscles)$/.test(next) ||
      /s$/.test(prev),
  );
}

/** Is the left or right at `i` a side of the body here? A lone one is not. */
const sideToken = (m: Mentions, i: number): Mention | undefined => m.at('side', i);

export function tokenRole(
  tokens: readonly Token[],
  m: Mentions,
  i: number,
): 'part' | 'side' | 'end' | 'paw' | 'paws' | undefined {
  // "the limp is back, left front": it returned
  const back =
    (tokens[i] as Token).low === 'back' &&
    /^(is|'s|are|was|were|came|comes|be|back)$/.test(tokens[i - 1]?.low ?? '') &&
    /^([,.;!]|again|today|and|but|)$/.test(tokens[i + 1]?.low ?? '');
  if (back) return undefined;
  if (m.at('paws', i)) return 'paws';
  if (m.at('paw', i)) {
    const word = (tokens[i] as Token).low;
    // "fr", "hr" and "hl" are also other words; "HR 88" is a heart rate.
    if ((word === 'hr' || word === 'lr') && tokens[i + 1]?.kind === 'number') return undefined;
    return 'paw';
  }
  const part = m.at('part', i);
  if (part) {
    if (part.value === 'back' && !backIsPart(tokens, m, i))
      return m.at('end', i) && besideSite(tokens, m, i) ? 'end' : undefined;
    // "on three legs, right front": how, not where
    if (part.value === 'leg' && /^(three|3)$/.test(tokens[i - 1]?.low ?? '')) return undefined;
    if ((tokens[i] as Token).low === 'ft' && tokens[i - 1]?.kind === 'number') return undefined;
    // "foot balm", "paw wax"
    if (m.at('act', i)?.value === 'ointment' || m.at('act', i + 1)?.value === 'ointment')
      if (/^(foot|paw|pad)$/.test((tokens[i] as Token).low)) return undefined;
    if (
      /^(pit|pits|quick|sack|dew|tri|nuts|quad|writs|lip)$/.test((tokens[i] as Token).low) &&
      !m.at('side', i - 1) &&
      !m.at('sign', i + 1)
    )
      return undefined;
    return 'part';
  }
  if (m.at('end', i) && besideSite(tokens, m, i)) return 'end';
  // "no split webs either"
  if ((tokens[i] as Token).low === 'either' && m.at('part', i - 1)) return undefined;
  // "either her wrist or her shoulder": one of two parts, not both sides
  if (
    (tokens[i] as Token).low === 'either' &&
    /^('s|is|was|be|it)$/.test(tokens[i - 1]?.low ?? '') &&
    [2, 3, 4, 5].some((n) => tokens[i + n]?.low === 'or' && !m.at('sign', i + n - 1))
  )
    return undefined;
  if (sideToken(m, i)) return 'side';
  return undefined;
}

/** "front" and "back" are an end only beside a side, a part, a bootie or a number of feet. */
function besideSite(tokens: readonly Token[], m: Mentions, i: number): boolean {
  const low = (tokens[i] as Token).low;
  if (
    low === 'fronts' ||
    low === 'hinds' ||
    low === 'rears' ||
    low === 'hind' ||
    low === 'forefoot' ||
    low === 'forefeet'
  )
    return true;
  const at = (k: number) => Boolean(m.at('part', k) || m.at('bootie', k));
  // "stiff in the back end"
  if (/^(back|rear)$/.test(low) && tokens[i + 1]?.low === 'end') return true;
  if (at(i + 1)) return true;
  const prev = tokens[i - 1]?.low ?? '';
  if (m.at('side', i - 1)) return true;
  // "worn pads in front"
  if (
    low === 'front' &&
    prev === 'in' &&
    m.at('part', i - 2) &&
    (!tokens[i + 1] || /^[.,;!]$/.test(tokens[i + 1]?.low ?? ''))
  )
    return true;
  return (
    (prev === '-' && Boolean(m.at('side', i - 2))) ||
    (/^(one|ones|two)$/.test(tokens[i + 1]?.low ?? '') && prev !== 'up')
  );
}

export const PAWS_OF: Record<string, Paw[]> = { fronts: ['LF', 'RF'], hinds: ['LH', 'RH'], four: [] };
