/** Files that can't be read, are missing, or were edited by hand: nothing is lost, and a sentence says what was done. */
import { linkSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FolderUnusableError, openStore } from '../../server/store/index.ts';
import { add, ids, note, SEASON, temporaryFolder, uuid } from './helpers.ts';

const FILE = 'season-2026-27.json';
const EARLIER = 'season-2026-27.earlier.json';
const now = () => new Date('2027-01-14T10:40:05Z');

/** A folder whose season holds notes 1 and 2, and note 1 in its earlier copy. */
async function twoNotes(): Promise<string> {
  const folder = temporaryFolder();
  const store = await openStore(folder);
  await store.changeKennel((k) => [{ ...k, settings: { ...k.settings, kennel: 'Hollow Spruce' } }, 0]);
  await store.changeSeason(SEASON, add(note(1)));
  await store.changeSeason(SEASON, add(note(2)));
  await store.close();
  return folder;
}
const at = (folder: string, name = FILE) => join(folder, name);
const read = (folder: string, name = FILE) => readFileSync(at(folder, name), 'utf8');
const edit = (folder: string, change: (text: string) => string, name = FILE) =>
  writeFileSync(at(folder, name), change(read(folder, name)));
const everything = (folder: string) =>
  Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((name) => [name, read(folder, name)]),
  );

/** What was done to the file, and what the warning must say of it. */
const damages: [string, (text: string) => string, RegExp][] = [
  [
    'a comma missing between two notes',
    (t) => t.replace('},\n{"id"', '}\n{"id"'),
    /a comma is missing, at line 4, column 1\./,
  ],
  [
    'a comma missing inside a note',
    (t) => t.replace('"by":"Wren","source"', '"by":"Wren" "source"'),
    /a comma is missing, at line 3, column \d+\./,
  ],
  ['the end cut off', (t) => t.slice(0, t.length / 2), /it ends too early, at line \d, column \d+\./],
  [
    'the end cut off inside a text',
    (t) => t.slice(0, t.indexOf('wrist is') + 3),
    /it ends too early, at line 3, column \d+\./,
  ],
  ['the last brace lost', (t) => t.trimEnd().slice(0, -1), /it ends too early, at line \d+, column \d+\./],
  ['nothing in it', () => '', /it is empty\./],
  ['zeros in it, as after a power cut', (t) => '\0'.repeat(t.length), /at line 1, column 1\./],
  ['a quote not closed', (t) => t.replace('"Wren"', '"Wren'), /line 3, column \d+\./],
  ['a comma too many', (t) => t.replace('}\n],', '},\n],'), /a comma too many, at line 5, column 1\./],
  [
    'a comment',
    (t) => t.replace('"notes"', '// mine\n"notes"'),
    /there is a comment, which JSON does not know, at line 2, column 1\./,
  ],
  ['another kind of value', () => '[]', /it does not hold one JSON object\./],
  [
    'a note without its text',
    (t) => t.replace(/"text":"Note 2[^"]*",/, ''),
    /notes\[2\] text is not as it should be \(.+\), at line 4, column 1\./,
  ],
  [
    'a kind of entry nobody knows',
    (t) => t.replace('"finding"', '"hunch"'),
    /notes\[1\] entries\[1\] entry kind is not as it should be \(.+\), at line 3, column \d+\./,
  ],
  [
    'the name of another season',
    (t) => t.replace('"2026-27"', '"2025-26"'),
    /it says that it holds the season 2025-26\./,
  ],
  [
    'a schema that is no number',
    (t) => t.replace('"schema":1', '"schema":"one"'),
    /schema is not as it should be \(.+\), at line 1, column 11\./,
  ],
];

