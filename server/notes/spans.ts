/** Places in a note's words. */

/** Spans in order, those that touch or overlap put together, cut to a text of this length. */
export function joinedSpans(spans: readonly (readonly [number, number])[], length: number): [number, number][] {
  const out: [number, number][] = [];
  const inside = spans
    .map(([a, b]): [number, number] => [Math.max(0, a), Math.min(b, length)])
    .filter(([a, b]) => a < b);
  for (const [a, b] of inside.sort((x, y) => x[0] - y[0] || x[1] - y[1])) {
    const last = out.at(-1);
    if (last && a <= last[1]) last[1] = Math.max(last[1], b);
    else out.push([a, b]);
  }
  return out;
}
