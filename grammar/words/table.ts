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

/**
 * A place in the lexicon: the words read so far. A note is walked through it word by word, so that the cost of looking for
 * phrases does not grow with how many begin alike ("a", "no", "in the").
 */
export interface PhraseNode {
  /** The phrases that are complete here. */
  phrases: Phrase[];
  /** Where each further word leads; missing where no phrase goes on. */
  next?: Map<string, PhraseNode>;
}

const FULL: Record<string, string> = { wo: 'will', ca: 'can', sha: 'shall' };
const TAKES_NOT = /^(is|was|are|were|has|have|had|do|does|did|would|could|should|will|can)$/;

/** "wouldn't touch" stands for "would not touch" too, and the other way round, where the table does not say so itself. */
function writtenOut(root: PhraseNode, seen: Map<string, string>): void {
  for (const p of [...phrasesOf(root)]) {
    const at = p.words.findIndex((w) => w === "n't" || w === 'not');
    const verb = p.words[at - 1];
    if (!verb || (p.words[at] === 'not' && !TAKES_NOT.test(verb))) continue;
    const short = Object.entries(FULL).find(([, long]) => long === verb)?.[0] ?? verb;
    const other = p.words[at] === 'not' ? [short, "n't"] : [FULL[verb] ?? verb, 'not'];
    const words = [...p.words.slice(0, at - 1), ...other, ...p.words.slice(at + 1)];
    const key = `${p.tag}|${words.join(' ')}`;
    if (seen.has(key)) continue;
    seen.set(key, 'written out');
    insert(root, { ...p, words });
  }
}

/** All phrases as a trie over their words. Throws with the row that is wrong. */
export function compile(tables: Record<string, readonly Row[]>): PhraseNode {
  const root: PhraseNode = { phrases: [], next: new Map() };
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
        insert(root, { tag, value, words });
      }
    }
  }
  writtenOut(root, seen);
  return root;
}

function insert(root: PhraseNode, phrase: Phrase): void {
  let node = root;
  for (const word of phrase.words) {
    node.next ??= new Map();
    let next = node.next.get(word);
    if (!next) {
      next = { phrases: [] };
      node.next.set(word, next);
    }
    node = next;
  }
  node.phrases.push(phrase);
}

/** Every phrase of the lexicon. */
export function* phrasesOf(node: PhraseNode): Generator<Phrase> {
  yield* node.phrases;
  for (const next of node.next?.values() ?? []) yield* phrasesOf(next);
}
