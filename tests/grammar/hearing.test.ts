/** Names and trade words heard or typed wrong, by example and by property. Dogs are invented. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Context } from '../../grammar/entry.ts';
import { parse } from '../../grammar/parse.ts';
import { earsFor, soundsLike, tradeWordHeard } from '../../grammar/steps/hearing.ts';
import { distance, soundsOf } from '../../grammar/steps/hearing-sounds.ts';
import { makeSpeller, oneSlip } from '../../grammar/steps/spelling.ts';
import { tokenize } from '../../grammar/steps/tokens.ts';
import { compileHomophones, HOMOPHONES } from '../../grammar/words/homophones.ts';
import { LEXICON_WORDS } from '../../grammar/words/index.ts';

const NAMES =
  'Kestrel Otter Yarrow Sorrel Bramble Tundra Juniper Moss Tansy Kodiak Fern Cricket Sable Heron Nettle Birch Pika Flint Huckle'.split(
    ' ',
  );
const dogs = NAMES.map((name) => ({ name }));
const kennel: Context = { dogs, people: ['Wren', 'Tobias'], lineup: [], units: 'imperial' };
const facts = (text: string, context = kennel) =>
  parse(text, context)
    .filter((e) => e.kind !== 'remark')
    .map(({ span, rule, ...e }) => e);

describe('soundsLike', () => {
  const ears = earsFor(dogs);
  it.each([
    ['castro', 'Kestrel', 'near'],
    ['rambo', 'Bramble', 'near'],
    ['tender', 'Tundra', 'near'],
    ['potter', 'Otter', 'misspelt'],
    ['kestral', 'Kestrel', 'sounds'],
    ['tansie', 'Tansy', 'sounds'],
    ['tasny', 'Tansy', 'misspelt'],
    ['BRAMBEL', 'Bramble', 'sounds'],
    ['Bramble', 'Bramble', 'exact'],
  ])('hears %s as %s (%s)', (word, dog, how) => {
    expect(soundsLike(word, ears)).toEqual({ dogs: [dog], how });
  });

  it.each(['thermometer', 'yesterday', 'xylophone', 'zzz', '', '42', '—'])('hears no dog in "%s"', (word) => {
    expect(soundsLike(word, ears)).toEqual({ dogs: [], how: 'none' });
  });

  it('chooses nothing where two are about as near', () => {
    const twins = earsFor([{ name: 'Sara' }, { name: 'Sarah' }, { name: 'Moss' }]);
    const heard = soundsLike('sarra', twins);
    expect(heard.dogs.toSorted()).toEqual(['Sara', 'Sarah']);
  });

  it('knows aliases and heard forms as the roster has them', () => {
    const more = earsFor([{ name: 'Juniper', aliases: ['June'], heard: ['genie per'] }, { name: 'Moss' }]);
    expect(soundsLike('june', more)).toEqual({ dogs: ['Juniper'], how: 'exact' });
    expect(soundsLike('genie per', more)).toEqual({ dogs: ['Juniper'], how: 'exact' });
    expect(soundsLike('joon', more).dogs).toEqual(['Juniper']);
  });

  const word = fc.stringMatching(/^[A-Za-z']{0,14}$/);
  const roster = fc.uniqueArray(fc.stringMatching(/^[A-Z][a-z]{1,9}$/), {
    minLength: 1,
    maxLength: 30,
    selector: (n) => n.toLowerCase(),
  });
  it('never gives a dog that is not in the roster, whatever the word', () => {
    fc.assert(
      fc.property(roster, fc.oneof(word, fc.string({ unit: 'grapheme' })), (names, w) => {
        const heard = soundsLike(w, earsFor(names.map((name) => ({ name }))));
        expect(heard.dogs.every((d) => names.includes(d))).toBe(true);
        expect(new Set(heard.dogs).size).toBe(heard.dogs.length);
        expect(heard.how === 'none').toBe(heard.dogs.length === 0);
      }),
    );
  });
  it('lets a name as it is spelled win, in any case', () => {
    fc.assert(
      fc.property(roster, fc.nat(), fc.boolean(), (names, k, upper) => {
        const name = names[k % names.length] as string;
        const written = upper ? name.toUpperCase() : name.toLowerCase();
        expect(soundsLike(written, earsFor(names.map((n) => ({ name: n }))))).toEqual({ dogs: [name], how: 'exact' });
      }),
    );
  });
  it('hears the same in capitals and small letters', () => {
    fc.assert(
      fc.property(roster, word, (names, w) => {
        const list = names.map((name) => ({ name }));
        expect(soundsLike(w.toUpperCase(), earsFor([...list]))).toEqual(
          soundsLike(w.toLowerCase(), earsFor([...list])),
        );
      }),
    );
  });
});

describe('distance between sounds', () => {
  const sounds = fc.stringMatching(/^[iIeEAaou@YWOpbtdkgfvTszSZCJmnNlrwyhLQ]{0,12}$/);
  it('is nought for the same, the same both ways, and never below nought', () => {
    fc.assert(
      fc.property(sounds, sounds, (a, b) => {
        expect(distance(a, a)).toBe(0);
        expect(distance(a, b)).toBeCloseTo(distance(b, a), 9);
        expect(distance(a, b)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
  it('gives no more than eight ways of sounding for any text', () => {
    fc.assert(
      fc.property(fc.string(), (w) => {
        expect(soundsOf(w).length).toBeLessThanOrEqual(8);
      }),
    );
  });
});

describe('spelling', () => {
  const speller = makeSpeller(['shoulder', 'wrist', 'limping', 'booties', 'bootie', 'foot']);
  it.each([
    ['shoudler', 'shoulder'],
    ['sholder', 'shoulder'],
    ['shouldder', 'shoulder'],
    ['wrost', 'wrist'],
    ['Limpign', 'limping'],
    ['wrist', undefined],
    ['foof', undefined],
    ['shuodler', undefined],
    ['bootiee', undefined],
    ['bootiess', 'booties'],
  ])('mends %s to %s', (word, mended) => {
    expect(speller.fix(word)).toBe(mended);
  });

  /** Optimal string alignment, written out from its definition (Damerau 1964; the adjacent swap counts one). */
  function slips(a: string, b: string): number {
    const d = Array.from({ length: a.length + 1 }, (_, i) => [i, ...new Array<number>(b.length).fill(0)]);
    for (let j = 1; j <= b.length; j++) (d[0] as number[])[j] = j;
    for (let i = 1; i <= a.length; i++)
      for (let j = 1; j <= b.length; j++) {
        const at = (x: number, y: number) => (d[x] as number[])[y] as number;
        let best = Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
          best = Math.min(best, at(i - 2, j - 2) + 1);
        (d[i] as number[])[j] = best;
      }
    return (d[a.length] as number[])[b.length] as number;
  }
  it('counts slips as the definition does', () => {
    const word = fc.stringMatching(/^[abc]{0,7}$/);
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(oneSlip(a, b)).toBe(slips(a, b) === 1);
      }),
    );
  });
  it('finds by its index what going through the whole list finds', () => {
    const word = fc.stringMatching(/^[abc]{5,7}$/);
    fc.assert(
      fc.property(fc.uniqueArray(word, { maxLength: 30 }), word, (list, w) => {
        const near = list.filter((x) => slips(x, w) === 1);
        const expected = list.includes(w) || near.length !== 1 ? undefined : near[0];
        expect(makeSpeller(list).fix(w)).toBe(expected);
      }),
    );
  });
});

