/** Reader "hitch", whose team it is: "Wren has Moss and Fern", "he drives the puppies". */
import type { DogPhrase, Frame, PersonMention } from '../steps/frame.ts';
import { carriedOff } from './drop-handed.ts';

interface Driven {
  phrase: DogPhrase;
  driver?: string;
  from: number;
}

/** Dogs that somebody drives: "Wren is driving a pair, Fern and Cricket", "Liv's team: …", "took Trip out on skis". */
export function driven(f: Frame): Driven[] {
  const out: Driven[] = [];
  for (const p of [...f.people, ...heDrives(f)]) {
    const verb = drivingVerb(f, p.from, p.to, p.possessive);
    if (verb < 0) {
      const before = f.dogs.find((d) => d.to <= p.from && p.from - d.to <= 3 && d.kind === 'names');
      const sledWith =
        f.low(p.from - 1) === 'with' &&
        /^(on|in|behind)$/.test(f.low(p.to)) &&
        [1, 2, 3, 4].some((n) => /^(sled|team|string|kicksled)$/.test(f.low(p.to + n)));
      const withPerson =
        f.low(p.from - 1) === 'with' &&
        before &&
        (sledWith || f.m.of('outing').some((o) => !f.strongBetween(o.from, p.from)));
      if (withPerson && before && !f.m.of('drop').some((x) => x.from < before.from && before.from - x.from <= 2))
        out.push({ phrase: before, driver: p.name, from: before.from });
      continue;
    }
    const until = nextDriver(f, p.to);
    const before = whoDrives(f, p, verb, until);
    for (const phrase of before)
      if (!out.some((o) => o.phrase === phrase)) out.push({ phrase, driver: p.name, from: phrase.from });
    if (before.length) continue;
    for (const d of f.dogs) {
      const skied =
        d.kind === 'pronoun' &&
        d.from === verb &&
        !d.possessive &&
        /^(skied|ran|drove|skijored|took)$/.test(f.low(verb - 1)) &&
        (f.low(verb - 1) !== 'took' || f.m.of('outing').some((o) => o.from >= verb && o.from - verb < 6));
      if (d.from < verb || d.from >= until || (d.kind !== 'names' && !skied) || d.possessive || d.excepted) continue;
      if (!p.possessive && f.strongBetween(p.to, d.from)) continue;
      // "Sam's taking a nap. Ivy limped.": he takes nobody
      if (
        p.possessive &&
        /^(taking|driving|running)$/.test(f.low(p.to)) &&
        f.strongBetween(p.to, d.from) &&
        !f.m.of('position').some((x) => x.from >= d.to && x.from - d.to < 5)
      )
        continue;
      if (d.company && !/^(with|behind)$/.test(f.low(d.from - 1))) continue;
      if (!p.possessive && d.from - verb > 14 && !out.some((o) => o.driver === p.name)) continue;
      if (out.some((o) => o.phrase === d) || carriedOff(f, d)) continue;
      if (
        saidOfDog(
          f,
          d,
          verb,
          out.some((o) => o.driver === p.name),
        )
      )
        break;
      out.push({ phrase: d, driver: p.name, from: p.from });
    }
  }
  return out;
}

