/**
 * What shows in words alone that a statement begins: a dog's name with what is told of it, a subject with its verb, what
 * was done, a word that opens something new. Each rule looks at one place of the note (`pauses.ts` asks them in turn).
 */
import {
  ACTIONS,
  BEFORE_NAME,
  BETWEEN,
  FINITE,
  GOES_ON,
  IS_SOME,
  NOUN_OF_CLAUSE,
  OPENERS,
  TAKES,
  TOPICS,
} from '../words/pauses.ts';
import type { Mention, Mentions } from './mentions.ts';
import type { Quantity } from './quantities.ts';
import { lowAt, type Token } from './tokens.ts';

/** What is put before a token, and the rule that saw it. */
export interface Pause {
  mark: '.' | ',' | ':';
  rule: string;
}

/** What the rules look at. */
export interface View {
  tokens: readonly Token[];
  m: Mentions;
  /** End of the name that begins at a token. */
  names: Map<number, number>;
  nameAt: Set<number>;
  quantities: Map<number, Quantity>;
  quantityAt: Set<number>;
  /** Where the statement before began. */
  from: number;
}

export const low = (v: View, i: number) => lowAt(v.tokens, i);
export const has = (v: View, i: number, ...tags: string[]): Mention | undefined => {
  for (const t of tags) {
    const m = v.m.at(t, i);
    if (m) return m;
  }
  return undefined;
};
const skipSmall = (v: View, k: number): number => {
  let i = k;
  while (BETWEEN.has(low(v, i))) i++;
  return i;
};

/** Does what is told of a dog begin at `k`? */
function tells(v: View, k: number): boolean {
  const i = skipSmall(v, k);
  if (i >= v.tokens.length) return false;
  if (FINITE.has(low(v, i)) || low(v, i) === "n't") return true;
  return Boolean(
    has(
      v,
      i,
      'sign',
      'manner',
      'ate',
      'drank',
      'gait',
      'drop',
      'side',
      'part',
      'paw',
      'end',
      'fine',
      'position',
      'quantity',
    ) || v.tokens[i]?.kind === 'number',
  );
}
/** Does a verb stand at `k` or behind small words? "left wheel" is a place. */
const verbAt = (v: View, k: number): boolean => {
  const i = skipSmall(v, k);
  return FINITE.has(low(v, i)) && !(low(v, i) === 'left' && has(v, i + 1, 'position', 'part', 'end', 'bootie'));
};
/** Was something told of the speaker, so that what follows is in danger of being hers? */
const ofSpeaker = (v: View, i: number): boolean => {
  for (let k = v.from; k < i; k++) if (/^(i|we|my|our)$/.test(low(v, k))) return true;
  return false;
};
/** "that on the left foot | the pad is raw": words that lead in within a clause. */
const fronted = (v: View, i: number): boolean => {
  for (let k = i - 1; k >= v.from && i - k < 8; k--) {
    if (/^(that|where|when|whereupon|because|whether|which)$/.test(low(v, k))) return true;
    if (FINITE.has(low(v, k)) || ACTIONS.has(low(v, k)) || v.nameAt.has(k)) return false;
  }
  return false;
};

/** Where the list of names that begins at `i` ends. */
function listEnd(v: View, i: number): number {
  let k = v.names.get(i) ?? i;
  for (;;) {
    const next = v.names.get(k) ?? (/^(and|&|\+|\/|or)$/.test(low(v, k)) ? v.names.get(k + 1) : undefined);
    if (next === undefined) return k;
    k = next;
  }
}

export interface Rule {
  name: string;
  mark: Pause['mark'];
  at(v: View, i: number): boolean;
  /** Where the mark hangs on what stands around. */
  markAt?(v: View, i: number): Pause['mark'];
}

/** Does the word before take what stands at `i` for its object, or lead into it? */
const led = (v: View, i: number): boolean =>
  TAKES.has(low(v, i - 1)) || ACTIONS.has(low(v, i - 1)) || BEFORE_NAME.has(low(v, i - 1));

