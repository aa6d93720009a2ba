/**
 * Step "hearing", part one: how an English word may sound. Letter groups are turned into sounds by a table of general
 * spelling rules; where English leaves it open (the "ch" of "chai" and of "Micah") both are kept. One character a sound:
 *
 * i see, I sit, e say, E set, A sat, a far/saw, o so, u too, @ sofa/cut, Y sigh, W now, O boy;
 * Q the a that ends "luka"; L the l that ends "bramble"; ~ what follows is rare in such a spelling; p b t d k g f v T(h) s z S(h) C(h) J m n N(g) l r w y h
 *
 * From memory of English spelling; checked against the pronunciations of a dictionary in the tests.
 */

/** Letters, what must stand around them, and the sounds they may have. */
interface Spelling {
  letters: string;
  /** `^` at the start, `$` at the end, `V` before a vowel letter, `F` before e, i or y, `C` before a consonant letter, `E` before one consonant and a final e, `O` before one consonant and a vowel or -le, `1` no vowel before, `c` after a consonant, `v` after a vowel. */
  where: string;
  sounds: readonly string[];
}

const TABLE = `
a E e | a O e A | a $ @ | a - A a | aa - a | ae - e | ai $ e Y | ai - e | aigh - e | air - Er | are $ Er | al F Al al | alk - ak | all - al
ao - aW a | ar V Ar Er | ar - ar | arr V Er Ar | au - a W | augh - a | aw - a | aw V @w a | ay - e | ayl - el | ah $ @ | agh - A | aer - Er
e 1$ i | e $ / ~i | e E i E | e O E i | e - E | ea $ i i@ | ea - i E | eah $ i@ | ear V ir Er | ear C @r ir | ear $ ir Er | eau - o | ee - i | eer - ir | ei - Y e i | eigh - e | er V Er ir @r | er - @r | err - Er
eu - u | ew - u | ewe - u | ey $ i e | ey - e Y i | ere $ ir Er | el $ @l El | ell $ El @l | en $ @n En | eh $ e E | eh C e E | eo - io i | eur - @r | ees $ iz | ed 1$ Ed | ed $ Ed d | es $ z Ez
i E Y ~i | i O I Y | i $ i Y | i 1V Y i | i V i | i - I | ia $ i@ | ie 1$ Y i | ie $ i | ie - i | ier $ ir i@r | igh - Y | ign $ Yn | ild $ Yld | ind $ Ynd In | ir V Ir Yr | ir - @r | irr V Ir | ire $ Yr | io $ io | ique $ ik | ies $ iz | iew - yu
o E o | o O o a | o $ o | o - a o | oa - o | oar - ar | oe $ o oi | oe - o @ | oh $ o | oh C o | oi - O | oy - O | old - old | oll - al ol | olt - olt | oo - u | ooey $ ui oi | oor - ar | or $ @r ar | or - ar | orr - ar | ou - W u | oui - ui Wi | ough - o @f a | our - ar Wr | ous $ @s | ow $ o W | ow - W o | ower $ Wr | oux $ u | oeu - u | oeh - o | ost $ ost ast
u E u | u O u @ | u $ u | u - @ u | ue $ u | ue - u | ui - u | ur V ur | ur - @r | urr V @r | uy - Y | ure $ ur | uer V Er @r | ua - wa ua | ueue $ u
y 1$ Y | y ^V y | y $ i | y V y i | y E Y | y - I Y i | yr - @r ir | ye $ Y i | yre $ Yr | yew - yu
b - b | bb - b | bt $ t
c F s | c - k | cc F ks C | cc - k | ch - C k S | ck - k | chr - kr | cqu - kw | cz - C z | cia - S@ sia | cie - S si | ch ^C k | cch - k
d - d | dd - d | dge - J | dg - J | dj - J | dt $ t
f - f | ff - f
g F J g | g - g | gg - g | gh ^ g | gh - / g | gn ^ n | gn $ n | gu F g gw | gue $ g
h v$ / | h v / h | h c / h | h ^ h | h - h | hr ^ r
j - J y
k - k | kk - k | kn ^ n | kh - k
l - l | ll - l | le c$ @l | lle $ l li | lm - lm m | lles c$ @lz | les c$ @lz
m - m | mm - m | mb $ m | mn $ m | mc ^C m@k | mme $ m
n - n | nn - n | ng $ N | ng - Ng N nJ | nge $ nJ | nk - Nk | nch - nC | ngs $ Nz | nx - Nks | nc C Nk | nq - Nk | nne $ n
p - p | pp - p | ph - f | ps ^ s | pt ^ t | pn ^ n
q - k | qu - kw k | que $ k
r - r | rr - r | rh - r
s - s | ss - s | sh - S | sch - S sk | sc F s | sci - sY sI Si | ssion - S@n | sion - Z@n | sure $ Z@r | sw - sw | stle $ s@l | sten $ s@n | ss V s | sz - s S | sse $ s si
t - t | tt - t | th - T t | tch - C | tion - S@n | ture $ C@r | tz $ ts | tte $ t | tsch - C | thm - T@m | tial - S@l
v - v | vv - v
w V w | w - / | wh - w | wr ^ r | who ^ hu
x ^ z | x - ks gz | xx - ks
z - z | zz - z ts | zh - Z
`;

