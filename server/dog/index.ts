/** A dog's own page: one dog's season told from the records. Pure functions. */
export { type DogNote, type DogSeason, dogSeasonSchema, type Measured, type SiteCount } from './schema.ts';
export { type StoryAsked, storyOf } from './story.ts';
