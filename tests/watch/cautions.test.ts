/** Signs to call a veterinarian for (list: common practice), and the sites of a front limb side by side. */
import { describe, expect, it } from 'vitest';
import type { YardRecord } from '../../server/records/types.ts';
import { episodesOf } from '../../server/watch/index.ts';
import { tell } from './build.ts';

const on = (yard: YardRecord[], day = '2027-01-05') => episodesOf([], yard, ['Kodiak'], { on: day });
const cautions = (...told: [string, ...string[]][]) =>
  on(told.map(([day, ...findings]) => tell(day, 'Kodiak', ...findings))).cautions;

describe('cautions', () => {
  it.each([
    ['collapsed', 'collapsed'],
    ['dark-urine', 'dark-urine'],
    ['bloody-stool', 'bloody-stool'],
    ['overheated', 'overheated'],
    ['leg right hind lame severe', 'no-weight-on-a-leg'],
    ['lame severe', 'no-weight-on-a-leg'],
  ])('%s raises a notice to stop and call', (words, reason) => {
    const [caution, ...more] = cautions(['2027-01-05', words]);
    expect(more).toEqual([]);
    expect(caution).toMatchObject({ dog: 'Kodiak', reason, told: 'now', standing: true, times: 1 });
    expect(caution?.says).toContain('Stop and call a veterinarian');
  });
  it('so does vomiting told with blood of the mouth in one note', () => {
    expect(cautions(['2027-01-05', 'vomiting', 'mouth bleeding']).map((one) => one.reason)).toEqual(['blood-in-vomit']);
    expect(cautions(['2027-01-05', 'vomiting'], ['2027-01-05', 'mouth bleeding'])).toEqual([]);
  });
  it.each(['lame moderate', 'lame', 'loose-stool', 'wrist left sore severe', 'collapsed absent', 'dark-urine planned'])(
    '%s does not',
    (words) => expect(cautions(['2027-01-05', words])).toEqual([]),
  );
  it('perhaps is enough, and says perhaps', () => {
    const [caution] = cautions(['2027-01-05', 'dark-urine possible']);
    expect(caution).toMatchObject({ told: 'possible', standing: true });
    expect(caution?.says).toBe('Kodiak: perhaps dark urine. Stop and call a veterinarian.');
  });
  it('an earlier day and a word that it is over still name the veterinarian', () => {
    expect(cautions(['2027-01-05', 'dark-urine past'])[0]).toMatchObject({ told: 'earlier', standing: true });
    expect(cautions(['2027-01-05', 'collapsed resolved'])[0]).toMatchObject({ told: 'over', standing: true });
    for (const told of ['dark-urine past', 'collapsed resolved'])
      expect(cautions(['2027-01-05', told])[0]?.says).toContain('call a veterinarian');
  });
  it('told again it is one notice with the newest note; told over it no longer stands', () => {
    const again = cautions(['2027-01-03', 'lame severe'], ['2027-01-04', 'lame severe']);
    expect(again).toMatchObject([{ first: '2027-01-03', last: '2027-01-04', times: 2, standing: true }]);
    const over = cautions(['2027-01-03', 'lame severe'], ['2027-01-05', 'lame resolved']);
    expect(over).toMatchObject([{ reason: 'no-weight-on-a-leg', told: 'now', standing: false }]);
  });
  it('stands while another sign of its episode is told over', () => {
    const told = cautions(['2027-01-03', 'bloody-stool', 'loose-stool'], ['2027-01-05', 'loose-stool resolved']);
    expect(told).toMatchObject([{ reason: 'bloody-stool', standing: true }]);
  });
  it('standing ones come first', () => {
    const told = [tell('2027-01-01', 'Kodiak', 'overheated'), tell('2027-01-30', 'Kodiak', 'collapsed')];
    expect(on(told, '2027-01-30').cautions.map((one) => [one.reason, one.standing])).toEqual([
      ['collapsed', true],
      ['overheated', false],
    ]);
  });
});

describe('sites of a front limb that are taken for one another', () => {
  const together = (...findings: string[]) => {
    const { together: groups, episodes } = on([tell('2027-01-05', 'Kodiak', ...findings)]);
    const label = (id: string) => episodes.find((episode) => episode.id === id)?.site.label;
    return groups.map((group) => ({
      side: group.side,
      sure: group.episodes.map(label),
      perhaps: group.perhaps.map(label),
    }));
  };
  it('stand together by side and stay apart as episodes', () => {
    expect(together('wrist left sore', 'shoulder left stiff', 'elbow right hot', 'wrist right sore')).toEqual([
      { side: 'left', sure: ['left shoulder', 'left wrist'], perhaps: [] },
      { side: 'right', sure: ['right elbow', 'right wrist'], perhaps: [] },
    ]);
  });
  it('take along a lameness with no leg and a shoulder with no side, as perhaps', () => {
    expect(together('wrist left sore', 'lame', 'shoulder sore')).toEqual([
      { side: 'left', sure: ['left wrist'], perhaps: ['lame, no leg named', 'shoulder, side not said'] },
    ]);
    expect(together('lame', 'shoulder sore')).toEqual([
      { side: 'not-said', sure: [], perhaps: ['lame, no leg named', 'shoulder, side not said'] },
    ]);
  });
  it('leave out the other side, the hind legs, and a site that stands alone', () => {
    expect(together('wrist left sore', 'leg right lame')).toEqual([]);
    expect(together('wrist left sore', 'leg left hind lame', 'hock left sore')).toEqual([]);
    expect(together('wrist left sore', 'wrist left hot')).toEqual([]);
  });
});
