/**
 * The cautions of a dog, over its record: when to stop and call a veterinarian. Which signs these are is told in
 * grammar/cautions.ts, so that the phone knows them as well. The tool keeps what was said; it judges nothing.
 */
import { type CautionReason, cautionOf, cautionSentence, mayBeVomited } from '../../grammar/cautions.ts';
import { dayNumber } from '../load/days.ts';
import type { Caution, Episode, Mention } from './schema.ts';
import type { Statement } from './statements.ts';

const TOLD = { now: 4, possible: 3, earlier: 2, over: 1 } as const;

/**
 * The cautions of one dog: one for each reason and episode, with the newest note it was told in. A sign told only of an
 * earlier day, or only when it was over, still gives one, in words of its own.
 * @param on the day it is worked out for, as a number
 */
export function cautionsOf(
  dog: string,
  statements: readonly Statement[],
  episodes: readonly Episode[],
  silenceDays: number,
  on: number,
): Caution[] {
  const episodesWith = new Map<string, Episode[]>();
  for (const episode of episodes)
    for (const { id } of [...episode.seen, ...episode.past, ...episode.evidence])
      episodesWith.set(id, [...(episodesWith.get(id) ?? []), episode]);
  const found = new Map<string, Caution>();
  for (const { mention, reason, told } of alarming(statements)) {
    const its = episodesWith.get(mention.id) ?? [];
    const key = `${reason}|${its[0]?.id ?? mention.id}`;
    const before = found.get(key);
    // A word that it is over, of something seen before, ends it; it is no alarm of its own.
    if (told === 'over' && (before || its.some((episode) => episode.seen.some((one) => cautionOf(one) === reason))))
      continue;
    const strongest = before && TOLD[before.told] > TOLD[told] ? before.told : told;
    found.set(key, {
      dog,
      reason,
      told: strongest,
      first: before?.first ?? mention.day,
      last: mention.day,
      times: (before?.times ?? 0) + 1,
      note: mention.note,
      id: mention.id,
      ...(its[0] ? { episode: its[0].id } : {}),
      standing: stands(mention, its, silenceDays, on),
      says: cautionSentence(dog, reason, strongest),
    });
  }
  return [...found.values()];
}

/** While an episode holds the sign it stands until that is told gone; else as long as silence would take. */
function stands(mention: Mention, its: readonly Episode[], silenceDays: number, on: number): boolean {
  const holding = its.filter((episode) => episode.signs.some(({ sign }) => sign === mention.sign));
  if (holding.length === 0) return on - dayNumber(mention.day) <= silenceDays;
  return holding.some(
    ({ state, signs }) =>
      state === 'open' && signs.some(({ sign, gone }) => sign === mention.sign && gone === undefined),
  );
}

interface Alarm {
  mention: Mention;
  reason: CautionReason;
  told: Caution['told'];
}
function alarming(statements: readonly Statement[]): Alarm[] {
  const bleedingMouth = new Set(
    statements
      .filter(({ mention }) => mayBeVomited(mention) && toldAs(mention) !== undefined)
      .map(({ mention }) => mention.note),
  );
  return statements.flatMap(({ mention }) => {
    const told = toldAs(mention);
    // Blood in vomit is told as vomiting and as bleeding, of the mouth or of no part, in one note.
    const reason =
      mention.sign === 'vomiting' && bleedingMouth.has(mention.note) ? 'blood-in-vomit' : cautionOf(mention);
    return told && reason ? [{ mention, reason, told }] : [];
  });
}

function toldAs(mention: Mention): Caution['told'] | undefined {
  switch (mention.assertion) {
    case 'present':
      return 'now';
    case 'possible':
      return 'possible';
    case 'past':
      return 'earlier';
    case 'resolved':
      return 'over';
    default:
      return undefined;
  }
}