describe('a season’s file with', () => {
  it.each(damages)('%s: is set aside, the earlier copy is used, a sentence says so', async (_what, damage, says) => {
    const folder = await twoNotes();
    edit(folder, damage);
    const damaged = read(folder);
    let store = await openStore(folder, { now });
    expect(ids(store.season(SEASON))).toEqual([uuid(1)]);
    expect(store.warnings).toHaveLength(1);
    const [warning] = store.warnings;
    expect(warning).toMatch(/^season-2026-27\.json could not be read: /);
    expect(warning).toMatch(says);
    expect(warning).toContain('It was set aside as season-2026-27.unreadable-20270114T104005Z.json.');
    expect(warning).toContain('The earlier copy, season-2026-27.earlier.json, was used');
    expect(read(folder, 'season-2026-27.unreadable-20270114T104005Z.json')).toBe(damaged);
    expect(store.kennel().settings.kennel).toBe('Hollow Spruce');

    // The folder is in order again: the next start has only the file that was set aside to speak of, and notes go on.
    expect(await store.changeSeason(SEASON, add(note(3)))).toBe(2);
    await store.close();
    store = await openStore(folder, { now });
    expect(ids(store.season(SEASON))).toEqual([uuid(1), uuid(3)]);
    expect(store.warnings).toEqual([
      expect.stringMatching(/^season-2026-27\.unreadable-.* lies in the folder: it was set aside/),
    ]);
    await store.close();
  });

  it('bytes that are not UTF-8 is not taken with letters replaced', async () => {
    const folder = await twoNotes();
    writeFileSync(at(folder), Buffer.from(read(folder).replaceAll('’', "'").replace('Wren', 'Wr\xe9n'), 'latin1'));
    const store = await openStore(folder, { now });
    expect(store.warnings[0]).toContain('it is not UTF-8 text');
    expect(ids(store.season(SEASON))).toEqual([uuid(1)]);
    await store.close();
  });
});

it('sets aside under a name of its own each time', async () => {
  const folder = await twoNotes();
  for (let round = 0; round < 3; round++) {
    writeFileSync(at(folder), `broken ${round}`);
    await (await openStore(folder, { now })).close();
  }
  const aside = readdirSync(folder).filter((name) => name.includes('unreadable'));
  expect(aside.map((name) => read(folder, name)).sort()).toEqual(['broken 0', 'broken 1', 'broken 2']);
});

it('gives the earlier copy a file of its own again after a write that was cut off between its two names', async () => {
  const folder = await twoNotes();
  rmSync(at(folder, EARLIER));
  linkSync(at(folder), at(folder, EARLIER));
  const store = await openStore(folder);
  await store.close();
  // An editor that writes in place now harms the one and not the other.
  writeFileSync(at(folder), 'harm');
  expect(ids(JSON.parse(read(folder, EARLIER)))).toEqual([uuid(1), uuid(2)]);
});

it('uses the earlier copy of the kennel as well', async () => {
  const folder = await twoNotes();
  const store = await openStore(folder);
  await store.changeKennel((k) => [{ ...k, settings: { ...k.settings, units: 'metric' } }, 0]);
  await store.close();
  edit(folder, (text) => text.replace('"dogs":[],', '"dogs":[]'), 'kennel.json');
  const again = await openStore(folder, { now });
  expect(again.kennel().settings).toMatchObject({ kennel: 'Hollow Spruce', units: 'imperial' });
  expect(again.warnings[0]).toContain('kennel.json could not be read: a comma is missing, at line 3, column 1.');
  await again.close();
});

it('uses the earlier copy where the file is missing', async () => {
  const folder = await twoNotes();
  rmSync(at(folder));
  const store = await openStore(folder);
  expect(ids(store.season(SEASON))).toEqual([uuid(1)]);
  expect(store.warnings).toEqual([expect.stringMatching(/^season-2026-27\.json is missing\. The earlier copy, /)]);
  await store.close();
  expect(ids(JSON.parse(read(folder)))).toEqual([uuid(1)]);
});

