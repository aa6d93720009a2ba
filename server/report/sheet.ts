/** A dog's health sheet: what was told of it, laid out for a veterinarian. Pure. */
import type { Entry, EntryOf } from '../../grammar/entry.ts';
import { ABOUT_RATIO, loadOf, ranIn, tooShortSentence } from '../load/index.ts';
import type { Dog } from '../model.ts';
import type { RunDog, Said } from '../records/types.ts';
import { ABOUT_CAUTIONS, ABOUT_EPISODES, ABOUT_ONSET, episodesOf } from '../watch/index.ts';
import { type Records, type SeasonRecords, seasonIn } from './records.ts';
import type { Sheet } from './schema.ts';

/** Runs shown on a sheet: about two weeks of hard work. */
const RUNS = 14;

type SheetKind = 'measure' | 'intake' | 'care';
const LIST = { measure: 'measures', intake: 'intake', care: 'care' } as const satisfies Record<SheetKind, keyof RunDog>;

/** The sheet of one dog, as it stood on a day. @throws RangeError where `on` is no day */
export function sheetOf(records: Records, dog: Dog, season: string, on: string): Sheet {
  const { kennel } = records;
  const inSeason = seasonIn(records, season);
  const watch = episodesOf(
    records.runs,
    records.yard,
    [dog.name],
    { on, silenceDays: records.kennel.settings.silenceDays },
    records.load,
  );
  const [load] = loadOf(records.load, [dog.name], on);
  if (!load) throw new RangeError(`There is no load for ${dog.name}.`);
  const took = toldIn(inSeason, dog.name, 'intake', on);
  const runs = inSeason.runs.flatMap((run) => {
    const mine = run.day <= on ? run.dogs.find((one) => one.dog === dog.name) : undefined;
    return mine && ranIn(mine) ? [{ run, mine }] : [];
  });
  return {
    kennel: kennel.settings.kennel,
    units: kennel.settings.units,
    season,
    on,
    dog,
    load,
    episodes: watch.episodes,
    cautions: watch.cautions,
    measures: toldIn(inSeason, dog.name, 'measure', on).map(({ entry, ...when }) => ({
      ...when,
      quantity: entry.quantity,
      value: entry.value,
      ...(entry.unit ? { unit: entry.unit } : {}),
      ...(entry.assertion ? { assertion: entry.assertion } : {}),
    })),
    intakeTold: took.length,
    offFood: took
      .filter(({ entry }) => entry.took !== 'all' && (entry.assertion ?? 'present') !== 'absent')
      .map(({ entry, ...when }) => ({
        ...when,
        what: entry.what,
        took: entry.took,
        ...(entry.item ? { item: entry.item } : {}),
        ...(entry.amount === undefined ? {} : { amount: entry.amount }),
        ...(entry.unit ? { unit: entry.unit } : {}),
        ...(entry.assertion ? { assertion: entry.assertion } : {}),
      }))
      .reverse(),
    care: toldIn(inSeason, dog.name, 'care', on)
      .map(({ entry, ...when }) => ({
        ...when,
        act: entry.act,
        ...(entry.part ? { part: entry.part } : {}),
        ...(entry.side ? { side: entry.side } : {}),
        ...(entry.end ? { end: entry.end } : {}),
        ...(entry.item ? { item: entry.item } : {}),
        ...(entry.assertion ? { assertion: entry.assertion } : {}),
      }))
      .reverse(),
    runsInSeason: runs.length,
    runs: runs
      .slice(-RUNS)
      .reverse()
      .map(({ run, mine }) => ({
        id: run.id,
        day: run.day,
        ...(run.driver ? { driver: run.driver } : {}),
        ...(mine.metres === undefined ? {} : { metres: mine.metres }),
        ...(mine.minutes === undefined ? {} : { minutes: mine.minutes }),
        ...(mine.stretches[0]?.position ? { position: mine.stretches[0].position } : {}),
        ...(mine.stretches[0]?.side ? { side: mine.stretches[0].side } : {}),
        surfaces: [...new Set(run.surfaces.map((said) => said.entry.surface))],
        ...(run.celsius.length > 0 ? { celsius: meanOf(run.celsius) } : {}),
        ...(mine.left ? { left: mine.left.manner } : {}),
      })),
    about: [
      'Records of what was said and seen, for your veterinarian. They are no diagnosis, and what was not told is not here.',
      ABOUT_EPISODES,
      ABOUT_ONSET,
      ABOUT_CAUTIONS,
      load.tooShort ? tooShortSentence(dog.name, load.daysOfRecord) : ABOUT_RATIO,
    ],
  };
}

export const meanOf = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0) / numbers.length;

interface Told<E extends Entry> {
  entry: E;
  day: string;
  at: string;
  run?: string;
}

/** Every accepted entry of a kind told of a dog up to a day, once, oldest first. */
function toldIn<K extends SheetKind>(season: SeasonRecords, dog: string, kind: K, on: string): Told<EntryOf<K>>[] {
  const found = new Map<string, Told<EntryOf<K>>>();
  for (const run of season.runs)
    for (const one of run.dogs)
      if (one.dog === dog && run.day <= on)
        for (const said of one[LIST[kind]] as unknown as Said<EntryOf<K>>[])
          if (!found.has(said.id)) found.set(said.id, { entry: said.entry, day: run.day, at: said.at, run: run.id });
  for (const { day, said: all } of season.yard)
    for (const said of all)
      if (day <= on && said.entry.kind === kind && said.dogs.includes(dog) && !found.has(said.id))
        found.set(said.id, { entry: said.entry as EntryOf<K>, day, at: said.at });
  return [...found.values()].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}
