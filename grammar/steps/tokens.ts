/**
 * Step "tokens": the note's words with their places. wink-nlp splits the text; then joined forms that a thumb or a
 * recogniser writes are cut further ("2h50", "mile-14", "21.8/5", "didnt", "shes"), so that every later step sees the
 * same words whoever wrote them. The text itself is never changed: `text.slice(start, end)` is always what was written.
 *
 * wink-nlp cuts each stretch between blanks by itself, whatever stands around it. So a stretch is cut once and what came of
 * it is remembered: notes are made of the same few hundred words again and again.
 */
import winkModel from 'wink-eng-lite-web-model';
import winkNLP from 'wink-nlp';
import { PART_BEGINS, POINTED_SHORT, SHORT_FORMS } from '../words/short-forms.ts';

/** One word, number or mark of the note. */
export interface Token {
  /** Place in the list. */
  i: number;
  /** Lower case, straight apostrophes; contractions cut ("did" + "n't", "she" + "'s"). */
  low: string;
  /** Start and end (exclusive), UTF-16 units of the note's text. */
  start: number;
  end: number;
  kind: 'word' | 'number' | 'mark';
  /** Was there white space (or the start of the text) before it? */
  gap: boolean;
  /** Is it a word that English has (wink's vocabulary of some 87,000 words)? False for names, slips and mis-hearings. */
  known: boolean;
}

const nlp = winkNLP(winkModel, []);
// The typings leave `uniqueId` out; a word outside the vocabulary gets an id from its end on.
const uniqueId = (nlp.its as unknown as { uniqueId: typeof nlp.its.value }).uniqueId;
const VOCABULARY_END = Number((nlp.readDoc('qzxqzx').tokens().out(uniqueId) as unknown as number[])[0]);

/** Contractions written without their apostrophe, and where they are cut. "its", "well", "were", "id", "ill" stay: they are words. */
const BARE_CONTRACTIONS: Record<string, number> = {};
for (const stem of 'did does do is was has have had would could should wo ca are were ai'.split(' '))
  BARE_CONTRACTIONS[`${stem}nt`] = stem.length;
for (const stem of 'that there she he what who where everyone everybody nobody'.split(' '))
  BARE_CONTRACTIONS[`${stem}s`] = stem.length;
for (const stem of 'we they you i'.split(' ')) {
  BARE_CONTRACTIONS[`${stem}ve`] = stem.length;
}
BARE_CONTRACTIONS.theyre = 4;
BARE_CONTRACTIONS.youre = 3;
BARE_CONTRACTIONS.theyll = 4;
BARE_CONTRACTIONS.youll = 3;
BARE_CONTRACTIONS.im = 1;
// "outta the yard"
BARE_CONTRACTIONS.outta = 3;

// As Scots say it: "isnae", "didnae", "wouldnae"
for (const stem of 'did does is was has have had would could should are were will can'.split(' '))
  BARE_CONTRACTIONS[`${stem}nae`] = stem.length;

const NUMBER = /^[-+−–]?(\d[\d.,:]*|\.\d+)$/;
const isDigit = (c: number) => c >= 48 && c <= 57;
const isLetter = (c: number) => (c >= 97 && c <= 122) || (c >= 65 && c <= 90) || c > 191;

/** Is the character at `k` of a digit, a letter or a mark; points, commas and signs that belong to a number are digits. */
function kindAt(s: string, k: number): 'd' | 'l' | 'm' {
  const c = s.charCodeAt(k);
  if (isDigit(c)) return 'd';
  if (isLetter(c) || c === 39 || c === 8217) return 'l';
  if ((c === 46 || c === 44 || c === 58) && isDigit(s.charCodeAt(k + 1)) && (k === 0 || isDigit(s.charCodeAt(k - 1))))
    return 'd';
  if ((c === 45 || c === 43 || c === 8722) && k === 0 && (isDigit(s.charCodeAt(1)) || s[1] === '.')) return 'd';
  return 'm';
}

/** Cuts `s` at letter–digit borders, and at hyphens, slashes and the like between them; keeps signs and decimal points with their number. */
function pieces(s: string): [number, number][] {
  const out: [number, number][] = [];
  let from = 0;
  let last: string = kindAt(s, 0);
  for (let k = 1; k <= s.length; k++) {
    const now = k < s.length ? kindAt(s, k) : 'end';
    if (now !== last || now === 'm') {
      if (k > from) out.push([from, k]);
      from = k;
      last = now;
    }
  }
  return out;
}

