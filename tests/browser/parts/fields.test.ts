/** The form of an entry is read out of the contract's schemas: what goes in comes out, what is wrong is said. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Entry, entrySchema, type Kind } from '../../../grammar/entry.ts';
import { changeKind, type Field, fieldsOf, fromForm, isAsked, KINDS, toForm } from '../../../web/parts/fields.ts';

function anyValue(field: Field): fc.Arbitrary<unknown> {
  switch (field.type) {
    case 'choice':
      return fc.constantFrom(...field.values);
    case 'several':
      return fc.subarray([...field.values], { minLength: 1 });
    case 'number':
      return fc.integer({ min: field.min ?? -999, max: 999 }).map((n) => n / 4);
    case 'time':
      return fc
        .tuple(fc.nat(23), fc.nat(59))
        .map(([h, m]) => `${String(h).padStart(2, '0')}:${String(m).padStart(2, '0')}`);
    case 'text':
      return fc.constantFrom('zinc cream', 'snap', 'Wren');
  }
}
/** Entries as the form makes them: `end` only with the parts that need it. */
const entryOf = (kind: Kind): fc.Arbitrary<Entry> =>
  fc
    .record(
      Object.fromEntries(
        fieldsOf(kind).map((field) => [
          field.name,
          field.optional ? fc.option(anyValue(field), { nil: undefined }) : anyValue(field),
        ]),
      ),
    )
    .map((fields) => {
      const asked = Object.entries(fields).filter(([name, value]) => {
        const field = fieldsOf(kind).find((one) => one.name === name) as Field;
        return value !== undefined && (name !== 'end' || isAsked(field, { part: String(fields.part ?? '') }));
      });
      return entrySchema.parse({ kind, dogs: ['Juniper'], ...Object.fromEntries(asked) });
    });

test('every kind of the contract has a form', () => {
  expect([...KINDS]).toEqual(entrySchema.options.map((schema) => schema.shape.kind.value));
  expect(fieldsOf('finding').map((field) => [field.name, field.type, field.optional, field.values.length])).toEqual([
    ['part', 'choice', true, 25],
    ['side', 'choice', true, 3],
    ['end', 'choice', true, 3],
    ['sign', 'choice', false, 28],
    ['severity', 'choice', true, 3],
    ['trend', 'choice', true, 3],
  ]);
  expect(fieldsOf('clock').map((field) => field.type)).toEqual(['choice', 'time']);
});

describe.each([...KINDS])('%s', (kind) => {
  test('an entry laid into the form comes out as it was', () => {
    fc.assert(
      fc.property(entryOf(kind), (entry) => {
        expect(fromForm(kind, toForm(entry), entry)).toEqual({ entry });
      }),
    );
  });
});

test('span and rule stay with the entry, doubt does not: a person has decided', () => {
  const read: Entry = {
    kind: 'trail',
    dogs: [],
    surface: 'icy',
    assertion: 'planned',
    span: [3, 9],
    rule: 'surface word',
    doubt: 'some',
    because: 'a forecast?',
  };
  expect(fromForm('trail', toForm(read), read)).toEqual({
    entry: { kind: 'trail', dogs: [], surface: 'icy', assertion: 'planned', span: [3, 9], rule: 'surface word' },
  });
});

test('wrong and missing fields are told apart, field by field', () => {
  expect(fromForm('distance', { dogs: [], measure: 'total', unit: 'mi', value: 'far' })).toEqual({
    wrong: { value: 'Give a number, like 14.5.' },
  });
  expect(fromForm('distance', { dogs: [], measure: 'total', unit: 'mi', value: '-3' })).toEqual({
    wrong: { value: 'Give a number that is not below 0.' },
  });
  expect(fromForm('clock', { dogs: [], event: 'stop', time: '25:10' })).toEqual({
    wrong: { time: 'Give a time as hours and minutes, like 16:10.' },
  });
  expect(fromForm('gear', { dogs: [], state: 'broken' })).toEqual({ wrong: { item: 'This has to be given.' } });
  expect(fromForm('distance', { dogs: [], measure: 'mark', unit: 'mi', value: '14,5' })).toEqual({
    entry: { kind: 'distance', dogs: [], measure: 'mark', unit: 'mi', value: 14.5 },
  });
});

test('another kind keeps what both have, and takes the kennel’s units', () => {
  const finding = toForm({
    kind: 'finding',
    dogs: ['Moss'],
    part: 'wrist',
    side: 'left',
    sign: 'sore',
    assertion: 'past',
  });
  expect(changeKind('care', finding, 'imperial')).toEqual({
    dogs: ['Moss'],
    assertion: 'past',
    part: 'wrist',
    side: 'left',
    act: 'massaged',
  });
  expect(changeKind('distance', finding, 'metric').unit).toBe('km');
  expect(changeKind('temperature', finding, 'imperial').unit).toBe('F');
});
