/**
 * Hand-worked histories: what was told, and the episodes a careful reader finds in it, each on one line: place, state,
 * first to last day seen, signs (those told gone in brackets), number in the season.
 */
import type { YardRecord } from '../../server/records/types.ts';
import { tell } from './build.ts';

export const DOG = 'Juniper';
/** What was told of the dog in the yard in 2027. */
export const t = (when: string, ...findings: string[]): YardRecord => tell(`2027-${when}`, DOG, ...findings);

export const HISTORIES: { story: string; told: YardRecord[]; on: string; want: string[] }[] = [
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
