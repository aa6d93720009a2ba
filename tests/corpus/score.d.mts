export interface Tally {
  p: number;
  r: number;
  f: number;
}
export interface Score {
  notes: number;
  exact: number;
  strict: Tally;
  slots: Tally;
  by: Record<string, Tally & { gold: number }>;
  differing: { id: string; text: string; missed: string[]; extra: string[] }[];
}
export function score(
  gold: readonly { id: string; text: string; entries: unknown[] }[],
  output: readonly { id: string; entries: unknown[] }[],
): Score;
export function faults(entry: unknown, context: unknown): string[];
