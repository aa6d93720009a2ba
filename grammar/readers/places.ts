/** Readers "hitch" and "move": who stands where, whose team it is, and who is put somewhere else on the way. */
import type { LeftRight, Position } from '../entry.ts';
import type { DogPhrase, Frame, PersonMention } from '../steps/frame.ts';
import { LEXICON_WORDS } from '../words/index.ts';

interface Assignment {
  phrases: DogPhrase[];
  dogs: string[];
  position?: Position;
  side?: LeftRight;
  kind: 'hitch' | 'move';
  from: number;
  to: number;
}

/** Words that may stand between a dog and its place. */
const BETWEEN = new Set(
  "in at on up to into the back is 's are was were be been being as my has both running run runs out of over down behind them by herself himself themselves alone single double , - still now again side stays stay staying going goes go will 'll starts start then left right l r took take takes all on a her his our there i have having had for tomorrow today tonight together again just me nd over slides slid shifts shifted moves moved comes came hops hopped steps stepped switches switched drops dropped bumps bumped ends ended own gone come solo forward forwards ahead went spot place slot try go turn shot spin chance ride ran started worked working teamed".split(
    ' ',
  ),
);
const SIDE: Record<string, LeftRight> = { left: 'left', l: 'left', right: 'right', r: 'right' };

/** Every statement of a place: a dog, a position, perhaps a side. */
function assignments(f: Frame): Assignment[] {
  const out: Assignment[] = [];
  for (const p of f.m.of('position')) {
    if (insideGroup(f, p.from) || isGear(f, p.from, p.to) || f.siteAt(p.from)) continue;
    const found = dogsOf(f, p.from, p.to, out);
    if (!found?.dogs.length) continue;
    // "has Willa and Argus leading"; "Willa leading us home" is no place
    if (
      f.low(p.from) === 'leading' &&
      (!f.dogs.some((d) => d.to === p.from && d.kind === 'names') ||
        !/^([,.;]|and|with|today|again|)$/.test(f.low(p.to)))
    )
      continue;
    // "moved her out of wheel": where she was
    if (/^(of|from)$/.test(f.low(p.from - 1)) && (f.low(p.from - 1) === 'from' || f.low(p.from - 2) === 'out'))
      continue;
    if (p.value === 'team' && (!teamStands(f, p.to, found.between) || teamHeading(f, p.from, p.to, out))) continue;
    const side = sideOf(f, p.from, p.to, found);
    const from = Math.min(found.from, p.from);
    const kind = isMove(f, found, p.from, out) ? 'move' : 'hitch';
    const dogs = kind === 'hitch' ? [...new Set([...found.dogs, ...found.withDogs])] : found.dogs;
    out.push({
      phrases: found.phrases,
      dogs,
      position: p.value,
      side: side?.value,
      kind,
      from,
      to: Math.max(found.to, side?.to ?? 0, p.to),
    });
  }
  return [...out, ...sameRow(f, out), ...behindThem(f, out)].sort((a, b) => a.from - b.from);
}

/** "Miles and Ivy in lead, Storm and Rook in swing, Penny and Gus behind them": in the team, with no place of a name. */
function behindThem(f: Frame, told: readonly Assignment[]): Assignment[] {
  const out: Assignment[] = [];
  if (told.filter((a) => a.kind === 'hitch').length < 2) return out;
  for (const d of f.dogs) {
    if (d.kind !== 'names' || d.possessive || d.company || told.some((a) => a.phrases.includes(d))) continue;
    const words = `${f.low(d.to)} ${f.low(d.to + 1)}`;
    if (!/^(behind (them|those|that|him|her)|after (them|that)|next( |,|$)|then( |,|$))/.test(words)) continue;
    const near = told.some((a) => a.kind === 'hitch' && a.to <= d.from && d.from - a.to <= 3);
    if (near)
      out.push({ phrases: [d], dogs: d.dogs, kind: 'hitch', from: d.from, to: d.to + (/^behind/.test(words) ? 2 : 0) });
  }
  return out;
}

