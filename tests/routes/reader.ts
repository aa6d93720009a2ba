/** A reader that knows five sentences, so that the tests of the routes do not hang on what the grammar can read. */
import type { Context, Entry, Span } from '../../grammar/entry.ts';
import type { Reading } from '../../grammar/parse.ts';

const RULES: [RegExp, (m: RegExpExecArray, context: Context, dogs: string[], span: Span) => Entry][] = [
  [
    /(\w+)(?: and (\w+))? in (lead|swing|team|wheel)/g,
    (m, _c, dogs, span) => ({ kind: 'hitch', dogs, position: m[3] as 'lead', span }),
  ],
  [/(\w+) is lame/g, (_m, _c, dogs, span) => ({ kind: 'finding', dogs, sign: 'lame', span })],
  [
    /()everyone ate/g,
    (_m, context, _d, span) => ({
      kind: 'intake',
      dogs: context.lineup.length > 0 ? context.lineup.map((place) => place.dog) : ['*'],
      what: 'snack',
      took: 'all',
      span,
    }),
  ],
  [/()(?<miles>\d+) miles/g, (m, _c, _d, span) => miles(m, 'mi', span)],
  [
    /()ran (?<miles>\d+)(?! miles)\b/g,
    (m, context, _d, span) => miles(m, context.units === 'metric' ? 'km' : 'mi', span),
  ],
];

const miles = (m: RegExpExecArray, unit: 'mi' | 'km', span: Span): Entry => ({
  kind: 'distance',
  dogs: [],
  measure: 'total',
  value: Number(m.groups?.miles),
  unit,
  span,
});

/**
 * "Juniper and Moss in lead", "Otter is lame", "everyone ate", "20 miles", "ran 20"; anything else is a remark. A name
 * the roster does not hold is an unknown name. "BOOM" throws, "CROOKED" gives an entry that is none.
 */
export function read(text: string, context: Context): Reading {
  if (text.includes('BOOM')) throw new Error('the reader broke');
  if (text.includes('CROOKED'))
    return {
      entries: [{ kind: 'gait', dogs: [], gait: 'sideways', span: [0, 7] } as unknown as Entry],
      unknownNames: [],
    };
  const entries: Entry[] = [];
  const unknownNames: Reading['unknownNames'] = [];
  for (const [pattern, make] of RULES)
    for (const m of text.matchAll(pattern)) {
      const span: Span = [m.index, m.index + m[0].length];
      const dogs: string[] = [];
      for (const word of [m[1], m[2]]) {
        if (!word) continue;
        const known = dogOf(word, context);
        if (known) dogs.push(known);
        else {
          const at = text.indexOf(word, m.index);
          unknownNames.push({ name: word, span: [at, at + word.length] });
        }
      }
      entries.push(make(m as RegExpExecArray, context, dogs, span));
    }
  if (entries.length === 0 && text.trim() !== '')
    entries.push({ kind: 'remark', dogs: [], text, span: [0, text.length] });
  return { entries: entries.sort((a, b) => (a.span?.[0] ?? 0) - (b.span?.[0] ?? 0)), unknownNames };
}

function dogOf(word: string, context: Context): string | undefined {
  const low = word.toLowerCase();
  return context.dogs.find((dog) =>
    [dog.name, ...(dog.aliases ?? []), ...(dog.heard ?? [])].some((name) => name.toLowerCase() === low),
  )?.name;
}
