/**
 * The words numbers are said in. Each word stands here once, under what it does in a number; the reading rules
 * (../steps/numbers.ts) ask for the class and never repeat a word.
 */

/** What a word does inside a number. */
export type NumberClass =
  | 'zero' // 0, and a digit after the point
  | 'oh' // a nought between digits: "one oh two", "twelve oh three"
  | 'digit' // 1 to 9
  | 'teen' // 10 to 19
  | 'ten' // 20, 30 … 90; takes a digit
  | 'joined' // written without its hyphen: "twentytwo"
  | 'hundred'
  | 'scale' // thousand and up
  | 'dozen' // takes a number before it, counts twelves
  | 'couple' // "a couple of"
  | 'point' // the decimal point, said
  | 'and' // joins hundreds to tens and wholes to fractions
  | 'article' // a, an
  | 'minus'
  | 'plus';

/** One word and its part in a number. */
export interface NumberWord {
  class: NumberClass;
  value: number;
}

const WORDS: Record<NumberClass, Record<string, number>> = {
  zero: { zero: 0, nought: 0, naught: 0 },
  oh: { oh: 0, o: 0, ou: 0 },
  digit: { one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9 },
  teen: {
    ten: 10,
    eleven: 11,
    twelve: 12,
    thirteen: 13,
    fourteen: 14,
    fifteen: 15,
    sixteen: 16,
    seventeen: 17,
    eighteen: 18,
    nineteen: 19,
  },
  ten: {
    twenty: 20,
    thirty: 30,
    forty: 40,
    fourty: 40,
    fifty: 50,
    sixty: 60,
    seventy: 70,
    eighty: 80,
    ninety: 90,
    ninty: 90,
  },
  joined: {}, // filled below from `ten` and `digit`
  hundred: { hundred: 100, hundreds: 100 },
  scale: { thousand: 1e3, million: 1e6, billion: 1e9, trillion: 1e12 },
  dozen: { dozen: 12, dozens: 12, doz: 12, dozs: 12 },
  couple: { couple: 2 },
  point: { point: 0, dot: 0, decimal: 0 },
  and: { and: 0, n: 0, "'n": 0, '&': 0 },
  article: { a: 1, an: 1 },
  minus: { minus: -1, negative: -1 },
  plus: { plus: 1 },
};

/** Ordinals by the rank of the number they end: only a digit's may follow a ten ("twenty-fifth"). */
const ORDINAL_WORDS: Record<'digit' | 'teen' | 'ten' | 'large', Record<string, number>> = {
  digit: { first: 1, second: 2, third: 3, fourth: 4, fifth: 5, sixth: 6, seventh: 7, eighth: 8, ninth: 9 },
  teen: {
    tenth: 10,
    eleventh: 11,
    twelfth: 12,
    thirteenth: 13,
    fourteenth: 14,
    fifteenth: 15,
    sixteenth: 16,
    seventeenth: 17,
    eighteenth: 18,
    nineteenth: 19,
  },
  ten: {
    twentieth: 20,
    thirtieth: 30,
    fortieth: 40,
    fiftieth: 50,
    sixtieth: 60,
    seventieth: 70,
    eightieth: 80,
    ninetieth: 90,
  },
  large: { hundredth: 100, thousandth: 1e3, millionth: 1e6, billionth: 1e9, trillionth: 1e12 },
};

/** Parts of one that have a name of their own; thirds, fifths and so on come from the ordinals. */
const PART_WORDS: Record<string, number> = { half: 2, halves: 2, quarter: 4, quarters: 4 };

/** Fractions written as one sign. */
export const GLYPHS: ReadonlyMap<string, number> = new Map([
  ['½', 1 / 2],
  ['⅓', 1 / 3],
  ['⅔', 2 / 3],
  ['¼', 1 / 4],
  ['¾', 3 / 4],
  ['⅕', 1 / 5],
  ['⅖', 2 / 5],
  ['⅗', 3 / 5],
  ['⅘', 4 / 5],
  ['⅙', 1 / 6],
  ['⅚', 5 / 6],
  ['⅛', 1 / 8],
  ['⅜', 3 / 8],
  ['⅝', 5 / 8],
  ['⅞', 7 / 8],
]);

/** Endings of a typed ordinal, and the last digit they belong to ("th" to all others and to 11, 12, 13). */
export const ORDINAL_ENDINGS: ReadonlyMap<string, number | undefined> = new Map([
  ['st', 1],
  ['nd', 2],
  ['rd', 3],
  ['th', undefined],
]);

