/**
 * Step "hearing": call names and trade words that were heard or typed wrong. A recogniser writes "castro" for Kestrel and
 * "buddies" for booties; a thumb writes "tasny". A name is looked for only where a dog can stand, and it is offered, not
 * chosen, where two dogs are about as near.
 */
import type { ContextDog } from '../entry.ts';
import { distance, soundsOf, weightOf } from './hearing-sounds.ts';
import { oneSlip, SHORTEST_MENDED } from './spelling.ts';

/** How a word came to its dog. `near` is a rougher likeness than `sounds`: to be used in a certain slot only. */
export type How = 'exact' | 'misspelt' | 'sounds' | 'near' | 'none';

/** One form of a dog's name and how it sounds. */
interface Form {
  dog: string;
  low: string;
  /** The ways it may sound, with their weights. */
  sounds: readonly { s: string; weight: number }[];
}

/** A roster's names, aliases and heard forms by spelling and by sound. Built once for a roster. */
export interface Ears {
  readonly exact: ReadonlyMap<string, readonly string[]>;
  readonly forms: readonly Form[];
  readonly heard: Map<string, Heard>;
}
export interface Heard {
  /** Call names as the roster spells them, the likeliest first: one when it is clear, several when it is not. */
  dogs: string[];
  how: How;
}

const NOBODY: Heard = Object.freeze({ dogs: [], how: 'none' as const });
/** From this likeness on (1 is the same sound) a word is taken for the name. */
const SOUNDS = 0.88;
/** From this likeness on only in a slot that must hold a dog. */
const NEAR = 0.72;
/** A second dog this close behind the best one makes it a choice that only a person can make. */
const MARGIN = 0.1;
/** The likeliest sounds may differ by this share of their weight before the others are tried. */
const FAR = 0.55;
/** Words lighter than this (a consonant 1, a vowel a half) must be nearer: short words are all alike. */
const LIGHT = 3.25;
const NEAR_LIGHT = 0.82;
/** A slip of one letter counts as much as this likeness. */
const SLIP = 0.87;
/** Words remembered for a roster; forgotten together when full. */
const REMEMBERED = 2000;

const built = new WeakMap<readonly ContextDog[], Ears>();

/** The names of a roster, ready to be listened for; built once for one list. A few milliseconds for sixty dogs. */
export function earsFor(dogs: readonly ContextDog[]): Ears {
  const before = built.get(dogs);
  if (before) return before;
  const exact = new Map<string, string[]>();
  const forms: Form[] = [];
  for (const d of dogs) {
    for (const form of [d.name, ...(d.aliases ?? []), ...(d.heard ?? [])]) {
      const low = form.toLowerCase();
      const same = exact.get(low) ?? [];
      if (!same.includes(d.name)) same.push(d.name);
      exact.set(low, same);
      const sounds = soundsOf(low).map((s) => ({ s, weight: weightOf(s) }));
      forms.push({ dog: d.name, low, sounds });
    }
  }
  const ears: Ears = { exact, forms, heard: new Map() };
  built.set(dogs, ears);
  return ears;
}

/** How alike two words sound, 0 to 1: what has to be changed, against what both weigh. `least` ends early below it. */
function likeness(a: Form['sounds'], b: Form['sounds'], least: number): number {
  const [a0, b0] = [a[0], b[0]];
  if (!a0 || !b0) return 0;
  // The likeliest ways first: where even they are far apart, the others will not bring them near.
  const far = FAR * ((a0.weight + b0.weight) / 2);
  if (distance(a0.s, b0.s, far) > far) return 0;
  let best = 0;
  for (const x of a) {
    for (const y of b) {
      const weight = (x.weight + y.weight) / 2;
      const most = weight * (1 - Math.max(best, least));
      if (Math.abs(x.weight - y.weight) * 0.5 > most) continue;
      const like = 1 - distance(x.s, y.s, most) / weight;
      if (like > best) best = like;
    }
  }
  return best;
}

/**
 * The dog that `word` may have been. For a word that stands in a dog's slot; capitals do not matter. One clear candidate
 * gives that dog; two that are about as near give both, and nobody has chosen. A name spelled as the roster has it always
 * wins. Never gives a name that is not in the roster.
 */
export function soundsLike(word: string, ears: Ears): Heard {
  const low = word.toLowerCase();
  const exact = ears.exact.get(low);
  if (exact) return { dogs: [...exact], how: 'exact' };
  let heard = ears.heard.get(low);
  if (!heard) {
    heard = listen(low, ears);
    if (ears.heard.size >= REMEMBERED) ears.heard.clear();
    ears.heard.set(low, heard);
  }
  return { dogs: [...heard.dogs], how: heard.how };
}

function listen(low: string, ears: Ears): Heard {
  const sounds = soundsOf(low).map((s) => ({ s, weight: weightOf(s) }));
  if (!sounds.length) return NOBODY;
  const scores = new Map<string, number>();
  let best = 0;
  let slip = false;
  let light = false;
  for (const f of ears.forms) {
    const slipped = low.length >= SHORTEST_MENDED && f.low.length >= SHORTEST_MENDED && oneSlip(low, f.low);
    const like = Math.max(slipped ? SLIP : 0, likeness(sounds, f.sounds, Math.max(NEAR, best) - MARGIN));
    if (like > (scores.get(f.dog) ?? 0)) scores.set(f.dog, like);
    if (like > best) {
      best = like;
      light = ((sounds[0]?.weight ?? 0) + (f.sounds[0]?.weight ?? 0)) / 2 < LIGHT;
      slip = slipped && like === SLIP;
    }
  }
  if (best < NEAR || (light && best < NEAR_LIGHT && !slip)) return NOBODY;
  const dogs = [...scores]
    .filter(([, s]) => s > best - MARGIN)
    .sort((a, b) => b[1] - a[1])
    .map(([dog]) => dog);
  return { dogs, how: slip ? 'misspelt' : best >= SOUNDS ? 'sounds' : 'near' };
}

export { tradeWordHeard } from './hearing-words.ts';