describe('tradeWordHeard', () => {
  const heard = (text: string, word: string) => {
    const tokens = tokenize(text);
    const i = tokens.findIndex((t) => t.low === word);
    return tradeWordHeard(tokens, i, (k) => NAMES.some((n) => n.toLowerCase() === tokens[k]?.low));
  };
  it.each([
    ['put buddies on the wheel dogs', 'buddies', 'booties'],
    ['lost a buddy on the left front', 'buddy', 'bootie'],
    ["moss's left breast is sore", 'breast', 'wrist'],
    ['checked everyone, front pause look clean', 'pause', 'paws'],
    ['left shoulder is soar', 'soar', 'sore'],
    ['june and moss in led', 'led', 'lead'],
    ['tansy eight all her kibble', 'eight', 'ate'],
    ['stopped at mile ate', 'ate', 'eight'],
    ['ate miles in', 'ate', 'eight'],
    ['kodiak wait 52 pounds', 'wait', 'weight'],
    ['his gate is off on the right', 'gate', 'gait'],
    ['tight in the left high', 'high', 'hind'],
    ['swollen tow on the right hind', 'tow', 'toe'],
    ['refused her smack', 'smack', 'snack'],
    ['wouldn’t finish, ate half the cable', 'cable', 'kibble'],
    ['messaged his shoulders', 'messaged', 'massaged'],
    ['18 blow this morning', 'blow', 'below'],
    ['chewed her hardness', 'hardness', 'harness'],
    ['the tag line broke', 'tag', 'tug'],
  ])('"%s": %s is %s', (text, word, means) => {
    expect(heard(text, word)).toBe(means);
  });

  it.each([
    ['met my buddies at the cabin', 'buddies'],
    ['we took a pause at the river', 'pause'],
    ['closed the gate by the barn', 'gate'],
    ['wait ten minutes', 'wait'],
    ['no wait that was tansy', 'wait'],
    ['tansy ate all her kibble', 'ate'],
    ['mile eight everyone fine', 'eight'],
    ['eight dogs with me', 'eight'],
    ['the high country was windy', 'high'],
    ['my left hand is frozen', 'hand'],
    ['turn left hand side at the fork', 'hand'],
    ['saw where ice is forming', 'where'],
    ['the cable on the bridge is down', 'cable'],
    ['rest stop at the lake', 'rest'],
    ['my three dogs', 'my'],
    ['put stuff in the left bag', 'stuff'],
    ['got a message from tobias', 'message'],
  ])('"%s": %s stays', (text, word) => {
    expect(heard(text, word)).toBeUndefined();
  });

  it('means words of the lexicon in every row, and says which row is wrong', () => {
    for (const rows of HOMOPHONES.values())
      for (const r of rows) expect(LEXICON_WORDS.has(r.means) || r.means === 'below', r.means).toBe(true);
    expect(() => compileHomophones([['buddies', 'qwertz', '~put']])).toThrow(/no word of the lexicon.*"buddies"/);
    expect(() => compileHomophones([['buddies', 'booties', '~nowhere']])).toThrow(
      /no class of words.*"nowhere".*"buddies"/,
    );
    expect(() => compileHomophones([['buddies', 'booties', 'put']])).toThrow(/is no place.*"buddies"/);
    expect(() => compileHomophones([['paws', 'paws', '<side']])).toThrow(/means itself/);
  });
});

