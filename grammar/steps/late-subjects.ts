/**
 * Step "late subjects": "Small cut on the nose, Opal.", "Chewed her neckline, Opal did.", "Ate fine. Drank. That's Opal." A
 * terse speaker tells first and names afterwards. Where a statement names nobody before, the name is put at its front, so
 * that every later step reads it as if it had been told in the usual order.
 */

import { ACTIONS } from '../words/pauses.ts';
import { findPeople, inDogSlot, type NameAt, namesIn, quantityOwns } from './dog-names.ts';
import type { Mentions } from './mentions.ts';
import type { Roster } from './roster.ts';
import { lowAt, type Token } from './tokens.ts';

interface View {
  tokens: readonly Token[];
  text: string;
  m: Mentions;
  /** Dogs and people, left to right. */
  names: { from: number; to: number; possessive: boolean; person?: true; sex?: 'F' | 'M' }[];
}
/** A name that goes to the front of what was told of it. */
interface Late {
  front: number;
  name: readonly [number, number];
  /** The words with which it was named, which go. */
  gone: readonly [number, number];
  /** It is hers: the name stands with a possessive ending, without width, for the article at `front`. */
  whose?: true;
}

const STRONG = /^[.;!?]$/;
/** What is told of one dog and needs a subject. */
const TELLING = ['sign', 'ate', 'drank', 'gear-state', 'boot-state', 'manner', 'fine', 'drop', 'gait'] as const;
/** Words that lead into a statement whose dog is still to come, or that speak to somebody. */
const LEADS_IN =
  /^(at|after|before|when|while|if|because|since|once|until|by|near|past|with|for|from|like|good|nice|great|easy|thanks|thank|come|sorry|hey|oh|poor|then|mile|and|but|so|unlike|except|besides|speaking|as|about|no|what|who|hi|hello|bye|dear)$/;
