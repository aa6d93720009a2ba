/** What a correction replaces, and how the new takes the place of the old: a dog, a number with its unit, a side of a part. */
import type { Mentions } from './mentions.ts';
import type { Quantity } from './quantities.ts';
import type { Token } from './tokens.ts';

/** A typed thing in the note: what a correction can replace. */
export interface Item {
  type: 'dog' | 'quantity' | 'site' | 'place';
  from: number;
  to: number;
}

export interface View {
  tokens: Token[];
  m: Mentions;
  items: Item[];
  quantities: Quantity[];
}

/** The words of a correction itself. */
export interface Region {
  from: number;
  to: number;
  scratch: boolean;
  bare: boolean;
}

export const MARKS = new Set([',', '-', '–', '—', '.', '…', ':', ';', '...']);
export const STRONG = new Set(['.', ';', '!', '?']);

/** First token behind marks and fillers. */
export function skip(v: View, i: number, strong: boolean): number {
  let k = i;
  while (k < v.tokens.length) {
    const low = (v.tokens[k] as Token).low;
    if (MARKS.has(low) && (strong || !STRONG.has(low))) k++;
    else if (v.m.from('filler', k) && !v.items.some((x) => x.from === k))
      k = (v.m.from('filler', k) as { to: number }).to;
    else break;
  }
  return k;
}

/** A comma or dash right before the cue goes with it. */
export const cutBefore = (v: View, i: number) => (/^[,–—-]$/.test(v.tokens[i - 1]?.low ?? '') ? i - 1 : i);

/** A dog's name as it was written, without its ending. */
export function nameOf(v: View, x: Item): string {
  const words = v.tokens.slice(x.from, x.to).map((t) => t.low);
  if (words.at(-1) === "'s" || words.at(-1) === "'") words.pop();
  const name = words.join(' ');
  // "vespers" for "vesper's"
  const bare = name.replace(/s$/, '');
  const others = v.items.filter((y) => y.type === 'dog' && y !== x);
  return name !== bare && others.some((y) => v.tokens[y.from]?.low === bare) ? bare : name;
}

/**
 * The new in the place of the old; what stands from `cut` to `tail` goes. "Gus's left wrist is sore, no, Tank's right one":
 * a part or side told with the new dog goes where the old one's stood.
 */
export function inPlace(
  v: View,
  left: Item,
  right: Item,
  cut: number,
  tail: number,
): { tokens: Token[]; done: number } {
  const put = putInto(v, left, right);
  const end = cutBefore(v, cut);
  const of = right.type === 'dog' ? v.items.find((x) => x.type === 'site' && x.from === right.to) : undefined;
  const old = of && v.items.find((x) => x.type === 'site' && x.from >= left.to && x.to <= end);
  const middle =
    of && old
      ? [...v.tokens.slice(left.to, old.from), ...putInto(v, old, of), ...v.tokens.slice(old.to, end)]
      : v.tokens.slice(left.to, end);
  const tokens = [...v.tokens.slice(0, left.from), ...put, ...middle, ...v.tokens.slice(of && old ? of.to : tail)];
  return { tokens, done: left.from + put.length };
}

/** The tokens that stand where the old thing stood. */
export function putInto(v: View, left: Item, right: Item): Token[] {
  const L = v.tokens.slice(left.from, left.to);
  const R = v.tokens.slice(right.from, right.to);
  if (left.type === 'dog') {
    const isPossessive = (t: Token | undefined) => t?.low === "'s" || t?.low === "'";
    const name = isPossessive(R[R.length - 1]) ? R.slice(0, -1) : R;
    const ending = isPossessive(L[L.length - 1]) ? L.slice(-1) : [];
    return [...name, ...ending];
  }
  if (left.type === 'quantity') {
    const ql = v.quantities.find((q) => q.from === left.from);
    const qr = v.quantities.find((q) => q.from === right.from);
    if (ql?.unit && !qr?.unit && (qr?.dimension === 'number' || qr?.dimension === ql.dimension))
      return [...R, ...unitTokens(L)];
    return R;
  }
  if (left.type === 'site') return putSite(v, left, right);
  return R;
}

/** The unit's words at the end of a quantity. */
function unitTokens(tokens: readonly Token[]): Token[] {
  let k = tokens.length;
  while (
    k > 0 &&
    (tokens[k - 1] as Token).kind !== 'number' &&
    !/^(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|.*teen|.*ty|half|quarter|hundred)$/.test(
      (tokens[k - 1] as Token).low,
    )
  )
    k--;
  return tokens.slice(k);
}

/** Side and end come from the right, and the part too where one is said there; the rest stays. */
function putSite(v: View, left: Item, right: Item): Token[] {
  const pick = (x: Item, tag: string) => v.tokens.slice(x.from, x.to).filter((_, k) => v.m.at(tag, x.from + k));
  const [lw, rw] = [pick(left, 'paw'), pick(right, 'paw')];
  const [ls, rs] = [pick(left, 'side'), pick(right, 'side')];
  const [le, re] = [pick(left, 'end'), pick(right, 'end')];
  // "the back right": the back foot, not the back
  const part = (x: Item, side: Token[], end: Token[]) => {
    const words = pick(x, 'part');
    return side.length ? words.filter((t) => !end.includes(t)) : words;
  };
  const [lp, rp] = [part(left, ls, le), part(right, rs, re)];
  const only = (list: Token[], not: Token[]) => list.filter((t) => !not.includes(t));
  const where: Token[] = [];
  if (rw.length) where.push(...rw);
  else {
    where.push(...(rs.length ? rs : only(ls, lw)));
    where.push(...(re.length ? only(re, rp) : only(le, lp)));
    if (!rs.length && !re.length) where.push(...lw);
    const code = lw.length === 1 ? (lw[0] as Token) : undefined;
    if (code && /^[lr][fh]$/.test(code.low)) {
      // "RH, no, left": the code keeps its end and takes the new side.
      if (rs.length && !re.length) where.push({ ...code, low: code.low[1] === 'f' ? 'front' : 'hind' });
      if (re.length && !rs.length) where.unshift({ ...code, low: code.low[0] === 'l' ? 'left' : 'right' });
    } else if (lw.length > 1) {
      if (rs.length && !re.length) where.push(...lw.slice(1));
      if (re.length && !rs.length) where.unshift(...lw.slice(0, 1));
    }
  }
  return [...where, ...(rp.length ? rp : lp)];
}
