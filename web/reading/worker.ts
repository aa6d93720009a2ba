/** The grammar in a thread of its own: its language model is large, and loading it must not hold up a keystroke. */
import '../strict.ts';
import type { Context } from '../../grammar/entry.ts';
import { type Reading, read } from '../../grammar/parse.ts';

/** One text to read; answers carry the same number. */
export interface ReadJob {
  number: number;
  text: string;
  context: Context;
}
export type ReadAnswer = { number: number; reading: Reading } | { number: number; error: string };

self.addEventListener('message', ({ data }: MessageEvent<ReadJob>) => {
  let answer: ReadAnswer;
  try {
    answer = { number: data.number, reading: read(data.text, data.context) };
  } catch (error) {
    answer = { number: data.number, error: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(answer);
});
