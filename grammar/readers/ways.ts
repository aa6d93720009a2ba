/** Readers "attitude" and "gait": how the dogs went. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Mention, Owner } from '../steps/frame.ts';
import { deniedInside } from '../steps/mentions.ts';
import { wordsIn } from '../steps/tokens.ts';
import { doubted, said } from './places.ts';
import { setAgainst } from './set-against.ts';
import { closeDog, toldBefore } from './ways-dog.ts';

/** Single words that say how a dog went only right behind the dog; elsewhere they mean other things. */
const CLOSE_ONLY = new Set(
  "good;great;happy;solid;a rock;all business;behaved;a joy;a delight;a pleasure;a gem;a peach;a sweetheart;steady;bright;fine;ok;fresh;sharp;smooth;perfect;fantastic;amazing;wonderful;brilliant;excellent;awesome;superb;super;honest;focused;settled;content;lively;sensible;comfortable;proud;relaxed;tired;flat;dragging;drags;dragged;beat;low;quiet;dull;down;weak;spent;shot;toast;cooked;drained;slack;lazy;neutral;coasting;coasted;coasts;floating;strong;hauling;hauled;driving;powering;powered;powerful;digging;towing;on fire;eager;wild to go;loud;keen;excited;jumping;leaping;lunging;barking;screaming;screamed;screams;scream;wired;banging;banged;slamming;bouncing;nervous;shy;tense;tight line;worried;cautious;wary;unsure;hesitant;rattled;quit;quits;quitting;turned back;stopped dead;balls;stalled;lay down;laid down;lies down;lying down;laying down;fight;fights;fighting;fought;mean;nasty;snaps;snapped;snapping;at it;feisty;bossy;pinned;wrestling;sluggish;subdued;fading;faded;flagging;beat;whipped;gassed;tires;tiring;lagging;trailing;smiling;cruising;looking good;looked good;looks good;look good;looked great;looking great;looks great;look great;pumped;stress;lunged at;rowed;scrap;bit at;strong finish;plodding;panic;a train;a tank;a machine;a mule;a pro;a star;a champ;a dream;a monster;a beast;like a truck;like a train;like a tractor;cheerful;perky;antsy;impatient;hyped;stoked;howling to go;wagging;tail up;tails up;tail down;tails down;head down;heads down;went well;going well;went great;going great;was good;were good;was great;were great;good job;great job;good energy;great energy;tourist;sleepy;jolly;fried;off color;off colour;stubborn;grumpy;cranky;mopey;blah;gave up;gives up;giving up;nosing;not happy;tiff;wiped;ca n't wait;could n't wait;cannot wait;weary;shut down;well behaved;on edge;go;lit up;startled;tight lines;wanted more;wants more;wanting more;coming along".split(
    ';',
  ),
);
/** Reads how the dogs went. */
export function readAttitude(f: Frame): void {
  let covered = 0;
  const out: { dogs: string; manner: string; to: number }[] = [];
  let last: { owner: Owner; to: number } | undefined;
  for (const m of f.m.of('manner')) {
    if (m.from < covered || f.isClaimed(m.from, m.to) || f.dogAt(m.from)) continue;
    const owner = mannerOwner(f, m) ?? joinedTo(f, m, last);
    if (!owner) continue;
    last = { owner, to: m.to };
    let assertion = nothingElse(f, m) ? 'present' : f.assertion(m.from, m.to);
    const key = { dogs: owner.dogs.join(), manner: m.value as string, to: m.to };
    if (out.some((o) => o.dogs === key.dogs && o.manner === key.manner)) {
      f.claim(m.from, m.to);
      continue;
    }
    if (deniedInside(f.tokens, m) || neverQuit(f, m)) assertion = 'absent';
    else if (negativeInside(f, m)) assertion = assertion === 'absent' ? 'present' : assertion;
    if (owner.phrase?.negative && assertion === 'present') assertion = 'absent';
    const entry: EntryOf<'attitude'> = {
      kind: 'attitude',
      dogs: owner.dogs,
      manner: m.value,
      ...said(assertion),
      span: f.span(
        [m.from, m.to],
        owner.phrase && Math.abs(owner.phrase.to - m.from) < 8 ? [owner.phrase.from, owner.phrase.to] : undefined,
      ),
      rule: '<dog> <manner>',
      ...doubted(owner.doubt),
    };
    f.add(entry);
    setAgainst(f, entry);
    f.claim(m.from, m.to);
    out.push(key);
    covered = m.to;
  }
}

