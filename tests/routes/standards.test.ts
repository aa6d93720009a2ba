/** Ids and times against the standards that define them. */
import { NIL, v1, v3, v4, v5, v6, v7, validate, version } from 'uuid';
import { describe, expect, it } from 'vitest';
import { checkNote, readTime } from '../../server/notes/check.ts';

const NOW = '2027-01-15T09:00:00-09:00';
const sent = (more: Record<string, unknown>) => ({ id: v7(), text: 'Juniper is lame', at: NOW, ...more });

describe('ids: UUIDs as RFC 9562 defines them', () => {
  // RFC 9562, appendix A.1 to A.6 and B.1, B.2: the example UUIDs of each version.
  it.each([
    ['A.1, version 1', 'C232AB00-9414-11EC-B3C8-9F6BDECED846'],
    ['A.2, version 3', '5df41881-3aed-3515-88a7-2f4a814cf09e'],
    ['A.3, version 4', '919108f7-52d1-4320-9bac-f847db4148a8'],
    ['A.4, version 5', '2ed6657d-e927-568b-95e1-2665a8aea6a2'],
    ['A.5, version 6', '1EC9414C-232A-6B00-B3C8-9F6BDECED846'],
    ['A.6, version 7', '017F22E2-79B0-7CC3-98C4-DC0C0C07398F'],
    ['B.1, version 8', '2489E9AD-2EE2-8E00-8EC9-32D5F69181C0'],
    ['B.2, version 8', '5c146b14-3c52-8afd-938a-375d0df1fbf6'],
  ])('takes %s, and keeps it in lower case (section 4)', (_name, id) => {
    expect(validate(id)).toBe(true);
    expect(checkNote(sent({ id }), NOW)).toMatchObject({ note: { id: id.toLowerCase() } });
  });

  it('takes what the uuid package makes, of every version', () => {
    for (const id of [v1(), v3('a', v4()), v4(), v5('a', v4()), v6(), v7()])
      expect(checkNote(sent({ id }), NOW), `version ${version(id)}`).toMatchObject({ note: { id } });
  });

  it.each([
    ['no variant bits (section 4.1)', '919108f7-52d1-4320-1bac-f847db4148a8'],
    ['version 9, which is reserved (section 4.2)', '919108f7-52d1-9320-9bac-f847db4148a8'],
    ['braces around', '{919108f7-52d1-4320-9bac-f847db4148a8}'],
    ['the URN form (section 4)', 'urn:uuid:919108f7-52d1-4320-9bac-f847db4148a8'],
    ['no hyphens', '919108f752d143209bacf847db4148a8'],
    ['a letter that is no digit', '919108g7-52d1-4320-9bac-f847db4148a8'],
    ['one digit short', '919108f7-52d1-4320-9bac-f847db4148a'],
    ['nothing', ''],
  ])('refuses %s, as the uuid package does', (_name, id) => {
    expect(validate(id)).toBe(false);
    expect(checkNote(sent({ id }), NOW)).toMatchObject({ says: expect.stringContaining('UUID') });
  });

  it('takes the nil UUID (section 5.9) like any other', () => {
    expect(validate(NIL)).toBe(true);
    expect(checkNote(sent({ id: NIL }), NOW)).toMatchObject({ note: { id: NIL } });
  });
});

describe('times: RFC 3339', () => {
  // RFC 3339, section 5.8: the examples, with what they are equal to as the text there says.
  it.each([
    ['1985-04-12T23:20:50.52Z', '1985-04-12T23:20:50.520Z'],
    ['1996-12-19T16:39:57-08:00', '1996-12-20T00:39:57.000Z'],
    ['1937-01-01T12:00:27.87+00:20', '1937-01-01T11:40:27.870Z'],
  ])('reads the example %s', (at, utc) => {
    expect(readTime(at)).toBe(at);
    expect(new Date(readTime(at) ?? '').toISOString()).toBe(utc);
  });

  it('keeps the leap seconds of section 5.8 as the second before, for no clock here has a sixty-first', () => {
    expect(readTime('1990-12-31T23:59:60Z')).toBe('1990-12-31T23:59:59Z');
    expect(readTime('1990-12-31T15:59:60-08:00')).toBe('1990-12-31T15:59:59-08:00');
  });

  it('reads lower-case t and z and a space (the notes of section 5.6)', () => {
    expect(readTime('1985-04-12t23:20:50.52z')).toBe('1985-04-12T23:20:50.52Z');
    expect(readTime('1985-04-12 23:20:50Z')).toBe('1985-04-12T23:20:50Z');
  });

  it('takes -00:00, the offset that is not known (section 4.3)', () => {
    expect(readTime('2027-01-14T10:40:00-00:00')).toBe('2027-01-14T10:40:00-00:00');
  });

  // ISO 8601-1:2019, 5.3.1.3 (reduced accuracy) and 5.3.4.1 (basic format of the shift): from memory.
  it.each([
    ['2027-01-14T10:40+02:00', '2027-01-14T10:40:00+02:00'],
    ['2027-01-14T10:40:30-0900', '2027-01-14T10:40:30-09:00'],
    ['2027-01-14T10:40:30-09', '2027-01-14T10:40:30-09:00'],
    ['2027-01-14T10:40:30,5Z', '2027-01-14T10:40:30.5Z'],
  ])('reads %s, which ISO 8601 allows beside', (at, kept) => {
    expect(readTime(at)).toBe(kept);
  });

  it.each([
    ['no offset', '2027-01-14T10:40:00'],
    ['a day that is not', '2027-02-29T10:40:00Z'],
    ['a month that is not', '2027-13-01T10:40:00Z'],
    ['an hour that is not', '2027-01-14T24:30:00Z'],
    ['a minute that is not', '2027-01-14T10:60:00Z'],
    ['an offset that is not', '2027-01-14T10:40:00+25:00'],
    ['a date alone', '2027-01-14'],
    ['words', 'this morning'],
    ['a date as it is spoken', 'January 14, 2027 10:40'],
  ])('refuses %s', (_name, at) => {
    expect(readTime(at)).toBeUndefined();
    expect(checkNote(sent({ at }), NOW)).toMatchObject({ says: expect.stringContaining('offset') });
  });

  it('takes the twenty-ninth of February in the years that have one', () => {
    expect(readTime('2028-02-29T10:40:00Z')).toBe('2028-02-29T10:40:00Z');
    expect(readTime('2100-02-29T10:40:00Z')).toBeUndefined();
  });
});