describe('never empty over what is there: opening fails and changes nothing', () => {
  const hopeless: [string, (folder: string) => void, RegExp][] = [
    [
      'neither the file nor the earlier copy can be read',
      (f) => {
        writeFileSync(at(f), '{');
        writeFileSync(at(f, EARLIER), 'x');
      },
      /season-2026-27\.json could not be read: it ends too early, at line 1, column 2; the earlier copy, .*, could not be read either: /,
    ],
    [
      'the file can’t be read and there is no earlier copy',
      (f) => {
        writeFileSync(at(f), '{');
        rmSync(at(f, EARLIER));
      },
      /there is no earlier copy/,
    ],
    [
      'the file is missing and the earlier copy can’t be read',
      (f) => {
        rmSync(at(f));
        writeFileSync(at(f, EARLIER), 'x');
      },
      /season-2026-27\.json is missing; the earlier copy/,
    ],
    [
      'the kennel’s file is missing beside seasons',
      (f) => {
        rmSync(at(f, 'kennel.json'));
        rmSync(at(f, 'kennel.earlier.json'));
      },
      /kennel\.json and its earlier copy are missing/,
    ],
    [
      'one season is hopeless while another only needs its earlier copy',
      (f) => {
        writeFileSync(at(f), 'x');
        writeFileSync(at(f, 'season-2025-26.json'), 'x');
      },
      /season-2025-26\.json could not be read/,
    ],
    [
      'the file is of a newer schema',
      (f) => edit(f, (t) => t.replace('"schema":1', '"schema":7')),
      /season-2026-27\.json can't be used, because it was written by a newer Snackstop \(schema 7; this one knows schemas up to 1\)/,
    ],
    [
      'the kennel’s file is of a newer schema',
      (f) => edit(f, (t) => t.replace('"schema":1', '"schema":2'), 'kennel.json'),
      /kennel\.json can't be used, because it was written by a newer/,
    ],
    [
      'the earlier copy that is needed is of a newer schema',
      (f) => {
        writeFileSync(at(f), 'x');
        edit(f, (t) => t.replace('"schema":1', '"schema":7'), EARLIER);
      },
      /could not be read either: it was written by a newer/,
    ],
  ];
  it.each(hopeless)('%s', async (_what, damage, says) => {
    const folder = await twoNotes();
    damage(folder);
    const before = everything(folder);
    const opening = openStore(folder);
    await expect(opening).rejects.toThrow(FolderUnusableError);
    await expect(opening).rejects.toThrow(says);
    await expect(opening).rejects.toThrow('Nothing was changed');
    expect(everything(folder)).toEqual(before);
  });

  it('a file in the folder’s place', async () => {
    const file = join(temporaryFolder(), 'kennel');
    writeFileSync(file, 'a file');
    await expect(openStore(file)).rejects.toThrow(/^The folder .* can't be used: /);
    expect(readFileSync(file, 'utf8')).toBe('a file');
  });
});

describe('a file edited by hand that can be read', () => {
  it('is taken as it is, said once, and the copy from before is kept', async () => {
    const folder = await twoNotes();
    const own = read(folder, EARLIER);
    edit(folder, (text) => text.replace('"by":"Wren"', '"by":"Tobias"'));
    let store = await openStore(folder, { now });
    expect(store.season(SEASON).notes.map((n) => n.by)).toEqual(['Tobias', 'Wren']);
    expect(store.warnings).toEqual([
      expect.stringMatching(/^season-2026-27\.json was changed by another program, or by hand/),
    ]);
    expect(store.warnings[0]).toContain('is kept as season-2026-27.before-edit-20270114T104005Z.json.');
    expect(read(folder, 'season-2026-27.before-edit-20270114T104005Z.json')).toBe(own);
    await store.close();
    store = await openStore(folder, { now });
    expect(store.warnings).toEqual([]);
    expect(store.season(SEASON).notes[0]?.by).toBe('Tobias');
    await store.close();
  });

  it('may have another layout and a byte order mark', async () => {
    const folder = await twoNotes();
    const pretty = `\ufeff${JSON.stringify(JSON.parse(read(folder)), null, 4).replaceAll('\n', '\r\n')}`;
    writeFileSync(at(folder), pretty);
    const store = await openStore(folder, { now });
    expect(ids(store.season(SEASON))).toEqual([uuid(1), uuid(2)]);
    await store.close();
  });

  it('is told of a note that it holds twice', async () => {
    const folder = await twoNotes();
    edit(folder, (text) => text.replaceAll(uuid(2), uuid(1)));
    const store = await openStore(folder);
    expect(store.warnings.join('\n')).toContain(
      `holds a note that is there already, in it or in an earlier season: ${uuid(1)}.`,
    );
    expect(store.season(SEASON).notes).toHaveLength(2);
    expect(store.findNote(uuid(1))?.note.text).toContain('Note 1');
    await store.close();
  });

  it('is noticed by one changed letter: the checksum is a CRC-32 of all lines after the first', async () => {
    // CRC-32 of ISO 3309 / ITU-T V.42: its published check value is cbf43926 for "123456789".
    const { crc32 } = await import('node:zlib');
    expect(crc32('123456789').toString(16)).toBe('cbf43926');
    const folder = await twoNotes();
    const text = read(folder);
    const body = text.slice(text.indexOf('\n') + 1);
    expect(text).toContain(`"sum":"${crc32(body).toString(16).padStart(8, '0')}"`);
  });
});

it('leaves files alone that are none of its own', async () => {
  const folder = await twoNotes();
  const others = {
    'notes.txt': 'mine',
    'season-2026-27 (copy).json': 'x',
    'season-99.json': '{',
    'kennel.json.bak': 'y',
  };
  for (const [name, text] of Object.entries(others)) writeFileSync(at(folder, name), text);
  writeFileSync(at(folder, 'season-2026-27.json.tmp'), 'half');
  const store = await openStore(folder);
  expect(store.warnings).toEqual([]);
  await store.close();
  expect(everything(folder)).toMatchObject(others);
  expect(readdirSync(folder)).not.toContain('season-2026-27.json.tmp');
});