/** "Odd is odd today. Slack tug and tail down": the second way of the one the first was told of. */
function joinedTo(f: Frame, m: Mention, last: { owner: Owner; to: number } | undefined): Owner | undefined {
  if (!last || m.from - last.to !== 1 || !/^(and|,|&|\+|n|with|\/)$/.test(f.low(last.to))) return undefined;
  return mannerStands(f, m, wordsIn(f.tokens, m.from, m.to)) ? last.owner : undefined;
}

/** "she got scared but she didn't quit" */
const neverQuit = (f: Frame, m: Mention) =>
  /^(quit|quits|stall|balk)$/.test(f.low(m.from)) && /^(n't|not|never)$/.test(f.low(m.from - 1));

/** "not pulling", "wouldn't go": the denial is part of the word. */
const negativeInside = (f: Frame, m: Mention) => {
  for (let k = m.from; k < m.to; k++) if (/^(n't|not|no|never|refused|won't)$/.test(f.low(k))) return true;
  return false;
};

/** "nothing found on her, simply flat": what was not found is no attitude. */
function nothingElse(f: Frame, m: Mention): boolean {
  const { assertion, cue } = f.asserted(m.from, m.to);
  const nothing = assertion === 'absent' && cue && f.m.at('nothing', cue.from);
  return Boolean(
    nothing &&
      nothing.to <= m.from &&
      (f.commaBetween(nothing.to, m.from) || /^(simply|just|only|merely)$/.test(f.low(m.from - 1))),
  );
}

function mannerOwner(f: Frame, m: Mention): Owner | undefined {
  const words = f.tokens
    .slice(m.from, m.to)
    .map((t) => t.low)
    .filter((w) => w !== '-')
    .join(' ');
  if (!mannerStands(f, m, words)) return undefined;
  const close = closeDog(f, m);
  // "Tugs: all tight": everybody's
  if (!close && f.low(m.from) === 'tugs' && (m.from === 0 || f.isStrong(m.from - 1)) && f.out) {
    const group = f.dogs.find((d) => d.kind === 'group' && d.from > m.from && d.to <= m.to && d.dogs.length);
    if (group) return { dogs: group.dogs, phrase: group };
    const out = f.dogs.filter((d) => d.excepted && f.sentence(d.from) === f.sentence(m.from)).flatMap((d) => d.dogs);
    return {
      dogs: f
        .lineup(m.from)
        .map((l) => l.dog)
        .filter((x) => !out.includes(x)),
    };
  }
  if (CLOSE_ONLY.has(words)) {
    // "Gus was a pain, fighting with Penny"
    const with_ =
      m.value === 'quarrelsome' && /ing$/.test(words) && /^(with|at|over)$/.test(f.low(m.to)) && !close
        ? f.owner(m.from, m.from)
        : undefined;
    if (with_?.dogs.length && !with_.human && with_.phrase && !f.strongBetween(with_.phrase.to, m.from)) return with_;
    if (!close) return undefined;
    return { dogs: close.dogs, phrase: close, doubt: close.doubt };
  }
  if (close) return { dogs: close.dogs, phrase: close, doubt: close.doubt };
  // The subject, not a dog inside the words ("turned the whole team around")
  const inside = f.dogs.some((d) => d.from >= m.from && d.to <= m.to);
  const owner = inside ? f.owner(m.from, m.from) : f.owner(m.from, m.to);
  if (owner.human) return undefined;
  if (owner.dogs.length) return owner;
  // "who gets spooky about it? our Bear"
  const behind = f.dogs.find(
    (d) =>
      d.from >= m.to &&
      d.from - m.to <= 5 &&
      d.kind === 'names' &&
      !d.possessive &&
      !f.strongBetween(m.to, d.from) &&
      // "snapping at Gus": whom it was done to
      !(m.value === 'quarrelsome' && d.company) &&
      // "turned the team around, Storm moved to lead": a statement of her own
      !/^(moved|moves|goes|went|is|was|has|had|came|takes|took|got|gets|ran|led|leads)$/.test(f.low(d.to)),
  );
  return behind && { dogs: behind.dogs, phrase: behind, doubt: 'the dog was named after it' };
}

/** Were stools told of right before, in this sentence or the last? */
const stoolJustTold = (f: Frame, m: Mention): boolean =>
  /^(is|'s|are|was|were|look|looks)$/.test(f.low(m.from - 1)) &&
  f.entries.some(
    (e) =>
      e.kind === 'finding' &&
      /stool$/.test(e.sign) &&
      e.span &&
      f.sentence(m.from) - f.sentence(f.tokens.findIndex((t) => t.end > (e.span?.[0] ?? 0))) <= 1,
  ) &&
  !f.entries.some(
    (e) =>
      e.span &&
      e.kind !== 'remark' &&
      !(e.kind === 'finding' && /stool$/.test(e.sign)) &&
      f.sentence(f.tokens.findIndex((t) => t.end > (e.span?.[0] ?? 0))) === f.sentence(m.from),
  );

function mannerStands(f: Frame, m: Mention, words: string): boolean {
  const prev = f.low(m.from - 1);
  const next = f.low(m.to);
  if (f.siteAt(m.from - 1) && /^(good|fine|great|perfect|ok|normal|tight.*)$/.test(words)) return false;
  // "went flat on her face", "watched him on the flat"
  if (/\bflat$/.test(words) && (/^(on|out)$/.test(next) || (words === 'flat' && prev === 'the'))) return false;
  // "going at it again", not "nobody looked at it"
  if (words === 'at it' && !/^(went|go|goes|going|were|are|was|'re|been|both|still|back|is|'s)$/.test(prev))
    return false;
  // "still licking, and she's still at it": one dog alone has no quarrel
  if (words.endsWith('at it') && closeDog(f, m)?.dogs.length === 1 && !/^(with|again)$/.test(next)) return false;
  // "kept looking back at me": only a look
  if (words === 'looking back' && /^(at|for|to|on)$/.test(next)) return false;
  // "wouldn't leave Storm alone", "didn't want to leave the cabin to me"
  if (
    /\bleave$/.test(words) &&
    (f.dogAt(m.to) || /^(him|her|it|them|that|his|the|a|any|me|alone)$/.test(next)) &&
    [1, 2, 3].some((n) => /^(alone|be|it)$/.test(f.low(m.to + n)))
  )
    return false;
  // "her poop is soft, everybody else is solid"
  if (/^(solid|good|fine|great|normal|firm)$/.test(words) && stoolJustTold(f, m)) return false;
  // "refused the thermometer": no way of going
  if (
    /^refus(ed|es|ing)( the| to take)?$/.test(words) &&
    [0, 1].some((n) =>
      /^(thermometer|needle|syringe|pills?|tablets?|meds?|medicine|booties?|boots|coat|jacket|blanket|brush|comb|clippers|shot|harness|massage|ointment|salve|wrap|stethoscope)$/.test(
        f.low(m.to + n),
      ),
    )
  )
    return false;
  // "left triceps on Rook tight as a drum": a muscle, no tug
  if (
    /^tight\b/.test(words) &&
    f.sites.some((s) => s.part && s.to <= m.from && m.from - s.to <= 5 && !f.strongBetween(s.to, m.from)) &&
    ![1, 2, 3, 4, 5].some((n) => /^(tugs?|lines?|tuglines?)$/.test(f.low(m.from - n)))
  )
    return false;
  // "hasn't pooped since yesterday"
  if (words === 'pooped' && /^(n't|not|has|have|had|just|already|never|'d|'ve|she|he|they)$/.test(prev)) return false;
  if (words === 'done in' && /^(half|a|an|the|no|under|about|\d)/.test(next)) return false;
  if (words === 'jolly' && /^(good|well|nice|fine|big)$/.test(next)) return false;
  if (words === 'drained' && /^(theirs|hers|his|it|the|that)$/.test(next)) return false;
  if (
    /^(quit|quits|quitting)$/.test(words) &&
    /^(that|it|this|limping|coughing|bleeding|shaking|shivering|now|since|licking|vomiting)$/.test(next)
  )
    return false;
  if (
    /^(not sure|unsure)$/.test(words) &&
    (/^(if|what|whether|why|how|about|which|when|where)$/.test(next) ||
      prev === ',' ||
      prev === '' ||
      prev === '.' ||
      f.m.at('me', m.from - 1) ||
      /^('m|am)$/.test(prev))
  )
    return false;
  if (
    m.value === 'good' &&
    /^(boy|girl|dog|job|trail|time|luck|run|day|night|morning|chance|idea|thing|one|news|spot|going|mile|trip|snow|drink|appetite|meal|break|rest|bit|shape|condition|on|with|for|enough|leader|lead|of|weight|flesh|nick|coat)$/.test(
      next,
    ) &&
    !(next === 'of' && f.low(m.to + 1) === 'course') &&
    words.split(' ').length === 1
  )
    return false;
  if (
    /^(snapped|snaps|quit|quits|stalled)$/.test(words) &&
    (f.m.at('item', m.from - 1) || f.m.at('item', m.to + 1) || /^(wind|snow|it)$/.test(prev))
  )
    return false;
  if (f.quantities.some((q) => q.from === m.to && !q.weak) && /^(solid|good|great|steady|strong|low)$/.test(words))
    return false;
  if (words === 'all in' && /^(a|an|the|one|his|her|their|knots|bits|pieces)$/.test(next)) return false;
  if (words === 'tired' && /^(i|'m|am)$/.test(prev) && f.m.at('me', m.from - 2)) return false;
  if (/^(dragging|drags|dragged)$/.test(words) && /^(the|his|her|a|it|my|me|us)$/.test(next)) return false;
  if (words === 'flat' && (next === 'light' || next === 'lite' || /^(light|trail|section|ground)$/.test(prev)))
    return false;
  if (/^(head down|down)$/.test(words) && /^(to|the|from|a)$/.test(next)) return false;
  // "you had Roxy down as sore", "down for lead"
  if (words === 'down' && /^(as|for|with|on|at|by)$/.test(next)) return false;
  if (
    /^(barking|screaming|howling|banging|jumping|leaping)$/.test(words) &&
    /^(at|over)$/.test(next) &&
    !/^(every|each|all|me|us|everybody|everyone|hookup)$/.test(f.low(m.to + 1)) &&
    !/^(the line|the lines)/.test(`${f.low(m.to + 1)} ${f.low(m.to + 2)}`) &&
    !/^(the|hookup|hook|start|startup|takeoff|launch|departure|feeding)$/.test(f.low(m.to + 1)) &&
    !(/^(me|us)$/.test(f.low(m.to + 1)) && f.low(m.to + 2) === 'to' && /^(go|run|leave|move)$/.test(f.low(m.to + 3)))
  )
    return false;
  if (
    /^(driving|running|hauling|hauled)$/.test(words) &&
    (f.personAt(m.from - 1) || f.personAt(m.from - 2) || /^(the|a|my|water|straw|gear|out)$/.test(next))
  )
    return false;
  if (words === 'fresh' && /^(snow|powder|of|on|ones?)$/.test(next)) return false;
  if (/^(went after|goes after)$/.test(words) && f.siteAt(m.to + 1)) return false;
  if (/^(fine|ok|good|great)$/.test(words) && /^(all|now|otherwise|to)$/.test(next) && next !== 'all')
    return next !== 'now';
  if (/^(fine|ok)$/.test(words) && next === 'all') return false;
  // "You had Roxy down as sore"
  if (words === 'down' && (next === 'as' || /^(theirs|hers|his|it)$/.test(prev))) return false;
  // "flat, tail down": two words for it
  if (words.split(' ').length === 1 && (f.m.from('sign', m.to) || (f.siteAt(m.to) && !f.m.from('manner', m.to))))
    return false;
  if (
    /^(lay|lies|lie|laid|laying|lying) down$/.test(words) &&
    /^(at|in|on|for|to|as|and|right|by|with|after)$/.test(next) &&
    !/^(in (the )?(traces|harness|middle|trail)|on (me|the trail)|and (would|wo|refus|quit))/.test(
      `${next} ${f.low(m.to + 1)} ${f.low(m.to + 2)}`,
    )
  )
    return false;
  if (words === 'strong' && /^(wind|winds|coffee|smell)$/.test(next)) return false;
  if (
    /^would( not|n't)? have$/.test(`${f.low(m.from - 2)} ${prev}`) ||
    (prev === 'have' && f.low(m.from - 2) === 'would')
  )
    return false;
  if (words === 'low' && f.m.at('quantity', m.to)) return false;
  if (m.value === 'quarrelsome' && /^(snapped|fight|fights|mean|scrap)$/.test(words) && /^(off|the|my)$/.test(next))
    return false;
  return true;
}

/** "lope all exc gus trot": the gait of the one left out. */
function exceptionsOwn(f: Frame, m: Mention): Owner | undefined {
  // "they have been trotting since, bar Drift, who's pacing"
  const who = f.dogs.find(
    (x) =>
      x.excepted &&
      x.to <= m.from &&
      /^,? ?who ?('s|is|was|has|had been|has been)?$/.test(wordsIn(f.tokens, x.to, m.from)),
  );
  if (who) {
    const all = f.entries.findLast((e) => e.kind === 'gait' && e.dogs.length > 2 && e.gait !== m.value);
    if (all) all.dogs = all.dogs.filter((x) => !who.dogs.includes(x));
    return { dogs: who.dogs, phrase: who, doubt: who.doubt };
  }
  const d = f.dogs.find((x) => x.excepted && x.to <= m.from && m.from - x.to <= 2);
  const group = d && f.dogs.find((x) => x.except === d);
  return d && group && toldBefore(f, 'gait', group, d) && !f.strongBetween(d.to, m.from)
    ? { dogs: d.dogs, phrase: d, doubt: d.doubt }
    : undefined;
}

/** Reads gaits. */
export function readGait(f: Frame): void {
  for (const m of f.m.of('gait')) {
    if (f.isClaimed(m.from, m.to)) continue;
    const prev = f.low(m.from - 1);
    const word = f.low(m.from);
    if (
      /^(pace|paces|pacer)$/.test(word) &&
      /^(good|nice|steady|slow|fast|the|a|our|this|easy|that|same|own|great|decent|solid|at|of)$/.test(prev)
    )
      continue;
    if (
      prev === "'s" &&
      f.low(m.from - 2) !== 'who' &&
      !f.dogAt(m.from - 1) &&
      !f.dogs.some((d) => d.to === m.from - 1)
    )
      continue;
    if (
      /^(the|a|my|to|for|long|short|quick|nice|of|sore)$/.test(prev) &&
      /^walk/.test(word) &&
      !/^(a|down)$/.test(prev)
    )
      continue;
    if (/^trots$/.test(word) && prev === 'the') continue;
    // "walked him until it let go"; "walking sound": who walked, how it is
    if (/^walk/.test(word) && /^(him|her|it|them)$/.test(f.low(m.to))) continue;
    const how = f.m.from('fine', m.to) ?? f.m.from('sign', m.to);
    if (/^walking$/.test(word) && how && how.value !== 'walk') continue;
    // "no lameness at the trot": where it was looked for
    const seenAt = /^(at|in)$/.test(f.low(prev === 'a' || prev === 'the' ? m.from - 2 : m.from - 1));
    if (seenAt && f.m.of('sign').some((s) => s.value === 'lame' && s.to <= m.from && m.from - s.to <= 3)) continue;
    if (
      /^walk/.test(word) &&
      !/^(then|now)$/.test(f.low(m.to + 1)) &&
      /^(off|away|out|over|up|back|around|to|into|in|by|past|through|the)$/.test(
        f.low(/^(right|straight|clean)$/.test(f.low(m.to)) ? m.to + 1 : m.to),
      )
    )
      continue;
    // "never broke out of a trot" is a trot; "broke out of a trot" is one no more
    const out = /^out of( (a|the|his|her|their|that))?$/.test(
      wordsIn(f.tokens, m.from - 3, m.from).replace(/^(?!out).*?(?=out of)/, ''),
    );
    const kept = out && f.assertion(m.from, m.to) === 'absent';
    if (out && !kept) continue;
    const usedTo = wordsIn(f.tokens, m.from - 2, m.from) === 'used to';
    // "Bev could have walked it quicker"
    if (prev === 'have' && /^(could|would|might|should)$/.test(f.low(m.from - 2))) continue;
    // "lope, all; exc. Gus: trot"
    const behind = /^[,:-]$/.test(f.low(m.to)) ? f.dogFrom(m.to + 1) : undefined;
    const listed = behind?.dogs.length && /^([.;/]|)$/.test(f.low(behind.to)) ? behind : undefined;
    const owner: Owner = listed
      ? { dogs: listed.dogs, phrase: listed, doubt: listed.doubt }
      : (exceptionsOwn(f, m) ?? f.owner(m.from, m.to));
    const human = f.people.some((p) => p.to <= m.from && m.from - p.to < 4);
    if (owner.human || human || (owner.carried && /^walk/.test(word))) continue;
    let dogs = owner.dogs;
    if (!dogs.length) {
      if (!/^(trot|trotting|lope|loping|gallop)/.test(f.low(m.to - 1)) || !f.out) continue;
      dogs = f.lineup(m.from).map((l) => l.dog);
    }
    const entry: EntryOf<'gait'> = {
      kind: 'gait',
      dogs,
      gait: m.value,
      ...said(kept ? 'present' : usedTo ? 'past' : f.assertion(m.from, m.to)),
      span: f.span([m.from, m.to]),
      rule: '<dog> <gait>',
      ...doubted(owner.doubt),
    };
    f.add(entry);
    setAgainst(f, entry);
    f.claim(m.from, m.to);
  }
}
