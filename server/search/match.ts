/**
 * Does an entry satisfy a query? Pure, one entry at a time; the index only saves asking most of them.
 *
 * The parts of a query fall into matters (what an entry tells: a sign, a refusal, a lost bootie) and circumstances (the
 * trail, the weather, the place in the team, the cold). An entry satisfies a query when it tells one of its matters, its
 * note tells every other one of the same dog, and the circumstances were those of its run. With no matter asked, the
 * circumstances are what is looked for.
 */
import type { Assertion, Entry, EntryOf, Kind, Part, Paw } from '../../grammar/entry.ts';
import { FOOT_FAMILY } from '../watch/sites.ts';
import { amountOf, within } from './amounts.ts';
import type { Query, Shown } from './query.ts';

/** What is known of where and when an entry was told: of the runs that hold its note, and of the note itself. */
export interface Around {
  ran: (dog: string) => boolean;
  surface: (surface: string) => boolean;
  condition: (condition: string) => boolean;
  /** Was the dog in this position, in that run? */
  position: (dog: string, position: string) => boolean;
  /** Is one of the temperatures of the air (°C) or the winds (m/s) such? */
  air: (test: (value: number) => boolean) => boolean;
  wind: (test: (value: number) => boolean) => boolean;
  /** Length of the run in metres. */
  metres?: number;
}

/** One thing an entry may tell. */
export interface Matter {
  kinds: readonly Kind[];
  test: (e: Entry) => boolean;
}

const SITED: readonly Kind[] = ['finding', 'care', 'booties'];
/** Always in front, always behind (anatomy of the dog): these carry no end, and a query for one means them too. */
const FRONT: ReadonlySet<Part> = new Set(['wrist', 'elbow', 'shoulder', 'triceps', 'armpit']);
const HIND: ReadonlySet<Part> = new Set(['hock', 'knee', 'thigh', 'hip']);

/** The matters a query asks for; empty where it only tells circumstances, dogs, days or words. */
export function mattersOf(q: Query): Matter[] {
  const matters: Matter[] = [];
  const site = Boolean(q.parts?.length || q.side || q.end);
  const listed = <K extends Kind>(kind: K, values: readonly string[] | undefined, of: (e: EntryOf<K>) => string) => {
    if (values?.length)
      matters.push({ kinds: [kind], test: (e) => e.kind === kind && values.includes(of(e as EntryOf<K>)) });
  };
  if (q.signs?.length) matters.push({ kinds: ['finding'], test: (e) => e.kind === 'finding' && signMatches(q, e) });
  listed('care', q.acts, (e) => e.act);
  listed('booties', q.states, (e) => e.state);
  if (q.took?.length || q.what?.length)
    matters.push({
      kinds: ['intake'],
      test: (e) =>
        e.kind === 'intake' &&
        (!q.took?.length || q.took.includes(e.took)) &&
        (!q.what?.length || q.what.includes(e.what)),
    });
  listed('attitude', q.manners, (e) => e.manner);
  listed('drop', q.drops, (e) => e.manner);
  listed('gait', q.gaits, (e) => e.gait);
  listed('gear', q.gear, (e) => e.state);
  listed('measure', q.measured, (e) => e.quantity);
  if (q.amount && isMatter(q.amount.of)) matters.push({ kinds: ['measure'], test: amountTest(q) });
  const kinds = (q.kinds ?? []).filter((kind) => !matters.some((m) => m.kinds.includes(kind)));
  if (kinds.length) matters.push({ kinds, test: (e) => kinds.includes(e.kind) });
  const sitedMatter = matters.some((m) => m.kinds.some((kind) => SITED.includes(kind)));
  if (site && !sitedMatter && !sideIsPlace(q, matters))
    matters.push({ kinds: SITED, test: (e) => SITED.includes(e.kind) });
  if (!site || sideIsPlace(q, matters)) return matters;
  return matters.map((m) => ({
    kinds: m.kinds,
    test: (e) => m.test(e) && (!SITED.includes(e.kind) || siteMatches(q, e)),
  }));
}

/** "otter wheel left": the side is that of the place in the team. */
function sideIsPlace(q: Query, matters: readonly Matter[]): boolean {
  return Boolean(q.positions?.length && q.side && !q.parts?.length && !q.end && matters.length === 0);
}

