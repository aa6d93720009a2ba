/** The whole parse beside wink-nlp's own tokens, sentences and tags on the same notes; and how time grows with length. */
import winkModel from 'wink-eng-lite-web-model';
import winkNLP from 'wink-nlp';
import { parse } from '../../grammar/index.ts';
import { casesOf, contextOf, corpusNames } from '../corpus/corpora.ts';

const nlp = winkNLP(winkModel, ['sbd', 'pos']);

const median = (xs: number[]) => xs.sort((a, b) => a - b)[xs.length >> 1] as number;
function timed(run: () => void): number {
  // Processor time, so that what else the machine does changes little.
  const t0 = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(t0);
  return (user + system) / 1000;
}

export function bench(): { name: string; ratio: number; detail: string }[] {
  const cases = corpusNames().flatMap(casesOf);
  const work = cases.map((c) => ({ text: c.text, context: contextOf(c) }));
  const ours = () => {
    for (const w of work) parse(w.text, w.context);
  };
  const winks = () => {
    for (const w of work) {
      const doc = nlp.readDoc(w.text);
      doc.tokens().out(nlp.its.pos);
      doc.sentences().out();
    }
  };
  for (let i = 0; i < 5; i++) {
    ours();
    winks();
  }
  const a: number[] = [];
  const b: number[] = [];
  for (let i = 0; i < 15; i++) {
    a.push(timed(ours));
    b.push(timed(winks));
  }
  const [mine, base] = [median(a) / work.length, median(b) / work.length];
  const note = (work.find((w) => w.text.length > 90) ?? work[0]) as (typeof work)[number];
  const long = Array(50).fill(note.text).join(' ');
  const one = median(Array.from({ length: 40 }, () => timed(() => parse(note.text, note.context))));
  const fifty = median(Array.from({ length: 15 }, () => timed(() => parse(long, note.context))));
  return [
    {
      name: 'whole parse / wink tokens, sentences and tags',
      ratio: mine / base,
      detail: `${mine.toFixed(3)} ms / ${base.toFixed(3)} ms a note, ${work.length} notes`,
    },
    {
      name: 'a note 50 times as long / the note',
      ratio: fifty / one,
      detail: `${fifty.toFixed(2)} ms / ${one.toFixed(3)} ms`,
    },
  ];
}
