/** Step "sites", runs: words for a part, its side and its end that stand together, and the site or sites they make. */
import type { End, Part, Paw, Side } from '../entry.ts';
import type { DogPhrase } from './dogs.ts';
import type { Mention, Mentions } from './mentions.ts';
import { LINK, PAWS_OF, type Site, tokenRole, WITH_END } from './site-words.ts';
import type { Token } from './tokens.ts';

const UNPAIRED = new Set<Part>(['chest', 'neck', 'back', 'tail', 'nose', 'mouth', 'groin']);
const FILL = new Set([
  'of',
  'on',
  'the',
  'his',
  'her',
  'their',
  'its',
  'in',
  'hand',
  '-',
  ',',
  'and',
  '&',
  '+',
  '/',
  "'s",
  'a',
  'one',
  'ones',
  'side',
  'n',
  'both',
  'at',
  'my',
  'from',
  'under',
  'then',
]);

interface Piece {
  role: 'part' | 'side' | 'end' | 'paw' | 'paws';
  value: string;
  from: number;
  to: number;
}

export function gather(
  tokens: readonly Token[],
  m: Mentions,
  i: number,
  dogAt: (i: number) => DogPhrase | undefined,
): { sites: Site[]; to: number } | undefined {
  const pieces: Piece[] = [];
  let owner: DogPhrase | undefined;
  let k = i;
  let end = i;
  while (k < tokens.length) {
    const here = dogAt(k);
    const role = here && here.kind !== 'pronoun' ? undefined : tokenRole(tokens, m, k);
    if (role) {
      if (pieces.length && stop(tokens, m, pieces, role, end, k)) {
        end = givenBack(tokens, pieces, role, end, k);
        break;
      }
      const mention = m.at(role, k) as Mention;
      const to = Math.max(mention.to, k + 1);
      pieces.push({ role, value: mention.value, from: k, to });
      k = to;
      end = k;
      continue;
    }
    if (!pieces.length) return undefined;
    const t = tokens[k] as Token;
    const dog = dogAt(k);
    if (
      dog?.possessive &&
      k - end <= 2 &&
      pieces.some((p) => p.value === 'both' || p.role === 'paws' || p.role === 'part') &&
      /^(of|on|in)$/.test(tokens[k - 1]?.low ?? '')
    ) {
      owner = dog;
      k = dog.to;
      continue;
    }
    const webbed =
      pieces.some((p) => p.value === 'web' || p.value === 'nail') &&
      /^(between|middle|outside|inside|outer|inner|two|first|last)$/.test(t.low);
    // "left hind outside toe", "right front second toe"
    const which =
      pieces.some((p) => p.role === 'paw' || p.role === 'end') &&
      /^(middle|outside|inside|outer|inner|first|second|third|fourth|last|big|little)$/.test(t.low) &&
      /^(toe|nail|pad)$/.test(m.at('part', k + 1)?.value ?? '');
    if ((FILL.has(t.low) || webbed || which) && k - end < 4) {
      k++;
      continue;
    }
    break;
  }
  const sites = compose(pieces, tokens, m);
  for (const s of sites) s.owner = owner;
  return sites.length ? { sites, to: end } : { sites: [], to: Math.max(end, i + 1) };
}

/** "left wrist and his right | shoulder": the side behind the "and" is the next part's, and is given back to it. */
function givenBack(tokens: readonly Token[], pieces: Piece[], role: Piece['role'], end: number, k: number): number {
  if (role !== 'part' || k !== end) return end;
  let n = pieces.length;
  while (n > 0 && pieces[n - 1]?.role !== 'part') n--;
  const [last, next] = [pieces[n - 1], pieces[n]];
  if (!last || !next || !tokens.slice(last.to, next.from).some((t) => LINK.has(t.low))) return end;
  pieces.length = n;
  return last.to;
}

