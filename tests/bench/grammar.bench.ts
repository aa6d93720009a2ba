/** The whole parse beside wink-nlp's own tokens, sentences and tags on the same notes; and how time grows with length. */
import winkModel from 'wink-eng-lite-web-model';
import winkNLP from 'wink-nlp';
import { parse } from '../../grammar/index.ts';
import { casesOf, contextOf, corpusNames } from '../corpus/corpora.ts';
import type { Bench } from './row.ts';

const nlp = winkNLP(winkModel, ['sbd', 'pos']);

const median = (xs: number[]) => xs.sort((a, b) => a - b)[xs.length >> 1] as number;
/**
 * Passes over all notes before anything is timed. The grammar is wide: it takes some fifteen thousand notes until the engine
 * has compiled what is called often, and its compiling is counted as processor time of the process. The first passes are
 * timed too and told beside the ratio.
 */
const WARM_UP = 45;
function timed(run: () => void): number {
  // Processor time, so that what else the machine does changes little.
  const t0 = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(t0);
  return (user + system) / 1000;
}

export function bench(): Bench[] {
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
  const cold = timed(ours) / timed(winks);
  for (let i = 1; i < WARM_UP; i++) {
    ours();
    winks();
  }
  const a: number[] = [];
  const b: number[] = [];
  for (let i = 0; i < 25; i++) {
    a.push(timed(ours));
    b.push(timed(winks));
  }
  const [mine, base] = [median(a) / work.length, median(b) / work.length];
  const note = (work.find((w) => w.text.length > 90) ?? work[0]) as (typeof work)[number];
  const long = Array(50).fill(note.text).join(' ');
  // Turn by turn, and the short note fifty times over, so that what else the machine does falls on both alike.
  const ones: number[] = [];
  const fifties: number[] = [];
  for (let i = 0; i < 25; i++) {
    ones.push(
      timed(() => {
        for (let k = 0; k < 50; k++) parse(note.text, note.context);
      }) / 50,
    );
    fifties.push(timed(() => parse(long, note.context)));
  }
  const [one, fifty] = [median(ones), median(fifties)];
  return [
    {
      name: 'whole parse / wink tokens, sentences and tags',
      ratio: mine / base,
      detail: `${mine.toFixed(3)} ms / ${base.toFixed(3)} ms a note, ${work.length} notes; the first pass ${cold.toFixed(1)} ×`,
    },
    {
      name: 'a note 50 times as long / the note',
      ratio: fifty / one,
      detail: `${fifty.toFixed(2)} ms / ${one.toFixed(3)} ms`,
    },
  ];
}
