/** Numbers with a unit: "22 miles", "half a pound", "a foot of fresh", "nine k an hour", "5 feet 2 inches", "3-5 km". */
import { HYPHENS } from '../words/numbers.ts';
import { COUNTED } from '../words/times.ts';
import { FILLERS, UNIT_FORMS, UNITS, type UnitForm } from '../words/units.ts';
import { type NumberReading, numberAt } from './numbers.ts';
import { tidy } from './quantity-cardinals.ts';
import { type Cursor, inName, type Quantity, type Rule } from './quantity-shape.ts';
import type { Token } from './tokens.ts';

/** A unit read from tokens up to `to`. */
export interface UnitReading {
  form: UnitForm;
  to: number;
}

const isArticle = (low: string | undefined): boolean => low === 'a' || low === 'an';

/** The unit form whose words stand at `k`. */
export function formAt(t: readonly Token[], k: number): UnitReading | undefined {
  const forms = UNIT_FORMS.get(t[k]?.low ?? '');
  if (!forms) return undefined;
  for (const form of forms)
    if (form.rest.every((word, n) => t[k + 1 + n]?.low === word)) return { form, to: k + 1 + form.rest.length };
  return undefined;
}

const OPENING: Record<string, string> = { '(': ')', '<': '>', '[': ']' };

/** The unit after a number that ends at `k`: over a hyphen, fillers ("ten more miles"), "of an" ("quarter of an hour"), brackets. */
export function unitAfter(t: readonly Token[], k: number, n: NumberReading): UnitReading | undefined {
  let j = k;
  if (t[j] && HYPHENS.has(t[j]?.low ?? '') && !t[j]?.gap && !t[j + 1]?.gap) j++;
  const closing = OPENING[t[j]?.low ?? ''];
  if (closing) {
    const inner = formAt(t, j + 1);
    return inner && t[inner.to]?.low === closing ? { form: inner.form, to: inner.to + 1 } : undefined;
  }
  if (!n.whole) {
    // "half a pound", "quarter of an hour", "one and three quarters of hour"
    if (t[j]?.low === 'of') j++;
    if (isArticle(t[j]?.low) || (t[j]?.low === 'the' && t[j - 1]?.low === 'of')) j++;
  }
  for (let fillers = 0; fillers < 2 && FILLERS.has(t[j]?.low ?? ''); fillers++) j++;
  if (t[j]?.low === 'or' && t[j + 1]?.low === 'so') j += 2;
  const unit = formAt(t, j);
  if (!unit || !allowed(t, unit, n, j === k)) return undefined;
  // "20 m break": before a rest the m is minutes
  if (unit.form.unit === 'm' && unit.form.figures && RESTS.has(t[unit.to]?.low ?? ''))
    return { form: MINUTE, to: unit.to };
  return unit;
}
const RESTS: ReadonlySet<string> = new Set('break stop rest nap pause wait snack halt'.split(' '));
const MINUTE = UNIT_FORMS.get('min')?.[0] as UnitForm;

/** Is the word used as a unit here? Letters need figures right before them, and "in" must end what is said of it. */
function allowed(t: readonly Token[], unit: UnitReading, n: NumberReading, direct: boolean): boolean {
  const next = t[unit.to];
  if (unit.form.figures) {
    if (n.spelled || !direct || inName(t, unit.to - 2)) return false;
    if (next && !next.gap && next.kind === 'number') return false; // "m212" is a name
    if (t[unit.to - 1]?.low === 'in')
      return IN_AS_INCH.has(next?.low ?? '') || !next || (next.kind === 'mark' && next.low !== '/');
  }
  // "BCS 3.5 HR 88": a heart rate's label, where it can't be hours and minutes
  if (t[unit.to - 1]?.low === 'hr' && next?.kind === 'number' && (!n.whole || n.value > 24 || Number(next.low) > 59))
    return false;
  if (t[unit.to - 1]?.low === 'yard' && COUNTED.has(next?.low ?? '')) return false; // "two yard dogs"
  return true;
}

/** What follows "in" when it means inches. */
const IN_AS_INCH: ReadonlySet<string> = new Set('of deep fresh new thick long wide powder snow slush'.split(' '));
/** Words that make feet a length. */
const LENGTH_AFTER: ReadonlySet<string> = new Set(
  'of deep high long wide away from above below down up off back behind ahead thick tall short apart to drift drifts loop'.split(
    ' ',
  ),
);
/** Words that make feet a dog's. */
const DOGS_OWN: ReadonlySet<string> = new Set('all his her their its both the my dogs'.split(' '));

/** Is a doubtful word (foot, yard, second) likely no unit here? */
function doubted(c: Cursor, from: number, unit: UnitReading, value: number): boolean {
  if (!unit.form.doubtful) return false;
  const next = c.low(unit.to);
  if (unit.form.unit === 'ft') return value <= 4 && !LENGTH_AFTER.has(next);
  if (isArticle(c.low(from))) return next !== 'of';
  return false;
}

