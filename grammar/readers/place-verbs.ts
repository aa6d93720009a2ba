/** Reader "hitch", places that a verb tells: "Miles and Ivy led today", "Tank wheeled alone", "Rook leads from here". */
import type { Position } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';
import type { Assignment } from './place-assignments.ts';
import { fromHereOn } from './place-moves.ts';

const VERBS: Record<string, Position> = { led: 'lead', leads: 'lead', wheeled: 'wheel', swinging: 'swing' };
/** Behind the verb when it tells where a dog stood, and not whom or what it led. */
const AFTER =
  /^([.,;:!/]|and|with|today|tonight|tomorrow|again|then|now|from|since|alone|by|together|so|but|until|till|because|while|beside|next|alongside|solo|single|double|coming|going|)$/;

/** Places told by "led", "leads", "wheeled". */
export function verbPlaces(f: Frame, told: readonly Assignment[]): Assignment[] {
  const out: Assignment[] = [];
  for (const t of f.tokens) {
    const position = VERBS[t.low];
    if (!position || f.m.at('position', t.i) || f.dogAt(t.i) || f.siteAt(t.i)) continue;
    if (!standsAlone(f, t.i + 1)) continue;
    let k = t.i - 1;
    while (
      /^(both|has|have|had|'ve|also|then|just|only|always|who|now|again|all|really)$/.test(f.low(k)) &&
      !f.dogAt(k)
    )
      k--;
    const d = f.dogs.find((x) => x.to === k + 1);
    if (!d?.dogs.length || d.dogs[0] === '*' || d.dogs.length > 2 || d.possessive || d.excepted || d.negative) continue;
    const withDogs = d.company ? [] : companyOf(f, d.to, t.i + 1);
    const now = [1, 2, 3].some((n) => /^(now|instead)$/.test(f.low(t.i + n))) || /^(then|now)$/.test(f.low(t.i - 1));
    const moved = f.out && (now || fromHereOn(f, t.i));
    if (told.some((a) => a.phrases.includes(d) && a.position === position)) continue;
    out.push({
      phrases: [d],
      dogs: moved ? d.dogs : [...d.dogs, ...withDogs],
      position,
      kind: moved ? 'move' : 'hitch',
      from: d.from,
      to: t.i + 1,
    });
  }
  return out;
}

/** "led.", "led the whole way", "led all day", "led for the first time": nobody and nothing is led. */
function standsAlone(f: Frame, i: number): boolean {
  const next = f.low(i);
  if (AFTER.test(next) && next !== 'by') return true;
  if (next === 'by') return /^(himself|herself|themselves)$/.test(f.low(i + 1));
  if (/^(the|this|that|my|our)$/.test(next))
    return /^(whole|entire|way|first|last|team|run|second|rest|trip|loop)$/.test(f.low(i + 1));
  if (next === 'for') return /^(the|a|most|me|all|about|half|\d+)$/.test(f.low(i + 1));
  if (next === 'all') return /^(the|day|morning|night|way|afternoon|season|of)$/.test(f.low(i + 1));
  if (next === 'most') return true;
  return /^(in|on|at|up)$/.test(next) && /^(lead|front|the|my|place)$/.test(f.low(i + 1));
}

function companyOf(f: Frame, from: number, to: number): string[] {
  const d = f.dogs.find((x) => x.company && x.kind === 'names' && (x.from === to + 1 || (x.from > from && x.to < to)));
  return d && f.low(d.from - 1) === 'with' ? d.dogs : [];
}