const isMatter = (of: string) => of !== 'air' && of !== 'wind' && of !== 'distance';

function amountTest(q: Query): (e: Entry) => boolean {
  const amount = q.amount as NonNullable<Query['amount']>;
  return (e) => {
    const value = amountOf(amount.of, e);
    return value !== undefined && within(amount, value);
  };
}

/** The circumstances as what is looked for itself: the place in the team first, else the trail, weather and cold. */
function circumstanceMatters(q: Query): Matter[] {
  if (q.positions?.length)
    return [
      {
        kinds: ['hitch', 'move'],
        test: (e) =>
          (e.kind === 'hitch' || e.kind === 'move') &&
          e.position !== undefined &&
          (q.positions as string[]).includes(e.position) &&
          (q.side === undefined || q.side === 'both' || e.side === q.side),
      },
    ];
  const any: Matter[] = [];
  if (q.surfaces?.length)
    any.push({ kinds: ['trail'], test: (e) => e.kind === 'trail' && (q.surfaces as string[]).includes(e.surface) });
  if (q.conditions?.length)
    any.push({
      kinds: ['weather'],
      test: (e) => e.kind === 'weather' && (q.conditions as string[]).includes(e.condition),
    });
  if (q.amount)
    any.push({
      kinds: [({ air: 'temperature', wind: 'wind' } as const)[q.amount.of as 'air'] ?? 'distance'],
      test: amountTest(q),
    });
  if (any.length < 2) return any;
  return [{ kinds: any.flatMap((m) => m.kinds), test: (e) => any.some((m) => m.test(e)) }];
}

function signMatches(q: Query, e: EntryOf<'finding'>): boolean {
  if ((q.signs ?? []).includes(e.sign)) return true;
  // "Wrist fine now" denies every sign of a wrist; "feet look good" says nothing of coughing.
  return e.sign === 'any' && isDenied(e.assertion) && Boolean(q.parts?.length);
}

/** The parts that a part asked for means: a foot is its pads, webs and nails too. */
export function partsMeant(parts: readonly Part[]): ReadonlySet<Part> {
  const meant = new Set(parts);
  if (meant.has('foot')) for (const part of FOOT_FAMILY) meant.add(part);
  return meant;
}

function siteMatches(q: Query, e: Entry): boolean {
  if (e.kind === 'booties') return pawsMatch(q, e.paws);
  if (e.kind !== 'finding' && e.kind !== 'care') return false;
  if (q.parts?.length && !(e.part && partsMeant(q.parts).has(e.part))) return false;
  if (q.side && !(e.side === q.side || (q.side !== 'both' && e.side === 'both'))) return false;
  if (!q.end) return true;
  const end = e.end ?? (e.part && FRONT.has(e.part) ? 'front' : e.part && HIND.has(e.part) ? 'hind' : undefined);
  return end === q.end || (q.end !== 'both' && end === 'both');
}

/** Booties told with no paw are on all four, or nobody said which: they meet a query only where it names no foot. */
function pawsMatch(q: Query, paws: readonly Paw[] | undefined): boolean {
  if (q.parts?.length && !q.parts.includes('foot')) return false;
  if (!q.side && !q.end) return true;
  const fits = (paw: Paw) =>
    (!q.side || q.side === 'both' || (q.side === 'left') === (paw[0] === 'L')) &&
    (!q.end || q.end === 'both' || (q.end === 'front') === (paw[1] === 'F'));
  const told = (paws ?? []).filter(fits);
  if (q.side !== 'both' && q.end !== 'both') return told.length > 0;
  const sides = new Set(told.map((p) => p[0]));
  const ends = new Set(told.map((p) => p[1]));
  return (q.side !== 'both' || sides.size === 2) && (q.end !== 'both' || ends.size === 2);
}

export const isDenied = (a: Assertion | undefined) => a === 'absent' || a === 'resolved';

/** A query ready to be asked of many entries. */
export interface Asking {
  query: Query;
  matters: Matter[];
  /** Were the matters made of circumstances? */
  fromCircumstances: boolean;
  /** Is there anything that an entry can satisfy at all, beside days and words? */
  ofEntries: boolean;
  shown: Shown;
}