const byFirst = new Map<string, Spelling[]>();
for (const row of TABLE.trim().split(/\n| \| /)) {
  const [letters, where, ...sounds] = row.trim().split(/\s+/);
  if (!letters || !where || !sounds.length) throw new Error(`spelling rule without letters, place or sounds: "${row}"`);
  if (sounds.some((s) => !/^[iIeEAaou@YWOpbtdkgfvTszSZCJmnNlrwyh/~]+$/.test(s)))
    throw new Error(`spelling rule with a sound that is none: "${row}"`);
  const first = letters[0] as string;
  const list = byFirst.get(first) ?? [];
  if (list.some((s) => s.letters === letters && s.where === where)) throw new Error(`spelling rule twice: "${row}"`);
  list.push({ letters, where, sounds: sounds.map((s) => s.replace('/', '')) });
  byFirst.set(first, list);
}
// Longest letters first; of the same letters those that ask more of their place.
for (const list of byFirst.values())
  list.sort(
    (a, b) =>
      b.letters.length - a.letters.length ||
      (b.where === '-' ? 0 : b.where.length) - (a.where === '-' ? 0 : a.where.length),
  );

const VOWELS = 'aeiouy';
const isVowel = (c: string | undefined) => c !== undefined && VOWELS.includes(c);

function stands(word: string, from: number, to: number, where: string, vowelBefore: boolean): boolean {
  for (const w of where) {
    const next = word[to];
    if (w === '-') return true;
    if (w === '^' && from !== 0) return false;
    if (w === '$' && to !== word.length) return false;
    if (w === 'V' && !isVowel(next)) return false;
    if (w === 'C' && (next === undefined || isVowel(next))) return false;
    if (w === 'F' && (next === undefined || !'eiy'.includes(next))) return false;
    if (w === 'E' && !(next && !isVowel(next) && next !== 'x' && word[to + 1] === 'e' && to + 2 === word.length))
      return false;
    if (
      w === 'O' &&
      !(next && !isVowel(next) && next !== 'x' && (isVowel(word[to + 1]) || word.startsWith('le', to + 1)))
    )
      return false;
    if (w === '1' && vowelBefore) return false;
    if (w === 'c' && (from === 0 || isVowel(word[from - 1]))) return false;
    if (w === 'v' && (from === 0 || !isVowel(word[from - 1]))) return false;
  }
  return true;
}

const MOST = 8;
const plainLetters = (word: string) =>
  word
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z]/g, '');

/**
 * The ways `word` may sound, the likeliest first, at most eight. Letters outside a–z are passed over (marks are taken off);
 * a word with no letters gives none. Linear in the word's length.
 */
export function soundsOf(word: string): string[] {
  const w = plainLetters(word).slice(0, 24);
  let out = [''];
  let vowel = false;
  for (let i = 0; i < w.length; ) {
    const rules = byFirst.get(w[i] as string) as Spelling[];
    const rule = rules.find((r) => w.startsWith(r.letters, i) && stands(w, i, i + r.letters.length, r.where, vowel));
    if (!rule) {
      i++;
      continue;
    }
    const next: string[] = [];
    for (const s of rule.sounds) for (const o of out) if (next.length < MOST) next.push(o + s);
    out = next;
    for (const c of rule.letters) vowel ||= isVowel(c);
    i += rule.letters.length;
  }
  // The l that ends "kestrel" is hardly heard; the a that ends "luka" is, more than one inside a word.
  return [...new Set(out.map((s) => s.replace(/@l$/, '@L').replace(/@$/, 'Q')))].filter(Boolean);
}

