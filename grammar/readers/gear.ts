/** Reader "gear": what of lines, snaps, harness and sled is broken, tangled, lost, replaced; and whose it is. */
import type { Frame, Mention } from '../steps/frame.ts';
import { said } from './places.ts';

/** Things that are gear only right beside their state. */
const LOOSE_ITEM =
  /^(line|lines|section|track|tire|ring|clip|pole|pole|light|knife|belt|chain|basket|bow|track|loop|rope|drag|sled|hook|runner|runners|stove|lantern|leash|cable|jacket|jackets|coat|coats|webbing|trace|traces|strap|straps|bolt|cooler|gps|parka|batteries|battery|whistle|skis|ski|heat wrap|wrist wrap|bridle|picket)$/;

/** Reads gear: an item, its state, whose it is. */
export function readGear(f: Frame): void {
  const out: { item: string; dogs: string[]; state: string; at: number }[] = [];
  const used = new Set<Mention>();
  for (const s of f.m.of('gear-state')) {
    if (f.isClaimed(s.from, s.to) || f.siteAt(s.from)) continue;
    // "she snapped at Gus": no line does
    if (/^snapp?(s|ed|ing)$/.test(f.low(s.to - 1)) && f.low(s.to) === 'at' && f.dogFrom(s.to + 1)) continue;
    if (s.value === 'replaced' && bothReplaced(f, s, out)) continue;
    // "spare batteries in the bag", "brought a spare line": only carried along
    if (/^spares?$/.test(f.low(s.from)) && s.to - s.from === 1 && !spareUsed(f, s)) continue;
    if (OTHER_ONE.test(f.low(s.to - 1)) && !otherGiven(f, s)) continue;
    const item =
      s.value === 'replaced' && /^(it|that|them)$/.test(f.low(s.to)) && out.length ? undefined : itemFor(f, s, used);
    if (!item) {
      followGear(f, s, out);
      continue;
    }
    used.add(item);
    const name = f.text.slice(...f.span([item.from, item.to])).toLowerCase();
    let dogs = gearOwner(f, item, s, name);
    // "Neckline on Bamse broke. New neckline is on."
    const earlier =
      s.value === 'replaced' && !dogs.length ? out.findLast((o) => sameItem(o.item, name) && o.dogs.length) : undefined;
    if (earlier) dogs = earlier.dogs;
    if (out.some((o) => o.item === name && o.state === s.value && o.dogs.join() === dogs.join())) continue;
    addGear(f, out, name, dogs, s, item);
  }
}

/** "Both of those are replaced", "I swapped both": the two things told last. */
function bothReplaced(f: Frame, s: Mention, out: Out): boolean {
  let k = s.from - 1;
  while (/^(is|are|were|was|have|has|been|now|all|already|got|just|of|those|them|these|lines)$/.test(f.low(k))) k--;
  const behind = f.low(s.to) === 'both' && !f.m.at('item', s.to + 1) && !f.dogFrom(s.to + 1)?.possessive;
  const before = f.low(k) === 'both' && k < s.from - 1;
  const two = out.filter((o) => o.state !== 'replaced').slice(-2);
  if ((!before && !behind) || two.length < 2 || s.from - (two[0]?.at ?? 0) > 40) return false;
  for (const o of two) addGear(f, out, o.item, o.dogs, s);
  return true;
}

/** A spare is in use where something was put on, or went bad just before. */
function spareUsed(f: Frame, s: Mention): boolean {
  if (f.entries.some((e) => e.kind === 'gear')) return true;
  for (let k = s.from - 1; k >= Math.max(0, s.from - 6) && !f.isStrong(k); k--)
    if (
      /^(put|puts|on|gave|used|using|clipped|snapped|swapped|switched|for|wearing|wears|in|into|got|took)$/.test(
        f.low(k),
      )
    )
      return true;
  return (
    /^(is|'s|went|goes|now|put|on)$/.test(f.low(s.to + 1)) || /^(is|'s|went|goes|now|put|on|in)$/.test(f.low(s.to + 2))
  );
}

/** Not the same thing as before. */
const OTHER_ONE = /^(different|another|bigger|smaller|larger|looser)$/;

