/** What holds for every history, whatever was told and in whatever order it came in. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { dayNumber, dayOf } from '../../server/load/index.ts';
import { type Episode, episodesOf, sitesOf, type Watch, type WatchRun } from '../../server/watch/index.ts';
import { note, runWith, yardWith } from './build.ts';

const DOGS = ['Juniper', 'Moss'];
const FIRST = dayNumber('2026-05-20');
const SPAN = 90;
const ON = dayOf(FIRST + SPAN);

/** Few sites, so that histories meet: the same wrist, the same foot, lameness, stool. */
const words = fc
  .record({
    site: fc.constantFrom(
      'wrist left',
      'wrist right',
      'wrist',
      'wrist sides-both',
      'foot',
      'foot left front',
      'foot sides-both ends-both',
      'web left front',
      'leg left front',
      'shoulder left',
      '',
    ),
    sign: fc.constantFrom('sore', 'swollen', 'lame', 'lame severe', 'any', 'loose-stool', 'collapsed', 'split'),
    assertion: fc.constantFrom('', '', '', 'possible', 'absent', 'resolved', 'past', 'planned'),
    trend: fc.constantFrom('', '', 'same', 'better'),
  })
  .map((parts) => [parts.site, parts.sign, parts.assertion, parts.trend].filter(Boolean).join(' '));

const dayTold = fc
  .record({
    day: fc.integer({ min: 0, max: SPAN }),
    hour: fc.integer({ min: 10, max: 23 }),
    dog: fc.constantFrom(...DOGS),
    findings: fc.array(words, { minLength: 1, maxLength: 3 }),
    inRun: fc.boolean(),
  })
  .map(({ day, hour, dog, findings, inRun }) => {
    const on = dayOf(FIRST + day);
    const told = note(`${on}T${hour}:00`, dog, ...findings);
    return inRun ? { run: runWith(on, { [dog]: 1000 * (day % 7) }, told), told } : { yard: yardWith(on, told), told };
  });
type Day = typeof dayTold extends fc.Arbitrary<infer D> ? D : never;
const history = fc.array(dayTold, { maxLength: 40 });

const runsOf = (days: readonly Day[]): WatchRun[] => days.flatMap((day) => ('run' in day && day.run ? [day.run] : []));
function watch(days: readonly Day[], dogs = DOGS): Watch {
  const yard = days.flatMap((day) => ('yard' in day && day.yard ? [day.yard] : []));
  return episodesOf(runsOf(days), yard, dogs, { on: ON });
}
const check = (holds: (days: Day[], result: Watch) => void) =>
  fc.assert(
    fc.property(history, (days) => holds(days, watch(days))),
    { numRuns: 150 },
  );

it('every present or possible finding stands in exactly one episode for each of its sites', () => {
  check((days, { episodes }) => {
    for (const said of days.flatMap((day) => day.told)) {
      const { assertion = 'present' } = said.entry;
      const counts = assertion === 'present' || assertion === 'possible';
      const holding = episodes.filter((episode) => episode.seen.some((one) => one.id === said.id));
      expect(holding.map((episode) => episode.site.key).sort()).toEqual(
        counts
          ? sitesOf(said.entry)
              .map((site) => site.key)
              .sort()
          : [],
      );
      for (const episode of holding) expect(said.entry.dogs).toContain(episode.dog);
    }
  });
});

it('ends lose nothing: without them the same findings stand in episodes', () => {
  const seen = ({ episodes }: Watch) =>
    episodes.flatMap((one) => one.seen.map((each) => `${one.site.key} ${each.id}`)).sort();
  check((days, result) => {
    const onlySeen = days.map((day) => ({
      yard: yardWith(
        day.told[0]?.at.slice(0, 10) ?? '',
        day.told.filter((said) => !['absent', 'resolved'].includes(said.entry.assertion ?? '')),
      ),
      told: day.told,
    }));
    expect(seen(watch(onlySeen))).toEqual(seen(result));
  });
});

