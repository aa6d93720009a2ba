/** Parts of one: "half", "three quarters", "3/4", "½", "and a half", "four over nine". */
import { GLYPHS, HYPHENS, NUMBERS, ORDINALS, PARTS_OF_ONE } from '../words/numbers.ts';
import type { NumberReading } from './numbers.ts';
import { cardinal, classOf, lead, type Piece, PLAIN_FIGURES, tidy, tied } from './quantity-cardinals.ts';
import type { Token } from './tokens.ts';

/** "half", "a half", "three quarters", "two thirds", "½" at `i`: a part of one. */
export function partAt(t: readonly Token[], i: number): (Piece & { spelled: boolean }) | undefined {
  const token = t[i];
  if (!token) return undefined;
  const glyph = GLYPHS.get(token.low);
  if (glyph !== undefined) return { value: glyph, to: i + 1, spelled: false };
  const article = classOf(token) === 'article';
  const bare = PARTS_OF_ONE.get(t[article ? i + 1 : i]?.low ?? '');
  if (bare) return { value: 1 / bare, to: i + (article ? 2 : 1), spelled: true };
  const top = lead(t, i);
  if (top) {
    const j = tied(t, top.to, true);
    const below = PARTS_OF_ONE.get(t[j]?.low ?? '');
    if (below && (token.kind === 'word' || !ORDINALS.has(t[j]?.low ?? '')))
      return { value: top.value / below, to: j + 1, spelled: true };
  }
  return figuresOver(t, i);
}

/** "3/4" in figures, a proper fraction. */
export function figuresOver(
  t: readonly Token[],
  i: number,
): (Piece & { spelled: boolean; ratio: [number, number] }) | undefined {
  const [a, slash, b] = [t[i], t[i + 1], t[i + 2]];
  if (a?.kind !== 'number' || slash?.low !== '/' || b?.kind !== 'number' || slash.gap || b.gap) return undefined;
  // three in a row are a date
  if ((t[i + 3]?.low === '/' && !t[i + 3]?.gap) || (t[i - 1]?.low === '/' && !a.gap)) return undefined;
  if (!/^[-+−]?\d+$/.test(a.low) || !PLAIN_FIGURES.test(b.low)) return undefined;
  const [top, below] = [Number(a.low.replace('−', '-')), Number(b.low)];
  if (below === 0 || Math.abs(top) >= below) return undefined; // "26/5" is a weight and a condition, not a fraction
  return { value: top / below, to: i + 3, spelled: false, ratio: [top, below] };
}

/** What is added to a whole number that ends at `to`: "and a half", "n a half", "and three quarters", a glyph, "1/2". */
export function withPart(t: readonly Token[], whole: Piece): (Piece & { spelled?: boolean }) | undefined {
  const glyph = GLYPHS.get(t[whole.to]?.low ?? '');
  if (glyph !== undefined) return { value: glyph, to: whole.to + 1 };
  const k = tied(t, whole.to); // "1-1/2" as "1 1/2"
  const typed = k > whole.to || t[k]?.gap ? figuresOver(t, k) : undefined;
  if (typed && t[whole.to - 1]?.kind === 'number') return { value: typed.value, to: typed.to };
  let j = tied(t, whole.to);
  const cls = classOf(t[j]);
  // "six an a half" is how recognisers write "six and a half"
  if (cls !== 'and' && !(t[j]?.low === 'an' && t[j + 1]?.low === 'a')) return undefined;
  j = tied(t, j + 1);
  if (classOf(t[j]) === 'article') j = tied(t, j + 1);
  const part = partAt(t, j);
  if (!part || part.value >= 1 || ordinalUse(t, part.to - 1)) return undefined;
  return { value: part.value, to: part.to, spelled: true };
}

/** A lone ordinal behind "and" is the next in a row ("mile two and third stop"), a half or a quarter never is. */
const ordinalUse = (t: readonly Token[], i: number): boolean =>
  ORDINALS.has(t[i]?.low ?? '') &&
  classOf(t[i - 1]) !== 'article' &&
  NUMBERS.get(t[i - 1]?.low ?? '') === undefined &&
  !HYPHENS.has(t[i - 1]?.low ?? '');

/** "fifths" behind hundreds: "one hundred and thirty-two fifths". */
export function pluralPart(t: readonly Token[], k: number): Piece | undefined {
  const j = tied(t, k, true);
  const low = t[j]?.low ?? '';
  const below = PARTS_OF_ONE.get(low);
  return below && below > 4 && low.endsWith('s') ? { value: below, to: j + 1 } : undefined;
}

/** "four over nine", "four out of nine": one number out of a larger one, as a body condition is told. */
export function ratioSaid(t: readonly Token[], n: NumberReading): NumberReading | undefined {
  const over = t[n.to]?.low === 'over' ? n.to + 1 : t[n.to]?.low === 'out' && t[n.to + 1]?.low === 'of' ? n.to + 2 : 0;
  if (!over || !n.whole || n.signed) return undefined;
  const below = lead(t, over) && cardinal(t, over);
  if (!below || below.value <= n.value) return undefined;
  if (RATIO_ENDS_BEFORE.has(t[below.to]?.low ?? '') || t[below.to]?.kind === 'number') return undefined;
  const ratio: [number, number] = [n.value, below.value];
  const { pair: _pair, ...rest } = n;
  return { ...rest, to: below.to, value: tidy(n.value / below.value), whole: false, ratio };
}

/** Words that make the second number of a ratio an amount of its own: "12 over 3 hours". */
const RATIO_ENDS_BEFORE: ReadonlySet<string> = new Set(
  'years months weeks days hours hour hrs minutes min mins miles mile km k feet'.split(' '),
);
