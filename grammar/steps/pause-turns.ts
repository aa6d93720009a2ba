/**
 * Pauses where a statement without a subject begins: what was done, what was not found, a part with its own sign, a number
 * behind a number, a word that turns to something new.
 */
import { ACTIONS, OPENERS } from '../words/pauses.ts';
import { has, led, low, type Rule, verbBefore } from './pause-view.ts';

export const TURNS: readonly Rule[] = [
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
      if (
        !ACTIONS.has(low(v, i)) ||
        v.nameAt.has(i - 1) ||
        (/^(on|in)$/.test(low(v, i + 1)) && has(v, i - 1, 'part', 'bootie', 'item')) ||
        // "won't put her foot down": the verb of the denial
        (low(v, i) === 'put' && /^(n't|not)$/.test(low(v, i - 1))) ||
        // "his harness rubbed both armpits": the gear does it
        (low(v, i) === 'rubbed' && has(v, i - 1, 'bootie', 'item')) ||
        has(v, i - 1, 'pronoun', 'me', 'group')
      )
        return false;
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
    name: '<quantity>',
    mark: ',',
    at(v, i) {
      const q = v.quantities.get(i);
      if (!q || !/^(distance|duration|temperature|clock)$/.test(q.dimension)) return false;
      return v.quantityAt.has(i - 1) && !/^(first|last|next)$/.test(low(v, i - 1));
    },
  },
  {
    name: '<site> <sign>',
    mark: ',',
    at(v, i) {
      if (!has(v, i, 'part', 'side', 'paw', 'end') || v.nameAt.has(i - 1)) return false;
      const lamePaw = has(v, i - 1, 'paw') && v.m.at('sign', i - 2)?.value === 'lame' && has(v, i, 'part');
      if (has(v, i - 1, 'part', 'side', 'paw', 'end') && !lamePaw) return false;
      // "three-legged LH | hock swollen": the foot is of the limp
      if (/^(lf|rf|lh|rh)$/.test(low(v, i)) && v.m.at('sign', i - 1)?.value === 'lame') return false;
      if (!lamePaw && !has(v, i - 1, 'sign', 'trend', 'fine') && !v.quantityAt.has(i - 1)) return false;
      // "Rook sore shoulder fine now": a sign that has no site before it has the one behind it
      const sign = lamePaw ? undefined : v.m.at('sign', i - 1);
      if (sign && sign.value !== 'lame') {
        let sited = false;
        for (let n = v.from; n < sign.from; n++) if (has(v, n, 'part', 'paw')) sited = true;
        if (!sited) return false;
      }
      let k = i;
      while (has(v, k, 'part', 'side', 'paw', 'end') && !v.m.from('sign', k)) k++;
      let named = false;
      for (let n = i; n < k; n++) if (has(v, n, 'part', 'paw')) named = true;
      if (!named) return false;
      while (/^(is|'s|are|was|were|looks|feels|a|bit|little|still|really|pretty|very)$/.test(low(v, k))) k++;
      return Boolean(v.m.from('sign', k) || v.m.from('fine', k));
    },
  },
  {
    name: 'if it is <so>',
    mark: ',',
    at(v, i) {
      if (
        !has(v, i - 1, 'surface', 'condition', 'surface-weak', 'condition-weak') ||
        has(v, i, 'surface', 'condition', 'surface-weak', 'condition-weak')
      )
        return false;
      for (let k = i - 2; k > i - 6 && k >= 0; k--)
        if (low(v, k) === 'if')
          return !/^(and|or|then|tomorrow|today|enough|out|again|up|on|in|at|by|like)$/.test(low(v, i));
      return false;
    },
  },
  {
    name: 'three-legged',
    mark: ',',
    at: (v, i) =>
      /^(three|3)$/.test(low(v, i)) &&
      low(v, low(v, i + 1) === '-' ? i + 2 : i + 1) === 'legged' &&
      v.quantityAt.has(i - 1),
  },
  {
    name: '<manner> <manner>',
    mark: ',',
    at: (v, i) => {
      const before = v.m.at('manner', i - 1);
      return Boolean(v.m.from('manner', i) && before?.to === i && before.value !== v.m.at('manner', i)?.value);
    },
  },
  {
    name: '<measure> <dog>',
    mark: '.',
    at(v, i) {
      const q = v.m.from('quantity', i);
      if (!q || v.quantityAt.has(i) || /^(on|out|at|in|of)$/.test(low(v, i)) || !v.quantityAt.has(i - 1)) return false;
      return v.names.has(q.to) && !v.nameAt.has(i - 1);
    },
  },
  {
    name: '<booties> on',
    mark: '.',
    at(v, i) {
      const b = v.m.from('bootie', i);
      if (!b || led(v, i) || verbBefore(v, i) || v.nameAt.has(i - 1) || v.quantityAt.has(i - 1)) return false;
      if (/^(wet|dry|frozen|tight|loose|thick|thin|green|red|blue|black|orange|cordura)$/.test(low(v, i - 1)))
        return false;
      if (has(v, i - 1, 'side', 'end', 'paw', 'gear-state', 'boot-state', 'group', 'pronoun')) return false;
      return /^(on|off|back)$/.test(low(v, b.to)) && !/^(on|off)$/.test(low(v, i - 1));
    },
  },
  {
    name: 'averaging',
    mark: ',',
    at: (v, i) =>
      !/^(on|an|the)$/.test(low(v, i - 1)) &&
      /^(averaging|averaged|avg|average)$/.test(low(v, i)) &&
      (v.quantityAt.has(i - 1) || v.quantityAt.has(i - 2)),
    even: () => true,
  },
  {
    name: 'in <time>',
    mark: ',',
    at: (v, i) => {
      const q = v.quantities.get(i + 1);
      return (
        /^(in|out|home|back)$/.test(low(v, i)) &&
        v.quantityAt.has(i - 1) &&
        (q?.dimension === 'clock' || /^\d?\d:\d\d$/.test(low(v, i + 1)))
      );
    },
  },
  {
    name: '<new one> on',
    mark: ',',
    at: (v, i) =>
      /^(new|spare)$/.test(low(v, i)) &&
      !led(v, i) &&
      !verbBefore(v, i) &&
      /^(on|in)$/.test(low(v, low(v, i) === 'new' ? i + 2 : i + 1)) &&
      (low(v, i) === 'spare' || /^ones?$/.test(low(v, i + 1)) || has(v, i + 1, 'item', 'bootie') !== undefined),
  },
  {
    // "worse than yesterday | last year here Ivy cut a pad": two times of which the second is another
    name: '<now> last <year>',
    mark: '.',
    at: (v, i) =>
      low(v, i) === 'last' &&
      /^(year|winter|season|spring|summer|fall|autumn|month|week)$/.test(low(v, i + 1)) &&
      /^(yesterday|today|now|tonight|tomorrow)$/.test(low(v, i - 1)),
  },
  {
    // "slow at 7 mph | frostbite on Loke's tail tip": a sign with its place behind a measure
    name: '<measure> <sign> on <site>',
    mark: '.',
    at: (v, i) => {
      const sign = v.m.from('sign', i);
      if (!sign || !v.quantityAt.has(i - 1) || v.quantityAt.has(i)) return false;
      if (!/^(on|in|between)$/.test(low(v, sign.to))) return false;
      const k = sign.to + 1;
      return (
        v.names.has(k) || /^(his|her|their|the|both)$/.test(low(v, k)) || has(v, k, 'side', 'end', 'part') !== undefined
      );
    },
  },
  {
    // "short-stepping on his left hind | hock feels warm": a leg that limps, then a part with its own verb
    name: 'lame on <leg> <part> <verb>',
    mark: '.',
    at: (v, i) => {
      const part = v.m.from('part', i);
      if (!part || !has(v, i - 1, 'end') || !/^('s|is|feels|felt|looks|looked|seems|was)$/.test(low(v, part.to)))
        return false;
      for (let k = i - 2; k > i - 6 && k > v.from; k--)
        if (/^(on|off)$/.test(low(v, k)))
          return has(v, k - 1, 'sign')?.value === 'lame' || has(v, k, 'sign')?.value === 'lame';
      return false;
    },
  },
  {
    // "some bloke lost his mitten | twenty-eight below": what the air is, behind a thing
    name: '<thing> <degrees below>',
    mark: '.',
    at: (v, i) => {
      const q = v.quantities.get(i);
      return (
        q?.dimension === 'temperature' &&
        /^(below|above)$/.test(low(v, q.to - 1)) &&
        v.tokens[i - 1]?.kind === 'word' &&
        !led(v, i) &&
        !verbBefore(v, i) &&
        !v.nameAt.has(i - 1) &&
        !/^(it|its|air|temp|temps|temperature|outside|out|hit|reads|showed|says|saying|showing|reading|coldest|down|up|there|here|cold|cool|warm|only|just|already|again|morning|now|said)$/.test(
          low(v, i - 1),
        )
      );
    },
  },
  {
    // "not dehydrated | tight tug again": a denial is over where it is told how the dog went
    name: '<not so> <manner>',
    mark: ',',
    at(v, i) {
      const manner = v.m.from('manner', i);
      // "not hot left wrist fine": of the part
      if (v.m.from('fine', i) && has(v, i - 1, 'part')) return false;
      if (!manner || has(v, i - 1, 'sign', 'part')?.to !== i || (v.m.from('sign', i)?.to ?? 0) >= manner.to)
        return false;
      for (let k = i - 1; k >= v.from && i - k < 8; k--)
        if (/^(no|not|n't|never|without)$/.test(low(v, k))) return k < i - 1;
      return false;
    },
  },
  {
    name: 'snow on <site>',
    mark: ',',
    at: (v, i) => {
      const act = v.m.from('act', i);
      return (
        act?.value === 'cooled' &&
        /^(snow|ice)$/.test(low(v, i)) &&
        low(v, act.to - 1) === 'on' &&
        has(v, i - 1, 'pronoun', 'sign') !== undefined
      );
    },
  },
  {
    name: '<surface> <how far>',
    mark: ',',
    at: (v, i) =>
      v.quantities.get(i)?.dimension === 'distance' &&
      has(v, i - 1, 'surface', 'surface-weak') !== undefined &&
      !has(v, i, 'surface') &&
      /^(to|left|out|in|so|total|done|today|all|from)$/.test(low(v, v.quantities.get(i)?.to ?? i)),
  },
  {
    name: '<number> <trail or sky>',
    mark: ',',
    at: (v, i) =>
      low(v, i) !== 'of' &&
      v.quantityAt.has(i - 1) &&
      !v.quantityAt.has(i) &&
      ['surface', 'condition', 'surface-weak', 'condition-weak'].some((tag) => v.m.from(tag, i)) &&
      !/^(still|might|may)$/.test(low(v, i)) &&
      !/^(of|out|to)$/.test(low(v, i + 1)) &&
      !has(v, i, 'part', 'sign', 'position'),
  },
  {
    name: 'mile <number> <subject>',
    mark: '.',
    at: (v, i) => {
      if (!/^(mile|km|kilometre|kilometer|mi|k)$/.test(low(v, i)) || v.quantityAt.has(i - 1)) return false;
      let k = i + 1;
      while (v.quantityAt.has(k) || v.tokens[k]?.kind === 'number') k++;
      return k > i + 1 && (v.names.has(k) || has(v, k, 'side', 'bootie', 'group') !== undefined);
    },
    even: (v, i) => /^(on|in)$/.test(low(v, i - 1)) && /^(ones?|spare)$/.test(low(v, i - 2)),
  },
  {
    name: 'left the yard',
    mark: '.',
    at: (v, i) => {
      if (!/^(left|out|home|back|stopped|finished|fed|snacked|watered)$/.test(low(v, i))) return false;
      if (
        led(v, i) ||
        verbBefore(v, i) ||
        v.nameAt.has(i - 1) ||
        has(v, i - 1, 'pronoun', 'me', 'group', 'side', 'part')
      )
        return false;
      if (low(v, i) === 'left' && /^(the|home)$/.test(low(v, i + 1)))
        return /^(yard|lot|cabin|checkpoint|truck|road|kennel|camp|house|trailhead|gate)$/.test(low(v, i + 2));
      const k = low(v, i + 1) === 'at' ? i + 2 : i + 1;
      return low(v, i + 1) === 'at' && v.quantities.has(k) && !v.quantityAt.has(i - 1);
    },
  },
];