describe('through the whole reading', () => {
  it.each([
    [
      'castro refused her snack',
      { kind: 'intake', dogs: ['Kestrel'], doubt: 'some', because: '"castro" was heard; Kestrel sounds like it' },
    ],
    [
      'loaded rambo at mile 12',
      { kind: 'drop', dogs: ['Bramble'], doubt: 'some', because: '"rambo" was heard; Bramble sounds like it' },
    ],
    [
      'tasny limping left front',
      { kind: 'finding', dogs: ['Tansy'], doubt: 'some', because: '"tasny" is one slip from Tansy' },
    ],
    [
      "potter's left wrist is sore",
      { kind: 'finding', dogs: ['Otter'], part: 'wrist', doubt: 'much', because: '"potter" is one slip from Otter' },
    ],
    [
      'tansy left breast is sore',
      {
        kind: 'finding',
        dogs: ['Tansy'],
        part: 'wrist',
        doubt: 'some',
        because: '"breast" was heard; wrist sounds like it',
      },
    ],
    ['put buddies on moss', { kind: 'booties', dogs: ['Moss'], state: 'on', doubt: 'some' }],
    ['bramble in led', { kind: 'hitch', dogs: ['Bramble'], position: 'lead', doubt: 'some' }],
  ])('%s', (text, entry) => {
    expect(facts(text)[0]).toMatchObject(entry);
  });

  it('offers two dogs that sound alike and chooses neither', () => {
    const twins: Context = { ...kennel, dogs: [...dogs, { name: 'Sara' }, { name: 'Sarah' }] };
    for (const text of ['sarra refused her snack', 'sarra is limping', 'loaded sarra at mile 12']) {
      const entries = parse(text, twins);
      expect(
        entries.flatMap((e) => e.dogs),
        text,
      ).toEqual([]);
      const offered = entries.find((e) => e.because?.includes('two dogs sound like "sarra"'));
      expect(offered?.because, text).toMatch(/Sarah?, Sarah?/);
      expect(offered?.doubt, text).toBe('much');
    }
  });

  it('takes ordinary words in ordinary places for no dog', () => {
    for (const text of [
      'the potter was nice to us',
      'saw an utter mess at the river',
      'loaded gear and dropped camp at noon',
      'tender snow on the lake',
      'birches along the trail',
    ])
      expect(
        parse(text, kennel).flatMap((e) => e.dogs),
        text,
      ).toEqual([]);
  });

  it('lets a person keep a name that sounds like a dog', () => {
    const both: Context = { ...kennel, people: ['Kestral'] };
    expect(parse('Kestral drank her coffee', both).flatMap((e) => e.dogs)).toEqual([]);
  });
});
