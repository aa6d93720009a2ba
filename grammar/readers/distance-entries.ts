/** Reader "distance": makes the entry. */
import type { EntryOf } from '../entry.ts';
import type { Frame } from '../steps/frame.ts';
import type { Measure } from './distance-measures.ts';
import { said } from './places.ts';

export function addDistance(
  f: Frame,
  measure: Measure,
  value: number,
  unit: EntryOf<'distance'>['unit'],
  from: number,
  to: number,
  rule: string,
): void {
  f.add({
    kind: 'distance',
    dogs: [],
    measure,
    value,
    unit,
    // "20 yesterday and 12 today"
    ...said(/^(today|this)$/.test(f.low(to)) && f.assertion(from, to) === 'past' ? 'present' : f.assertion(from, to)),
    span: f.span([from, to]),
    rule,
  });
  f.claim(from, to);
}
