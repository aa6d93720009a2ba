/** Queries and what they are read as. The kennel and the day stand still: 15 January 2027, in the season 2026-27. */
import { describe, expect, it } from 'vitest';
import type { Context } from '../../grammar/index.ts';
import { type Query, queryWords, understand } from '../../server/search/index.ts';

const context: Context = {
  dogs: [
    { name: 'Juniper', sex: 'F', aliases: ['June'] },
    { name: 'Moss', sex: 'M' },
    { name: 'Otter', sex: 'M' },
    { name: 'Bramble', sex: 'F' },
    { name: 'Tansy', sex: 'F' },
    { name: 'Kodiak', sex: 'M' },
    { name: 'Storm', sex: 'M' },
  ],
  people: ['Wren', 'Tobias'],
  lineup: [],
  units: 'imperial',
};
const CALENDAR = { today: '2027-01-15', season: '2026-27' };
const read = (text: string) => understand(text, context, CALENDAR);

const ROWS: Record<string, [query: string, parts: Query][]> = {
  'a dog, a part, a sign': [
    ['juniper sore wrist', { dogs: ['Juniper'], parts: ['wrist'], signs: ['sore'] }],
    ['wrist juniper sore', { dogs: ['Juniper'], parts: ['wrist'], signs: ['sore'] }],
    ["Juniper's left wrist", { dogs: ['Juniper'], parts: ['wrist'], side: 'left' }],
    ['coughing', { signs: ['coughing'] }],
    ['rh web', { parts: ['web'], side: 'right', end: 'hind' }],
    ['left front', { side: 'left', end: 'front' }],
    ['left side', { side: 'left' }],
    ['right hind lame', { signs: ['lame'], side: 'right', end: 'hind' }],
    ['hot wrist', { parts: ['wrist'], signs: ['hot'] }],
    ['sore or swollen wrists', { parts: ['wrist'], signs: ['sore', 'swollen'] }],
    ['juniper and moss', { dogs: ['Juniper', 'Moss'] }],
    ['juniper or moss sore', { dogs: ['Juniper', 'Moss'], signs: ['sore'] }],
    ['the girls tired', { dogs: ['Juniper', 'Bramble', 'Tansy'], manners: ['tired'] }],
    ['when was moss last lame', { dogs: ['Moss'], signs: ['lame'] }],
    ['dark urine', { signs: ['dark-urine'] }],
    ['diarrhea', { signs: ['loose-stool'] }],
    ['bloody stool', { signs: ['bloody-stool'] }],
    ['in heat', { signs: ['in-season'] }],
    ['split webs on the hinds', { parts: ['web'], signs: ['split'], side: 'both', end: 'hind' }],
    ['frostbite ears', { parts: ['ear'], signs: ['frostbite'] }],
    ['wrist trouble', { parts: ['wrist'], kinds: ['finding'] }],
    ['left shoulder stiff, not limping', { parts: ['shoulder'], signs: ['stiff'], side: 'left' }],
  ],
  'what a name may be': [
    ['june web', { dogs: ['Juniper'], parts: ['web'] }],
    ['in june', { from: '2026-06-01', to: '2026-06-30' }],
    ['storm', { dogs: ['Storm'] }],
    ['Storm sore', { dogs: ['Storm'], signs: ['sore'] }],
    ['stormy', { conditions: ['storm'] }],
  ],
  'what is denied': [
    ['no soreness', { signs: ['sore'], show: 'not' }],
    ['wrist fine now', { parts: ['wrist'], kinds: ['finding'], show: 'not' }],
    ['sore shoulder fine now', { parts: ['shoulder'], signs: ['sore'], show: 'not' }],
    ['nothing wrong', { kinds: ['finding'], show: 'not' }],
  ],
  'eating, drinking and booties': [
    ['refused snack', { took: ['none'], what: ['snack'] }],
    ['refused fish', { took: ['none'], words: 'fish' }],
    ['not eating', { took: ['none'] }],
    ['did not drink', { took: ['none'], what: ['water'] }],
    ['ate all of the salmon', { took: ['all'], words: 'salmon' }],
    ['booties', { kinds: ['booties'] }],
    ['torn booties left hind', { states: ['torn'], side: 'left', end: 'hind' }],
    ['where did tansy lose booties', { dogs: ['Tansy'], states: ['lost'] }],
  ],
  'care, gear, ways': [
    ['massaged shoulder', { acts: ['massaged'], parts: ['shoulder'] }],
    ['trimmed nails', { acts: ['trimmed'], parts: ['nail'] }],
    ['checked feet', { acts: ['checked'], parts: ['foot'] }],
    ['zinc cream', { acts: ['ointment'], words: 'zinc cream' }],
    ['ointment on pads', { acts: ['ointment'], parts: ['pad'] }],
    ['broken snap', { gear: ['broken'], words: 'snap' }],
    ['gangline tangled', { gear: ['tangled'], words: 'gangline' }],
    ['barking', { manners: ['eager'] }],
    ['who fought', { manners: ['quarrelsome'] }],
    ['balked', { manners: ['balky'] }],
    ['dropped dogs', { drops: ['dropped'] }],
  ],
  circumstances: [
    ['otter wheel', { dogs: ['Otter'], positions: ['wheel'] }],
    ['leaders slack', { positions: ['lead'], manners: ['slack'] }],
    ['kodiak limping in lead', { dogs: ['Kodiak'], signs: ['lame'], positions: ['lead'] }],
    ['who ran in lead yesterday', { positions: ['lead'], from: '2027-01-14', to: '2027-01-14' }],
    ['overflow', { surfaces: ['overflow'] }],
    ['punchy trail', { surfaces: ['punchy'] }],
    ['good trail', { surfaces: ['good'] }],
    ['windy', { conditions: ['windy'] }],
    ['snowing', { conditions: ['snowing'] }],
    [
      'who lost booties on ice in january',
      { states: ['lost'], surfaces: ['icy'], from: '2027-01-01', to: '2027-01-31' },
    ],
  ],
  amounts: [
    ['temp over 103', { amount: { of: 'temperature', atLeast: 103, unit: 'F' } }],
    ['temperature below -20', { amount: { of: 'air', atMost: -20, unit: 'F' } }],
    ['colder than minus 20', { amount: { of: 'air', atMost: -20, unit: 'F' } }],
    ['weight under 45', { amount: { of: 'weight', atMost: 45, unit: 'lb' } }],
    ['moss weighed 60 lb', { dogs: ['Moss'], amount: { of: 'weight', atLeast: 60, atMost: 60, unit: 'lb' } }],
    ['body condition 4', { amount: { of: 'body-condition', atLeast: 4, atMost: 4 } }],
    ['heart rate over 120', { amount: { of: 'heart-rate', atLeast: 120, unit: 'bpm' } }],
    ['runs over 30 miles', { amount: { of: 'distance', atLeast: 30, unit: 'mi' } }],
    ['wind over 15 mph', { amount: { of: 'wind', atLeast: 15, unit: 'mph' } }],
    ['tansy weight', { dogs: ['Tansy'], measured: ['weight'] }],
  ],
  times: [
    ['left front splits since the new year', { signs: ['split'], side: 'left', end: 'front', from: '2027-01-01' }],
    ['tansy vomiting last month', { dogs: ['Tansy'], signs: ['vomiting'], from: '2026-12-01', to: '2026-12-31' }],
    ['foot problems this week', { parts: ['foot'], kinds: ['finding'], from: '2027-01-11', to: '2027-01-17' }],
    ['show me everything about otter in fall', { dogs: ['Otter'], from: '2026-09-01', to: '2026-11-30' }],
    ['lame last winter', { signs: ['lame'], from: '2025-12-01', to: '2026-02-28' }],
    ['lame season 2025-26', { signs: ['lame'], season: '2025-26' }],
    ['coughing from december to january', { signs: ['coughing'], from: '2026-12-01', to: '2027-01-31' }],
    ['coughing before 14 january', { signs: ['coughing'], to: '2027-01-13' }],
    ['coughing the last 10 days', { signs: ['coughing'], from: '2027-01-06', to: '2027-01-15' }],
  ],
  'words of the notes': [
    ['moose', { words: 'moose' }],
    ['moose on the river in december', { words: 'moose river', from: '2026-12-01', to: '2026-12-31' }],
    ['mile 14', { words: 'mile 14' }],
    ['the', {}],
    ['?!', {}],
  ],
};

