/** Corrections of whose it is that stand without a "no" or a "sorry": "it's not Gus, it's Tank", "but that was Moss". */
import { type Item, inPlace, nameOf, STRONG, skip, type View } from './correct-put.ts';
import type { Mentions } from './mentions.ts';
import type { Token } from './tokens.ts';

type Corrected = { tokens: Token[]; done: number };

const SAID = /^(said|thought|wrote|told|figured|down|swore|reckoned)$/;

/** Is there a word with which a dog is taken back? Asked first, so that most notes go on as they are. */
export const mayBeAnother = (tokens: readonly Token[], m: Mentions): boolean =>
  m.of('not-it').length > 0 ||
  m.of('but-it').length > 0 ||
  (m.of('it-is').length > 0 && tokens.some((t) => SAID.test(t.low)));

/** The first statement whose dog is taken back, put right. */
export function anotherDog(v: View): Corrected | undefined {
  return notThisOne(v) ?? thoughtItWas(v) ?? butThatWas(v) ?? saidBefore(v);
}

/** "Bad coughing. First I thought it was Tank, but no, it is Gus.": what was thought goes, and the other is named for what was told before. */
function thoughtItWas(v: View): Corrected | undefined {
  for (const left of v.items) {
    if (left.type !== 'dog' || !/^(was|is|'s)$/.test(lowOf(v, left.from - 1)) || lowOf(v, left.from - 2) !== 'it')
      continue;
    let start = left.from - 3;
    if (lowOf(v, start) === 'that') start--;
    if (!SAID.test(lowOf(v, start))) continue;
    while (/^(i|we|first|at|had|'d|have|originally|initially|just|,)$/.test(lowOf(v, start - 1))) start--;
    let k = left.to;
    while (/^(,|but|no|nope|actually|and|turns|out|in|fact)$/.test(lowOf(v, k))) k++;
    const is = k > left.to ? dogThatIs(v, k, 0) : undefined;
    if (!is || nameOf(v, is.dog) === nameOf(v, left) || !/^([.;!]|)$/.test(lowOf(v, is.dog.to))) continue;
    if (start > 0 && !STRONG.has(lowOf(v, start - 1))) continue;
    return { tokens: [...v.tokens.slice(0, start), ...v.tokens.slice(is.from)], done: start };
  }
  return undefined;
}

const lowOf = (v: View, i: number) => v.tokens[i]?.low ?? '';
const dogFrom = (v: View, i: number) => v.items.find((x) => x.type === 'dog' && x.from === i);
/** "it's Tank who …", "it was Tank's booties": told of something else, nobody is taken back. */
const told = (v: View, i: number) =>
  /^(who|that|which|whose|whom)$/.test(lowOf(v, i)) ||
  (/^'s?$/.test(lowOf(v, i - 1)) &&
    v.tokens[i]?.kind === 'word' &&
    !v.items.some((x) => x.type === 'site' && x.from === i));

/** The dog behind "it's", "that was" within so many tokens from `i`. */
function dogThatIs(v: View, i: number, within: number): { dog: Item; from: number } | undefined {
  for (let k = i; k <= i + within && k < v.tokens.length; k++) {
    const it = v.m.from('it-is', k);
    const dog = it && dogFrom(v, it.to);
    if (dog) return { dog, from: k };
    if (STRONG.has(lowOf(v, k)) && k > i) return undefined;
  }
  return undefined;
}

/** "Gus has diarrhea … it is not Gus, it's Tank"; "it's not Gus who lost the boot, it's Tank". */
function notThisOne(v: View): Corrected | undefined {
  for (const not of v.m.of('not-it')) {
    if (!/^(it|its|that|this)$/.test(lowOf(v, not.from))) continue;
    const old = dogFrom(v, not.to);
    if (!old) continue;
    let start = not.from;
    while (/^(and|but|so|no|,|actually|then)$/.test(lowOf(v, start - 1))) start--;
    const who = told(v, old.to);
    const is = dogThatIs(v, who ? old.to + 2 : skip(v, old.to, true), who ? 12 : 1);
    if (!is || nameOf(v, is.dog) === nameOf(v, old) || told(v, is.dog.to)) continue;
    if (who) {
      const name = v.tokens.slice(is.dog.from, is.dog.to);
      let end = is.from;
      while (/^(,|but|and|no)$/.test(lowOf(v, end - 1))) end--;
      const tokens = [
        ...v.tokens.slice(0, not.from),
        ...name,
        ...v.tokens.slice(old.to + 1, end),
        ...v.tokens.slice(is.dog.to),
      ];
      return { tokens, done: not.from + name.length };
    }
    const left = v.items.findLast(
      (x) => x.type === 'dog' && x.to <= start && start - x.to <= 40 && nameOf(v, x) === nameOf(v, old),
    );
    if (left) return inPlace(v, left, is.dog, start, is.dog.to);
  }
  return undefined;
}

/** "Gus ate his fish, but that was Tank.": said of the dog before, and no more is told of the new one. */
function butThatWas(v: View): Corrected | undefined {
  for (const but of v.m.of('but-it')) {
    const dog = dogFrom(v, but.to);
    if (!dog) continue;
    const next = skip(v, dog.to, false);
    const ends = !v.tokens[next] || next > dog.to || STRONG.has(lowOf(v, dog.to)) || dogFrom(v, dog.to) !== undefined;
    const left = v.items.findLast((x) => x.type === 'dog' && x.to <= but.from && but.from - x.to <= 14);
    if (!ends || !left || nameOf(v, left) === nameOf(v, dog) || told(v, next)) continue;
    return inPlace(v, left, dog, but.from, dog.to);
  }
  return undefined;
}

/** "I said Gus has a rub, but Nora looked and it's Tank": what was said or thought at first, and who it turned out to be. */
function saidBefore(v: View): Corrected | undefined {
  for (const left of v.items) {
    if (left.type !== 'dog') continue;
    // "thought that Gus …", "thought it was Gus coughing"
    let verb = left.from - 1;
    while (/^(that|it|was|is|'s)$/.test(lowOf(v, verb)) && left.from - verb < 4) verb--;
    if (!SAID.test(lowOf(v, verb))) continue;
    for (let k = left.to; k < left.to + 20 && k < v.tokens.length; k++) {
      if (STRONG.has(lowOf(v, k)) || dogFrom(v, k)) break;
      const turn = lowOf(v, k) === 'but' || (lowOf(v, k) === 'turns' && lowOf(v, k + 1) === 'out');
      const is = turn ? dogThatIs(v, k + 1, 14) : undefined;
      if (!is || nameOf(v, is.dog) === nameOf(v, left) || told(v, is.dog.to)) continue;
      const put = inPlace(v, left, is.dog, k, is.dog.to);
      return { tokens: put.tokens.filter((t) => !(t.i >= verb && t.i < left.from)), done: put.done - left.from + verb };
    }
  }
  return undefined;
}
