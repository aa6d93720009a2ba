/** A new word beside a roster: our listening against the phonetic code alone, of the same words. Invented words. */
import { doubleMetaphone } from 'double-metaphone';
import { earsFor, soundsLike } from '../../grammar/steps/hearing.ts';
import type { Bench } from './row.ts';

const NAMES =
  'Kestrel Otter Yarrow Sorrel Bramble Tundra Juniper Moss Tansy Kodiak Fern Cricket Sable Heron Nettle Birch Pika Flint Huckle';
const dogs = NAMES.split(' ').map((name) => ({ name }));
const LETTERS = 'bdfgklmnprstaeiou';
const ROUNDS = 5;

/** Words of six letters that no list knows, always the same. */
function inventedWords(count: number): string[] {
  return Array.from({ length: count }, (_, k) => {
    let word = '';
    for (let n = 0, x = k * 7919 + 17; n < 6; n++, x = (x * 31 + 7) % 104729) word += LETTERS[x % LETTERS.length];
    return word;
  });
}

/** Milliseconds of the quickest of some rounds. */
function quickest(run: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    run();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

export function bench(): Bench[] {
  const words = inventedWords(3000);
  const ours = quickest(() => {
    // New ears each round: what was heard once is remembered.
    const ears = earsFor([...dogs]);
    for (const word of words) soundsLike(word, ears);
  });
  const codes = quickest(() => {
    for (const word of words) doubleMetaphone(word);
  });
  const micro = (ms: number) => ((ms * 1000) / words.length).toFixed(1);
  return [
    {
      name: 'a new word against a roster / its phonetic code',
      ratio: ours / codes,
      detail: `${micro(ours)} µs / ${micro(codes)} µs a word, ${dogs.length} dogs`,
    },
  ];
}
