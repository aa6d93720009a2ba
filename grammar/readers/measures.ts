/** Reader "measure": weight, body condition, temperature and heart rate of a dog. */
import type { EntryOf } from '../entry.ts';
import type { DogPhrase, Frame, Quantity } from '../steps/frame.ts';
import { doubted, said } from './places.ts';

type What = EntryOf<'measure'>['quantity'];

const LIMITS: Record<What, readonly [number, number]> = {
  weight: [4, 160],
  'body-condition': [1, 9],
  temperature: [34, 112],
  'heart-rate': [25, 320],
};

/** Reads measures; marks the quantities it used. */
export function readMeasures(f: Frame, used: Set<Quantity>): void {
  let mode: What[] = [];
  let modeAt = -99;
  let list: Quantity[] = [];
  const told: What[] = [];
  for (const r of readRespectively(f, used)) used.add(r);
  if (weightsListed(f)) {
    mode = ['weight'];
    modeAt = 0;
  }
  for (const q of f.quantities) {
    if (used.has(q) || soMany(f, q) || ofScale(f, q)) continue;
    const here = keyword(f, q, told);
    const named = here.what;
    if (q.ratio && bodyScore(f, q, named)) {
      const dog = dogOf(f, q, here.from);
      if (dog) add(f, 'body-condition', q.ratio[0], dog, here.from ?? q.from, q, used);
      mode = ['body-condition'];
      modeAt = q.to;
      continue;
    }
    let what = named ?? unitWhat(f, q);
    const slash = f.low(q.from - 1) === '/' && list.length > 0 && list.at(-1)?.to === q.from - 1;
    if (!what && slash && mode.length > 1) what = mode[1];
    const pair = headPair(f, q);
    if (pair.length > 1) {
      mode = pair;
      what = slash ? mode[1] : mode[0];
    }
    // "Weighed a few tonight." and then dogs with numbers.
    if (!what && !mode.length) {
      const weighed = f.m
        .of('quantity')
        .filter(
          (x) =>
            x.to <= q.from && x.value === 'weight' && /^(weigh|on|scale|wts?$|weights?$|tipp?)/.test(f.low(x.from)),
        )
        .at(-1);
      // "We tried the thermometer on two of them, Clover came out at 102.1 …"
      const temped = f.m
        .of('quantity')
        .filter(
          (x) =>
            x.to <= q.from &&
            q.from - x.to < 24 &&
            x.value === 'temperature' &&
            /^(thermometer|temps|temped|temping|temperatures|took)$/.test(f.low(x.from)),
        )
        .at(-1);
      const warm = (q.value >= 97 && q.value <= 108) || (q.value >= 36.5 && q.value <= 42.5);
      if (weighed || (temped && warm)) {
        mode = [weighed ? 'weight' : 'temperature'];
        modeAt = q.from;
      }
    }
    // "Mallow 44.5, body condition 4"
    if (
      !what &&
      q.dimension === 'number' &&
      !q.weak &&
      f.dogs.some((d) => d.to === q.from && d.kind === 'names') &&
      /^(,|and|;|\/)$/.test(f.low(q.to)) &&
      f.m.from('quantity', q.to + 1)?.value === 'body-condition'
    )
      what = 'weight';
    const carried =
      !what &&
      mode.length > 0 &&
      q.from - modeAt < 40 &&
      (q.dimension === 'number' || q.dimension === 'weight') &&
      !q.weak &&
      pairStands(f, q);
    if (carried) what = mode[slash ? mode.length - 1 : 0];
    // "Polka 19.9, body condition four. Waffle 26.2": back to the measure told before, where the number can only be that
    if (what && carried && !stands(f, q, what, false)) what = told.find((w) => stands(f, q, w, false)) ?? what;
    if (!what || used.has(q)) continue;
    if (!stands(f, q, what, named !== undefined)) continue;
    if (!told.includes(what)) told.push(what);
    const dog = dogOf(f, q, here.from);
    if (!dog) continue;
    add(f, what, q.value, dog, here.from ?? q.from, q, used);
    if (mode.length < 2 || !mode.includes(what)) mode = [what];
    modeAt = q.to;
    list = [...list, q];
  }
}

/** "on the nine-point chart": how far the chart goes, not what was found. */
const ofScale = (f: Frame, q: Quantity): boolean =>
  q.value === 9 && f.m.of('quantity').some((m) => m.value === 'body-condition' && m.from <= q.from && q.to < m.to);

/** "weighed four before lunch": dogs, not pounds. */
const soMany = (f: Frame, q: Quantity): boolean =>
  !q.unit &&
  q.value <= 24 &&
  /^(weighed|weighing|weigh|temped|measured)$/.test(f.low(q.from - 1)) &&
  !f.dogs.some((d) => d.to === q.from - 1) &&
  /^(of|before|after|dogs|today|tonight|this|in|more|now|at|:|for)$/.test(f.low(q.to));