/** Does a new site begin here instead of more words of this one? */
function stop(
  tokens: readonly Token[],
  m: Mentions,
  pieces: readonly Piece[],
  role: Piece['role'],
  end: number,
  k: number,
): boolean {
  const between = tokens.slice(end, k).map((t) => t.low);
  const has = (r: string) => pieces.some((p) => p.role === r);
  const linked = between.some((b) => LINK.has(b));
  if (between.includes('.') || between.includes(';')) return true;
  if (between.includes(',')) {
    // "wrist, left" and "pads, both hinds" go on; "left wrist, right hip" are two.
    if (between.length > 1) return true;
    if (has('side') || has('paw') || has('paws')) return true;
    return (
      !(role === 'side' || role === 'paw' || role === 'paws') ||
      Boolean(m.at('part', k + 1)) ||
      Boolean(m.at('part', k + 2))
    );
  }
  // "two cracked pads the right front is tiny": a list of feet behind a plural
  if (
    between.includes('the') &&
    !between.some((b) => b === 'of' || b === 'on' || b === 'in') &&
    has('part') &&
    (role === 'side' || role === 'paw')
  )
    return true;
  // "on Storm's fronts and on Rook's hinds": another dog's
  if (between.includes("'s") && between.some((b) => /^(and|,|&|but)$/.test(b))) return true;
  // "ice in both hinds and his right front pad": two places
  if (
    linked &&
    (role === 'side' || role === 'paw') &&
    (has('paws') || pieces.some((p) => p.value === 'both')) &&
    between.some((b) => /^(his|her|their|the)$/.test(b))
  )
    return true;
  // "limping on the front right and the joint above it is puffy": two places
  if (
    linked &&
    between.includes('the') &&
    role === 'part' &&
    (has('paw') || (has('side') && has('end'))) &&
    !has('part') &&
    between.includes('and')
  )
    return true;
  if (!linked && between.length === 0) {
    if (role === 'paw' && has('paw')) return true;
    if (role === 'side' && has('side') && !pieces.some((p) => p.value === 'both')) return true;
    if (role === 'part' && has('part') && !compatibleParts(pieces, (m.at('part', k) as Mention).value)) return true;
  }
  if (
    !linked &&
    between.length > 0 &&
    role === 'part' &&
    has('part') &&
    !compatibleParts(pieces, (m.at('part', k) as Mention).value)
  )
    return true;
  if (
    !linked &&
    between.length > 0 &&
    (role === 'side' || role === 'paw') &&
    (has('side') || has('paw')) &&
    !pieces.some((p) => p.value === 'both')
  )
    return true;
  return false;
}

/** "web of her left front foot": the foot only says where. */
const compatibleParts = (pieces: readonly Piece[], part: string) => {
  const first = pieces.find((p) => p.role === 'part')?.value;
  return (
    part === 'foot' ||
    part === 'leg' ||
    first === 'foot' ||
    first === 'leg' ||
    (first === 'web' && part === 'toe') ||
    (first === 'nail' && part === 'toe')
  );
};

