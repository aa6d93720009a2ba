/** Reader "weather", wind and snow by their bare names where a forecast is told: "calling for wind and snow", "supposed to blow", "Wind too, and snow by night". */
import type { EntryOf } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';

type Condition = EntryOf<'weather'>['condition'];

const BARE: Record<string, Condition> = { snow: 'snowing', wind: 'windy', winds: 'windy', sun: 'clear', fog: 'fog' };
/** A forecast that takes the weather as its object, and what else may stand in the list between. */
const LISTED =
  /(?:\b(?:calling for|calls? for|forecast(?:s|ing)?(?: is| was|'s)?(?: for| says| has| of| calls for| shows)?|predict(?:s|ed|ing)|promis(?:e|es|ed|ing)|expect(?:s|ed|ing)?|chance of|risk of|threatening|in for|supposed to (?:be|get|have)|(?:they|radio) say|(?:weather|radio|forecast) says))((?: (?:some|more|a|an|lot|lots|of|bit|little|heavy|light|strong|high|big|wet|cold|warm|rain|snow|wind|winds|gusts|fog|sun|freezing|and|or|with|then|plus|maybe|,|storm|blizzard|to|good|chance|inches|inch|foot|feet|few|north|south|east|west|\d+|one|two|three|four|five|six))*)$/;
const ENDS =
  /^(|[.,;]|and|or|with|then|by|tomorrow|tonight|later|this|on|for|from|overnight|all|through|in|at|after|before|too|but|so|coming|again|mon|tues|wednes|thurs|fri|satur|sun|(mon|tues|wednes|thurs|fri|satur|sun)day)$/;

/** Reads them. */
export function readWeatherAhead(f: Frame): void {
  for (const t of f.tokens) {
    const condition = BARE[t.low] ?? (t.low === 'blow' ? 'windy' : undefined);
    if (!condition || f.isClaimed(t.i, t.i + 1) || f.m.at('condition', t.i) || f.dogAt(t.i)?.kind === 'names') continue;
    if (t.low === 'blow' ? !toBlow(f, t.i) : !listed(f, t.i) && !carriedOn(f, t.i)) continue;
    f.add({
      kind: 'weather',
      dogs: [],
      condition,
      assertion: 'possible',
      span: f.span([t.i, t.i + 1]),
      rule: '<forecast> <weather>',
    });
    f.claim(t.i, t.i + 1);
  }
}

function startOf(f: Frame, i: number): number {
  let a = i;
  while (a > 0 && i - a < 16 && !f.isStrong(a - 1)) a--;
  return a;
}

/** "supposed to blow tonight", "it might blow", "it's going to blow". */
const toBlow = (f: Frame, i: number): boolean =>
  /\b(supposed to|going to|gonna|might|may|could|expected to|meant to|due to)( really| just)?$/.test(
    wordsIn(f.tokens, startOf(f, i), i),
  ) && /^(|[.,;]|tonight|tomorrow|later|all|hard|this|again|on|like|pretty|by|and|up|out|from)$/.test(f.low(i + 1));

/** "calling for wind and snow tomorrow". A number behind the wind is told by the number. */
const listed = (f: Frame, i: number): boolean =>
  LISTED.test(wordsIn(f.tokens, startOf(f, i), i)) && ENDS.test(f.low(i + 1)) && !numbered(f, i);

const numbered = (f: Frame, i: number) =>
  /^wind/.test(f.low(i)) && f.quantities.some((q) => q.from > i && q.from - i < 5 && q.dimension === 'speed');

/** "They say twenty below tomorrow. Wind too, and snow by night.": the forecast goes on. */
function carriedOn(f: Frame, i: number): boolean {
  const start = startOf(f, i);
  if (start === 0 || numbered(f, i)) return false;
  const before = wordsIn(f.tokens, start, i);
  if (
    !/^(|and|plus|some|more|and more|with|also|then|(wind|snow|rain|winds) (too|as well)?( ,)? ?(and|then))$/.test(
      before,
    )
  )
    return false;
  if (!/^(too|as well|also|by|later|after|tonight|overnight|tomorrow|and|then|,)$/.test(f.low(i + 1))) return false;
  const last = f.entries
    .filter((e) => e.span && e.span[1] <= (f.tokens[start]?.start ?? 0))
    .sort((a, b) => (a.span?.[1] ?? 0) - (b.span?.[1] ?? 0))
    .at(-1);
  return last !== undefined && /^(weather|temperature|wind)$/.test(last.kind) && last.assertion === 'possible';
}
