/** Reader "drop", dogs that go no further or never went, told by what the others do: "he stays here", "everyone went except Lark", "sent Gus back with Nora". */
import type { DogPhrase, Frame, Mention } from '../steps/frame.ts';
import { wordsIn } from '../steps/tokens.ts';
import { doubted, said } from './said.ts';

/** Adds the drops. `taken` holds the dogs of drops that are read already. */
export function readStays(f: Frame, taken: Set<DogPhrase>): void {
  for (const d of f.dogs) {
    if (taken.has(d) || !d.dogs.length || d.dogs[0] === '*' || d.possessive || d.negative || d.dogs.length > 4)
      continue;
    const stay = (f.out ? (staysHere(f, d) ?? sentBack(f, d)) : undefined) ?? wentWithout(f, d);
    if (!stay || f.entries.some((e) => e.kind === 'drop' && d.dogs.some((x) => e.dogs.includes(x)))) continue;
    taken.add(d);
    const heard = f.assertionWithin(Math.min(stay.from, d.from), stay.to);
    f.add({
      kind: 'drop',
      dogs: d.dogs,
      manner: stay.manner,
      ...said(/^(planned|possible)$/.test(heard) ? heard : 'present'),
      span: f.span([stay.from, stay.to]),
      rule: '<dog> stays',
      ...doubted(d.doubt),
    });
    f.claim(stay.from, stay.to);
  }
}

interface Stay {
  from: number;
  to: number;
  manner: 'dropped' | 'home';
}

const inTeam = (f: Frame, d: DogPhrase) => d.dogs.every((x) => f.lineup(d.from).some((l) => l.dog === x));
const HERE =
  /^(here|at the (check ?point|cabin|hut|road|crossing|vet|vets|camp|village|lodge|clinic|cp)|in (town|camp)|with the (vet|vets|handler|handlers|crew))\b/;

/** "he stays here", "Gus is staying at the checkpoint", "Tank stays with Sam": out on the trail a dog of the team goes no further. */
function staysHere(f: Frame, d: DogPhrase): Stay | undefined {
  if (!inTeam(f, d) || d.company || d.excepted) return undefined;
  let v = d.to;
  while (
    /^('s|is|are|will|'ll|has|have|had|to|be|gets|got|both|can|should|must|now|just)$/.test(f.low(v)) &&
    v - d.to < 4
  )
    v++;
  if (!/^(stays|staying|stay|stayed|remains|remained)$/.test(f.low(v))) return undefined;
  const behind = wordsIn(f.tokens, v + 1, v + 5);
  // "stayed at the checkpoint for an hour"
  if (/\bfor (a|an|the|\d+|one|two|three|four|five|six|ten)\b/.test(wordsIn(f.tokens, v + 1, v + 8))) return undefined;
  const person = f.low(v + 1) === 'with' && f.personAt(v + 2);
  if (!HERE.test(behind) && !person) return undefined;
  return { from: d.from, to: v + 2, manner: 'dropped' };
}

/** "sent Gus back with Nora", "flew Tank out from the second checkpoint". */
function sentBack(f: Frame, d: DogPhrase): Stay | undefined {
  if (!inTeam(f, d) || d.excepted) return undefined;
  const verb = f.low(d.from - 1);
  const next = wordsIn(f.tokens, d.to, d.to + 2);
  const sent =
    /^(sent|sending|send|shipped|shipping)$/.test(verb) &&
    /^(back|home|off|out) (with|to|on|from|by|in|,|\.)?/.test(`${next} `) &&
    !f.m.of('position').some((p) => p.from > d.to && p.from - d.to < 5);
  const flew = /^(flew|flying|fly)$/.test(verb) && /^(out|home|back)\b/.test(next);
  return sent || flew ? { from: d.from - 1, to: d.to + 1, manner: 'dropped' } : undefined;
}

const ENDS = /^(|[.,;]|and|today|tonight|this|because|since|for|so|with|who|as|again)$/;

/** In the yard: "everyone went except Lark", "ran everybody but Gus", "didn't take Boots", "ran without Gus". */
function wentWithout(f: Frame, d: DogPhrase): Stay | undefined {
  if (f.out || d.kind !== 'names' || !ENDS.test(f.low(d.to))) return undefined;
  let start = d.from;
  while (start > 0 && d.from - start < 9 && !f.isStrong(start - 1) && f.low(start - 1) !== ',') start--;
  const before = wordsIn(f.tokens, start, d.from);
  const at = (hit: RegExp): Stay | undefined =>
    hit.test(before) ? { from: start, to: d.to, manner: 'home' } : undefined;
  if (/^(,|so|with)$/.test(f.low(d.to)) && /^(ate|drank|good)/.test(f.low(d.to + 1))) return undefined;
  return (
    at(
      /^(we |i )?(all|everyone|everybody|every dog|the whole team|the team|all of them|they all)( all)? (went|went out|ran|came|came along|got to go|got out|got a run)( out| today| along)? (except|except for|but|besides|save|apart from)$/,
    ) ??
    at(
      /^(we |i )?(took|ran|hooked up|had|brought|hooked|harnessed)( out)? (all|everyone|everybody|every dog|the whole team|them all|the lot|all of them)( out| today)? (except|except for|but|save|apart from)$/,
    ) ??
    at(/^(we |i )?(did n't|did not|didn't) (take|run|hook up|hook|bring|use)$/) ??
    at(/^(we |i )?(ran|went|going|running|run|left|out)( today| again| out| the team)? without$/)
  );
}

/** "left the two old boys home, Tank and Gus", "returned two dogs, Gus and Tank": the names behind the comma say who. */
export function apposed(f: Frame, i: number): DogPhrase | undefined {
  if (!/^(,|:|-)$/.test(f.low(i))) return undefined;
  const d = f.dogFrom(i + 1);
  return d?.kind === 'names' &&
    !d.possessive &&
    d.dogs.length > 0 &&
    /^(|[.;]|at|for|today|because|with|,)$/.test(f.low(d.to))
    ? d
    : undefined;
}

/** "unhooked Penny and put her in the bag": taken out only to ride. */
export const loadedThen = (f: Frame, m: Mention, d: DogPhrase): boolean =>
  /^(unhooked|unhook|unhooking|took|taken|pulled|unclipped)$/.test(f.low(m.from)) &&
  f.m
    .of('drop')
    .some(
      (o) =>
        o.value === 'loaded' &&
        o.from >= m.to &&
        o.from - m.to < 10 &&
        f.sentence(o.from) === f.sentence(m.from) &&
        f.dogs.some((x) => x.from >= m.to && x.to <= o.from && x.dogs.join() === d.dogs.join()),
    );

/** "I may yet have to put Storm in the sled", "Gus could end up riding": it has not come to that. */
export function mayCome(f: Frame, from: number, to: number): boolean {
  for (let k = Math.max(0, from - 6); k < to; k++) {
    if (f.sentence(k) !== f.sentence(from) || f.dogAt(k)?.kind === 'names') continue;
    const next = wordsIn(f.tokens, k + 1, k + 5);
    if (/^(might|may)$/.test(f.low(k)) && !/^(n't|not|have been)\b/.test(next) && !f.strongBetween(k, from))
      return true;
    if (f.low(k) === 'could' && /^(still |yet |well |easily )?(end up|have to|need to|wind up)\b/.test(next))
      return true;
  }
  return false;
}
