/** Corrections that begin a statement again: "Sam gets Gus and Rook, no wait, he gets Gus and Tank". */
import { cutBefore, putInto, type Region, STRONG, skip, type View } from './correct-put.ts';
import type { Token } from './tokens.ts';

const LINKS = new Set(['and', '&', '+', '/', ',', 'n']);
/** Verbs that say too little to be known again by: "is", "has". */
const PALE = new Set(
  "is 's was are were has had have did does do will 'll would can could be been 'm 're got".split(' '),
);

/**
 * A statement begun again: "Sam gets Gus and Rook, no wait, he gets Gus and Tank" takes back what stood behind the verb,
 * "Gus and Rook in lead, no, Gus and Tank in lead" the list. The second stands.
 */
export function restated(v: View, region: Region): { tokens: Token[]; done: number } | undefined {
  const k = skip(v, region.to, false);
  const [q, again] = begunAgain(v, region, k) ?? [-1, -1];
  if (q < 0) return undefined;
  // "I massaged her left wrist, no, I massaged the right": the side goes to the part that was told
  const left = v.items.find((x) => x.type === 'site' && x.from >= q && x.to <= region.from);
  const right = left && v.items.find((x) => x.type === 'site' && x.from > again && x.from - again < 7);
  if (left && right && !v.tokens.slice(again, right.from).some((t) => STRONG.has(t.low))) {
    const put = putInto(v, left, right);
    return {
      tokens: [
        ...v.tokens.slice(0, left.from),
        ...put,
        ...v.tokens.slice(left.to, cutBefore(v, region.from)),
        ...v.tokens.slice(right.to),
      ],
      done: left.from + put.length,
    };
  }
  // "Fern and Moss in swing, no, Fern and Tansy, and then …": what was said of the list stays
  const [old, now] = [listEnd(v, q), listEnd(v, again)];
  if (old > q && now > again && /^([.,;]|and|then|)$/.test(v.tokens[now]?.low ?? ''))
    return {
      tokens: [
        ...v.tokens.slice(0, q),
        ...v.tokens.slice(again, now),
        ...v.tokens.slice(old, cutBefore(v, region.from)),
        ...v.tokens.slice(now),
      ],
      done: q + 1,
    };
  return { tokens: [...v.tokens.slice(0, q), ...v.tokens.slice(again)], done: q + 1 };
}

/** Where a list of names that begins at token `i` ends; `i` where none does. */
function listEnd(v: View, i: number): number {
  let end = i;
  for (let k = i; ; ) {
    const dog = v.items.find((x) => x.type === 'dog' && x.from === k);
    if (!dog) return end;
    end = dog.to;
    if (!LINKS.has(v.tokens[end]?.low ?? '')) return end;
    k = end + 1;
    if (LINKS.has(v.tokens[k]?.low ?? '')) k++;
  }
}

/** Where a statement begins again behind the cue at `k`: the word it first began with, and the same word now. */
function begunAgain(v: View, region: Region, k: number): [number, number] | undefined {
  const low = (i: number) => v.tokens[i]?.low ?? '';
  const since = (i: number, whole: number) => {
    for (let q = region.from - whole; q >= 0 && region.from - q < 18; q--) {
      let same = true;
      for (let n = 0; n < whole && same; n++) same = low(q + n) === low(i + n) && v.tokens[i + n]?.kind === 'word';
      if (same) return q;
      if (STRONG.has(low(q))) return -1;
    }
    return -1;
  };
  const first = v.items.find((x) => x.type === 'dog' && x.from === k);
  const q = first && LINKS.has(low(first.to)) ? since(k, 1) : -1;
  const same = v.items.find((x) => x.type === 'dog' && x.from === q);
  if (same && LINKS.has(low(same.to))) return [q, k];
  if (!PALE.has(low(k)) && !v.items.some((x) => x.from === k) && since(k, 2) >= 0) return [since(k, 2), k];
  const verb = /^(he|she|they|it|i|we)$/.test(low(k)) ? k + 1 : (first?.to ?? -1);
  if (verb < 0) return undefined;
  const p = since(verb, PALE.has(low(verb)) ? 2 : 1);
  return p > 0 && (!first || low(p - 1) === low(verb - 1)) ? [p, verb] : undefined;
}
