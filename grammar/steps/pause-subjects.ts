/**
 * Pauses before a subject: a dog's name with what is told of it, a group, he and she, a thing with its verb. Each rule looks
 * at one place of the note (`pauses.ts` asks them in turn).
 */
import { ACTIONS, AFTER_OWN, FINITE, GOES_ON, IS_SOME, NOUN_OF_CLAUSE, TOPICS } from '../words/pauses.ts';
import {
  acts,
  fronted,
  has,
  led,
  listEnd,
  low,
  ofSpeaker,
  particle,
  placed,
  type Rule,
  skipSmall,
  tells,
  type View,
  verbAt,
  verbBefore,
} from './pause-view.ts';

/** "growling at Sula | Nika's wrist is warm": the name before stands behind its own little word, this one tells something. */
function besides(v: View, i: number): boolean {
  let k = i - 1;
  while (k > 0 && !v.names.has(k)) k--;
  const to = v.names.get(i) as number;
  return (
    v.names.get(k) === i &&
    /^(at|with|beside|behind|by|in|of|on|to|for|alongside)$/.test(low(v, k - 1)) &&
    !v.names.has(to) &&
    !/^(and|&|\+|or)$/.test(low(v, to)) &&
    (verbAt(v, to) ||
      (/'s$|s$/.test(low(v, to - 1)) && has(v, to, 'part', 'side', 'end') !== undefined) ||
      /^(back|up)$/.test(low(v, to)))
  );
}
/** Does a person's name that begins a statement end before `i`? */
function heads(v: View, i: number): boolean {
  const from = [...v.people].find((p) => v.names.get(p) === i);
  return from !== undefined && (from === v.from || from === 0);
}
/** "Halla are not | all three have eaten": a denial whose word was left out. */
const leftOut = (v: View, i: number): boolean =>
  /^(not|n't)$/.test(low(v, i - 1)) &&
  /^(is|are|was|were|has|had|did|does|do)$/.test(low(v, i - 2)) &&
  v.nameAt.has(i - 3);

/**
 * "lead | Vernier and Newton, swing | Joule and Rivet": places as headings of their dogs. So read only where the first place
 * stands before all names and the last names stand behind a place, for "Vernier and Newton lead, Joule swing" reads the
 * other way round.
 */
function placesHead(v: View): boolean {
  const places = v.m
    .of('position')
    .filter((p) => p.to === p.from + 1 && /^(lead|swing|team|wheel|point)$/.test(low(v, p.from)));
  const [first, last] = [places[0], places.at(-1)];
  if (!first || !last || places.length < 2) return false;
  const dogs = [...v.names.keys()].filter((k) => !v.people.has(k));
  const behind = (p: { to: number }) => v.names.has(p.to);
  return dogs.every((d) => d > first.from) && behind(last) && places.every(behind);
}
const headsDogs = (v: View, i: number): boolean =>
  /^(lead|swing|team|wheel|point)$/.test(low(v, i)) && v.names.has(i + 1) && placesHead(v);

export const SUBJECTS: readonly Rule[] = [
  {
    name: '<place>: <dogs>',
    mark: ':',
    at: (v, i) => v.names.has(i) && headsDogs(v, i - 1),
  },
  {
    name: '<place> as a heading',
    mark: '.',
    at: (v, i) => headsDogs(v, i) || (/^(in|at)$/.test(low(v, i)) && headsDogs(v, i + 1)),
  },
  {
    // "Katrin | Sprite lead, Rolf wheel": who drives heads her team
    name: '<person> <dogs> <place>',
    mark: '.',
    at: (v, i) => {
      const dogs = v.people.has(i) ? (v.names.get(i) as number) : -1;
      return v.names.has(dogs) && !v.people.has(dogs) && !led(v, i) && placed(v, listEnd(v, dogs));
    },
  },
  {
    name: '<person>: <dogs> <place>',
    mark: ':',
    at: (v, i) => v.names.has(i) && !v.people.has(i) && heads(v, i) && placed(v, listEnd(v, i)),
  },
  {
    name: '<dog> <what is told>',
    mark: '.',
    at(v, i) {
      if (!v.names.has(i) || led(v, i) || (v.nameAt.has(i - 1) && !besides(v, i))) return false;
      if (/^(i|we)$/.test(low(v, listEnd(v, i)))) return !acts(v, i - 1) && verbAt(v, listEnd(v, i) + 1);
      if (v.quantities.get(i - 1)?.dimension === 'ordinal' || v.quantities.get(i - 2)?.dimension === 'ordinal')
        return false;
      if (v.people.has(i) && v.names.has(v.names.get(i) ?? -1)) return false;
      const to = listEnd(v, i);
      return tells(v, to) || /^(a|an|no|nothing|not|two|three|four|half|most|who|whom)$/.test(low(v, to));
    },
    even: (v, i) =>
      !v.people.has(i) &&
      (AFTER_OWN.has(low(v, i - 1)) ||
        (particle(v, i) && verbAt(v, listEnd(v, i))) ||
        // "booties off | Kiwi's neckline snapped"
        (/^(on|off)$/.test(low(v, i - 1)) &&
          has(v, i - 2, 'bootie') !== undefined &&
          (verbAt(v, listEnd(v, i)) || has(v, listEnd(v, i), 'item') !== undefined))),
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
      if (v.nameAt.has(i - 1)) return false;
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
      // "all round"; "eight dogs" is a count
      if (low(v, i + 1) === 'round' || (low(v, i) === 'dogs' && v.quantityAt.has(i - 1))) return false;
      const g = v.m.from('group', i);
      if (!g || led(v, i) || has(v, i - 1, 'except') || verbBefore(v, i)) return false;
      // "kept turning the team around"
      if (
        /^(turning|spinning|swinging|tangling|slowing|stopping|holding|leading|balling|helping|wrapping)$/.test(
          low(v, i - 1),
        )
      )
        return false;
      if (
        /^(all|both|rest|other|others|neither)$/.test(low(v, i)) &&
        (!FINITE.has(low(v, g.to)) || has(v, i - 1, 'group'))
      )
        return false;
      if (/^(off|up|over)$/.test(low(v, i - 1)) && (low(v, g.to) === "'s" || has(v, i - 2, 'bootie'))) return false;
      const to = v.names.has(g.to) ? listEnd(v, g.to) : g.to;
      return verbAt(v, to) || Boolean(has(v, to, 'ate', 'drank', 'manner', 'fine', 'sign'));
    },
    even: leftOut,
  },
  {
    name: 'the <thing> <verb>',
    mark: '.',
    at(v, i) {
      if (!/^(the|my|our|his|her|their)$/.test(low(v, i)) || led(v, i) || verbBefore(v, i) || v.nameAt.has(i - 1))
        return false;
      if (fronted(v, i) || /^(it|him|her|them)$/.test(low(v, i - 1))) return false;
      for (let k = i + 1; k < i + 6; k++) {
        if (v.nameAt.has(k) && k > i + 1 && !/^(on|in|of)$/.test(low(v, k - 1))) return false;
        if (/^('s|is|are|was|were|has|had|looks|look|looked|feels|felt|seems)$/.test(low(v, k))) return k > i + 1;
        if (GOES_ON.has(low(v, k)) && !/^(of|other|one|about|in|on|both|two|same|more)$/.test(low(v, k))) return false;
      }
      return false;
    },
    markAt: (v, i) => (has(v, i + 1, 'side', 'end') ? ',' : '.'),
  },
  {
    // "warmed it inside my mitt | left one looks fine"
    name: '<left> one <verb>',
    mark: '.',
    at: (v, i) =>
      /^(left|right|other)$/.test(low(v, i)) &&
      low(v, i + 1) === 'one' &&
      /^('s|is|was|looks|looked|feels|felt|seems)$/.test(low(v, i + 2)) &&
      !/^(the|his|her)$/.test(low(v, i - 1)) &&
      !v.nameAt.has(i - 1) &&
      !has(v, i - 1, 'side', 'end', 'part') &&
      !led(v, i),
  },
  {
    name: 'everything <so>',
    mark: ',',
    at: (v, i) =>
      low(v, i) === 'everything' &&
      !led(v, i) &&
      !verbBefore(v, i) &&
      (/^('s|is|was)$/.test(low(v, i + 1)) || has(v, i + 1, 'surface', 'surface-weak') !== undefined),
  },
  {
    // "emptied their bowls | skin tenting on him now"
    name: '<gums or skin>',
    mark: '.',
    at: (v, i) =>
      /^(gums|skin|eyes)$/.test(low(v, i)) &&
      v.m.from('sign', i)?.value === 'dehydrated' &&
      !v.nameAt.has(i - 1) &&
      !has(v, i - 1, 'pronoun', 'sign') &&
      !led(v, i),
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
];
