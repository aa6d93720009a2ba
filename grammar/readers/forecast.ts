/** Weather to come: a forecast is possible, whoever tells it ("they promised 12 m/s", "rain by noon, the radio says"). */
import type { Assertion } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';

const TELLER =
  '(?:they|radio|weather|forecast|forecasts|phone|app|tv|news|weatherman|internet|met office|service|forecaster|radio man|weather man|weather service|radio lady|weather lady)';
const TELLS =
  "(?:say|says|said|'re saying|are saying|is saying|were saying|'s saying|promise|promises|promised|have promised|announce|announces|announced|have announced|has announced|predict|predicts|predicted|give|gives|gave|are giving|want|wants|expect|expects|reckon|reckons|show|shows|are talking|'re talking|is talking|'s talking|talks about|talked about|tell us|claims|claim|has|calls for|call for|'re calling for|are calling for)";
const TOLD = new RegExp(`\\b${TELLER}(?: just| now| still| all)? ${TELLS}\\b`);
/** Behind the statement: ", the radio says", "or so they say". */
const TOLD_BEHIND = new RegExp(`(?:^|, )(?:or )?(?:so |says |said )?(?:the |my )?${TELLER}(?: ${TELLS})?$`);

const NOW = /(^| )(now|already|today|but|though|so|is|are|was|were|'s|has|have|here)( |$)/;

/** Is what stands at `i` told as a forecast by somebody: "they promise", "the radio has", in its sentence? */
export function forecastTold(f: Frame, i: number): boolean {
  let a = i;
  while (a > 0 && i - a < 14 && !f.isStrong(a - 1)) a--;
  let b = i;
  while (b < f.tokens.length && b - i < 14 && !f.isStrong(b)) b++;
  const before = wordsIn(f.tokens, a, i);
  const told = TOLD.exec(before);
  // "they're calling for rain, it's clear right now": what is so already
  if (told) return !NOW.test(before.slice(told.index + told[0].length));
  const behind = TOLD_BEHIND.exec(wordsIn(f.tokens, i, b));
  if (NOW.test(wordsIn(f.tokens, a, b))) return false;
  return behind !== null && /says|say|said|claim|reckon|show/.test(behind[0]);
}

/** The assertion of air, wind or sky: what will be, or what somebody says will be, is possible; under an "if" it is planned. */
export function skyAssertion(f: Frame, from: number, to: number): Assertion {
  const { assertion, cue } = f.asserted(from, to);
  if (assertion === 'planned' && !cue?.group.condition) return 'possible';
  return assertion === 'present' && forecastTold(f, from) ? 'possible' : assertion;
}
