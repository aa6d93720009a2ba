/**
 * Names heard wrong, against words that nobody here chose: city dog-licence names joined with the CMU pronouncing dictionary
 * (npm cmu-pronouncing-dictionary, ISC), read from `../shared/external` and not kept in the project. Each name stands in a
 * roster of thirty whose other names sound different. How words sound is also checked against the dictionary itself, and
 * what a name is taken for by mistake against the 20,000 commonest English words (npm popular-english-words, ISC).
 */
import { dictionary } from 'cmu-pronouncing-dictionary';
// @ts-expect-error the package has no types: an array of words, the commonest first
import { words as popular } from 'popular-english-words/words.js';
import { describe, expect, it } from 'vitest';
import type { Context } from '../../grammar/entry.ts';
import { parse } from '../../grammar/parse.ts';
import { earsFor, soundsLike } from '../../grammar/steps/hearing.ts';
import { distance, soundsOf, weightOf } from '../../grammar/steps/hearing-sounds.ts';
import { LEXICON_WORDS } from '../../grammar/words/index.ts';
import { nameRows, nameRowsHere, others, soundOf } from '../grammar/kennels.ts';

const kennel = (names: readonly string[]) => names.map((name) => ({ name }));
const context = (names: readonly string[]): Context => ({
  dogs: kennel(names),
  people: [],
  lineup: [],
  units: 'imperial',
});

describe.runIf(nameRowsHere)('homophones of licence names in a roster of thirty', () => {
  it('gives the dog in at least 95 of 100, over three draws of the other names', () => {
    let found = 0;
    let all = 0;
    const wrong: string[] = [];
    for (const draw of [0, 1, 2]) {
      nameRows.forEach((row, k) => {
        const ears = earsFor(kennel([row.name, ...others(row, 29, k + draw * 1000)]));
        for (const word of row.homophones) {
          const heard = soundsLike(word, ears);
          all++;
          if (heard.dogs.length === 1 && heard.dogs[0] === row.name) found++;
          else if (heard.dogs.length === 1) wrong.push(`${word} for ${row.name} → ${heard.dogs}`);
        }
      });
    }
    console.log(`homophones: ${found} of ${all} found, ${wrong.length} another dog (${wrong.join('; ') || '-'})`);
    expect(found / all).toBeGreaterThanOrEqual(0.95);
    expect(wrong.length / all).toBeLessThan(0.005);
  });

  it('never chooses between two dogs of the file that sound the same, and offers both', () => {
    const guessed: string[] = [];
    let both = 0;
    let all = 0;
    nameRows.forEach((row, k) => {
      for (const twin of nameRows.filter((r) => r !== row && soundOf(r) === soundOf(row))) {
        const names = [row.name, twin.name, ...others(row, 28, k)];
        const ears = earsFor(kennel(names));
        const written = new Set(names.map((n) => n.toLowerCase()));
        for (const word of new Set([...row.homophones, ...twin.homophones])) {
          if (written.has(word)) continue;
          const { dogs } = soundsLike(word, ears);
          all++;
          if (dogs.length === 1) guessed.push(`${word}: ${row.name} or ${twin.name} → ${dogs}`);
          if (dogs.includes(row.name) && dogs.includes(twin.name)) both++;
        }
      }
    });
    expect(all).toBeGreaterThan(100);
    expect(guessed).toEqual([]);
    expect(both / all).toBeGreaterThan(0.98);
  });

  it('chooses seldom where a second dog carries one of the rarer spellings as its name', () => {
    // "Koehl", "Rioux" and "Ori" do not tell their sound by English spelling: the second dog is then not heard at all.
    let guessed = 0;
    let all = 0;
    nameRows.forEach((row, k) => {
      for (const second of row.homophones) {
        const ears = earsFor(kennel([row.name, second, ...others(row, 28, k)]));
        for (const word of row.homophones) {
          if (word === second) continue;
          all++;
          if (soundsLike(word, ears).dogs.length === 1) guessed++;
        }
      }
    });
    console.log(`two of one sound, rare spellings: ${guessed} of ${all} chosen`);
    expect(guessed / all).toBeLessThan(0.06);
  });

  it('reaches the entry through the whole parse, in doubt and with the reason', () => {
    const notes: readonly [string, (word: string) => string][] = [
      ['refused', (w) => `${w} refused her snack`],
      ['loaded', (w) => `loaded ${w} at mile 12`],
    ];
    for (const [kind, note] of notes) {
      let found = 0;
      let all = 0;
      const other: string[] = [];
      const noReason: string[] = [];
      const missed: string[] = [];
      nameRows.forEach((row, k) => {
        const names = [row.name, ...others(row, 29, k)];
        for (const word of row.homophones) {
          // A word of the trade ("chilly", "blue") is that word; letters and points are no word a recogniser writes for a name.
          if (LEXICON_WORDS.has(word) || !/^[a-z]{3,}$/.test(word)) continue;
          if (names.some((n) => n.toLowerCase() === word || `${n.toLowerCase()}s` === word)) continue;
          all++;
          const entries = parse(note(word), context(names)).filter((e) => e.kind === 'intake' || e.kind === 'drop');
          const dogs = entries.flatMap((e) => e.dogs);
          if (dogs.length === 1 && dogs[0] === row.name) {
            found++;
            if (entries.some((e) => e.doubt !== 'some' && e.doubt !== 'much') || !entries[0]?.because)
              noReason.push(word);
          } else if (dogs.length) other.push(`${word} for ${row.name} → ${dogs}`);
          else missed.push(word);
        }
      });
      console.log(
        `parse, ${kind}: ${found} of ${all} found, ${other.length} another (${other.join('; ') || '-'}), not: ${missed.join(' ')}`,
      );
      expect(noReason).toEqual([]);
      expect(other.length / all).toBeLessThan(0.01);
      expect(found / all).toBeGreaterThanOrEqual(0.95);
    }
  });

  it('takes few ordinary English words for a name', () => {
    const names = new Set(nameRows.flatMap((r) => [r.name.toLowerCase(), ...r.homophones]));
    const words = (popular as string[]).slice(0, 20_000).filter((w) => /^[a-z]{3,}$/.test(w) && !names.has(w));
    let close = 0;
    let near = 0;
    for (let k = 0; k < 20; k++) {
      const ears = earsFor(kennel(others(nameRows[k * 20] as (typeof nameRows)[0], 30, k)));
      for (let i = k; i < words.length; i += 20) {
        const heard = soundsLike(words[i] as string, ears);
        if (heard.how === 'sounds' || heard.how === 'misspelt') close++;
        else if (heard.how === 'near') near++;
      }
    }
    console.log(`English words taken for one of thirty names: ${close} close, ${near} near, of ${words.length}`);
    expect(close / words.length).toBeLessThan(0.008);
    expect(near / words.length).toBeLessThan(0.04);
  });
});

