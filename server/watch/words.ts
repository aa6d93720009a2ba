/** Sentences that stand beside what keeps coming back. */
import type { Episode } from './schema.ts';

/** Beside every list of episodes. */
export const ABOUT_EPISODES =
  'An episode joins what was told of one part of one dog. "Not seen since" means that nobody wrote of it again, not that it healed; only looking at the dog tells that.';

/** Beside the front limb's sites. */
export const ABOUT_TOGETHER =
  'Wrist, elbow, shoulder, triceps and the front leg are easily taken for one another on the trail; they stand side by side here and are counted apart.';

/** Beside an onset and its usual. */
export const ABOUT_ONSET =
  'What came before is not what caused it: these figures only show in what this week was unlike the others.';

/** Which time it is, in words: "third time this season"; none for the first and for a doubtful one. */
export function timesSentence(episode: Pick<Episode, 'number' | 'doubtful'>): string | undefined {
  if (episode.number === undefined || episode.number < 2) return undefined;
  const words = ['second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
  return `${words[episode.number - 2] ?? `${episode.number}th`} time this season`;
}
