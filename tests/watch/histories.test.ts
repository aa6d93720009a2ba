/** Hand-worked histories: what was told, and the episodes a careful reader finds in it. */
import { describe, expect, it } from 'vitest';
import type { YardRecord } from '../../server/records/types.ts';
import { type Episode, episodesOf, type Watch, watchSchema } from '../../server/watch/index.ts';
import { note, runWith, tell, yardWith } from './build.ts';
import { DOG, HISTORIES, t } from './stories.ts';

/** An episode on one line: "left wrist · open · 01-03 to 01-04 · sore swollen · #1". */
function line(episode: Episode): string {
  const signs = episode.signs.map(({ sign, gone }) => (gone ? `(${sign})` : sign)).join(' ');
  const days = `${episode.from.slice(5)} to ${episode.lastSeen.slice(5)}`;
  const number = episode.doubtful ? 'doubtful' : `#${episode.number}`;
  return [episode.site.label, episode.state, days, signs, number].join(' · ');
}
function watch(yard: YardRecord[], on: string): Watch {
  const result = episodesOf([], yard, [DOG], { on: `2027-${on}` });
  expect(watchSchema.parse(result)).toEqual(result);
  return result;
}
const lines = (yard: YardRecord[], on: string) => watch(yard, on).episodes.map(line);

describe('hand-worked histories', () => {
  it.each(HISTORIES)('$story', ({ told, on, want }) => {
    expect(lines(told, on)).toEqual(want);
    expect(lines([...told].reverse(), on)).toEqual(want);
  });
});

it('the number starts anew with the season, the count over all goes on', () => {
  const wrist = (day: string) => [
    tell(day, DOG, 'wrist left sore'),
    tell(day.replace(/..$/, '28'), DOG, 'wrist left any resolved'),
  ];
  const told = ['2026-02-01', '2026-11-01', '2027-02-01', '2027-09-01'].flatMap(wrist);
  const { episodes } = episodesOf([], told, [DOG], { on: '2027-09-30' });
  expect(episodes.map((one) => [one.season, one.number, one.numberInAll])).toEqual([
    ['2027-28', 1, 4],
    ['2026-27', 2, 3],
    ['2026-27', 1, 2],
    ['2025-26', 1, 1],
  ]);
});

it('a finding past midnight belongs to the run’s day', () => {
  const run = runWith('2027-01-03', { [DOG]: 1000 }, note('2027-01-04T00:40', DOG, 'wrist left sore'));
  const { episodes } = episodesOf([run], [tell('2027-01-04', DOG, 'wrist left any absent')], [DOG], {
    on: '2027-01-04',
  });
  expect(episodes.map(line)).toEqual(['left wrist · over · 01-03 to 01-03 · (sore) · #1']);
  expect(episodes[0]?.seen[0]?.run).toBe(run.id);
});

it('what is told later than the day asked for does not count', () => {
  const told = [t('01-03', 'wrist left sore'), t('01-05', 'wrist left any resolved')];
  expect(lines(told, '01-04')).toEqual(['left wrist · open · 01-03 to 01-03 · sore · #1']);
  expect(lines(told, '01-02')).toEqual([]);
});

describe('nothing told is lost', () => {
  it('an earlier day, and an end of what nobody had noted, are history', () => {
    const { history } = watch(
      [t('01-03', 'shoulder left sore past'), t('01-04', 'wrist right sore resolved')],
      '01-04',
    );
    expect(history.map(({ site, mention }) => [site.label, mention.assertion])).toEqual([
      ['left shoulder', 'past'],
      ['right wrist', 'resolved'],
    ]);
  });
  it('an earlier day told while it is open stands with the episode', () => {
    const { episodes, history } = watch([t('01-03', 'wrist left sore'), t('01-04', 'wrist left hot past')], '01-04');
    expect(episodes[0]?.past.map((one) => one.sign)).toEqual(['hot']);
    expect(history).toEqual([]);
  });
  it('a denial stands with the episode and says what it ended', () => {
    const told = [t('01-03', 'web left front split', 'web left front worn'), t('01-04', 'foot any absent')];
    const [episode] = watch(told, '01-04').episodes;
    expect(episode?.until).toBe('2027-01-04');
    expect(episode?.evidence.map((one) => one.ended)).toEqual([['split', 'worn']]);
  });
  it('a finding of a team nobody knows is shown by itself', () => {
    const told = yardWith('2027-01-03', note('2027-01-03', '*', 'loose-stool'));
    const { episodes, noDog } = watch([told], '01-03');
    expect(episodes).toEqual([]);
    expect(noDog.map((one) => one.sign)).toEqual(['loose-stool']);
  });
  it('an entry that stands in a run and in the yard counts once, with its run', () => {
    const told = note('2027-01-03', DOG, 'wrist left sore');
    const run = runWith('2027-01-03', { [DOG]: 1000 }, told);
    const { episodes } = episodesOf([run], [yardWith('2027-01-03', told)], [DOG], { on: '2027-01-03' });
    expect(episodes[0]?.seen).toHaveLength(1);
    expect(episodes[0]?.seen[0]?.run).toBe(run.id);
  });
});

it('the gravest word and the last trend are kept', () => {
  const told = [t('01-03', 'wrist left sore severe'), t('01-04', 'wrist left sore mild better')];
  const [episode] = watch(told, '01-04').episodes;
  expect(episode).toMatchObject({
    worst: 'severe',
    signs: [{ sign: 'sore', worst: 'severe', trend: 'better', times: 2 }],
  });
});

it('a sign told present once stays sure when it is only possible later', () => {
  const [episode] = watch([t('01-03', 'wrist left sore'), t('01-04', 'wrist left sore possible')], '01-04').episodes;
  expect(episode).toMatchObject({ doubtful: false, lastSure: '2027-01-03', signs: [{ doubtful: false }] });
});

it('days of silence can be set, and must be a number of days', () => {
  const told = [t('01-03', 'wrist left sore')];
  const after = (silenceDays: number) =>
    episodesOf([], told, [DOG], { on: '2027-01-10', silenceDays }).episodes[0]?.state;
  expect(after(6)).toBe('not-seen-since');
  expect(after(7)).toBe('open');
  expect(() => after(0)).toThrow('0 is not a number of days of silence');
  expect(() => episodesOf([], told, [DOG], { on: '3 January' })).toThrow(/is not a day/);
});