const AUX = /^(did|does|do|is|'s|was|has|had|will|would|wo|are|were|ai|could|ca)$/;
const NOT = /^(n't|not)$/;
/** Before the dog that something was done to. */
const TO_WHOM = /^(at|with|over|toward|towards)$/;
/** What may stand behind the name and still belongs to the statement before. */
const TRAILER = /^(too|again|today|now|though|also)$/;

const low = (v: View, i: number) => lowAt(v.tokens, i);
const ends = (v: View, i: number) => i >= v.tokens.length || STRONG.test(low(v, i)) || breaks(v, i);
/** Does a line break stand before token `i`? */
const breaks = (v: View, i: number): boolean => {
  const [a, b] = [v.tokens[i - 1], v.tokens[i]];
  return Boolean(a && b && b.start > a.end && v.text.slice(a.end, b.start).includes('\n'));
};
const tells = (v: View, from: number, to: number, tags: readonly string[] = TELLING): boolean => {
  for (let k = from; k < to; k++) if (tags.some((t) => v.m.at(t, k))) return true;
  return false;
};

/** Is nobody named or spoken of in `[from, to)` who could be the one meant? */
function nobodyIn(v: View, from: number, to: number, own?: string): boolean {
  if (v.names.some((n) => n.from < to && n.to > from)) return false;
  for (let k = from; k < to; k++) {
    if (v.m.at('group', k) || v.m.at('position', k)) return false;
    if (low(v, k) === 'one' && low(v, k - 1) !== '-' && k + 1 < to) return false;
    if (/^(he|she|they|him|them|'em|who|whose|another|other|others)$/.test(low(v, k)) && low(v, k) !== own)
      return false;
    if (v.m.at('me', k) && k - from < 2) return false;
  }
  return true;
}

/** The end of a list of names that begins at name `n`. */
function listEnd(v: View, n: number): number {
  let at = v.names[n] as View['names'][number];
  for (let k = n + 1; k < v.names.length; k++) {
    const next = v.names[k] as View['names'][number];
    const between = v.tokens.slice(at.to, next.from).map((t) => t.low);
    if (next.person || !/^(and|&|\+|,|, and|and also)$/.test(between.join(' '))) break;
    // "…, Tank, and Ivy beside him slacking"
    if (between.length > 1 && !ends(v, next.to) && low(v, next.to) !== ',') break;
    at = next;
  }
  return at.to;
}

/** Where "that's", "that'd be", "it was" before the name at `i` begins. */
function thatIs(v: View, i: number): number | undefined {
  let k = i - 1;
  if (/^(be|been)$/.test(low(v, k))) k--;
  if (!/^('s|is|was|'d|would|will|'ll|has)$/.test(low(v, k))) return low(v, k) === 'thats' ? k : undefined;
  return /^(that|it|this)$/.test(low(v, k - 1)) ? k - 1 : undefined;
}

/** Behind the name: "Opal did", "Opal won't". "Wasn't limping, Gus was" tells of another. */
function auxEnd(v: View, from: number, i: number): number | undefined {
  if (!AUX.test(low(v, i))) return i;
  const not = NOT.test(low(v, i + 1));
  let denied = false;
  for (let k = from; k < i; k++) if (NOT.test(low(v, k))) denied = true;
  if (not !== denied) return undefined;
  return not ? i + 2 : i + 1;
}

/** The first word of what was told before `to` in this sentence. */
function sentenceStart(v: View, to: number): number {
  let k = to;
  while (k > 0 && !STRONG.test(low(v, k - 1)) && !breaks(v, k)) k--;
  return k;
}

/** "She's not limping any more, Opal.": the name behind says who "she" is, where no other bitch was named before. */
function spokenOfBefore(v: View, name: View['names'][number], front: number, cut: number): boolean {
  const own = name.sex === 'F' ? 'she' : 'he';
  if (!name.sex || low(v, front) !== own || v.names.some((n) => n.from < front && n.sex === name.sex)) return false;
  return nobodyIn(v, front, cut, own);
}

/** "…, Opal.", "…, Opal did.", "…, that'd be Opal.", "…, Opal's." */
function behindComma(v: View, n: number): Late | undefined {
  const name = v.names[n] as View['names'][number];
  const that = thatIs(v, name.from);
  const before = that ?? name.from;
  const bare = low(v, before - 1) !== ',';
  const cut = bare ? before : before - 1;
  const front = sentenceStart(v, cut);
  if (bare && TO_WHOM.test(low(v, name.from - 1))) return undefined;
  const list = listEnd(v, n);
  const to = auxEnd(v, front, list);
  // "Snapping at Gus, Penny was": another dog it was done to
  const object = to !== list && !bare ? v.names.findLast((x) => x.to <= cut && x.from > front) : undefined;
  const free = object && TO_WHOM.test(low(v, object.from - 1)) ? object.from : cut;
  if (front >= cut || LEADS_IN.test(low(v, front))) return undefined;
  const he = !nobodyIn(v, front, free);
  if (he && (bare || that !== undefined || !spokenOfBefore(v, name, front, cut))) return undefined;
  if (to === undefined || (bare && (to === list || that !== undefined))) return undefined;
  if (he && (list !== name.to || TRAILER.test(low(v, to)))) return undefined;
  let end = to;
  while (TRAILER.test(low(v, end))) end++;
  const scale =
    v.m.of('quantity').length > 0 && v.tokens.slice(front, cut).every((t) => t.kind !== 'word' || NUMERAL.test(t.low));
  if (!scale && !tells(v, front, cut)) return undefined;
  if (!ends(v, end)) {
    if (low(v, end) !== ',' || bare) return undefined;
    const another = v.names.find((x) => x.from >= end && x.from < nextEnd(v, end));
    if (another && !(another.from === end + 2 && /^(and|but|while)$/.test(low(v, end + 1)))) return undefined;
    if (!tells(v, front, cut, ['sign', 'ate', 'drank', 'gear-state', 'manner'])) return undefined;
  } else if (v.tokens[end]?.low === '?') return undefined;
  return {
    front,
    name: [name.from, name.possessive && list === name.to ? possessiveStart(v, list) : list],
    gone: [cut, to],
  };
}
const NUMERAL =
  /^(a|and|half|quarter|quarters|three|point|pounds?|lbs?|kilos?|kg|(twenty|thirty|forty|fourty|fifty|sixty|seventy|eighty|ninety)|one|two|four|five|six|seven|eight|nine|ten|eleven|twelve|(thir|four|fif|six|seven|eigh|nine)teen|even)$/;
const possessiveStart = (v: View, to: number) => (/^('s|')$/.test(low(v, to - 1)) ? to - 1 : to);
function nextEnd(v: View, i: number): number {
  let k = i;
  while (!ends(v, k) && k < v.tokens.length) k++;
  return k;
}

/** "Ate fine. Feet good. Drank. That's Opal.": a note that names its one dog at the end. */
function atLast(v: View, n: number): Late | undefined {
  const name = v.names[n] as View['names'][number];
  const that = thatIs(v, name.from);
  if (that === undefined || n > 0 || !STRONG.test(low(v, that - 1)) || !ends(v, name.to) || low(v, name.to) === '?')
    return undefined;
  let front = 0;
  while (front < that && !tells(v, front, nextEnd(v, front))) front = nextEnd(v, front) + 1;
  if (front >= that || LEADS_IN.test(low(v, front)) || !nobodyIn(v, 0, that) || name.possessive) return undefined;
  return { front, name: [name.from, name.to], gone: [that, name.to] };
}

/** "The only one who didn't eat was Lark": who it was stands at the end. */
function theOnlyOne(v: View, n: number): Late | undefined {
  const name = v.names[n] as View['names'][number];
  if (!/^(was|is|'s|were|are)$/.test(low(v, name.from - 1))) return undefined;
  let front = name.from - 1;
  while (front > 0 && !/^[.;!?,]$/.test(low(v, front - 1)) && low(v, front) !== 'the') front--;
  const only = low(v, front + 1) === 'only' ? front + 2 : front + 1;
  if (low(v, front) !== 'the' || !/^(one|ones|dog|dogs|two)$/.test(low(v, only))) return undefined;
  const tell = /^(who|that)$/.test(low(v, only + 1)) ? only + 2 : only + 1;
  if (tell >= name.from - 1 || !nobodyIn(v, tell, name.from - 1) || !tells(v, tell, name.from - 1)) return undefined;
  const list = listEnd(v, n);
  if (!ends(v, list) && !/^(,|and|but|so)$/.test(low(v, list))) return undefined;
  return { front: tell, name: [name.from, list], gone: [name.from - 1, list] };
}

/** "The rub Ivy had in the armpits is gone": whose it is stands in a clause of its own behind the sign. */
function whoHad(v: View, n: number): Late | undefined {
  const name = v.names[n] as View['names'][number];
  if (name.possessive || !v.m.at('sign', name.from - 1) || !/^(had|has|got|gets|picked)$/.test(low(v, name.to)))
    return undefined;
  const to = low(v, name.to) === 'picked' && low(v, name.to + 1) === 'up' ? name.to + 2 : name.to + 1;
  let front = name.from - 1;
  while (front > 0 && name.from - front < 6 && !/^(the|that|this|those|these)$/.test(low(v, front))) front--;
  if (!/^(the|that|this|those|these)$/.test(low(v, front)) || !nobodyIn(v, front, name.from)) return undefined;
  if (
    !/^(in|on|at|under|between|behind|last|yesterday|earlier|from|back|this|since|before|over|along|inside|is|has|'s)$/.test(
      low(v, to),
    )
  )
    return undefined;
  const end = nextEnd(v, to);
  for (let k = to; k < end; k++)
    if (/^(is|'s|has|are|have|was|looks|seems|feels|went|cleared|healed)$/.test(low(v, k)))
      return { front, name: [name.from, name.to], gone: [name.from, to], whose: true };
  return undefined;
}

/** Behind a word that can end a statement, a name in a note without marks may be its subject; behind others it is the object. */
const BEFORE_LAST =
  /^(today|yesterday|now|some|though|since|again|morning|month|week|night|either|too|much|hers|his|bit|little|lot|all|up|through|good|fine|it|out|down|home|straw|trail|snow)$/;
const AFTER_DID = /^(and|then|but|since|again|today|this|would|wo|could|had|was|after|before|\w{2,}ing|\w{3,}[^e]ed)$/;

/** In a note without marks, its first name: "left hip ain't as tight stretched it some dolores", "went down flat clancy did". */
function unmarked(v: View): Late[] {
  const [name] = v.names;
  if (!name || name.person || name.from < 2 || v.tokens.some((t) => /^[.,;:!?]$/.test(t.low))) return [];
  const cut = thatIs(v, name.from) ?? name.from;
  if (LEADS_IN.test(low(v, 0)) || ACTIONS.has(low(v, 0)) || !nobodyIn(v, 0, cut) || !tells(v, 0, cut)) return [];
  const list = listEnd(v, 0);
  const did = /^(did|does)$/.test(low(v, list)) && cut === name.from;
  const to = did ? auxEnd(v, 0, list) : list;
  if (to === undefined || name.possessive) return [];
  const last = to >= v.tokens.length;
  if (did ? !last && !AFTER_DID.test(low(v, to)) : !last) return [];
  const k = name.from - 1;
  const ended = did || cut < name.from || BEFORE_LAST.test(low(v, k)) || v.m.at('part', k) || v.m.at('sign', k);
  if (!ended || v.m.at('chat', k)) return [];
  return [{ front: 0, name: [name.from, list], gone: [cut, to] }];
}

function lateIn(v: View): Late[] {
  const out: Late[] = [];
  for (let n = 0; n < v.names.length; n++) {
    const name = v.names[n] as View['names'][number];
    if (name.person || out.some((l) => name.from < l.gone[1])) continue;
    const late = theOnlyOne(v, n) ?? whoHad(v, n) ?? behindComma(v, n) ?? atLast(v, n);
    if (late) out.push(late);
  }
  return out;
}

/** "Cut on the nose, Storm.": a name that is a word too stands alone behind the comma, written large. */
const alone = (tokens: readonly Token[], text: string, n: NameAt): boolean =>
  lowAt(tokens, n.from - 1) === ',' &&
  (n.to >= tokens.length || STRONG.test(lowAt(tokens, n.to))) &&
  /^\p{Lu}/u.test(text.slice((tokens[n.from] as Token).start));

/** "Dragging by the end, both wheelers.": a group alone behind what begins with its way. */
const groupsAlone = (v: View): View['names'] =>
  v.m
    .of('group')
    .filter(
      (g) =>
        low(v, g.from - 1) === ',' &&
        ends(v, g.to) &&
        !v.names.some((n) => n.from < g.to && n.to > g.from) &&
        ['sign', 'manner', 'ate', 'drank', 'gait'].some((t) => v.m.from(t, sentenceStart(v, g.from))),
    )
    .map((g) => ({ from: g.from, to: g.to, possessive: false }));

/** The note's one name and its last word, which means nothing else: "stretched it some ivy". */
const last = (tokens: readonly Token[], m: Mentions, n: NameAt): boolean =>
  n.to === tokens.length &&
  !['food', 'condition', 'surface', 'item', 'bootie', 'part', 'position', 'gait', 'sign', 'act'].some((t) =>
    m.at(t, n.from),
  );

/** The note with its late subjects put first; the same list where there are none. */
export function withLateSubjects(tokens: Token[], m: Mentions, roster: Roster, text: string): Token[] {
  if (!tokens.length) return tokens;
  const raw = namesIn(tokens, m, roster);
  const starts = new Set(raw.map((r) => r.from));
  const dogs = raw.filter(
    (r) =>
      (inDogSlot(tokens, m, r, starts) || alone(tokens, text, r) || (raw.length === 1 && last(tokens, m, r))) &&
      !quantityOwns(tokens, r),
  );
  const people = findPeople(tokens, roster).map((p) => ({ ...p, person: true as const }));
  const sexed = dogs.map((d) => ({ ...d, sex: roster.sexOf(d.dog) }));
  const names = [...people, ...sexed.filter((d) => !people.some((p) => p.from === d.from))].sort(
    (a, b) => a.from - b.from,
  );
  const v: View = { tokens, text, m, names };
  v.names = [...names, ...groupsAlone(v)].sort((a, b) => a.from - b.from);
  const late = [...unmarked(v), ...lateIn(v)];
  if (!late.length) return tokens;
  const out: Token[] = [];
  for (const t of tokens) {
    for (const l of late)
      if (l.front === t.i) {
        const name = tokens.slice(...l.name);
        out.push(...name);
        const end = name.at(-1);
        if (l.whose && end) out.push({ ...end, low: "'s", start: end.end, gap: false });
      }
    if (!late.some((l) => (l.gone[0] <= t.i && t.i < l.gone[1]) || (l.whose && l.front === t.i))) out.push(t);
  }
  return out.map((t, i) => ({ ...t, i }));
}