export function ask(query: Query): Asking {
  const told = mattersOf(query);
  const matters = told.length ? told : circumstanceMatters(query);
  return {
    query,
    matters,
    fromCircumstances: told.length === 0 && matters.length > 0,
    ofEntries: matters.length > 0 || Boolean(query.dogs?.length),
    shown: query.show ?? 'so',
  };
}

/** An entry with its dogs by their names of now. */
export interface Named {
  entry: Entry;
  dogs: readonly string[];
}

/** What becomes of an entry: a hit, one only left out because it is denied (or because it is not), or nothing. */
export type Verdict = 'hit' | 'sorted-out' | 'no';

/** Does the entry tell one of the matters? Cheap, and false for most entries; ask it first. */
export const tellsAny = ({ matters }: Asking, e: Entry) => matters.length === 0 || matters.some((m) => m.test(e));

/** The note an entry stands in: its other entries, and what was round it. Worked out only where a query needs it. */
export interface Told {
  all(): readonly Named[];
  around(): Around;
}

/** Asks one entry of a note. Days, seasons, runs and words are the caller's. */
export function verdict(asking: Asking, one: Named, note: Told): Verdict {
  const { matters, query, shown } = asking;
  const e = one.entry;
  if (e.kind === 'remark' && !query.kinds?.includes('remark')) return 'no';
  if (!tellsAny(asking, e) || !dogsMatch(query, one, note)) return 'no';
  if (matters.length > 1)
    for (const m of matters) {
      if (m.test(e)) continue;
      const told = (other: Named) => m.test(other.entry) && !isDenied(other.entry.assertion) && sameDog(one, other);
      if (!note.all().some(told)) return 'no';
    }
  if (!circumstancesHold(asking, one, note)) return 'no';
  if (shown === 'all') return 'hit';
  return isDenied(e.assertion) === (shown === 'not') ? 'hit' : 'sorted-out';
}

const sameDog = (a: Named, b: Named) =>
  !a.dogs.length ||
  !b.dogs.length ||
  a.dogs.includes('*') ||
  b.dogs.includes('*') ||
  a.dogs.some((d) => b.dogs.includes(d));

/** One of the dogs asked for; the whole team, or a thing of the run itself, counts for those that ran in it. */
function dogsMatch(q: Query, one: Named, note: Told): boolean {
  if (!q.dogs?.length) return true;
  if (one.dogs.some((d) => (q.dogs as string[]).includes(d))) return true;
  if (one.dogs.length && !one.dogs.includes('*')) return false;
  if (!one.dogs.length && !(isOfTheRun(one.entry.kind) && asksOfTheRun(q))) return false;
  const { ran } = note.around();
  return q.dogs.some(ran);
}

const OF_THE_RUN: ReadonlySet<Kind> = new Set(['trail', 'weather', 'temperature', 'wind', 'distance', 'speed', 'gear']);
const isOfTheRun = (kind: Kind) => OF_THE_RUN.has(kind);
/** Trail and weather are a dog's only where they are asked for; its name alone lists what was told of the dog. */
export const asksOfTheRun = (q: Query) =>
  Boolean(q.kinds?.some(isOfTheRun) || q.surfaces?.length || q.conditions?.length || q.gear?.length || q.amount);

function circumstancesHold({ query: q, fromCircumstances }: Asking, one: Named, note: Told): boolean {
  const e = one.entry;
  if (q.surfaces?.length && !(fromCircumstances && e.kind === 'trail')) {
    if (!q.surfaces.some(note.around().surface)) return false;
  }
  if (q.conditions?.length && !(fromCircumstances && e.kind === 'weather')) {
    if (!q.conditions.some(note.around().condition)) return false;
  }
  if (q.positions?.length && !fromCircumstances) {
    const { position } = note.around();
    const dogs = q.dogs?.length ? one.dogs.filter((d) => (q.dogs as string[]).includes(d)) : one.dogs;
    if (!dogs.some((d) => (q.positions as string[]).some((p) => position(d, p)))) return false;
  }
  const { amount } = q;
  if (!amount || isMatter(amount.of) || (fromCircumstances && amountOf(amount.of, e) !== undefined)) return true;
  if (amount.of === 'distance') {
    const metres = note.around().metres;
    return metres !== undefined && within(amount, metres);
  }
  return note.around()[amount.of as 'air' | 'wind']((value) => within(amount, value));
}