it('the order in which runs and records come changes nothing', () => {
  fc.assert(
    fc.property(
      history.chain((days) => fc.tuple(fc.constant(days), fc.shuffledSubarray(days, { minLength: days.length }))),
      ([days, shuffled]) => {
        expect(watch(shuffled)).toEqual(watch(days));
      },
    ),
    { numRuns: 100 },
  );
});

it('episodes on one site of one dog never overlap, and are numbered in their order', () => {
  check((_, { episodes }) => {
    const siteOf = (episode: Episode) => `${episode.dog} ${episode.site.key}`;
    for (const site of new Set(episodes.map(siteOf))) {
      const list = episodes.filter((episode) => siteOf(episode) === site);
      const inOrder = list.sort((a, b) => (a.from < b.from ? -1 : 1));
      inOrder.forEach((episode, i) => {
        const before = inOrder[i - 1];
        if (before)
          expect(
            before.state !== 'open' && (before.until as string) <= episode.from && before.lastSeen < episode.from,
          ).toBe(true);
      });
      const sure = inOrder.filter((episode) => !episode.doubtful);
      expect(sure.map((episode) => episode.numberInAll)).toEqual(sure.map((_one, i) => i + 1));
      checkBetween(sure);
    }
  });
});
function checkBetween(sure: Episode[]): void {
  sure.forEach((episode, i) => {
    const before = sure[i - 1];
    expect(episode.sinceBefore?.episode).toBe(before?.id);
    if (before) expect(episode.sinceBefore?.days).toBe(dayNumber(episode.from) - dayNumber(before.lastSeen));
  });
}

it('doubtful is exactly what was never told present; open comes first and is no longer silent than allowed', () => {
  check((_, { episodes, silenceDays }) => {
    for (const episode of episodes) {
      expect(episode.doubtful).toBe(!episode.seen.some((one) => one.assertion === 'present'));
      expect(episode.number === undefined).toBe(episode.doubtful);
      const silent = dayNumber(ON) - dayNumber(episode.lastSeen) > silenceDays;
      if (episode.state === 'open') expect(silent).toBe(false);
      if (episode.state === 'over') expect(episode.signs.every((sign) => sign.gone !== undefined)).toBe(true);
      if (episode.state === 'not-seen-since') expect(episode.signs.some((sign) => sign.gone === undefined)).toBe(true);
    }
    const open = episodes.map((episode) => episode.state === 'open');
    expect(open.lastIndexOf(true)).toBeLessThan(open.includes(false) ? open.indexOf(false) : open.length);
  });
});

it('another dog’s words change nothing', () => {
  check((days, { episodes }) => {
    const mine = days.filter((day) => day.told[0]?.entry.dogs[0] === 'Moss');
    expect(watch(mine, ['Moss']).episodes).toEqual(episodes.filter((episode) => episode.dog === 'Moss'));
  });
});

it('every sign to call a veterinarian for that was told present raises a notice that names one', () => {
  check((days, { cautions }) => {
    for (const said of days.flatMap((day) => day.told)) {
      const { sign, severity, assertion = 'present' } = said.entry;
      if (assertion !== 'present' || !(sign === 'collapsed' || (sign === 'lame' && severity === 'severe'))) continue;
      const day = said.at.slice(0, 10);
      const notices = cautions.filter(
        (one) => said.entry.dogs.includes(one.dog) && one.first <= day && day <= one.last,
      );
      expect(notices.some((one) => one.told === 'now' && one.says.includes('call a veterinarian'))).toBe(true);
    }
  });
});

it('metres between are the metres of the runs in between', () => {
  check((days, { episodes }) => {
    for (const episode of episodes) {
      const before = episodes.find((one) => one.id === episode.sinceBefore?.episode);
      if (!before) continue;
      const metres = runsOf(days)
        .filter((run) => run.day > before.lastSeen && run.day < episode.from)
        .flatMap((run) => run.dogs.filter((dog) => dog.dog === episode.dog))
        .reduce((sum, dog) => sum + (dog.metres ?? 0), 0);
      expect(episode.sinceBefore?.metres).toBe(metres);
    }
  });
});
