/** The words of the clock. */

/** Hours that have a name. `meridiem` is what the name says of the half of the day. */
export const NAMED_HOURS: ReadonlyMap<string, { hour: number; meridiem: 'am' | 'pm' }> = new Map([
  ['noon', { hour: 12, meridiem: 'pm' }],
  ['noonish', { hour: 12, meridiem: 'pm' }],
  ['noontime', { hour: 12, meridiem: 'pm' }],
  ['midday', { hour: 12, meridiem: 'pm' }],
  ['midnight', { hour: 12, meridiem: 'am' }],
  ['midnightish', { hour: 12, meridiem: 'am' }],
]);
/** Named hours written in two words: the first is "mid". */
export const MID_HOURS: ReadonlyMap<string, string> = new Map([
  ['day', 'midday'],
  ['night', 'midnight'],
]);

/** Forms of a.m. and p.m., as tokens run together. A single letter stands only right behind its figures ("3:15p"). */
export const MERIDIEMS: ReadonlyMap<string, 'am' | 'pm'> = new Map([
  ['am', 'am'],
  ['a.m.', 'am'],
  ['a.m', 'am'],
  ['am.', 'am'],
  ['pm', 'pm'],
  ['p.m.', 'pm'],
  ['p.m', 'pm'],
  ['pm.', 'pm'],
]);
export const MERIDIEM_LETTERS: ReadonlyMap<string, 'am' | 'pm'> = new Map([
  ['a', 'am'],
  ['p', 'pm'],
]);
/** Parts of the day said after "in the", "at" or "this". */
export const DAY_PARTS: ReadonlyMap<string, 'am' | 'pm'> = new Map([
  ['morning', 'am'],
  ['morn', 'am'],
  ['am', 'am'],
  ['afternoon', 'pm'],
  ['evening', 'pm'],
  ['night', 'pm'],
  ['tonight', 'pm'],
  ['tonite', 'pm'],
  ['pm', 'pm'],
]);
/** Words right after an hour that make it a clock time: "7 sharp". */
export const HOUR_MARKS: ReadonlySet<string> = new Set(['sharp', "o'clock", 'oclock']);
/** "ten to two", "quarter past one": what the minutes do to the hour. */
export const MINUTE_SIDES: ReadonlyMap<string, 1 | -1> = new Map([
  ['past', 1],
  ['after', 1],
  ['to', -1],
  ['til', -1],
  ['till', -1],
  ['before', -1],
  ['of', -1],
]);
/** Words that a time of day follows. */
export const TIME_BEFORE: ReadonlySet<string> = new Set('at by until till til since'.split(' '));
/** Looser ones: a time or an amount may follow. */
export const TIME_MAYBE_BEFORE: ReadonlySet<string> = new Set(
  'around about approximately for before after tonight tonite left out home back in'.split(' '),
);
/** Nouns that are counted: a number before them is no time, no temperature and no minutes. */
export const COUNTED: ReadonlySet<string> = new Set(
  'dog dogs pup pups puppy puppies bitch bitches male males female females leader leaders wheeler wheelers team teams people person of them paws feet booties booty harnesses times others'.split(
    ' ',
  ),
);
/** Words before "ten to twelve" that make it a range and no time. */
export const RANGE_BEFORE: ReadonlySet<string> = new Set(
  'from between wind winds gust gusts gusting gusted blowing minus plus'.split(' '),
);
