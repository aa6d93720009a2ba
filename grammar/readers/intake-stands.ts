/** Reader "intake", where a word of eating or drinking is one: "passed", "left it", "gone" and "some" are told of many things. */
import type { Frame, Mention } from '../steps/frame.ts';
import { mealTold, phrase, type Served } from './intake-food.ts';

/** Verbs that no water is taken by. */
export const EATING =
  /^(only |hardly |barely |just |nearly |almost )?(ate|eat|eats|eaten|eating|wolf|inhal|devour|gobbl|polish|scarf|munch|crunch|nibbl|picked at|picks at|chow|demolish)/;
/** Getting food ready, which gives nobody any yet. */
const COOKS =
  /^(cook|cooked|cooking|make|made|making|boil|boiled|mix|mixed|fix|fixed|bring|brought|get|buy|save|saved)$/;
/** "all the others it's gone in two seconds", "Rook's was all gone". */
const ITS_GONE =
  /^((it|theirs|his|hers|that) ?('s|is|was|were|all)?( all)?|(was|is|were|'s|said|went) ?(like|just|all)? ?,?)$/;

/** Is the word said of food or drink here? */
export function takingStands(
  f: Frame,
  m: Mention,
  words: string,
  kind: 'ate' | 'drank',
  food: Served & { own: boolean },
  served: Served,
): boolean {
  const prev = f.low(m.from - 1);
  const next = f.low(m.to);
  const topic =
    food.own ||
    served.at >= 0 ||
    mealTold(f) ||
    f.m.of('drank').some((x) => x.to <= m.from) ||
    f.m
      .of('ate')
      .some(
        (x) =>
          x.to <= m.from &&
          /^(took (two|three|a|one|some)|ate|eats|only ate|picked at|nibbled|wolfed|inhaled|refused)/.test(
            phrase(f, x),
          ),
      );
  if (/^(left|left half|left some)$/.test(words) && f.siteAt(m.from)) return false;
  // "left his snack half eaten"
  if (
    /^left (it|his|hers|theirs|her|the)\b/.test(words) &&
    [0, 1, 2].some((n) => /^(half|partly|mostly|unfinished)$/.test(f.low(m.to + n)))
  )
    return false;
  // "his foot looks okay so I let it be"
  if (/^let it (be|lie|alone)$/.test(words) && (f.m.at('me', m.from - 1) || f.personAt(m.from - 1))) return false;
  // "doesn't want me touching them", "was eaten by mosquitoes": nothing that she took
  if (/\bwant$/.test(words) && /^(me|us|you|my|anyone|anybody|people|nobody)$/.test(next)) return false;
  if (words === 'eaten' && /^(was|is|been|being|got|get|gets)$/.test(prev) && f.dogs.some((d) => d.to === m.from - 1))
    return false;
  // "about half an inch": a length, a time
  const measured = f.quantityAt(m.to - 1);
  if (measured && measured.to > m.to && /^(distance|duration|clock)$/.test(measured.dimension)) return false;
  // "she can finish the run"
  if (
    /^(finish|finished|finishes|finishing)$/.test(words) &&
    [1, 2].some((n) =>
      /^(run|race|leg|loop|day|trip|job|season|tour|course|lap|line|stage|climb|job)$/.test(f.low(m.to + n)),
    )
  )
    return false;
  // "finished tired", "finished strong": how the run ended
  if (/^(finish|finished|finishes)$/.test(words) && (f.m.from('manner', m.to) || f.m.from('manner', m.to + 1)))
    return food.own;
  // "he yelped when I touched it"
  if (/^(touched it|sampled)$/.test(words) && (!topic || f.m.at('me', m.from - 1) || f.personAt(m.from - 1)))
    return false;
  if (/^(loved|loves|love|loving) /.test(words))
    return served.at >= 0 && f.sentence(served.at) >= f.sentence(m.from) - 1;
  // "Bruno sat down at the creek, refused": the way, not the food
  if (words === 'refused' && !topic && /^([.,;!]|and|but|)$/.test(next)) return false;
  // "spit out her bootie", "never looked at her"
  if (/^(spat|spit)/.test(words) && [0, 1, 2].some((n) => f.m.at('bootie', m.to + n))) return false;
  if (/looked at$/.test(words) && (!topic || /^(her|him|me|them|us)$/.test(next))) return false;
  // "only a little piece still": nothing that was eaten
  if (/^(only )?a (little|bit)( of)?$|^only a little$/.test(words) && !food.own && !served.what && !served.item)
    return false;
  if (kind === 'drank') {
    if (words === 'drunk' && /^(a|like|the)$/.test(prev)) return false;
    if (
      /^(drinks|drink|drank|drinking)$/.test(words) &&
      f.dogs.some((d) => d.to === m.from && /^(when|after|before|whenever|if|while|as)$/.test(f.low(d.from - 1))) &&
      f.m.of('sign').some((x) => x.to <= m.from && !f.strongBetween(x.to, m.from))
    )
      return false;
    if (words === 'drink' && /^(his|her|their|my|the|for|soft)$/.test(prev)) return false;
    if (/^(drink|swallow|sip|dip|dips)$/.test(words) && /^(to|hot|my|of)$/.test(prev) && prev !== 'to') return false;
    if (/^(water|watered)$/.test(words) && !f.dogs.length) return false;
    if (/^(drained|knocked back|some water|a little water)$/.test(words) && !topic) return false;
    if (/^(some water|a little water|a bit of water)$/.test(words)) return false;
    if (words === 'no water') return f.dogs.some((d) => d.to <= m.from && m.from - d.to < 8);
    return true;
  }
  if (
    /^(some|some of|half|half of|most|most of|part of|a half|three quarters|two thirds|a third of|a quarter of|3\/4|only some of|half his|half her|half their|half hers|half theirs)$/.test(
      words,
    )
  ) {
    // "I cook her some rice": it is still to be eaten
    if (/^(him|her|them|em)$/.test(prev) && COOKS.test(f.low(m.from - 2))) return false;
    // "gave her some broth"
    if (
      f.m
        .of('gave')
        .some(
          (g) =>
            g.to <= m.from &&
            m.from - g.to <= 3 &&
            /^(gave|give|giving|gives|handed|tossed|fed|offered)$/.test(f.low(g.from)),
        )
    )
      return false;
    const dog = f.dogs.find((d) => d.from >= m.to && d.from - m.to <= 1 && d.possessive);
    return (
      (Boolean(dog) && topic) ||
      (food.own && /^(left|had|took|ate|finished|got|her|his|only|their|just)$/.test(prev) && food.at - m.to < 4) ||
      (/^(left|ate|took|had)$/.test(prev) && served.at >= 0)
    );
  }
  if (/^(mouthfuls?|bites)$/.test(words))
    return f.quantities.some((q) => q.to === m.from) || /^(few|couple|several|some|small|little|tiny)$/.test(prev);
  // "tried to eat the balm", "ate his bootie"
  if (
    EATING.test(words) &&
    /^(the|his|her|my|a|an|their)$/.test(next) &&
    (f.m.at('act', m.to + 1) || f.m.at('item', m.to + 1) || f.m.at('bootie', m.to + 1)) &&
    !f.m.at('food', m.to + 1)
  )
    return false;
  // "even Snorre, who is picky", "our picky eater", "usually fussy": how a dog is, not how it ate
  if (/^(picky|fussy)$/.test(words)) {
    let k = m.from - 1;
    while (/^(is|'s|so|very|a|bit|little|always|usually|normally|often|generally|our|my|the|such)$/.test(f.low(k))) k--;
    const trait = f.tokens.slice(k + 1, m.from).some((t) => /^(always|usually|normally|often|generally)$/.test(t.low));
    if (trait || f.low(k) === 'who' || /^(eater|one|girl|boy|dog|lady|thing)$/.test(next)) return false;
  }
  if (/^(nearly|almost) all$/.test(words) && (next === ':' || next === 'of')) return false;
  // "trotting almost all the way"
  if (/^(nearly|almost) all$/.test(words) && (!topic || /^(the|of|day|night|week|morning|run)$/.test(next)))
    return false;
  // the pill, not the food
  if (
    /^(spat|spit)/.test(words) &&
    f.m.of('act').some((a) => a.value === 'medicated' && a.to <= m.from && m.from - a.to < 12)
  )
    return false;
  // "nobody wanted to leave"
  if (
    /^(wanted|wants)$/.test(words) &&
    next === 'to' &&
    !/^(eat|drink|touch|take|have|try|finish)$/.test(f.low(m.to + 1))
  )
    return false;
  // "none of them would touch it": only of nobody
  if (
    /^(would (touch|take|eat|look at|so much as touch)|wanted|wants|wanted any|(even |so much as |ever )?touched)$/.test(
      words,
    )
  )
    return (topic || !words.endsWith('touched')) && f.dogs.some((d) => d.to === m.from && d.negative);
  // "didn't want to cross"
  if (/\bwant$/.test(words) && next === 'to' && !/^(eat|drink|touch|take|have|try|finish)$/.test(f.low(m.to + 1)))
    return false;
  // what is no food
  const thing =
    /^(socks?|gloves?|mitts?|mittens?|rocks?|stick|rope|plastic|hat|bootie|booties|poop|poo|crap|garbage|mouse|rabbit|squirrel|sandwich|grass|moss|dirt|toy|towel)$/;
  if (
    /^(ate|eats|eating|eaten|eat)$/.test(words) &&
    [0, 1, 2].some((n) => thing.test(f.low(m.to + n)) && !f.dogAt(m.to + n))
  )
    return false;
  // "took a few steps"
  if (
    /^took/.test(words) &&
    [0, 1].some((n) =>
      /^(steps?|strides?|minutes|days|miles|laps|turns?|looks?|falls?|spills?|tumbles?|hours?|breaths?)$/.test(
        f.low(m.to + n),
      ),
    )
  )
    return false;
  // "wouldn't take my commands"
  if (
    /\btake$/.test(words) &&
    /^(my|commands?|the (gee|haw|lead|turn|corner|trail|fork)|a (gee|haw|turn)|gee|haw|direction)/.test(
      `${next} ${f.low(m.to + 1)}`,
    )
  )
    return false;
  // "shared a fish", "split the salmon": of two at least, and of food alone
  if (/^(shared|split) /.test(words))
    return food.own && food.at - m.to <= 2 && f.dogs.some((d) => d.to === m.from && d.dogs.length > 1);
  if (/stared at/.test(words))
    return (food.own && food.at - m.to <= 1) || (topic && /^([.,;!]|and|but|for|then|)$/.test(next));
  if (words === 'picked') return next === 'at';
  // "ate through her neckline"
  if (
    /^(ate|eats|eaten|eating)$/.test(words) &&
    (next === 'through' || f.m.at('gear-state', m.from)?.to !== m.to) &&
    next === 'through'
  )
    return false;
  if (/^(ate|eat|eats|eaten)$/.test(words) && f.m.at('item', m.to + 1)) return false;
  if (/^(refused|refuse|refuses|refusing)$/.test(words) && (f.m.at('manner', m.from)?.to ?? 0) > m.to) return false;
  // "sat down at the creek, refused": to go on
  if (
    /^refus(ed|es|ing)$/.test(words) &&
    !food.own &&
    f.m.of('manner').some((x) => x.value === 'balky' && x.to <= m.from && !f.strongBetween(x.from, m.from))
  )
    return false;
  if (/^(refused|refuse|refuses|refusing)$/.test(words))
    return !!(next !== 'to' || /^(eat|drink|take|touch)$/.test(f.low(m.to + 1)));
  // "passed water", "passed a loose stool"
  if (
    /^(passed|pass)$/.test(words) &&
    /^(water|urine|blood|gas|stool|wind|worms?|dark|red|brown|clear|some|a)$/.test(next) &&
    !f.dogFrom(m.to)
  )
    return false;
  if (/^(passed|pass|passed on|missed|skip|skips|skipped|skipping)$/.test(words))
    return (
      (topic &&
        !/^(the (bridge|cabin|lake|hut|road|river)|a|another|two|out|by|it)\b/.test(`${next} ${f.low(m.to + 1)}`) &&
        !/^(we|i|just)$/.test(prev)) ||
      (food.own && food.at - m.to < 3)
    );
  if (/^(nothing|none|none of|nope|zip|nada|zilch|gone|all gone|no thanks|said no|untouched|nothing left)$/.test(words))
    return (
      (served.at >= 0 ||
        f.m
          .of('ate')
          .some((x) => x.to <= m.from && EATING.test(phrase(f, x)) && f.sentence(x.from) === f.sentence(m.from))) &&
      f.dogs.some(
        (d) => d.to <= m.from && (m.from - d.to <= 2 || ITS_GONE.test(phrase(f, { from: d.to, to: m.from }))),
      ) &&
      !/^(in|wrong|on|of it|since|to)$/.test(next)
    );
  if (/^(cleaned out|cleaned up|cleans up|cleaning up|cleaned|clean)$/.test(words))
    return topic || /^(everything|theirs|hers|his|it all)$/.test(next) || f.dogs.some((d) => d.to === m.from)
      ? (!f.entries.some((e) => e.kind === 'care') && next !== 'the') || food.own
      : false;
  if (
    /^(finished|finish|finishes|bolted|polished|put away|put down|accepted|emptied|crushed|crushed it|swallowed|snatched|dug in|tucked in|picky|fussy|quiet|hungry|ravenous|starving|partial|not all|not much|ignored|ignored it|ignores|turned away|walked away|walked off|looked away|buried|buried it|left it|left his|left hers|left theirs|dropped it|declined|rejected|reluctantly|went without|missed|mouthed|licked up|took it|took the|gone before|had none|had all|took all|had some|a bite|a taste|a lick)$/.test(
      words,
    )
  )
    return topic;
  if (
    /^(left half|left some|left a little|left a bit|left most|left a lot|left all|left everything|left a quarter)$/.test(
      words,
    )
  )
    return true;
  if (/^could n't (be bothered|care less|care)$/.test(words))
    return food.own || (served.at >= 0 && f.sentence(served.at) === f.sentence(m.from));
  if (/^(whole|vanished|every crumb|every last bite|in one (breath|bite|gulp)|went at it)$/.test(words)) return false;
  if (/^(sniffed|sniffed at)$/.test(words)) return topic && !/^(around|the)$/.test(next);
  return true;
}
