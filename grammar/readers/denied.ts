/** What was not done: "didn't have to load Gus", "not putting Rook in lead again", "no need to carry her". */
import type { Frame } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';

const UNNEEDED =
  /\b(no (need|reason|call) to|(no|n't|not) (need|want|have|had|going|gonna|like|plan|planning|mean|care) (to|on)|without( even)?( having)?( to)?|instead of|rather than|never had to|almost|nearly|decided against|talked (me|us) out of|refused to|avoided|saved me from)( just| even| put| run| have| use| try| start| keep| leave| ever)*$/;
/** Words that may stand between a denial and the deed that it denies. */
const BETWEEN =
  /^(have|had|has|having|need|needs|needed|want|wanted|to|even|be|been|being|get|got|yet|really|actually|going|gonna|go|like|likes|ever|just|is|was|'s|were|do|did|it|him|her|them|as|in|i|we|put|putting|run|running|ran|left|dog|single|one)$/;

/** Is the deed whose words begin at `verb` (the dog's, too, where it stands before) said not to have been done? */
export function notDone(f: Frame, verb: number, to: number): boolean {
  if (UNNEEDED.test(wordsIn(f.tokens, Math.max(0, verb - 5), verb))) return true;
  const { assertion, cue } = f.asserted(verb, to);
  if (assertion !== 'absent' || !cue) return false;
  for (let k = cue.to; k < verb; k++) if (!BETWEEN.test(f.low(k)) && !f.dogAt(k)) return false;
  return true;
}
