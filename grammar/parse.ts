/**
 * The steps of a reading, once, in their order.
 *
 * 1. tokens, mentions, corrections   words with their places; what a speaker took back is put right before anything is read;
 *                                     a dog named behind its statement goes to the front of it (late subjects); a note
 *                                     without marks gets them where its words show a border (pauses)
 * 2. dogs, sites, quantities, cues   where the note speaks of whom, of where, of how much, and how it is asserted
 * 3. the told line-up                 before groups, for "everyone" after a told line-up means the told one
 * 4. readers                          each takes its words; the order is that of who has the better claim to a word
 * 5. merging                          the same thing said twice is one entry; what cleared up later is resolved
 * 6. remarks                          what nobody took, so that every word stays visible
 */
import type { Context, Entry } from './entry.ts';
import { readBooties } from './readers/booties.ts';
import { readCare } from './readers/care.ts';
import { readDrops } from './readers/drops.ts';
import { readElliptic } from './readers/elliptic.ts';
import { readFindings } from './readers/findings.ts';
import { readGear } from './readers/gear.ts';
import { readIntake } from './readers/intake.ts';
import { readNumbers } from './readers/numbers.ts';
import { readPlaces, tellLineup } from './readers/places.ts';
import { remarks } from './readers/remarks.ts';
import { readTrail } from './readers/trail.ts';
import { readAttitude, readGait } from './readers/ways.ts';
import { readWeather } from './readers/weather.ts';
import { isChat } from './steps/chat.ts';
import { Frame } from './steps/frame.ts';
import { offerNames } from './steps/hearing-note.ts';
import { merge } from './steps/merge.ts';
import { unknownNames } from './steps/unknown.ts';

/** A word that stands in a dog's slot and that the roster does not hold. */
export interface UnknownName {
  name: string;
  span: [number, number];
}
/** Everything one reading of a note gives. */
export interface Reading {
  entries: Entry[];
  unknownNames: UnknownName[];
}

/**
 * Readers in their order: places before drops ("in the sled bag" and "in lead" both follow a dog), numbers before all that
 * could take a number's words, booties before findings ("torn", "worn", a foot named for its bootie), conditions before
 * attitude ("flat light", "dead calm"), findings before care, which points back at them; intake before attitude and gait
 * ("eating well", "pick at"); gear late, for its words are the commonest; what was left out last of all.
 */
function readAll(f: Frame): void {
  readPlaces(f);
  readDrops(f);
  readNumbers(f);
  readBooties(f);
  const found = readFindings(f);
  for (const r of found) f.add(r.entry);
  readWeather(f);
  readTrail(f);
  readCare(f, found);
  readIntake(f);
  readGear(f);
  readAttitude(f);
  readGait(f);
  readElliptic(f);
}

/**
 * Text and context in; entries in the order of their spans, and names nobody knows. Never throws on any text.
 * `trace` collects what each rule made, in words.
 */
export function read(text: string, context: Context, trace?: string[], look?: (f: Frame) => void): Reading {
  const f = new Frame(text, context, trace);
  look?.(f);
  if (!f.tokens.length) return { entries: [], unknownNames: [] };
  tellLineup(f);
  f.settle();
  f.silence(isChat(f));
  readAll(f);
  const entries = merge(f.entries);
  const all = [...entries, ...remarks(f, entries)].sort(
    (a, b) => (a.span?.[0] ?? 0) - (b.span?.[0] ?? 0) || (a.span?.[1] ?? 0) - (b.span?.[1] ?? 0),
  );
  offerNames(all, f.dogs, f.tokens);
  return { entries: all, unknownNames: unknownNames(f) };
}

/** The note's entries, in the order of their spans. */
export function parse(text: string, context: Context): Entry[] {
  return read(text, context).entries;
}
