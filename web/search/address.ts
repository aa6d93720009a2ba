/** A search in the page's address, so that it can be gone back to, kept and sent: as words, or part by part. */
import type { Query } from '../../server/search/query.ts';

/** The name in the address of each part that is a list. */
const LIST_NAMES = {
  dogs: 'dog',
  kinds: 'kind',
  parts: 'part',
  signs: 'sign',
  acts: 'act',
  states: 'state',
  took: 'took',
  what: 'what',
  manners: 'manner',
  drops: 'drop',
  gaits: 'gait',
  gear: 'gear',
  measured: 'measured',
  positions: 'position',
  surfaces: 'surface',
  conditions: 'condition',
} as const;
const SINGLE = ['side', 'end', 'from', 'to', 'season', 'run', 'words', 'show'] as const;

/** The address of a query, part by part. */
export function addressOf(query: Query): string {
  const params = new URLSearchParams();
  for (const [part, name] of Object.entries(LIST_NAMES))
    for (const value of query[part as keyof typeof LIST_NAMES] ?? []) params.append(name, value);
  for (const part of SINGLE) if (query[part]) params.set(part, query[part]);
  const { amount } = query;
  if (amount) {
    params.set('of', amount.of);
    if (amount.atLeast !== undefined) params.set('least', String(amount.atLeast));
    if (amount.atMost !== undefined) params.set('most', String(amount.atMost));
    if (amount.unit) params.set('unit', amount.unit);
  }
  const search = params.toString();
  return search ? `/search?${search}` : '/search';
}

/** The address of words as they were typed. */
export const addressOfWords = (q: string): string =>
  q.trim() ? `/search?q=${encodeURIComponent(q.trim())}` : '/search';

/** What the address asks for, by name; a name that stands there more than once has a list. */
export function askedIn(url: string): Record<string, string | string[]> {
  const params = new URLSearchParams(url.split('?')[1] ?? '');
  const asked: Record<string, string | string[]> = {};
  for (const name of new Set(params.keys())) {
    const values = params.getAll(name).filter((value) => value !== '');
    if (values.length) asked[name] = values.length > 1 ? values : (values[0] as string);
  }
  return asked;
}

/** The query without one of its parts; `value` names one of a list. Both days go together, as they are told. */
export function without(query: Query, part: string, value?: string): Query {
  if (part === 'from') {
    const { from: _, to: __, ...rest } = query;
    return rest;
  }
  const list = query[part as keyof Query];
  const left = Array.isArray(list) && value !== undefined ? list.filter((one) => one !== value) : [];
  return { ...query, [part]: left.length ? left : undefined };
}
