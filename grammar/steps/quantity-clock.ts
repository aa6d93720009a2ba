/** Times of day: "10:40", "ten to two", "7 sharp", "six thirty a.m.", "noon"; and the time that a plain number could be. */
import { PARTS_OF_ONE } from '../words/numbers.ts';
import {
  COUNTED,
  DAY_PARTS,
  HOUR_MARKS,
  MERIDIEM_LETTERS,
  MERIDIEMS,
  MID_HOURS,
  MINUTE_SIDES,
  NAMED_HOURS,
  RANGE_BEFORE,
  TIME_BEFORE,
  TIME_MAYBE_BEFORE,
} from '../words/times.ts';
import { DEGREES, SIDES_OF_ZERO } from '../words/units.ts';
import { type NumberReading, numberAt } from './numbers.ts';
import type { Clock, Cursor, Quantity, Rule } from './quantity-shape.ts';
import { formAt, unitAfter } from './quantity-units.ts';
import type { Token } from './tokens.ts';

/** Minutes after midnight, as said. */
export function minutesOf({ hour, minute, meridiem }: Clock): number {
  const h = meridiem === 'pm' && hour < 12 ? hour + 12 : meridiem === 'am' && hour === 12 ? 0 : hour % 24;
  return h * 60 + minute;
}
const valid = (hour: number, minute: number): boolean =>
  Number.isInteger(hour) && Number.isInteger(minute) && hour >= 0 && hour <= 24 && minute >= 0 && minute < 60;

/** a.m. or p.m. written at `k`: "am", "p.m.", "a m", "p", "p . m ." as tokens come. */
export function meridiemAt(c: Cursor, k: number): { meridiem: 'am' | 'pm'; to: number } | undefined {
  const low = c.low(k);
  const whole = MERIDIEMS.get(low);
  if (whole) return { meridiem: whole, to: k + 1 };
  const letter = MERIDIEM_LETTERS.get(low);
  if (!letter) return undefined;
  let j = k + 1;
  if (c.low(j) === '.') j++;
  if (c.low(j) === 'm') {
    j++;
    return { meridiem: letter, to: c.low(j) === '.' && c.low(j - 2) === '.' ? j + 1 : j };
  }
  return c.tokens[k]?.gap ? undefined : { meridiem: letter, to: k + 1 };
}

/**
 * Part of the day said behind a time: "in the morning", "at night"; "this evening" and "tonight" only where a time is
 * due before them, for "ran eight tonight" counts dogs or miles.
 */
function dayPartAfter(c: Cursor, k: number): { meridiem: 'am' | 'pm'; to: number } | undefined {
  let j = k;
  const low = c.low(j);
  if (low === 'in' && c.low(j + 1) === 'the') j += 2;
  else if (low === 'at') j += 1;
  else if (!TIME_BEFORE.has(c.low(c.i - 1))) return undefined;
  else if (low === 'this' || low === 'tomorrow' || low === 'yesterday') j += 1;
  const part = DAY_PARTS.get(c.low(j));
  return part && (j > k || low.startsWith('ton')) ? { meridiem: part, to: j + 1 } : undefined;
}
/** Part of the day said before a time: "in the evening at eight", "tonight 815", "this afternoon at 12". */
function dayPartBefore(c: Cursor): 'am' | 'pm' | undefined {
  let j = c.i - 1;
  if (c.low(j) === 'at' || c.low(j) === 'around' || c.low(j) === 'about') j--;
  return MERIDIEMS.has(c.low(j)) ? undefined : DAY_PARTS.get(c.low(j));
}

/** The half of the day that the words around give, and where the time's words end. */
function half(c: Cursor, to: number): { meridiem?: 'am' | 'pm'; to: number } {
  let j = to;
  for (let end = markAt(c, j); end; end = markAt(c, j)) j = end;
  const written = meridiemAt(c, j) ?? dayPartAfter(c, j);
  if (written) return written;
  const before = dayPartBefore(c);
  return before ? { meridiem: before, to: j } : { to: j };
}

export function clock(c: Cursor, from: number, hour: number, minute: number, at: number, spelled: boolean): Quantity {
  const { meridiem, to } = half(c, at);
  const said: Clock = { hour, minute, ...(meridiem && { meridiem }) };
  return c.make(from, to, minutesOf(said), 'clock', { clock: said, ...(spelled && { spelled: true }) });
}

