/** Elevation of a broken line at a station; null where it has none. Steps give their later side. */
export function heightOn(
  lines: readonly (readonly (readonly [number, number])[])[],
  station: number,
): number | null {
  let found: number | null = null;
  for (const line of lines) {
    line.slice(1).forEach((to, i) => {
      const from = line[i]!;
      if (station < from[0] || station > to[0]) return;
      const share = to[0] > from[0] ? (station - from[0]) / (to[0] - from[0]) : 1;
      found = from[1] + share * (to[1] - from[1]);
    });
  }
  return found;
}