describe('what a query is read as', () => {
  for (const [group, rows] of Object.entries(ROWS)) {
    describe(group, () => {
      it.each(rows)('“%s”', (query, parts) => {
        expect(read(query).query).toEqual(parts);
      });
    });
  }

  it('mends slips and tells of them', () => {
    const { query, slips } = read('junpier sore wrst');
    expect(query).toEqual({ dogs: ['Juniper'], signs: ['sore'], parts: ['wrist'] });
    expect(slips).toEqual([
      { said: 'junpier', as: 'Juniper' },
      { said: 'wrst', as: 'wrist' },
    ]);
  });

  it('reads in metric units for a metric kennel', () => {
    const metric = { ...context, units: 'metric' as const };
    expect(understand('temp over 39.5', metric, CALENDAR).query.amount).toEqual({
      of: 'temperature',
      atLeast: 39.5,
      unit: 'C',
    });
    expect(understand('colder than minus 30', metric, CALENDAR).query.amount).toEqual({
      of: 'air',
      atMost: -30,
      unit: 'C',
    });
  });

  it.each<[Query, string]>([
    [
      { dogs: ['Juniper'], parts: ['wrist'], signs: ['sore'] },
      'Juniper · wrist · sore, not counting “no soreness” and “fine now”',
    ],
    [
      { states: ['lost'], surfaces: ['icy'], from: '2027-01-01', to: '2027-01-31' },
      'booties lost · trail icy · 1 Jan 2027 to 31 Jan 2027',
    ],
    [{ dogs: ['Otter'], positions: ['wheel'] }, 'Otter · in wheel'],
    [{ amount: { of: 'air', atMost: -20, unit: 'F' } }, 'air −20 °F or less'],
    [{ words: 'moose river' }, 'the words “moose river”'],
    [{}, 'nothing yet'],
  ])('tells a query in words', (query, words) => {
    expect(queryWords(query)).toBe(words);
  });
});
