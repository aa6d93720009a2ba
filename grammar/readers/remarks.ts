/** Reader "remark": words that no other reader took. Together, entries and remarks cover every word that matters. */
import type { Entry, EntryOf } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';
import { tokenize } from '../steps/tokens.ts';

const EMPTY = new Set(
  "a an the and or but so then of to in on at by for with is are was were be been it its that this 's 're 'm 've 'll 'd i we you they he she his her him them their my our me us has have had do did does just well uh um er oh ok okay now there here as up out off all no not n't too very really still again also got get".split(
    ' ',
  ),
);

const ENDS = new Set(['.', '!', '?', ';']);

/** Words outside every entry's span, in runs; a run of nothing but small words is left out. */
export function remarks(f: Frame, entries: readonly Entry[]): EntryOf<'remark'>[] {
  const out: EntryOf<'remark'>[] = [];
  const spans = entries.map((e) => e.span).filter((s): s is [number, number] => s !== undefined);
  let run: { start: number; end: number; words: number } | undefined;
  const close = () => {
    if (run?.words)
      out.push({
        kind: 'remark',
        dogs: [],
        text: f.text.slice(run.start, run.end),
        span: [run.start, run.end],
        rule: 'words nothing else took',
      });
    run = undefined;
  };
  // The text as it was written, also where a correction moved or dropped words.
  const tokens = f.corrected ? tokenize(f.text) : f.tokens;
  for (const t of tokens) {
    if (spans.some(([a, b]) => t.start >= a && t.end <= b)) {
      close();
      continue;
    }
    const matters = t.kind !== 'mark' && !EMPTY.has(t.low);
    run ??= { start: t.start, end: t.end, words: 0 };
    run.end = t.end;
    if (matters) run.words++;
    if (ENDS.has(t.low)) close();
  }
  close();
  return out;
}
