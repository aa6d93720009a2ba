/** Reader "care", with what: the ointment, wrap or medicine that was named. */
import type { Frame, Mention } from '../steps/frame.ts';
import { type Act, phrase } from './care-acts.ts';

const OINTMENT_WORD =
  /^(pink|green|purple|zinc|honey|foot|paw|petroleum|udder|antibiotic|antiseptic|blue|white|yellow|black|cooling|arnica|wax|pad|tea|tree|vitamin|calendula|wound|lanolin|salmon|coconut|aloe|silver|magic|home|made|homemade|bootie|healing|skin|diaper|rash|barrier|beeswax|pine|spruce|menthol|ichthyol|good|thick|warming|anti|inflammatory|muscle|joint)$/;

/** What it was done with, as said. */
export function itemOf(f: Frame, m: Mention, act: Act, words: string): string | undefined {
  const text = (a: number, b: number) =>
    f.text.slice((f.tokens[a] as { start: number }).start, (f.tokens[b - 1] as { end: number }).end).toLowerCase();
  if (act === 'ointment') {
    if (
      /^(smear|dab|smeared|dabbed|slather|slathered|rubbed in|smeared on|dabbed on|salved|balmed|creamed|greased|waxed|anointed|gooped|oiled|slicked)$/.test(
        words,
      )
    ) {
      const next = f.m.of('act').find((a) => a.value === 'ointment' && a.from >= m.to && a.from - m.to <= 4);
      if (!next) return undefined;
      f.claim(next.from, next.to);
      return itemOf(f, next, act, phrase(f, next));
    }
    let from = m.from;
    while (
      from > 0 &&
      OINTMENT_WORD.test(f.low(from - 1)) &&
      !f.dogAt(from - 1) &&
      !(f.m.at('sign', from - 1) && /^(bit|is|'s|a)$/.test(f.low(from - 2)))
    )
      from--;
    let to = m.to;
    while (/^(cream|salve|ointment|balm|oxide|jelly|wax|paste|goo|stuff|lotion)$/.test(f.low(to))) to++;
    f.claim(from, to);
    return text(from, to);
  }
  if (act === 'medicated') {
    if (/^(medicated|wormed|dewormed|treated|dosed|injected|vaccinated|worming|deworming)$/.test(words))
      return undefined;
    f.claim(m.from, m.to);
    return text(medFrom(f, m), m.to);
  }
  if (/snow/.test(words)) return 'snow';
  if (/^(iced it|ice pack|icing it|iced|ice|ice bath|cold pack|iced down)$/.test(words))
    return act === 'cooled' ? (/pack|bath/.test(words) ? text(m.from, m.to) : 'ice') : undefined;
  if (/^(vet wrap|vetwrap|gauze|tape|glue|super glue|skin glue)$/.test(words)) return text(m.from, m.to);
  for (let k = m.to; k < Math.min(f.tokens.length, m.to + 12); k++) {
    if (f.isStrong(k) || f.low(k) === ',') break;
    if (!/^(with|w|in)$/.test(f.low(k))) continue;
    let a = k + 1;
    if (f.low(a) === '/') a++;
    while (/^(some|the|a|our|fresh|more|that)$/.test(f.low(a))) a++;
    if (f.dogAt(a) || f.siteAt(a) || !f.tokens[a]) break;
    const b = nounEnd(f, a);
    if (b === a || !ITEM_HEAD.test(f.low(b - 1))) break;
    f.claim(a, b);
    return text(a, b);
  }
  return undefined;
}

/** "worm pill", "anti-inflam", "kaolin paste": with a describing word. */
const medFrom = (f: Frame, m: Mention) =>
  /^(worm|kaolin|probiotic|gut|pain|cough|eye|ear|anti)$/.test(f.low(m.from - 1)) ? m.from - 1 : m.from;

const ITEM_HEAD =
  /^(snow|ice|gauze|saline|liniment|iodine|betadine|peroxide|water|soap|tape|wrap|vetwrap|bandage|chlorhexidine|chlorhex|balm|salve|cream|oil|ointment|salts|solution|cloth|towel|neoprene|pads?|blanket|jacket|coat|wipes?|rub|gel|antiseptic|alcohol|padding|cotton|compress|sleeve|disinfectant|foil|lotion|heat|arnica|boot|bootie|stuff|packs?|bottle|warmers?)$/;

function nounEnd(f: Frame, a: number): number {
  let k = a;
  while (k < f.tokens.length && k - a < 3) {
    if (ITEM_HEAD.test(f.low(k))) {
      let e = k + 1;
      while (ITEM_HEAD.test(f.low(e))) e++;
      return e;
    }
    if ((f.tokens[k] as { kind: string }).kind !== 'word') break;
    k++;
  }
  return a;
}
