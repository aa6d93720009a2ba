/** Acts of review over the interface. */
import { v4 } from 'uuid';
import { describe, expect, it } from 'vitest';
import type { NoteView } from '../../server/routes/schemas.ts';
import { newKennel, type Wrong } from './setup.ts';

async function oneNote() {
  const kennel = await newKennel();
  await kennel.dogs('Juniper', 'Moss');
  const [kept] = await kennel.notes(['09:00', 'Juniper is lame, Moss in lead']);
  const id = kept?.id ?? '';
  const [lame, hitch] = (await kennel.note(id)).entries;
  return { kennel, id, lame, hitch };
}

describe('POST /api/notes/:id/review', () => {
  it('answers the note as it stands after each act, and the act that undo would take back', async () => {
    const { kennel, id, lame, hitch } = await oneNote();
    const seen: [string, string[], string | undefined][] = [];
    const act = async (body: unknown) => {
      const { status, json } = await kennel.review(id, body);
      expect(status).toBe(200);
      expect(json.note).toEqual(await kennel.note(id));
      expect(json.note.canUndo).toBe(json.note.lastAct !== undefined);
      seen.push([json.note.state, json.note.entries.map((e) => e.state), json.note.lastAct]);
      return json.note;
    };
    await act({ act: 'accept', entry: lame?.id.toUpperCase() });
    await act({ act: 'accept-all' });
    const changed = await act({
      act: 'change',
      entry: hitch?.id,
      to: { kind: 'hitch', dogs: ['moss'], position: 'wheel' },
    });
    expect(changed.entries[1]).toMatchObject({
      from: 'read',
      entry: { kind: 'hitch', dogs: ['Moss'], position: 'wheel', span: [17, 29] },
      was: { kind: 'hitch', dogs: ['Moss'], position: 'lead', span: [17, 29] },
    });
    await act({ act: 'remove', entry: hitch?.id });
    const added = await act({
      act: 'add',
      to: { kind: 'weather', dogs: [], condition: 'clear', assertion: 'possible' },
    });
    expect(added.entries[2]).toMatchObject({ from: 'person', entry: { assertion: 'possible' } });
    await act({ act: 'set-aside', aside: true });
    for (let i = 0; i < 6; i++) await act({ act: 'undo' });
    const pp = ['proposed', 'proposed'];
    const forward: typeof seen = [
      ['waiting', ['accepted', 'proposed'], 'accept'],
      ['reviewed', ['accepted', 'accepted'], 'accept-all'],
      ['reviewed', ['accepted', 'accepted'], 'change'],
      ['reviewed', ['accepted', 'removed'], 'remove'],
      ['reviewed', ['accepted', 'removed', 'accepted'], 'add'],
      ['aside', ['accepted', 'removed', 'accepted'], 'set-aside'],
    ];
    expect(seen).toEqual([...forward, ...forward.slice(0, -1).reverse(), ['waiting', pp, undefined]]);
    const over = await kennel.review<Wrong>(id, { act: 'undo' });
    expect(over.status).toBe(409);
    expect(over.json.error.message).toBe('There is nothing to undo in this note.');
  });

  it('never changes the text, the time or the speaker', async () => {
    const { kennel, id } = await oneNote();
    const before = await kennel.note(id);
    await kennel.review(id, { act: 'accept-all' });
    const { text, at, received } = await kennel.note(id);
    expect({ text, at, received }).toEqual({ text: before.text, at: before.at, received: before.received });
    expect((await kennel.ask<Wrong>('PATCH', `/api/notes/${id}`, { text: 'other' })).status).toBe(404);
    expect((await kennel.ask<Wrong>('DELETE', `/api/notes/${id}`)).status).toBe(404);
    const tried = await kennel.review<Wrong>(id, { act: 'accept-all', text: 'other' });
    expect(tried.status).toBe(400);
  });

  it('takes acts that come at the same moment one after the other', async () => {
    const { kennel, id, lame, hitch } = await oneNote();
    await Promise.all([
      kennel.review(id, { act: 'accept', entry: lame?.id }),
      kennel.review(id, { act: 'accept', entry: hitch?.id }),
      kennel.review(id, { act: 'accept-all' }),
      kennel.review(id, { act: 'accept', entry: lame?.id }),
    ]);
    const note = await kennel.note(id);
    expect(note.entries.map((e) => e.state)).toEqual(['accepted', 'accepted']);
    await kennel.review(id, { act: 'undo' });
    await kennel.review(id, { act: 'undo' });
    expect((await kennel.note(id)).canUndo).toBe(false);
  });

  it.each<[string, unknown, number, RegExp]>([
    ['an act nobody knows', { act: 'like' }, 400, /“act”/],
    ['no act', {}, 400, /“act”/],
    ['no object', 'accept', 400, /./],
    ['no entry named', { act: 'accept' }, 400, /“entry” is missing/],
    ['an id that is none', { act: 'accept', entry: '1' }, 400, /“entry” has to be a UUID/],
    ['an entry that is not there', { act: 'remove', entry: v4() }, 404, /no longer part of the note/],
    ['no entry to add', { act: 'add' }, 400, /“to” is missing|“to” has to be/],
    ['an entry of no kind', { act: 'add', to: { kind: 'mood', dogs: [] } }, 400, /“to.kind”/],
    ['an entry without dogs', { act: 'add', to: { kind: 'gait', gait: 'trot' } }, 400, /“to.dogs” is missing/],
    [
      'an entry with half its fields',
      { act: 'add', to: { kind: 'distance', dogs: [], measure: 'total', value: 3 } },
      400,
      /“to.unit” has to be one of/,
    ],
    [
      'a value out of range',
      { act: 'add', to: { kind: 'distance', dogs: [], measure: 'total', value: -3, unit: 'mi' } },
      400,
      /“to.value” is too small \(at least 0\)/,
    ],
    [
      'a time that is none',
      { act: 'add', to: { kind: 'clock', dogs: [], event: 'start', time: '25:00' } },
      400,
      /“to.time”.*HH:MM/,
    ],
    [
      'a dog that is not in the roster',
      { act: 'add', to: { kind: 'gait', dogs: ['Fennel'], gait: 'trot' } },
      400,
      /No dog in the roster is called “Fennel”/,
    ],
    [
      'words that are not in the note',
      { act: 'add', to: { kind: 'gait', dogs: [], gait: 'trot', span: [0, 99] } },
      400,
      /29 long/,
    ],
    ['a span of one number', { act: 'add', to: { kind: 'gait', dogs: [], gait: 'trot', span: [0] } }, 400, /“to.span/],
    ['aside without a yes or no', { act: 'set-aside' }, 400, /“aside” is missing/],
  ])('answers %s with a sentence, and changes nothing', async (_what, body, status, says) => {
    const { kennel, id } = await oneNote();
    const before = kennel.store.season('2026-27');
    const { status: got, json } = await kennel.review<Wrong>(id, body);
    expect(got).toBe(status);
    expect(json.error.message).toMatch(says);
    expect(json.error.message).toMatch(/\.$/);
    expect(kennel.store.season('2026-27')).toBe(before);
  });

  it('answers 404 for a note that is not there', async () => {
    const kennel = await newKennel();
    const { status, json } = await kennel.review<Wrong>(v4(), { act: 'accept-all' });
    expect([status, json.error.code]).toEqual([404, 'not-found']);
  });

  it('drops fields that the kind does not have', async () => {
    const { kennel, id } = await oneNote();
    const { json } = await kennel.review(id, {
      act: 'add',
      to: { kind: 'gait', dogs: ['Moss'], gait: 'trot', sign: 'lame' },
    });
    expect((json.note as NoteView).entries.at(-1)?.entry).toEqual({ kind: 'gait', dogs: ['Moss'], gait: 'trot' });
  });
});