/** "noon", "midnight", "mid-day". */
export const namedHour: Rule = {
  name: 'noon | midnight',
  starts: 'words',
  read(c) {
    let name = c.low(c.i);
    let to = c.i + 1;
    if (name === 'mid') {
      if (c.low(to) === '-') to++;
      name = MID_HOURS.get(c.low(to)) ?? '';
      to++;
    }
    const named = NAMED_HOURS.get(name);
    if (!named) return undefined;
    const said: Clock = { hour: named.hour, minute: 0, meridiem: named.meridiem };
    return c.make(c.i, to, minutesOf(said), 'clock', { clock: said, spelled: true });
  },
};

const COLON = /(\d{1,2}):(\d\d)(?::(\d\d))?(?!\d|:\d)/y;

/** "10:40", "5:10 pm", "7:56:30". */
export const colonTime: Rule = {
  name: '<hour>:<minute> [am | pm]',
  starts: 'figures',
  read(c) {
    const token = c.tokens[c.i];
    if (token?.kind !== 'number' || !(token.low.includes(':') || c.low(c.i + 1).startsWith(':'))) return undefined;
    // read from the text: minutes, seconds and what sticks to them are not always one token
    COLON.lastIndex = token.start;
    const found = COLON.exec(c.text);
    if (!found) return undefined;
    const [hour, minute] = [Number(found[1]), Number(found[2])];
    if (!valid(hour, minute)) return undefined;
    const end = token.start + found[0].length;
    let to = c.i + 1;
    while (to < c.tokens.length && (c.tokens[to] as Token).start < end) to++;
    // "2:50 hrs" is a length, "at 14:30 h" a time
    const unit = formAt(c.tokens, to);
    if (unit?.form.unit === 'h' && hour < 13 && !TIME_BEFORE.has(c.low(c.i - 1)))
      return c.make(c.i, unit.to, hour * 60 + minute, 'duration', { unit: 'min', said: 'h', clock: { hour, minute } });
    return clock(c, c.i, hour, minute, unit?.form.unit === 'h' ? unit.to : to, false);
  },
};

/** What a time with a point stands behind: "Start 08.15", "back 14.20". */
const EVENT_BEFORE =
  /^(start|started|stop|stopped|kl|klokken|back|home|finish|finished|return|returned|arrive|arrived)$/;
/** "08.15", "back 14.20", as it is written where a point stands between hours and minutes. */
export const pointTime: Rule = {
  name: '<hour>.<minute>',
  starts: 'figures',
  read(c) {
    const written = /^(\d{1,2})\.([0-5]\d)$/.exec(c.low(c.i));
    const due = EVENT_BEFORE.test(c.low(c.i - 1));
    if (!written || !(due || /^0[1-9]/.test(c.low(c.i)))) return undefined;
    const [hour, minute] = [Number(written[1]), Number(written[2])];
    if (hour > 23 || (c.number && unitAfter(c.tokens, c.i + 1, c.number))) return undefined;
    return clock(c, c.i, hour, minute, c.i + 1, false);
  },
};

/** "at 8 15": the hour and the minutes in figures of their own, as some recognisers write a time; only where a time is due. */
export const partedTime: Rule = {
  name: 'at <hour> <minute>',
  starts: 'figures',
  read(c) {
    if (!TIME_BEFORE.has(c.low(c.i - 1)) || !/^\d{1,2}$/.test(c.low(c.i)) || !/^[0-5]\d$/.test(c.low(c.i + 1)))
      return undefined;
    const [hour, minute] = [Number(c.low(c.i)), Number(c.low(c.i + 1))];
    const second = numberAt(c.tokens, c.i + 1);
    if (!second || !valid(hour, minute) || hour === 0 || unitAfter(c.tokens, c.i + 2, second)) return undefined;
    return clock(c, c.i, hour, minute, c.i + 2, false);
  },
};