/** Vowels by the height and the place of the tongue, 0 to 1: near ones are easily taken for each other. */
const TONGUE: Record<string, readonly [number, number]> = {
  i: [0, 0],
  I: [0.2, 0.2],
  e: [0.4, 0],
  E: [0.6, 0.15],
  A: [0.85, 0.25],
  a: [1, 0.8],
  o: [0.5, 1],
  u: [0.05, 0.9],
  '@': [0.55, 0.5],
  Q: [0.6, 0.5],
  Y: [0.7, 0.35],
  W: [0.85, 0.8],
  O: [0.5, 0.8],
};
/** Consonants that are taken for each other, cheapest first; a pair that stands nowhere costs a whole sound. */
const ALIKE: readonly (readonly [number, string])[] = [
  [0.1, 'sz SZ'],
  [0.3, 'pb td kg fv CJ SC ZJ nN Td Tt yJ'],
  [0.45, 'mn Tf Ts sS zZ Tv bv wv ts dz tC dJ kC mN kh'],
  [0.6, 'pt tk pk bd dg bg lr rw lw pf tn dn mb ly nl dr tr gJ sC'],
];

const COST = new Float64Array(128 * 128).fill(1);
const GAP = new Float64Array(128).fill(0.8);
const code = (c: string) => c.charCodeAt(0);
const put = (a: string, b: string, cost: number) => {
  COST[code(a) * 128 + code(b)] = cost;
  COST[code(b) * 128 + code(a)] = cost;
};
for (const [cost, pairs] of ALIKE) for (const p of pairs.split(' ')) put(p[0] as string, p[1] as string, cost);
for (const [a, [h, p]] of Object.entries(TONGUE)) {
  for (const [b, [h2, p2]] of Object.entries(TONGUE))
    put(a, b, a === b ? 0 : 0.08 + 0.4 * Math.hypot(h - h2, p - p2) * (a === '@' || b === '@' ? 0.7 : 1));
  for (const c of 'pbtdkgfvTszSZCJmnNlrwyh') put(a, c, 1.2);
}
for (const c of 'pbtdkgfvTszSZCJmnNlrwyh') put(c, c, 0);
put('i', 'y', 0.1);
put('u', 'w', 0.1);
put('o', 'l', 0.7);
put('L', 'l', 0.05);
put('L', 'L', 0);
put('~', '~', 0);
put('L', 'o', 0.3);
for (const [cost, sounds] of [
  [0.25, '@'],
  [0.4, 'hIE'],
  [0.45, 'yieAaouYWOQ'],
  [0.12, '~'],
  [0.3, 'L'],
  [0.55, 'rlwn'],
  [0.65, 'td'],
] as const)
  for (const c of sounds) GAP[code(c)] = cost;

/** What a string of sounds weighs: a consonant 1, a vowel a half. */
export function weightOf(sounds: string): number {
  let w = 0;
  for (const c of sounds) if (c !== '~') w += TONGUE[c] ? 0.5 : 1;
  return w;
}

const LONGEST = 40;
const rows = [new Float64Array(LONGEST + 1), new Float64Array(LONGEST + 1)] as const;

/**
 * How far two strings of sounds lie apart: the cheapest way of changing, dropping and adding sounds (a dynamic programme
 * over both, O(n·m)). 0 the same; a lost final "l" 0.55; another vowel 0.1–0.5. Ends early above `limit`.
 */
export function distance(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  const n = Math.min(b.length, LONGEST);
  let [last, row] = rows as unknown as [Float64Array, Float64Array];
  last[0] = 0;
  for (let j = 1; j <= n; j++) last[j] = (last[j - 1] as number) + (GAP[b.charCodeAt(j - 1)] as number);
  for (let i = 1; i <= a.length; i++) {
    const ca = a.charCodeAt(i - 1);
    const drop = GAP[ca] as number;
    let best = (last[0] as number) + drop;
    row[0] = best;
    for (let j = 1; j <= n; j++) {
      const cb = b.charCodeAt(j - 1);
      let d = (last[j - 1] as number) + (COST[ca * 128 + cb] as number);
      const up = (last[j] as number) + drop;
      if (up < d) d = up;
      const left = (row[j - 1] as number) + (GAP[cb] as number);
      if (left < d) d = left;
      row[j] = d;
      if (d < best) best = d;
    }
    if (best > limit) return best;
    [last, row] = [row, last];
  }
  return last[n] as number;
}
