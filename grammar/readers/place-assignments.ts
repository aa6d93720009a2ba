/** Readers "hitch" and "move", who is told to stand where: each place of the gangline with the dogs beside its word. */
import type { LeftRight, Position } from '../entry.ts';
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { LEXICON_WORDS } from '../words/index.ts';
import { placesFirst } from './place-first.ts';
import { isMove } from './place-moves.ts';
import { rows } from './place-rows.ts';
import { insideGroup, isGear, namesPlace, SIDE, teamHeading, teamStands } from './place-words.ts';

export interface Assignment {
  phrases: DogPhrase[];
  dogs: string[];
  position?: Position;
  side?: LeftRight;
  kind: 'hitch' | 'move';
  from: number;
  to: number;
  /** Why it is in doubt, in words. */
  because?: string;
}

/** Words that may stand between a dog and its place. */
const BETWEEN = new Set(
  "in at on up to into the back is 's are was were be been being as my has both running run runs out of over down behind them by herself himself themselves alone single double , - still now again side stays stay staying going goes go will 'll starts start then left right l r took take takes all on a her his our there i have having had for tomorrow today tonight together again just me nd over slides slid shifts shifted moves moved comes came hops hopped steps stepped switches switched drops dropped bumps bumped ends ended own gone come solo forward forwards ahead went spot place slot try go turn shot spin chance ride ran started worked working teamed can could may might should must at first last back himself too also alongside tucked instead swung swings slipped slips slotted drop as gets try trying tries whole coming got get gets put bumped promoted demoted switched shifted sent traded rotated permanently officially temporarily".split(
    ' ',
  ),
);

/** "Hopper and Vesper leading Bodie with Larkin in wheel": the dogs behind have a place of their own. */
function placedBehind(f: Frame, i: number): boolean {
  const d = f.dogFrom(i);
  return Boolean(
    d && f.m.of('position').some((p) => p.from >= d.to && p.from - d.to < 6 && !f.strongBetween(d.to, p.from)),
  );
}

