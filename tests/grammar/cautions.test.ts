/**
 * Notices to stop and call a veterinarian, from the words of a note alone. Which signs raise one is common practice; a
 * veterinarian's own list goes before it.
 */
import { describe, expect, it } from 'vitest';
import { alarmsOf, type CautionReason } from '../../grammar/cautions.ts';
import { type Context, contextSchema, type Entry } from '../../grammar/entry.ts';
import { read } from '../../grammar/parse.ts';

const dogs = ['Juniper F', 'Otter M', 'Moss M', 'Kodiak M'].map((dog) => {
  const [name, sex] = dog.split(' ');
  return { name, sex };
});
const context: Context = contextSchema.parse({ dogs });
const alarms = (text: string) => alarmsOf(read(text, context).entries);

describe('notices from a note', () => {
  it.each<[string, string, CautionReason, 'now' | 'possible']>([
    ['Juniper collapsed at mile ten', 'Juniper', 'collapsed', 'now'],
    ['Otter’s pee was like coffee this morning', 'Otter', 'dark-urine', 'now'],
    ['blood in Otter’s stool', 'Otter', 'bloody-stool', 'now'],
    ['there was blood in Otter’s pee', 'Otter', 'dark-urine', 'now'],
    ['Otter peeing blood', 'Otter', 'dark-urine', 'now'],
    ['Kodiak vomited blood', 'Kodiak', 'blood-in-vomit', 'now'],
    ['Otter won’t put weight on his right hind', 'Otter', 'no-weight-on-a-leg', 'now'],
    ['Otter is three legged', 'Otter', 'no-weight-on-a-leg', 'now'],
    ['Moss will not cool down', 'Moss', 'overheated', 'now'],
    ['Moss can’t cool off', 'Moss', 'overheated', 'now'],
    ['Kodiak bleeding badly from the pad', 'Kodiak', 'bleeding-badly', 'now'],
    ['Kodiak maybe dark urine', 'Kodiak', 'dark-urine', 'possible'],
    ['Moss might be overheating', 'Moss', 'overheated', 'possible'],
  ])('%s', (text, dog, reason, told) => {
    const [alarm, ...more] = alarms(text);
    expect(more).toEqual([]);
    expect(alarm).toMatchObject({ dog, reason, told });
    expect(alarm?.says).toMatch(new RegExp(`^${dog}.*Stop and call a veterinarian\\.$`));
    expect(/perhaps/.test(alarm?.says ?? '')).toBe(told === 'possible');
  });
  it.each([
    'Kodiak no dark urine',
    'Otter collapsed last week',
    'Juniper sore left wrist',
    'Juniper lame, mild',
    'Otter bleeding a little from a pad',
    'Kodiak loose stool',
    'everyone ate',
  ])('none: %s', (text) => expect(alarms(text)).toEqual([]));
  it('what a dog will not do plans nothing for the next one', () => {
    const both = alarms('Moss will not cool down, Kodiak maybe dark urine');
    expect(both.map(({ dog, reason, told }) => [dog, reason, told])).toEqual([
      ['Moss', 'overheated', 'now'],
      ['Kodiak', 'dark-urine', 'possible'],
    ]);
    expect(alarms('Otter will not put weight on his left hind, Kodiak collapsed').map(({ told }) => told)).toEqual([
      'now',
      'now',
    ]);
  });
  it('a dog and a reason once, the sure word before the doubtful one', () => {
    const possible: Entry = { kind: 'finding', dogs: ['Moss'], sign: 'overheated', assertion: 'possible' };
    const sure: Entry = { ...possible, assertion: 'present' };
    expect(alarmsOf([possible, sure, possible]).map(({ told }) => told)).toEqual(['now']);
    expect(alarmsOf([sure, possible]).map(({ told }) => told)).toEqual(['now']);
  });
  it('names the team, or a dog, where no name was said', () => {
    const says = (dogs: string[]) => alarmsOf([{ kind: 'finding', dogs, sign: 'collapsed' }])[0]?.says;
    expect(says(['*'])).toBe('The team collapsed. Stop and call a veterinarian.');
    expect(says([])).toBe('A dog collapsed. Stop and call a veterinarian.');
  });
});