/** "all four feet": a count of the dog's feet, not a length. */
const ownFeet = (c: Cursor, unit: UnitReading, value: number): boolean =>
  unit.form.unit === 'ft' && value <= 4 && DOGS_OWN.has(c.low(c.i - 1)) && !LENGTH_AFTER.has(c.low(unit.to));

/** Makes the quantity; durations are told in minutes. */
export function withUnit(
  c: Cursor,
  from: number,
  value: number,
  unit: UnitReading,
  more: Partial<Quantity> = {},
): Quantity {
  const { form } = unit;
  const weak = doubted(c, from, unit, value) ? { weak: true } : {};
  if (form.dimension === 'duration')
    return c.make(from, unit.to, tidy(value * form.factor), 'duration', {
      unit: 'min',
      said: form.unit,
      ...weak,
      ...more,
    });
  return c.make(from, unit.to, value, form.dimension, { unit: form.unit, ...weak, ...more });
}

/** A smaller part of the same dimension right behind: "5 feet and 2 inches", "2 lb 4 oz", "one hour and fifteen seconds". */
function smaller(
  c: Cursor,
  q: Quantity,
  unit: UnitReading,
  first: UnitReading,
): { q: Quantity; unit: UnitReading } | undefined {
  const t = c.tokens;
  let j = q.to;
  if (c.low(j) === 'and') j++;
  const n = numberAt(t, j);
  if (!n || n.signed) return undefined;
  const next = unitAfter(t, n.to, n);
  if (!next || next.form.dimension !== unit.form.dimension || next.form.factor >= unit.form.factor) return undefined;
  if (next.form.dimension === 'number' || next.form.dimension === 'speed') return undefined;
  const share = next.form.dimension === 'duration' ? next.form.factor : next.form.factor / first.form.factor;
  const value = tidy(q.value + n.value * share);
  return {
    q: { ...c.make(q.from, next.to, value, q.dimension), unit: q.unit, said: q.said, spelled: q.spelled } as Quantity,
    unit: next,
  };
}

/** "a mile and a half", "an hour and a quarter", "one hour and half": a fraction of the unit said before. */
function fractionBehind(c: Cursor, q: Quantity, unit: UnitReading): Quantity | undefined {
  if (c.low(q.to) !== 'and' && c.low(q.to) !== 'n') return undefined;
  const n = numberAt(c.tokens, q.to + 1);
  if (!n?.part || n.ratio || n.value >= 1) return undefined;
  if (unitAfter(c.tokens, n.to, n)) return undefined; // "a mile and half an hour"
  const share = unit.form.dimension === 'duration' ? unit.form.factor : 1;
  return {
    ...c.make(q.from, n.to, tidy(q.value + n.value * share), q.dimension),
    unit: q.unit,
    said: q.said,
    spelled: true,
  } as Quantity;
}

/** Everything that may follow the first unit. */
export function completed(c: Cursor, first: Quantity, unit: UnitReading): Quantity {
  const fraction = fractionBehind(c, first, unit);
  if (fraction) return fraction;
  let q = first;
  let last = unit;
  for (;;) {
    const more = smaller(c, q, last, unit);
    if (!more) return clean(q);
    q = more.q;
    last = more.unit;
  }
}

/** Without fields that hold nothing. */
const clean = (q: Quantity): Quantity => {
  const out = { ...q };
  if (out.said === undefined) delete out.said;
  if (out.spelled === undefined) delete out.spelled;
  return out;
};

/** A number and its unit. */
export const numberUnit: Rule = {
  name: '<number> <unit>',
  read(c) {
    const n = c.number;
    if (!n) return undefined;
    const unit = unitAfter(c.tokens, n.to, n);
    if (!unit) return undefined;
    if (ownFeet(c, unit, n.value)) return undefined;
    // "threw up x2 km 41", "at the cabin 1205 mile 14": the mark's word belongs to the number behind it
    const mark = /^(mile|km|k|mi|kilometer|kilometre)$/.test(c.low(unit.to - 1))
      ? numberAt(c.tokens, unit.to)
      : undefined;
    const timed = /:/.test(c.low(unit.to)) || c.low(unit.to + 1) === 'h';
    if (mark && !timed && !mark.signed && !unitAfter(c.tokens, mark.to, mark)) return undefined;
    if (c.low(n.from - 1) === 'x' && !c.tokens[n.from]?.gap) return undefined;
    // "40 l side": left, not litres
    if (
      unit.form.unit === 'l' &&
      /^(side|wrist|shoulder|front|hind|foot|knee|hip|hock|elbow|triceps|web|pad|lead|swing|team|wheel)$/.test(
        c.low(unit.to),
      )
    )
      return undefined;
    // "fourteen miles an hour and ten minutes": a length and a time
    if (
      unit.form.dimension === 'speed' &&
      /^(miles|kilometers|kilometres|km|mi)$/.test(c.low(n.to)) &&
      /^(an|one)$/.test(c.low(n.to + 1)) &&
      c.low(unit.to) === 'and'
    ) {
      const rest = numberAt(c.tokens, unit.to + 1);
      if (rest && (rest.part || unitAfter(c.tokens, rest.to, rest)?.form.dimension === 'duration'))
        return c.make(n.from, n.to + 1, n.value, 'distance', {
          unit: /^m/.test(c.low(n.to)) ? 'mi' : 'km',
          ...(n.spelled ? { spelled: true } : {}),
        });
    }
    if (parts(n, unit)) return firstOfPair(c, n);
    const spelled = n.spelled ? { spelled: true } : {};
    return completed(c, withUnit(c, n.from, n.value, unit, spelled), unit);
  },
};

