/** Reader "booties": put on, taken off, lost, torn, changed; on which feet. */
import type { EntryOf, Paw } from '../entry.ts';
import type { DogPhrase, Frame, Mention, Site } from '../steps/frame.ts';
import { order, pawsNear, singleFoot, whose } from './bootie-feet.ts';
import { doubted, said } from './places.ts';

type Booties = EntryOf<'booties'>;
type State = Booties['state'];

const RANK: readonly State[] = ['lost', 'torn', 'changed', 'off', 'on'];

export interface Read {
  entry: Booties;
  from: number;
  to: number;
}

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
    push(f, out, h, state.value, state.from, state.to);
    for (let k = state.from; k < state.to; k++) verbs.add(k);
    listed(f, out, h, state.value);
  }
  if (out.length) followOn(f, out, verbs);
  lateFeet(f, out);
  for (const r of out) f.add(r.entry);
  return out;
}

/** "Penny lost a bootie. Back left.", "lost one, right front": the foot behind a mark, told alone. */
function lateFeet(f: Frame, out: readonly Read[]): void {
  for (const r of out) {
    if (r.entry.paws || r.entry.dogs.length !== 1 || !/^(lost|torn|changed)$/.test(r.entry.state)) continue;
    const s = f.sites.find((x) => x.from >= r.to);
    if (!s || s.part || s.paws.length !== 1 || s.from - r.to > 3 || f.isClaimed(s.from, s.to)) continue;
    let k = r.to;
    while (k < s.from && f.tokens[k]?.kind === 'mark') k++;
    if (k !== s.from || k === r.to || !/^([.,;!]|)$/.test(f.low(s.to))) continue;
    r.entry.paws = [...s.paws];
    r.entry.span = [r.entry.span?.[0] ?? f.span([r.from, r.to])[0], f.span([s.from, s.to])[1]];
    f.claim(s.from, s.to);
  }
}

