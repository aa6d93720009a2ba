/** Reader "booties", once booties are spoken of: "changed that one", feet told late, lists that leave the verb out. */
import type { Paw } from '../entry.ts';
import type { DogPhrase, Frame, Mention, Site } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import { push, type Read, type State } from './bootie-entries.ts';
import { order } from './bootie-feet.ts';
import { doubted } from './said.ts';

/** "Penny lost a bootie. Back left.", "lost one, right front": the foot behind a mark, told alone. */
export function lateFeet(f: Frame, out: readonly Read[]): void {
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

/**
 * "Rook threw his right hind, Brisket both fronts and Vesper a left front": the verb is said once, for the first. "Changed
 * the wheelers'": the word bootie is left out.
 */
export function leftOutVerb(f: Frame, out: Read[]): void {
  if (!out.length) return;
  for (const d of f.dogs) {
    if (d.company || !d.dogs.length || d.excepted) continue;
    if (d.possessive && d.kind !== 'pronoun') {
      if (theirsAre(f, out, d)) continue;
      const s = f.m.of('boot-state').find((x) => x.to === d.from || x.to === d.from - 1);
      const verb = s && wordsIn(f.tokens, s.from, s.to);
      if (!s || !/^(changed|replaced|swapped|swapped out|changed out)$/.test(verb ?? '') || s.from < (out[0]?.to ?? 0))
        continue;
      if (!/^([.,;!]|and|but|too|also|again|now|just|)$/.test(f.low(d.to)) || f.isClaimed(s.from, d.to)) continue;
      push(f, out, s, 'changed', s.from, d.to, { dogs: d.dogs, phrase: d, paws: [], doubt: d.doubt });
      continue;
    }
    if (d.kind !== 'names' || d.possessive) continue;
    if (
      !/^(,|;|and|&|already|away|too|again|now|today|early|later|once|twice)$/.test(f.low(d.from - 1)) &&
      !f.sites.some((x) => x.to === d.from && f.claimed[x.from])
    )
      continue;
    const s = f.sites.find((x) => x.from >= d.to && x.from - d.to <= 2);
    if (
      !s?.paws.length ||
      s.paws.length > 3 ||
      s.part ||
      !/^(his|her|their|a|the|both|)$/.test(wordsIn(f.tokens, d.to, s.from))
    )
      continue;
    if (!/^([.,;!]|and|but|)$/.test(f.low(s.to)) && !f.dogFrom(s.to)) continue;
    const last = out.filter((r) => r.to <= d.from && r.entry.paws && f.sentence(r.from) === f.sentence(d.from)).at(-1);
    if (!last || d.from - last.to > 9 || f.isClaimed(d.from, s.to)) continue;
    if (f.tokens.slice(last.to, d.from).some((t) => f.m.at('sign', t.i) && !f.claimed[t.i])) continue;
    const span = f.span([d.from, s.to]);
    out.push({
      entry: {
        ...last.entry,
        dogs: d.dogs,
        paws: order(s.paws),
        span,
        rule: `booties ${last.entry.state}`,
        ...doubted(d.doubt),
      },
      from: d.from,
      to: s.to,
    });
    f.claim(d.from, s.to);
  }
}

/** "Rook's booties are off and Gus's are on": the word bootie is left out. */
function theirsAre(f: Frame, out: Read[], d: DogPhrase): boolean {
  if (!/^(is|are|were|was)$/.test(f.low(d.to))) return false;
  let k = d.to + 1;
  while (/^(all|both|still|already|just|now|totally|completely)$/.test(f.low(k))) k++;
  const s = f.m.from('boot-state', k);
  const last = out.findLast((r) => r.to <= d.from);
  if (!s || !last || !/^([.,;!]|and|but|)$/.test(f.low(s.to)) || d.from - last.to > 12 || f.isClaimed(d.from, s.to))
    return false;
  if (f.tokens.slice(last.to, d.from).some((t) => f.siteAt(t.i)?.part || (f.m.at('sign', t.i) && !f.claimed[t.i])))
    return false;
  push(f, out, s, s.value as State, d.from, s.to, { dogs: d.dogs, phrase: d, paws: [], doubt: d.doubt });
  return true;
}

const andBetween = (f: Frame, a: number, b: number) => f.tokens.slice(a, b).some((t) => /^(and|but|then)$/.test(t.low));

/** "…, just fronts on Rook", "and hinds only on Ivy": begins a statement of its own. */
function feetApart(f: Frame, from: number): boolean {
  let k = from - 1;
  while (/^(just|only|the|both|all|but)$/.test(f.low(k))) k--;
  return /^(,|and|&|\+)$/.test(f.low(k)) && f.dogs.some((d) => d.to === k || d.to === k - 1);
}

/** "leaders all four, swing fronts only, wheelers hinds only": each with its feet. */
export function listed(f: Frame, out: Read[], h: Mention, state: State): void {
  const start = h.to;
  const pairs: { d: DogPhrase; s: Site | undefined; dogs: string[] }[] = [];
  let apart = 0;
  let k = start;
  let edge = start + 1;
  while (k < f.tokens.length && !f.isStrong(k) && (state === 'on' || k - edge <= 2)) {
    const told = f.m.from('boot-state', k);
    if (state === 'on' && told && /^(lost|torn|changed)$/.test(told.value) && k > h.to) break;
    const at = f.dogFrom(k);
    const d = at?.kind === 'pronoun' ? undefined : at;
    const place = d ? undefined : f.m.from('position', k);
    if (d || place) {
      const end = d ? d.to : (place as Mention).to;
      const s = f.sites.find(
        (x) => x.from >= end && x.from - end <= 1 && x.paws.length && !onDog(f, x.to)?.dogs.length,
      );
      const dogs = d
        ? d.dogs
        : f
            .lineup(k)
            .filter((l) => l.position === place?.value)
            .map((l) => l.dog);
      if (s && dogs.length) pairs.push({ d: d as DogPhrase, s, dogs });
      k = s ? s.to : end;
      edge = k;
      continue;
    }
    // "on all four feet for Rook, only the fronts on Gus"
    const feet = f.sites.find((x) => x.from === k && x.paws.length && (!x.part || x.part === 'foot'));
    const on = feet && onDog(f, feet.to);
    if (feet && on?.dogs.length && on.kind !== 'pronoun' && !on.possessive) {
      pairs.push({ d: on, s: feet, dogs: on.dogs });
      if (feetApart(f, feet.from)) apart++;
      k = on.to;
      edge = k;
    } else k++;
  }
  const first = out.findIndex((r) => r.from <= h.from && h.from < r.to);
  // "all four booties on the wheel dogs and just fronts on Rook": the second beside the first
  const beside = pairs.length === 1 && apart === 1 && out[first]?.entry.dogs.every((d) => !pairs[0]?.dogs.includes(d));
  if (pairs.length < 2 && !beside) return;
  if (first >= 0 && !beside) out.splice(first, 1);
  for (const p of pairs)
    push(f, out, h, state, h.from, h.to, {
      dogs: p.dogs,
      phrase: p.d,
      paws: p.s && p.s.paws.length < 4 ? order(p.s.paws) : [],
      site: p.s,
    });
}

/** "small rub at the dewclaw, LF - took that one off": the foot told right before. */
function footPointedAt(f: Frame, s: Mention): Paw[] | undefined {
  const those = /^(those|these)$/.test(f.low(s.to)) && /^([.,;]|two|feet|paws|ones|)$/.test(f.low(s.to + 1));
  if (!those && (f.low(s.to) !== 'that' || !/^(one|bootie|boot)$/.test(f.low(s.to + 1)))) return undefined;
  const site = f.sites.findLast((x) => x.to <= s.from && !x.anaphor);
  if (!site || (those ? site.paws.length < 2 : site.paws.length !== 1) || s.from - site.to > 8) return undefined;
  return f.dogs.some((d) => d.kind === 'names' && d.from >= site.to && d.to <= s.from) ? undefined : [...site.paws];
}

/** The dog whose feet were just named: "both fronts on Pearl". */
const onDog = (f: Frame, i: number): DogPhrase | undefined =>
  /^(on|of|for)$/.test(f.low(i)) && !f.dogFrom(i + 1)?.possessive ? f.dogFrom(i + 1) : undefined;

/** Does "swapped it", "changed that" follow on gear with its own state, with no bootie told since? */
function ofGear(f: Frame, s: Mention): boolean {
  if (!/^(it|that)$/.test(f.low(s.to))) return false;
  const item = f.m
    .of('item')
    .filter((x) => x.to <= s.from && s.from - x.to <= 8 && !f.m.at('bootie', x.from))
    .at(-1);
  if (!item || ['bootie', 'boot-verb'].some((t) => f.m.of(t).some((b) => b.from >= item.to && b.to <= s.from)))
    return false;
  return f.m.of('gear-state').some((g) => g.to <= s.from && Math.abs(g.from - item.from) <= 5);
}

/** "Gus lost one and Ivy's is gone too": the bootie is left out, the dog whose it is stands there. */
function whoseIs(f: Frame, s: Mention) {
  let k = s.from;
  while (/^(is|are|was|were|all|both|nearly|almost|already|just|also)$/.test(f.low(k - 1))) k--;
  return k < s.from || /^(is|are) /.test(`${f.low(s.from)} ${f.low(s.from + 1)}`)
    ? f.dogs.find((d) => d.possessive && d.kind === 'names' && d.to === k)
    : undefined;
}

/** "… is torn on the same foot": the feet told last. */
function sameFoot(f: Frame, s: Mention, last: Read | undefined) {
  for (let k = s.to; k < s.to + 8 && !f.isStrong(k); k++)
    if (f.low(k) === 'same' && /^(foot|paw|feet|side|leg|one)$/.test(f.low(k + 1))) return last?.entry.paws;
  return undefined;
}

/** "Rook lost his LF bootie. I gave him another": on the foot that has none. */
function givenAnother(f: Frame, out: Read[], s: Mention): boolean {
  const d = /^(gave|give|giving|got|gets)$/.test(f.low(s.from)) ? f.dogFrom(s.to) : undefined;
  const last = out.at(-1);
  if (!d?.dogs.length || !last || !/^(lost|torn)$/.test(last.entry.state) || d.from - last.to > 16) return false;
  if (last.entry.dogs.join() !== d.dogs.join()) return false;
  const words = wordsIn(f.tokens, d.to, d.to + 3);
  const one =
    /^(another one|another|a (new|fresh|spare) one|a spare|the spare|new ones?|fresh ones?)(?= [.,;!]| and| but|$)/.exec(
      words,
    );
  if (!one || f.m.of('item').some((x) => x.from >= last.to && x.to <= s.from && !f.m.at('bootie', x.from)))
    return false;
  const to = d.to + one[0].split(' ').length;
  const state = last.entry.state === 'lost' ? 'on' : 'changed';
  push(f, out, s, state, s.from, to, { dogs: d.dogs, phrase: d, paws: [...(last.entry.paws ?? [])] });
  return true;
}

/** "The boys are in booties and Clara has them on her front feet only" */
function hasThemOn(f: Frame, out: Read[], s: Mention): boolean {
  if (!/^(has|have|had|wears|wearing|got)$/.test(f.low(s.from)) || !/^(them|'em|em)$/.test(f.low(s.to))) return false;
  const d = f.dogs.find((x) => x.to === s.from && x.kind === 'names' && x.dogs.length && !x.company);
  let k = s.to + 1;
  if (!d || f.low(k) !== 'on' || out.at(-1)?.entry.state !== 'on') return false;
  while (/^(on|the|his|her|their|just|only)$/.test(f.low(k)) && !f.siteAt(k)) k++;
  const site = f.sites.find((x) => x.from === k && x.paws.length && (!x.part || x.part === 'foot'));
  if (!site) return false;
  push(f, out, s, 'on', s.from, site.to, {
    dogs: d.dogs,
    phrase: d,
    paws: site.paws.length < 4 ? order(site.paws) : [],
    site,
  });
  return true;
}

/** Once booties are spoken of: "changed that one", "wore through her left front", "new one on", "took them all off". */
export function followOn(f: Frame, out: Read[], verbs: ReadonlySet<number>): void {
  const first = (out[0] as Read).from;
  for (const s of f.m.of('boot-state')) {
    if (s.from <= first || verbs.has(s.from) || f.isClaimed(s.from, s.to)) continue;
    if (/through$/.test(f.low(s.to - 1)) && /^(the|all|every|each|everybody|everyone|them)$/.test(f.low(s.to)))
      continue;
    if (f.siteAt(s.from) || (s.value === 'on' && (f.m.at('sign', s.from - 1) || f.m.at('bootie', s.from - 1))))
      continue;
    // "I booted them all. Gus had chewed his neckline; swapped it": the gear told since
    if (s.value === 'changed' && ofGear(f, s)) continue;
    const words = f.tokens
      .slice(s.from, s.to)
      .map((t) => t.low)
      .join(' ');
    const near = f.sites.find(
      (x) =>
        !f.dogs.some(
          (d) =>
            d.kind === 'names' && (!d.possessive || andBetween(f, s.to, d.from)) && d.from >= s.to && d.to <= x.from,
        ) &&
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
          ? /\b(wore|worn|blown|blew|torn|tore|ripped|shredded|through|hole)\b/.test(words) ||
            // "chewed his RH one to bits"
            (/^(chewed|gnawed|bit|bitten|eaten)\b/.test(words) && near !== undefined && /^ones?$/.test(f.low(near.to)))
          : s.value === 'lost'
            ? !(f.low(s.from) === 'gone' && f.low(s.to) === 'and') &&
              /^(lost|kicked off|kicked|flung|threw|thrown|tossed|shed|shucked|missing|gone|flipped|shed|lost)/.test(
                words,
              )
            : s.value === 'off'
              ? /\b(took|take|taking|pulled|stripped|peeled|removed)\b/.test(words) && one
              : (/^(put|popped|slipped|back|on)\b/.test(words) && one) ||
                (words === 'on' && /^(theirs|hers|his)$/.test(f.low(s.from - 1)));
    // "Stubby's hind ones are tore", "Pesto's RF was ripped through", "both fronts on Pearl changed"
    const behind = !near
      ? f.sites
          .filter(
            (x) =>
              x.to <= s.from &&
              s.from - x.to <= (onDog(f, x.to) ? 5 : 3) &&
              x.paws.length &&
              (!x.part || x.part === 'foot') &&
              f.tokens
                .slice(onDog(f, x.to)?.to ?? x.to, s.from)
                .every((t) => /^(is|are|was|were|'s|got|has|had|been|is|all|both|one|ones|already|now)$/.test(t.low)),
          )
          .at(-1)
      : undefined;
    if (
      behind &&
      /^(torn|lost|changed)$/.test(s.value) &&
      /\b(changed|swapped|replaced|redone|renewed|tore|torn|ripped|shredded|through|shreds|gone|missing|off|lost|holed|toast|worn|blown|done)\b/.test(
        words,
      )
    ) {
      const own = f.owner(behind.from, s.to, behind);
      // One foot is not the whole team's.
      if (!own.human && own.dogs.length && !(own.carried && own.dogs.length > 2))
        push(f, out, s, s.value as State, s.from, s.to, {
          dogs: own.dogs,
          phrase: own.phrase,
          paws: order(behind.paws),
          site: behind,
        });
      continue;
    }
    if (s.value === 'on' && (givenAnother(f, out, s) || hasThemOn(f, out, s))) continue;
    const wholeSet = s.value === 'changed' && /\b(set|lot|all)\b/.test(words);
    const theirs = words === 'on' && /^(theirs|hers|his)$/.test(f.low(s.from - 1));
    const whose = whoseIs(f, s);
    if (!strong || (!near && !one && !theirs && !whose && !wholeSet && !/\bone|ones\b/.test(words))) continue;

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
    const dogs = whose?.dogs.length ? whose.dogs : own.dogs.length ? own.dogs : (last?.entry.dogs ?? []);
    const carried =
      paws ??
      sameFoot(f, s, last) ??
      footPointedAt(f, s) ??
      (last && !wholeSet && last.entry.dogs.join() === dogs.join() ? (last.entry.paws ?? []) : []);
    push(f, out, s, state, s.from, s.to, { dogs, phrase: own.phrase, paws: carried, site: near });
  }
}
