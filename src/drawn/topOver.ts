/** A closed ring in a section: distance along it and elevation of each corner, m. */
type Outline = readonly (readonly [number, number])[];

/**
 * The highest place of some outlines within `half` m of a distance along a section, m; null where
 * none reaches there. For writing over the ground and not over what lies in it.
 */
export function topOver(outlines: readonly Outline[], at: number, half: number): number | null {
  let top = -Infinity;
  for (const outline of outlines) {
    outline.forEach((from, i) => {
      const to = outline[(i + 1) % outline.length];
      if (to === undefined) return;
      const [low, high] = from[0] <= to[0] ? [from, to] : [to, from];
      if (high[0] < at - half || low[0] > at + half) return;
      for (const s of [Math.max(low[0], at - half), Math.min(high[0], at + half)]) {
        const long = high[0] - low[0];
        const share = long === 0 ? 0 : (s - low[0]) / long;
        top = Math.max(top, low[1] + share * (high[1] - low[1]));
        if (long === 0) top = Math.max(top, high[1]);
      }
    });
  }
  return top === -Infinity ? null : top;
}