/** The musher's own boots are no booties; nor is the dog Boots. */
function isFootwear(f: Frame, h: Mention): boolean {
  if (f.dogAt(h.from) || f.isClaimed(h.from, h.to)) return false;
  const word = f.low(h.from);
  if (
    /^(my|our|i|spare|extra|more|another|bag|of|ski|mukluk|snow)$/.test(f.low(h.from - 1)) &&
    !/^(set|pair|sets|pairs|change)$/.test(f.low(h.from - 2))
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
    word === 'boot' &&
    /^(a|the|his|her|one|another|new|that|this|no|spare|lf|rf|lh|rh|front|hind|left|right|'s|my|fresh|its|each|every)$/.test(
      f.low(h.from - 1),
    );
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
    const gap = s.from >= h.to ? s.from - h.to : h.from - s.to;
    if (gap < 0 || gap > 9) continue;
    if (f.strongBetween(Math.min(s.from, h.from), Math.max(s.from, h.from))) continue;
    if (!reaches(f, s, h)) continue;
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
  for (const value of RANK) {
    const hit = near.filter((n) => n.value === value).sort((a, b) => a.gap - b.gap)[0];
    if (!hit) continue;
    const weaker = near
      .filter((n) => n.value !== value && RANK.indexOf(n.value) > RANK.indexOf(value))
      .sort((a, b) => a.gap - b.gap)[0];
    if (weaker && hit.gap > weaker.gap + 3 && separate(f, hit, weaker, h)) continue;
    if (value === 'lost' && /^(short|down a|minus|dropped|threw|gone)$/.test(f.low(hit.from)) && hit.gap > 4) continue;
    return hit;
  }
  return undefined;
}

const separate = (f: Frame, a: { from: number }, b: { from: number }, _h: Mention) =>
  f.commaBetween(Math.min(a.from, b.from), Math.max(a.from, b.from)) ||
  [...Array(Math.abs(a.from - b.from)).keys()].some((n) =>
    /^(and|then|but|so)$/.test(f.low(Math.min(a.from, b.from) + n)),
  );

/** No other dog or statement between a state and its bootie. */
function reaches(f: Frame, s: Mention, h: Mention): boolean {
  const [a, b] = s.from < h.from ? [s.to, h.from] : [h.to, s.from];
  const word = f.low(s.from);
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

function push(
  f: Frame,
  out: Read[],
  h: Mention,
  state: State,
  sFrom: number,
  sTo: number,
  forced?: { dogs: string[]; phrase?: DogPhrase; paws?: Paw[]; site?: Site; human?: boolean; doubt?: string },
): void {
  const lo = Math.min(h.from, sFrom);
  const hi = Math.max(h.to, sTo);
  const where = forced?.paws ? { paws: forced.paws, site: forced.site } : pawsNear(f, lo, hi, out);
  if (!where.paws.length && !forced && state !== 'off') where.paws = singleFoot(f, h, lo, hi);
  const owner = forced ?? whose(f, lo, hi, where.site);
  if (owner.human) return;
  let dogs = owner.dogs;
  if (!dogs.length) {
    // "Booties: on at start, all ten."
    const all = f.dogs.find(
      (d) => d.value === 'all' && d.from >= hi && d.from - hi < 6 && !f.strongBetween(hi, d.from),
    );
    if (all) dogs = all.dogs;
  }
  if (!dogs.length && !f.dogs.some((d) => d.kind === 'names')) {
    if (state === 'lost' || state === 'torn' || (where.paws.length === 1 && state !== 'off')) return;
    const all = f.lineup(lo).map((l) => l.dog);
    if (!/^(boot|booted|booties|booting)$/.test(f.low(h.from))) return;
    dogs = all.length ? all : ['*'];
  }
  if (!dogs.length) return;
  const assertion = f.assertion(sFrom, sTo);
  const absent = assertion === 'absent';
  if (absent && state === 'on') return;
  const entry: Booties = {
    kind: 'booties',
    dogs,
    state,
    ...(where.paws.length && where.paws.length < 4 ? { paws: where.paws } : {}),
    ...said(assertion),
    span: f.span(
      [lo, hi],
      where.site && Math.abs(where.site.from - lo) < 12 ? [where.site.from, where.site.to] : undefined,
    ),
    rule: `booties ${state}`,
    ...doubted(owner.doubt),
  };
  const twin = out.find(
    (r) =>
      r.entry.state === state &&
      r.entry.dogs.join() === dogs.join() &&
      (!entry.paws || !r.entry.paws || r.entry.paws.join() === entry.paws.join()) &&
      lo - r.to < 5 &&
      (r.entry.assertion ?? '') === (entry.assertion ?? ''),
  );
  if (twin) {
    if (entry.paws) twin.entry.paws ??= entry.paws;
  } else out.push({ entry, from: lo, to: hi });
  f.claim(h.from, h.to);
  f.claim(sFrom, sTo);
  if (where.site && !f.isClaimed(where.site.from, where.site.to) && (!where.site.part || where.site.part === 'foot'))
    f.claim(where.site.from, where.site.to);
}

/** "leaders all four, swing fronts only, wheelers hinds only": each with its feet. */
function listed(f: Frame, out: Read[], h: Mention, state: State): void {
  const start = h.to;
  const pairs: { d: DogPhrase; s: Site | undefined; dogs: string[] }[] = [];
  let k = start;
  let edge = start + 1;
  while (k < f.tokens.length && !f.isStrong(k) && (state === 'on' || k - edge <= 2)) {
    const d = f.dogFrom(k);
    const place = d ? undefined : f.m.from('position', k);
    if (d || place) {
      const end = d ? d.to : (place as Mention).to;
      const s = f.sites.find((x) => x.from >= end && x.from - end <= 1 && x.paws.length);
      const dogs = d
        ? d.dogs
        : f
            .lineup(k)
            .filter((l) => l.position === place?.value)
            .map((l) => l.dog);
      if (s && dogs.length) pairs.push({ d: d as DogPhrase, s, dogs });
      k = s ? s.to : end;
      edge = k;
    } else k++;
  }
  if (pairs.length < 2) return;
  const first = out.findIndex((r) => r.from <= h.from && h.from < r.to);
  if (first >= 0) out.splice(first, 1);
  for (const p of pairs)
    push(f, out, h, state, h.from, h.to, {
      dogs: p.dogs,
      phrase: p.d,
      paws: p.s && p.s.paws.length < 4 ? order(p.s.paws) : [],
      site: p.s,
    });
}

/** Once booties are spoken of: "changed that one", "wore through her left front", "new one on", "took them all off". */
function followOn(f: Frame, out: Read[], verbs: ReadonlySet<number>): void {
  const first = (out[0] as Read).from;
  for (const s of f.m.of('boot-state')) {
    if (s.from <= first || verbs.has(s.from) || f.isClaimed(s.from, s.to)) continue;
    if (/through$/.test(f.low(s.to - 1)) && /^(the|all|every|each|everybody|everyone|them)$/.test(f.low(s.to)))
      continue;
    if (f.siteAt(s.from) || (s.value === 'on' && (f.m.at('sign', s.from - 1) || f.m.at('bootie', s.from - 1))))
      continue;
    const words = f.tokens
      .slice(s.from, s.to)
      .map((t) => t.low)
      .join(' ');
    const near = f.sites.find(
      (x) =>
        !f.dogs.some((d) => d.kind === 'names' && !d.possessive && d.from >= s.to && d.to <= x.from) &&
        !f.strongBetween(s.to, x.from) &&
        x.from >= s.to &&
        x.from - s.to <= 4 &&
        !/^(them|em|it)$/.test(f.low(s.to)) &&
        x.paws.length + (x.side ? 1 : 0) > 0 &&
        (!x.part || x.part === 'foot'),
    );
    const one =
      /^(that one|those|it|them|em|one|ones|his|hers|both|all|that|theirs)$/.test(f.low(s.to)) ||
      /\b(ones?|them|em)\b/.test(words);
    const strong =
      s.value === 'changed'
        ? /^(changed|new one|new ones|replaced|swapped|fresh|new one on|new ones on|put a new one on|changed out|fresh one|fresh ones)/.test(
            words,
          )
        : s.value === 'torn'
          ? /\b(wore|worn|blown|blew|torn|tore|ripped|shredded|through|hole)\b/.test(words)
          : s.value === 'lost'
            ? !(f.low(s.from) === 'gone' && f.low(s.to) === 'and') &&
              /^(lost|kicked off|flung|threw|thrown|tossed|shed|shucked|missing|gone|flipped|shed|lost)/.test(words)
            : s.value === 'off'
              ? /\b(took|take|taking|pulled|stripped|peeled|removed)\b/.test(words) && one
              : (/^(put|popped|slipped|back|on)\b/.test(words) && one) ||
                (words === 'on' && /^(theirs|hers|his)$/.test(f.low(s.from - 1)));
    // "Stubby's hind ones are tore", "Pesto's RF was ripped through"
    const behind = !near
      ? f.sites
          .filter(
            (x) =>
              x.to <= s.from &&
              s.from - x.to <= 3 &&
              x.paws.length &&
              (!x.part || x.part === 'foot') &&
              f.tokens
                .slice(x.to, s.from)
                .every((t) => /^(is|are|was|were|'s|got|has|had|been|is|all|both|one|ones|already|now)$/.test(t.low)),
          )
          .at(-1)
      : undefined;
    if (
      behind &&
      /^(torn|lost)$/.test(s.value) &&
      /\b(tore|torn|ripped|shredded|through|shreds|gone|missing|off|lost|holed|toast|worn|blown|done)\b/.test(words)
    ) {
      const own = f.owner(behind.from, s.to, behind);
      if (!own.human && own.dogs.length)
        push(f, out, s, s.value as State, s.from, s.to, {
          dogs: own.dogs,
          phrase: own.phrase,
          paws: order(behind.paws),
          site: behind,
        });
      continue;
    }
    const wholeSet = s.value === 'changed' && /\b(set|lot|all)\b/.test(words);
    const theirs = words === 'on' && /^(theirs|hers|his)$/.test(f.low(s.from - 1));
    if (!strong || (!near && !one && !theirs && !wholeSet && !/\bone|ones\b/.test(words))) continue;

    // "swapped it for a new one": once
    if (
      /\bnew ones?\b|\bfresh ones?\b/.test(words) &&
      out.some((r) => r.entry.state === 'changed' && s.from >= r.to && s.from - r.to <= 5)
    )
      continue;
    let state = s.value as State;
    // "new one on" after a loss is a bootie put on; after a torn one it is a change.
    if (/^(new one|new ones|fresh one)/.test(words))
      state = /on/.test(words) || f.low(s.to) === 'on' ? 'on' : 'changed';
    const last = out.filter((r) => r.from < s.from).at(-1);
    // A new one for a lost one is put on; for a torn one it is changed.
    if (state === 'changed' && /\bnew ones?\b|\bfresh ones?\b/.test(words) && last?.entry.state === 'lost')
      state = 'on';
    const own = f.owner(s.from, s.to, near, true);
    const paws = near?.paws.length ? order(near.paws) : undefined;
    if (!paws && near?.side) {
      push(f, out, s, state, s.from, s.to);
      continue;
    }
    const dogs = own.dogs.length ? own.dogs : (last?.entry.dogs ?? []);
    const carried = paws ?? (last && last.entry.dogs.join() === dogs.join() ? (last.entry.paws ?? []) : []);
    push(f, out, s, state, s.from, s.to, { dogs, phrase: own.phrase, paws: carried, site: near });
  }
}
