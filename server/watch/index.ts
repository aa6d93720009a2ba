/** Watch: findings joined into episodes, what keeps coming back, and when to call a veterinarian. Pure functions. */
export { ABOUT_CAUTIONS } from '../../grammar/cautions.ts';
export { keeper, type Laid, type SeasonRecords } from './keeper.ts';
export {
  type Caution,
  cautionSchema,
  type Episode,
  episodeSchema,
  type Mention,
  type Onset,
  type Site,
  type Together,
  type Watch,
  watchSchema,
} from './schema.ts';
export { sitesOf } from './sites.ts';
export { indexWatch, type WatchIndex, type WatchRecords, type WatchRun, withRecords } from './statements.ts';
export { episodesOf, SILENCE_DAYS, type WatchSettings, watchOf } from './watch.ts';
export {
  ABOUT_EPISODES,
  ABOUT_ONSET,
  ABOUT_TOGETHER,
  timesSentence,
} from './words.ts';
