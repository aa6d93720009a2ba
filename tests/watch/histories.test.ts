/** Hand-worked histories: what was told, and the episodes a careful reader finds in it. */
import { describe, expect, it } from 'vitest';
import type { YardRecord } from '../../server/records/types.ts';
import { type Episode, episodesOf, type Watch, watchSchema } from '../../server/watch/index.ts';
import { note, runWith, tell, yardWith } from './build.ts';

const DOG = 'Juniper';
const t = (when: string, ...findings: string[]) => tell(`2027-${when}`, DOG, ...findings);

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

const HISTORIES: { story: string; told: YardRecord[]; on: string; want: string[] }[] = [
  {
    story: 'two signs on one wrist are one episode, which stays open',
    told: [t('01-03', 'wrist left sore mild'), t('01-05', 'wrist left swollen')],
    on: '01-06',
    want: ['left wrist · open · 01-03 to 01-05 · sore swollen · #1'],
  },
  {
    story: '"fine now" ends it, and a new one after that is the second',
    told: [t('01-03', 'wrist left sore'), t('01-07', 'wrist left any resolved'), t('01-20', 'wrist left sore')],
    on: '01-20',
    want: ['left wrist · open · 01-20 to 01-20 · sore · #2', 'left wrist · over · 01-03 to 01-03 · (sore) · #1'],
  },
  {
    story: 'the left and the right wrist are two',
    told: [t('01-03', 'wrist left sore'), t('01-04', 'wrist right sore')],
    on: '01-04',
    want: ['right wrist · open · 01-04 to 01-04 · sore · #1', 'left wrist · open · 01-03 to 01-03 · sore · #1'],
  },
  {
    story: '"left wrist sore, no swelling" ends the swelling and not the episode',
    told: [t('01-03', 'wrist left swollen'), t('01-05', 'wrist left sore', 'wrist left swollen absent')],
    on: '01-05',
    want: ['left wrist · open · 01-03 to 01-05 · (swollen) sore · #1'],
  },
  {
    story: '"no swelling, but sore" in the other order is the same episode',
    told: [t('01-03', 'wrist left swollen'), t('01-05', 'wrist left swollen absent', 'wrist left sore')],
    on: '01-05',
    want: ['left wrist · open · 01-03 to 01-05 · (swollen) sore · #1'],
  },
  {
    story: 'one sign denied on a later day leaves the other; both denied end it',
    told: [
      t('01-03', 'wrist left sore', 'wrist left swollen'),
      t('01-04', 'wrist left swollen absent'),
      t('01-06', 'wrist left sore absent'),
    ],
    on: '01-07',
    want: ['left wrist · over · 01-03 to 01-03 · (sore) (swollen) · #1'],
  },
  {
    story: 'a sign that was never there, denied, ends nothing',
    told: [t('01-03', 'wrist left sore'), t('01-04', 'wrist left hot absent')],
    on: '01-04',
    want: ['left wrist · open · 01-03 to 01-03 · sore · #1'],
  },
  {
    story: 'clean feet of the same day do not undo the split, those of the next day do',
    told: [
      t('01-03T11:00', 'web right front split'),
      t('01-03T16:00', 'foot any absent'),
      t('01-04', 'foot any absent'),
    ],
    on: '01-05',
    want: ['right front web · over · 01-03 to 01-03 · (split) · #1'],
  },
  {
    story: 'the split of this morning stands after clean feet in the afternoon',
    told: [t('01-03T11:00', 'web right front split'), t('01-03T16:00', 'foot any absent')],
    on: '01-03',
    want: ['right front web · open · 01-03 to 01-03 · split · #1'],
  },
  {
    story: 'a split, and the feet else clean, in one note: the split stands',
    told: [t('01-03', 'web right front split', 'foot any absent')],
    on: '01-10',
    want: ['right front web · open · 01-03 to 01-03 · split · #1'],
  },
  {
    story: 'going down behind is a collapse, whatever part was named',
    told: [t('01-03', 'leg sides-both hind collapsed')],
    on: '01-03',
    want: ['collapse · open · 01-03 to 01-03 · collapsed · #1'],
  },
  {
    story: 'clean feet and the split in one note: the split stands',
    told: [t('01-02', 'web right front split'), t('01-03', 'foot any absent', 'web right front split')],
    on: '01-03',
    want: ['right front web · open · 01-02 to 01-03 · split · #1'],
  },
  {
    story: 'clean feet end all of a foot, not the wrist above it',
    told: [t('01-02', 'pad left hind cut', 'nail right front torn', 'wrist right sore'), t('01-03', 'foot any absent')],
    on: '01-03',
    want: [
      'right wrist · open · 01-02 to 01-02 · sore · #1',
      'right front nail · over · 01-02 to 01-02 · (torn) · #1',
      'left hind pad · over · 01-02 to 01-02 · (cut) · #1',
    ],
  },
  {
    story: 'clean webs say nothing of the foot',
    told: [t('01-02', 'foot left front sore'), t('01-03', 'web any absent')],
    on: '01-03',
    want: ['left front foot · open · 01-02 to 01-02 · sore · #1'],
  },
  {
    story: 'clean front feet leave the hind one',
    told: [t('01-02', 'web left front split', 'web left hind split'), t('01-03', 'foot sides-both front any absent')],
    on: '01-03',
    want: [
      'left hind web · open · 01-02 to 01-02 · split · #1',
      'left front web · over · 01-02 to 01-02 · (split) · #1',
    ],
  },
  {
    story: 'fourteen days of silence are not yet an end',
    told: [t('01-03', 'shoulder right sore')],
    on: '01-17',
    want: ['right shoulder · open · 01-03 to 01-03 · sore · #1'],
  },
  {
    story: 'fifteen are, as not seen since',
    told: [t('01-03', 'shoulder right sore')],
    on: '01-18',
    want: ['right shoulder · not-seen-since · 01-03 to 01-03 · sore · #1'],
  },
  {
    story: 'a new one after the silence is the second; a denial is no sight of it',
    told: [
      t('01-03', 'shoulder right sore'),
      t('01-12', 'shoulder right hot absent'),
      t('01-18', 'shoulder right sore'),
    ],
    on: '01-18',
    want: [
      'right shoulder · open · 01-18 to 01-18 · sore · #2',
      'right shoulder · not-seen-since · 01-03 to 01-03 · sore · #1',
    ],
  },
  {
    story: 'a word that it is well again, three weeks on, is the end after all',
    told: [t('01-03', 'wrist left sore'), t('01-24', 'wrist left any resolved')],
    on: '01-30',
    want: ['left wrist · over · 01-03 to 01-03 · (sore) · #1'],
  },
  {
    story: 'such a word is about what is open where something is',
    told: [t('01-03', 'wrist left sore'), t('01-23', 'wrist right sore'), t('01-24', 'wrist any resolved')],
    on: '01-30',
    want: [
      'right wrist · over · 01-23 to 01-23 · (sore) · #1',
      'left wrist · not-seen-since · 01-03 to 01-03 · sore · #1',
    ],
  },
  {
    story: 'a shoulder with no side is neither the left nor the right one',
    told: [t('01-03', 'shoulder sore'), t('01-04', 'shoulder left sore')],
    on: '01-04',
    want: [
      'left shoulder · open · 01-04 to 01-04 · sore · #1',
      'shoulder, side not said · open · 01-03 to 01-03 · sore · #1',
    ],
  },
  {
    story: 'a wrist with no side that is fine now is the one that was open',
    told: [t('01-03', 'wrist left sore'), t('01-05', 'wrist any resolved')],
    on: '01-05',
    want: ['left wrist · over · 01-03 to 01-03 · (sore) · #1'],
  },
  {
    story: 'with both open it might be either, and none ends',
    told: [t('01-03', 'wrist left sore', 'wrist right sore'), t('01-05', 'wrist any resolved')],
    on: '01-05',
    want: ['left wrist · open · 01-03 to 01-03 · sore · #1', 'right wrist · open · 01-03 to 01-03 · sore · #1'],
  },
  {
    story: 'both wrists fine now are both',
    told: [t('01-03', 'wrist sides-both sore'), t('01-05', 'wrist sides-both any resolved')],
    on: '01-05',
    want: ['left wrist · over · 01-03 to 01-03 · (sore) · #1', 'right wrist · over · 01-03 to 01-03 · (sore) · #1'],
  },
  {
    story: 'the right shoulder fine now was the shoulder with no side',
    told: [t('01-03', 'shoulder sore'), t('01-05', 'shoulder right any resolved')],
    on: '01-05',
    want: ['shoulder, side not said · over · 01-03 to 01-03 · (sore) · #1'],
  },
  {
    story: 'the right shoulder looking good may not have been that shoulder',
    told: [t('01-03', 'shoulder sore'), t('01-05', 'shoulder right any absent')],
    on: '01-05',
    want: ['shoulder, side not said · open · 01-03 to 01-03 · sore · #1'],
  },
  {
    story: 'all four feet sore are four, and one of them fine leaves three',
    told: [t('01-03', 'foot sides-both ends-both sore'), t('01-05', 'foot left hind any resolved')],
    on: '01-05',
    want: [
      'left front foot · open · 01-03 to 01-03 · sore · #1',
      'right front foot · open · 01-03 to 01-03 · sore · #1',
      'right hind foot · open · 01-03 to 01-03 · sore · #1',
      'left hind foot · over · 01-03 to 01-03 · (sore) · #1',
    ],
  },
  {
    story: 'perhaps opens a doubtful one, a sure word makes it the first',
    told: [t('01-03', 'pad left front cut possible')],
    on: '01-03',
    want: ['left front pad · open · 01-03 to 01-03 · cut · doubtful'],
  },
  {
    story: 'a sure word makes a doubtful one count from its first day',
    told: [t('01-03', 'pad left front any possible'), t('01-04', 'pad left front cut')],
    on: '01-04',
    want: ['left front pad · open · 01-03 to 01-04 · any cut · #1'],
  },
  {
    story: 'a doubtful one between two sure ones is not counted',
    told: [
      t('01-03', 'wrist left sore'),
      t('01-04', 'wrist left any resolved'),
      t('01-10', 'wrist left sore possible'),
      t('01-11', 'wrist left any absent'),
      t('01-20', 'wrist left sore'),
    ],
    on: '01-20',
    want: [
      'left wrist · open · 01-20 to 01-20 · sore · #2',
      'left wrist · over · 01-10 to 01-10 · (sore) · doubtful',
      'left wrist · over · 01-03 to 01-03 · (sore) · #1',
    ],
  },
  {
    story: 'an earlier day opens nothing, a plan is nothing',
    told: [t('01-03', 'shoulder left sore past'), t('01-04', 'wrist left sore planned')],
    on: '01-04',
    want: [],
  },
  {
    story: 'limping with no leg named stands beside the warm wrist',
    told: [t('01-03', 'lame', 'wrist right hot')],
    on: '01-03',
    want: ['lame, no leg named · open · 01-03 to 01-03 · lame · #1', 'right wrist · open · 01-03 to 01-03 · hot · #1'],
  },
  {
    story: '"not limping" ends lameness wherever it stood, and no soreness',
    told: [t('01-03', 'lame', 'leg left front lame', 'wrist left sore', 'wrist left lame'), t('01-05', 'lame absent')],
    on: '01-05',
    want: [
      'left wrist · open · 01-03 to 01-03 · sore (lame) · #1',
      'lame, no leg named · over · 01-03 to 01-03 · (lame) · #1',
      'left front leg · over · 01-03 to 01-03 · (lame) · #1',
    ],
  },
  {
    story: '"sore left wrist, not limping" opens the wrist and ends yesterday’s lameness',
    told: [t('01-03', 'lame'), t('01-04', 'wrist left sore', 'lame absent')],
    on: '01-04',
    want: [
      'left wrist · open · 01-04 to 01-04 · sore · #1',
      'lame, no leg named · over · 01-03 to 01-03 · (lame) · #1',
    ],
  },
  {
    story: 'fine at noon and limping again at three is one episode',
    told: [
      t('01-03T10:00', 'leg right hind lame'),
      t('01-03T12:00', 'leg right hind lame resolved'),
      t('01-03T15:00', 'leg right hind lame'),
    ],
    on: '01-03',
    want: ['right hind leg · open · 01-03 to 01-03 · lame · #1'],
  },
  {
    story: '"still sore" takes the end back',
    told: [t('01-03', 'wrist left sore'), t('01-05', 'wrist left any absent'), t('01-06', 'wrist left sore same')],
    on: '01-06',
    want: ['left wrist · open · 01-03 to 01-06 · sore · #1'],
  },
  {
    story: '"still sore" after long silence is a new one all the same',
    told: [t('01-03', 'wrist left sore'), t('01-05', 'wrist left any resolved'), t('01-25', 'wrist left sore same')],
    on: '01-25',
    want: ['left wrist · open · 01-25 to 01-25 · sore · #2', 'left wrist · over · 01-03 to 01-03 · (sore) · #1'],
  },
  {
    story: 'better but still there stays open',
    told: [t('01-03', 'wrist left sore'), t('01-05', 'wrist left sore better mild')],
    on: '01-06',
    want: ['left wrist · open · 01-03 to 01-05 · sore · #1'],
  },
  {
    story: 'vomiting and loose stool are two; firm stool ends one',
    told: [t('01-03', 'vomiting', 'loose-stool'), t('01-04', 'loose-stool resolved')],
    on: '01-04',
    want: ['vomiting · open · 01-03 to 01-03 · vomiting · #1', 'stool · over · 01-03 to 01-03 · (loose-stool) · #1'],
  },
  {
    story: '"she is fine now" is the one thing she had, not her being in season',
    told: [t('01-03', 'in-season', 'wrist left sore'), t('01-05', 'any resolved')],
    on: '01-05',
    want: ['in season · open · 01-03 to 01-03 · in-season · #1', 'left wrist · over · 01-03 to 01-03 · (sore) · #1'],
  },
  {
    story: '"she is fine now" with two things open ends neither, and "looks good" ends nothing',
    told: [t('01-03', 'coughing', 'wrist left sore'), t('01-05', 'any resolved'), t('01-06', 'any absent')],
    on: '01-06',
    want: ['coughing · open · 01-03 to 01-03 · coughing · #1', 'left wrist · open · 01-03 to 01-03 · sore · #1'],
  },
];

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