/** The hour and minute a number names, if it can: "6.50", "1830", "two fifty", "9". */
export function timeOf(n: NumberReading): Clock | undefined {
  if (n.signed || n.ratio || n.value < 0) return undefined;
  if (n.pair) return valid(n.pair.first, n.pair.second) ? { hour: n.pair.first, minute: n.pair.second } : undefined;
  const digits = (!n.spelled && n.figures) || '';
  const point = /^(\d{1,2})[.,](\d\d)$/.exec(digits);
  if (point)
    return valid(Number(point[1]), Number(point[2])) ? { hour: Number(point[1]), minute: Number(point[2]) } : undefined;
  if (/^\d{3,4}$/.test(digits)) {
    const [hour, minute] = [Number(digits.slice(0, -2)), Number(digits.slice(-2))];
    return valid(hour, minute) ? { hour, minute } : undefined;
  }
  if (n.spelled && n.value >= 1000) return hundredHours(n);
  return n.whole && n.value < 25 && digits.length < 3 ? { hour: n.value, minute: 0 } : undefined;
}

/** Minutes before "to" or "past": "ten", "quarter", "twenty-five", "half", "15 minutes". */
function minutesAt(c: Cursor): { minutes: number; to: number; whole: boolean } | undefined {
  let k = c.i;
  if (c.low(k) === 'a') k++;
  const part = PARTS_OF_ONE.get(c.low(k));
  if ((part === 2 || part === 4) && !c.low(k).endsWith('s')) return { minutes: 60 / part, to: k + 1, whole: false };
  const n = c.number;
  if (!n || k !== c.i || !n.whole || n.signed || n.pair || n.value < 1 || n.value > 59) return undefined;
  const to = c.low(n.to) === 'minutes' || c.low(n.to) === 'min' || c.low(n.to) === 'minute' ? n.to + 1 : n.to;
  return { minutes: n.value, to, whole: to === n.to };
}

/** "ten to two", "quarter past one", "15 minutes past 3pm", "quarter past noon". */
export const minutesAndHour: Rule = {
  name: '<minutes> to | past <hour>',
  read(c) {
    const head = minutesAt(c);
    if (!head) return undefined;
    const word = c.low(head.to);
    const side = MINUTE_SIDES.get(word);
    if (!side) return undefined;
    const { minutes } = head;
    if (word === 'of' && minutes !== 15) return undefined; // "ten of twelve dogs"
    if (minutes === 30 && side < 0) return undefined;
    // "3 to 5 km" is a range; clock minutes before the hour go in fives
    if (side < 0 && head.whole && minutes % 5 !== 0) return undefined;
    const range = side < 0 && head.whole;
    if (range && RANGE_BEFORE.has(c.low(c.i - 1))) return undefined;
    const h = head.to + 1;
    const named = NAMED_HOURS.get(c.low(h));
    const n = named ? undefined : numberAt(c.tokens, h);
    // "quarter to nine eighteen below": a time and then another number
    const apart = n?.pair && n.spelled && n.pair.first >= 1 && n.pair.first <= 12 ? n.pair : undefined;
    const hour = named?.hour ?? apart?.first ?? hourIn(c, n);
    if (hour === undefined) return hourLeftOut(c, head, side);
    if (range && hour > 12) return undefined; // "fifteen to twenty" is no time
    const end = named ? h + 1 : apart ? apart.at : (n?.to ?? h + 1);
    const at = half(c, end);
    const meridiem = named?.meridiem ?? at.meridiem;
    const turned =
      side > 0
        ? { hour, minute: minutes }
        : { hour: hour === 0 ? 23 : hour === 1 && !named ? 12 : hour - 1, minute: 60 - minutes };
    const said: Clock = {
      ...turned,
      ...(meridiem && { meridiem: named && side < 0 ? (meridiem === 'am' ? 'pm' : 'am') : meridiem }),
    };
    return c.make(c.i, named ? end : at.to, minutesOf(said), 'clock', { clock: said, spelled: true });
  },
};

/** "at quarter past": the hour was left out, the moment of speaking gives it. */
function hourLeftOut(
  c: Cursor,
  head: { minutes: number; to: number; whole: boolean },
  side: 1 | -1,
): Quantity | undefined {
  if (head.whole || !(TIME_BEFORE.has(c.low(c.i - 1)) || TIME_MAYBE_BEFORE.has(c.low(c.i - 1)))) return undefined;
  const next = c.tokens[head.to + 1];
  if (c.low(head.to) === 'of' || (side < 0 && next?.kind === 'word')) return undefined;
  const minute = side > 0 ? head.minutes : 60 - head.minutes;
  return c.make(c.i, head.to + 1, minute, 'clock', { clock: { hour: 0, minute }, hourLeftOut: true, spelled: true });
}