/** Signs that may tie the words of one number together: hyphen and dashes. */
export const HYPHENS: ReadonlySet<string> = new Set(['-', '‐', '‑', '–', '—']);
/** Signs written before a number below zero. */
export const MINUS_SIGNS: ReadonlySet<string> = new Set(['-', '−', '–']);

/** Words before "one" that make it a pronoun: "the old one", "that one". */
export const PRONOUN_BEFORE: ReadonlySet<string> = new Set(
  (
    'the that this which each every any another other no right left old new good bad big small little young older newer ' +
    'younger first second third last next previous current wrong same only his her my your our their torn lost spare ' +
    'middle far near outside inside black white red blue brown grey gray front hind back'
  ).split(' '),
);
/** Words after "one" that make it a pronoun: "one of them", "one is sore". */
export const PRONOUN_AFTER: ReadonlySet<string> = new Set(
  "of is was 's who that on off has had you we i they she he by with".split(' '),
);
/** Words before "point" that make it a place, a moment or a position on the gangline, never a decimal point. */
export const PLACE_BEFORE_POINT: ReadonlySet<string> = new Set(
  'this that the a at in to some which what one right left no my your from at run runs ran put into up good high low turn turning check'.split(
    ' ',
  ),
);

const add = <V>(map: Map<string, V>, word: string, value: V, table: string) => {
  if (!word || word !== word.toLowerCase() || /\s/.test(word))
    throw new Error(`words/numbers.ts, ${table}: "${word}" must be one word in lower case`);
  if (map.has(word)) throw new Error(`words/numbers.ts, ${table}: "${word}" stands twice`);
  map.set(word, value);
};

/**
 * Checks the table and makes the look-up; adds the tens written together with their digits ("twentytwo").
 * @throws Error that names the word: one that stands twice, holds capitals or blanks, or has no value.
 */
export function compileNumbers(table: Record<NumberClass, Record<string, number>>): Map<string, NumberWord> {
  const map = new Map<string, NumberWord>();
  for (const [cls, words] of Object.entries(table) as [NumberClass, Record<string, number>][])
    for (const [word, value] of Object.entries(words)) {
      if (!Number.isFinite(value)) throw new Error(`words/numbers.ts, ${cls}: "${word}" has no value`);
      add(map, word, { class: cls, value }, cls);
    }
  for (const [tens, ten] of Object.entries(table.ten))
    for (const [digit, one] of Object.entries(table.digit))
      add(map, tens + digit, { class: 'joined', value: ten + one }, 'joined');
  return map;
}

/** An ordinal word's number and the rank of its last part. */
export interface OrdinalWord {
  value: number;
  rank: 'digit' | 'teen' | 'ten' | 'joined' | 'large';
}

function compileOrdinals(): Map<string, OrdinalWord> {
  const map = new Map<string, OrdinalWord>();
  for (const [rank, words] of Object.entries(ORDINAL_WORDS) as [OrdinalWord['rank'], Record<string, number>][])
    for (const [word, value] of Object.entries(words)) add(map, word, { value, rank }, 'ordinals');
  for (const [tens, ten] of Object.entries(WORDS.ten))
    for (const [word, one] of Object.entries(ORDINAL_WORDS.digit))
      add(map, tens + word, { value: ten + one, rank: 'joined' }, 'ordinals');
  return map;
}

function compileParts(): Map<string, number> {
  const map = new Map<string, number>();
  for (const [word, value] of Object.entries(PART_WORDS)) add(map, word, value, 'parts');
  for (const words of Object.values(ORDINAL_WORDS))
    for (const [word, value] of Object.entries(words)) {
      if (value < 3) continue; // "first" and "second" are never parts
      add(map, word, value, 'parts');
      add(map, `${word}s`, value, 'parts');
    }
  return map;
}

/** Every number word, by the word. */
export const NUMBERS: ReadonlyMap<string, NumberWord> = compileNumbers(WORDS);
/** Every ordinal word. */
export const ORDINALS: ReadonlyMap<string, OrdinalWord> = compileOrdinals();
/** What one is divided by: half → 2, thirds → 3. */
export const PARTS_OF_ONE: ReadonlyMap<string, number> = compileParts();
/** What the last digit behind a time counts: "five thirty, eight dogs", "ten forty, six miles". No minutes, for those may be 45. */
export const COUNTED_BEHIND_TIME: ReadonlySet<string> = new Set(
  'dog dogs miles mile km kilometres kilometers klicks k teams pairs'.split(' '),
);
