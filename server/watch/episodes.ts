/**
 * Findings join into episodes, one dog at a time.
 *
 * The rules, in words:
 * 1. Present and possible open an episode on their site or extend it; an episode nobody was ever sure of is doubtful.
 * 2. All signs on one site are one episode, and it is over when every one of them was told gone.
 * 3. The day is the grain: an end holds from the end of its day, so what is found again later that day goes on.
 * 4. Longer silence than the set number of days ends it as "not seen since" its last day: that is no word of healing.
 *    A word that it is gone, told later in the season, is one.
 * 5. "Still", "better" or "worse" after an end that was told takes the end back: it never was gone.
 * 6. A word of an earlier day opens nothing; a plan is nothing yet.
 */
import { dayOf } from '../load/days.ts';
import { seasonOf } from '../model.ts';
import { addSeen, allGone, type Draft, endSigns, heldSigns, newDraft } from './draft.ts';
import { isAllFeet, type Reach, reachOf } from './reach.ts';
import type { Mention, Site } from './schema.ts';
import { sitesOf } from './sites.ts';
import type { Statement } from './statements.ts';

export interface DogEpisodes {
  drafts: Draft[];
  /** Told of an earlier day, or told as over, with no episode it belongs to. */
  history: { site: Site; mention: Mention }[];
}

/**
 * One dog's episodes.
 * @param statements the dog's statements in the order of time
 * @param silenceDays more days than these without a sight of it end an episode
 * @param on the day it is worked out for, as a number
 */
export function draftsOf(statements: readonly Statement[], silenceDays: number, on: number): DogEpisodes {
  const all: DogEpisodes = { drafts: [], history: [] };
  const open = new Map<string, Draft>();
  const latest = new Map<string, Draft>();
  let today: number | undefined;
  for (const statement of statements) {
    if (statement.day !== today) {
      if (today !== undefined) closeDay(open, today);
      today = statement.day;
      closeSilent(open, silenceDays, today);
    }
    const { assertion } = statement.mention;
    if (assertion === 'present' || assertion === 'possible') see(statement, open, latest, all, silenceDays);
    else if (assertion === 'absent' || assertion === 'resolved') hearGone(statement, open, latest, all);
    else if (assertion === 'past') hearPast(statement, open, all);
  }
  if (today !== undefined) closeDay(open, today);
  closeSilent(open, silenceDays, on);
  return all;
}

function see(
  statement: Statement,
  open: Map<string, Draft>,
  latest: Map<string, Draft>,
  all: DogEpisodes,
  silenceDays: number,
): void {
  for (const site of sitesOf(statement.mention)) {
    const draft =
      open.get(site.key) ?? goesOn(statement, latest.get(site.key), silenceDays) ?? newDraft(site, statement.day);
    if (draft.seen.length === 0) all.drafts.push(draft);
    open.set(site.key, draft);
    latest.set(site.key, draft);
    addSeen(draft, statement);
  }
}

/** An episode told over that a word like "still" takes up again. */
function goesOn({ mention, day }: Statement, before: Draft | undefined, silenceDays: number): Draft | undefined {
  if (!mention.trend || before?.end?.how !== 'over' || day - before.lastSeen > silenceDays) return undefined;
  delete before.end;
  return before;
}

function hearGone(statement: Statement, open: Map<string, Draft>, latest: Map<string, Draft>, all: DogEpisodes): void {
  const { mention, day } = statement;
  const reached = reachedBy(mention, open.values());
  endWhatIsMeant(statement, reached);
  if (reached.length > 0 || mention.assertion !== 'resolved') return;
  // A word that comes after the silence still says how it ended.
  const silent = [...latest.values()].filter((draft) => isSilent(draft, day));
  const late = reachedBy(mention, silent).filter(({ reach }) => reach !== 'dog');
  endWhatIsMeant(statement, late);
  for (const { draft } of late) if (allGone(draft)) draft.end = { how: 'over', day };
  // "That shoulder is fine now" of a shoulder nobody had noted: it was there once, and that is worth keeping.
  if (late.length === 0) for (const site of sitesOf(mention)) all.history.push({ site, mention });
}

interface Reached {
  draft: Draft;
  reach: Reach;
}
function reachedBy(mention: Mention, drafts: Iterable<Draft>): Reached[] {
  return [...drafts]
    .map((draft) => ({ draft, reach: reachOf(mention, draft.site) }))
    .filter(({ draft, reach }) => reach !== 'none' && !(reach === 'dog' && draft.site.group === 'in-season'));
}

/** Every episode reached keeps the statement; those that are surely meant are ended by it, as far as it goes. */
function endWhatIsMeant(statement: Statement, reached: readonly Reached[]): void {
  const about = antecedents(statement.mention, reached);
  for (const { draft } of reached) {
    const ended = about.has(draft) ? endSigns(draft, statement) : [];
    draft.evidence.push({ ...statement.mention, ended });
  }
}

function isSilent(draft: Draft, day: number): boolean {
  return draft.end?.how === 'not-seen-since' && seasonOf(dayOf(draft.lastSeen)) === seasonOf(dayOf(day));
}

/**
 * The episodes a statement may end. Those it surely reaches; of the others only where exactly one can be meant, and
 * where more was said than the episode knows, or the dog as a whole was meant, only on a word that it is gone.
 */
function antecedents(mention: Mention, reached: readonly Reached[]): Set<Draft> {
  const holding = reached.filter(({ draft }) => heldSigns(draft, mention).length > 0);
  const those = (reach: Reach) => holding.filter((one) => one.reach === reach).map(({ draft }) => draft);
  const single = (drafts: Draft[]) => (drafts.length === 1 ? drafts : []);
  const wide = those('wide');
  const resolved = mention.assertion === 'resolved';
  const out = [...those('sure'), ...(isAllFeet(mention) && !resolved ? wide : single(wide))];
  if (out.length > 0 || !resolved) return new Set(out);
  const near = single(those('close'));
  return new Set(near.length > 0 ? near : single(those('dog')));
}

function hearPast({ mention }: Statement, open: Map<string, Draft>, all: DogEpisodes): void {
  for (const site of sitesOf(mention)) {
    const draft = open.get(site.key);
    if (draft) draft.past.push(mention);
    else all.history.push({ site, mention });
  }
}

function closeDay(open: Map<string, Draft>, day: number): void {
  for (const [key, draft] of open)
    if (allGone(draft)) {
      draft.end = { how: 'over', day };
      open.delete(key);
    }
}

function closeSilent(open: Map<string, Draft>, silenceDays: number, day: number): void {
  for (const [key, draft] of open)
    if (day - draft.lastSeen > silenceDays) {
      draft.end = { how: 'not-seen-since', day: draft.lastSeen + silenceDays + 1 };
      open.delete(key);
    }
}