/** "Chisel's fifty three and a quarter, Banjo sixty one and Fable's forty two even": in the yard, numbers behind dogs are weights. */
function weightsListed(f: Frame): boolean {
  if (f.out || f.m.of('quantity').some((x) => /^(weight|temperature|heart-rate|body-condition)$/.test(x.value)))
    return false;
  const [lo, hi] = f.context.units === 'metric' ? [12, 45] : [28, 95];
  const fits = f.quantities.filter((q) => {
    const d = f.dogs.find(
      (x) =>
        x.kind === 'names' &&
        x.dogs.length === 1 &&
        (x.to === q.from || (x.to === q.from - 1 && /^('s|is|at|was|:|weighs)$/.test(f.low(x.to)))),
    );
    return d && q.dimension === 'number' && !q.weak && q.value >= lo && q.value <= hi;
  });
  return fits.length > 1;
}

/** "Their heart rates were 96, 104 and 118 respectively": so many numbers for so many dogs told before. */
function readRespectively(f: Frame, used: Set<Quantity>): Quantity[] {
  const word = f.tokens.find((t) => t.low === 'respectively');
  if (!word) return [];
  const list = f.quantities.filter(
    (q) => q.to <= word.i && f.sentence(q.from) === f.sentence(word.i) && q.dimension !== 'ordinal' && !q.weak,
  );
  const m = f.m
    .of('quantity')
    .filter((x) => x.to <= (list[0]?.from ?? 0) && f.sentence(x.from) === f.sentence(word.i))
    .at(-1);
  if (!m || list.length < 2) return [];
  const names: string[] = [];
  for (const d of f.dogs)
    if (d.to <= (list[0]?.from ?? 0) && d.kind === 'names')
      for (const x of d.dogs) if (!names.includes(x)) names.push(x);
  const dogs = names.slice(-list.length);
  const what = m.value as What;
  if (dogs.length !== list.length || !list.every((q) => stands(f, q, what, true))) return [];
  list.forEach((q, n) => {
    const phrase = {
      from: q.from,
      to: q.to,
      kind: 'names',
      dogs: [dogs[n] as string],
      possessive: false,
      negative: false,
      company: false,
      excepted: false,
    } as DogPhrase;
    add(f, what, q.value, phrase, m.from, q, used);
  });
  return list;
}

/** "wt/BCS: Sif 21.8/5": two measures in a heading. */
function headPair(f: Frame, q: Quantity): What[] {
  for (let k = 0; k < q.from; k++) {
    const a = f.m.at('quantity', k);
    const b = a && /^[/&+]$/.test(f.low(a.to)) ? f.m.from('quantity', a.to + 1) : undefined;
    if (a && b && a.from === k && !f.strongBetween(k, q.from)) return [a.value, b.value];
  }
  return [];
}

/** Words that say where a temperature was taken; "temp" behind a number may belong to the next one. */
const atTheTail = (f: Frame, m: { from: number; to: number }): boolean =>
  /^(under|rectal|rectally|up|at|back|by|on|anal|core|internal|temp|temperature|fever)$/.test(f.low(m.from)) &&
  /^([.,;!]|and|but|on|for|in|now|this|at|)$/.test(f.low(m.to));
const blood = (n: number): boolean => (n >= 35 && n <= 43.5) || (n >= 94 && n <= 111);

/** The measure's word: before the number, with no other number between, or right behind it. */
function keyword(f: Frame, q: Quantity, told: readonly What[]): { what?: What; from?: number } {
  for (let k = q.to; k < q.to + 4 && k < f.tokens.length; k++) {
    const m = f.m.from('quantity', k);
    if (m && (k === q.to || /^(on|bpm|beats|in|for|body|out|of)$/.test(f.low(q.to)))) {
      // "down two, body condition three": the word belongs to the number behind it.
      const own = f.low(m.to) !== ',' && f.quantities.some((x) => x.from >= m.to && x.from - m.to <= 2);
      if (!own && (m.value === 'body-condition' || m.value === 'heart-rate')) return { what: m.value, from: q.from };
      // "38.4 under the tail", "101.9 rectal"
      if (!own && m.value === 'temperature' && m.from === q.to && blood(q.value) && atTheTail(f, m))
        return { what: m.value, from: q.from };
      // "27 kilos on the scale", "39.1 of temperature"
      if (/^(on|of)$/.test(f.low(q.to)) && m.from <= q.to + 1) return { what: m.value, from: q.from };
    }
    if (!/^(on|in|for|the|a|body|out|of|beats)$/.test(f.low(k))) break;
  }
  for (let k = q.from - 1; k >= 0 && q.from - k < 12 && !f.isStrong(k); k--) {
    const m = f.m.at('quantity', k);
    if (m) {
      const words = f.tokens
        .slice(m.from, m.to)
        .map((t) => t.low)
        .join(' ');
      if (
        words === 't' ||
        words === 'heart' ||
        words === 'condition' ||
        words === 'way' ||
        words === 'score' ||
        words === 'scored'
      ) {
        if (words === 't' && !(m.to === q.from || f.low(m.to) === ':' || f.low(m.to) === '=')) return {};
        if (
          words === 'way' ||
          (words === 'heart' && m.to !== q.from && !/^(at|is|'s|was|running|going|of|:|beating)$/.test(f.low(m.to)))
        )
          continue;
      }
      // "temperature was 103.4 this morning, down to 101.9 tonight"
      if (
        /^(up to|down to)$/.test(words) &&
        (told.includes('temperature') ||
          f.m
            .of('quantity')
            .some((x) => x.value === 'temperature' && x.to <= m.from && !f.strongBetween(x.from, m.from))) &&
        ((q.value > 96 && q.value < 110) || (q.value > 36 && q.value < 43))
      )
        return { what: 'temperature', from: m.from };
      if (/^(up to|down to)$/.test(words) && !(q.dimension === 'number' || q.dimension === 'weight')) return {};
      if (/^(up to|down to)$/.test(words) && !weightTold(f, q)) return {};
      return { what: m.value, from: m.from };
    }
    const other = f.quantityAt(k);
    if (other && other !== q && !other.weak) {
      // "up two pounds to 49"
      if (other.dimension === 'weight' && f.low(q.from - 1) === 'to') return { what: 'weight', from: other.from };
      return {};
    }
    if (f.low(k) === ',' && q.from - k > 3) break;
  }
  // "took her temperature at the stop, since …, and it was 39.4"
  if (/^(was|is|'s|read|reads|at|to)$/.test(f.low(q.from - 1)) && /^(it|that|came|and)$/.test(f.low(q.from - 2))) {
    const m = f.m
      .of('quantity')
      .filter((x) => x.to <= q.from && !f.strongBetween(x.from, q.from))
      .at(-1);
    if (m && !f.quantities.some((x) => x.from >= m.to && x.to <= q.from && !x.weak))
      return { what: m.value, from: m.from };
  }
  return {};
}

/** "down to twenty-one" is a weight only where weights are told. */
const weightTold = (f: Frame, q: Quantity) =>
  q.dimension === 'weight' ||
  f.m.of('quantity').some((m) => m.value === 'weight' && /^(weigh|wt|weight|scale|wgt)/.test(f.low(m.from))) ||
  f.quantities.some((x) => x.dimension === 'weight');

/** A unit that only a measure has: "27.4 kilos" of a dog, "118 bpm". */
function unitWhat(f: Frame, q: Quantity): What | undefined {
  const next = `${f.low(q.to)} ${f.low(q.to + 1)}`;
  if (/^(bpm|beats)/.test(next) || q.unit === 'bpm') return 'heart-rate';
  // "Ivy 45.2, up a pound"
  if (
    q.dimension === 'number' &&
    !q.weak &&
    (!f.out || (/^(up|down)$/.test(f.low(q.to)) && f.low(q.to + 1) === 'from')) &&
    f.dogs.some((d) => d.to === q.from && d.kind === 'names') &&
    /^,?(up|down|same|steady|no change)$/.test(f.low(q.to) === ',' ? f.low(q.to + 1) : f.low(q.to))
  )
    return 'weight';
  // No air is so warm where sleds run: 99 to 108 F, 37 to 42.5 C, with a dog in the sentence.
  const body = q.unit === 'C' ? q.value >= 37 && q.value <= 42.5 : q.unit === 'F' && q.value >= 99 && q.value <= 108;
  if (q.dimension === 'temperature' && body && f.dogs.some((d) => f.sentence(d.from) === f.sentence(q.from)))
    return 'temperature';
  if (
    q.dimension === 'weight' &&
    (q.unit === 'lb' || q.unit === 'kg') &&
    (/^(is|'s|at|was|are|to|now|up|down|,|:)$/.test(f.low(q.from - 1)) ||
      (f.dogs.some((d) => d.to === q.from) && q.value > 12)) &&
    f.dogs.some((d) => d.to <= q.from && q.from - d.to <= 5)
  )
    return 'weight';
  return undefined;
}

const bodyScore = (f: Frame, q: Quantity, what: What | undefined) =>
  q.ratio?.[1] === 9 && (what === 'body-condition' || f.dogs.length > 0);

/** In a list of weights: a dog right before the number. */
function pairStands(f: Frame, q: Quantity): boolean {
  const d = f.dogs.filter((x) => x.to <= q.from && !x.company).at(-1);
  if (f.low(q.from - 1) === '/') return true;
  if (/^(for|on)$/.test(f.low(q.to)) && f.dogFrom(q.to + 1)) return true;
  if (!d || f.strongBetween(d.to, q.from)) return false;
  if (f.low(d.to) === 'who' && q.from - d.to < 7) return true;
  for (let k = d.to; k < q.from; k++)
    if (
      f.m.at('sign', k)?.value !== 'thin' &&
      !/^(is|'s|was|at|a|about|now|only|:|-|solid|even|i|m|'m|calling|an|down|up|to|just|maybe|around|came|in|,|weighs|weighed|i'd|say|got|same|still|'d|make|makes|made|have|has|had|put|puts|read|reads|scaled|tipped|out|on|the|dot|well|with|then|flat|hit|hits|call|him|her)$/.test(
        f.low(k),
      )
    )
      return false;
  return !/^(mile|miles|km|k|dogs|minutes|feet|of|hours|bites|sips)$/.test(f.low(q.to));
}

function stands(_f: Frame, q: Quantity, what: What, named: boolean): boolean {
  if (q.weak && what !== 'body-condition') return false;
  const [lo, hi] = LIMITS[what];
  const value = q.value;
  if (!Number.isFinite(value) || value < lo || value > hi) return false;
  if (
    q.dimension === 'distance' ||
    q.dimension === 'duration' ||
    q.dimension === 'speed' ||
    q.dimension === 'volume' ||
    q.dimension === 'ordinal'
  )
    return false;
  if (q.dimension === 'clock' && !(named && what === 'temperature')) return false;
  if (what === 'weight' && q.dimension === 'weight' && q.unit !== 'lb' && q.unit !== 'kg') return false;
  if (what === 'weight' && q.dimension === 'temperature') return false;
  if (what === 'body-condition' && (q.dimension !== 'number' || q.unit)) return false;
  if (what === 'heart-rate' && q.dimension !== 'number') return false;
  if (what === 'temperature') {
    if (q.dimension === 'weight' || q.value < 0) return false;
    // A temperature that no dog has is the air's.
    if (!blood(value) || q.bySign) return false;
  }
  if (q.dimension === 'weight' && what !== 'weight') return false;
  return true;
}

/** Whose measure: the dog between the word and the number, before the word, or spoken of before. */
function dogOf(f: Frame, q: Quantity, _from: number | undefined): DogPhrase | undefined {
  const forDog = /^(for|on)$/.test(f.low(q.to)) ? f.dogFrom(q.to + 1) : undefined;
  if (forDog?.dogs.length) return forDog;
  // "38.4 under the tail, Ivy"
  const taken = f.m.from('quantity', q.to)?.to ?? q.to;
  const late = /^(,|for|on|-|:)$/.test(f.low(taken)) && taken > q.to ? f.dogFrom(taken + 1) : undefined;
  if (
    late?.dogs.length === 1 &&
    !late.possessive &&
    /^([.,;]|)$/.test(f.low(late.to)) &&
    !f.dogs.some((d) => d.to <= q.from)
  )
    return late;
  const before = f.dogs.filter((d) => d.to <= q.from && !d.company && d.dogs.length && !d.excepted);
  const last = before.at(-1);
  // "Ivy and Rook both weigh 50"
  if (last) return last.dogs.length === 1 || last.kind === 'names' || last.value === 'both' ? last : undefined;
  const behind = f.dogs.find((d) => d.from >= q.to && d.from - q.to <= 3 && !f.strongBetween(q.to, d.from));
  return behind?.dogs.length === 1 ? behind : undefined;
}

function add(
  f: Frame,
  what: What,
  value: number,
  dog: DogPhrase,
  from: number,
  q: Quantity,
  used: Set<Quantity>,
): void {
  const metric = f.context.units === 'metric';
  const unit =
    what === 'weight'
      ? ((q.unit as 'lb' | 'kg' | undefined) ?? (metric ? 'kg' : 'lb'))
      : what === 'heart-rate'
        ? 'bpm'
        : what === 'temperature'
          ? ((q.unit as 'F' | 'C' | undefined) ?? (value < 60 ? 'C' : 'F'))
          : undefined;
  f.add({
    kind: 'measure',
    dogs: dog.dogs,
    quantity: what,
    value,
    ...(unit ? { unit } : {}),
    ...said(f.assertion(q.from, q.to)),
    span: f.span([Math.min(from, dog.from), q.to]),
    rule: `<dog> ${what} <n>`,
    ...doubted(dog.doubt),
  });
  f.claim(q.from, q.to);
  used.add(q);
}
