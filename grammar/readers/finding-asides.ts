/** Reader "finding", the side told behind the sign: "hind pads are pink, both of them", "a rub on the dewclaw, right side". */
import type { Frame } from '../steps/frame.ts';
import type { ReadFinding } from './finding-parts.ts';

/** Parts a dog has one of. */
const SINGLE = /^(chest|neck|back|tail|nose|mouth)$/;
/** Words between the sign and the aside that change nothing of its place. */
const SMALL = /^(though|today|too|now|again|here|there|on|for|in|,)$/;
const ENDED = /^([.,;:!?)]|-|and|but|so|from|with|)$/;

/** Gives a finding without a side the one told behind it as an aside, before anything else is told. */
export function sideBehind(f: Frame, found: readonly ReadFinding[]): void {
  for (const r of found) {
    const { entry, site } = r;
    if (!site || !entry.part || entry.side || SINGLE.test(entry.part) || entry.dogs.length !== 1) continue;
    let k = r.to;
    let comma = false;
    while (k - r.to < 6) {
      const d = f.dogAt(k);
      if (d && d.kind !== 'group' && d.dogs.join() === entry.dogs.join()) k = d.to;
      else if (SMALL.test(f.low(k))) comma = f.low(k++) === ',';
      else break;
    }
    const told = asideAt(f, k, site.plural, comma);
    if (!told) continue;
    entry.side = told.side;
    r.site = { ...site, side: told.side };
    f.claim(k, told.to);
    for (const other of found)
      if (other !== r && other.site === site && !other.entry.side) {
        other.entry.side = told.side;
        other.site = r.site;
      }
  }
}

/** "hot shoulder, not the left, the right": the side behind the one that it is not. */
function denied(f: Frame, k: number) {
  const side = (i: number) => /^(left|right)$/.exec(f.low(i))?.[0] as 'left' | 'right' | undefined;
  if (f.low(k) !== 'not') return undefined;
  let i = /^(the|on|his|her)$/.test(f.low(k + 1)) ? k + 2 : k + 1;
  const no = side(i);
  if (!no) return undefined;
  i++;
  while (/^(one|side|,|but|it|'s|is|the|his|her|-)$/.test(f.low(i))) i++;
  const yes = side(i);
  const to = /^(one|side)$/.test(f.low(i + 1)) ? i + 2 : i + 1;
  return yes && yes !== no && ENDED.test(f.low(to)) ? { side: yes, to } : undefined;
}

function asideAt(f: Frame, k: number, plural: boolean, comma: boolean) {
  const not = plural ? undefined : denied(f, k);
  if (not) return not;
  if (f.low(k) === 'both' && plural) {
    const of = f.low(k + 1) === 'of' && /^(them|'em|em|those)$/.test(f.low(k + 2));
    const to = of ? k + 3 : comma && /^(sides|feet|paws|ones)$/.test(f.low(k + 1)) ? k + 2 : comma ? k + 1 : k;
    return to > k && ENDED.test(f.low(to)) ? { side: 'both' as const, to } : undefined;
  }
  if (!comma || plural) return undefined;
  const at = f.low(k) === 'the' ? k + 1 : k;
  const side = f.low(at) === 'left' ? 'left' : f.low(at) === 'right' ? 'right' : undefined;
  if (!side || f.low(at + 1) !== 'side' || !ENDED.test(f.low(at + 2))) return undefined;
  return { side: side as 'left' | 'right', to: at + 2 };
}
