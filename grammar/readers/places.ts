/** Readers "hitch" and "move": who stands where, whose team it is, and who is put somewhere else on the way. */
import type { Position } from '../entry.ts';
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { notDone } from './denied.ts';
import { mayCome } from './drop-stays.ts';
import { type Assignment, assignments } from './place-assignments.ts';
import { driven } from './place-drivers.ts';
import { readSwaps } from './place-swaps.ts';
import { ofAnotherDay, underPlan, whenWeGetThere } from './plan-day.ts';
import { doubted, said } from './said.ts';

export { doubted, said } from './said.ts';

/** Before groups are written out: the line-up that the note itself tells. */
export function tellLineup(f: Frame): void {
  const seen = new Set<string>();
  for (const a of assignments(f)) {
    if (a.kind !== 'hitch') continue;
    for (const dog of a.dogs) {
      if (seen.has(dog)) continue;
      seen.add(dog);
      f.told.push({ dog, position: a.position, side: a.side, at: a.to - 1 });
    }
  }
  for (const d of driven(f)) {
    for (const dog of d.phrase.dogs) {
      const told = f.told.find((t) => t.dog === dog);
      if (told) told.driver ??= d.driver;
      else if (!seen.has(dog)) f.told.push({ dog, at: d.phrase.to - 1, driver: d.driver });
    }
  }
}

/** Reads hitches and moves. */
export function readPlaces(f: Frame): void {
  const list = assignments(f);
  const drivers = driven(f);
  const holds = (a: Assignment, d: DogPhrase) =>
    a.phrases.includes(d) || (d.company && d.from >= a.from && d.to <= a.to && d.dogs.every((x) => a.dogs.includes(x)));
  const driverOf = (a: Assignment) => drivers.find((d) => d.driver && holds(a, d.phrase))?.driver;
  for (const a of list) {
    // "not putting Rook in lead again", "Rook isn't in wheel"
    if (notDone(f, a.from, a.to) || a.phrases.some((p) => p.negative)) continue;
    const driver = a.kind === 'hitch' ? driverOf(a) : undefined;
    const own = f.assertionWithin(a.from, a.to);
    const toCome = a.kind === 'hitch' ? underPlan(f, a.from) : whenWeGetThere(f, a.from, a.to);
    const may = /^(present|planned)$/.test(own) && mayCome(f, a.from, a.to);
    const assertion = may ? 'possible' : own === 'present' && toCome ? 'planned' : own;
    const span = f.span([a.from, a.to]);
    const doubt = a.because ?? a.phrases.find((p) => p.doubt)?.doubt;
    const base = {
      dogs: a.dogs,
      ...(a.side ? { side: a.side } : {}),
      ...said(assertion),
      span,
      rule: a.kind === 'hitch' ? '<dogs> in <place>' : '<dogs> moved to <place>',
      ...doubted(doubt),
    };
    const otherDay = a.kind === 'move' && /^(planned|possible)$/.test(assertion) && ofAnotherDay(f, a.from);
    if (a.kind === 'move' && !otherDay) f.add({ kind: 'move', position: a.position as Position, ...base });
    else
      f.add({ kind: 'hitch', ...(a.position ? { position: a.position } : {}), ...(driver ? { driver } : {}), ...base });
    f.claim(a.from, a.to);
  }
  const placed = (d: DogPhrase) => list.some((a) => holds(a, d));
  for (const d of drivers) {
    if (placed(d.phrase)) continue;
    f.add({
      kind: 'hitch',
      dogs: d.phrase.dogs,
      ...(d.driver ? { driver: d.driver } : {}),
      ...said(underPlan(f, d.phrase.from) ? 'planned' : f.assertionWithin(d.from, d.phrase.to)),
      span: f.span([d.from, d.phrase.to]),
      rule: '<person> drives <dogs>',
    });
    f.claim(d.from, d.phrase.to);
  }
  readOutings(f, (d) => placed(d) || drivers.some((x) => x.phrase === d));
  readOutWith(f, drivers);
  readSwaps(f, list);
  readReplacing(f, list);
}

