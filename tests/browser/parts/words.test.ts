/** Entries in plain words. The entries are the contract's worked cases and kinds; the sentences are what a page shows. */
import { expect, test } from 'vitest';
import { type Entry, entrySchema } from '../../../grammar/entry.ts';
import { aloud, minutesWords, sentence } from '../../../web/words.ts';

const six = ['Juniper', 'Moss', 'Otter', 'Bramble', 'Tansy', 'Kodiak'];
const CASES: [Entry, string][] = [
  [
    { kind: 'finding', dogs: ['Juniper'], part: 'wrist', side: 'left', sign: 'lame', severity: 'mild' },
    'Juniper · left wrist · lame, mild',
  ],
  [
    { kind: 'finding', dogs: ['Juniper'], part: 'wrist', side: 'left', sign: 'swollen', assertion: 'absent' },
    'Juniper · left wrist · no swelling',
  ],
  [
    { kind: 'finding', dogs: ['Moss'], part: 'shoulder', sign: 'sore', assertion: 'resolved' },
    'Moss · shoulder · was sore, fine now',
  ],
  [
    { kind: 'finding', dogs: ['Otter'], part: 'shoulder', sign: 'any', assertion: 'resolved' },
    'Otter · shoulder · fine now',
  ],
  [
    { kind: 'finding', dogs: ['Bramble'], part: 'web', side: 'right', end: 'hind', sign: 'any', assertion: 'possible' },
    'Bramble · right hind web · maybe something',
  ],
  [
    { kind: 'finding', dogs: ['Fern'], part: 'foot', side: 'both', end: 'front', sign: 'iced', trend: 'worse' },
    'Fern · both front feet · iced, worse',
  ],
  [
    { kind: 'finding', dogs: ['Fern'], part: 'foot', side: 'both', end: 'both', sign: 'worn' },
    'Fern · all four feet · worn',
  ],
  [
    { kind: 'finding', dogs: ['*'], part: 'foot', sign: 'any', assertion: 'absent' },
    'whole team · foot · nothing found',
  ],
  [
    { kind: 'finding', dogs: ['Kodiak'], sign: 'loose-stool', assertion: 'past' },
    'Kodiak · loose stool on an earlier day',
  ],
  [{ kind: 'finding', dogs: ['Kodiak'], sign: 'thin', assertion: 'absent' }, 'Kodiak · not thin'],
  [{ kind: 'hitch', dogs: ['Juniper', 'Moss'], position: 'lead' }, 'Juniper and Moss · in lead'],
  [{ kind: 'hitch', dogs: ['Fern', 'Cricket'], driver: 'Wren' }, 'Fern and Cricket · in the team · Wren driving'],
  [{ kind: 'hitch', dogs: ['Tansy'], position: 'wheel', assertion: 'planned' }, 'Tansy · planned: in wheel'],
  [{ kind: 'move', dogs: ['Otter'], position: 'lead', side: 'left' }, 'Otter · moved, now in lead, left'],
  [{ kind: 'drop', dogs: ['Bramble'], manner: 'loaded' }, 'Bramble · loaded in the sled'],
  [{ kind: 'distance', dogs: [], measure: 'mark', value: 14, unit: 'mi' }, 'at mile 14'],
  [{ kind: 'distance', dogs: [], measure: 'mark', value: 14, unit: 'km' }, 'at 14 km'],
  [{ kind: 'distance', dogs: [], measure: 'total', value: 14.5, unit: 'mi' }, '14.5 mi, the whole run'],
  [{ kind: 'clock', dogs: [], event: 'finish', time: '16:10' }, 'back in the yard at 16:10'],
  [{ kind: 'duration', dogs: [], of: 'run', minutes: 170 }, 'run of 2 h 50 min'],
  [
    { kind: 'care', dogs: ['Tansy'], act: 'ointment', item: 'zinc cream', part: 'web' },
    'Tansy · web · ointment (zinc cream)',
  ],
  [{ kind: 'care', dogs: ['Tansy'], act: 'ointment', item: 'ointment' }, 'Tansy · ointment'],
  [{ kind: 'booties', dogs: ['Kodiak'], state: 'lost', paws: ['LH'] }, 'Kodiak · left hind bootie lost'],
  [
    { kind: 'booties', dogs: ['Tansy', 'Kodiak'], state: 'on', assertion: 'planned' },
    'Tansy and Kodiak · planned: booties on',
  ],
  [
    { kind: 'intake', dogs: ['Bramble'], what: 'snack', took: 'none', item: 'fish' },
    'Bramble · refused the snack (fish)',
  ],
  [
    { kind: 'intake', dogs: six.slice(0, 3), what: 'water', took: 'all', amount: 0.5, unit: 'l' },
    'Juniper, Moss and Otter · drank well, water, 0.5 l each',
  ],
  [{ kind: 'temperature', dogs: [], value: -18, unit: 'F' }, '−18 °F'],
  [{ kind: 'temperature', dogs: [], value: -18, unit: 'F', assertion: 'possible' }, 'maybe −18 °F'],
  [{ kind: 'weather', dogs: [], condition: 'freezing-rain' }, 'freezing rain'],
  [{ kind: 'trail', dogs: [], surface: 'icy', assertion: 'planned' }, 'planned: trail icy'],
  [{ kind: 'attitude', dogs: ['Vega'], manner: 'strong' }, 'Vega · pulling hard'],
  [{ kind: 'measure', dogs: ['Tansy'], quantity: 'body-condition', value: 4 }, 'Tansy · body condition 4/9'],
  [{ kind: 'measure', dogs: ['Tansy'], quantity: 'weight', value: 47.5, unit: 'lb' }, 'Tansy · weight 47.5 lb'],
  [{ kind: 'gear', dogs: ['Otter'], item: 'snap', state: 'broken' }, 'Otter · snap broken'],
  [{ kind: 'remark', dogs: [], text: 'moon came up' }, '“moon came up”'],
];

test.each(CASES)('%j', (entry, words) => {
  expect(entrySchema.parse(entry)).toEqual(entry);
  expect(sentence(entry)).toBe(words);
});

test('read aloud, signs and short units become words', () => {
  expect(aloud({ kind: 'temperature', dogs: [], value: -18, unit: 'F' })).toBe('minus 18 degrees');
  expect(aloud({ kind: 'distance', dogs: [], measure: 'total', value: 32, unit: 'mi' })).toBe(
    '32 miles, the whole run',
  );
  expect(aloud(CASES[0]?.[0] as Entry)).toBe('Juniper, left wrist, lame, mild');
});

test.each([
  [50, '50 min'],
  [60, '1 h'],
  [170, '2 h 50 min'],
  [119.6, '2 h'],
])('%d minutes read %s', (minutes, words) => expect(minutesWords(minutes)).toBe(words));