/** "… and the right is a bit tight": a side with a verb and a sign, where a part of the body was told before. */
function ownSign(tokens: readonly Token[], m: Mentions, p: Piece): boolean {
  const low = (i: number) => tokens[i]?.low ?? '';
  if (!/^(the|his|her)$/.test(low(p.from - 1)) || !/^(is|'s|was|feels|felt|looks|looked|seems)$/.test(low(p.to)))
    return false;
  let told = false;
  for (let k = p.from - 2; k >= 0 && p.from - k < 14 && !told; k--) {
    told = m.at('part', k) !== undefined && low(k) !== 'back';
    if (m.at('position', k)) return false;
  }
  if (!told) return false;
  for (let k = p.to + 1; k < p.to + 6; k++) {
    if (m.at('sign', k)) return true;
    if (
      !/^(a|bit|little|touch|tad|not|n't|also|just|still|now|slightly|really|very|pretty|no|starting|to|be|getting|more|even|too|so)$/.test(
        low(k),
      )
    )
      return false;
  }
  return false;
}

/** Composes the pieces of a run into one site, or into several where parts or feet are listed. */
function compose(pieces: readonly Piece[], tokens: readonly Token[], m: Mentions): Site[] {
  const parts = pieces.filter((p) => p.role === 'part');
  if (pieces.length === 1 && pieces[0]?.role === 'side') {
    // A lone left or right says nothing about a body, but for "his right one".
    const p = pieces[0];
    const next = tokens[p.to]?.low ?? '';
    // "a weepy eye, the left, so …"
    const set = tokens[p.from - 1]?.low === 'the' && tokens[p.from - 2]?.low === ',' && /^[.,;!]$/.test(next);
    const said = (k: number) => m.at('sign', k) !== undefined || m.at('fine', k) !== undefined;
    if (
      p.value !== 'both' &&
      tokens[p.to - 1]?.low === 'side' &&
      /^(on|in)$/.test(tokens[p.from - 2]?.low ?? '') &&
      said(p.from - 3)
    )
      return [{ from: p.from, to: p.to, side: p.value as Side, plural: false, anaphor: false, paws: [] }];
    // "dewclaw rub on Wick, right side, from …"
    const near =
      [1, 2, 3, 4, 5, 6, 7].some((n) => m.at('sign', p.from - n) !== undefined) &&
      ![1, 2, 3, 4, 5, 6, 7].some((n) => m.at('position', p.from - n) !== undefined);
    if (
      p.value !== 'both' &&
      tokens[p.to - 1]?.low === 'side' &&
      tokens[p.from - 1]?.low === ',' &&
      near &&
      (!tokens[p.to] || /^[.,;!]$/.test(tokens[p.to]?.low ?? ''))
    )
      return [{ from: p.from, to: p.to, side: p.value as Side, plural: false, anaphor: false, paws: [] }];
    // "shoulder is sore on the left"
    const onIt =
      /^(on|in)$/.test(tokens[p.from - 2]?.low ?? '') &&
      tokens[p.from - 1]?.low === 'the' &&
      m.at('sign', p.from - 3) !== undefined &&
      (!tokens[p.to] || /^([.,;!]|and|but|so)$/.test(next));
    if ((set || onIt) && p.value !== 'both')
      return [{ from: p.from, to: p.to, side: p.value as Side, plural: false, anaphor: false, paws: [] }];
    // "a sore left shoulder, and the right is a bit tight too"
    if (p.value !== 'both' && ownSign(tokens, m, p))
      return [{ from: p.from, to: p.to, side: p.value as Side, plural: false, anaphor: false, paws: [] }];
    if (p.value === 'both' || !(next === 'one' || next === 'side')) return [];
    return [{ from: p.from, to: p.to + 1, side: p.value as Side, plural: false, anaphor: false, paws: [] }];
  }
  const web = parts.some((p) => p.value === 'web');
  // "the web between his toes" is the web
  // "the nail of the left front outside toe" is the nail, "a nail and a toe" are two
  const nail = parts.some((p) => p.value === 'nail');
  const ofNail = (p: Piece) => nail && ![1, 2, 3].some((n) => LINK.has(tokens[p.from - n]?.low ?? ''));
  const specific = parts.filter(
    (p) => p.value !== 'foot' && p.value !== 'leg' && !(p.value === 'toe' && (web || ofNail(p))),
  );
  const groups: Piece[][] = [];
  const distinct = new Set(specific.map((p) => p.value)).size > 1;
  const feet = pieces.filter((p) => p.role === 'paw');
  if (distinct || (feet.length > 1 && parts.length > 1 && !sharedPart(pieces))) {
    // A list: every part closes a site with what stands before it since the last.
    let current: Piece[] = [];
    for (const p of pieces) {
      if (p.role === 'part' && current.some((c) => c.role === 'part')) {
        groups.push(current);
        current = [p];
      } else if (
        (p.role === 'paw' || p.role === 'side') &&
        current.some((c) => c.role === 'part') &&
        linkedBefore(tokens, p)
      ) {
        groups.push(current);
        current = [p];
      } else current.push(p);
    }
    groups.push(current);
  } else groups.push([...pieces]);
  return groups.map((g) => one(g, tokens, m)).filter((s): s is Site => s !== undefined);
}

const linkedBefore = (tokens: readonly Token[], p: Piece) => LINK.has(tokens[p.from - 1]?.low ?? '');

/** "LF and RF webs": one part behind all feet. */
const sharedPart = (pieces: readonly Piece[]) => {
  const parts = pieces.filter((p) => p.role === 'part');
  return parts.length === 1;
};

export function one(pieces: readonly Piece[], tokens: readonly Token[], m: Mentions): Site | undefined {
  const first = pieces[0];
  const last = pieces[pieces.length - 1];
  if (!first || !last) return undefined;
  const partPieces = pieces.filter((p) => p.role === 'part');
  const chosen = partPieces.find((p) => p.value !== 'foot' && p.value !== 'leg') ?? partPieces[0];
  const feet = pieces.some(
    (p) => p.role === 'paws' && tokens.slice(p.from, p.to).some((t) => /^(feet|foot|paws?|forefeet)$/.test(t.low)),
  );
  const part = (chosen?.value as Part | undefined) ?? (feet ? 'foot' : undefined);
  const sides = new Set<string>();
  const ends = new Set<string>();
  const paws = new Set<Paw>();
  let both = false;
  for (const p of pieces) {
    if (p.role === 'side') {
      if (p.value === 'both') both = true;
      else sides.add(p.value);
    } else if (p.role === 'end') ends.add(p.value);
    else if (p.role === 'paw') {
      paws.add(p.value as Paw);
      sides.add(p.value[0] === 'L' ? 'left' : 'right');
      ends.add(p.value[1] === 'F' ? 'front' : 'hind');
    } else if (p.role === 'paws') {
      both = true;
      ends.add(p.value === 'fronts' ? 'front' : p.value === 'hinds' ? 'hind' : 'both');
      for (const w of PAWS_OF[p.value] ?? []) paws.add(w);
      if (p.value === 'four') for (const w of ['LF', 'RF', 'LH', 'RH'] as Paw[]) paws.add(w);
    }
  }
  // A fore- or hindfoot in one word says its end by itself.
  for (const p of partPieces) {
    const e = m.at('end', p.from);
    if (e && !/^backs?$/.test((tokens[p.from] as Token).low)) ends.add(e.value);
  }
  const side: Side | undefined = both || sides.size === 2 ? 'both' : ([...sides][0] as Side | undefined);
  let end: End | undefined = ends.size === 2 ? 'both' : ([...ends][0] as End | undefined);
  const word = chosen ? (tokens[chosen.to - 1] as Token).low : '';
  const plural =
    Boolean(chosen) && /s$|^feet$|^teeth$/.test(word) && !/^(triceps|biceps|pelvis|carpus|tarsus|axis)$/.test(word);
  if (!part && !end) return undefined;
  if (part && !WITH_END.has(part)) end = undefined;
  const finalSide = part && UNPAIRED.has(part) && side !== 'left' && side !== 'right' ? undefined : side;
  if (!paws.size && end && end !== 'both' && finalSide && finalSide !== 'both') paws.add(pawOf(finalSide, end));
  if (!paws.size && end && end !== 'both' && finalSide === 'both')
    for (const w of PAWS_OF[end === 'front' ? 'fronts' : 'hinds'] ?? []) paws.add(w);
  return { from: first.from, to: last.to, part, side: finalSide, end, plural, anaphor: false, paws: [...paws] };
}

/** The foot of a side and an end. */
export function pawOf(side: 'left' | 'right', end: 'front' | 'hind'): Paw {
  return `${side === 'left' ? 'L' : 'R'}${end === 'front' ? 'F' : 'H'}` as Paw;
}
