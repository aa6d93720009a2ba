/**
 * What the grammar is known to read otherwise than a person does, with the words that mislead it. The whole-way test is
 * exact about everything that is not listed here. What is listed may be wrong; once it comes out right, the test prints
 * that its line can go. A line is never added without the words that it is about.
 */
export const MISREAD: Record<string, string> = {
  // Position first, then pairs: "team is Bilberry and Hob, Willa and Mallow, wheel Tamarack and Anvil"
  'dogs 2026-11-17 own': 'up into swing with Wigeon … Team A & B, C & D, wheel E & F',
};

const spent: string[] = [];
/** Whether a difference is a known one. `right` says whether there is none; a known one that is right is remembered. */
export function known(key: string, right: boolean): boolean {
  if (right && key in MISREAD) spent.push(key);
  return key in MISREAD;
}
/** Prints the lines that can go. */
export function printSpent(): void {
  for (const key of spent) console.log(`tests/sample/misread.ts: “${key}” comes out right now; take its line out.`);
}
