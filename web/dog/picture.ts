/**
 * The pictures of a dog's season, drawn by Observable Plot. This file is fetched only when a dog's page is opened, so that
 * the page Speak stays light. Lines are told apart by their dashes, findings by their numbers; colour is never the only sign.
 */
import * as Plot from '@observablehq/plot';
import type { DogSeason } from '../../server/dog/index.ts';
import { distanceUnit, METRES_IN, type Units } from '../units.ts';

type Day = DogSeason['days'][number];
type Episode = DogSeason['episodes'][number];
type Appetite = DogSeason['appetite'][number];

/** Space left and right of every picture, so that one day stands at one place in all of them. */
export const MARGIN = { left: 46, right: 14 };
const DAY_MS = 864e5;
/** Room of one mark, in pixels. */
const MARK = 14;
const at = (day: string) => Date.parse(`${day}T00:00:00Z`);

/** The span of days that all pictures of a page share, as times. */
export interface Span {
  from: string;
  to: string;
}
const scaleOf = ({ from, to }: Span) => ({
  type: 'utc' as const,
  domain: [new Date(at(from)), new Date(at(to) + DAY_MS)],
  label: null,
});
const look = (width: number) => ({
  width,
  marginLeft: MARGIN.left,
  marginRight: MARGIN.right,
  style: { background: 'none', color: 'var(--ink)', fontFamily: 'var(--sans)', fontSize: '13px' },
});

/** Where a day stands from the left edge of a picture of this width, in pixels. */
export function xOf(day: string, { from, to }: Span, width: number): number {
  const wide = width - MARGIN.left - MARGIN.right;
  return MARGIN.left + ((at(day) + DAY_MS / 2 - at(from)) / (at(to) + DAY_MS - at(from))) * wide;
}
/** The day that stands at this place, within the span. */
export function dayAt(x: number, { from, to }: Span, width: number): string {
  const wide = width - MARGIN.left - MARGIN.right;
  const share = Math.min(1, Math.max(0, (x - MARGIN.left) / wide));
  const days = (at(to) - at(from)) / DAY_MS + 1;
  return new Date(at(from) + Math.min(days - 1, Math.floor(share * days)) * DAY_MS).toISOString().slice(0, 10);
}

interface Onset {
  day: string;
  /** The highest of those that begin here. */
  number: number;
}
/** First days of episodes in the order of time; those too close for two marks share one. */
function onsetsOf(episodes: readonly Episode[], span: Span, width: number): Onset[] {
  const out: Onset[] = [];
  for (const { from, number } of [...episodes].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    if (from < span.from || number === undefined) continue;
    const last = out.at(-1);
    if (last && xOf(from, span, width) - xOf(last.day, span, width) < MARK) last.number = Math.max(last.number, number);
    else out.push({ day: from, number });
  }
  return out;
}

/** Bars a day, the 7-day sum as a line, the 28-day weekly mean as a dashed one, and the first days of findings on top. */
export function seasonPicture(
  days: readonly Day[],
  episodes: readonly Episode[],
  span: Span,
  units: Units,
  width: number,
) {
  const far = (metres: number) => metres / METRES_IN[units];
  const most = Math.max(10, ...days.map((day) => far(Math.max(day.sum7, day.meanWeek28 ?? 0))));
  const onsets = onsetsOf(episodes, span, width);
  // A day is less than two pixels wide on a phone; a bar is not.
  const half = Math.max(
    DAY_MS / 2 - 0.06 * DAY_MS,
    (at(span.to) + DAY_MS - at(span.from)) / (width - MARGIN.left - MARGIN.right),
  );
  const middle = (day: string) => new Date(at(day) + DAY_MS / 2);
  return Plot.plot({
    ...look(width),
    height: 310,
    marginTop: 34,
    marginBottom: 38,
    x: scaleOf(span),
    y: { domain: [0, most * 1.02], label: distanceUnit(units), grid: true, ticks: 5, labelArrow: 'none' },
    marks: [
      Plot.ruleX(onsets, {
        x: (one: Onset) => middle(one.day),
        stroke: 'var(--edge)',
        strokeDasharray: '1 4',
        insetTop: -8,
      }),
      Plot.rectY(
        days.filter((day) => day.metres > 0),
        {
          x1: (day: Day) => new Date(at(day.day) + DAY_MS / 2 - half),
          x2: (day: Day) => new Date(at(day.day) + DAY_MS / 2 + half),
          y: (day: Day) => far(day.metres),
          fill: 'var(--edge)',
        },
      ),
      Plot.lineY(days, {
        x: (day: Day) => middle(day.day),
        y: (day: Day) => far(day.sum7),
        stroke: 'var(--ink)',
        strokeWidth: 2,
      }),
      Plot.lineY(days, {
        x: (day: Day) => middle(day.day),
        y: (day: Day) => (day.meanWeek28 === undefined ? Number.NaN : far(day.meanWeek28)),
        stroke: 'var(--accent)',
        strokeWidth: 2.5,
        strokeDasharray: '7 4',
      }),
      Plot.ruleY([0], { stroke: 'var(--ink)' }),
      Plot.text(onsets, {
        x: (one: Onset) => middle(one.day),
        frameAnchor: 'top',
        dy: -16,
        text: (one: Onset) => (one.number === 1 ? '▾' : `${one.number}`),
        fill: 'var(--ink)',
        stroke: 'var(--paper)',
        strokeWidth: 4,
        fontWeight: 700,
        fontSize: 14,
      }),
    ],
  });
}

