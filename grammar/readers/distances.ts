/** Reader "distance": where the team is, how long the run or a part of it was, how far it is still. */
import type { EntryOf } from '../entry.ts';
import type { Frame, Quantity } from '../steps/frame.ts';
import { leftOf, metric, rightOf } from './beside.ts';
import { readBare } from './distance-bare.ts';
import { addDistance } from './distance-entries.ts';
import { measureOf } from './distance-measures.ts';
import { notOfRun } from './distance-not.ts';

const MARK_WORD = /^(mile|km|kilometre|kilometer|k|kilometres|kilometers|klick|mi|marker|kms)$/;
const KM_WORD = /^(km|kilometre|kilometer|k|klick|kilometres|kilometers|kms)$/;

/** "mile fourteen", "km 34", "k fourteen", "mile marker 9". */
export function readMark(f: Frame, q: Quantity): boolean {
  if (q.dimension !== 'number' && !(q.dimension === 'distance' && !q.unit) && q.dimension !== 'temperature')
    return false;
  if (q.dimension === 'temperature' && q.unit) return false;
  let k = q.from - 1;
  if (/^(#|-|marker|number|post|about|around|roughly|:)$/.test(f.low(k))) k--;
  const word = f.low(k);
  if (!MARK_WORD.test(word) || (f.tokens[k - 1]?.kind === 'number' && f.quantityAt(k))) return false;
  const unit = KM_WORD.test(word) ? 'km' : word === 'marker' ? (f.low(k - 1) === 'km' ? 'km' : 'mi') : 'mi';
  addDistance(f, 'mark', Math.abs(q.value), unit, k, q.to, 'mile <n>');
  return true;
}

export function readDistance(f: Frame, q: Quantity): boolean {
  // "five and change to the lake": as good as five
  const right = rightOf(f, q, 9).replace(
    /^(and change|and a bit|and some|or so|or thereabouts|odd|plus|and counting) ?/,
    '',
  );
  const left = leftOf(f, q, 7);
  const unit = q.unit as EntryOf<'distance'>['unit'] | undefined;
  // "18 in, averaging 9.5": so far in, not inches
  if (
    q.unit === 'in' &&
    f.low(q.to - 1) === 'in' &&
    left === '' &&
    f.out &&
    /^([.,;]|and\b|so far|now|$)/.test(right)
  ) {
    addDistance(f, 'mark', q.value, metric(f) ? 'km' : 'mi', q.from, q.to, '<n> in');
    return true;
  }
  if (q.dimension === 'distance' && unit && /^(mi|km|m|ft|yd)$/.test(unit)) {
    if (notOfRun(f, q)) return false;
    if (/^(mi|km)$/.test(unit) && /^(in the|an|per|each|every) hour\b/.test(right)) return false;
    addDistance(f, measureOf(f, q, left, right), q.value, unit, q.from, q.to, '<distance>');
    return true;
  }
  return readBare(f, q, left, right);
}
