/** Booties, breaks, temperature, wind, gear: what goes with a run beside its miles. */
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../grammar/entry.ts';
import {
  booties,
  clock,
  dogIn,
  drop,
  duration,
  hitch,
  inMiles,
  MILE,
  mark,
  move,
  note,
  run,
  type TestEntry,
  temperature,
  total,
} from './build.ts';

const at = (time: string, entries: TestEntry[]) => note(`2027-01-14T${time}`, entries);
const out = (...more: Entry[]) => at('08:50', [hitch(['Juniper', 'Moss'], 'lead'), ...more]);
const home = (...more: Entry[]) => at('12:10', [clock('finish', '12:00'), total(20), ...more]);

describe('miles in booties', () => {
  const booted = (...notes: ReturnType<typeof at>[]) => inMiles(dogIn(run([...notes]), 'Moss').metresBooted);

  test('nothing told of booties: not known', () => expect(booted(out(), home())).toBeUndefined());
  test('on at the hook-up: all the way', () => expect(booted(out(booties(['Moss'], 'on')), home())).toBe(20));
  test('on for the whole team', () => expect(booted(out(booties(['*'], 'on')), home())).toBe(20));
  test('on at mile 6', () => expect(booted(out(), at('10:00', [mark(6), booties(['Moss'], 'on')]), home())).toBe(14));
  test('on at 6, off at 15', () =>
    expect(
      booted(
        out(),
        at('10:00', [mark(6), booties(['Moss'], 'on')]),
        at('11:00', [mark(15), booties(['Moss'], 'off')]),
        home(),
      ),
    ).toBe(9));
  test('two are off, two are still on', () =>
    expect(
      booted(
        out(booties(['Moss'], 'on')),
        at('11:00', [mark(15), booties(['Moss'], 'off', { paws: ['LF', 'RF'] })]),
        home(),
      ),
    ).toBe(20));
  test('the only two lost one by one', () =>
    expect(
      booted(
        out(booties(['Moss'], 'on', { paws: ['LF', 'RF'] })),
        at('10:00', [mark(6), booties(['Moss'], 'lost', { paws: ['LF'] })]),
        at('11:00', [mark(15), booties(['Moss'], 'lost', { paws: ['RF'] })]),
        home(),
      ),
    ).toBe(15));
  test('one lost that nobody told of putting on: it was on from the start, and the others are', () =>
    expect(booted(out(), at('10:00', [mark(6), booties(['Moss'], 'lost', { paws: ['LH'] })]), home())).toBe(20));
  test('"no booties" is none', () =>
    expect(booted(out(booties(['Moss'], 'on', { assertion: 'absent' })), home())).toBe(0));
  test('planned booties are not on', () =>
    expect(booted(out(booties(['Moss'], 'on', { assertion: 'planned' })), home())).toBeUndefined());
  test('taken off in the yard: all the way', () =>
    expect(booted(out(booties(['Moss'], 'on')), home(), at('13:00', [booties(['Moss'], 'off')]))).toBe(20));
  test('only what was run in harness: on all the way, loaded from 12 to 15', () =>
    expect(
      booted(
        out(booties(['Moss'], 'on')),
        at('10:00', [drop(['Moss'], 'loaded'), mark(12)]),
        at('10:30', [move(['Moss'], 'wheel'), mark(15)]),
        home(),
      ),
    ).toBe(17));
  test('put on, told afterwards with no mark: not known where', () =>
    expect(booted(out(), home(booties(['Moss'], 'on')))).toBeUndefined());
});

describe('breaks', () => {
  test('a clock and a length in one note are one break, at the note’s mark', () => {
    const record = run([out(), at('10:40', [clock('stop', '10:15'), duration('stop', 20), mark(9)]), home()]);
    expect(record.stops).toEqual([{ at: '2027-01-14T10:15:00-09:00', minutes: 20, atMetres: 9 * MILE }]);
  });
  test('a break told again with the numbers at the end is not a second one', () => {
    const record = run([
      out(),
      at('10:40', [clock('stop', '10:15'), duration('stop', 20)]),
      home(duration('stop', 20)),
    ]);
    expect(record.stops).toHaveLength(1);
    const two = run([
      out(),
      at('10:40', [clock('stop', '10:15'), duration('stop', 20)]),
      at('11:20', [duration('stop', 15)]),
      home(duration('stop', 35)),
    ]);
    expect(two.stops.map(({ minutes }) => minutes)).toEqual([20, 15]);
  });
  test('one told only at the end counts', () => {
    expect(run([out(), home(duration('stop', 20))]).stops).toEqual([{ minutes: 20 }]);
  });
});

test('temperatures in °C, wind in m/s, in the order of telling, whatever the order of the notes', () => {
  const wind = (value: number, unit: 'mph' | 'km/h' | 'kn' | 'm/s'): Entry => ({ kind: 'wind', dogs: [], value, unit });
  const record = run([
    home(temperature(-17)),
    at('10:00', [temperature(-25, 'C'), wind(20, 'mph'), wind(9, 'm/s')]),
    out(temperature(32)),
  ]);
  expect(record.celsius.map((value) => Math.round(value * 100) / 100)).toEqual([0, -25, -27.22]);
  // 20 mph is 8.9408 m/s (NIST SP 811, appendix B.8: 4.4704 E-01 each).
  expect(record.windMetresPerSecond.map((value) => Math.round(value * 10_000) / 10_000)).toEqual([8.9408, 9]);
});

test('gear that broke', () => {
  const gear: Entry = { kind: 'gear', dogs: ['Moss'], item: 'snap', state: 'broken' };
  expect(run([out(gear), home()]).gear.map(({ entry }) => entry.item)).toEqual(['snap']);
});
