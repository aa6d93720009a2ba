/** Readers "attitude" and "gait", of whom it is told: the dog close before, over being, seeming and what else it is. */
import type { DogPhrase, Frame, Mention } from '../steps/frame.ts';

/** Words that may stand between the dog and how it went. */
const LINK =
  /^('s|'d|is|are|was|were|am|been|be|being|'re|has|have|had|n't|a|an|the|so|very|really|pretty|quite|too|all|both|just|still|also|always|looking|look|looks|looked|feeling|feels|felt|seems|seemed|seem|going|gone|got|getting|gets|went|goes|doing|did|acting|bit|little|touch|kind|of|kinda|sort|as|again|now|today|tonight|kept|keeps|keep|only|not|no|never|and|,|:|-|were|running|ran|pulling|super|absolutely|totally|plain|already|completely|more|most|even|out|there|fairly|whole|way|real|well|be|right|back|then|in|on|lead|swing|wheel|team|at|up|front|stayed|stays|turned|coming|come|came|starting|started|start|be|while|since|the|they|nice|old|sure|their|his|her|quickly|loose|free|light|runs|ran|stands|stood|works|worked|who|that|least|kept|rather|somewhat|slightly|extra|off|proper|dead|finished|finishes|finish|ended|home|fresh|simply|course|naturally|honestly|frankly|but|yet|simply|merely)$/;

const okDog = (d: DogPhrase) => (d.dogs.length ? d : undefined);
const isObject = (f: Frame, d: DogPhrase) =>
  d.kind === 'pronoun' && (/^(him|them|em)$/.test(f.low(d.from)) || (f.low(d.from) === 'her' && !d.possessive));

/** "wet but happy", "muddy and tired", "a bit soggy but keen": the token before the other quality that a joining word at `k` ends. */
function besides(f: Frame, k: number): number | undefined {
  if (!/^(but|and|yet|though|if)$/.test(f.low(k))) return undefined;
  let word = f.low(k - 1) === ',' ? k - 2 : k - 1;
  if (/^(through|again|now)$/.test(f.low(word))) word--;
  const t = f.tokens[word];
  if (t?.kind !== 'word' || f.dogAt(word) || /^(not|n't|no|it|there|here)$/.test(t.low)) return undefined;
  let be = word - 1;
  while (
    /^(through|all|a|bit|little|so|very|really|pretty|quite|just|still|totally|completely|super|kind|kinda|sort|of|rather)$/.test(
      f.low(be),
    )
  )
    be--;
  return /^(is|are|'s|'re|was|were|look|looks|looked|got|came)$/.test(f.low(be)) ? be : undefined;
}

/** The dog right before, over being, seeming and degrees; or right before a manner it is joined to. */
export function closeDog(f: Frame, m: Mention): DogPhrase | undefined {
  let k = m.from - 1;
  for (let n = 0; n < 10 && k >= 0; n++) {
    const d = f.dogs.find((x) => x.to === k + 1);
    if (d) {
      if (d.excepted) {
        // "all strong except Moss, tail down": what follows the comma is the exception's.
        if (/^(,|who|:|-|;)$/.test(f.low(d.to)) && d.to < m.from) return okDog(d);
        const group = f.dogs.find((x) => x.except === d);
        if (group && toldBefore(f, 'manner', group, d)) return okDog(d);
        return group ? okDog(group) : undefined;
      }
      if (d.company) {
        // "changed places with Ivy, who was nervous"
        // "with everybody screaming to go"
        if (d.to === m.from && f.low(d.from - 1) === 'with' && d.kind === 'group') return okDog(d);
        if (f.low(d.to) === 'who' || (f.low(d.to) === ',' && f.low(d.to + 1) === 'who')) return okDog(d);
        const c = f.m.at('company', d.from - 1);
        k = (c?.from ?? d.from) - 1;
        continue;
      }
      // "had her tail down"
      if (
        d.possessive &&
        d.kind === 'pronoun' &&
        d.to === m.from &&
        /^(tails?|heads?|ears?|hackles)$/.test(f.low(m.from))
      )
        return okDog(d);
      if ((isObject(f, d) && d.to === m.from) || (d.possessive && f.siteAt(d.to))) return undefined;
      // "Gus's wrist is puffy, Rook's is fine": his wrist
      if (d.possessive && d.kind === 'names' && /^(is|are|was|were|looks|look|feels)$/.test(f.low(d.to)))
        return undefined;
      if (d.possessive && d.kind === 'pronoun' && /^(her|his|their)$/.test(f.low(d.from))) return undefined;
      return okDog(d);
    }
    if (f.isStrong(k)) return undefined;
    const manner = f.m.at('manner', k);
    if (manner && n > 0 && /^(and|,|but|&|\+)$/.test(f.low(k + 1))) {
      k = manner.from - 1;
      continue;
    }
    if (f.siteAt(k)) return undefined;
    // "all the dogs are soaked but happy": over what else they are
    const other = n > 0 || m.from - k === 1 ? besides(f, k) : undefined;
    if (other !== undefined) {
      k = other;
      continue;
    }
    // "nothing found, simply tired"
    const nothing = f.m.at('nothing', k);
    if (nothing) {
      k = nothing.from - 1;
      continue;
    }
    if (!LINK.test(f.low(k)) && !f.m.at('severity', k) && !f.m.at('trend', k) && !f.m.at('position', k))
      return undefined;
    k--;
  }
  return undefined;
}

/** "tugs all tight exc rook coasting": how the group went is told, so what stands behind the exception is its own. */
export const toldBefore = (f: Frame, tag: string, group: DogPhrase, except: DogPhrase): boolean =>
  f.m.of(tag).some((x) => x.to <= except.from && x.to >= group.from - 1);
