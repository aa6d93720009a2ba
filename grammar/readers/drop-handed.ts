/** Reader "drop", dogs that somebody else takes out or takes home: "the vet pulled Gus", "handed Rook to Nora", "Nora drove Tank home". */
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { notDone } from './denied.ts';
import { doubted, said } from './said.ts';

const OFFICIAL = /^(vet|vets|veterinarian|veterinarians|judge|marshal|marshals|handler|handlers|checker|doctor)$/;

/** "Nora took Gus home", "Sam's driving Rook back to the truck": carried off, not driven as a team. */
export function carriedOff(f: Frame, d: DogPhrase): boolean {
  const next = `${f.low(d.to)} ${f.low(d.to + 1)} ${f.low(d.to + 2)}`;
  // "Sam has Gus at the road crossing"
  if (
    /^(has|had|got|have)$/.test(f.low(d.from - 1)) &&
    d.dogs.length < 3 &&
    /^at the (road|crossing|truck|checkpoint|vet|clinic|trailhead|cabin|hut)\b/.test(next)
  )
    return true;
  return (
    d.kind !== 'group' &&
    d.dogs.length < 4 &&
    /^(took|takes|taking|drove|drives|driving|brought|brings|bringing|hauled|hauls|flew|carried|will take|take)$/.test(
      f.low(d.from - 1),
    ) &&
    /^(home|(right |straight )?back (to|home|in|with)|to (the )?(vet|vets|truck|trailhead|town|clinic|yard|kennel|road)|in the (truck|van|car|dog)|off (the|to) (team|vet|line))\b/.test(
      next,
    )
  );
}

/** Adds the drops. `taken` holds the dogs of drops that are read already. */
export function readHandedOver(f: Frame, taken: Set<DogPhrase>): void {
  for (const d of f.dogs) {
    if (taken.has(d) || !d.dogs.length || d.dogs[0] === '*' || d.possessive || d.excepted || d.negative) continue;
    const how = handedOver(f, d);
    if (!how || notDone(f, how[0], how[1])) continue;
    if (f.entries.some((e) => e.kind === 'drop' && d.dogs.some((x) => e.dogs.includes(x)))) continue;
    taken.add(d);
    const [from, to] = [Math.min(how[0], d.from), Math.max(how[1], d.to)];
    f.add({
      kind: 'drop',
      dogs: d.dogs,
      manner: 'dropped',
      ...said(f.assertionWithin(from, to)),
      span: f.span([from, to]),
      rule: '<dog> handed over',
      ...doubted(d.doubt),
    });
    f.claim(from, to);
  }
}

const isPerson = (f: Frame, k: number) => f.context.people.some((p) => p.toLowerCase() === f.low(k));

/** Where the words stand that say so. */
function handedOver(f: Frame, d: DogPhrase): [number, number] | undefined {
  const verb = f.low(d.from - 1);
  const before = f.low(d.from - 2);
  if (verb === 'pulled' && OFFICIAL.test(before)) return [d.from - 2, d.to];
  // "Gus was pulled by the vet", "Rook got pulled at the checkpoint"
  if (/^(was|were|got|been|'s|is)$/.test(f.low(d.to)) || /^been$/.test(f.low(d.to + 1))) {
    const v = f.low(d.to) === 'has' || f.low(d.to + 1) === 'been' ? d.to + 2 : d.to + 1;
    if (
      f.low(v) === 'pulled' &&
      /^(by|at|from|because|for|with|in)$/.test(f.low(v + 1)) &&
      !/^(from the front|from up)/.test(`${f.low(v + 1)} ${f.low(v + 2)} ${f.low(v + 3)}`)
    )
      return f.low(v + 1) === 'by' && !OFFICIAL.test(f.low(v + 3)) && !OFFICIAL.test(f.low(v + 2))
        ? undefined
        : [d.from, v + 1];
  }
  if (!f.out || !d.dogs.every((x) => f.lineup(d.from).some((l) => l.dog === x))) return undefined;
  if (carriedOff(f, d) && f.personAt(d.from - 2)) return [d.from - 1, d.to + 1];
  // "handed Gus (over) to Nora at the crossing"
  const k = /^(over|off)$/.test(f.low(d.to)) ? d.to + 1 : d.to;
  if (/^(handed|passed|turned)$/.test(verb) && f.low(k) === 'to' && (isPerson(f, k + 1) || OFFICIAL.test(f.low(k + 2))))
    return [d.from - 1, k + 2];
  // "Nora picked Gus up at the road"
  if (
    verb === 'picked' &&
    f.low(d.to) === 'up' &&
    f.personAt(d.from - 2) &&
    /^(at|from|by|with)$/.test(f.low(d.to + 1))
  )
    return [d.from - 1, d.to + 1];
  // "Gus is flying home", "Rook goes home with the trail crew"
  let v = d.to;
  while (/^('s|is|was|got|gets|has|will|'ll|been|be|now|already)$/.test(f.low(v)) && v - d.to < 3) v++;
  if (
    /^(flying|flies|flew|flown|going|goes|went|sent|shipped|driven|headed|heads|heading)$/.test(f.low(v)) &&
    f.low(v + 1) === 'home' &&
    /^(from|with|on|by|in|at)$/.test(f.low(v + 2))
  )
    return [d.from, v + 2];
  return undefined;
}
