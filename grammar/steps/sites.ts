/**
 * Step "sites": where on a dog. Words for a part, its side and its end are gathered into one site wherever they stand
 * together, in any order and over "of", "on her" and a name between: "left front web", "web on her left front", "pads, both
 * hinds", "both of Storm's shoulders", "LF".
 */
import type { Part } from '../entry.ts';
import type { DogPhrase } from './dogs.ts';
import type { Mentions } from './mentions.ts';
import { gather, pawOf } from './site-runs.ts';
import { type Site, tokenRole, WITH_END } from './site-words.ts';
import type { Token } from './tokens.ts';

export type { Site } from './site-words.ts';

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
        // "that same hock": the part with it
        const same = tokens[a.to - 1]?.low === 'same' ? m.from('part', a.to) : undefined;
        const to = same?.to ?? a.to;
        sites.push({ from: a.from, to, plural: false, anaphor: true, paws: [] });
        i = to;
      } else i++;
      continue;
    }
    const run = gather(tokens, m, i, dogAt);
    if (run) {
      sites.push(...run.sites);
      i = run.to;
    } else i++;
  }
  for (const s of sites) sideInside(tokens, s);
  headings(tokens, sites);
  apposed(tokens, m, sites, dogs);
  pointedBack(tokens, sites);
  return sites.filter((s, n) => !(s.anaphor && (sites[n - 1]?.to ?? 0) >= s.to));
}

/** "under his right arm": the side stands inside the part's own words. */
function sideInside(tokens: readonly Token[], s: Site): void {
  if (s.part !== 'armpit' || s.side || tokens[s.from]?.low === 'armpit') return;
  const side = tokens.slice(s.from, s.to).find((t) => /^(left|right|both)$/.test(t.low))?.low;
  if (side) s.side = side as Site['side'];
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
    const unmarked = !tokens.some((t) => t.kind === 'mark' && t.end > t.start && /^[,.;?!]$/.test(t.low));
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
      /^(on|of|in|under|below|above|beneath)$/.test(behind[0] ?? '') && /^(it|that|there)$/.test(behind[1] ?? '');
    const onSide =
      behind[0] === 'on' &&
      /^(that|the)$/.test(behind[1] ?? '') &&
      (/^(side|leg|one)$/.test(behind[2] ?? '') || behind[2] === 'same');
    if (!there && !onIt && !onSide) return;
    if (onSide) s.to += behind[2] === 'same' ? 4 : 3;
    // "nails on that foot": the foot pointed at belongs to them
    const foot = onIt ? sites[n + 1] : undefined;
    if (foot?.anaphor && foot.from === s.to + 1) s.to = foot.to;
    const last = sites
      .slice(0, n)
      .reverse()
      .find((x) => x.side && x.side !== 'both');
    if (!last) return;
    s.side = last.side;
    if (WITH_END.has(s.part)) s.end = last.end;
  });
}
