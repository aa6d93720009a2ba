/**
 * A note that tells of a day gone: "never wrote up Monday, so here goes", "some things from Saturday that I forgot". What
 * follows is of that day, until the note speaks of now.
 */
import type { DogPhrase } from './dog-phrase.ts';
import type { Cue } from './scopes.ts';
import { lowAt, type Token } from './tokens.ts';

/** Words of writing down late. */
const LATE =
  /^(wrote|write|writing|written|log|logged|enter|entered|noted|notes|note|forgot|forgotten|catching|catch|backlog|missed|things|stuff|leftovers|report|record)$/;
/** Words that speak of now, or of what is to come. */
const NOW = /^(is|are|'s|'re|now|today|still|tonight|tomorrow|tmrw|currently|since|this)$/;

const DAY = /^(yesterday|(mon|tues|wednes|thurs|fri|satur|sun)day|(mon|tue|tues|wed|thu|thur|thurs|fri|sat))$/;

/** Where the day is named, near the start of the note and before any dog: by a word of time, or behind "from". */
function dayAt(tokens: readonly Token[], cues: readonly Cue[], first: number): number {
  for (let k = 0; k < Math.min(first, 10); k++) {
    if (cues.some((c) => c.gives === 'past' && c.from <= k && k < c.to)) return k;
    if (DAY.test(lowAt(tokens, k)) && /^(from|of|for|about|on)$/.test(lowAt(tokens, k - 1))) return k;
  }
  return -1;
}

/** The stretch `[from, to)` that is of the day named first. */
export function notedDay(
  tokens: readonly Token[],
  cues: readonly Cue[],
  dogs: readonly DogPhrase[],
): { from: number; to: number } | undefined {
  const first = dogs[0]?.from ?? tokens.length;
  const day = dayAt(tokens, cues, first);
  if (day < 0) return undefined;
  const late = tokens.slice(0, Math.min(first, day + 8)).some((t) => LATE.test(t.low));
  if (!late || tokens.slice(0, day).some((t) => t.low === '.')) return undefined;
  const end = tokens.findIndex((t, k) => k > day && /^[.;:!]$/.test(t.low));
  const from = end >= 0 && end < first ? end : day;
  let to = Math.max(from + 1, end >= 0 && end < first ? 0 : first);
  while (to < tokens.length) {
    const whose = lowAt(tokens, to) === "'s" && dogs.some((d) => d.possessive && d.from < to && to < d.to);
    if (NOW.test(lowAt(tokens, to)) && !whose) break;
    to++;
  }
  return { from, to };
}