/** The hour that a number behind "to" or "past" names; not when it is an amount ("five to six miles", "ten to twelve dogs"). */
function hourIn(c: Cursor, n: NumberReading | undefined): number | undefined {
  if (!n || n.pair || n.signed || !n.whole || n.value < 0 || n.value > 24) return undefined;
  if (!n.spelled && (n.figures ?? '').length > 2) return undefined;
  if (SIDES_OF_ZERO.has(c.low(n.to)) || DEGREES.has(c.low(n.to))) return undefined;
  const after = unitAfter(c.tokens, n.to, n);
  if (after && c.low(n.to) !== 'h') return undefined;
  return COUNTED.has(c.low(n.to)) ? undefined : n.value;
}

/** "half three", as the British say half past three: only where a time is due. */
export const halfHour: Rule = {
  name: 'half <hour>',
  starts: 'words',
  read(c) {
    if (PARTS_OF_ONE.get(c.low(c.i)) !== 2 || c.low(c.i).endsWith('s')) return undefined;
    const n = numberAt(c.tokens, c.i + 1);
    const hour = hourIn(c, n);
    if (!n || hour === undefined || hour < 1 || hour > 12) return undefined;
    const alone = c.i === 0 && n.to === c.tokens.length;
    if (!alone && !TIME_BEFORE.has(c.low(c.i - 1))) return undefined;
    return clock(c, c.i, hour, 30, n.to, true);
  },
};

/** A number that its neighbour makes a time: "7 sharp", "8 o'clock", "six thirty a.m.", "3 in the morning", "11ish". */
export const markedHour: Rule = {
  name: "<hour> am | pm | o'clock | sharp | in the morning",
  read(c) {
    const n = c.number;
    if (!n) return undefined;
    const military = fourFigures(c, n);
    if (military) return military;
    const twice = repeated(c, n);
    const time = twice ?? timeOf(n);
    if (!time) return undefined;
    const end = twice?.to ?? n.to;
    const told = c.low(c.i - 1) === 'at' && dayPartBefore(c); // "this evening at 8"
    if (!told && !markAt(c, end) && !meridiemAt(c, end) && !dayPartAfter(c, end)) return undefined;
    const q = clock(c, n.from, time.hour, time.minute, end, n.spelled);
    return time.hour > 12 && q.clock?.meridiem === 'am' ? undefined : q;
  },
};

/** "1400 hours", "fourteen hundred hours", "0730h": the time by the twenty-four hours. */
function fourFigures(c: Cursor, n: NumberReading): Quantity | undefined {
  const unit = formAt(c.tokens, n.to);
  if (unit?.form.unit !== 'h') return undefined;
  const figures = !n.spelled && n.figures?.length === 4;
  const time = figures ? timeOf(n) : n.spelled ? hundredHours(n) : undefined;
  return time && c.make(n.from, unit.to, minutesOf(time), 'clock', { clock: time });
}
/** "fourteen hundred" → 14:00. */
const hundredHours = (n: NumberReading): Clock | undefined =>
  n.whole && !n.pair && n.value >= 100 && n.value <= 2400 && n.value % 100 === 0
    ? { hour: n.value / 100, minute: 0 }
    : undefined;

/** Where "sharp", "o'clock" or "ish" at `k` ends; 0 when none stands there. */
function markAt(c: Cursor, k: number): number {
  if (HOUR_MARKS.has(c.low(k)) || c.low(k) === 'ish') return k + 1;
  if (c.low(k) === 'o' && c.low(k + 1) === 'clock') return k + 2;
  return c.low(k) === '-' && c.low(k + 1) === 'ish' ? k + 2 : 0;
}

/** "fifteen fifteen p m": twice the same number is a stutter unless a half of the day follows. */
function repeated(c: Cursor, n: NumberReading): { hour: number; minute: number; to: number } | undefined {
  if (!n.spelled || !n.whole || c.low(n.to) !== c.low(n.from)) return undefined;
  const again = numberAt(c.tokens, n.to);
  if (!again?.whole || again.value !== n.value || !valid(n.value, n.value)) return undefined;
  return meridiemAt(c, again.to) ? { hour: n.value, minute: n.value, to: again.to } : undefined;
}