const insideGroup = (f: Frame, i: number) => f.dogs.some((d) => d.from <= i && i < d.to);
const isGear = (f: Frame, from: number, to: number) => {
  const item = f.m.at('item', from);
  return Boolean(item && (item.to > to || item.from < from));
};

/** "team" is a place only in a place's slot: "in team", "team left", "Sable and Heron team". */
function teamStands(f: Frame, to: number, between: string): boolean {
  if (/\b(in|at|to|into)$/.test(between) || between === '' || between === 'up') return true;
  return Boolean(SIDE[f.low(to)]) || /\b(left|right|l|r)$/.test(between);
}

/** "Team: Miles and Ivy, …" at the head of a note names the whole team, not the middle of it. */
const teamHeading = (f: Frame, from: number, to: number, told: readonly Assignment[]) =>
  !told.length && /^[:=-]$/.test(f.low(to)) && (from === 0 || f.isStrong(from - 1));

interface Found {
  phrases: DogPhrase[];
  dogs: string[];
  withDogs: string[];
  from: number;
  to: number;
  between: string;
}

/** The dogs of a place. Where those before it have their place already ("Team: Fern and Moss, wheel: Tansy"), those behind it. */
function dogsOf(f: Frame, from: number, to: number, told: readonly Assignment[]): Found | undefined {
  const left = leftOf(f, from);
  const taken = left?.phrases.some((p) => told.some((a) => a.from < p.from && a.phrases.includes(p)));
  return (taken ? rightOf(f, to) : undefined) ?? left ?? rightOf(f, to);
}

function leftOf(f: Frame, from: number): Found | undefined {
  const words: string[] = [];
  const withDogs: string[] = [];
  let to = from;
  let alone: DogPhrase | undefined;
  const giveUp = (): Found | undefined =>
    alone && {
      phrases: [alone],
      dogs: [...alone.dogs],
      withDogs: [],
      from: alone.from,
      to: alone.to,
      between: words.join(' '),
    };
  for (let k = from - 1; k >= 0 && from - k < 14; ) {
    const d = f.dogs.find((x) => x.to === k + 1);
    if (d) {
      if (d.company) {
        if (
          d.kind === 'names' &&
          (f.low(d.from - 1) === 'with' ||
            f.people.some((p) => p.to <= d.from && d.from - p.to < 10 && !f.strongBetween(p.to, d.from)))
        )
          alone ??= d;
        if (d.kind !== 'pronoun') withDogs.push(...d.dogs);
        const c = f.m.at('company', d.from - 1);
        k = (c?.from ?? d.from) - 1;
        continue;
      }
      if (d.possessive && d.kind === 'pronoun' && f.low(d.to) === 'own') {
        k = d.from - 1;
        continue;
      }
      if (d.possessive && d.kind === 'pronoun') return undefined;
      const dogs = [...d.dogs];
      to = d.to;
      // "Hazel and Dash up front and Bear and Misty in wheel" stay two; a company dog behind the place is taken too.
      withDogs.push(...companyBehind(f, from));
      return { phrases: [d], dogs, withDogs, from: d.from, to, between: words.reverse().join(' ') };
    }
    const backIn = f.m.at('back-in', k);
    if (backIn && backIn.to === k + 1) {
      words.push('back');
      k = backIn.from - 1;
      continue;
    }
    const place = f.m.at('position', k);
    if (place && words.some((w) => w === 'to' || w === 'back' || w === 'up') && f.roster.lineup.length) {
      // "swing back to wheel": a place named as its dogs.
      const dogs = f
        .lineup(k)
        .filter((l) => l.position === place.value)
        .map((l) => l.dog);
      return dogs.length
        ? { phrases: [], dogs, withDogs: [], from: place.from, to: place.to, between: words.reverse().join(' ') }
        : undefined;
    }
    const low = f.low(k);
    // "out of the bag and back in, team left"
    if (low === 'and' && f.m.at('back-in', k - 1)) {
      k--;
      continue;
    }
    // A name nobody knows stands in the list: "Juniper and Zorvik in lead".
    const stranger = f.tokens[k];
    if (
      stranger &&
      !stranger.known &&
      stranger.kind === 'word' &&
      !LEXICON_WORDS.has(low) &&
      /^(and|&|\+|,|\/)$/.test(f.low(k - 1))
    ) {
      k -= 2;
      continue;
    }
    if (!BETWEEN.has(low) || f.isStrong(k)) return giveUp();
    words.push(low);
    k--;
  }
  return giveUp();
}

