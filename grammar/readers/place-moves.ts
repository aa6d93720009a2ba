/** Reader "move": is a dog put somewhere else on the way, or told as it stands? */
import type { Position } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';
import type { Assignment, Found } from './place-assignments.ts';

/** Is the dog moved, or told as it stands? */
export function isMove(f: Frame, found: Found, place: number, before: readonly Assignment[]): boolean {
  const between = ` ${found.between} `;
  if (found.phrases.some((p) => p.company) && !found.withDogs.length) return false;
  if (/ (to|into) /.test(between) || / back /.test(between))
    return f.out || / (back|up|down) (to|in|into) /.test(between) || moveVerb(f, found.from, place, true);
  // "Rook got bumped to lead", "was put in wheel"
  if (
    / (moved|bumped|promoted|demoted|switched|shifted|sent|rotated) /.test(between) ||
    (f.out && / put /.test(between))
  )
    return true;
  if (f.out && fromHereOn(f, place)) return true;
  const position = f.m.from('position', place)?.value as Position | undefined;
  if (position && soItStands(f, found, position, before)) return true;
  if (f.m.of('swap').some((s) => s.from < place && !f.dogAt(s.from))) return true;
  const backIn = f.m
    .of('back-in')
    .some((b) => !f.strongBetween(b.from, place) && b.from > found.from - 10 && b.from < place);
  if (backIn) return true;
  if (f.m.of('in-for').some((b) => !f.strongBetween(b.from, place) && Math.abs(b.from - place) < 8)) return true;
  if (moveVerb(f, found.from, place, false)) return true;
  // "Storm has joined Rook in wheel"
  if (f.out && found.withDogs.length && joins(f, found.to, place)) return true;
  // "so he's swing left now", "Polka went up front": out on the trail a changed place is a move
  const changed =
    / (went|gone|moved|goes) /.test(between) ||
    [1, 2].some((n) => /^(now|instead)$/.test(f.low(place + n))) ||
    (/^(on|the)$/.test(f.low(place + 1)) &&
      [3, 4].some((n) => f.low(place + n) === 'now' && sideAt(f, place + n - 1))) ||
    nowBehind(f, place) ||
    nowBefore(f, found.from) ||
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
  return Boolean(
    last &&
      last.kind === 'move' &&
      (!f.strongBetween(last.to, place) || (/^[;/]$/.test(f.low(last.to)) && found.from === last.to + 1)) &&
      found.from - last.to < 12,
  );
}

/** "in wheel on the right now": a side, or "side" behind it. */
const sideAt = (f: Frame, k: number): boolean =>
  /^(left|right)$/.test(f.low(k)) || (f.low(k) === 'side' && /^(left|right)$/.test(f.low(k - 1)));

/** "let Rook lead from there on", "leads with Rask from the hut on": since a place on the way. */
export function fromHereOn(f: Frame, place: number): boolean {
  for (let k = place + 1; k < place + 6 && !f.isStrong(k); k++) {
    if (!/^(from|since)$/.test(f.low(k))) continue;
    if (/^(here|there|then|that|now)$/.test(f.low(k + 1))) return true;
    if (f.low(k) === 'from' && [2, 3, 4].some((n) => /^(on|onward|onwards)$/.test(f.low(k + n)))) return true;
  }
  return false;
}

/** "…, so he's in swing": told as what came of it, and on the gangline it stands elsewhere. */
function soItStands(f: Frame, found: Found, position: Position, told: readonly Assignment[]): boolean {
  const d = found.phrases[0];
  if (!f.out || d?.dogs.length !== 1 || told.filter((a) => a.kind === 'hitch').length > 1) return false;
  if (!/^('s|is)$/.test(f.low(d.to))) return false;
  const at = f.roster.lineup.find((l) => l.dog === d.dogs[0])?.position;
  if (!at || at === position) return false;
  if (d.kind === 'pronoun' || /^so$/.test(f.low(d.from - 1))) return true;
  // "Ylva is now up with Loke and Idun is down in swing"
  let k = d.from - 1;
  while (k >= 0 && d.from - k < 12 && !f.isStrong(k) && f.low(k) !== 'now') k--;
  return f.low(d.from - 1) === 'and' && f.low(k) === 'now' && /^(is|'s|are|'re)$/.test(f.low(k - 1));
}

const joins = (f: Frame, from: number, to: number): boolean =>
  f.tokens.slice(from, to).some((t) => /^join(s|ed|ing)?$/.test(t.low));

/** "Now Rook lead R / Gus swing R", "so now: Rook in lead": told anew. */
function nowBefore(f: Frame, from: number): boolean {
  let k = from - 1;
  while (/^(:|,|-|running|run|going|with|we|i|it|is|'s|'re|have|'ve|got|the)$/.test(f.low(k)) && from - k < 5) k--;
  return f.low(k) === 'now' && (k === from - 1 || k === 0 || f.isStrong(k - 1) || /^(so|and|,)$/.test(f.low(k - 1)));
}

/** "Vesper's up front with Mercy now": behind the one beside. */
function nowBehind(f: Frame, place: number): boolean {
  const beside = f.dogs.find((d) => d.company && d.from > place && d.from - place < 5);
  return Boolean(
    beside && /^(now|instead)$/.test(f.low(beside.to)) && /^(with|beside|alongside|by)$/.test(f.low(beside.from - 1)),
  );
}

/** A verb of moving right before the dog; "put" and "took" move only when the team is out. */
function moveVerb(f: Frame, dog: number, _place: number, any: boolean): boolean {
  for (let k = dog - 1; k >= 0 && dog - k < 4; k--) {
    if (f.isStrong(k)) return false;
    if (f.m.at('move-only', k) && !f.dogAt(k)) return true;
    if (f.m.at('move', k) && (f.out || any) && !f.m.at('hitch', k)) return true;
    if (/^(put|stuck|slotted|popped|tried|let|letting|gave|give|giving)$/.test(f.low(k))) return f.out || any;
    if (!/^(and|just|then|ve|'ve|have|had|to|also|up|back|so|i|poor|old)$/.test(f.low(k))) return false;
  }
  return false;
}
