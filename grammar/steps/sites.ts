/**
 * Step "sites": where on a dog. Words for a part, its side and its end are gathered into one site wherever they stand
 * together, in any order and over "of", "on her" and a name between: "left front web", "web on her left front", "pads, both
 * hinds", "both of Storm's shoulders", "LF".
 */
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

const WITH_END = new Set<Part>(['leg', 'foot', 'pad', 'web', 'toe', 'nail', 'dewclaw']);
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
]);
const LINK = new Set([',', 'and', '&', '+', '/', 'n']);

/** May "back" here be the body's back? Else it is the end of a foot, or no part at all. */
function backIsPart(tokens: readonly Token[], m: Mentions, i: number): boolean {
  const t = tokens[i] as Token;
  if (t.low !== 'back' && t.low !== 'backs') return true;
  const prev = tokens[i - 1]?.low ?? '';
  const next = tokens[i + 1]?.low ?? '';
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

function tokenRole(
  tokens: readonly Token[],
  m: Mentions,
  i: number,
): 'part' | 'side' | 'end' | 'paw' | 'paws' | undefined {
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
  if (at(i + 1)) return true;
  const prev = tokens[i - 1]?.low ?? '';
  if (m.at('side', i - 1)) return true;
  return (
    (prev === '-' && Boolean(m.at('side', i - 2))) ||
    (/^(one|ones|two)$/.test(tokens[i + 1]?.low ?? '') && prev !== 'up')
  );
}

const PAWS_OF: Record<string, Paw[]> = { fronts: ['LF', 'RF'], hinds: ['LH', 'RH'], four: [] };

/** All sites of the note, left to right, none overlapping. */
export function findSites(tokens: readonly Token[], m: Mentions, dogs: readonly DogPhrase[]): Site[] {
  const sites: Site[] = [];
  const at: (DogPhrase | undefined)[] = [];
  for (const d of dogs) for (let i = d.from; i < d.to; i++) at[i] ??= d;
  const dogAt = (i: number) => at[i];
  for (let i = 0; i < tokens.length; ) {
    const role = tokenRole(tokens, m, i);
    if (!role) {
      const a = m.from('anaphor', i);
      if (
        a &&
        a.to - a.from > 1 &&
        !/^(that|those|there)$/.test((tokens[i] as Token).low + (a.to - a.from > 1 ? 'x' : ''))
      ) {
        sites.push({ from: a.from, to: a.to, plural: false, anaphor: true, paws: [] });
        i = a.to;
      } else i++;
      continue;
    }
    const run = gather(tokens, m, i, dogAt);
    if (run) {
      sites.push(...run.sites);
      i = run.to;
    } else i++;
  }
  headings(tokens, sites);
  apposed(tokens, m, sites, dogs);
  pointedBack(tokens, sites);
  return sites;
}

/** "Sif pads: LF worn, RH cracked": bare feet behind a heading are on its part. */
function headings(tokens: readonly Token[], sites: Site[]): void {
  let part: Part | undefined;
  let end = -1;
  for (const s of sites) {
    for (let k = end; part && k >= 0 && k < s.from; k++) if (/^[.;]$/.test(tokens[k]?.low ?? '')) part = undefined;
    if (part && !s.part && s.end) s.part = part;
    if (s.part && s.plural && ((!s.side && tokens[s.to]?.low === ':') || s.paws.length === 1)) part = s.part;
    end = s.to;
  }
}

const FRONT_ONLY = new Set<Part>(['wrist', 'elbow', 'shoulder', 'triceps', 'armpit', 'chest']);
const HIND_ONLY = new Set<Part>(['hock', 'knee', 'thigh', 'hip', 'groin']);

/**
 * "cut her pad on the fence, left front", "Is that ear …? The left one.": a side told behind, between marks, belongs to the
 * part told before without one. Not over another dog's name, and not a plural ("feet fine, left front iced").
 */
function apposed(tokens: readonly Token[], m: Mentions, sites: Site[], dogs: readonly DogPhrase[]): void {
  sites.forEach((s, n) => {
    const bare =
      s.side &&
      s.side !== 'both' &&
      !s.anaphor &&
      (!s.part || (s.part === 'foot' && s.end !== undefined && WITH_END.has('foot')));
    if (!bare || (s.part && !s.end)) return;
    let a = s.from - 1;
    while (/^(the|on|in|his|her|it|'s|that|its)$/.test(tokens[a]?.low ?? '')) a--;
    const unmarked = !tokens.some((t) => t.kind === 'mark' && /^[,.;?!]$/.test(t.low));
    const onTheSide = tokens[s.to - 1]?.low === 'side' || tokens[s.to]?.low === 'side';
    const opens =
      (/^(the)$/.test(tokens[s.from - 1]?.low ?? '') &&
        /^(on|in)$/.test(tokens[s.from - 2]?.low ?? '') &&
        m.at('sign', s.from - 3) !== undefined) ||
      (onTheSide &&
        /^(on|the|his|her)$/.test(tokens[s.from - 1]?.low ?? '') &&
        /^(on|the)$/.test(tokens[s.from - 1]?.low === 'on' ? 'on' : (tokens[s.from - 2]?.low ?? '')) &&
        Boolean(m.at('sign', a) || m.at('fine', a))) ||
      /^(morning|today|again|there|too|now|tonight|afternoon|yesterday|ago|fence|trail)$/.test(tokens[a]?.low ?? '') ||
      /^[,.?!;:()-]$/.test(tokens[a]?.low ?? '') ||
      (a !== s.from - 1 && tokens[s.to - 1]?.low === 'one');
    let z = s.to;
    if (/^(one|side)$/.test(tokens[z]?.low ?? '')) z++;
    const closes =
      !tokens[z] ||
      (unmarked && dogs.some((d) => d.from === z)) ||
      /^([,.?!;:)-]|and|so|but|theres?|it|is|was|that|which)$/.test((tokens[z] as Token).low);
    if (!opens || !closes || m.at('bootie', z)) return;
    for (let k = n - 1; k >= 0; k--) {
      const p = sites[k] as Site;
      if (s.from - p.to > 18) return;
      if (p.anaphor) continue;
      if (!p.part || p.plural) return;
      if (p.side) return;
      if (dogs.some((d) => d.kind !== 'pronoun' && d.from >= p.to && d.to <= s.from)) return;
      if (s.end && ((FRONT_ONLY.has(p.part) && s.end === 'hind') || (HIND_ONLY.has(p.part) && s.end === 'front')))
        return;
      p.side = s.side;
      if (WITH_END.has(p.part)) p.end ??= s.end;
      s.part = p.part;
      if (WITH_END.has(p.part)) s.end ??= p.end;
      if (p.end && p.side !== 'both')
        p.paws = [pawOf(p.side as 'left' | 'right', p.end === 'front' ? 'front' : 'hind')];
      return;
    }
  });
}

/** "one of the nails on it", "pad there": a part without a side, on the foot that was spoken of before. */
function pointedBack(tokens: readonly Token[], sites: Site[]): void {
  sites.forEach((s, n) => {
    if (!s.part || s.side || s.end || s.anaphor) return;
    const behind = [tokens[s.to]?.low, tokens[s.to + 1]?.low, tokens[s.to + 2]?.low];
    const there =
      behind.includes('there') &&
      !behind.slice(0, behind.indexOf('there')).some((w) => w === ',' || w === '.' || w === 'out');
    const onIt =
      (behind[0] === 'on' || behind[0] === 'of' || behind[0] === 'in') && /^(it|that|there)$/.test(behind[1] ?? '');
    const onSide =
      behind[0] === 'on' &&
      /^(that|the)$/.test(behind[1] ?? '') &&
      (/^(side|leg|one)$/.test(behind[2] ?? '') || behind[2] === 'same');
    if (!there && !onIt && !onSide) return;
    if (onSide) s.to += behind[2] === 'same' ? 4 : 3;
    const last = sites
      .slice(0, n)
      .reverse()
      .find((x) => x.side && x.side !== 'both');
    if (!last) return;
    s.side = last.side;
    if (WITH_END.has(s.part)) s.end = last.end;
  });
}

interface Piece {
  role: 'part' | 'side' | 'end' | 'paw' | 'paws';
  value: string;
  from: number;
  to: number;
}

function gather(
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
      if (pieces.length && stop(tokens, m, pieces, role, end, k)) break;
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
      pieces.some((p) => p.value === 'web') &&
      /^(between|middle|outside|inside|outer|inner|two|first|last)$/.test(t.low);
    if ((FILL.has(t.low) || webbed) && k - end < 4) {
      k++;
      continue;
    }
    break;
  }
  const sites = compose(pieces, tokens, m);
  for (const s of sites) s.owner = owner;
  return sites.length ? { sites, to: end } : { sites: [], to: Math.max(end, i + 1) };
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
    part === 'foot' || part === 'leg' || first === 'foot' || first === 'leg' || (first === 'web' && part === 'toe')
  );
};

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
    // "shoulder is sore on the left"
    const onIt =
      /^(on|in)$/.test(tokens[p.from - 2]?.low ?? '') &&
      tokens[p.from - 1]?.low === 'the' &&
      m.at('sign', p.from - 3) !== undefined &&
      (!tokens[p.to] || /^([.,;!]|and|but|so)$/.test(next));
    if ((set || onIt) && p.value !== 'both')
      return [{ from: p.from, to: p.to, side: p.value as Side, plural: false, anaphor: false, paws: [] }];
    if (p.value === 'both' || !(next === 'one' || next === 'side')) return [];
    return [{ from: p.from, to: p.to + 1, side: p.value as Side, plural: false, anaphor: false, paws: [] }];
  }
  const web = parts.some((p) => p.value === 'web');
  // "the web between his toes" is the web
  const specific = parts.filter((p) => p.value !== 'foot' && p.value !== 'leg' && !(web && p.value === 'toe'));
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

function one(pieces: readonly Piece[], tokens: readonly Token[], m: Mentions): Site | undefined {
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