/** "Juno and Comet in lead, Tuck in wheel, and it is Nora who drives": the team told before, when nothing is told behind. */
function whoDrives(f: Frame, p: PersonMention, verb: number, until: number): DogPhrase[] {
  if (p.possessive || !/^(drives|driving|drove|mushing|mushes|runs|takes|is|'s|who|on|with)$/.test(f.low(p.to)))
    return [];
  const cleft =
    /^(it|that)$/.test(f.low(p.from - 2)) && /^(is|'s|was|will)$/.test(f.low(p.from - 1)) && f.low(p.to) === 'who';
  const closes = /^(with|,|and)$/.test(f.low(p.from - 1)) && /^(driving|drives|mushing)$/.test(f.low(p.to));
  // "… Ebba and Balder in wheel. Gunnar drives.": a statement of its own
  const alone =
    !closes &&
    p.from > 0 &&
    f.isStrong(p.from - 1) &&
    /^(drives|driving|mushing|drove)$/.test(f.low(p.to)) &&
    (/^(if|when|unless)$/.test(f.low(p.to + 1)) || p.to + 1 >= f.tokens.length || f.isStrong(p.to + 1));
  if (!cleft && !closes && !alone) return [];
  if (
    f.dogs.some(
      (d) => d.from >= verb && d.from < until && d.kind === 'names' && f.sentence(d.from) === f.sentence(p.from),
    )
  )
    return [];
  return f.dogs.filter(
    (d) =>
      d.kind === 'names' &&
      !d.possessive &&
      !d.excepted &&
      !d.company &&
      d.to <= p.from &&
      f.sentence(d.from) === f.sentence(p.from) - (alone ? 1 : 0) &&
      (!alone || f.m.of('position').some((x) => x.from >= d.to && x.from - d.to < 5)) &&
      !f.people.some((x) => x !== p && x.from > d.to && x.to <= p.from),
  );
}

/** "Cole changes his mind, he drives Bex and Gus": he is the person spoken of just before. */
const OWN_TEAM =
  /^(her|his|own|little|a|an|small|string|team|sled|today|this|morning|,|:|with|of|two|three|four|five|six|seven|eight|the|second|other|just|only)$/;
function heDrives(f: Frame): PersonMention[] {
  const out: PersonMention[] = [];
  for (const t of f.tokens) {
    if (!/^(he|she)$/.test(t.low)) continue;
    const v = f.m.from('driving', t.i + 1);
    if (!v || !/^(drives|drove|has|had|takes|took|runs|ran|driving|'s)/.test(f.low(t.i + 1))) continue;
    // "she has her own little string today, Custard in lead"
    let k = v.to;
    while (OWN_TEAM.test(f.low(k)) && k - v.to < 8) k++;
    const d = f.dogFrom(k);
    const person = f.people.filter((p) => p.to <= t.i && t.i - p.to < 16).at(-1);
    if (d?.kind !== 'names' || d.possessive || !person) continue;
    if (f.dogs.some((x) => x.kind !== 'pronoun' && x.from >= person.to && x.to <= t.i)) continue;
    out.push({ from: t.i, to: t.i + 1, name: person.name, possessive: false });
  }
  return out;
}

/** Does a new statement about the dog begin, instead of more of the team? */
function saidOfDog(f: Frame, d: DogPhrase, verb: number, more: boolean): boolean {
  const prev = f.low(d.from - 1);
  if (/^(says|said|because|but|so|that)$/.test(prev)) return true;
  return (
    (d.from - verb > 6 || (more && d.dogs.length === 1)) &&
    Boolean(
      f.m.from('ate', d.to) ||
        f.m.from('sign', d.to) ||
        /^(is|was|'s|wo|would|has|had|did|ran|pulled|can|will|stay|stays|stayed|could|are|came|comes|goes|needs|got|looks|ate|drank|refused)$/.test(
          f.low(d.to),
        ),
    )
  );
}

function nextDriver(f: Frame, i: number): number {
  for (let k = i; k < f.tokens.length; k++) {
    const person = f.people.find((p) => p.from === k);
    if (person && drivingVerb(f, person.from, person.to, person.possessive) >= 0) return k;
    // "Lorna's behind me with Doris": no team of mine
    const mine = f.m.from('mine', k);
    if (
      mine &&
      !(f.low(k) === 'me' && /^(behind|after|to|from|of|past|by|beside|near|ahead|help|gave|told)$/.test(f.low(k - 1)))
    )
      return k;
  }
  return f.tokens.length;
}

/** "gets Gus and Fern (in lead, tomorrow)": the dogs end the statement, or have their place behind them. */
function takesOver(f: Frame, i: number): boolean {
  const d = f.dogFrom(i);
  if (!d) return /^(a|the|two|three|four|five|six|\d+)$/.test(f.low(i));
  return (
    d.kind === 'names' &&
    !d.possessive &&
    (f.m.from('position', d.to) !== undefined ||
      /^([.,;:]|and|with|in|on|up|at|no|tomorrow|today|this|for|then|too|)$/.test(f.low(d.to)))
  );
}

/** Token behind a verb of driving after a person, or -1. */
function drivingVerb(f: Frame, from: number, to: number, possessive: boolean): number {
  // "Uwe, who insists on his skis, follows us with Liesel and Benno"
  if (!possessive && f.low(to) === ',' && f.low(to + 1) === 'who')
    for (let k = to + 2; k < to + 12 && !f.isStrong(k); k++)
      if (f.low(k) === ',') {
        to = k + 1;
        break;
      }
  if (/^(with|to|ask|tell|remind|at|from|for)$/.test(f.low(from - 1))) return -1;
  if (f.low(to) === ':' && f.dogFrom(to + 1)?.kind === 'names') return to + 1;
  // "Sam Biscuit and Boots in lead": as a recogniser writes "Sam: …"
  const next = f.dogFrom(to);
  if (
    !possessive &&
    next?.kind === 'names' &&
    !next.possessive &&
    next.dogs.length > 1 &&
    (f.m.from('position', next.to + 1) ?? f.m.from('position', next.to)) &&
    (from === 0 || f.isStrong(from - 1))
  )
    return to;
  if (possessive) {
    if (/^(team|sled|string|dogs|lineup|crew|side)$/.test(f.low(to))) return to + 1;
    // "Hope's got Chance and Trip", "Wren's driving"
    const own = f.m.from('driving', to) ?? f.m.from('driving', to - 1);
    const next = f.low(to);
    if (/^(got|driving|running|taking|skiing|out|skijoring|mushing|bringing|with)$/.test(next)) return to + 1;
    // "Ezra's just behind us with the puppy team"
    for (let k = to; k < to + 10; k++) {
      if (f.low(k) === 'with') return k + 1;
      if (
        (f.dogAt(k) && f.dogAt(k)?.kind !== 'pronoun') ||
        f.isStrong(k) ||
        f.siteAt(k) ||
        (f.m.at('item', k) && f.low(k) !== 'sled' && !f.m.at('outing', k))
      )
        break;
    }
    return own && own.to > to ? own.to : -1;
  }
  // "Mathis goes with the kick-sled, only Colette"
  if (/^(is|was|'s|went|goes|comes|came|will)$/.test(f.low(to))) {
    const o = f.m.of('outing').find((x) => x.from > to && x.from - to < 6 && !f.strongBetween(to, x.from));
    if (o && !f.dogs.some((d) => d.from >= to && d.to <= o.from)) {
      let k = o.to;
      while (/^(,|this|morning|today|tomorrow|afternoon|and|sled)$/.test(f.low(k))) k++;
      if (/^(with|only|just|behind|:)$/.test(f.low(k)) && f.dogFrom(k + 1)?.kind === 'names') return k + 1;
    }
  }
  // "Amos is ahead of me with the other team, Juno and Comet in lead"
  if (/^(is|was|'s|went|goes|left|comes|came|started|headed|follows|followed|will|runs|ran|out)$/.test(f.low(to)))
    for (let k = to; k < to + 10 && !f.isStrong(k) && !f.dogAt(k) && !f.personAt(k); k++) {
      if (f.low(k) !== 'with') continue;
      let end = k + 1;
      while (/^(the|a|his|her|other|second|own|first|puppy|young|little|small|big)$/.test(f.low(end))) end++;
      if (end === k + 1 || !/^(team|string|sled|half|lot|bunch|crew|outfit)$/.test(f.low(end))) break;
      end++;
      if (/^(,|:|-|of)$/.test(f.low(end))) end++;
      return f.dogFrom(end)?.kind === 'names' ? end : -1;
    }
  // "Harriet was out on skis with Juno and Comet"
  if (/^(is|was|'s|went|goes|has|had|and|will|:)$/.test(f.low(to)) || f.m.from('outing', to)) {
    for (let k = to; k < to + 9 && !f.isStrong(k) && !f.dogAt(k); k++)
      if (f.low(k) === 'with' && f.m.of('outing').some((o) => o.from >= to && o.to <= k)) return k + 1;
  }
  if (f.low(to) === 'who') to++;
  for (let k = to; k < to + 5; k++) {
    const v = f.m.from('driving', k);
    if (v) {
      if (/^(has|had|took|got)$/.test(f.low(k)) && f.m.at('bootie', v.to)) return -1;
      // "Nora has gone to see about beans"
      if (
        /^(has|had|have)$/.test(f.low(k)) &&
        v.to === k + 1 &&
        /^(gone|been|to|seen|left|said|told|asked|come|not|never|[a-z]{3,}ed)$/.test(f.low(k + 1))
      )
        return -1;
      // "Sam gets Gus to eat", "Sam gets Gus's harness"
      if (/^(get|gets)$/.test(f.low(k)) && v.to === k + 1 && !takesOver(f, v.to)) return -1;
      return v.to;
    }
    if (
      !/^(is|was|will|'ll|has|then|also|just|,|'s|had|and|i|went|:|today|can|wants|want|to|may|might|could|means|plans|hopes|hoping|planning|going|gonna|supposed|'d|like|likes)$/.test(
        f.low(k),
      )
    )
      return -1;
  }
  return -1;
}
