/** The assertion that the words around give, row by row. */
import { describe, expect, it } from 'vitest';
import { assertionAt } from '../../grammar/steps/scopes.ts';
import { ROWS } from './scopes-rows.ts';

function spanOf(text: string, target: string): [number, number] {
  const [words, nth] = target.split('#') as [string, string?];
  let at = text.indexOf(words);
  if (nth === '2') at = text.indexOf(words, at + 1);
  if (at < 0) throw new Error(`"${words}" does not stand in "${text}"`);
  return [at, at + words.length];
}

describe('what the words around say of a finding', () => {
  it.each(ROWS.map((r) => [...r]))('%s [%s] is %s', (text, target, assertion) => {
    expect(assertionAt(text, spanOf(text, target))).toBe(assertion);
  });
});
