/** Reader "ellipsis", of being in season: "Ivy might be coming in too", "Ivy's next I think", once one was told in heat. */
import type { DogPhrase, Frame } from '../steps/frame.ts';
import { before, endsAt } from './elliptic-told.ts';
import { doubted, said } from './places.ts';

const DOUBTS = /^(might|may|could|maybe|perhaps|probably|possibly|looks|seems|acts|think)$/;
const SMALL =
  /^('s|is|will|'ll|be|like|she|to|also|now|just|only|about|going|gonna|starting|i|i'd|say|that|as|if|already)$/;

/** Reads that another bitch comes in, too: needs a word that points at the one before, or the coming-in said in full. */
export function readComesIn(f: Frame, d: DogPhrase): boolean {
  if (d.kind !== 'names' || d.excepted || d.company || f.isClaimed(d.from, d.to)) return false;
  let k = d.to;
  let doubt = DOUBTS.test(f.low(d.from - 1));
  while ((DOUBTS.test(f.low(k)) || SMALL.test(f.low(k))) && k - d.to < 8) {
    if (DOUBTS.test(f.low(k))) doubt = true;
    k++;
  }
  const coming = /^(coming|come|comes|came)$/.test(f.low(k)) && f.low(k + 1) === 'in';
  if (!coming) return false;
  k += 2;
  const too = /^(too|also|next|soon)$/.test(f.low(k)) ? 1 : f.low(k) === 'as' && f.low(k + 1) === 'well' ? 2 : 0;
  if (!too) return false;
  k += too;
  if (f.low(k) === 'i' && /^(think|guess|bet|reckon)$/.test(f.low(k + 1))) {
    doubt = true;
    k += 2;
  }
  if (!endsAt(f, k)) return false;
  const last = before(f, d.from, (e) => e.kind === 'finding' && e.sign === 'in-season');
  if (last?.kind !== 'finding' || last.dogs.some((x) => d.dogs.includes(x))) return false;
  if (last.assertion && last.assertion !== 'past' && last.assertion !== 'possible') return false;
  f.add({
    kind: 'finding',
    dogs: d.dogs,
    sign: 'in-season',
    ...said(doubt || /^(soon|next)$/.test(f.low(k - 1)) ? 'possible' : 'present'),
    span: f.span([d.from, k]),
    rule: '<dog> comes in too',
    ...doubted(d.doubt),
  });
  f.claim(d.from, k);
  return true;
}
