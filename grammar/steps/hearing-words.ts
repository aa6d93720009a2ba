/** Step "hearing", part two: a trade word that was written as another word, by the words around it. */
import { type Around, HOMOPHONES } from '../words/homophones.ts';
import type { Token } from './tokens.ts';

const ENDS = new Set(['.', ';', '!', '?']);

/**
 * The trade word that token `i` probably is, given its neighbours; nothing where it may well be itself. `isDog` tells
 * whether a token belongs to a dog's name; without it no row that asks for a dog holds. Costs one look-up for a word that is
 * in no row.
 */
export function tradeWordHeard(
  tokens: readonly Token[],
  i: number,
  isDog: (i: number) => boolean = () => false,
): string | undefined {
  const rows = HOMOPHONES.get(tokens[i]?.low ?? '');
  if (!rows) return undefined;
  /** Is there an end of a sentence between `i` and `j`, or at `j`? */
  const apart = (j: number) => {
    for (let k = Math.min(i, j); k <= Math.max(i, j); k++) if (k !== i && ENDS.has(tokens[k]?.low ?? '.')) return true;
    return false;
  };
  const around: Around = {
    at: (k) => (apart(i + k) ? '' : (tokens[i + k]?.low ?? '')),
    dog: (k) => !apart(i + k) && isDog(i + k),
  };
  return rows.find((r) => r.fits(around))?.means;
}
