/**
 * Signs at which a musher stops and calls a veterinarian, as a rule over entries: pure, so that the phone says it at once
 * and without a connection, and the server says the same. The list is common practice: collapse, dark urine, blood in
 * stool or vomit, bleeding badly, no weight on a leg, will not cool down. (Pale gums belong to it too; an entry has no
 * word for them.) What was said is named beside the veterinarian; nothing is judged.
 */
import type { Assertion, Entry, EntryOf } from './entry.ts';

export const CAUTION_REASONS = [
  'collapsed',
  'dark-urine',
  'bloody-stool',
  'blood-in-vomit',
  'bleeding-badly',
  'no-weight-on-a-leg',
  'overheated',
] as const;
export type CautionReason = (typeof CAUTION_REASONS)[number];
/** Told of now, as possible, as of an earlier day, or only when it was over. */
export type CautionTold = 'now' | 'possible' | 'earlier' | 'over';

type Finding = Pick<EntryOf<'finding'>, 'part' | 'sign' | 'severity'>;
const BY_SIGN: Partial<Record<Finding['sign'], CautionReason>> = {
  collapsed: 'collapsed',
  'dark-urine': 'dark-urine',
  'bloody-stool': 'bloody-stool',
  overheated: 'overheated',
};
/** Severe lameness is how "puts no weight on it" is read. */
const BY_SEVERE_SIGN: Partial<Record<Finding['sign'], CautionReason>> = {
  lame: 'no-weight-on-a-leg',
  bleeding: 'bleeding-badly',
};

/** Why a finding, by itself, is one to call a veterinarian for; none for all others. */
export function cautionOf(finding: Finding): CautionReason | undefined {
  return (finding.severity === 'severe' ? BY_SEVERE_SIGN[finding.sign] : undefined) ?? BY_SIGN[finding.sign];
}

/** Blood that may have been vomited: of the mouth, or of no part. Beside vomiting in one note it is blood in the vomit. */
export function mayBeVomited(finding: Finding): boolean {
  return finding.sign === 'bleeding' && (finding.part === undefined || finding.part === 'mouth');
}

const REASONS: Record<CautionReason, { now: string; noun: string }> = {
  collapsed: { now: 'collapsed', noun: 'a collapse' },
  'dark-urine': { now: 'passes dark urine', noun: 'dark urine' },
  'bloody-stool': { now: 'has blood in the stool', noun: 'blood in the stool' },
  'blood-in-vomit': { now: 'may be vomiting blood', noun: 'vomiting with blood' },
  'bleeding-badly': { now: 'bleeds badly', noun: 'bad bleeding' },
  'no-weight-on-a-leg': { now: 'is severely lame', noun: 'severe lameness' },
  overheated: { now: 'is overheated', noun: 'overheating' },
};

/** The notice of a caution: stop and call, whatever else is known. */
export function cautionSentence(dog: string, reason: CautionReason, told: CautionTold): string {
  const { now, noun } = REASONS[reason];
  if (told === 'now') return `${dog} ${now}. Stop and call a veterinarian.`;
  if (told === 'possible') return `${dog}: perhaps ${noun}. Stop and call a veterinarian.`;
  if (told === 'earlier')
    return `${dog}: ${noun} was told of an earlier day. Unless a veterinarian has seen to it, stop and call a veterinarian.`;
  return `${dog}: ${noun} was told as over. Do not run on that word alone: stop and call a veterinarian.`;
}

/** Beside every caution. */
export const ABOUT_CAUTIONS =
  'This tool keeps what was said and gives no diagnosis. What it means, and when the dog may run again, is for a veterinarian to say.';

/** A notice that the entries of one note raise by themselves. */
export interface Alarm {
  dog: string;
  reason: CautionReason;
  told: 'now' | 'possible';
  says: string;
}

const TOLD: Partial<Record<Assertion, Alarm['told']>> = { present: 'now', possible: 'possible' };

/**
 * The notices of one note's entries, each dog and reason once, sure ones before possible ones. What was denied, planned,
 * over, or of an earlier day raises none: a person sees it in the entry itself.
 */
export function alarmsOf(entries: readonly Entry[]): Alarm[] {
  const findings = entries.flatMap((entry) => {
    const told = entry.kind === 'finding' ? TOLD[entry.assertion ?? 'present'] : undefined;
    return entry.kind === 'finding' && told ? [{ entry, told, dogs: entry.dogs.length > 0 ? entry.dogs : [''] }] : [];
  });
  const bleeding = new Set(findings.filter(({ entry }) => mayBeVomited(entry)).flatMap(({ dogs }) => dogs));
  const alarms = new Map<string, Alarm>();
  for (const { entry, told, dogs } of findings)
    for (const dog of dogs) {
      const reason = entry.sign === 'vomiting' && bleeding.has(dog) ? 'blood-in-vomit' : cautionOf(entry);
      const key = `${dog}|${reason}`;
      if (!reason || (alarms.has(key) && told === 'possible')) continue;
      alarms.set(key, { dog, reason, told, says: cautionSentence(nameOf(dog), reason, told) });
    }
  return [...alarms.values()].sort((a, b) => Number(a.told === 'possible') - Number(b.told === 'possible'));
}

const nameOf = (dog: string) => (dog === '' ? 'A dog' : dog === '*' ? 'The team' : dog);
