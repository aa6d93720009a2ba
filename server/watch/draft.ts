/** An episode while it is being put together, for one dog and one site. Days are numbers here. */
import type { Sign } from '../../grammar/entry.ts';
import { dayOf } from '../load/days.ts';
import { takes } from './reach.ts';
import type { EpisodeSign, Evidence, Mention, Site } from './schema.ts';
import type { Statement } from './statements.ts';

interface DraftSign extends EpisodeSign {
  lastDay: number;
}
export interface Draft {
  site: Site;
  from: number;
  lastSeen: number;
  lastSure?: number;
  signs: Map<Sign, DraftSign>;
  seen: Mention[];
  evidence: Evidence[];
  past: Mention[];
  /** How and when it ended; left out while it is open. */
  end?: { how: 'over' | 'not-seen-since'; day: number };
}

const SEVERITY = { mild: 1, moderate: 2, severe: 3 } as const;
type Severity = keyof typeof SEVERITY;

/** The graver of two severities; an unsaid one gives way. */
export function graver(a: Severity | undefined, b: Severity | undefined): Severity | undefined {
  if (!a || !b) return a ?? b;
  return SEVERITY[b] > SEVERITY[a] ? b : a;
}

export function newDraft(site: Site, day: number): Draft {
  return { site, from: day, lastSeen: day, signs: new Map(), seen: [], evidence: [], past: [] };
}

/** Adds a present or possible finding. A sign told gone before is there again. */
export function addSeen(draft: Draft, { mention, day }: Statement): void {
  const sure = mention.assertion === 'present';
  draft.seen.push(mention);
  draft.lastSeen = day;
  if (sure) draft.lastSure = day;
  const known = draft.signs.get(mention.sign);
  const sign: DraftSign = {
    sign: mention.sign,
    first: known?.first ?? mention.day,
    last: mention.day,
    times: (known?.times ?? 0) + 1,
    doubtful: (known?.doubtful ?? true) && !sure,
    lastDay: day,
  };
  const worst = graver(known?.worst, mention.severity);
  if (worst) sign.worst = worst;
  const trend = mention.trend ?? known?.trend;
  if (trend) sign.trend = trend;
  draft.signs.set(mention.sign, sign);
}

/** Signs that are still there and that a statement is about. */
export function heldSigns(draft: Draft, statement: Mention): Sign[] {
  return [...draft.signs.values()]
    .filter((sign) => sign.gone === undefined && takes(statement, sign.sign))
    .map((sign) => sign.sign);
}

/**
 * Ends the signs a statement is about and gives those it ended. "Gone" (resolved) ends at once. "Not there" (absent)
 * ends only what was last seen on an earlier day: a check of all feet does not undo the split found on the same run.
 */
export function endSigns(draft: Draft, { mention, day }: Statement): Sign[] {
  const ended = heldSigns(draft, mention).filter(
    (name) => mention.assertion === 'resolved' || (draft.signs.get(name) as DraftSign).lastDay < day,
  );
  for (const name of ended) (draft.signs.get(name) as DraftSign).gone = dayOf(day);
  return ended;
}

/** Whether every sign of it was told gone. One sign that is gone ends no episode that holds another. */
export function allGone(draft: Draft): boolean {
  return [...draft.signs.values()].every((sign) => sign.gone !== undefined);
}