/** Every statement of a place: a dog, a position, perhaps a side. */
export function assignments(f: Frame): Assignment[] {
  const out: Assignment[] = [];
  const first = placesFirst(f);
  for (const p of f.m.of('position')) {
    if ((insideGroup(f, p.from) && !first.has(p.from)) || isGear(f, p.from, p.to) || f.siteAt(p.from)) continue;
    // "in front of us"
    if (/^(front|back|rear)$/.test(f.low(p.to - 1)) && f.low(p.to) === 'of') continue;
    // "at the back I've got Kiwi": a place of the team where others are told
    if (/^(back|rear)$/.test(f.low(p.to - 1)) && !out.some((a) => a.kind === 'hitch')) continue;
    const found = first.has(p.from) ? behindPlace(f, p.to) : dogsOf(f, p.from, p.to, out);
    if (!found?.dogs.length) continue;
    // "has Willa and Argus leading"; "Willa leading us home" is no place
    if (
      f.low(p.from) === 'leading' &&
      (!f.dogs.some(
        (d) =>
          d.kind === 'names' &&
          (d.to === p.from || (d.to === p.from - 1 && /^(are|is|'s|were|was|be)$/.test(f.low(p.from - 1)))),
      ) ||
        (!/^([.,;]|and|with|today|tonight|again|then|now|from|since|alone|solo|single|all|until|till|for|so|but|)$/.test(
          f.low(p.to),
        ) &&
          !(f.low(p.to) === 'by' && /^(himself|herself|themselves)$/.test(f.low(p.to + 1))) &&
          !placedBehind(f, p.to)))
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
  return [...out, ...rows(f, out)].sort((a, b) => a.from - b.from);
}

/** The dogs that stand beside a place's word. */
export interface Found {
  phrases: DogPhrase[];
  dogs: string[];
  withDogs: string[];
  from: number;
  to: number;
  between: string;
}

/** The dogs of a place. Where those before it have their place already ("Team: Fern and Moss, wheel: Tansy"), those behind it. */
function dogsOf(f: Frame, from: number, to: number, told: readonly Assignment[]): Found | undefined {
  const turned = inverted(f, from, to);
  if (turned) return turned;
  const left = leftOf(f, from);
  const taken = left?.phrases.some((p) => told.some((a) => a.from < p.from && a.phrases.includes(p)));
  return (taken ? rightOf(f, to) : undefined) ?? left ?? rightOf(f, to);
}

/** The dogs right behind a place of a row that is told place first. */
function behindPlace(f: Frame, to: number): Found | undefined {
  const d = f.dogs.find((x) => x.from >= to && x.kind === 'names');
  return d && { phrases: [d], dogs: [...d.dogs], withDogs: [], from: to - 1, to: d.to, between: '' };
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
    const d = f.dogs.find((x) => x.to === k + 1 && !namesPlace(f, x));
    if (d) {
      if (d.excepted) {
        k = d.from - 1;
        if (f.low(k) === 'not') k--;
        continue;
      }
      if (d.company || (d.kind === 'pronoun' && /^(behind|beside|after|with)$/.test(f.low(d.from - 1)))) {
        if (
          d.kind === 'names' &&
          (f.low(d.from - 1) === 'with' ||
            f.people.some((p) => p.to <= d.from && d.from - p.to < 10 && !f.strongBetween(p.to, d.from)))
        )
          alone ??= d;
        if (d.kind !== 'pronoun') withDogs.push(...d.dogs);
        const c = f.m.at('company', d.from - 1);
        k = (c?.from ?? (d.company ? d.from : d.from - 1)) - 1;
        // "right behind them in swing": no side
        if (f.low(k) === 'right' && f.low(k + 1) === 'behind') k--;
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
    const place = f.m.at('position', k) ?? (f.low(k) === 'and' ? f.m.at('position', k - 1) : undefined);
    // "Penny moved from swing to lead", "out of wheel and into team": where she was
    const leaves = place && cameFrom(f, place.from);
    if (leaves !== undefined) {
      k = leaves - 1;
      continue;
    }
    if (
      place &&
      f.low(k) !== 'and' &&
      words.some((w) => w === 'to' || w === 'back' || w === 'up') &&
      f.roster.lineup.length
    ) {
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

/** Where "from" or "out of" begins before the place at `i`; undefined where neither stands there. */
function cameFrom(f: Frame, i: number): number | undefined {
  let k = i - 1;
  while (SIDE[f.low(k)] || /^(the|her|his|their)$/.test(f.low(k))) k--;
  if (f.low(k) === 'from') return k;
  return f.low(k) === 'of' && f.low(k - 1) === 'out' ? k - 1 : undefined;
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

/** "Back into swing he goes", "up to lead went Fern". */
function inverted(f: Frame, from: number, to: number): Found | undefined {
  if (!/^(into|to|in)$/.test(f.low(from - 1)) || !/^(back|up|down|so|and|then|[.,;])$/.test(f.low(from - 2)))
    return undefined;
  const verb = /^(goes|went|comes|came|go)$/;
  const d = f.dogFrom(to) ?? (verb.test(f.low(to)) ? f.dogFrom(to + 1) : undefined);
  if (!d?.dogs.length || d.possessive || !(d.from > to || verb.test(f.low(d.to)))) return undefined;
  return {
    phrases: [d],
    dogs: [...d.dogs],
    withDogs: [],
    from: from - 1,
    to: Math.max(d.to, to + 1),
    between: 'goes to',
  };
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
      // "Up front, Gus is limping": where he is seen, not where he is put
      if (words.includes(',') && /^('s|is|are|was|were|has|had|have)$/.test(next) && !nextPlace) return undefined;
      if (nextPlace && !f.isStrong(d.to) && (next !== ',' || f.m.from('position', d.to)) && !/^(and|,)$/.test(next))
        return undefined;
      return { phrases: [d], dogs: [...d.dogs], withDogs: [], from: to - 1, to: d.to, between: '' };
    }
    const low = f.low(k);
    if (
      !/^(:|is|are|was|were|-|dogs|dog|today|tonight|tomorrow|,|i|have|had|'ve|got|put|we|he|she|will|be|=|'re|'s|just|only|there)$/.test(
        low,
      )
    )
      return undefined;
    words.push(low);
    k++;
  }
  return undefined;
}

/** "left", "on the left", "at right" behind a dog, and nothing of its body. */
export function sideBehind(f: Frame, i: number): { value: LeftRight; to: number } | undefined {
  let k = i;
  if (/^(on|at|to)$/.test(f.low(k))) k++;
  if (k > i && /^(the|my)$/.test(f.low(k))) k++;
  const value = SIDE[f.low(k)];
  if (
    !value ||
    f.siteAt(i) ||
    f.siteAt(k) ||
    f.m.at('end', k + 1) ||
    f.m.at('part', k + 1) ||
    f.m.at('position', k + 1)
  )
    return undefined;
  const to = f.low(k + 1) === 'side' ? k + 2 : k + 1;
  return /^([,.;]|and|then|for|today|now|again|this|with|but|so|because|)$/.test(f.low(to)) ||
    f.dogFrom(to) ||
    f.m.from('position', to + 1)
    ? { value, to }
    : undefined;
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
  const behind = found.to > to && found.dogs.length === 1 ? sideBehind(f, found.to) : undefined;
  if (behind) return behind;
  let k = to;
  while (/^(,|on|the|dog|-|at|to)$/.test(f.low(k)) && k - to < 3) k++;
  const after = SIDE[f.low(k)];
  if (!after || f.siteAt(k) || f.m.at('part', k + 1) || f.m.at('end', k + 1)) return undefined;
  const next = f.low(k + 1);
  if (/^[lr]$/.test(f.low(k)) && k === to) return { value: after, to: k + 1 };
  if (
    next === 'side' ||
    next === '' ||
    /^[,.;:!]$/.test(next) ||
    /^(and|beside|with|next|now|for|mile|km|n|again|instead|hand|where|but|because|so|since|until|while|who|then|he|she|they|we|i|it)$/.test(
      next,
    )
  )
    return { value: after, to: next === 'side' ? k + 2 : k + 1 };
  return undefined;
}
