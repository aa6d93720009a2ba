/** "Storm's stool is soft, everybody else is solid", "Rook's is fine": a stool in order, where one that is not was just told. */
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { endsAt, justBefore } from './elliptic-told.ts';
import { doubted } from './places.ts';

const IN_ORDER = /^(solid|firm|normal|fine|good|ok|okay|formed|great)$/;

/** Reads it where the phrase `d` is said so of; true when it was. */
export function readStoolInOrder(f: Frame, d: DogPhrase): boolean {
  let k = d.to;
  if (/^(is|are|was|were|'s|look|looks)$/.test(f.low(k))) k++;
  // in "everybody's solid" the verb is the phrase's own ending
  else if (!d.possessive) return false;
  while (/^(all|still|nice|and|nicely|perfectly|pretty|just)$/.test(f.low(k))) k++;
  if (!IN_ORDER.test(f.low(k)) || !endsAt(f, k + 1) || f.isClaimed(d.from, k + 1)) return false;
  const last = justBefore(f, d.from);
  if (last?.kind !== 'finding' || !/stool$/.test(last.sign)) return false;
  const dogs = d.dogs.filter((x) => !last.dogs.includes(x));
  if (!dogs.length) return false;
  const span = f.span([d.from, k + 1]);
  f.add({
    kind: 'finding',
    dogs,
    sign: 'loose-stool',
    assertion: 'absent',
    span,
    rule: "<dog>'s stool is in order",
    ...doubted(d.doubt),
  });
  f.claim(d.from, k + 1);
  return true;
}
