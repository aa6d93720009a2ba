/** What reading a sentence's cues and their scopes costs, beside cutting it into tokens; and how it grows with length. */
import { assertionOf, cuesOf } from '../../grammar/steps/scopes.ts';
import { tokenize } from '../../grammar/steps/tokens.ts';
import type { Bench } from './row.ts';

const SENTENCE = 'no swelling in the wrist but it might be sore and he was coughing yesterday so will load him ';
const ROUNDS = 15;

/** Milliseconds of the quickest of some rounds: [cutting into tokens, cues and scopes]. */
function costs(times: number): [number, number] {
  const text = SENTENCE.repeat(times);
  let [cut, read] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let round = 0; round < ROUNDS; round++) {
    const begun = performance.now();
    const tokens = tokenize(text);
    const between = performance.now();
    const stops = tokens.filter((t) => t.low === 'and').map((t) => t.i);
    const cues = cuesOf(tokens);
    for (let i = 0; i < tokens.length; i += 4) assertionOf(tokens, cues, i, i + 1, stops);
    cut = Math.min(cut, between - begun);
    read = Math.min(read, performance.now() - between);
  }
  return [cut, read];
}

export function bench(): Bench[] {
  costs(100);
  const [cut, read] = costs(100);
  const [, long] = costs(1000);
  return [
    {
      name: 'cues and scopes / cutting into tokens',
      ratio: read / cut,
      detail: `${read.toFixed(2)} ms / ${cut.toFixed(2)} ms, a sentence 100 times`,
    },
    {
      name: 'scopes of a text 10 times as long / the text',
      ratio: long / read,
      detail: `${long.toFixed(2)} ms / ${read.toFixed(2)} ms`,
    },
  ];
}
