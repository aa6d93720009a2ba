/** Reader "booties": put on, taken off, lost, torn, changed; on which feet. */
import type { Frame, Mention } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import { readBarefoot, readTossed } from './bootie-bare.ts';
import { push, type Read, type State } from './bootie-entries.ts';
import { followOn, lateFeet, leftOutVerb, listed } from './bootie-follow.ts';

const RANK: readonly State[] = ['lost', 'torn', 'changed', 'off', 'on'];

/** Reads booties; gives them with their places, for findings that point back at their feet. */
export function readBooties(f: Frame): Read[] {
  const out: Read[] = [];
  const heads = [...f.m.of('bootie'), ...f.m.of('boot-verb')]
    .filter((m, i, all) => all.findIndex((o) => o.from <= m.from && m.from < o.to) === i)
    .sort((a, b) => a.from - b.from);
  const verbs = new Set<number>();
  for (const h of heads) {
    if (!isFootwear(f, h)) continue;
    const state = stateOf(f, h);
    if (!state) continue;
    // "lost a bootie, so I put a fresh one on": where one was lost, a new one is put on
    const lost =
      state.value === 'changed' &&
      /^(new|fresh|spare|another)$/.test(f.low(state.from)) &&
      out.at(-1)?.entry.state === 'lost' &&
      /^(a|the|another|on|one|and|\+|&|,|\.|;)$/.test(f.low(state.from - 1));
    push(f, out, h, lost ? 'on' : state.value, state.from, state.to);
    for (let k = state.from; k < state.to; k++) verbs.add(k);
    listed(f, out, h, state.value);
  }
  if (out.length) followOn(f, out, verbs);
  lateFeet(f, out);
  leftOutVerb(f, out);
  out.push(...readTossed(f));
  out.push(...readBarefoot(f, out));
  for (const r of out) f.add(r.entry);
  return out;
}

