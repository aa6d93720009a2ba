/** One line of `npm run bench`: a ratio against a baseline timed in the same run. */
export interface Bench {
  name: string;
  ratio: number;
  /** Both times in words. */
  detail: string;
}
