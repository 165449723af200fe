import type { PlanPoint } from "../site/index.js";

/**
 * A line with fewer places: none of those left out lies farther than `off` m from what is kept
 * (Douglas and Peucker, The Canadian Cartographer 10(2), 1973; recalled). Both ends are kept.
 */
export function simplified(path: readonly PlanPoint[], off: number): PlanPoint[] {
  const kept = new Set([0, path.length - 1]);
  const left: [number, number][] = [[0, path.length - 1]];
  for (let span = left.pop(); span !== undefined; span = left.pop()) {
    const [from, to] = span;
    let [far, farthest] = [off, -1];
    for (let i = from + 1; i < to; i++) {
      const away = distanceTo(path[i]!, path[from]!, path[to]!);
      if (away > far) [far, farthest] = [away, i];
    }
    if (farthest === -1) continue;
    kept.add(farthest);
    left.push([from, farthest], [farthest, to]);
  }
  return path.filter((_, i) => kept.has(i));
}

/** m from a place to the stretch a–b. */
function distanceTo(at: PlanPoint, a: PlanPoint, b: PlanPoint): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = dx * dx + dy * dy;
  const share = long === 0 ? 0 : ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / long;
  const near = Math.min(1, Math.max(0, share));
  return Math.hypot(at[0] - a[0] - near * dx, at[1] - a[1] - near * dy);
}