/** "Went on skis with Rook and Storm", "I took both of them out on skis"; "I get Fern and Moss" beside a team that somebody else gets. */
function readOutWith(f: Frame, drivers: readonly { driver?: string }[]): void {
  for (const d of f.dogs) {
    if (!d.dogs.length || d.dogs[0] === '*' || d.possessive || d.excepted) continue;
    if (f.entries.some((e) => e.kind === 'hitch' && e.dogs.some((x) => d.dogs.includes(x)))) continue;
    const verb = f.low(d.from - 1);
    const outing = (a: number, b: number) =>
      f.m.of('outing').some((o) => o.from >= a && o.to <= b && !f.strongBetween(o.from, d.from));
    const someone = f.people.some((p) => p.to <= d.from && d.from - p.to < 14 && !f.strongBetween(p.to, d.from));
    const went =
      verb === 'with' &&
      d.kind === 'names' &&
      !someone &&
      outing(d.from - 8, d.from) &&
      f.tokens.slice(Math.max(0, d.from - 12), d.from).some((t) => /^(went|was|out|go|going)$/.test(t.low));
    const took =
      /^(took|take|taking)$/.test(verb) &&
      d.kind !== 'names' &&
      !someone &&
      f.low(d.to) === 'out' &&
      outing(d.to, d.to + 5);
    const mine =
      /^(get|have|got|had|take|took|run|ran|drive)$/.test(verb) &&
      d.kind === 'names' &&
      /^(i|we|'ll|'ve)$/.test(f.low(d.from - 2)) &&
      drivers.some((x) => x.driver) &&
      /^([.,;]|and|with|on|in|for|today|tomorrow|tonight|this|instead|)$/.test(f.low(d.to));
    if (!went && !took && !mine) continue;
    const from = d.from - 1;
    f.add({
      kind: 'hitch',
      dogs: d.dogs,
      ...said(underPlan(f, d.from) ? 'planned' : f.assertionWithin(from, d.to)),
      span: f.span([from, d.to]),
      rule: 'out with <dogs>',
      ...doubted(d.doubt),
    });
    f.claim(from, d.to);
  }
}

/** "took Trip out on skis", "hooked up Fern and Moss", "running Pika, Flint and Birch today". */
function readOutings(f: Frame, placed: (d: DogPhrase) => boolean): void {
  for (const d of f.dogs) {
    if (d.possessive || d.excepted || placed(d) || (d.kind !== 'names' && d.kind !== 'group') || d.company) continue;
    if (d.kind === 'group' && d.value !== 'F' && d.value !== 'M') continue;
    let v = d.from - 1;
    if (/^(up|out|a|just|only)$/.test(f.low(v))) v--;
    const verb = f.low(v);
    const hooked = /^(hooked|hooking|hitched|harnessed|hitching|hook|harnessing|hitch)$/.test(verb);
    const ran = /^(ran|running|run|took|taking|take|had|skied|drove|driving)$/.test(verb);
    if (!hooked && !ran) continue;
    const outing = f.m.of('outing').some((o) => !f.strongBetween(o.from, d.from));
    if (!hooked && !outing && !(ran && /^(ran|running|run|drove|driving)$/.test(verb) && wholeTeamTold(f, d))) continue;
    f.add({
      kind: 'hitch',
      dogs: d.dogs,
      ...said(f.assertion(d.from, d.to)),
      span: f.span([v, d.to]),
      rule: '<verb of hooking up> <dogs>',
    });
    f.claim(v, d.to);
  }
}

/** "ran Fern and Moss (today)": the verb takes the dogs as its object. */
function wholeTeamTold(f: Frame, d: DogPhrase): boolean {
  const next = f.low(d.to);
  return (
    d.dogs.length > 0 &&
    !f.dogs.some((x) => x.to === d.from - 1) &&
    (next === '' ||
      /^([.,;]|today|tonight|this|on|for|in|and|out|up|together|around|over|down|a|with|yesterday|tomorrow)$/.test(
        next,
      ))
  );
}

/** "Krill in for Ask": takes the other's place where it is known. */
function readReplacing(f: Frame, list: readonly Assignment[]): void {
  for (const r of f.m.of('in-for')) {
    const who = f.lastDogs(r.from);
    const whom = f.dogFrom(r.to) ?? f.dogs.find((d) => d.from >= r.from && d.to <= r.to);
    if (!who || !whom || !who.dogs.length || f.strongBetween(who.to, r.from)) continue;
    // "took Storm out and put Lark in her spot": hers is the one before
    const whose =
      whom.kind === 'pronoun' && whom.dogs.join() === who.dogs.join()
        ? f.dogs
            .filter(
              (d) =>
                d.to <= who.from &&
                d.kind === 'names' &&
                d.dogs.length === 1 &&
                f.roster.sexOf(d.dogs[0] as string) === whom.value,
            )
            .at(-1)?.dogs
        : whom.dogs;
    if (!whose?.length) continue;
    if (list.some((a) => a.dogs.some((x) => who.dogs.includes(x)))) continue;
    if (
      f.assertion(r.from, r.to) === 'planned' ||
      f.entries.some((e) => e.kind === 'hitch' && e.dogs.some((x) => who.dogs.includes(x)))
    )
      continue;
    const place = f.roster.lineup.find((l) => whose.includes(l.dog) && l.position);
    if (!place?.position || who.dogs.some((x) => whose.includes(x))) continue;
    f.add({
      kind: 'move',
      dogs: who.dogs,
      position: place.position,
      ...said(f.assertion(r.from, r.to)),
      span: f.span([who.from, whom.to]),
      rule: '<dog> in for <dog>',
      doubt: 'some',
      because: 'the place comes from the line-up, it was not said',
    });
    f.claim(r.from, r.to);
  }
}