/** A lane for each site: how long each episode lasted, its number in a ring; filled while it is open. */
export function lanesPicture(
  lanes: readonly { label: string; episodes: readonly Episode[] }[],
  span: Span,
  width: number,
) {
  const rows = lanes.flatMap(({ label, episodes }) => episodes.map((one) => ({ one, label })));
  type Row = (typeof rows)[number];
  const start = (row: Row) => new Date(Math.max(at(span.from), at(row.one.from)) + DAY_MS / 2);
  const open = (row: Row) => row.one.state === 'open';
  return Plot.plot({
    ...look(width),
    height: 12 + lanes.length * 46,
    marginTop: 4,
    marginBottom: 4,
    x: { ...scaleOf(span), axis: null },
    y: { type: 'band', domain: lanes.map(({ label }) => label), axis: null, padding: 0 },
    marks: [
      Plot.ruleY(lanes, { y: 'label', dy: 23, stroke: 'var(--rule)' }),
      Plot.text(lanes, {
        y: 'label',
        text: 'label',
        frameAnchor: 'left',
        dx: -MARGIN.left + 2,
        dy: -12,
        textAnchor: 'start',
        fontSize: 14,
        fill: 'var(--ink)',
      }),
      Plot.ruleY(rows, {
        y: 'label',
        x1: start,
        x2: (row: Row) => new Date(at(row.one.lastSeen) + DAY_MS / 2),
        dy: 9,
        stroke: 'var(--ink)',
        strokeWidth: 4,
      }),
      Plot.dot(rows, {
        y: 'label',
        x: start,
        dy: 9,
        r: 10,
        fill: (row: Row) => (open(row) ? 'var(--ink)' : 'var(--paper)'),
        stroke: 'var(--ink)',
        strokeWidth: 2,
        strokeDasharray: '0',
      }),
      Plot.text(rows, {
        y: 'label',
        x: start,
        dy: 9,
        text: (row: Row) => (row.one.number === undefined ? '?' : String(row.one.number)),
        fill: (row: Row) => (open(row) ? 'var(--paper)' : 'var(--ink)'),
        fontWeight: 700,
        fontSize: 13,
      }),
    ],
    color: { type: 'identity' },
  });
}

const TOOK = ['all', 'most', 'some', 'none'];
const SYMBOLS = { snack: 'circle', meal: 'square', water: 'triangle' } as const;

/** What it took, from all at the top to none at the foot; snack, meal and water by their shapes. */
export function appetitePicture(told: readonly Appetite[], span: Span, width: number) {
  const whole = (one: Appetite) => one.took === 'all';
  return Plot.plot({
    ...look(width),
    height: 165,
    marginTop: 10,
    marginBottom: 38,
    x: scaleOf(span),
    y: { type: 'point', domain: TOOK, label: null, grid: true, padding: 0.4 },
    symbol: { type: 'identity' },
    marks: [
      Plot.dot(told, {
        x: (one: Appetite) => new Date(at(one.day) + DAY_MS / 2),
        y: 'took',
        symbol: (one: Appetite) => SYMBOLS[one.what],
        r: (one: Appetite) => (whole(one) ? 4 : 7),
        fill: (one: Appetite) => (whole(one) ? 'none' : 'var(--accent)'),
        stroke: 'var(--ink)',
        strokeWidth: 1.25,
      }),
    ],
    r: { type: 'identity' },
    color: { type: 'identity' },
  });
}

/** One measure over time, each with its number. @param step of the scale, for what is told in whole numbers */
export function measurePicture(
  values: readonly { day: string; value: number; words: string }[],
  span: Span,
  width: number,
  step?: number,
) {
  type Value = (typeof values)[number];
  const all = values.map(({ value }) => value);
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = step ?? Math.max((most - least) * 0.35, most * 0.01, 0.5);
  const x = (one: Value) => new Date(at(one.day) + DAY_MS / 2);
  return Plot.plot({
    ...look(width),
    height: 165,
    marginTop: 20,
    marginBottom: 38,
    x: scaleOf(span),
    y: {
      domain: [least - room, most + room],
      label: null,
      grid: true,
      ...(step === undefined ? { ticks: 4 } : { interval: step }),
    },
    marks: [
      Plot.lineY(values, { x, y: 'value', stroke: 'var(--edge)', strokeWidth: 1.5 }),
      Plot.dot(values, { x, y: 'value', r: 4, fill: 'var(--ink)' }),
      Plot.text(values, {
        x,
        y: 'value',
        text: 'words',
        dy: -13,
        fill: 'var(--ink)',
        stroke: 'var(--paper)',
        strokeWidth: 4,
        fontSize: 13,
        fontWeight: 600,
      }),
    ],
  });
}