export const RULES: readonly Rule[] = [
  {
    name: '<dog> <what is told>',
    mark: '.',
    at(v, i) {
      if (!v.names.has(i) || v.nameAt.has(i - 1) || led(v, i)) return false;
      const to = listEnd(v, i);
      return tells(v, to) || /^(a|an|no|nothing|not|two|three|four|half|most|who|whom)$/.test(low(v, to));
    },
    markAt: (v, i) => {
      const k = listEnd(v, i);
      if (verbAt(v, k) || /^(who|whom)$/.test(low(v, k))) return '.';
      for (let n = k; n < k + 14 && n < v.tokens.length; n++) {
        if (v.nameAt.has(n) || ACTIONS.has(low(v, n)) || has(v, n, 'pronoun', 'group')) break;
        if (has(v, n, 'sign', 'manner', 'fine', 'gait')) return '.';
      }
      return ',';
    },
  },
  {
    name: 'he <verb>',
    mark: ',',
    at(v, i) {
      if (!/^(he|she|they|we|i)$/.test(low(v, i)) || NOUN_OF_CLAUSE.has(low(v, i - 1)) || led(v, i)) return false;
      if (has(v, i - 1, 'quantity')) return false;
      return verbAt(v, i + 1) || ACTIONS.has(low(v, i + 1));
    },
  },
  {
    name: 'it is',
    mark: ',',
    at(v, i) {
      if (!/^(it|there|that|its|theres)$/.test(low(v, i)) || NOUN_OF_CLAUSE.has(low(v, i - 1)) || led(v, i))
        return false;
      if (v.names.has(i + 1) || v.names.has(i + 2) || fronted(v, i)) return false;
      // "since the snow there is deep"
      if (low(v, i) === 'there')
        return !has(v, i - 1, 'part') && verbAt(v, i + 1) && IS_SOME.has(low(v, skipSmall(v, i + 2)));
      return (
        /^('s|is|was|has|'d|had|does|did|looks|looked|feels|felt|bled)$/.test(low(v, i + 1)) ||
        /^(its|theres)$/.test(low(v, i))
      );
    },
    markAt: (v, i) => (ofSpeaker(v, i) && !v.quantityAt.has(i + 1) && !v.quantityAt.has(i + 2) ? '.' : ','),
  },
  {
    name: '<group> <what is told>',
    mark: '.',
    at(v, i) {
      if (low(v, i + 1) === 'round') return false;
      const g = v.m.from('group', i);
      if (!g || led(v, i) || has(v, i - 1, 'except') || FINITE.has(low(v, i - 1))) return false;
      if (
        /^(all|both|rest|other|others|neither)$/.test(low(v, i)) &&
        (!FINITE.has(low(v, g.to)) || has(v, i - 1, 'group'))
      )
        return false;
      if (/^(off|up|over)$/.test(low(v, i - 1)) && low(v, g.to) === "'s") return false;
      const to = v.names.has(g.to) ? listEnd(v, g.to) : g.to;
      return verbAt(v, to) || Boolean(has(v, to, 'ate', 'drank', 'manner', 'fine'));
    },
  },
  {
    name: 'the <thing> <verb>',
    mark: '.',
    at(v, i) {
      if (!/^(the|my|our|his|her|their)$/.test(low(v, i)) || led(v, i) || FINITE.has(low(v, i - 1))) return false;
      if (fronted(v, i)) return false;
      for (let k = i + 1; k < i + 6; k++) {
        if (/^('s|is|are|was|were|has|had|looks|look|looked|feels|felt|seems)$/.test(low(v, k))) return k > i + 1;
        if (GOES_ON.has(low(v, k)) && !/^(of|other|one|about|in|on|both|two|same|more)$/.test(low(v, k))) return false;
      }
      return false;
    },
    markAt: (v, i) => (has(v, i + 1, 'side', 'end') ? ',' : '.'),
  },
  {
    name: 'no <sign>',
    mark: ',',
    at(v, i) {
      if (!/^(no|not|nothing|none)$/.test(low(v, i)) || v.nameAt.has(i - 1)) return false;
      if (low(v, i) === 'nothing' || low(v, i) === 'none')
        return /^(wrong|on|in|found|else|to|there|of)$/.test(low(v, i + 1));
      for (let k = i + 1; k < i + 4; k++) if (v.m.from('sign', k)) return true;
      return false;
    },
  },
  {
    name: '<done>',
    mark: ',',
    at(v, i) {
      if (!ACTIONS.has(low(v, i)) || v.nameAt.has(i - 1) || has(v, i - 1, 'pronoun', 'me', 'group')) return false;
      return (
        /^(it|him|her|them|that|both|all|everyone|everybody|the|a|an|some|his|my|on|in|two|more|fresh|new|another)$/.test(
          low(v, i + 1),
        ) || v.names.has(i + 1)
      );
    },
  },
  {
    name: 'okay',
    mark: '.',
    at(v, i) {
      if (/^(ok|okay)$/.test(low(v, i)))
        return /^(so|now|then|and|we|i|well|that|um|uh|next|what|who|let)$/.test(low(v, i + 1));
      return OPENERS.has(low(v, i)) && !v.quantityAt.has(i + 1);
    },
  },
  {
    name: 'then',
    mark: ',',
    at(v, i) {
      return (
        /^(then|so|also)$/.test(low(v, i)) &&
        (v.names.has(i + 1) || /^(i|we|he|she|they|it|the|there)$/.test(low(v, i + 1)))
      );
    },
  },
  {
    name: '<topic>',
    mark: '.',
    at(v, i) {
      if (
        !TOPICS.has(low(v, i)) ||
        led(v, i) ||
        v.nameAt.has(i - 1) ||
        has(v, i - 1, 'sign', 'side', 'end', 'surface', 'condition', 'group', 'position')
      )
        return false;
      return (
        verbAt(v, i + 1) || Boolean(has(v, i + 1, 'surface', 'condition', 'fine', 'surface-weak', 'condition-weak'))
      );
    },
  },
  {
    name: '<item> <state>',
    mark: '.',
    at(v, i) {
      const item = v.m.from('item', i);
      if (
        !item ||
        led(v, i) ||
        v.nameAt.has(i - 1) ||
        FINITE.has(low(v, i - 1)) ||
        (low(v, i - 1) !== 'it' && has(v, i - 1, 'gear-state', 'item'))
      )
        return false;
      return Boolean(v.m.from('gear-state', item.to));
    },
  },
  {
    name: '<quantity>',
    mark: ',',
    at(v, i) {
      const q = v.quantities.get(i);
      if (!q || !/^(distance|duration|temperature|clock)$/.test(q.dimension)) return false;
      return v.quantityAt.has(i - 1) && !/^(first|last|next)$/.test(low(v, i - 1));
    },
  },
];
