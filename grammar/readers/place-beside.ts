/** Readers "hitch" and "move", places that another dog's place tells: "put Rook up there with Ivy", "he's next to Gus now", "moved Miles over to the right". */
import type { LeftRight, Position } from '../entry.ts';
import type { DogPhrase, Frame } from '../steps/frame.ts';
import type { Assignment } from './place-assignments.ts';
import { SIDE } from './place-words.ts';

const FROM_LINEUP = 'the place comes from the line-up, it was not said';
/** Verbs of putting a dog somewhere. */
const PUT =
  /^(put|puts|putting|moved|move|moving|brought|bring|bringing|swapped|switched|switch|stuck|bumped|slotted|tried|trying|hooked|shifted|slid|ran|run|running|sent|paired|clipped|tucked|popped|have|had|got|promoted|want)$/;

/** Dogs told beside another, whose place is known. */
export function besides(f: Frame, told: readonly Assignment[]): Assignment[] {
  const out: Assignment[] = [];
  for (const mate of f.dogs) {
    if (mate.kind !== 'names' || mate.dogs.length !== 1 || mate.possessive || mate.excepted) continue;
    const link = linkBefore(f, mate.from);
    if (!link) continue;
    const d = f.dogs.findLast((x) => x.to <= link.from && !x.company && !x.excepted);
    if (d?.dogs.length !== 1 || d.possessive || d.dogs[0] === mate.dogs[0] || f.strongBetween(d.to, mate.from))
      continue;
    if (told.some((a) => a.phrases.includes(d) && a.to > d.to - 1 && Math.abs(a.from - d.from) < 10)) continue;
    if (
      f.m
        .of('position')
        .some((p) => p.from >= d.to && p.from < mate.to + 3 && f.sentence(p.from) === f.sentence(d.from))
    )
      continue;
    // "swapped Scout with Bear": each goes to the other's place
    if (/^(swap|switch|trad|exchang)/.test(f.low(d.from - 1)) && link.from === d.to) continue;
    if (!placing(f, d, link.from, mate)) continue;
    const place =
      told.findLast((a) => a.to <= d.from && a.position && a.dogs.includes(mate.dogs[0] as string)) ??
      f.roster.lineup.find((l) => l.dog === mate.dogs[0] && l.position);
    if (!place?.position) continue;
    const now = f.roster.lineup.find((l) => l.dog === d.dogs[0]);
    if (now?.position === place.position) continue;
    const moved = f.out && !told.some((a) => a.kind === 'hitch' && a.dogs.includes(mate.dogs[0] as string));
    out.push({
      phrases: [d],
      dogs: d.dogs,
      position: place.position as Position,
      kind: moved ? 'move' : 'hitch',
      from: d.from,
      to: mate.to,
      because: FROM_LINEUP,
    });
  }
  return out;
}

/** The words "up there with", "next to", "alongside" that end at token `i`. */
function linkBefore(f: Frame, i: number): { from: number; up: boolean } | undefined {
  let k = i - 1;
  if (f.low(k) === 'to' && f.low(k - 1) === 'next') k--;
  else if (!/^(with|beside|alongside|w)$/.test(f.low(k)) && !(f.low(k) === '/' && f.low(k - 1) === 'w'))
    return undefined;
  let up = false;
  while (/^(up|there|here|in|over|back|right|now|forward|out|ahead)$/.test(f.low(k - 1))) {
    if (/^(up|there|forward)$/.test(f.low(k - 1))) up = true;
    k--;
  }
  return { from: k, up };
}

/** Does a verb put the dog there, or do "up", "there", "now" tell its place: "Rook up with Ivy", "she's up there next to Gus"? */
function placing(f: Frame, d: DogPhrase, link: number, mate: DogPhrase): boolean {
  let k = link - 1;
  let passive = false;
  while (k >= d.to) {
    const low = f.low(k);
    if (
      /^(put|moved|brought|bumped|paired|teamed|hooked|shifted|switched|tucked|running|runs|ran|pulling|working|goes|went|moves|comes|came)$/.test(
        low,
      )
    )
      passive = true;
    else if (!/^('s|is|was|has|have|been|be|got|gets|get|will|'ll|now|just|,|going|so)$/.test(low)) return false;
    k--;
  }
  const up = f.tokens.slice(link, mate.from).some((t) => /^(up|there|forward)$/.test(t.low));
  const now = /^(now|instead)$/.test(f.low(mate.to)) || f.tokens.slice(d.to, mate.from).some((t) => t.low === 'now');
  let v = d.from - 1;
  while (/^(poor|old|just|and|then|so|also)$/.test(f.low(v))) v--;
  const put = PUT.test(f.low(v)) && d.kind !== 'group';
  if (link === d.to || put)
    return (put && !/^(have|had|got|ran|run|running|want)$/.test(f.low(v))) || up || (put && now);
  return (up || now) && (passive || up || now);
}

/** "moved Miles over to the right", "Storm swung over to the right side": the other side of the row where it stands. */
export function sideMoves(f: Frame, told: readonly Assignment[]): Assignment[] {
  const out: Assignment[] = [];
  if (!f.out) return out;
  for (const t of f.tokens) {
    const side = SIDE[t.low] as LeftRight | undefined;
    if (!side || t.low.length === 1 || f.siteAt(t.i) || f.low(t.i - 1) !== 'the' || !/^(to|on)$/.test(f.low(t.i - 2)))
      continue;
    const end = f.low(t.i + 1) === 'side' ? t.i + 2 : t.i + 1;
    if (!/^([.,;]|and|so|because|then|now|again|since|but|to|for|at|instead|)$/.test(f.low(end))) continue;
    let k = t.i - 3;
    while (/^(over|across|back|around|him|her|them)$/.test(f.low(k)) && !f.dogs.some((d) => d.to === k + 1)) k--;
    const behindVerb = f.dogs.find((d) => d.to === k + 1);
    const verb = behindVerb ? f.low(behindVerb.from - 1) : f.low(k);
    if (
      !/^(moved|move|moves|switched|switch|switches|swapped|shifted|shifts|swung|swings|crossed|slid|put|put|went|goes|moving|switching|changed)$/.test(
        verb,
      )
    )
      continue;
    if (f.low(t.i - 2) === 'on' && !/^(put|switched|swapped|changed)$/.test(verb)) continue;
    let v = k - 1;
    while (/^('s|is|has|have|was|got|been|then|just|also)$/.test(f.low(v))) v--;
    const d = behindVerb ?? f.dogs.find((x) => x.to === v + 1);
    if (d?.dogs.length !== 1 || d.possessive || d.company) continue;
    const at = f.roster.lineup.find((l) => l.dog === d.dogs[0]);
    if (!at?.position || at.side === side || told.some((a) => a.phrases.includes(d))) continue;
    out.push({
      phrases: [d],
      dogs: d.dogs,
      position: at.position as Position,
      side,
      kind: 'move',
      from: Math.min(d.from, t.i - 2),
      to: end,
      because: FROM_LINEUP,
    });
  }
  return out;
}
