/**
 * How the lexicon is written down. A row says which tag a family of phrases carries and which value it sets; phrases
 * are separated by `;`. Every phrase of the lexicon stands in exactly one row of a tag, and tables are checked when
 * they load: an error prints the row that is wrong.
 */
export type Row = readonly [tag: string, value: unknown, phrases: string];

export interface Phrase {
  tag: string;
  value: unknown;
  /** Words of the phrase, lower case, contractions cut as the tokens are. */
  words: string[];
}

/** Cuts a phrase as the token step cuts a note: "won't" → "wo" "n't", "she's" → "she" "'s". */
function wordsOf(phrase: string): string[] {
  return phrase
    .trim()
    .toLowerCase()
    .split(/[\s-]+/)
    .flatMap((w) => {
      const cut = /^(.+)(n't|'s|'re|'ve|'ll|'d|'m)$/.exec(w);
      if (cut) return [cut[1] as string, cut[2] as string];
      return /^[\d]+[a-z]+$/.test(w) ? (w.match(/\d+|[a-z]+/g) as string[]) : [w];
    })
    .filter(Boolean);
}

/** Phrases by their first word, longest first. Throws with the row that is wrong. */
export function compile(tables: Record<string, readonly Row[]>): Map<string, Phrase[]> {
  const byFirst = new Map<string, Phrase[]>();
  const seen = new Map<string, string>();
  for (const [table, rows] of Object.entries(tables)) {
    for (const [tag, value, phrases] of rows) {
      for (const phrase of phrases.split(';')) {
        const words = wordsOf(phrase);
        const where = `${table}: [${tag}, ${JSON.stringify(value)}] "${phrase.trim()}"`;
        if (!words.length) throw new Error(`empty phrase in ${where}`);
        const key = `${tag}|${words.join(' ')}`;
        const before = seen.get(key);
        if (before) throw new Error(`the same phrase twice for one tag: ${where}, before in ${before}`);
        seen.set(key, where);
        const first = words[0] as string;
        const list = byFirst.get(first) ?? [];
        list.push({ tag, value, words });
        byFirst.set(first, list);
      }
    }
  }
  for (const list of byFirst.values()) list.sort((a, b) => b.words.length - a.words.length);
  return byFirst;
}
