/**
 * What corrections teach about names. Where a person changed nothing of an entry but its dog, and the words show a name
 * that was heard wrong, that form of the name is counted for the dog. From the second time on it is offered as a learned
 * word; a person decides. Nothing is learned from a correction of anything else, nor where it is not plain which word it was.
 */

import { isDeepStrictEqual } from 'node:util';
import { doubleMetaphone } from 'double-metaphone';
import type { Entry, Span } from '../../grammar/entry.ts';
import type { Dog, Kennel, Note, ReviewedEntry } from '../model.ts';
import { dogNamed, fold, says, words } from './names.ts';

/** How many times a form has to be corrected to the same dog before it is offered. */
const OFFER_AT = 2;

/** A form of a name as it stands in the note, and the dog that was meant. */
export interface Correction {
  heard: string;
  dogId: string;
}

/** The corrections of names that a note's changed entries hold, each once. */
export function correctionsOf(note: Note, dogs: readonly Dog[]): Correction[] {
  const found = new Map<string, Correction>();
  for (const entry of note.entries) {
    const one = correctionIn(entry, note, dogs);
    if (one) found.set(`${fold(one.heard)} ${one.dogId}`, one);
  }
  return [...found.values()];
}

function correctionIn(reviewed: ReviewedEntry, note: Note, dogs: readonly Dog[]): Correction | undefined {
  const { was, entry } = reviewed;
  if (!was?.span || reviewed.state === 'removed' || !isDeepStrictEqual(fields(was), fields(entry))) return undefined;
  const idsOf = (names: string[]) => names.map((name) => dogNamed(dogs, name));
  const [before, after] = [idsOf(was.dogs), idsOf(entry.dogs)];
  const come = after.filter((dog) => dog && !before.includes(dog));
  const gone = before.filter((dog) => !after.includes(dog));
  const dog = come[0];
  if (!dog || come.length !== 1 || gone.length > 1) return undefined;
  const heard = heardFor(note, was.span, gone[0]);
  return heard === undefined ? undefined : { heard, dogId: dog.id };
}

/** What an entry says beside its dogs and how it was read. */
function fields(entry: Entry): Record<string, unknown> {
  const { dogs: _dogs, span: _span, rule: _rule, doubt: _doubt, because: _because, ...rest } = entry;
  return rest;
}

/** The one word that stands for the name, in the entry's own words or else in their sentence. */
function heardFor(note: Note, span: Span, read: Dog | undefined): string | undefined {
  return heardIn(note, span, read) ?? heardIn(note, sentenceAround(note.text, span), read);
}

/** The one unknown name in a stretch of the note, or the one word there that sounds like the dog that was read. */
function heardIn(note: Note, [start, end]: Span, read: Dog | undefined): string | undefined {
  const unknown = note.unknownNames.filter(({ span }) => span[0] >= start && span[1] <= end);
  if (unknown.length > 0) return unknown.length === 1 ? unknown[0]?.name : undefined;
  if (!read) return undefined;
  const names = [read.name, ...read.aliases, ...read.formerNames];
  // The name was said in so many words: the wrong dog was picked, but no name was heard wrong.
  if (names.some((name) => says(note.text, name))) return undefined;
  const alike = words(note.text.slice(start, end)).filter(({ word }) => names.some((name) => soundsLike(word, name)));
  return alike.length === 1 ? alike[0]?.word : undefined;
}

/** From the mark before to the mark after; a note without marks is one sentence. */
function sentenceAround(text: string, [start, end]: Span): Span {
  const before = text.slice(0, start).search(/[^.!?;\n]*$/);
  const after = text.slice(end).search(/[.!?;\n]/);
  return [before, after < 0 ? text.length : end + after];
}

function soundsLike(a: string, b: string): boolean {
  const [codesA, codesB] = [doubleMetaphone(a), doubleMetaphone(b)];
  return codesA.some((code) => code !== '' && codesB.includes(code));
}

/** The kennel with the corrections that a review added counted, and those that it took back discounted. */
export function count(kennel: Kennel, before: Correction[], after: Correction[]): Kennel {
  const has = (list: Correction[], one: Correction) => list.some((other) => same(other, one));
  const added = after.filter((one) => !has(before, one));
  const taken = before.filter((one) => !has(after, one));
  if (added.length + taken.length === 0) return kennel;
  let learned = kennel.learned;
  for (const { heard, dogId } of added) {
    const old = learned.find((l) => same({ heard: l.heard, dogId: l.dog }, { heard, dogId }));
    learned = old
      ? learned.map((l) => (l === old ? { ...l, times: l.times + 1 } : l))
      : [...learned, { heard, dog: dogId, times: 1 }];
  }
  for (const one of taken)
    learned = learned
      .map((l) => (same({ heard: l.heard, dogId: l.dog }, one) ? { ...l, times: l.times - 1 } : l))
      .filter((l) => l.times > 0);
  return { ...kennel, learned };
}

const same = (a: Correction, b: Correction) => a.dogId === b.dogId && fold(a.heard) === fold(b.heard);

/** The form to offer after these corrections: counted often enough, and no dog's name or known form yet. */
export function offerFor(
  kennel: Kennel,
  corrections: Correction[],
): { heard: string; dog: string; dogId: string } | undefined {
  for (const { heard, dogId } of corrections) {
    const dog = kennel.dogs.find((d) => d.id === dogId);
    const times = kennel.learned.find((l) => same({ heard: l.heard, dogId: l.dog }, { heard, dogId }))?.times ?? 0;
    const taken =
      dogNamed(kennel.dogs, heard) || kennel.dogs.some((d) => d.heard.some((form) => fold(form) === fold(heard)));
    if (dog && times >= OFFER_AT && !taken) return { heard, dog: dog.name, dogId };
  }
  return undefined;
}