/** "up front with june": the dog beside. */
function companyBehind(f: Frame, from: number): string[] {
  for (let k = from; k < from + 5; k++) {
    const d = f.dogFrom(k);
    if (d) {
      // A dog that has a place of its own behind it is no company here.
      const placed = [0, 1, 2].some((n) => f.m.from('position', d.to + n));
      return d.company && !placed && !/ing$/.test(f.low(d.to)) && f.low(d.from - 1) === 'with' ? d.dogs : [];
    }
    if (f.isStrong(k) || f.low(k) === ',' || f.personAt(k)) return [];
  }
  return [];
}

/** "In lead, June and Moss", "leaders: June and Moss", "wheel is Kody". */
function rightOf(f: Frame, to: number): Found | undefined {
  let k = to;
  const words: string[] = [];
  while (k - to < 4) {
    const d = f.dogFrom(k);
    if (d) {
      const next = f.low(d.to);
      const nextPlace = f.m.from('position', d.to) ?? f.m.from('position', d.to + 1) ?? f.m.from('position', d.to + 2);
      if (d.kind !== 'names' || d.possessive || d.company) return undefined;
      if (nextPlace && !f.isStrong(d.to) && (next !== ',' || f.m.from('position', d.to)) && !/^(and|,)$/.test(next))
        return undefined;
      return { phrases: [d], dogs: [...d.dogs], withDogs: [], from: to - 1, to: d.to, between: '' };
    }
    const low = f.low(k);
    if (!/^(:|is|are|was|were|-|dogs|dog|today|,|i|have|'ve|got|we|will|be|=|'re|'s)$/.test(low)) return undefined;
    words.push(low);
    k++;
  }
  return undefined;
}

function sideOf(f: Frame, from: number, to: number, found: Found): { value: LeftRight; to: number } | undefined {
  const before = SIDE[f.low(from - 1)];
  if (before && f.low(from - 1) !== '') return { value: before, to };
  const between = found.between
    .split(' ')
    .map((w) => SIDE[w])
    .find(Boolean);
  if (between) return { value: between, to };
  // "Lead: Rook left, Sedge right"
  const behindDog = found.to > to && found.dogs.length === 1 ? SIDE[f.low(found.to)] : undefined;
  if (behindDog && !f.siteAt(found.to) && /^([,.;]|and|)$/.test(f.low(found.to + 1)))
    return { value: behindDog, to: found.to + 1 };
  let k = to;
  while (/^(,|on|the|dog|-)$/.test(f.low(k)) && k - to < 3) k++;
  const after = SIDE[f.low(k)];
  if (!after || f.siteAt(k) || f.m.at('part', k + 1) || f.m.at('end', k + 1)) return undefined;
  const next = f.low(k + 1);
  if (/^[lr]$/.test(f.low(k)) && k === to) return { value: after, to: k + 1 };
  if (
    next === 'side' ||
    next === '' ||
    /^[,.;:!]$/.test(next) ||
    /^(and|beside|with|next|now|for|mile|km|n|again|instead|hand)$/.test(next)
  )
    return { value: after, to: next === 'side' ? k + 2 : k + 1 };
  return undefined;
}

/** Is the dog moved, or told as it stands? */
function isMove(f: Frame, found: Found, place: number, before: readonly Assignment[]): boolean {
  const between = ` ${found.between} `;
  if (found.phrases.some((p) => p.company) && !found.withDogs.length) return false;
  if (/ (to|into) /.test(between) || / back /.test(between))
    return f.out || / (back|up|down) (to|in|into) /.test(between) || moveVerb(f, found.from, place, true);
  if (f.m.of('swap').some((s) => s.from < place && !f.dogAt(s.from))) return true;
  const backIn = f.m
    .of('back-in')
    .some((b) => !f.strongBetween(b.from, place) && b.from > found.from - 6 && b.from < place);
  if (backIn) return true;
  if (f.m.of('in-for').some((b) => !f.strongBetween(b.from, place) && Math.abs(b.from - place) < 8)) return true;
  if (moveVerb(f, found.from, place, false)) return true;
  // "so he's swing left now", "Polka went up front": out on the trail a changed place is a move
  const changed =
    / (went|gone|moved|goes) /.test(between) ||
    [1, 2].some((n) => /^(now|instead)$/.test(f.low(place + n))) ||
    / now /.test(between);
  if (f.out && changed && found.dogs.some((d) => f.roster.lineup.some((l) => l.dog === d))) return true;
  // "moved her out of wheel and she's in team on the right"
  const movedBefore =
    f.out &&
    f.m
      .of('move-only')
      .some(
        (v) =>
          v.from < found.from &&
          found.from - v.from < 12 &&
          !f.dogAt(v.from) &&
          !f.strongBetween(v.from, place) &&
          f.dogs.some((d) => d.from >= v.to && d.from - v.to <= 1 && d.dogs.join() === found.dogs.join()),
      );
  if (movedBefore) return true;
  // "Replacement: Pascal, team R."
  for (let k = found.from - 1; k >= 0 && found.from - k < 4; k--)
    if (/^(replacement|replacing|sub|substitute)$/.test(f.low(k))) return true;
  const last = before[before.length - 1];
  return Boolean(last && last.kind === 'move' && !f.strongBetween(last.to, place) && found.from - last.to < 12);
}

/** A verb of moving right before the dog; "put" and "took" move only when the team is out. */
function moveVerb(f: Frame, dog: number, _place: number, any: boolean): boolean {
  for (let k = dog - 1; k >= 0 && dog - k < 4; k--) {
    if (f.isStrong(k)) return false;
    if (f.m.at('move-only', k) && !f.dogAt(k)) return true;
    if (f.m.at('move', k) && (f.out || any) && !f.m.at('hitch', k)) return true;
    if (/^(put|stuck|slotted|popped|tried)$/.test(f.low(k))) return f.out || any;
    if (!/^(and|just|then|ve|'ve|have|had|to|also|up|back|so|i|poor|old)$/.test(f.low(k))) return false;
  }
  return false;
}

/** "Juniper left lead, Moss right": the second stands in the same row. */
function sameRow(f: Frame, told: readonly Assignment[]): Assignment[] {
  const out: Assignment[] = [];
  for (const d of f.dogs) {
    if (d.kind !== 'names' || d.possessive || told.some((t) => t.phrases.includes(d))) continue;
    const side =
      SIDE[f.low(d.to)] ?? (f.low(d.to) === 'on' && f.low(d.to + 1) === 'the' ? SIDE[f.low(d.to + 2)] : undefined);
    if (!side || f.siteAt(d.to) || f.m.at('end', d.to + 1) || f.m.at('part', d.to + 1) || f.m.at('position', d.to + 1))
      continue;
    const end = f.low(d.to) === 'on' ? d.to + 3 : d.to + 1;
    const next = f.low(end);
    if (!/^([,.;]|and|)$/.test(next) && !f.dogFrom(end)) continue;
    const row = [...told].reverse().find((t) => t.to <= d.from && d.from - t.to <= 3 && t.side && t.side !== side);
    if (row)
      out.push({
        phrases: [d],
        dogs: d.dogs,
        position: row.position,
        side,
        kind: row.kind,
        from: d.from,
        to: end,
      });
    // "Penny left, Gus right in team": the row is told behind the second
    const later = row
      ? undefined
      : told.find((t) => t.from >= end && t.from - end <= 1 && t.side && t.side !== side && next === ',');
    if (later)
      out.push({ phrases: [d], dogs: d.dogs, position: later.position, side, kind: later.kind, from: d.from, to: end });
  }
  return out;
}

/** Before groups are written out: the line-up that the note itself tells. */
export function tellLineup(f: Frame): void {
  const seen = new Set<string>();
  for (const a of assignments(f)) {
    if (a.kind !== 'hitch') continue;
    for (const dog of a.dogs) {
      if (seen.has(dog)) continue;
      seen.add(dog);
      f.told.push({ dog, position: a.position, side: a.side, at: a.to - 1 });
    }
  }
  for (const d of driven(f)) {
    for (const dog of d.phrase.dogs) {
      const told = f.told.find((t) => t.dog === dog);
      if (told) told.driver ??= d.driver;
      else if (!seen.has(dog)) f.told.push({ dog, at: d.phrase.to - 1, driver: d.driver });
    }
  }
}

interface Driven {
  phrase: DogPhrase;
  driver?: string;
  from: number;
}

/** Dogs that somebody drives: "Wren is driving a pair, Fern and Cricket", "Liv's team: …", "took Trip out on skis". */
function driven(f: Frame): Driven[] {
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
    for (const d of f.dogs) {
      const skied =
        d.kind === 'pronoun' &&
        d.from === verb &&
        !d.possessive &&
        /^(skied|ran|drove|skijored|took)$/.test(f.low(verb - 1)) &&
        (f.low(verb - 1) !== 'took' || f.m.of('outing').some((o) => o.from >= verb && o.from - verb < 6));
      if (d.from < verb || d.from >= until || (d.kind !== 'names' && !skied) || d.possessive || d.excepted) continue;
      if (!p.possessive && f.strongBetween(p.to, d.from)) continue;
      if (d.company && !/^(with|behind)$/.test(f.low(d.from - 1))) continue;
      if (!p.possessive && d.from - verb > 14 && !out.some((o) => o.driver === p.name)) continue;
      if (out.some((o) => o.phrase === d)) continue;
      if (saidOfDog(f, d, verb)) break;
      out.push({ phrase: d, driver: p.name, from: p.from });
    }
  }
  return out;
}

/** "Cole changes his mind, he drives Bex and Gus": he is the person spoken of just before. */
function heDrives(f: Frame): PersonMention[] {
  const out: PersonMention[] = [];
  for (const t of f.tokens) {
    if (!/^(he|she)$/.test(t.low)) continue;
    const v = f.m.from('driving', t.i + 1);
    if (!v || !/^(drives|drove|has|had|takes|took|runs|ran|driving|'s)/.test(f.low(t.i + 1))) continue;
    const d = f.dogFrom(v.to);
    const person = f.people.filter((p) => p.to <= t.i && t.i - p.to < 16).at(-1);
    if (d?.kind !== 'names' || d.possessive || !person) continue;
    if (f.dogs.some((x) => x.kind !== 'pronoun' && x.from >= person.to && x.to <= t.i)) continue;
    out.push({ from: t.i, to: t.i + 1, name: person.name, possessive: false });
  }
  return out;
}

/** Does a new statement about the dog begin, instead of more of the team? */
function saidOfDog(f: Frame, d: DogPhrase, verb: number): boolean {
  const prev = f.low(d.from - 1);
  if (/^(says|said|because|but|so|that)$/.test(prev)) return true;
  return (
    d.from - verb > 6 &&
    Boolean(
      f.m.from('ate', d.to) ||
        f.m.from('sign', d.to) ||
        /^(is|was|'s|wo|would|has|had|did|ran|pulled|can|will|stay|stays|could|are)$/.test(f.low(d.to)),
    )
  );
}

function nextDriver(f: Frame, i: number): number {
  for (let k = i; k < f.tokens.length; k++) {
    const person = f.people.find((p) => p.from === k);
    if (person && drivingVerb(f, person.from, person.to, person.possessive) >= 0) return k;
    const mine = f.m.from('mine', k);
    if (mine) return k;
  }
  return f.tokens.length;
}

/** Token behind a verb of driving after a person, or -1. */
function drivingVerb(f: Frame, from: number, to: number, possessive: boolean): number {
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
        (f.m.at('item', k) && f.low(k) !== 'sled')
      )
        break;
    }
    return own && own.to > to ? own.to : -1;
  }
  // "Harriet was out on skis with Juno and Comet"
  if (/^(is|was|'s|went|goes|has|had|and|will|:)$/.test(f.low(to)) || f.m.from('outing', to)) {
    for (let k = to; k < to + 9 && !f.isStrong(k) && !f.dogAt(k); k++)
      if (f.low(k) === 'with' && f.m.of('outing').some((o) => o.from >= to && o.to <= k)) return k + 1;
  }
  for (let k = to; k < to + 4; k++) {
    const v = f.m.from('driving', k);
    if (v) {
      if (/^(has|had|took|got)$/.test(f.low(k)) && f.m.at('bootie', v.to)) return -1;
      return v.to;
    }
    if (!/^(is|was|will|'ll|has|then|also|just|,|'s|had|and|i|went|:|today|can)$/.test(f.low(k))) return -1;
  }
  return -1;
}

/** Reads hitches and moves. */
export function readPlaces(f: Frame): void {
  const list = assignments(f);
  const drivers = driven(f);
  const driverOf = (a: Assignment) => drivers.find((d) => d.driver && a.phrases.includes(d.phrase))?.driver;
  for (const a of list) {
    const driver = a.kind === 'hitch' ? driverOf(a) : undefined;
    const assertion = f.assertionWithin(a.from, a.to);
    const span = f.span([a.from, a.to]);
    const doubt = a.phrases.find((p) => p.doubt)?.doubt;
    const base = {
      dogs: a.dogs,
      ...(a.side ? { side: a.side } : {}),
      ...said(assertion),
      span,
      rule: a.kind === 'hitch' ? '<dogs> in <place>' : '<dogs> moved to <place>',
      ...doubted(doubt),
    };
    // "try Boots in swing next run": told for another day
    const otherDay =
      a.kind === 'move' &&
      assertion === 'planned' &&
      f.tokens.some(
        (t) =>
          f.sentence(t.i) === f.sentence(a.from) &&
          (/^(tomorrow|tmrw|tomorow|tmw)$/.test(t.low) ||
            (t.low === 'next' && /^(run|time|week|day|trip|outing|month|season|weekend)$/.test(f.low(t.i + 1)))),
      );
    if (a.kind === 'move' && !otherDay) f.add({ kind: 'move', position: a.position as Position, ...base });
    else
      f.add({ kind: 'hitch', ...(a.position ? { position: a.position } : {}), ...(driver ? { driver } : {}), ...base });
    f.claim(a.from, a.to);
  }
  const placed = (d: DogPhrase) => list.some((a) => a.phrases.includes(d));
  for (const d of drivers) {
    if (placed(d.phrase)) continue;
    f.add({
      kind: 'hitch',
      dogs: d.phrase.dogs,
      ...(d.driver ? { driver: d.driver } : {}),
      ...said(f.assertion(d.phrase.from, d.phrase.to)),
      span: f.span([d.from, d.phrase.to]),
      rule: '<person> drives <dogs>',
    });
    f.claim(d.from, d.phrase.to);
  }
  readOutings(f, (d) => placed(d) || drivers.some((x) => x.phrase === d));
  readSwaps(f, list);
  readReplacing(f, list);
}

/** "took Trip out on skis", "hooked up Fern and Moss", "running Pika, Flint and Birch today". */
function readOutings(f: Frame, placed: (d: DogPhrase) => boolean): void {
  for (const d of f.dogs) {
    if (d.possessive || d.excepted || placed(d) || (d.kind !== 'names' && d.kind !== 'group') || d.company) continue;
    if (d.kind === 'group' && d.value !== 'F' && d.value !== 'M') continue;
    let v = d.from - 1;
    if (/^(up|out|a|just|only)$/.test(f.low(v))) v--;
    const verb = f.low(v);
    const hooked = /^(hooked|hooking|hitched|harnessed|hitching|hook|harnessing|hitch)$/.test(verb);
    const ran = /^(ran|running|run|took|taking|take|had|skied|drove|driving)$/.test(verb);
    if (!hooked && !ran) continue;
    const outing = f.m.of('outing').some((o) => !f.strongBetween(o.from, d.from));
    if (!hooked && !outing && !(ran && /^(ran|running|run|drove|driving)$/.test(verb) && wholeTeamTold(f, d))) continue;
    f.add({
      kind: 'hitch',
      dogs: d.dogs,
      ...said(f.assertion(d.from, d.to)),
      span: f.span([v, d.to]),
      rule: '<verb of hooking up> <dogs>',
    });
    f.claim(v, d.to);
  }
}

/** "ran Fern and Moss (today)": the verb takes the dogs as its object. */
function wholeTeamTold(f: Frame, d: DogPhrase): boolean {
  const next = f.low(d.to);
  return (
    d.dogs.length > 0 &&
    !f.dogs.some((x) => x.to === d.from - 1) &&
    (next === '' ||
      /^([.,;]|today|tonight|this|on|for|in|and|out|up|together|around|over|down|a|with|yesterday|tomorrow)$/.test(
        next,
      ))
  );
}

/** "swapped Dash and Scout" with no places told: each takes the other's. */
function readSwaps(f: Frame, list: readonly Assignment[]): void {
  for (const s of f.m.of('swap')) {
    let k = s.to;
    while (/^(out|around|the|places|positions)$/.test(f.low(k))) k++;
    const d = f.dogFrom(k);
    if (d?.dogs.length !== 2 || d.possessive) continue;
    if (list.some((a) => a.dogs.some((x) => d.dogs.includes(x)))) continue;
    const [a, b] = d.dogs.map((x) => f.roster.lineup.find((l) => l.dog === x));
    if (!a?.position || !b?.position || a.position === b.position) continue;
    for (const [dog, to] of [
      [a.dog, b],
      [b.dog, a],
    ] as const)
      f.add({
        kind: 'move',
        dogs: [dog],
        position: to.position as Position,
        ...said(f.assertion(d.from, d.to)),
        span: f.span([s.from, d.to]),
        rule: 'swap <dogs>',
        doubt: 'some',
        because: 'the places come from the line-up, they were not said',
      });
    f.claim(s.from, d.to);
  }
}

/** "Krill in for Ask": takes the other's place where it is known. */
function readReplacing(f: Frame, list: readonly Assignment[]): void {
  for (const r of f.m.of('in-for')) {
    const who = f.lastDogs(r.from);
    const whom = f.dogFrom(r.to) ?? f.dogs.find((d) => d.from >= r.from && d.to <= r.to);
    if (!who || !whom || !who.dogs.length || f.strongBetween(who.to, r.from)) continue;
    // "took Storm out and put Lark in her spot": hers is the one before
    const whose =
      whom.kind === 'pronoun' && whom.dogs.join() === who.dogs.join()
        ? f.dogs
            .filter(
              (d) =>
                d.to <= who.from &&
                d.kind === 'names' &&
                d.dogs.length === 1 &&
                f.roster.sexOf(d.dogs[0] as string) === whom.value,
            )
            .at(-1)?.dogs
        : whom.dogs;
    if (!whose?.length) continue;
    if (list.some((a) => a.dogs.some((x) => who.dogs.includes(x)))) continue;
    if (
      f.assertion(r.from, r.to) === 'planned' ||
      f.entries.some((e) => e.kind === 'hitch' && e.dogs.some((x) => who.dogs.includes(x)))
    )
      continue;
    const place = f.roster.lineup.find((l) => whose.includes(l.dog) && l.position);
    if (!place?.position || who.dogs.some((x) => whose.includes(x))) continue;
    f.add({
      kind: 'move',
      dogs: who.dogs,
      position: place.position,
      ...said(f.assertion(r.from, r.to)),
      span: f.span([who.from, whom.to]),
      rule: '<dog> in for <dog>',
      doubt: 'some',
      because: 'the place comes from the line-up, it was not said',
    });
    f.claim(r.from, r.to);
  }
}

/** Leaves `present` unsaid. */
export const said = (assertion: string) => (assertion === 'present' ? {} : { assertion: assertion as 'absent' });
/** A reason makes a doubt. */
export const doubted = (reason: string | undefined, much = false) =>
  reason ? { doubt: much ? ('much' as const) : ('some' as const), because: reason } : {};
