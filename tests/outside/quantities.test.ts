/**
 * quantities(text) against rows that nobody here wrote: the specifications of microsoft/Recognizers-Text (MIT) and the
 * corpora of facebook/duckling (BSD). They are read from ../shared/external; where that folder is absent the check is
 * skipped and says so. A row is right when every amount it expects is found with its value, its unit and its place, and
 * nothing else of that dimension is found.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { quantities } from '../../grammar/steps/quantities.ts';
import { UNITS } from '../../grammar/words/units.ts';
import { outOfScope, type Row, UNIT_NAMES } from './quantity-scope.ts';

type Found = ReturnType<typeof quantities>[number];

/** A duration's unit in minutes; ours always carry minutes. */
const MINUTES: Record<string, number> = {
  Second: 1 / 60,
  Minute: 1,
  Hour: 60,
  Day: 1440,
  Week: 10080,
  Month: 43200,
  Year: 525600,
};

const near = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));
const nearly = (a: number, b: number) => Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(b));

/** The same amount, also when the reference counts a sum in its smaller unit ("2 km and 1 m" is 2001 m or 2.001 km). */
function sameAmount(q: Found, value: number, unitName: string | undefined): boolean {
  const unit =
    unitName === undefined || unitName === 'Degree' || unitName === 'Unnamed' ? undefined : UNIT_NAMES[unitName];
  if (unit === undefined) return q.unit === undefined && nearly(q.value, value);
  if (q.unit === unit) return nearly(q.value, value);
  const [mine, theirs] = [UNITS.get(q.unit ?? ''), UNITS.get(unit)];
  if (!mine || !theirs || mine.dimension !== theirs.dimension) return false;
  return nearly(q.value * mine.factor, value * theirs.factor);
}

/** Which of our dimensions answer a row. */
const ANSWERS: Record<string, readonly Found['dimension'][]> = {
  number: ['number'],
  numeral: ['number'],
  ordinal: ['ordinal'],
  dimension: ['distance', 'speed', 'weight', 'volume'],
  temperature: ['temperature'],
  duration: ['duration'],
  clock: ['clock'],
  distance: ['distance'],
  volume: ['volume'],
};

/** Minutes after midnight; a time said without its half of the day answers either. */
const sameTime = (minutes: number, theirs: number) => minutes % 720 === theirs % 720;
const minutesIn = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));

function recognizerRight(row: Row): boolean {
  const expected = row.expect as {
    value?: string | null;
    unit?: string;
    seconds?: string;
    time?: string;
    start: number;
    end: number;
  }[];
  const mine = quantities(row.text).filter((q) => ANSWERS[row.dim]?.includes(q.dimension));
  // a unit named without a number ("to celsius") is no quantity
  const wanted = expected.filter((item) => item.value !== null);
  return (
    mine.length === wanted.length &&
    wanted.every((item) =>
      mine.some((q) => {
        if (q.span[0] !== item.start || q.span[1] !== item.end) return false;
        if (item.seconds !== undefined) return nearly(q.value, Number(item.seconds) / 60);
        if (item.time !== undefined) return sameTime(q.value, minutesIn(item.time));
        return sameAmount(q, Number(item.value), item.unit);
      }),
    )
  );
}

/** The moment that duckling's corpus counts from: 2013-02-12, 04:30. */
const NOW = Date.UTC(2013, 1, 12, 4, 30);
/** Rows that count from now: they check our duration, for the reference's time is now and the duration. */
const FROM_NOW = /^in (?!the\b)(?!.*\bat\b)|\b(from|hence|ago)\b/i;
function fromNow(row: Row, all: Found[], value: string): boolean {
  const lasting = all.filter((q) => q.dimension === 'duration');
  if (lasting.length !== 1 || all.length !== 1) return false;
  const minutes = lasting[0]?.value ?? Number.NaN;
  const then = NOW + (/\bago\b/i.test(row.text) ? -1 : 1) * minutes * 60_000;
  const grain = (row.expect as { grain: string }).grain === 'hour' ? 3_600_000 : 1_000;
  return Math.floor(then / grain) * grain === Date.parse(`${value}Z`);
}

function ducklingRight(row: Row): boolean {
  const want = row.expect as { kind?: string; value?: number | string; unit?: string; from?: number; to?: number };
  const all = quantities(row.text);
  const mine = row.dim === 'quantity' ? all : all.filter((q) => ANSWERS[row.dim]?.includes(q.dimension));
  if (want.kind === 'none') return mine.length === 0;
  if (row.dim === 'clock' && FROM_NOW.test(row.text)) return fromNow(row, all, String(want.value));
  if (row.dim === 'clock')
    return mine.length === 1 && sameTime(mine[0]?.value ?? Number.NaN, minutesIn(String(want.value).slice(11)));
  const same = (q: Found | undefined, value: number | undefined) => {
    if (!q || value === undefined) return false;
    if (row.dim === 'duration') return near(q.value, value * (MINUTES[want.unit ?? ''] ?? Number.NaN));
    return sameAmount(q, value, want.unit);
  };
  if (want.kind === 'between') return mine.length === 2 && same(mine[0], want.from) && same(mine[1], want.to);
  return mine.length === 1 && same(mine[0], Number(want.value));
}

const right = (row: Row) => (row.set === 'duckling' ? ducklingRight(row) : recognizerRight(row));

const file = join(process.cwd(), '../shared/external/quantities.jsonl');
const there = existsSync(file);
if (!there)
  console.log('skipped: tests/outside/quantities.test.ts needs ../shared/external/quantities.jsonl, which is not here');

describe.skipIf(!there)('quantities against Recognizers-Text and duckling', () => {
  const rows: Row[] = there
    ? readFileSync(file, 'utf8')
        .split('\n')
        .filter((line) => line.trim())
        .map((line) => JSON.parse(line))
    : [];
  const excluded = new Map<string, number>();
  const inScope: Row[] = [];
  for (const row of rows) {
    const reason = outOfScope(row);
    if (reason) excluded.set(reason, (excluded.get(reason) ?? 0) + 1);
    else inScope.push(row);
  }

  it('keeps at least four fifths of the rows in scope', () => {
    for (const [reason, count] of excluded) console.log(`out of scope: ${count} ${reason}`);
    console.log(`out of scope: ${rows.length - inScope.length} of ${rows.length}`);
    expect(rows.length).toBeGreaterThan(600);
    expect((rows.length - inScope.length) / rows.length).toBeLessThanOrEqual(0.2);
  });

  it('reads at least 95 of 100 rows in scope right', () => {
    const wrong = inScope.filter((row) => !right(row));
    const share = 1 - wrong.length / inScope.length;
    console.log(`right: ${inScope.length - wrong.length} of ${inScope.length} (${(100 * share).toFixed(1)} %)`);
    for (const row of wrong) console.log(`wrong: ${row.id}`);
    expect(share).toBeGreaterThanOrEqual(0.95);
  });
});
