/** "All loping but Rook, he's trotting": the one set against a group is not among it. */
import type { EntryOf } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';

type Way = EntryOf<'gait'> | EntryOf<'attitude'>;

/** Ways of going that a dog does not have at once with those of the other row. */
const WELL = /^(eager|strong|good)$/;

const differs = (a: Way, b: Way): boolean =>
  a.kind === 'gait'
    ? b.kind === 'gait' && a.gait !== b.gait
    : b.kind === 'attitude' && WELL.test(a.manner) !== WELL.test(b.manner);

/** Takes a dog told by itself behind "but", "except" or "only" out of the group told before it in the sentence. */
export function setAgainst(f: Frame, own: Way): void {
  if (!own.dogs.length || own.dogs.length > 2 || own.assertion) return;
  const at = (offset: number) => f.tokens.findIndex((t) => t.end > offset);
  const told = at(own.span?.[0] ?? 0);
  const d = f.dogs.find(
    (x) =>
      x.kind === 'names' &&
      !x.possessive &&
      x.dogs.join() === own.dogs.join() &&
      x.from <= told + 1 &&
      f.sentence(told) - f.sentence(x.from) <= 1 &&
      told - x.to < 10 &&
      (/^(but|only)$/.test(f.low(x.from - 1)) || f.m.at('except', x.from - 1)),
  );
  if (!d) return;
  const group = f.entries.findLast(
    (e): e is Way =>
      e !== own &&
      e.kind === own.kind &&
      e.dogs.length > own.dogs.length &&
      !e.assertion &&
      at(e.span?.[0] ?? 0) < d.from &&
      f.sentence(at(e.span?.[0] ?? 0)) === f.sentence(d.from),
  );
  if (group && differs(own, group)) group.dogs = group.dogs.filter((x) => !own.dogs.includes(x));
}
