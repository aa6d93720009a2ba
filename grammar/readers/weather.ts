/** Reader "weather": one entry a condition. Words that mean other things need a sky about. */
import type { Assertion } from '../entry.ts';
import type { Frame, Mention } from '../steps/frame.ts';
import { deniedInside } from '../steps/mentions.ts';
import { forecastTold } from './forecast.ts';
import { said } from './places.ts';
import { readWeatherAhead } from './weather-ahead.ts';

const SKY_ALONE = new Set([
  'clear',
  'bright',
  'fair',
  'still',
  'sun',
  'stars',
  'clearing',
  'clearing up',
  'cleared up',
  'cleared off',
  'dull',
  'gray',
  'grey',
  'cloud',
  'clouds',
  'haze',
  'gloomy',
  'blowing',
  'blowing hard',
  'calm',
  'showers',
  'shower',
  'sprinkles',
  'pouring',
  'soup out there',
  'gale',
  'building',
  'frost',
  'storm',
  'inches of snow',
  'centimetres of snow',
  'centimeters of snow',
  'cm of snow',
  'in of snow',
  'ten of snow',
  'feet of snow',
  'storms',
  'breeze',
  'a breeze',
  'dumping',
  'flakes',
  'howling',
  'fog',
  'mist',
  'misty',
  'snows',
  'sprinkle',
  'rain',
  'leaden',
  'broken clouds',
  'blowin',
]);

/** Reads the weather. */
export function readWeather(f: Frame): void {
  for (const m of f.m.of('condition')) {
    if (f.isClaimed(m.from, m.to) || ofDog(f, m) || inCue(f, m) || !skyStands(f, m)) continue;
    if (deniedInside(f.tokens, m)) continue;
    // "it was supposed to snow": it did not
    if (
      f.low(m.from) === 'to' &&
      /^(supposed|expected|meant|due|going)$/.test(f.low(m.from - 1)) &&
      f.low(m.from - 2) === 'was'
    )
      continue;
    const assertion = forecast(f, m);
    f.add({
      kind: 'weather',
      dogs: [],
      condition: m.value,
      ...said(windBy(f, m) ? 'present' : assertion),
      span: f.span([m.from, m.to]),
      rule: '<weather>',
    });
    f.claim(m.from, m.to);
  }
  readWeatherAhead(f);
}

/** What the sky will do is a forecast, and a forecast is possible; under an "if" it is planned with the rest. */
function forecast(f: Frame, m: Mention): Assertion {
  const { assertion, cue } = f.asserted(m.from, m.to);
  if (assertion === 'absent' && cue && deniesOther(f, cue, m)) return 'present';
  if (
    assertion === 'present' &&
    /^((calling for|chance of|might|may|could|should)\b|snow (predicted|forecast|due|tonight|tomorrow|later|overnight|coming(?! down)|by|before|in the forecast|on (the|its) way)\b)/.test(
      phrase(f, m),
    )
  )
    return 'possible';
  if (assertion === 'present' && (forecastTold(f, m.from) || forecastTold(f, m.to))) return 'possible';
  return assertion === 'planned' && !cue?.group.condition ? 'possible' : assertion;
}

/** "no wind, trail's hard": the denial is of something else, unless an "or" goes on with it. */
export function deniesOther(f: Frame, cue: { from: number; to: number }, m: Mention): boolean {
  if (cue.to > m.from) return false;
  if (m.from - cue.to > 3) return true;
  for (let k = cue.to; k < m.from; k++)
    if (f.m.at('condition', k) || f.m.at('sign', k) || f.low(k) === 'wind') return true;
  return f.commaBetween(cue.to, m.from) && !f.tokens.slice(cue.to, m.from).some((t) => /^(or|nor)$/.test(t.low));
}