/** "mile nine twenty minute stop", "mile ten forty pounds": the unit belongs to the second number alone. */
function parts(n: NumberReading, unit: UnitReading): boolean {
  if (!n.pair) return false;
  return unit.form.unit === 'min' || (n.pair.first >= 10 && unit.form.dimension !== 'duration');
}

/** The first of two numbers said in a row, alone. */
export function firstOfPair(c: Cursor, n: NumberReading): Quantity | undefined {
  if (!n.pair) return undefined;
  let to = n.pair.at;
  if (HYPHENS.has(c.low(to - 1))) to--;
  return c.make(n.from, to, n.pair.first, 'number', { spelled: true });
}

/** "an hour", "a quart", "another mile", "a whole litre": one of the unit. */
export const articleUnit: Rule = {
  name: 'a <unit>',
  starts: 'words',
  read(c) {
    const low = c.low(c.i);
    if (!isArticle(low) && low !== 'another') return undefined;
    let j = c.i + 1;
    for (let fillers = 0; fillers < 2 && FILLERS.has(c.low(j)); fillers++) j++;
    const unit = formAt(c.tokens, j);
    if (!unit) return undefined;
    if (!unit.form.article && !ARTICLE_SHORT.has(unit.form.unit)) return undefined;
    if (unit.form.dimension === 'speed') return undefined;
    // "a foot check", "a yard": only a length where its use says so ("a foot of fresh")
    if (unit.form.dimension === 'distance' && doubted(c, c.i, unit, 1)) return undefined;
    if (unit.form.unit === 'piece' && c.low(unit.to) !== 'of') return undefined; // "two a piece" is for each
    const fleeting = unit.form.dimension === 'duration' && (unit.form.factor <= 1 || unit.form.factor >= 1440);
    return completed(c, withUnit(c, c.i, 1, unit, { spelled: true, ...(fleeting && { weak: true }) }), unit);
  },
};
/** "mile and a half", "cup and a half each": the article left out. */
export const unitAndPart: Rule = {
  name: '<unit> and a half',
  starts: 'words',
  read(c) {
    if (c.low(c.i + 1) !== 'and' && c.low(c.i + 1) !== 'n') return undefined;
    const unit = formAt(c.tokens, c.i);
    if (!unit?.form.article || unit.to !== c.i + 1 || c.low(c.i).endsWith('s')) return undefined;
    const one = withUnit(c, c.i, 1, unit, { spelled: true });
    const part = fractionBehind(c, one, unit);
    if (part || unit.form.unit !== 'h' || c.low(c.i) !== 'hour') return part;
    // "hour and forty": the article and the unit of the minutes left out
    const n = numberAt(c.tokens, c.i + 2);
    if (
      !n?.whole ||
      n.signed ||
      n.value < 5 ||
      n.value > 59 ||
      /^(an|one|half|per|a|the|every|each|last|first)$/.test(c.low(c.i - 1))
    )
      return undefined;
    const after = unitAfter(c.tokens, n.to, n);
    if (after && after.form.unit !== 'min') return undefined;
    return c.make(c.i, after ? after.to : n.to, 60 + n.value, 'duration', { unit: 'min', said: 'h', spelled: true });
  },
};

/** Abbreviations that "a" may stand before: "a kg", "a lb". Others are letters of something else. */
const ARTICLE_SHORT: ReadonlySet<string> = new Set(['kg', 'lb']);

/** "thirteen an hour": a speed whose unit was left out. */
export const rateAlone: Rule = {
  name: '<number> an hour',
  read(c) {
    const n = c.number;
    if (!n) return undefined;
    const per = c.low(n.to);
    if ((per !== 'an' && per !== 'per') || c.low(n.to + 1) !== 'hour') return undefined;
    return c.make(n.from, n.to + 2, n.value, 'speed', n.spelled ? { spelled: true } : {});
  },
};

/** The canonical unit's size, for sums across units. */
export const factorOf = (unit: string): number | undefined => UNITS.get(unit)?.factor;
