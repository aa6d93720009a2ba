/** Readers "hitch" and "move": is a word of place a place here, or its dogs, a piece of gear, the whole team? */
import type { LeftRight } from '../entry.ts';
import type { DogPhrase, Frame } from '../steps/frame.ts';
import type { Assignment } from './place-assignments.ts';

export const SIDE: Record<string, LeftRight> = { left: 'left', l: 'left', right: 'right', r: 'right' };

/** "Emil and Lotte as team dogs", "Sula and Ohm team dogs", "leaders: Ivy and Storm": a place, not its dogs. */
export const namesPlace = (f: Frame, d: DogPhrase) =>
  d.kind === 'group' &&
  /^(lead|swing|team|wheel)$/.test(d.value ?? '') &&
  (headsNames(f, d) ||
    f.dogs.some(
      (x) => x.kind === 'names' && !x.possessive && x.to === (f.low(d.from - 1) === 'as' ? d.from - 1 : d.from),
    ));
/** "Leaders Ivy and Storm, wheelers were Tank and Gus": the place with its dogs behind it, and nothing told of them. */
function headsNames(f: Frame, d: DogPhrase): boolean {
  let k = d.to;
  while (/^(:|-|=|are|were|is|was|'re|'s|today|tonight|this|morning|tomorrow|will|be)$/.test(f.low(k))) k++;
  const names = f.dogFrom(k);
  if (names?.kind !== 'names' || names.possessive || names.company) return false;
  // "the wheelers, Tank and Gus" and "leaders Ivy and Storm pulled": dogs spoken of, not put there
  const begins = d.from === 0 || f.isStrong(d.from - 1) || /^(,|and|with|:|-)$/.test(f.low(d.from - 1));
  if (!begins) return false;
  const next = f.low(names.to);
  if (SIDE[next] && !f.siteAt(names.to)) return true;
  if (!/^([.,;/]|and|with|today|tonight|tomorrow|again|)$/.test(next) && !f.m.from('position', names.to)) return false;
  return names.dogs.length > 1 || k > d.to || f.m.from('position', names.to + 1) !== undefined;
}
export const insideGroup = (f: Frame, i: number) => f.dogs.some((d) => d.from <= i && i < d.to && !namesPlace(f, d));
export const isGear = (f: Frame, from: number, to: number) => {
  const item = f.m.at('item', from);
  return Boolean(item && (item.to > to || item.from < from));
};

/** "team" is a place only in a place's slot: "in team", "team left", "Sable and Heron team". */
export function teamStands(f: Frame, to: number, between: string): boolean {
  // "Gus and Penny are our team dogs"
  if (/^dogs?$/.test(f.low(to - 1)) && /\b(is|are|'s|were|was|as|be)( (my|our|the|both|all))*$/.test(between))
    return true;
  if (/\b(in|at|to|into|back|as)$/.test(between) || between === '' || between === 'up') return true;
  return Boolean(SIDE[f.low(to)]) || /\b(left|right|l|r)$/.test(between);
}

/** "Team: Miles and Ivy, …" at the head of a note names the whole team, not the middle of it. */
export const teamHeading = (f: Frame, from: number, to: number, told: readonly Assignment[]) =>
  !told.length && /^[:=-]$/.test(f.low(to)) && (from === 0 || f.isStrong(from - 1));
