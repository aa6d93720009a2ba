/** Load: what each dog has run, day by day, and how that changes. Pure functions over run records. */
export { bandOf, surfacesOf } from './conditions.ts';
export { dayNumber, dayOf, daysFrom, seasonDays } from './days.ts';
export { ewma, lambda, median, monotonyOf, ratioOf, sampleSd } from './figures.ts';
export {
  type DogHistory,
  indexLoad,
  type LoadDog,
  type LoadIndex,
  type LoadRun,
  type Row,
  ranIn,
  rowsBetween,
  sumDays,
  withRuns,
} from './index-runs.ts';
export { lastDaysOf, loadOf, seriesOf } from './load.ts';
export {
  type DogLoad,
  dogLoadSchema,
  type LastDays,
  type LoadPoint,
  lastDaysSchema,
  loadPointSchema,
  type Share,
  type Shares,
  sharesSchema,
  TEMPERATURE_BANDS,
  type TemperatureBand,
} from './schema.ts';
export { sharesOf } from './shares.ts';
export { chillOf, type RunChill, windChill, windChillFahrenheit } from './wind-chill.ts';
export {
  ABOUT_EWMA,
  ABOUT_MONOTONY,
  ABOUT_RATIO,
  ABOUT_SURFACES,
  ABOUT_WIND_CHILL,
  afterBreakSentence,
  frostbiteSentence,
  tooShortSentence,
} from './words.ts';