/** "no wind" is calm, not the absence of something. */
const windBy = (f: Frame, m: Mention) => /^(no|not|hardly|without|zero|n't|ca|could|barely)$/.test(f.low(m.from));

/** "Sun" the day is a word of time. */
const inCue = (f: Frame, m: Mention) => f.low(m.from) === 'sun' && f.cues.some((c) => c.from <= m.from && m.to <= c.to);

export const ofDog = (f: Frame, m: Mention) =>
  f.dogs.some((d) => (d.kind === 'names' || d.also !== undefined) && d.from < m.to && m.from < d.to) ||
  f.siteAt(m.from) !== undefined;

export const phrase = (f: Frame, m: Mention) =>
  f.tokens
    .slice(m.from, m.to)
    .flatMap((t) => (t.low === '-' ? [] : t.low.replace('-', ' ')))
    .join(' ');

function skyStands(f: Frame, m: Mention): boolean {
  const words = phrase(f, m);
  const prev = f.low(m.from - 1);
  const next = f.low(m.to);
  // "won't calm down": a dog
  if (words === 'calm' && next === 'down') return false;
  // "a ten mile an hour breeze" is told by its speed
  if (m.value === 'windy' && f.quantities.some((q) => q.dimension === 'speed' && q.to === m.from)) return false;
  // "winds 15 gusts 30"
  if (/^gusts?$/.test(words) && f.quantityAt(m.to)) return false;
  // "a breeze of 10 knots"
  if (m.value === 'windy' && /^(of|at|about|around)$/.test(next) && f.quantityAt(m.to + 1)?.dimension === 'speed')
    return false;
  if (!SKY_ALONE.has(words)) {
    if (/^(little wind|a little wind|windy|wind up)$/.test(words) && /^(break|chill|burn)$/.test(next)) return false;
    if (
      m.value === 'windy' &&
      f.quantities.some(
        (q) =>
          (q.dimension === 'speed' || q.dimension === 'number') &&
          q.from >= m.to &&
          q.from - m.to < (q.dimension === 'speed' ? 10 : 4) &&
          f.sentence(q.from) === f.sentence(m.from) &&
          !q.weak &&
          (q.dimension === 'speed' || /^(at|to|of|about|around|maybe|roughly)$/.test(f.low(q.from - 1))),
      )
    )
      return false;
    return true;
  }
  if (m.value === 'clear') {
    if (words === 'sun' && /^(gets|hits|softens|can)$/.test(next)) return false;
    const sky = /^(sky|skies|it|day|weather|morning|night)$/.test(f.low(m.from - 2)) && /^(is|'s|was|are)$/.test(prev);
    if (
      /^(the|of|a|to|through|away|up|out|in|across|over|down|around|round|into|past|back|her|his|thinking|head|conscience|view|shot|run|path)$/.test(
        next,
      ) &&
      words === 'clear' &&
      !sky
    )
      return false;
    if (/^(trail|pretty|all|steer|crystal-|lungs|eyes?|nose|urine|pee|poop|stool|feet|road|perfectly)$/.test(prev))
      return false;
    if (/cleared up|clearing/.test(words) && f.entries.some((e) => e.kind === 'finding')) return false;
    if (
      words === 'clear' &&
      f.entries.some((e) => e.kind === 'finding' && /urine|cough|any/.test(e.sign) && e.span && spanNear(f, e.span, m))
    )
      return false;
    if (words === 'sun' && /^(dog|dogs)$/.test(next)) return false;
    if (/^(bright|fair)$/.test(words))
      return /^(and|,|is|'s|it|sky|day|out)$/.test(prev) && !f.dogs.some((d) => d.to === m.from || d.to === m.from - 1);
    return true;
  }
  if (m.value === 'calm') {
    if (words === 'still') return false;
    const d = f.dogs.find((x) => x.to <= m.from && m.from - x.to <= 3 && !x.company);
    return !d || f.strongBetween(d.to, m.from) || f.low(m.from - 1) === ',' || f.low(m.from - 1) === 'dead';
  }
  if (words === 'blowing' || words === 'blowing hard' || words === 'blowin')
    return (
      next !== 'snow' &&
      prev !== 'mind' &&
      !/^(through|past|by|off|it|out|his|her)$/.test(next) &&
      !f.dogs.some((d) => d.to === m.from)
    );
  if (words === 'howling')
    return /^(wind|it|'s|is)$/.test(prev) && !f.dogs.some((d) => d.to >= m.from - 2 && d.to <= m.from);
  if (words === 'pouring') return /^(it|is|'s|was)$/.test(prev) && !f.entries.some((e) => e.kind === 'finding');
  if (words === 'storm' || words === 'storms') return prev !== 'a_' && next !== 'door' && next !== 'out';
  if (words === 'soup out there') return true;
  if (words === 'sun')
    return !/^(gets|hits|softens|dog|dogs|up|came|went|has)$/.test(next) || next === 'came' || next === 'up';
  if (words === 'rain') return prev !== 'as';
  if (words === 'breeze' || words === 'a breeze')
    return !(prev === 'the' && /^(into|in|to|of)$/.test(f.low(m.from - 2)));
  // snow by the inch is weather while it is to come
  if (/ of snow$/.test(words) && /^(inches|centimet|cm|in|ten|feet)/.test(words))
    return /^(possible|planned)$/.test(f.assertion(m.from, m.to));
  if (words === 'flakes') return /^(soft|big|fat|few|wet|huge|tiny|fluffy|,|small|first|some)$/.test(prev);
  if (words === 'building') return false;
  if (words === 'cloud' || words === 'clouds') return !/^(of)$/.test(next);
  if (words === 'dull' || words === 'gray' || words === 'grey')
    return (
      /^(is|'s|was|and|,|it|sky|day|a|,|skies|light|flat|gone|turned|going|went|turning|all)$/.test(prev) &&
      !f.dogs.some((d) => d.to >= m.from - 2 && d.to <= m.from)
    );
  return true;
}

/** Is a finding's span close before the mention? */
const spanNear = (f: Frame, span: readonly [number, number] | number[], m: Mention) => {
  const at = f.tokens[m.from]?.start ?? 0;
  return at - (span[1] as number) < 60 && at >= (span[0] as number);
};
