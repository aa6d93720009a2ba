/** A name that nobody knows, and who is offered when two dogs fit. */
import { describe, expect, it } from 'vitest';
import { contextSchema, read } from '../../grammar/index.ts';

const team = contextSchema.parse({
  dogs: [
    { name: 'Juniper', sex: 'F' },
    { name: 'Moss', sex: 'M' },
  ],
  at: '2027-01-14T17:40',
});

describe('a name that nobody knows', () => {
  it('is reported with its span, and no dog is put in its place', () => {
    const text = "Zorvik's left wrist is swollen.";
    const { entries, unknownNames } = read(text, team);
    expect(unknownNames.map((u) => text.slice(...u.span))).toEqual(['Zorvik']);
    expect(entries.every((e) => e.dogs.length === 0)).toBe(true);
  });

  it('stands beside known ones without taking their place', () => {
    const text = 'Juniper and Zorvik in lead.';
    const { entries, unknownNames } = read(text, team);
    expect(unknownNames.map((u) => u.name)).toEqual(['Zorvik']);
    expect(entries.flatMap((e) => e.dogs)).toEqual(['Juniper']);
  });
});
