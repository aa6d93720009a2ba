/** Times as people write them in front of a note: `10:40`, `7.50:`, `1040`, `10h40`, `7:50 pm -`, `7 am`. */

/** A time found at the start of a line. */
export interface TimeHit {
  /** Characters it takes, with the sign after it. */
  length: number;
  words: string;
  /** Seconds after midnight; left out where the day has no such time (25:70). */
  seconds?: number;
  /** Written without am or pm and without a leading zero, so that an afternoon may be meant. */
  bare: boolean;
}

const PATTERN =
  /^(?:(\d{1,2})(?:([:.h])(\d{2})(?::(\d{2}))?)?\s?([ap])\.?m\.?|(\d{1,2})([:.h])(\d{2})(?::(\d{2}))?|(\d{2})(\d{2}))(?![\w%°$])(?![.:]\d)/i;
/** Words after a number that make it an amount and no time. In small letters only: Miles may be a dog; "mi 4" is where the team is. */
const UNIT =
  /^\s*(?:ft|feet (?:of|up|climb|high)|m|metres?|meters?|kms?|kilomet\w+|mi|miles|yds?|yards?|lbs?|pounds?|kgs?|kilos?|g|grams?|oz|ounces?|l|lit(?:er|re)s?|ml|gal\w*|cups?|k?cal\w*|mph|kph|knots?|kn|bpm|days?|dollars|bucks|percent|degrees?|deg|below|above)\b(?!\.?\s*\d)/;
/** `2:50 hours` is how long, not when. */
const LENGTH = /^\s*(?:h|hrs?|hours?|mins?|minutes?|secs?|seconds?)\b/i;
/** The sign after a time; before a digit it is a minus ("10:40 -18 and clear") and belongs to the note. */
const AFTER = /^\s*(?:[-–—:,;|.](?!\d))?\s*/;

/** Reads the time that `line` starts with, if it starts with one. An amount ("7.50 miles", "1200 ft") is none. */
export function timeAt(line: string): TimeHit | undefined {
  const m = PATTERN.exec(line.slice(0, 24));
  if (!m) return undefined;
  const rest = line.slice(m[0].length, m[0].length + 24);
  const half = m[5]?.toLowerCase();
  const colon = m[2] === ':' || m[7] === ':';
  // 0735 and 07.35 are never amounts
  const sure = colon || m[10]?.startsWith('0') || m[6]?.startsWith('0');
  if (!half && (LENGTH.test(rest) || (!sure && UNIT.test(rest)))) return undefined;
  const hour = Number(m[1] ?? m[6] ?? m[10]);
  const minute = Number(m[3] ?? m[8] ?? m[11] ?? 0);
  const second = Number(m[4] ?? m[9] ?? 0);
  const after = AFTER.exec(rest)?.[0] ?? '';
  // "10:40-13:20 out and back": the second time belongs to the note, so nothing is taken off it
  const range = /^\s*(?:[-–—]|to\b)\s*\d{1,2}[:.h]?\d{2}\b/.test(rest.slice(0, 16));
  const hit: TimeHit = {
    length: range ? 0 : m[0].length + after.length,
    words: m[0].trim(),
    bare: !half && (m[6]?.length === 1 || m[1]?.length === 1),
  };
  const hour24 = half === 'p' && hour < 12 ? hour + 12 : half === 'a' && hour === 12 ? 0 : hour;
  const good =
    hour24 < 24 && minute < 60 && second < 60 && !(half === 'a' && hour > 12) && !(half && hour === 0 && half === 'p');
  if (good) return { ...hit, seconds: (hour24 * 60 + minute) * 60 + second };
  // Only a colon or am/pm shows that a time was meant; "47.50" and "9180" are numbers.
  return colon || half ? hit : undefined;
}
