/** Reader "booties" where the word bootie is not said: "ran barefoot", "Ivy tossed her left front". */
import type { Frame, Mention, Owner } from '../steps/frame.ts';
import type { Read } from './bootie-entries.ts';
import { order } from './bootie-feet.ts';
import { doubted, said } from './said.ts';

const BARE = /^(barefoot|barefooted|bare foot|bootless|going bare)$/;
/** What is said of a run, not of one dog: "running barefoot today". */
const RUN = /^(run|running|ran|go|going|went|racing|train|training|all|everyone|barefoot|bare)$/;

/** "Running barefoot today", "leaders in booties, rest barefoot". */
export function readBarefoot(f: Frame, before: readonly Read[]): Read[] {
  const out: Read[] = [];
  for (const m of f.m.of('boot-state')) {
    if (!BARE.test(words(f, m)) || f.isClaimed(m.from, m.to) || f.personAt(m.from - 1)) continue;
    const owner = f.owner(m.from, m.to);
    if (owner.human || f.m.at('me', m.from - 1)) continue;
    const named =
      owner.phrase && !f.strongBetween(Math.min(owner.phrase.from, m.from), Math.max(owner.phrase.from, m.from));
    const all = f.lineup(m.from).map((l) => l.dog);
    const whole = !named && (m.from === 0 || f.isStrong(m.from - 1) || RUN.test(f.low(m.from - 1)));
    if (!named && (!whole || f.dogs.some((d) => f.sentence(d.from) === f.sentence(m.from)))) continue;
    // "leaders in booties, rest barefoot": those who have none on
    const told = new Set(before.flatMap((r) => r.entry.dogs));
    const rest = named && owner.phrase?.value === 'rest';
    const dogs = !named
      ? all.length
        ? all
        : ['*']
      : rest && all.length
        ? all.filter((d) => !told.has(d))
        : owner.dogs;
    if (!dogs.length) continue;
    const assertion = f.assertion(m.from, m.to);
    if (assertion === 'absent') continue;
    push(f, out, { dogs, doubt: owner.doubt }, 'off', [], m.from, m.to, assertion);
  }
  return out;
}

const TOSSED =
  /^(lost|threw|tossed|flung|shed|shucked|slung|kicked off|chucked|threw off|flipped off|lost track of|missing)$/;

/** "Ivy tossed her left front", "Gus is missing both hinds": what a dog loses from a foot is its bootie. */
export function readTossed(f: Frame): Read[] {
  const out: Read[] = [];
  for (const m of f.m.of('boot-state')) {
    if (m.value !== 'lost' || !TOSSED.test(words(f, m)) || f.isClaimed(m.from, m.to)) continue;
    let k = m.to;
    while (/^(his|her|their|its|a|another|the|one|both|again)$/.test(f.low(k)) && !f.sites.some((s) => s.from === k))
      k++;
    const site = f.sites.find(
      (s) => s.from === k && s.paws.length > 0 && s.paws.length < 4 && (!s.part || s.part === 'foot'),
    );
    if (!site || (site.part && /^(foot|feet|paw|paws)$/.test(f.low(site.to - 1)))) continue;
    if (
      !/^([.,;!]|and|but|again|at|near|on|in|somewhere|after|before|by|today|early|already|this|around|)$/.test(
        f.low(site.to),
      )
    )
      continue;
    const dog = f.dogs.findLast(
      (d) => d.to <= m.from && m.from - d.to <= 3 && !d.company && !d.excepted && d.dogs.length,
    );
    if (!dog || dog.possessive || f.strongBetween(dog.to, m.from) || f.m.at('bootie', site.to)) continue;
    const assertion = f.assertion(m.from, m.to);
    push(f, out, { dogs: dog.dogs, doubt: dog.doubt }, 'lost', order(site.paws), m.from, site.to, assertion);
  }
  return out;
}

function push(
  f: Frame,
  out: Read[],
  owner: Pick<Owner, 'dogs' | 'doubt'>,
  state: Read['entry']['state'],
  paws: Read['entry']['paws'] & {},
  from: number,
  to: number,
  assertion: ReturnType<Frame['assertion']>,
): void {
  out.push({
    entry: {
      kind: 'booties',
      dogs: owner.dogs,
      state,
      ...(paws.length ? { paws } : {}),
      ...said(assertion),
      span: f.span([from, to]),
      rule: `booties ${state}, the word left out`,
      ...doubted(owner.doubt),
    },
    from,
    to,
  });
  f.claim(from, to);
}

const words = (f: Frame, m: Mention) =>
  f.tokens
    .slice(m.from, m.to)
    .map((t) => t.low)
    .join(' ');
