/** What the grammar offers to everyone else. Pure: no I/O, no clock. */
export * from './entry.ts';
export { parse, read } from './parse.ts';