describe('how words sound, against the CMU pronouncing dictionary', () => {
  /** The dictionary's sounds in this project's letters. */
  const LETTER: Record<string, string> = {
    AA: 'a',
    AE: 'A',
    AH: '@',
    AO: 'a',
    AW: 'W',
    AY: 'Y',
    EH: 'E',
    ER: '@r',
    EY: 'e',
    IH: 'I',
    IY: 'i',
    OW: 'o',
    OY: 'O',
    UH: 'u',
    UW: 'u',
    B: 'b',
    CH: 'C',
    D: 'd',
    DH: 'T',
    F: 'f',
    G: 'g',
    HH: 'h',
    JH: 'J',
    K: 'k',
    L: 'l',
    M: 'm',
    N: 'n',
    NG: 'N',
    P: 'p',
    R: 'r',
    S: 's',
    SH: 'S',
    T: 't',
    TH: 'T',
    V: 'v',
    W: 'w',
    Y: 'y',
    Z: 'z',
    ZH: 'Z',
  };
  it('is within a tenth of the word for nine in ten of the commonest words', () => {
    let close = 0;
    let all = 0;
    for (const word of (popular as string[]).slice(0, 8000)) {
      const said = (dictionary as Record<string, string>)[word];
      if (!said || !/^[a-z]{3,}$/.test(word)) continue;
      const theirs = said
        .split(' ')
        .map((p) => LETTER[p.replace(/\d/, '')])
        .join('')
        .replace(/@l$/, '@L');
      const best = Math.min(...soundsOf(word).map((s) => distance(s, theirs) / Math.max(1, weightOf(theirs))));
      all++;
      if (best <= 0.1) close++;
    }
    console.log(`sounds: ${close} of ${all} words within a tenth of the dictionary`);
    expect(all).toBeGreaterThan(5000);
    expect(close / all).toBeGreaterThanOrEqual(0.9);
  });
});
