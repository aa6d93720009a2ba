/**
 * Step "chat": sentences that are no record: a question, a command to a dog, praise spoken to one, word to a person. Their
 * words are kept as remarks and no reader looks at them.
 */
import type { Frame } from './frame.ts';

const SELF = /^(note to self|reminder|ask|tell|remind|text|call|bring|buy|pick up)$/;

/** Token ranges of sentences that readers pass over. */
export function isChat(f: Frame): [number, number][] {
  const out: [number, number][] = [];
  let from = 0;
  for (let i = 0; i < f.tokens.length; i++) {
    if (!f.isStrong(i) && i < f.tokens.length - 1) continue;
    const to = i + 1;
    const asked = f.low(i) === '?' && !wonders(f, from, i) ? askedFrom(f, from, i) : -1;
    if (asked >= 0) out.push([asked, to]);
    else if (f.low(i) !== '?' && to - from > 16 && question(f, from, to)) out.push([from, questionEnd(f, from, to)]);
    else if (question(f, from, to) || command(f, from, to) || errand(f, from)) out.push([from, to]);
    from = to;
  }
  return out;
}

const ASKS =
  /^(what|who|whose|which|where|when|why|how|did|do|does|is|are|was|were|can|could|would|will|should|have|has|had|right|eh|huh|isn|ain)$/;
/** What a question begins with before its own first word: ", like who does that?" */
const LEADS_IN = /^(like|so|and|but|or|well|seriously|honestly|i|man|oh|then|now|really)$/;

/**
 * Where a question begins that ends at the mark `end`. "The wind came up, and I said, Mabel, what do you think?": what was
 * told before the last comma stays told.
 */
function askedFrom(f: Frame, from: number, end: number): number {
  let comma = -1;
  for (let k = end - 1; k > from; k--)
    if (f.low(k) === ',' || f.low(k) === 'and') {
      const q = LEADS_IN.test(f.low(k + 1)) ? k + 2 : k + 1;
      if (ASKS.test(f.low(q)) || f.m.from('question', q)) {
        comma = k;
        break;
      }
    }
  let k = from;
  while (f.m.from('filler', k) && k < end) k = f.m.from('filler', k)?.to ?? k + 1;
  if (comma < 0 || ASKS.test(f.low(k)) || f.m.from('question', k)) return from;
  // "spare batteries, where?": what is asked for stands before the mark
  const thing = comma + 2 === end && !f.dogs.some((d) => d.from >= from && d.to <= comma);
  return thing ? from : comma + 1;
}

/** "Ivy's wrist might be swollen, the left one?": told with a word of doubt and a rising voice, and nothing is asked. */
function wonders(f: Frame, from: number, end: number): boolean {
  let k = from;
  while (f.m.from('filler', k) && k < end) k = f.m.from('filler', k)?.to ?? k + 1;
  const d = f.dogFrom(k);
  if (!d || d.kind === 'pronoun' || f.low(d.to) === ',') return false;
  for (let j = k; j < end; j++) if (f.m.from('question', j) || f.low(j) === 'you') return false;
  return (
    f.m.of('sign').some((s) => s.from > k && s.to <= end) &&
    f.cues.some((c) => c.gives === 'possible' && c.from > k && c.to <= end && c.from - k < 8)
  );
}

/** Where a question without its mark ends: at a word that turns to something else, or after ten words. */
function questionEnd(f: Frame, from: number, to: number): number {
  for (let k = from + 4; k < to; k++)
    if (/^(anyhow|anyway|anyways|well|okay|ok|so|but|now|and)$/.test(f.low(k)) || f.low(k) === ',') return k;
  return Math.min(to, from + 10);
}

/** Unpunctuated, a question shows by its first words alone. */
function question(f: Frame, from: number, to: number): boolean {
  let k = from;
  while (f.m.from('filler', k) && k < to) k = f.m.from('filler', k)?.to ?? k + 1;
  const person = f.personAt(k);
  if (person) k = f.low(person.to) === ',' ? person.to + 1 : person.to;
  const q = f.m.from('question', k);
  if (!q) return false;
  const words = f.tokens
    .slice(q.from, q.to)
    .map((t) => t.low)
    .join(' ');
  // "did great", "does well", "was it": only with a subject behind is it a question.
  if (/^(did|do|does)$/.test(words))
    return (
      /^(you|we|anyone|anybody|they|i|carl|the|that|it)$/.test(f.low(q.to)) ||
      Boolean(f.personAt(q.to)) ||
      // "Did everyone's nails": what was done
      (Boolean(f.dogFrom(q.to)) && !f.m.from('act', q.from))
    );
  return true;
}

/** "Haw, June! On by, Moss." A sentence of commands and names only. */
function command(f: Frame, from: number, to: number): boolean {
  let commands = 0;
  for (let k = from; k < to; ) {
    const c = f.m.from('command', k) ?? f.m.from('chat', k);
    if (c) {
      commands++;
      k = c.to;
      continue;
    }
    const d = f.dogAt(k);
    if (d) {
      k = Math.max(d.to, k + 1);
      continue;
    }
    const t = f.tokens[k];
    if (
      t &&
      (t.kind === 'mark' || /^(no|good|girl|boy|dog|up|there|that|a|now|and|you|hey|of|off|down|get)$/.test(t.low))
    ) {
      k++;
      continue;
    }
    return false;
  }
  return commands > 0;
}

/** "ask Liv if the straw came", "Wren, if you get this bring the headlamp". */
function errand(f: Frame, from: number): boolean {
  const low = f.low(from);
  const person = f.personAt(from);
  if (SELF.test(low) && (f.personAt(from + 1) || /^(me|him|her|them|the)$/.test(f.low(from + 1))))
    // What is to be told of a dog is still told.
    return (
      /^(ask|tell|remind|text|call)$/.test(low) &&
      !f.dogs.some(
        (d) =>
          d.kind === 'names' &&
          d.from > from &&
          f.sentence(d.from) === f.sentence(from) &&
          (f.m.from('sign', d.to) || /^(had|has|was|is|'s)$/.test(f.low(d.to)) || f.m.from('ate', d.to)),
      )
    );
  if (low === 'note' && f.low(from + 1) === 'to' && f.low(from + 2) === 'self') return true;
  if (person && !person.possessive) {
    const next = f.low(person.to);
    return (
      (next === 'if' && f.low(person.to + 1) === 'you') ||
      (next === ':' && !f.dogFrom(person.to + 1)) ||
      (next === ',' &&
        /^(can|could|would|please|bring|did|do|if|when|will|you|don't|make|check|get|grab)$/.test(f.low(person.to + 1)))
    );
  }
  return false;
}
