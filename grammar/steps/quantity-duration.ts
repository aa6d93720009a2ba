/** Lengths of time that go over hours and minutes: "2h50", "4 h 50", "three hours twenty", "an hour and a half". */
import { COUNTED, TIME_BEFORE } from '../words/times.ts';
import { SIDES_OF_ZERO } from '../words/units.ts';
import { numberAt } from './numbers.ts';
import { tidy } from './quantity-cardinals.ts';
import { clock, meridiemAt } from './quantity-clock.ts';
import type { Cursor, Quantity, Rule } from './quantity-shape.ts';
import { articleUnit, formAt, numberUnit, unitAfter } from './quantity-units.ts';

/** "2h50", "4h15m": hours and minutes run together. After "at" it is a time of day. */
export const compactHours: Rule = {
  name: '<hours>h<minutes>',
  starts: 'figures',
  read(c) {
    const t = c.tokens;
    const [h, letter, m] = [t[c.i], t[c.i + 1], t[c.i + 2]];
    if (h?.kind !== 'number' || !/^\d{1,3}$/.test(h.low)) return undefined;
    if (letter?.low !== 'h' || m?.kind !== 'number' || !/^[0-5]\d$/.test(m.low)) return undefined;
    const [hours, minutes] = [Number(h.low), Number(m.low)];
    const half = meridiemAt(c, c.i + 3);
    if (hours < 25 && (half || TIME_BEFORE.has(c.low(c.i - 1)))) return clock(c, c.i, hours, minutes, c.i + 3, false);
    if (letter.gap || m.gap) return undefined; // "4 h 50" is read with the hours said in words
    const time = hours < 24 ? { clock: { hour: hours, minute: minutes } } : {};
    const unit = formAt(t, c.i + 3);
    const to = unit?.form.unit === 'min' || (c.low(c.i + 3) === 'm' && !t[c.i + 3]?.gap) ? c.i + 4 : c.i + 3;
    return c.make(c.i, to, hours * 60 + minutes, 'duration', { unit: 'min', said: 'h', ...time });
  },
};

/** Minutes said behind hours without their unit: "three hours twenty", "an hour and ten", "4 h 50", "two hours oh five". */
function bareMinutes(c: Cursor, q: Quantity): Quantity | undefined {
  let j = q.to;
  const and = c.low(j) === 'and';
  if (and) j++;
  const oh = c.low(j) === 'oh';
  if (oh) j++;
  const n = numberAt(c.tokens, j);
  if (!n?.whole || n.signed || n.pair || n.value > 59) return undefined;
  const ends = c.low(n.to) === '' || /^[.,;]$/.test(c.low(n.to));
  if (oh ? n.value > 9 : n.value < 10 && !ends) return undefined; // "two hours six dogs" are two facts
  if (unitAfter(c.tokens, n.to, n) || SIDES_OF_ZERO.has(c.low(n.to)) || COUNTED.has(c.low(n.to))) return undefined;
  return c.make(q.from, n.to, tidy(q.value + n.value), 'duration', {
    unit: 'min',
    said: 'h',
    ...((q.spelled || n.spelled) && { spelled: true }),
  });
}

/** A number of hours, and what is left of the hour. */
export const hoursAndMinutes: Rule = {
  name: '<hours> [and] <minutes>',
  read(c) {
    const q = numberUnit.read(c) ?? articleUnit.read(c);
    const hour = c.number?.value ?? Number.NaN;
    // "at 15h" is a time of day
    if (q?.said === 'h' && c.low(q.to - 1) === 'h' && c.low(c.i - 1) === 'at' && Number.isInteger(hour) && hour < 25)
      return c.make(q.from, q.to, (hour % 24) * 60, 'clock', { clock: { hour, minute: 0 } });
    if (q?.dimension !== 'duration' || q.said !== 'h') return undefined;
    // only when the hours were the last thing said
    const last = formAt(c.tokens, q.to - 1);
    if (last?.form.unit !== 'h') return q;
    return bareMinutes(c, q) ?? q;
  },
};
