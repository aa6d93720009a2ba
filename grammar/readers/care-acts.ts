/** Reader "care", which words are an act: "rubbed", "iced" and "wrapped" are done to a dog, or to something else. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Mention, Site } from '../steps/frame.ts';
import { iceHolds } from './sign-words.ts';

export type Care = EntryOf<'care'>;
export type Act = Care['act'];
const DOES =
  /^(i|we|and|then|,|so|just|also|\.|;|:|-|\+|to|'ve|have|had|got|she|he|wren|being|been|was|is|all|again|will|'ll|have|still|&|n|ve)$/;

export const WARM_THING =
  /^(blanket|blankets|coat|jacket|jackets|parka|fleece|sleeping|towel|stove|fire|heater|straw|quilt)$/;

export const phrase = (f: Frame, m: { from: number; to: number }) =>
  f.tokens
    .slice(m.from, m.to)
    .map((t) => t.low)
    .filter((w) => w !== '-')
    .join(' ');

/** Is a dog, and no person, right before what packs the snow? */
function packsItself(f: Frame, m: Mention): boolean {
  let k = m.from;
  while (/^('s|has|had|is|was|keeps|kept|been|again)$/.test(f.low(k - 1))) k--;
  const d = f.dogs.find((x) => x.to === k || (x.possessive && x.to === k + 1));
  const to = /^(ice|snow)$/.test(f.low(m.to)) ? m.to + 1 : m.to;
  return Boolean(d?.dogs.length) && /^(in|between|up|into|under|around|again|all)$/.test(f.low(to));
}

/** Is what stands at `k` food, with nothing but its measure before it? */
function eaten(f: Frame, from: number, k: number): boolean {
  const food = f.m.from('food', k);
  if (!food || f.siteAt(k) || /^(water|snow|ice)$/.test(f.low(k))) return false;
  for (let n = from; n < k; n++)
    if (
      !/^(a|an|the|his|her|their|its|all|every|whole|full|double|half|big|huge|second|third|two|three|bowl|bowls|dish|plate|of|last|bit|piece|extra|entire)$/.test(
        f.low(n),
      )
    )
      return false;
  return true;
}

/** "snow on the groin to cool it": said what it is for. */
const cools = (f: Frame, m: Mention): boolean =>
  f.tokens.slice(m.to, m.to + 8).some((t) => /^cool/.test(t.low) && f.sentence(t.i) === f.sentence(m.from));

/** "hugged her to warm her up", "rubbed his ears to warm them up"; not "trotted easy to warm him up". */
function warmedByHand(f: Frame, m: Mention, words: string): boolean {
  const parts = f.sites.some((s) => s.to <= m.from && m.from - s.to <= 4 && s.part);
  if (/\bthem\b/.test(words) && !parts && !f.entries.some((e) => e.kind === 'finding' && e.part)) return false;
  for (let k = m.from - 6; k < m.to + 6; k++)
    if (/^(slow|slowly|easy|walk\w*|trot\w*|jog\w*|ran|run|running|mile|miles|km|loop|hill)$/.test(f.low(k)))
      return false;
  return true;
}

/** Is the word an act here? */
export function actStands(f: Frame, m: Mention, act: Act, words: string): boolean {
  const prev = f.low(m.from - 1);
  const next = f.low(m.to);
  if (f.dogAt(m.from)) return false;
  // "washed my glasses", "warmed our hands": of people
  if (/^(my|our|your)$/.test(next) && !f.dogFrom(m.to) && !f.dogFrom(m.to + 1)) return false;
  const object = f.dogFrom(m.to) ?? f.dogFrom(m.to + 1);
  const site = f.sites.find((s) => s.from >= m.to && s.from - m.to <= 4);
  const it = /^(it|that|those|these|them|em|both|him|her|out|up|down|back)$/.test(next);
  // "Tank is wiped": how he went, not what was done.
  if (
    f.m.at('manner', m.from) &&
    /^(is|'s|are|was|were|looks|looked|totally|just|pretty|so)$/.test(prev) &&
    (/^([.,;!]|and|but|so|today|now|)$/.test(next) || (!it && !site && !object))
  )
    return false;
  const clauseStart = m.from === 0 || DOES.test(prev) || f.personAt(m.from - 1) !== undefined;
  switch (act) {
    case 'massaged':
      if (/^rub|^rubs$/.test(words) && words !== 'rubdown' && words !== 'rub down') {
        if (/^(some|in|into|under)$/.test(next) || f.m.at('act', m.to)?.value === 'ointment') return false;
        if (/^(harness|bootie|a|the|no|that)$/.test(prev))
          return words === 'rub' && prev === 'a' && /^(down)$/.test(next);
        return (Boolean(object) || Boolean(site) || it || /^down/.test(next)) && !/^(raw|on)$/.test(next);
      }
      if (/^rolled/.test(words)) return Boolean(site) || it;
      if (/^work|^loosened/.test(words))
        return site && words !== 'worked' && words !== 'working on'
          ? true
          : Boolean(site) && /^(on|her|his|the|out)$/.test(next);
      return true;
    case 'wrapped':
      if (
        /^(wrap|tape|glue|sleeve|brace|dress\w*|bound|strapped|padded|gauze|splint|bandage|stitches|neoprene sleeve)$/.test(
          words,
        )
      )
        return (
          Boolean(site) ||
          /^(on|it)$/.test(next) ||
          prev === 'a' ||
          (/^(:|\+|,|;|plus)$/.test(prev) && f.entries.some((e) => e.kind === 'finding'))
        );
      if (/^(wrapped up|bound up)$/.test(words))
        return /^(it|in|with|her|his|the|.|,|)$/.test(next) && f.entries.some((e) => e.kind === 'finding');
      // "put some vet wrap around it"; "wrapped around a tree" is the line
      if (next === 'around')
        return /\b(wrap|vetwrap|bandage|tape|gauze)$/.test(words) && /^(it|that|his|her|the)$/.test(f.low(m.to + 1));
      return !f.m.at('item', m.to);
    case 'ointment':
      if (
        /^(oil|honey|grease|wax|jelly|gel|cream|paste|goo|lotion|creme|honey|oiled|tallow|tar|aloe|beeswax)$/.test(
          words,
        ) &&
        !f.entries.some((e) => e.kind === 'finding') &&
        !site
      )
        return false;
      if (/^(paste|fish oil)$/.test(words) && f.m.at('food', m.from)) return false;
      if (/^(smear|dab|smeared|dabbed|slather|slathered|rubbed in|smeared on|dabbed on|slicked)$/.test(words))
        return true;
      return (
        !/^(more|need|needs|wants|wanting|want|bring|out|order|buy|get)$/.test(prev) &&
        !(prev === 'of' && /^(out|tube|jar|more)$/.test(f.low(m.from - 2)))
      );
    case 'stretched':
      // "ROM ok": what was found, not what was done
      if (
        /^(rom|range of motion)$/.test(words) &&
        !/^(on|of|in|for|exercises|done|work|both|left|right|and|,|x|\d+)$/.test(next)
      )
        return false;
      // "massaged it and stretched it out"
      if (next === 'out' && /^(it|that|them)$/.test(f.low(m.to - 1)) && !/^(on|across|of|in|to)$/.test(f.low(m.to + 1)))
        return f.dogs.length > 0;
      return (Boolean(site) || it || Boolean(object) || clauseStart) && !/^(out|on|across|over|of|to)$/.test(next)
        ? f.dogs.length > 0
        : words === 'stretched out' && (Boolean(site) || Boolean(object));
    case 'warmed':
      // "it has warmed to minus eight", "warming up into the twenties": the air
      if (/^(to|into|above|past)$/.test(next) && !/^(it|her|him|them)$/.test(f.low(m.to - 1))) return false;
      if (
        WARM_THING.test(words) ||
        /^(covered|wrapped|tucked|bundled|rolled|set|laid|put|zipped|buried|bedded|draped|sat)$/.test(words)
      )
        return (m.to - m.from === 1 && !f.m.at('act', m.from)?.value) || f.m.at('act', m.from) !== m;
      // "hugged her to warm her up"; "went slow to warm them up" is of running
      if (/^warm\w* .+ up$/.test(words)) return warmedByHand(f, m, words);
      if (/^(warmed up|warm up|warming|warming up|warms|thawed|thaw)$/.test(words))
        return Boolean(object && object.kind !== 'group') || (Boolean(site) && !/^(nicely|well|the)$/.test(next));
      if (/^(jacket|blanket|fleece|coated|a jacket|a coat|dog coat|dog jacket|hand warmers?)$/.test(words))
        return /^(on|over)$/.test(next) || /^(a|her|his|their|put)$/.test(prev);
      if (
        /^(hot water bottle|hot pack|heat pack|heating pad|heat wrap|hand warmers?|warm compress|hot compress)$/.test(
          words,
        )
      )
        return Boolean(site) || /^(on)$/.test(next);
      return f.dogs.length > 0;
    case 'cooled':
      // "his shoulder was iced for ten minutes"
      if (words === 'iced' && /^(was|were|got|been|being|gets|is|are)$/.test(prev)) {
        const told = f.sites.findLast((s) => s.to <= m.from && m.from - s.to <= 3 && s.part);
        return told !== undefined && !iceHolds(told.part) && !f.strongBetween(told.from, m.from);
      }
      if (/^(ice|iced|icing)$/.test(words)) return (Boolean(site) || it) && clauseStart && !/^(up|over)$/.test(next);
      if (
        /^(cool|cooled|cooling|cools|cool down|cool off|cooled down|cooled off|cooling down|cooling off)$/.test(words)
      )
        return (
          it ||
          Boolean(object) ||
          Boolean(site) ||
          (/\b(down|off)$/.test(words) && /^(with|in|w|him|her)$/.test(next)) ||
          (words === 'cooled' &&
            /^(with|in)$/.test(next) &&
            [1, 2, 3].some((n) => /^(snow|water|ice|creek)$/.test(f.low(m.to + n)))) ||
          f.dogFrom(m.from + 1) !== undefined
        );
      // "he's packed ice in both hinds": what a foot does, not a hand
      if (/^pack/.test(words) && packsItself(f, m)) return false;
      if (/^pack/.test(words))
        return (
          (it || Boolean(object) || Boolean(site) || /snow|ice/.test(words)) &&
          (/snow|ice/.test(words) || snowNear(f, m))
        );
      if (/^(snow|ice) on$/.test(words)) {
        const told = f.entries.some((e) => e.kind === 'finding');
        const there = Boolean(site) || (/^(it|that|them|there|both)$/.test(next) && told);
        if (/^(put|packed|held|rubbed|and|slapped|some|stuck|had|with)$/.test(prev)) return there;
        const asks = f.entries.some(
          (e) => e.kind === 'finding' && /^(hot|swollen|sore|lame|bruised|stiff|overheated|collapsed)$/.test(e.sign),
        );
        return there && clauseStart && prev !== 'was' && (asks || cools(f, m)) && Boolean(site?.part);
      }
      if (words === 'cold water') return Boolean(site) && /^(in|with)$/.test(prev);
      return true;
    case 'cleaned':
      // "changed, soaked", "the booties were soaked": wet through
      if (words === 'soaked')
        return (
          (it || Boolean(site) || /^(in|with)$/.test(next) || f.siteAt(m.from - 1) !== undefined) &&
          !/^(were|was|are|is|get|got|through|all|getting)$/.test(prev) &&
          (it || next === 'in' || !f.m.at('bootie', m.to + 1))
        );
      if (
        /^(clean|clear|cleared|picked|popped out|melted|melted out|dug|dug out|soak|bath|broke out|pulled out|picking|knocked out|bit out|scraped out|cleared out|chipped out|picked out)$/.test(
          words,
        )
      ) {
        if (words === 'clean' || words === 'clear')
          return /^(it|them|em|that|the|her|his)$/.test(next) && /^(to|and|i|will|'ll)$/.test(prev);
        // "picked em out", "picked the ice out"
        if (words === 'picked')
          return (
            /^(it|them|em|that|those|the|all)$/.test(next) &&
            [1, 2, 3].some((n) => /^(out|off|clean)$/.test(f.low(m.to + n))) &&
            f.entries.some((e) => e.kind === 'finding')
          );
        return (
          (/^(it|them|em|that|the|her|his|snow|ice|out|both|all)$/.test(next) || Boolean(site)) &&
          f.entries.some((e) => e.kind === 'finding')
        );
      }
      // "she cleaned up a double supper"
      if (/^cleaned( (up|out|off))?$/.test(words) && [0, 1, 2, 3, 4].some((n) => eaten(f, m.to, m.to + n)))
        return false;
      if (words === 'cleaned up' || words === 'cleaned')
        return /^(it|them|em|that|the|her|his|out|both|and|with|,|.|;|)$/.test(next) ||
          f.m.from('act', m.to) !== undefined ||
          site ||
          object?.possessive
          ? f.entries.some((e) => e.kind === 'finding') || Boolean(site)
          : false;
      if (/^(saline|iodine|betadine|peroxide|epsom|epsom salts|chlorhexidine|chlorhex)$/.test(words))
        return !f.m.of('act').some((a) => a.value === 'cleaned' && a.from < m.from && m.from - a.to < 6);
      return f.entries.some((e) => e.kind === 'finding') || Boolean(site) || Boolean(object);
    case 'medicated':
      // "Tank refused the pill", "spat out her tablet": not taken
      if (
        /^(the|his|her|a|its)$/.test(prev) &&
        /^(refused|refuses|refusing|spat|spit|spits)$/.test(
          f.low(m.from - (/^(out|up)$/.test(f.low(m.from - 2)) ? 3 : 2)),
        )
      )
        return false;
      if (
        /^(shot|fluids|drops|syrup|dose|pill|tablet|charcoal|treated|electrolyte|electrolytes|supplement|supplements|vitamins?)$/.test(
          words,
        )
      )
        return (
          f.dogs.length > 0 &&
          ((next === 'for' && f.dogs.some((d) => d.from === m.to + 1)) ||
            /^(gave|give|a|her|his|got|some|on|with|giving|of|the|for|an|gets|,|;|pain|worm|cough|gut|vet|one|two|half|last|another|second|first|more)$/.test(
              prev,
            ) ||
            words === 'treated') &&
          !(words === 'fluids' && f.m.at('drank', m.from))
        );
      if (/^(med|medicine|medication|meds)$/.test(words)) return f.dogs.length > 0;
      return f.dogs.length > 0;
    case 'checked':
      return (
        (Boolean(site) || Boolean(object) || Boolean(frontedSite(f, m))) &&
        !/^(in|out|into|with)$/.test(next) &&
        // "snapped at him for looking at his own"
        !(prev === 'for' && /^look/.test(words)) &&
        // "Gus kept looking at his left hind": the dog himself
        !(
          /^looking/.test(words) &&
          /^(kept|keeps|was|is|'s|been|stood|stands|always|still)$/.test(prev) &&
          f.dogs.some((d) => d.to <= m.from && m.from - d.to <= 3)
        ) &&
        !(words === 'check' && /^(water|foot|gear|bootie|weight|spot|quick|final|last|a|vet|sound)$/.test(prev))
      );
    case 'trimmed':
      // "for the file", "on file": where it is written down
      if (words === 'file' && /^(the|my|our|his|her|on|medical|vet)$/.test(prev)) return false;
      if (
        /^(clipped|trimmed|filed|snipped)$/.test(words) &&
        f.entries.some(
          (e) =>
            e.kind === 'finding' &&
            /^(nail|dewclaw)$/.test(e.part ?? '') &&
            e.span &&
            Math.abs((f.tokens[m.from]?.start ?? 0) - e.span[1]) < 24,
        )
      )
        return true;
      if (/^(clip|clips|clipped|trim|file|filed|filing|cut off|snip|shaved|shortened)$/.test(words))
        return (
          Boolean(site && /nail|dewclaw|foot|toe/.test(site.part ?? 'nail')) ||
          it ||
          // "nails clipped on Ivy and Gus", "claws all filed"
          [1, 2].some((n) => /nail|dewclaw/.test(f.m.at('part', m.from - n)?.value ?? '')) ||
          (f.m.of('part').some((x) => /nail|dewclaw/.test(x.value) && x.to <= m.from && m.from - x.to < 14) &&
            /^(the lot|all of|every|him|her|both)/.test(`${next} ${f.low(m.to + 1)}`))
        );
      return !(f.low(m.to) === 'the' && /^(trail|brush|list)$/.test(f.low(m.to + 1)));
    case 'rested': {
      if (/^(rest|rests|rested|resting)$/.test(words)) {
        // "leaders booted, rest bare"
        if (words === 'rest' && /^(bare|barefoot|none|fine|good|ok|clean)$/.test(next)) return false;
        if ((f.m.at('group', m.from) && f.dogAt(m.from)) || (/^(the|a|to)$/.test(prev) && prev !== 'to')) return false;
        const dog = f.dogFrom(m.to);
        if (dog && !(dog.kind === 'pronoun' && /^(he|she|they|their)$/.test(f.low(dog.from)))) return true;
        if (
          /^(shall|will|must|should|can|'ll|to|gets|needs)$/.test(prev) &&
          words !== 'rested' &&
          !/^(stop|of|area|day)$/.test(next)
        )
          return f.dogs.some((d) => d.to <= m.from && m.from - d.to < 14 && !f.strongBetween(d.to, m.from));
        // "you wanted Felix rested tomorrow", "Parcel is to be rested"
        if (
          words === 'rested' &&
          (f.dogs.some(
            (d) => d.to === m.from && /^(want|wanted|wants|need|needs|like|keep|have)$/.test(f.low(d.from - 1)),
          ) ||
            (/^(be|being|gets|get)$/.test(prev) && /^(to|should|must|will|'ll|is|are|can)$/.test(f.low(m.from - 2))))
        )
          return true;
        const subject = f.dogs.some((d) => d.to <= m.from && m.from - d.to <= 2 && d.dogs.length < 3 && !d.possessive);
        return subject && !/^(of|stop|of the)$/.test(next) && words !== 'rested';
      }
      if (/^(day off|days off|rest day|day of rest)$/.test(words)) return f.dogs.length > 0;
      return f.dogs.length > 0;
    }
    default:
      return true;
  }
}

/** "Gus's wrists I have checked": the part stands before the one who did it. */
export function frontedSite(f: Frame, m: Mention): Site | undefined {
  let k = m.from;
  while (/^(have|'ve|had|also|just|already|all|both)$/.test(f.low(k - 1))) k--;
  if (!/^(i|we)$/.test(f.low(k - 1))) return undefined;
  return f.sites.find((s) => s.to === k - 1 && s.part && !f.isClaimed(s.from, s.to));
}

const snowNear = (f: Frame, m: Mention) =>
  [...Array(6).keys()].some((n) => f.low(m.to + n) === 'snow' || f.low(m.to + n) === 'ice');
