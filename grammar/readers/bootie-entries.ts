/** Reader "booties", the entry: whose it is, on which feet, how it is asserted; said twice, it is one. */
import type { EntryOf, Paw } from '../entry.ts';
import type { DogPhrase, Frame, Mention, Site } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import { pawsNear, singleFoot, whose } from './bootie-feet.ts';
import { doubted, said } from './said.ts';

type Booties = EntryOf<'booties'>;
export type State = Booties['state'];

export interface Read {
  entry: Booties;
  from: number;
  to: number;
}

/** Takes an entry of a state told beside a bootie. */
export function push(
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
  if (!where.paws.length && !forced && (state !== 'off' || /^(that|the)$/.test(f.low(h.from - 1))))
    where.paws = singleFoot(f, h, lo, hi);
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
  // "took all booties off because they got wet. Ask is shivering": the team's, whoever is named later
  const allOf =
    /^(on|off|changed)$/.test(state) &&
    /\b(all|every|everybody 's|everyone 's)( of| the)*$/.test(wordsIn(f.tokens, Math.max(0, h.from - 4), h.from)) &&
    !f.dogs.some((d) => d.kind === 'names' && d.from < hi);
  if (!dogs.length && (allOf || !f.dogs.some((d) => d.kind === 'names'))) {
    if (state === 'lost' || state === 'torn' || (where.paws.length === 1 && state !== 'off')) return;
    const all = f.lineup(lo).map((l) => l.dog);
    // "changed out six booties": whose, is not said
    if (f.quantityAt(h.from - 1) && state !== 'on') return;
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