/** "Loki's" of a name that English does not have: the ending is cut off as in any other word. */
function apostrophe(s: string): [number, number][] | undefined {
  const hit = /^(\p{L}+)['’](s|ll|d|re|ve|m)?$/iu.exec(s);
  if (!hit) return undefined;
  const at = (hit[1] as string).length;
  return [
    [0, at],
    [at, s.length],
  ];
}

/** A word like "a.m." whose points belong to it. */
const POINTED = /^([A-Za-z]\.){2,}[A-Za-z]?$|^[A-Za-z]\.[A-Za-z]\.?$/;

/** A word of a stretch, its places counted from the stretch's start. */
type Piece = Omit<Token, 'i'>;

/** How wink-nlp parts a text: at blanks, which are passed over, and at line ends and tabs, which are words of their own. */
const STRETCHES = /([ \u00a0\u2002-\u2005\u2009\u200a\u202f\u205f]+|[\n\r\t]+)/;
const BLANKS = /^[ \u00a0\u2002-\u2005\u2009\u200a\u202f\u205f]/;

/** Stretches remembered; forgotten together when full. */
const REMEMBERED = 20_000;
const remembered = new Map<string, readonly Piece[]>();

/** The words of a stretch without blanks. */
function piecesOf(stretch: string): readonly Piece[] {
  let made = remembered.get(stretch);
  if (!made) {
    made = cut(stretch);
    if (remembered.size >= REMEMBERED) remembered.clear();
    remembered.set(stretch, made);
  }
  return made;
}

const english = new Map<string, boolean>();

/**
 * Does English have the word in lower case? A token's `known` goes by the word as it is written: a list may have "thirty"
 * and not the "Thirty" that begins a sentence, where a name may stand as well.
 */
export function isEnglish(low: string): boolean {
  let is = english.get(low);
  if (is === undefined) {
    is = Number((nlp.readDoc(low).tokens().out(uniqueId) as unknown as number[])[0]) < VOCABULARY_END;
    if (english.size >= REMEMBERED) english.clear();
    english.set(low, is);
  }
  return is;
}

function cut(stretch: string): Piece[] {
  const out: Piece[] = [];
  const add = (start: number, end: number, gap: boolean, known = true) => {
    const low = stretch
      .slice(start, end)
      .replace(/[’‘`´]/g, "'")
      .toLowerCase();
    const c = low.charCodeAt(0);
    const kind = NUMBER.test(low) ? 'number' : isLetter(c) || c === 39 ? 'word' : 'mark';
    out.push({ low, start, end, kind, gap, known });
  };
  const all = nlp.readDoc(stretch).tokens();
  const values = all.out() as string[];
  const ids = all.out(uniqueId) as unknown as number[];
  let at = 0;
  for (let t = 0; t < values.length; t++) {
    const value = values[t] as string;
    const start = stretch.indexOf(value, at);
    if (start < 0) continue;
    const gap = start === 0 || /\s/.test(stretch[start - 1] as string);
    at = start + value.length;
    const simple = /^[A-Za-z]+$/.test(value);
    const bare = simple ? BARE_CONTRACTIONS[value.toLowerCase()] : undefined;
    if (bare) {
      add(start, start + bare, gap);
      add(start + bare, at, false);
    } else if (simple || value.length === 1 || POINTED.test(value))
      add(start, at, gap, (ids[t] as number) < VOCABULARY_END);
    else {
      const cuts = apostrophe(value) ?? pieces(value);
      cuts.forEach(([a, b], k) => {
        add(start + a, start + b, k === 0 && gap);
      });
    }
  }
  return mend(out);
}

/** "nt" after a cut stands for "n't" (wink writes "can't" as "ca" + "n't"), and so on; ".5" is one number. */
function mend(cuts: Piece[]): Piece[] {
  for (let k = 1; k < cuts.length; k++) {
    const t = cuts[k] as Piece;
    if (t.gap) continue;
    const before = cuts[k - 1] as Piece;
    // "every1", "b4", "2day": a figure that is part of its word
    const long =
      before.kind !== t.kind && before.kind !== 'mark' && t.kind !== 'mark' && SHORT_FORMS.get(before.low + t.low);
    if (long) {
      Object.assign(before, { low: long, end: t.end, kind: 'word', known: true });
      cuts.splice(k--, 1);
      continue;
    }
    if (before.low === '.' && before.gap && t.kind === 'number') {
      t.low = `.${t.low}`;
      t.start = before.start;
      t.gap = true;
      cuts.splice(k - 1, 1);
      continue;
    }
    if (t.low === 'nt' || t.low === 'nae') t.low = "n't";
    else if (t.low === 's' && t.kind === 'word' && BARE_CONTRACTIONS[`${before.low}s`]) t.low = "'s";
    else if (t.low === 've') t.low = "'ve";
    else if (t.low === 'll') t.low = "'ll";
    else if (t.low === 're') t.low = "'re";
    else if (t.low === 'm' && before.low === 'i') t.low = "'m";
    else if (t.low === 'ta' && before.low === 'out') t.low = 'of';
  }
  return cuts;
}

/** Words that are written with a mark for their last letters: "wi'", "an'", "o'". */
const CLIPPED: ReadonlyMap<string, string> = new Map([
  ['wi', 'with'],
  ['an', 'and'],
  ['o', 'of'],
]);
/** "At", before a time, in the North. */
const CLOCK_WORDS = /^(kl|kl\.|klo|klokka|klokken|klockan|klukkan)$/;

const WIND = /^(wind|winds|from|out|gusts?|gusting|breeze|the)$/;

/** Does the point behind `t` only cut it short: "exc. Gus", "R. shldr", "v. sore"? */
function shortens(text: string, before: Token | undefined, t: Token, behind: Token | undefined): boolean {
  if (t.kind !== 'word' || !behind?.gap || text.slice(t.end, behind.start).includes('\n')) return false;
  if (POINTED_SHORT.has(t.low)) return behind.kind !== 'mark' || /^[-–~(]$/.test(behind.low);
  return /^[lr]$/.test(t.low) && PART_BEGINS.test(behind.low) && !/^(lead|swing|team|wheel)$/.test(before?.low ?? '');
}

/** How many marks make an arrow at `k`: "->", "→", ">" that stands free before a word. */
function arrowAt(tokens: readonly Token[], k: number): number {
  const low = tokens[k]?.low;
  const n =
    low === '→' ? 1 : low === '-' && tokens[k + 1]?.low === '>' && !tokens[k + 1]?.gap ? 2 : low === '>' ? 1 : 0;
  const before = tokens[k - 1];
  return n && before && before.kind !== 'mark' && tokens[k + n]?.kind === 'word' ? n : 0;
}

/** Reads "thru" as through, "w" and "w/" as with, "n" as and; an N or W beside a number or the wind is a quarter of the sky. */
function shortForms(tokens: Token[], text: string): Token[] {
  const out: Token[] = [];
  for (let k = 0; k < tokens.length; k++) {
    const t = tokens[k] as Token;
    const [next, prev] = [tokens[k + 1], tokens[k - 1]];
    // "'em", "'til": the mark is the word's own
    if ((t.low === "'" || t.low === '"') && next && !next.gap && /^(em|til|cause|bout|round|twas)$/.test(next.low)) {
      next.start = t.start;
      next.gap = t.gap;
      continue;
    }
    // "wi' Isla", "o' the": the mark stands for what is not said
    if (next?.low === "'" && !next.gap && CLIPPED.has(t.low) && tokens[k + 2]?.gap) {
      t.low = CLIPPED.get(t.low) as string;
      t.end = next.end;
      tokens[k + 1] = t;
      continue;
    }
    if (next?.low === '.' && !next.gap && shortens(text, prev, t, tokens[k + 2])) {
      t.end = next.end;
      tokens[k + 1] = t;
      continue;
    }
    // "started kl 8.15", "kl. 12": the clock of a northern speaker
    if (CLOCK_WORDS.test(t.low) && t.gap) {
      const pointed = next?.low === '.' && !next.gap;
      if (tokens[k + (pointed ? 2 : 1)]?.kind === 'number') {
        t.low = 'at';
        t.known = true;
        if (pointed) {
          t.end = (next as Token).end;
          k++;
        }
      }
    }
    // "stopped @ 17:10"; "Gus -> swing", "Rook > lead"
    const arrow = arrowAt(tokens, k);
    if (t.low === '@' || arrow) {
      t.low = arrow ? 'to' : 'at';
      t.kind = 'word';
      t.end = (tokens[k + Math.max(arrow, 1) - 1] as Token).end;
      k += Math.max(arrow, 1) - 1;
    } else if (t.low === 'w' && next?.low === '/' && !next.gap) {
      const out3 = tokens[k + 2];
      const without = out3 && !out3.gap && /^(o|out)$/.test(out3.low);
      t.low = without ? 'without' : 'with';
      t.known = true;
      t.end = without ? out3.end : next.end;
      k += without ? 2 : 1;
    } else if (t.low === 'n' || t.low === 'w') {
      const word = next?.kind === 'word' && (prev?.kind !== 'number' || t.low === 'n');
      if (t.gap && word && !WIND.test(prev?.low ?? '') && !/^winds?$/.test(next.low))
        t.low = t.low === 'n' ? 'and' : 'with';
    } else if (t.low === 'v' && t.gap && next?.gap && next.kind === 'word' && prev?.kind !== 'number') {
      t.low = 'very';
    } else if (t.kind === 'word') {
      const long = SHORT_FORMS.get(t.low);
      if (long) {
        t.low = long;
        t.known = true;
      }
    }
    t.i = out.length;
    out.push(t);
  }
  return out;
}

/** The words of `text` in order. Runs in time linear in the text's length. */
export function tokenize(text: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  for (const stretch of text.split(STRETCHES)) {
    if (stretch && !BLANKS.test(stretch)) {
      const gap = at === 0 || /\s/.test(text[at - 1] as string);
      for (const p of piecesOf(stretch))
        tokens.push({
          i: tokens.length,
          low: p.low,
          start: at + p.start,
          end: at + p.end,
          kind: p.kind,
          gap: p.gap && (p.start > 0 || gap),
          known: p.known,
        });
    }
    at += stretch.length;
  }
  return shortForms(tokens, text);
}

/** The word at `i`, empty outside the note. */
export const lowAt = (tokens: readonly Token[], i: number): string =>
  i >= 0 && i < tokens.length ? (tokens[i] as Token).low : '';

/** The words in `[from, to)`, with blanks between. */
export function wordsIn(tokens: readonly Token[], from: number, to: number): string {
  let words = '';
  for (let i = from; i < to && i < tokens.length; i++) words += i > from ? ` ${lowAt(tokens, i)}` : lowAt(tokens, i);
  return words;
}