/** "gave him a different harness", "put her into a bigger one": only what a dog is given or put in; "needs a bigger harness" is a wish. */
function otherGiven(f: Frame, s: Mention): boolean {
  for (let k = s.from - 1; k >= Math.max(0, s.from - 6) && !f.isStrong(k); k--) {
    if (
      /^(gave|given|put|puts|switched|swapped|changed|traded|moved|tried|wears|wearing|fitted|uses|using)$/.test(
        f.low(k),
      )
    )
      return true;
    if (/^(in|into)$/.test(f.low(k)) && k >= s.from - 2) return f.dogs.some((d) => d.to <= k && k - d.to <= 2);
    if (f.m.at('gear-state', k) && !f.dogAt(k)) return false;
  }
  return false;
}

const GIVES = /^(gave|give|giving|given|got|get|bought|put|fitted)$/;

/** "one of his snaps was cracked; I replaced the snap" */
const sameItem = (a: string, b: string): boolean => a.replace(/s$/, '') === b.replace(/s$/, '');

type Out = { item: string; dogs: string[]; state: string; at: number }[];

function addGear(f: Frame, out: Out, item: string, dogs: string[], s: Mention, m?: Mention): void {
  out.push({ item, dogs, state: s.value, at: s.from });
  f.add({
    kind: 'gear',
    dogs,
    item,
    state: s.value,
    ...said(f.assertion(s.from, s.to)),
    span: f.span([s.from, s.to], m ? [m.from, m.to] : undefined),
    rule: `<gear> ${s.value}`,
  });
  f.claim(s.from, s.to);
  if (m) f.claim(m.from, m.to);
}

/** "so I've replaced it", "new one on": the item told before. */
function followGear(f: Frame, s: Mention, out: Out): void {
  const last = out.at(-1);
  if (!last) outgrown(f, s, out);
  if (!last || s.from - last.at > 24) return;
  if (s.value !== 'replaced' && !/^(it|that)$/.test(f.low(s.to))) return;
  if (/^(new|fresh|spare|a new|fixed|put new)$/.test(f.low(s.from)) && s.to - s.from === 1 && f.low(s.to) !== 'one')
    return;
  if (f.m.of('bootie').some((b) => b.from > last.at && b.from < s.to + 3)) return;
  if (/^(it|that|one|$)/.test(f.low(s.to)) || s.to - s.from > 1 || /^[.,;]$/.test(f.low(s.to)))
    addGear(f, out, last.item, last.dogs, s);
}

/** "Ivy's harness is too small, swapped it for a medium": nothing broke; it was changed all the same. */
function outgrown(f: Frame, s: Mention, out: Out): void {
  if (s.value !== 'replaced' || (f.low(s.to) !== 'it' && f.low(s.to - 1) !== 'it')) return;
  const item = f.m
    .of('item')
    .findLast(
      (x) => x.to <= s.from && s.from - x.to <= 10 && !f.strongBetween(x.to, s.from) && !f.m.at('bootie', x.from),
    );
  if (!item || f.dogAt(item.from) || f.siteAt(item.from) || f.isClaimed(item.from, item.to)) return;
  if (['bootie', 'boot-verb', 'act'].some((t) => f.m.of(t).some((b) => b.from >= item.to && b.to <= s.from))) return;
  const name = f.text.slice(...f.span([item.from, item.to])).toLowerCase();
  addGear(f, out, name, gearOwner(f, item, s, name), s, item);
}

/** The item of a state: right behind the verb or before it in the clause. */
function itemFor(f: Frame, s: Mention, used: ReadonlySet<Mention>): Mention | undefined {
  let best: Mention | undefined;
  let bestGap = 99;
  for (const item of f.m.of('item')) {
    if (f.m.at('bootie', item.from) || f.dogAt(item.from) || f.siteAt(item.from)) continue;
    const name = f.tokens
      .slice(item.from, item.to)
      .map((t) => t.low)
      .join(' ');
    const behind = item.from >= s.to;
    const gap = behind ? item.from - s.to : s.from - item.to;
    if (gap < 0 || gap > 7 || f.strongBetween(Math.min(item.from, s.from), Math.max(item.from, s.from))) continue;
    if (LOOSE_ITEM.test(name) && gap > 3) continue;
    if (!stateReaches(f, s, item, behind, name)) continue;
    // The damaged part stands first: "the snap on Ginger's tug let go".
    const cost = used.has(item) && s.value !== 'replaced' ? gap + 6 : gap;
    if (partOf(f, best, item)) continue;
    if (cost < bestGap || partOf(f, item, best)) {
      best = item;
      bestGap = cost;
    }
  }
  return best;
}

