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
  const [lp, rp] = [pick(left, 'part'), pick(right, 'part')];
  const [lw, rw] = [pick(left, 'paw'), pick(right, 'paw')];
  const [ls, rs] = [pick(left, 'side'), pick(right, 'side')];
  const [le, re] = [pick(left, 'end'), pick(right, 'end')];
  const only = (list: Token[], not: Token[]) => list.filter((t) => !not.includes(t));
  const where: Token[] = [];
  if (rw.length) where.push(...rw);
  else {
    where.push(...(rs.length ? rs : only(ls, lw)));
    where.push(...(re.length ? only(re, rp) : only(le, lp)));
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
