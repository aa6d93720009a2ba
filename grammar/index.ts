/** What the grammar offers to everyone else. Pure: no I/O, no clock. */
export * from './entry.ts';
export { parse, type Reading, read, type UnknownName } from './parse.ts';
export { quantities } from './steps/quantities.ts';
export { assertionAt } from './steps/scopes.ts';