/** "snap on Teal's neckline": the first is the part that is damaged. */
function partOf(f: Frame, a: Mention | undefined, b: Mention | undefined): boolean {
  if (!a || !b || a.to > b.from || b.from - a.to > 4) return false;
  return (
    f.tokens.slice(a.to, b.from).some((t) => /^(on|of|in)$/.test(t.low)) &&
    f.tokens.slice(a.to, b.from).every((t) => /^(on|of|the|'s|his|her|in)$/.test(t.low) || f.dogAt(t.i))
  );
}

function stateReaches(f: Frame, s: Mention, item: Mention, behind: boolean, name: string): boolean {
  const state = f.low(s.from);
  const [a, b] = behind ? [s.to, item.from] : [item.to, s.from];
  if (/^(line|lines|tug|tugs)$/.test(name) && /^(tight|loose|slack)$/.test(state)) return false;
  // "all tight tugs 14 left to home"
  if (name === 'tugs' && !/^(tangled|chewed|broken|worn|replaced)$/.test(s.value)) return false;
  if (state === 'left' && /^(side|hand|front|hind|lead|swing|wheel)$/.test(f.low(s.to))) return false;
  // "under her left arm": the side of something
  if (state === 'left' && /^(his|her|its|their|my|our|your|that|this)$/.test(f.low(s.from - 1))) return false;
  // "left stanchion cracked": the side of a thing; what was left has its article or its place
  if (state === 'left' && s.to - s.from === 1 && behind && a === b && !/^(at|behind|in|on|back)$/.test(f.low(item.to)))
    return false;
  // "coats on the thin ones"
  if (
    /^(thin|weak|tired|fuzzy|dull|fat)$/.test(state) &&
    !behind &&
    b > a &&
    !f.tokens
      .slice(a, b)
      .some((t) => /^(is|are|was|were|'s|looks?|looking|getting|got|worn|wearing|gone|going)$/.test(t.low))
  )
    return false;
  if (state === 'gone' && /^(slack|loose|limp|quiet|flat|soft|lame|tight|dead|and)$/.test(f.low(s.to))) return false;
  if (
    s.value === 'worn' &&
    /^(wearing|wore|wears)$/.test(state) &&
    s.to - s.from === 1 &&
    behind &&
    /^(a|his|her|the|their|my|new)$/.test(f.low(s.to))
  )
    return false;
  if (s.value === 'worn' && /^(thin|weak|going|tired|fuzzy|dull|fat|stretched)$/.test(state) && behind) return false;
  if (
    s.value === 'lost' &&
    /^(gone|left|dropped|threw|slipped|shed|forgot)$/.test(state) &&
    behind &&
    /^(left|dropped|slipped)$/.test(state) &&
    /^(the|a)$/.test(f.low(s.to)) &&
    /^(line|hook|drag)$/.test(name)
  )
    return false;
  // "needs a new harness": it has none yet
  if (
    s.value === 'replaced' &&
    [1, 2, 3].some(
      (n) =>
        /^(need|needs|needed|want|wants|order|buy|due)$/.test(f.low(s.from - n)) &&
        !f.strongBetween(s.from - n, s.from),
    )
  )
    return false;
  if (/^(new|fresh|fixed)$/.test(state) && !(behind && b - a <= 1)) return false;
  if (/^(broke|broken|broke out|breaks)$/.test(state) && /^(trail|ice)$/.test(f.low(s.to))) return false;
  if (/^(ate|eaten|eating|eats|bit)$/.test(state) && !behind) return false;
  // "her coat on her, she quit": the dog's doing
  if (
    /^(quit|lost|left|dropped|died|going)$/.test(state) &&
    !behind &&
    f.dogs.some((d) => d.to === s.from && d.from >= item.to)
  )
    return false;
  if (
    /^(stuck|jammed|dead|died|loose|split|popped|parted|shot|bent|cracked|went bad|quit|twisted)$/.test(state) &&
    b - a > 3
  )
    return false;
  // "my eyelashes froze shut and the trail's icy", "broke and the sled is fine": the item behind begins a statement
  if (
    behind &&
    /^('s|is|was|are|were|has)$/.test(f.low(item.to)) &&
    [1, 2].some((n) => f.low(item.from - n) === 'and' && item.from - n >= s.to)
  )
    return false;
  // "hers has just broken and Gus's tugline is fraying": the item behind has its own state
  if (behind && f.low(s.to) === 'and' && f.m.of('gear-state').some((x) => x.from >= item.to && x.from - item.to <= 3))
    return false;
  for (let k = a; k < b; k++) {
    const low = f.low(k);
    if (/^(but|because|so|then|while)$/.test(low)) return false;
    if (low === ',' && b - a > 2) return false;
    if (low === 'and' && !/^(and)$/.test(f.low(k + 1)) && f.m.of('gear-state').some((x) => x.from > k && x.from < b))
      return false;
    const d = f.dogFrom(k);
    if (d && !d.possessive && d.kind !== 'pronoun' && behind && !(d.value === 'both' && d.to === item.from))
      return false;
  }
  return true;
}

/** Whose gear: "Scout's neckline", "snap on Teal's neckline", "chewed her harness"; nobody's where it is the sled's. */
function gearOwner(f: Frame, item: Mention, s: Mention, name: string): string[] {
  for (let k = item.from - 1; k >= Math.max(0, item.from - 4); k--) {
    const d = f.dogAt(k);
    if (d?.possessive) return d.dogs;
    if (!/^(old|rusty|new|brass|whole|own|other|spare|very|nice|second|good)$/.test(f.low(k)) && !f.m.at('item', k))
      break;
  }
  for (let k = item.to; k < item.to + 5; k++) {
    const d = f.dogFrom(k);
    if (d?.possessive || (d && /^(on|for)$/.test(f.low(k - 1)))) return d.dogs;
    if (
      !/^(on|of|for|the|old|his|her|is|'s|was|again|just|up|clean|through)$/.test(f.low(k)) &&
      !f.m.at('gear-state', k)
    )
      break;
  }
  // "she's wearing a new harness", "gave her the spare"
  if (s.value === 'replaced') {
    const d = f.dogs.filter((x) => x.to <= s.from && s.from - x.to <= 3 && !x.company && !x.possessive).at(-1);
    // "gave Storm a new harness"
    const given = d?.to === s.from && GIVES.test(f.low(d.from - 1));
    if (given && d.dogs.length <= 2) return d.dogs;
    if (
      d &&
      d.dogs.length <= 2 &&
      /^('s|is|was|has|got|gets|wears|wearing|in|into|to|a|the|on)$/.test(f.low(s.from - 1)) &&
      !f.strongBetween(d.to, s.from)
    )
      return d.dogs;
  }
  if (
    /^(gangline|mainline|main line|gang line|brake|sled|runner|runners|handlebar|snow hook|hook|stanchion|plastics?|bungee|lead section|wheel section|drag|drag mat|headlamp|cooker|picket|picket line|snub line|sled bag|bridle|quick release|ganglines|runner plastic|runner plastics|brush bow|driving bow|footboard|footboards|lead line|leadline|section|swing section|team section|harnesses)$/.test(
      name,
    )
  )
    return [];
  const before = f.dogs.filter((d) => d.to <= Math.min(item.from, s.from) && !d.company && !d.excepted).at(-1);
  if (
    before &&
    !f.strongBetween(before.to, s.from) &&
    Math.min(item.from, s.from) - before.to <= 6 &&
    (s.value === 'chewed' ||
      s.value === 'lost' ||
      /^(his|her|their)$/.test(f.low(item.from - 1)) ||
      before.to === item.from ||
      before.to === s.from) &&
    before.dogs.length <= 2
  )
    return before.dogs;
  return rubbedBy(f, item, name);
}

/** "The harness has rubbed Ivy's armpit … the harness is worn anyway": the one that rubs her is hers. */
function rubbedBy(f: Frame, item: Mention, name: string): string[] {
  if (!/^(harness|collar|neckline|necklines|bellyband|belly strap|jacket|coat)$/.test(name)) return [];
  if (!/^(the|that|this)$/.test(f.low(item.from - 1))) return [];
  const first = f.m.of('item').findLast((x) => x.to <= item.from && sameItem(f.low(x.to - 1), name));
  if (!first || f.sentence(item.from) - f.sentence(first.from) > 2) return [];
  const rub = f.entries.findLast((e) => {
    if (e.kind !== 'finding' || e.sign !== 'rub' || e.assertion || e.dogs.length !== 1 || !e.span) return false;
    const at = f.tokens.findIndex((t) => t.end > (e.span?.[0] ?? 0));
    return f.sentence(at) === f.sentence(first.from) && Math.abs(at - first.from) < 12;
  });
  // Another dog named since has a harness, too.
  const other = f.dogs.some(
    (d) => d.kind !== 'pronoun' && d.from >= first.to && d.to <= item.from && d.dogs.join() !== rub?.dogs.join(),
  );
  return rub && !other ? [...rub.dogs] : [];
}