/** "blood in the bootie", "bled into her bootie", "blood on Ivy's left front bootie". */
export function bloodIn(f: Frame, bootie: number): boolean {
  let k = bootie - 1;
  while (k > bootie - 6 && (f.siteAt(k) || f.dogAt(k) || /^(the|a|one|his|her|that|'s)$/.test(f.low(k)))) k--;
  return /^(in|on|into|inside|through|all)$/.test(f.low(k)) && /^(blood|bled|bleeding|bloody|pus)$/.test(f.low(k - 1));
}

/** Does a sign stand shortly before in the sentence? */
const saidOfSign = (f: Frame, i: number): boolean =>
  f.m.of('sign').some((s) => s.to <= i && i - s.to < 6 && !f.strongBetween(s.to, i));

/** The musher's own boots are no booties; nor is the dog Boots. */
function isFootwear(f: Frame, h: Mention): boolean {
  if (f.dogAt(h.from) || f.isClaimed(h.from, h.to)) return false;
  // "blood in the bootie": where it was seen
  if (bloodIn(f, h.from)) return false;
  // "a rub from her bootie on the left hind dewclaw": what did it
  if (
    /\bfrom (a |the |his |her |that |tight |loose |wet |old )*$/.test(
      `${wordsIn(f.tokens, Math.max(0, h.from - 4), h.from)} `,
    ) &&
    saidOfSign(f, h.from)
  )
    return false;
  const word = f.low(h.from);
  if (
    /^(my|our|i|spare|extra|more|another|bag|of|ski|mukluk|snow)$/.test(f.low(h.from - 1)) &&
    !/^(set|pair|sets|pairs|change)$/.test(f.low(h.from - 2)) &&
    !(f.low(h.from - 1) === 'i' && /^(booted|bootied|rebooted)$/.test(word))
  )
    return false;
  // "need to sew booties tonight"
  if (
    /^(sew|sewing|sewed|make|making|made|buy|bought|order|ordered|wash|washed|dry|dried|sort|pack|bring|count|spare)$/.test(
      f.low(h.from - 1),
    )
  )
    return false;
  if (/^(rub|rubs|burn|box|bag|bags)$/.test(f.low(h.to))) return false;
  if (/^(booted|boot|booting|rebooted)$/.test(word)) return f.dogs.length > 0 || f.siteAt(h.to) !== undefined || f.out;
  if (/^(shoe|shoes|boots|buddies|beauties|slipper|slippers|footwear)$/.test(word))
    return f.dogs.some((d) => Math.abs(d.from - h.to) < 6 || Math.abs(h.from - d.to) < 6);
  return true;
}

/** The state's words around the bootie, the strongest first: what is lost was on. */
function stateOf(f: Frame, h: Mention): { value: State; from: number; to: number } | undefined {
  const verb = f.m.at('boot-verb', h.from);
  const word = f.low(h.from);
  const noun =
    (word === 'boot' && f.dogAt(h.from - 1)?.possessive) ||
    (word === 'boot' && f.low(h.from - 1) === "'") ||
    (word === 'boot' &&
      /^(a|the|his|her|one|another|new|that|this|no|spare|lf|rf|lh|rh|front|hind|left|right|'s|my|fresh|its|each|every)$/.test(
        f.low(h.from - 1),
      ));
  if (verb && !noun && /^(boot|booted|booting|rebooted|bootied)$/.test(word))
    return { value: 'on', from: h.from, to: h.to };
  const near: { value: State; from: number; to: number; gap: number }[] = [];
  for (const s of f.m.of('boot-state')) {
    // "went through all the feet"
    if (
      /^(went|going|go) through$/.test(`${f.low(s.from)} ${f.low(s.from + 1)}`) &&
      /^(the|all|every|each|his|her|their|everybody|everyone)$/.test(f.low(s.to))
    )
      continue;
    // "wet through" is no hole
    if (f.low(s.from) === 'through' && /^(wet|soaked|soaking|drenched|sopping|frozen)$/.test(f.low(s.from - 1)))
      continue;
    // "fresh booties all round": the state holds the bootie
    const holds = s.from <= h.from && s.to >= h.to && s.to - s.from > h.to - h.from;
    const gap = holds ? 0 : s.from >= h.to ? s.from - h.to : h.from - s.to;
    if (gap < 0 || gap > 9) continue;
    if (f.strongBetween(Math.min(s.from, h.from), Math.max(s.from, h.from))) continue;
    if (!reaches(f, s, h)) continue;
    // "refuses to wear booties", "came in with three booties": none was put on
    if (s.value === 'on' && holdsBack(f, s, h)) continue;
    // "wore his booties home": had them on
    if (s.value === 'torn' && /^(wore|worn)$/.test(f.low(s.from)) && s.to - s.from === 1 && wornOnly(f, s, h)) {
      near.push({ value: 'on', from: s.from, to: s.to, gap });
      continue;
    }
    near.push({ value: s.value, from: s.from, to: s.to, gap });
  }
  if (
    /^(took|take|taking|pulled|pull|pulling)$/.test(f.low(near.find((n) => n.to <= h.from)?.from ?? -1)) &&
    near.some((n) => n.value === 'off')
  )
    return { ...(near.find((n) => n.value === 'off') as { value: State; from: number; to: number }) };
  // "lost the bootie off her right front": lost wins over off.
  // "LF pad cracked; salve + bootie": one more thing that was put on it
  if (
    !near.length &&
    /^(bootie|boot|bootee|booty)$/.test(word) &&
    /^(\+|and|&|,|plus)$/.test(f.low(h.from - 1)) &&
    (f.m.at('act', h.from - 2) || f.m.at('act', h.from - 3)) &&
    /^([.,;]|and|)$/.test(f.low(h.to))
  )
    return { value: 'on', from: h.from, to: h.to };
  // "Replaced Ivy's torn bootie": what was torn is changed
  const torn = near.find((n) => n.value === 'torn' && n.to === h.from);
  const swap = torn && near.find((n) => n.value === 'changed' && n.to <= torn.from && f.low(n.from) !== 'new');
  if (torn && swap) {
    f.claim(torn.from, torn.to);
    return swap;
  }
  for (const value of RANK) {
    const hit = near.filter((n) => n.value === value).sort((a, b) => a.gap - b.gap)[0];
    if (!hit) continue;
    const weaker = near
      .filter((n) => n.value !== value && RANK.indexOf(n.value) > RANK.indexOf(value))
      .sort((a, b) => a.gap - b.gap)[0];
    if (weaker && hit.gap > weaker.gap + 3 && separate(f, hit, weaker, h)) continue;
    if (value === 'lost' && /^(short|down a|minus|dropped|threw|gone)$/.test(f.low(hit.from)) && hit.gap > 4) continue;
    // "his left hind bootie came off": one that comes off by itself is lost
    if (value === 'off' && /^(came|comes|coming)$/.test(f.low(hit.from)) && /^(bootie|boot|shoe)$/.test(word))
      return { ...hit, value: 'lost' };
    return hit;
  }
  return undefined;
}

/** Is putting on refused, or told of fewer booties than there are feet? */
function holdsBack(f: Frame, s: Mention, h: Mention): boolean {
  for (let k = s.from - 1; k >= s.from - 3 && k >= 0; k--)
    if (/^(refuse|refuses|refused|refusing|hates|hated|fights|fought|tired|sick)$/.test(f.low(k))) return true;
  return f.low(s.from) === 'with' && /^(one|two|three|1|2|3|only|just)$/.test(f.low(h.from - 1)) && s.to <= h.from;
}

/** "wore his booties home", and not out or through. */
const wornOnly = (f: Frame, s: Mention, h: Mention): boolean =>
  s.to <= h.from &&
  h.from - s.to <= 2 &&
  /^(his|her|their|the|all|both|booties|boots)$/.test(f.low(s.to)) &&
  !/^(out|through|thin|down|to|up|clean|right)$/.test(f.low(h.to));

const separate = (f: Frame, a: { from: number }, b: { from: number }, _h: Mention) =>
  f.commaBetween(Math.min(a.from, b.from), Math.max(a.from, b.from)) ||
  [...Array(Math.abs(a.from - b.from)).keys()].some((n) =>
    /^(and|then|but|so)$/.test(f.low(Math.min(a.from, b.from) + n)),
  );

/** No other dog or statement between a state and its bootie. */
function reaches(f: Frame, s: Mention, h: Mention): boolean {
  const [a, b] = s.from < h.from ? [s.to, h.from] : [h.to, s.from];
  const word = f.low(s.from);
  // "both pads cut, put booties on": the pad's, not the bootie's
  if (s.value === 'torn' && /^(pad|web|nail|toe|dewclaw)$/.test(f.siteAt(s.from - 1)?.part ?? '')) return false;
  if (word === 'gone' && f.low(s.to) === 'and') return false;
  if (f.siteAt(s.from) && /^(left|back)$/.test(word)) return false;
  if (/^(in|has|have|had|with|gets|got|get|no)$/.test(word) && b - a > 3) return false;
  if (word === 'no' && s.to !== h.from) return false;
  if (
    /^(took|take|taking|pull|pulled|pulling|strip|stripped|stripping|peeled|peel|remove|removed|undid)$/.test(word) &&
    s.to - s.from === 1 &&
    s.from > h.from
  )
    return false;
  for (let k = a; k < b; k++) {
    if (/^(but|because|then)$/.test(f.low(k))) return false;
    if (f.low(k) === ',' && (b - k > 4 || f.m.from('act', k + 1) || f.dogFrom(k + 1))) return false;
    const d = f.dogFrom(k);
    if (d && !d.possessive && d.kind !== 'pronoun' && s.from > h.from && !d.prep && k > h.to) return false;
    if (f.m.from('sign', k) && !f.isClaimed(k, k + 1) && !f.siteAt(k) && f.m.from('boot-state', k) === undefined)
      return false;
    if (
      f.m.from('act', k) &&
      f.m.from('act', k)?.value !== 'ointment' &&
      f.m.from('boot-state', k) === undefined &&
      f.m.from('bootie', k) === undefined &&
      !f.m.at('boot-verb', k)
    )
      return false;
  }
  return true;
}
