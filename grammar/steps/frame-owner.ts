/**
 * Whose is what is said: the dog behind it, the dog before it in the sentence, a person, or the dog spoken of last.
 */
import type { DogPhrase } from './dogs.ts';
import type { Frame } from './frame.ts';
import type { Site } from './sites.ts';

export interface Owner {
  dogs: string[];
  phrase?: DogPhrase;
  /** Said of a person, not of a dog. */
  human?: boolean;
  /** Not named in this clause: the dog spoken of before. */
  carried?: boolean;
  doubt?: string;
}

/** Does the person or "I", "we", "my" at the left own what is said at `i`? */
function humanBefore(f: Frame, i: number): number {
  for (let k = i - 1; k >= 0 && !f.isStrong(k); k--) {
    const p = f.personAt(k);
    if (p) return p.from;
    const me = f.m.at('me', k);
    if (me && !f.dogAt(me.from)) return me.from;
  }
  return -1;
}

/** "Dogs in heat: one, Fern", "the number limping is two, namely Gus and Ivy": named behind the count. */
function countedThen(f: Frame, to: number): DogPhrase | undefined {
  if (!/^(:|is|are)$/.test(f.low(to)) || f.quantityAt(to + 1)?.dimension !== 'number') return undefined;
  let k = f.quantityAt(to + 1)?.to ?? to;
  if (!/^(,|:|namely|-|\()$/.test(f.low(k))) return undefined;
  while (/^(,|:|namely|-|\()$/.test(f.low(k))) k++;
  const d = f.dogFrom(k);
  return d?.kind === 'names' && !d.possessive && d.dogs.length === f.quantityAt(to + 1)?.value ? d : undefined;
}

/**
 * Whose is what stands in `[from, to)`? A dog behind it ("ice balls in everybody's feet", "on Moss"), else the dog before
 * it in the sentence, else the dog spoken of last.
 */
export function ownerIn(f: Frame, from: number, to: number, site?: Site, act = false): Owner {
  const counted = countedThen(f, to);
  if (counted) return { dogs: counted.dogs, phrase: counted, doubt: counted.doubt };
  if (site?.owner) return owned(site.owner);
  const lo = site ? Math.min(from, site.from) : from;
  const hi = site ? Math.max(to, site.to) : to;
  // "something up with Willow's back": whose it is stands right before it.
  const whose = site && f.dogs.find((d) => d.possessive && d.to === site.from && d.dogs.length && d.kind === 'names');
  if (whose) return owned(whose);
  // "… got her. Something's harness rubbed his armpit": no male was named, so it is not the bitch's
  const nobody =
    site && f.dogs.find((d) => d.kind === 'pronoun' && d.possessive && d.to === site.from && !d.dogs.length);
  if (nobody && /^(his|her)$/.test(f.low(nobody.from)))
    return { dogs: [], doubt: nobody.doubt, human: humanBefore(f, nobody.from) >= 0 };
  // "the pads of Gus are worn"
  const of = site && f.low(site.to) === 'of' ? f.dogFrom(site.to + 1) : undefined;
  if (of?.kind === 'names' && of.dogs.length && !of.company && !of.excepted) return owned(of);
  const behind = dogBehind(f, hi);
  const before = dogBefore(f, lo);
  if (behind && !(before && behind.value !== 'all' && before.to >= lo - 2 && !f.strongBetween(before.to, lo)))
    return owned(behind);
  const inside = f.dogs.find((d) => d.from >= lo && d.to <= hi && !d.company && !d.excepted);
  if (inside) return owned(inside);
  // What a person does, she does to a dog; what she is or has stays with her.
  const human = act ? -1 : humanBefore(f, lo);
  if (before && before.from >= human && !f.strongBetween(before.to, lo)) return owned(before);
  if (human >= 0 && (!before || before.from < human) && humanHas(f, human, lo)) return { dogs: [], human: true };
  if (before) return { carried: true, ...owned(before) };
  return { dogs: [] };
}

function owned(phrase: DogPhrase): Owner {
  return { dogs: phrase.dogs, phrase, doubt: phrase.doubt };
}

/** "my wrist is sore", "Anders has a belly ache": being and having stay with the person; doing goes on to a dog. */
function humanHas(f: Frame, human: number, i: number): boolean {
  const word = f.low(human);
  if (/^(my|our|your)$/.test(word)) return i - human <= (f.low(human + 1) === 'own' ? 8 : 5);
  const end = f.personAt(human)?.to ?? f.m.at('me', human)?.to ?? human + 1;
  // "I'm hollering at Nora": the verb stands in the word
  if (/^('m|'re|'ve)$/.test(f.low(end - 1)) && end - human > 1) return i - end <= 1;
  const verb = f.low(end);
  // "I have discovered that the pad is raw"
  if (
    /^(have|has|'ve|'s|had)$/.test(verb) &&
    /^(discovered|found|noticed|seen|checked|felt|examined|observed)$/.test(f.low(end + 1))
  )
    return false;
  const person = f.personAt(human);
  if (person?.possessive) return i - end <= 3;
  return (
    /^('m|am|ai|ain|is|'s|was|has|had|got|'ve|have|feel|felt|were|are|'re|ate|eat|eats|eating|drink|drinks|drank|threw|froze|burned|burnt|hurt|fell|slipped|looks|looked|gets|sat|quit|stopped)$/.test(
      verb,
    ) && i - end <= 6
  );
}

/** A dog right behind: "on Moss", "in everybody's", "of both wheelers". */
function dogBehind(f: Frame, i: number): DogPhrase | undefined {
  let k = i;
  let prep = false;
  // "one split web (Storm, left front)"
  const aside = f.low(i) === '(' ? f.dogFrom(i + 1) : undefined;
  if (aside?.kind === 'names' && closedBehind(f, aside.to)) return aside;
  for (let steps = 0; steps < 6 && k < f.tokens.length; steps++) {
    const d = f.dogFrom(k);
    if (d && d.kind === 'names' && !d.possessive && ownStatement(f, d)) return undefined;
    if (d)
      return (prep || d.prep || /^(all|across|everywhere)$/.test(f.low(d.from))) && !d.company && !d.excepted
        ? d
        : undefined;
    const low = f.low(k);
    if (low === ',' && (f.siteAt(k + 1) || /^(on|in)$/.test(f.low(k + 1)))) {
      k++;
      continue;
    }
    // "tight as fence wire on Gus"
    if (low === 'as' && !prep) {
      let j = k + 1;
      while (j < k + 5 && !/^(on|in|of)$/.test(f.low(j)) && !f.isStrong(j) && !f.dogAt(j)) j++;
      if (!/^(on|in)$/.test(f.low(j))) return undefined;
      k = j;
      continue;
    }
    if (/^(on|in|of|for|to|off|from|into|onto|with|between|under|out)$/.test(low)) {
      if (low === 'with') return undefined;
      prep = true;
    } else if (
      !/^(the|all|any|over|up|again|today|now|whatsoever|anywhere|poor|old|our|a|bootie|booties|bit|new|one|ones|both|just|back|some|it|them|feet)$/.test(
        low,
      ) &&
      !f.siteAt(k)
    )
      return undefined;
    k++;
  }
  return undefined;
}

/** Does a parenthesis close soon behind `k`? */
const closedBehind = (f: Frame, k: number): boolean => [0, 1, 2, 3, 4, 5].some((n) => f.low(k + n) === ')');

/** "(Storm, left front), one missing nail": a dog in a parenthesis that is closed before `i`. */
const asideBefore = (f: Frame, d: DogPhrase, i: number): boolean =>
  f.low(d.from - 1) === '(' && closedBehind(f, d.to) && f.tokens.slice(d.to, i).some((t) => t.low === ')');

/** "… on bal RH nail torn": the dog behind begins a statement of its own. */
function ownStatement(f: Frame, d: DogPhrase): boolean {
  const s = f.sites.find((x) => x.from === d.to);
  if (!s) return false;
  return Boolean(f.m.from('sign', s.to) || f.m.from('sign', s.to + 1) || f.m.from('fine', s.to));
}

/** The last dog before token `i` that is spoken of, company and exceptions left out. */
export function dogBefore(f: Frame, i: number): DogPhrase | undefined {
  let company: DogPhrase | undefined;
  const whoBehind = (k: number) => f.low(k) === 'who' || (f.low(k) === ',' && f.low(k + 1) === 'who');
  for (let k = f.dogs.length - 1; k >= 0; k--) {
    const d = f.dogs[k] as DogPhrase;
    if (d.to > i) continue;
    // "while he pulled hard", and no he is known: not the girl spoken of before
    if (
      !d.dogs.length &&
      d.kind === 'pronoun' &&
      /^[MF]$/.test(d.value ?? '') &&
      !d.possessive &&
      !f.strongBetween(d.to, i)
    )
      return company;
    if (!d.dogs.length || asideBefore(f, d, i)) continue;
    if (d.excepted && d.owns && f.sentence(d.from) === f.sentence(i)) return d;
    // "the whole gang except Mabel, who paces"
    if (d.excepted && d.kind === 'names' && whoBehind(d.to) && f.sentence(d.from) === f.sentence(i) && i - d.to < 8)
      return d;
    if (d.excepted) continue;
    if (d.company) {
      // "with Ivy, who was limping"
      if (whoBehind(d.to)) return d;
      company ??= d;
      continue;
    }
    return d;
  }
  return company;
}
